#include "core/physics/grid.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tamis::physics {
namespace {

using Knot = Substance::Knot;

/// One direction: its cells' faces and volumes, as shares of the whole direction's volume.
struct Direction {
  std::vector<double> volume;  // of each cell
  std::vector<double> face;    // beyond each cell, over the volume: 1/m
  double width = 0;            // of a cell, m

  Direction(const Body::Part& part, std::size_t cells) : width(part.length / static_cast<double>(cells)) {
    const double power = part.shape == Shape::slab ? 1 : part.shape == Shape::cylinder ? 2 : 3;
    for (std::size_t i = 0; i < cells; ++i) {
      const double inner = static_cast<double>(i) / static_cast<double>(cells);
      const double outer = static_cast<double>(i + 1) / static_cast<double>(cells);
      volume.push_back(std::pow(outer, power) - std::pow(inner, power));
      face.push_back(power * std::pow(outer, power - 1) / part.length);
    }
  }
};

class Solver {
 public:
  Solver(const Body& body, const Substance& substance, double coefficient, double from, double medium, const Grid& grid)
      : substance_(substance), knots_(substance.knots()), coefficient_(coefficient), medium_(medium) {
    static constexpr std::array usual{50, 24, 16};
    const int cells = grid.cells > 0 ? grid.cells : usual[std::min<std::size_t>(body.parts.size(), 3) - 1];
    std::size_t all = 1;
    for (const Body::Part& part : body.parts) {
      directions_.emplace_back(part, static_cast<std::size_t>(std::max(cells, 3)));
      strides_.push_back(all);
      all *= directions_.back().volume.size();
    }
    celsius_.assign(all, from);
    heat_.assign(all, substance.heat(from));
    segment_.assign(all, substance.segment_at(from, 0));
    volumes();
  }

  void step(double seconds) {
    const std::size_t count = directions_.size();
    for (std::size_t i = 0; i < count; ++i) sweep(forth_ ? i : count - 1 - i, seconds);
    forth_ = !forth_;
  }

  [[nodiscard]] double mean_heat() const {  // J/kg
    double sum = 0;
    for (std::size_t i = 0; i < heat_.size(); ++i) sum += heat_[i] * volume_[i];
    return sum;
  }
  [[nodiscard]] double heat_out() const { return heat_out_; }

  [[nodiscard]] double at(Place place) const {
    if (place == Place::mean) return substance_.celsius(mean_heat());
    if (place == Place::centre) return along(0, 0, true);
    // The outermost cell, and through its outer half to the face.
    const Direction& first = directions_.front();
    const double inner = along(0, first.volume.size() - 1, false);
    const double k = substance_.conductivity(inner);
    const double film = coefficient_ * first.width / 2;
    return (k * inner + film * medium_) / (k + film);
  }

 private:
  void volumes() {
    volume_.assign(heat_.size(), 1);
    for (std::size_t d = 0; d < directions_.size(); ++d)
      for (std::size_t i = 0; i < volume_.size(); ++i) volume_[i] *= directions_[d].volume[i / strides_[d] % directions_[d].volume.size()];
  }

  /// On the axes of all directions but the first; there in the cell, or (centred) on its axis too: a parabola through the
  /// two innermost cells, level in the middle.
  [[nodiscard]] double along(std::size_t direction, std::size_t cell, bool centred) const { return axis(directions_.size(), direction, cell, centred, 0); }
  [[nodiscard]] double axis(std::size_t left, std::size_t first, std::size_t cell, bool centred, std::size_t index) const {
    if (left == 0) return celsius_[index];
    const std::size_t d = left - 1;
    if (d == first && !centred) return axis(d, first, cell, centred, index + cell * strides_[d]);
    // Where a front of ice passes there is no parabola.
    const double inner = axis(d, first, cell, centred, index);
    const double bow = (inner - axis(d, first, cell, centred, index + strides_[d])) / 8;
    return std::abs(bow) < 0.1 ? inner + bow : inner;
  }

