#ifndef CORE_FLOW_WORK_H
#define CORE_FLOW_WORK_H

#include <string_view>
#include <utility>
#include <vector>

#include "core/flow/flow.h"

namespace tamis::flow {

/// A use mark in a step's own sentence. One of several ids of a mark is one entry.
struct Mark {
  fiche::Node node = fiche::none;
  int step = -1;
  int name = -1;  ///< index into Work::names; -1: nothing of that id
};

/// An id that a mark can take, and the thing it means at this point of the walk through the steps.
struct Name {
  std::string_view id;
  int first = -1;    ///< index into Flow::things
  int current = -1;  ///< the latest made so far; -1: not made yet
};

/// What the files of this folder hand on to each other while a flow is read.
struct Work {
  explicit Work(const fiche::Fiche& read) : fiche(read), document(*read.document) {}

  const fiche::Fiche& fiche;
  const fiche::Document& document;
  Flow flow;
  std::vector<Name> names;                    ///< sorted by id
  std::vector<Mark> marks;                    ///< in document order
  std::vector<std::pair<int, int>> marks_of;  ///< of each step: from, to in `marks`
  std::vector<int> results_of;                ///< of each step, its first named result in Flow::things
  std::vector<std::pair<int, int>> takers;    ///< (name, step) of every mark, sorted
  fiche::Node first_yield = fiche::none;
  /// Where another fiche's component takes this one in: that fiche and its component, whose overrides hold here.
  const fiche::Fiche* around = nullptr;
  fiche::Node around_component = fiche::none;

  [[nodiscard]] int name_of(std::string_view id) const;  ///< -1 when none
};

/// Things that stand in the document: components, ingredients, parts, named results.
void list_things(Work& work);
/// Steps with what their attributes say, and the marks in their sentences.
void list_steps(Work& work);
/// Who takes what, and what comes of it.
void join_steps(Work& work);
/// How much each use takes, as far as it is said: Use::take and Use::share.
void say_how_taken(Work& work);
/// Ingredients that no mark takes, and components that a last one takes without a word.
void assume_uses(Work& work);
/// waits_for, order, circle.
void put_in_order(Work& work);
/// Grams of everything. `outside`: what each component kept in another file comes to, by its place in Fiche::components.
void weigh(Work& work, const std::vector<std::optional<Grams>>& outside);

}  // namespace tamis::flow

#endif
