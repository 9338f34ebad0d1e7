#include <catch2/catch.hpp>

#include "tests/format/random_document.h"
#include "tests/format/reading.h"

namespace tamis::tests {
namespace {

using fiche::Attr;
using fiche::Document;
using fiche::Node;
using fiche::NodeKind;
using fiche::Spelling;

std::shared_ptr<Document> read_back(const std::string& text, Spelling spelling) {
  const format::Read read = spelling == Spelling::xml ? read_xml(text) : read_json(text);
  const std::string refusal = read.findings.empty() ? "" : read.findings.front().message;
  CAPTURE(text, refusal);
  REQUIRE(read.document != nullptr);
  return read.document;
}

// ---------------------------------------------------------------- spans

void check_attribute(const Document& d, Attr a) {
  const base::Source& source = d.source();
  const base::Span whole = d.attribute_span(a), name = d.attribute_name_span(a), value = d.value_span(a);
  CHECK(whole.begin == name.begin);
  CHECK(name.end < value.begin + 1);
  CHECK(value.end <= whole.end);
  const std::string_view raw = source.slice(value);
  const std::string_view decoded = d.attribute_value(a);
  if (raw.find_first_of("&\t\r\n\\") == std::string_view::npos) CHECK(raw == decoded);
  CHECK(d.value_span(a, 0, decoded.size()).begin == value.begin);
  if (!decoded.empty()) CHECK(d.value_span(a, 0, decoded.size()).end == value.end);
}

void check_spans(const Document& d, Node n) {
  const base::Source& source = d.source();
  const base::Span whole = d.span(n);
  CHECK(whole.begin <= whole.end);
  CHECK(whole.end <= source.bytes().size());
  if (n != d.top()) {
    CHECK(d.span(d.parent(n)).begin <= whole.begin);
    CHECK(whole.end <= d.span(d.parent(n)).end);
  }
  if (d.kind(n) == NodeKind::element && n != d.top()) CHECK(source.slice(d.name_span(n)) == d.name(n));
  for (Attr a = d.first_attribute(n); a != fiche::none; a = d.next_attribute(a)) check_attribute(d, a);
  for (Node c = d.first_child(n); c != fiche::none; c = d.next(c)) {
    if (d.spelling() == Spelling::xml && n != d.top() && d.next(c) != fiche::none) {
      CHECK(d.span(c).end == d.span(d.next(c)).begin);
    }
    check_spans(d, c);
  }
}

// ---------------------------------------------------------------- edits

class RandomEdits {
 public:
  RandomEdits(Document& document, unsigned seed) : d_(document), random_(seed) {}

  void some() {
    for (std::size_t n = 1 + random_() % 6; n > 0; --n) one();
  }

 private:
  std::vector<Node> nodes() {
    std::vector<Node> out;
    collect(d_.top(), out);
    return out;
  }
  void collect(Node n, std::vector<Node>& out) {
    if (n != d_.top()) out.push_back(n);
    for (Node c = d_.first_child(n); c != fiche::none; c = d_.next(c)) collect(c, out);
  }
  Node some_child(Node n) {
    Node c = d_.first_child(n);
    while (c != fiche::none && random_() % 3 != 0) c = d_.next(c);
    return c;
  }
  std::string words() {
    static const std::string rows[] = {"a",  " b & <c> ]]> \"d\"", "½ °", "", " ", "\n", "x\ty\r",
                                       "--", "two  blanks",        ">"};
    return rows[random_() % std::size(rows)];
  }

  void one() {
    const std::vector<Node> all = nodes();
    const Node n = all[random_() % all.size()];
    if (d_.kind(n) == NodeKind::foreign) return d_.set_value(n, "<h:new>\n</h:new>");
    if (d_.kind(n) == NodeKind::comment || d_.kind(n) == NodeKind::text) {
      if (random_() % 3 == 0) return d_.remove(n);
      return d_.set_value(n, words());
    }
    if (d_.kind(n) == NodeKind::element) return element(n);
  }

  void element(Node n) {
    using fiche::At;
    using fiche::El;
    static constexpr El elements[] = {El::note, El::use, El::gate, El::component, El::amount};
    const El some = elements[random_() % std::size(elements)];
    switch (random_() % 10) {
      case 0:
        return d_.set_attribute(n, At::id, words());
      case 1:
        return d_.set_attribute(n, At::was_at, words());
      case 2:
        return d_.remove_attribute(n, At::id);
      case 3:
        return d_.set_text(d_.add_element(n, some, some_child(n)), words());
      case 4:
        (void)d_.add_text(n, words(), some_child(n));
        return;
      case 5:
        (void)d_.add_comment(n, words(), some_child(n));
        return;
      case 6:
        if (n != d_.root()) d_.remove(n);
        return;
      case 8:
        if (d_.find(n, At::of) != fiche::none && d_.find(n, At::take) == fiche::none)
          d_.rename_attribute(n, At::of, At::take);
        return;
      case 7:
        (void)d_.add_comment(d_.top(), words(), d_.root());
        return;
      default:
        if (n != d_.root()) d_.rename(n, some);
    }
  }

  Document& d_;
  std::mt19937 random_;
};

constexpr unsigned documents = 400;

}  // namespace

TEST_CASE("any document survives reading, writing and laying out", "[round-trip]") {
  for (unsigned seed = 1; seed <= documents; ++seed) {
    const std::string text = RandomDocument(seed).make();
    CAPTURE(seed, text);
    const auto read = read_back(text, Spelling::xml);
    check_spans(*read, read->top());
    CHECK(format::write(*read) == text);

    const std::string xml = format::lay_out(*read, Spelling::xml);
    const std::string json = format::lay_out(*read, Spelling::json);
    const auto from_xml = read_back(xml, Spelling::xml);
    const auto from_json = read_back(json, Spelling::json);
    CAPTURE(xml, json);
    REQUIRE(same_meaning(*read, *from_xml));
    REQUIRE(same_meaning(*read, *from_json));
    check_spans(*from_json, from_json->top());
    REQUIRE(format::lay_out(*from_xml, Spelling::xml) == xml);
    REQUIRE(format::lay_out(*from_json, Spelling::json) == json);
    REQUIRE(format::lay_out(*from_json, Spelling::xml) == xml);
    REQUIRE(format::lay_out(*from_xml, Spelling::json) == json);
    REQUIRE(format::write(*from_json) == json);
  }
}

TEST_CASE("an edited document, written and read again, means the same", "[round-trip]") {
  for (unsigned seed = 1; seed <= documents; ++seed) {
    const std::string text = RandomDocument(seed).make();
    for (const Spelling spelling : {Spelling::xml, Spelling::json}) {
      const std::string start =
          spelling == Spelling::xml ? text : format::lay_out(*read_back(text, Spelling::xml), Spelling::json);
      const auto document = read_back(start, spelling);
      RandomEdits(*document, seed).some();
      const std::string written = format::write(*document);
      CAPTURE(seed, start, written);
      const auto again = read_back(written, spelling);
      REQUIRE(same_meaning(*document, *again));
      check_spans(*again, again->top());
    }
  }
}

}  // namespace tamis::tests
