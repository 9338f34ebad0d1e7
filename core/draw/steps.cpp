#include "core/draw/steps.h"

namespace tamis::draw {

std::vector<fiche::Node> Steps::components() const {
  std::vector<fiche::Node> out;
  const auto wanted = [this](fiche::Node node) {
    return component.empty() || (node != fiche::none && fiche.document->get(node, fiche::At::id) == component);
  };
  for (const flow::Step& one : flow.steps) {
    if (one.component == fiche::none && out.empty() && wanted(fiche::none)) out.push_back(fiche::none);
  }
  for (const fiche::Node node : fiche.components) {
    if (wanted(node)) out.push_back(node);
  }
  return out;
}

std::vector<Steps::Numbered> Steps::steps_of(fiche::Node node) const {
  std::vector<Numbered> out;
  int number = 0;
  for (const flow::Step& one : flow.steps) {
    if (one.component != node) continue;
    ++number;
    if (step == 0 || step == number) out.push_back({number, &one});
  }
  return out;
}

std::string name_of_result(const Steps& steps, int thing) { return std::string(steps.thing(thing).name); }

std::string names_of_actions(const Steps& steps, int step) {
  std::string out;
  for (const std::string_view word : steps.fiche.steps[static_cast<std::size_t>(step)].actions) {
    out += out.empty() ? "" : ", ";
    out += word;
  }
  return out;
}

}  // namespace tamis::draw
