#ifndef CORE_LUA_WALK_H
#define CORE_LUA_WALK_H

#include <bitset>
#include <string>
#include <string_view>
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

/// Words as they come, white space folded, that of both ends left out (core/fiche/prose.h: only space, tab, line feed).
class Words {
 public:
  void add(std::string_view text);
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
  bool space_ = false;  // one is due before the next word
};
std::string plain_words(std::string_view text);
/// All text below a node, marks and blocks included.
void add_words_below(lua_State* state, const fiche::Document& document, fiche::Node top, Words& words);

/// The elements that the XPath at `index` names, as a list on the stack; what it may cost is spent first.
int push_selected(lua_State* state, Opened& opened, fiche::Node from, int index);

int push_elements(lua_State* state, Opened& opened, const std::vector<fiche::Node>& nodes);

}  // namespace tamis::lua

#endif
