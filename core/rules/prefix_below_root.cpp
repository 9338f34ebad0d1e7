#include "core/rules/registry.h"

namespace tamis::rules {

/// xmlns or xmlns:… on an element that is not the root. Said by the reader (core/format).
const Rule prefix_below_root = {
    .id = "prefix-below-root",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a prefix or namespace is declared below the first element",
    .explanation = R"(Declarations stand on the first element only, so that what a prefix means is the same all through the file and a piece of
it can be moved without being changed. Move the declaration up.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
  <house:shelf xmlns:house="urn:example:house">3</house:shelf>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" xmlns:house="urn:example:house" id="example">
  <title>Vanilla sauce</title>
  <house:shelf>3</house:shelf>
</fiche>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
