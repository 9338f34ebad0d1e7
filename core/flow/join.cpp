#include <algorithm>
#include <array>

#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// What is done to a thing before it goes in, apart from the rest.
constexpr std::array aside_actions = {std::string_view("soak"), std::string_view("bloom"), std::string_view("soften"),
                                      std::string_view("sift"), std::string_view("toast"), std::string_view("whip"),
                                      std::string_view("whisk"), std::string_view("zest"), std::string_view("grate"),
                                      std::string_view("chop"), std::string_view("dice"), std::string_view("peel"),
                                      std::string_view("wash"), std::string_view("weigh")};

/// A mark of the step at hand, and the thing it means now.
struct Meant {
  Node mark = fiche::none;
  int name = -1;
  int thing = -1;
  bool has_take = false;  ///< says how much
  bool mention = false;   ///< takes nothing more
};

class Join {
 public:
  explicit Join(Work& work) : work_(work), flow_(work.flow), document_(work.document) {}

  void run() {
    find_returns();
    Node component = fiche::none;
    for (std::size_t i = 0; i < flow_.steps.size(); ++i) {
      const int step = static_cast<int>(i);
      if (i == 0 || flow_.steps[i].component != component) {
        component = flow_.steps[i].component;
        open_component(component, step);
      }
      visit(step);
    }
    for (Thing& thing : flow_.things) {
      if (thing.kind == Thing::Kind::component) thing.maker = last_step_of(thing.node);
    }
    say_how_taken(work_);
  }

 private:
  Thing& thing(int index) { return flow_.things[static_cast<std::size_t>(index)]; }
  Step& at(int index) { return flow_.steps[static_cast<std::size_t>(index)]; }

  void find_returns() {
    for (Thing& thing : flow_.things) {
      if (thing.kind != Thing::Kind::ingredient) continue;
      const int name = work_.name_of(document_.get(thing.node, At::result));
      if (name >= 0) thing.returns = work_.names[static_cast<std::size_t>(name)].first;
    }
  }

  void open_component(Node component, int first_step) {
    line_ = side_ = base_ = outside_ = -1;
    branch_ = {};
    ends_.clear();
    tagged_ = false;
    for (std::size_t i = static_cast<std::size_t>(first_step);
         i < flow_.steps.size() && flow_.steps[i].component == component; ++i) {
      const auto [from, to] = work_.marks_of[i];
      tagged_ = tagged_ || from < to;
    }
    for (Total& total : flow_.components) {
      if (total.node == component) total.marked = tagged_;
    }
    if (component != fiche::none && !document_.get(component, At::from).empty()) add_outside(component);
  }

  /// What another file's component makes, before this file's own steps work on it.
  void add_outside(Node component) {
    outside_ = static_cast<int>(flow_.things.size());
    Thing& made = flow_.things.emplace_back();
    made.kind = Thing::Kind::result;
    made.node = made.component = component;
    made.name = document_.get(component, At::title);
  }

  void visit(int step) {
    if (at(step).aside) return;
    enter_branch(step);
    read_marks(step);
    if (prepares_aside(step)) {
      take_marked(step);
      give(step, false);
      if (line_ < 0) side_ = step;
      return;
    }
    const bool going_on = join_line(step);
    if (line_ >= 0 && at(step).before != line_) forget_mentions();
    if (!going_on && meant_.empty() && at(step).takes.empty() && work_.fiche.steps[idx(step)].makes.empty() && tagged_) {
      at(step).aside = true;
      return;
    }
    take_marked(step);
    give(step, going_on);
    leave(step);
  }

  static std::size_t idx(int i) { return static_cast<std::size_t>(i); }

  void enter_branch(int step) {
    const std::string_view branch = at(step).branch;
    if (branch == branch_) return;
    if (branch.empty()) {
      waiting_ends_ = ends_;
      ends_.clear();
    } else if (branch_.empty()) {
      base_ = line_;
    } else {
      if (line_ >= 0) ends_.push_back(line_);
      line_ = base_;
    }
    branch_ = branch;
  }

  void leave(int step) {
    const bool other_batch = !at(step).branch.empty() && document_.get(at(step).node, At::branch).empty();
    if (!other_batch) line_ = step;
    side_ = -1;
    for (const int end : waiting_ends_) at(step).waits_for.push_back(end);
    waiting_ends_.clear();
  }

