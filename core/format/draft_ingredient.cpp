#include "core/format/draft_ingredient.h"

#include <algorithm>
#include <optional>

#include "core/base/utf8.h"
#include "core/format/draft_amount.h"
#include "core/format/draft_figures.h"
#include "core/format/draft_food.h"
#include "core/format/draft_keys.h"

namespace tamis::format::draft {
namespace {

using measure::Kind;

void take_optional_front(IngredientLine& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  const std::size_t used = reader.desk.lexicon.match(Set::optional, words, 0);
  if (used == 0 || used == words.size()) return;
  reader.made.optional = true;
  reader.drop(words[used].where.begin);
}

/// "zest of 1 lemon", "jus de 2 citrons".
void take_parts_front(IngredientLine& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  const auto take = [&](Set set, bool zest, bool juice) {
    const std::size_t used = reader.desk.lexicon.match(set, words, 0);
    if (used == 0 || used >= words.size() || !reader.made.parts.empty()) return;
    const std::string said = reader.rest.substr(0, words[used - 1].where.end);
    if (zest) reader.made.parts.push_back({{}, said, true});
    if (juice) reader.made.parts.push_back({{}, zest ? std::string() : said, false});
    reader.drop(words[used].where.begin);
  };
  take(Set::zest_and_juice_of, true, true);
  take(Set::zest_of, true, false);
  take(Set::juice_of, false, true);
}

void take_tail(IngredientLine& reader, std::string_view tail) {
  tail = base::trimmed(tail);
  if (tail.empty()) return;
  if (is_set(reader, Set::optional, tail)) {
    reader.made.optional = true;
    return;
  }
  const Figure figure = amount_in(reader, tail);
  const bool whole = figure.used > 0 && base::trimmed(tail.substr(figure.used)).empty();
  if (!whole || (reader.amount && !figure.amount.has_figure())) return add_prep(reader, tail);
  if (figure.ambiguous) ask_whose(reader.desk, reader.line, tail);
  state_second(reader, figure.amount, tail);
}

/// What stands in brackets: "(200 g)", "(optional)", "(soft)".
void take_brackets(IngredientLine& reader) {
  for (std::size_t open = reader.rest.find('('); open != std::string::npos; open = reader.rest.find('(')) {
    const std::size_t close = reader.rest.find(')', open);
    const std::size_t end = std::min(close, reader.rest.size());
    const std::string inner = reader.rest.substr(open + 1, end - open - 1);
    const std::string before(base::trimmed(std::string_view(reader.rest).substr(0, open)));
    std::string behind;
    if (close != std::string::npos) behind = base::trimmed(std::string_view(reader.rest).substr(close + 1));
    reader.rest = joined(before, behind, !behind.empty() && behind[0] == ',' ? "" : " ");
    take_tail(reader, inner);
  }
}

/// Where the words behind the name begin: ", diced", " - 250 g", ": 250 g".
std::size_t tail_at(std::string_view text, std::size_t& sign) {
  for (std::size_t at = 1; at < text.size(); ++at) {
    const bool spaced = at + 1 < text.size() && text[at + 1] == ' ';
    sign = 1;
    if ((text[at] == ',' || text[at] == ':' || text[at] == ';') && (spaced || text[at] == ';')) return at;
    if (text[at - 1] != ' ') continue;
    if (text[at] == '-' && spaced) return at;
    sign = 3;
    if (text.substr(at, 4) == "\u2013 " || text.substr(at, 4) == "\u2014 ") return at;
  }
  return std::string_view::npos;
}

void take_tails(IngredientLine& reader) {
  std::size_t sign = 0;
  const std::size_t at = tail_at(reader.rest, sign);
  if (at == std::string_view::npos) return;
  std::string tail = reader.rest.substr(at + sign);
  reader.rest = std::string(base::trimmed(std::string_view(reader.rest).substr(0, at)));
  while (true) {
    const std::size_t next = tail.find(", ");
    take_tail(reader, std::string_view(tail).substr(0, next));
    if (next == std::string::npos) return;
    tail.erase(0, next + 2);
  }
}

/// "cream 35%", "chocolate 64 %": fat of dairy, cocoa of chocolate; others stay in the name.
void take_percent(IngredientLine& reader) {
  const std::size_t sign = reader.rest.find('%');
  if (sign == std::string::npos) return;
  std::size_t begin = sign;
  while (begin > 0 && reader.rest[begin - 1] == ' ') --begin;
  const std::size_t end = begin;
  while (begin > 0 && std::string_view("0123456789.,").find(reader.rest[begin - 1]) != std::string_view::npos) --begin;
  if (begin == end) return;
  const std::vector<Word> words = words_of(reader.rest);
  std::string* where = reader.desk.lexicon.has(Set::cocoa_food, words) ? &reader.made.cocoa
                       : reader.desk.lexicon.has(Set::fat_food, words) ? &reader.made.fat
                                                                       : nullptr;
  if (where == nullptr) return;
  *where = reader.rest.substr(begin, end - begin) + " %";
  reader.rest = folded_space(reader.rest.substr(0, begin) + " " + reader.rest.substr(sign + 1));
}

bool counted(const IngredientLine& reader) {
  if (!reader.made.pieces.empty()) return true;
  return reader.amount && reader.amount->kind == Kind::count && reader.amount->has_figure();
}

void take_size(IngredientLine& reader) {
  if (!counted(reader)) return;
  const std::vector<Word> words = words_of(reader.rest);
  if (const std::size_t used = reader.desk.lexicon.match(Set::size, words, 0); used > 0 && used < words.size()) {
    reader.made.size = reader.rest.substr(0, words[used - 1].where.end);
    return reader.drop(words[used].where.begin);
  }
  if (words.size() < 2 || reader.desk.lexicon.match(Set::size, words, words.size() - 1) == 0) return;
  reader.made.size = reader.rest.substr(words.back().where.begin);
  reader.rest = std::string(base::trimmed(std::string_view(reader.rest).substr(0, words.back().where.begin)));
}

/// Says what it is for where that is no part of the food, and gives the name without those words.
std::string take_purpose(IngredientLine& reader) {
  struct Row {
    Set set;
    std::string_view purpose;
  };
  const Row rows[] = {{Set::for_tin, "tin"}, {Set::for_bench, "bench"}, {Set::for_boiling, "boiling"}};
  const std::vector<Word> words = words_of(reader.rest);
  const std::vector<Word> prep = words_of(reader.made.prep);
  for (const Row& row : rows) {
    if (reader.desk.lexicon.has(row.set, prep)) reader.made.purpose = row.purpose;
    const std::size_t at = reader.desk.lexicon.find(row.set, words);
    if (at == 0 || at >= words.size()) continue;
    reader.made.purpose = row.purpose;
    return std::string(base::trimmed(std::string_view(reader.rest).substr(0, words[at].where.begin)));
  }
  return reader.rest;
}

std::string without_stop(std::string name) {
  while (!name.empty() && (name.back() == '.' || name.back() == ',' || name.back() == ';')) name.pop_back();
  return name;
}

DraftIngredient read_one(Desk& desk, base::Span line, std::string text) {
  IngredientLine reader{desk, line, std::move(text), {}, {}};
  reader.made.line = line;
  take_optional_front(reader);
  take_parts_front(reader);
  take_amount_front(reader);
  take_brackets(reader);
  take_tails(reader);
  take_percent(reader);
  if (!reader.amount) take_amount_back(reader);
  take_size(reader);
  reader.rest = without_stop(reader.rest);
  const std::string bare = take_purpose(reader);
  reader.made.name = reader.rest;
  if (reader.made.name.empty()) {
    desk.ask(line, "an amount without a food: what is it of?");
    return std::move(reader.made);
  }
  reader.made.keys = keys_of(desk.lexicon, bare);
  reader.made.bare = bare;
  if (reader.unclear) return std::move(reader.made);
  if (!reader.amount && reader.made.purpose.empty()) {
    desk.ask(line, "how much \"" + reader.made.name + "\"? the line gives no amount");
  }
  find_food(desk, reader.made, bare);
  return std::move(reader.made);
}

/// "50 g sugar + 30 g honey": where the second of two full statements begins; npos when it is one.
std::size_t second_statement(const Desk& desk, std::string_view text) {
  const std::size_t sign = text.find(" + ");
  if (sign == std::string_view::npos) return sign;
  const Figure first = figure_in(text, measure::amount_kinds, desk.reading);
  const Figure second = figure_in(text.substr(sign + 3), measure::amount_kinds, desk.reading);
  const bool both = first.used > 0 && second.used > 0 && first.used < sign && sign + 3 + second.used < text.size();
  return both ? sign : std::string_view::npos;
}

struct Pair {
  std::string first, second;
};

/// "salt and black pepper, to taste": two foods on one line without a figure; what stands behind holds for both.
std::optional<Pair> two_foods(const Desk& desk, std::string_view text) {
  const std::size_t comma = std::min(text.find(','), text.size());
  const std::vector<Word> words = words_of(text.substr(0, comma));
  for (std::size_t i = 1; i + 1 < words.size() && words.size() <= 6; ++i) {
    if (words[i - 1].figure() || words[0].figure() || desk.lexicon.match(Set::both, words, i) != 1) continue;
    const std::string_view first = text.substr(0, words[i - 1].where.end);
    const std::string_view second = text.substr(words[i + 1].where.begin, comma - words[i + 1].where.begin);
    if (food_named(desk, first).empty() || food_named(desk, second).empty()) return std::nullopt;
    return Pair{std::string(first) + std::string(text.substr(comma)), std::string(text.substr(words[i + 1].where.begin))};
  }
  return std::nullopt;
}

}  // namespace

std::vector<DraftIngredient> read_ingredients(Desk& desk, base::Span line) {
  std::vector<DraftIngredient> made;
  std::string text = desk.folded(line);
  for (std::size_t at = second_statement(desk, text); at != std::string_view::npos; at = second_statement(desk, text)) {
    made.push_back(read_one(desk, line, text.substr(0, at)));
    text.erase(0, at + 3);
  }
  if (const std::optional<Pair> pair = two_foods(desk, text)) {
    made.push_back(read_one(desk, line, pair->first));
    made.push_back(read_one(desk, line, pair->second));
    return made;
  }
  made.push_back(read_one(desk, line, std::move(text)));
  return made;
}

}  // namespace tamis::format::draft
