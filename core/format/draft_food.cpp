#include "core/format/draft_food.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/food/food.h"

namespace tamis::format::draft {
namespace {

using food::Match;

struct FoodWord {
  std::string_view language;
  std::string_view words;
  std::string_view english;
};

constexpr FoodWord food_words[] = {
#define FOOD_WORD(language, words, english) {language, words, english},
#include "core/format/draft_food_words.inc"
};

constexpr double most_fat_apart = 1.5;  // g in 100 g: cream of 35 % answers to one of 36 %, not to one of 30 %

std::string without(const Lexicon& lexicon, std::string_view name, std::initializer_list<Set> sets) {
  const std::vector<Word> words = words_of(name);
  std::string out;
  for (std::size_t i = 0; i < words.size();) {
    std::size_t skip = 0;
    for (const Set set : sets) skip = std::max(skip, lexicon.match(set, words, i));
    if (skip == 0) {
      if (!out.empty()) out += ' ';
      out += name.substr(words[i].where.begin, words[i].where.end - words[i].where.begin);
    }
    i += std::max<std::size_t>(1, skip);
  }
  return out;
}

/// The English name a German or Spanish one stands for; "" when the table has it not.
std::string_view translated(const Lexicon& lexicon, std::string_view name) {
  std::string folded;
  for (const Word& word : words_of(name)) folded += (folded.empty() ? "" : " ") + word.text;
  for (const FoodWord& row : food_words) {
    if (row.language != lexicon.language()) continue;
    const std::string list = "|" + std::string(row.words) + "|";
    if (list.find("|" + folded + "|") != std::string::npos) return row.english;
  }
  return {};
}

/// The start of a name, up to the first phrase of a set; "" when that comes first or not at all.
std::string up_to(const Lexicon& lexicon, std::string_view name, Set set) {
  const std::vector<Word> words = words_of(name);
  const std::size_t at = lexicon.find(set, words);
  return at == 0 || at >= words.size() ? std::string() : std::string(name.substr(0, words[at - 1].where.end));
}

/// Names to look up, the author's own first.
std::vector<std::string> names_for(const Lexicon& lexicon, std::string_view name) {
  std::vector<std::string> names{std::string(name)};
  names.push_back(without(lexicon, name, {Set::prep_word}));
  names.push_back(without(lexicon, name, {Set::prep_word, Set::size, Set::pack}));
  names.push_back(up_to(lexicon, name, Set::name_ends));
  names.push_back(up_to(lexicon, name, Set::prep_word));
  std::vector<std::string> english;
  for (const std::string& one : names) {
    if (const auto word = translated(lexicon, one); !word.empty()) english.emplace_back(word);
  }
  names.insert(names.begin(), english.begin(), english.end());
  return names;
}

bool good(const Match& match) { return match.how == Match::How::exact || match.how == Match::How::variant; }

/// The matches that are as good as the first.
std::vector<const food::Food*> best_of(const std::vector<Match>& matches) {
  std::vector<const food::Food*> best;
  for (const Match& match : matches) {
    if (good(match) && match.how == matches.front().how) best.push_back(match.food);
  }
  return best;
}

std::string kitchen_food(const Desk& desk, std::string_view name) {
  const std::string folded = folded_letters(name);
  for (const auto& own : desk.kitchen.foods) {
    if (folded_letters(own->name) == folded || folded_letters(own->id) == folded) return own->id;
  }
  return {};
}

std::string display_name(const food::Food& food, std::string_view language) {
  const std::string_view names = language == "fr" && !food.french.empty() ? food.french : food.english;
  return std::string(names.substr(0, names.find('|')));
}

/// The word of a food's name that says what it is: the last in English, the first in French, figures left out.
std::string noun_of(std::string_view name, std::string_view language) {
  std::string noun;
  for (const Word& word : words_of(name)) {
    if (word.figure() || word.text == "fat") continue;
    if (noun.empty() || language != "fr") noun = stem(word.text, language);
  }
  return noun;
}

/// Some name of the food ends (French: starts) as `name` does: "heavy cream" is a cream, "cream cheese" is none.
bool is_kind_of(const food::Food& food, std::string_view name, std::string_view language) {
  std::string_view rest = language == "fr" ? food.french : food.english;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('|'), rest.size());
    if (noun_of(rest.substr(0, end), language) == noun_of(name, language)) return true;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return false;
}

/// Foods of the list whose fat comes nearest to what the author wrote.
std::vector<const food::Food*> with_fat(const std::vector<Match>& matches, const std::string& fat,
                                        std::string_view name, std::string_view language) {
  const double wanted = std::strtod(fat.c_str(), nullptr);
  std::vector<const food::Food*> found;
  double nearest = most_fat_apart;
  for (const Match& match : matches) {
    const double apart = std::abs(match.food->per_100_g.fat - wanted);
    if (match.how == Match::How::near || std::isnan(apart) || apart > nearest) continue;
    if (!is_kind_of(*match.food, name, language)) continue;
    if (apart < nearest) found.clear();
    nearest = apart;
    found.push_back(match.food);
  }
  return found;
}

/// Foods that name the share of cocoa the author wrote.
std::vector<const food::Food*> with_cocoa(const std::vector<Match>& matches, const std::string& cocoa) {
  const std::string digits = cocoa.substr(0, cocoa.find(' '));
  std::vector<const food::Food*> found;
  for (const Match& match : matches) {
    const std::string names = std::string(match.food->id) + " " + std::string(match.food->english);
    if (match.how != Match::How::near && names.find(digits) != std::string::npos) found.push_back(match.food);
  }
  return found;
}

void ask_which(Desk& desk, const DraftIngredient& ingredient, std::string_view name,
               const std::vector<const food::Food*>& foods) {
  const std::string about = "food " + folded_letters(name);
  if (foods.empty()) {
    return desk.ask_once(about, ingredient.line,
                         "no food goes by the name \"" + std::string(name) + "\"; tamis foods lists those it knows");
  }
  if (foods.size() == 1) {
    return desk.ask_once(about, ingredient.line,
                         "is \"" + std::string(name) + "\" " + std::string(foods[0]->id) + " (" +
                             display_name(*foods[0], desk.lexicon.language()) + ")?");
  }
  std::string words = "which \"" + std::string(name) + "\"? ";
  for (std::size_t i = 0; i < foods.size() && i < 4; ++i) {
    if (i > 0) words += i + 1 == std::min<std::size_t>(foods.size(), 4) ? " or " : ", ";
    words += std::string(foods[i]->id) + " (" + display_name(*foods[i], desk.lexicon.language()) + ")";
  }
  desk.ask_once(about, ingredient.line, words);
}

struct Search {
  std::vector<const food::Food*> candidates;  ///< to name in the question
  const food::Food* found = nullptr;
};

void settle(Search& search, std::vector<const food::Food*> foods) {
  if (foods.size() == 1) {
    search.found = foods.front();
  } else if (search.candidates.empty()) {
    search.candidates = std::move(foods);
  }
}

void look(Search& search, const DraftIngredient& ingredient, std::string_view name, std::string_view language,
          bool in_table_language) {
  const std::vector<Match> matches = food::look_up(name, language, 12);
  if (matches.empty()) return;
  if (!ingredient.fat.empty()) settle(search, with_fat(matches, ingredient.fat, name, language));
  if (search.found == nullptr && !ingredient.cocoa.empty()) settle(search, with_cocoa(matches, ingredient.cocoa));
  if (search.found != nullptr) return;
  if (ingredient.fat.empty()) settle(search, best_of(matches));
  if (search.found != nullptr || !search.candidates.empty()) return;
  const bool near_too = name.size() >= 6 && in_table_language;
  for (const Match& match : matches) {
    if (match.how != Match::How::near || near_too) search.candidates.push_back(match.food);
  }
}

}  // namespace

