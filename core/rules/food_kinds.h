#ifndef CORE_RULES_FOOD_KINDS_H
#define CORE_RULES_FOOD_KINDS_H

#include <string_view>
#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// What foods are to the gates of the trade, as bits of a set. Which food is which: food_kinds.cpp, by the table's ids, and
/// a house's own food as the one it is like.
namespace kind {
enum : unsigned {
  yolk = 1U << 0,
  whole_egg = 1U << 1,
  white = 1U << 2,
  milk = 1U << 3,        ///< milk, buttermilk
  cream = 1U << 4,       ///< fresh cream of any fat content
  sour_dairy = 1U << 5,  ///< yogurt, cheese, sour cream
  butter = 1U << 6,
  dark = 1U << 7,  ///< dark chocolate
  milk_chocolate = 1U << 8,
  white_chocolate = 1U << 9,
  other_chocolate = 1U << 10,  ///< gianduja, chips, cocoa mass and butter
  cocoa = 1U << 11,            ///< powder, nibs
  starch = 1U << 12,
  flour = 1U << 13,  ///< and whatever else is of cereals: semolina, crumbs
  sugar = 1U << 14,
  acid = 1U << 15,           ///< juice of citrus and passion fruit
  gelatine = 1U << 16,       ///< leaf or powder, dry
  gelatine_mass = 1U << 17,  ///< with its water
  other_setting = 1U << 18,  ///< agar, pectin, gums
  enzyme_fruit = 1U << 19,   ///< raw, it takes gelatine apart
  plain = 1U << 20,          ///< water, salt, flavouring, alcohol: nothing a gate asks about
  other = 1U << 21,
  unknown = 1U << 22,  ///< nobody knows what it is, or another file makes it

  egg = yolk | whole_egg | white,
  any_gelatine = gelatine | gelatine_mass,
  chocolate = dark | milk_chocolate | white_chocolate | other_chocolate,
  thickener = starch | flour,
};
}  // namespace kind

unsigned kind_of(const Check& check, const fiche::Ingredient& ingredient);

/// What kinds of food are in each thing and each step of the flow.
struct FoodKinds {
  unsigned all = 0;  ///< of all ingredients
  std::vector<unsigned> things, steps;
};
/// Worked out once a check.
const FoodKinds& food_kinds(const Check& check);

/// Grams of what is of these kinds in a gram of what comes of the step; where a part of it is not known, empty.
std::optional<flow::Range> share_of_kinds(const Check& check, int step, unsigned kinds);

/// Whether the fiche itself says that the step takes it: by a mark, or by going on from the step before.
inline bool is_told(const flow::Use& use) { return use.how != flow::Use::How::assumed && !use.instead; }

/// Where a use is said: its mark; else its step.
base::Span span_of(const Check& check, const flow::Use& use);

/// Whether the step names the kind of what it makes, in its own words, in its component's title or the fiche's: "italian
/// meringue|meringue italienne". `names` are in lower case.
bool is_called(const Check& check, int step, std::initializer_list<std::string_view> names);

}  // namespace tamis::rules

#endif
