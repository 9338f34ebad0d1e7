#ifndef TESTS_CSV_H
#define TESTS_CSV_H

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace tamis::tests {

/// Rows of a CSV text (RFC 4180: quoted fields may hold commas, line breaks and "" for a quote), each as a map
/// from the first row's names to the fields. A short row has no entry for what it lacks.
using CsvRow = std::map<std::string, std::string>;

inline std::vector<std::vector<std::string>> read_csv_fields(std::string_view text) {
  std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    std::string& field = rows.back().back();
    if (quoted) {
      if (c != '"') {
        field += c;
      } else if (at + 1 < text.size() && text[at + 1] == '"') {
        field += text[++at];
      } else {
        quoted = false;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\n') {
      rows.emplace_back(1);
    } else if (c != '\r') {
      field += c;
    }
  }
  if (rows.back() == std::vector<std::string>(1)) rows.pop_back();
  return rows;
}

inline std::vector<CsvRow> read_csv(std::string_view text) {
  std::vector<CsvRow> out;
  const auto rows = read_csv_fields(text);
  for (std::size_t i = 1; i < rows.size(); ++i) {
    CsvRow& row = out.emplace_back();
    for (std::size_t j = 0; j < rows[i].size() && j < rows[0].size(); ++j) row[rows[0][j]] = rows[i][j];
  }
  return out;
}

}  // namespace tamis::tests

#endif
