#ifndef CORE_FLOW_ACTIONS_H
#define CORE_FLOW_ACTIONS_H

#include <span>
#include <string_view>

namespace tamis::flow {

/// What an action of the trade does to food. Table and meaning of the columns: core/flow/actions.inc.
struct Action {
  enum class Heat : unsigned char {
    none, works, warms, poaches, simmers, boils, bakes, fries, sugar, either, stands, cools, chills, freezes, thaws, holds
  };
  enum class Air : unsigned char { keeps, in, out };
  enum class Rest : unsigned char { all, drips, behind, trims, swells, fat, sheds };

  std::string_view word;  ///< as step/@do has it
  Heat heat;
  double off;             ///< the most that goes off as steam when nothing is stated, a share of the mass
  Air air;
  Rest rest;
  std::string_view needs; ///< "oven", "sieve"; "" when nothing must be named

  [[nodiscard]] bool heats() const { return heat >= Heat::warms && heat <= Heat::sugar; }
  [[nodiscard]] bool cools() const { return heat >= Heat::stands && heat <= Heat::freezes; }
};

std::span<const Action> actions();              ///< sorted by word
const Action* action_named(std::string_view word);  ///< null when it is none of ours: what it does is not known

}  // namespace tamis::flow

#endif
