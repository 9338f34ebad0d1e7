#ifndef CORE_LUA_SELECTING_H
#define CORE_LUA_SELECTING_H

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/fiche/document.h"

namespace tamis::lua {

/// XPath 1.0 (by pugixml) over a document's elements, attributes and text. A copy of the tree is made once; the document must
/// not change under it.
class Selecting {
 public:
  explicit Selecting(const fiche::Document& document);
  ~Selecting();
  Selecting(const Selecting&) = delete;
  Selecting& operator=(const Selecting&) = delete;

  /// What the expression may cost at the worst, in steps; refuses, with no span, one that could cost more than its length
  /// tells: predicates in predicates, axes that go sideways, paths from the root in a predicate.
  [[nodiscard]] base::Result<std::size_t> cost(std::string_view expression) const;

  /// The elements it names, seen from `from`, in document order: for an attribute or a text the element that has it. Refuses
  /// what is no XPath, and what gives a number, a string or a truth.
  [[nodiscard]] base::Result<std::vector<fiche::Node>> select(const std::string& expression, fiche::Node from) const;

 private:
  struct Tree;
  std::unique_ptr<Tree> tree_;
};

}  // namespace tamis::lua

#endif
