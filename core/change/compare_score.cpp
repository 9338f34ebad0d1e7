#include "core/change/compare_score.h"

#include "core/change/compare_words.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

/// The attribute that tells one such element from another.
At naming_attribute(El el) {
  switch (el) {
    case El::trial: return At::date;
    case El::measured: return At::what;
    case El::loss: return At::what;
    case El::mould: return At::shape;
    case El::equipment: return At::kind;
    case El::amount: return At::batch;
    case El::override: return At::ingredient;
    case El::swap: return At::food;
    case El::keep: return At::where;
    case El::control: return At::hazard;
    case El::photo: return At::href;
    case El::change: return At::revision;
    case El::author: return At::role;
    case El::rescue: return At::when;
    default: return At::unknown;
  }
}

/// Of these a parent has one, or the author means one.
bool stands_alone(El el) {
  return el == El::title || el == El::summary || el == El::allergens || el == El::why || el == El::done ||
         el == El::short_ || el == El::learner;
}

bool equal(const std::string& a, const std::string& b) { return !a.empty() && a == b; }

}  // namespace

Traits traits_of(const Side& side, Node node) {
  const fiche::Document& document = side.document();
  Traits out;
  out.el = document.el(node);
  const auto get = [&](At at) { return std::string(document.get(node, at)); };
  out.id = get(At::id);
  out.food = get(At::food);
  out.actions = get(At::do_);
  out.makes = get(At::makes);
  out.name = get(out.el == El::component || out.el == El::variant ? At::title : At::name);
  if (const At naming = naming_attribute(out.el); naming != At::unknown) out.key = get(naming);
  if (out.el == El::unknown) out.key = document.name(node);
  const bool all = out.el == El::component || out.el == El::variant || out.el == El::choice;
  out.text = all ? document.all_text(node) : side.sentence(node);
  out.words = comparable_words(out.text);
  out.title_words = comparable_words(out.name);
  return out;
}

double score_component(const Traits& a, const Traits& b) {
  const double id = equal(a.id, b.id) ? 2.5 : 0;
  return id + 2 * likeness(a.title_words, b.title_words) + 3 * likeness(a.words, b.words);
}

double score_ingredient(const Traits& a, const Traits& b, bool one_component) {
  const double id = equal(a.id, b.id) ? 3 : 0;
  const double food = equal(a.food, b.food) ? 2 : 0;
  const double name = equal(a.name, b.name) ? 2 : 0;
  const double amount = equal(a.text, b.text) ? 0.5 : 0;
  const double all = id + food + name + amount;
  const bool enough = one_component ? id + food + name >= 2 : all >= 4.5;
  return enough ? all + (one_component ? 2 : 0) : 0;
}

double score_step(const Traits& a, const Traits& b, bool one_component) {
  const double id = equal(a.id, b.id) ? 2 : 0;
  const double alike = likeness(a.words, b.words);
  const double makes = equal(a.makes, b.makes) ? 1.5 : 0;
  const double actions = equal(a.actions, b.actions) ? 1 : 0;
  const double all = id + 4 * alike + makes + actions;
  const bool enough = one_component ? all >= 2 : id > 0 || alike >= 0.6;
  return enough ? all + (one_component ? 2 : 0) : 0;
}

double score_block(const Traits& a, const Traits& b) {
  if (a.el != b.el) return 0;
  if (stands_alone(a.el)) return 10;
  if (a.el == El::trial && a.key != b.key) return 0;
  const double id = equal(a.id, b.id) ? 3 : 0;
  const double key = a.key == b.key ? (a.key.empty() ? 0.25 : 1) : 0;
  const bool wordless = a.words.empty() && b.words.empty();
  return id + key + (wordless ? 1 : 2 * likeness(a.words, b.words));
}

}  // namespace tamis::change
