#ifndef CORE_FICHE_FICHE_H
#define CORE_FICHE_FICHE_H

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/food/food.h"
#include "core/measure/amount.h"
#include "core/measure/read.h"

namespace tamis::fiche {

/// A measure as it stands in the document: read once, for all rules. Exactly one of amount, share, lengths is filled
/// where the text could be read; otherwise `fault` says why, its span in the source.
struct Statement {
  Node node = none;         ///< the element whose text or attribute it is
  Attr attribute = none;    ///< none: the element's own text
  At at = At::unknown;      ///< At::unknown: the element's own text
  Value value = Value::amount;
  std::string text;         ///< trimmed
  base::Span where;
  std::optional<measure::Amount> amount;
  std::optional<measure::Share> share;
  std::vector<measure::Amount> lengths;
  std::optional<base::Finding> fault;
};

struct Ingredient {
  Node node = none;
  Node component = none;      ///< the component it belongs to, also inside a choice or variant
  std::string_view id;        ///< "" when it has none
  std::string_view food_id;
  const food::Food* food = nullptr;  ///< of the kitchen or the table; null when unknown or not given
  std::string_view name;
  int amount = -1, also = -1, was = -1;  ///< indices into Fiche::statements; -1 when not there
};

struct Step {
  Node node = none;
  Node component = none;
  std::string_view id;
  std::vector<std::string_view> actions, makes;
  std::vector<Node> uses;     ///< use elements in it, in order
};

/// One fiche read into values over its document, which must outlive it. Nothing is lost: what is not here is in the
/// document.
struct Fiche {
  const Document* document = nullptr;
  const Kitchen* kitchen = nullptr;
  measure::Reading reading;         ///< the fiche's, or the kitchen's where it states none
  std::string_view id, title, language;
  std::vector<Node> components, yields;
  std::vector<Ingredient> ingredients;
  std::vector<Step> steps;
  std::vector<Statement> statements;             ///< every measure of the document, in document order
  std::multimap<std::string_view, Node> ids;     ///< every id, result and part name → the element that gives it
  std::vector<std::pair<Node, std::uint32_t>> by_node;  ///< (node, index into statements), sorted
  [[nodiscard]] const Statement* statement(Node n, At at = At::unknown) const;  ///< null when there is none
};

Fiche read_fiche(const Document& document, const Kitchen& kitchen);

}  // namespace tamis::fiche

#endif
