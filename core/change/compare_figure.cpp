#include "core/change/compare_figure.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/change/compare_words.h"
#include "core/change/figure.h"
#include "core/change/subject.h"
#include "core/measure/kitchen_tools.h"

namespace tamis::change {

using measure::Amount;
using measure::Kind;

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();
/// Below this share of a figure no tool is asked: a pinch is not two pinches on scales that show neither.
constexpr double least_share = 0.05;
/// Nobody reads a jug finer than this share of what is in it (common practice).
constexpr double jug_share = 0.0025;
constexpr double rounding_of_floats = 1e-9;
constexpr double scaled_share = 0.01;

std::string folded_text(std::string_view text) {
  const std::vector<std::string> words = words_of(text);
  return joined(words, 0, words.size());
}

Ends ends_of(const Amount& amount) {
  const double low = exact_low(amount).approximate();
  const double high = exact_high(amount).approximate();
  if (amount.form == Amount::Form::at_least) return {low, endless};
  if (amount.form == Amount::Form::at_most) return {-endless, high};
  return {low, high};
}

/// The amount itself, or what the house means by its word.
const Amount* meant(const Amount& amount, const fiche::Kitchen& kitchen) {
  if (amount.has_figure()) return &amount;
  const auto meaning = kitchen.meanings.find(amount.words);
  return meaning != kitchen.meanings.end() && meaning->second.has_figure() ? &meaning->second : nullptr;
}

void take_amount(Measured& out, const Amount& amount, const fiche::Kitchen& kitchen) {
  const Amount* figure = meant(amount, kitchen);
  out.kind = amount.kind;
  if (figure == nullptr) {
    out.words = amount.words;
    return;
  }
  out.kind = figure->kind;
  out.about = figure->about;
  out.ends = ends_of(*figure);
  const auto& parts = figure->low.empty() ? figure->high : figure->low;
  out.fahrenheit = !parts.empty() && parts.front().unit->id == "degf";
}

/// Half of what the tools can tell apart at this size; 0 where a figure is counted or timed.
double half_step(double value, const Measured& figure, const measure::KitchenTools& tools) {
  value = std::abs(value);
  switch (figure.kind) {
    case Kind::mass: {
      if (tools.scales.empty()) return 0;
      auto scales = std::find_if(tools.scales.begin(), tools.scales.end(),
                                 [&](const auto& one) { return value <= one.most_g.approximate(); });
      if (scales == tools.scales.end()) --scales;
      return std::min(scales->reads_g.approximate() / 2, value * least_share);
    }
    case Kind::volume: {
      const double spoon = tools.spoons.empty() ? 0 : tools.spoons.front().in_base().approximate() / 2;
      return std::max(std::min(spoon, value * least_share), value * jug_share);
    }
    case Kind::length: return tools.length_step_mm.approximate() / 2;
    case Kind::temperature: return (figure.oven ? tools.oven_step_c : tools.thermometer_step_c).approximate() / 2;
    default: return 0;
  }
}

bool same_end(double a, double b, double factor, const Measured& was, const Measured& is, const Side& from,
              const Side& to) {
  if (std::isinf(a) || std::isinf(b)) return a == b;
  if (same_within(a, b, factor, is, from, to)) return true;
  if (!is.oven || was.fahrenheit == is.fahrenheit) return false;
  // 350 °F and 180 °C are one setting of the dial, as a conversion has it.
  const auto dial = [&](double celsius, bool fahrenheit, const Side& side) {
    const base::Ratio exact(std::llround(celsius * 1000), 1000);
    const auto scale = fahrenheit ? measure::Scale::fahrenheit : measure::Scale::celsius;
    return measure::round_oven(exact, scale, side.kitchen().tools).amount.low_base().approximate();
  };
  return std::abs(dial(a, is.fahrenheit, to) - b) < 0.01 || std::abs(dial(b, was.fahrenheit, from) - a) < 0.01;
}

Relation::Way way_of(const Ends& was, const Ends& is, bool low_same, bool high_same) {
  const bool low_up = is.low > was.low || low_same;
  const bool low_down = is.low < was.low || low_same;
  const bool high_up = is.high > was.high || high_same;
  const bool high_down = is.high < was.high || high_same;
  using Way = Relation::Way;
  const bool ranges = was.low != was.high || is.low != is.high;
  // One end of a bound is open on both sides, so that the other alone speaks.
  if (ranges && !std::isinf(is.low) && !std::isinf(is.high) && !std::isinf(was.low) && !std::isinf(was.high)) {
    if (low_up && high_down) return Way::narrower;
    if (low_down && high_up) return Way::wider;
  }
  const bool same_form = std::isinf(was.low) == std::isinf(is.low) && std::isinf(was.high) == std::isinf(is.high);
  if (same_form && low_up && high_up) return Way::more;
  if (same_form && low_down && high_down) return Way::less;
  return Way::other;
}

double middle(const Ends& ends) {
  if (std::isinf(ends.low)) return ends.high;
  return std::isinf(ends.high) ? ends.low : (ends.low + ends.high) / 2;
}

Relation relate_ends(const Measured& was, const Measured& is, double factor, const Side& from, const Side& to) {
  const bool low = same_end(was.ends->low, is.ends->low, factor, was, is, from, to);
  const bool high = same_end(was.ends->high, is.ends->high, factor, was, is, from, to);
  if (low && high) return {};
  const Ends scaled{was.ends->low * factor, was.ends->high * factor};
  Relation out;
  out.way = way_of(scaled, *is.ends, low, high);
  const double before = middle(scaled);
  if (before > 0) out.times = middle(*is.ends) / before;
  const bool low_open = std::isinf(scaled.low);
  const bool high_open = std::isinf(scaled.high);
  const double low_by = low_open ? 0 : is.ends->low - scaled.low;
  const double high_by = high_open ? 0 : is.ends->high - scaled.high;
  if (low_open || high_open || std::abs(low_by - high_by) < 0.01) out.by = low_open ? high_by : low_by;
  if (std::isinf(out.by) || std::isnan(out.by)) out.by = 0;
  return out;
}

/// Mass against volume of one food.
std::optional<Relation> relate_across(const Measured& was, const Measured& is, double factor) {
  const bool crosses = (was.kind == Kind::mass && is.kind == Kind::volume) || (was.kind == Kind::volume && is.kind == Kind::mass);
  if (!crosses || !was.ends || !is.ends || was.food == nullptr || was.food != is.food) return std::nullopt;
  const auto density = was.grams_per_ml ? was.grams_per_ml : is.grams_per_ml;
  if (!density) return std::nullopt;
  const auto grams = [&](const Measured& figure) {
    return middle(*figure.ends) * (figure.kind == Kind::volume ? *density : 1);
  };
  Relation out;
  const double before = grams(was) * factor;
  if (!(before > 0)) return std::nullopt;
  out.times = grams(is) / before;
  const double tolerance = food::tolerance_of(was.food->role).approximate();
  const bool same = std::abs(std::log(out.times)) <= std::log(1 + tolerance);
  out.way = same ? Relation::Way::measured_otherwise : out.times > 1 ? Relation::Way::more : Relation::Way::less;
  return out;
}

Ends bounded(const Measured& figure, Bound bound) {
  Ends ends = *figure.ends;
  if (bound == Bound::limit && ends.low == ends.high && figure.kind == Kind::temperature) {
    if (ends.low >= 50) bound = Bound::at_least;
    if (ends.low <= 25) bound = Bound::at_most;
  }
  if (bound == Bound::at_least) ends.high = endless;
  if (bound == Bound::at_most) ends.low = -endless;
  return ends;
}

}  // namespace

