#ifndef CORE_CHANGE_SCALE_H
#define CORE_CHANGE_SCALE_H

#include <optional>
#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/base/ratio.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"

namespace tamis::change {

/// The batch that is wanted. The text is read as the fiche's own figures are: its language, its units.
struct ScaleWish {
  enum class By : unsigned char {
    portions,    ///< "140"
    factor,      ///< "2.5", "1/3": times the fiche as it stands
    yield,       ///< "3 kg", "2 l", "40 pieces"
    ingredient,  ///< "2.5 l" of `ingredient`: the batch that uses up what is on hand
    mould,       ///< "4 ring-26", "frame 60 × 40 × 4 cm": a count, then a kitchen mould's id, or a shape and its sides
  } by = By::factor;
  std::string text = "1";
  std::string ingredient;
};

/// What a scaling gives: the document, edited in place, and what the cook must know, pointing into the original source.
struct Scaled {
  fiche::Document document;
  std::vector<base::Finding> findings;
  base::Ratio factor = 1;  ///< of the fiche as it stood; 1 where nothing could be done (a finding of severity error)
  std::optional<base::Finding> misread = {};  ///< the wish could not be understood: message and advice, no place
};

/// The same fiche for another batch.
///
/// Figures. Amounts are multiplied exactly and then rounded to what the kitchen can measure, within the food's tolerance
/// (core/measure/kitchen_tools.h), in the units they stand in. What grows: amounts of ingredients and their second
/// figures, packs, purchases; amounts in the sentences of steps; what is taken of a component in another file; portions,
/// pieces, spare, mass and volume of the yield; losses given as an amount; counts of moulds. What does not: shares,
/// temperatures, times, lengths, gates and control points, what is stated per portion or by another line, one portion,
/// what a mould holds, the least and the most of a vessel, an amount that the sentence gives for "each", remarks, trials.
/// fiche/@scaled-by keeps the exact factor; scaled again, it multiplies, and goes when it comes to 1.
///
/// A factor of 1 gives the document back byte for byte. A fiche that was converted is scaled from the author's own
/// figures and converted again.
///
/// Stated batches. Where the fiche states amounts for several yields (amount/@batch), a wish that equals one of them
/// takes its column word for word; any other is scaled from the nearest. The new batch becomes the first yield; what the
/// author stated stays, the first one's amounts in an amount/@batch of their own.
///
/// Counts. Eggs by weight keep the exact weight; the count beside it goes to whole eggs and what is left over is named.
/// Where kitchen/@eggs says "whole" (or nothing), a count of eggs goes up to whole ones; at "grams" it becomes a weight
/// unless it comes out whole. A vanilla pod is halved; leaves, cloves and the like stay whole; fruit and vegetables may be
/// halved below four. Packs are counted exactly; what remains of the last one is named.
///
/// Moulds. More portions are more moulds of the same size, filled as deep as before; the last one may not come out
/// whole, then all are filled a little lower. Another mould: flat goods (ring, tart, frame, tray, round, square,
/// rectangular) go by the area, so that the depth stays; deep ones (loaf, dome, cup, fluted, other) by the volume.
///
/// Findings (their explanations are in core/rules, where the kitchen can set their severity):
///   not-scaled                a figure or words that could not follow (error: nothing was scaled for its sake)
///   scaled-beyond-tolerance   what the tools can measure is too far off for this food
///   count-rounded             so many pieces are not so much
///   surplus                   whole eggs and packs leave something over: keep the rest
///   batch-split               more than a vessel takes at once: so many equal batches
///   below-least               less than a vessel works with
///   mould-changed             by area or by volume, and what that does to the depth
///   moulds-missing            more moulds than the kitchen has
///   oven-loads                more than the ovens take at once
///   time-not-scaled           a time stated for another depth or mass
///   reduction-not-scaled      evaporation goes by the surface of the pan
///   whisking-not-scaled       mixing and whisking times are those of the author's batch
///   leavening-not-scaled      yeast and leavening in a much larger or smaller batch
///   seasoning-not-scaled      salt and spices in a much larger batch
///   hands-on-not-scaled       hands-on times are those of the author's batch
Scaled scale(const fiche::Document& document, const fiche::Kitchen& kitchen, fiche::Library& library,
             const ScaleWish& wish);

}  // namespace tamis::change

#endif
