#ifndef CORE_FORMAT_XML_READER_H
#define CORE_FORMAT_XML_READER_H

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/format/format.h"
#include "core/format/xml_chars.h"

namespace tamis::format {

/// A prefix that the root element declares, and the namespace it stands for.
struct Prefix {
  std::string name, uri;
};

inline constexpr std::string_view xml_namespace = "http://www.w3.org/XML/1998/namespace";
inline constexpr std::string_view xmlns_namespace = "http://www.w3.org/2000/xmlns/";

/// Why a prefix can't be declared; `rule` is empty when it can.
struct PrefixFault {
  std::string_view rule;
  std::string message, advice;
};
PrefixFault prefix_fault(std::string_view name, std::string_view uri);

/// One strict pass over XML: checks that it is well-formed (XML 1.0 fifth edition, Namespaces in XML 1.0, without
/// DOCTYPE) and builds the tree as it goes. It reads a single time, never back except to decode, and keeps a value
/// that needs no decoding as a slice of the source. The first fault ends it.
///
/// The text must be valid UTF-8 without control characters (refuse_bytes) and be followed by a NUL, as in a
/// std::string: that NUL ends every loop.
class XmlReader {
 public:
  /// Without a tree, only checks.
  XmlReader(const std::string& text, fiche::Document* tree, std::vector<base::Finding>& findings);

  /// A whole file. False when refused; the finding says why.
  bool read_document();
  /// One element of a house's own namespace, as JSON keeps it in "#xml", its prefixes among those given.
  bool read_foreign(std::span<const Prefix> declared);

 private:
  struct Open {
    const char* name;
    const char* name_end;
    const char* head_end;
    fiche::Node node;  ///< none inside foreign XML
  };
  struct Attribute {
    const char* name;
    const char* colon;  ///< behind the prefix; null without one
    const char* name_end;
    const char* value;
    const char* value_end;
    bool decode;
    std::uint32_t space;  ///< number of the namespace, see resolve()
  };

  // xml_reader.cpp: the file as a whole
  bool declaration();
  bool declared(std::string_view name, std::string_view& value);
  bool content();
  bool markup();
  bool end_tag();
  bool close(const char* end);
  bool finish();
  bool unclosed();
  bool wrong_end(const Open& open, const char* begin, std::string_view name);

  // xml_tags.cpp: start tags, attributes, namespaces
  bool start_tag();
  bool tag_fault(const char* begin);
  bool attribute();
  bool attribute_value(Attribute& made);
  bool qualified_name(const char*& colon, std::string_view what);
  bool check_attributes(const char* tag);
  bool declare_prefixes(const char* tag);
  bool declare(const Attribute& attribute, std::string uri);
  bool resolve(Attribute& attribute);
  bool unique_attributes();
  bool twice(const Attribute& first, const Attribute& again);
  bool root_namespace(const char* name, const char* colon, const char* name_end);
  bool known_prefix(const char* name, const char* colon);
  bool open_element(const char* begin, const char* name, const char* colon, const char* name_end, bool empty);
  void keep_attributes(fiche::Node node);

  // xml_text.cpp: text, references, comments, instructions
  bool text();
  bool outside_root(const char* begin);
  bool cdata();
  bool reference();
  bool number_reference();
  bool named_reference();
  bool less_than_in_text(const char* at);
  bool comment();
  bool instruction();
  bool doctype();
  void keep_leaf(fiche::NodeKind kind, const char* begin, std::string_view name, const char* value,
                 const char* value_end, const char* head_end);

  bool fail(std::string_view rule, const char* begin, const char* end, std::string message, std::string advice);
  base::Finding& last() { return findings_.back(); }
  [[nodiscard]] std::uint32_t offset(const char* at) const { return static_cast<std::uint32_t>(at - base_); }
  [[nodiscard]] base::Span span(const char* begin, const char* end) const { return {offset(begin), offset(end)}; }
  [[nodiscard]] fiche::Node parent() const;
  /// What to mark when one character is wrong: all its bytes, nothing at the end of the file.
  [[nodiscard]] const char* character_end(const char* at) const;
  /// The character at `at` as a message names it: "\"x\"", or "the end of the file".
  [[nodiscard]] std::string shown(const char* at) const;
  void skip_space() {
    while (is(*p_, xml_space)) ++p_;
  }

  const char* base_;
  const char* end_;
  const char* p_;
  fiche::Document* tree_;
  std::vector<base::Finding>& findings_;
  std::vector<Open> open_;
  std::vector<Attribute> attributes_;
  std::vector<Prefix> prefixes_;
  std::size_t foreign_from_ = 0;  ///< how many elements are open where foreign XML starts; 0: not in any
  const char* root_end_ = nullptr;
  bool root_seen_ = false;
  bool fragment_ = false;
  std::string scratch_;
};

/// What a text or attribute value stands for: references and CDATA undone, line ends as LF (in an attribute: white
/// space as spaces). The raw bytes have been checked.
void decode_text(std::string_view raw, std::string& out);
void decode_attribute(std::string_view raw, std::string& out);

}  // namespace tamis::format

#endif
