#ifndef CORE_DRAW_STEPS_H
#define CORE_DRAW_STEPS_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/flow/flow.h"
#include "core/flow/states.h"

namespace tamis::draw {

/// The steps of a fiche that are to be shown, with what is known of the food.
struct Steps {
  const fiche::Fiche& fiche;
  const flow::Flow& flow;
  const flow::States& states;
  std::string component;  ///< only that one; "" for all
  int step = 0;           ///< only that one of each component, from 1; 0 for all

  [[nodiscard]] const flow::Thing& thing(int index) const { return flow.things[static_cast<std::size_t>(index)]; }
  [[nodiscard]] const flow::Use& use(int index) const { return flow.uses[static_cast<std::size_t>(index)]; }
  /// Its components in order, those that are shown; fiche::none for steps outside every component.
  [[nodiscard]] std::vector<fiche::Node> components() const;
  /// The steps of one, those that are shown, each with its number in the component.
  struct Numbered {
    int number = 0;
    const flow::Step* step = nullptr;
  };
  [[nodiscard]] std::vector<Numbered> steps_of(fiche::Node component) const;
};

/// What a cook calls what a step makes: its name, else "" where nothing names it.
std::string name_of_result(const Steps& steps, int thing);
std::string names_of_actions(const Steps& steps, int step);

/// "450 g", "425–500 g"; "not known".
std::string grams_text(const std::optional<flow::Range>& grams, std::string_view language);
/// "82–84 °C", "at least 20 °C", "at most 180 °C"; "not known".
std::string celsius_text(const flow::Range& celsius);
/// "water 51 %, fat 6.3 %": those that are known and at least a hundredth; "" where none is.
std::string shares_text(const flow::State& state, std::string_view language);

}  // namespace tamis::draw

#endif
