#ifndef TAMIS_CORE_FLOW_FLOW_H
#define TAMIS_CORE_FLOW_FLOW_H

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "core/base/ratio.h"
#include "core/fiche/fiche.h"
#include "core/fiche/library.h"

namespace tamis::flow {

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
  int maker = -1;                       ///< index into Flow::steps, of a result, and of a component its last step
  bool counts = true;                   ///< is of the food: false for bath, boiling water, tin butter, bench flour
  std::optional<Grams> grams;           ///< all of it, as it goes in; empty where the fiche does not let us know
  std::vector<int> uses;                ///< indices into Flow::uses, in order of steps
};

/// One taking of a thing by a step.
struct Use {
  int thing = -1;                 ///< index into Flow::things
  int step = -1;                  ///< index into Flow::steps
  fiche::Node mark = fiche::none; ///< the use element; none: carried on from the step before, without a word
  enum class Take : unsigned char {
    all,       ///< nothing said, and no other step takes of it
    share,     ///< "half", "3 %", one of several takes of a divided thing
    amount,    ///< "125 g"
    rest,      ///< "the rest"
    unstated,  ///< several steps take of it and this one does not say how much
  } take = Take::all;
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
  std::vector<int> takes;          ///< indices into Flow::uses
  std::vector<int> gives;          ///< indices into Flow::things: named results, or one without a name
  std::vector<int> waits_for;      ///< steps that must have ended: makers of what it takes, `before`, `after`; sorted
  std::vector<Lost> losses;
  std::optional<Grams> in, out;    ///< all that goes in; what comes of it after losses by statement
};

/// What a component, or the whole fiche, comes to.
struct Total {
  fiche::Node node = fiche::none;  ///< the component; the fiche's root for the whole
  std::optional<Grams> out;
};

/// The graph of steps and results of one fiche, and the masses through it. Everything in document order; where steps
/// go in a circle, `circle` holds one such round and masses on it stay empty.
struct Flow {
  std::vector<Thing> things;
  std::vector<Use> uses;
  std::vector<Step> steps;
  std::vector<Total> components;   ///< in document order
  Total whole;
  std::vector<int> order;          ///< steps, each behind those it waits for; those on a circle are left out
  std::vector<int> circle;         ///< steps of one circle, each waits for the next, the last for the first
  [[nodiscard]] int thing_of(fiche::Node node) const;         ///< ingredient, part or component; -1 when none
  [[nodiscard]] int thing_named(std::string_view id) const;   ///< -1 when none; of several results of that name the first
  [[nodiscard]] int step_of(fiche::Node node) const;          ///< of a step element; -1 when none
};

/// Reads the graph of a fiche. Components and ingredients kept in other files are opened through the library; one that
/// cannot be opened is a thing without grams. Never fails: what cannot be known stays empty.
Flow read_flow(const fiche::Fiche& fiche, fiche::Library& library);

}  // namespace tamis::flow

#endif
