#include <catch2/catch.hpp>

#include "tests/format/reading.h"

namespace tamis::tests {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

const std::string head = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\">";

Node find(const fiche::Document& document, Node from, El el) {
  if (document.el(from) == el) return from;
  for (Node c = document.first_child(from); c != fiche::none; c = document.next(c)) {
    if (const Node found = find(document, c, el); found != fiche::none) return found;
  }
  return fiche::none;
}

/// What the file becomes when `edit` is made on its first element of that name.
template <class Edit>
std::string edited(const std::string& text, El el, Edit edit) {
  const format::Read read = read_xml(text);
  REQUIRE(read.document != nullptr);
  edit(*read.document, find(*read.document, read.document->top(), el));
  std::string out = format::write(*read.document);
  const format::Read again = read_xml(out);
  CAPTURE(out);
  REQUIRE(again.document != nullptr);
  CHECK(same_meaning(*read.document, *again.document));
  return out;
}

}  // namespace

TEST_CASE("an unedited file is written back byte for byte", "[xml]") {
  const std::string rows[] = {
      head + "</fiche>",
      "\xEF\xBB\xBF<?xml  version='1.0'\tencoding='utf-8' ?>\r\n<!-- a -->\r\n" + head +
          "\r\n</fiche >\n\n<?b c ?>\n ",
      head +
          "<step\n  id = 'it&apos;s'   on=\"a\tb\"  >Warm&#160;to <food-temp >37&#xB0;C</food-temp\n>"
          "<![CDATA[ < 5 ]]>½ \xF0\x9F\x8D\xB0</step></fiche>",
  };
  for (const std::string& text : rows) {
    CAPTURE(text);
    const format::Read read = read_xml(text);
    REQUIRE(read.document != nullptr);
    CHECK(format::write(*read.document) == text);
  }
}

TEST_CASE("only what was changed is respelled", "[xml]") {
  CHECK(edited(head + "<step  id='x'\n on = 'hob' >Boil &#xB0;.</step ></fiche>", El::step, [](auto& d, Node n) {
          d.set_attribute(n, At::on, "the \"big\" oven");
        }) == head + "<step  id='x'\n on = 'the &quot;big&quot; oven' >Boil &#xB0;.</step></fiche>");
  CHECK(edited(head + "<step id='x'/></fiche>", El::step, [](auto& d, Node n) {
          d.set_attribute(n, At::id, "it's");
        }) == head + "<step id='it&apos;s'/></fiche>");
  CHECK(edited(head + "<step id='x' />\n</fiche>", El::step, [](auto& d, Node n) {
          d.set_attribute(n, At::do_, "mix");
        }) == head + "<step id='x' do=\"mix\" />\n</fiche>");
  CHECK(edited(head + "<step id='x'  on='hob'>A</step></fiche>", El::step, [](auto& d, Node n) {
          d.remove_attribute(n, At::id);
        }) == head + "<step  on='hob'>A</step></fiche>");
  CHECK(edited(head + "<title>A &#38; b</title><step/></fiche>", El::title, [](auto& d, Node n) {
          d.set_text(n, "C & d");
        }) == head + "<title>C &amp; d</title><step/></fiche>");
  CHECK(edited(head + "<step>Mix <time>5 min</time></step></fiche>", El::time, [](auto& d, Node n) {
          d.rename(n, El::until);
        }) == head + "<step>Mix <until>5 min</until></step></fiche>");
}

TEST_CASE("a removed element takes the blank before it along", "[xml]") {
  const auto remove = [](auto& d, Node n) { d.remove(n); };
  CHECK(edited(head + "\n  <title>A</title>\n  <summary/>\n  <note/>\n</fiche>", El::summary, remove) ==
        head + "\n  <title>A</title>\n  <note/>\n</fiche>");
  CHECK(edited(head + "\n  <title>A</title>\n</fiche>", El::title, remove) == head + "\n</fiche>");
  CHECK(edited(head + "<step>Mix <time>5 min</time> well</step></fiche>", El::time, remove) ==
        head + "<step>Mix  well</step></fiche>");
  CHECK(edited(head + "<until><tool/> <time/>x</until></fiche>", El::time, remove) ==
        head + "<until><tool/> x</until></fiche>");
  CHECK(edited("<!-- a -->\n<!-- b -->\n" + head + "</fiche>\n", El::fiche,
               [](auto& d, Node n) { d.remove(d.previous(n)); }) == "<!-- a -->\n" + head + "</fiche>\n");
}

TEST_CASE("a new element has a line of its own and its neighbour's indent", "[xml]") {
  const auto add_note = [](auto& d, Node n) { d.set_text(d.add_element(n, El::note), "B"); };
  CHECK(edited(head + "\n    <title>A</title>\n</fiche>\n", El::fiche, add_note) ==
        head + "\n    <title>A</title>\n    <note>B</note>\n</fiche>\n");
  CHECK(edited(head + "\r\n    <title>A</title>\r\n</fiche>\r\n", El::fiche, add_note) ==
        head + "\r\n    <title>A</title>\r\n    <note>B</note>\r\n</fiche>\r\n");
  CHECK(edited(head + "<title>A</title></fiche>", El::fiche, add_note) ==
        head + "<title>A</title>\n  <note>B</note>\n</fiche>");
  CHECK(edited(head + "\n  <component id=\"c\" />\n</fiche>", El::component, add_note) ==
        head + "\n  <component id=\"c\" >\n    <note>B</note>\n  </component>\n</fiche>");
  CHECK(edited(head + "\n  <title>A</title>\n</fiche>", El::title, [](auto& d, Node n) {
          d.add_element(d.parent(n), El::summary, n);
        }) == head + "\n  <summary/>\n  <title>A</title>\n</fiche>");
  CHECK(edited(head + "\n  <step>Mix.</step>\n</fiche>", El::step, [](auto& d, Node n) {
          d.set_text(d.add_element(n, El::gate), "cold");
          d.set_attribute(d.add_element(n, El::use), At::of, "milk");
        }) == head + "\n  <step>Mix.\n    <gate>cold</gate>\n    <use of=\"milk\"/></step>\n</fiche>");
  CHECK(edited(head + "</fiche>", El::fiche, [](auto& d, Node n) { d.add_comment(d.top(), " x--y- ", n); }) ==
        "<!-- x- -y- -->\n" + head + "</fiche>");
}

}  // namespace tamis::tests
