#include "core/format/draft_clean.h"

#include <algorithm>

#include "core/base/utf8.h"

namespace tamis::format::draft {
namespace {

base::Finding refusal(std::size_t at, std::string words) {
  base::Finding finding;
  finding.rule = "unreadable-draft";
  finding.where = {static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at)};
  finding.message = std::move(words);
  return finding;
}

/// Bytes above 7F that stand alone between ASCII letters or spaces: how Latin-1 and Windows-1252 write é and °.
bool looks_like_latin1(std::string_view text) {
  std::size_t alone = 0;
  std::size_t high = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c < 0x80) continue;
    ++high;
    const bool before = i == 0 || static_cast<unsigned char>(text[i - 1]) < 0x80;
    const bool behind = i + 1 == text.size() || static_cast<unsigned char>(text[i + 1]) < 0x80;
    alone += c >= 0xA0 && before && behind ? 1U : 0U;
  }
  return high > 0 && alone * 10 >= high * 9;
}

bool allowed_in_xml(char32_t c) {
  return c >= 0x20 ? c != 0xFFFE && c != 0xFFFF && c != 0x7F && (c < 0x80 || c > 0x9F) : c == U'\t' || c == U'\n' || c == U'\r';
}

void blank_controls(std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const auto c = base::next_scalar(text, at);
    if (c && !allowed_in_xml(*c)) std::fill(text.begin() + static_cast<std::ptrdiff_t>(start), text.begin() + static_cast<std::ptrdiff_t>(at), ' ');
  }
}

}  // namespace

base::Result<std::string> clean(const base::Source& typed) {
  std::string text = typed.bytes();
  if (text.size() > most_draft_bytes) {
    return refusal(0, "the draft is " + std::to_string(text.size()) + " bytes long; at most " + std::to_string(most_draft_bytes) + " are read");
  }
  if (text.compare(0, 2, "\xFF\xFE") == 0 || text.compare(0, 2, "\xFE\xFF") == 0) {
    return refusal(0, "the draft is in UTF-16; save it as UTF-8");
  }
  const std::size_t nul = text.find('\0');
  if (nul != std::string::npos) {
    const bool wide = nul < 4 && text.size() > 3 && text.size() % 2 == 0;
    return refusal(nul, wide ? "the draft looks like UTF-16; save it as UTF-8" : "a zero byte: this is no text file");
  }
  const std::size_t invalid = base::find_invalid_utf8(text);
  if (invalid != std::string::npos) {
    return refusal(invalid, looks_like_latin1(text) ? "the draft looks like Latin-1 (Windows-1252); save it as UTF-8"
                                                    : "bytes that are not UTF-8; save the draft as UTF-8");
  }
  if (text.compare(0, 3, "\xEF\xBB\xBF") == 0) text.replace(0, 3, "   ");
  blank_controls(text);
  return text;
}

}  // namespace tamis::format::draft
