#ifndef CORE_CHANGE_COMPARE_FIGURE_H
#define CORE_CHANGE_COMPARE_FIGURE_H

#include <optional>
#include <string>
#include <vector>

#include "core/change/compare.h"
#include "core/change/compare_side.h"
#include "core/fiche/fiche.h"
#include "core/measure/amount.h"

namespace tamis::change {

/// From where to where a figure reaches, in base units (g, ml, mm, pieces, s, °C); an open end is infinite.
struct Ends {
  double low = 0;
  double high = 0;
};

/// One figure as the comparison looks at it.
struct Measured {
  std::string text;                 ///< as written, white space folded
  measure::Kind kind = measure::Kind::count;
  std::optional<Ends> ends;         ///< empty for words that the kitchen gives no meaning, and for lengths "12 × 20 cm"
  std::vector<Ends> sides;          ///< of lengths
  bool about = false;
  bool oven = false;
  bool fahrenheit = false;          ///< written in °F
  const food::Food* food = nullptr; ///< what it is an amount of
  std::optional<double> grams_per_ml;
  std::string words;                ///< of a fraction, "the rest", or what could not be read: compared as words
};
Measured figure_of(const Side& side, const fiche::Statement& statement);

/// How the new figure stands to the old one.
struct Relation {
  enum class Way : unsigned char {
    same, more, less,
    narrower, wider,   ///< one end or both moved in, or out
    measured_otherwise,///< the other of mass and volume, as much as the food's density can tell
    other
  } way = Way::same;
  double by = 0;       ///< base units that both ends, or the only one, moved by; 0 when they moved differently
  double times = 0;    ///< middle over middle; 0 where there is none
};

/// `factor`: what the old figure is multiplied with before it is looked at; 1 for anything but a scaled amount.
Relation relate(const Measured& was, const Measured& is, double factor, const Side& from, const Side& to);

/// Whether the two kitchens can not tell `is` from `was` × `factor`. Where an amount was scaled, it may also be off by
/// what a kitchen rounds away then: 1 %, or half a piece (common practice).
bool same_within(double was, double is, double factor, const Measured& figure, const Side& from, const Side& to);

/// What bounds a figure where it stands: "2 days" of keeping are at most two days.
enum class Bound : unsigned char { as_written, at_least, at_most, limit };
/// Whether a condition lets less pass now, or more. Of `limit`, an exact temperature is a least one from 50 °C up and a
/// highest one to 25 °C.
Change::Hold hold_of(const Measured& was, const Measured& is, Bound bound);

}  // namespace tamis::change

#endif
