#include "core/format/draft_figures.h"

#include <algorithm>
#include <optional>

#include "core/base/utf8.h"
#include "core/format/draft_temperature.h"

namespace tamis::format::draft {
namespace {

using fiche::El;
using measure::Kind;

constexpr std::size_t window = 96;

bool word_goes_on(std::string_view text, std::size_t at) {
  if (at >= text.size() || at == 0) return false;
  const std::vector<Word> words = words_of(text.substr(at, 8));
  return !words.empty() && words[0].where.begin == 0 && !words_of(text.substr(at - 1, 1)).empty();
}

/// The first bytes of a text, not through a character.
std::string_view start_of(std::string_view text) {
  if (text.size() <= window) return text;
  std::size_t end = window;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end);
}

/// "20 × 30 cm", "20 x 30 x 5 cm": bytes of the whole; 0 when it is none.
std::size_t lengths_at(const Desk& desk, base::Span span) {
  const std::string_view text = start_of(desk.slice(span));
  const std::vector<Word> words = words_of(text);
  std::size_t best = 0;
  for (std::size_t i = 1; i < words.size() && i < 9; ++i) {
    const std::size_t end = words[i].where.end;
    const std::string_view part = text.substr(0, end);
    if (part.find("\u00D7") == std::string_view::npos && part.find('x') == std::string_view::npos) continue;
    const auto read = measure::read_lengths(part, desk.reading);
    if (read && read->size() > 1) best = end;
  }
  return best;
}

bool is_piece(const measure::Amount& amount) {
  const auto& parts = amount.low.empty() ? amount.high : amount.low;
  return amount.kind == Kind::count && amount.has_figure() && (parts.empty() || parts[0].unit->id == "piece");
}

/// A mass, a volume or a pinch; not "two sheets of paper".
bool measures(const measure::Amount& amount) {
  const auto& parts = amount.low.empty() ? amount.high : amount.low;
  return amount.kind == Kind::mass || amount.kind == Kind::volume || (!parts.empty() && parts[0].unit->rough);
}

/// What stands at a word of a sentence.
struct Candidate {
  std::size_t used = 0;
  Kind kind = Kind::count;
  Figure figure;
};

/// "3 h 30 at room temperature": minutes without a unit behind the hours.
std::size_t with_minutes(const Desk& desk, base::Span rest, std::size_t used) {
  const std::string_view text = start_of(desk.slice(rest));
  const std::vector<Word> behind = words_of(text.substr(used));
  if (behind.empty() || behind[0].text.size() != 2 || behind[0].where.begin != 1) return used;
  if (behind[0].text.find_first_not_of("0123456789") != std::string::npos) return used;
  const std::size_t end = used + behind[0].where.end;
  return measure::read_duration(text.substr(0, end), desk.reading) ? end : used;
}

Candidate best_at(const Desk& desk, base::Span rest) {
  Candidate best;
  for (const measure::Kinds kinds : {measure::temperature_kinds, measure::time_kinds, measure::length_kinds,
                                     measure::set_of(Kind::mass) | measure::set_of(Kind::volume) |
                                         measure::set_of(Kind::count)}) {
    const Figure found = figure_at(desk, rest, kinds);
    if (found.used <= best.used || is_piece(found.amount)) continue;
    best = {found.used, found.amount.kind, found};
  }
  if (best.kind == Kind::time && best.used > 0) best.used = with_minutes(desk, rest, best.used);
  if (const std::size_t used = lengths_at(desk, rest); used > best.used) best = {used, Kind::length, {}};
  return best;
}

Mark mark_of(base::Span where, El el) {
  Mark mark;
  mark.where = where;
  mark.el = el;
  return mark;
}

/// Words of amount that say nothing ("to taste") stay words; in a sentence only figures are amounts.
void add_mark(Desk& desk, DraftStep& step, std::size_t word, const Candidate& found, const Twin& twin, OvenModes& modes) {
  const std::uint32_t begin = step.words[word].where.begin;
  const base::Span where{begin, begin + static_cast<std::uint32_t>(found.used)};
  if (found.figure.ambiguous) ask_whose(desk, where, desk.slice(where));
  if (found.kind == Kind::time) {
    step.marks.push_back(mark_of(where, El::time));
  } else if (found.kind == Kind::length) {
    step.marks.push_back(mark_of(where, El::length));
  } else if (found.kind == Kind::temperature) {
    if (auto mark = temperature_mark(desk, step, word, where, twin, found.figure.amount, modes)) {
      step.marks.push_back(std::move(*mark));
    }
  } else if (found.figure.amount.has_figure() && measures(found.figure.amount)) {
    step.marks.push_back(mark_of(where, El::amount));
  }
}

bool may_open(const Desk& desk, const DraftStep& step, std::size_t word) {
  return step.words[word].figure() || desk.lexicon.match(Set::figure_opens, step.words, word) > 0;
}

/// A minus sign belongs to the figure behind it.
std::uint32_t with_sign(const Desk& desk, base::Span text, std::uint32_t begin) {
  if (begin > text.begin && desk.text[begin - 1] == '-') {
    if (begin - 1 == text.begin || desk.text[begin - 2] == ' ') return begin - 1;
  }
  constexpr std::string_view minus = "\u2212";
  if (begin >= text.begin + minus.size() && desk.text.compare(begin - minus.size(), minus.size(), minus) == 0) {
    return begin - static_cast<std::uint32_t>(minus.size());
  }
  return begin;
}

bool is_clause_end(std::string_view text, std::size_t at) {
  const char c = text[at];
  if (c == ';' || c == ':' || c == '!' || c == '?') return true;
  const bool spaced = at + 1 >= text.size() || text[at + 1] == ' ' || text[at + 1] == '\n' || text[at + 1] == '\r' ||
                      text[at + 1] == '.' || text[at + 1] == ')';
  if (c == '.' || c == ',') return spaced;
  return text.substr(at, 3) == "\u2013" && at > 0 && text[at - 1] == ' ';
}

/// End of the clause of `text` that holds a cue: punctuation, a closing bracket that was not opened, "then".
std::size_t clause_end(std::string_view text) {
  int open = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '(') ++open;
    if (text[at] == ')' && open-- == 0) return at;
    if (open == 0 && is_clause_end(text, at)) return at;
  }
  return text.size();
}

