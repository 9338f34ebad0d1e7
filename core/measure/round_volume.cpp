// Volumes. Millilitres are rounded to what spoons and jugs show; spoons and cups are combined as a cook would fill
// them: few fillings of measures that are in the set, "1 cup 2 tbsp", "1 qt 1 1/2 cups".

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "core/measure/rounded.h"
#include "core/measure/write.h"

namespace tamis::measure {
namespace {

using base::Ratio;

// ---- millilitres and litres

/// A syringe shows tenths, a set of spoons quarter teaspoons, a small measure 5 ml, a jug 10 ml from 100 ml up
/// (common practice).
Ratio jug_step(Ratio millilitres) {
  struct Step {
    Ratio from, step;
  };
  static const Step steps[] = {{0, Ratio(1, 10)}, {1, Ratio(1, 4)}, {3, Ratio(1, 2)}, {15, 1},
                               {20, 5},           {100, 10},        {2000, 50},       {10000, 100}};
  Ratio found = steps[0].step;
  for (const Step& step : steps) {
    if (millilitres >= step.from) found = step.step;
  }
  return found;
}

Amount millilitres_or_litres(Ratio millilitres) {
  if (millilitres >= 1000) return amount_of(millilitres / 1000, *unit_by_id("l"));
  return amount_of(millilitres, *unit_by_id("ml"));
}

Rounded metric(Ratio millilitres, Tolerance tolerance) {
  const Ratio step = jug_step(millilitres);
  Rounded made = rounded(millilitres_or_litres(base::round_to(millilitres, step)), millilitres, tolerance);
  // The next finer jug or measure shows half or a fifth of it.
  for (const Ratio finer : {step / 2, step / 5}) {
    if (made.within || finer < Ratio(1, 10)) continue;
    made = rounded(millilitres_or_litres(base::round_to(millilitres, finer)), millilitres, tolerance);
  }
  return made;
}

// ---- spoons, cups, pints

/// How much a measure can be filled with beyond whole ones, and how many fillings that takes.
struct Part {
  Ratio size;
  int fillings = 0;
};

/// A measure that can be filled: whole ones, and these parts of one.
struct Vessel {
  const Unit* unit;
  std::vector<Part> parts;  ///< below 1, ascending, 0 first
  Ratio least, most;        ///< how many of it stand alone
  bool marked = false;      ///< a jug with marks: one filling, however much
};

/// The parts that scoops of these sizes make together: 3/4 cup is 1/2 and 1/4. At most three scoops.
std::vector<Part> parts_of(const std::vector<Ratio>& sizes) {
  constexpr int most_scoops = 3;
  std::vector<Part> parts = {{0, 0}};
  for (const Ratio size : sizes) {
    if (size <= 0 || size >= 1) continue;
    for (std::size_t i = 0; i < parts.size() && parts.size() < 64; ++i) {
      const Part made{parts[i].size + size, parts[i].fillings + 1};
      if (made.size >= 1 || made.fillings > most_scoops) continue;
      const auto same = std::find_if(parts.begin(), parts.end(), [&](const Part& p) { return p.size == made.size; });
      if (same == parts.end()) {
        parts.push_back(made);
      } else {
        same->fillings = std::min(same->fillings, made.fillings);
      }
    }
  }
  // Nobody adds a quarter of a cup to a third.
  std::erase_if(parts, [&](const Part& part) {
    return std::none_of(sizes.begin(), sizes.end(), [&](Ratio size) {
      return part.size == 0 || (size > 0 && (part.size / size).whole());
    });
  });
  std::sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.size < b.size; });
  return parts;
}

/// The marks of a jug, each one filling.
std::vector<Part> marks(const std::vector<Ratio>& sizes) {
  std::vector<Part> parts = {{0, 0}};
  for (const Ratio size : sizes) parts.push_back({size, 1});
  return parts;
}

/// Sizes of the spoons or cups of a unit, in that unit; the usual ones when the kitchen's are of another system.
std::vector<Ratio> sizes_of(const std::vector<Quantity>& own, const std::vector<Quantity>& usual, const Unit& unit) {
  const auto of_system = [&](const std::vector<Quantity>& set) {
    return std::any_of(set.begin(), set.end(), [&](const Quantity& size) { return size.unit->system == unit.system; });
  };
  std::vector<Ratio> sizes;
  for (const Quantity& size : of_system(own) ? own : usual) {
    if (size.unit == &unit) sizes.push_back(size.value);
  }
  return sizes;
}

