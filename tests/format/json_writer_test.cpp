#include <catch2/catch.hpp>

#include "tests/format/reading.h"

namespace tamis::tests {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// What `{"fiche": {...}}` becomes when `edit` is made on its first child element.
template <class Edit>
std::string edited(const std::string& text, Edit edit) {
  const format::Read read = read_json(text);
  REQUIRE(read.document != nullptr);
  fiche::Document& d = *read.document;
  edit(d, d.first_child(d.root()));
  std::string out = format::write(d);
  const format::Read again = read_json(out);
  CAPTURE(out);
  REQUIRE(again.document != nullptr);
  CHECK(same_meaning(d, *again.document));
  return out;
}

}  // namespace

TEST_CASE("an unedited JSON file is written back byte for byte", "[json]") {
  const std::string rows[] = {
      "\xEF\xBB\xBF {\"fiche\":{ \"content\" : [ \"\\u00bd\",\"\", {\"step\" : \"a\" } ],\r\n\t\"x\":1.50}}\n\n",
      "{\"#after\": [], \"fiche\": \"\\/\", \"#before\": [ ]}",
  };
  for (const std::string& text : rows) {
    CAPTURE(text);
    const format::Read read = read_json(text);
    REQUIRE(read.document != nullptr);
    CHECK(format::write(*read.document) == text);
  }
}

TEST_CASE("only what was changed is respelled in JSON", "[json]") {
  CHECK(edited(R"({"fiche": {"content": [ {"step": {"id" :"x",  "pieces":5}} ,"\u00b0"]}})", [](auto& d, Node n) {
          d.set_attribute(n, At::pieces, "\"6\"");
        }) == R"({"fiche": {"content": [ {"step": {"id" :"x",  "pieces":"\"6\""}} ,"\u00b0"]}})");
  CHECK(edited(R"({"fiche": {"content": [{"step": {"id": "x", "content": ["a"]}}]}})", [](auto& d, Node n) {
          d.set_attribute(n, At::do_, "mix");
        }) == R"({"fiche": {"content": [{"step": {"id": "x", "do": "mix", "content": ["a"]}}]}})");
  CHECK(edited(R"({"fiche": {"content": [{"step": {"id": "x",  "on": "y"}}]}})", [](auto& d, Node n) {
          d.remove_attribute(n, At::id);
        }) == R"({"fiche": {"content": [{"step": {  "on": "y"}}]}})");
  CHECK(edited(R"({"fiche": {"content": [{"title": "\u00bd"}, "x"]}})", [](auto& d, Node n) {
          d.set_text(n, "½ cup");
        }) == R"({"fiche": {"content": [{"title": "½ cup"}, "x"]}})");
  CHECK(edited(R"({"fiche": {"content": [{ "time" : {}}]}})", [](auto& d, Node n) { d.rename(n, El::until); }) ==
        R"({"fiche": {"content": [{ "until" : {}}]}})");
}

TEST_CASE("pieces come and go in JSON with their commas", "[json]") {
  const std::string text =
      "{\"fiche\": {\n  \"content\": [\n    {\"title\": \"A\"},\n    {\"note\": \"B\"}\n  ]\n}}";
  CHECK(edited(text, [](auto& d, Node n) { d.remove(n); }) ==
        "{\"fiche\": {\n  \"content\": [\n    {\"note\": \"B\"}\n  ]\n}}");
  CHECK(edited(text, [](auto& d, Node n) { d.remove(d.next(n)); }) ==
        "{\"fiche\": {\n  \"content\": [\n    {\"title\": \"A\"}\n  ]\n}}");
  CHECK(edited(text, [](auto& d, Node n) { d.set_text(d.add_element(d.root(), El::summary, d.next(n)), "C"); }) ==
        "{\"fiche\": {\n  \"content\": [\n    {\"title\": \"A\"},\n    {\"summary\": \"C\"},\n    {\"note\": "
        "\"B\"}\n  ]\n}}");
  CHECK(edited(text, [](auto& d, Node) { d.add_comment(d.top(), "c", d.root()); }) ==
        "{\"#before\": [\n    {\"#comment\": \"c\"}\n  ], \"fiche\": {\n  \"content\": [\n    {\"title\": "
        "\"A\"},\n    {\"note\": \"B\"}\n  ]\n}}");
}

}  // namespace tamis::tests
