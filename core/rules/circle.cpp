#include "core/rules/circle.h"

#include <algorithm>

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool states_wait(const Check& check, const flow::Step& step, int other) {
  if (step.before != other || says_after(check, step, check.flow.steps[at(other)])) return true;
  return std::any_of(step.takes.begin(), step.takes.end(), [&](int use) {
    const flow::Use& taken = check.flow.uses[at(use)];
    return taken.mark != fiche::none && check.flow.things[at(taken.thing)].maker == other;
  });
}

}  // namespace

bool says_after(const Check& check, const flow::Step& step, const flow::Step& other) {
  const std::string after = " " + std::string(check.document.get(step.node, fiche::At::after)) + " ";
  const std::string_view id = check.document.get(other.node, fiche::At::id);
  return !id.empty() && after.find(" " + std::string(id) + " ") != std::string::npos;
}

bool circle_is_stated(const Check& check) {
  const std::vector<int>& circle = check.flow.circle;
  for (std::size_t i = 0; i < circle.size(); ++i) {
    if (!states_wait(check, check.flow.steps[at(circle[i])], circle[(i + 1) % circle.size()])) return false;
  }
  return !circle.empty();
}

}  // namespace tamis::rules
