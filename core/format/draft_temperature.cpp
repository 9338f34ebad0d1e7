#include "core/format/draft_temperature.h"

#include <algorithm>

#include "core/format/draft_figures.h"

namespace tamis::format::draft {
namespace {

using fiche::At;
using fiche::El;

struct Range {
  std::size_t begin = 0, end = 0;  // words
};

bool clause_opens(const Desk& desk, const DraftStep& step, std::size_t i) {
  return step.words[i].opens_clause || desk.lexicon.match(Set::clause_word, step.words, i) > 0;
}

/// Words of the clause, or of the sentence, around the words [first, last).
Range around(const Desk& desk, const DraftStep& step, std::size_t first, std::size_t last, bool sentence) {
  Range range{first, last};
  const auto opens = [&](std::size_t i) {
    return sentence ? step.words[i].opens_sentence : clause_opens(desk, step, i);
  };
  while (range.begin > 0 && !opens(range.begin)) --range.begin;
  while (range.end < step.words.size() && !opens(range.end)) ++range.end;
  return range;
}

/// How far the nearest phrase of a set lies from the figure, in words; `far` when there is none. What stands before
/// counts a little nearer than what stands behind.
constexpr std::size_t far = 1000;

std::size_t distance(const Desk& desk, const DraftStep& step, Set set, Range in, std::size_t first, std::size_t last) {
  std::size_t best = far;
  for (std::size_t i = in.begin; i < in.end; ++i) {
    if (i >= first && i < last) continue;
    const std::size_t used = desk.lexicon.match(set, step.words, i);
    if (used == 0) continue;
    best = std::min(best, i < first ? 2 * (first - std::min(first, i + used)) : 2 * (i - last) + 1);
  }
  return best;
}

El nearest_kind(const Desk& desk, const DraftStep& step, Range in, std::size_t first, std::size_t last) {
  struct Candidate {
    El el;
    std::size_t far_off;
  };
  const auto of = [&](Set set) { return distance(desk, step, set, in, first, last); };
  const Candidate places[] = {{El::oven_temp, of(Set::temp_oven)},
                              {El::medium_temp, of(Set::temp_medium)},
                              {El::room_temp, of(Set::temp_room)}};
  const Candidate* best = std::min_element(std::begin(places), std::end(places),
                                           [](const Candidate& a, const Candidate& b) { return a.far_off < b.far_off; });
  if (best->far_off < far) return best->el;
  return of(Set::temp_food) < far ? El::food_temp : El::unknown;
}

El kind_of(const Desk& desk, const DraftStep& step, std::size_t first, std::size_t last) {
  const Range clause = around(desk, step, first, last, false);
  if (distance(desk, step, Set::temp_core, clause, first, last) < far) return El::food_temp;
  const El near = nearest_kind(desk, step, clause, first, last);
  if (near != El::unknown) return near;
  Range before = around(desk, step, first, last, true);
  before.end = last;
  return nearest_kind(desk, step, before, first, last);
}

std::string_view mode_at(const Desk& desk, const DraftStep& step, std::size_t i, std::size_t& used) {
  used = desk.lexicon.match(Set::mode_fan, step.words, i);
  if (used > 0) return "fan";
  used = desk.lexicon.match(Set::mode_static, step.words, i);
  return used > 0 ? "static" : "";
}

bool is_taken(const OvenModes& modes, std::size_t i) {
  return std::find(modes.taken.begin(), modes.taken.end(), i) != modes.taken.end();
}

/// The oven mode said right before the figure, or behind it and before the next figure.
std::string mode_of(const Desk& desk, const DraftStep& step, std::size_t first, std::size_t last, OvenModes& modes) {
  std::size_t used = 0;
  for (std::size_t back = 1; back <= 4 && back <= first; ++back) {
    const std::size_t i = first - back;
    const std::string_view mode = mode_at(desk, step, i, used);
    const bool near = i + used == first || (i + used + 1 == first && step.words[first - 1].text.size() <= 3);
    if (mode.empty() || !near || is_taken(modes, i) || step.words[first].opens_sentence) continue;
    modes.taken.push_back(i);
    return std::string(mode);
  }
  for (std::size_t i = last; i < step.words.size() && i < last + 3; ++i) {
    if (step.words[i].figure() || step.words[i].opens_sentence) break;
    const std::string_view mode = mode_at(desk, step, i, used);
    if (mode.empty() || is_taken(modes, i)) continue;
    const bool of_next = step.words[i].opens_clause && i + used < step.words.size() && step.words[i + used].figure() &&
                         !step.words[i + used].opens_clause;
    if (of_next) break;  // "180 °C (fan 160 °C)"
    modes.taken.push_back(i);
    return std::string(mode);
  }
  return {};
}

bool has_gas_mark(const measure::Amount& amount) {
  const auto gas = [](const measure::Quantity& q) { return q.unit->id == "gas-mark"; };
  return std::any_of(amount.low.begin(), amount.low.end(), gas) ||
         std::any_of(amount.high.begin(), amount.high.end(), gas);
}

/// "degc" or "degf", where all of it is in one of the two; "" for others.
std::string_view scale_of(const measure::Amount& amount) {
  if (!amount.has_figure()) return {};
  const std::string_view first = (amount.low.empty() ? amount.high : amount.low).front().unit->id;
  const auto other = [&](const measure::Quantity& q) { return q.unit->id != first; };
  const bool mixed = std::any_of(amount.low.begin(), amount.low.end(), other) ||
                     std::any_of(amount.high.begin(), amount.high.end(), other);
  return !mixed && (first == "degc" || first == "degf") ? first : std::string_view();
}

/// A figure that goes with the last one ("180 °C (350 °F)", "180 °C/gas 4") is of the same thing.
const Mark* twin_before(const Desk& desk, const DraftStep& step, base::Span where) {
  if (step.marks.empty()) return nullptr;
  const Mark& last = step.marks.back();
  if (last.el != El::oven_temp && last.el != El::food_temp && last.el != El::medium_temp) return nullptr;
  std::string_view between = desk.slice({last.where.end, where.begin});
  const std::size_t letters = between.find_first_not_of(" (/,;-\t\r\n|=");
  return letters == std::string_view::npos && between.size() <= 4 ? &last : nullptr;
}

}  // namespace

Twin other_scale(const Desk& desk, base::Span rest, const measure::Amount& amount) {
  const std::string_view first = scale_of(amount);
  const std::string_view text = desk.slice(rest);
  std::size_t at = text.find_first_not_of(" \t");
  if (first.empty() || at == std::string_view::npos || at > 2) return {};
  const bool bracket = text[at] == '(';
  if (!bracket && text[at] != '/' && text[at] != '=') return {};
  at = text.find_first_not_of(" \t", at + 1);
  if (at == std::string_view::npos) return {};
  const Figure other = figure_in(text.substr(at), measure::temperature_kinds, desk.reading);
  if (other.used == 0 || scale_of(other.amount).empty() || scale_of(other.amount) == first) return {};
  std::size_t end = at + other.used;
  if (bracket) {
    const std::size_t close = text.find_first_not_of(" \t", end);
    if (close == std::string_view::npos || text[close] != ')') return {};
    end = close + 1;
    // "(350 °F)10": without the bracket two words would become one.
    if (!words_of(text.substr(end, 4)).empty() && words_of(text.substr(end, 4)).front().where.begin == 0) return {};
  }
  return {folded_space(text.substr(at, other.used)), end};
}

std::optional<Mark> temperature_mark(Desk& desk, DraftStep& step, std::size_t word, base::Span said, const Twin& twin_figure,
                                     const measure::Amount& amount, OvenModes& modes) {
  const base::Span where{said.begin, said.end + static_cast<std::uint32_t>(twin_figure.used)};
  std::size_t last = word;
  while (last < step.words.size() && step.words[last].where.begin < where.end) ++last;
  Mark mark;
  mark.where = where;
  if (twin_figure.used > 0) {
    mark.said = said;
    mark.attributes.emplace_back(At::also, twin_figure.text);
  }
  const std::string mode = mode_of(desk, step, word, last, modes);
  if (!mode.empty()) {
    mark.el = El::oven_temp;
    mark.attributes.emplace_back(At::mode, mode);
    return mark;
  }
  if (amount.form == measure::Amount::Form::words) {
    if (amount.words.find("room") == std::string::npos) return std::nullopt;
    mark.el = El::room_temp;
    return mark;
  }
  const Mark* twin = twin_before(desk, step, where);
  mark.el = has_gas_mark(amount) ? El::oven_temp : twin != nullptr ? twin->el : kind_of(desk, step, word, last);
  if (mark.el == El::unknown) {
    step.unclear.push_back({mark, desk.folded(where) + ": of the oven, of the food or of what is around it? say it in the sentence"});
    return std::nullopt;
  }
  if (mark.el == El::food_temp &&
      distance(desk, step, Set::temp_core, around(desk, step, word, last, false), word, last) < far) {
    mark.attributes.emplace_back(At::place, "core");
  }
  return mark;
}

void ask_bare_temperature(Desk& desk, const DraftStep& step, std::size_t word) {
  const std::string& text = step.words[word].text;
  const bool plain = text.size() >= 2 && text.size() <= 3 && text.find_first_not_of("0123456789") == std::string::npos;
  if (!plain) return;
  std::size_t used = 0;
  const bool degrees = desk.lexicon.match(Set::degrees, step.words, word + 1) > 0;
  const bool mode = word + 1 < step.words.size() && !mode_at(desk, step, word + 1, used).empty();
  const bool hot = text.size() == 3 && text[0] <= '5' && word > 0;
  const bool at = hot && (step.words[word - 1].text == "at" || step.words[word - 1].text == "to" ||
                          step.words[word - 1].text == "a" || step.words[word - 1].text == "bei" ||
                          step.words[word - 1].text == "auf" || step.words[word - 1].text == "oven" ||
                          step.words[word - 1].text == "four" || step.words[word - 1].text == "horno");
  const bool oven = at && nearest_kind(desk, step, around(desk, step, word, word + 1, true), word, word + 1) == El::oven_temp;
  if (!degrees && !mode && !oven) return;
  desk.ask(step.words[word].where, "\"" + text + "\": \u00B0C or \u00B0F? write the scale behind the figure");
}

}  // namespace tamis::format::draft