  // ---- what the marks mean
  void read_marks(int step) {
    meant_.clear();
    const auto [from, to] = work_.marks_of[idx(step)];
    for (int i = from; i < to; ++i) {
      const Mark& mark = work_.marks[idx(i)];
      if (mark.name < 0) continue;
      Meant meant{mark.node, mark.name, meaning(mark.name, step), says_how_much(mark.node), false};
      const Thing& taken = thing(meant.thing);
      if (taken.kind == Thing::Kind::component && taken.node == at(step).component) continue;  // "the mousse", in it
      meant_.push_back(meant);
    }
    for (Meant& meant : meant_) {
      meant.mention = said_already(meant) || (line_ >= 0 && !may_stand_for_it(meant, step) && holds(line_, meant));
    }
  }

  int meaning(int name, int step) {
    const Name& known = work_.names[idx(name)];
    int found = known.current >= 0 ? known.current : known.first;
    // A name kept on another branch is not known on this one.
    while (thing(found).kind == Thing::Kind::result && thing(found).was >= 0 && thing(found).maker >= 0 &&
           !at(thing(found).maker).branch.empty() && !at(step).branch.empty() &&
           at(thing(found).maker).branch != at(step).branch) {
      found = thing(found).was;
    }
    return found;
  }

  bool says_how_much(Node mark) const {
    return document_.find(mark, At::take) != fiche::none || document_.child(mark, El::amount) != fiche::none;
  }

  /// The step starts afresh: what the step before holds is nothing to it.
  void forget_mentions() {
    for (Meant& meant : meant_) meant.mention = said_already(meant);
  }

  /// In this very sentence.
  bool said_already(const Meant& meant) const {
    for (const Meant& other : meant_) {
      if (&other == &meant) break;
      if (other.thing == meant.thing && !meant.has_take) return true;
    }
    if (meant.has_take) return false;
    return std::any_of(meant_.begin(), meant_.end(), [&](const Meant& other) {
      return &other != &meant && other.thing == meant.thing && other.has_take;
    });
  }

  /// Whether the work of a step already holds all of the thing meant.
  bool holds(int step, const Meant& meant) {
    if (meant.has_take || thing(meant.thing).uses.empty()) return false;
    const auto without_a_word = [&](int use) { return !says_how_much_of(flow_.uses[idx(use)]); };
    if (!std::all_of(thing(meant.thing).uses.begin(), thing(meant.thing).uses.end(), without_a_word)) return false;
    seen_.assign(flow_.steps.size(), false);
    return is_in(meant.thing, step);
  }
  bool says_how_much_of(const Use& use) const { return use.mark != fiche::none && says_how_much(use.mark); }

  /// A result beside what comes of it in one mark, or that a step made only if need be goes back to.
  bool may_stand_for_it(const Meant& meant, int step) {
    if (thing(meant.thing).kind != Thing::Kind::result) return false;
    return at(step).optional || std::any_of(meant_.begin(), meant_.end(), [&](const Meant& other) {
      return &other != &meant && other.mark == meant.mark && thing(other.thing).kind == Thing::Kind::result;
    });
  }

  bool is_in(int wanted, int step) {
    if (step < 0 || seen_[idx(step)]) return false;
    seen_[idx(step)] = true;
    for (const int use : at(step).takes) {
      const int taken = flow_.uses[idx(use)].thing;
      if (taken == wanted || is_in(wanted, thing(taken).maker)) return true;
    }
    return false;
  }

  // ---- going on
  [[nodiscard]] bool has_marks() const {
    return std::any_of(meant_.begin(), meant_.end(), [](const Meant& meant) { return !meant.mention; });
  }

  /// A result spoken of again starts afresh with what another step awaits; an ingredient is only a way of speaking.
  [[nodiscard]] bool names_a_result() {
    return std::any_of(meant_.begin(), meant_.end(), [&](const Meant& meant) {
      return thing(meant.thing).kind == Thing::Kind::result;
    });
  }

  /// The step prepares one thing that a later step of the component takes again.
  bool prepares_aside(int step) {
    const fiche::Step& read = work_.fiche.steps[idx(step)];
    if (!read.makes.empty()) return false;
    const Meant* only = nullptr;
    for (const Meant& meant : meant_) {
      if (meant.mention || meant.has_take) return false;
      if (!is_matter(meant.thing)) continue;
      if (only != nullptr) return false;
      only = &meant;
    }
    if (only == nullptr || thing(only->thing).kind == Thing::Kind::component) return false;
    if (thing(only->thing).kind == Thing::Kind::result && thing(only->thing).maker == line_) return false;
    if (!taken_later(only->name, step)) return false;
    return line_ >= 0 || sets(only->thing) ||
           std::any_of(read.actions.begin(), read.actions.end(), [](std::string_view action) {
             return std::find(aside_actions.begin(), aside_actions.end(), action) != aside_actions.end();
           });
  }

