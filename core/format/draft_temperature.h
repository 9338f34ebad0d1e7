#ifndef CORE_FORMAT_DRAFT_TEMPERATURE_H
#define CORE_FORMAT_DRAFT_TEMPERATURE_H

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/format/draft_recipe.h"
#include "core/measure/amount.h"

namespace tamis::format::draft {

/// Words of oven mode that a figure of the step has taken already ("fan" of "fan 160 °C").
struct OvenModes {
  std::vector<std::size_t> taken;
};

/// The same temperature on the other scale, right behind it: " (350 °F)", "/350 °F". Of °C and °F only; a gas mark is a
/// setting of another oven.
struct Twin {
  std::string text;
  std::size_t used = 0;  ///< bytes behind the first figure, brackets included; 0: none
};
Twin other_scale(const Desk& desk, base::Span rest, const measure::Amount& amount);

/// Says what a temperature is of, from the words around it: first its own clause, then the sentence. Nothing, and an
/// entry in step.unclear, when they do not tell.
std::optional<Mark> temperature_mark(Desk& desk, DraftStep& step, std::size_t word, base::Span said, const Twin& twin_figure,
                                     const measure::Amount& amount, OvenModes& modes);

/// Asks for the scale of a figure that is a temperature by its place ("bake at 180", "160 fan", "180 degrees").
void ask_bare_temperature(Desk& desk, const DraftStep& step, std::size_t word);

}  // namespace tamis::format::draft

#endif
