#include <string>

#include "core/measure/name_index.h"
#include "core/measure/phrase.h"
#include "core/measure/trade_word.h"
#include "core/measure/write.h"

namespace tamis::measure {
namespace {

using base::Ratio;

constexpr std::string_view no_break_space = "\u00A0";
constexpr std::string_view narrow_no_break_space = "\u202F";
constexpr std::string_view en_dash = "\u2013";

bool is_prefix(const Unit& unit) { return is_gas_mark(unit) || unit.id == "thermostat"; }

/// SI measures, dials and scales are written in decimals; spoons, cups, ounces, inches and counts in fractions.
bool takes_fractions(const Unit& unit) {
  if (unit.kind == Kind::temperature || unit.kind == Kind::temperature_difference) return is_gas_mark(unit);
  return unit.system != System::si;
}

/// When a figure takes the plural: above one in English and Spanish, from two in French, but for one in German.
bool is_many(Ratio value, std::string_view language) {
  if (language == "fr") return value >= 2;
  return value > 1;
}

std::string figure(const Quantity& quantity, const Writing& writing) {
  Writing own = writing;
  own.fractions = writing.fractions && takes_fractions(*quantity.unit);
  return write_number(quantity.value, own);
}

std::string unit_name(const Quantity& quantity, const Writing& writing) {
  const std::string language = primary_language(writing.language);
  return std::string(written_name(*quantity.unit, writing.language, is_many(quantity.value, language)));
}

std::string write_quantity(const Quantity& quantity, const Writing& writing) {
  if (quantity.unit->id == "piece") return figure(quantity, writing);
  const std::string name = unit_name(quantity, writing);
  if (is_prefix(*quantity.unit)) return name + std::string(no_break_space) + figure(quantity, writing);
  return figure(quantity, writing) + std::string(no_break_space) + name;
}

std::string write_parts(const std::vector<Quantity>& parts, const Writing& writing) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool falls = i == 0 || parts[i].unit->to_base < parts[i - 1].unit->to_base;
    if (i > 0) out += falls ? std::string(no_break_space) : " + ";
    out += write_quantity(parts[i], writing);
  }
  return out;
}

std::string to_word(std::string_view language) {
  const std::string_view known = language == "fr" || language == "de" || language == "es" ? language : "en";
  return known == "fr" ? " à " : known == "de" ? " bis " : known == "es" ? " a " : " to ";
}

/// "82–84 °C", "gas mark 4–5", "1 h–1 h 30 min".
std::string write_range(const Amount& amount, const Writing& writing) {
  const Quantity& low = amount.low.front();
  const Quantity& high = amount.high.front();
  const std::string dash = high.value < 0 || amount.low.size() + amount.high.size() > 2
                               ? to_word(primary_language(writing.language))
                               : std::string(en_dash);
  const bool one_unit = amount.low.size() == 1 && amount.high.size() == 1 && low.unit == high.unit;
  if (!one_unit) return write_parts(amount.low, writing) + dash + write_parts(amount.high, writing);
  if (is_prefix(*low.unit)) return write_quantity(low, writing) + dash + figure(high, writing);
  return figure(low, writing) + dash + write_quantity(high, writing);
}

std::string write_bounded(const Amount& amount, const Writing& writing) {
  const std::string language = primary_language(writing.language);
  const auto with = [&](PhraseRole role, const std::vector<Quantity>& parts) {
    return std::string(written_phrase(role, language)) + " " + write_parts(parts, writing);
  };
  switch (amount.form) {
    case Amount::Form::at_least: return with(PhraseRole::at_least, amount.low);
    case Amount::Form::at_most: return with(PhraseRole::at_most, amount.high);
    case Amount::Form::range: return write_range(amount, writing);
    default: return write_parts(amount.low, writing);
  }
}

std::string write_any(const Amount& amount, const Writing& writing) {
  if (amount.form == Amount::Form::words) {
    const TradeWord* word = trade_word_by_id(amount.words);
    return word == nullptr ? amount.words : std::string(written_trade_word(*word, writing.language));
  }
  if (!amount.about) return write_bounded(amount, writing);
  return std::string(written_phrase(PhraseRole::about, primary_language(writing.language))) + " " +
         write_bounded(amount, writing);
}

std::string with_spaces(std::string text, const Writing& writing) {
  if (writing.no_break) return text;
  for (const std::string_view space : {no_break_space, narrow_no_break_space}) {
    for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space, at)) {
      text.replace(at, space.size(), " ");
    }
  }
  return text;
}

}  // namespace

std::string write_amount(const Amount& amount, const Writing& writing) {
  return with_spaces(write_any(amount, writing), writing);
}

}  // namespace tamis::measure
