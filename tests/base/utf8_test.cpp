#include <catch2/catch.hpp>

#include <string>

#include "core/base/utf8.h"

namespace {

using namespace tamis::base;

TEST_CASE("scalars are counted, not bytes", "[utf8]") {
  CHECK(count_scalars("82–84 °C") == 8);
  CHECK(count_scalars("crème brûlée") == 12);
  CHECK(count_scalars("½ 🍋") == 3);
  CHECK(count_scalars("") == 0);
}

TEST_CASE("a byte that is no UTF-8 counts as one and is skipped alone", "[utf8]") {
  CHECK(count_scalars("a\xFF\xFE"
                      "b") == 4);
  CHECK(count_scalars("\xE2\x82") == 2);
  std::size_t at = 0;
  CHECK_FALSE(next_scalar("\x80x", at));
  CHECK(at == 1);
}

TEST_CASE("the first invalid byte is found", "[utf8]") {
  struct Row {
    std::string text;
    std::size_t at;
  };
  const std::size_t none = std::string::npos;
  for (const Row& row : {Row{"plain", none}, Row{"°é½🍋", none}, Row{std::string("a\0b", 3), none},
                         Row{"a\xC0\xAF", 1},                     // overlong slash
                         Row{"\xE0\x80\xAF", 0},                  // overlong, three bytes
                         Row{"\xF0\x80\x80\xAF", 0},              // overlong, four bytes
                         Row{"x\xED\xA0\x80", 1},                 // a surrogate
                         Row{"\xF4\x90\x80\x80", 0},              // above 10FFFF
                         Row{"\xF5\x80\x80\x80", 0}, Row{"ab\xC3", 2}, Row{"\xE2\x82", 0}, Row{"\xBF", 0},
                         Row{"\xF0\x9F\x8D", 0}}) {
    CAPTURE(row.text);
    CHECK(find_invalid_utf8(row.text) == row.at);
  }
}

TEST_CASE("every scalar value goes to bytes and back", "[utf8]") {
  for (char32_t c = 0; c <= 0x10FFFF; c += c < 0x3000 ? 1 : 97) {
    if (c >= 0xD800 && c <= 0xDFFF) continue;
    std::string text;
    append_scalar(text, c);
    std::size_t at = 0;
    const auto back = next_scalar(text, at);
    if (!back || *back != c || at != text.size() || find_invalid_utf8(text) != std::string::npos) {
      CAPTURE(static_cast<unsigned>(c));
      FAIL("not the same back");
    }
  }
  std::string text;
  append_scalar(text, 0xD800);
  append_scalar(text, 0x110000);
  CHECK(text == "\xEF\xBF\xBD\xEF\xBF\xBD");
}

TEST_CASE("white space at both ends goes, typographic spaces too", "[utf8]") {
  CHECK(trimmed("  250 g\n") == "250 g");
  CHECK(trimmed("\u00A0\u202F 1 \u00BD \u2009") == "1 \u00BD");
  CHECK(trimmed(" \t\r\n").empty());
  CHECK(trimmed("").empty());
  CHECK(trimmed("\xFF ") == "\xFF");
}

TEST_CASE("lower case knows the letters of the kitchen's languages", "[utf8]") {
  CHECK(lower("ÉCLAIR") == "éclair");
  CHECK(lower("ESSLÖFFEL") == "esslöffel");
  CHECK(lower("ŒUF Ÿ") == "œuf ÿ");
  CHECK(lower("AÑO ×") == "año ×");
  CHECK(lower("A\xFFZ") == "a\xFFz");
}

TEST_CASE("a terminal gives wide signs two columns and marks none", "[utf8]") {
  CHECK(terminal_width("82 °C") == 5);
  CHECK(terminal_width("🍋") == 2);
  CHECK(terminal_width("e\u0301") == 1);
  CHECK(terminal_width("日本") == 4);
}

}  // namespace
