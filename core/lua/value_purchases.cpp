// What a fiche takes from the store, and how a food is bought (api.inc, core/tally/makeup.h).
#include <lua.h>

#include "core/food/splits.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/record.h"
#include "core/lua/values.h"
#include "core/tally/makeup.h"

namespace tamis::lua {
namespace {

using fiche::Kitchen;
using tally::Entry;

void put_food(lua_State* state, Record& record, const food::Food* food) {
  push_food(state, food);
  record.set("food");
}

void push_line(lua_State* state, Opened& opened, const std::vector<Entry>& entries, std::size_t index, std::string_view day) {
  Session& session = opened.session();
  const Entry& entry = entries[index];
  Opened& its = entry.held == nullptr ? opened : session.open(entry.held);
  Record record(state);
  record.text("name", tally::name_in(session.kitchen, entry));
  put_food(state, record, entry.food);
  push_element(state, its, entry.node);
  record.set("element");
  record.number("share", entry.share);
  record.number("grams", entry.listed);
  record.number("bought", tally::grams_bought(entry, tally::sold_by_piece(session.kitchen, entry, day)));
  record.flag("counts", entry.counts);
  record.flag("trace", entry.trace);
  if (!entry.in.empty()) record.text("from", entry.in);
  std::vector<const Entry*> parts;
  for (const Entry& other : entries)
    if (other.part_of == static_cast<int>(index)) parts.push_back(&other);
  push_list(state, parts, [&](const Entry* part) {
    Record one(state);
    one.text("name", tally::name_in(session.kitchen, *part));
    put_food(state, one, part->food);
    one.number("grams", part->listed);
  });
  record.set("parts");
}

const Kitchen::OwnFood* own_of(lua_State* state) { return food_at(state, 1).own; }

/// The house's own of a food of the table: under the table's name, else the first that is like it; else the table's.
const food::Food* of_house(const Kitchen& kitchen, std::string_view id) {
  if (const Kitchen::OwnFood* own = kitchen.own_food(id)) return &own->food;
  for (const auto& own : kitchen.foods)
    if (own->like == id) return &own->food;
  return food::food_by_id(id);
}

bool gives(const food::Food& food, std::string_view part) {
  for (const food::Split& split : food::splits_of(food))
    if (split.id == part) return true;
  return false;
}

}  // namespace

int fiche_purchases(lua_State* state) {
  constexpr std::size_t cost = 20'000;  // every line is followed through the steps, in the files it takes from too
  Opened& opened = fiche_at(state, 1);
  const std::string_view day = string_at(state, 2, "");
  spend(state, cost);
  const tally::Makeup& makeup = opened.makeup();
  std::vector<std::size_t> bought;
  for (std::size_t i = 0; i < makeup.entries.size(); ++i)
    if (makeup.entries[i].part_of < 0) bought.push_back(i);
  spend(state, bought.size() * makeup.entries.size() / 8);
  push_list(state, bought, [&](std::size_t index) { push_line(state, opened, makeup.entries, index, day); });
  push_list(state, makeup.bases, [&](const tally::Base& base) {
    Record record(state);
    record.text("title", base.title);
    push_fiche(state, opened.session().open(base.held));
    record.set("fiche");
    record.number("grams", base.grams);
    record.number("batches", base.batches);
  });
  return 2;
}

int food_supplier(lua_State* state) {
  const Kitchen::OwnFood* own = own_of(state);
  if (own == nullptr || own->supplier.empty())
    lua_pushnil(state);
  else
    push(state, own->supplier);
  return 1;
}

int food_stock(lua_State* state) {
  const Kitchen::OwnFood* own = own_of(state);
  if (own == nullptr || !own->stock)
    lua_pushnil(state);
  else
    push_amount(state, *own->stock);
  return 1;
}

int food_pack(lua_State* state) {
  const Kitchen::OwnFood* own = own_of(state);
  const Kitchen::Price* price = own == nullptr ? nullptr : fiche::price_on(own->prices, string_at(state, 2, ""));
  if (price == nullptr) return 0;
  if (price->pack)
    push_amount(state, *price->pack);
  else
    lua_pushnil(state);
  lua_pushnumber(state, price->money.amount.approximate());
  push(state, price->money.currency);
  return 3;
}

int food_splits(lua_State* state) {
  const FoodValue& value = food_at(state, 1);
  const food::Food& food = *value.food;
  const Kitchen& kitchen = session_of(state).kitchen;
  push_list(state, food::splits_of(food), [&](const food::Split& split) {
    Record record(state);
    put_food(state, record, of_house(kitchen, split.id));
    record.number("grams", split.grams);
  });
  const auto piece = food::piece_of(food);
  if (food::splits_by_mass(food) || !piece)
    lua_pushnil(state);
  else
    lua_pushnumber(state, piece->grams.approximate());
  return 2;
}

int food_whole(lua_State* state) {
  const FoodValue& value = food_at(state, 1);
  const Kitchen& kitchen = session_of(state).kitchen;
  const std::string_view part = value.own == nullptr || food::food_by_id(value.food->id) != nullptr ? value.food->id : value.own->like;
  const food::Food* found = nullptr;
  for (const auto& own : kitchen.foods)
    if (found == nullptr && !own->prices.empty() && gives(own->food, part)) found = &own->food;
  for (const food::Food& one : food::foods())
    if (found == nullptr && gives(one, part)) found = of_house(kitchen, one.id);
  push_food(state, found);
  return 1;
}

}  // namespace tamis::lua
