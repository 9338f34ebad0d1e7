#include "core/change/figure.h"

#include <algorithm>

#include "core/measure/write.h"

namespace tamis::change {
namespace {

using base::Ratio;
using measure::Amount;
using measure::Kind;
using measure::Quantity;
using measure::Rounded;
using measure::System;
using measure::Toward;

constexpr std::string_view no_break = "\u00A0";

bool unit_stands_in(const measure::Unit& unit, System system) {
  if (unit.rough || unit.system == System::trade || unit.system == System::none) return true;
  if (unit.system == System::si) return system == System::metric;
  return unit.system == system || unit.also == system;
}

template <class Test>
bool all_units(const Amount& amount, Test test) {
  const auto holds = [&](const Quantity& quantity) { return test(*quantity.unit); };
  return std::all_of(amount.low.begin(), amount.low.end(), holds) &&
         std::all_of(amount.high.begin(), amount.high.end(), holds);
}

Ratio sum(const std::vector<Quantity>& parts) {
  Ratio total = 0;
  for (const Quantity& part : parts) {
    total = total + (part.unit->id == "gas-mark" ? measure::gas_mark_celsius(part.value) : part.in_base());
  }
  return total;
}

/// From 50 °C up a limit must be reached, to 25 °C it must not be passed; between, nobody can tell (common practice).
Toward side_of_limit(Ratio celsius) {
  if (celsius >= 50) return Toward::up;
  if (celsius <= 25) return Toward::down;
  return Toward::nearest;
}

Rounded round_temperature(Ratio celsius, const Target& target, Toward side) {
  const measure::Scale scale = target.units == System::metric ? measure::Scale::celsius : measure::Scale::fahrenheit;
  if (target.oven) return measure::round_oven(celsius, scale, *target.tools);
  return measure::round_food_temperature(celsius, scale, *target.tools, side);
}

Rounded round_end(Ratio exact, Kind kind, const Target& target, Toward side) {
  switch (kind) {
    case Kind::mass: return measure::round_mass(exact, target.units, *target.tools, target.tolerance);
    case Kind::volume: return measure::round_volume(exact, target.units, *target.tools, target.tolerance);
    case Kind::length: return measure::round_length(exact, target.units, *target.tools);
    default: return round_temperature(exact, target, side);
  }
}

std::optional<Figure> rebuild(const Amount& amount, Kind kind, std::optional<Rounded> low,
                              std::optional<Rounded> high) {
  Figure made;
  made.amount.form = amount.form;
  made.amount.about = amount.about;
  made.amount.kind = kind;
  if (low) made.amount.low = low->amount.low;
  if (high) made.amount.high = high->amount.low;
  if (amount.form == Amount::Form::range && low->amount.low_base() == high->amount.low_base()) {
    made.amount.form = Amount::Form::exact;
    made.amount.high.clear();
  }
  if (low) made.ends.push_back(*std::move(low));
  if (high) made.ends.push_back(*std::move(high));
  return made;
}

std::optional<Figure> convert_range(const Amount& amount, Kind kind, Ratio low, Ratio high, const Target& target) {
  if (target.gate || target.control) {
    const Rounded inner_low = round_end(low, kind, target, Toward::up);
    const Rounded inner_high = round_end(high, kind, target, Toward::down);
    if (inner_low.amount.low_base() <= inner_high.amount.low_base()) {
      return rebuild(amount, kind, inner_low, inner_high);
    }
  }
  return rebuild(amount, kind, round_end(low, kind, target, Toward::nearest),
                 round_end(high, kind, target, Toward::nearest));
}

/// A point or comma between two digits becomes the sign the document writes with.
std::string with_decimal(std::string text, char decimal) {
  const auto digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  for (std::size_t i = 1; decimal != 0 && i + 1 < text.size(); ++i) {
    if ((text[i] == '.' || text[i] == ',') && digit(i - 1) && digit(i + 1)) text[i] = decimal;
  }
  return text;
}

measure::Writing writing_of(const measure::Reading& reading) {
  measure::Writing writing;
  if (!reading.language.empty()) writing.language = reading.language;
  return writing;
}

}  // namespace

bool stands_in(const Amount& amount, System system) {
  return !amount.has_figure() || all_units(amount, [system](const measure::Unit& u) { return unit_stands_in(u, system); });
}

bool is_unmeasured(const Amount& amount) {
  if (!amount.has_figure() || amount.kind == Kind::count) return true;
  return all_units(amount, [](const measure::Unit& u) { return u.rough || u.system == System::trade; });
}

Ratio exact_low(const Amount& amount) { return sum(amount.low.empty() ? amount.high : amount.low); }
Ratio exact_high(const Amount& amount) { return sum(amount.high.empty() ? amount.low : amount.high); }

std::optional<Figure> convert_figure(const Amount& amount, const Passage& passage, const Target& target) {
  const Ratio low = exact_low(amount) * passage.factor + passage.shift;
  const Ratio high = exact_high(amount) * passage.factor + passage.shift;
  if (!low.ok() || !high.ok()) return std::nullopt;
  const Kind kind = passage.kind;
  switch (amount.form) {
    case Amount::Form::exact: {
      const Toward side = target.control && kind == Kind::temperature ? side_of_limit(low) : Toward::nearest;
      return rebuild(amount, kind, round_end(low, kind, target, side), std::nullopt);
    }
    case Amount::Form::at_least:
      return rebuild(amount, kind, round_end(low, kind, target, Toward::up), std::nullopt);
    case Amount::Form::at_most:
      return rebuild(amount, kind, std::nullopt, round_end(high, kind, target, Toward::down));
    case Amount::Form::range: return convert_range(amount, kind, low, high, target);
    default: return std::nullopt;
  }
}

bool same_figure(const Amount& a, const Amount& b) {
  const auto same = [](const Quantity& x, const Quantity& y) { return x.unit == y.unit && x.value == y.value; };
  return a.form == b.form && a.about == b.about && a.words == b.words &&
         std::equal(a.low.begin(), a.low.end(), b.low.begin(), b.low.end(), same) &&
         std::equal(a.high.begin(), a.high.end(), b.high.begin(), b.high.end(), same);
}

std::string write_figure(const Amount& amount, const measure::Reading& reading) {
  return with_decimal(measure::write_amount(amount, writing_of(reading)), reading.decimal);
}

std::string write_lengths(const std::vector<Amount>& lengths, const measure::Reading& reading) {
  const auto plain = [&](const Amount& one) {
    return one.form == Amount::Form::exact && !one.about && one.low.size() == 1 && lengths.back().low.size() == 1 &&
           one.low.front().unit == lengths.back().low.front().unit;
  };
  const bool shared = std::all_of(lengths.begin(), lengths.end(), plain);
  std::string out;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    if (i != 0) out.append(no_break).append("×").append(no_break);
    const bool number_alone = shared && i + 1 < lengths.size();
    out += number_alone
               ? with_decimal(measure::write_number(lengths[i].low.front().value, writing_of(reading)), reading.decimal)
               : write_figure(lengths[i], reading);
  }
  return out;
}

std::string write_exactly(std::vector<Amount> amounts, const measure::Reading& reading) {
  for (Amount& amount : amounts) {
    const std::string_view id = amount.kind == Kind::mass     ? "g"
                                : amount.kind == Kind::volume ? "ml"
                                : amount.kind == Kind::length ? "mm"
                                                              : "degc";
    const measure::Unit* unit = measure::unit_by_id(id);
    if (!amount.low.empty()) amount.low = {{sum(amount.low), unit}};
    if (!amount.high.empty()) amount.high = {{sum(amount.high), unit}};
  }
  return write_lengths(amounts, reading);
}

}  // namespace tamis::change
