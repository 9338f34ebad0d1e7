#ifndef CORE_LUA_WALK_H
#define CORE_LUA_WALK_H

#include <bitset>
#include <string>
#include <vector>

#include "core/lua/values.h"

namespace tamis::lua {

/// Kinds of element that a call names from `first` on; all, where none is named. Raises for a name there is none of.
class WantedKinds {
 public:
  WantedKinds(lua_State* state, int first);
  [[nodiscard]] bool has(const fiche::Document& document, fiche::Node node) const;

 private:
  bool all_ = false;
  bool foreign_ = false;
  std::bitset<256> kinds_;
};

/// Elements (foreign ones too) at any depth below a node, itself left out, in document order.
std::vector<fiche::Node> elements_below(lua_State* state, const fiche::Document& document, fiche::Node top,
                                        const WantedKinds& wanted);
/// The node that comes after `node` in document order below `top`; none at the end.
fiche::Node next_below(const fiche::Document& document, fiche::Node node, fiche::Node top);

/// White space folded and trimmed.
std::string plain_words(std::string_view text);

int push_elements(lua_State* state, Opened& opened, const std::vector<fiche::Node>& nodes);

}  // namespace tamis::lua

#endif
