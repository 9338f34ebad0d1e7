#include <algorithm>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/change/stand_in.h"
#include "core/change/swap_work.h"

namespace tamis::change {

using fiche::At;
using fiche::Fiche;

namespace {

constexpr const char* how_written = "write it LINE=FOOD, with a figure behind a colon: --swap leaf=gelatine-powder:225";

std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> out;
  while (true) {
    const std::size_t end = text.find(at);
    out.emplace_back(base::trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return out;
    text.remove_prefix(end + 1);
  }
}

base::Result<SwapWish> read_one(std::string_view words) {
  const std::size_t equals = words.find('=');
  if (equals == std::string_view::npos)
    return bad_swap("\"" + std::string(words) + "\" says no food that stands in", how_written);
  SwapWish wish;
  wish.line = base::trimmed(words.substr(0, equals));
  if (wish.line.empty()) return bad_swap("\"" + std::string(words) + "\" says no line of the ingredients", how_written);
  for (const std::string& food : split(words.substr(equals + 1), '+')) {
    const std::size_t colon = food.find(':');
    SwapWish::Part part{std::string(base::trimmed(food.substr(0, colon))), ""};
    if (colon != std::string::npos) part.figure = base::trimmed(food.substr(colon + 1));
    if (part.food.empty() || (colon != std::string::npos && part.figure.empty())) {
      return bad_swap("\"" + std::string(words) + "\" leaves a food or its figure out", how_written);
    }
    wish.foods.push_back(std::move(part));
  }
  if (wish.foods.size() > 2) return bad_swap("more than two foods cannot stand in for one", "make a mix of two of them first");
  return wish;
}

/// Butter for the tin and flour for the bench are meant only by their own id.
bool answers(const Fiche& fiche, const fiche::Ingredient& line, std::string_view asked, int way) {
  if (way == 0) return line.id == asked;
  const std::string_view purpose = fiche.document->get(line.node, At::purpose);
  if (!purpose.empty() && purpose != "food") return false;
  if (way == 1) return line.food_id == asked;
  return !line.name.empty() && base::lower(line.name) == base::lower(asked);
}

std::string_view nearest_food(const fiche::Kitchen& kitchen, std::string_view typed) {
  std::vector<std::string_view> ids;
  for (const auto& own : kitchen.foods) ids.push_back(own->id);
  for (const food::Food& food : food::foods()) ids.push_back(food.id);
  return base::nearest(typed, ids);
}

base::Result<Stand> stand_meant(const Fiche& fiche, const SwapWish::Part& part) {
  if (const food::Food* food = fiche.kitchen->find_food(part.food)) return Stand{part.food, food, part.figure};
  const auto matches = food::look_up(part.food, std::string_view(fiche.language).starts_with("fr") ? "fr" : "en", 1);
  if (!matches.empty() && matches[0].how <= food::Match::How::variant) {
    return Stand{std::string(matches[0].food->id), matches[0].food, part.figure};
  }
  std::string near(nearest_food(*fiche.kitchen, part.food));
  if (near.empty() && !matches.empty()) near = matches[0].food->id;
  return bad_swap("no food is called \"" + part.food + "\"",
                  near.empty() ? "\"tamis foods\" lists all of them" : "did you mean \"" + near + "\"?");
}

/// "egg-whole, egg-whole-frozen": what may stand in alone for it.
std::string may_stand_in(std::string_view from) {
  std::string out;
  for (const food::Food& food : food::foods()) {
    const std::string_view only = food.id;
    const Foods to(&only, 1);
    const auto fits = [&](const SwapKind* kind) { return kind->fits(from, to); };
    const auto kinds = swap_kinds();
    if (food.id != from && std::any_of(kinds.begin(), kinds.end(), fits))
      out += (out.empty() ? "" : ", ") + std::string(food.id);
  }
  return out;
}

/// Nothing more is asked of it than what the author's line has.
bool is_own_food(const OwnLine& own, const Stand& stand) {
  if (stand.id != own.food_id) return false;
  if (stand.figure.empty()) return true;
  std::string wanted = stand.figure;
  if (wanted.ends_with('%')) wanted = base::trimmed(std::string_view(wanted).substr(0, wanted.size() - 1));
  for (const At at : {At::bloom, At::size, At::fat, At::cocoa}) {
    std::string has(own.get(at));
    if (has.ends_with('%')) has = base::trimmed(std::string_view(has).substr(0, has.size() - 1));
    if (!has.empty() && base::trimmed(has) == wanted) return true;
  }
  return false;
}

}  // namespace

base::Result<std::vector<SwapWish>> read_swaps(std::string_view words) {
  std::vector<SwapWish> out;
  for (const std::string& one : split(words, ';')) {
    if (one.empty()) continue;
    auto wish = read_one(one);
    if (!wish) return wish.fault();
    out.push_back(std::move(*wish));
  }
  if (out.empty()) return bad_swap("no swap is named", how_written);
  return out;
}

base::Result<std::vector<std::size_t>> lines_meant(const Fiche& fiche, const SwapWish& wish) {
  std::vector<std::size_t> out;
  for (int way = 0; way < 3 && out.empty(); ++way) {
    for (std::size_t i = 0; i < fiche.ingredients.size(); ++i) {
      const fiche::Ingredient& line = fiche.ingredients[i];
      if (!is_added_line(*fiche.document, line.node) && answers(fiche, line, wish.line, way)) out.push_back(i);
    }
  }
  if (!out.empty()) return out;
  std::vector<std::string_view> words;
  std::string ids;
  for (const fiche::Ingredient& line : fiche.ingredients) {
    for (const std::string_view word : {line.id, line.food_id, line.name}) words.push_back(word);
    const std::string_view id = line.id.empty() ? line.food_id : line.id;
    if (!id.empty()) ids += (ids.empty() ? "" : ", ") + std::string(id);
  }
  const std::string_view near = base::nearest(wish.line, words);
  base::Finding fault = bad_swap("no line of the ingredients is \"" + wish.line + "\"",
                                 near.empty() ? "its lines are " + ids : "did you mean \"" + std::string(near) + "\"?");
  fault.rule = no_such_line;
  return fault;
}

base::Result<std::vector<Stand>> stands_meant(const Fiche& fiche, const SwapWish& wish) {
  std::vector<Stand> out;
  for (const SwapWish::Part& part : wish.foods) {
    auto stand = stand_meant(fiche, part);
    if (!stand) return stand.fault();
    out.push_back(std::move(*stand));
  }
  return out;
}

base::Result<const SwapKind*> kind_of_swap(const OwnLine& own, const std::vector<Stand>& stands) {
  const SwapKind* none = nullptr;
  if (stands.size() == 1 && is_own_food(own, stands[0])) return none;
  const fiche::Kitchen& kitchen = *own.fiche->kitchen;
  const std::string_view from = general_food(kitchen, own.food_id);
  std::vector<std::string_view> to;
  std::string names;
  for (const Stand& stand : stands) {
    to.push_back(general_food(kitchen, stand.id));
    names += (names.empty() ? "" : " and ") + stand.id;
  }
  for (const SwapKind* kind : swap_kinds()) {
    if (kind->fits(from, to)) return kind;
  }
  const std::string others = may_stand_in(from);
  return bad_swap("nothing is known of " + names + " in place of " + std::string(from),
                  others.empty() ? "work it out by hand, and try one batch" : "for it there can stand: " + others);
}

}  // namespace tamis::change
