#include "core/rules/step_words.h"

#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/rules/step_name.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using fiche::NodeKind;

void add_words(const Document& document, Node n, std::string& out) {
  for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == NodeKind::text) {
      out += document.value(c);
    } else if (document.kind(c) == NodeKind::element && fiche::is_mark(document, c)) {
      if (document.el(c) == El::use && document.find(c, At::take) != fiche::none) {
        out += '\x01';
      } else {
        add_words(document, c, out);
      }
    }
  }
}

bool speaks_of_other_things(El el) {
  return el == El::why || el == El::done || el == El::rescue || el == El::short_ || el == El::learner || el == El::note ||
         el == El::photo;
}

}  // namespace

const std::string& own_words(const Check& check, Node step) {
  struct OwnWords {
    std::string text;
  };
  return check.once<OwnWords>(step, [&] {
    std::string out;
    add_words(check.document, step, out);
    return OwnWords{fiche::folded(out)};
  }).text;
}

const std::string& lower_words(const Check& check, Node step) {
  struct LowerWords {
    std::string text;
  };
  return check.once<LowerWords>(step, [&] { return LowerWords{base::lower(own_words(check, step))}; }).text;
}

const std::string& own_sentence(const Check& check, Node step) {
  struct OwnSentence {
    std::string text;
  };
  return check.once<OwnSentence>(step, [&] { return OwnSentence{own_sentence(check.document, step)}; }).text;
}

void for_each_mark(const Document& document, Node step, const std::function<void(Node)>& call) {
  for (Node c = document.first_child(step); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != NodeKind::element || speaks_of_other_things(document.el(c))) continue;
    call(c);
    for_each_mark(document, c, call);
  }
}

Cues cues_of(const Document& document, Node step) {
  Cues out;
  const auto has = [&](At at) { return document.find(step, at) != fiche::none; };
  out.time = has(At::hands) || has(At::unattended);
  out.hot_place = has(At::setting);
  out.reduced = has(At::reduce_by) || has(At::reduce_to);
  out.cue = document.child(step, El::done) != fiche::none;
  for_each_mark(document, step, [&](Node mark) {
    const El el = document.el(mark);
    out.cue |= el == El::until || el == El::gate || el == El::control;
    out.food_temp |= el == El::food_temp;
    out.hot_place |= el == El::oven_temp || el == El::medium_temp;
    out.time |= el == El::time;
    out.length |= el == El::length || (el == El::time && document.find(mark, At::depth) != fiche::none);
    out.reduced |= el == El::share;
    out.gate_on_use |= el == El::use && document.find(mark, At::at) != fiche::none;
  });
  return out;
}

}  // namespace tamis::rules
