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

std::vector<Refused> refused_rows() {
  return {
      // JSON itself
      {"", "not-well-formed", 1, 1, "the file is empty"},
      {"fiche", "not-well-formed", 1, 1, "fiche stands without quotes, expected an object"},
      {"[1]", "not-well-formed", 1, 1, "an array stands here, expected an object"},
      {"\"a\"", "not-well-formed", 1, 1, "a text stands here, expected an object"},
      {"{\"fiche\": {\"id\": \"a\",}}", "not-well-formed", 1, 21, "a comma stands before \"}\""},
      {"{\"fiche\": {\"content\": [\"½\", ]}}", "not-well-formed", 1, 27, "a comma stands before \"]\""},
      {"{\"fiche\": {\"id\": \"a\" \"lang\": \"en\"}}", "not-well-formed", 1, 22,
       "a text stands here, expected , or }"},
      {"{\"fiche\": {\"id\" \"a\"}}", "not-well-formed", 1, 17, "a text stands behind \"id\", expected :"},
      {"{\"fiche\": {\"id\": }}", "not-well-formed", 1, 18, "\"}\" stands here, expected a text in quotes"},
      {"{\"fiche\": {id: \"a\"}}", "not-well-formed", 1, 12,
       "id stands without quotes, expected a name in quotes"},
      {"{\"fiche\": {'id': \"a\"}}", "not-well-formed", 1, 12, "a text stands in single quotes"},
      {"{\n  // a\n  \"fiche\": {}}", "not-well-formed", 2, 3, "a comment stands here; JSON has none"},
      {"{\"fiche\": {\"id\": \"a\" /* b */}}", "not-well-formed", 1, 22, "a comment stands here; JSON has none"},
      {"{\"fiche\": {\"id\": \"a", "not-well-formed", 1, 18, "a text without its closing quote"},
      {"{\"fiche\": {\"id\": \"a\nb\"}}", "not-well-formed", 1, 20, "the line ends in a text"},
      {"{\"fiche\": {\"id\": \"°\tb\"}}", "not-well-formed", 1, 20, "a tab stands in a text"},
      {"{\"fiche\": {\"id\": \"a\\q\"}}", "not-well-formed", 1, 20, "the escape \\q is not known"},
      {"{\"fiche\": {\"id\": \"\\u00G0\"}}", "not-well-formed", 1, 19,
       "\\u is not followed by four hexadecimal digits"},
      {"{\"fiche\": {\"id\": \"\\ud83c!\"}}", "not-well-formed", 1, 19, "the escape \\ud83c is half of a pair"},
      {"{\"fiche\": {\"id\": \"\\udf70\"}}", "not-well-formed", 1, 19, "the escape \\udf70 is half of a pair"},
      {"{\"fiche\": {\"id\": \"\\u0007\"}}", "not-well-formed", 1, 19,
       "the character U+0007 has no place in a text"},
      {"{\"fiche\": {\"id\": \"\\f\"}}", "not-well-formed", 1, 19, "the character U+000C has no place in a text"},
      {"{\"fiche\": {\"id\": 1.}}", "not-well-formed", 1, 18, "1. is not a number that JSON knows"},
      {"{\"fiche\": {\"id\": 1e999}}", "not-well-formed", 1, 18, "1e999 is not a number that JSON knows"},
      {"{\"fiche\": {\"id\": 01}}", "not-well-formed", 1, 19, "\"1\" stands here, expected , or }"},
      {"{\"fiche\": {}", "not-well-formed", 1, 1, "\"{\" is never closed"},
      {"{\"fiche\": {\"content\": [\"a\"", "not-well-formed", 1, 23, "\"[\" is never closed"},
      {"{\"fiche\": {}} x", "not-well-formed", 1, 15, "\"x\" stands behind the end of the document"},
      // the fiche's spelling
      {"{}", "not-well-formed", 1, 1, "there is no fiche in the file"},
      {"{\"#comment\": \"a\"}", "not-well-formed", 1, 3, "\"#comment\" is not the name of an element"},
      {"{\"fiche\": {}, \"kitchen\": {}}", "not-well-formed", 1, 16, "\"kitchen\" stands beside \"fiche\""},
      {"{\"fiche\": {}, \"fiche\": {}}", "duplicate-key", 1, 16, "\"fiche\" is given twice"},
      {"{\"fiche\": {\"id\": \"°\", \"id\": \"b\"}}", "duplicate-key", 1, 24, "\"id\" is given twice"},
      {"{\"fiche\": {\"id\": \"a\", \"i\\u0064\": \"b\"}}", "duplicate-key", 1, 24, "\"id\" is given twice"},
      {"{\"fiche\": {\"content\": [], \"content\": []}}", "duplicate-key", 1, 28, "\"content\" is given twice"},
      {"{\"#before\": [], \"#before\": [], \"fiche\": {}}", "duplicate-key", 1, 18, "\"#before\" is given twice"},
      {"{\"fiche\": {\"id\": true}}", "not-well-formed", 1, 18, "true stands here, expected a text in quotes"},
      {"{\"fiche\": {\"id\": null}}", "not-well-formed", 1, 18, "null stands here, expected a text in quotes"},
      {"{\"fiche\": {\"id\": {}}}", "not-well-formed", 1, 18, "an object stands here, expected a text in quotes"},
      {"{\"fiche\": {\"id\": []}}", "not-well-formed", 1, 18, "an array stands here, expected a text in quotes"},
      {"{\"fiche\": {\"content\": \"a\"}}", "not-well-formed", 1, 23, "a text stands here, expected an array"},
      {"{\"fiche\": {\"content\": [5]}}", "not-well-formed", 1, 24,
       "the number 5 stands here, expected a text or an element"},
      {"{\"fiche\": {\"content\": [[]]}}", "not-well-formed", 1, 24,
       "an array stands here, expected a text or an element"},
      {"{\"fiche\": 5}", "not-well-formed", 1, 11, "the number 5 stands here, expected a text or an object"},
      {"{\"fiche\": {\"content\": [{}]}}", "not-well-formed", 1, 24, "an empty object"},
      {"{\"fiche\": {\"content\": [{\"step\": \"a\", \"note\": \"b\"}]}}", "not-well-formed", 1, 39,
       "\"note\" is a second name in one object"},
      {"{\"fiche\": {\"content\": [{\"1a\": \"a\"}]}}", "not-well-formed", 1, 26,
       "\"1a\" is not the name of an element"},
      {"{\"fiche\": {\"content\": [{\"h:a\": \"a\"}]}}", "not-well-formed", 1, 26,
       "\"h:a\" has a prefix; an element of the house's own is written as XML"},
      {"{\"fiche\": {\"a b\": \"a\"}}", "not-well-formed", 1, 13, "\"a b\" is not the name of an attribute"},
      {"{\"fiche\": {\"c\\u006fntent\": []}}", "not-well-formed", 1, 13,
       "the name \"content\" is written with escapes"},
      {"{\"#before\": [{\"step\": \"a\"}], \"fiche\": {}}", "not-well-formed", 1, 16,
       "\"step\" stands outside the fiche"},
      {"{\"#before\": [\"a\"], \"fiche\": {}}", "not-well-formed", 1, 14,
       "a text stands here, expected a comment"},
      {"{\"#before\": {}, \"fiche\": {}}", "not-well-formed", 1, 13,
       "an object stands here, expected an array of comments"},
      {"{\"fiche\": {\"content\": [{\"#comment\": \"a--b\"}]}}", "not-well-formed", 1, 38,
       "a comment with \"--\" in it or \"-\" at its end, which XML can't hold"},
      {"{\"fiche\": {\"content\": [{\"#instruction\": \"xml a\"}]}}", "not-well-formed", 1, 42,
       "an instruction without a proper name, or with \"?>\" in it"},
      // namespaces and foreign XML
      {"{\"fiche\": {\"xmlns\": \"urn:x\"}}", "wrong-namespace", 1, 13,
       "the namespace is \"urn:x\", expected \"urn:tamis:fiche:1\""},
      {"{\"fiche\": {\"xmlns:h\": \"urn:tamis:fiche:1\"}}", "wrong-namespace", 1, 13,
       "the prefix \"h\" stands for the fiche's own namespace"},
      {"{\"fiche\": {\"h:x\": \"1\"}}", "undeclared-prefix", 1, 13, "the prefix \"h\" is not declared"},
      {"{\"fiche\": {\"content\": [{\"step\": {\"xmlns:h\": \"urn:x\"}}]}}", "prefix-below-root", 1, 35,
       "\"xmlns:h\" stands in \"step\", below the root element"},
      {"{\"fiche\": {\"g:x\": \"1\", \"h:x\": \"1\", \"xmlns:g\": \"u\", \"xmlns:h\": \"u\"}}", "duplicate-key", 1,
       25, "\"h:x\" is given twice"},
      {"{\"fiche\": {\"content\": [{\"#xml\": \"<h:x/>\"}]}}", "undeclared-prefix", 1, 35,
       "the prefix \"h\" is not declared"},
      {"{\"fiche\": {\"content\": [{\"#xml\": \"<h:x a=\\\"½\\\"></h:y>\"}], \"xmlns:h\": \"u\"}}",
       "not-well-formed", 1, 47, "found </h:y>, expected </h:x>"},
      {"{\"fiche\": {\"content\": [{\"#xml\": \"<step/>\"}]}}", "wrong-namespace", 1, 35, "<step> has no prefix"},
      {"{\"fiche\": {\"content\": [{\"#xml\": \"<h:x/> \"}], \"xmlns:h\": \"u\"}}", "not-well-formed", 1, 34,
       "more than one element stands here"},
      {"{\"fiche\": {\"content\": [{\"#xml\": \"<!--a--><h:x/>\"}], \"xmlns:h\": \"u\"}}", "not-well-formed", 1,
       34, "more than one element stands here"},
      // bytes
      {"{\"fiche\": {\"id\": \"Cr\xE8me\"}}", "not-utf-8", 1, 21,
       "byte 0xE8 is not UTF-8; it looks like Latin-1, where it is \"è\""},
      {std::string("{\0\"\0", 4), "not-utf-8", 1, 1, "the file is UTF-16, not UTF-8"},
  };
}

}  // namespace

