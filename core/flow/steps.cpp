#include <algorithm>

#include "core/base/utf8.h"
#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// Calls `use` with each word between white space.
template <class Use>
void each_word(std::string_view text, Use use) {
  while (!(text = base::trimmed(text)).empty()) {
    const std::size_t end = std::min(text.find_first_of(" \t\n\r"), text.size());
    use(text.substr(0, end));
    text.remove_prefix(end);
  }
}

/// Elements of a step that speak of what its sentence does.
bool speaks_of(El el) {
  switch (el) {
    case El::gate:
    case El::control:
    case El::why:
    case El::done:
    case El::rescue:
    case El::short_:
    case El::learner:
    case El::note:
    case El::photo: return true;
    default: return false;
  }
}

bool in_sentence(const fiche::Document& document, Node mark, Node step) {
  for (Node n = document.parent(mark); n != step; n = document.parent(n)) {
    if (n == document.top() || speaks_of(document.el(n))) return false;
  }
  return true;
}

bool only_heats_an_oven(const fiche::Step& step) {
  return !step.actions.empty() && step.makes.empty() &&
         std::all_of(step.actions.begin(), step.actions.end(), [](std::string_view action) { return action == "preheat"; });
}

/// What is said of a step for another yield than the first counts as another way.
std::string_view other_batch(const Work& work, Node step) {
  const std::string_view batch = work.document.get(step, At::batch);
  if (batch.empty() || work.first_yield == fiche::none) return {};
  return batch == work.document.get(work.first_yield, At::id) ? std::string_view{} : batch;
}

void list_marks(Work& work, int step) {
  const fiche::Step& read = work.fiche.steps[static_cast<std::size_t>(step)];
  const int from = static_cast<int>(work.marks.size());
  for (const Node use : read.uses) {
    if (!in_sentence(work.document, use, read.node)) continue;
    each_word(work.document.get(use, At::of), [&](std::string_view id) {
      const int name = work.name_of(id);
      work.marks.push_back({use, step, name});
      if (name >= 0) work.takers.emplace_back(name, step);
    });
  }
  work.marks_of.emplace_back(from, static_cast<int>(work.marks.size()));
}

}  // namespace

void list_steps(Work& work) {
  const auto& steps = work.fiche.steps;
  work.flow.steps.reserve(steps.size());
  work.marks_of.reserve(steps.size());
  work.marks.reserve(2 * steps.size() + work.fiche.ingredients.size());
  for (std::size_t i = 0; i < steps.size(); ++i) {
    Step& made = work.flow.steps.emplace_back();
    made.index = static_cast<int>(i);
    made.node = steps[i].node;
    made.component = steps[i].component;
    made.aside = only_heats_an_oven(steps[i]);
    made.optional = work.document.get(made.node, At::optional) == "yes" || !work.document.get(made.node, At::when).empty();
    made.branch = work.document.get(made.node, At::branch);
    if (made.branch.empty()) made.branch = other_batch(work, made.node);
    list_marks(work, made.index);
  }
  std::sort(work.takers.begin(), work.takers.end());
}

}  // namespace tamis::flow
