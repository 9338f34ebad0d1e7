#include "core/format/draft_link.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/format/draft_actions.h"
#include "core/format/draft_scope.h"

namespace tamis::format::draft {
namespace {

using fiche::At;
using fiche::El;

constexpr std::size_t most_earlier = 64;  // components before a step's own that it may name

struct Answer {
  std::size_t target = 0;
  int rank = 0;
};

struct Hit {
  std::size_t words = 0;
  std::vector<Answer> answers;       ///< all that the phrase can mean
  std::vector<std::size_t> targets;  ///< those that are left of them
};

class Linker {
 public:
  Linker(Desk& desk, Scope& scope, DraftStep& step) : desk_(desk), scope_(scope), step_(step) {
    for (const Word& word : step.words) stems_.push_back(stem(word.text, desk.lexicon.language()));
  }

  void run() {
    find_hits();
    const std::size_t home = home_component();
    for (Found& found : hits_) {
      if (found.hit.targets.size() > 1 && home != none) prefer_component(found.hit, home);
      if (found.hit.targets.size() == 1 || all_of_them(found)) {
        mark(found.at, found.hit);
      } else {
        ask(found.at, found.hit);
      }
    }
    step_.marks.insert(step_.marks.end(), made_.begin(), made_.end());
  }

 private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  struct Found {
    std::size_t at = 0;
    Hit hit;
  };

  void find_hits() {
    for (std::size_t i = 0; i < step_.words.size();) {
      Hit hit = free(i) ? hit_at(i) : Hit{};
      if (hit.words == 0 || !is_food_here(i, hit)) {
        ++i;
        continue;
      }
      choose(i, hit);
      const std::size_t taken = hit.words;
      hits_.push_back({i, std::move(hit)});
      i += taken;
    }
  }

  /// The one component that the sure names of this step belong to.
  [[nodiscard]] std::size_t home_component() const {
    std::size_t home = none;
    for (const Found& found : hits_) {
      if (found.hit.targets.size() != 1 || scope_.targets[found.hit.targets[0]].ingredient == nullptr) continue;
      const std::size_t component = scope_.targets[found.hit.targets[0]].component;
      if (home != none && home != component) return none;
      home = component;
    }
    return home;
  }

  void prefer_component(Hit& hit, std::size_t home) const {
    std::vector<std::size_t> kept;
    for (const std::size_t t : hit.targets) {
      if (scope_.targets[t].component == home) kept.push_back(t);
    }
    if (!kept.empty()) hit.targets = std::move(kept);
  }

  /// "the flours", where the list has two and calls neither so.
  [[nodiscard]] bool all_of_them(const Found& found) const {
    if (words().language() != "en" || found.hit.words != 1 || step_.words[found.at].text == stems_[found.at]) return false;
    return std::all_of(found.hit.targets.begin(), found.hit.targets.end(), [&](std::size_t t) {
      const DraftIngredient* ingredient = scope_.targets[t].ingredient;
      return ingredient != nullptr && folded_letters(ingredient->name).find(step_.words[found.at].text) == std::string::npos;
    });
  }

  [[nodiscard]] const Lexicon& words() const { return desk_.lexicon; }
  [[nodiscard]] std::size_t match(Set set, std::size_t at) const { return words().match(set, step_.words, at); }

  /// Not inside a figure.
  [[nodiscard]] bool free(std::size_t word) const {
    const base::Span where = step_.words[word].where;
    return std::none_of(step_.marks.begin(), step_.marks.end(), [&](const Mark& mark) {
      return mark.el != El::until && mark.where.begin < where.end && where.begin < mark.where.end;
    });
  }

  [[nodiscard]] bool same(const Key& key, std::size_t at) const {
    if (at + key.words.size() > stems_.size()) return false;
    for (std::size_t i = 0; i < key.words.size(); ++i) {
      if (stems_[at + i] != key.words[i] || !free(at + i)) return false;
      if (i > 0 && step_.words[at + i].opens_clause) return false;
    }
    return true;
  }

