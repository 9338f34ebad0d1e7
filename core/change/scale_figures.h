#ifndef CORE_CHANGE_SCALE_FIGURES_H
#define CORE_CHANGE_SCALE_FIGURES_H

#include <optional>
#include <string>
#include <vector>

#include "core/change/figure.h"
#include "core/change/scale_work.h"
#include "core/change/subject.h"

namespace tamis::change {

/// A column's figures: where the amount and its companions are read from.
struct Column {
  fiche::Node ingredient = fiche::none;
  fiche::Node from = fiche::none;  ///< the ingredient itself, or its amount for a batch
  base::Ratio factor = 1;
};

/// The amounts of the new batch, exact times the factor, rounded to what the kitchen can measure: the work of
/// scale_figures(). Ingredients are in scale_figures.cpp, masses and volumes in scale_measured.cpp, counts and packs in
/// scale_counts.cpp, components of other files in scale_taken.cpp, what stands in sentences and losses in scale_inside.cpp,
/// yields in scale_yields.cpp.
class Figures {
 public:
  explicit Figures(ScaleWork& work) : work_(work), document_(work.document), fiche_(work.author) {}

  void run();

 private:
  // ---- ingredients
  [[nodiscard]] Column column_of(const fiche::Ingredient& one) const;
  void ingredient(const fiche::Ingredient& one);
  void copy_packs(const Column& column);
  /// The figure of one place, for the new batch.
  void put(const Column& column, fiche::At at);
  void write(fiche::Node node, fiche::At at, const std::string& text);

  // ---- masses and volumes
  std::string measured(const fiche::Statement& said, const measure::Amount& amount, base::Ratio factor, const Subject& subject);
  static bool comes_to_nothing(const Figure& figure);
  void say_rounding(const fiche::Statement& said, const std::string& text, const std::vector<measure::Rounded>& ends,
                    const Subject& subject, base::Ratio factor);

  // ---- counts
  static std::vector<measure::Quantity> one_quantity(base::Ratio value, const measure::Unit& unit) { return {{value, &unit}}; }
  [[nodiscard]] measure::Amount rounded_count(const measure::Amount& amount, base::Ratio factor, const food::Food* food) const;
  void count(const Column& column, const fiche::Statement& said, const Subject& subject);
  [[nodiscard]] bool whole_eggs() const;
  /// Grams in one, by the author's own weight where it is given, else by the table.
  [[nodiscard]] std::optional<base::Ratio> grams_of_one(const Column& column, const fiche::Statement& said,
                                                        const Subject& subject) const;
  void eggs(const Column& column, const fiche::Statement& said, const Subject& subject, const measure::Amount& made,
            base::Ratio exact);

  // ---- packs
  void packs(const Column& column, const fiche::Statement& said);

  // ---- a component of another file
  void taken_component(fiche::Node component);
  static std::string share_text(base::Ratio share) { return share == 1 ? "all" : share.text(); }
  /// Grams that the other file makes.
  [[nodiscard]] std::optional<base::Ratio> made_there(fiche::Node component) const;

  // ---- sentences, losses, takes
  [[nodiscard]] bool grows(const fiche::Statement& statement) const;
  void other(const fiche::Statement& statement);
  [[nodiscard]] bool in_other_yield(fiche::Node loss) const;
  /// A loss of the first yield belongs to the new batch's; of a batch that the author states it stays as stated.
  [[nodiscard]] fiche::Node written_loss(fiche::Node loss) const;
  /// The figure that the words of a use repeat ("1 lb of the dough").
  void replace_in_words(fiche::Node use, std::string_view old, std::string_view now);

  // ---- yields
  void makes(fiche::Node yield);
  /// Whole portions: what falls short of one is not promised.
  [[nodiscard]] std::string number_text(base::Ratio count, fiche::At at) const;
  void words(fiche::Node yield, fiche::Node to);

  ScaleWork& work_;
  fiche::Document& document_;
  const fiche::Fiche& fiche_;
};

}  // namespace tamis::change

#endif
