#include "core/tally/ingredient_list.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/utf8.h"
#include "core/food/allergen_bits.h"

namespace tamis::tally {
namespace {

using fiche::Node;
using food::Role;

std::string_view first_of(std::string_view names) { return names.substr(0, names.find('|')); }

bool is_water(const Entry& entry) { return entry.food != nullptr && entry.food->id == "water"; }
bool is_water(const Listed& item) { return item.names == "water"; }

/// The food's name where the list's language has one, else the author's.
std::string name_of(const Entry& entry, std::string_view language) {
  if (entry.food == nullptr) return entry.name;
  const std::string_view name = language.starts_with("fr") ? first_of(entry.food->french)
                                : language.starts_with("en") ? first_of(entry.food->english)
                                                             : std::string_view(entry.name);
  return name.empty() ? entry.name : std::string(name);
}

/// Words of names that draw the eye to nothing: what is done to a food, what a dish is.
constexpr std::array plain_words = {"pastry", "baking", "cooking", "house", "sweet", "dark",  "white", "brown", "black",
                                    "fresh",  "plain",  "whole",   "ground", "dried", "clear", "cold",  "warm",  "roast",
                                    "braised", "bread", "cake",    "sauce",  "soup",  "stock", "juice", "with",  "from"};

std::string stem(std::string word) {
  if (word.ends_with("ies") && word.size() > 5) return word.substr(0, word.size() - 3) + "y";
  for (const std::string_view ending : {"ches", "shes", "sses", "xes", "oes"}) {
    if (word.ends_with(ending)) return word.substr(0, word.size() - 2);
  }
  if (word.ends_with('s') && word.size() > 4) word.pop_back();
  return word;
}

bool letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

std::vector<std::string> words_in(std::string_view text) {
  const std::string lower = base::lower(text);
  std::vector<std::string> out;
  for (std::size_t at = 0; at < lower.size();) {
    std::size_t end = at;
    while (end < lower.size() && letter(lower[end])) ++end;
    const std::string word = stem(lower.substr(at, end - at));
    if (word.size() >= 4 && std::find(plain_words.begin(), plain_words.end(), word) == plain_words.end()) out.push_back(word);
    at = end + 1;
  }
  return out;
}

class List {
 public:
  List(const Makeup& makeup, const fiche::Fiche& fiche, const ListOptions& options)
      : makeup_(makeup), fiche_(fiche), options_(options), title_(words_in(fiche.title)) {}

  IngredientList run() {
    for (const Entry& entry : makeup_.entries) add(entry);
    keep_water();
    for (Listed& item : out_.items) finish(item);
    order(out_.items);
    return std::move(out_);
  }

 private:
  // ---- lines
  std::vector<Listed>& list_for(const Entry& entry) {
    if (!options_.by_component) return out_.items;
    const std::string title(base::trimmed(fiche_.document->get(entry.component, fiche::At::title)));
    if (entry.component == fiche::none || title.empty()) return out_.items;
    for (Listed& item : out_.items) {
      if (!item.parts.empty() && item.name == title) return item.parts;
    }
    Listed made;
    made.name = title;
    out_.items.push_back(std::move(made));
    return out_.items.back().parts;
  }

