#ifndef CORE_CHANGE_KEPT_H
#define CORE_CHANGE_KEPT_H

#include <string_view>

#include "core/fiche/document.h"

namespace tamis::change {

// How the author's own words stay in a document beside what a conversion wrote: was for an element's text, was-X for
// its attribute X. core/change/convert.h tells the rules of it.

/// The attribute that keeps what `at` said (At::unknown: the element's text); At::unknown where the schema gives the
/// element none, and the figure is then no conversion's business.
fiche::At kept_name(fiche::El el, fiche::At at);

/// The attribute that `kept` keeps; At::unknown for was itself and for what keeps nothing.
fiche::At author_name(fiche::At kept);

/// Puts the figure in place of the element's text. White space around it, and child elements, stay.
void put_text(fiche::Document& document, fiche::Node node, std::string_view text);

/// Writes a figure over the author's text or attribute (At::unknown: text), and keeps the author's.
void write_over(fiche::Document& document, fiche::Node node, fiche::At at, std::string_view text);

/// Takes an attribute out and keeps what it said, in its place in the tag.
void set_aside(fiche::Document& document, fiche::Node node, fiche::At at);

/// The author's attribute again, in its place in the tag; nothing happens where none is kept.
void put_back(fiche::Document& document, fiche::Node node, fiche::At at);

}  // namespace tamis::change

#endif
