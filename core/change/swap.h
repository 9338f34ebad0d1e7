#ifndef CORE_CHANGE_SWAP_H
#define CORE_CHANGE_SWAP_H

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/change/convert.h"

namespace tamis::change {

/// One swap as asked for at the desk: a line of the ingredients, and what is to stand in.
struct SwapWish {
  struct Part {
    std::string food;    ///< an id or a name, of the kitchen or the table
    std::string figure;  ///< what comes behind the colon: "225", "L", "48 %"; "" when nothing does
  };
  std::string line;  ///< the line's id, its food, or the author's name for it
  std::vector<Part> foods;
};

/// "leaf=gelatine-powder:225; cream=milk-whole:3.5+cream-double:48" in its parts. What cannot be taken apart is a fault
/// (bad-swap) that says how one is written.
base::Result<std::vector<SwapWish>> read_swaps(std::string_view words);

/// The fiche with other foods in place of the author's, their amounts worked out anew.
///
/// Figures. Exact from the author's own figure, whatever stands there now (what a conversion or an earlier swap wrote is
/// passed over), then rounded as convert() rounds, in the system that the figure stands in. Amounts inside sentences
/// follow. What the swap brings or takes of water goes off or onto the component's one line of water where the kind of swap
/// says so (sugars); elsewhere it is said.
///
/// There and back. The author's own stays beside what took its place (was, was-food, was-bloom ...), a <note kind="swap">
/// behind the line tells the cook, and a line that was put in carries was-food="none". Swapping for the author's own food
/// again takes all of it back, and so does convert().
///
/// Findings:
///   food-swapped                 what stands in for what, by which rule, what it changes in the whole, which sentences
///                                name the food
///   conversion-beyond-tolerance  what the scales can weigh is too far off
///
/// A wish that no line or food answers, or that no kind of swap can work out, is a fault (bad-swap) with the nearest word;
/// nothing is changed then.
base::Result<Converted> swap_foods(const fiche::Document& document, const fiche::Kitchen& kitchen,
                                   std::span<const SwapWish> wishes);

/// The rule of the fault that says only that the fiche has no such line.
inline constexpr std::string_view no_such_line = "no-such-line";

/// What kinds of swap there are, for the help of the desk.
struct SwapHelp {
  std::string_view what;     ///< "gelatine: leaf, powder, mass, one strength to another"
  std::string_view example;  ///< "leaf=gelatine-powder:225"
};
std::vector<SwapHelp> swap_help();

}  // namespace tamis::change

#endif
