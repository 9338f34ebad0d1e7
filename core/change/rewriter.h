#ifndef CORE_CHANGE_REWRITER_H
#define CORE_CHANGE_REWRITER_H

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/change/figure.h"
#include "core/change/subject.h"
#include "core/change/work.h"

namespace tamis::change {

using Amounts = std::vector<measure::Amount>;

/// A figure chosen for a place, and the words for it.
struct Choice {
  Amounts amounts;
  std::string text;
  bool own = false;  ///< the author's words, not to be changed
};

/// What stands in one element (or attribute): the author's figure, the second one, and what they are of.
struct Pair {
  const fiche::Statement* text = nullptr;
  const fiche::Statement* also = nullptr;
  Amounts figure, second;  ///< second is empty when there is none that can be read
  Subject subject;
  const Swap* swap = nullptr;
};

/// A pair on its way: the text's figure, or another oven's.
struct Place {
  Pair pair;
  std::optional<Choice> text;
  std::optional<int> shift;
};

/// Every figure of a text stands in this system.
bool all_stand_in(const Amounts& amounts, measure::System system);

/// Rewrites the figures of a document: the work of rewrite_figures(). A figure has up to two places: the text (or an
/// attribute) and also. First the text's figure is chosen: the author's own where one stands in the wanted system and kind,
/// else a conversion. Then also's, which must say more than the text. convert.h tells the rules; the author's document
/// (Work::author) is read, the work's document written. What is there and what is written is in rewrite.cpp, which figure is
/// chosen in rewrite_choose.cpp, how one is converted in rewrite_figure.cpp.
class Rewriter {
 public:
  explicit Rewriter(Work& work) : work_(work), units_(work.wish.units) {}

  void run();

 private:
  using By = ConvertWish::By;

  // ---- what is there
  bool is_ours(const fiche::Statement& statement);
  [[nodiscard]] Pair pair_of(const fiche::Statement& statement) const;
  static Choice own_words(const fiche::Statement& statement, const Amounts& amounts);
  /// The words mean the same in the converted document.
  [[nodiscard]] bool stays_readable(const fiche::Statement& statement, const Amounts& amounts) const;

  // ---- conversions
  /// The exact way from a kind to another (or the same), for this food and what may stand in for it. Empty where a
  /// density is wanted and not known.
  [[nodiscard]] std::optional<Passage> passage(const Pair& pair, measure::Kind from, measure::Kind to) const;
  [[nodiscard]] Target target(const Pair& pair, measure::System units) const;
  std::optional<Choice> converted(const Pair& pair, const fiche::Statement& from, const Amounts& amounts,
                                  const Passage& way, measure::System units);
  static bool comes_to_nothing(const Figure& figure);
  /// Less than the system's measures show: it stays as the author wrote it, exactly respelled where that would be
  /// read otherwise.
  std::optional<Choice> too_small(const fiche::Statement& from, const Amounts& amounts);
  void say_rounding(const Pair& pair, const fiche::Statement& from, const Choice& made,
                    const std::vector<measure::Rounded>& ends);

  // ---- the text's figure
  [[nodiscard]] measure::Kind wanted_kind(const Pair& pair) const;
  [[nodiscard]] std::optional<int> shift_of(fiche::Node node) const;
  std::optional<Choice> choose_figure(const Pair& pair);
  /// What goes into the text; empty when the author's figure stays where it is.
  std::optional<Choice> choose_text(const Pair& pair);
  std::optional<Choice> swapped_text(const Pair& pair, measure::Kind from);
  void say_no_density(const Pair& pair, measure::Kind kept);

  // ---- also's figure
  std::optional<Choice> other_kind(const Pair& pair, const Amounts& text);
  /// What goes into also; empty when nothing is left to say there. Of another kind than the text, it follows into the
  /// wanted system. Of the same kind, it is what the text does not say: the author's figure in another system.
  std::optional<Choice> choose_also(const Pair& pair, const Amounts& text);
  [[nodiscard]] bool is_other_system(const fiche::Statement& statement, const Amounts& amounts) const;

  // ---- writing
  void rewrite(const Place& place);
  void write(const Pair& pair, const std::optional<Choice>& text, const std::optional<Choice>& also,
             bool leave_also);
  /// With one place only, "both" leaves mass mass and volume volume.
  std::optional<Choice> plain_attribute(const Pair& pair);

  // ---- another oven
  static measure::System scale_of(const Amounts& amounts);
  void rewrite_oven(const Pair& pair, int shift);

  Work& work_;
  measure::System units_;
  std::vector<Place> places_;
  std::set<fiche::Node> said_no_density_;
};

}  // namespace tamis::change

#endif
