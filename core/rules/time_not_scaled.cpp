#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule time_not_scaled = {
    .id = "time-not-scaled",
    .severity = base::Severity::warning,
    .topic = "scaling",
    .summary = "a time stated for another depth or mass was left as it is",
    .explanation = R"(Heat goes through food by its thickness: twice as thick takes between twice and four times as long, the nearer to
four the better the surface is heated. A batch in more of the same moulds keeps its time and nothing is said. Where the depth
changes, where no mould says how deep the food is, or where a pot of more is to cool, the time holds no longer: what it takes
now is worked out by conduction, from what little to what much the surface may let through, and a crumb, which passes its heat by
steam as well, is told more widely. The fiche keeps the author's time; the core, the gate or the cue decides.)",
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
    .source = "Carslaw and Jaeger, Conduction of Heat in Solids (1959); Plank (1913) where it freezes; of a crumb, common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
