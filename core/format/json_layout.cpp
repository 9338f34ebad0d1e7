#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/format/format.h"
#include "core/format/layout.h"

namespace tamis::format {

using fiche::Node;
using fiche::NodeKind;

/// A text (node is none), or a node.
struct JsonLayout::Piece {
  Node node;
  bool in_line;
  std::string text;
};

namespace {

void start_line(std::string& out, std::size_t indent) {
  out += '\n';
  out.append(indent, ' ');
}

/// The attributes as members, the default namespace left out: in JSON it goes without saying.
std::vector<std::string> members_of(const fiche::Document& document, Node n) {
  std::vector<std::string> out;
  for (fiche::Attr a = document.first_attribute(n); a != fiche::none; a = document.next_attribute(a)) {
    const std::string_view name = document.attribute_name(a);
    if (name == "xmlns") continue;
    out.push_back(quoted_json(name == "content" ? "#content" : name) + ": " +
                  quoted_json(document.attribute_value(a)));
  }
  return out;
}

}  // namespace

std::string quoted_json(std::string_view text) {
  return "\"" + escaped(text, fiche::Spelling::json, false) + "\"";
}

std::vector<JsonLayout::Piece> JsonLayout::pieces_of(Node n, bool in_line) const {
  std::vector<Piece> out;
  for (fiche::Run& run : fiche::runs_of(document_, n, in_line)) {
    for (fiche::Part& part : run.parts) out.push_back({part.node, in_line || run.prose, std::move(part.text)});
  }
  return out;
}

bool JsonLayout::is_text_alone(Node n, const std::vector<Piece>& pieces) const {
  if (pieces.size() != 1 || pieces.front().node != fiche::none || fiche::is_blank(pieces.front().text))
    return false;
  return members_of(document_, n).empty();
}

void JsonLayout::leaf(Node n, std::string& out) const {
  const std::string value(document_.value(n));
  switch (document_.kind(n)) {
    case NodeKind::comment:
      out += "{\"#comment\": " + quoted_json(value) + "}";
      return;
    case NodeKind::foreign:
      out += "{\"#xml\": " + quoted_json(value) + "}";
      return;
    case NodeKind::instruction:
      out += "{\"#instruction\": " +
             quoted_json(std::string(document_.name(n)) + (value.empty() ? std::string() : " " + value)) + "}";
      return;
    default:
      out += quoted_json(value);
  }
}

// False as soon as the line gets longer than `most`: what does not fit is not spelled out again on every level.
bool JsonLayout::one_line(Node n, bool in_line, std::size_t most, std::string& out) const {
  if (out.size() > most * 4) return false;  // four bytes a character at most
  if (document_.kind(n) != NodeKind::element) {
    leaf(n, out);
  } else {
    out += "{" + quoted_json(document_.name(n)) + ": ";
    if (!one_line_body(n, in_line, most, out)) return false;
    out += "}";
  }
  return out.size() <= most || base::count_scalars(out) <= most;
}

bool JsonLayout::one_line_body(Node n, bool in_line, std::size_t most, std::string& out) const {
  const std::vector<Piece> pieces = pieces_of(n, in_line);
  if (is_text_alone(n, pieces)) {
    out += quoted_json(pieces.front().text);
    return true;
  }
  std::string_view comma;
  out += "{";
  for (const std::string& member : members_of(document_, n)) {
    out.append(comma).append(member);
    comma = ", ";
  }
  if (!pieces.empty()) out.append(comma).append("\"content\": [");
  comma = {};
  for (const Piece& piece : pieces) {
    out += comma;
    comma = ", ";
    if (piece.node == fiche::none) {
      out += quoted_json(piece.text);
    } else if (!one_line(piece.node, piece.in_line, most, out)) {
      return false;
    }
    if (out.size() > most * 4) return false;
  }
  out += pieces.empty() ? "}" : "]}";
  return true;
}

void JsonLayout::piece(Node n, std::size_t indent, bool in_line, std::string& out) const {
  std::string line;
  const std::size_t most = line_width > indent + 1 ? line_width - indent - 1 : 0;  // a comma may follow
  if (one_line(n, in_line, most, line)) {
    out += line;
  } else if (document_.kind(n) != NodeKind::element) {
    leaf(n, out);
  } else {
    out += "{" + quoted_json(document_.name(n)) + ": ";
    body(n, indent, in_line, out);
    out += "}";
  }
}

void JsonLayout::pieces(Node n, std::size_t indent, bool in_line, std::string& out) const {
  bool first = true;
  for (const Piece& part : pieces_of(n, in_line)) {
    if (!first) out += ',';
    first = false;
    start_line(out, indent);
    if (part.node == fiche::none) {
      out += quoted_json(part.text);
    } else {
      piece(part.node, indent, part.in_line, out);
    }
  }
}

void JsonLayout::body(Node n, std::size_t indent, bool in_line, std::string& out) const {
  const std::vector<Piece> parts = pieces_of(n, in_line);
  if (is_text_alone(n, parts)) {
    out += quoted_json(parts.front().text);
    return;
  }
  const std::size_t inner = indent + indent_step;
  bool first = true;
  out += "{";
  const auto next = [&] {
    if (!first) out += ',';
    first = false;
    start_line(out, inner);
  };
  for (const std::string& member : members_of(document_, n)) {
    next();
    out += member;
  }
  if (!parts.empty()) {
    next();
    out += "\"content\": [";
    pieces(n, inner + indent_step, in_line, out);
    start_line(out, inner);
    out += "]";
  }
  if (!first) start_line(out, indent);
  out += "}";
}

void JsonLayout::leaves(std::string_view name, bool before, std::string& out) const {
  bool seen_root = false, any = false;
  for (Node c = document_.first_child(document_.top()); c != fiche::none; c = document_.next(c)) {
    seen_root = seen_root || c == document_.root();
    if (seen_root == before || c == document_.root() || document_.kind(c) == NodeKind::text) continue;
    if (any) {
      out += ',';
    } else {
      if (!out.ends_with('{')) out += ',';
      start_line(out, indent_step);
      out += quoted_json(name) + ": [";
    }
    any = true;
    start_line(out, 2 * indent_step);
    leaf(c, out);
  }
  if (!any) return;
  start_line(out, indent_step);
  out += "]";
}

std::string JsonLayout::whole() const {
  std::string out = "{";
  leaves("#before", true, out);
  if (document_.root() != fiche::none) {
    if (!out.ends_with('{')) out += ',';
    start_line(out, indent_step);
    out += quoted_json(document_.name(document_.root())) + ": ";
    body(document_.root(), indent_step, false, out);
  }
  leaves("#after", false, out);
  out += "\n}\n";
  return out;
}

}  // namespace tamis::format
