// Any bytes are an amount or are refused; what is read is written and read back as it was.
// The first byte chooses language, system and decimal sign; the rest is the text.

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/measure/read.h"
#include "core/measure/write.h"

namespace {

using namespace tamis::measure;

constexpr const char* languages[] = {"en", "fr", "de", "es", "es-MX", "xx"};
constexpr System systems[] = {System::none, System::us, System::metric, System::imperial};
constexpr char signs[] = {0, '.', ','};
constexpr Kinds kinds[] = {amount_kinds, temperature_kinds, time_kinds, length_kinds, amount_kinds | time_kinds,
                           set_of(Kind::temperature_difference)};

Reading reading_of(unsigned char choice) {
  return {languages[choice % 6], systems[choice / 6 % 4], signs[choice / 24 % 3]};
}

[[noreturn]] void fail(const char* what, std::string_view text, const std::string& written) {
  std::fprintf(stderr, "%s: \"%.*s\" written as \"%s\"\n", what, static_cast<int>(text.size()), text.data(),
               written.c_str());
  std::abort();
}

void check_span(const tamis::base::Finding& fault, std::string_view text) {
  if (fault.where.begin > fault.where.end || fault.where.end > text.size()) fail("span outside", text, fault.message);
  if (fault.rule.empty() || fault.message.empty()) fail("nothing said", text, fault.rule);
}

/// Whether a figure was written in full; what needs more digits than are asked for cannot come back equal.
bool written_in_full(const Amount& amount) {
  for (const auto* side : {&amount.low, &amount.high}) {
    for (const Quantity& part : *side) {
      tamis::base::Ratio scaled = part.value;
      for (int i = 0; i < 12 && scaled.ok() && !scaled.whole(); ++i) scaled = scaled * 10;
      if (!scaled.whole() && part.value.denominator() > 16) return false;
      if (!scaled.whole() && (part.unit->system == System::si || part.unit->kind == Kind::temperature ||
                              part.unit->kind == Kind::temperature_difference)) {
        return false;
      }
    }
  }
  return true;
}

/// The system the written names need; false where the parts are of several.
bool system_of(const Amount& amount, System& system) {
  for (const auto* side : {&amount.low, &amount.high}) {
    for (const Quantity& part : *side) {
      const System own = part.unit->system;
      if (own != System::us && own != System::imperial && own != System::metric) continue;
      if (belongs_to(*part.unit, system)) continue;
      if (system != System::none) return false;
      system = own;
    }
  }
  return true;
}

void check_back(std::string_view text, const Amount& amount, Kinds wanted, const Reading& reading) {
  Writing writing;
  writing.language = reading.language;
  writing.digits = 24;
  Reading own{reading.language, System::none, 0};
  if (!written_in_full(amount) || !system_of(amount, own.system)) return;
  const std::string written = write_amount(amount, writing);
  const auto back = read_amount(written, wanted, own);
  if (!back) fail(back.fault().message.c_str(), text, written);
  if (!(*back == amount)) fail("not the same back", text, written);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const Reading reading = reading_of(data[0]);
  const std::string text(reinterpret_cast<const char*>(data) + 1, size - 1);
  for (const Kinds wanted : kinds) {
    const auto amount = read_amount(text, wanted, reading);
    if (amount) {
      check_back(text, *amount, wanted, reading);
    } else {
      check_span(amount.fault(), text);
    }
    const Found found = find_amount(text, wanted, reading);
    if (found.used > text.size()) fail("found past the end", text, {});
    if (found.fault) check_span(*found.fault, text);
  }
  const auto lengths = read_lengths(text, reading);
  if (!lengths) check_span(lengths.fault(), text);
  const auto share = read_share(text, reading);
  if (!share) check_span(share.fault(), text);
  const auto number = read_number(text, reading);
  if (!number) check_span(number.fault(), text);
  const auto unit = read_unit(text, reading);
  if (!unit) check_span(unit.fault(), text);
  return 0;
}