  /// Counts, and is more than the water that something soaks in.
  bool is_matter(int index) {
    const Thing& known = thing(index);
    if (!known.counts) return false;
    return known.ingredient < 0 || work_.fiche.ingredients[idx(known.ingredient)].food_id != "water";
  }
  bool sets(int index) {
    const Thing& known = thing(index);
    if (known.ingredient < 0) return false;
    const food::Food* food = work_.fiche.ingredients[idx(known.ingredient)].food;
    return food != nullptr && food->role == food::Role::setting;
  }

  bool taken_later(int name, int step) {
    for (auto taker = std::upper_bound(work_.takers.begin(), work_.takers.end(), std::pair(name, step));
         taker != work_.takers.end() && taker->first == name; ++taker) {
      if (at(taker->second).component == at(step).component) return true;
    }
    return false;
  }

  /// Takes what the step before made, if the step goes on from it.
  bool join_line(int step) {
    if (line_ < 0 && outside_ >= 0 && !at(step).aside) {
      add_use(outside_, step, fiche::none);
      outside_ = -1;
      return true;
    }
    const int from = line_ >= 0 ? line_ : side_;
    if (from < 0) return false;
    for (const Meant& meant : meant_) {
      if (!meant.mention && thing(meant.thing).kind == Thing::Kind::result && thing(meant.thing).maker == from) {
        at(step).before = from;
        return false;
      }
    }
    if (has_marks() && line_ < 0) return false;
    if ((has_marks() || names_a_result()) && line_ >= 0 && starts_afresh(step)) return false;
    at(step).before = from;
    const std::vector<int> gives = at(from).gives;
    for (const int given : gives) add_use(given, step, fiche::none);
    return true;
  }

  bool starts_afresh(int step) {
    const std::vector<int>& gives = at(line_).gives;
    return std::any_of(gives.begin(), gives.end(), [&](int given) {
      return divides(given) || (!thing(given).id.empty() && spoken_for(thing(given).id, step));
    });
  }

  /// Of a step that takes an ingredient alone of which steps take parts.
  bool divides(int given) {
    if (thing(given).was >= 0) return false;
    const std::vector<int>& takes = at(line_).takes;
    return takes.size() == 1 && has_taken_parts(flow_.uses[idx(takes.front())].thing);
  }

  bool has_taken_parts(int whole) {
    for (std::size_t i = idx(whole) + 1; i < flow_.things.size() && flow_.things[i].was == whole; ++i) {
      const int name = work_.name_of(flow_.things[i].id);
      if (flow_.things[i].kind == Thing::Kind::part && name >= 0 && is_taken(name)) return true;
    }
    return false;
  }
  [[nodiscard]] bool is_taken(int name) const {
    const auto taker = std::lower_bound(work_.takers.begin(), work_.takers.end(), std::pair(name, -1));
    return taker != work_.takers.end() && taker->first == name;
  }

  /// Another step takes it by that name.
  bool spoken_for(std::string_view id, int step) {
    const int name = work_.name_of(id);
    bool elsewhere = false;
    for (auto taker = std::lower_bound(work_.takers.begin(), work_.takers.end(), std::pair(name, -1));
         taker != work_.takers.end() && taker->first == name; ++taker) {
      if (taker->second == step || taker->second == line_) continue;
      if (at(taker->second).component == at(step).component) return true;
      elsewhere = true;
    }
    if (!elsewhere) return false;
    if (!work_.fiche.steps[idx(step)].makes.empty()) return true;
    const Node component = at(step).component;
    const int own = component == fiche::none ? -1 : work_.name_of(document_.get(component, At::id));
    return own >= 0 && is_taken(own);
  }

  // ---- taking
  void take_marked(int step) {
    for (const Meant& meant : meant_) {
      if (meant.mention || holds_otherwise(step, meant)) continue;
      const int use = add_use(meant.thing, step, meant.mark);
      if (second_of_a_choice(meant.thing)) flow_.uses[idx(use)].instead = true;
      divide(meant, step);
    }
    choose_among_results(step);
  }

  /// What the other marks of the step take already holds it.
  bool holds_otherwise(int step, const Meant& meant) {
    if (meant.has_take || thing(meant.thing).uses.empty()) return false;
    return std::any_of(meant_.begin(), meant_.end(), [&](const Meant& other) {
      if (&other == &meant || other.mention || other.mark == meant.mark) return false;
      const Thing& taken = thing(other.thing);
      return taken.kind == Thing::Kind::result && taken.maker >= 0 && taken.maker != step && holds(taken.maker, meant);
    });
  }

  int add_use(int index, int step, Node mark) {
    const int made = static_cast<int>(flow_.uses.size());
    Use& use = flow_.uses.emplace_back();
    use.thing = index;
    use.step = step;
    use.mark = mark;
    use.how = mark == fiche::none ? Use::How::carried : Use::How::marked;
    thing(index).uses.push_back(made);
    at(step).takes.push_back(made);
    return made;
  }