TEST_CASE("what is no fiche in JSON is refused, with its place and the reason", "[json]") {
  for (const Refused& row : refused_rows()) {
    CAPTURE(row.text);
    const format::Read read = read_json(row.text);
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

TEST_CASE("members may stand in any order", "[json]") {
  const format::Read a = read_json(
      R"({"#after": [{"#comment": "z"}], "fiche": {"content": [{"step": {"content": ["Mix ", {"tool": "well"}], "do": "mix"}}],
      "id": "a"}, "#before": [{"#comment": "a"}, {"#instruction": "b c"}]})");
  REQUIRE(a.document != nullptr);
  const format::Read b = read_xml(
      "<!--a--><?b c?><fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"><step do=\"mix\">Mix "
      "<tool>well</tool></step></fiche><!--z-->");
  REQUIRE(b.document != nullptr);
  CHECK(same_meaning(*a.document, *b.document));
}

TEST_CASE("a number is kept as it is spelled", "[json]") {
  for (const std::string number : {"5", "-0.50", "1e3", "18446744073709551616", "0"}) {
    CAPTURE(number);
    const format::Read read = read_json("{\"fiche\": {\"x\" :" + number + "}}");
    REQUIRE(read.document != nullptr);
    const fiche::Attr a = read.document->first_attribute(read.document->root());
    CHECK(read.document->attribute_value(a) == number);
    CHECK(read.document->source().slice(read.document->value_span(a)) == number);
  }
}

TEST_CASE("an attribute named content is told from the content", "[json]") {
  const format::Read xml = read_xml("<fiche xmlns=\"urn:tamis:fiche:1\" content=\"a\"><title>b</title></fiche>");
  REQUIRE(xml.document != nullptr);
  const std::string laid_out = format::lay_out(*xml.document, fiche::Spelling::json);
  const format::Read json = read_json(laid_out);
  CAPTURE(laid_out);
  REQUIRE(json.document != nullptr);
  CHECK(same_meaning(*xml.document, *json.document));
}

}  // namespace tamis::tests
