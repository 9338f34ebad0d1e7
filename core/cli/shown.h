#ifndef CORE_CLI_SHOWN_H
#define CORE_CLI_SHOWN_H

#include <optional>
#include <string>

#include "core/draw/steps.h"
#include "core/flow/ages.h"

namespace tamis::cli {

/// A fiche with all that is worked out of it, for the forms of tamis show.
struct Shown : draw::Steps {
  flow::Ages& ages;
};

using draw::celsius_text;
using draw::grams_text;
using draw::name_of_result;
using draw::names_of_actions;
using draw::shares_text;

/// Lines for people.
std::string shown_text(const Shown& shown, bool colour);
/// One JSON document (schemas/show.schema.json).
std::string shown_json(const Shown& shown);
/// The graph of its steps as SVG.
std::string shown_svg(const Shown& shown);

/// "12 min to 2 h"; "" where nothing is said.
std::string age_text(const std::optional<flow::TimeRange>& age);

}  // namespace tamis::cli

#endif