  void sweep(std::size_t d, double seconds) {
    const Direction& direction = directions_[d];
    const std::size_t cells = direction.volume.size(), stride = strides_[d];
    for (auto* one : {&flow_, &below_, &shift_, &foreseen_, &old_heat_, &old_celsius_}) one->resize(cells);
    for (std::size_t start = 0; start < heat_.size(); ++start)
      if (start / stride % cells == 0) line(direction, start, stride, seconds);
  }

  [[nodiscard]] double summed(std::size_t i) const {
    const Knot& a = knots_[segment_[i]];
    const Knot& b = knots_[segment_[i] + 1];
    return a.summed + (celsius_[i] - a.celsius) * (b.summed - a.summed) / (b.celsius - a.celsius);
  }
  [[nodiscard]] double conductivity(std::size_t i) const {
    const Knot& a = knots_[segment_[i]];
    const Knot& b = knots_[segment_[i] + 1];
    return (b.summed - a.summed) / (b.celsius - a.celsius);
  }

  /// One implicit step along a line of cells, from the axis outwards: Newton's method in the heat contents, whose first
  /// turn is Pham's step. What flows by the last turn's temperatures is booked, so that no heat is lost.
  void line(const Direction& direction, std::size_t start, std::size_t stride, double seconds) {
    const std::size_t cells = direction.volume.size();
    flows(direction, start, stride, seconds);
    double coldest = celsius_[start];
    for (std::size_t i = 0; i < cells; ++i) {
      const std::size_t here = start + i * stride;
      old_celsius_[i] = celsius_[here];
      old_heat_[i] = heat_[here];
      coldest = std::min(coldest, celsius_[here]);
    }
    implicit_ = coldest < substance_.bend() ? with_ice : without_ice;
    constexpr int most_turns = 8;
    for (int turn = 0; turn < most_turns && !settle(direction, start, stride); ++turn) {
    }
    const double across = volume_[start] / direction.volume.front();
    const double outer = implicit_ * foreseen_[cells - 1] + (1 - implicit_) * old_celsius_[cells - 1];
    heat_out_ += flow_[cells - 1] * (outer - medium_) * across;
  }

  /// What a cell gives to the next over a step for each K between them, J/K to the m³ of a line of unit volume.
  void flows(const Direction& direction, std::size_t start, std::size_t stride, double seconds) {
    const std::size_t cells = direction.volume.size();
    double summed_here = summed(start);
    for (std::size_t i = 0; i + 1 < cells; ++i) {
      const std::size_t here = start + i * stride, next = here + stride;
      const double summed_next = summed(next);
      const double difference = celsius_[here] - celsius_[next];
      const double k = std::abs(difference) > 1e-6 ? (summed_here - summed_next) / difference : conductivity(here);
      flow_[i] = k * direction.face[i] / direction.width * seconds;
      summed_here = summed_next;
    }
    const double half = direction.width / 2 / conductivity(start + (cells - 1) * stride);
    flow_[cells - 1] = direction.face[cells - 1] / (1 / coefficient_ + half) * seconds;
  }

  [[nodiscard]] double slope(std::size_t i) const {  // K to the J/kg
    const Knot& a = knots_[segment_[i]];
    const Knot& b = knots_[segment_[i] + 1];
    return (b.celsius - a.celsius) / (b.heat - a.heat);
  }

  /// What flows into a cell over the step at temperatures that `at` tells by the cell's number along the line.
  template <class At>
  double net(std::size_t i, std::size_t cells, At at) const {
    const double inward = i > 0 ? flow_[i - 1] * (at(i - 1) - at(i)) : 0;
    return inward - flow_[i] * (at(i) - (i + 1 < cells ? at(i + 1) : medium_));
  }

