#ifndef CORE_RECORD_CSV_H
#define CORE_RECORD_CSV_H

#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"

namespace tamis::record {

struct CsvField {
  std::string text;  ///< without quotes and without white space at the ends
  base::Span where;  ///< in the source, quotes left out
};
struct CsvRow {
  std::vector<CsvField> fields;
  base::Span where;  ///< without the line end
};

/// A table of RFC 4180, with a comma, a semicolon or a tab between fields, whichever its lines are parted by; lines that are
/// blank are left out. What breaks the standard (a quote that is not closed, words behind a closing quote, a quote in a field
/// that does not begin with one) is said with its place, and the row is kept as far as it goes. Bytes that are no UTF-8 text
/// leave no rows at all.
struct Csv {
  char separator = ',';
  std::vector<CsvRow> rows;
  std::vector<base::Finding> faults;  ///< rule log-unreadable
};
Csv read_csv(const base::Source& source);

/// A cell as it is written: quoted where RFC 4180 asks for it, and with an apostrophe before what a spreadsheet would take
/// for a formula (= + - @, tab, CR).
std::string csv_cell(std::string_view text);
/// Takes that apostrophe off again.
std::string_view unguarded(std::string_view cell);

}  // namespace tamis::record

#endif
