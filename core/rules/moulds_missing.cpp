#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule moulds_missing = {
    .id = "moulds-missing",
    .severity = base::Severity::warning,
    .topic = "scaling",
    .summary = "the batch takes more moulds than the kitchen has",
    .explanation = R"(The kitchen file says how many of each mould there are. A batch that needs more is made in rounds, or in other
moulds.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="8"><mould shape="frame" count="2" length="36 cm" width="26 cm" height="4 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">900 g</ingredient>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Example</title>
  <yield portions="4"><mould shape="loaf" count="1" length="25 cm" width="10 cm" height="8 cm"/></yield>
  <component id="c" title="Component">
    <ingredient id="cream" food="cream-35">900 g</ingredient>
  </component>
</fiche>)",
    .source = "the kitchen file",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
