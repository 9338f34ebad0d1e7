#ifndef CORE_FICHE_DOCUMENT_H
#define CORE_FICHE_DOCUMENT_H

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/source.h"
#include "core/fiche/vocabulary.h"

namespace tamis::fiche {

/// Index of a node or an attribute of one Document; stays good through every edit.
using Node = std::uint32_t;
using Attr = std::uint32_t;
inline constexpr std::uint32_t none = 0xFFFFFFFF;

enum class NodeKind : unsigned char {
  element,      ///< of our namespace (a name we do not know is El::unknown)
  text,         ///< character data, decoded
  comment,      ///< what stands between <!-- and -->
  instruction,  ///< processing instruction: target and data
  foreign,      ///< an element of another namespace with all it holds: one verbatim string of XML
};

enum class Spelling : unsigned char { xml, json };

/// A fiche or kitchen file as read, in either spelling: the source bytes and one tree over them.
///
/// The tree keeps what the file says, whatever its worth: unknown elements and attributes, blank text, comments.
/// Every node and attribute has a span in the source; edits keep it as the *origin*, so a finding on a changed
/// document still points home. A node made by an edit has the span of the node it was made beside.
///
/// Values are decoded (entities, JSON escapes, line ends as LF). Strings given out stay good until the document dies.
/// Not for use from two threads at once; moves are cheap, copies are made by clone().
class Document {
 public:
  Document(std::shared_ptr<const base::Source> source, Spelling spelling);
  Document(Document&&) noexcept = default;
  Document& operator=(Document&&) noexcept = default;
  [[nodiscard]] Document clone() const;

  [[nodiscard]] const base::Source& source() const { return *source_; }
  [[nodiscard]] const std::shared_ptr<const base::Source>& shared_source() const { return source_; }
  [[nodiscard]] Spelling spelling() const { return spelling_; }

  // ---- reading. The top node (index 0) is no element: its children are the prolog, the root element, the epilog.
  [[nodiscard]] Node top() const { return 0; }
  [[nodiscard]] Node root() const { return root_; }  ///< none in a document without one
  [[nodiscard]] NodeKind kind(Node n) const { return nodes_[n].kind; }
  [[nodiscard]] El el(Node n) const { return nodes_[n].el; }  ///< El::unknown for what is no element of ours
  [[nodiscard]] std::string_view name(Node n) const;          ///< element or instruction target, as written
  [[nodiscard]] std::string_view value(Node n) const;         ///< text, comment, instruction data, foreign XML
  [[nodiscard]] Node parent(Node n) const { return nodes_[n].parent; }
  [[nodiscard]] Node first_child(Node n) const { return nodes_[n].first_child; }
  [[nodiscard]] Node next(Node n) const { return nodes_[n].next; }
  [[nodiscard]] Node previous(Node n) const { return nodes_[n].previous; }
  [[nodiscard]] Attr first_attribute(Node n) const { return nodes_[n].first_attribute; }
  [[nodiscard]] Attr next_attribute(Attr a) const { return attributes_[a].next; }
  [[nodiscard]] At at(Attr a) const { return attributes_[a].at; }
  [[nodiscard]] std::string_view attribute_name(Attr a) const;  ///< as written, prefix included
  [[nodiscard]] std::string_view attribute_value(Attr a) const;
  [[nodiscard]] Node owner(Attr a) const { return attributes_[a].owner; }

  [[nodiscard]] Attr find(Node n, At at) const;                    ///< none when the element has it not
  [[nodiscard]] std::string_view get(Node n, At at) const;         ///< "" when the element has it not
  [[nodiscard]] Node child(Node n, El el) const;                   ///< first child element of that name, or none
  [[nodiscard]] std::string direct_text(Node n) const;             ///< its own text, without that of child elements
  [[nodiscard]] std::string all_text(Node n) const;                ///< text of it and all elements in it

  // ---- places
  [[nodiscard]] base::Span span(Node n) const { return nodes_[n].span; }            ///< tags included
  [[nodiscard]] base::Span name_span(Node n) const { return nodes_[n].name_span; }
  /// The start tag: what a finding about an element as a whole marks, so that it does not underline a page.
  [[nodiscard]] base::Span head_span(Node n) const { return nodes_[n].head_span; }
  [[nodiscard]] base::Span attribute_span(Attr a) const { return attributes_[a].span; }  ///< name and value
  [[nodiscard]] base::Span attribute_name_span(Attr a) const { return attributes_[a].name_span; }
  [[nodiscard]] base::Span value_span(Attr a) const { return attributes_[a].value_span; }  ///< inside the quotes
  /// Source bytes of [begin, end) of a decoded text or attribute value; the whole span after an edit.
  [[nodiscard]] base::Span text_span(Node text, std::size_t begin, std::size_t end) const;
  [[nodiscard]] base::Span value_span(Attr a, std::size_t begin, std::size_t end) const;

