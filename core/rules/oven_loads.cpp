#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule oven_loads = {
    .id = "oven-loads",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "the oven does not take the batch at once",
    .explanation = R"(The same moulds keep their time, however many there are; but the oven takes only so many. So many loads are
baked, and what waits keeps cold or covered. What goes in at once is what the step states (load), else the trays
of the largest oven, with as many moulds on a tray of 60 × 40 cm as stand there a finger apart.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="8"><mould shape="frame" count="2" length="40 cm" width="30 cm" height="4 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">900 g</ingredient>
    <step do="bake" on="oven">Bake the <use of="cream">cream</use> at <oven-temp mode="static">100 °C</oven-temp> <until>until set</until>.</step>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="4"><mould shape="ring" count="1" diameter="16 cm" height="4 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">900 g</ingredient>
    <step do="bake" on="oven">Bake the <use of="cream">cream</use> at <oven-temp mode="static">100 °C</oven-temp> <until>until set</until>.</step>
  </component>
</fiche>)",
    .source = "common practice: a tray of 60 × 40 cm",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
