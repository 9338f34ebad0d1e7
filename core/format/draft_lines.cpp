#include "core/format/draft_lines.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/format/draft_actions.h"
#include "core/format/draft_figures.h"

namespace tamis::format::draft {
namespace {

constexpr std::string_view bullets[] = {"-", "*", "+", "\u2022", "\u2013", "\u2014", "\u00B7", "\u25AA",
                                        "\u25CF", "\u25E6", "\u2219", "[ ]", "[x]", ">"};

bool digit(char c) { return c >= '0' && c <= '9'; }

void trim(const Desk& desk, base::Span& span) {
  const std::string_view text = desk.slice(span);
  const std::string_view inner = base::trimmed(text);
  const auto lead = static_cast<std::uint32_t>(inner.empty() ? 0 : inner.data() - text.data());
  span = {span.begin + lead, span.begin + lead + static_cast<std::uint32_t>(inner.size())};
}

void drop_front(const Desk& desk, Line& line, std::size_t bytes) {
  line.text.begin += static_cast<std::uint32_t>(bytes);
  trim(desk, line.text);
}

/// "3." "3)" "12 -": bytes of a number that stands before a step; 0 when it is none.
std::size_t number_size(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && digit(text[at])) ++at;
  if (at == 0 || at > 3 || at == text.size()) return 0;
  if (text[at] != '.' && text[at] != ')' && text[at] != ':') return 0;
  ++at;
  return at == text.size() || text[at] == ' ' || text[at] == '\t' ? at : 0;
}

/// "Step 3:" "Étape 2 -" "Schritt 1".
std::size_t step_word_size(const Desk& desk, const Line& line) {
  const std::string_view text = desk.slice(line.text);
  const std::vector<Word> words = words_of(text.substr(0, std::min<std::size_t>(text.size(), 24)));
  if (words.size() < 2 || desk.lexicon.match(Set::step_word, words, 0) != 1 || !words[1].figure()) return 0;
  std::size_t at = words[1].where.end;
  while (at < text.size() && (text[at] == ' ' || text[at] == ':' || text[at] == '.' || text[at] == '-')) ++at;
  return at;
}

void strip_bullet(const Desk& desk, Line& line) {
  const std::string_view text = desk.slice(line.text);
  for (const std::string_view bullet : bullets) {
    const bool spaced = text.size() > bullet.size() && (text[bullet.size()] == ' ' || text[bullet.size()] == '\t');
    const bool sign = bullet.size() > 1 && bullet[0] != '[';
    if (text.substr(0, bullet.size()) != bullet || !(spaced || (sign && text.size() > bullet.size()))) continue;
    line.bullet = true;
    return drop_front(desk, line, bullet.size());
  }
}

/// "## Sponge", "**Sponge**", "== Sponge ==", "_Sponge_".
void strip_heading_marks(const Desk& desk, Line& line) {
  const std::string_view text = desk.slice(line.text);
  const std::size_t lead = text.find_first_not_of("#=*_");
  if (lead == 0 || lead == std::string_view::npos) return;
  const std::size_t end = text.find_last_not_of("#=*_:");
  const bool hash = text[0] == '#' && lead <= 6;
  const bool both = end + 1 < text.size() && text.find(text[0], lead) > end;
  if (!hash && !both) return;
  line.marked = true;
  const std::string_view tail = text.substr(end + 1);
  const std::size_t keep = tail.find(':') != std::string_view::npos ? 1U : 0U;
  line.colon = keep > 0;
  line.text.end = line.text.begin + static_cast<std::uint32_t>(end + 1);
  drop_front(desk, line, lead);
}

void strip_number(const Desk& desk, Line& line) {
  std::size_t size = number_size(desk.slice(line.text));
  if (size == 0) size = step_word_size(desk, line);
  if (size == 0) return;
  line.numbered = true;
  drop_front(desk, line, size);
}

void judge_letters(const Desk& desk, Line& line) {
  const std::string_view text = desk.slice(line.text);
  if (!text.empty()) line.stop = text.back() == '.' || text.back() == '!' || text.back() == '?';
  if (!text.empty() && text.back() == ':') {
    line.colon = true;
    --line.text.end;
    trim(desk, line.text);
  }
  line.words = words_of(desk.slice(line.text), line.text.begin);
  const auto figure = [](const Word& word) { return word.figure(); };
  line.figures = std::any_of(line.words.begin(), line.words.end(), figure);
  const std::string shown(desk.slice(line.text));
  std::size_t letters = 0;
  for (const Word& word : line.words) letters += word.figure() ? 0U : word.text.size();
  line.capitals = letters >= 3 && base::lower(shown) != shown && [&] {
    return std::none_of(shown.begin(), shown.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  }();
}

Line line_of(const Desk& desk, base::Span span) {
  Line line;
  trim(desk, span);
  line.whole = line.text = span;
  if (span.empty()) return line;
  strip_heading_marks(desk, line);
  if (!line.marked) strip_bullet(desk, line);
  strip_number(desk, line);
  judge_letters(desk, line);
  return line;
}

}  // namespace

std::vector<Line> lines_of(const Desk& desk) {
  std::vector<Line> lines;
  const std::string& text = desk.text;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find_first_of("\r\n", begin), text.size());
    lines.push_back(line_of(desk, {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)}));
    begin = end + (text.compare(end, 2, "\r\n") == 0 ? 2U : 1U);
  }
  return lines;
}

bool starts_with_amount(const Desk& desk, const Line& line) {
  if (line.words.empty()) return false;
  const base::Span rest = line.text;
  const std::size_t amount = figure_at(desk, rest, measure::amount_kinds).used;
  if (amount == 0) return line.words[0].figure() && line.words.size() > 1 && line.words.size() < 9 && !line.stop;
  const std::size_t other = figure_at(desk, rest, measure::time_kinds | measure::temperature_kinds).used;
  return other < amount;
}

bool ends_with_amount(const Desk& desk, const Line& line) {
  if (line.words.size() < 2 || line.words[0].figure()) return false;
  for (std::size_t back = 1; back <= std::min<std::size_t>(4, line.words.size() - 1); ++back) {
    const Word& word = line.words[line.words.size() - back];
    if (!word.figure()) continue;
    const base::Span rest{word.where.begin, line.text.end};
    const std::size_t used = figure_at(desk, rest, measure::set_of(measure::Kind::mass) |
                                                       measure::set_of(measure::Kind::volume)).used;
    if (used > 0 && rest.begin + used >= line.words.back().where.end) return true;
  }
  return false;
}

bool starts_with_verb(const Desk& desk, const Line& line) {
  if (line.words.empty()) return false;
  if (desk.lexicon.match(Set::same_word_verb, line.words, 0) > 0) {
    return line.words.size() > 1 && desk.lexicon.match(Set::determiner, line.words, 1) > 0;
  }
  if (action_at(desk.lexicon, line.words, 0).words > 0) return true;
  const std::string& first = line.words[0].text;  // "Gently melt", "In a bowl, whisk" are told by has_verb
  return first.size() > 4 && first.substr(first.size() - 2) == "ly" && line.words.size() > 1 &&
         action_at(desk.lexicon, line.words, 1).words > 0;
}

bool has_verb(const Desk& desk, const Line& line) {
  for (std::size_t i = 0; i < line.words.size(); ++i) {
    if (desk.lexicon.match(Set::same_word_verb, line.words, i) > 0) continue;
    if (action_at(desk.lexicon, line.words, i).words > 0) return true;
  }
  return false;
}

}  // namespace tamis::format::draft
