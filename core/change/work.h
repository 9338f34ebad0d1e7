#ifndef CORE_CHANGE_WORK_H
#define CORE_CHANGE_WORK_H

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/change/convert.h"
#include "core/change/figure.h"
#include "core/fiche/fiche.h"

namespace tamis::change {

struct MarketRow;

/// What another market's food asks of an ingredient and its amounts (core/change/market.h).
struct Swap {
  const food::Food* food = nullptr;  ///< what stands in now
  base::Ratio mass_factor = 1;       ///< its mass for one of the author's
  const MarketRow* row = nullptr;
  std::string instead_of;            ///< the author's name for it
};

/// One conversion under way: the author's document as it was read, the same document as it is being written, and what
/// the passes (oven, market, figures) leave for each other.
struct Work {
  fiche::Document document;
  const fiche::Kitchen& kitchen;
  const ConvertWish& wish;
  fiche::Fiche author = {};                         ///< read from `document` before the first change
  measure::Reading after = {};                      ///< how the converted document is read
  std::map<fiche::Node, int> oven_shifts = {};          ///< oven-temp → +1 to a static oven, -1 to a fan one
  std::map<fiche::Node, Swap> swaps = {};               ///< by ingredient
  bool touched = false;
  std::vector<base::Finding> findings = {};

  /// Adds a finding of the given severity, or the one the kitchen gives its rule; none when that is off.
  void say(std::string_view rule, base::Severity severity, base::Span where, std::string message,
           std::string advice = {}, std::string source = {});
};

/// "5.5 %" of 0.055.
std::string percent(double share);

/// A statement's figures: one amount, or the lengths of "12 × 20 in". Empty for fractions, numbers and faults.
std::vector<measure::Amount> figures_of(const fiche::Statement& statement);

}  // namespace tamis::change

#endif
