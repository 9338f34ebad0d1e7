#include "core/flow/do_actions.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"

namespace tamis::flow {
namespace {

using Rest = Action::Rest;
using Reason = Why::Reason;

// The most of each, as a share of the mass (common practice).
constexpr double most_juice = 0.35;    // a roast joint well done; thawed meat and berries less
constexpr double most_trim = 0.35;     // peel, core, bone
constexpr double most_shed = 0.05;     // into water that is poured away
constexpr double most_fat_taken = 0.2; // fried dough, crisps more
constexpr double most_pan = 0.05;      // of what fries in a counted fat, some stays in the pan
constexpr double most_swelling = 2.5;  // g of water a g of dry pulse, rice or pasta
constexpr double most_below_boil = 0.03;
constexpr double film = 0.03;          // on the sieve, whatever is in it

bool holds(const Point& point, std::initializer_list<food::Role> roles) {
  return std::any_of(roles.begin(), roles.end(), [&](food::Role role) {
    return (point.roles & (1U << static_cast<unsigned>(role))) != 0;
  });
}

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-'; }

void because(Why& why, Reason reason, int step) { why = {reason, -1, step}; }

void part(Point& point, double most, Reason reason, int step) {
  point.matter.gone = std::min(1.0, point.matter.gone + most);
  because(point.why_grams, reason, step);
  because(point.why_shares, reason, step);
}

void swell(Point& point, const Bath& bath, int step) {
  if (!bath.water) return;
  const Matter& matter = point.matter;
  const double dry = 1 - matter[Constituent::water].low - matter[Constituent::fat].low - matter[Constituent::sugars].low;
  point.matter.took_water += most_swelling * std::max(0.0, dry);
  part(point, most_shed, Reason::swelling, step);
}

/// Once for a step, whatever it does with it.
void lose(Point& point, Rest rest, const Bath& bath, double pieces, int step) {
  switch (rest) {
    case Rest::all: return;
    case Rest::drips:
      if (holds(point, {food::Role::meat, food::Role::fish, food::Role::fruit})) part(point, most_juice, Reason::juice, step);
      return;
    case Rest::behind: return part(point, std::min(1.0, pieces + film), Reason::sieve, step);
    case Rest::trims: return part(point, most_trim, Reason::trim, step);
    case Rest::swells: return swell(point, bath, step);
    case Rest::sheds:
      if (bath.water) part(point, most_shed, Reason::swelling, step);
      return;
    case Rest::fat:
      if (bath.fat) point.matter.took_fat += most_fat_taken;
      part(point, bath.fat ? most_shed : most_pan, Reason::frying, step);
      return;
  }
}

/// No pan boils off more than its heat allows: a strong ring brings 4 kW into the pan, a kettle half a kilowatt a kg, and a
/// gram of steam takes 2.26 kJ (common practice; heat of vaporisation by IAPWS). Simmering takes a quarter of that.
double most_steam(const Action& action, double grams, double minutes) {
  using Heat = Action::Heat;
  if (action.heat < Heat::warms || action.heat > Heat::boils) return 1;
  const double a_minute = std::max(106 / std::max(1.0, grams), 0.013);
  return a_minute * minutes * (action.heat == Heat::simmers || action.heat == Heat::poaches ? 0.25 : 1);
}

double steam_of(const Action& action, const Point& point, const Losing& losing) {
  const bool under_water = losing.bath.water && action.heats() && action.rest != Rest::all;
  if (under_water) return 0;
  double off = action.off;
  if (losing.stays_below || (losing.covered && action.heats())) off = std::min(off, most_below_boil);
  if (losing.minutes && point.weighed()) off = std::min(off, most_steam(action, point.grams, *losing.minutes));
  return off;
}

double openness(const Point& point) {
  double open = point.matter.off + point.matter.gone;
  for (const Range& part : point.matter.parts) open = std::max(open, part.width());
  return open;
}

}  // namespace

Doing doing_of(const fiche::Fiche& fiche, const fiche::Step& step) {
  Doing doing;
  for (const std::string_view word : step.actions) {
    if (const Action* action = action_named(word)) {
      doing.actions.push_back(action);
    } else if (doing.unknown.empty()) {
      doing.unknown = word;
    }
  }
  if (!step.actions.empty()) return doing;
  const fiche::Document& document = *fiche.document;
  const fiche::Node first = document.first_child(step.node);
  if (first != fiche::none && document.kind(first) == fiche::NodeKind::text) {
    const std::string_view text = base::trimmed(document.value(first));
    const auto* end = std::find_if_not(text.begin(), text.end(), letter);
    const std::string word = base::lower(text.substr(0, static_cast<std::size_t>(end - text.begin())));
    if (const Action* action = action_named(fiche.kitchen->trade_verb(word))) doing.actions.push_back(action);
  }
  doing.nothing = doing.actions.empty();
  return doing;
}

void lose_unsaid(Point& point, const Losing& losing) {
  double off = 0;
  std::vector<Rest> done;
  const double open_before = openness(point);
  for (const Action* action : losing.doing.actions) {
    if (action->air != Action::Air::keeps) point.air = action->air;
    off = std::max(off, steam_of(*action, point, losing));
    if (losing.stated || std::find(done.begin(), done.end(), action->rest) != done.end()) continue;
    done.push_back(action->rest);
    lose(point, action->rest, losing.bath, losing.pieces, losing.step);
  }
  const double can_go = point.matter[Constituent::water].high + point.matter[Constituent::alcohol].high;
  off = std::min({off, can_go - point.matter.off, 1.0});
  if (losing.stated || off <= 0) return;
  point.matter.off += off;
  if (!point.why_grams.any() || off > open_before) because(point.why_grams, Reason::steam, losing.step);
  if (!point.why_shares.any() || off > open_before) because(point.why_shares, Reason::steam, losing.step);
}

bool joins_after_heating(const Doing& doing) {
  static constexpr std::array<std::string_view, 20> joining{
      "add",  "assemble", "beat", "blend", "coat", "combine", "cream", "dissolve", "emulsify", "fold",
      "mix",  "pour",     "rub",  "stir",  "thin", "top",     "top-up", "toss",    "whip",     "whisk"};
  bool heated = false, joined = false;
  for (const Action* action : doing.actions) {
    if (action->heats()) joined = false;
    heated = heated || action->heats();
    joined = joined || (heated && std::find(joining.begin(), joining.end(), action->word) != joining.end());
  }
  return joined;
}

void forget(Point& point, Why why) {
  point.grams = std::numeric_limits<double>::quiet_NaN();
  point.matter = unknown_matter();
  point.celsius = {-open_end, open_end};
  point.heat = {};
  point.why_grams = point.why_shares = point.why_celsius = why;
}

}  // namespace tamis::flow
