#include "core/format/draft_yield.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/format/draft_figures.h"

namespace tamis::format::draft {
namespace {

using fiche::At;
using measure::Kind;

constexpr std::size_t most_words = 16;  // a longer line is a sentence

struct ShapeRow {
  Set set;
  std::string_view shape;
};
/// Those of several words first: a tart ring is no ring.
constexpr ShapeRow shapes[] = {
    {Set::shape_tart, "tart"},   {Set::shape_loaf, "loaf"},   {Set::shape_round, "round"}, {Set::shape_square, "square"},
    {Set::shape_ring, "ring"},   {Set::shape_frame, "frame"}, {Set::shape_tray, "tray"},   {Set::shape_dome, "dome"},
    {Set::shape_other, ""},
};

struct Reader {
  const Desk& desk;
  base::Span line;
  std::vector<Word> words;
  DraftYield made;
};

std::string typed(const Reader& reader, std::size_t word) { return std::string(reader.desk.slice(reader.words[word].where)); }

bool plain_number(const Reader& reader, std::size_t word) {
  return reader.words[word].figure() && measure::read_number(typed(reader, word), reader.desk.reading);
}

/// Takes "10-12" too, which is no number: the words keep it.
std::size_t behind_number(const Reader& reader, std::size_t word) {
  std::size_t next = word + 1;
  while (next < reader.words.size() && reader.words[next].figure()) ++next;
  return next;
}

/// "Serves 12, one 26 cm ring", "Serves 12 (one 26 cm ring)", "Serves 12 in a 26 cm ring".
bool goes_on_with_mould(const Reader& reader, std::size_t word) {
  const bool tied = reader.words[word].opens_clause || reader.desk.lexicon.match(Set::into_mould, reader.words, word) > 0;
  return tied && std::any_of(std::begin(shapes), std::end(shapes), [&](const ShapeRow& row) {
           return reader.desk.lexicon.find(row.set, reader.words, word) < reader.words.size();
         });
}

bool read_count(Reader& reader, std::size_t at, bool serves, bool makes) {
  if (at >= reader.words.size() || !reader.words[at].figure()) return false;
  const std::size_t next = behind_number(reader, at);
  const auto match = [&](Set set) { return reader.desk.lexicon.match(set, reader.words, next); };
  const std::size_t size = next < reader.words.size() ? reader.desk.lexicon.match(Set::size, reader.words, next) : 0;
  const bool portions = match(Set::portion_word) > 0;
  const bool pieces = match(Set::piece_word) > 0 ||
                      (size > 0 && reader.desk.lexicon.match(Set::piece_word, reader.words, next + size) > 0);
  const bool bare = next == reader.words.size() || (serves && goes_on_with_mould(reader, next));
  if (!portions && !pieces && !(bare && (serves || makes))) return false;
  if (next != at + 1 || !plain_number(reader, at)) return true;
  const bool as_portions = portions || (bare && serves && !(makes && !serves));
  reader.made.attributes.emplace_back(as_portions && !pieces ? At::portions : At::pieces, typed(reader, at));
  return true;
}

bool read_mass(Reader& reader, std::size_t at) {
  if (at >= reader.words.size()) return false;
  const base::Span rest{reader.words[at].where.begin, reader.line.end};
  const Figure figure =
      figure_at(reader.desk, rest, measure::set_of(Kind::mass) | measure::set_of(Kind::volume));
  if (figure.used == 0 || figure.ambiguous || !figure.amount.has_figure()) return false;
  const base::Span where{rest.begin, rest.begin + static_cast<std::uint32_t>(figure.used)};
  const std::size_t behind = reader.words.size() - at;
  if (behind > 6) return false;
  reader.made.attributes.emplace_back(figure.amount.kind == Kind::mass ? At::mass : At::volume,
                                      reader.desk.folded(where));
  return true;
}

struct Length {
  base::Span where;
  bool height = false;
};

/// The lengths of the line in order; "20 × 30 cm" gives two.
std::vector<Length> lengths_in(const Reader& reader) {
  std::vector<Length> lengths;
  std::uint32_t done = 0;
  for (std::size_t i = 0; i < reader.words.size(); ++i) {
    const base::Span rest{reader.words[i].where.begin, reader.line.end};
    if (!reader.words[i].figure() || rest.begin < done) continue;
    const Figure figure = figure_at(reader.desk, rest, measure::length_kinds);
    if (figure.used == 0) continue;
    done = rest.begin + static_cast<std::uint32_t>(figure.used);
    std::size_t next = i;
    while (next < reader.words.size() && reader.words[next].where.begin < done) ++next;
    const bool height = reader.desk.lexicon.match(Set::high, reader.words, next) > 0;
    lengths.push_back({{rest.begin, done}, height});
  }
  return lengths;
}

/// "20 × 30 cm": the unit stands once, behind the last; the first borrows it.
void borrow_unit(const Reader& reader, std::vector<std::string>& sides) {
  for (std::size_t i = 0; i + 1 < reader.words.size() && sides.size() == 1; ++i) {
    if (!reader.words[i].figure()) continue;
    const base::Span gap{reader.words[i].where.end, reader.words[i + 1].where.begin};
    const std::string_view between = base::trimmed(reader.desk.slice(gap));
    const bool by_sign = between == "\u00D7" && reader.words[i + 1].figure();
    const bool by_letter = reader.words[i + 1].text == "x" && i + 2 < reader.words.size() && reader.words[i + 2].figure();
    if (!by_sign && !by_letter) continue;
    const std::string& last = sides[0];
    const std::size_t unit = last.find_first_not_of("0123456789.,/ ");
    if (unit == std::string::npos || (static_cast<unsigned char>(last[unit]) & 0x80U) != 0) return;
    sides.insert(sides.begin(), typed(reader, i) + " " + last.substr(unit));
  }
}

bool read_mould(Reader& reader) {
  for (const ShapeRow& row : shapes) {
    const std::size_t at = reader.desk.lexicon.find(row.set, reader.words);
    if (at >= reader.words.size()) continue;
    std::vector<std::string> sides;
    std::string height;
    for (const Length& length : lengths_in(reader)) {
      (length.height ? height : sides.emplace_back()) = reader.desk.folded(length.where);
    }
    borrow_unit(reader, sides);
    if (sides.empty()) return false;
    Attributes& mould = reader.made.mould;
    if (!row.shape.empty()) mould.emplace_back(At::shape, row.shape);
    const bool round = row.shape == "ring" || row.shape == "round" || row.shape == "tart" || row.shape == "dome";
    mould.emplace_back(round && sides.size() == 1 ? At::diameter : At::length, sides[0]);
    if (sides.size() > 1) mould.emplace_back(At::width, sides[1]);
    if (height.empty() && sides.size() > 2) height = sides[2];
    if (!height.empty()) mould.emplace_back(At::height, height);
    return true;
  }
  return false;
}

/// "Springform 26 cm", "Moule: 20 cm".
bool opens_with_mould(const Reader& reader) {
  if (reader.words.size() > 6) return false;
  return std::any_of(std::begin(shapes), std::end(shapes),
                     [&](const ShapeRow& row) { return reader.desk.lexicon.match(row.set, reader.words, 0) > 0; });
}

std::size_t behind_about(const Reader& reader, std::size_t at) {
  while (at < reader.words.size() && !reader.words[at].figure() && at < 4) {
    const std::string& word = reader.words[at].text;
    const bool about = word == "about" || word == "approx" || word == "environ" || word == "ca" || word == "etwa" ||
                       word == "approximately" || word == "around" || word == "unos" || word == "unas";
    if (!about) break;
    ++at;
  }
  return at;
}

}  // namespace

std::optional<DraftYield> read_yield(const Desk& desk, base::Span line) {
  Reader reader{desk, line, words_of(desk.slice(line), line.begin), {}};
  if (reader.words.empty() || reader.words.size() > most_words) return std::nullopt;
  const std::size_t serves = desk.lexicon.match(Set::serves, reader.words, 0);
  const std::size_t makes = desk.lexicon.match(Set::makes, reader.words, 0);
  const std::size_t opens = std::max(serves, makes);
  const std::size_t at = behind_about(reader, opens);
  const bool counted = read_count(reader, at, serves > 0, makes > 0);
  const bool massed = !counted && makes > 0 && read_mass(reader, at);
  const bool moulded = (opens > 0 || reader.words[0].figure() || opens_with_mould(reader)) && read_mould(reader);
  if (opens == 0 && !moulded && !(counted && reader.words.size() <= 3)) return std::nullopt;
  if (!counted && !massed && !moulded) return std::nullopt;
  reader.made.attributes.emplace_back(At::words, desk.folded(line));
  return std::move(reader.made);
}

void add_yield(std::vector<DraftYield>& yields, DraftYield made) {
  const auto has = [](const DraftYield& yield, At at) {
    return std::any_of(yield.attributes.begin(), yield.attributes.end(), [&](const auto& a) { return a.first == at; });
  };
  const bool apart = yields.empty() || (!made.mould.empty() && !yields[0].mould.empty()) ||
                     std::any_of(made.attributes.begin(), made.attributes.end(), [&](const auto& a) {
                       return a.first != At::words && has(yields[0], a.first);
                     });
  if (apart) return yields.push_back(std::move(made));
  if (!made.mould.empty()) yields[0].mould = std::move(made.mould);
  for (auto& [at, value] : made.attributes) {
    if (at != At::words) yields[0].attributes.insert(yields[0].attributes.begin(), {at, value});
    else yields[0].attributes.back().second += "; " + value;
  }
}

}  // namespace tamis::format::draft
