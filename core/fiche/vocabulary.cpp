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

/// Names to numbers, made at compile time: every name of every file read is looked up here. Open addressing, at
/// most half full.
class NameIndex {
 public:
  template <std::size_t count>
  explicit constexpr NameIndex(const std::string_view (&names)[count]) {
    static_assert(count <= size / 2 && count <= 256);
    for (std::size_t i = 1; i < count; ++i) {
      std::size_t slot = hash(names[i]);
      while (slots_[slot] != 0) slot = (slot + 1) % size;
      slots_[slot] = static_cast<unsigned char>(i);
    }
  }
  /// 0 when there is none of that name.
  template <std::size_t count>
  [[nodiscard]] constexpr std::size_t find(const std::string_view (&names)[count], std::string_view name) const {
    if (name.empty()) return 0;
    for (std::size_t slot = hash(name); slots_[slot] != 0; slot = (slot + 1) % size) {
      if (names[slots_[slot]] == name) return slots_[slot];
    }
    return 0;
  }

 private:
  static constexpr std::size_t size = 512;
  static constexpr std::size_t hash(std::string_view name) {
    const auto byte = [&](std::size_t i) { return static_cast<std::size_t>(static_cast<unsigned char>(name[i])); };
    return (name.size() * 131 + byte(0) * 31 + byte(name.size() / 2) * 7 + byte(name.size() - 1) * 67) % size;
  }
  std::array<unsigned char, size> slots_{};
};
constexpr NameIndex element_index(element_names);
constexpr NameIndex attribute_index(attribute_names);

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
  std::vector<std::vector<std::string_view>> choices;

  Tables() {
    attributes.reserve(std::size(attribute_rows));
    children.reserve(std::size(child_rows));
    required.reserve(std::size(child_rows));
    elements.push_back({});
#define TAMIS_ELEMENT(id, name, text, foreign, doc) add(El::id, name, text, foreign, doc);
#include "core/fiche/vocabulary.inc"
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

El element_named(std::string_view name) { return static_cast<El>(element_index.find(element_names, name)); }
At attribute_named(std::string_view name) { return static_cast<At>(attribute_index.find(attribute_names, name)); }

std::string_view name_of(El el) { return element_names[index(el)]; }
std::string_view name_of(At at) { return attribute_names[index(at)]; }
std::string_view name_of(Value value) { return value_names[index(value)]; }

std::span<const std::string_view> choices_of(Value value) { return tables().choices[index(value)]; }

static_assert(element_count < 256, "El is one byte");

}  // namespace tamis::fiche
