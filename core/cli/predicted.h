#ifndef CORE_CLI_PREDICTED_H
#define CORE_CLI_PREDICTED_H

#include <optional>
#include <string>
#include <vector>

#include "core/cli/question.h"
#include "core/draw/curve.h"
#include "core/physics/lethality.h"

namespace tamis::cli {

/// A question with its answer, for the forms of "tamis predict".
struct Predicted {
  Question question;
  physics::Prediction answer;
  /// What would shorten it by a tenth or more, each as a question of its own: "5 pans 5 cm deep".
  struct Shorter {
    std::string words;
    physics::Prediction answer;
  };
  std::vector<Shorter> shorter;
};
Predicted predicted(const Question& question, const Desk& desk);

std::string predicted_text(const Predicted& predicted, std::size_t columns, bool ascii);
/// One JSON document (schemas/predict.schema.json).
std::string predicted_json(const Predicted& predicted);
std::string predicted_svg(const Predicted& predicted);

/// What heating to its end does to one organism in the core, before it is held there.
struct PredictedKill {
  const physics::HeatResistance* of = nullptr;
  physics::Range logs;  ///< log10 reductions, from the quickest to the slowest
  std::optional<physics::Range> reached;  ///< s until what is asked, where every course comes to it
  double hold = 0;      ///< s at the end's temperature until what is asked, after the quickest; NaN when nothing is
};
/// Of a food of the table that is heated in its centre to 54 °C or more; empty for others.
std::vector<PredictedKill> kills_of(const Predicted& predicted);
/// "Salmonella in poultry: 7 log10 reductions asked (...); 1.2 to 2.4 by then, the rest when it is held at 60 °C for another 4 min."
std::string kill_said(const PredictedKill& kill, double to);
std::string kills_json(const Predicted& predicted);

/// "20 l of chicken stock, 25 cm deep, from 90 °C to 5 °C in a fridge".
std::string sentence_of(const Question& question);
draw::Curve curve_of(const Predicted& predicted);

/// A time as a cook says it, the coarser the longer: "35 s", "8 min", "1 h 15 min", "9 h", "2 days". Rounded down where
/// `down`: the early end of a range.
std::string time_said(double seconds, bool down = false);
/// "6 to 9 h, likely 7 h"; "from 6 h on, and it may never"; "never".
std::string times_said(const physics::Prediction& answer);
std::string celsius_said(double celsius);  ///< "5 °C", "-18 °C", "3.5 °C"

}  // namespace tamis::cli

#endif
