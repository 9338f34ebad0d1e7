#ifndef CORE_CHANGE_SCALE_WORK_H
#define CORE_CHANGE_SCALE_WORK_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/change/scale.h"
#include "core/fiche/fiche.h"
#include "core/flow/flow.h"
#include "core/flow/states.h"
#include "core/physics/conduction.h"

namespace tamis::change {

/// A mould as a wish, a kitchen or a fiche gives it: what is needed to compare two.
struct MouldSize {
  std::string id, name, shape;
  base::Ratio count = 1;
  std::optional<base::Ratio> length, width, height, diameter, fill, volume;  ///< mm, ml
  /// The sides as written, for putting them into the fiche.
  std::string length_text, width_text, height_text, diameter_text, volume_text;
};

/// Food that stands in another size of mould, or at another depth in the same.
struct SizeChange {
  fiche::Node component = fiche::none;  ///< whose moulds they are; none: the fiche's
  physics::Body from, to;               ///< what heat goes through, m; without parts where the sides are not known
  std::string was, now;                 ///< "3 cm" of what lies flat; "" of what does not
};

/// One scaling under way. Must not be moved: `author` and `flow` point into `document`.
struct ScaleWork {
  fiche::Document document;
  const fiche::Kitchen& kitchen;
  fiche::Library& library;
  const ScaleWish& wish;
  fiche::Fiche author = {};             ///< read from `document` before the first change
  flow::Flow flow = {};                 ///< of the author's document
  std::vector<fiche::Node> yields = {}; ///< of the fiche itself, the first one first
  base::Ratio factor = 1;               ///< of the first yield's amounts
  fiche::Node base = fiche::none;       ///< the yield whose column is taken; none: the text
  base::Ratio from_base = 1;            ///< of that column; 1: word for word
  fiche::Node written = fiche::none;    ///< the yield that tells the new batch; of several columns a new one
  bool verbatim = false;                ///< the wished batch is one that the author states
  std::optional<MouldSize> mould = {};  ///< the wished mould
  std::vector<SizeChange> sizes = {};   ///< where the food stands deeper or lower than the author's
  std::vector<base::Finding> findings = {};
  std::optional<base::Finding> misread = {};
  std::optional<flow::States> known_states = {};

  /// What becomes of the author's food, worked out when it is first asked for.
  const flow::States& states();
  /// Adds a finding of the given severity, or the one the kitchen gives its rule; null when that is off.
  base::Finding* say(std::string_view rule, base::Severity severity, base::Span where, std::string message,
                     std::string advice, std::string source = "common practice");

  /// The figure of a number, amount or count; empty when there is none that can be read.
  [[nodiscard]] const measure::Amount* amount(fiche::Node node, fiche::At at = fiche::At::unknown) const;
  [[nodiscard]] std::optional<base::Ratio> number(fiche::Node node, fiche::At at) const;
  /// "300 g", "2 frames" as this fiche writes figures.
  [[nodiscard]] std::string text(const measure::Amount& amount) const;
  [[nodiscard]] std::string text(base::Ratio number) const;
  [[nodiscard]] std::string grams(double value) const;
};

/// Child elements of a name.
std::vector<fiche::Node> children_of(const fiche::Document& document, fiche::Node node, fiche::El el);

/// Settles how many times the batch is made and from which column. Says why when that cannot be known, and is false.
bool settle_batch(ScaleWork& work);

/// Where the fiche states several batches: puts a yield for the new one before them, and keeps the author's amounts as
/// a column. Before the figures are written.
void keep_columns(ScaleWork& work);

/// Takes the new yield and the kept column out again where the batch is the author's first one.
void drop_columns(ScaleWork& work);

/// Writes the amounts of ingredients, steps and yields for the new batch.
void scale_figures(ScaleWork& work);

/// Counts of moulds, the wished mould, the fill.
void scale_moulds(ScaleWork& work);

/// Mixers, pans, ovens and moulds that the new batch is too large or too small for.
void look_at_vessels(ScaleWork& work);

/// What a larger or smaller batch does not simply multiply.
void say_what_stays(ScaleWork& work);

}  // namespace tamis::change

#endif
