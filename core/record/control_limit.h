#ifndef CORE_RECORD_CONTROL_LIMIT_H
#define CORE_RECORD_CONTROL_LIMIT_H

#include <optional>
#include <string>
#include <vector>

#include "core/fiche/fiche.h"

namespace tamis::record {

/// One temperature that a control point asks for.
struct Stage {
  std::string from_text;              ///< that as the author wrote it
  std::optional<double> from;         ///< °C: where its clock starts, "from 57 °C"
  std::optional<double> least, most;  ///< °C; one of them or both
  std::optional<double> within;       ///< s
  bool from_the_start = true;         ///< the clock of `within` starts with the first stage; else where the stage before ended
  std::optional<double> hold;         ///< s: how long it is held
  std::string text;                   ///< as the author wrote the temperature

  /// Whether a reading of so many °C is within it, to half of the last figure that a thermometer shows.
  [[nodiscard]] bool is_shown_by(double celsius) const {
    return (!least || celsius >= *least - hair) && (!most || celsius <= *most + hair);
  }
  static constexpr double hair = 0.05;  ///< K; what changing scales leaves, too
};

/// What a control point asks of a temperature, read from its marks and the words between them.
struct ControlLimit {
  enum class Way : unsigned char {
    none,   ///< of no temperature, or it is not said which way: for a person to judge
    reach,  ///< each stage in turn is reached
    stay,   ///< it stays so: hot and cold holding
  } way = Way::none;
  std::vector<Stage> stages;
  bool unclear = false;        ///< there is a temperature, but its words do not say whether it is a least or a most
  std::optional<double> each;  ///< s between checks, of often="every 30 min"
};

struct ControlPoint {
  fiche::Node node = fiche::none, step = fiche::none, component = fiche::none;
  int number = 0;                                                ///< from 1, in the order of the fiche
  std::string id;                                                ///< "" when it has none
  std::string hazard, limit, check, often, who, action, record;  ///< as written, white space folded
  std::string where;                                             ///< "Braised cheeks, step 5"
  ControlLimit asks;
};

/// The control points of a fiche, in order. A limit is read in English, French, German and Spanish.
std::vector<ControlPoint> control_points(const fiche::Fiche& fiche);

}  // namespace tamis::record

#endif
