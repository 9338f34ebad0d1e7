#include "core/rules/standing.h"

#include <algorithm>
#include <string>

#include "core/flow/do_actions.h"
#include "core/flow/places.h"
#include "core/rules/gate_steps.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using flow::Action;

bool says_room(std::string_view words) {
  return says(words, {"room temperature", "at room", "on the bench", "on the counter", "stand out", "ambient",
                      "température ambiante", "raumtemperatur", "zimmertemperatur", "temperatura ambiente"});
}

}  // namespace

bool stands_in_the_room(const Check& check, int step) {
  const fiche::Node node = check.flow.steps[static_cast<std::size_t>(step)].node;
  const flow::Doing doing = flow::doing_of(check.fiche, check.fiche.steps[static_cast<std::size_t>(step)]);
  const bool stands = std::any_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) {
    return action->heat == Action::Heat::stands || action->heat == Action::Heat::cools ||
           action->heat == Action::Heat::thaws || action->heat == Action::Heat::holds;
  });
  const bool other = std::any_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) {
    return action->heats() || action->heat == Action::Heat::chills || action->heat == Action::Heat::freezes;
  });
  if (!stands || other || check.document.child(node, fiche::El::medium_temp) != fiche::none) return false;
  const std::string_view on = check.document.get(node, fiche::At::on);
  const std::string words = words_of(check, step);
  if (flow::Places(check.kitchen).cold(on) ||
      says(words, {"fridge", "refrig", "chill", "ice", "cold", "frigo", "froid", "kühl", "nevera"}))
    return false;
  if (check.document.child(node, fiche::El::room_temp) != fiche::none || says_room(words)) return true;
  return on.find("bench") != std::string_view::npos || on.find("table") != std::string_view::npos ||
         on.find("rack") != std::string_view::npos;
}

}  // namespace tamis::rules