/// Adds a measure that can be filled in the parts a set of spoons or cups allows, from its smallest up; none where the
/// set has no such measure.
void add_scoop(std::vector<Vessel>& vessels, std::string_view unit, const std::vector<Quantity>& own,
               const std::vector<Quantity>& usual, Ratio most) {
  const Unit& measure = *unit_by_id(unit);
  const std::vector<Ratio> sizes = sizes_of(own, usual, measure);
  if (sizes.empty()) return;
  std::vector<Part> parts = parts_of(sizes);
  const Ratio least = parts.size() > 1 ? parts[1].size : Ratio(1);
  vessels.push_back({&measure, std::move(parts), least, most});
}

std::vector<Vessel> us_vessels(const KitchenTools& tools) {
  const KitchenTools usual;
  std::vector<Vessel> vessels = {{unit_by_id("gallon-us"), marks({Ratio(1, 4), Ratio(1, 2), Ratio(3, 4)}), 1, 1000000},
                                 {unit_by_id("quart-us"), marks({Ratio(1, 2)}), 1, 4}};
  add_scoop(vessels, "cup-us", tools.cups, usual.cups, 8);
  add_scoop(vessels, "tbsp-us", tools.spoons, usual.spoons, 7);
  add_scoop(vessels, "tsp-us", tools.spoons, usual.spoons, 3);
  return vessels;
}

std::vector<Vessel> imperial_vessels(const KitchenTools& tools) {
  const KitchenTools usual;
  std::vector<Vessel> vessels = {
      {unit_by_id("gallon-imperial"), marks({Ratio(1, 2)}), 1, 1000000},
      {unit_by_id("pint-imperial"), marks({Ratio(1, 4), Ratio(1, 2), Ratio(3, 4)}), Ratio(1, 2), 16},
      {unit_by_id("floz-imperial"), marks({Ratio(1, 2)}), 2, 30, true}};
  add_scoop(vessels, "tbsp-imperial", tools.spoons, usual.spoons, 5);
  add_scoop(vessels, "tsp-imperial", tools.spoons, usual.spoons, 3);
  return vessels;
}

std::vector<Vessel> metric_vessels(const KitchenTools& tools) {
  const KitchenTools usual;
  std::vector<Vessel> vessels;
  add_scoop(vessels, "cup-metric", tools.cups, usual.cups, 4);
  add_scoop(vessels, "tbsp-metric", tools.spoons, usual.spoons, 7);
  add_scoop(vessels, "tsp-metric", tools.spoons, usual.spoons, 3);
  return vessels;
}

/// One way to measure a volume out, and what it asks of the cook.
struct Way {
  Amount amount;
  int fillings = 0;
  Ratio error;
};

int fillings_of(const Vessel& vessel, std::int64_t whole, const Part& part) {
  return vessel.marked ? 1 : static_cast<int>(std::min<std::int64_t>(whole, 1000)) + part.fillings;
}

/// All ways of some parts, largest measure first. Whole measures come as many as fit; of the parts of a cup or pint
/// any may stand before a smaller measure ("2/3 cup 3 tbsp").
class Ways {
 public:
  Ways(Ratio millilitres, const std::vector<Vessel>& vessels) : exact_(millilitres), vessels_(vessels) {}

  std::vector<Way> all() {
    Way empty;
    empty.amount.kind = Kind::volume;
    for (std::size_t first = 0; first < vessels_.size(); ++first) extend(empty, exact_, first);
    return std::move(ways_);
  }

 private:
  static constexpr std::size_t most_parts = 3;
  static constexpr int eighths = 8;

  void extend(const Way& before, Ratio left, std::size_t at) {
    const Vessel& vessel = vessels_[at];
    const Ratio count = left / vessel.unit->to_base;
    const Ratio whole = count.floor();
    for (const Part& part : vessel.parts) {
      // Above a whole teaspoon nobody adds an eighth.
      if (part.size.denominator() == eighths && whole > 0) continue;
      end_with(before, left, at, whole, part);
      if (whole + part.size <= count) go_on(before, left, at, whole, part);
    }
    end_with(before, left, at, whole + 1, vessel.parts.front());
  }

