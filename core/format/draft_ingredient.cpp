#include "core/format/draft_ingredient.h"

#include <algorithm>
#include <optional>

#include "core/base/utf8.h"
#include "core/format/draft_figures.h"
#include "core/format/draft_food.h"
#include "core/format/draft_keys.h"
#include "core/measure/write.h"

namespace tamis::format::draft {
namespace {

using measure::Kind;

/// A line on the desk, read from the front; what is understood is taken off `rest`.
struct Reader {
  Desk& desk;
  base::Span line;
  std::string rest;
  DraftIngredient made;
  std::optional<measure::Amount> amount;  ///< the first statement
  bool unclear = false;                   ///< an amount stands there that cannot be read; that is asked already

  void drop(std::size_t bytes) { rest = std::string(base::trimmed(std::string_view(rest).substr(bytes))); }
};

Figure amount_in(const Reader& reader, std::string_view text) {
  return figure_in(text, measure::amount_kinds, reader.desk.reading);
}

/// The whole text is one amount: "about 200 g", "to taste".
std::optional<measure::Amount> whole_amount(const Reader& reader, std::string_view text) {
  Figure figure = amount_in(reader, text);
  if (figure.used == 0 || !base::trimmed(text.substr(figure.used)).empty()) return std::nullopt;
  return std::move(figure.amount);
}

std::string joined(std::string_view a, std::string_view b, std::string_view between) {
  if (a.empty() || b.empty()) return std::string(a) + std::string(b);
  return std::string(a) + std::string(between) + std::string(b);
}

void add_prep(Reader& reader, std::string_view text) {
  reader.made.prep = joined(reader.made.prep, base::trimmed(text), ", ");
}

bool is_set(const Reader& reader, Set set, std::string_view text) {
  return reader.desk.lexicon.is(set, words_of(text));
}

void take_optional_front(Reader& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  const std::size_t used = reader.desk.lexicon.match(Set::optional, words, 0);
  if (used == 0 || used == words.size()) return;
  reader.made.optional = true;
  reader.drop(words[used].where.begin);
}

/// "zest of 1 lemon", "jus de 2 citrons".
void take_parts_front(Reader& reader) {
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

void ask_unreadable(Reader& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  if (words.empty() || !words[0].figure()) return;
  reader.unclear = true;
  const std::size_t end = words.size() > 1 ? words[1].where.end : words[0].where.end;
  const std::string typed = reader.rest.substr(0, end);
  const auto why = measure::read_amount(typed, measure::amount_kinds, reader.desk.reading);
  const std::string reason = why ? std::string("it stays in the name") : why.fault().message;
  reader.desk.ask(reader.line, "the amount \"" + typed + "\" is not clear: " + reason);
}

/// "2 x 400 g": so many packs of so much.
bool take_packs(Reader& reader, const Figure& count) {
  if (count.amount.kind != Kind::count || count.amount.low.size() != 1 ||
      count.amount.form != measure::Amount::Form::exact) {
    return false;
  }
  std::string_view behind = base::trimmed(std::string_view(reader.rest).substr(count.used));
  const std::size_t sign = behind.substr(0, 2) == "\u00D7" ? 2U : behind.substr(0, 1) == "x" ? 1U : 0U;
  if (sign == 0) return false;
  behind = base::trimmed(behind.substr(sign));
  const Figure each = amount_in(reader, behind);
  if (each.used == 0 || each.amount.kind == Kind::count || each.amount.low.size() != 1 || each.ambiguous ||
      each.amount.form != measure::Amount::Form::exact) {
    return false;
  }
  const measure::Quantity one = each.amount.low[0];
  const base::Ratio total = one.value * count.amount.low[0].value;
  if (!total.ok()) return false;
  measure::Writing writing;
  writing.language = reader.desk.reading.language;
  reader.amount = measure::amount_of(total, *one.unit);
  reader.made.amount = measure::write_amount(*reader.amount, writing);
  constexpr std::string_view no_break = "\u00A0";  // for paper; a fiche is typed with plain spaces
  if (const std::size_t at = reader.made.amount.find(no_break); at != std::string::npos) {
    reader.made.amount.replace(at, no_break.size(), " ");
  }
  reader.made.pieces = reader.rest.substr(0, count.used);  // becomes packs, see the writer
  reader.made.pack = std::string(behind.substr(0, each.used));
  reader.drop(static_cast<std::size_t>(behind.data() + each.used - reader.rest.data()));
  const std::vector<Word> words = words_of(reader.rest);
  if (const std::size_t used = reader.desk.lexicon.match(Set::pack, words, 0); used > 0 && used < words.size()) {
    reader.made.pack += " " + reader.rest.substr(0, words[used - 1].where.end);
    reader.drop(words[used - 1].where.end);
  }
  return true;
}

void take_connective(Reader& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  const std::size_t used = reader.desk.lexicon.match(Set::connective, words, 0);
  if (used == 0 || used >= words.size() || words[0].where.begin != 0) return;
  reader.drop(words[used].where.begin);
}

void state_amount(Reader& reader, const Figure& figure, std::string_view text) {
  if (figure.ambiguous) ask_whose(reader.desk, reader.line, text);
  reader.made.amount = std::string(base::trimmed(text));
  reader.amount = figure.amount;
}

/// "250 g / 9 oz butter", "250 g = 9 oz".
void take_second_behind_sign(Reader& reader) {
  if (reader.rest.empty() || (reader.rest[0] != '/' && reader.rest[0] != '=' && reader.rest[0] != '|')) return;
  const std::string_view behind = base::trimmed(std::string_view(reader.rest).substr(1));
  const Figure second = amount_in(reader, behind);
  if (second.used == 0) return;
  reader.made.also = std::string(behind.substr(0, second.used));
  reader.drop(static_cast<std::size_t>(behind.data() + second.used - reader.rest.data()));
}

/// "pinch of salt", "Prise Salz": one pinch, by its name alone.
bool take_bare_pinch(Reader& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  if (words.size() < 2 || words[0].figure()) return false;
  const std::string& language = reader.desk.lexicon.language();
  const std::string one = language == "fr" ? "une " : language == "de" ? "eine " : language == "es" ? "una " : "a ";
  const std::string name = reader.rest.substr(0, words[0].where.end);
  const Figure figure = figure_in(one + folded_letters(name), measure::amount_kinds, reader.desk.reading);
  const bool rough = figure.used > 0 && !figure.amount.low.empty() && figure.amount.low[0].unit->rough;
  if (!rough) return false;
  reader.made.amount = one + name;
  reader.amount = figure.amount;
  reader.drop(words[0].where.end);
  return true;
}

void take_amount_front(Reader& reader) {
  const Figure figure = amount_in(reader, reader.rest);
  if (figure.used == 0) return take_bare_pinch(reader) ? take_connective(reader) : ask_unreadable(reader);
  if (take_packs(reader, figure)) return;
  const std::string text = reader.rest.substr(0, figure.used);
  reader.drop(figure.used);
  state_amount(reader, figure, text);
  take_second_behind_sign(reader);
  take_connective(reader);
}

/// A second statement of the same amount: mass beside a count, or another system.
void state_second(Reader& reader, const measure::Amount& second, std::string_view text) {
  const std::string typed(base::trimmed(text));
  if (!reader.amount) {
    reader.made.amount = typed;
    reader.amount = second;
    return;
  }
  if (!reader.made.also.empty()) return add_prep(reader, "(" + typed + ")");
  const bool count_first = reader.amount->kind == Kind::count && reader.amount->has_figure();
  const std::string& first = reader.made.amount;
  const std::size_t figure_end = std::min(first.find(' '), first.size());
  const std::string number = first.substr(0, figure_end);
  if (!count_first || second.kind == Kind::count || !measure::read_number(number, reader.desk.reading)) {
    reader.made.also = typed;
    return;
  }
  reader.made.pieces = number;
  const std::string unit(base::trimmed(std::string_view(first).substr(figure_end)));
  if (is_set(reader, Set::pack, unit)) {
    reader.made.pack = unit;
  } else {
    reader.rest = joined(unit, reader.rest, " ");  // "6 leaves gelatine": leaves go with the name
  }
  reader.made.amount = typed;
  reader.amount = second;
}

void take_tail(Reader& reader, std::string_view tail) {
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
void take_brackets(Reader& reader) {
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

void take_tails(Reader& reader) {
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

/// "butter 250g", "salt to taste".
void take_amount_back(Reader& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::string_view tail = std::string_view(reader.rest).substr(words[i].where.begin);
    const auto amount = whole_amount(reader, tail);
    if (!amount) continue;
    const Figure figure = amount_in(reader, tail);
    state_amount(reader, figure, tail);
    reader.rest = std::string(base::trimmed(std::string_view(reader.rest).substr(0, words[i].where.begin)));
    return;
  }
}

/// "cream 35%", "chocolate 64 %": fat of dairy, cocoa of chocolate; others stay in the name.
void take_percent(Reader& reader) {
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

bool counted(const Reader& reader) {
  if (!reader.made.pieces.empty()) return true;
  return reader.amount && reader.amount->kind == Kind::count && reader.amount->has_figure();
}

void take_size(Reader& reader) {
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
std::string take_purpose(Reader& reader) {
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
  Reader reader{desk, line, std::move(text), {}, {}};
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
