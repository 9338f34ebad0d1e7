#include "core/rules/registry.h"

namespace tamis::rules {

/// A byte that is not UTF-8, or a file in another encoding. Said by the reader (core/format).
const Rule not_utf_8 = {
    .id = "not-utf-8",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "the file is not written in UTF-8",
    .explanation = R"(A file saved in another encoding shows a crème brûlée as cr?me br?l?e on another machine, or a degree sign as something
else. Where the encoding can be told (UTF-16, Latin-1) the finding names it: open the file in the editor it comes from
and save it as UTF-8.)",
    .bad = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"example\">\n  <title>Cr\xE8"
           "me</title>\n</fiche>",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Crème</title>
</fiche>)",
    .source = "RFC 3629",
    .schemas = "rng xsd json",
    .run = nullptr,
};

}  // namespace tamis::rules