Measured figure_of(const Side& side, const fiche::Statement& statement) {
  Measured out;
  out.text = folded_text(statement.text);
  const Subject subject = subject_of(side.fiche(), statement.node, statement.at);
  out.oven = subject.oven;
  out.food = subject.food;
  if (const auto density = density_of(side.fiche(), subject)) out.grams_per_ml = density->grams_per_ml.approximate();
  if (statement.amount) {
    take_amount(out, *statement.amount, side.kitchen());
  } else if (statement.share && statement.share->form == measure::Share::Form::amount) {
    take_amount(out, statement.share->amount, side.kitchen());
  } else if (statement.share && statement.share->form == measure::Share::Form::fraction) {
    const double share = statement.share->fraction.approximate();
    out.words = "share";
    out.sides = {{share, share}};
  } else if (statement.share) {
    out.words = "the rest";
  } else if (!statement.lengths.empty()) {
    out.kind = Kind::length;
    if (statement.lengths.size() == 1) out.ends = ends_of(statement.lengths.front());
    for (const Amount& one : statement.lengths) out.sides.push_back(ends_of(one));
  } else {
    out.words = out.text;
  }
  return out;
}

bool same_within(double was, double is, double factor, const Measured& figure, const Side& from, const Side& to) {
  const double wanted = was * factor;
  const double larger = std::max(std::abs(wanted), std::abs(is));
  const auto steps = [&](const Side& side) {
    const measure::KitchenTools& tools = side.kitchen().tools;
    return std::max(half_step(was, figure, tools) * factor, half_step(is, figure, tools));
  };
  double apart = std::max(steps(from), steps(to)) + rounding_of_floats * larger;
  if (factor != 1) {
    apart = std::max(apart, scaled_share * larger);
    if (figure.kind == Kind::count) apart = std::max(apart, std::max(1.0, factor) / 2 + rounding_of_floats);
  }
  return std::abs(wanted - is) <= apart;
}

Relation relate(const Measured& was, const Measured& is, double factor, const Side& from, const Side& to) {
  if (const auto across = relate_across(was, is, factor)) return *across;
  Relation other;
  other.way = Relation::Way::other;
  if (was.kind != is.kind || was.words != is.words || was.sides.size() != is.sides.size()) return other;
  if (was.ends && is.ends) return relate_ends(was, is, factor, from, to);
  if (was.ends || is.ends) return other;
  for (std::size_t i = 0; i < was.sides.size(); ++i) {
    if (!same_end(was.sides[i].low, is.sides[i].low, 1, was, is, from, to)) return other;
  }
  return {};
}

Change::Hold hold_of(const Measured& was, const Measured& is, Bound bound) {
  using Hold = Change::Hold;
  if (!was.ends || !is.ends || was.kind != is.kind) return Hold::same;
  const Ends before = bounded(was, bound);
  const Ends now = bounded(is, bound);
  const bool inside = now.low >= before.low && now.high <= before.high;
  const bool around = now.low <= before.low && now.high >= before.high;
  if (inside == around) return Hold::same;
  return inside ? Hold::tightened : Hold::loosened;
}

}  // namespace tamis::change
