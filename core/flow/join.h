#ifndef CORE_FLOW_JOIN_H
#define CORE_FLOW_JOIN_H

#include <string_view>
#include <vector>

#include "core/flow/work.h"

namespace tamis::flow {

/// A mark of the step at hand, and the thing it means now.
struct Meant {
  fiche::Node mark = fiche::none;
  int name = -1;
  int thing = -1;
  bool has_take = false;  ///< says how much
  bool mention = false;   ///< takes nothing more
};

/// Who takes what, and what comes of it: the work of join_steps(). Components and branches are in join.cpp, what the marks
/// mean in join_marks.cpp, whether a step goes on from the one before in join_line.cpp, what it takes in join_takes.cpp and
/// what it gives in join_gives.cpp.
class Join {
 public:
  explicit Join(Work& work) : work_(work), flow_(work.flow), document_(work.document) {}

  void run();

 private:
  static std::size_t idx(int i) { return static_cast<std::size_t>(i); }
  Thing& thing(int index) { return flow_.things[static_cast<std::size_t>(index)]; }
  Step& at(int index) { return flow_.steps[static_cast<std::size_t>(index)]; }
  void find_returns();
  void open_component(fiche::Node component, int first_step);
  /// What another file's component makes, before this file's own steps work on it.
  void add_outside(fiche::Node component);
  void visit(int step);
  void enter_branch(int step);
  void leave(int step);

  // ---- what the marks mean
  void read_marks(int step);
  int meaning(int name, int step);
  [[nodiscard]] bool says_how_much(fiche::Node mark) const;
  /// The step starts afresh: what the step before holds is nothing to it.
  void forget_mentions();
  /// In this very sentence.
  [[nodiscard]] bool said_already(const Meant& meant) const;
  /// Whether the work of a step already holds all of the thing meant.
  bool holds(int step, const Meant& meant);
  [[nodiscard]] bool says_how_much_of(const Use& use) const { return use.mark != fiche::none && says_how_much(use.mark); }
  /// A result beside what comes of it in one mark, or that a step made only if need be goes back to.
  bool may_stand_for_it(const Meant& meant, int step);
  bool is_in(int wanted, int step);

  // ---- going on
  [[nodiscard]] bool has_marks() const;
  /// A result spoken of again starts afresh with what another step awaits; an ingredient is only a way of speaking.
  [[nodiscard]] bool names_a_result();
  /// The step prepares one thing that a later step of the component takes again.
  bool prepares_aside(int step);
  /// Counts, and is more than the water that something soaks in.
  bool is_matter(int index);
  bool sets(int index);
  bool taken_later(int name, int step);
  /// Takes what the step before made, if the step goes on from it.
  bool join_line(int step);
  bool starts_afresh(int step);
  /// Of a step that takes an ingredient alone of which steps take parts.
  bool divides(int given);
  bool has_taken_parts(int whole);
  [[nodiscard]] bool is_taken(int name) const;
  /// Another step takes it by that name.
  bool spoken_for(std::string_view id, int step);

  // ---- taking
  void take_marked(int step);
  /// What the other marks of the step take already holds it.
  bool holds_otherwise(int step, const Meant& meant);
  int add_use(int index, int step, fiche::Node mark);
  bool second_of_a_choice(int index);
  void divide(const Meant& meant, int step);
  /// Of results in one mark: those that branches make stand for each other, and so do a result and what comes of it.
  void choose_among_results(int step);

  // ---- giving
  void give(int step, bool going_on);
  void give_named(int step);
  /// The only matter the step takes, when it has a name and is taken whole.
  int taken_alone(int step);
  void give_again(int step, int was);
  int give_new(int step, std::string_view id);

  // ---- at the end
  int last_step_of(fiche::Node component);

  Work& work_;
  Flow& flow_;
  const fiche::Document& document_;
  int line_ = -1;     // the step whose work lies open
  int side_ = -1;     // the step that prepared something aside, while nothing lies open
  int base_ = -1;     // the line before the branches
  int outside_ = -1;  // what another file's component makes, until a step takes it
  bool tagged_ = false;
  std::string_view branch_;
  std::vector<int> ends_, waiting_ends_;
  std::vector<Meant> meant_;
  std::vector<bool> seen_;
};

}  // namespace tamis::flow

#endif
