#include "core/fiche/vocabulary.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace tamis::fiche {
namespace {

constexpr std::string_view element_names[] = {
    "",
#define TAMIS_ELEMENT(id, name, text, foreign, doc) name,
#include "core/fiche/vocabulary.inc"
};

constexpr std::string_view attribute_names[] = {
    "",
#define TAMIS_ATTRIBUTE_NAME(id, name) name,
#include "core/fiche/vocabulary.inc"
};

constexpr std::string_view value_names[] = {
#define TAMIS_VALUE(id, name, choices) name,
#include "core/fiche/vocabulary.inc"
};

constexpr std::string_view value_choices[] = {
#define TAMIS_VALUE(id, name, choices) choices,
#include "core/fiche/vocabulary.inc"
};

constexpr std::size_t element_count = std::size(element_names);

// Rows in the order of the elements; each element's share of a row table is found by its first and last row.
struct AttributeRow {
  El owner;
  AttributeRule rule;
};
constexpr AttributeRow attribute_rows[] = {
#define TAMIS_ATTRIBUTE(element, id, value, required, doc) {El::element, {At::id, Value::value, required, doc}},
#include "core/fiche/vocabulary.inc"
};

struct ChildRow {
  El owner;
  El child;
  bool required;
};
constexpr ChildRow child_rows[] = {
#define TAMIS_CHILD(element, child, required) {El::element, El::child, required},
#include "core/fiche/vocabulary.inc"
};

struct Tables {
  std::vector<AttributeRule> attributes;
  std::vector<El> children, required;
  std::vector<ElementRule> elements;
  std::vector<std::pair<std::string_view, El>> by_name;
  std::vector<std::vector<std::string_view>> choices;

  Tables() {
    attributes.reserve(std::size(attribute_rows));
    children.reserve(std::size(child_rows));
    required.reserve(std::size(child_rows));
    elements.push_back({});
#define TAMIS_ELEMENT(id, name, text, foreign, doc) add(El::id, name, text, foreign, doc);
#include "core/fiche/vocabulary.inc"
    for (const ElementRule& rule : elements) by_name.emplace_back(rule.name, rule.el);
    std::sort(by_name.begin(), by_name.end());
    for (const std::string_view words : value_choices) choices.push_back(split(words));
  }

  void add(El el, std::string_view name, bool text, bool foreign, std::string_view doc) {
    const auto first_attribute = attributes.size();
    const auto first_child = children.size();
    const auto first_required = required.size();
    for (const AttributeRow& row : attribute_rows) {
      if (row.owner == el) attributes.push_back(row.rule);
    }
    for (const ChildRow& row : child_rows) {
      if (row.owner != el) continue;
      children.push_back(row.child);
      if (row.required) required.push_back(row.child);
    }
    elements.push_back({el, name, text, foreign, doc, std::span(attributes).subspan(first_attribute),
                        std::span(children).subspan(first_child), std::span(required).subspan(first_required)});
  }

  static std::vector<std::string_view> split(std::string_view words) {
    std::vector<std::string_view> out;
    while (!words.empty()) {
      const std::size_t bar = std::min(words.find('|'), words.size());
      out.push_back(words.substr(0, bar));
      words.remove_prefix(std::min(bar + 1, words.size()));
    }
    return out;
  }
};

const Tables& tables() {
  static const Tables made;
  return made;
}

template <class Enum>
constexpr auto index(Enum value) {
  return static_cast<std::size_t>(value);
}

}  // namespace

const AttributeRule* ElementRule::attribute(At at) const {
  const auto found = std::find_if(attributes.begin(), attributes.end(),
                                  [at](const AttributeRule& rule) { return rule.at == at; });
  return found == attributes.end() ? nullptr : &*found;
}

bool ElementRule::may_hold(El child) const {
  return std::find(children.begin(), children.end(), child) != children.end();
}

const ElementRule& element_rule(El el) { return tables().elements[index(el)]; }

std::span<const ElementRule> element_rules() { return std::span(tables().elements).subspan(1); }

El element_named(std::string_view name) {
  const auto& names = tables().by_name;
  const auto found = std::lower_bound(names.begin(), names.end(), name,
                                      [](const auto& entry, std::string_view wanted) { return entry.first < wanted; });
  return found != names.end() && found->first == name ? found->second : El::unknown;
}

At attribute_named(std::string_view name) {
  // The generator writes the names sorted.
  const auto* const first = std::begin(attribute_names) + 1;
  const auto* const found = std::lower_bound(first, std::end(attribute_names), name);
  if (found == std::end(attribute_names) || *found != name) return At::unknown;
  return static_cast<At>(found - std::begin(attribute_names));
}

std::string_view name_of(El el) { return element_names[index(el)]; }
std::string_view name_of(At at) { return attribute_names[index(at)]; }
std::string_view name_of(Value value) { return value_names[index(value)]; }

std::span<const std::string_view> choices_of(Value value) { return tables().choices[index(value)]; }

static_assert(element_count < 256, "El is one byte");

}  // namespace tamis::fiche