  /// The longest phrase, and everything that answers to it.
  [[nodiscard]] Hit hit_at(std::size_t at) const {
    Hit hit;
    const auto found = scope_.entries.find(stems_[at]);
    if (found == scope_.entries.end()) return hit;
    for (const Entry& entry : found->second) {
      const std::size_t size = entry.key.words.size();
      if (size < hit.words || !same(entry.key, at)) continue;
      if (size > hit.words) hit.answers.clear();
      hit.words = size;
      hit.answers.push_back({entry.target, entry.key.rank});
    }
    for (const Answer& answer : hit.answers) {
      if (std::find(hit.targets.begin(), hit.targets.end(), answer.target) == hit.targets.end()) hit.targets.push_back(answer.target);
    }
    return hit;
  }

  /// Of those that answer, the ones that the phrase names best.
  void keep_best_named(Hit& hit) const {
    int best = 99;
    const auto wanted = [&](const Answer& answer) {
      return std::find(hit.targets.begin(), hit.targets.end(), answer.target) != hit.targets.end();
    };
    for (const Answer& answer : hit.answers) best = wanted(answer) ? std::min(best, answer.rank) : best;
    std::vector<std::size_t> kept;
    for (const Answer& answer : hit.answers) {
      const bool known = std::find(kept.begin(), kept.end(), answer.target) != kept.end();
      if (answer.rank == best && wanted(answer) && !known) kept.push_back(answer.target);
    }
    hit.targets = std::move(kept);
  }

  [[nodiscard]] bool ends_before(Set set, std::size_t at) const {
    for (std::size_t back = 1; back <= 4 && back <= at; ++back) {
      if (match(set, at - back) == back) return true;
    }
    return false;
  }

  /// "Butter the tin" and "simmering water" name no ingredient, nor does the "butter" of "butter mixture".
  [[nodiscard]] bool is_food_here(std::size_t at, const Hit& hit) const {
    const std::size_t behind = at + hit.words;
    const std::string& first = step_.words[at].text;
    const bool verb = hit.words == 1 && action_at(words(), step_.words, at).words > 0;
    if (verb) return any_with_purpose(hit);
    if (hit.words == 1 && is_participle(at)) return false;
    const bool water = first == "water" || first == "eau" || first == "wasser" || first == "agua";
    if (water && hit.words == 1 && (ends_before(Set::not_water_before, at) || match(Set::not_water_before, at > 0 ? at - 1 : at) > 0)) return false;
    if (hit.words == 1 && ends_before(Set::not_food_before, at)) return false;
    if (behind < step_.words.size() && !step_.words[behind].opens_clause && match(Set::not_food_after, behind) > 0) {
      return scope_.targets[hit.targets[0]].ingredient == nullptr;
    }
    return true;
  }
  /// "le cercle beurré" holds no butter's name.
  [[nodiscard]] bool is_participle(std::size_t at) const {
    if (words().language() != "fr") return false;
    const std::string typed = base::lower(desk_.slice(step_.words[at].where));
    for (const std::string_view ending : {"\u00E9", "\u00E9e", "\u00E9s", "\u00E9es"}) {
      if (typed.size() > ending.size() + 2 && typed.substr(typed.size() - ending.size()) == ending) {
        return std::none_of(scope_.targets.begin(), scope_.targets.end(), [&](const Target& t) { return base::lower(t.shown).find(typed) != std::string::npos; });
      }
    }
    return false;
  }
  [[nodiscard]] bool any_with_purpose(const Hit& hit) const {
    return std::any_of(hit.targets.begin(), hit.targets.end(), [&](std::size_t t) {
      return scope_.targets[t].ingredient != nullptr && !scope_.targets[t].ingredient->purpose.empty();
    });
  }

  // ---- choosing between several

  void keep_if(Hit& hit, bool (*wanted)(const Target&, const std::string&), const std::string& argument) const {
    std::vector<std::size_t> kept;
    for (const std::size_t t : hit.targets) {
      if (wanted(scope_.targets[t], argument)) kept.push_back(t);
    }
    if (!kept.empty()) hit.targets = std::move(kept);
  }

