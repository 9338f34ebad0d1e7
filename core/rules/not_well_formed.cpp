#include "core/rules/registry.h"

namespace tamis::rules {

/// The text is not XML or JSON. Reading stops at the first such place. Said by the reader (core/format).
const Rule not_well_formed = {
    .id = "not-well-formed",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "the file is not well-formed XML or JSON",
    .explanation = R"(A tag that is not closed, a quote that is missing, a comma too many: from there on nobody can say what belongs to what,
so nothing after that place is read. Mend it and check again; more may come to light.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
</fiche>)",
    .source = "XML 1.0 (Fifth Edition), section 2.1; RFC 8259",
    .schemas = "rng xsd json",
    .run = nullptr,
};

}  // namespace tamis::rules
