#include <algorithm>
#include <array>
#include <memory>
#include <string>

#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/record_of.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"as", 'a', "FORM",
           "the blank record as text, a page to print or a table to fill in; a verdict as text, for programs, or as the curve",
           "text|html|csv|json|svg"},
    Option{"control", 'c', "N", "which control point the log is of, by its number or id; all for every one", ""},
    Option{"scale", 0, "SCALE", "the scale of the readings, where the heading does not say it", "c|f"},
    Option{"time", 0, "UNIT", "what a bare number in the column of time counts", "s|min|h"},
    Option{"column", 0, "NAME", "which column of temperatures, by its heading or its number", ""},
    Option{"kitchen", 'k', "FILE", "the kitchen file, when it is not the one above the fiche", "FILE"},
};

constexpr std::string_view help =
    R"(With a fiche alone: the batch record to fill in by hand, as text, as a page to print
(--as html) or as a table (--as csv). Filled in, that table is read back and held
against the fiche: what is missing, and which limits were met.

LOG.csv is what a thermometer wrote: a heading that names a time and a temperature,
and a line for each reading. It is held against the fiche's control points: which
limit was met, which was missed and when, and what the heat did
to the germs it is asked against.
What is broken in a log (gaps, leaps, disorder, the other scale) is said and never
smoothed over. Ends with 0 when every limit was met, 1 when one was not or the log
is broken, 2 when nothing could be done.

  $ tamis record mains/roast-leg-of-lamb.fiche.xml logs/lamb.csv
  …
    met        at least 63 °C from 15:46 for 39 min, 4 min asked
  …
)";

std::string misuse(const Request& request) {
  if (request.words.empty()) return "say which fiche";
  if (request.words.size() > 2) return "record takes a fiche and one log or record";
  const std::string form = request.get("as", "text");
  const bool alone = request.words.size() == 1;
  if (alone && (form == "json" || form == "svg"))
    return "--as " + form + " tells what a log or a record shows: name it behind the fiche";
  if (!alone && (form == "html" || form == "csv")) return "--as " + form + " is for the blank record: name the fiche alone";
  if (std::count(request.words.begin(), request.words.end(), "-") > 1) return "only one of the two can be standard input";
  for (const std::string& word : request.words) {
    if (kind_of(word) == PathKind::folder) return word + " is a folder; record takes a fiche and a log";
  }
  return {};
}

/// The kitchen's severities, else the rules' own; those switched off go.
void settle(std::vector<base::Finding>& findings, const fiche::Kitchen& kitchen) {
  for (base::Finding& finding : findings) {
    const rules::Rule* rule = rules::rule_by_id(finding.rule);
    const auto house = kitchen.severities.find(finding.rule);
    if (rule == nullptr) continue;
    finding.severity = house != kitchen.severities.end() ? house->second : rule->severity;
    finding.source = rule->source;
  }
  std::erase_if(findings, [](const base::Finding& finding) { return finding.severity == base::Severity::off; });
}

/// How warm and cold the food of the fiche is said to be.
void set_bounds(record::LogWish& wish, const fiche::Fiche& fiche) {
  for (const fiche::Statement& one : fiche.statements) {
    if (!one.amount || !one.amount->has_figure() || fiche.document->el(one.node) != fiche::El::food_temp ||
        one.at != fiche::At::unknown)
      continue;
    if (!one.amount->low.empty()) wish.hottest = std::max(wish.hottest, one.amount->low_base().approximate() + 10);
    if (!one.amount->high.empty()) wish.hottest = std::max(wish.hottest, one.amount->high_base().approximate() + 10);
    const bool cold = one.amount->form != measure::Amount::Form::words && one.amount->high_base().approximate() < 0;
    if (cold) wish.coldest = -60;
  }
}

class Recording {
 public:
  explicit Recording(const Request& request) : request_(request), surroundings_(request.get("kitchen")) {}

  Exit run() {
    if (!read_fiche()) return Exit::failed;
    if (request_.words.size() == 1) return print_blank();
    const auto source = read_file(request_.words[1]);
    if (!source) return fail(request_.words[1], source.fault().message);
    const record::Csv table = record::read_csv(**source);
    return record::is_record(table) ? judge_record(*source, table) : judge_log(*source, table);
  }

 private:
  Exit fail(const std::string& path, const std::string& why) {
    report_->failed(path, why);
    return Exit::failed;
  }

  bool read_fiche() {
    const std::string& path = request_.words.front();
    const auto source = read_file(path);
    if (!source) return fail(path, source.fault().message) == Exit::good;
    format::Read read = format::read(*source);
    if (read.document == nullptr) {
      report_->file(**source, read.findings);
      return false;
    }
    if (read.document->root() == fiche::none || read.document->el(read.document->root()) != fiche::El::fiche)
      return fail(path, "is no fiche") == Exit::good;
    const Around& around = surroundings_.of(path);
    if (!around.fault.empty())
      return fail(around.kitchen_path, "the kitchen file cannot be used: " + around.fault) == Exit::good;
    document_ = read.document;
    kitchen_ = around.kitchen;
    fiche_ = fiche::read_fiche(*document_, *kitchen_);
    points_ = record::control_points(fiche_);
    return true;
  }

