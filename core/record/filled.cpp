#include "core/record/filled.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/utf8.h"
#include "core/record/log_columns.h"
#include "core/record/log_time.h"
#include "core/record/spot_readings.h"

namespace tamis::record {
namespace {

class Reader {
 public:
  Reader(const base::Source& source, const Csv& table, const fiche::Fiche& fiche, const std::vector<ControlPoint>& points,
         FilledRecord& out)
      : table_(table), fiche_(fiche), points_(points), out_(out) {
    const auto end = static_cast<std::uint32_t>(source.bytes().size());
    end_ = {end, end};
  }

  void read() {
    out_.faults = table_.faults;
    if (!is_of_this_fiche()) return;
    for (const Line& line : blank_record(fiche_, points_)) {
      if (line.point == 0) single(line);
    }
    if (!probe_checked_ && out_.probe.empty())
      say(probe_row_ != nullptr ? probe_row_->where : end_, "the probe was not checked",
          "put it in ice water, and write what it shows");
    for (const ControlPoint& point : points_) control(point);
    base::sort_by_place(out_.faults);
  }

 private:
  void say(base::Span where, std::string message, std::string advice) {
    base::Finding finding;
    finding.rule = "record-incomplete";
    finding.where = where;
    finding.message = std::move(message);
    finding.advice = std::move(advice);
    out_.faults.push_back(std::move(finding));
  }

  /// The next line of that part and name that was not taken yet.
  const CsvRow* take(const Line& line) {
    int nth = seen_[line.part + "\n" + line.of]++;
    for (const CsvRow& row : table_.rows) {
      if (base::lower(cell(row, c_part)) == line.part && cell(row, c_of) == line.of && nth-- == 0) return &row;
    }
    return nullptr;
  }

  void single(const Line& line) {
    const CsvRow* row = take(line);
    const std::string found = row == nullptr ? "" : cell(*row, c_found);
    const base::Span where = row == nullptr ? end_ : row->where;
    if (line.part == part::fiche) return;
    if (line.part == part::probe) return probe(line, row, found);
    if (line.part == part::lot) {
      ++out_.lots_asked;
      if (!found.empty()) ++out_.lots;
    }
    if (found.empty()) return missing(line, row, where);
    if (line.of == "date" || line.part == part::verified) {
      const std::string day = line.of == "date" ? found : cell(*row, c_time);
      const auto moment = read_moment(day);
      const bool good = moment && (moment->kind == Moment::Kind::date || moment->kind == Moment::Kind::date_and_clock);
      if (!good && (line.of == "date" || !day.empty()))
        say(row->fields[line.of == "date" ? c_found : c_time].where, "\"" + day + "\" is no date", "write 2026-11-03");
      if (day.empty()) say(where, "the verifier wrote no date", "write it under time");
    }
    for (const auto& [name, into] :
         {std::pair{"date", &out_.date}, std::pair{"batch number", &out_.batch}, std::pair{"size", &out_.size},
          std::pair{"made by", &out_.made_by}, std::pair{"verifier", &out_.verifier}}) {
      if (line.of == name && line.part != part::lot) *into = found;
    }
  }

  void missing(const Line& line, const CsvRow* row, base::Span where) {
    if (!line.needed) return;
    const std::string what = line.of == "made by"          ? "it does not say who made it"
                             : line.part == part::lot      ? "no supplier's lot for " + line.of
                             : line.part == part::verified ? "nobody has verified it"
                                                           : "no " + line.of;
    say(where, what + (row == nullptr ? ": its line is gone" : ""),
        line.part == part::lot ? "copy it from the label or the delivery note" : "whoever was there fills it in");
  }

