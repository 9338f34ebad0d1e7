#ifndef CORE_CLI_QUESTION_H
#define CORE_CLI_QUESTION_H

#include <string>
#include <variant>

#include "core/cli/arguments.h"
#include "core/cli/desk.h"
#include "core/flow/around.h"
#include "core/food/thermal.h"
#include "core/physics/predict.h"

namespace tamis::cli {

/// What "tamis predict" is asked: a food, how it lies, in what, from where to where. Lengths in m, volumes in m³.
struct Question {
  enum class What : unsigned char { cool, heat, freeze, thaw };
  enum class Lies : unsigned char { slab, cylinder, sphere, brick };
  What what = What::cool;
  std::string name;  ///< of the food, as it stands in a sentence: "chicken stock"; "food" where only its composition is given
  std::string kind;  ///< id of the table's food that it is, or is like; "" where only its composition is given
  food::Role role = food::Role::other;
  food::Makeup makeup;
  food::FreezingPoint freezes;
  bool thin = false;      ///< a liquid that mixes itself
  bool stirred = false;   ///< so, or stirred by somebody
  bool by_hand = false;   ///< by somebody
  Lies lies = Lies::slab;
  double depth = 0, diameter = 0, length = 0, width = 0;  ///< 0: not given; for a slab, without end
  double volume = 0;      ///< 0: not given
  bool one_face = false;
  physics::Place place = physics::Place::centre;
  double from = 0, to = 0;
  std::string in;         ///< "in a fridge"
  std::string medium;     ///< id of core/physics/media.inc; "" when only the air is given
  physics::Exposure exposure;

  [[nodiscard]] physics::Piece piece() const;
  [[nodiscard]] physics::Prediction predict() const { return physics::predict(piece(), exposure, from, to, place); }
  [[nodiscard]] double smallest() const;  ///< across, m
};

/// By the request's words and options, or what is wrong with them.
std::variant<Question, Misuse> read_question(const Request& request, const Desk& desk);

}  // namespace tamis::cli

#endif
