#include "core/rules/expected_mass.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/utf8.h"

namespace tamis::rules {
namespace {

using food::Food;
using food::Measure;
using food::Role;

/// Millilitres of a volume measure of the table; 0 for a piece. The source measured with US customary spoons.
double millilitres(std::string_view what) {
  if (what == "cup") return 236.5882365;
  if (what == "tbsp") return 14.78676478125;
  if (what == "tsp") return 4.92892159375;
  if (what == "fl oz") return 29.5735295625;
  if (what == "quart") return 946.352946;
  return what == "ml" ? 1 : 0;
}

/// What filling, heaping, settling and the size of the cut do to the mass of a volume. Common practice.
double spread_of_volume(Role role) {
  switch (role) {
    case Role::liquid:
    case Role::dairy:
    case Role::alcohol: return 0.08;
    case Role::fat:
    case Role::egg: return 0.12;
    case Role::sugar: return 0.15;
    case Role::flour:
    case Role::starch:
    case Role::salt:
    case Role::acid: return 0.20;
    case Role::setting:
    case Role::leavening:
    case Role::flavouring: return 0.25;
    case Role::yeast: return 0.30;
    case Role::spice: return 0.35;
    case Role::chocolate:
    case Role::nut: return 0.40;
    default: return 0.45;
  }
}

/// How far a piece strays from the table's mass. Common practice; eggs are sorted by law.
double spread_of_piece(Role role) {
  switch (role) {
    case Role::egg: return 0.15;
    case Role::setting: return 0.20;
    case Role::fruit:
    case Role::vegetable: return 0.60;
    case Role::spice:
    case Role::flavouring:
    case Role::garnish: return 2;  // leaves, sticks, pods
    default: return 0.50;
  }
}

constexpr std::string_view cuts[] = {"chopped", "diced", "sliced", "minced",  "grated", "shredded", "ground", "quartered",
                                     "halved",  "cubed", "cut",    "crumbled", "torn",  "mashed",   "drained", "thawed",
                                     "haché",   "coupé", "émincé", "râpé",     "gehackt", "gewürfelt", "geschnitten"};

bool letter_at(std::string_view text, std::size_t at) {
  return at < text.size() && ((text[at] >= 'a' && text[at] <= 'z') || static_cast<unsigned char>(text[at]) >= 0x80);
}

/// As a word of its own: "unpacked" does not mention "packed".
bool mentions(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != text.npos; at = text.find(word, at + 1)) {
    if ((at == 0 || !letter_at(text, at - 1)) && !letter_at(text, at + word.size())) return true;
  }
  return false;
}

/// A note of the table fits when prep holds its first word: "chopped" fits "finely chopped".
bool note_fits(std::string_view note, std::string_view prep) {
  if (note.empty() || prep.empty()) return false;
  const std::size_t end = std::min(note.find_first_of(" ,"), note.size());
  return mentions(prep, base::lower(note.substr(0, end)));
}

void widen(MassRange& range, const Measure& measure, double grams) {
  if (range.usual == 0 || (measure.note.empty() && !range.form.empty())) {
    range.usual = grams;
    range.form = measure.note;
    range.source = measure.source;
  }
  range.least = range.least == 0 ? grams : std::min(range.least, grams);
  range.most = std::max(range.most, grams);
}

}  // namespace

std::optional<MassRange> mass_of_volume(const Food& food, std::string_view prep_as_written) {
  const std::string prep = base::lower(prep_as_written);
  MassRange named;
  MassRange any;
  for (const Measure& measure : food.measures) {
    const double ml = millilitres(measure.what);
    if (ml == 0 || !(measure.grams > 0)) continue;
    if (note_fits(measure.note, prep)) widen(named, measure, measure.grams / ml);
    widen(any, measure, measure.grams / ml);
  }
  MassRange range = named.usual > 0 ? named : any;
  if (range.usual == 0) return std::nullopt;
  const bool cut = std::any_of(std::begin(cuts), std::end(cuts), [&](std::string_view word) { return mentions(prep, word); });
  const double factor = named.usual == 0 && cut ? 2.5 : 1 + spread_of_volume(food.role);
  range.least /= factor;
  range.most *= factor;
  return range;
}

std::optional<MassRange> mass_of_piece(const Food& food, std::string_view size, std::string_view prep) {
  if (food.role == Role::meat || food.role == Role::fish) return std::nullopt;
  const std::string wanted = base::lower(size);
  MassRange named;
  MassRange any;
  for (const Measure& measure : food.measures) {
    if (millilitres(measure.what) != 0 || !(measure.grams > 0)) continue;
    if (!wanted.empty() && base::lower(measure.what) == wanted) widen(named, measure, measure.grams);
    widen(any, measure, measure.grams);
  }
  MassRange range = named.usual > 0 ? named : any;
  if (range.usual == 0) return std::nullopt;
  if (named.usual > 0) range.form = size;
  const double factor = 1 + spread_of_piece(food.role);
  const double kept = std::isnan(food.trim_share) ? 1 : 1 - food.trim_share;
  range.least = range.least / factor * kept * (prep.empty() ? 1 : 0.6);
  range.most *= factor;
  return range;
}

}  // namespace tamis::rules
