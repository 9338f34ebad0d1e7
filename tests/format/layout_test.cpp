#include <catch2/catch.hpp>

#include "tests/format/reading.h"

namespace tamis::tests {
namespace {

using fiche::Spelling;

const std::string head = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\">";
const std::string first_line = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

/// The lines inside the root element.
std::string laid_out(const std::string& content) {
  const format::Read read = read_xml(head + content + "</fiche>");
  REQUIRE(read.document != nullptr);
  const std::string out = format::lay_out(*read.document, Spelling::xml);
  const std::string before = first_line + head + "\n", after = "</fiche>\n";
  REQUIRE(out.starts_with(before));
  REQUIRE(out.ends_with(after));
  return out.substr(before.size(), out.size() - before.size() - after.size());
}

std::string json_of(const std::string& content) {
  const format::Read read = read_xml(head + content + "</fiche>");
  REQUIRE(read.document != nullptr);
  const std::string out = format::lay_out(*read.document, Spelling::json);
  const std::string before = "{\n  \"fiche\": {\n    \"id\": \"a\",\n    \"content\": [\n",
                    after = "\n    ]\n  }\n}\n";
  REQUIRE(out.starts_with(before));
  REQUIRE(out.ends_with(after));
  return out.substr(before.size(), out.size() - before.size() - after.size());
}

}  // namespace

TEST_CASE("blocks stand on lines of their own, a blank line before each component", "[layout]") {
  CHECK(laid_out("<title> Walnut\n slice </title><component id='c' title='x'><note/></component>\n\n\n<!-- d "
                 "--><component id='d' title='y'/>") ==
        "  <title>Walnut slice</title>\n"
        "\n"
        "  <component id=\"c\" title=\"x\">\n"
        "    <note/>\n"
        "  </component>\n"
        "\n"
        "  <!-- d -->\n"
        "  <component id=\"d\" title=\"y\"/>\n");
}

TEST_CASE("blank in prose is folded, and goes at the ends of blocks; marks keep theirs", "[layout]") {
  CHECK(laid_out("<step>\n  Warm\tthe <use of='milk'> milk </use>\n\n to 40\xC2\xA0°C .\n</step>") ==
        "  <step>Warm the <use of=\"milk\"> milk </use> to 40\xC2\xA0°C .</step>\n");
  CHECK(laid_out("<step>Mix. <gate> cold </gate> Then \n pour. </step>") ==
        "  <step>Mix.\n    <gate>cold</gate>\n    Then pour.\n  </step>\n");
  CHECK(laid_out("<step><use of='a'>a</use> <use of='b'>b</use></step>") ==
        "  <step><use of=\"a\">a</use> <use of=\"b\">b</use></step>\n");
}

TEST_CASE("prose is filled to 110 columns and broken at plain spaces of sentences only", "[layout]") {
  CHECK(
      laid_out(
          "<step>Pour the hot milk over the yolks a little at a time, return to the pan and stir until it reaches "
          "<food-temp for='15 s'>82 to 84 °C</food-temp> and <until>it coats the back of the spoon</until>, then "
          "strain.</step>") ==
      "  <step>Pour the hot milk over the yolks a little at a time, return to the pan and stir until it reaches\n"
      "    <food-temp for=\"15 s\">82 to 84 °C</food-temp> and <until>it coats the back of the spoon</until>, "
      "then\n"
      "    strain.</step>\n");
  const std::string long_title(60, 'a');
  CHECK(laid_out("<title>" + long_title + " " + long_title + "</title>") ==
        "  <title>" + long_title + " " + long_title + "</title>\n");
}

TEST_CASE("attributes that do not fit stand below each other, under the first", "[layout]") {
  CHECK(laid_out("<control id='cooked' hazard='salmonella in raw yolk' check='probe in the middle of the pan' "
                 "often='every batch' "
                 "who='the cook'>At least 82 °C</control>") ==
        "  <control id=\"cooked\" hazard=\"salmonella in raw yolk\" check=\"probe in the middle of the pan\"\n"
        "           often=\"every batch\" who=\"the cook\">At least 82 °C</control>\n");
}

TEST_CASE("only what must be is escaped", "[layout]") {
  CHECK(laid_out("<note kind='a&#10;b&#9;c&#13;\"&apos;&gt;'>a &gt; b ]]&gt; &quot;&apos; &#13;&#176;</note>") ==
        "  <note kind=\"a&#10;b&#9;c&#13;&quot;'>\">a > b ]]&gt; \"' &#13;°</note>\n");
}

TEST_CASE("comments, instructions and foreign XML stay as they are", "[layout]") {
  const format::Read read = read_xml(
      "<?xml version='1.0'?><!-- a\n   b --><fiche xmlns:h='urn:h' id='a' xmlns='urn:tamis:fiche:1'><?x  y ?>"
      "<step>Mix <!-- well  --> it <h:x  a='1'/>.</step><h:y>\r\n  z</h:y></fiche><!-- c -->");
  REQUIRE(read.document != nullptr);
  CHECK(format::lay_out(*read.document, Spelling::xml) ==
        first_line +
            "<!-- a\n   b -->\n"
            "<fiche xmlns=\"urn:tamis:fiche:1\" xmlns:h=\"urn:h\" id=\"a\">\n"
            "  <?x y ?>\n"
            "  <step>Mix <!-- well  --> it <h:x  a='1'/>.</step>\n"
            "  <h:y>\n  z</h:y>\n"
            "</fiche>\n"
            "<!-- c -->\n");
}

TEST_CASE("an ingredient's amount for another batch stands below it", "[layout]") {
  CHECK(laid_out("<ingredient id='m'>300 g<amount batch='b'>600 g</amount></ingredient>") ==
        "  <ingredient id=\"m\">300 g\n    <amount batch=\"b\">600 g</amount>\n  </ingredient>\n");
}

TEST_CASE("JSON stands on one line where it fits, else each piece on its own", "[layout]") {
  CHECK(json_of("<title>A</title><step do='mix'>Mix <use of='b'>b</use>.</step>") ==
        "      {\"title\": \"A\"},\n"
        "      {\"step\": {\"do\": \"mix\", \"content\": [\"Mix \", {\"use\": {\"of\": \"b\", \"content\": "
        "[\"b\"]}}, \".\"]}}");
  CHECK(json_of("<step do='mix' makes='batter' hands='5 min'>Mix <use of='b'>the butter</use> with the sugar "
                "until it is pale.</step>") ==
        "      {\"step\": {\n"
        "        \"do\": \"mix\",\n"
        "        \"makes\": \"batter\",\n"
        "        \"hands\": \"5 min\",\n"
        "        \"content\": [\n"
        "          \"Mix \",\n"
        "          {\"use\": {\"of\": \"b\", \"content\": [\"the butter\"]}},\n"
        "          \" with the sugar until it is pale.\"\n"
        "        ]\n"
        "      }}");
}

}  // namespace tamis::tests
