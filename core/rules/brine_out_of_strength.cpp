#include <algorithm>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/contents.h"
#include "core/rules/figure_text.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/step_words.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using food::Role;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool is_water(const food::Food* food) { return food != nullptr && (food->id == "water" || food->id == "ice"); }

/// Water and salt, with no more than what flavours it.
bool is_plain_brine(const Contents& contents) {
  bool salt = false, water = false;
  for (const Part& part : contents.parts) {
    if (part.food == nullptr) return false;
    const Role role = part.food->role;
    if (role == Role::meat || role == Role::fish || role == Role::vegetable || role == Role::egg || role == Role::fruit)
      return false;
    salt = salt || role == Role::salt;
    water = water || is_water(part.food);
  }
  return salt && water && contents.whole;
}

bool names_brine(const Check& check, int step) {
  const fiche::Node node = check.flow.steps[at(step)].node;
  std::string words = own_sentence(check, node) + " " + std::string(check.document.get(node, fiche::At::makes));
  const fiche::Node component = check.flow.steps[at(step)].component;
  if (component != fiche::none) words += " " + base::lower(check.document.get(component, fiche::At::title));
  if (base::says(words, {"equilibrium", "équilibre", "gleichgewicht"}))
    return false;  // by the weight of food and water together
  const bool german = std::string_view(check.fiche.language).starts_with("de");
  return has_phrase(words, german ? "lake|salzlake|pökellake" : "brine|saumure|salmuera");
}

/// True once something is said of a brine: later steps hold the same.
bool look_at(Check& check, int step) {
  const Contents contents = contents_of(check, step);
  if (!is_plain_brine(contents) || !names_brine(check, step)) return false;
  flow::Grams water;
  fiche::Node line = fiche::none;
  for (const Part& part : contents.parts) {
    if (part.food->role == Role::salt && line == fiche::none) line = check.flow.things[at(part.thing)].node;
    if (!is_water(part.food)) continue;
    if (!part.grams) return false;
    water.low += part.grams->low;
    water.high += part.grams->high;
  }
  const auto salt = contents.grams_of(Role::salt);
  if (!salt || !(water.low > 0) || !(salt->high > 0)) return false;
  const double low = 100 * salt->low / water.high, high = 100 * salt->high / water.low;
  const bool weak = high<figures::brine.low, strong = low> figures::brine.high;
  if (!weak && !strong) return true;
  const bool left_over = low > figures::salt_dissolves.low;
  check.say(check.document.head_span(line),
            "the brine has " + percent_text(low, high) + " of salt by the weight of its water" +
                (left_over ? ": more than 36 % does not dissolve"
                 : weak    ? ": it seasons little and keeps nothing"
                           : ": nothing in it can be eaten unsoaked"),
            "meat takes 4 to 10 %, vegetables to ferment 2 to 5 %, fish to be smoked up to 20 %");
  return true;
}

void run(Check& check) {
  if (!lists(check, Role::salt)) return;
  fiche::Node done = fiche::none;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    const fiche::Node component = check.flow.steps[at(step)].component;
    if (component == done) continue;
    if (look_at(check, step)) done = component;
  }
}

}  // namespace

/// Brine so weak that it does nothing, or stronger than salt dissolves.
const Rule brine_out_of_strength = {
    .id = "brine-out-of-strength",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "a brine so weak that it does nothing, or stronger than anything is brined in",
    .explanation =
        R"(A brine for meat holds 4 to 10 % of salt by the weight of its water, one to ferment vegetables in 2 to 5 %,
one for fish that is smoked up to 20 %; above 36 % the rest lies on the bottom. Whether a brine protects food depends on
salt, acid, temperature and time together: a tested recipe and your local rules decide that, not this figure.

Held against wide bounds is what is called a brine and is made of water and salt with at most sugar, acid and spice. An
equilibrium brine, whose salt is reckoned on food and water together, is let be; time in it is not judged.)",
    .bad = R"(    <ingredient id="water" food="water">2 l</ingredient>
    <ingredient id="salt" food="salt">12 g</ingredient>
    <step do="boil" makes="brine">Boil the <use of="water">water</use> and <use of="salt">salt</use> to a brine.</step>)",
    .good = R"(    <ingredient id="water" food="water">2 l</ingredient>
    <ingredient id="salt" food="salt">120 g</ingredient>
    <step do="boil" makes="brine">Boil the <use of="water">water</use> and <use of="salt">salt</use> to a brine.</step>)",
    .source = "common practice; solubility of sodium chloride at 20 °C: CRC Handbook, 35.9 g in 100 g of water, from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
