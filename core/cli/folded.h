#ifndef CORE_CLI_FOLDED_H
#define CORE_CLI_FOLDED_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tamis::cli {

/// The widest line that help and explanations are folded to, in terminal columns.
inline constexpr std::size_t page_width = 80;

/// The words of a text in lines no wider than the page, all but the first behind `indent` spaces; `column` is
/// where the first word stands. A blank line in the text stays one.
std::string folded(std::string_view text, std::size_t indent, std::size_t column);
inline std::string folded(std::string_view text, std::size_t indent) { return folded(text, indent, indent); }

/// Two columns, the right one folded: "  left   right".
struct Row {
  std::string left;
  std::string right;
};
std::string two_columns(const std::vector<Row>& rows);

/// Text with `indent` spaces before each of its lines that is not empty.
std::string indented(std::string_view text, std::size_t indent);

}  // namespace tamis::cli

#endif
