#include "core/cli/excerpt.h"

#include <catch2/catch.hpp>

using tamis::base::Source;
using tamis::base::Span;
using tamis::cli::Excerpt;
using tamis::cli::excerpt;

namespace {

struct Row {
  std::string bytes;
  std::string marked;  ///< the part of the bytes that is marked
  std::size_t columns;
  std::string shown;
};

/// The line and, under it, the mark.
std::string shown(const Row& row) {
  const Source source("f", row.bytes);
  const auto begin = static_cast<std::uint32_t>(row.bytes.find(row.marked));
  const Excerpt found =
      excerpt(source, Span{begin, begin + static_cast<std::uint32_t>(row.marked.size())}, row.columns);
  return found.line + "\n" + std::string(found.before, ' ') + std::string(found.marked, '^');
}

}  // namespace

TEST_CASE("the mark stands under what it means, in the columns of a terminal", "[excerpt]") {
  const Row rows[] = {
      {"one two three\n", "two", 80, "one two three\n    ^^^"},
      {"    <title>x</title>\n", "x", 80, "<title>x</title>\n       ^"},
      {"\t\t<use>1 cup</use>", "1 cup", 80, "<use>1 cup</use>\n     ^^^^^"},
      {"a\tb c", "b", 80, "a   b c\n    ^"},
      {"180 °C, crème ½ x", "x", 80, "180 °C, crème ½ x\n                ^"},
      {"鍋 x", "x", 80, "鍋 x\n   ^"},
      {"a 鍋 x", "鍋", 80, "a 鍋 x\n  ^^"},
      {"cafe\xcc\x81 x", "x", 80, "cafe\xcc\x81 x\n     ^"},
      {"first\nsecond line\nthird", "line\nthird", 80, "second line\n       ^^^^"},
      {"a \x1b[31mb", "b", 80, "a �[31mb\n       ^"},
      {"a \xff b", "b", 80, "a � b\n    ^"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.bytes, row.marked);
    CHECK(shown(row) == row.shown);
  }
}

TEST_CASE("a line too long for the terminal is cut around the mark", "[excerpt]") {
  const std::string before(200, 'a');
  const std::string after(200, 'b');
  for (const std::size_t columns : {20U, 40U, 77U}) {
    const Source source("f", before + "HERE" + after);
    const Excerpt found = excerpt(source, Span{200, 204}, columns);
    CAPTURE(columns, found.line);
    CHECK(found.line.starts_with("…a"));
    CHECK(found.line.ends_with("b…"));
    CHECK(found.line.find("HERE") - 2 == found.before);  // "…" is three bytes and one column
    CHECK(found.marked == 4);
    CHECK(found.line.size() - 4 <= columns);
  }
}

TEST_CASE("a line that just fits is not cut", "[excerpt]") {
  const Source source("f", "0123456789");
  CHECK(excerpt(source, Span{9, 10}, 10).line == "0123456789");
  CHECK(excerpt(source, Span{0, 1}, 9).line == "01234567…");
  CHECK(excerpt(source, Span{9, 10}, 9).line == "…23456789");
}

TEST_CASE("a mark at the end of a file, or in an empty one, is still one column wide", "[excerpt]") {
  CHECK(excerpt(Source("f", "abc"), Span{3, 3}, 80).before == 3);
  CHECK(excerpt(Source("f", "abc"), Span{3, 3}, 80).marked == 1);
  CHECK(excerpt(Source("f", ""), Span{0, 0}, 80).line.empty());
}
