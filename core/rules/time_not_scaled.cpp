#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule time_not_scaled = {
    .id = "time-not-scaled",
    .severity = base::Severity::warning,
    .topic = "scaling",
    .summary = "a time stated for another depth or mass was left as it is",
    .explanation = R"(Heat goes through food by its thickness: twice as thick takes up to four times as long, whatever the weight. A
batch in more of the same moulds keeps its time and nothing is said. Where the depth changes, where no mould
says how deep the food is, or where a pot of more is to cool, the time holds no longer: the cue and the core
decide.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">900 g</ingredient>
    <step do="bake" on="oven">Bake the <use of="cream">cream</use> at <oven-temp mode="static">100 °C</oven-temp> for <time>40 to 50 min</time>.</step>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="4"><mould shape="ring" count="1" diameter="16 cm" height="4 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">900 g</ingredient>
    <step do="bake" on="oven">Bake the <use of="cream">cream</use> at <oven-temp mode="static">100 °C</oven-temp> for <time>40 to 50 min</time>.</step>
  </component>
</fiche>)",
    .source = "conduction: the time grows with the square of the thickness",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
