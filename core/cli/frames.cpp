#include "core/cli/frames.h"

#include <array>
#include <cstring>

namespace tamis::cli {
namespace {

using Head = std::array<std::uint64_t, 2>;  // number, length

}  // namespace

void append_frame(std::string& out, std::uint64_t number, std::string_view bytes) {
  const Head head{number, bytes.size()};
  std::array<char, sizeof(Head)> raw{};
  std::memcpy(raw.data(), head.data(), raw.size());
  out.append(raw.data(), raw.size());
  out += bytes;
}

std::size_t first_frame(std::string_view received, Frame& frame) {
  Head head{};
  if (received.size() < sizeof head) return 0;
  std::memcpy(head.data(), received.data(), sizeof head);
  if (received.size() - sizeof head < head[1]) return 0;
  frame = {head[0], received.substr(sizeof head, head[1])};
  return sizeof head + head[1];
}

}  // namespace tamis::cli
