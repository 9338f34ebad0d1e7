#include "core/physics/roast.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tamis::physics {
namespace {

constexpr double latent = 2.4e6;        // J/kg, of water at 50 °C
constexpr double steam_of_oven = 8000;  // Pa
constexpr double steam_of_room = 1200;  // Pa: 50 % at 20 °C
constexpr double boils = 100;           // °C
constexpr double longest = 10 * 3600;   // s
constexpr double lewis = 1.0 / 67;      // W/m² to the Pa, for each W/(m² K)

double vapour_pressure(double celsius) { return 611.2 * std::exp(17.62 * celsius / (243.12 + celsius)); }

class Shells {
 public:
  explicit Shells(const Joint& joint) : material_(joint.material), wetness_(joint.wetness) {
    const double power = joint.form.shape == Shape::slab ? 1 : joint.form.shape == Shape::cylinder ? 2 : 3;
    width_ = joint.form.length / count;
    for (std::size_t i = 0; i < count; ++i) {
      const double inner = static_cast<double>(i) * width_, outer = static_cast<double>(i + 1) * width_;
      volume_[i] = (std::pow(outer, power) - std::pow(inner, power)) / power;
      face_[i] = std::pow(outer, power - 1);
    }
    celsius_.fill(joint.from);
    surface_ = joint.from;
    step_ = 0.25 * width_ * width_ / material_.diffusivity();
  }

  void step(const Air& air, double steam, double seconds) {
    const double inward =
        2 * material_.conductivity / width_;  // W/(m² K), from the surface to the outer shell's middle
    const double drying = wetness_ * air.moving * lewis;
    settle_surface(air, steam, inward, drying);
    const double in = inward * (surface_ - celsius_[count - 1]);
    steamed_ +=
        std::max(0.0, air.coefficient * (air.celsius - surface_) - in) * face_[count - 1] * seconds / latent;
    const double capacity = material_.density * material_.specific_heat / seconds;
    double from_below = 0;
    for (std::size_t i = 0; i < count; ++i) {
      const double above = i + 1 < count ? material_.conductivity / width_ * (celsius_[i + 1] - celsius_[i]) : in;
      const double gained = above * face_[i] - from_below;
      from_below = above * face_[i];
      celsius_[i] += gained / (capacity * volume_[i]);
    }
  }

  [[nodiscard]] double core() const { return celsius_[0]; }
  [[nodiscard]] double surface() const { return surface_; }
  [[nodiscard]] double usual_step() const { return step_; }
  [[nodiscard]] double steamed() const {
    double all = 0;
    for (const double one : volume_) all += one;
    return steamed_ / (all * material_.density);
  }

 private:
  static constexpr std::size_t count = 16;

  /// Where heat from the air, heat into the meat and steam balance, by Newton's method from where it was.
  void settle_surface(const Air& air, double steam, double inward, double drying) {
    for (int turn = 0; turn < 20; ++turn) {
      const double pressure = vapour_pressure(surface_);
      const bool dries = pressure > steam;
      const double slope =
          dries ? drying * pressure * 17.62 * 243.12 / ((243.12 + surface_) * (243.12 + surface_)) : 0;
      const double open = air.coefficient * (air.celsius - surface_) - inward * (surface_ - celsius_[count - 1]) -
                          (dries ? drying * (pressure - steam) : 0);
      const double change = std::clamp(open / (air.coefficient + inward + slope), -20.0, 20.0);
      surface_ += change;
      if (std::abs(change) < 0.01) break;
    }
    surface_ = std::min(surface_, boils);
  }

  Material material_;
  double wetness_, width_ = 0, step_ = 0, surface_ = 0, steamed_ = 0;
  std::array<double, count> celsius_{}, volume_{}, face_{};
};

}  // namespace

std::optional<Rest> roast_and_rest(const Joint& joint, std::span<const Air> oven, double pull, const Air& room) {
  Shells shells(joint);
  Rest out;
  for (std::size_t stage = 0; stage < oven.size(); ++stage) {
    const bool last = stage + 1 == oven.size();
    for (double spent = 0; shells.core() < pull && (last || spent < oven[stage].seconds);) {
      const double seconds =
          last ? shells.usual_step() : std::min(shells.usual_step(), oven[stage].seconds - spent);
      shells.step(oven[stage], steam_of_oven, seconds);
      spent += seconds;
      out.roasted += seconds;
      if (out.roasted > longest) return std::nullopt;
    }
  }
  out.steamed = shells.steamed();
  out.surface = shells.surface();
  const double start = shells.core();
  double seconds = 0;
  for (double before = start; seconds < longest; before = shells.core()) {
    shells.step(room, steam_of_room, shells.usual_step());
    seconds += shells.usual_step();
    if (shells.core() < before) break;
    if (shells.core() - start <= out.rise) continue;
    out.rise = shells.core() - start;
    out.after = seconds;
  }
  return out;
}

}  // namespace tamis::physics
