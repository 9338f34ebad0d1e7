#ifndef CORE_CLI_FOOD_PAGES_H
#define CORE_CLI_FOOD_PAGES_H

#include <string>

#include "core/cli/desk.h"

namespace tamis::cli {

/// One food for a terminal: names, composition, measures, density, pieces, trim, allergens, each with its source.
std::string food_text(const FoodMatch& match);

/// The same as one JSON object; figures that nobody reported are null.
std::string food_json(const FoodMatch& match);

}  // namespace tamis::cli

#endif
