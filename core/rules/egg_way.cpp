#include "core/rules/egg_way.h"

#include <optional>

namespace tamis::rules {
namespace {

const EggWay custard{&figures::custard_cooks, "a custard without starch", "curdles above", "has not begun to thicken at",
                     "take it off at 82–85 °C and strain it at once, or give it starch and boil it"};
const EggWay curd{
    &figures::curd_cooks, "a curd", {}, "has not begun to thicken at", "stir it to 82–85 °C: it thickens on as it cools"};
const EggWay hollandaise{&figures::hollandaise_yolks,
                         "yolk without sugar or milk",
                         "grains above",
                         {},
                         "keep the bath below the boil and the yolks at 60–70 °C"};
const EggWay sabayon{&figures::sabayon_cooks,
                     "egg with sugar",
                     "grains above",
                     {},
                     "take it off the bath at 85 °C at the most and beat it cold"};

bool at_least(const std::optional<flow::Range>& share, double least) { return share && share->low >= least; }

}  // namespace

const EggWay* egg_way_of(const Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[static_cast<std::size_t>(step)];
  if ((kinds & kind::egg) == 0 || (kinds & (kind::thickener | kind::chocolate | kind::sour_dairy | kind::unknown)) != 0)
    return nullptr;
  if ((kinds & (kind::yolk | kind::whole_egg)) == 0) return nullptr;
  const auto egg = share_of_kinds(check, step, kind::egg);
  if (!egg) return nullptr;
  if ((kinds & kind::acid) != 0 && (kinds & kind::sugar) != 0 && at_least(share_of_kinds(check, step, kind::acid), 0.08))
    return &curd;
  if ((kinds & (kind::milk | kind::cream)) != 0) {
    return (kinds & kind::other) == 0 && at_least(share_of_kinds(check, step, kind::milk | kind::cream), 1.5 * egg->high)
               ? &custard
               : nullptr;
  }
  if ((kinds & ~(kind::yolk | kind::butter | kind::plain | kind::acid)) == 0) return &hollandaise;
  const bool sweet = at_least(share_of_kinds(check, step, kind::sugar), 0.4 * egg->high);
  return sweet && (kinds & kind::other) == 0 ? &sabayon : nullptr;
}

}  // namespace tamis::rules