  /// Greasing and dusting take what the list has for it; all else takes the food. An amount before the word tells
  /// two of one name apart.
  void choose(std::size_t at, Hit& hit) const {
    if (hit.targets.size() < 2) return;
    keep_if(hit, greases(at) ? [](const Target& t, const std::string&) { return t.ingredient != nullptr && !t.ingredient->purpose.empty(); }
                             : [](const Target& t, const std::string&) { return t.ingredient == nullptr || t.ingredient->purpose.empty(); },
            {});
    keep_best_named(hit);
    if (hit.targets.size() < 2) return;
    if (const Mark* amount = amount_before(start_of(at))) {
      keep_if(hit, [](const Target& t, const std::string& said) { return t.ingredient != nullptr && folded_letters(t.ingredient->amount) == said; },
              folded_letters(desk_.folded(amount->where)));
    }
  }

  [[nodiscard]] bool greases(std::size_t at) const {
    for (std::size_t i = at + 1; i-- > 0;) {
      const std::string& word = step_.words[i].text;
      for (const std::string_view verb : {"grease", "greased", "line", "brush", "dust", "beurrer", "beurrez", "graisser", "fariner", "einfetten", "engrasar", "engrase"}) {
        if (word == verb) return true;
      }
      if (i == at && step_.words[at].opens_clause && match(Set::same_word_verb, at) == 1 && at + 1 < step_.words.size() && match(Set::determiner, at + 1) > 0) return true;
      if (step_.words[i].opens_sentence) break;
    }
    return false;
  }

  // ---- what belongs to the mark beside the name itself

  /// The first word of the name with what is done to it: "melted butter", "caster sugar".
  [[nodiscard]] std::size_t start_of(std::size_t at) const {
    while (at > 0 && !step_.words[at].opens_clause && free(at - 1) &&
           (match(Set::prep_word, at - 1) == 1 || match(Set::adjective, at - 1) == 1) && match(Set::determiner, at - 1) == 0 &&
           match(Set::connective, at - 1) == 0 && match(Set::clause_word, at - 1) == 0 && !in_short_words(at - 1)) {
      --at;
    }
    return at;
  }
  [[nodiscard]] bool in_short_words(std::size_t word) const { return step_.words[word].text.size() < 3; }

  /// An amount that stands right before the word, with "of the" between at most.
  [[nodiscard]] const Mark* amount_before(std::size_t word) const {
    for (const Mark& mark : step_.marks) {
      if (mark.el != El::amount || mark.where.end > step_.words[word].where.begin) continue;
      const std::vector<Word> between = words_of(desk_.slice({mark.where.end, step_.words[word].where.begin}));
      std::size_t i = 0;
      while (i < between.size()) {
        const std::size_t used = std::max(words().match(Set::connective, between, i), words().match(Set::determiner, between, i));
        if (used == 0) break;
        i += used;
      }
      const bool plain = desk_.slice({mark.where.end, step_.words[word].where.begin}).find_first_of(",;:.()") == std::string_view::npos;
      if (i == between.size() && i <= 3 && plain) return &mark;
    }
    return nullptr;
  }

  struct Take {
    std::size_t from = 0;  ///< first word of "the rest of the"
    std::string_view share;
  };

  [[nodiscard]] Take take_before(std::size_t at) const {
    struct Row {
      Set set;
      std::string_view share;
    };
    const Row rows[] = {{Set::take_rest, "the rest"}, {Set::take_half, "1/2"}, {Set::take_two_thirds, "2/3"},
                        {Set::take_third, "1/3"},     {Set::take_quarter, "1/4"}};
    for (std::size_t back = 6; back >= 1; --back) {
      if (back > at) continue;
      for (const Row& row : rows) {
        if (match(row.set, at - back) == back && free(at - back)) return {at - back, row.share};
      }
    }
    return {at, {}};
  }

