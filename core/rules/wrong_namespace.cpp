#include "core/rules/registry.h"

namespace tamis::rules {

/// The root is of no namespace or of another one. Said by the reader (core/format).
const Rule wrong_namespace = {
    .id = "wrong-namespace",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "the file's first element is not of a fiche's namespace",
    .explanation = R"(The namespace says which vocabulary the names are of. Without urn:tamis:fiche:1 on the first element, "step" could be a
step of a staircase, and nothing in the file is read as a recipe. Add xmlns="urn:tamis:fiche:1" to it.)",
    .bad = R"(<fiche id="example">
  <title>Vanilla sauce</title>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
</fiche>)",
    .source = "Namespaces in XML 1.0, section 6.2",
    .schemas = "rng xsd",
    .run = nullptr,
};

}  // namespace tamis::rules
