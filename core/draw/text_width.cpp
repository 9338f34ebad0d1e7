#include "core/draw/text_width.h"

#include <algorithm>

namespace tamis::draw {
namespace {

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

double width_of(char c) {
  if (std::string_view("ijl.,:;'|!()[]").find(c) != std::string_view::npos) return 0.34;
  if (std::string_view("ftr -\"").find(c) != std::string_view::npos) return 0.40;
  if (std::string_view("mwMW%@").find(c) != std::string_view::npos) return 0.96;
  return c >= 'A' && c <= 'Z' ? 0.70 : 0.62;
}

}  // namespace

double text_width(std::string_view text) {
  double width = 0;
  for (const char c : text) width += continues(c) ? 0 : width_of(c);
  return width;
}

std::vector<std::string> broken(std::string_view text, double width) {
  std::vector<std::string> lines(1);
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    std::string& line = lines.back();
    if (line.empty()) {
      line = word;
    } else if (text_width(line) + text_width(" ") + text_width(word) <= width) {
      line += ' ';
      line += word;
    } else {
      lines.emplace_back(word);
    }
  }
  return lines;
}

std::string xml_text(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '&') out += "&amp;";
    else if (c == '<') out += "&lt;";
    else if (c == '>') out += "&gt;";
    else if (c == '"') out += "&quot;";
    else if (byte < 0x20 && c != '\t' && c != '\n') out += "\xEF\xBF\xBD";
    else out += c;
  }
  return out;
}

}  // namespace tamis::draw
