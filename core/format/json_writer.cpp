#include "core/format/json_writer.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "core/fiche/prose.h"
#include "core/format/format.h"
#include "core/format/layout.h"
#include "core/format/xml_chars.h"

namespace tamis::format {
namespace {

using base::Span;
using fiche::Document;
using fiche::Node;
using fiche::NodeKind;

/// Finds its way in the bytes of a JSON text that has been read and found good.
class Shape {
 public:
  explicit Shape(std::string_view bytes) : bytes_(bytes) {}

  [[nodiscard]] std::uint32_t skip_blank(std::uint32_t at) const {
    while (at < bytes_.size() && is(bytes_[at], xml_space)) ++at;
    return at;
  }
  [[nodiscard]] std::uint32_t lead(std::uint32_t at) const {
    while (at > 0 && is(bytes_[at - 1], xml_space)) --at;
    return at;
  }
  /// Where the value behind a name starts; `name_end` is behind the name's closing quote.
  [[nodiscard]] std::uint32_t value_behind(std::uint32_t name_end) const {
    return skip_blank(skip_blank(name_end) + 1);
  }

  [[nodiscard]] std::uint32_t string_end(std::uint32_t at) const {
    for (++at; bytes_[at] != '"'; ++at) {
      if (bytes_[at] == '\\') ++at;
    }
    return at + 1;
  }

  [[nodiscard]] std::uint32_t value_end(std::uint32_t at) const {
    if (bytes_[at] == '"') return string_end(at);
    std::size_t depth = 0;
    for (;; ++at) {
      const char c = bytes_[at];
      if (c == '"') {
        at = string_end(at) - 1;
      } else if (c == '{' || c == '[') {
        ++depth;
      } else if (c == '}' || c == ']') {
        if (depth <= 1) return depth == 0 ? at : at + 1;
        --depth;
      } else if (depth == 0 && (c == ',' || is(c, xml_space))) {
        return at;
      }
    }
  }

  /// The members or values of the object or array that starts at `open`.
  [[nodiscard]] std::vector<Span> items(std::uint32_t open) const {
    std::vector<Span> out;
    const bool object = bytes_[open] == '{';
    for (std::uint32_t at = skip_blank(open + 1); bytes_[at] != '}' && bytes_[at] != ']';) {
      const std::uint32_t value = object ? value_behind(string_end(at)) : at;
      out.push_back({at, value_end(value)});
      at = skip_blank(out.back().end);
      if (bytes_[at] == ',') at = skip_blank(at + 1);
    }
    return out;
  }

 private:
  std::string_view bytes_;
};

/// A member or value to be written: as it stood (its span), with what it has become.
struct Item {
  std::optional<Span> source;  ///< none: it is new
  std::string text;
};

class JsonWriter {
 public:
  explicit JsonWriter(const Document& document)
      : document_(document), bytes_(document.source().bytes()), shape_(bytes_), layout_(document) {}

  std::string whole();

 private:
  std::string list(std::uint32_t open, const std::vector<Item>& items, std::size_t indent) const;
  std::string piece(Node n, std::size_t indent, bool in_line) const;
  std::string element(Node n, std::size_t indent, bool in_line) const;
  std::string body(Node n, std::uint32_t at, std::size_t indent, bool in_line) const;
  std::vector<Item> members(Node n, std::uint32_t open, std::size_t indent, bool in_line) const;
  std::string content(Node n, std::uint32_t open, std::size_t indent, bool in_line) const;
  std::string attribute(fiche::Attr a) const;
  std::string pieces(Node first, Node last, std::uint32_t open, std::size_t indent, bool in_line) const;
  std::string leaves(bool before, std::optional<Span> member) const;

  [[nodiscard]] std::string slice(std::uint32_t begin, std::uint32_t end) const {
    return std::string(bytes_.substr(begin, end - begin));
  }
  /// Where a child's text starts in the source.
  [[nodiscard]] std::uint32_t begin_of(Node n) const {
    return document_.span(n).begin - (document_.kind(n) == NodeKind::text ? 1U : 0U);
  }
  [[nodiscard]] bool own_lines(std::uint32_t open) const {
    return slice(open, shape_.skip_blank(open + 1)).find('\n') != std::string::npos;
  }
  /// Blank before the first item of a list, in columns.
  [[nodiscard]] std::size_t indent_in(std::uint32_t open, std::size_t indent) const {
    const std::uint32_t first = shape_.skip_blank(open + 1);
    const std::size_t line = bytes_.rfind('\n', first);
    if (!own_lines(open) || bytes_[first] == ']' || bytes_[first] == '}') return indent + indent_step;
    return first - line - 1;
  }

