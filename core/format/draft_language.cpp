#include "core/format/draft_language.h"

#include <algorithm>
#include <initializer_list>

namespace tamis::format::draft {
namespace {

/// Traces of a way of measuring.
struct Traces {
  std::size_t fahrenheit = 0, celsius = 0, gas = 0, grams = 0, cups = 0, spoons = 0, pints_and_ounces = 0;
  std::size_t us_words = 0, uk_words = 0;
};

bool one_of(std::string_view word, std::initializer_list<std::string_view> list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// The unit a figure carries: what follows the digits in its own word ("250g", "350F"), or the next word.
std::string_view unit_behind(std::span<const Word> words, std::size_t at) {
  const std::string_view word = words[at].text;
  const std::size_t end = word.find_first_not_of("0123456789.,/");
  if (end != std::string_view::npos && static_cast<unsigned char>(word[end]) < 0x80) return word.substr(end);
  return at + 1 < words.size() ? std::string_view(words[at + 1].text) : std::string_view();
}

void count_unit(std::string_view unit, Traces& traces) {
  traces.fahrenheit += one_of(unit, {"f", "fahrenheit"});
  traces.celsius += one_of(unit, {"c", "celsius"});
  traces.grams += one_of(unit, {"g", "gr", "gram", "grams", "kg", "ml", "cl", "dl", "l", "litre", "litres", "gramm",
                                "grammes", "gramos", "gramme", "grs"});
  traces.cups += one_of(unit, {"cup", "cups", "c"}) && unit != "c";
  traces.spoons += one_of(unit, {"tsp", "tbsp", "tbs", "tsps", "tbsps", "teaspoon", "teaspoons", "tablespoon",
                                 "tablespoons", "cuillere", "cuilleres", "el", "tl", "cucharada", "cucharadas",
                                 "cucharadita", "cucharaditas", "cas", "cac", "essloffel", "teeloffel"});
  traces.pints_and_ounces += one_of(unit, {"pint", "pints", "oz", "ounce", "ounces", "fl", "quart", "quarts", "lb",
                                           "lbs", "pound", "pounds", "gallon"});
}

Traces traces_of(std::span<const Word> words, std::string_view text) {
  Traces traces;
  const Lexicon english("en");
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i].figure()) count_unit(unit_behind(words, i), traces);
    traces.gas += words[i].text == "gas" && i + 1 < words.size() &&
                  (words[i + 1].text == "mark" || words[i + 1].figure());
    traces.us_words += english.match(Set::us_word, words, i) > 0;
    traces.uk_words += english.match(Set::uk_word, words, i) > 0;
  }
  traces.fahrenheit += text.find("\u00B0F") != std::string_view::npos;
  traces.celsius += text.find("\u00B0C") != std::string_view::npos;
  return traces;
}

}  // namespace

std::string find_language(std::span<const Word> words, std::string_view text) {
  std::string_view best;
  std::size_t most = 1;
  bool tie = true;
  for (const std::string_view language : {"en", "fr", "de", "es"}) {
    const std::size_t count = count_function_words(words, language);
    if (count > most) best = language;
    tie = count == most || (tie && count < most);
    most = std::max(most, count);
  }
  if (best.empty() || tie) return {};
  if (best != "en") return std::string(best);
  const Traces traces = traces_of(words, text);
  const std::size_t us = traces.us_words + 2 * (traces.fahrenheit > 0 && traces.celsius == 0) + (traces.cups > 0);
  const std::size_t uk = traces.uk_words + 2 * traces.gas;
  if (us > uk && us >= 2 && traces.gas == 0) return "en-US";
  if (uk > us) return "en-GB";
  return "en";
}

std::string find_units(std::span<const Word> words, std::string_view text, std::string_view language) {
  const Traces traces = traces_of(words, text);
  const std::string_view family = language.substr(0, 2);
  if (family == "fr" || family == "de" || family == "es") return traces.cups == 0 ? "metric" : "";
  if (traces.gas == 0 && traces.celsius == 0 && traces.fahrenheit > 0) return "us";
  if (language == "en-US" && traces.celsius == 0) return "us";
  if (traces.cups + traces.pints_and_ounces > 0) {
    const bool british = traces.fahrenheit == 0 && (traces.gas > 0 || traces.uk_words > 0);
    return british && traces.us_words == 0 && traces.cups == 0 ? "imperial" : "";
  }
  return traces.grams > 0 && traces.fahrenheit == 0 ? "metric" : "";
}

}  // namespace tamis::format::draft
