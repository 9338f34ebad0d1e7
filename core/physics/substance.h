#ifndef CORE_PHYSICS_SUBSTANCE_H
#define CORE_PHYSICS_SUBSTANCE_H

#include <functional>
#include <vector>

#include "core/food/thermal.h"
#include "core/physics/conduction.h"

namespace tamis::physics {

/// What a body is made of when its properties go with its temperature: heat content and conductivity as tables, so that
/// both are read, and the heat content turned back into a temperature, quickly. Its density stays what it was at the
/// start: the body does not swell or shrink. Good from −60 to 260 °C.
class Substance {
 public:
  using OfCelsius = std::function<double(double)>;
  /// Heat content in J/kg, rising, and conductivity in W/(m K). `bend`: where the heat content has a kink (where ice begins);
  /// the table is close there.
  Substance(double density, const OfCelsius& heat, const OfCelsius& conductivity, double bend);

  [[nodiscard]] double density() const { return density_; }  ///< kg/m³
  [[nodiscard]] double bend() const { return bend_; }        ///< °C
  [[nodiscard]] double heat(double celsius) const;                   ///< J/kg
  [[nodiscard]] double celsius(double heat) const;
  [[nodiscard]] double conductivity(double celsius) const;
  /// Conductivity summed up from the coldest end, W/m: its difference over that of the temperatures is the mean between
  /// them (Kirchhoff's transformation).
  [[nodiscard]] double summed(double celsius) const;

  /// A row of the table, for the solver that goes from cell to cell and knows about where it is.
  struct Knot {
    double celsius = 0, heat = 0, conductivity = 0, summed = 0;
  };
  [[nodiscard]] const std::vector<Knot>& knots() const { return knots_; }
  /// The segment of a temperature or of a heat content, looked for from a guess on.
  [[nodiscard]] std::size_t segment_at(double celsius, std::size_t guess) const;
  [[nodiscard]] std::size_t segment_of(double heat, std::size_t guess) const;

 private:
  double density_, bend_;
  std::vector<Knot> knots_;
};

/// The same at every temperature.
Substance steady(const Material& material);
/// A food by its constituents, ice forming from where it starts to; density as at `celsius`.
Substance substance_of(const food::Makeup& makeup, double freezes_at, double celsius);

}  // namespace tamis::physics

#endif
