#ifndef CORE_FOOD_THERMAL_H
#define CORE_FOOD_THERMAL_H

#include <optional>
#include <string_view>
#include <vector>

#include "core/food/food.h"

namespace tamis::food {

/// What counts for heat, by what a food is made of. Source: Choi and Okos (1986), as in the ASHRAE Handbook
/// Refrigeration (2006), chapter 9, tables 1 and 2, good from −40 to 150 °C (temperatures beyond are taken as the
/// nearest end; water below 0 °C is undercooled water, ice above 0 °C is taken at 0 °C). Ethanol: CRC Handbook of
/// Chemistry and Physics at 20 to 25 °C, from memory.
enum class Constituent : unsigned char { water, ice, protein, fat, carbohydrate, fibre, ash, alcohol };

double density(Constituent constituent, double celsius);        ///< kg/m³
double specific_heat(Constituent constituent, double celsius);  ///< kJ/(kg K)
double conductivity(Constituent constituent, double celsius);   ///< W/(m K)
/// Heat to warm 1 kg from 0 °C, in kJ; without any change of state.
double sensible_heat(Constituent constituent, double celsius);

inline constexpr double melting_heat = 333.6;  ///< of ice at 0 °C, kJ/kg (ASHRAE Refrigeration, chapter 9)

/// Shares of the mass, 0 to 1; the first seven come to 1.
struct Makeup {
  double water = 0, protein = 0, fat = 0;
  double carbohydrate = 0;  ///< without fibre
  double fibre = 0, ash = 0, alcohol = 0;
  double sugars = 0;  ///< of the carbohydrate, what is dissolved in the water
  double salt = 0;    ///< of the ash, sodium chloride
};

/// From a composition by the 100 g, brought to exactly 1. Empty when water, protein, fat or carbohydrate is not
/// reported, or when ash and alcohol are not and the rest leaves more than 3 % open; `missing` says which are not
/// known. Fibre not reported is counted with the carbohydrate, sugars and salt not reported as none.
struct MakeupRead {
  std::optional<Makeup> makeup;
  std::vector<std::string_view> missing;
};
MakeupRead makeup_of(const Composition& composition);

/// How heat finds its way through the constituents: side by side along it (parallel, volume-weighted mean: the
/// most there can be, what Choi and Okos fitted theirs with, and taken where nothing is said), or one behind the other
/// across it (perpendicular, volume-weighted harmonic mean: the least).
enum class Lie : unsigned char { parallel, perpendicular };

/// Of a food without pores. Air within (sponge, mousse, bread) lowers density and conductivity and is not seen here.
struct Thermal {
  double density = 0;        ///< kg/m³
  double specific_heat = 0;  ///< kJ/(kg K); below freezing it includes the ice that forms
  double conductivity = 0;   ///< W/(m K)
  [[nodiscard]] double diffusivity() const { return conductivity / (density * specific_heat * 1000); }  ///< m²/s
};
/// Nothing frozen, at whatever temperature.
Thermal unfrozen(const Makeup& makeup, double celsius, Lie lie = Lie::parallel);

/// Where ice begins to form, in °C: Raoult's law with what is dissolved in the water that protein does not bind: sugars
/// (with Norrish's factor, K = 6.47), salt, the rest of the ash as potassium chloride, alcohol. Likely counts sugars half as
/// sucrose, half as glucose and fructose, and three quarters of the rest of the ash as dissolved; low and high are the
/// ends. Within 0.6 K of ASHRAE's table 3 where sugars are known; small molecules of meat and fruit acids are not seen,
/// so that theirs may be that much lower.
struct FreezingPoint {
  double low = 0, likely = 0, high = 0;
};
FreezingPoint freezing_point(const Makeup& makeup);

/// A food that freezes from `starts` °C downwards (below 0). Ice by Miles (1974): of the water that protein does not
/// bind (0.4 kg to the kg of protein), the share 1 − starts / t.
class Frozen {
 public:
  Frozen(const Makeup& makeup, double starts);
  [[nodiscard]] double ice(double celsius) const;       ///< share of the mass
  [[nodiscard]] double enthalpy(double celsius) const;  ///< kJ/kg, 0 at 0 °C unfrozen; rises without a break
  /// Slope of the enthalpy, density and conductivity with that much ice.
  [[nodiscard]] Thermal at(double celsius, Lie lie = Lie::parallel) const;
  [[nodiscard]] double starts() const { return starts_; }

 private:
  Makeup makeup_;
  double starts_;
};

}  // namespace tamis::food

#endif
