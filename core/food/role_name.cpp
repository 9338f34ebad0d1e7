#include <array>

#include "core/food/food.h"

namespace tamis::food {
namespace {

/// In the order of the enum.
constexpr std::array<std::string_view, 23> names{
    "other", "flour", "starch",    "sugar", "fat",   "dairy",     "egg",  "liquid", "setting", "leavening", "yeast",     "salt",
    "acid",  "spice", "chocolate", "nut",   "fruit", "vegetable", "meat", "fish",   "alcohol", "flavouring", "garnish"};
static_assert(names.size() == static_cast<std::size_t>(Role::garnish) + 1);

}  // namespace

std::string_view role_name(Role role) { return names[static_cast<std::size_t>(role)]; }

}  // namespace tamis::food