  void end_with(const Way& before, Ratio left, std::size_t at, Ratio whole, const Part& part) {
    Way way = with(before, at, whole, part);
    const Ratio filled = whole + part.size;
    const bool alone = before.amount.low.empty();
    if (filled == 0 || (alone && (filled < vessels_[at].least || filled > vessels_[at].most))) return;
    // What comes to the measure before it belongs to an answer with fewer parts.
    if (!alone && filled * vessels_[at].unit->to_base >= vessels_[at - 1].unit->to_base) return;
    way.error = base::abs(left - filled * vessels_[at].unit->to_base);
    ways_.push_back(std::move(way));
  }

  void go_on(const Way& before, Ratio left, std::size_t at, Ratio whole, const Part& part) {
    const Vessel& vessel = vessels_[at];
    const Ratio filled = whole + part.size;
    const bool in_parts = vessel.unit->id.starts_with("cup") || vessel.unit->id.starts_with("pint");
    if (filled == 0 || (part.size > 0 && !in_parts) || before.amount.low.size() + 1 >= most_parts) return;
    // 3 tbsp 1 tsp, but no 5 tbsp 1 tsp, which are 1/3 cup.
    if (before.amount.low.empty() && at > 0) {
      const Vessel& larger = vessels_[at - 1];
      if (filled * vessel.unit->to_base >= larger.least * larger.unit->to_base) return;
    }
    const Way way = with(before, at, whole, part);
    for (std::size_t next = at + 1; next < vessels_.size(); ++next) {
      extend(way, left - filled * vessel.unit->to_base, next);
    }
  }

  Way with(Way way, std::size_t at, Ratio whole, const Part& part) const {
    way.amount.low.push_back({whole + part.size, vessels_[at].unit});
    way.fillings += fillings_of(vessels_[at], whole.numerator(), part);
    return way;
  }

  Ratio exact_;
  const std::vector<Vessel>& vessels_;
  std::vector<Way> ways_;
};

/// What a way costs: its fillings, the measures to fetch, and up to four fillings for using up the tolerance.
double cost_of(const Way& way, Ratio allowed) {
  constexpr double worth = 4;
  const double used = way.error == 0 ? 0 : way.error.approximate() / allowed.approximate();
  return way.fillings + static_cast<double>(way.amount.low.size()) + worth * used;
}

/// The rule is told in the header (round_volume).
Rounded household(Ratio millilitres, const std::vector<Vessel>& vessels, Tolerance tolerance) {
  const Ratio allowed = millilitres * tolerance.share;
  std::vector<Way> ways = Ways(millilitres, vessels).all();
  const auto better = [&](const Way& a, const Way& b) {
    const bool a_near = a.error <= allowed, b_near = b.error <= allowed;
    if (a_near != b_near) return a_near;
    if (!a_near && a.error != b.error) return a.error < b.error;
    if (a_near && (a.error == 0) != (b.error == 0)) return a.error == 0;
    return a_near ? cost_of(a, allowed) < cost_of(b, allowed) : a.fillings < b.fillings;
  };
  const auto best = std::min_element(ways.begin(), ways.end(), better);
  if (best != ways.end()) return rounded(std::move(best->amount), millilitres, tolerance);
  if (vessels.empty()) return metric(millilitres, tolerance);
  return rounded(amount_of(vessels.back().least, *vessels.back().unit), millilitres, tolerance);
}

}  // namespace

Rounded round_volume(Ratio millilitres, System system, const KitchenTools& tools, Tolerance tolerance) {
  Rounded made = system == System::us         ? household(millilitres, us_vessels(tools), tolerance)
                 : system == System::imperial ? household(millilitres, imperial_vessels(tools), tolerance)
                                              : metric(millilitres, tolerance);
  if (!made.within) made.better = "weigh it: no spoon or jug comes near enough";
  return made;
}

Rounded round_spoons(Ratio millilitres, System system, const KitchenTools& tools, Tolerance tolerance) {
  constexpr int four_cups = 1000;
  if (system == System::us || system == System::imperial || millilitres > four_cups) {
    return round_volume(millilitres, system, tools, tolerance);
  }
  return household(millilitres, metric_vessels(tools), tolerance);
}

}  // namespace tamis::measure
