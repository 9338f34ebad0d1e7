#include "core/flow/states.h"

namespace tamis::flow {
namespace {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

std::string quoted(std::string_view word) { return "\"" + std::string(word) + "\""; }

/// "the custard" by the name a cook knows it by.
std::string name_of(const Why& why, const Flow& flow) {
  if (why.thing < 0) return "something in it";
  const Thing& thing = flow.things[idx(why.thing)];
  if (!thing.name.empty()) return quoted(thing.name);
  return thing.maker >= 0 ? "what comes of step " + std::to_string(thing.maker + 1) : "something in it";
}

/// "in step 3" counts through the component, as the sheet does.
std::string place_of(const Why& why, const fiche::Fiche& fiche, const Flow& flow, int here) {
  if (why.step < 0) return "";
  if (why.step == here) return " here";
  const Step& step = flow.steps[idx(why.step)];
  int number = 0;
  for (int i = 0; i <= why.step; ++i) number += flow.steps[idx(i)].component == step.component ? 1 : 0;
  std::string out = " in step " + std::to_string(number);
  const std::string_view title = fiche.document->get(step.component, fiche::At::title);
  if (flow.components.size() > 1 && !title.empty()) out += " of " + quoted(title);
  return out;
}

std::string unknown_word(const Why& why, const fiche::Fiche& fiche) {
  for (const std::string_view word : fiche.steps[idx(why.step)].actions) {
    if (action_named(word) == nullptr) return std::string(word);
  }
  return "";
}

}  // namespace

std::string tell(const Why& why, const fiche::Fiche& fiche, const Flow& flow, int here) {
  using Reason = Why::Reason;
  const auto in_step = [&](std::string_view before, std::string_view behind) {
    std::string out(before);
    out += place_of(why, fiche, flow, here);
    out += behind;
    return out;
  };
  switch (why.reason) {
    case Reason::nothing: return "";
    case Reason::food_unknown: return "what food " + name_of(why, flow) + " is is not known";
    case Reason::not_reported: return "what " + name_of(why, flow) + " is made of is not reported in full";
    case Reason::range: return "the fiche itself leaves a range or a choice";
    case Reason::amount_unknown:
      return why.thing < 0 ? in_step("how much goes in", " is not stated") : "how much " + name_of(why, flow) + " is not stated";
    case Reason::file: return "the file of " + name_of(why, flow) + " does not tell";
    case Reason::divided: return in_step("how it is divided", " is not stated");
    case Reason::circle: return "its steps go round in a circle";
    case Reason::no_action: return in_step("what is done", " is not said (do)");
    case Reason::action_unknown: return in_step("what " + quoted(unknown_word(why, fiche)) + " does", " is not known");
    case Reason::steam: return in_step("how much goes off as steam", " is not stated");
    case Reason::juice: return in_step("how much runs off", " is not stated");
    case Reason::sieve: return in_step("how much stays behind", " is not stated");
    case Reason::trim: return in_step("how much is cut off", " is not stated");
    case Reason::swelling: return in_step("how much water it takes up", " is not stated");
    case Reason::frying: return in_step("how much fat it takes up", " is not stated");
    case Reason::too_much_lost: return in_step("more is said to go off", " than there is water");
    case Reason::removed: return in_step("what is taken out", " has soaked");
    case Reason::heated: return in_step("heated", " without a figure");
    case Reason::oven: return in_step("how hot it gets inside", " is not stated");
    case Reason::fat_heat: return in_step("how hot it gets inside", " is not stated");
    case Reason::sugar_heat: return in_step("how far it is cooked", " is not stated");
    case Reason::tempered: return in_step("how warm it is when tempered", " is not stated");
    case Reason::waited: return in_step("how far it cools or warms", " is not stated");
    case Reason::kept: return "how cold " + name_of(why, flow) + " is kept is not stated";
    case Reason::kneaded: return in_step("how far the work warms it", " is not stated");
    case Reason::solid: return in_step("how much in it has to melt", " is not known");
  }
  return "";
}

}  // namespace tamis::flow