  void add(const Entry& entry) {
    const bool nothing = !(entry.served > 0) && entry.listed && *entry.listed > 0;  // taken out, or a part of it is in
    if ((entry.counts && nothing) || (entry.part_of < 0 && has_parts(entry) && !(entry.served > 0))) return;
    const fiche::Kitchen::OwnFood* own = fiche_.kitchen->own_food(entry.food_id);
    food::Allergens holds = 0;
    if (entry.food != nullptr) {
      const fiche::HeldAllergens held = fiche::allergens_held(*entry.food, own);
      holds = named_by(options_.law, held.sure | held.assumed);
    }
    // The tin's butter is in the food by a trace: it is named where it brings an allergen.
    if (!entry.counts && (holds == 0 || entry.served > 0 || is_bath(entry))) return;
    std::vector<Listed>& list = list_for(entry);
    const auto same = std::find_if(list.begin(), list.end(), [&](const Listed& one) { return is_same(one, entry); });
    const bool first = same == list.end();
    Listed& item = first ? list.emplace_back() : *same;
    if (first) {
      item.name = name_of(entry, options_.language);
      item.names = entry.food == nullptr ? entry.name : std::string(entry.food->english);
      if (is_water(entry)) item.names = "water";
      item.holds = holds;
      item.runs = runs_of(entry, own, item.name, holds);
      item.weighed = false;
    }
    item.grams += entry.served;
    item.weighed = item.weighed || entry.served > 0;
    if (is_emphasised(entry)) item.percent = item.percent.value_or(0) + entry.served;
  }

  [[nodiscard]] bool has_parts(const Entry& entry) const {
    const auto index = static_cast<int>(&entry - makeup_.entries.data());
    return std::any_of(makeup_.entries.begin(), makeup_.entries.end(), [&](const Entry& one) { return one.part_of == index; });
  }

  [[nodiscard]] bool is_bath(const Entry& entry) const {
    const fiche::Document& document = entry.held == nullptr ? *fiche_.document : *entry.held;
    const std::string_view purpose = document.get(entry.node, fiche::At::purpose);
    return purpose == "bath" || purpose == "boiling" || purpose == "cover";
  }

  [[nodiscard]] bool is_same(const Listed& one, const Entry& entry) const {
    if (is_water(entry)) return is_water(one);
    return one.name == name_of(entry, options_.language);
  }

  std::vector<Run> runs_of(const Entry& entry, const fiche::Kitchen::OwnFood* own, const std::string& name,
                           food::Allergens holds) const {
    food::Allergens left = holds;
    // In the US the statement behind the list names them.
    if (options_.law == Law::us) left = 0;
    std::vector<Run> runs = mark_allergens(name, left, options_.language);
    std::vector<Run> supplied;
    if (own != nullptr && !own->ingredients.empty()) {
      food::Allergens in_list = options_.law == Law::us ? 0 : holds;
      supplied = mark_allergens(own->ingredients, in_list, options_.language);
      left &= in_list;
    }
    // What the table says of the allergen tells the sort too: of beer, barley.
    std::string names;
    if (entry.food != nullptr) {
      names = options_.language.starts_with("fr") ? entry.food->french : entry.food->english;
      if (options_.language.starts_with("en")) names += "|" + std::string(entry.food->allergen_source);
    }
    for (const food::AllergenName& allergen : food::allergen_names()) {
      if ((left & allergen.bit) == 0) continue;
      runs.push_back({" (", false});
      // Wheat is not in the EU's list by itself; its gluten is said as what it comes from.
      const bool wheat = allergen.bit == food::allergen::gluten && (entry.food->allergens & food::allergen::wheat) != 0;
      runs.push_back({word_for(wheat ? food::allergen::wheat : allergen.bit, names, options_.language), true});
      runs.push_back({")", false});
    }
    if (!supplied.empty()) {
      runs.push_back({" (", false});
      runs.insert(runs.end(), supplied.begin(), supplied.end());
      runs.push_back({")", false});
    }
    return runs;
  }

  /// As the author says, else where a word of the title is in its name; not what only flavours (Annex VIII 1 a iii).
  [[nodiscard]] bool is_emphasised(const Entry& entry) const {
    const fiche::Document& document = entry.held == nullptr ? *fiche_.document : *entry.held;
    const std::string_view said = document.get(entry.node, fiche::At::emphasised);
    if (!said.empty()) return said == "yes";
    const Role role = entry.food == nullptr ? Role::other : entry.food->role;
    if (role == Role::spice || role == Role::flavouring || role == Role::garnish) return false;
    for (const std::string& text : {entry.name, name_of(entry, options_.language)}) {
      for (const std::string& word : words_in(text)) {
        if (std::find(title_.begin(), title_.end(), word) != title_.end()) return true;
      }
    }
    return false;
  }

