// Totals of a fiche: allergens, nutrition, ingredient list, cost (api.inc, core/tally).
#include <lua.h>

#include <cmath>
#include <cstdio>

#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/record.h"
#include "core/lua/values.h"
#include "core/measure/write.h"
#include "core/tally/allergen_table.h"
#include "core/tally/cost.h"
#include "core/tally/ingredient_list.h"
#include "core/tally/nutrition.h"

namespace tamis::lua {
namespace {

using tally::Nutrient;

/// Following every line through the steps, in the files it takes from too.
const tally::Makeup& makeup_of(lua_State* state, Opened& opened) {
  constexpr std::size_t cost = 20'000;
  spend(state, cost);
  return opened.makeup();
}

tally::Law law_at(lua_State* state, int index) {
  const std::string_view word = string_at(state, index, "eu");
  if (word == "eu") return tally::Law::eu;
  if (word == "us") return tally::Law::us;
  constexpr std::string_view laws[] = {"eu", "us"};
  no_such(state, "law", word, laws);
}

/// "1.5", "< 1", "1,5" in French.
std::string figure_text(const tally::Rounded& rounded, std::string_view language) {
  char buffer[48];
  std::snprintf(buffer, sizeof buffer, "%s%.*f", rounded.less_than ? "< " : "", rounded.digits, rounded.value);
  std::string out = buffer;
  const bool comma = language.starts_with("fr") || language.starts_with("de") || language.starts_with("es");
  if (const std::size_t point = out.find('.'); comma && point != std::string::npos) out[point] = ',';
  return out;
}

tally::Rounded rounded(tally::Law law, Nutrient nutrient, double amount) {
  return law == tally::Law::eu ? tally::eu_rounded(nutrient, amount) : tally::us_rounded(nutrient, amount);
}

/// The rows of a table, in the order of the law's own.
std::vector<Nutrient> rows_of(tally::Law law) {
  if (law == tally::Law::us)
    return {Nutrient::calories, Nutrient::fat, Nutrient::saturates, Nutrient::sodium_mg, Nutrient::total_carbohydrate,
            Nutrient::fibre,    Nutrient::sugars, Nutrient::protein};
  return {Nutrient::energy_kj, Nutrient::energy_kcal, Nutrient::fat,     Nutrient::saturates, Nutrient::carbohydrate,
          Nutrient::sugars,    Nutrient::fibre,       Nutrient::protein, Nutrient::salt};
}

std::string_view unit_of(Nutrient nutrient) {
  switch (nutrient) {
    case Nutrient::energy_kj: return "kJ";
    case Nutrient::energy_kcal:
    case Nutrient::calories: return "kcal";
    case Nutrient::sodium_mg: return "mg";
    default: return "g";
  }
}

void push_runs(lua_State* state, const std::vector<tally::Run>& runs) {
  push_list(state, runs, [state](const tally::Run& run) {
    Record record(state);
    record.text("text", run.text);
    record.flag("marked", run.marked);
  });
}

void push_items(lua_State* state, const std::vector<tally::Listed>& items) {
  push_list(state, items, [state](const tally::Listed& item) {
    Record record(state);
    record.text("name", item.name);
    push_runs(state, item.runs);
    record.set("runs");
    record.number("grams", item.grams);
    record.number("share", item.share);
    record.number("percent", item.percent);
    record.flag("small", item.small);
    record.flag("weighed", item.weighed);
    push_items(state, item.parts);
    record.set("parts");
  });
}

/// The exact sum as people write it, and as a number to reckon with.
void put_money(Record& record, const std::string& name, const std::optional<base::Ratio>& amount, const std::string& currency,
               std::string_view language) {
  if (!amount || currency.empty()) return;
  record.number(name, amount->approximate());
  record.text(name + "_text", measure::write_money({*amount, currency}, language));
}

void push_cost_lines(lua_State* state, Opened& opened, const std::vector<tally::CostLine>& lines, const std::string& currency) {
  const std::string_view language = opened.fiche().reading.language;
  push_list(state, lines, [&](const tally::CostLine& line) {
    Record record(state);
    record.text("name", line.name);
    push_element(state, opened, line.component);
    record.set("component");
    record.number("grams", line.grams);
    record.number("bought", line.bought);
    put_money(record, "cost", line.cost, currency, language);
    if (line.open != tally::CostLine::Open::nothing) record.text("open", tally::open_name(line.open));
    if (!line.since.empty()) record.text("since", line.since);
  });
}

}  // namespace

int fiche_doubts(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_list(state, makeup_of(state, opened).doubts, [&](const tally::Doubt& doubt) {
    Record record(state);
    record.text("kind", tally::doubt_name(doubt.kind));
    record.text("what", doubt.what);
    record.number("grams", doubt.grams);
    push_element(state, opened, doubt.where);
    record.set("element");
  });
}

int fiche_assumed(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_list(state, tally::assumed_foods(makeup_of(state, opened), opened.session().kitchen),
                   [state](const std::string& name) { push(state, name); });
}

int fiche_allergens(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  constexpr std::size_t cost = 20'000;
  spend(state, cost);
  const tally::AllergenTable table = tally::allergen_table(opened.document(), opened.session().kitchen,
                                                           opened.session().library, opened.fiche().reading.language);
  push_list(state, table.found, [&](const tally::AllergenFound& found) {
    Record record(state);
    record.text("id", found.name->id);
    record.flag("eu", found.name->eu);
    record.flag("us", found.name->us);
    record.text("level", tally::level_name(found.level));
    using Stated = tally::AllergenFound::Stated;
    record.text("stated", found.stated == Stated::contains ? "contains" : found.stated == Stated::may ? "may" : "no");
    push_list(state, found.sources, [&](const tally::AllergenFound::Source& source) {
      Record one(state);
      one.text("food", source.food);
      one.text("level", tally::level_name(source.level));
      if (!source.specified.empty()) one.text("specified", source.specified);
      one.flag("cross_contact", source.cross_contact);
      push_element(state, opened, source.where);
      one.set("element");
    });
    record.set("sources");
  });
  push_list(state, table.unknown, [state](const std::string& name) { push(state, name); });
  lua_pushboolean(state, table.statement ? 1 : 0);
  return 3;
}

int fiche_ingredient_list(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  tally::ListOptions options;
  options.law = law_at(state, 2);
  const std::string_view form = string_at(state, 3, "together");
  constexpr std::string_view forms[] = {"together", "components"};
  if (form != forms[0] && form != forms[1]) no_such(state, "form of a list", form, forms);
  options.by_component = form == "components";
  options.language = string_at(state, 4, opened.fiche().reading.language);
  const tally::IngredientList list = tally::ingredient_list(makeup_of(state, opened), opened.fiche(), options);
  push_items(state, list.items);
  lua_pushboolean(state, list.water_left_out ? 1 : 0);
  push_list(state, tally::us_contains(list), [state](const std::string& name) { push(state, name); });
  return 3;
}

int fiche_nutrition(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  const tally::Law law = law_at(state, 2);
  const std::string_view language = string_at(state, 3, opened.fiche().reading.language);
  const tally::Makeup& makeup = makeup_of(state, opened);
  const tally::Nutrition found = tally::nutrition_of(makeup);
  double served = 0;
  for (const tally::Nutrition::Of& of : found.components) served += of.grams;
  const auto rows = rows_of(law);
  Record record(state);
  record.number("mass", makeup.mass);
  record.number("portions", makeup.portions);
  record.flag("pieces", makeup.pieces);
  record.number("portion_mass", makeup.portion_mass);
  record.number("served", served);
  push_list(state, rows, [&](Nutrient nutrient) {
    const tally::Figure& figure = found.whole[static_cast<std::size_t>(nutrient)];
    Record row(state);
    row.text("name", tally::nutrient_name(nutrient));
    row.text("unit", unit_of(nutrient));
    row.number("whole", figure.amount);
    row.number("lacking", figure.lacking);
    if (makeup.mass && *makeup.mass > 0) {
      const double amount = 100 * figure.amount / *makeup.mass;
      row.number("per_100_g", amount);
      row.text("per_100_g_text", figure_text(rounded(law, nutrient, amount), language));
    }
    if (makeup.portions) {
      const double amount = figure.amount / *makeup.portions;
      row.number("per_portion", amount);
      row.text("per_portion_text", figure_text(rounded(law, nutrient, amount), language));
    }
  });
  record.set("rows");
  push_list(state, found.components, [&](const tally::Nutrition::Of& of) {
    Record component(state);
    push_element(state, opened, of.component);
    component.set("component");
    component.number("grams", of.grams);
    for (const Nutrient nutrient : rows)
      component.number(std::string(tally::nutrient_name(nutrient)), of.figures[static_cast<std::size_t>(nutrient)].amount);
  });
  record.set("components");
  push_list(state, found.lacking, [&](const tally::Lacking& lacking) {
    Record one(state);
    one.text("food", lacking.food);
    one.number("grams", lacking.grams);
    one.flag("all", lacking.what.size() == tally::nutrients);
    push_list(state, lacking.what, [state](Nutrient nutrient) { push(state, tally::nutrient_name(nutrient)); });
    one.set("what");
  });
  record.set("lacking");
  push_list(state, found.not_weighed, [state](const std::string& name) { push(state, name); });
  record.set("not_weighed");
  return 1;
}

int fiche_cost(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  const std::string_view day = string_at(state, 2, "");
  const std::string_view language = opened.fiche().reading.language;
  const tally::Makeup& makeup = makeup_of(state, opened);
  const tally::Cost cost = tally::cost_of(makeup, opened.session().kitchen, opened.fiche().id, day);
  Record record(state);
  record.text("currency", cost.currency);
  push_cost_lines(state, opened, cost.foods, cost.currency);
  record.set("foods");
  push_cost_lines(state, opened, cost.packaging, cost.currency);
  record.set("packaging");
  const auto money = [&](const char* name, const std::optional<base::Ratio>& amount) {
    put_money(record, name, amount, cost.currency, language);
  };
  money("food", cost.food);
  money("hands", cost.hands);
  money("packed", cost.packed);
  money("left_over", cost.left_over);
  money("batch", cost.batch);
  money("portion", cost.portion);
  money("price", cost.price);
  money("net", cost.net);
  const auto share = [&](const char* name, const std::optional<base::Ratio>& figure) {
    if (figure) record.number(name, figure->approximate());
  };
  share("food_share", cost.food_share);
  share("share", cost.share);
  share("aim", cost.aim);
  record.number("unpriced", cost.unpriced_g);
  record.number("all", cost.all_g);
  record.flag("hour_known", cost.hour_known);
  record.number("seconds", cost.seconds);
  record.number("steps_unstated", static_cast<double>(cost.steps_unstated));
  record.flag("complete", cost.complete());
  record.number("portions", makeup.portions);
  record.flag("pieces", makeup.pieces);
  push_list(state, cost.components, [&](const tally::Cost::Of& of) {
    Record one(state);
    push_element(state, opened, of.component);
    one.set("component");
    put_money(one, "food", of.food, cost.currency, language);
    put_money(one, "hands", of.hands, cost.currency, language);
    put_money(one, "both", of.food + of.hands, cost.currency, language);
  });
  record.set("components");
  return 1;
}

}  // namespace tamis::lua