  bool second_of_a_choice(int index) {
    if (!thing(index).second_choice) return false;
    const Node choice = document_.parent(thing(index).node);
    for (int i = index - 1; i >= 0 && document_.parent(thing(i).node) == choice; --i) {
      const int name = work_.name_of(thing(i).id);
      if (thing(i).kind == Thing::Kind::ingredient && name >= 0 && is_taken(name)) return true;
    }
    return false;
  }

  void divide(const Meant& meant, int step) {
    if (meant.has_take || thing(meant.thing).kind != Thing::Kind::ingredient) return;
    for (std::size_t i = idx(meant.thing) + 1; i < flow_.things.size() && flow_.things[i].was == meant.thing; ++i) {
      Thing& part = flow_.things[i];
      if (part.kind == Thing::Kind::part && part.maker < 0) part.maker = step;
    }
  }

  /// Of results in one mark: those that branches make stand for each other, and so do a result and what comes of it.
  void choose_among_results(int step) {
    const std::vector<int>& takes = at(step).takes;
    for (std::size_t i = 1; i < takes.size(); ++i) {
      Use& later = flow_.uses[idx(takes[i])];
      Use& earlier = flow_.uses[idx(takes[i - 1])];
      if (later.mark == fiche::none || later.mark != earlier.mark) continue;
      const int a = thing(earlier.thing).maker;
      const int b = thing(later.thing).maker;
      if (a < 0 || b < 0 || thing(later.thing).kind != Thing::Kind::result) continue;
      seen_.assign(flow_.steps.size(), false);
      const bool ways = !at(a).branch.empty() && !at(b).branch.empty() && at(a).branch != at(b).branch;
      if (ways) {
        later.instead = true;
      } else if (is_in(earlier.thing, b)) {
        (at(b).optional ? later : earlier).instead = true;
      }
    }
  }

  // ---- giving
  void give(int step, bool going_on) {
    const std::vector<std::string_view>& makes = work_.fiche.steps[idx(step)].makes;
    if (!makes.empty()) return give_named(step);
    if (going_on) {
      std::vector<int> kept;
      for (const int use : at(step).takes) {
        const Use& taken = flow_.uses[idx(use)];
        if (taken.mark == fiche::none && !thing(taken.thing).id.empty()) kept.push_back(taken.thing);
      }
      for (const int was : kept) give_again(step, was);
      if (!kept.empty()) return;
    } else if (const int alone = taken_alone(step); alone >= 0) {
      return give_again(step, alone);
    }
    give_new(step, {});
  }

  void give_named(int step) {
    int result = work_.results_of[idx(step)];
    for (const std::string_view id : work_.fiche.steps[idx(step)].makes) {
      at(step).gives.push_back(result);
      if (const int name = work_.name_of(id); name >= 0) work_.names[idx(name)].current = result;
      ++result;
    }
  }

  /// The only matter the step takes, when it has a name and is taken whole.
  int taken_alone(int step) {
    int alone = -1;
    for (const int use : at(step).takes) {
      const Use& taken = flow_.uses[idx(use)];
      if (!is_matter(taken.thing)) continue;
      if (alone >= 0 || says_how_much_of(taken)) return -1;
      alone = taken.thing;
    }
    if (alone < 0 || thing(alone).id.empty() || thing(alone).kind == Thing::Kind::component) return -1;
    if (thing(alone).kind == Thing::Kind::ingredient && has_taken_parts(alone)) return -1;
    const int name = work_.name_of(thing(alone).id);
    return thing(alone).kind == Thing::Kind::result || taken_later(name, step) ? alone : -1;
  }

  void give_again(int step, int was) {
    const int made = give_new(step, thing(was).id);
    thing(made).name = thing(was).name;
    thing(made).was = was;
    if (const int name = work_.name_of(thing(was).id); name >= 0) work_.names[idx(name)].current = made;
  }

  int give_new(int step, std::string_view id) {
    const int made = static_cast<int>(flow_.things.size());
    Thing& result = flow_.things.emplace_back();
    result.kind = Thing::Kind::result;
    result.id = result.name = id;
    result.node = at(step).node;
    result.component = at(step).component;
    result.maker = step;
    at(step).gives.push_back(made);
    return made;
  }

  // ---- at the end
  int last_step_of(Node component) {
    for (std::size_t i = flow_.steps.size(); i > 0; --i) {
      const Step& step = flow_.steps[i - 1];
      if (step.component == component && !step.aside) return step.index;
    }
    return -1;
  }

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

}  // namespace

void join_steps(Work& work) { Join(work).run(); }

}  // namespace tamis::flow
