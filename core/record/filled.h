#ifndef CORE_RECORD_FILLED_H
#define CORE_RECORD_FILLED_H

#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/record/blank.h"
#include "core/record/csv.h"
#include "core/record/judge.h"

namespace tamis::record {

/// A batch record that was filled in, held against what its fiche asks.
struct FilledRecord {
  bool of_this_fiche = true;                         ///< false: of another one; nothing more is read then
  std::string date, batch, size, made_by, verifier;  ///< as written; "" where left empty
  std::size_t lots = 0, lots_asked = 0;
  std::string probe;  ///< "0.3 °C in ice water"; "" where it was not checked
  Outcome probe_within = Outcome::open;
  struct Point {
    Log log;  ///< the readings written down
    Verdict verdict;
  };
  std::vector<Point> points;          ///< one for each control point of the fiche, in its order
  std::vector<base::Finding> faults;  ///< rules record-incomplete, log-unreadable, log-out-of-order
};

/// Whether a table is a batch record: its first cell is "part".
bool is_record(const Csv& table);

/// Reads the table of blank_csv with its last four columns filled. A bare figure is on the scale of what is asked. Lines may
/// have been added to a control point or left out where they were not needed; what is needed and empty is named at its line, or
/// at the end of the file where the line is gone.
FilledRecord read_filled(const base::Source& source, const Csv& table, const fiche::Fiche& fiche,
                         const std::vector<ControlPoint>& points);

}  // namespace tamis::record

#endif
