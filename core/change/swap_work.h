#ifndef CORE_CHANGE_SWAP_WORK_H
#define CORE_CHANGE_SWAP_WORK_H

#include <optional>
#include <string>
#include <vector>

#include "core/change/swap.h"
#include "core/change/swap_kind.h"
#include "core/change/work.h"

namespace tamis::change {

/// One line on its way to another food.
struct LineSwap {
  OwnLine own;
  std::vector<Stand> stands;
  const SwapKind* kind = nullptr;  ///< null: the author's own food again
  WorkedOut made;
  std::optional<base::Ratio> own_g;    ///< what the author's line weighs, where that is known exactly
  std::vector<std::string> shown;      ///< what the lines say now: "8.5 g"
  std::vector<base::Related> related;  ///< where sentences name it, and which lines follow it
  std::optional<base::Ratio> water_g;  ///< what was taken off the component's water (negative: put onto it)
};

// ---- finding (swap_find.cpp)

/// The lines that a wish means, as indices into Fiche::ingredients.
base::Result<std::vector<std::size_t>> lines_meant(const fiche::Fiche& fiche, const SwapWish& wish);
/// The foods that are to stand in.
base::Result<std::vector<Stand>> stands_meant(const fiche::Fiche& fiche, const SwapWish& wish);
/// The kind of swap that leads from one to the others; null where the author's own food is asked for again.
base::Result<const SwapKind*> kind_of_swap(const OwnLine& own, const std::vector<Stand>& stands);

// ---- figures (swap_figures.cpp)

/// The author's figure where it is kept beside what stands in its place, else what stands there.
/// `stood`: as OwnLine::stood.
std::vector<measure::Amount> own_figures(const fiche::Fiche& fiche, const fiche::Statement& statement, bool stood);
/// Why the author's figures of a line cannot be worked out anew: one that nobody can read, or whose weight is not known.
std::optional<base::Finding> cannot_be_weighed(const fiche::Fiche& fiche, const OwnLine& own);
/// What the author's line weighs, in g; empty where it is no exact figure of a mass that can be known.
std::optional<base::Ratio> own_grams(const fiche::Fiche& fiche, const OwnLine& own);
/// Writes the figures of the line and of the sentences that speak of it.
void write_figures(Work& work, LineSwap& swap);
/// Writes the second line behind the first, and its name into the marks of the first.
void write_added_line(Work& work, LineSwap& swap);

// ---- water (swap_water.cpp)

/// Takes what sugars bring off the component's one line of water, or puts it on.
bool swap_kinds_move_water(std::string_view from, Foods to);
void move_water(Work& work, std::vector<LineSwap>& swaps);

// ---- telling (swap_tell.cpp)

/// Where the author's sentences name the line, and which lines follow its amount.
std::vector<base::Related> places_of(const fiche::Fiche& fiche, const OwnLine& own);
/// The finding food-swapped, and the note for the cook.
void tell_swap(Work& work, const LineSwap& swap);

}  // namespace tamis::change

#endif
