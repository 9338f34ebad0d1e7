#ifndef CORE_CLI_DESK_H
#define CORE_CLI_DESK_H

#include <memory>
#include <string>
#include <vector>

#include "core/cli/verb.h"
#include "core/fiche/kitchen.h"
#include "core/food/food.h"
#include "core/measure/read.h"

namespace tamis::cli {

/// What the verbs that answer at the desk (foods, measure, new) know without a fiche: the kitchen at hand.
struct Desk {
  std::shared_ptr<const fiche::Kitchen> kitchen;
  std::string fault;  ///< why its file could not be used, with its path; "" when it could
};

/// The kitchen named with --kitchen, or found upwards from the folder the run was started in.
Desk desk_of(const Request& request);

/// A food as the user names it: the kitchen's own and the table's, best first. `own` is null for the table's.
struct FoodMatch {
  const food::Food* food = nullptr;
  const fiche::Kitchen::OwnFood* own = nullptr;
  bool sure = false;  ///< an exact name or id, or its plural; anything else is a near miss to ask about
};
std::vector<FoodMatch> find_foods(const Desk& desk, const std::string& name, const std::string& language);

/// The first name of a list "unsalted butter|butter".
std::string first_name(std::string_view names);

}  // namespace tamis::cli

#endif
