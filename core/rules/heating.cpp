#include "core/rules/heating.h"

#include <algorithm>
#include <array>
#include <vector>

#include "core/base/utf8.h"
#include "core/measure/trade_word.h"
#include "core/rules/sentence.h"
#include "core/rules/value_pattern.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

struct Row {
  std::string_view word;
  HeatNeed need;
  bool depth_decides;
  std::string_view names;
};
constexpr Row rows[] = {
#define HEATING(word, need, depth, names) {word, HeatNeed::need, depth, names},
#include "core/rules/heating.inc"
#undef HEATING
};

/// "bake|deep-fry" of "en:bake|deep-fry;fr:…".
std::string_view names_in(std::string_view names, std::string_view language) {
  const std::string_view two = language.substr(0, 2);
  for (std::size_t at = 0; at < names.size();) {
    const std::size_t end = std::min(names.find(';', at), names.size());
    const std::string_view part = names.substr(at, end - at);
    if (part.substr(0, 2) == two) return part.substr(3);
    at = end + 1;
  }
  return {};
}

bool is_one_of(std::string_view word, std::string_view list) {
  for (std::size_t at = 0; at < list.size();) {
    const std::size_t end = std::min(list.find('|', at), list.size());
    if (list.substr(at, end - at) == word) return true;
    at = end + 1;
  }
  return false;
}

bool is_letter(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || byte >= 0x80 || byte == '-';
}

struct Word {
  std::string_view text;
  bool opens = false;   ///< first of a sentence
  bool closes = false;  ///< last of a clause
};

std::vector<Word> words_in(std::string_view text) {
  std::vector<Word> out;
  bool opens = true;
  for (std::size_t at = 0; at < text.size();) {
    if (!is_letter(text[at])) {
      const bool stop = text[at] == '.' || text[at] == ';' || text[at] == ',' || text[at] == ':';
      opens = opens || text[at] == '.' || text[at] == ';';
      if (stop && !out.empty()) out.back().closes = true;
      ++at;
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && is_letter(text[end])) ++end;
    out.push_back({text.substr(at, end - at), opens, false});
    opens = false;
    at = end;
  }
  if (!out.empty()) out.back().closes = true;
  return out;
}

/// English, French and Spanish give the order first; a German infinitive stands last, in small letters.
bool sentence_says(const std::vector<Word>& words, std::string_view names, bool german) {
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    if (german) return word.closes && is_one_of(word.text, names);
    return word.opens && is_one_of(base::lower(word.text), names);
  });
}

bool is_oven(const Check& check, const fiche::Step& step) {
  bool oven = false;
  for_each_word(check.document.get(step.node, At::on), [&](std::string_view on, std::size_t) {
    oven |= on == "oven" || std::any_of(check.kitchen.ovens.begin(), check.kitchen.ovens.end(),
                                        [&](const auto& known) { return known.id == on; });
  });
  return oven;
}

void take(Heating& heating, const Row& row) {
  heating.depth_decides |= row.depth_decides;
  if (row.need <= heating.need) return;
  heating.need = row.need;
  heating.word = row.word;
}

bool heats_as(std::string_view id) {
  constexpr std::array<std::string_view, 4> wet{"poaching", "simmering", "just-below-boiling", "boiling"};
  return id.ends_with("-oven") || id.ends_with("-heat") || std::find(wet.begin(), wet.end(), id) != wet.end();
}

/// "160 °C", "160 fan".
bool figure_of_heat_at(const Check& check, std::string_view text) {
  if (measure::find_amount(text, measure::temperature_kinds, check.fiche.reading).used > 0) return true;
  const std::size_t behind = text.find_first_not_of("0123456789");
  return behind != text.npos && behind >= 2 && says(text.substr(behind, 12), {"fan", "static", "convection"});
}

bool opens_figure(std::string_view text, std::size_t at) {
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  return is_digit(text[at]) && (at == 0 || !is_digit(text[at - 1]));
}

}  // namespace

Heating heating_of(const Check& check, const fiche::Step& step) {
  Heating out;
  if (!step.actions.empty()) {
    for (const Row& row : rows) {
      if (std::find(step.actions.begin(), step.actions.end(), row.word) != step.actions.end()) take(out, row);
    }
  } else {
    const std::string& text = own_words(check, step.node);
    const std::vector<Word> words = words_in(text);
    const std::string_view language = check.fiche.reading.language;
    for (const Row& row : rows) {
      const std::string_view names = names_in(row.names, language);
      if (!names.empty() && sentence_says(words, names, language.starts_with("de"))) take(out, row);
    }
  }
  if (out.need == HeatNeed::none) return out;
  const bool says_where = check.document.find(step.node, At::on) != fiche::none;
  out.in_oven = is_oven(check, step) || (!says_where && out.need == HeatNeed::oven);
  if (out.in_oven) out.need = HeatNeed::oven;
  if (!out.in_oven && out.need == HeatNeed::oven) out.need = HeatNeed::figure;
  return out;
}

bool names_a_heat(const Check& check, const fiche::Step& step) {
  const std::string& text = lower_words(check, step.node);
  if (says(text, {"gently", "gentle", "doucement", "frémiss", "behutsam", "sanft", "suavemente"})) return true;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (opens_figure(text, at) && figure_of_heat_at(check, std::string_view(text).substr(at))) return true;
    if (!is_letter(text[at]) || (at > 0 && is_letter(text[at - 1]))) continue;
    const measure::TradeWordFound found =
        measure::find_trade_word(std::string_view(text).substr(at), check.fiche.reading.language);
    if (found.word != nullptr && heats_as(found.word->id)) return true;
  }
  return false;
}

bool names_an_end(const Check& check, const fiche::Step& step) {
  const std::string& text = lower_words(check, step.node);
  return says(text, {"until ", "till ", "jusqu", "hasta ", "bis der ", "bis die ", "bis das ", "bis es ", "bis sie ", "by half",
                     "by a ", "by two", "by three", "to a ", "half", "de moitié", "d'un tiers", "des trois quarts", "um die hälfte",
                     "auf die hälfte", "um ein ", "auf ein ", "a la mitad", "a un "});
}

bool set_before(const Check& check, const fiche::Step& step) {
  for (const fiche::Step& earlier : check.fiche.steps) {
    if (&earlier == &step) return false;
    const bool preheats = std::find(earlier.actions.begin(), earlier.actions.end(), "preheat") != earlier.actions.end();
    if (!preheats && earlier.component != step.component) continue;
    if (preheats || cues_of(check.document, earlier.node).hot_place) return true;
  }
  return false;
}

}  // namespace tamis::rules
