#ifndef CORE_CLI_RECORD_OF_H
#define CORE_CLI_RECORD_OF_H

#include <memory>
#include <string>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/record/blank.h"
#include "core/record/control_limit.h"
#include "core/record/filled.h"
#include "core/record/judge.h"
#include "core/record/kills.h"
#include "core/record/log.h"

namespace tamis::cli {

/// One control point as a log shows it.
struct JudgedPoint {
  record::ControlPoint point;
  record::Verdict verdict;
  std::vector<record::Kill> kills;
};

/// A log held against control points of a fiche, for every form of telling it.
struct JudgedLog {
  const fiche::Fiche& fiche;
  std::shared_ptr<const base::Source> source;  ///< of the log
  const record::Log& log;
  std::vector<JudgedPoint> points;
  std::size_t all_points = 0;  ///< of the fiche
};

std::string judged_text(const JudgedLog& judged, bool colour);
std::string judged_json(const JudgedLog& judged);
std::string judged_svg(const JudgedLog& judged);

/// A batch record filled in, held against its fiche.
struct JudgedRecord {
  const fiche::Fiche& fiche;
  std::shared_ptr<const base::Source> source;
  const std::vector<record::ControlPoint>& points;
  const record::FilledRecord& record;
};

std::string filled_text(const JudgedRecord& judged, bool colour);
std::string filled_json(const JudgedRecord& judged);

/// The blank record: for a printer of text, and as one HTML page for A4 and Letter that needs nothing else.
std::string blank_text(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points);
std::string blank_html(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points);

/// "Salmonella in beef and lamb: 12.3 log10 reductions; 6.5 asked (USDA FSIS ...), reached at 11:31", to the next minute.
std::string kill_text(const record::Kill& kill, const record::Log& log);
/// What Tamis does not decide; stands under every verdict and on every record.
inline constexpr std::string_view who_decides =
    "The limits are the fiche's own. Local rules and the persons licensed by them decide.";

}  // namespace tamis::cli

#endif