/// The cue's words end where the next one opens another thought.
std::size_t cue_last_word(const Desk& desk, const DraftStep& step, std::size_t first, std::uint32_t end) {
  std::size_t last = first;
  for (std::size_t i = first; i < step.words.size() && step.words[i].where.end <= end; ++i) {
    if (i > first && desk.lexicon.match(Set::cue_ends, step.words, i) > 0) break;
    last = i;
  }
  return last;
}

bool inside_mark(const DraftStep& step, std::uint32_t at) {
  return std::any_of(step.marks.begin(), step.marks.end(),
                     [&](const Mark& m) { return m.where.begin <= at && at < m.where.end; });
}

/// A cue may hold other marks; it grows to hold the whole of one it would cut.
base::Span grown(const DraftStep& step, base::Span where) {
  for (const Mark& mark : step.marks) {
    if (mark.where.begin < where.end && where.end < mark.where.end) where.end = mark.where.end;
  }
  return where;
}

}  // namespace

namespace {

/// "190 °C/gas mark 5", "180°C/350°F": two figures without a space; the first by itself. A figure on either side of the
/// stroke alone is a fraction.
Figure before_slash(std::string_view text, measure::Kinds kinds, const measure::Reading& reading) {
  const std::size_t slash = text.substr(0, window).find('/');
  if (slash == std::string_view::npos || slash + 1 >= text.size()) return {};
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  if (slash == 0 || (is_digit(text[slash + 1]) && is_digit(text[slash - 1]))) return {};
  return figure_in(text.substr(0, slash), kinds, reading);
}

/// "25-20 minutes": a range from the larger figure to the smaller. Marked as typed, so that the check can say so and
/// mend it; what it is a measure of, its second figure tells.
Figure reversed_range(std::string_view text, const base::Finding& fault, measure::Kinds kinds,
                      const measure::Reading& reading) {
  const std::string_view range = text.substr(0, fault.where.end);
  for (std::size_t at = 1; at < range.size(); ++at) {
    const bool starts_figure = range[at] >= '0' && range[at] <= '9' && (range[at - 1] < '0' || range[at - 1] > '9');
    if (!starts_figure) continue;
    measure::Found second = measure::find_amount(range.substr(at), kinds, reading);
    if (second.used != range.size() - at) continue;
    Figure figure;
    figure.amount = std::move(second.amount);
    figure.used = range.size();
    return figure;
  }
  return {};
}

}  // namespace

Figure figure_in(std::string_view whole, measure::Kinds kinds, const measure::Reading& reading) {
  const std::string_view text = start_of(whole);
  Figure figure;
  measure::Found found = measure::find_amount(text, kinds, reading);
  if (reading.system == measure::System::none) {
    measure::Reading as_us = reading;
    as_us.system = measure::System::us;
    measure::Found other = measure::find_amount(text, kinds, as_us);
    if (other.used > found.used) {
      figure.ambiguous = true;
      found = std::move(other);
    }
  }
  if (found.used == 0 && found.fault && found.fault->rule == "reversed-range") {
    return reversed_range(text, *found.fault, kinds, reading);
  }
  if (found.used == 0) return before_slash(whole, kinds, reading);
  if (word_goes_on(text, found.used)) return {};
  figure.amount = std::move(found.amount);
  figure.used = found.used;
  return figure;
}

