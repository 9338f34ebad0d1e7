#include <catch2/catch.hpp>

#include "core/cli/folded.h"
#include "core/cli/json_text.h"
#include "core/cli/output.h"

using namespace tamis::cli;

TEST_CASE("text for a terminal cannot steer it", "[output]") {
  CHECK(harmless("crème 82–84 °C\tx\n") == "crème 82–84 °C\tx\n");
  CHECK(harmless("\x1b[2J") == "�[2J");
  CHECK(harmless("\xc2\x9b"
                 "31m") == "�31m");
  CHECK(harmless("a\xe2\x80\xae"
                 "b") == "a�b");
  CHECK(harmless("a\xff") == "a�");
}

TEST_CASE("a JSON string holds any bytes", "[json]") {
  CHECK(json_string("plain °C") == "\"plain °C\"");
  CHECK(json_string("\"\\\n\r\t\x01\x7f") == R"("\"\\\n\r\t\u0001\u007f")");
  CHECK(json_string("\xff") == "\"�\"");
}

TEST_CASE("a JSON number is the shortest that reads back as the same", "[json]") {
  CHECK(json_number(187.5) == "187.5");
  CHECK(json_number(0.1) == "0.1");
  CHECK(json_number(3) == "3");
  CHECK(json_number(0.0 / 0.0) == "null");
}

TEST_CASE("long text is folded at the page's edge, behind its indentation", "[folded]") {
  const std::string long_text =
      "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen";
  const std::string shown = folded(long_text, 4);
  CHECK(shown == "one two three four five six seven eight nine ten eleven twelve thirteen\n    fourteen fifteen");
  CHECK(folded("a  b\nc", 0) == "a b c");
  CHECK(folded("a\n\nb", 2) == "a\n\n  b");
}

TEST_CASE("two columns line up, umlauts and all", "[folded]") {
  CHECK(two_columns({{"a", "first"}, {"crème", "second"}}) == "  a      first\n  crème  second\n");
}
