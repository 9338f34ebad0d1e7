#include "core/rules/step_name.h"

#include "core/base/utf8.h"
#include "core/fiche/prose.h"

namespace tamis::rules {
namespace {

using fiche::Node;

std::string sentence_of(const fiche::Document& document, Node step) {
  std::string out;
  for (Node c = document.first_child(step); c != fiche::none; c = document.next(c)) {
    const bool text = document.kind(c) == fiche::NodeKind::text;
    const bool mark = document.kind(c) == fiche::NodeKind::element && fiche::is_mark(document, c);
    if (text || mark) out += document.all_text(c);
  }
  return fiche::folded(out);
}

/// The start of a text of at most 36 bytes, cut between words.
std::string start_of(const std::string& text) {
  constexpr std::size_t most = 36;
  if (text.size() <= most) return text;
  const std::size_t space = text.rfind(' ', most);
  std::size_t cut = space == std::string::npos || space == 0 ? most : space;
  while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0U) == 0x80U) --cut;  // not inside a letter
  return text.substr(0, cut) + " …";
}

}  // namespace

std::string step_name(const fiche::Document& document, Node step) {
  std::string words(base::trimmed(sentence_of(document, step)));
  if (words.ends_with('.')) words.pop_back();
  if (words.empty()) words = document.get(step, fiche::At::id);
  return words.empty() ? "this step" : "\"" + start_of(words) + "\"";
}

std::string own_sentence(const fiche::Document& document, Node step) {
  return base::lower(sentence_of(document, step));
}

}  // namespace tamis::rules
