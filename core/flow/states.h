#ifndef CORE_FLOW_STATES_H
#define CORE_FLOW_STATES_H

#include <array>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/fiche/library.h"
#include "core/flow/actions.h"
#include "core/flow/celsius.h"
#include "core/flow/flow.h"
#include "core/flow/matter.h"
#include "core/food/thermal.h"

namespace tamis::flow {

// What becomes of the food
//
// Each way of Flow::ways is walked once, step by step; what is given is the hull of them. Where a figure is open, its
// bounds are carried along, not a guess: a gram of an unknown spice in two kilograms of stew leaves the stew known to
// a two-thousandth, an unknown garnish leaves the plate unknown. What each action does is said in actions.inc.
//
// Mass and composition. What the fiche states as lost is lost: by evaporation (reduce-by, reduce-to, cooking) it is
// water, and what alcohol went with it; in bowl, pan, frame and trim it is the mix itself; in a sieve, and of what was
// taken out, nobody knows. Where a step loses without a word, the most that actions.inc lets it lose is kept as a bound.
// What is divided (makes="a b") is known apart only where dividing changes nothing: portion, cut.
//
// A food that neither table nor kitchen knows, or that is not reported in full, is anything from nothing to all of the
// part that is open.

/// Why a figure is open, or not narrower.
struct Why {
  enum class Reason : unsigned char {
    nothing,         ///< it is known
    food_unknown,    ///< thing: neither the table nor the kitchen knows the food
    not_reported,    ///< thing: the table does not have all of its composition
    range,           ///< the fiche itself leaves a range or a choice
    amount_unknown,  ///< thing: the fiche does not let us know how much
    file,            ///< thing: it is made in another file, which does not tell
    divided,         ///< thing: one of several that a step divides into
    circle,          ///< the steps go round
    no_action,       ///< step: says nothing of what is done
    action_unknown,  ///< step: a word that actions.inc does not have
    steam,           ///< step: how much boils or bakes off is not stated
    juice,           ///< step: how much runs off is not stated
    sieve,           ///< step: how much stays behind is not stated
    trim,            ///< step: how much is cut off is not stated
    swelling,        ///< step: how much water it takes up or gives off is not stated
    frying,          ///< step: how much fat it takes up is not stated
    too_much_lost,   ///< step: more is said to boil off than there is water
    removed,         ///< step: what is taken out has soaked
    heated,          ///< step: heated, without a figure
    oven,            ///< step: baked, without a figure for the inside
    fat_heat,        ///< step: fried, without a figure for the inside
    sugar_heat,      ///< step: cooked past boiling, without a figure
    tempered,        ///< step: tempered, without a figure
    waited,          ///< step: how far it cools or warms meanwhile is not stated
    kept,            ///< thing: as it is kept, and no figure says how cold
    kneaded,         ///< step: warmed by the work, how far is not stated
    solid,           ///< step: how much of the fat or ice in it had to melt is not known
  };
  Reason reason = Reason::nothing;
  int thing = -1;  ///< index into Flow::things
  int step = -1;   ///< index into Flow::steps
  [[nodiscard]] bool any() const { return reason != Reason::nothing; }
  friend bool operator==(const Why&, const Why&) = default;
};



/// The heat that all of it has had, by what the fiche states or its words mean.
struct HeatHad {
  double celsius = -open_end;  ///< the highest that all of it has surely reached
  double seconds = 0;          ///< how long it was surely held there, as stated
  friend bool operator==(const HeatHad&, const HeatHad&) = default;
};

/// What is known of a thing at one moment.
struct State {
  std::optional<Range> grams;
  Matter matter;                             ///< hull; of what went in (see Matter)
  std::array<Range, constituents> shares{};  ///< of what is there, 0 to 1; from 0 to 1 where nothing is known
  Range kcal_per_g;
  Range celsius{-open_end, open_end};        ///< of the food, in its core; an end that is not known is infinite
  Why why_grams, why_shares, why_celsius;    ///< what keeps it from being exact
  HeatHad heat;
  Action::Air air = Action::Air::keeps;      ///< in: it was beaten or raised, and not knocked back since
  std::optional<double> depth_mm;            ///< as stated
  fiche::Node depth = fiche::none;           ///< where that stands
  fiche::Node vessel = fiche::none;          ///< the mould or equipment it is in, as its tool mark says
  unsigned roles = 0;                        ///< what foods are in it: has(food::Role)
  food::Allergens sure = 0, assumed = 0, may = 0;
  bool allergens_open = false;               ///< holds a food that nobody knows

  [[nodiscard]] bool has(food::Role role) const { return (roles & (1U << static_cast<unsigned>(role))) != 0; }
  [[nodiscard]] const Range& share(Constituent c) const { return shares[static_cast<std::size_t>(c)]; }
  /// Within a tenth of the whole: narrow enough to be told as a figure.
  [[nodiscard]] bool knows(Constituent c) const { return share(c).width() <= 0.1; }
  [[nodiscard]] bool knows_shares() const { return knows(Constituent::water) && knows(Constituent::fat) && knows(Constituent::sugars); }
  /// Within 10 °C.
  [[nodiscard]] bool knows_temperature() const { return celsius.high - celsius.low <= 10; }
};

/// What it is made of, as models of heat take it: the middle of each range, brought to 1. Empty where too much is open
/// (State::knows of water, fat, protein or the carbohydrates).
std::optional<food::Makeup> makeup_of(const State& state);

/// The states of one fiche, by the indices of its flow.
struct States {
  std::vector<State> things;  ///< ingredients as they start; results as their step leaves them; components in the end
  std::vector<State> uses;    ///< as they go in
  std::vector<State> steps;   ///< all that comes of a step together
  /// How much of an ingredient (a thing), in g as it went in, is in a gram of what comes of a step by what the fiche says
  /// is lost: 10 g of wine in a gram of its glaze. Empty where that is not known.
  [[nodiscard]] std::optional<Range> held(int step, int thing) const;

  // How held() finds it.
  std::vector<int> line_of;       ///< of each thing its place among the lines; -1 for what is no line
  std::vector<Range> lines;       ///< of step s: [s * line count + place]
  std::vector<bool> apart;        ///< of each step: something in it was divided or parted, nobody knows how
};

/// `flow` is that of the fiche. Other files are opened through the library where the fiche takes from them.
States read_states(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library);

/// "how much goes off as steam in step 3 is not stated": for a sentence, without a stop. `here`: the step that is spoken
/// of, which is "here".
std::string tell(const Why& why, const fiche::Fiche& fiche, const Flow& flow, int here = -1);

}  // namespace tamis::flow

#endif
