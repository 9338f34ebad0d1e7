#include <algorithm>

#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/format/format.h"
#include "core/format/layout.h"

namespace tamis::format {
namespace {

using fiche::Node;
using fiche::NodeKind;
using fiche::Part;
using fiche::Run;
using fiche::Spelling;

/// Stands in a flow for a space where the line may be broken; no text can hold it.
constexpr char may_break = '\x01';

void start_line(std::string& out, std::size_t indent) {
  out += '\n';
  out.append(indent, ' ');
}

std::size_t column_of(const std::string& out, std::size_t from, std::size_t column) {
  const std::size_t line = out.rfind('\n');
  if (line != std::string::npos && line >= from)
    return base::count_scalars(std::string_view(out).substr(line + 1));
  return column + base::count_scalars(std::string_view(out).substr(from));
}

/// Appends the flow, broken where it would pass the line's width; `column` is where it starts.
void fill(std::string_view flow, std::size_t column, std::size_t indent, std::string& out) {
  bool first = true;
  while (true) {
    const std::size_t size = std::min(flow.find(may_break), flow.size());
    const std::string_view word = flow.substr(0, size);
    const std::size_t width = base::count_scalars(word.substr(0, word.find('\n')));
    if (!first && column + 1 + width > line_width && column > indent) {
      start_line(out, indent);
      column = indent;
    } else if (!first) {
      out += ' ';
      ++column;
    }
    const std::size_t from = out.size();
    out += word;
    column = column_of(out, from, column);
    if (size == flow.size()) return;
    flow.remove_prefix(size + 1);
    first = false;
  }
}

std::string attribute_text(const fiche::Document& document, fiche::Attr a) {
  return std::string(document.attribute_name(a)) + "=\"" +
         escaped(document.attribute_value(a), Spelling::xml, true) + "\"";
}

/// xmlns first, on the root always.
std::vector<std::string> attribute_texts(const fiche::Document& document, Node n) {
  std::vector<std::string> out;
  if (n == document.root()) out.push_back("xmlns=\"" + std::string(fiche::fiche_namespace) + "\"");
  for (fiche::Attr a = document.first_attribute(n); a != fiche::none; a = document.next_attribute(a)) {
    if (document.attribute_name(a) != "xmlns") out.push_back(attribute_text(document, a));
  }
  return out;
}

bool is_component(const fiche::Document& document, const Run& run) {
  return !run.prose && run.parts.front().node != fiche::none &&
         document.el(run.parts.front().node) == fiche::El::component;
}

/// Index of the part that a blank line stands before: the first of the comments at the end of a run that lead up
/// to a component, or the component itself.
std::size_t blank_line_at(const fiche::Document& document, const std::vector<Run>& runs, std::size_t i) {
  const std::vector<Part>& parts = runs[i].parts;
  if (runs[i].prose) return parts.size();
  if (is_component(document, runs[i])) {
    const bool led =
        i > 0 && !runs[i - 1].prose && document.kind(runs[i - 1].parts.back().node) == NodeKind::comment;
    return led ? parts.size() : 0;
  }
  if (i + 1 == runs.size() || !is_component(document, runs[i + 1])) return parts.size();
  std::size_t at = parts.size();
  while (at > 0 && document.kind(parts[at - 1].node) == NodeKind::comment) --at;
  return at;
}

}  // namespace

void XmlLayout::leaf(Node n, std::string& out) const {
  const std::string_view value = document_.value(n);
  switch (document_.kind(n)) {
    case NodeKind::comment:
      out += "<!--" + std::string(value) + "-->";
      return;
    case NodeKind::instruction:
      out += "<?" + std::string(document_.name(n));
      if (!value.empty()) out += " " + std::string(value);
      out += "?>";
      return;
    case NodeKind::foreign:
      out += value;
      return;
    default:
      out += escaped(value, Spelling::xml, false);
  }
}

void XmlLayout::head(Node n, std::size_t indent, bool empty, bool wrap, std::string& out) const {
  const std::vector<std::string> attributes = attribute_texts(document_, n);
  std::string one_line = "<" + std::string(document_.name(n));
  const std::size_t hang = indent + one_line.size() + 1;
  std::string filled = one_line;
  std::size_t column = indent + base::count_scalars(one_line);
  for (std::size_t i = 0; i < attributes.size(); ++i) {
    const std::size_t width = base::count_scalars(attributes[i]);
    const std::size_t close = i + 1 < attributes.size() ? 0U : empty ? 2U : 1U;
    if (i > 0 && column + 1 + width + close > line_width) {
      start_line(filled, hang);
      column = hang;
    } else {
      filled += ' ';
      ++column;
    }
    filled += attributes[i];
    column += width;
    one_line += " " + attributes[i];
  }
  out += wrap ? filled : one_line;
  out += empty ? "/>" : ">";
}

void XmlLayout::append_text(std::string_view text, Node owner, std::string& out) const {
  const std::size_t from = out.size();
  out += escaped(text, Spelling::xml, false);
  if (fiche::holds_prose(document_.el(owner))) {
    std::replace(out.begin() + static_cast<std::ptrdiff_t>(from), out.end(), ' ', may_break);
  }
}

// A node in a sentence, its spaces that may be broken marked as such.
void XmlLayout::flow(Node n, std::string& out) const {
  if (document_.kind(n) != NodeKind::element) return leaf(n, out);
  const std::vector<Run> runs = fiche::runs_of(document_, n, true);
  head(n, 0, runs.empty(), false, out);
  if (runs.empty()) return;
  out += sentence(runs.front(), n);
  out += "</" + std::string(document_.name(n)) + ">";
}

void XmlLayout::in_line(Node n, std::string& out) const {
  const std::size_t from = out.size();
  flow(n, out);
  std::replace(out.begin() + static_cast<std::ptrdiff_t>(from), out.end(), may_break, ' ');
}

void XmlLayout::block(Node n, std::size_t indent, std::string& out) const {
  if (document_.kind(n) == NodeKind::element) return element(n, indent, out);
  leaf(n, out);
}

void XmlLayout::element(Node n, std::size_t indent, std::string& out) const {
  const std::vector<Run> runs = fiche::runs_of(document_, n, false);
  const std::string end = "</" + std::string(document_.name(n)) + ">";
  const std::size_t inner = indent + indent_step;
  const std::size_t from = out.size();
  head(n, indent, runs.empty(), true, out);
  if (runs.empty()) return;
  const bool one_sentence = runs.size() == 1 && runs.front().prose;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (!runs[i].prose) {
      lines(runs, i, inner, out);
      continue;
    }
    if (i > 0) start_line(out, inner);
    const std::size_t column = i > 0 ? inner : column_of(out, from, indent);
    fill(sentence(runs[i], n) + (one_sentence ? end : ""), column, inner, out);
  }
  if (one_sentence) return;
  start_line(out, indent);
  out += end;
}

/// A run of prose, its spaces that may be broken marked as such.
std::string XmlLayout::sentence(const Run& run, Node owner) const {
  std::string out;
  for (const Part& part : run.parts) {
    if (part.node != fiche::none) {
      flow(part.node, out);
    } else {
      append_text(part.text, owner, out);
    }
  }
  return out;
}

/// A run that is no prose: each part on a line of its own.
void XmlLayout::lines(const std::vector<Run>& runs, std::size_t i, std::size_t indent, std::string& out) const {
  const std::size_t blank_line = blank_line_at(document_, runs, i);
  for (std::size_t p = 0; p < runs[i].parts.size(); ++p) {
    if (p == blank_line) out += '\n';
    start_line(out, indent);
    block(runs[i].parts[p].node, indent, out);
  }
}

std::string XmlLayout::whole() const {
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  for (Node c = document_.first_child(document_.top()); c != fiche::none; c = document_.next(c)) {
    if (document_.kind(c) == NodeKind::text) continue;
    block(c, 0, out);
    out += '\n';
  }
  return out;
}

}  // namespace tamis::format
