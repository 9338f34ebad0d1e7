#ifndef TESTS_AGAINST_PLACE_H
#define TESTS_AGAINST_PLACE_H

#include <string_view>
#include <vector>

#include "core/fiche/document.h"

namespace tamis::tests {

/// Elements of a document that a place names, in document order. A place is steps with spaces between, each one an
/// element somewhere inside the one before:
///   ingredient#water        by its id
///   step[when]              has the attribute
///   swap[up-to=1/2]         has it with that value
///   note{1.56 gal}          its text holds these words
std::vector<fiche::Node> at_place(const fiche::Document& document, std::string_view place);

}  // namespace tamis::tests

#endif