  /// One turn of Newton's: true when the temperatures are what the turn foresaw.
  bool settle(const Direction& direction, std::size_t start, std::size_t stride) {
    const std::size_t cells = direction.volume.size();
    const auto now = [&](std::size_t i) { return celsius_[start + i * stride]; };
    const auto was = [&](std::size_t i) { return old_celsius_[i]; };
    double slope_before = 0;
    for (std::size_t i = 0; i < cells; ++i) {
      const std::size_t here = start + i * stride;
      const double mass = direction.volume[i] * substance_.density();
      const double slope_here = slope(here);
      double right = mass * (old_heat_[i] - heat_[here]) + implicit_ * net(i, cells, now) + (1 - implicit_) * net(i, cells, was);
      const double inward = i > 0 ? implicit_ * flow_[i - 1] : 0;
      double pivot = mass + (inward + implicit_ * flow_[i]) * slope_here;
      if (i > 0) {
        pivot += inward * slope_before * below_[i - 1];
        right += inward * slope_before * shift_[i - 1];
      }
      below_[i] = i + 1 < cells ? -implicit_ * flow_[i] * slope(here + stride) / pivot : 0;
      shift_[i] = right / pivot;
      slope_before = slope_here;
    }
    bool settled = true;
    double outer = 0;
    for (std::size_t i = cells; i-- > 0;) {
      const std::size_t here = start + i * stride;
      const double change = shift_[i] - below_[i] * outer;
      outer = change;
      foreseen_[i] = celsius_[here] + slope(here) * change;
      heat_[here] += change;
      const std::size_t segment = segment_[here] = substance_.segment_of(heat_[here], segment_[here]);
      const Knot& a = knots_[segment];
      const Knot& b = knots_[segment + 1];
      celsius_[here] = a.celsius + (heat_[here] - a.heat) * (b.celsius - a.celsius) / (b.heat - a.heat);
      constexpr double near = 0.01;  // K
      settled = settled && std::abs(celsius_[here] - foreseen_[i]) < near;
    }
    return settled;
  }

  const Substance& substance_;
  const std::vector<Knot>& knots_;
  double coefficient_, medium_;
  std::vector<Direction> directions_;
  std::vector<std::size_t> strides_;
  std::vector<double> celsius_, heat_, volume_;
  std::vector<std::size_t> segment_;
  std::vector<double> flow_, below_, shift_, foreseen_, old_heat_, old_celsius_;  // along a line
  // How much of a step goes by the temperatures at its end: a half is exact to the second order, but rings where ice ends.
  static constexpr double without_ice = 0.55, with_ice = 0.75;
  double implicit_ = without_ice;
  double heat_out_ = 0;
  bool forth_ = true;
};

/// Seconds in which a body of that kind takes up an eighth or so of what it can, roughly: the first step is a small part.
double scale(const Body& body, const Substance& substance, double coefficient, double from, double medium) {
  double length = body.parts.front().length;
  for (const Body::Part& part : body.parts) length = std::min(length, part.length);
  const double heat = std::abs(substance.heat(from) - substance.heat(medium)) * substance.density();
  const double k = substance.conductivity(medium);
  return heat / std::max(std::abs(from - medium), 1e-9) * length * (length / k + 1 / coefficient);
}

}  // namespace

Course course(const Body& body, const Substance& substance, double coefficient, double from, double medium, double to, Place place, const Grid& grid) {
  Course out;
  out.rests_at = medium;
  out.points.emplace_back(0, from);
  const double sign = medium < from ? -1 : 1;
  if ((to - from) * sign <= 0) {
    out.seconds = 0;
    return out;
  }
  if ((medium - to) * sign <= 0) return out;

  Solver solver(body, substance, coefficient, from, medium, grid);
  const double start = solver.mean_heat(), end = substance.heat(medium);
  double step = scale(body, substance, coefficient, from, medium) * grid.change * 0.01;
  double left = std::abs(start - end);
  constexpr int most_steps = 200000;
  for (int i = 0; i < most_steps; ++i) {
    const auto [seconds, celsius] = out.points.back();
    solver.step(step);
    const double now = solver.at(place);
    if ((now - to) * sign >= 0) {
      const double share = now == celsius ? 1 : (to - celsius) / (now - celsius);
      out.seconds = seconds + share * step;
      out.points.emplace_back(*out.seconds, to);
      break;
    }
    out.points.emplace_back(seconds + step, now);
    const double still = std::abs(solver.mean_heat() - end);
    const double changed = std::max(left - still, 0.0) / left;
    left = still;
    step *= std::clamp(changed > 0 ? grid.change / changed : 1.25, 0.5, 1.25);
  }
  out.heat_out = solver.heat_out();
  out.heat_lost = (start - solver.mean_heat()) * substance.density();
  return out;
}

}  // namespace tamis::physics
