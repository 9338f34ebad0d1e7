#include "tests/fuzz/reading.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  tamis::fuzz::check_reading(std::string(reinterpret_cast<const char*>(data), size), tamis::fiche::Spelling::json);
  return 0;
}
