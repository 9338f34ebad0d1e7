#include "core/fiche/document.h"

#include <algorithm>
#include <cassert>
#include <functional>

#include "core/base/utf8.h"

namespace tamis::fiche {
namespace {

constexpr std::uint32_t own_mark = 0x80000000U;
constexpr std::size_t chunk_bytes = std::size_t{1} << 16U;

constexpr std::string_view cdata_open = "<![CDATA[";
constexpr std::string_view cdata_close = "]]>";

/// Walks a raw value and what it decodes to side by side: an XML reference or JSON escape stands for the bytes it
/// decodes to, CRLF for LF, the marks of a CDATA section for nothing, all else for itself.
class RawWalk {
 public:
  RawWalk(std::string_view raw, std::string_view decoded, Spelling spelling)
      : raw_(raw), decoded_(decoded), xml_(spelling == Spelling::xml) {}

  /// Raw bytes that the first `wanted` decoded bytes take.
  std::size_t forward(std::size_t wanted) {
    while (done_ < wanted && at_ < raw_.size() && done_ < decoded_.size()) {
      if (!skip_mark()) step();
    }
    return std::min(at_, raw_.size());
  }
  /// The same, past a CDATA mark that stands there.
  std::size_t forward_to_start(std::size_t wanted) {
    forward(wanted);
    while (at_ < raw_.size() && skip_mark()) {}
    return std::min(at_, raw_.size());
  }

 private:
  bool skip_mark() {
    if (!xml_) return false;
    const std::string_view mark = in_cdata_ ? cdata_close : cdata_open;
    if (raw_.substr(at_, mark.size()) != mark) return false;
    in_cdata_ = !in_cdata_;
    at_ += mark.size();
    return true;
  }

  void step() {
    const bool escape = xml_ ? raw_[at_] == '&' && !in_cdata_ : raw_[at_] == '\\';
    if (!escape) {
      at_ += xml_ && raw_[at_] == '\r' && at_ + 1 < raw_.size() && raw_[at_ + 1] == '\n' ? 2U : 1U;
      ++done_;
      return;
    }
    std::size_t next = done_;
    (void)base::next_scalar(decoded_, next);
    const std::size_t bytes = next - done_;
    if (xml_) {
      at_ = std::min(raw_.find(';', at_), raw_.size() - 1) + 1;
    } else if (at_ + 1 < raw_.size() && raw_[at_ + 1] == 'u') {
      at_ += bytes == 4 ? 12U : 6U;  // above U+FFFF an escape is a pair
    } else {
      at_ += 2;
    }
    done_ += bytes;
  }

  std::string_view raw_, decoded_;
  bool xml_;
  bool in_cdata_ = false;
  std::size_t at_ = 0, done_ = 0;
};

/// A value as XML can hold it in a node of that kind: no two dashes together and none at the end of a comment, no
/// "?>" in an instruction, no carriage return in what is not text.
std::string holdable(NodeKind kind, std::string_view value) {
  if (kind == NodeKind::text) return std::string(value);
  std::string out;
  for (std::size_t at = 0; at < value.size(); ++at) {
    const char c = value[at];
    const bool split = kind == NodeKind::comment ? c == '-' && out.ends_with('-')
                                                 : kind == NodeKind::instruction && c == '>' && out.ends_with('?');
    if (split) out += ' ';
    if (c != '\r') {
      out += c;
    } else if (value.substr(at, 2) != "\r\n") {
      out += '\n';
    }
  }
  if (kind == NodeKind::comment && out.ends_with('-')) out += ' ';
  return out;
}

base::Span inside(base::Span raw_span, std::string_view raw, std::string_view decoded, std::size_t begin,
                  std::size_t end, Spelling spelling) {
  const auto place = [&](std::size_t offset) { return raw_span.begin + static_cast<std::uint32_t>(offset); };
  RawWalk walk(raw, decoded, spelling);
  const std::size_t first = begin < end ? walk.forward_to_start(begin) : walk.forward(begin);
  return {place(first), place(walk.forward(end))};
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
  copy.own_ = own_;  // its first string opens a chunk of its own
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
  return keep_own(text);
}

Document::Kept Document::keep_own(std::string_view text) {
  if (own_size_ - own_used_ < text.size() || own_used_ >= chunk_bytes) {
    own_size_ = std::max(chunk_bytes, text.size());
    own_.emplace_back(new char[own_size_]);  // left unfilled on purpose
    own_used_ = 0;
    assert(own_.size() < own_mark / chunk_bytes);
  }
  std::copy(text.begin(), text.end(), own_.back().get() + own_used_);
  const auto at = static_cast<std::uint32_t>((own_.size() - 1) * chunk_bytes + own_used_);
  own_used_ += text.size();
  return {at | own_mark, static_cast<std::uint32_t>(text.size())};
}

std::string_view Document::text_of(Kept kept) const {
  if (kept.size == 0) return {};
  if ((kept.at & own_mark) == 0) return {source_->bytes().data() + kept.at, kept.size};
  const std::size_t at = kept.at & ~own_mark;
  return {own_[at / chunk_bytes].get() + at % chunk_bytes, kept.size};
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
  std::string out;
  add_all_text(n, out);
  return out;
}

void Document::add_all_text(Node n, std::string& out) const {
  if (kind(n) == NodeKind::text) out += value(n);
  for (Node c = first_child(n); c != none; c = next(c)) {
    if (kind(c) == NodeKind::text || kind(c) == NodeKind::element) add_all_text(c, out);
  }
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
  nodes_[n].value = keep(holdable(kind(n), value));
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
  const Attr a = append_attribute(n, name, value, nodes_[n].head_span, nodes_[n].head_span, 0);
  attributes_[a].span = nodes_[n].head_span;
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
  nodes_[made].value = keep(holdable(NodeKind::comment, text));
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

void Document::reserve(std::size_t nodes, std::size_t attributes) {
  nodes_.reserve(nodes);
  attributes_.reserve(attributes);
}

Node Document::append(const NewNode& made) {
  const auto n = static_cast<Node>(nodes_.size());
  NodeData node{};
  node.kind = made.kind;
  node.el = made.kind == NodeKind::element ? element_named(made.name) : El::unknown;
  node.parent = made.parent;
  node.next = made.before;
  node.previous = made.before == none ? nodes_[made.parent].last_child : nodes_[made.before].previous;
  node.first_child = node.last_child = none;
  node.first_attribute = node.last_attribute = none;
  node.name = keep(made.name);
  node.value = keep(made.value);
  node.span = made.span;
  node.name_span = made.name_span;
  node.head_span = made.head_span;
  node.raw = made.raw;
  nodes_.push_back(node);
  (node.previous == none ? nodes_[made.parent].first_child : nodes_[node.previous].next) = n;
  (made.before == none ? nodes_[made.parent].last_child : nodes_[made.before].previous) = n;
  return n;
}

Attr Document::append_attribute(Node owner, std::string_view name, std::string_view value, base::Span name_span,
                                base::Span value_span, std::uint32_t end) {
  const auto a = static_cast<Attr>(attributes_.size());
  AttributeData attribute{};
  attribute.at = attribute_named(name);
  attribute.owner = owner;
  attribute.next = none;
  attribute.name = keep(name);
  attribute.value = keep(value);
  attribute.name_span = name_span;
  attribute.value_span = value_span;
  attribute.span = {name_span.begin, end};
  attributes_.push_back(attribute);
  const Attr last = nodes_[owner].last_attribute;
  (last == none ? nodes_[owner].first_attribute : attributes_[last].next) = a;
  nodes_[owner].last_attribute = a;
  return a;
}

}  // namespace tamis::fiche
