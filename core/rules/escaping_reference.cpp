#include "core/rules/file_reference.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  for (const fiche::Attr from : references_in(check.document, check.structure)) {
    const FileReference reference = split_reference(check.document.attribute_value(from));
    const Target target = follow(check.document, reference.file, check.library);
    if (!target.fault || target.fault->rule != "escaping-reference") continue;
    check.say(check.document.value_span(from), quoted(reference.file) + " leads out of the library's folder",
              "move that fiche into the library, or widen library=\"…\" in the kitchen file");
  }
}

}  // namespace

/// A reference to a file outside the library's root, symlinks resolved. The library decides; its file is not opened.
const Rule escaping_reference = {
    .id = "escaping-reference",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a reference to a file outside the library's folder",
    .explanation = R"(A fiche may take a component from another file of the same library and from nowhere else. A path
that leaves the library breaks as soon as the folder is copied to another kitchen, and a fiche from a stranger could
otherwise read any file of the machine.

The library's folder is the kitchen file's own, or the one that its library attribute names.)",
    .bad = R"(    <ingredient from="../../../elsewhere/stock.fiche.xml">500 g</ingredient>)",
    .good = R"(    <ingredient food="stock-chicken">500 g</ingredient>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
