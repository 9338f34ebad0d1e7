#include "core/format/draft_amount.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "core/measure/write.h"

namespace tamis::format::draft {

using measure::Kind;

Figure amount_in(const IngredientLine& reader, std::string_view text) {
  return figure_in(text, measure::amount_kinds, reader.desk.reading);
}

bool is_set(const IngredientLine& reader, Set set, std::string_view text) {
  return reader.desk.lexicon.is(set, words_of(text));
}

std::string joined(std::string_view a, std::string_view b, std::string_view between) {
  if (a.empty() || b.empty()) return std::string(a) + std::string(b);
  return std::string(a) + std::string(between) + std::string(b);
}

void add_prep(IngredientLine& reader, std::string_view text) {
  reader.made.prep = joined(reader.made.prep, base::trimmed(text), ", ");
}

namespace {

/// The whole text is one amount: "about 200 g", "to taste".
std::optional<measure::Amount> whole_amount(const IngredientLine& reader, std::string_view text) {
  Figure figure = amount_in(reader, text);
  if (figure.used == 0 || !base::trimmed(text.substr(figure.used)).empty()) return std::nullopt;
  return std::move(figure.amount);
}

void ask_unreadable(IngredientLine& reader) {
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
bool take_packs(IngredientLine& reader, const Figure& count) {
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

void take_connective(IngredientLine& reader) {
  const std::vector<Word> words = words_of(reader.rest);
  const std::size_t used = reader.desk.lexicon.match(Set::connective, words, 0);
  if (used == 0 || used >= words.size() || words[0].where.begin != 0) return;
  reader.drop(words[used].where.begin);
}

void state_amount(IngredientLine& reader, const Figure& figure, std::string_view text) {
  if (figure.ambiguous) ask_whose(reader.desk, reader.line, text);
  reader.made.amount = std::string(base::trimmed(text));
  reader.amount = figure.amount;
}

/// "250 g / 9 oz butter", "250 g = 9 oz".
void take_second_behind_sign(IngredientLine& reader) {
  if (reader.rest.empty() || (reader.rest[0] != '/' && reader.rest[0] != '=' && reader.rest[0] != '|')) return;
  const std::string_view behind = base::trimmed(std::string_view(reader.rest).substr(1));
  const Figure second = amount_in(reader, behind);
  if (second.used == 0) return;
  reader.made.also = std::string(behind.substr(0, second.used));
  reader.drop(static_cast<std::size_t>(behind.data() + second.used - reader.rest.data()));
}

/// "pinch of salt", "Prise Salz": one pinch, by its name alone.
bool take_bare_pinch(IngredientLine& reader) {
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

}  // namespace

void take_amount_front(IngredientLine& reader) {
  const Figure figure = amount_in(reader, reader.rest);
  if (figure.used == 0) return take_bare_pinch(reader) ? take_connective(reader) : ask_unreadable(reader);
  if (take_packs(reader, figure)) return;
  const std::string text = reader.rest.substr(0, figure.used);
  reader.drop(figure.used);
  state_amount(reader, figure, text);
  take_second_behind_sign(reader);
  take_connective(reader);
}

void state_second(IngredientLine& reader, const measure::Amount& second, std::string_view text) {
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

void take_amount_back(IngredientLine& reader) {
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

}  // namespace tamis::format::draft
