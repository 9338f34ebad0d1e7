#include <catch2/catch.hpp>

#include "core/fiche/document.h"
#include "tests/fiche/read.h"

using namespace tamis;
using tests::document_of;
using tests::fiche_with;

TEST_CASE("an edited node keeps the place it came from", "[document]") {
  auto document = document_of(fiche_with("<ingredient food=\"salt\">5 g</ingredient>"));
  const fiche::Node component = document->child(document->root(), fiche::El::component);
  const fiche::Node salt = document->child(component, fiche::El::ingredient);
  const base::Span before = document->span(document->first_child(salt));
  document->set_text(salt, "1 tsp");
  document->set_attribute(salt, fiche::At::was, "5 g");
  CHECK(document->direct_text(salt) == "1 tsp");
  CHECK(document->get(salt, fiche::At::was) == "5 g");
  CHECK(document->span(document->first_child(salt)) == before);
  CHECK(document->source().slice(before) == "5 g");
  CHECK(document->changed_inside(document->root()));
  CHECK_FALSE(document->changed_inside(document->child(document->root(), fiche::El::title)));
}

TEST_CASE("a copy is its own document", "[document]") {
  auto document = document_of(fiche_with("<ingredient food=\"salt\">5 g</ingredient>"));
  fiche::Document copy = document->clone();
  const fiche::Node salt = copy.child(copy.child(copy.root(), fiche::El::component), fiche::El::ingredient);
  copy.set_text(salt, "a very long amount that is kept beside the source");
  copy.set_attribute(salt, fiche::At::food, "sugar-white");
  CHECK(document->direct_text(salt) == "5 g");
  CHECK(document->get(salt, fiche::At::food) == "salt");
}

TEST_CASE("removing the first, a middle and the last child keeps the rest in order", "[document]") {
  for (int gone = 0; gone < 3; ++gone) {
    auto document = document_of(fiche_with("<note>0</note><note>1</note><note>2</note>"));
    const fiche::Node component = document->child(document->root(), fiche::El::component);
    fiche::Node n = document->first_child(component);
    for (int i = 0; i < gone; ++i) n = document->next(n);
    document->remove(n);
    std::string rest;
    for (fiche::Node c = document->first_child(component); c != fiche::none; c = document->next(c)) {
      rest += document->all_text(c);
    }
    CAPTURE(gone);
    CHECK(rest == std::string("012").erase(static_cast<std::size_t>(gone), 1));
    document->add_element(component, fiche::El::note);
    CHECK(document->parent(document->first_child(component)) == component);
  }
}

TEST_CASE("removing an attribute and adding another keeps the chain whole", "[document]") {
  auto document = document_of(fiche_with("<ingredient id=\"a\" food=\"salt\" name=\"salt\">5 g</ingredient>"));
  const fiche::Node salt =
      document->child(document->child(document->root(), fiche::El::component), fiche::El::ingredient);
  document->remove_attribute(salt, fiche::At::name);
  document->set_attribute(salt, fiche::At::was, "x");
  document->remove_attribute(salt, fiche::At::id);
  std::string names;
  for (fiche::Attr a = document->first_attribute(salt); a != fiche::none; a = document->next_attribute(a)) {
    names += std::string(document->attribute_name(a)) + " ";
  }
  CHECK(names == "food was ");
}
