#include "core/fiche/vocabulary.h"

#include <catch2/catch.hpp>
#include <string>

using namespace tamis::fiche;

TEST_CASE("every element is found by its name and carries its own rule", "[vocabulary]") {
  CHECK(element_rules().size() > 50);
  for (const ElementRule& rule : element_rules()) {
    CAPTURE(rule.name);
    CHECK(element_named(rule.name) == rule.el);
    CHECK(name_of(rule.el) == rule.name);
    CHECK_FALSE(rule.doc.empty());
    for (const El child : rule.children) CHECK(child != El::unknown);
    for (const AttributeRule& attribute : rule.attributes) CHECK(rule.attribute(attribute.at) == &attribute);
  }
}

TEST_CASE("every attribute name is found, and its neighbours in spelling are not", "[vocabulary]") {
  for (const ElementRule& rule : element_rules()) {
    for (const AttributeRule& attribute : rule.attributes) {
      const std::string name(name_of(attribute.at));
      CAPTURE(name);
      CHECK(attribute_named(name) == attribute.at);
      CHECK(attribute_named(name + "x") == At::unknown);
    }
  }
  CHECK(attribute_named("") == At::unknown);
  CHECK(element_named("") == El::unknown);
  CHECK(element_named("Fiche") == El::unknown);
}

TEST_CASE("a figure that a conversion changes has a place for the author's own", "[vocabulary]") {
  for (const ElementRule& rule : element_rules()) {
    if (rule.el == El::kitchen || element_rule(El::kitchen).may_hold(rule.el)) continue;
    if (element_rule(El::food).may_hold(rule.el) && !element_rule(El::component).may_hold(rule.el)) continue;  // of the kitchen file too
    for (const AttributeRule& attribute : rule.attributes) {
      const bool figure = attribute.value == Value::amount || attribute.value == Value::temperature ||
                          attribute.value == Value::length || attribute.value == Value::share;
      const std::string name(name_of(attribute.at));
      const bool same_everywhere = name == "packs" || name == "steam";  // packs are counted, steam is a share
      if (!figure || same_everywhere || name.starts_with("was")) continue;
      CAPTURE(rule.name, name);
      CHECK(rule.attribute(attribute_named("was-" + name)) != nullptr);
    }
  }
}

TEST_CASE("choices come in the schema's order", "[vocabulary]") {
  const auto units = choices_of(Value::units);
  REQUIRE(units.size() == 3);
  CHECK(units[0] == "metric");
  CHECK(units[1] == "us");
  CHECK(units[2] == "imperial");
  CHECK(choices_of(Value::amount).empty());
}
