#ifndef CORE_FORMAT_LAYOUT_H
#define CORE_FORMAT_LAYOUT_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/document.h"
#include "core/fiche/prose.h"

namespace tamis::format {

// How a file is laid out.
//
// White space first, as it decides what may be moved. Blank is space, tab and line end; the no-break spaces are
// letters and stay where they are. In text a run of blank means one space. At the ends of a block (step, gate,
// note, ingredient ...), and beside one, blank means nothing. A mark in a sentence (use, amount, food-temp, until
// ...) keeps the space at its ends. core/fiche/prose.h has the table of marks.
//
// XML
// - First line <?xml version="1.0" encoding="UTF-8"?>; LF line ends; one at the end of the file.
// - Two spaces of indent a level. Each block on a line of its own; a block with text alone on one line with its
// tags.
// - A line has at most 110 columns (Unicode characters) where it can be broken. Prose is filled and goes on one
// level
//   deeper than its tag; it is broken at plain spaces of the text alone, never inside a tag, a comment or foreign
//   XML, nor in an element that holds a value (title, ingredient, amount, time, a temperature ...).
// - Attributes stand on the line of the tag when they fit; else they are filled below each other, under the first.
//   They keep their order, but xmlns comes first. Double quotes; & < " tab, line feed and carriage return as
//   references in values, & < and carriage return (and > behind ]]) in text.
// - An element without content is written <name/>.
// - A blank line before each component, above the comments that lead up to it. No other blank lines.
// - A comment, instruction or foreign element among blocks stands on a line of its own, inside a sentence in the
//   sentence. What is in it stays as it is.
//
// JSON
// - Two spaces of indent. {"name": body}: the body lists the attributes in order, then "content".
// - An element that fits in 110 columns, its comma included, stands on one line; else each attribute, and each
// piece
//   of the content, has a line of its own.
// - A body without attributes whose content is one text is that string. Without content, "content" is left out.
// - Texts are folded as in XML, so nothing in the file says where a line of prose was broken.

inline constexpr std::size_t line_width = 110;
inline constexpr std::size_t indent_step = 2;

/// XML of single nodes, for the layout of a whole document and for what the writer adds to one.
class XmlLayout {
 public:
  explicit XmlLayout(const fiche::Document& document) : document_(document) {}

  std::string whole() const;
  /// A node on a line of its own, which starts at `indent`; neither indent nor line end around it.
  void block(fiche::Node n, std::size_t indent, std::string& out) const;
  /// A node in a sentence, on one line.
  void in_line(fiche::Node n, std::string& out) const;

 private:
  void flow(fiche::Node n, std::string& out) const;
  void append_text(std::string_view text, fiche::Node owner, std::string& out) const;
  std::string sentence(const fiche::Run& run, fiche::Node owner) const;
  void lines(const std::vector<fiche::Run>& runs, std::size_t i, std::size_t indent, std::string& out) const;
  void leaf(fiche::Node n, std::string& out) const;
  void head(fiche::Node n, std::size_t indent, bool empty, bool wrap, std::string& out) const;
  void element(fiche::Node n, std::size_t indent, std::string& out) const;

  const fiche::Document& document_;
};

/// The same in JSON. `in_line`: the node is a mark, or stands in one.
class JsonLayout {
 public:
  explicit JsonLayout(const fiche::Document& document) : document_(document) {}

  std::string whole() const;
  /// A piece of content that starts at column `indent`, on one line where it fits.
  void piece(fiche::Node n, std::size_t indent, bool in_line, std::string& out) const;
  /// What stands behind an element's name.
  void body(fiche::Node n, std::size_t indent, bool in_line, std::string& out) const;
  /// Pieces, each on a line of its own at `indent`.
  void pieces(fiche::Node n, std::size_t indent, bool in_line, std::string& out) const;

 private:
  struct Piece;
  std::vector<Piece> pieces_of(fiche::Node n, bool in_line) const;
  bool one_line(fiche::Node n, bool in_line, std::size_t most, std::string& out) const;
  bool one_line_body(fiche::Node n, bool in_line, std::size_t most, std::string& out) const;
  void leaf(fiche::Node n, std::string& out) const;
  void leaves(std::string_view name, bool before, std::string& out) const;
  bool is_text_alone(fiche::Node n, const std::vector<Piece>& pieces) const;

  const fiche::Document& document_;
};

std::string quoted_json(std::string_view text);

}  // namespace tamis::format

#endif