  bool is_of_this_fiche() {
    const auto row = std::find_if(table_.rows.begin(), table_.rows.end(),
                                  [](const CsvRow& one) { return base::lower(cell(one, c_part)) == part::fiche; });
    if (row == table_.rows.end()) {
      say(end_, "it does not say of which fiche it is", "keep the line \"fiche\" of the blank record");
      return true;
    }
    if (cell(*row, c_of) != fiche_.id) {
      say(row->where, "a record of \"" + cell(*row, c_of) + "\", and this fiche is \"" + std::string(fiche_.id) + "\"",
          "hold it against its own fiche");
      out_.of_this_fiche = false;
    } else if (const std::string revision = revision_of(fiche_); cell(*row, c_asked) != revision) {
      const auto named = [](const std::string& one) { return one.empty() ? std::string("no revision") : one; };
      say(row->where, "a record of " + named(cell(*row, c_asked)) + ", and this fiche is " + named(revision),
          "hold it against the revision that was made");
    }
    return out_.of_this_fiche;
  }

  void probe(const Line& line, const CsvRow* row, const std::string& found) {
    if (row != nullptr && probe_row_ == nullptr) probe_row_ = row;
    if (found.empty()) return;
    probe_checked_ = true;
    const auto degrees = read_degrees(found);
    if (!degrees) return unreadable(row->fields[c_found]);
    const Scale scale = degrees->scale != Scale::unsaid ? degrees->scale : scale_of(cell(*row, c_asked));
    const double celsius = celsius_of(degrees->value, scale);
    const double wanted = line.of == "in ice water" ? 0 : boiling_water(*fiche_.kitchen);
    const bool good = std::abs(celsius - wanted) <= (scale == Scale::fahrenheit ? 2 / 1.8 : probe_error) + 0.05;
    out_.probe += (out_.probe.empty() ? "" : ", ") + degrees_text(scale, celsius) + " " + line.of;
    if (out_.probe_within != Outcome::missed) out_.probe_within = good ? Outcome::met : Outcome::missed;
    if (!good && cell(*row, c_action).empty())
      say(row->fields[c_found].where,
          "the probe shows " + degrees_text(scale, celsius) + " " + line.of +
              ", farther off than it may be, and no action is written",
          "take another probe; say what was done with what this one measured");
  }

  void unreadable(const CsvField& field) {
    base::Finding finding;
    finding.rule = "log-unreadable";
    finding.where = field.where;
    finding.message = "\"" + field.text + "\" is no temperature";
    finding.advice = "write the figure that was read: 63.2";
    out_.faults.push_back(std::move(finding));
  }

  void control(const ControlPoint& point) {
    const std::string name = std::string(part::control) + " " + std::to_string(point.number);
    SpotReadings spots(point, out_.faults);
    base::Span where = end_;
    bool any = false;
    for (const CsvRow& row : table_.rows) {
      if (base::lower(cell(row, c_part)) != name) continue;
      if (!any) where = row.where;
      any = true;
      if (row.fields.size() > c_found && !row.fields[c_found].text.empty()) spots.add(row);
    }
    if (spots.empty())
      say(where, name + ": no reading" + (any ? "" : "; its lines are gone"), "what was not measured cannot be shown");
    FilledRecord::Point out;
    out.verdict = spots.judge(out.log);
    out_.points.push_back(std::move(out));
  }

  const Csv& table_;
  const fiche::Fiche& fiche_;
  const std::vector<ControlPoint>& points_;
  FilledRecord& out_;
  base::Span end_;
  std::map<std::string, int> seen_;
  const CsvRow* probe_row_ = nullptr;
  bool probe_checked_ = false;
};

}  // namespace

bool is_record(const Csv& table) {
  return !table.rows.empty() && !table.rows.front().fields.empty() &&
         base::lower(table.rows.front().fields.front().text) == "part";
}

FilledRecord read_filled(const base::Source& source, const Csv& table, const fiche::Fiche& fiche,
                         const std::vector<ControlPoint>& points) {
  FilledRecord out;
  Reader(source, table, fiche, points, out).read();
  return out;
}

}  // namespace tamis::record
