#include "core/rules/agreement.h"

#include <algorithm>
#include <cmath>

#include "core/rules/figure_value.h"

namespace tamis::rules {
namespace {

using Form = measure::Amount::Form;

constexpr double most_slack = 0.06;

/// One end of an amount: its value and how much rounding it can hide.
struct End {
  double value;
  double slack;
};

double last_place(base::Ratio value) {
  if (!value.whole()) return 1.0 / static_cast<double>(value.denominator());
  std::int64_t n = std::abs(value.numerator());
  double place = 1;
  while (n != 0 && n % 10 == 0) {
    n /= 10;
    place *= 10;
  }
  return place;
}

double least_slack(measure::Kind kind, double value, fiche::El where) {
  if (kind == measure::Kind::length) return value <= 50 ? 3 : 1.5;
  if (kind != measure::Kind::temperature) return 0;
  switch (where) {
    case fiche::El::oven_temp: return 10;
    case fiche::El::medium_temp: return 5;
    case fiche::El::room_temp: return 3;
    default: return 2;
  }
}

class Sides {
 public:
  Sides(fiche::El where, double more) : where_(where), more_(more) {}

  End end(const measure::Amount& amount, const std::vector<measure::Quantity>& figure) const {
    const double value = value_of(figure);
    const double usual = amount.kind == measure::Kind::temperature
                             ? least_slack(amount.kind, value, where_) / 2
                             : slack_of(figure, most_slack) + more_ * std::abs(value) / 2;
    const double slack = std::max(usual, least_slack(amount.kind, value, where_) / 2);
    return {value, amount.about ? 2 * slack : slack};
  }

 private:
  fiche::El where_;
  double more_;
};

void compare(Gap& gap, End shown, End other, bool temperature) {
  const double distance = std::abs(shown.value - other.value);
  const double allowed = (shown.slack + other.slack) * (1 + 1e-9);
  if (distance <= allowed || (gap.apart && distance < std::abs(gap.shown - gap.other))) return;
  gap.apart = true;
  gap.shown = shown.value;
  gap.other = other.value;
  const double small = std::min(std::abs(shown.value), std::abs(other.value));
  const double large = std::max(std::abs(shown.value), std::abs(other.value));
  gap.times = temperature || small == 0 ? 1 : large / small;
  gap.grave = temperature ? distance > 4 * allowed : (small == 0 || gap.times >= 2);
}

bool has_low(const measure::Amount& amount) { return amount.form != Form::at_most; }
bool has_high(const measure::Amount& amount) { return amount.form == Form::range || amount.form == Form::at_most; }

/// A single figure beside a range need only lie between its ends.
void compare_inside(Gap& gap, End one, End low, End high, bool temperature, bool shown_is_one) {
  const bool below = one.value < low.value;
  const bool above = one.value > high.value;
  if (!below && !above) return;
  const End other = below ? low : high;
  shown_is_one ? compare(gap, one, other, temperature) : compare(gap, other, one, temperature);
}

}  // namespace

double slack_of(const std::vector<measure::Quantity>& figure, double most) {
  const measure::Quantity& last = figure.back();
  const double half = last_place(last.value) * last.unit->to_base.approximate() / 2;
  return std::min(half, most * std::abs(value_of(figure)));
}

double slack_of_printed(const std::vector<measure::Quantity>& figure, double most) {
  return slack_of(figure, figure.back().value.whole() ? most_slack : most);
}

bool is_rough(const measure::Amount& amount) {
  const auto rough = [](const measure::Quantity& part) { return part.unit->rough; };
  return std::any_of(amount.low.begin(), amount.low.end(), rough) ||
         std::any_of(amount.high.begin(), amount.high.end(), rough);
}

Gap gap_between(const measure::Amount& shown, const measure::Amount& other, fiche::El where, double more) {
  Gap gap;
  if (!shown.has_figure() || !other.has_figure() || shown.kind != other.kind) return gap;
  if (is_rough(shown) || is_rough(other)) return gap;
  const Sides sides(where, more);
  const bool temperature = shown.kind == measure::Kind::temperature;
  const bool shown_alone = shown.form == Form::exact;
  const bool other_alone = other.form == Form::exact;
  if (shown_alone && other.form == Form::range) {
    compare_inside(gap, sides.end(shown, shown.low), sides.end(other, other.low), sides.end(other, other.high),
                   temperature, true);
  } else if (other_alone && shown.form == Form::range) {
    compare_inside(gap, sides.end(other, other.low), sides.end(shown, shown.low), sides.end(shown, shown.high),
                   temperature, false);
  } else if (has_low(shown) && has_low(other)) {
    compare(gap, sides.end(shown, shown.low), sides.end(other, other.low), temperature);
    if (has_high(shown) && has_high(other)) {
      compare(gap, sides.end(shown, shown.high), sides.end(other, other.high), temperature);
    }
  } else if (has_high(shown) && has_high(other)) {
    compare(gap, sides.end(shown, shown.high), sides.end(other, other.high), temperature);
  } else {
    compare(gap, sides.end(shown, has_low(shown) ? shown.low : shown.high),
            sides.end(other, has_low(other) ? other.low : other.high), temperature);
  }
  return gap;
}

}  // namespace tamis::rules
