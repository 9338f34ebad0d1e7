#include "core/measure/amount_parser.h"

#include <algorithm>
#include <cstdint>

#include "core/base/utf8.h"
#include "core/measure/name_index.h"
#include "core/measure/phrase.h"
#include "core/measure/unit_reader.h"

namespace tamis::measure {
namespace {

using base::Ratio;

char32_t scalar_at(std::string_view text, std::size_t at) {
  return at < text.size() ? base::next_scalar(text, at).value_or(0) : 0;
}

bool is_prefix_unit(const Unit& unit) { return is_gas_mark(unit) || unit.id == "thermostat"; }

bool is_temperature(Kind kind) { return kind == Kind::temperature || kind == Kind::temperature_difference; }

NumberStyle style_of(const Reading& reading, bool in_sentence, std::string_view language) {
  NumberStyle style;
  style.decimal = reading.decimal != 0 ? reading.decimal : decimal_sign(reading.language);
  style.declared = reading.decimal != 0;
  // "4 250 g tins" in an English sentence are four tins.
  style.space_groups = !in_sentence || language == "fr";
  style.language = language;
  return style;
}

/// Sum of the parts in base units.
Ratio sum(const std::vector<Quantity>& parts) {
  Ratio total;
  for (const Quantity& part : parts) total = total + part.in_base();
  return total;
}

}  // namespace

AmountParser::AmountParser(std::string_view text, Kinds wanted, const Reading& reading, bool in_sentence)
    : text_(text), wanted_(wanted), reading_(reading), in_sentence_(in_sentence),
      language_(primary_language(reading.language)), style_(style_of(reading, in_sentence, language_)) {}

void AmountParser::skip_spaces() {
  while (at_ < text_.size()) {
    std::size_t next = at_;
    const auto c = base::next_scalar(text_, next);
    if (!c || !base::is_space(*c)) return;
    at_ = next;
  }
}

bool AmountParser::take(std::size_t bytes) {
  at_ += bytes;
  return bytes != 0;
}

bool AmountParser::take_phrase(PhraseRole role) {
  return take(match_phrase(rest(), role, language_));
}

/// Keeps the fault that lies furthest along: what was understood before it was not at fault.
void AmountParser::refuse(base::Finding finding, std::size_t from) {
  finding.where.begin += static_cast<std::uint32_t>(from);
  finding.where.end += static_cast<std::uint32_t>(from);
  if (!fault_ || finding.where.begin > fault_->where.begin) fault_ = std::move(finding);
}

void AmountParser::refuse(std::string_view rule, std::size_t from, std::size_t to, std::string message,
                          std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.where = {0, static_cast<std::uint32_t>(to - from)};
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  refuse(std::move(finding), from);
}

bool AmountParser::take_minus() {
  const bool may = wants(wanted_, Kind::temperature) || wants(wanted_, Kind::temperature_difference);
  const char32_t c = scalar_at(text_, at_);
  if (!may || (c != U'-' && c != U'−')) return false;
  const std::size_t next = at_ + (c == U'-' ? 1 : 3);
  if (next >= text_.size() || !(is_digit(scalar_at(text_, next)) || text_[next] == style_.decimal)) return false;
  at_ = next;
  return true;
}

/// The unit after a number; false when there was a name that cannot be meant.
bool AmountParser::take_unit(Part& part) {
  const std::size_t start = at_;
  skip_spaces();
  if (at_ == start && at_ + 1 < text_.size() && text_[at_] == '-' && is_letter(scalar_at(text_, at_ + 1))) ++at_;
  UnitFound found = scan_unit(rest(), wanted_, reading_, in_sentence_);
  if (found.used == 0) {
    at_ = start;
    return true;
  }
  if (found.fault) {
    refuse(std::move(*found.fault), at_);
    return false;
  }
  if (is_prefix_unit(*found.unit)) {
    at_ = start;
    return true;
  }
  part.unit = found.unit;
  at_ += found.used;
  const std::size_t after = at_;
  skip_spaces();
  if (part.value.whole() && take_phrase(PhraseRole::and_half)) {
    part.value = part.value + Ratio(1, 2);
  } else {
    at_ = after;
  }
  return true;
}

/// "gas mark 4": the unit stands first.
std::optional<AmountParser::Part> AmountParser::prefixed_part() {
  if (!wants(wanted_, Kind::temperature) || !is_letter(scalar_at(text_, at_))) return std::nullopt;
  const std::size_t start = at_;
  const UnitFound found = scan_unit(rest(), temperature_kinds, reading_, in_sentence_);
  if (found.unit == nullptr || !is_prefix_unit(*found.unit)) return std::nullopt;
  at_ += found.used;
  skip_spaces();
  NumberStyle figures = style_;
  figures.word_groups = false;
  const Number number = scan_number(rest(), figures);
  if (number.used == 0 || number.fault) {
    at_ = start;
    return std::nullopt;
  }
  at_ += number.used;
  if (is_gas_mark(*found.unit) && !Quantity{number.value, found.unit}.in_base().ok()) {
    refuse("unreadable-amount", start, at_,
           "there is no gas mark " + number.value.text() + "; marks are 1/4, 1/2 and 1 to 9", "write °C or °F");
    at_ = start;
    return std::nullopt;
  }
  return Part{number.value, found.unit, true};
}

/// A trade measure without a number is one of it: "pinch".
std::optional<AmountParser::Part> AmountParser::rough_part() {
  if (in_sentence_) return std::nullopt;
  UnitFound found = scan_unit(rest(), wanted_, reading_, in_sentence_);
  if (found.unit == nullptr || !found.unit->rough) return std::nullopt;
  at_ += found.used;
  return Part{1, found.unit, true};
}

std::optional<AmountParser::Part> AmountParser::part() {
  if (auto made = prefixed_part()) return made;
  const std::size_t start = at_;
  const bool minus = take_minus();
  Number number = scan_number(rest(), style_);
  if (number.used == 0) {
    at_ = start;
    return rough_part();
  }
  if (number.fault) {
    refuse(std::move(*number.fault), at_);
    at_ = start;
    return std::nullopt;
  }
  at_ += number.used;
  Part made{minus ? -number.value : number.value, nullptr, number.bare && !minus};
  if (!take_unit(made)) {
    at_ = start;
    return std::nullopt;
  }
  return made;
}

/// "1 h 30": minutes are understood after hours.
bool AmountParser::add_minutes(Parts& parts) {
  if (parts.back().unit == nullptr || parts.back().unit->id != "h") return false;
  const std::size_t start = at_;
  skip_spaces();
  const bool touching = at_ == start;
  std::size_t digits = 0;
  while (digits < 3 && is_digit(scalar_at(text_, at_ + digits))) ++digits;
  const std::size_t end = at_ + digits;
  Part minutes{0, unit_by_id("min"), true};
  for (std::size_t i = at_; i < end; ++i) minutes.value = minutes.value * 10 + Ratio(text_[i] - '0');
  std::size_t next = end;
  while (next < text_.size() && base::is_space(scalar_at(text_, next))) {
    (void)base::next_scalar(text_, next);
  }
  const bool word_follows = is_letter(scalar_at(text_, next));
  const bool other_unit = scan_unit(text_.substr(next), ~0U, reading_, in_sentence_).used != 0;
  const bool sentence = in_sentence_ && word_follows && !touching && language_ != "fr";
  if (digits == 0 || digits > 2 || minutes.value >= 60 || other_unit || sentence) {
    at_ = start;
    return false;
  }
  at_ = end;
  parts.push_back(minutes);
  return true;
}

/// One more part of a compound: "2 oz" after "1 lb", "+ 1 1/2 cups" after "1 No. 10 can".
bool AmountParser::add_part(Parts& parts) {
  const Part last = parts.back();
  if (last.unit == nullptr || is_temperature(last.unit->kind)) return false;
  const std::size_t start = at_;
  skip_spaces();
  const bool comma = last.unit->kind == Kind::time && at_ == start && rest().starts_with(",");
  const bool plus = comma ? take(1) : take_phrase(PhraseRole::plus);
  skip_spaces();
  const auto next = part();
  const bool fits = next && next->unit != nullptr && next->unit->kind == last.unit->kind && next->value >= 0 &&
                    (plus && !comma ? next->unit != last.unit : next->unit->to_base < last.unit->to_base);
  if (!fits) {
    at_ = start;
    return false;
  }
  parts.push_back(*next);
  return true;
}

std::optional<AmountParser::Parts> AmountParser::parts() {
  auto first = part();
  if (!first) return std::nullopt;
  Parts made{*first};
  constexpr std::size_t most_parts = 8;
  if (add_minutes(made)) return made;
  while (made.size() < most_parts && add_part(made)) {
  }
  return made;
}

/// Gives a figure without a unit the one of the other figure of the range, or counts pieces.
bool AmountParser::settle(Parts& parts, const Parts* other) {
  Part& only = parts.front();
  if (only.unit != nullptr) return true;
  if (other != nullptr && other->front().unit != nullptr) {
    only.unit = other->front().unit;
    return true;
  }
  if (!only.bare || !wants(wanted_, Kind::count)) return false;
  only.unit = unit_by_id("piece");
  return true;
}

bool AmountParser::bound(Amount& amount, bool after) {
  const std::size_t start = at_;
  skip_spaces();
  if (take_phrase(after ? PhraseRole::at_least_after : PhraseRole::at_least)) {
    amount.form = Amount::Form::at_least;
  } else if (take_phrase(after ? PhraseRole::at_most_after : PhraseRole::at_most)) {
    amount.form = Amount::Form::at_most;
  } else {
    at_ = start;
    return false;
  }
  return true;
}

bool AmountParser::fill(Amount& amount, const Parts& parts, bool high) {
  auto& side = high ? amount.high : amount.low;
  side.clear();
  for (const Part& part : parts) side.push_back({part.value, part.unit});
  amount.kind = parts.front().unit->kind;
  return sum(side).ok();
}

/// The second figure of a range; nothing is taken when there is none.
bool AmountParser::range(Amount& amount, Parts& low, bool between) {
  const std::size_t start = at_;
  skip_spaces();
  const bool joined = between && take_phrase(PhraseRole::plus);
  if (!joined && !take_phrase(PhraseRole::to)) {
    at_ = start;
    return false;
  }
  skip_spaces();
  auto high = parts();
  const bool bare_high = high && high->front().unit == nullptr;
  const bool may_be_bare = low.front().unit == nullptr || is_prefix_unit(*low.front().unit);
  const bool fits = high && (!bare_high || may_be_bare) && settle(*high, &low) && settle(low, &*high) &&
                    low.front().unit->kind == high->front().unit->kind;
  if (!fits || !fill(amount, low, false) || !fill(amount, *high, true)) {
    at_ = start;
    amount.high.clear();
    return false;
  }
  amount.form = Amount::Form::range;
  if (sum(amount.low) <= sum(amount.high)) return true;
  // "-18 to -22 °C" is said from the warmer end.
  if (is_temperature(amount.kind) && low.front().value < 0 && high->front().value < 0) {
    std::swap(amount.low, amount.high);
    return true;
  }
  refuse("reversed-range", 0, at_,
         "the range " + std::string(base::trimmed(text_.substr(0, at_))) + " runs from the larger figure to the smaller",
         "write the smaller figure first");
  at_ = start;
  amount = Amount{};
  return false;
}

/// A figure that has no unit and must have one. An article before a word that is no unit is no figure at all.
void AmountParser::refuse_without_unit(std::size_t from, const Part& figure) {
  // In a sentence a figure without a unit is nothing to complain of.
  if (fault_ || in_sentence_) return;
  const std::size_t end = at_;
  skip_spaces();
  const bool word = is_letter(scalar_at(text_, at_));
  if (word && figure.bare) refuse(unknown_unit(rest(), wanted_, reading_), at_);
  if (!word) refuse("unreadable-amount", from, end, "the figure has no unit", "write the unit after it");
}

/// "250 g", as nearly all stand that stand alone: a whole figure in plain digits and a unit. The rest of the grammar would
/// read the same.
std::optional<Amount> AmountParser::plain() {
  constexpr std::size_t most_digits = 6;  // no unit makes that too large
  std::int64_t value = 0;
  std::size_t digits = 0;
  for (; digits < text_.size() && text_[digits] >= '0' && text_[digits] <= '9'; ++digits) {
    if (digits == most_digits) return std::nullopt;
    value = value * 10 + (text_[digits] - '0');
  }
  if (digits == 0 || digits == text_.size()) return std::nullopt;
  at_ = digits;
  skip_spaces();
  const UnitFound found = scan_unit(rest(), wanted_, reading_, false);
  if (found.used != rest().size() || found.fault || is_prefix_unit(*found.unit)) {
    at_ = 0;
    return std::nullopt;
  }
  at_ = text_.size();
  return amount_of(value, *found.unit);
}

std::optional<Amount> AmountParser::statement() {
  if (!in_sentence_) {
    if (auto found = plain()) return found;
  }
  Amount amount;
  skip_spaces();
  bool about = take_phrase(PhraseRole::about);
  skip_spaces();
  const bool bounded = bound(amount, false);
  const Amount::Form form = amount.form;
  skip_spaces();
  if (!about) about = take_phrase(PhraseRole::about);
  skip_spaces();
  const bool between = !bounded && take_phrase(PhraseRole::between);
  if (!bounded && !between) take_phrase(PhraseRole::from);
  skip_spaces();
  const std::size_t first = at_;
  auto low = parts();
  if (!low) return std::nullopt;
  if (bounded || !range(amount, *low, between)) {
    if (fault_ && fault_->rule == "reversed-range") return std::nullopt;
    if (!settle(*low, nullptr)) {
      refuse_without_unit(first, low->front());
      return std::nullopt;
    }
    if (!fill(amount, *low, false)) {
      refuse("unreadable-amount", first, at_, "the figure is too large or too fine to be kept exactly",
             "write it with fewer digits");
      return std::nullopt;
    }
    amount.form = form;
    if (!bounded) bound(amount, true);
    if (amount.form == Amount::Form::at_most) std::swap(amount.low, amount.high);
  }
  const std::size_t end = at_;
  skip_spaces();
  if (!about && take_phrase(PhraseRole::about_after)) {
    about = true;
  } else {
    at_ = end;
  }
  amount.about = about;
  return amount;
}

}  // namespace tamis::measure
