#ifndef CORE_FLOW_AMOUNTS_H
#define CORE_FLOW_AMOUNTS_H

#include <optional>
#include <vector>

#include "core/flow/work.h"

namespace tamis::flow {

/// What an ingredient's line, or a part, weighs as it goes in.
struct Line {
  std::optional<Grams> grams;
  bool trace = false;  ///< counts as nothing: words, a pinch, three leaves of a spice
  /// Given by something that the steps make: so many times the mass of that thing (index), or what is missing to a total.
  int follows = -1;
  double times = 1;
  std::vector<int> tops_up;          ///< things it is filled up with to `total`
  std::optional<Grams> total;
};

/// Reads the lines of a fiche into grams:
///   - a mass as it is written, "about" ±5 %; where the line states two measures, the mass;
///   - a volume by the density of the food as prepared, within what filling a cup spreads;
///   - a count by the mass of a piece, ±5 % for eggs, which are sorted by law, ±20 % for others (common practice);
///   - words by what the house means by them;
///   - per portion, piece or mould times how many the yield states;
///   - weighed as bought, or before, and then peeled, stoned, boned: between the trim that the table has and none;
///   - as-much-as and for-each from the other line, over as many lines as that takes, unless they go round;
///   - of a part its share, else what the food's table splits into.
class Amounts {
 public:
  explicit Amounts(const Work& work);
  /// One for each of Flow::things; empty lines for what is no ingredient or part.
  const std::vector<Line>& read();

 private:
  struct Measured;
  Line& line(int thing);
  void read_line(int thing);
  void read_ingredient(int thing);
  void read_part(int thing);
  [[nodiscard]] const measure::Amount* figure_of(const fiche::Statement* said) const;
  [[nodiscard]] fiche::Node override_of(int thing) const;
  [[nodiscard]] std::optional<Measured> measured(int thing) const;
  void as_much_as(int thing, int other);
  void for_each(int thing, int other);
  void top_up(int thing);
  [[nodiscard]] std::optional<double> how_many(int thing, std::string_view per) const;
  [[nodiscard]] const fiche::Statement* stated(int thing, fiche::At at) const;
  [[nodiscard]] double number(int thing, fiche::At at, double otherwise) const;
  [[nodiscard]] const food::Food* food_of(int thing) const;
  [[nodiscard]] int named(std::string_view id) const;

  const Work& work_;
  std::vector<Line> lines_;
  std::vector<signed char> state_;  // 0 not read, 1 being read, 2 read
};

/// Words of preparation that take something off a food: peeled, stoned, boned.
bool loses_trim(std::string_view prep);

/// Grams of an amount of a food: `prep` and `size` choose the form that is weighed. Empty when the table cannot tell.
std::optional<Grams> grams_of(const measure::Amount& amount, const food::Food* food, std::string_view prep,
                              std::string_view size);

/// Grams of a use that says an amount ("125 g"); a volume of what the fiche makes by any density a kitchen has. Empty
/// when the table cannot tell.
std::optional<Grams> amount_taken(const Work& work, const Use& use);

}  // namespace tamis::flow

#endif
