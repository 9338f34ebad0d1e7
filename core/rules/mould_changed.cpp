#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule mould_changed = {
    .id = "mould-changed",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "the moulds do not come out even, or are others",
    .explanation = R"(More portions are more of the same moulds, filled as deep as before. Where that gives no whole number of them,
all stand a little lower or the last one is not full. In other moulds, flat goods go by the area and keep depth
and times; deep ones go by the volume, and the depth is another. From 5 % of the depth on it is a warning.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="8"><mould shape="frame" count="2" length="36 cm" width="26 cm" height="4 cm" fill="3 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">4.5 kg</ingredient>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="9"><mould shape="frame" count="3" length="36 cm" width="26 cm" height="4 cm" fill="3 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">4.5 kg</ingredient>
  </component>
</fiche>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
