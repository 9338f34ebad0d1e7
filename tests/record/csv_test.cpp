#include "core/record/csv.h"

#include <catch2/catch.hpp>

#include <random>
#include <string>
#include <vector>

using namespace tamis;

namespace {

/// Fields with | between, a line for each row; then what was wrong.
std::string told(const std::string& text) {
  const base::Source source("t.csv", text);
  const record::Csv table = record::read_csv(source);
  std::string out;
  for (const record::CsvRow& row : table.rows) {
    for (std::size_t i = 0; i < row.fields.size(); ++i) out += (i > 0 ? "|" : "") + row.fields[i].text;
    out += "\n";
  }
  for (const base::Finding& fault : table.faults) {
    const base::Place place = source.place(fault.where.begin);
    out += std::to_string(place.line) + ":" + std::to_string(place.column) + " " + fault.message + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("a table is read as RFC 4180 has it") {
  CHECK(told("a,b\r\n1,2\r\n") == "a|b\n1|2\n");
  CHECK(told("a,b\n1,2") == "a|b\n1|2\n");
  CHECK(told("a,b\r1,2\r") == "a|b\n1|2\n");
  CHECK(told("\"a, b\",\"say \"\"no\"\"\"\n") == "a, b|say \"no\"\n");
  CHECK(told("\"two\nlines\",x\n") == "two\nlines|x\n");
  CHECK(told("a,,\n,,\n\n  \n") == "a||\n||\n");
  CHECK(told("\xEF\xBB\xBF"
             "a,b\n") == "a|b\n");
  CHECK(told("") == "");
}

TEST_CASE("whatever parts the most lines is what parts the fields") {
  CHECK(told("time;core\n10:15;63,2\n10:16;63,4\n") == "time|core\n10:15|63,2\n10:16|63,4\n");
  CHECK(told("time\tcore\n10:15\t63,2\n") == "time|core\n10:15|63,2\n");
  CHECK(told("made by a logger; hall 2\ntime,core\n10:15,63.2\n") == "made by a logger; hall 2\ntime|core\n10:15|63.2\n");
}

TEST_CASE("what breaks the standard is said with its place, and the rest is read") {
  CHECK(told("a,b\n1,\"open\n2,3\n") == "a|b\n1|open\n2,3\n2:3 a quote is opened and never closed\n");
  CHECK(told("\"a\" b,c\n") == "ab|c\n1:4 words behind a closing quote\n");
  CHECK(told("a\"b,c\n") == "a\"b|c\n1:2 a quote within a field that does not begin with one\n");
  CHECK(told("a,\xB0\x43\n") == "1:3 not a text in UTF-8\n");
  CHECK(told(std::string("a,\0b\n", 5)) == "1:3 not a text in UTF-8\n");
}

TEST_CASE("cells are guarded against being taken for formulas, and read back as they were") {
  CHECK(record::csv_cell("=1+2") == "'=1+2");
  CHECK(record::csv_cell("@x") == "'@x");
  CHECK(record::csv_cell("-18 °C") == "'-18 °C");
  CHECK(record::csv_cell("+1, 2") == "\"'+1, 2\"");
  CHECK(record::csv_cell("a \"b\"") == "\"a \"\"b\"\"\"");
  CHECK(record::csv_cell("plain") == "plain");
  CHECK(record::csv_cell("'=1") == "''=1");
  CHECK(record::unguarded("'=1+2") == "=1+2");
  CHECK(record::unguarded("''=1") == "'=1");
  CHECK(record::unguarded("'tis") == "'tis");
}

TEST_CASE("any cells that are written come back") {
  std::mt19937 random(3);
  const std::string letters = "ab,\"=+-@'\n1";
  for (int round = 0; round < 1000; ++round) {
    std::vector<std::string> cells(3);
    std::string line = "x";
    for (std::string& cell : cells) {
      for (auto i = random() % 7; i > 0; --i) cell += letters[random() % letters.size()];
      while (!cell.empty() && (cell.front() == '\n' || cell.back() == '\n'))
        cell = cell.front() == '\n' ? cell.substr(1) : cell.substr(0, cell.size() - 1);
      line += "," + record::csv_cell(cell);
    }
    CAPTURE(line);
    const base::Source source("t.csv", line + "\r\n");
    const record::Csv table = record::read_csv(source);
    CHECK(table.faults.empty());
    REQUIRE(table.rows.size() == 1);
    REQUIRE(table.rows[0].fields.size() == 4);
    for (std::size_t i = 0; i < 3; ++i) CHECK(record::unguarded(table.rows[0].fields[i + 1].text) == cells[i]);
  }
}
