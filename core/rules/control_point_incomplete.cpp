#include <vector>

#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

bool has_words(const fiche::Document& document, Node control, At at) {
  return !base::trimmed(document.get(control, at)).empty();
}

std::string joined(const std::vector<std::string_view>& words, std::string_view last) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? last : ", ";
    out += words[i];
  }
  return out;
}

/// Words that can be met or missed. What lives or dies with heat, cold and time is only held by a figure: "hot" is
/// none.
bool has_limit(const fiche::Document& document, Node control) {
  const std::string words = document.all_text(control);
  if (base::trimmed(words).empty()) return false;
  const bool of_life = says(base::lower(document.get(control, At::hazard)),
                            {"bacteria", "growth", "survival", "mould", "yeast", "spore", "toxin"});
  return !of_life || words.find_first_of("0123456789") != std::string::npos;
}

void look_at(Check& check, Node control) {
  std::vector<std::string_view> missing;
  std::vector<std::string_view> to_write;
  const bool limit = has_limit(check.document, control);
  const auto ask = [&](bool there, std::string_view what, std::string_view write) {
    if (there) return;
    missing.push_back(what);
    to_write.push_back(write);
  };
  ask(limit, "a limit", "the limit as its words (\"the core is at 63 °C or higher\")");
  ask(has_words(check.document, control, At::check), "a check", "check=\"…\"");
  ask(has_words(check.document, control, At::who), "someone who checks", "who=\"…\"");
  ask(has_words(check.document, control, At::action), "a corrective action", "action=\"…\"");
  if (missing.empty()) return;
  base::Finding& finding = say_to_share(check, check.document.head_span(control),
                                        "a control point without " + joined(missing, " or "),
                                        "add " + joined(to_write, " and "));
  if (!limit && readiness_of(check.document) == Readiness::released) check.worsen(finding, base::Severity::error);
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el == El::control) look_at(check, n);
  }
}

}  // namespace

/// A control point that lacks its limit, how it is checked, by whom, or what is done when the limit is not met.
const Rule control_point_incomplete = {
    .id = "control-point-incomplete",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "a control point without its limit, check, person or corrective action",
    .explanation = R"(Food safety rests on a control point, and it only works whole: a limit that can be met or missed, a check that
tells which, someone who makes it, and what happens to the food when the limit is missed. "Check it is hot" is a hope; where
the hazard is something that grows or survives, the limit is a figure.

A released fiche whose control point has no limit is an error; what else is missing is a warning, and on a tested fiche
all of it is advice. Which points are needed and what their limits are is for local rules and the house's own plan, or
a person licensed to write one.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="lentils" food="lentil">500 g</ingredient>
    <step do="chill">Chill the <use of="lentils">lentils</use>.<control hazard="growth of bacteria" check="probe in the
      centre">At <food-temp>at most 5 °C</food-temp> within <time>4 h</time>.</control></step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="lentils" food="lentil">500 g</ingredient>
    <step do="chill">Chill the <use of="lentils">lentils</use>.<control hazard="growth of bacteria" check="probe in the
      centre" who="the cook on garnish" action="spread thinner and chill on; discard after 6 h">At
      <food-temp>at most 5 °C</food-temp> within <time>4 h</time>.</control></step>)",
    .source = "CXC 1-1969 (Codex, General Principles of Food Hygiene), HACCP principles 3 to 6: limit, monitoring, corrective "
              "action; from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
