#include "core/rules/sentence.h"

#include "core/base/utf8.h"

namespace tamis::rules {

using fiche::Node;

std::string words_before(const fiche::Document& document, Node mark) {
  std::string out;
  for (Node c = document.first_child(document.parent(mark)); c != fiche::none && c != mark; c = document.next(c)) {
    out += document.all_text(c);
  }
  out = base::lower(out);
  const std::size_t stop = out.find_last_of(".;");
  // "180. " ends a sentence, "1.5" does not.
  if (stop != std::string::npos && (stop + 1 == out.size() || out[stop + 1] == ' ' || out[stop + 1] == '\n')) {
    out.erase(0, stop + 1);
  }
  return out;
}

Node step_of(const fiche::Document& document, Node n) {
  while (n != fiche::none && n != document.top() && document.el(n) != fiche::El::step) n = document.parent(n);
  return n == document.top() ? fiche::none : n;
}

std::string words_around(const fiche::Document& document, Node n) {
  const Node step = step_of(document, n);
  return base::lower(document.all_text(step == fiche::none ? document.parent(n) : step));
}

bool says_oven(std::string_view text) {
  return says(text, {"oven", "bake", "baking", "roast", "preheat", "four ", "enfourn", "préchauff", "ofen", "backofen",
                     "backen", "horno", "hornear"});
}

bool says_core(std::string_view text) {
  return says(text, {"core", "internal", "inside", "centre", "center", "probe", "à cœur", "à coeur", "kerntemperatur",
                     "im kern", "interior", "corazón"});
}

}  // namespace tamis::rules
