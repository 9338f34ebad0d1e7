#include "core/flow/celsius.h"

#include <algorithm>

#include "core/measure/trade_word.h"
#include "core/physics/boiling_point.h"

namespace tamis::flow {
namespace {

using measure::Amount;

constexpr double about_c = 2;
constexpr double weather_c = 1;  // boiling_point.h

std::optional<Range> range_of(const Amount& amount) {
  if (!amount.has_figure()) return std::nullopt;
  const base::Ratio low = amount.low_base(), high = amount.high_base();
  if (!low.ok() || !high.ok()) return std::nullopt;
  const double about = amount.about ? about_c : 0;
  return Range{amount.form == Amount::Form::at_most ? -open_end : low.approximate() - about,
               amount.form == Amount::Form::at_least ? open_end : high.approximate() + about};
}

}  // namespace

std::optional<Range> celsius_of_word(std::string_view id, const fiche::Kitchen& kitchen) {
  if (const auto house = kitchen.meanings.find(id); house != kitchen.meanings.end()) {
    if (house->second.kind == measure::Kind::temperature) return range_of(house->second);
  }
  if (id == "boiling") return boiling_in(kitchen);
  const measure::TradeWord* word = measure::trade_word_by_id(id);
  if (word == nullptr || word->meaning.empty() || word->kind != measure::Kind::temperature) return std::nullopt;
  const auto usual = measure::read_amount(word->meaning, measure::temperature_kinds, {});
  return usual ? range_of(*usual) : std::nullopt;
}

std::optional<Range> celsius_meant(const fiche::Statement& statement, const fiche::Kitchen& kitchen) {
  if (!statement.amount || statement.amount->kind != measure::Kind::temperature) return std::nullopt;
  if (statement.amount->has_figure()) return range_of(*statement.amount);
  return celsius_of_word(statement.amount->words, kitchen);
}

Range boiling_in(const fiche::Kitchen& kitchen) {
  const double at = physics::boiling_point(kitchen.altitude_m ? kitchen.altitude_m->approximate() : 0);
  return {at - weather_c, at + weather_c};
}

Range narrowed(const Range& known, const Range& stated) {
  const Range both{std::max(known.low, stated.low), std::min(known.high, stated.high)};
  return both.low <= both.high ? both : stated;
}

Range hull_of(const Range& a, const Range& b) { return {std::min(a.low, b.low), std::max(a.high, b.high)}; }

}  // namespace tamis::flow
