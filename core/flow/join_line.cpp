#include "core/flow/join.h"

#include <algorithm>
#include <array>

namespace tamis::flow {

using fiche::At;
using fiche::Node;

namespace {

/// What is done to a thing before it goes in, apart from the rest.
constexpr std::array aside_actions = {std::string_view("soak"), std::string_view("bloom"), std::string_view("soften"),
                                      std::string_view("sift"), std::string_view("toast"), std::string_view("whip"),
                                      std::string_view("whisk"), std::string_view("zest"), std::string_view("grate"),
                                      std::string_view("chop"), std::string_view("dice"), std::string_view("peel"),
                                      std::string_view("wash"), std::string_view("weigh")};

}  // namespace

bool Join::has_marks() const {
  return std::any_of(meant_.begin(), meant_.end(), [](const Meant& meant) { return !meant.mention; });
}

bool Join::names_a_result() {
  return std::any_of(meant_.begin(), meant_.end(), [&](const Meant& meant) {
    return thing(meant.thing).kind == Thing::Kind::result;
  });
}

bool Join::prepares_aside(int step) {
  const fiche::Step& read = work_.fiche.steps[idx(step)];
  if (!read.makes.empty()) return false;
  const Meant* only = nullptr;
  for (const Meant& meant : meant_) {
    if (meant.mention || meant.has_take) return false;
    if (!is_matter(meant.thing)) continue;
    if (only != nullptr) return false;
    only = &meant;
  }
  if (only == nullptr || thing(only->thing).kind == Thing::Kind::component) return false;
  if (thing(only->thing).kind == Thing::Kind::result && thing(only->thing).maker == line_) return false;
  if (!taken_later(only->name, step)) return false;
  return line_ >= 0 || sets(only->thing) ||
         std::any_of(read.actions.begin(), read.actions.end(), [](std::string_view action) {
           return std::find(aside_actions.begin(), aside_actions.end(), action) != aside_actions.end();
         });
}

bool Join::is_matter(int index) {
  const Thing& known = thing(index);
  if (!known.counts) return false;
  return known.ingredient < 0 || work_.fiche.ingredients[idx(known.ingredient)].food_id != "water";
}

bool Join::sets(int index) {
  const Thing& known = thing(index);
  if (known.ingredient < 0) return false;
  const food::Food* food = work_.fiche.ingredients[idx(known.ingredient)].food;
  return food != nullptr && food->role == food::Role::setting;
}

bool Join::taken_later(int name, int step) {
  for (auto taker = std::upper_bound(work_.takers.begin(), work_.takers.end(), std::pair(name, step));
       taker != work_.takers.end() && taker->first == name; ++taker) {
    if (at(taker->second).component == at(step).component) return true;
  }
  return false;
}

bool Join::join_line(int step) {
  if (line_ < 0 && outside_ >= 0 && !at(step).aside) {
    add_use(outside_, step, fiche::none);
    outside_ = -1;
    return true;
  }
  const int from = line_ >= 0 ? line_ : side_;
  if (from < 0) return false;
  for (const Meant& meant : meant_) {
    if (!meant.mention && thing(meant.thing).kind == Thing::Kind::result && thing(meant.thing).maker == from) {
      at(step).before = from;
      return false;
    }
  }
  if (has_marks() && line_ < 0) return false;
  if ((has_marks() || names_a_result()) && line_ >= 0 && starts_afresh(step)) return false;
  at(step).before = from;
  const std::vector<int> gives = at(from).gives;
  for (const int given : gives) add_use(given, step, fiche::none);
  return true;
}

bool Join::starts_afresh(int step) {
  const std::vector<int>& gives = at(line_).gives;
  return std::any_of(gives.begin(), gives.end(), [&](int given) {
    return divides(given) || (!thing(given).id.empty() && spoken_for(thing(given).id, step));
  });
}

bool Join::divides(int given) {
  if (thing(given).was >= 0) return false;
  const std::vector<int>& takes = at(line_).takes;
  return takes.size() == 1 && has_taken_parts(flow_.uses[idx(takes.front())].thing);
}

bool Join::has_taken_parts(int whole) {
  for (std::size_t i = idx(whole) + 1; i < flow_.things.size() && flow_.things[i].was == whole; ++i) {
    const int name = work_.name_of(flow_.things[i].id);
    if (flow_.things[i].kind == Thing::Kind::part && name >= 0 && is_taken(name)) return true;
  }
  return false;
}

bool Join::is_taken(int name) const {
  const auto taker = std::lower_bound(work_.takers.begin(), work_.takers.end(), std::pair(name, -1));
  return taker != work_.takers.end() && taker->first == name;
}

bool Join::spoken_for(std::string_view id, int step) {
  const int name = work_.name_of(id);
  bool elsewhere = false;
  for (auto taker = std::lower_bound(work_.takers.begin(), work_.takers.end(), std::pair(name, -1));
       taker != work_.takers.end() && taker->first == name; ++taker) {
    if (taker->second == step || taker->second == line_) continue;
    if (at(taker->second).component == at(step).component) return true;
    elsewhere = true;
  }
  if (!elsewhere) return false;
  if (!work_.fiche.steps[idx(step)].makes.empty()) return true;
  const Node component = at(step).component;
  const int own = component == fiche::none ? -1 : work_.name_of(document_.get(component, At::id));
  return own >= 0 && is_taken(own);
}

}  // namespace tamis::flow
