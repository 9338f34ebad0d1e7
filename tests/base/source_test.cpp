#include <catch2/catch.hpp>

#include <string>

#include "core/base/source.h"

namespace {

using tamis::base::Place;
using tamis::base::Source;

std::uint32_t offset_of(const Source& source, std::string_view text) {
  return static_cast<std::uint32_t>(source.bytes().find(text));
}

TEST_CASE("a column is a character, whatever its bytes", "[source]") {
  const Source source("a.xml", "abc\nto 82 °C here\ncrème X\n½ cup X\n🍋 X\n");
  CHECK(source.place(0) == Place{1, 1});
  CHECK(source.place(offset_of(source, "C here")) == Place{2, 8});
  CHECK(source.place(offset_of(source, "X")) == Place{3, 7});
  CHECK(source.place(offset_of(source, "cup")) == Place{4, 3});
  CHECK(source.place(offset_of(source, "🍋")) == Place{5, 1});
  CHECK(source.place(offset_of(source, "🍋") + 4) == Place{5, 2});
}

TEST_CASE("lines end with LF, CRLF or CR, and mixed files count right", "[source]") {
  const Source source("a.txt", "one\r\ntwo\rthree\nfour\r\n\r\nsix");
  struct Row {
    const char* word;
    Place place;
  };
  for (const Row& row : {Row{"one", {1, 1}}, Row{"two", {2, 1}}, Row{"three", {3, 1}}, Row{"four", {4, 1}},
                         Row{"six", {6, 1}}}) {
    CAPTURE(row.word);
    CHECK(source.place(offset_of(source, row.word)) == row.place);
    CHECK(source.line(row.place.line) == row.word);
  }
  CHECK(source.line(5).empty());
}

TEST_CASE("places and lines past the end are harmless", "[source]") {
  const Source source("a.txt", "one\ntwo");
  CHECK(source.place(1000) == Place{2, 4});
  CHECK(source.line(0).empty());
  CHECK(source.line(3).empty());
  CHECK(source.slice({5, 1000}) == "wo");
  CHECK(source.slice({1000, 2000}).empty());
  CHECK(source.slice({2, 1}).empty());
  const Source empty("e.txt", "");
  CHECK(empty.place(0) == Place{1, 1});
  CHECK(empty.line(1).empty());
}

TEST_CASE("a place after a final line end is on the next line", "[source]") {
  const Source source("a.txt", "one\n");
  CHECK(source.place(4) == Place{2, 1});
}

}  // namespace

TEST_CASE("columns in a very long line are those counted one by one", "[source]") {
  std::string bytes = "first\n";
  std::vector<std::uint32_t> starts;
  for (std::uint32_t i = 0; i < 9000; ++i) {
    starts.push_back(static_cast<std::uint32_t>(bytes.size()));
    bytes += i % 3 == 0 ? "é" : i % 7 == 0 ? "🍋" : "a";
  }
  const Source source("f", bytes + "\nlast °x");
  for (std::uint32_t i = 0; i < starts.size(); i += 13) {
    CAPTURE(i);
    CHECK(source.place(starts[i]) == Place{2, i + 1});
  }
  CHECK(source.place(3) == Place{1, 4});
  CHECK(source.place(static_cast<std::uint32_t>(bytes.size()) + 8) == Place{3, 7});
  CHECK(source.place(starts[8999]) == Place{2, 9000});
}
