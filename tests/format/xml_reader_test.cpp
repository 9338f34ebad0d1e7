#include <catch2/catch.hpp>

#include "tests/format/reading.h"

namespace tamis::tests {
namespace {

struct Refused {
  std::string text;
  std::string_view rule;
  std::uint32_t line, column;
  std::string_view message;
};

// The start of every document below.
const std::string head = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\">";

std::vector<Refused> refused_rows() {
  return {
      // elements and tags
      {head + "<title>A</titel></fiche>", "not-well-formed", 1, 49, "found </titel>, expected </title>"},
      {head + "\n<title>A", "not-well-formed", 2, 1, "<title> is never closed"},
      {head + "</fiche></fiche>", "not-well-formed", 1, 49, "</fiche> closes nothing: no element is open"},
      {head + "</fiche>\n<fiche/>", "not-well-formed", 2, 1, "a second root element <fiche>"},
      {head + "</fiche >x", "not-well-formed", 1, 50, "text stands behind the root element"},
      {head + "</fiche x>", "not-well-formed", 1, 41, "the end tag holds \"x\" before its >"},
      {head + "<title", "not-well-formed", 1, 41, "the tag <title has no >"},
      {head + "<title <b/>", "not-well-formed", 1, 41, "the tag <title has no >"},
      {head + "<1a/></fiche>", "not-well-formed", 1, 41, "\"<\" is followed by \"1\", expected the name of a tag"},
      {head + "below < 5 °C</fiche>", "not-well-formed", 1, 47,
       "\"<\" is followed by \" \", expected the name of a tag"},
      {head + "<a:b:c/></fiche>", "not-well-formed", 1, 45, "\":\" has no place in the name of an element"},
      {head + "<a:/></fiche>", "not-well-formed", 1, 42, "the name \"a:\" has nothing behind its colon"},
      {head + "<title/ ></fiche>", "not-well-formed", 1, 47,
       "\"/\" in the tag <title, expected an attribute or >"},
      {head + "<title°/></fiche>", "not-well-formed", 1, 47,
       "\"°\" in the tag <title, expected an attribute or >"},
      // attributes
      {head + "<step id=a/></fiche>", "not-well-formed", 1, 50, "the value of \"id\" is not in quotes"},
      {head + "<step id=“a”/></fiche>", "not-well-formed", 1, 50, "the value of \"id\" stands in curly quotes"},
      {head + "<step optional/></fiche>", "not-well-formed", 1, 47, "the attribute \"optional\" has no value"},
      {head + "<step id=\"a\" on=\"½\" id=\"b\"/></fiche>", "not-well-formed", 1, 61,
       "the attribute \"id\" is given twice"},
      {head + "<step id=\"a\"on=\"b\"/></fiche>", "not-well-formed", 1, 53, "no space before \"o\""},
      {head + "<step id=\"a<b\"/></fiche>", "not-well-formed", 1, 52, "\"<\" stands in the value of \"id\""},
      {head + "<step id=\"a", "not-well-formed", 1, 47, "the file ends in the value of \"id\""},
      // references
      {head + "salt & pepper</fiche>", "not-well-formed", 1, 46, "\"&\" stands alone"},
      {head + "R&D</fiche>", "not-well-formed", 1, 42, "\"&\" stands alone"},
      {head + "180&nbsp;g</fiche>", "unknown-entity", 1, 44,
       "&nbsp; is not known; only &amp; &lt; &gt; &quot; &apos; have names"},
      {head + "<step on=\"&eacute;\"/></fiche>", "unknown-entity", 1, 51,
       "&eacute; is not known; only &amp; &lt; &gt; &quot; &apos; have names"},
      {head + "&#xZZ;</fiche>", "not-well-formed", 1, 41, "the character number &#x has no digits"},
      {head + "&#176</fiche>", "not-well-formed", 1, 41, "the character number &#176 has no ;"},
      {head + "&#0;</fiche>", "not-well-formed", 1, 41, "&#0; is no character that a text can hold"},
      {head + "&#xD800;</fiche>", "not-well-formed", 1, 41, "&#xD800; is no character that a text can hold"},
      {head + "&#99999999999;</fiche>", "not-well-formed", 1, 41,
       "&#99999999999; is no character that a text can hold"},
      // text, comments, instructions, declaration
      {head + "a]]>b</fiche>", "not-well-formed", 1, 42, "\"]]>\" stands in the text"},
      {head + "<![CDATA[a</fiche>", "not-well-formed", 1, 41, "a CDATA section without its end"},
      {head + "<!-- a -- b --></fiche>", "not-well-formed", 1, 48, "\"--\" stands inside a comment"},
      {head + "<!-- a", "not-well-formed", 1, 41, "a comment without its end"},
      {head + "<!-- a ---></fiche>", "not-well-formed", 1, 48, "\"--\" stands inside a comment"},
      {head + "<?a", "not-well-formed", 1, 41, "a processing instruction without a proper name"},
      {head + "<?a b", "not-well-formed", 1, 41, "a processing instruction without its end"},
      {head + "<?"
              "?></fiche>",
       "not-well-formed", 1, 41, "a processing instruction without a proper name"},
      {head + "<![if]></fiche>", "not-well-formed", 1, 41, "\"<!\" starts neither a comment nor a CDATA section"},
      {" <?xml version=\"1.0\"?>" + head + "</fiche>", "not-well-formed", 1, 2,
       "the XML declaration can only be the first thing in the file"},
      {"<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>" + head + "</fiche>", "not-utf-8", 1, 31,
       "the file says it is \"ISO-8859-1\"; only UTF-8 is read"},
      {"<?xml version=\"1.0\" standalone=\"maybe\"?>" + head + "</fiche>", "not-well-formed", 1, 33,
       "standalone is \"maybe\", it can be yes or no"},
      {"<?xml encoding=\"UTF-8\"?>" + head + "</fiche>", "not-well-formed", 1, 1,
       "the XML declaration does not give its version as 1.0"},
      {"<?xml version=\"1.0\" x?>" + head + "</fiche>", "not-well-formed", 1, 21,
       "the XML declaration holds \"x\" where its end ?> is expected"},
      {"", "not-well-formed", 1, 1, "the file is empty"},
      {"<!-- a -->\n", "not-well-formed", 2, 1, "there is no element in the file"},
      {"Walnut slice\n250 g butter\n", "not-well-formed", 1, 1,
       "the file starts with text, expected <fiche or <kitchen"},
      {"<!DOCTYPE fiche [<!ENTITY a \"b\">]>" + head + "&a;</fiche>", "doctype", 1, 1,
       "a DOCTYPE is refused: a fiche brings no entities or outside parts of its own"},
      // namespaces
      {"<fiche id=\"a\"/>", "wrong-namespace", 1, 2,
       "the root element <fiche> has no namespace, expected urn:tamis:fiche:1"},
      {"<fiche xmlns=\"urn:tamis:fiche:2\"/>", "wrong-namespace", 1, 15,
       "the namespace is \"urn:tamis:fiche:2\", expected \"urn:tamis:fiche:1\""},
      {"<f:fiche xmlns:f=\"urn:tamis:fiche:1\"/>", "wrong-namespace", 1, 10,
       "the prefix \"f\" stands for the fiche's own namespace"},
      {"<f:fiche xmlns:f=\"urn:x\"/>", "wrong-namespace", 1, 2, "the root element <f:fiche> has a prefix"},
      {head + "<h:x/></fiche>", "undeclared-prefix", 1, 42, "the prefix \"h\" is not declared"},
      {head + "<step h:x=\"1\"/></fiche>", "undeclared-prefix", 1, 47, "the prefix \"h\" is not declared"},
      {head + "<step xmlns:h=\"urn:x\"/></fiche>", "prefix-below-root", 1, 47,
       "\"xmlns:h\" stands on <step>, below the root element"},
      {head + "<step xmlns=\"urn:x\"/></fiche>", "prefix-below-root", 1, 47,
       "\"xmlns\" stands on <step>, below the root element"},
      {"<fiche xmlns=\"urn:tamis:fiche:1\" xmlns:h=\"\"/>", "not-well-formed", 1, 34,
       "the prefix \"h\" stands for no namespace"},
      {"<fiche xmlns=\"urn:tamis:fiche:1\" xmlns:xmlns=\"urn:x\"/>", "not-well-formed", 1, 34,
       "the prefix \"xmlns\" uses a name that XML keeps for itself"},
      {"<fiche xmlns=\"urn:tamis:fiche:1\" xmlns:g=\"urn:x\" xmlns:h=\"urn:x\" g:a=\"\" h:a=\"\"/>",
       "not-well-formed", 1, 73, "the attribute \"h:a\" is given twice"},
      // bytes
      {"\xFF\xFE<\0f\0"
       "i\0",
       "not-utf-8", 1, 1, "the file is UTF-16, not UTF-8"},
      {std::string("<\0f\0i\0", 6), "not-utf-8", 1, 1, "the file is UTF-16, not UTF-8"},
      {std::string("\0<\0f\0i", 6), "not-utf-8", 1, 1, "the file is UTF-16, not UTF-8"},
      {head + "Cr\xE8me</fiche>", "not-utf-8", 1, 43,
       "byte 0xE8 is not UTF-8; it looks like Latin-1, where it is \"è\""},
      {head + "180 \xB0\x43</fiche>", "not-utf-8", 1, 45,
       "byte 0xB0 is not UTF-8; it looks like Latin-1, where it is \"°\""},
      {head + "a \x93"
              "b</fiche>",
       "not-utf-8", 1, 43, "byte 0x93 is not UTF-8; it looks like Windows-1252"},
      {head + "\xC3\xA9\xE2\x82</fiche>", "not-utf-8", 1, 42, "byte 0xE2 is not UTF-8"},
      {head + std::string("a\0b", 3) + "</fiche>", "not-well-formed", 1, 42, "a NUL byte stands in the text"},
      {head + "a\x07</fiche>", "not-well-formed", 1, 42, "the character U+0007 has no place in a text"},
      {head + "\xEF\xBF\xBE</fiche>", "not-well-formed", 1, 41, "the character U+FFFE has no place in a text"},
  };
}

}  // namespace

TEST_CASE("what is no well-formed fiche is refused, with its place and the reason", "[xml]") {
  for (const Refused& row : refused_rows()) {
    CAPTURE(row.text);
    const format::Read read = read_xml(row.text);
    CHECK(read.document == nullptr);
    REQUIRE(read.findings.size() == 1);
    const base::Finding& finding = read.findings.front();
    CHECK(finding.rule == row.rule);
    CHECK(finding.message == row.message);
    const base::Place place = base::Source("", row.text).place(finding.where.begin);
    CHECK(place.line == row.line);
    CHECK(place.column == row.column);
    CHECK(finding.advice != "");
    CHECK(finding.severity == base::Severity::error);
  }
}

TEST_CASE("limits are named", "[xml]") {
  const auto refusal = [](std::string text) {
    const format::Read read = read_xml(std::move(text));
    CHECK(read.document == nullptr);
    return read.findings.empty() ? "" : read.findings.front().rule + ": " + read.findings.front().message;
  };
  const auto nested = [](std::size_t depth) {  // the root counts
    std::string text = head;
    for (std::size_t i = 1; i < depth; ++i) text += "<note>";
    for (std::size_t i = 1; i < depth; ++i) text += "</note>";
    return text + "</fiche>";
  };
  CHECK(read_xml(nested(format::most_depth)).document != nullptr);
  CHECK(refusal(nested(format::most_depth + 1)) == "over-limit: elements stand more than 256 deep");

  const auto attributes = [](std::size_t count) {  // the root's two count
    std::string text = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"";
    for (std::size_t i = 2; i < count; ++i) text += " a" + std::to_string(i) + "=\"\"";
    return text + "/>";
  };
  CHECK(read_xml(attributes(format::most_attributes)).document != nullptr);
  CHECK(refusal(attributes(format::most_attributes + 1)) == "over-limit: more than 256 attributes in one tag");

  CHECK(read_xml(head + "<" + std::string(256, 'a') + "/></fiche>").document != nullptr);
  CHECK(refusal(head + "<" + std::string(257, 'a') + "/></fiche>") ==
        "over-limit: a name of 257 bytes; at most 256 are read");
  CHECK(refusal(std::string(format::most_bytes + 1, ' ')) ==
        "over-limit: the file has 65 MB; at most 64 MB are read");
}

TEST_CASE("columns are right behind letters of several bytes", "[xml]") {
  const format::Read read =
      read_xml(head + "\n<step id=\"½\">180 °C, crème \xF0\x9F\x8D\xB0 <time>5 min</time></step></fiche>");
  REQUIRE(read.document != nullptr);
  const fiche::Document& d = *read.document;
  const fiche::Node time = d.child(d.child(d.root(), fiche::El::step), fiche::El::time);
  CHECK(d.source().place(d.span(time).begin) == base::Place{2, 30});
}

TEST_CASE("a mistake with one cure brings it along", "[xml]") {
  struct Row {
    std::string text, mended;
  };
  const Row rows[] = {
      {head + "salt & pepper</fiche>", head + "salt &amp; pepper</fiche>"},
      {head + "below < 5 °C</fiche>", head + "below &lt; 5 °C</fiche>"},
      {head + "180&nbsp;g</fiche>", head + "180&#160;g</fiche>"},
      {"<fiche id=\"a\"/>", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"/>"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const format::Read read = read_xml(row.text);
    REQUIRE(read.findings.size() == 1);
    REQUIRE(read.findings.front().edits.size() == 1);
    const base::Edit& edit = read.findings.front().edits.front();
    std::string mended = row.text;
    mended.replace(edit.where.begin, edit.where.end - edit.where.begin, edit.text);
    CHECK(mended == row.mended);
    CHECK(read_xml(mended).document != nullptr);
  }
}

}  // namespace tamis::tests
