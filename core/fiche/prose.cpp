#include "core/fiche/prose.h"

#include <algorithm>
#include <array>

namespace tamis::fiche {
namespace {

/// What may stand in a summary, which is prose and nothing else.
bool in_marks(El el) {
  static const auto table = [] {
    std::array<bool, 256> made{};
    for (const El mark : element_rule(El::summary).children) made[static_cast<std::size_t>(mark)] = true;
    return made;
  }();
  return table[static_cast<std::size_t>(el)];
}

bool is_blank_byte(char c) { return c == ' ' || c == '\t' || c == '\n'; }

bool has_words(const Document& document, Node element) {
  for (Node c = document.first_child(element); c != none; c = document.next(c)) {
    if (document.kind(c) == NodeKind::text && !fiche::is_blank(document.value(c))) return true;
  }
  return false;
}

/// Whether elements we do not know are marks in this parent.
bool unknown_are_marks(const Document& document, Node parent) {
  if (document.el(parent) != El::unknown) return element_rule(document.el(parent)).text;
  return has_words(document, parent);
}

bool is_mark(const Document& document, Node element, bool unknown_as_mark) {
  const El el = document.el(element);
  const Node parent = document.parent(element);
  if (parent == document.top()) return false;
  if (el == El::unknown) return unknown_as_mark;
  if (el == El::amount && document.el(parent) == El::ingredient) return false;
  return in_marks(el);
}

/// Texts that follow each other are one text.
void add(const Document& document, Node child, std::vector<Part>& parts) {
  if (document.kind(child) != NodeKind::text) {
    parts.push_back({child, {}});
  } else if (!parts.empty() && parts.back().node == none) {
    parts.back().text += document.value(child);
  } else {
    parts.push_back({none, std::string(document.value(child))});
  }
}

void fold(std::vector<Part>& parts) {
  for (Part& part : parts) part.text = folded(part.text);
  std::erase_if(parts, [](const Part& part) { return part.node == none && part.text.empty(); });
}

bool is_prose(const Document& document, const std::vector<Part>& parts) {
  return std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
    return part.node == none ? !fiche::is_blank(part.text) : document.kind(part.node) == NodeKind::element;
  });
}

/// What stands between two blocks.
void close_run(const Document& document, std::vector<Part>& parts, std::vector<Run>& runs) {
  fold(parts);
  const bool prose = is_prose(document, parts);
  if (prose) {
    if (parts.front().text.starts_with(' ')) parts.front().text.erase(0, 1);
    if (parts.back().text.ends_with(' ')) parts.back().text.pop_back();
    std::erase_if(parts, [](const Part& part) { return part.node == none && part.text.empty(); });
  } else {
    std::erase_if(parts, [](const Part& part) { return part.node == none; });
  }
  if (!parts.empty()) runs.push_back({prose, std::move(parts)});
  parts.clear();
}

}  // namespace

bool is_blank(std::string_view text) { return std::all_of(text.begin(), text.end(), is_blank_byte); }

std::string folded(std::string_view text) {
  std::string out(text.size(), ' ');
  std::size_t end = 0;
  bool blank = false;
  for (const char c : text) {
    const bool again = blank;
    blank = is_blank_byte(c);
    if (!blank || !again) out[end++] = blank ? ' ' : c;
  }
  out.resize(end);
  return out;
}

bool is_mark(const Document& document, Node element) {
  const Node parent = document.parent(element);
  return is_mark(document, element, document.el(element) == El::unknown && unknown_are_marks(document, parent));
}

bool holds_prose(El el) { return el == El::unknown || element_rule(el).may_hold(El::food_temp); }

std::vector<Run> runs_of(const Document& document, Node element, bool in_line) {
  std::vector<Run> runs;
  std::vector<Part> parts;
  const bool unknown_as_mark = !in_line && unknown_are_marks(document, element);
  for (Node c = document.first_child(element); c != none; c = document.next(c)) {
    const bool block = !in_line && document.kind(c) == NodeKind::element && !is_mark(document, c, unknown_as_mark);
    if (!block) {
      add(document, c, parts);
      continue;
    }
    close_run(document, parts, runs);
    runs.push_back({false, {{c, {}}}});
  }
  if (!in_line) {
    close_run(document, parts, runs);
  } else if (fold(parts); !parts.empty()) {
    runs.push_back({true, std::move(parts)});
  }
  return runs;
}

}  // namespace tamis::fiche
