// What is in an element: children, texts, prose as printed, what it links to (api.inc).
#include <lua.h>

#include <vector>

#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/lua/letters.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"
#include "core/lua/walk.h"

namespace tamis::lua {
namespace {

using fiche::Document;
using fiche::El;
using fiche::Node;
using fiche::NodeKind;

const Document& document_of(const NodeValue& value) { return value.opened->document(); }

bool is_element(const Document& document, Node node) {
  return document.kind(node) == NodeKind::element || document.kind(node) == NodeKind::foreign;
}

std::vector<fiche::Run> runs_in(lua_State* state, const NodeValue& value) {
  const Document& document = document_of(value);
  if (document.kind(value.node) != NodeKind::element) return {};
  std::vector<fiche::Run> runs = fiche::runs_of(document, value.node, fiche::is_mark(document, value.node));
  std::size_t parts = runs.size();
  for (const fiche::Run& run : runs) parts += run.parts.size();
  spend(state, parts * 4);
  return runs;
}

/// Adds the strings and marks of one run of prose.
void add_parts(lua_State* state, ListMaker& list, const NodeValue& value, const fiche::Run& run) {
  for (const fiche::Part& part : run.parts) {
    if (part.node == fiche::none)
      push(state, part.text);
    else if (is_element(document_of(value), part.node))
      push_element(state, *value.opened, part.node);
    else
      continue;
    list.add();
  }
}

/// Calls `found` with each run of text of its sentence: marks included, blocks left out.
template <class Found>
void for_each_text_of_prose(lua_State* state, const NodeValue& value, Found found) {
  const Document& document = document_of(value);
  if (document.kind(value.node) != NodeKind::element) return;
  std::size_t walked = 0;
  for (Node c = document.first_child(value.node); c != fiche::none; c = document.next(c)) {
    if (++walked % 64 == 0) spend(state, 64);
    if (document.kind(c) == NodeKind::text) {
      found(document.value(c));
    } else if (document.kind(c) == NodeKind::element && fiche::is_mark(document, c)) {
      for (Node n = next_below(document, c, c); n != fiche::none; n = next_below(document, n, c)) {
        if (++walked % 64 == 0) spend(state, 64);
        if (document.kind(n) == NodeKind::text) found(document.value(n));
      }
    }
  }
}

/// Calls `found` with each place in a text where the words stand, by their first letter, small or capital.
template <class Found>
void for_each_said(std::string_view text, std::string_view words, char capital, Found found) {
  const char small = words.front();
  std::size_t next_small = 0, next_capital = 0;
  for (std::size_t at = 0;;) {
    if (next_small <= at) next_small = text.find(small, at);
    if (next_capital <= at) next_capital = capital == small ? std::string_view::npos : text.find(capital, at);
    at = std::min(next_small, next_capital);
    if (at == std::string_view::npos) return;
    const std::size_t end = words_end_at(text, at, words);
    if (end != std::string_view::npos) found(at, end);
    at = end == std::string_view::npos ? at + 1 : end;
  }
}

}  // namespace

int element_prose(lua_State* state) {
  Words words;
  for_each_text_of_prose(state, element_at(state, 1), [&words](std::string_view text) { words.add(text); });
  spend(state, words.text().size() / 16);
  push(state, words.text());
  return 1;
}

int element_children(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  const WantedKinds wanted(state, 2);
  ListMaker list(state);
  if (document.kind(value.node) != NodeKind::element) return 1;
  std::size_t walked = 0;
  for (Node c = document.first_child(value.node); c != fiche::none; c = document.next(c)) {
    if (++walked % 64 == 0) spend(state, 64);
    if (!is_element(document, c) || !wanted.has(document, c)) continue;
    push_element(state, *value.opened, c);
    list.add();
  }
  return 1;
}

int element_child(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  const WantedKinds wanted(state, 2);
  Node found = fiche::none;
  if (document.kind(value.node) == NodeKind::element)
    for (Node c = document.first_child(value.node); c != fiche::none && found == fiche::none; c = document.next(c))
      if (is_element(document, c) && wanted.has(document, c)) found = c;
  push_element(state, *value.opened, found);
  return 1;
}

int element_all(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const WantedKinds wanted(state, 2);
  return push_elements(state, *value.opened, elements_below(state, document_of(value), value.node, wanted));
}

int element_select(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  return push_selected(state, *value.opened, value.node, 2);
}

int element_said(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  spend(state, string_at(state, 2).size() / 8);
  const std::string words = base::lower(base::trimmed(string_at(state, 2)));
  if (words.empty()) raise(state, "said() without any words");
  const char capital = upper(words).front();
  ListMaker list(state);
  for (Node n = next_below(document, value.node, value.node); n != fiche::none; n = next_below(document, n, value.node)) {
    if (document.kind(n) != NodeKind::text) continue;
    const std::string_view text = document.value(n);
    spend(state, (1 + text.size() / 16) * (1 + words.size() / 16));  // at the worst all of them are compared at every word
    for_each_said(text, words, capital, [&](std::size_t begin, std::size_t end) {
      push_place(state, {Type::place, false, true, value.opened, document.text_span(n, begin, end)});
      list.add();
    });
  }
  return 1;
}

int element_first_word(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  for (Node n = next_below(document, value.node, value.node); n != fiche::none; n = next_below(document, n, value.node)) {
    spend(state, 1);
    if (document.kind(n) != NodeKind::text) continue;
    const std::string_view text = document.value(n);
    std::size_t end = 0;
    const std::string_view word = next_word(text, end);
    if (word.empty()) continue;
    const auto begin = static_cast<std::size_t>(word.data() - text.data());
    push_place(state, {Type::place, false, true, value.opened, document.text_span(n, begin, begin + word.size())});
    return 1;
  }
  lua_pushnil(state);
  return 1;
}

int element_word_count(lua_State* state) {
  WordCounter words;
  std::size_t bytes = 0;
  for_each_text_of_prose(state, element_at(state, 1), [&](std::string_view text) {
    words.add(text);
    bytes += text.size();
  });
  spend(state, bytes / 16);
  lua_pushinteger(state, static_cast<lua_Integer>(words.count()));
  return 1;
}

int element_first_text(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  for (Node n = next_below(document, value.node, value.node); n != fiche::none; n = next_below(document, n, value.node)) {
    spend(state, 1);
    if (document.kind(n) != NodeKind::text || fiche::is_blank(document.value(n))) continue;
    push_text(state, *value.opened, n);
    return 1;
  }
  lua_pushnil(state);
  return 1;
}

int element_texts(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  ListMaker list(state);
  const Node top = value.node;
  for (Node n = next_below(document, top, top); n != fiche::none; n = next_below(document, n, top)) {
    if (document.kind(n) != NodeKind::text || fiche::is_blank(document.value(n))) continue;
    spend(state, 1);
    push_text(state, *value.opened, n);
    list.add();
  }
  return 1;
}

int element_runs(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  ListMaker list(state);
  for (const fiche::Run& run : runs_in(state, value)) {
    if (run.prose) {
      ListMaker parts(state);
      add_parts(state, parts, value, run);
      list.add();
      continue;
    }
    for (const fiche::Part& part : run.parts) {
      if (!is_element(document_of(value), part.node)) continue;
      push_element(state, *value.opened, part.node);
      list.add();
    }
  }
  return 1;
}

int element_sentence(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  ListMaker list(state);
  bool any = false;
  for (const fiche::Run& run : runs_in(state, value)) {
    if (!run.prose) continue;
    if (any) {
      push(state, " ");
      list.add();
    }
    any = true;
    add_parts(state, list, value, run);
  }
  return 1;
}

int element_blocks(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  ListMaker list(state);
  for (const fiche::Run& run : runs_in(state, value)) {
    if (run.prose) continue;
    for (const fiche::Part& part : run.parts) {
      if (!is_element(document_of(value), part.node)) continue;
      push_element(state, *value.opened, part.node);
      list.add();
    }
  }
  return 1;
}

int element_linked(lua_State* state) {
  constexpr std::size_t cost = 100'000;  // a file is read
  const NodeValue& value = element_at(state, 1);
  const std::string_view from = document_of(value).get(value.node, fiche::At::from);
  if (from.empty()) {
    lua_pushnil(state);
    return 1;
  }
  spend(state, cost);
  Session& session = value.opened->session();
  const std::size_t hash = from.find('#');
  const auto got = session.library.open(value.opened->path(), from.substr(0, hash));
  if (!got) {
    lua_pushnil(state);
    push(state, got.fault().message);
    return 2;
  }
  Opened& other = session.open(*got);
  if (hash == std::string_view::npos) {
    push_element(state, other, other.document().root());
    return 1;
  }
  const auto& ids = other.fiche().ids;
  const auto found = ids.find(from.substr(hash + 1));
  push_element(state, other, found == ids.end() ? fiche::none : found->second);
  if (found != ids.end()) return 1;
  push(state, "that file has no part of this name");
  return 2;
}

}  // namespace tamis::lua
