#ifndef CORE_FLOW_FLOW_H
#define CORE_FLOW_FLOW_H

#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/ratio.h"
#include "core/fiche/fiche.h"
#include "core/fiche/library.h"

namespace tamis::flow {

// What a recipe says without saying it
//
// Going on. A step works on what the step before it in its component made, without a word. It starts afresh when it
// takes something by a mark, and what the step before made has a name that another step takes by that name. A step
// that takes by name what the step before made goes on with it, and leaves be what else that step made.
//   Where a step with marks would start afresh, but the name is taken only in another component, and nothing would
//   take what this step makes (it names nothing, and nobody takes its component), it goes on.
//   A step that only heats an oven handles no food: nobody goes on from it. The next step that bakes waits for it.
//   A step that prepares one thing aside ("soak the gelatine", and later "melt in the gelatine") is passed over by
//   the next: it goes on from the step before that one.
//   Steps of different branches go on from the step before the first of them; what follows, from the last.
//
// Names. A result keeps its name through steps that name nothing: those that go on from it, and those that take it
// alone by name. Each makes a thing of that name again; a mark means the latest one made so far.
//
// Taking. A mark with several ids takes them all, except
//   - of a choice only its first line that is named, and of variants only the one that is being made;
//   - of results that branches make, one; of a result and what an optional step makes of it, one.
// A second mark on the same thing, in one step or in a later one whose work already holds it, takes nothing more:
// prose speaks of "the sugar" as often as it wants. Marks in short, learner, why, done, rescue, gate, control, note
// take nothing: they speak of what the sentence does.
// An ingredient that no mark takes goes in where a sentence of its component names it; where no step of the component
// has marks (a draft), all of them go in at its first step. A last component without ingredients and without marks
// takes every component that nothing has taken.
//
// Parts. Where steps take parts of an ingredient (yolk and white, fruit and syrup), a step that takes all of it
// divides it: its parts come from that step.
//
// Masses. Two ways through the recipe are worked out and the hull of both is given: the least (low ends, nothing that
// is optional, the first of several branches, the last of the takers that do not say how much gets all of it) and the
// most (high ends, all that is optional, the last branch, the first taker gets all). With variants, each of them.
// The last result of a component weighs what its yield's losses leave, for whoever takes it. A loss that a step and a
// yield both state is one loss. A reduction is of all that the step holds on the least way, of the heaviest thing in it
// on the most. A volume of a result weighs between 0.5 and 1.35 g/ml. What is divided (makes="a b") has no mass of its
// own until all of it comes together again.
// A mass that the fiche does not let us know is empty, and so is what comes of it; amounts in words ("to taste") and
// rough ones (a pinch, 2 leaves of a spice without a mass) count as nothing.

/// Grams as a recipe states them; the ends are equal for an exact figure. Floating point: exactness stops here.
struct Grams {
  double low = 0;
  double high = 0;
  [[nodiscard]] double middle() const { return (low + high) / 2; }
};

/// Something a step can take: an ingredient, a part that an ingredient splits into, what an earlier step makes, or a
/// whole component (its last result; for one kept in another file, what that file's component makes).
struct Thing {
  enum class Kind : unsigned char { ingredient, part, result, component } kind = Kind::ingredient;
  std::string_view id;                  ///< "" when nothing names it
  std::string_view name;                ///< for a sentence: the author's name, the food's, the title, else the id
  fiche::Node node = fiche::none;       ///< the ingredient, part or component element; of a result, the step
  fiche::Node component = fiche::none;  ///< the component it belongs to
  int ingredient = -1;                  ///< index into Fiche::ingredients, of an ingredient or part
  int maker = -1;   ///< index into Flow::steps: of a result; of a component its last step; of a part the step that divides
  int was = -1;     ///< the thing whose name this result keeps; of a part, the ingredient
  int returns = -1; ///< of an ingredient that is a result come back (ingredient/@result): that thing
  int variant = -1; ///< which variant of its component it stands in, from 0; -1 in none
  bool counts = true;         ///< is of the food: false for bath, boiling water, tin butter, bench flour
  bool optional = false;      ///< the dish can be made without it
  bool second_choice = false; ///< not the author's own line of a choice
  bool trace = false;         ///< an amount in words or of a rough measure: counts as nothing
  std::optional<Grams> grams; ///< all of it, as it goes in; empty where the fiche does not let us know
  std::vector<int> uses;      ///< indices into Flow::uses, in order of steps
};

/// One taking of a thing by a step.
struct Use {
  int thing = -1;                 ///< index into Flow::things
  int step = -1;                  ///< index into Flow::steps
  fiche::Node mark = fiche::none; ///< the use element; none: without a mark, see `how`
  enum class How : unsigned char {
    marked,
    carried,   ///< from the step before
    assumed,   ///< no mark takes it: a sentence names it, or nothing in the component is marked
  } how = How::marked;
  enum class Take : unsigned char {
    all,       ///< nothing said, and no other step takes of it
    share,     ///< "half", "3 %", one of several takes of a divided thing
    amount,    ///< "125 g"
    rest,      ///< "the rest"
    unstated,  ///< several steps take of it and this one does not say how much
  } take = Take::all;
  bool instead = false;           ///< stands for another of the same mark: not counted in the masses
  std::optional<base::Ratio> share;
  std::optional<Grams> grams;     ///< what goes in; empty when not known
};

/// What does not go on, by statement: loss elements, reduce-by / reduce-to, removes.
struct Lost {
  fiche::Node node = fiche::none;  ///< where it is said
  std::optional<Grams> grams;
};

struct Step {
  int index = -1;                  ///< index into Fiche::steps (the same as its own place in Flow::steps)
  fiche::Node node = fiche::none;
  fiche::Node component = fiche::none;
  int before = -1;                 ///< the step whose work it goes on with, by default the one before in its component
  bool aside = false;              ///< handles no food that goes on from here: heats an oven
  bool optional = false;           ///< optional, or only when something is so
  std::string_view branch;         ///< one of several ways; also the batch, of a step for another than the first yield
  std::vector<int> takes;          ///< indices into Flow::uses
  std::vector<int> gives;          ///< indices into Flow::things: named results, or one without a name
  std::vector<int> waits_for;      ///< steps that must have ended: makers of what it takes, `before`, `after`; sorted
  std::vector<Lost> losses;
  std::optional<Grams> in, out;    ///< all that goes in; what comes of it after losses by statement
};

/// What a component, a variant, or the whole fiche, comes to.
struct Total {
  fiche::Node node = fiche::none;  ///< the component or variant; the fiche's root for the whole
  std::optional<Grams> out;
  bool marked = false;             ///< of a component: a step of it has use marks
  bool taken = false;              ///< of a component: a step elsewhere takes it or a result of it
};

/// The masses on one way through the recipe, in g, by index; NaN where the fiche does not let us know. What does not
/// happen on it weighs nothing.
struct Masses {
  bool most = false;            ///< the most way; else the least
  int variant = 0;
  std::vector<double> things;   ///< of a result what comes of its step, for whoever takes it
  std::vector<double> uses;
  std::vector<double> in, out;  ///< of steps
  std::vector<double> lost;     ///< Step::losses, step after step
};

/// The graph of steps and results of one fiche, and the masses through it. Where steps go in a circle, `circle` holds
/// one such round and masses on it stay empty.
struct Flow {
  std::vector<Thing> things;       ///< components with their ingredients, then named results, then the others
  std::vector<Use> uses;
  std::vector<Step> steps;
  std::vector<Total> components;   ///< in document order
  std::vector<Total> variants;     ///< likewise; what the component comes to with it
  Total whole;
  std::vector<Masses> ways;        ///< the ways that the masses above are the hull of
  std::vector<int> order;          ///< steps, each behind those it waits for; those on a circle are left out
  std::vector<int> circle;         ///< steps of one circle, each waits for the next, the last for the first
  std::vector<std::pair<fiche::Node, int>> by_node;      ///< things with an element of their own, sorted
  std::vector<std::pair<std::string_view, int>> by_id;   ///< first thing of each id, sorted
  [[nodiscard]] int thing_of(fiche::Node node) const;         ///< ingredient, part or component; -1 when none
  [[nodiscard]] int thing_named(std::string_view id) const;   ///< -1 when none; of several results of that name the first
  [[nodiscard]] int step_of(fiche::Node node) const;          ///< of a step element; -1 when none
};

/// Reads the graph of a fiche. Components and ingredients kept in other files are opened through the library; one that
/// cannot be opened is a thing without grams. Never fails: what cannot be known stays empty.
Flow read_flow(const fiche::Fiche& fiche, fiche::Library& library);

}  // namespace tamis::flow

#endif
