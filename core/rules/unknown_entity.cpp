#include "core/rules/registry.h"

namespace tamis::rules {

/// A named character other than the five of XML. Said by the reader (core/format).
const Rule unknown_entity = {
    .id = "unknown-entity",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "an entity that is none of the five of XML",
    .explanation = R"(XML itself knows &amp;, &lt;, &gt;, &quot; and &apos;. Names such as &eacute; belong to web pages: type the letter itself,
or its number (&#233;).)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Cr&egrave;me</title>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Crème</title>
</fiche>)",
    .source = "XML 1.0 (Fifth Edition), section 4.6",
    .schemas = "rng xsd",
    .run = nullptr,
};

}  // namespace tamis::rules
