// What callers ask: one whole text, or the start of a sentence. The grammar itself is in amount_parser.

#include "core/measure/read.h"

#include <algorithm>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/measure/amount_parser.h"
#include "core/measure/iso_duration.h"
#include "core/measure/name_index.h"
#include "core/measure/trade_word.h"
#include "core/measure/unit_reader.h"

namespace tamis::measure {
namespace {

using base::Finding;

std::string quoted(std::string_view text) {
  constexpr std::size_t most = 40;
  if (base::count_scalars(text) <= most) return "\"" + std::string(text) + "\"";
  std::size_t end = 0;
  for (std::size_t i = 0; i < most; ++i) (void)base::next_scalar(text, end);
  return "\"" + std::string(text.substr(0, end)) + "…\"";
}

Finding refusal(std::string_view rule, std::size_t begin, std::size_t end, std::string message, std::string advice) {
  Finding finding;
  finding.rule = rule;
  finding.where = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  return finding;
}

/// Spans count from the start of the text as it was given, not from where it was trimmed.
Finding moved(Finding finding, std::size_t by) {
  finding.where.begin += static_cast<std::uint32_t>(by);
  finding.where.end += static_cast<std::uint32_t>(by);
  return finding;
}

std::size_t offset_in(std::string_view part, std::string_view whole) {
  return static_cast<std::size_t>(part.data() - whole.data());
}

bool word_fits(const TradeWord& word, Kinds wanted) {
  return word.kind == Kind::mass ? (wanted & amount_kinds & ~length_kinds) != 0 : wants(wanted, word.kind);
}

Amount amount_of_word(const TradeWord& word) {
  Amount amount;
  amount.form = Amount::Form::words;
  amount.kind = word.kind;
  amount.words = word.id;
  return amount;
}

Finding wrong_word(const TradeWord& word, std::size_t size, Kinds wanted) {
  const std::string kind = word.kind == Kind::mass ? "amount" : std::string(kind_name(word.kind));
  return refusal("wrong-kind", 0, size,
                 quoted(written_trade_word(word, "en")) + " says a " + kind + "; " + kinds_text(wanted) + " was expected", "");
}

Finding unknown_word(std::string_view text, Kinds wanted, const Reading& reading) {
  const std::string language = primary_language(reading.language);
  std::vector<std::string_view> names;
  for (const TradeWord& word : trade_words()) {
    if (!word_fits(word, wanted)) continue;
    for (const TradeName& name : names_of(word)) {
      if (name.language == language || name.language == "en") names.push_back(name.name);
    }
  }
  constexpr std::size_t longest = 64;
  const std::string_view near = text.size() <= longest ? base::nearest(text, names) : std::string_view();
  return refusal("unknown-trade-word", 0, text.size(),
                 quoted(text) + " is neither a figure of " + kinds_text(wanted) + " nor a word of the trade",
                 near.empty() ? "write a figure with its unit" : "did you mean " + quoted(near) + "?");
}

bool starts_with_letter(std::string_view text) {
  std::size_t at = 0;
  const auto c = text.empty() ? std::nullopt : base::next_scalar(text, at);
  return c && is_letter(*c);
}

bool is_bare(const Amount& amount) {
  const auto& parts = amount.low.empty() ? amount.high : amount.low;
  return !parts.empty() && parts.back().unit->id == "piece";
}

/// What to say about what was left over after the amount. A word after a figure was meant as a unit.
Finding leftover(std::string_view text, std::size_t at, const Amount& amount, Kinds wanted, const Reading& reading) {
  std::string_view rest = base::trimmed(text.substr(at));
  bool after_figure = is_bare(amount);
  const Number number = scan_number(rest, NumberStyle{});
  if (number.used != 0 && !number.fault) {
    const std::string_view after = base::trimmed(rest.substr(number.used));
    after_figure = starts_with_letter(after);
    if (after_figure) rest = after;
  }
  const std::size_t begin = offset_in(rest, text);
  const UnitFound unit = scan_unit(rest, wanted, reading, false);
  if (after_figure && unit.unit != nullptr) {
    return refusal("unreadable-amount", begin, begin + unit.used,
                   quoted(rest.substr(0, unit.used)) + " cannot be added to " + quoted(base::trimmed(text.substr(0, at))),
                   "write parts of one kind, the larger unit first, such as 1 lb 2 oz");
  }
  if (after_figure && starts_with_letter(rest)) return moved(unknown_unit(rest, wanted, reading), begin);
  return refusal("unreadable-amount", begin, text.size(),
                 quoted(rest) + " after " + quoted(base::trimmed(text.substr(0, at))) + " is not part of the figure",
                 "write the figure and its unit, nothing more");
}

/// A word where a figure was expected: a unit's name without its figure, or a word the table does not know.
Finding no_figure(std::string_view text, Kinds wanted, const Reading& reading) {
  const UnitFound unit = scan_unit(text, wanted, reading, false);
  if (unit.used != text.size()) return unknown_word(text, wanted, reading);
  if (unit.fault && unit.fault->rule == "wrong-kind") return *unit.fault;
  return refusal("unreadable-amount", 0, text.size(), quoted(text) + " has no figure before it", "write how many");
}

base::Result<Amount> read_trimmed(std::string_view text, Kinds wanted, const Reading& reading) {
  if (text.empty()) return refusal("unreadable-amount", 0, 0, "there is no figure", "write a figure with its unit");
  if (const TradeWord* word = read_trade_word(text, reading.language)) {
    if (word_fits(*word, wanted)) return amount_of_word(*word);
    AmountParser as_figure(text, wanted, reading, false);
    auto figure = as_figure.statement();
    if (figure && as_figure.rest().empty()) return *figure;
    return wrong_word(*word, text.size(), wanted);
  }
  if (wants(wanted, Kind::time) && text[0] == 'P') {
    if (auto duration = read_iso_duration(text)) return *duration;
  }
  AmountParser parser(text, wanted, reading, false);
  auto amount = parser.statement();
  if (amount && parser.rest().empty()) return *std::move(amount);
  if (parser.fault()) return *parser.fault();
  if (amount) return leftover(text, parser.used(), *amount, wanted, reading);
  return no_figure(text, wanted, reading);
}

/// Where a sentence may not go on for a figure to have ended: in the middle of a word, a date, a fraction.
bool runs_on(std::string_view rest, bool bare) {
  if (rest.empty()) return false;
  std::size_t at = 0;
  const auto c = base::next_scalar(rest, at);
  if (!c) return false;
  if (is_letter(*c) || is_digit(*c) || *c == U'%' || *c == U'°') return true;
  const bool joins = *c == U'/' || *c == U':' || (bare && (*c == U'-' || *c == U'.' || *c == U','));
  if (!joins || at >= rest.size()) return false;
  const auto next = base::next_scalar(rest, at);
  return next && (is_letter(*next) || is_digit(*next));
}

}  // namespace

base::Result<Amount> read_amount(std::string_view text, Kinds wanted, const Reading& reading) {
  const std::string_view inner = base::trimmed(text);
  auto read = read_trimmed(inner, wanted, reading);
  if (!read) return moved(read.fault(), offset_in(inner, text));
  return read;
}

Found find_amount(std::string_view text, Kinds wanted, const Reading& reading) {
  Found found;
  const TradeWordFound word = find_trade_word(text, reading.language);
  if (word.used != 0 && word_fits(*word.word, wanted)) {
    found.amount = amount_of_word(*word.word);
    found.used = word.used;
  }
  AmountParser parser(text, wanted, reading, true);
  if (auto amount = parser.statement()) {
    if (parser.used() > found.used && !runs_on(parser.rest(), is_bare(*amount))) {
      found.amount = *std::move(amount);
      found.used = parser.used();
    }
  } else if (found.used == 0) {
    found.fault = parser.fault();
  }
  return found;
}

base::Result<base::Ratio> read_number(std::string_view text, const Reading& reading) {
  const std::string_view inner = base::trimmed(text);
  NumberStyle style;
  const std::string language = primary_language(reading.language);
  style.decimal = reading.decimal != 0 ? reading.decimal : decimal_sign(reading.language);
  style.declared = reading.decimal != 0;
  style.language = language;
  const Number number = scan_number(inner, style);
  if (number.fault) return moved(*number.fault, offset_in(inner, text));
  if (number.used == inner.size() && number.used != 0) return number.value;
  return refusal("unreadable-amount", offset_in(inner, text), offset_in(inner, text) + inner.size(),
                 quoted(inner) + " is no number", "write a number such as 4, 1/2 or 1 1/2");
}

base::Result<const Unit*> read_unit(std::string_view name, const Reading& reading) {
  const std::string_view inner = base::trimmed(name);
  const std::size_t begin = offset_in(inner, name);
  constexpr Kinds every = ~0U;
  UnitFound found = scan_unit(inner, every, reading, false);
  if (found.used != inner.size() || found.used == 0) {
    Finding fault = unknown_unit(inner, every, reading);
    fault.message = quoted(inner) + " is no unit";
    return moved(fault, begin);
  }
  if (found.fault) return moved(*found.fault, begin);
  return found.unit;
}

}  // namespace tamis::measure
