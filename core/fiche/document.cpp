#include "core/fiche/document.h"

#include <algorithm>
#include <cassert>
#include <functional>

#include "core/base/utf8.h"

namespace tamis::fiche {
namespace {

constexpr std::uint32_t own_mark = 0x80000000U;

/// How many source bytes the first `wanted` bytes of decoded text take. Walks raw text and what it decodes to side
/// by side: an XML reference or JSON escape stands for the bytes it decodes to, CRLF for LF, all else for itself.
std::size_t raw_length(std::string_view raw, std::string_view decoded, std::size_t wanted, Spelling spelling) {
  std::size_t at = 0;
  std::size_t done = 0;
  while (done < wanted && at < raw.size() && done < decoded.size()) {
    const bool escape = spelling == Spelling::xml ? raw[at] == '&' : raw[at] == '\\';
    if (spelling == Spelling::xml && raw.substr(at, 9) == "<![CDATA[") {
      at += 9;
      continue;
    }
    if (spelling == Spelling::xml && raw.substr(at, 3) == "]]>") {
      at += 3;
      continue;
    }
    if (!escape) {
      at += raw[at] == '\r' && at + 1 < raw.size() && raw[at + 1] == '\n' ? 2U : 1U;
      ++done;
      continue;
    }
    std::size_t next = done;
    (void)base::next_scalar(decoded, next);
    const std::size_t bytes = next - done;
    if (spelling == Spelling::xml) {
      at = std::min(raw.find(';', at), raw.size() - 1) + 1;
    } else if (at + 1 < raw.size() && raw[at + 1] == 'u') {
      at += bytes == 4 ? 12 : 6;  // above U+FFFF an escape is a pair
    } else {
      at += 2;
    }
    done += bytes;
  }
  return std::min(at, raw.size());
}

base::Span inside(base::Span raw_span, std::string_view raw, std::string_view decoded, std::size_t begin,
                  std::size_t end, Spelling spelling) {
  const auto offset = [&](std::size_t wanted) {
    return raw_span.begin + static_cast<std::uint32_t>(raw_length(raw, decoded, wanted, spelling));
  };
  return {offset(begin), offset(end)};
}

}  // namespace

Document::Document(std::shared_ptr<const base::Source> source, Spelling spelling)
    : source_(std::move(source)), spelling_(spelling) {
  NodeData top{};
  top.kind = NodeKind::element;
  top.parent = top.first_child = top.last_child = top.next = top.previous = none;
  top.first_attribute = top.last_attribute = none;
  top.span = {0, static_cast<std::uint32_t>(source_->bytes().size())};
  nodes_.push_back(top);
}

Document Document::clone() const {
  Document copy(source_, spelling_);
  copy.root_ = root_;
  copy.nodes_ = nodes_;
  copy.attributes_ = attributes_;
  copy.own_.reserve(own_.size());
  for (const auto& text : own_) copy.own_.push_back(std::make_unique<std::string>(*text));
  return copy;
}

// ---------------------------------------------------------------- strings

Document::Kept Document::keep(std::string_view text) {
  const std::string& bytes = source_->bytes();
  const auto size = static_cast<std::uint32_t>(text.size());
  if (text.empty()) return {0, 0};
  const std::less_equal<const char*> before;
  if (before(bytes.data(), text.data()) && before(text.data() + text.size(), bytes.data() + bytes.size())) {
    return {static_cast<std::uint32_t>(text.data() - bytes.data()), size};
  }
  own_.push_back(std::make_unique<std::string>(text));
  return {static_cast<std::uint32_t>(own_.size() - 1) | own_mark, size};
}

std::string_view Document::text_of(Kept kept) const {
  if (kept.size == 0) return {};
  if ((kept.at & own_mark) != 0) return *own_[kept.at & ~own_mark];
  return std::string_view(source_->bytes()).substr(kept.at, kept.size);
}

// ---------------------------------------------------------------- reading

std::string_view Document::name(Node n) const { return text_of(nodes_[n].name); }
std::string_view Document::value(Node n) const { return text_of(nodes_[n].value); }
std::string_view Document::attribute_name(Attr a) const { return text_of(attributes_[a].name); }
std::string_view Document::attribute_value(Attr a) const { return text_of(attributes_[a].value); }

Attr Document::find(Node n, At at) const {
  for (Attr a = nodes_[n].first_attribute; a != none; a = attributes_[a].next) {
    if (attributes_[a].at == at) return a;
  }
  return none;
}

std::string_view Document::get(Node n, At at) const {
  const Attr a = find(n, at);
  return a == none ? std::string_view() : attribute_value(a);
}

Node Document::child(Node n, El wanted) const {
  for (Node c = first_child(n); c != none; c = next(c)) {
    if (kind(c) == NodeKind::element && el(c) == wanted) return c;
  }
  return none;
}

std::string Document::direct_text(Node n) const {
  std::string out;
  for (Node c = first_child(n); c != none; c = next(c)) {
    if (kind(c) == NodeKind::text) out += value(c);
  }
  return out;
}

std::string Document::all_text(Node n) const {
  if (kind(n) == NodeKind::text) return std::string(value(n));
  std::string out;
  for (Node c = first_child(n); c != none; c = next(c)) {
    if (kind(c) == NodeKind::text || kind(c) == NodeKind::element) out += all_text(c);
  }
  return out;
}

// ---------------------------------------------------------------- places

base::Span Document::text_span(Node n, std::size_t begin, std::size_t end) const {
  const NodeData& node = nodes_[n];
  if (node.changed || node.made) return node.span;
  return inside(node.raw, source_->slice(node.raw), value(n), begin, end, spelling_);
}

base::Span Document::value_span(Attr a, std::size_t begin, std::size_t end) const {
  const AttributeData& attribute = attributes_[a];
  if (attribute.changed || attribute.made) return attribute.value_span;
  return inside(attribute.value_span, source_->slice(attribute.value_span), attribute_value(a), begin, end, spelling_);
}

// ---------------------------------------------------------------- edits

void Document::mark(Node n) {
  nodes_[n].changed = true;
  for (Node up = n; up != none; up = nodes_[up].parent) nodes_[up].changed_inside = true;
}

void Document::set_value(Node n, std::string_view value) {
  if (this->value(n) == value) return;
  nodes_[n].value = keep(value);
  mark(n);
}

void Document::set_attribute(Node n, At at, std::string_view value) { set_attribute(n, name_of(at), value); }

void Document::set_attribute(Node n, std::string_view name, std::string_view value) {
  for (Attr a = nodes_[n].first_attribute; a != none; a = attributes_[a].next) {
    if (attribute_name(a) != name) continue;
    if (attribute_value(a) == value) return;
    attributes_[a].value = keep(value);
    attributes_[a].changed = true;
    return mark(n);
  }
  const Attr a = append_attribute(n, name, value, nodes_[n].head_span, nodes_[n].head_span);
  attributes_[a].made = true;
  mark(n);
}

void Document::remove_attribute(Node n, At at) {
  Attr before = none;
  for (Attr a = nodes_[n].first_attribute; a != none; before = a, a = attributes_[a].next) {
    if (attributes_[a].at != at) continue;
    const Attr after = attributes_[a].next;
    (before == none ? nodes_[n].first_attribute : attributes_[before].next) = after;
    if (nodes_[n].last_attribute == a) nodes_[n].last_attribute = before;
    return mark(n);
  }
}

void Document::rename_attribute(Node n, At from, At to) {
  assert(find(n, to) == none);
  const Attr a = find(n, from);
  if (a == none) return;
  attributes_[a].at = to;
  attributes_[a].name = keep(name_of(to));
  attributes_[a].changed = true;
  mark(n);
}

Node Document::insert(NodeKind kind, Node parent, Node before) {
  const auto made = static_cast<Node>(nodes_.size());
  NodeData node{};
  node.kind = kind;
  node.made = true;
  node.parent = parent;
  node.first_child = node.last_child = none;
  node.first_attribute = node.last_attribute = none;
  node.next = before;
  node.previous = before == none ? nodes_[parent].last_child : nodes_[before].previous;
  const Node beside = node.previous != none ? node.previous : before != none ? before : parent;
  node.span = node.name_span = node.head_span = node.raw =
      nodes_[beside].kind == NodeKind::element ? nodes_[beside].head_span : nodes_[beside].span;
  nodes_.push_back(node);
  (node.previous == none ? nodes_[parent].first_child : nodes_[node.previous].next) = made;
  (before == none ? nodes_[parent].last_child : nodes_[before].previous) = made;
  mark(made);
  return made;
}

Node Document::add_element(Node parent, El el, Node before) {
  const Node made = insert(NodeKind::element, parent, before);
  nodes_[made].el = el;
  nodes_[made].name = keep(name_of(el));
  return made;
}

Node Document::add_text(Node parent, std::string_view text, Node before) {
  const Node made = insert(NodeKind::text, parent, before);
  nodes_[made].value = keep(text);
  return made;
}

Node Document::add_comment(Node parent, std::string_view text, Node before) {
  const Node made = insert(NodeKind::comment, parent, before);
  nodes_[made].value = keep(text);
  return made;
}

void Document::remove(Node n) {
  const NodeData node = nodes_[n];
  assert(node.parent != none);
  (node.previous == none ? nodes_[node.parent].first_child : nodes_[node.previous].next) = node.next;
  (node.next == none ? nodes_[node.parent].last_child : nodes_[node.next].previous) = node.previous;
  for (Node up = node.parent; up != none; up = nodes_[up].parent) nodes_[up].changed_inside = true;
  nodes_[n].parent = nodes_[n].next = nodes_[n].previous = none;
}

void Document::rename(Node n, El el) {
  nodes_[n].el = el;
  nodes_[n].name = keep(name_of(el));
  mark(n);
}

void Document::set_text(Node n, std::string_view text) {
  Node first = none;
  for (Node c = first_child(n); c != none;) {
    const Node after = next(c);
    if (kind(c) == NodeKind::text) {
      if (first == none) {
        first = c;
      } else {
        remove(c);
      }
    }
    c = after;
  }
  if (first != none) {
    set_value(first, text);
  } else {
    add_text(n, text, first_child(n));
  }
}

// ---------------------------------------------------------------- building

Node Document::append(const NewNode& made) {
  const auto n = static_cast<Node>(nodes_.size());
  NodeData node{};
  node.kind = made.kind;
  node.el = made.kind == NodeKind::element ? element_named(made.name) : El::unknown;
  node.parent = made.parent;
  node.previous = nodes_[made.parent].last_child;
  node.first_child = node.last_child = node.next = none;
  node.first_attribute = node.last_attribute = none;
  node.name = keep(made.name);
  node.value = keep(made.value);
  node.span = made.span;
  node.name_span = made.name_span;
  node.head_span = made.head_span;
  node.raw = made.raw;
  nodes_.push_back(node);
  (node.previous == none ? nodes_[made.parent].first_child : nodes_[node.previous].next) = n;
  nodes_[made.parent].last_child = n;
  return n;
}

Attr Document::append_attribute(Node owner, std::string_view name, std::string_view value, base::Span name_span,
                                base::Span value_span) {
  const auto a = static_cast<Attr>(attributes_.size());
  AttributeData attribute{};
  attribute.at = attribute_named(name);
  attribute.owner = owner;
  attribute.next = none;
  attribute.name = keep(name);
  attribute.value = keep(value);
  attribute.name_span = name_span;
  attribute.value_span = value_span;
  attribute.span = {name_span.begin, value_span.end};
  attributes_.push_back(attribute);
  const Attr last = nodes_[owner].last_attribute;
  (last == none ? nodes_[owner].first_attribute : attributes_[last].next) = a;
  nodes_[owner].last_attribute = a;
  return a;
}

}  // namespace tamis::fiche
