#include "core/format/draft_write.h"

#include <algorithm>
#include <memory>

#include "core/fiche/document.h"
#include "core/format/format.h"

namespace tamis::format::draft {
namespace {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

void set(Document& document, Node node, At at, std::string_view value) {
  if (!value.empty()) document.set_attribute(node, at, value);
}

void set_all(Document& document, Node node, const Attributes& attributes) {
  for (const auto& [at, value] : attributes) document.set_attribute(node, at, value);
}

/// White space runs as one space, so that words stay apart where a mark begins or ends.
std::string one_spaced(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!space) {
      out += c;
    } else if (out.empty() || out.back() != ' ') {
      out += ' ';
    }
  }
  return out;
}

void add_text(Document& document, Node parent, std::string_view text) {
  const std::string folded = one_spaced(text);
  if (!folded.empty()) document.add_text(parent, folded);
}

/// Puts `where` of the typed text under `parent`, the marks in it as elements; marks are sorted, outer ones first.
class Prose {
 public:
  Prose(Document& document, const Desk& desk, const std::vector<Mark>& marks)
      : document_(document), desk_(desk), marks_(marks) {}

  void put(Node parent, base::Span where) {
    std::uint32_t at = where.begin;
    while (next_ < marks_.size() && marks_[next_].where.end <= where.end) {
      const Mark& mark = marks_[next_];
      ++next_;
      add_text(document_, parent, desk_.slice({at, mark.where.begin}));
      const Node made = document_.add_element(parent, mark.el);
      set_all(document_, made, mark.attributes);
      put(made, mark.said.empty() ? mark.where : mark.said);
      at = mark.where.end;
    }
    add_text(document_, parent, desk_.slice({at, where.end}));
  }

 private:
  Document& document_;
  const Desk& desk_;
  const std::vector<Mark>& marks_;
  std::size_t next_ = 0;
};

std::vector<Mark> in_order(std::vector<Mark> marks) {
  std::stable_sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) {
    return a.where.begin != b.where.begin ? a.where.begin < b.where.begin : a.where.end > b.where.end;
  });
  return marks;
}

void put_step(Document& document, Node component, const Desk& desk, const DraftStep& step) {
  const Node node = document.add_element(component, El::step);
  set(document, node, At::do_, step.actions);
  set(document, node, At::on, step.place);
  set(document, node, At::makes, step.makes);
  set(document, node, At::hands, step.hands);
  set(document, node, At::unattended, step.unattended);
  set(document, node, At::day, step.day);
  const std::vector<Mark> marks = in_order(step.marks);
  Prose(document, desk, marks).put(node, step.text);
}

void put_ingredient(Document& document, Node component, const DraftIngredient& ingredient) {
  const Node node = document.add_element(component, El::ingredient);
  set(document, node, At::id, ingredient.id);
  set(document, node, At::food, ingredient.food);
  set(document, node, At::name, ingredient.name);
  set(document, node, At::prep, ingredient.prep);
  set(document, node, ingredient.pack.empty() ? At::pieces : At::packs, ingredient.pieces);
  set(document, node, At::pack, ingredient.pack);
  set(document, node, At::size, ingredient.size);
  set(document, node, At::also, ingredient.also);
  set(document, node, At::fat, ingredient.fat);
  set(document, node, At::cocoa, ingredient.cocoa);
  set(document, node, At::purpose, ingredient.purpose);
  if (ingredient.optional) document.set_attribute(node, At::optional, "yes");
  if (!ingredient.amount.empty()) document.add_text(node, ingredient.amount);
  for (const DraftPart& part : ingredient.parts) {
    const Node made = document.add_element(node, El::part);
    set(document, made, At::id, part.id);
    if (!part.word.empty()) document.add_text(made, part.word);
  }
}

void put_yield(Document& document, Node parent, const DraftYield& yield) {
  const Node node = document.add_element(parent, El::yield);
  set_all(document, node, yield.attributes);
  if (!yield.mould.empty()) set_all(document, document.add_element(node, El::mould), yield.mould);
}

void put_line(Document& document, Node parent, El el, const Desk& desk, base::Span text) {
  document.add_text(document.add_element(parent, el), desk.folded(text));
}

void put_component(Document& document, Node root, const Desk& desk, const DraftComponent& component) {
  const Node node = document.add_element(root, El::component);
  set(document, node, At::id, component.id);
  set(document, node, At::title, component.title);
  set(document, node, At::day, component.day);
  for (const DraftYield& yield : component.yields) put_yield(document, node, yield);
  for (const DraftIngredient& ingredient : component.ingredients) put_ingredient(document, node, ingredient);
  for (const DraftStep& step : component.steps) put_step(document, node, desk, step);
  for (const base::Span note : component.notes) put_line(document, node, El::note, desk, note);
}

}  // namespace

std::string write_fiche(const Desk& desk, const Recipe& recipe) {
  Document document(std::make_shared<const base::Source>("draft", ""), fiche::Spelling::xml);
  const Node root = document.add_element(document.top(), El::fiche);
  document.set_root(root);
  document.set_attribute(root, "xmlns", fiche::fiche_namespace);
  const std::string id = slug(recipe.title, 6);
  set(document, root, At::id, id.empty() ? "fiche" : id);
  document.set_attribute(root, At::state, "draft");
  set(document, root, At::lang, recipe.language);
  set(document, root, At::units, recipe.units);
  document.add_text(document.add_element(root, El::title), recipe.title);
  for (const base::Span text : recipe.summary) put_line(document, root, El::summary, desk, text);
  for (const DraftYield& yield : recipe.yields) put_yield(document, root, yield);
  for (const DraftComponent& component : recipe.components) put_component(document, root, desk, component);
  for (const base::Span note : recipe.notes) put_line(document, root, El::note, desk, note);
  return lay_out(document, fiche::Spelling::xml);
}

}  // namespace tamis::format::draft
