#include "core/fiche/document.h"

#include <catch2/catch.hpp>

namespace tamis::fiche {
namespace {

base::Span span_of(const std::string& text, std::string_view part) {
  const auto at = static_cast<std::uint32_t>(text.find(part));
  return {at, at + static_cast<std::uint32_t>(part.size())};
}

/// A document over `text` with one text node whose raw value is all of it.
struct OneText {
  OneText(const std::string& text, std::string_view decoded, Spelling spelling)
      : document(std::make_shared<const base::Source>("a", text), spelling) {
    Document::NewNode made;
    made.kind = NodeKind::text;
    made.value = decoded;
    made.span = made.raw = {0, static_cast<std::uint32_t>(text.size())};
    node = document.append(made);
  }
  std::string_view source_of(std::string_view decoded_part) const {
    const std::size_t at = document.value(node).find(decoded_part);
    return document.source().slice(document.text_span(node, at, at + decoded_part.size()));
  }
  Document document;
  Node node = none;
};

/// fiche > title > "A", and the fiche's id.
struct Small {
  Small() : document(std::make_shared<const base::Source>("a", text), Spelling::xml) {
    fiche = document.append({NodeKind::element, 0, text_view("fiche"), {}, {0, 38}, {1, 6}, {0, 14}, {}});
    document.set_root(fiche);
    const base::Span value = span_of(text, "a1");
    document.append_attribute(fiche, text_view("id"), text_view("a1"), span_of(text, "id"), value, value.end + 1);
    title = document.append({NodeKind::element, fiche, text_view("title"), {}, {14, 30}, {15, 20}, {14, 21}, {}});
    letter = document.append({NodeKind::text, title, {}, text_view("A"), {21, 22}, {21, 22}, {21, 22}, {21, 22}});
  }
  std::string_view text_view(std::string_view part) {
    return std::string_view(document.source().bytes()).substr(span_of(text, part).begin, part.size());
  }
  const std::string text = "<fiche id=\"a1\"><title>A</title></fiche>";
  Document document;
  Node fiche = none, title = none, letter = none;
};

}  // namespace

TEST_CASE("the place of decoded text in an XML source is found past references, CDATA and line ends",
          "[document]") {
  const OneText text("5 &#xB0;C\r\n<![CDATA[a & b]]>&amp;½z", "5 °C\na & b&½z", Spelling::xml);
  CHECK(text.source_of("5") == "5");
  CHECK(text.source_of("°") == "&#xB0;");
  CHECK(text.source_of("C") == "C");
  CHECK(text.source_of("\n") == "\r\n");
  CHECK(text.source_of("a & b") == "a & b");
  CHECK(text.source_of("b&") == "b]]>&amp;");
  CHECK(text.source_of("½z") == "½z");
  CHECK(text.source_of("°C\na") == "&#xB0;C\r\n<![CDATA[a");
}

TEST_CASE("the place of decoded text in a JSON source is found past escapes", "[document]") {
  const OneText text(R"(5 \u00b0C\n\ud83c\udf70 \"z\\)", "5 °C\n\xF0\x9F\x8D\xB0 \"z\\", Spelling::json);
  CHECK(text.source_of("°") == "\\u00b0");
  CHECK(text.source_of("C") == "C");
  CHECK(text.source_of("\n") == "\\n");
  CHECK(text.source_of("\xF0\x9F\x8D\xB0") == "\\ud83c\\udf70");
  CHECK(text.source_of("\"z") == "\\\"z");
  CHECK(text.source_of("z\\") == "z\\\\");
}

TEST_CASE("a value that stands in the source as it is takes no memory of its own", "[document]") {
  const Small small;
  CHECK(small.document.name(small.title).data() == small.document.source().bytes().data() + 16);
  CHECK(small.document.value(small.letter) == "A");
}

TEST_CASE("an edit marks what it touches and all above it, and nothing else", "[document]") {
  Small small;
  Document& d = small.document;
  d.set_value(small.letter, "B");
  CHECK(d.changed(small.letter));
  CHECK_FALSE(d.changed(small.title));
  CHECK(d.changed_inside(small.title));
  CHECK(d.changed_inside(d.top()));
  CHECK_FALSE(d.attribute_changed(d.first_attribute(small.fiche)));
}

TEST_CASE("setting what is there already changes nothing", "[document]") {
  Small small;
  small.document.set_attribute(small.fiche, At::id, "a1");
  small.document.set_text(small.title, "A");
  CHECK_FALSE(small.document.changed_inside(small.document.top()));
}

TEST_CASE("what an edit makes has the place of what it was made beside", "[document]") {
  Small small;
  Document& d = small.document;
  const Node note = d.add_element(small.fiche, El::note);
  CHECK(d.made(note));
  CHECK(d.span(note) == d.head_span(small.title));
  d.set_value(small.letter, "longer than before");
  CHECK(d.text_span(small.letter, 3, 9) == base::Span{21, 22});
}

TEST_CASE("nodes are put in and taken out where asked", "[document]") {
  Small small;
  Document& d = small.document;
  const Node last = d.add_element(small.fiche, El::note);
  const Node first = d.add_element(small.fiche, El::summary, small.title);
  CHECK(d.first_child(small.fiche) == first);
  CHECK(d.next(first) == small.title);
  CHECK(d.next(small.title) == last);
  CHECK(d.previous(small.title) == first);
  d.remove(small.title);
  CHECK(d.next(first) == last);
  CHECK(d.previous(last) == first);
  d.remove(last);
  d.remove(first);
  CHECK(d.first_child(small.fiche) == none);
  d.remove_attribute(small.fiche, At::id);
  CHECK(d.first_attribute(small.fiche) == none);
  CHECK(d.get(small.fiche, At::id) == "");
}

TEST_CASE("a clone goes its own way", "[document]") {
  Small small;
  small.document.set_value(small.letter, "before");
  Document copy = small.document.clone();
  copy.set_value(small.letter, "copy");
  small.document.set_value(small.letter, "first");
  CHECK(copy.value(small.letter) == "copy");
  CHECK(small.document.value(small.letter) == "first");
  CHECK(copy.attribute_value(copy.first_attribute(small.fiche)) == "a1");
}

TEST_CASE("strings stay good through any number of edits", "[document]") {
  Small small;
  small.document.set_value(small.letter, std::string(100000, 'x'));
  const std::string_view large = small.document.value(small.letter);
  for (int i = 0; i < 5000; ++i)
    small.document.set_attribute(small.fiche, At::id, std::string(40, 'a') + std::to_string(i));
  CHECK(large == std::string(100000, 'x'));
  CHECK(small.document.get(small.fiche, At::id) == std::string(40, 'a') + "4999");
}

TEST_CASE("a comment is kept such that XML can hold it", "[document]") {
  Small small;
  const Node comment = small.document.add_comment(small.fiche, "a--b---\r\nc-");
  CHECK(small.document.value(comment) == "a- -b- - -\nc- ");
}

}  // namespace tamis::fiche
