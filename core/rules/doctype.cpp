#include "core/rules/registry.h"

namespace tamis::rules {

/// <!DOCTYPE …> in front of the first element. Said by the reader (core/format).
const Rule doctype = {
    .id = "doctype",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "the file has a document type declaration",
    .explanation = R"(A DOCTYPE can bring in other files and make a small file swell to gigabytes when it is read. A fiche needs none: take the
line out. The special characters it used to declare can be typed as they are.)",
    .bad = R"(<!DOCTYPE fiche>
<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
</fiche>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
