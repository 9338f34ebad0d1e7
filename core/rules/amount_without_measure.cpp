#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/step_words.h"
#include "core/rules/vague_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

bool is_vague(const measure::Amount& amount) {
  return amount.words == "some" || amount.words == "a-little" || amount.words == "plenty";
}

/// An ingredient line that says "some". Fat for the tin and flour for the bench are let be.
void look_at_ingredients(Check& check) {
  for (const fiche::Ingredient& line : check.fiche.ingredients) {
    const std::string_view purpose = check.document.get(line.node, At::purpose);
    if (line.amount < 0 || (!purpose.empty() && purpose != "food")) continue;
    const fiche::Statement& stated = check.fiche.statements[static_cast<std::size_t>(line.amount)];
    if (!stated.amount || !is_vague(*stated.amount)) continue;
    say_to_share(check, stated.where, quoted(stated.text) + " is another amount for every cook",
                 "weigh it once and write the figure, or a range; \"to taste\" where only the tongue decides");
  }
}

/// A cue or a picture says how much is enough.
void look_at_step(Check& check, Node step) {
  if (cues_of(check.document, step).cue || check.document.find(step, At::when) != fiche::none) return;
  const std::string& text = own_words(check, step);
  const auto vague = vague_amount(text, check.fiche.reading.language);
  if (!vague) return;
  say_to_share(check, check.document.head_span(step),
               quoted(text.substr(vague->begin, vague->end - vague->begin)) + " is another amount for every cook",
               "write how much, or what it is added for: <until>until it just runs off the spoon</until>");
}

void run(Check& check) {
  if (!is_shared(check)) return;
  look_at_ingredients(check);
  for (const fiche::Step& step : check.fiche.steps) look_at_step(check, step.node);
}

}  // namespace

/// "A little milk": an amount that is none, with nothing to tell when it is enough.
const Rule amount_without_measure = {
    .id = "amount-without-measure",
    .severity = base::Severity::advice,
    .topic = "teaching",
    .summary = "\"some\" or \"a little\" of a food, and nothing says how much is enough",
    .explanation = R"("A little water" is a spoonful to one cook and a cup to the next, and a batch for 140 has nothing to multiply. A
weighed figure or a range says it; so does what it is added for ("until it just runs off the spoon").

The rule looks for such words before a food's name, in English, French, German and Spanish (core/rules/vague_words.inc),
and for an ingredient line whose amount is "some" or "a little". "A little at a time" is no amount; "to taste", a pinch
and fat for the tin are let be. A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="plums" food="plum" prep="stoned">1 kg</ingredient>
    <step do="cover">Cover the <use of="plums">plums</use> with a little sugar.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="plums" food="plum" prep="stoned">1 kg</ingredient>
    <ingredient id="sugar" food="sugar-white">30–40 g</ingredient>
    <step do="cover">Cover the <use of="plums">plums</use> with the <use of="sugar">sugar</use>, a little at a
      time.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
