#include "core/base/says.h"
#include "core/rules/keeps.h"
#include "core/rules/left_raw.h"
#include "core/rules/phrases.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

constexpr double cooked = 70;  // °C, all of it

constexpr std::string_view sprouts =
    "bean sprouts|beansprouts|alfalfa sprouts|alfalfa|mung sprouts|radish sprouts|sprouted seeds|sprouted "
    "beans|sprouted lentils|"
    "lentil sprouts|clover sprouts|pousses de soja|graines germées|germes de "
    "soja|sprossen|mungosprossen|keimlinge|brotes de soja|"
    "germinados";

/// One look for all phrases' first words, before they are looked for one by one.
bool may_be_sprouts(std::string_view lower) {
  return base::says(lower, {"bean", "alfalfa", "mung", "radish", "sprout", "lentil", "clover", "pousses", "graines", "germ", "spross",
                            "keim", "brotes"});
}

bool is_said(const Check& check) {
  const std::string cautions = cautions_of(check);
  return has_phrase(cautions, sprouts) || has_phrase(cautions, "sprouts|raw|germes|roh|crudo");
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (int thing = 0; thing < static_cast<int>(check.flow.things.size()); ++thing) {
    const flow::Thing& here = check.flow.things[static_cast<std::size_t>(thing)];
    if (here.kind != flow::Thing::Kind::ingredient || here.ingredient < 0 || !here.counts) continue;
    const std::string words = words_of_line(check, thing);
    if (!may_be_sprouts(words) || !has_phrase(words, sprouts) ||
        has_phrase(words, "blanched|cooked|boiled|blanchies|blanchiert|escaldados"))
      continue;
    if (hottest_of(check, thing) >= cooked || is_said(check)) continue;
    say_to_share(check, check.document.head_span(here.node), "sprouts stay raw here, and no caution says so",
                 "blanch them, or say in a caution that guests at risk leave them; local rules and licensed "
                 "persons decide");
    return;
  }
}

}  // namespace

/// Sprouted seeds that are eaten raw, and the fiche does not say so.
const Rule raw_sprouts_without_caution = {
    .id = "raw-sprouts-without-caution",
    .severity = base::Severity::advice,
    .topic = "safety",
    .summary = "sprouted seeds that stay raw, and no caution says so",
    .explanation =
        R"(Seeds sprout in the warm and the wet, where Salmonella and E. coli thrive, and washing does not reach them. Raw
sprouts are among the foods that guests at risk are told to leave.

A tested fiche is asked as advice, a released one as a warning: where a line's name is of sprouts, no step may bring them to
70 °C, and no caution speaks of it. Brussels sprouts are a cabbage. Local rules and licensed persons decide.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="sprouts" name="mung bean sprouts">200 g</ingredient>
    <ingredient id="oil" food="oil-olive">10 g</ingredient>
    <step do="toss" hands="2 min">Toss the <use of="sprouts">sprouts</use> in the <use of="oil">oil</use>.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="sprouts" name="mung bean sprouts" prep="blanched">200 g</ingredient>
    <ingredient id="oil" food="oil-olive">10 g</ingredient>
    <step do="toss" hands="2 min">Toss the <use of="sprouts">sprouts</use> in the <use of="oil">oil</use>.</step>)",
    .source = "FDA Food Code 1-201.10 and 3-801.11 (raw seed sprouts), from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
