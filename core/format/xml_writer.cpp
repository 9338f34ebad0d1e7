#include "core/format/xml_writer.h"

#include <algorithm>
#include <optional>
#include <unordered_set>

#include "core/fiche/prose.h"
#include "core/format/format.h"
#include "core/format/layout.h"
#include "core/format/xml_chars.h"

namespace tamis::format {
namespace {

using fiche::Document;
using fiche::Node;
using fiche::NodeKind;
using fiche::Spelling;

/// Puts an edited document back: the bytes of what no edit touched, and as little else as can be. In the content
/// of an XML element the children lie end to end, so what stands between two of them in the source is what was
/// removed.
class XmlWriter {
 public:
  explicit XmlWriter(const Document& document)
      : document_(document), bytes_(document.source().bytes()), layout_(document) {
    const std::size_t line = bytes_.find('\n');
    if (line != std::string_view::npos && line > 0 && bytes_[line - 1] == '\r') line_end_ = "\r\n";
  }

  std::string whole();

 private:
  void node(Node n, bool in_line);
  void element(Node n, bool in_line);
  void start_tag(Node n, bool empty);
  void content(Node n, bool in_line);
  void own_line(Node n, std::size_t indent);
  void break_line(std::size_t indent);

  [[nodiscard]] bool self_closed(Node n) const { return bytes_[document_.head_span(n).end - 2] == '/'; }
  [[nodiscard]] std::uint32_t content_end(Node n) const;
  [[nodiscard]] bool falls(Node blank, Node parent, bool in_line, const std::unordered_set<Node>& alone) const;
  [[nodiscard]] std::unordered_set<Node> standing_alone(Node n, bool in_line) const;
  [[nodiscard]] std::optional<std::size_t> starts_line(Node n) const;
  [[nodiscard]] std::size_t indent_of(Node n) const;
  [[nodiscard]] std::size_t child_indent(Node n) const;
  [[nodiscard]] std::string_view slice(std::uint32_t begin, std::uint32_t end) const {
    return bytes_.substr(begin, end - begin);
  }

