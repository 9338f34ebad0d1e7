#include "core/rules/registry.h"

namespace tamis::rules {

/// A prefix without a declaration on the root. Said by the reader (core/format).
const Rule undeclared_prefix = {
    .id = "undeclared-prefix",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a prefix that is not declared",
    .explanation = R"(The names of a house's own stand behind a prefix, and the first element says what it means:
xmlns:house="urn:…". A prefix that nobody declared is often a mistyped one.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
  <house:shelf>3</house:shelf>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" xmlns:house="urn:example:house" id="example">
  <title>Vanilla sauce</title>
  <house:shelf>3</house:shelf>
</fiche>)",
    .source = "Namespaces in XML 1.0, section 5",
    .schemas = "rng xsd",
    .run = nullptr,
};

}  // namespace tamis::rules
