#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/rules/contents.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr double carry_over = 8;  // K: what a roast goes on rising by, at most (common practice)
constexpr double margin = 2;      // K: the thermometer, and where it is put
constexpr double no_end = std::numeric_limits<double>::infinity();

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// What a word of doneness stands for. `charts`: how high printed charts put it that go by safety (60 °C rare, 63 °C medium
/// rare: common practice in US charts).
struct Doneness {
  std::string_view phrases;
  const TradeFigure& figure;
  double charts;
  std::string_view usual;
};

const std::array<Doneness, 3> words{{
    {"medium rare|medium-rare|saignant|jugoso", figures::beef_medium_rare, 63, "54–57 °C in the end"},
    {"rare|bleu|blutig", figures::beef_rare, 60, "49–52 °C in the end"},
    {"well done|well-done|bien cuit|durchgebraten|bien hecho", figures::beef_well_done, no_end, "68 °C and more in the end"},
}};

/// The one that a sentence names; null where none or several.
const Doneness* doneness_in(std::string_view sentence) {
  const Doneness* found = nullptr;
  std::string text(sentence);
  for (const std::string_view breed : {"rare breed", "rare-breed"}) {
    if (const std::size_t place = text.find(breed); place != std::string::npos) text.erase(place, breed.size());
  }
  for (const Doneness& one : words) {
    if (!has_phrase(text, one.phrases)) continue;
    if (found != nullptr) return nullptr;
    found = &one;
    for (const std::string_view longer : {"medium rare", "medium-rare"}) {
      if (const std::size_t place = text.find(longer); place != std::string::npos) text.erase(place, longer.size());
    }
  }
  return found;
}

std::string_view word_in(std::string_view sentence, const Doneness& doneness) {
  std::string_view rest = doneness.phrases;
  while (true) {
    const std::string_view one = rest.substr(0, rest.find('|'));
    if (find_phrase(sentence, one) != std::string_view::npos || one.size() == rest.size()) return one;
    rest.remove_prefix(one.size() + 1);
  }
}

/// Meat that is eaten at any of these: not poultry, pork or what is minced.
bool is_red_meat(const Contents& contents) {
  bool red = false;
  for (const Part& part : contents.parts) {
    if (part.food == nullptr || part.food->role != food::Role::meat) continue;
    const std::string_view id = part.food->id;
    const bool one = id.starts_with("beef") || id.starts_with("lamb") || id.starts_with("veal") || id.starts_with("venison") ||
                     id.starts_with("duck");
    if (!one || id.find("ground") != std::string_view::npos || id.find("minced") != std::string_view::npos) return false;
    red = true;
  }
  return red;
}

void look_at(Check& check, int step) {
  const fiche::Node node = check.flow.steps[at(step)].node;
  const std::vector<StatedHeat>& heats = stated_heats(check, node);
  if (heats.empty()) return;
  for (const StatedHeat& heat : heats) {
    if (heat.el != fiche::El::food_temp || !heat.low || !heat.high) continue;
    const std::string_view place = check.document.get(heat.statement->node, fiche::At::place);
    if (place == "surface" || (place.empty() && !says_core(heat.before))) continue;
    const auto same = [&](const StatedHeat& other) { return other.el == heat.el && other.sentence == heat.sentence; };
    if (std::count_if(heats.begin(), heats.end(), same) != 1) continue;
    const std::vector<std::string>& sentences = sentences_of(check, node);
    if (static_cast<std::size_t>(heat.sentence) >= sentences.size()) continue;
    const std::string& sentence = sentences[static_cast<std::size_t>(heat.sentence)];
    const Doneness* doneness = doneness_in(sentence);
    if (doneness == nullptr) continue;
    const bool under = *heat.high < doneness->figure.low - carry_over - margin;
    const bool over = *heat.low > doneness->charts + margin;
    if ((!under && !over) || !is_red_meat(contents_of(check, step))) continue;
    check.say(heat.statement->where,
              "\"" + std::string(word_in(sentence, *doneness)) + "\" is " + std::string(doneness->usual) + ", and " +
                  heat.statement->text + " in the middle is " +
                  (over ? "more done than that" : "less done than that, even after it has rested"),
              "one of the two is wrong; whole muscle only, and where local rules ask for more they come first");
  }
}

void run(Check& check) {
  if (!lists(check, food::Role::meat)) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Rare, medium rare or well done beside a core temperature that is something else.
const Rule doneness_against_core = {
    .id = "doneness-against-core",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "\"rare\", \"medium rare\" or \"well done\" beside a core temperature that is something else",
    .explanation =
        R"(Rare beef is at 49 to 52 °C in the middle when it is cut, medium rare at 54 to 57 °C, well done at 68 °C and
more. Where the word says one thing and the figure another, half the brigade cooks by each.

Held together are one core temperature and one such word in a sentence, for whole beef, lamb, veal, venison and duck. A
roast is lifted out up to 8 K below, and charts that go by safety call 60 °C rare and 63 °C medium rare: both are let be.
What is minced, pork and poultry have limits of their own; local rules come first.)",
    .bad = R"(    <ingredient id="beef" food="beef-fillet">1.5 kg</ingredient>
    <step do="roast">Roast the <use of="beef">fillet</use> medium rare, to <food-temp place="core">70 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="beef" food="beef-fillet">1.5 kg</ingredient>
    <step do="roast">Roast the <use of="beef">fillet</use> medium rare, to <food-temp place="core">52 °C</food-temp>.</step>)",
    .source = "common practice: rare 49 to 52 °C, medium rare 54 to 57 °C, well done 68 to 74 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
