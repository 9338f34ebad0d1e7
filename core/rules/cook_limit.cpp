#include "core/rules/cook_limit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/utf8.h"
#include "core/rules/contents.h"
#include "core/rules/figure_text.h"
#include "core/rules/gate_steps.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

constexpr double hair = 0.3;  // °C: 165 °F is 73.9 °C

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool is_minced(std::string_view id) {
  return id.find("minced") != std::string_view::npos || id == "sausage-italian" || id == "sausage-pork";
}

}  // namespace

bool is_poultry(std::string_view id) {
  constexpr std::array birds{"chicken", "turkey", "duck", "goose", "quail", "guinea", "pheasant", "pigeon", "partridge", "capon"};
  return std::any_of(birds.begin(), birds.end(), [id](std::string_view bird) { return id.starts_with(bird); });
}

std::optional<CookLimit> cook_limit_of(const Check& check, int step) {
  std::optional<CookLimit> found;
  for (const Part& part : contents_of(check, step).parts) {
    if (part.food == nullptr || part.food->role != food::Role::meat) continue;
    const int line = check.flow.things[at(part.thing)].ingredient;
    const std::string_view id = general_id(check, part.food);
    const std::string words =
        base::lower(std::string(check.fiche.ingredients[at(line)].name) + " " +
                    std::string(check.document.get(check.fiche.ingredients[at(line)].node, fiche::At::prep)));
    if (says(words, {"cooked", "confit", "smoked", "roasted", "boiled", "cuit", "gekocht", "gebraten", "cocid"}))
      continue;
    const auto any = safety_pairs(check.kitchen, "cook_any");
    const bool by_any = !any.empty() && any.front().set == check.kitchen.limits;
    if (is_poultry(id) && id.find("cooked") == std::string_view::npos) return CookLimit{"poultry", by_any ? any : safety_pairs(check.kitchen, "cook_poultry")};
    if (is_minced(id)) found = CookLimit{"minced meat", by_any ? any : safety_pairs(check.kitchen, "cook_minced")};
  }
  return found;
}

bool meets(std::span<const SafetyLimit> pairs, double celsius, double seconds) {
  const auto needed = seconds_needed(pairs, celsius + hair);
  return needed && *needed <= seconds + 0.5;
}

std::string asked(std::span<const SafetyLimit> pairs, double celsius) {
  const SafetyLimit& last = pairs.back();
  std::string out;
  if (const auto needed = seconds_needed(pairs, celsius); needed && celsius < last.celsius) {
    out = figure_text(*needed < 100 ? *needed : std::ceil(*needed / 60) * 60, measure::Kind::time) + " at " +
          degrees(celsius) + ", or ";
  }
  out += degrees(last.celsius);
  return out + (last.seconds > 0 ? " for " + figure_text(last.seconds, measure::Kind::time) : "");
}

bool says_undercooked(std::string_view text) {
  return says(text, {"pink",
                     "rare",
                     "raw",
                     "not cooked",
                     "undercooked",
                     "lightly cooked",
                     "guests at risk",
                     "guests are told",
                     "guest is told",
                     "tell the guest",
                     "tell guests",
                     "pasteurised",
                     "pasteurized",
                     "rosé",
                     "cru",
                     "pas cuit",
                     "peu cuit",
                     "roh",
                     "rosa",
                     "nicht durch",
                     "crudo",
                     "poco hecho"});
}

}  // namespace tamis::rules
