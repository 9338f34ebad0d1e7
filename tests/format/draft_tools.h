#ifndef TESTS_FORMAT_DRAFT_TOOLS_H
#define TESTS_FORMAT_DRAFT_TOOLS_H

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/document.h"
#include "core/format/draft.h"
#include "core/format/format.h"

namespace tamis::tests {

/// A draft read in a kitchen that states nothing.
format::Drafted drafted(std::string_view typed, const std::string& language = {}, const std::string& units = {});

/// The fiche of it, read back.
std::shared_ptr<fiche::Document> fiche_of(const format::Drafted& drafted);

/// Questions as "line:column: words", a line each.
std::string questions_of(std::string_view typed, const format::Drafted& drafted);

/// Elements of one name, in document order.
std::vector<fiche::Node> all_of(const fiche::Document& document, fiche::El el);

/// What stands between an element's tags, white space folded: "Melt the <use of="butter">butter</use>".
std::string inner_xml(const fiche::Document& document, fiche::Node node);

/// An ingredient without its id: `250 g | name=butter prep=diced`; attributes in the order written, food left out
/// unless asked for.
std::string ingredient_line(const fiche::Document& document, fiche::Node node, bool with_food);

/// White space runs as one space, none at the ends.
std::string folded(std::string_view text);

/// Names of the drafts in tests/drafts, without ".txt", sorted.
std::vector<std::string> draft_names();

}  // namespace tamis::tests

#endif
