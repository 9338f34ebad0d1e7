#ifndef CORE_MEASURE_KITCHEN_TOOLS_H
#define CORE_MEASURE_KITCHEN_TOOLS_H

#include <span>
#include <string>
#include <vector>

#include "core/base/ratio.h"
#include "core/measure/amount.h"

namespace tamis::measure {

/// What a kitchen can measure with. A default-made one is a usual professional kitchen without a kitchen file:
/// scales that read 0.1 g up to 500 g and 1 g up to 15 kg, spoons from 1/8 tsp, cups of 1/4, 1/3, 1/2, 1, a food
/// thermometer that reads 1 °C, ovens in steps of 5 °C or 25 °F (common practice).
struct KitchenTools {
  struct Scales {
    base::Ratio reads_g;
    base::Ratio most_g;
  };
  std::vector<Scales> scales;           ///< finest first
  /// Smallest first, each with its own system's unit. Where they hold none of a system (a US set, and imperial is
  /// asked for), that system's usual set is taken.
  std::vector<Quantity> spoons;
  std::vector<Quantity> cups;
  base::Ratio thermometer_step_c = 1;
  base::Ratio oven_step_c = 5;
  base::Ratio oven_step_f = 25;
  base::Ratio length_step_mm = 1;
  KitchenTools();
};

/// How much error a figure may carry, as a share of it: what the food does decides (core/food, tolerance_of).
struct Tolerance {
  base::Ratio share = base::Ratio(5, 100);
};

/// A figure as the kitchen can measure it, and what that costs.
struct Rounded {
  Amount amount;            ///< as shown; parts where spoons and cups are combined ("1 cup 2 tbsp")
  base::Ratio exact;        ///< in base units
  base::Ratio error;        ///< shown minus exact, base units; °C for temperatures
  double share = 0;         ///< |error| / exact; 0 for temperatures
  bool within = true;       ///< share is inside the tolerance
  std::string better;       ///< when not within: a better way to measure, "weigh 3.4 g on scales that read 0.1 g"
};

enum class By : unsigned char { mass, volume };

/// Rounds an exact quantity to what the tools can do in a system: grams and kilograms; ounces and pounds; spoons,
/// cups, quarts, gallons (US); spoons, fluid ounces, pints, gallons (imperial); millilitres and litres. How coarse a
/// figure is follows from its size (core/measure/round_*.cpp, common practice); where that costs more than the
/// tolerance, the finest the tools can do is taken, and where that is still too coarse, `better` says what to do.
///
/// Spoons, cups and jugs are combined as a cook would fill them (common practice), at most three measures, and only
/// measures that are in the set: a half tablespoon is 1 1/2 tsp unless there is a half-tablespoon spoon. An exact way
/// goes first. Else, of all ways inside the tolerance, the one that costs least: its fillings (3/4 cup is two), one for
/// each measure that is fetched, and up to four for the tolerance it uses up. So 350 ml are 1 1/2 cups, 1.4 % off,
/// rather than 1 1/3 cups 2 tbsp; but 500 ml are 2 cups 2 tbsp, not 2 cups 1 tbsp. Where no way is inside the tolerance,
/// the nearest is taken.
Rounded round_mass(base::Ratio grams, System system, const KitchenTools& tools, Tolerance tolerance);
Rounded round_volume(base::Ratio millilitres, System system, const KitchenTools& tools, Tolerance tolerance);
/// In spoons and cups also where round_volume gives millilitres: cups, tablespoons and teaspoons of the metric system;
/// millilitres from four cups up.
Rounded round_spoons(base::Ratio millilitres, System system, const KitchenTools& tools, Tolerance tolerance);
/// mm under 1 cm, then cm; inches in eighths under 2 in, then in quarters, a whole inch where it is within 2 %.
Rounded round_length(base::Ratio millimetres, System system, const KitchenTools& tools);

enum class Scale : unsigned char { celsius, fahrenheit };
/// Which way a figure may move. A limit that must not be crossed moves to its strict side: a least core temperature
/// up, a highest one down.
enum class Toward : unsigned char { nearest, up, down };

/// An oven's dial: a multiple of 25 °F that is within 8 °F of the exact figure, else the nearest 5 °F; of 10 °C within
/// 4.5 °C, else the nearest 5 °C. So 180 °C and 350 °F, 190 and 375, 160 and 325, 200 and 400 go there and back, as
/// the NIST cooking table prints them.
/// Other steps of the tools take the place of 25 °F and 5 °C.
Rounded round_oven(base::Ratio celsius, Scale scale, const KitchenTools& tools);
/// A food thermometer: its own step in °C; 1 °F for one that reads 1 °C or finer.
Rounded round_food_temperature(base::Ratio celsius, Scale scale, const KitchenTools& tools,
                               Toward toward = Toward::nearest);

/// Nominal °C of a gas mark (1/4, 1/2, 1 to 9), exact from the mark's °F; overflow for another mark. Common practice.
base::Ratio gas_mark_celsius(base::Ratio mark);
/// The marks there are, coolest first.
std::span<const base::Ratio> gas_marks();
/// The mark whose nominal temperature lies nearest.
base::Ratio nearest_gas_mark(base::Ratio celsius);

}  // namespace tamis::measure

#endif
