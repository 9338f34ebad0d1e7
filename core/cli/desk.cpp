#include "core/cli/desk.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/cli/surroundings.h"

namespace tamis::cli {
namespace {

bool same(std::string_view a, std::string_view b) { return base::lower(a) == base::lower(b); }

void add(std::vector<FoodMatch>& matches, const FoodMatch& match) {
  const bool there =
      std::any_of(matches.begin(), matches.end(), [&](const FoodMatch& m) { return m.food == match.food; });
  if (!there && match.food != nullptr) matches.push_back(match);
}

}  // namespace

Desk desk_of(const Request& request) {
  Surroundings surroundings(request.get("kitchen"));
  const Around& around = surroundings.of("-");
  Desk desk{around.kitchen, {}};
  if (!around.fault.empty())
    desk.fault = around.kitchen_path + ": the kitchen file cannot be used: " + around.fault;
  return desk;
}

std::vector<FoodMatch> find_foods(const Desk& desk, const std::string& name, const std::string& language) {
  std::vector<FoodMatch> matches;
  for (const auto& own : desk.kitchen->foods)
    if (same(own->id, name) || same(own->name, name)) add(matches, {&own->food, own.get(), true});
  // What the house buys under the table's own id stands for it.
  const auto add_of_table = [&](const food::Food* food, bool sure) {
    const fiche::Kitchen::OwnFood* own = food == nullptr ? nullptr : desk.kitchen->own_food(food->id);
    add(matches, {own == nullptr ? food : &own->food, own, sure});
  };
  add_of_table(food::food_by_id(name), true);
  using How = food::Match::How;
  for (const food::Match& match : food::look_up(name, language.empty() ? "en" : language, 6))
    add_of_table(match.food, match.how == How::exact || match.how == How::variant);
  return matches;
}

std::string first_name(std::string_view names) { return std::string(names.substr(0, names.find('|'))); }

}  // namespace tamis::cli
