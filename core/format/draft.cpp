#include "core/format/draft.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/format/draft_actions.h"
#include "core/format/draft_arrange.h"
#include "core/format/draft_clean.h"
#include "core/format/draft_figures.h"
#include "core/format/draft_language.h"
#include "core/format/draft_lines.h"
#include "core/format/draft_link.h"
#include "core/format/draft_recipe.h"
#include "core/format/draft_results.h"
#include "core/format/draft_times.h"
#include "core/format/draft_write.h"

namespace tamis::format {
namespace {

using draft::Desk;
using draft::Recipe;

measure::System system_named(std::string_view name) {
  if (name == "metric") return measure::System::metric;
  if (name == "us") return measure::System::us;
  return name == "imperial" ? measure::System::imperial : measure::System::none;
}

std::string_view name_of_system(measure::System system) {
  if (system == measure::System::metric) return "metric";
  if (system == measure::System::us) return "us";
  return system == measure::System::imperial ? "imperial" : "";
}

struct Found {
  std::string language, units;
};

/// Said by the caller, else by the words, else by the kitchen.
Found find_setting(const std::string& text, const fiche::Kitchen& kitchen, const DraftWish& wish) {
  const std::vector<draft::Word> words = draft::words_of(text);
  Found found;
  found.language = wish.language.empty() ? draft::find_language(words, text) : wish.language;
  if (found.language.empty()) found.language = kitchen.language;
  found.units = wish.units.empty() ? draft::find_units(words, text, found.language) : wish.units;
  if (found.units.empty() && kitchen.system) found.units = name_of_system(*kitchen.system);
  return found;
}

constexpr std::size_t most_step_words = 600;

/// A step of more words than that is read as far as that: what is marked in it is looked for in pairs.
void take_words(Desk& desk, draft::DraftStep& step) {
  step.words = draft::words_of(desk.slice(step.text), step.text.begin);
  if (step.words.size() <= most_step_words) return;
  desk.ask(step.text, "this step has " + std::to_string(step.words.size()) + " words; only the first " +
                          std::to_string(most_step_words) + " are looked at: divide it");
  step.words.resize(most_step_words);
}

void read_steps(Desk& desk, Recipe& recipe) {
  for (draft::DraftComponent& component : recipe.components) {
    for (draft::DraftStep& step : component.steps) {
      take_words(desk, step);
      draft::mark_figures(desk, step);
      draft::mark_cues(desk, step);
      draft::find_actions(desk, step);
      draft::find_times(desk, step);
    }
  }
  draft::find_results(desk, recipe);
}

Drafted refused(base::Span where, std::string words) {
  Drafted drafted;
  drafted.questions.push_back({where, std::move(words)});
  return drafted;
}

}  // namespace

Drafted read_draft(const base::Source& typed, const fiche::Kitchen& kitchen, const DraftWish& wish) {
  base::Result<std::string> text = draft::clean(typed);
  if (!text) return refused(text.fault().where, text.fault().message);
  if (base::trimmed(*text).empty()) return refused({}, "the draft is empty");
  const Found found = find_setting(*text, kitchen, wish);
  measure::Reading reading;
  if (!found.language.empty()) reading.language = found.language;
  reading.system = system_named(found.units);
  Desk desk{std::move(*text), kitchen, reading, draft::Lexicon(reading.language), {}, {}};
  Recipe recipe = draft::arrange(desk, draft::lines_of(desk));
  recipe.language = found.language;
  recipe.units = found.units;
  draft::give_ids(desk, recipe);
  read_steps(desk, recipe);
  draft::link(desk, recipe);
  for (draft::DraftComponent& component : recipe.components) {
    for (draft::DraftStep& step : component.steps) draft::settle_temperatures(desk, step);
  }
  Drafted drafted{draft::write_fiche(desk, recipe), std::move(desk.questions)};
  std::stable_sort(drafted.questions.begin(), drafted.questions.end(),
                   [](const Question& a, const Question& b) { return a.where.begin < b.where.begin; });
  return drafted;
}

}  // namespace tamis::format
