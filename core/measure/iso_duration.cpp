#include "core/measure/iso_duration.h"

#include <string>

#include "core/measure/write.h"

namespace tamis::measure {
namespace {

using base::Ratio;

struct Field {
  char sign;
  bool time;  ///< stands after the T
  std::string_view unit;
};
constexpr Field fields[] = {
    {'W', false, "week"}, {'D', false, "day"}, {'H', true, "h"}, {'M', true, "min"}, {'S', true, "s"}};

/// "1", "1.5" or "1,5" before a field's letter.
std::optional<Ratio> take_figure(std::string_view text, std::size_t& at) {
  constexpr std::size_t most = 20;
  std::string plain;
  while (at < text.size() && plain.size() < most && ((text[at] >= '0' && text[at] <= '9') || text[at] == '.' || text[at] == ',')) {
    plain += text[at] == ',' ? '.' : text[at];
    ++at;
  }
  return Ratio::parse(plain);
}

}  // namespace

std::optional<Amount> read_iso_duration(std::string_view text) {
  if (text.size() < 3 || text[0] != 'P') return std::nullopt;
  Amount amount;
  amount.kind = Kind::time;
  std::size_t field = 0;
  bool in_time = false;
  for (std::size_t at = 1; at < text.size();) {
    if (text[at] == 'T' && !in_time) {
      in_time = true;
      if (++at == text.size()) return std::nullopt;
      continue;
    }
    const auto value = take_figure(text, at);
    if (!value || at == text.size()) return std::nullopt;
    while (field < std::size(fields) && !(fields[field].sign == text[at] && fields[field].time == in_time)) ++field;
    if (field == std::size(fields)) return std::nullopt;
    amount.low.push_back({*value, unit_by_id(fields[field].unit)});
    ++field;
    ++at;
  }
  if (amount.low.empty() || !amount.low_base().ok()) return std::nullopt;
  return amount;
}

std::string write_iso_duration(const Amount& time) {
  Ratio left = time.low_base();
  std::string out = "PT";
  Writing plain;
  plain.fractions = false;
  const auto put = [&](Ratio value, char sign) {
    if (value == 0) return;
    out += write_number(value, plain);
    out += sign;
  };
  const Ratio hours = (left / 3600).floor();
  left = left - hours * 3600;
  const Ratio minutes = (left / 60).floor();
  put(hours, 'H');
  put(minutes, 'M');
  put(left - minutes * 60, 'S');
  return out == "PT" ? "PT0S" : out;
}

}  // namespace tamis::measure