Figure figure_at(const Desk& desk, base::Span span, measure::Kinds kinds) {
  return figure_in(desk.slice(span), kinds, desk.reading);
}

void ask_whose(Desk& desk, base::Span where, std::string_view typed) {
  std::string name;
  for (const Word& word : words_of(typed)) {
    if (!word.figure()) name = word.text;
  }
  const std::string unit = stem(name, "en");
  std::string words = "\"" + name + "\" is not the same in the US and in Britain";
  if (unit == "cup") words = "\"" + name + "\": US (237 ml), imperial (284 ml) or metric (250 ml)";
  if (unit == "pint") words = "\"" + name + "\": US (473 ml) or imperial (568 ml)";
  if (unit == "tbsp" || unit == "tablespoon") words = "\"" + name + "\": US (14.8 ml), metric (15 ml) or imperial (17.8 ml)";
  if (unit == "tsp" || unit == "teaspoon") words = "\"" + name + "\": US (4.9 ml), metric (5 ml) or imperial (5.9 ml)";
  desk.ask_once("unit " + unit, where, words + "? say with --units");
}

void mark_figures(Desk& desk, DraftStep& step) {
  OvenModes modes;
  for (std::size_t i = 0; i < step.words.size();) {
    const std::size_t word = i++;
    if (!may_open(desk, step, word)) continue;
    const std::uint32_t begin = with_sign(desk, step.text, step.words[word].where.begin);
    Candidate found = best_at(desk, {begin, step.text.end});
    if (found.used == 0) found = best_at(desk, {step.words[word].where.begin, step.text.end});
    else step.words[word].where.begin = begin;
    if (found.used == 0) {
      if (step.words[word].figure()) ask_bare_temperature(desk, step, word);
      continue;
    }
    const bool words = found.figure.used > 0 && !found.figure.amount.has_figure();
    if (words && step.words[word].text == "at") continue;  // "at room temperature": the room's words alone
    std::uint32_t end = step.words[word].where.begin + static_cast<std::uint32_t>(found.used);
    Twin twin;
    if (found.kind == Kind::temperature) twin = other_scale(desk, {end, step.text.end}, found.figure.amount);
    end += static_cast<std::uint32_t>(twin.used);
    while (i < step.words.size() && step.words[i].where.begin < end) ++i;
    add_mark(desk, step, word, found, twin, modes);
  }
}

void settle_temperatures(Desk& desk, DraftStep& step) {
  for (const DraftStep::Unclear& unclear : step.unclear) {
    const auto before = [&](const Mark& mark) {
      if (mark.el != El::use || mark.where.end > unclear.mark.where.begin) return false;
      const std::string_view gap = base::trimmed(desk.slice({mark.where.end, unclear.mark.where.begin}));
      return gap == "at" || gap == "\u00E0" || gap == "bei" || gap == "a" || gap == "mit";
    };
    if (std::any_of(step.marks.begin(), step.marks.end(), before)) {
      step.marks.push_back(unclear.mark);
      step.marks.back().el = El::food_temp;
    } else {
      desk.ask(unclear.mark.where, unclear.question);
    }
  }
}

void mark_cues(const Desk& desk, DraftStep& step) {
  std::vector<Mark> cues;
  std::uint32_t done = 0;
  for (std::size_t i = 0; i < step.words.size(); ++i) {
    const std::uint32_t begin = step.words[i].where.begin;
    const std::size_t opens = desk.lexicon.match(Set::cue_until, step.words, i);
    if (opens == 0 || begin < done || inside_mark(step, begin)) continue;
    const std::string_view rest = desk.slice({begin, step.text.end});
    const auto end = begin + static_cast<std::uint32_t>(clause_end(rest));
    const std::size_t last = cue_last_word(desk, step, i + opens, end);
    if (last >= step.words.size() || step.words[last].where.end > end) continue;
    base::Span where{begin, step.words[last].where.end};
    if (desk.slice({where.end, end}).find_first_not_of(" \t\r\n\u00A0") != std::string_view::npos && last + 1 < step.words.size() &&
        step.words[last + 1].where.begin >= end) {
      where.end = end;  // a sign that belongs to the last figure ("82 °C")
    }
    where = grown(step, where);
    cues.push_back(mark_of(where, El::until));
    done = where.end;
  }
  step.marks.insert(step.marks.end(), cues.begin(), cues.end());
}

}  // namespace tamis::format::draft
