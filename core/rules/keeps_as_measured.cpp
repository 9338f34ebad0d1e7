#include "core/rules/keeps_as_measured.h"

#include <algorithm>
#include <array>
#include <vector>

#include "core/base/utf8.h"
#include "core/rules/safety_limits.h"

namespace tamis::rules {
namespace {

using fiche::At;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// The limit below which such a measure keeps food; null where it is of something else.
const SafetyLimit* limit_of(const Check& check, std::string_view what) {
  constexpr std::array<std::string_view, 6> activity{"water activity",  "aw",           "a_w",
                                                     "activité de l'eau", "wasseraktiv", "actividad de"};
  const std::string lower = base::lower(base::trimmed(what));
  if (lower.starts_with("ph") && (lower.size() == 2 || lower[2] == ' ' || lower[2] == ','))
    return &safety_limit(check.kitchen, "acid");
  const bool is_activity = std::any_of(activity.begin(), activity.end(),
                                       [&lower](std::string_view start) { return lower.starts_with(start); });
  return is_activity ? &safety_limit(check.kitchen, "dry") : nullptr;
}

struct Measured {
  bool all = false;          ///< of the whole fiche: it says not of what
  std::vector<bool> things;  ///< of these; empty where of none
};

/// What is made of nothing but what was measured keeps like it: it rests, cools or is filled.
void pass_on(const Check& check, std::vector<bool>& things) {
  for (const int step : check.flow.order) {
    const auto& takes = check.flow.steps[at(step)].takes;
    const bool of_them = !takes.empty() && std::all_of(takes.begin(), takes.end(), [&](int use) {
      return things[at(check.flow.uses[at(use)].thing)];
    });
    if (!of_them) continue;
    for (std::size_t thing = 0; thing < things.size(); ++thing) {
      if (check.flow.things[thing].maker == step) things[thing] = true;
    }
  }
}

Measured read(const Check& check) {
  Measured out;
  for (const auto& [node, rule] : check.structure.elements) {
    if (rule->el != fiche::El::measured) continue;
    const SafetyLimit* limit = limit_of(check, check.document.get(node, At::what));
    if (limit == nullptr) continue;
    const auto figure = measure::read_number(base::trimmed(check.document.direct_text(node)), check.fiche.reading);
    if (!figure || figure->approximate() >= limit->celsius) continue;
    const std::string_view of = check.document.get(node, At::of);
    if (of.empty()) out.all = true;
    const int thing = of.empty() ? -1 : check.flow.thing_named(of);
    if (thing < 0) continue;
    out.things.resize(check.flow.things.size());
    out.things[at(thing)] = true;
  }
  if (!out.things.empty()) pass_on(check, out.things);
  return out;
}

}  // namespace

bool keeps_as_measured(const Check& check, int step) {
  const Measured& measured = check.once<Measured>([&] { return read(check); });
  if (measured.all || measured.things.empty()) return measured.all;
  for (std::size_t thing = 0; thing < measured.things.size(); ++thing) {
    if (measured.things[thing] && check.flow.things[thing].maker == step) return true;
  }
  return false;
}

}  // namespace tamis::rules