  Exit print_blank() {
    const std::string form = request_.get("as", "text");
    print(form == "html"  ? blank_html(fiche_, points_)
          : form == "csv" ? record::blank_csv(record::blank_record(fiche_, points_))
                          : blank_text(fiche_, points_));
    if (points_.empty()) say("the fiche has no control point: the record asks for no reading");
    return Exit::good;
  }

  Exit judge_record(const std::shared_ptr<const base::Source>& source, const record::Csv& table) {
    if (request_.get("as") == "svg") return fail(source->path(), "is a record by hand: there is no curve to draw");
    record::FilledRecord filled = record::read_filled(*source, table, fiche_, points_);
    settle(filled.faults, *kitchen_);
    const JudgedRecord judged{fiche_, source, points_, filled};
    report_->file(*source, filled.faults);
    if (!filled.of_this_fiche) return Exit::failed;
    print(request_.get("as") == "json" ? filled_json(judged) : filled_text(judged, colour_on_output()));
    const bool met = filled.probe_within != record::Outcome::missed &&
                     std::all_of(filled.points.begin(), filled.points.end(),
                                 [](const auto& one) { return one.verdict.outcome == record::Outcome::met; });
    return met && !any_error(filled.faults) ? Exit::good : Exit::found;
  }

  static bool any_error(const std::vector<base::Finding>& findings) {
    return std::any_of(findings.begin(), findings.end(),
                       [](const base::Finding& one) { return one.severity == base::Severity::error; });
  }

  Exit judge_log(const std::shared_ptr<const base::Source>& source, const record::Csv& table) {
    const std::string wrong = choose();
    if (!wrong.empty()) {
      complain(wrong);
      for (const record::ControlPoint& one : points_)
        say("  " + std::to_string(one.number) + "  " + harmless(one.where + ": " + one.limit));
      return Exit::failed;
    }
    record::LogWish wish;
    const std::string scale = request_.get("scale");
    if (!scale.empty()) wish.scale = scale == "f" ? record::Scale::fahrenheit : record::Scale::celsius;
    const std::string unit = request_.get("time");
    if (!unit.empty()) wish.number_seconds = unit == "s" ? 1 : unit == "min" ? 60 : 3600;
    wish.column = request_.get("column");
    set_bounds(wish, fiche_);
    record::Log log = record::read_log(table, wish);
    settle(log.faults, *kitchen_);
    JudgedLog judged{fiche_, source, log, {}, points_.size()};
    for (const record::ControlPoint& point : chosen_)
      judged.points.push_back({point, record::judge(point.asks, log), record::kills_of(fiche_, point, log)});
    report_->file(*source, log.faults);
    return tell(judged);
  }

  Exit tell(const JudgedLog& judged) {
    const std::string form = request_.get("as", "text");
    if (form == "json") {
      print(judged_json(judged));
    } else if (!judged.log.usable) {
      say(harmless(judged.source->path()) + ": nothing was judged");
    } else {
      print(form == "svg" ? judged_svg(judged) : judged_text(judged, colour_on_output()));
    }
    if (!judged.log.usable) return Exit::failed;
    const bool met = std::all_of(judged.points.begin(), judged.points.end(),
                                 [](const JudgedPoint& one) { return one.verdict.outcome == record::Outcome::met; });
    return met && !any_error(judged.log.faults) ? Exit::good : Exit::found;
  }

  /// Which control points the log is of; why it cannot be told.
  std::string choose() {
    const std::string wish = request_.get("control");
    if (points_.empty()) return "the fiche has no control point to hold a log against";
    if (wish == "all" || (wish.empty() && points_.size() == 1)) {
      chosen_ = points_;
      return {};
    }
    for (const record::ControlPoint& one : points_) {
      if (!wish.empty() && (wish == std::to_string(one.number) || wish == one.id)) chosen_.push_back(one);
    }
    if (!chosen_.empty()) return {};
    return wish.empty()
               ? "the fiche has " + count_of(points_.size(), "control point") + ": say with --control which the log is of"
               : "the fiche has no control point \"" + harmless(wish) + "\"; it has";
  }

  const Request& request_;
  Surroundings surroundings_;
  std::unique_ptr<Report> report_ = talk_report();
  std::shared_ptr<const fiche::Document> document_;
  std::shared_ptr<const fiche::Kitchen> kitchen_;
  fiche::Fiche fiche_;
  std::vector<record::ControlPoint> points_, chosen_;
};

Exit run_record(const Request& request) { return Recording(request).run(); }

}  // namespace

extern const Verb verb_record;
const Verb verb_record{.name = "record",
                       .summary = "print a batch record, read it back, and hold a thermometer's log against a fiche",
                       .usage = "tamis record [OPTIONS] FICHE [LOG.csv|RECORD.csv]",
                       .help = help,
                       .words = "FILE",
                       .options = options,
                       .misuse = misuse,
                       .run = run_record};

}  // namespace tamis::cli