  const Document& document_;
  std::string_view bytes_;
  XmlLayout layout_;
  std::string_view line_end_ = "\n";
  std::string out_;
};

// ---------------------------------------------------------------- what stands in the source

std::uint32_t XmlWriter::content_end(Node n) const {
  if (self_closed(n)) return document_.head_span(n).end;
  return static_cast<std::uint32_t>(bytes_.rfind("</", document_.span(n).end - 1));
}

/// Columns before a node that starts its line.
std::optional<std::size_t> XmlWriter::starts_line(Node n) const {
  const std::uint32_t begin = document_.span(n).begin;
  std::uint32_t at = begin;
  while (at > 0 && (bytes_[at - 1] == ' ' || bytes_[at - 1] == '\t')) --at;
  if (at > 0 && bytes_[at - 1] != '\n' && bytes_[at - 1] != '\r') return std::nullopt;
  return begin - at;
}

/// The indent of the line a node stands in. In a very long line, as if it had none.
std::size_t XmlWriter::indent_of(Node n) const {
  const std::uint32_t begin = document_.span(n).begin;
  const std::string_view before = bytes_.substr(0, begin).substr(begin - std::min<std::uint32_t>(begin, 4096));
  const std::size_t end = before.find_last_of("\r\n");
  const std::string_view line = end == std::string_view::npos ? before : before.substr(end + 1);
  const std::size_t indent = line.find_first_not_of(" \t");
  return indent == std::string_view::npos ? line.size() : indent;
}

/// Where the children of a block start their lines: as the first that does, else a step deeper than the block.
std::size_t XmlWriter::child_indent(Node n) const {
  for (Node c = document_.first_child(n); c != fiche::none; c = document_.next(c)) {
    if (document_.made(c) || document_.kind(c) == NodeKind::text) continue;
    if (const auto indent = starts_line(c)) return *indent;
  }
  return indent_of(n) + indent_step;
}

/// Nodes that stand on a line of their own, where blank beside them means nothing.
std::unordered_set<Node> XmlWriter::standing_alone(Node n, bool in_line) const {
  std::unordered_set<Node> alone;
  for (const fiche::Run& run : fiche::runs_of(document_, n, in_line)) {
    if (run.prose) continue;
    for (const fiche::Part& part : run.parts) alone.insert(part.node);
  }
  return alone;
}

/// Whether a blank text goes, the node behind it having been removed: only where that changes no meaning.
bool XmlWriter::falls(Node blank, Node parent, bool in_line, const std::unordered_set<Node>& alone) const {
  if (document_.kind(blank) != NodeKind::text || document_.made(blank) || document_.changed(blank) ||
      !fiche::is_blank(document_.value(blank))) {
    return false;
  }
  const Node next = document_.next(blank);
  const std::uint32_t end = document_.span(blank).end;
  if (next == fiche::none) return !in_line && content_end(parent) > end;
  if (document_.made(next) || document_.span(next).begin == end) return false;
  if (document_.kind(next) != NodeKind::text) return alone.contains(next);
  const std::string_view value = document_.value(next);
  return !value.empty() && fiche::is_blank(value.substr(0, 1));
}

// ---------------------------------------------------------------- writing

void XmlWriter::break_line(std::size_t indent) {
  out_ += line_end_;
  out_.append(indent, ' ');
}

void XmlWriter::start_tag(Node n, bool empty) {
  const base::Span head = document_.head_span(n);
  const bool closed = self_closed(n);
  std::uint32_t tail = head.end - (closed ? 2U : 1U);
  if (!document_.changed(n)) {
    out_ += slice(head.begin, tail);
  } else {
    while (is(bytes_[tail - 1], xml_space)) --tail;
    out_ += "<" + std::string(document_.name(n));
    for (fiche::Attr a = document_.first_attribute(n); a != fiche::none; a = document_.next_attribute(a)) {
      const std::string value = escaped(document_.attribute_value(a), Spelling::xml, true);
      if (document_.attribute_made(a)) {
        out_ += " " + std::string(document_.attribute_name(a)) + "=\"" + value + "\"";
        continue;
      }
      const base::Span whole = document_.attribute_span(a);
      std::uint32_t lead = whole.begin;
      while (is(bytes_[lead - 1], xml_space)) --lead;
      if (!document_.attribute_changed(a)) {
        out_ += slice(lead, whole.end);
      } else {  // its name may have changed too; spacing and quotes stay
        const base::Span inner = document_.value_span(a);
        out_ += slice(lead, whole.begin);
        out_ += document_.attribute_name(a);
        out_ += slice(document_.attribute_name_span(a).end, inner.begin);
        const char quote = bytes_[inner.begin - 1];
        for (const char c : value) out_ += c == '\'' && quote == c ? "&apos;" : std::string(1, c);
        out_ += quote;
      }
    }
    out_ += slice(tail, head.end - (closed ? 2U : 1U));
  }
  out_ += closed && empty ? "/>" : ">";
}

void XmlWriter::own_line(Node n, std::size_t indent) {
  const std::size_t line = out_.find_last_of('\n');
  const bool blank_line = line != std::string::npos && fiche::is_blank(std::string_view(out_).substr(line));
  if (blank_line) {
    out_.resize(line + 1);
    out_.append(indent, ' ');
  } else {
    break_line(indent);
  }
  std::string laid_out;
  layout_.block(n, indent, laid_out);
  for (const char c : laid_out) {
    if (c == '\n') {
      out_ += line_end_;
    } else {
      out_ += c;
    }
  }
}

void XmlWriter::content(Node n, bool in_line) {
  const std::unordered_set<Node> alone = standing_alone(n, in_line);
  const std::size_t indent = child_indent(n);
  bool break_after = false;
  for (Node c = document_.first_child(n); c != fiche::none; c = document_.next(c)) {
    if (falls(c, n, in_line, alone)) continue;
    const bool text = document_.kind(c) == NodeKind::text;
    if (document_.made(c) && alone.contains(c)) {
      own_line(c, indent);
      break_after = true;
      continue;
    }
    const bool breaks = text && document_.value(c).starts_with('\n') && !document_.made(c);
    if (break_after && !breaks) break_line(indent);
    break_after = false;
    node(c, in_line || (!text && !alone.contains(c)));
  }
  if (break_after) break_line(indent_of(n));
}

void XmlWriter::element(Node n, bool in_line) {
  const bool empty = document_.first_child(n) == fiche::none;
  start_tag(n, empty);
  content(n, in_line);
  if (self_closed(n)) {
    if (!empty) out_ += "</" + std::string(document_.name(n)) + ">";
    return;
  }
  const std::uint32_t end = content_end(n);
  if (document_.changed(n)) {
    out_ += "</" + std::string(document_.name(n)) + ">";
  } else {
    out_ += slice(end, document_.span(n).end);
  }
}

void XmlWriter::node(Node n, bool in_line) {
  const base::Span whole = document_.span(n);
  if (document_.made(n)) {
    layout_.in_line(n, out_);
  } else if (!document_.changed_inside(n)) {
    out_ += slice(whole.begin, whole.end);
  } else if (document_.kind(n) == NodeKind::element) {
    element(n, in_line);
  } else {
    layout_.in_line(n, out_);
  }
}

std::string XmlWriter::whole() {
  if (!document_.changed_inside(document_.top())) return std::string(bytes_);
  const auto lead_of = [&](std::uint32_t at) {
    while (at > 0 && is(bytes_[at - 1], xml_space)) --at;
    return at;
  };
  const auto size = static_cast<std::uint32_t>(bytes_.size());
  std::uint32_t prolog = bytes_.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  if (bytes_.substr(prolog).starts_with("<?xml") && is(bytes_[prolog + 5], xml_space)) {
    prolog = static_cast<std::uint32_t>(bytes_.find("?>", prolog)) + 2;
  }
  out_ += slice(0, prolog);
  for (Node c = document_.first_child(document_.top()); c != fiche::none; c = document_.next(c)) {
    if (document_.made(c)) {
      if (!out_.empty() && !out_.ends_with('\n') && out_.size() > 3) out_ += line_end_;
      layout_.block(c, 0, out_);
      continue;
    }
    const std::uint32_t begin = document_.span(c).begin;
    const std::string_view lead = slice(lead_of(begin), begin);
    const Node before = document_.previous(c);
    if (before != fiche::none && document_.made(before) && lead.find('\n') == std::string_view::npos)
      out_ += line_end_;
    out_ += lead;
    node(c, false);
  }
  out_ += slice(lead_of(size), size);
  return std::move(out_);
}

}  // namespace

std::string write_xml(const Document& document) { return XmlWriter(document).whole(); }

}  // namespace tamis::format
