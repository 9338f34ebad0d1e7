#include <charconv>
#include <optional>

#include "core/base/utf8.h"
#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hair = 0.5;  // °C: rounding of one scale to the other

/// The highest temperature in words such as "to 75 °C", in °C; empty when there is none.
std::optional<double> hottest_in(std::string_view words) {
  std::optional<double> found;
  for (const std::string_view sign : {"°c", "°f"}) {
    for (std::size_t i = words.find(sign); i != std::string_view::npos; i = words.find(sign, i + 1)) {
      std::string_view before = base::trimmed(words.substr(0, i));
      if (before.ends_with("\u00a0")) before.remove_suffix(2);
      std::size_t begin = before.size();
      while (begin > 0 && before[begin - 1] >= '0' && before[begin - 1] <= '9') --begin;
      double value = 0;
      if (begin == before.size() ||
          std::from_chars(before.data() + begin, before.data() + before.size(), value).ec != std::errc())
        continue;
      if (sign == "°f") value = (value - 32) / 1.8;
      if (!found || value > *found) found = value;
    }
  }
  return found;
}

void say(Check& check, base::Span where, const std::string& figure) {
  const SafetyLimit& limit = safety_limit(check.kitchen, "reheating");
  say_limit(
      check, where,
      "it is heated again to " + figure + "; to be held hot it is brought to " + degrees(limit.celsius), limit,
      "heat it to " + degrees(limit.celsius) + " within " +
          time_of(safety_limit(check.kitchen, "reheating_time")) + ", or say that it goes to one guest at once");
}

bool says_at_once(std::string_view words) {
  return says(words, {"at once", "to order", "one guest", "immediately", "à la minute", "aussitôt", "sofort",
                      "al momento"});
}

void run(Check& check) {
  const double least = safety_limit(check.kitchen, "reheating").celsius - hair;
  for (const Kept& kept : keeps_of(check)) {
    const fiche::Attr reheat = kept.holds ? fiche::none : check.document.find(kept.node, fiche::At::reheat);
    if (reheat == fiche::none) continue;
    const auto hottest = hottest_in(base::lower(check.document.attribute_value(reheat)));
    if (!hottest || *hottest >= least || says_at_once(kept.words) || needs_cold(check, kept.step) != Need::yes)
      continue;
    return say(check, check.document.value_span(reheat), degrees(*hottest));
  }
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    if (!does(check, step, {"reheat"})) continue;
    const StatedHeat* last = nullptr;
    for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
      if (heat.el == fiche::El::food_temp) last = &heat;
    }
    const double celsius = last == nullptr ? least : last->high.value_or(last->low.value_or(least));
    if (celsius >= least || says_at_once(words_of(check, step)) || heated_later(check, step)) continue;
    if (needs_cold(check, step) != Need::yes) continue;
    return say(check, last->statement->where, said_heat(*last->statement));
  }
}

}  // namespace

/// Food heated again to less than published for what is then held hot.
const Rule reheated_too_little = {
    .id = "reheated-too-little",
    .severity = base::Severity::advice,
    .topic = "safety",
    .summary = "food heated again to less than is published for what is then held hot",
    .explanation =
        R"(What has been cold for days and is only warmed has grown on. To be held hot, the US model code has it brought to
74 °C within two hours, the UK to 75 °C for 30 s, France to 63 °C within one hour. What goes to one guest at once may be as warm
as it is wanted.

Held against are a temperature in a keep's reheat and that of a step that reheats, for food that needs the cold, once a fiche.
Where the words say that it goes out at once, nothing is said. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
    <step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>,
      stirring.</step>
    <keep where="fridge" at="at most 4 °C" for="2 days" reheat="to 55 °C"/>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
    <step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>,
      stirring.</step>
    <keep where="fridge" at="at most 4 °C" for="2 days" reheat="to 75 °C"/>)",
    .source = "FDA Food Code 3-403.11, or the limits that the kitchen file chooses (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