  // ---- water
  /// In the EU water is listed by what is left of it when the rest is taken off the finished mass.
  void keep_water() {
    if (options_.law != Law::eu) return;
    double added = 0;
    each([&](Listed& item) { added += is_water(item) ? item.grams : 0; });
    if (added <= 0) return;
    const double left = std::max(0.0, added - makeup_.water_out);
    each([&](Listed& item) {
      if (is_water(item)) item.grams *= left / added;
    });
    const bool meat = std::any_of(makeup_.entries.begin(), makeup_.entries.end(), [](const Entry& entry) {
      return entry.served > 0 && entry.food != nullptr && (entry.food->role == Role::meat || entry.food->role == Role::fish);
    });
    constexpr double may_be_left_out = 0.05;
    if (!makeup_.mass || meat || left > may_be_left_out * *makeup_.mass) return;
    out_.water_left_out = true;
    std::erase_if(out_.items, [](const Listed& item) { return is_water(item); });
    for (Listed& item : out_.items) std::erase_if(item.parts, [](const Listed& part) { return is_water(part); });
  }

  template <class Do>
  void each(Do one) {
    for (Listed& item : out_.items) {
      one(item);
      for (Listed& part : item.parts) one(part);
    }
  }

  // ---- order
  void finish(Listed& item) {
    for (Listed& part : item.parts) {
      item.grams += part.grams;
      item.holds |= part.holds;
      item.names += "|" + part.names;
      finish(part);
    }
    if (!item.parts.empty()) item.runs = {{item.name, false}};
    if (!item.percent) return;
    if (makeup_.mass && *makeup_.mass > 0) {
      item.percent = 100 * *item.percent / *makeup_.mass;
    } else {
      item.percent.reset();
    }
  }

  void order(std::vector<Listed>& items) {
    if (all_ <= 0) {
      for (const Listed& item : items) all_ += item.grams;
    }
    std::stable_sort(items.begin(), items.end(), [](const Listed& a, const Listed& b) { return a.grams > b.grams; });
    constexpr double small = 0.02;
    for (Listed& item : items) {
      item.share = all_ > 0 ? item.grams / all_ : 0;
      item.small = item.share < small;
      order(item.parts);
    }
  }

  const Makeup& makeup_;
  const fiche::Fiche& fiche_;
  const ListOptions& options_;
  const std::vector<std::string> title_;
  double all_ = 0;
  IngredientList out_;
};

}  // namespace

IngredientList ingredient_list(const Makeup& makeup, const fiche::Fiche& fiche, const ListOptions& options) {
  return List(makeup, fiche, options).run();
}

std::vector<std::string> assumed_foods(const Makeup& makeup, const fiche::Kitchen& kitchen) {
  std::vector<std::string> out;
  for (const Entry& entry : makeup.entries) {
    if (entry.food == nullptr || is_water(entry) || entry.part_of >= 0) continue;
    const fiche::Kitchen::OwnFood* own = kitchen.own_food(entry.food_id);
    if (own != nullptr && !own->specified.empty()) continue;
    const std::string name = name_of(entry, "en");
    if (std::find(out.begin(), out.end(), name) == out.end()) out.push_back(name);
  }
  return out;
}

std::vector<std::string> us_contains(const IngredientList& list) {
  std::vector<std::string> out;
  for (const food::AllergenName& name : food::allergen_names()) {
    if (!name.us) continue;
    std::string names;
    const auto gather = [&](const Listed& item, const auto& self) -> void {
      if (item.parts.empty() && (item.holds & name.bit) != 0) names += item.names + "|";
      for (const Listed& part : item.parts) self(part, self);
    };
    for (const Listed& item : list.items) gather(item, gather);
    if (!names.empty()) out.push_back(us_name(name.bit, names));
  }
  return out;
}

}  // namespace tamis::tally
