#include "core/rules/registry.h"

namespace tamis::rules {

/// Past one of the limits in core/format/format.h. Said by the reader (core/format).
const Rule over_limit = {
    .id = "over-limit",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "the file is past a limit of reading",
    .explanation = R"(So that no file can hang or fill a machine, reading has limits that no recipe comes near: 64 MB a file, 256 levels,
names of 256 bytes, 256 attributes an element. The finding names the one that was passed.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
  <aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
</fiche>)",
    .source = "the limits of the reader (core/format/format.h)",
    .schemas = "rng xsd json",
    .run = nullptr,
};

}  // namespace tamis::rules