  const Document& document_;
  std::string_view bytes_;
  Shape shape_;
  JsonLayout layout_;
};

// Items that stand side by side in the source keep what is between them; a removed one takes the comma before it.
std::string JsonWriter::list(std::uint32_t open, const std::vector<Item>& items, std::size_t indent) const {
  const std::vector<Span> before = shape_.items(open);
  const std::uint32_t close = shape_.value_end(open) - 1;
  const bool lines = own_lines(open) || before.empty();
  const std::string fresh_lead = "\n" + std::string(indent_in(open, indent), ' ');
  std::string out(1, bytes_[open]);
  std::optional<Span> last;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Item& item = items[i];
    const std::uint32_t begin = item.source ? item.source->begin : 0;
    const bool neighbours = item.source && last && shape_.skip_blank(shape_.skip_blank(last->end) + 1) == begin;
    if (neighbours) {
      out += slice(last->end, begin);
    } else {
      if (i > 0) out += ',';
      std::string lead = item.source ? slice(shape_.lead(begin), begin) : lines ? fresh_lead : "";
      if (lead.empty() && i > 0) lead = " ";
      out += lead;
    }
    out += item.text;
    last = item.source;
  }
  if (before.empty() && !items.empty()) {
    out += "\n" + std::string(indent, ' ');
  } else {
    out += slice(shape_.lead(close), close);
  }
  return out + bytes_[close];
}

std::string JsonWriter::attribute(fiche::Attr a) const {
  const std::string_view name = document_.attribute_name(a);
  const base::Span key = document_.attribute_name_span(a);
  const std::string value = quoted_json(document_.attribute_value(a));
  const std::string spelled = quoted_json(name == "content" ? "#content" : name);
  if (document_.attribute_made(a)) return spelled + ": " + value;
  if (!document_.attribute_changed(a)) return slice(key.begin - 1, document_.attribute_span(a).end);
  return spelled + slice(key.end + 1, shape_.value_behind(key.end + 1)) + value;  // its name may have changed too
}

/// The children from `first` up to `last` (not included) as the items of the array at `open`.
std::string JsonWriter::pieces(Node first, Node last, std::uint32_t open, std::size_t indent, bool in_line) const {
  const std::vector<Span> before = shape_.items(open);
  const std::size_t inner = indent_in(open, indent);
  std::vector<Item> items;
  std::size_t at = 0;
  const auto keep_empty_texts = [&](std::uint32_t until) {
    for (; at < before.size() && before[at].begin < until; ++at) {
      if (before[at].end - before[at].begin == 2 && bytes_[before[at].begin] == '"')
        items.push_back({before[at], "\"\""});
    }
  };
  for (Node c = first; c != last; c = document_.next(c)) {
    const bool mark = document_.kind(c) == NodeKind::element && fiche::is_mark(document_, c);
    if (document_.made(c)) {
      items.push_back({std::nullopt, piece(c, inner, in_line || mark)});
      continue;
    }
    keep_empty_texts(begin_of(c));
    items.push_back({before[at], piece(c, inner, in_line || mark)});
    ++at;
  }
  keep_empty_texts(static_cast<std::uint32_t>(bytes_.size()));
  return list(open, items, indent);
}

std::string JsonWriter::piece(Node n, std::size_t indent, bool in_line) const {
  std::string out;
  const bool text = document_.kind(n) == NodeKind::text;
  if (!document_.made(n) && !document_.changed_inside(n)) {
    const Span whole = document_.span(n);
    return slice(whole.begin - (text ? 1U : 0U), whole.end + (text ? 1U : 0U));
  }
  if (!document_.made(n) && document_.kind(n) == NodeKind::element) return element(n, indent, in_line);
  if (text) return quoted_json(document_.value(n));
  layout_.piece(n, indent, in_line, out);
  return out;
}

std::string JsonWriter::element(Node n, std::size_t indent, bool in_line) const {
  const Span whole = document_.span(n);
  const Span name = document_.name_span(n);
  const std::uint32_t value = shape_.value_behind(name.end + 1);
  return slice(whole.begin, name.begin) + escaped(document_.name(n), fiche::Spelling::json, false) +
         slice(name.end, value) + body(n, value, indent, in_line) + slice(shape_.value_end(value), whole.end);
}

std::string JsonWriter::body(Node n, std::uint32_t at, std::size_t indent, bool in_line) const {
  if (bytes_[at] == '{') return list(at, members(n, at, indent, in_line), indent);
  std::string out;
  layout_.body(n, indent, in_line, out);
  return out;
}

std::vector<Item> JsonWriter::members(Node n, std::uint32_t open, std::size_t indent, bool in_line) const {
  std::vector<Item> items;
  std::size_t behind_attributes = 0;
  bool content = false;
  const std::size_t inner = indent_in(open, indent);
  for (const Span& member : shape_.items(open)) {
    const std::uint32_t array = shape_.value_behind(shape_.string_end(member.begin));
    if (bytes_[array] == '[') {  // no attribute is an array
      content = true;
      items.push_back({member, slice(member.begin, array) +
                                   pieces(document_.first_child(n), fiche::none, array, inner, in_line)});
      continue;
    }
    for (fiche::Attr a = document_.first_attribute(n); a != fiche::none; a = document_.next_attribute(a)) {
      if (document_.attribute_made(a) || document_.attribute_name_span(a).begin != member.begin + 1) continue;
      items.push_back({member, attribute(a)});
      behind_attributes = items.size();
    }
  }
  for (fiche::Attr a = document_.first_attribute(n); a != fiche::none; a = document_.next_attribute(a)) {
    if (!document_.attribute_made(a)) continue;
    items.insert(items.begin() + static_cast<std::ptrdiff_t>(behind_attributes++), {std::nullopt, attribute(a)});
  }
  if (!content && document_.first_child(n) != fiche::none) {
    std::string made = "\"content\": [";
    layout_.pieces(n, inner + indent_step, in_line, made);
    items.push_back({std::nullopt, made + "\n" + std::string(inner, ' ') + "]"});
  }
  return items;
}

/// The member "#before" or "#after"; empty when there is nothing in it and was not.
std::string JsonWriter::leaves(bool before, std::optional<Span> member) const {
  const Node root = document_.root();
  const Node first = before ? document_.first_child(document_.top()) : document_.next(root);
  const Node last = before ? root : fiche::none;
  if (member) {
    const std::uint32_t array = shape_.value_behind(shape_.string_end(member->begin));
    return slice(member->begin, array) + pieces(first, last, array, indent_step, false);
  }
  if (first == last) return {};
  std::string out = before ? "\"#before\": [" : "\"#after\": [";
  for (Node c = first; c != last; c = document_.next(c)) {
    out += c == first ? "\n    " : ",\n    ";
    layout_.piece(c, 2 * indent_step, false, out);
  }
  return out + "\n  ]";
}

std::string JsonWriter::whole() {
  if (!document_.changed_inside(document_.top())) return std::string(bytes_);
  const std::uint32_t open = static_cast<std::uint32_t>(bytes_.find('{'));
  std::optional<Span> before, after;
  std::vector<Item> items;
  const Node root = document_.root();
  for (const Span& member : shape_.items(open)) {
    const std::string key = slice(member.begin + 1, shape_.string_end(member.begin) - 1);
    const bool leaf_key = document_.name_span(root).begin != member.begin + 1;
    const bool first = leaf_key && key == "#before";
    if (leaf_key) (first ? before : after) = member;
    items.push_back({member, leaf_key ? leaves(first, member) : element(root, indent_in(open, 0), false)});
  }
  if (std::string made = before ? "" : leaves(true, std::nullopt); !made.empty()) {
    items.insert(items.begin(), {std::nullopt, std::move(made)});
  }
  if (std::string made = after ? "" : leaves(false, std::nullopt); !made.empty()) {
    items.push_back({std::nullopt, std::move(made)});
  }
  return slice(0, open) + list(open, items, 0) +
         slice(shape_.value_end(open), static_cast<std::uint32_t>(bytes_.size()));
}

}  // namespace

std::string write_json(const Document& document) { return JsonWriter(document).whole(); }

}  // namespace tamis::format