  // ---- edits. Each marks what it touches; the writer puts everything else back byte for byte.
  /// Of a text, comment, instruction or foreign XML. What a comment can't hold ("--") is kept apart by a space.
  void set_value(Node n, std::string_view value);
  void set_attribute(Node n, At at, std::string_view value);  ///< changes it, or adds it behind the others
  void set_attribute(Node n, std::string_view name, std::string_view value);
  void remove_attribute(Node n, At at);
  /// Gives an attribute another name in its place; there must be none of that name yet.
  void rename_attribute(Node n, At from, At to);
  Node add_element(Node parent, El el, Node before = none);   ///< before none: as the last child
  Node add_text(Node parent, std::string_view text, Node before = none);
  Node add_comment(Node parent, std::string_view text, Node before = none);
  void remove(Node n);                                        ///< takes it out of its parent
  void rename(Node n, El el);
  /// Replaces all of an element's own text by one text (put where its first text was, else as the first child).
  void set_text(Node n, std::string_view text);

  [[nodiscard]] bool changed(Node n) const { return nodes_[n].changed; }  ///< itself: name, attributes, own value
  [[nodiscard]] bool changed_inside(Node n) const { return nodes_[n].changed_inside; }  ///< it or anything in it
  [[nodiscard]] bool attribute_changed(Attr a) const { return attributes_[a].changed; }
  [[nodiscard]] bool made(Node n) const { return nodes_[n].made; }        ///< by an edit, not read
  [[nodiscard]] bool attribute_made(Attr a) const { return attributes_[a].made; }

  // ---- for readers (core/format) only: building the tree as it is read
  struct NewNode {
    NodeKind kind = NodeKind::element;
    Node parent = 0;
    std::string_view name;
    std::string_view value;   ///< decoded; kept without a copy when it is a slice of the source
    base::Span span, name_span, head_span;
    base::Span raw;           ///< the undecoded value
    Node before = none;       ///< none: as the last child
  };
  Node append(const NewNode& made);
  /// `value_span` is inside the quotes, `end` behind the closing one.
  Attr append_attribute(Node owner, std::string_view name, std::string_view value, base::Span name_span,
                        base::Span value_span, std::uint32_t end);
  void reserve(std::size_t nodes, std::size_t attributes);
  void close(Node n, std::uint32_t end) { nodes_[n].span.end = end; }
  void set_root(Node n) { root_ = n; }

 private:
  void add_all_text(Node n, std::string& out) const;
  /// A string kept in the source bytes or, with the top bit of `at` set, in own_: 15 bits of chunk, 16 of place.
  struct Kept {
    std::uint32_t at = 0;
    std::uint32_t size = 0;
  };
  struct NodeData {
    NodeKind kind;
    El el;
    bool changed, changed_inside, made;
    Node parent, first_child, last_child, next, previous;
    Attr first_attribute, last_attribute;
    Kept name, value;
    base::Span span, name_span, head_span, raw;
  };
  struct AttributeData {
    At at;
    bool changed, made;
    Node owner;
    Attr next;
    Kept name, value;
    base::Span span, name_span, value_span;
  };

  [[nodiscard]] Kept keep(std::string_view text);
  [[nodiscard]] Kept keep_own(std::string_view text);
  [[nodiscard]] std::string_view text_of(Kept kept) const;
  void mark(Node n);
  Node insert(NodeKind kind, Node parent, Node before);

  std::shared_ptr<const base::Source> source_;
  Spelling spelling_;
  Node root_ = none;
  std::vector<NodeData> nodes_;
  std::vector<AttributeData> attributes_;
  std::vector<std::shared_ptr<char[]>> own_;  // chunks that never move; a clone shares them and adds its own behind
  std::size_t own_used_ = 0, own_size_ = 0;   // of the last chunk
};

/// Equal in meaning to a reader: same elements, attributes in any order, text with white space folded as the
/// formatter folds it, comments and foreign XML alike, blank text between elements without mixed content left out.
bool same_meaning(const Document& a, const Document& b);

}  // namespace tamis::fiche

#endif
