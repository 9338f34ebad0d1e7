#include "core/format/draft_results.h"

#include <algorithm>
#include <set>

namespace tamis::format::draft {
namespace {

/// Ids that are taken; a result is no second thing of that name.
std::set<std::string> taken_ids(const Recipe& recipe) {
  std::set<std::string> out{"fiche", slug(recipe.title, 6)};
  for (const DraftComponent& component : recipe.components) {
    out.insert(component.id);
    for (const DraftIngredient& ingredient : component.ingredients) {
      out.insert(ingredient.id);
      out.insert(slug(ingredient.bare));
      for (const DraftPart& part : ingredient.parts) out.insert(part.id);
    }
  }
  return out;
}

bool says(const DraftStep& step, const std::vector<std::string>& stems, const std::string& language) {
  for (std::size_t i = 0; i + stems.size() <= step.words.size(); ++i) {
    std::size_t k = 0;
    while (k < stems.size() && stem(step.words[i + k].text, language) == stems[k]) ++k;
    if (k == stems.size()) return true;
  }
  return false;
}

/// The name behind "this is the", when it goes to the end of the sentence and has one or two words.
base::Span name_in(const Desk& desk, const DraftStep& step) {
  for (std::size_t i = 0; i < step.words.size(); ++i) {
    const std::size_t used = desk.lexicon.match(Set::result_named, step.words, i);
    if (used == 0 || !step.words[i].opens_clause) continue;
    std::size_t end = i + used;
    while (end < step.words.size() && !step.words[end].opens_clause && !step.words[end].figure()) ++end;
    const bool whole = end == step.words.size() || step.words[end].opens_sentence;
    const std::size_t words = end - (i + used);
    if (whole && words >= 1 && words <= 2) return {step.words[i + used].where.begin, step.words[end - 1].where.end};
  }
  return {};
}

/// Whether a step behind this one, in its component or a later one, speaks of it.
bool spoken_of_later(const Recipe& recipe, std::size_t component, std::size_t step, const std::vector<std::string>& stems,
                     const std::string& language) {
  for (std::size_t c = component; c < recipe.components.size(); ++c) {
    const std::vector<DraftStep>& steps = recipe.components[c].steps;
    for (std::size_t s = c == component ? step + 1 : 0; s < steps.size(); ++s)
      if (says(steps[s], stems, language)) return true;
  }
  return false;
}

}  // namespace

void find_results(const Desk& desk, Recipe& recipe) {
  const std::string& language = desk.lexicon.language();
  std::set<std::string> taken = taken_ids(recipe);
  for (std::size_t c = 0; c < recipe.components.size(); ++c) {
    for (std::size_t s = 0; s < recipe.components[c].steps.size(); ++s) {
      DraftStep& step = recipe.components[c].steps[s];
      const base::Span name = name_in(desk, step);
      if (name.empty()) continue;
      const std::string id = slug(desk.slice(name), 2);
      std::vector<std::string> stems;
      for (const Word& word : words_of(desk.slice(name))) stems.push_back(stem(word.text, language));
      if (id.empty() || taken.contains(id) || !spoken_of_later(recipe, c, s, stems, language)) continue;
      step.makes = id;
      step.result = name;
      taken.insert(id);
    }
  }
}

}  // namespace tamis::format::draft
