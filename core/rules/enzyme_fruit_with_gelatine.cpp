#include <algorithm>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double enzymes_end = 70;  // °C, for minutes (common practice: blanched or brought to the boil)

/// Cooked, tinned, pasteurised: in en, fr, de, es.
bool says_cooked(std::string_view words) {
  return base::says(
      words, {"cooked",        "tinned",    "canned",    "tin",    "can",      "poached", "boiled",  "blanched", "roast",
              "grilled",       "pasteuris", "pasteuriz", "stewed", "in syrup", "dried",   "candied", "jam",      "cuit",
              "conserve",      "poché",     "sirop",     "rôti",   "boîte",    "confit",  "gekocht", "dose",     "blanchiert",
              "pasteurisiert", "kompott",   "cocid",     "lata",   "almíbar",  "asad"});
}

bool is_raw(const Check& check, const flow::Thing& thing) {
  const std::string words = base::lower(check.document.get(thing.node, At::prep)) + " " +
                            base::lower(check.document.get(thing.node, At::name)) + " " +
                            base::lower(check.document.all_text(thing.node));
  // Bought as a purée it is pasteurised; puréed here it is not.
  const std::string name = base::lower(check.document.get(thing.node, At::name));
  return !says_cooked(words) && name.find("purée") == std::string::npos && name.find("puree") == std::string::npos;
}

/// Which things hold fruit whose enzymes still work, as far as the fiche tells.
std::vector<int> raw_fruit_in(const Check& check) {
  const flow::Flow& flow = check.flow;
  std::vector<int> out(flow.things.size(), -1);  // of each thing the ingredient that it holds
  for (std::size_t i = 0; i < flow.things.size(); ++i) {
    const bool fruit =
        flow.things[i].kind == flow::Thing::Kind::ingredient && (food_kinds(check).things[i] & kind::enzyme_fruit) != 0;
    if (fruit && is_raw(check, flow.things[i])) out[i] = static_cast<int>(i);
  }
  for (const int step : flow.order) {
    int held = -1;
    for (const int u : flow.steps[at(step)].takes) held = std::max(held, out[at(flow.uses[at(u)].thing)]);
    if (held < 0 || heats(check, step) || check.states().steps[at(step)].heat.celsius >= enzymes_end) continue;
    for (std::size_t i = 0; i < flow.things.size(); ++i) {
      if (flow.things[i].maker == step) out[i] = held;
    }
  }
  return out;
}

/// Laid on top, or served beside: the set jelly stays as it is for a while.
bool only_lies_by_it(const Check& check, int step) {
  return does(check, step, {"garnish", "decorate", "top", "serve", "plate", "finish", "arrange", "assemble", "portion"});
}

void look_at(Check& check, int step, const std::vector<int>& raw) {
  const flow::Use* fruit = nullptr;
  bool gelatine = false;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if (!is_told(use)) continue;
    const bool holds_gelatine = (food_kinds(check).things[at(use.thing)] & kind::any_gelatine) != 0;
    if (raw[at(use.thing)] >= 0 && !holds_gelatine) fruit = &use;
    gelatine = gelatine || holds_gelatine;
  }
  if (fruit == nullptr || !gelatine || only_lies_by_it(check, step) || boils(check, step)) return;
  if (says_cooked(words_of(check, step))) return;
  const std::string name(check.flow.things[at(raw[at(fruit->thing)])].name);
  check.say(span_of(check, *fruit), "raw " + name + " takes gelatine apart: it will not set",
            "bring the fruit to the boil for a minute first, take it tinned, or set it with agar or pectin");
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & kind::enzyme_fruit) == 0 || (all & kind::any_gelatine) == 0) return;
  const std::vector<int> raw = raw_fruit_in(check);
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step, raw);
}

}  // namespace

/// Raw pineapple in a jelly.
const Rule enzyme_fruit_with_gelatine = {
    .id = "enzyme-fruit-with-gelatine",
    .severity = base::Severity::error,
    .topic = "order",
    .summary = "raw pineapple, kiwi, papaya or fig set with gelatine",
    .explanation = R"(Raw pineapple, kiwi, papaya and fig hold enzymes (bromelain, actinidin, papain, ficin) that take
protein apart, gelatine first of all: the jelly stays liquid. Heat ends them, so boiled, blanched, tinned and
pasteurised fruit is right; so is agar or pectin. Mango is said to do it too and in practice sets, so it is left
alone.

Said where the raw fruit goes in together with the gelatine, not where it is laid on top.)",
    .bad = R"(    <ingredient id="pineapple" food="pineapple" prep="diced">300 g</ingredient>
    <ingredient id="juice" food="apple-juice" at="60 °C">500 g</ingredient>
    <ingredient id="mass" food="gelatine-mass">60 g</ingredient>
    <step do="dissolve" makes="jelly">Dissolve the <use of="mass">gelatine</use> in the <use of="juice">juice</use>.</step>
    <step do="mix">Stir the <use of="pineapple">pineapple</use> into the <use of="jelly">jelly</use>.</step>)",
    .good = R"(    <ingredient id="pineapple" food="pineapple" prep="diced, poached">300 g</ingredient>
    <ingredient id="juice" food="apple-juice" at="60 °C">500 g</ingredient>
    <ingredient id="mass" food="gelatine-mass">60 g</ingredient>
    <step do="dissolve" makes="jelly">Dissolve the <use of="mass">gelatine</use> in the <use of="juice">juice</use>.</step>
    <step do="mix">Stir the <use of="pineapple">pineapple</use> into the <use of="jelly">jelly</use>.</step>)",
    .source = "H. McGee, On Food and Cooking: gelatine and protein-digesting enzymes of fruit, from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
