#ifndef CORE_PHYSICS_PREDICT_H
#define CORE_PHYSICS_PREDICT_H

#include <optional>
#include <utility>
#include <vector>

#include "core/food/thermal.h"
#include "core/physics/conduction.h"
#include "core/physics/range.h"

namespace tamis::physics {

/// Food as it lies: set or solid, so that heat is conducted through it; or a liquid that is stirred or mixes itself.
struct Piece {
  food::Makeup makeup;
  double freezes_at = -1;  ///< °C
  Body body;               ///< for conduction
  bool stirred = false;    ///< one temperature all through; the next four are for that
  Range inside{1e9, 1e9, 1e9};  ///< W/(m² K) from the liquid to the wall of its pot; still_film or stirred_film
  double volume = 0;       ///< m³
  double area = 0;         ///< m², all round
  double open_area = 0;    ///< m², of the surface above
};

/// How well a liquid gives its heat to the wall of its pot: stirred by somebody, or as it mixes itself (common engineering
/// ranges: natural convection in water 50 to 1000, stirred vessels 300 to 2000 W/(m² K)).
inline constexpr Range stirred_film{300, 700, 1500}, still_film{100, 200, 500};

/// What it stands in.
struct Exposure {
  Range celsius;
  Range coefficient;  ///< W/(m² K)
  Range moving;       ///< of it, what moving air takes; counts where an open pot steams
};

/// How long it takes, from the quickest to the slowest that the exposure allows.
struct Prediction {
  struct Case {
    double medium = 0, coefficient = 0;
    std::optional<double> seconds;  ///< empty: never
    std::vector<std::pair<double, double>> points;  ///< (seconds, °C)
  };
  Case low, likely, high;
  food::Thermal properties;  ///< unfrozen, at the middle of from and to
};

/// Food of one temperature `from` until its `place` is at `to`. Conduction with ice, or in one or two directions, on the
/// grid; in three without ice by the series, with the properties of the middle temperature. A stirred liquid: the quickest
/// is an open pot that steams, the others have a lid.
Prediction predict(const Piece& piece, const Exposure& exposure, double from, double to, Place place);

/// The cheap look, by two roots of the series: no sooner than low and no later than high, by the ends of the exposure and
/// with a tenth either way for the properties. Empty where `to` is never reached for sure, high infinite where it may not be.
/// Not for what freezes on the way; a stirred liquid is reckoned as it is.
std::optional<Bounds> screen(const Piece& piece, const Exposure& exposure, double from, double to, Place place);

/// Where its place is after so many seconds, °C: between the quickest and the slowest. By the series, as screen().
struct Warmth {
  double low = 0, likely = 0, high = 0;
};
Warmth warmth_after(const Piece& piece, const Exposure& exposure, double from, double seconds, Place place);

}  // namespace tamis::physics

#endif
