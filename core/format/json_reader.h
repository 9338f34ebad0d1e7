#ifndef CORE_FORMAT_JSON_READER_H
#define CORE_FORMAT_JSON_READER_H

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/format/xml_reader.h"

namespace tamis::format {

/// Builds the tree from the events of a JSON parser, which read_json.cpp drives:
///   {"#before": [leaf...], "fiche": BODY, "#after": [leaf...]}
///   BODY  "text"  or  {"attribute": "value"..., "content": [piece...]}
///   piece "text"  or  {"name": BODY}  or  leaf  or  {"#xml": "<h:x/>"}
///   leaf  {"#comment": "text"}  or  {"#instruction": "target data"}
/// Members may stand in any order. An attribute whose own name is "content" is spelled "#content".
///
/// Every event returns false to stop the parser; the finding then says why. Events come right after their token
/// was read: `next` is the offset behind it (behind a number, one character more), from which, and from the end of
/// the token before, its place is found.
class JsonReader {
 public:
  JsonReader(const base::Source& source, fiche::Document& tree, std::vector<base::Finding>& findings)
      : bytes_(source.bytes()), tree_(tree), findings_(findings) {}

  bool start_object(std::size_t next);
  bool end_object(std::size_t next);
  bool start_array(std::size_t next);
  bool end_array(std::size_t next);
  bool key(std::size_t next, const std::string& text);
  bool string(std::size_t next, const std::string& text);
  bool number();
  bool word(std::size_t next);  ///< true, false, null
  bool syntax_fault();          ///< the parser could not go on
  bool finish();                ///< what can be said at the end only: prefixes

 private:
  enum class Place : unsigned char { top, leaves, item, body, content };
  /// What the value behind the last name is for.
  enum class Wanted : unsigned char {
    nothing,
    body,
    attribute,
    content,
    before,
    after,
    comment,
    instruction,
    foreign
  };
  struct Frame {
    Place place;
    fiche::Node node;  ///< the element, or the node whose children these are
    std::uint32_t begin;
    std::uint32_t items = 0;            ///< names or values read so far
    bool content = false;               ///< "content" has been given
    fiche::Node element = fiche::none;  ///< item: the element it holds
  };

  // json_reader.cpp
  base::Span token(std::size_t next);
  std::string_view kept(base::Span inside, std::string_view text) const;
  bool open(Place place, fiche::Node node, base::Span token);
  bool top_key(base::Span inside, std::string_view name);
  bool body_key(base::Span inside, std::string_view name);
  bool item_key(base::Span inside, std::string_view name);
  bool new_element(base::Span inside, std::string_view name, std::uint32_t begin);
  bool new_attribute(base::Span whole, base::Span inside, std::string_view value);
  bool namespace_attribute(std::string_view name, std::string_view value);
  void new_text(fiche::Node parent, base::Span inside, std::string_view value);
  bool seen_before(base::Span inside, std::string_view name);
  bool new_leaf(base::Span inside, std::string_view value);
  bool instruction(base::Span inside, std::string_view value);
  void append_leaf(fiche::NodeKind kind, base::Span inside, std::string_view name, std::string_view value);
  void body_ends(std::size_t end);

  // json_prefixes.cpp
  bool declare_prefixes();
  bool check_prefixes();
  bool check_foreign();

  // json_faults.cpp
  bool misplaced(base::Span token, std::string_view found);
  bool bad_name(base::Span inside, std::string_view name, bool attribute);
  bool check_characters(base::Span inside);
  bool value_fault(std::uint32_t at);
  bool string_fault(std::uint32_t at);
  bool number_fault(std::uint32_t at);
  bool escape_fault(std::uint32_t at, std::uint32_t& next);
  bool file_ends();
  [[nodiscard]] std::string expected() const;
  [[nodiscard]] bool wants_name() const;

  bool fail(std::string_view rule, base::Span where, std::string message, std::string advice);
  [[nodiscard]] std::uint32_t skip_blank(std::uint32_t at) const;
  [[nodiscard]] std::uint32_t number_end(std::uint32_t at) const;  ///< of a number the parser took
  [[nodiscard]] std::uint32_t word_end(std::uint32_t at) const;    ///< of anything like a word or number
  [[nodiscard]] std::string shown(std::uint32_t at) const;
  [[nodiscard]] base::Span character(std::uint32_t at) const;
  [[nodiscard]] std::string_view slice(base::Span s) const {
    return std::string_view(bytes_).substr(s.begin, s.end - s.begin);
  }

  const std::string& bytes_;
  fiche::Document& tree_;
  std::vector<base::Finding>& findings_;
  std::vector<Frame> frames_;
  Wanted wanted_ = Wanted::nothing;
  base::Span name_;             ///< the last name, inside its quotes
  std::string_view name_text_;  ///< the same decoded, without the # of "#content"
  std::string name_kept_;
  fiche::Node element_ = fiche::none;  ///< the one whose body is wanted
  std::uint32_t read_to_ = 0;          ///< end of the last token
  bool last_was_key_ = false;
  bool after_now_ = false;  ///< the leaves at hand stand behind the root
  std::size_t depth_ = 0;
  fiche::Node first_after_ = fiche::none;
  bool before_given_ = false, after_given_ = false;
  std::unordered_set<std::string_view> many_names_;  ///< of the body at hand, once it has many
  fiche::Node many_names_of_ = fiche::none;
  std::vector<Prefix> prefixes_;
  std::vector<fiche::Attr> prefixed_;
  std::vector<fiche::Node> foreign_;
};

}  // namespace tamis::format

#endif
