#include "core/cli/folded.h"

#include <algorithm>

#include "core/base/utf8.h"

namespace tamis::cli {

std::string folded(std::string_view text, std::size_t indent, std::size_t column) {
  std::string out;
  bool first = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    const std::string_view word = text.substr(0, end);
    const std::size_t width = base::terminal_width(word);
    if (!word.empty()) {
      if (!first && column + 1 + width > page_width) {
        (out += '\n').append(indent, ' ');
        column = indent;
      } else if (!first) {
        out += ' ';
        ++column;
      }
      out += word;
      column += width;
      first = false;
    }
    text.remove_prefix(end);
    if (text.starts_with("\n\n")) {
      (out += "\n\n").append(indent, ' ');
      column = indent;
      first = true;
      text.remove_prefix(1);
    }
    if (!text.empty()) text.remove_prefix(1);
  }
  return out;
}

std::string two_columns(const std::vector<Row>& rows) {
  std::size_t left = 0;
  for (const Row& row : rows) left = std::max(left, base::terminal_width(row.left));
  std::string out;
  for (const Row& row : rows) {
    (out += "  ") += row.left;
    out.append(left - base::terminal_width(row.left) + 2, ' ');
    (out += folded(row.right, left + 4)) += '\n';
  }
  return out;
}

std::string indented(std::string_view text, std::size_t indent) {
  std::string out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    if (end > 0) out.append(indent, ' ');
    (out += text.substr(0, end)) += '\n';
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

}  // namespace tamis::cli