std::string food_named(const Desk& desk, std::string_view name) {
  if (std::string own = kitchen_food(desk, name); !own.empty()) return own;
  const std::vector<Match> matches = food::look_up(name, desk.lexicon.language() == "fr" ? "fr" : "en", 12);
  if (matches.empty()) return {};
  const std::vector<const food::Food*> best = best_of(matches);
  return best.size() == 1 ? std::string(best.front()->id) : std::string();
}

void find_food(Desk& desk, DraftIngredient& ingredient, std::string_view name) {
  const std::string_view language = desk.lexicon.language() == "fr" ? "fr" : "en";
  Search search;
  std::vector<std::string> names = names_for(desk.lexicon, name);
  if (const std::size_t unit = ingredient.amount.find(' '); unit != std::string::npos) {
    names.push_back(ingredient.amount.substr(unit + 1) + " " + std::string(name));  // "1 bouquet garni"
  }
  for (const std::string& one : names) {
    if (one.empty()) continue;
    ingredient.food = kitchen_food(desk, one);
    if (!ingredient.food.empty()) return;
    look(search, ingredient, one, language, desk.lexicon.language() == "en" || language == "fr");
    if (search.found == nullptr) continue;
    ingredient.food = search.found->id;
    return;
  }
  ask_which(desk, ingredient, name, search.candidates);
}

}  // namespace tamis::format::draft
