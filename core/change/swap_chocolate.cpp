#include <charconv>

#include "core/change/swap_kind.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;

namespace {

bool is_dark(std::string_view id) { return id.starts_with("chocolate-dark-") || id == "cocoa-mass"; }
bool is_milk(std::string_view id) { return id == "chocolate-milk" || id == "chocolate-milk-40"; }
bool is_sugar(std::string_view id) { return id == "sugar-white" || id == "sugar-icing"; }

bool fits(std::string_view from, Foods to) {
  if (is_milk(from)) return to.size() == 1 && is_milk(to[0]);
  return is_dark(from) && is_dark(to[0]) && (to.size() == 1 || is_sugar(to[1]));
}

/// "chocolate-dark-64" is sold by its cocoa.
std::optional<Ratio> cocoa_in_name(std::string_view id) {
  if (id == "cocoa-mass") return Ratio(100);
  const std::string_view digits = id.substr(id.rfind('-') + 1);
  int percent = 0;
  const auto end = std::from_chars(digits.data(), digits.data() + digits.size(), percent);
  if (end.ec != std::errc() || end.ptr != digits.data() + digits.size()) return std::nullopt;
  return Ratio(percent);
}

std::optional<Ratio> cocoa_of(const SwapTask& task, std::string_view said, std::string_view id) {
  if (!said.empty()) return percent_of(said, task.own.fiche->reading);
  const auto* own = task.kitchen.own_food(id);
  if (own != nullptr && own->cocoa_percent) return in_100_g(*own->cocoa_percent);
  return cocoa_in_name(general_food(task.kitchen, id));
}

base::Finding not_known(const std::string& name, const std::string& id) {
  return bad_swap("how much cocoa is in " + name + " is not stated", "state it: cocoa=\"64 %\" on the line, or " + id + ":64");
}

/// Where sugar makes good what the stronger chocolate has less of; the two together weigh what the author's did.
base::Result<WorkedOut> with_sugar(WorkedOut out, const Stand& sugar, Ratio old, Ratio made) {
  const Ratio cocoa = out.lines.front().factor;
  if (cocoa >= 1) {
    return bad_swap("from " + plain(old) + " % of cocoa to " + plain(made) + " % there is no sugar to add",
                    "swap the chocolate alone; what it brings more of sugar is said");
  }
  StandIn& line = out.lines.emplace_back();
  line.factor = 1 - cocoa;
  line.english = first_name(sugar.food->english);
  line.french = first_name(sugar.food->french);
  out.how = factor_text(cocoa) + " times its weight and " + factor_text(line.factor) + " of sugar, for the same cocoa (" +
            plain(old) + " % to " + plain(made) + " %)";
  return out;
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  const Stand& stand = task.stands[0];
  const auto old = cocoa_of(task, task.own.get(At::cocoa), task.own.food_id);
  if (!old) return not_known(task.own.name, stand.id);
  const auto made = cocoa_of(task, stand.figure, stand.id);
  if (!made && !stand.figure.empty()) {
    return bad_swap("\"" + stand.figure + "\" is no share of cocoa", "give it in percent: " + stand.id + ":64");
  }
  if (!made) return not_known(first_name(stand.food->english), stand.id);
  WorkedOut out;
  StandIn& line = out.lines.emplace_back();
  line.factor = *old / *made;
  line.sets.emplace_back(At::cocoa, plain(*made) + " %");
  const bool named = first_name(stand.food->english).find('%') != std::string::npos;
  const std::string french_figure = " " + plain(*made) + "\u00A0%";
  const bool milk = is_milk(general_food(task.kitchen, stand.id));
  line.english = named && stand.figure.empty() ? first_name(stand.food->english)
                                               : std::string(milk ? "milk" : "dark") + " chocolate " + plain(*made) + " %";
  line.french = std::string(milk ? "chocolat au lait" : "chocolat noir") + french_figure;
  out.how =
      factor_text(line.factor) + " times its weight, for the same cocoa (" + plain(*old) + " % to " + plain(*made) + " %)";
  out.english = "how much of the cocoa is butter differs by maker: it may set firmer or softer";
  out.french = "la part de beurre de cacao varie selon le fabricant : la prise peut changer";
  out.source =
      "by definition of the cocoa percentage: cocoa mass, butter and powder in 100 g; the rest of a dark one is sugar "
      "(Directive 2000/36/EC, from memory)";
  if (task.stands.size() == 2) return with_sugar(std::move(out), task.stands[1], *old, *made);
  return out;
}

}  // namespace

/// The cocoa stays; sugar and fat that come or go are said, or a line of sugar is put in with "+sugar-white".
extern const SwapKind swap_chocolate;
const SwapKind swap_chocolate = {
    .what = "chocolate by its cocoa; +sugar-white adds the sugar it lacks",
    .example = "chocolate=chocolate-dark-70+sugar-white",
    .fits = fits,
    .moves_water = false,
    .work_out = work_out,
};

}  // namespace tamis::change
