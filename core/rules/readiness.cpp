#include "core/rules/readiness.h"

#include <utility>

#include "core/base/utf8.h"

namespace tamis::rules {

using fiche::At;
using fiche::El;
using fiche::Node;

Readiness readiness_of(const fiche::Document& document) {
  const Node root = document.root();
  if (root == fiche::none || document.el(root) != El::fiche) return Readiness::draft;
  const std::string_view state = base::trimmed(document.get(root, At::state));
  if (state == "released") return Readiness::released;
  return state == "tested" ? Readiness::tested : Readiness::draft;
}

bool is_shared(const Check& check) { return readiness_of(check.document) != Readiness::draft; }

base::Finding& say_to_share(Check& check, base::Span where, std::string message, std::string advice) {
  base::Finding& finding = check.say(where, std::move(message), std::move(advice));
  if (readiness_of(check.document) == Readiness::released) check.worsen(finding, base::Severity::warning);
  return finding;
}

base::Span place_of_fiche(const fiche::Document& document) {
  const Node title = document.child(document.root(), El::title);
  return title == fiche::none ? document.head_span(document.root()) : document.span(title);
}

}  // namespace tamis::rules
