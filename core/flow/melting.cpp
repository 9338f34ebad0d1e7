#include "core/flow/melting.h"

namespace tamis::flow {
namespace {

/// J a g of fat on melting from fully solid. From memory, each rounded up, because they serve as the most there can be:
/// cocoa butter 157 (stable form), milk fat 85, coconut oil 105, lard and beef fat 100, oils nothing.
double of_its_fat(const food::Food& food) {
  using food::Role;
  if (food.id == "butter-cocoa" || food.role == Role::chocolate) return most_melting_j;
  if (food.id == "oil-coconut") return 105;
  if (food.id.starts_with("oil-")) return 0;
  if (food.role == Role::dairy || food.id.starts_with("butter")) return 85;
  return food.role == Role::fat || food.role == Role::meat ? 100 : 0;
}

}  // namespace

double melting_j(const food::Food& food, double fat_share) { return of_its_fat(food) * fat_share; }

}  // namespace tamis::flow
