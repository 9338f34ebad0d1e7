#ifndef CORE_CHANGE_CONVERT_H
#define CORE_CHANGE_CONVERT_H

#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/measure/unit.h"

namespace tamis::change {

struct ConvertWish {
  measure::System units = measure::System::metric;  ///< metric, us or imperial
  enum class By : unsigned char { mass, volume, both, as_written } by = By::as_written;
  /// Oven figures for this mode ("fan", "static"); empty: as written.
  std::string oven;
  /// Reader's market ("US", "GB", "FR", "DE"): what can be bought there stands in. Empty: foods stay.
  std::string market;
};

/// What a conversion gives: the document, edited in place, and what the reader must know (rounding beyond tolerance,
/// no density, what remains a risk), pointing into the original source.
struct Converted {
  fiche::Document document;
  std::vector<base::Finding> findings;
};

/// Every amount, temperature and length in another system, those inside sentences too.
///
/// There and back. A conversion starts from the author's own figures: what an earlier one wrote is taken back first
/// (core/change/author.h), so figures are rounded once, whatever systems the document went through, and a document
/// converted to the system it was written in is the author's own again. For that the author's figure stays beside
/// the one that took its place, word for word:
///   - was-X keeps what attribute X said; was keeps what the element's text said. Where was is there, was-also is
///     what also said, and without was-also there was none.
///   - fiche/@units becomes the wanted system, so that a bare "cup" reads as what was written; was-units keeps whose
///     bare names the kept figures use, "none" where the author declared none.
///   - a figure that stands in the wanted system already is not touched.
///   - "Again the author's own" is byte for byte in XML, but for a file on one line that had a market note in it (a line
///     break stays) and figures spelled with references. In JSON, a bare string that took an attribute stays an object.
///   - a figure that somebody changed after a conversion, beyond what kitchen rounding could have done, is the
///     author's figure from then on; the one kept beside it goes, and a finding says so.
///
/// also, the author's second system. Where it is the one in the wanted system, it is the author's own figure and
/// becomes the text, unrounded. In also then stands, of the author's two figures, the one that can still be read in
/// the new document and says more than the text; where neither does, also goes.
///
/// By mass or volume. as_written: mass stays mass, volume stays volume. mass, volume: amounts of a food go over where
/// the table has its density (the form that prep names, "sifted", where it has that), else they stay and a finding
/// says so. both: the one in the text, the other in also; the text is the volume for liquids and for what the author
/// measured by volume of dairy, else the mass. Counts and trade measures (pinch, leaf, clove) stay.
///
/// Rounding. To the kitchen's tools, within the food's tolerance; beyond it a finding tells a better way to measure.
/// Oven figures take the oven's steps. Elsewhere "at most" never rounds up and "at least" never down; nor does a range
/// in a gate or control point grow. An exact figure in a control point is a limit too: from 50 °C up, one that must be
/// reached (cooking, hot holding), to 25 °C, one that must not be passed (cold holding) (common practice). Imperial
/// means °F; gas marks stay there, and are written nowhere else.
///
/// Oven mode. From static to fan 20 °C or 25 °F less, from fan to static as much more (common practice); a step that
/// states a figure for the wanted mode keeps its own. Other modes, and figures whose mode is not stated, stay.
///
/// Market. What core/change/market.inc says of a food sold otherwise there is written over food, name, size, bloom, fat,
/// and its amounts follow by the row's rule; was-food marks the ingredient, and a <note kind="market"> behind it tells
/// the cook. All of it goes on the way back.
///
/// A name whose system nobody declared ("1 cup") would turn into a guess: the document is then given back as it was,
/// with a finding of severity error for each.
///
/// Findings (their explanations are in core/rules, where the kitchen can set their severity):
///   not-converted                a figure could not be read (error: nothing was converted for its sake)
///   changed-after-conversion     the figure beside a kept one is no longer its conversion
///   conversion-beyond-tolerance  what the tools can measure is too far off for this food
///   no-density-for-conversion    mass and volume cannot be crossed
///   oven-mode-changed            the figure is for another oven; the times are not recalculated
///   oven-mode-unknown            the figure's mode is not stated, or no rule leads from it to the wanted one
///   market-swap                  what can be bought there, what was recalculated and what remains a risk
Converted convert(const fiche::Document& document, const fiche::Kitchen& kitchen, const ConvertWish& wish);

}  // namespace tamis::change

#endif