  void mark(std::size_t at, const Hit& hit) {
    const std::size_t first = start_of(at);
    const Take take = take_before(first).share.empty() ? take_before(at) : take_before(first);
    Mark made;
    made.el = El::use;
    made.where = {step_.words[at].where.begin, step_.words[at + hit.words - 1].where.end};
    std::string ids;
    for (const std::size_t t : hit.targets) ids += (ids.empty() ? "" : " ") + scope_.targets[t].id;
    made.attributes.emplace_back(At::of, ids);
    if (!take.share.empty()) {
      made.where.begin = step_.words[take.from].where.begin;
      made.attributes.emplace_back(At::take, take.share);
    } else if (const Mark* amount = amount_before(at)) {
      made.where.begin = amount->where.begin;
    }
    if (crosses(made.where)) made.where.begin = step_.words[at].where.begin;
    if (crosses(made.where)) return;
    made_.push_back(std::move(made));
    for (const std::size_t t : hit.targets) count_as_used(scope_.targets[t]);
  }

  /// A component named whole takes all its ingredients along, where its own method is told with the others.
  static void count_as_used(const Target& target) {
    if (target.ingredient != nullptr) target.ingredient->used = true;
    if (target.whole == nullptr || !target.whole->steps.empty()) return;
    for (DraftIngredient& ingredient : target.whole->ingredients) ingredient.used = true;
  }

  [[nodiscard]] bool crosses(base::Span where) const {
    const auto cuts = [&](const Mark& mark) {
      const bool apart = mark.where.end <= where.begin || where.end <= mark.where.begin;
      const bool inside = mark.el == El::until && mark.where.begin <= where.begin && where.end <= mark.where.end;
      const bool around = mark.el == El::amount && where.begin <= mark.where.begin && mark.where.end <= where.end;
      return !apart && !inside && !around;
    };
    return std::any_of(step_.marks.begin(), step_.marks.end(), cuts) || std::any_of(made_.begin(), made_.end(), cuts);
  }

  void ask(std::size_t at, const Hit& hit) {
    const base::Span where{step_.words[at].where.begin, step_.words[at + hit.words - 1].where.end};
    std::string words = "which \"" + desk_.folded(where) + "\" is meant: ";
    for (std::size_t i = 0; i < hit.targets.size() && i < 4; ++i) {
      const Target& target = scope_.targets[hit.targets[i]];
      if (i > 0) words += " or ";
      if (target.ingredient != nullptr) target.ingredient->used = true;  // named, though not which
      words += target.ingredient != nullptr && !target.ingredient->amount.empty() ? target.ingredient->amount + " " + target.shown : target.shown;
    }
    desk_.ask(where, words + "?");
  }

  Desk& desk_;
  Scope& scope_;
  DraftStep& step_;
  std::vector<std::string> stems_;
  std::vector<Found> hits_;
  std::vector<Mark> made_;
};

void ask_for_unused(Desk& desk, const Recipe& recipe) {
  bool whole = false;
  for (const DraftComponent& component : recipe.components) whole = whole || component.whole_method;
  for (const DraftComponent& component : recipe.components) {
    if (component.steps.empty() && !whole) {
      if (!component.ingredients.empty()) {
        desk.ask(component.heading, "no step makes \"" + component.title + "\": what is done with its ingredients?");
      }
      continue;
    }
    for (const DraftIngredient& ingredient : component.ingredients) {
      if (ingredient.used || !ingredient.purpose.empty() || ingredient.name.empty()) continue;
      desk.ask(ingredient.line, "no step uses \"" + ingredient.name + "\"");
    }
  }
}

}  // namespace

void link(Desk& desk, Recipe& recipe) {
  for (std::size_t i = 0; i < recipe.components.size(); ++i) {
    DraftComponent& component = recipe.components[i];
    if (component.steps.empty()) continue;
    Scope scope;
    add_ingredients(desk, scope, i, component);
    const std::size_t first = component.whole_method || i < most_earlier ? 0 : i - most_earlier;
    const std::size_t last = component.whole_method ? recipe.components.size() : i;
    for (std::size_t other = first; other < last; ++other) {
      if (component.whole_method) add_ingredients(desk, scope, other, recipe.components[other]);
      add_component(desk, scope, other, recipe.components[other]);
    }
    for (std::size_t other = first; other < i; ++other)
      for (const DraftStep& step : recipe.components[other].steps) add_result(desk, scope, other, step);
    for (DraftStep& step : component.steps) {
      Linker(desk, scope, step).run();
      add_result(desk, scope, i, step);
    }
  }
  ask_for_unused(desk, recipe);
}

}  // namespace tamis::format::draft
