#ifndef CORE_FICHE_VOCABULARY_H
#define CORE_FICHE_VOCABULARY_H

#include <span>
#include <string_view>

namespace tamis::fiche {

/// The namespace of fiche and kitchen file.
inline constexpr std::string_view fiche_namespace = "urn:tamis:fiche:1";

/// Elements, attributes and kinds of value, made from schemas/tamis.rnc.
enum class El : unsigned char {
  unknown,
#define TAMIS_ELEMENT(id, name, text, foreign, doc) id,
#include "core/fiche/vocabulary.inc"
};
enum class At : unsigned char {
  unknown,
#define TAMIS_ATTRIBUTE_NAME(id, name) id,
#include "core/fiche/vocabulary.inc"
};
enum class Value : unsigned char {
#define TAMIS_VALUE(id, name, choices) id,
#include "core/fiche/vocabulary.inc"
};

struct AttributeRule {
  At at;
  Value value;
  bool required;
  std::string_view doc;
};

struct ElementRule {
  El el;
  std::string_view name;
  bool text;     ///< may hold text
  bool foreign;  ///< may hold a house's own elements
  std::string_view doc;
  std::span<const AttributeRule> attributes;
  std::span<const El> children;           ///< those that may stand in it
  std::span<const El> required_children;  ///< those that must

  [[nodiscard]] const AttributeRule* attribute(At at) const;  ///< null when it has none of that name
  [[nodiscard]] bool may_hold(El child) const;
};

/// Not for El::unknown.
const ElementRule& element_rule(El el);
std::span<const ElementRule> element_rules();

El element_named(std::string_view name);    ///< El::unknown when there is none
At attribute_named(std::string_view name);  ///< At::unknown when there is none
std::string_view name_of(El el);
std::string_view name_of(At at);
std::string_view name_of(Value value);
/// The words a value of that kind may be, in the schema's order; empty when it is not a choice of words.
std::span<const std::string_view> choices_of(Value value);

}  // namespace tamis::fiche

#endif
