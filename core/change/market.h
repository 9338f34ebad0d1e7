#ifndef CORE_CHANGE_MARKET_H
#define CORE_CHANGE_MARKET_H

#include <span>
#include <string_view>

#include "core/change/work.h"

namespace tamis::change {

/// How the amount follows when another food stands in.
///   same   the mass stays
///   times  the mass times the row's figure
///   fat    the mass that brings as much fat: times the author's fat over the row's (both in percent)
///   bloom  the mass that sets as firmly: times the root of the author's strength over the row's (both in bloom)
enum class Recalculation : unsigned char { same, times, fat, bloom };

/// One thing that is sold otherwise there (core/change/market.inc).
struct MarketRow {
  std::string_view market;   ///< where the reader buys: "US", or several: "FR|DE"
  std::string_view home;     ///< where the author buys: the same words, "EU" for neither US nor GB; "" anywhere
  std::string_view food;     ///< the author's, by the table's id; of several, the ids divided by |
  std::string_view when;     ///< "size=M", "name=caster": only where the attribute says so; "" always
  std::string_view to;       ///< what stands in; "" the same food under another name
  Recalculation recalculation;
  std::string_view from_figure;  ///< fat or bloom of the author's where the ingredient does not state it
  std::string_view to_figure;    ///< fat, bloom, or the factor of `times`
  std::string_view sets;     ///< "size=large": what the attribute says there; only where the author wrote one
  std::string_view english, french;            ///< the name it is sold under
  std::string_view english_risk, french_risk;  ///< what remains to look out for
  std::string_view source;
};

std::span<const MarketRow> market_rows();

/// Markets there are rows for: "US", "GB", "FR", "DE".
std::span<const std::string_view> markets();

/// Where the author buys: the region of the language, else what language and units say; "EU" when nothing does.
std::string_view home_market(const fiche::Fiche& fiche);

/// Decides which ingredients become what can be bought in the wished market, into work.swaps; says what changes and
/// what remains a risk.
void plan_swaps(Work& work);

/// Writes the planned foods and names over the author's, with a note for the cook; after the figures.
void write_swaps(Work& work);

}  // namespace tamis::change

#endif
