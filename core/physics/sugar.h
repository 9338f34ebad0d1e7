#ifndef CORE_PHYSICS_SUGAR_H
#define CORE_PHYSICS_SUGAR_H

#include "core/physics/range.h"

namespace tamis::physics {

/// Sugar in water. Shares are of the mass, 0 to 1: 0.5 is 50 °Brix.

/// Of a sucrose solution at 20 °C, kg/m³: ICUMSA SPS-4 (1998), coefficients from memory; within 0.05 % of the older
/// tables.
double syrup_density(double share);
/// The share of sucrose in a solution of that specific gravity in air, 20 °C over 20 °C (what a hydrometer shows); 0 below 1.
double sugar_at_gravity(double gravity);
/// Most that water holds, 0 to 100 °C: Herzfeld's solubility, as in Mohos, Confectionery and Chocolate Engineering (2010).
double saturated_sugar(double celsius);

/// Activity coefficient's logarithm of water at a mole fraction of sucrose and a temperature in °C: Starzak and
/// Peacock's equation, to 0.9 of sugar within 1 % of what is measured.
double log_water_coefficient(double mole_fraction, double celsius);
/// Water activity of a sucrose solution by it.
double syrup_activity(double share, double celsius);

/// Where sucrose and water boil at a pressure in Pa, °C. Low by Starzak and Peacock's equation with the vapour pressure of
/// IAPWS-IF97, high by the confectioners' measured table (1912), which lies up to 4 K above it; likely half-way.
Range syrup_boils_at(double share, double pressure_pa);
/// The share of sugar at which it boils at that temperature, likely as above; 0 when that is below water's.
double sugar_boiling_at(double celsius, double pressure_pa);

/// What is dissolved in 1 kg of water, in kg.
struct Dissolved {
  double sucrose = 0;
  double glucose = 0;       ///< and fructose, invert sugar: one constant
  double lactose = 0, maltose = 0;
  double glucose_syrup = 0;  ///< solids of DE 42
  double glycerol = 0, sorbitol = 0;
  double salt = 0;
  double alcohol = 0;
};
/// Water activity at 25 °C: Norrish's equation for each alone in all the water, multiplied (Ross 1975). Norrish's constants:
/// Chirife and others (1980), from memory; salt by its osmotic coefficient (0.94 to 1.27 up to saturated
/// brine: Robinson and Stokes, from memory); alcohol as ideal. Within 0.01 from 0.75 up where all is dissolved.
double water_activity(const Dissolved& dissolved);

/// By how much sugars (and salt) lower the freezing point, K: where ice has the same activity.
double freezing_depression(const Dissolved& dissolved);

}  // namespace tamis::physics

#endif
