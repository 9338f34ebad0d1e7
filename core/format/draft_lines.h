#ifndef CORE_FORMAT_DRAFT_LINES_H
#define CORE_FORMAT_DRAFT_LINES_H

#include <string>
#include <vector>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// A line of the typed text and what its own letters say; what it is within the recipe is for arrange() to tell.
struct Line {
  base::Span whole;           ///< without the white space around
  base::Span text;            ///< and without bullet, number and heading marks
  std::vector<Word> words;    ///< of text
  bool bullet = false;
  bool numbered = false;      ///< "3." "3)" "Step 3:"
  bool marked = false;        ///< "## Sponge", "**Sponge**", "== Sponge =="
  bool colon = false;         ///< ends with a colon, which `text` leaves out
  bool stop = false;          ///< ends with . ! or ?
  bool capitals = false;      ///< has letters, none of them small
  bool figures = false;       ///< some word starts with a digit
  [[nodiscard]] bool blank() const { return whole.empty(); }
};

/// All lines, blank ones too. Lines end with LF, CRLF or CR.
std::vector<Line> lines_of(const Desk& desk);

/// What a line could be, judged without its neighbours.
bool starts_with_amount(const Desk& desk, const Line& line);  ///< "250 g butter", "4 eggs", "a pinch of salt"
bool ends_with_amount(const Desk& desk, const Line& line);    ///< "butter 250g"
bool starts_with_verb(const Desk& desk, const Line& line);    ///< "Melt the butter"
bool has_verb(const Desk& desk, const Line& line);

}  // namespace tamis::format::draft

#endif
