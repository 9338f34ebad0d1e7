#ifndef CORE_RECORD_BLANK_H
#define CORE_RECORD_BLANK_H

#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/record/control_limit.h"
#include "core/record/csv.h"

namespace tamis::record {

/// The parts of a batch record, as its CSV names them; a control point is "control point 2".
namespace part {
inline constexpr std::string_view fiche = "fiche", batch = "batch", lot = "supplier lot", probe = "probe check",
                                  control = "control point", verified = "verified";
}

/// One line of a batch record, to be filled in.
struct Line {
  std::string part;    ///< of record::part
  std::string of;      ///< what is asked for: "date", "leg of lamb, bone in", "reading 1"
  std::string asked;   ///< the limit, the amount, what it should be, in the words of the fiche; may be empty
  int point = 0;       ///< which control point; 0 for the others
  bool needed = true;  ///< false: only where there is more than one to write
};

/// The batch record that a fiche asks for: day, batch and hands; the supplier's lot of each food (water has none); the probe's
/// check in ice and boiling water; readings for each control point, one a stage of a cooling, two for a hold, several where the
/// food is held; who looked it through.
std::vector<Line> blank_record(const fiche::Fiche& fiche, const std::vector<ControlPoint>& points);

/// As CSV: part,of,asked,found,time,initials,action taken. CRLF between lines.
std::string blank_csv(const std::vector<Line>& lines);
inline constexpr std::string_view record_heading = "part,of,asked,found,time,initials,action taken";
enum RecordColumn : std::size_t { c_part, c_of, c_asked, c_found, c_time, c_initials, c_action };
/// What stands there, without the guard against formulas; "" where the row is shorter.
std::string cell(const CsvRow& row, RecordColumn column);

/// Where water boils in this kitchen, °C, and how far a probe may be off, °C (FDA Food Code 4-203.11: 1 °C or 2 °F; from
/// memory).
double boiling_water(const fiche::Kitchen& kitchen);
inline constexpr double probe_error = 1;

/// "revision 2" in the language of the fiche; "" for none.
std::string revision_of(const fiche::Fiche& fiche);

}  // namespace tamis::record

#endif
