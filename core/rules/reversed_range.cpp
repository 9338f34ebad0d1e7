#include "core/base/utf8.h"
#include "core/measure/read.h"
#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::Value;

bool reads(const fiche::Statement& statement, const std::string& text, const measure::Reading& reading) {
  switch (statement.value) {
    case Value::temperature: return bool(measure::read_temperature(text, reading));
    case Value::duration: return bool(measure::read_duration(text, reading));
    case Value::length: return bool(measure::read_lengths(text, reading));
    case Value::amount: return bool(measure::read_amount(text, measure::amount_kinds, reading));
    default: return false;
  }
}

/// Bytes of the figure that a text starts with.
std::size_t figure_size(std::string_view text) {
  const std::size_t end = text.find_first_not_of("0123456789.,/-+");
  return end == text.npos ? text.size() : end;
}

/// "84–82 °C" as "82–84 °C", "1 h to 20 min" as "20 min to 1 h"; only what then reads is given back.
std::string swapped(const fiche::Statement& statement, const measure::Reading& reading) {
  for (const std::string_view between : {"–", "—", " to ", " à ", " bis ", " a ", "-"}) {
    const std::size_t at = statement.text.find(between, 1);
    if (at == std::string::npos) continue;
    const std::string_view text = statement.text;
    const std::string_view low = base::trimmed(text.substr(0, at));
    const std::string_view high = base::trimmed(text.substr(at + between.size()));
    const std::string_view low_figure = low.substr(0, figure_size(low));
    const std::string_view high_figure = high.substr(0, figure_size(high));
    const auto join = [](auto... parts) { return (std::string() + ... + std::string(parts)); };
    const bool spaced = between == "-" || between.size() == 3;  // a dash, as written with or without spaces
    const std::string gap = spaced && at > 0 && text[at - 1] == ' ' ? " " : "";
    for (const std::string& candidate :
         {join(high_figure, low.substr(low_figure.size()), gap, between, gap, low_figure, high.substr(high_figure.size())),
          join(high, gap, between, gap, low)}) {
      if (!high_figure.empty() && !low_figure.empty() && reads(statement, candidate, reading)) return candidate;
    }
  }
  return {};
}

void run(Check& check) {
  for_each_reading_fault(check, "reversed-range", [&](const fiche::Statement& statement) {
    base::Finding& finding = say_reading_fault(check, statement);
    const std::string text = swapped(statement, check.fiche.reading);
    if (text.empty()) return;
    finding.advice = "write \"" + text + "\"";
    finding.edits.push_back(check.edit_span(statement.where, text, statement.attribute != fiche::none));
  });
}

}  // namespace

/// A range whose first figure is the larger one. The swap is a sure fix where it can be read.
const Rule reversed_range = {
    .id = "reversed-range",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a range that runs from the larger to the smaller figure",
    .explanation = R"("84–82 °C" is a slip of the hand, but a gate worked out from it would never open. --mend swaps the
two figures.

Something that falls ("cool from 90 to 40 °C") is two temperatures with their own marks, not a range.)",
    .bad = R"(    <step>Cook to <food-temp>84–82 °C</food-temp>.</step>)",
    .good = R"(    <step>Cook to <food-temp>82–84 °C</food-temp>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
