#include "core/change/scale_sentence.h"

#include <algorithm>
#include <array>
#include <string>

namespace tamis::change {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Fiche;
using fiche::Node;
using fiche::Statement;
using measure::Amount;

namespace {

bool is_one_portion(const Fiche& fiche, const Amount& amount) {
  for (const Statement& one : fiche.statements) {
    if (one.at != At::each || fiche.document->el(one.node) != El::yield) continue;
    if (!one.amount || !one.amount->has_figure()) continue;
    if (one.amount->kind == amount.kind && one.amount->middle_base() == amount.middle_base()) return true;
  }
  return false;
}

Node step_around(const Document& document, Node node) {
  while (node != fiche::none && document.el(node) != El::step) node = document.parent(node);
  return node;
}

bool step_portions(const Fiche& fiche, Node node) {
  const Node step = step_around(*fiche.document, node);
  for (const fiche::Step& one : fiche.steps) {
    if (one.node != step) continue;
    return std::any_of(one.actions.begin(), one.actions.end(), [](std::string_view action) {
      constexpr std::array words = {"serve", "portion", "plate", "scoop"};
      return std::find(words.begin(), words.end(), action) != words.end();
    });
  }
  return false;
}

void gather(const Document& document, Node above, Node wanted, bool& passed, std::string& before, std::string& after) {
  for (Node c = document.first_child(above); c != fiche::none; c = document.next(c)) {
    if (c == wanted) {
      passed = true;
    } else if (document.kind(c) == fiche::NodeKind::text) {
      for (const char letter : document.value(c)) {
        (passed ? after : before) += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter;
      }
    } else if (document.kind(c) == fiche::NodeKind::element) {
      gather(document, c, wanted, passed, before, after);
    }
  }
}

bool sentence_says_each(const Document& document, Node node) {
  constexpr std::array words = {"each", "every", "apiece", "per", "chaque", "chacun", "chacune", "par"};
  const Node step = step_around(document, node);
  if (step == fiche::none) return false;
  std::string before, after;
  bool passed = false;
  gather(document, step, node, passed, before, after);
  const std::size_t begin = before.find_last_of(".;:!?");
  const std::string sentence =
      (begin == std::string::npos ? before : before.substr(begin + 1)) + after.substr(0, after.find_first_of(".;:!?"));
  for (std::size_t at = 0; at < sentence.size();) {
    const std::size_t end = std::min(sentence.find_first_of(" ,()\n\t'", at), sentence.size());
    const std::string_view word = std::string_view(sentence).substr(at, end - at);
    if (std::find(words.begin(), words.end(), word) != words.end()) return true;
    at = end + 1;
  }
  return false;
}

}  // namespace

bool stands_in_sentence(const Document& document, Node node) {
  bool in_step = false;
  for (Node n = document.parent(node); n != fiche::none; n = document.parent(n)) {
    switch (document.el(n)) {
      case El::gate:
      case El::control:
      case El::why:
      case El::rescue:
      case El::note:
      case El::tool: return false;
      case El::step: in_step = true; break;
      default: break;
    }
  }
  return in_step;
}

bool is_for_each(const Fiche& fiche, Node node, const Amount& amount) {
  const Document& document = *fiche.document;
  if (document.el(node) == El::loss || document.el(node) == El::step) return false;
  return is_one_portion(fiche, amount) || step_portions(fiche, node) || sentence_says_each(document, node);
}

}  // namespace tamis::change
