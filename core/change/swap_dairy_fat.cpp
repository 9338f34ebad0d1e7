#include <algorithm>
#include <array>

#include "core/change/swap_kind.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;

namespace {

constexpr std::array<std::string_view, 11> dairy = {
    "milk-whole",   "milk-semi-skimmed", "milk-lowfat-1", "milk-skimmed", "milk-uht",    "cream-half-and-half",
    "cream-single", "cream-30",          "cream-35",      "cream-36",     "cream-double"};
constexpr Ratio can_be_whipped = 30;  // percent: 21 CFR 131.157, light whipping cream (from memory)
const Ratio as_good_as_same{2};       // points of fat: the amount stays (common practice)

bool fits(std::string_view from, Foods to) {
  return is_one_of(from, dairy) && std::all_of(to.begin(), to.end(), [](std::string_view id) { return is_one_of(id, dairy); });
}

std::optional<Ratio> fat_of(const SwapTask& task, std::string_view said, std::string_view id, const food::Food& food) {
  if (!said.empty()) return percent_of(said, task.own.fiche->reading);
  const auto* own = task.kitchen.own_food(id);
  if (own != nullptr && own->fat_percent) return in_100_g(*own->fat_percent);
  const std::string_view general = general_food(task.kitchen, id);
  if (general == "cream-30") return Ratio(30);  // as it is sold; the table's row is of one of 30.91 %
  if (general == "cream-36") return Ratio(36);
  return in_100_g(food.per_100_g.fat);
}

StandIn line_of(const Stand& stand, Ratio fat, Ratio factor) {
  StandIn line;
  line.factor = factor;
  line.sets.emplace_back(At::fat, plain(fat) + " %");
  line.english = first_name(stand.food->english) + ", " + plain(fat) + " % fat";
  line.french = first_name(stand.food->french) + ", " + plain(fat) + "\u00A0% de matière grasse";
  return line;
}

constexpr const char* square = "Pearson's square: masses of the two stand as the distances of their fat from the wanted one";

base::Result<WorkedOut> one(const SwapTask& task, Ratio wanted, Ratio fat) {
  if (base::abs(wanted - fat) > as_good_as_same) {
    const std::string other = fat > wanted ? "milk-whole" : "cream-double";
    return bad_swap(plain(fat) + " % of fat alone does not stand in for " + plain(wanted) + " %",
                    "name what it is mixed with: " + task.own.food_id + "=" + task.stands[0].id + "+" + other);
  }
  WorkedOut out;
  out.lines.push_back(line_of(task.stands[0], fat, 1));
  out.how = "the amount stays (" + plain(wanted) + " % fat to " + plain(fat) + " %)";
  out.source = "common practice: within two points of fat the amount stays";
  return out;
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  const auto wanted = fat_of(task, task.own.get(At::fat), task.own.food_id, *task.own.food);
  std::vector<Ratio> fats;
  for (const Stand& stand : task.stands) {
    const auto fat = fat_of(task, stand.figure, stand.id, *stand.food);
    if (!fat) return bad_swap("\"" + stand.figure + "\" is no fat content", "give it in percent: " + stand.id + ":35");
    fats.push_back(*fat);
  }
  if (!wanted) return bad_swap("the fat of " + task.own.name + " is not known", "state it on the line: fat=\"35 %\"");
  if (fats.size() == 1) return one(task, *wanted, fats[0]);
  if (fats[0] == fats[1] || *wanted < std::min(fats[0], fats[1]) || *wanted > std::max(fats[0], fats[1])) {
    return bad_swap("no mix of " + plain(fats[0]) + " % and " + plain(fats[1]) + " % comes to " + plain(*wanted) + " % fat",
                    "take one that is fatter and one that is leaner");
  }
  const Ratio first = (*wanted - fats[1]) / (fats[0] - fats[1]);
  WorkedOut out;
  out.fat_stays = true;
  out.lines.push_back(line_of(task.stands[0], fats[0], first));
  out.lines.push_back(line_of(task.stands[1], fats[1], 1 - first));
  out.how = plain(first * 100) + " % of " + plain(fats[0]) + " % fat and " + plain((1 - first) * 100) + " % of " +
            plain(fats[1]) + " % come to " + plain(*wanted) + " %";
  out.english = "stir the two together cold";
  out.french = "mélanger les deux à froid";
  if (*wanted >= can_be_whipped) {
    out.english += "; a mix that is to be whipped holds less well than cream of that fat";
    out.french += " ; monté, le mélange tient moins bien qu'une crème de ce taux";
  }
  out.source = square;
  return out;
}

}  // namespace

/// The fat and the weight stay: a mix of two on hand by Pearson's square.
extern const SwapKind swap_dairy_fat;
const SwapKind swap_dairy_fat = {
    .what = "milk or cream of another fat content: two on hand, by Pearson's square",
    .example = "cream=cream-double:48+milk-whole:3.5",
    .fits = fits,
    .moves_water = false,
    .work_out = work_out,
};

}  // namespace tamis::change
