#include "core/change/scale_figures.h"

#include <array>

#include "core/change/kept.h"

namespace tamis::change {

using base::Severity;
using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Kind;

namespace {

constexpr std::array ingredient_places = {At::also, At::pieces, At::purchase, At::packs, At::loose, At::to};

}  // namespace

void Figures::run() {
  for (const fiche::Ingredient& one : fiche_.ingredients) ingredient(one);
  for (const Node component : fiche_.components) taken_component(component);
  for (const Statement& statement : fiche_.statements) other(statement);
  for (const Node yield : fiche_.yields) makes(yield);
}

Column Figures::column_of(const fiche::Ingredient& one) const {
  if (work_.base != fiche::none) {
    const std::string_view batch = document_.get(work_.base, At::id);
    for (const Node column : children_of(document_, one.node, El::amount)) {
      if (document_.get(column, At::batch) == batch) return {one.node, column, work_.from_base};
    }
  }
  return {one.node, one.node, work_.factor};
}

void Figures::ingredient(const fiche::Ingredient& one) {
  // What is given for each of something, or of another line, follows by itself.
  if (document_.find(one.node, At::per) != fiche::none || document_.find(one.node, At::for_each) != fiche::none) return;
  const Column column = column_of(one);
  if (column.from != one.node) copy_packs(column);
  put(column, At::unknown);
  for (const At at : ingredient_places) put(column, at);
  for (const Node swap : children_of(document_, one.node, El::swap)) {
    for (const At at : {At::amount, At::packs}) put({swap, swap, work_.factor}, at);
  }
}

void Figures::copy_packs(const Column& column) {
  for (const At at : {At::also, At::pieces, At::purchase, At::packs, At::pack, At::loose, At::to}) {
    if (document_.find(column.from, at) == fiche::none) {
      document_.remove_attribute(column.ingredient, at);
    } else if (at == At::pack) {
      document_.set_attribute(column.ingredient, at, std::string(document_.get(column.from, at)));
    }
  }
}

void Figures::put(const Column& column, At at) {
  const Statement* said = fiche_.statement(column.from, at);
  if (said == nullptr) return;
  if (!said->amount || !said->amount->has_figure()) {
    if (said->fault) {
      work_.say("not-scaled", Severity::warning, said->where,
                "\"" + said->text + "\" was left as it is: " + said->fault->message, said->fault->advice);
    }
    if (column.from != column.ingredient) write(column.ingredient, at, said->text);
    return;
  }
  if (column.factor == 1) {
    if (column.from != column.ingredient) write(column.ingredient, at, said->text);
    return;
  }
  const Subject subject = subject_of(fiche_, column.from, at);
  if (at == At::packs) return packs(column, *said);
  if (said->amount->kind == Kind::count) return count(column, *said, subject);
  write(column.ingredient, at, measured(*said, *said->amount, column.factor, subject));
}

void Figures::write(Node node, At at, const std::string& text) {
  if (at != At::unknown) return document_.set_attribute(node, at, text);
  if (fiche_.statement(node) != nullptr) return put_text(document_, node, text);
  document_.add_text(node, text, document_.first_child(node));
}

void scale_figures(ScaleWork& work) { Figures(work).run(); }

}  // namespace tamis::change
