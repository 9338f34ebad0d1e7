#ifndef CORE_DRAW_TEXT_WIDTH_H
#define CORE_DRAW_TEXT_WIDTH_H

#include <string>
#include <string_view>
#include <vector>

namespace tamis::draw {

/// About how wide a text runs in a plain sans-serif, in units of its size; a little too much rather than too little,
/// for which face a reader has is not known.
double text_width(std::string_view text);

/// The text in lines no wider than that, broken between words; a word that is wider stands alone.
std::vector<std::string> broken(std::string_view text, double width);

/// Text as it must stand in XML. Control characters that XML cannot hold become U+FFFD.
std::string xml_text(std::string_view text);

}  // namespace tamis::draw

#endif
