#include <cmath>

#include "core/cli/finding_json.h"
#include "core/cli/json_text.h"
#include "core/cli/record_of.h"
#include "core/draw/curve.h"

namespace tamis::cli {
namespace {

double rounded(double value) { return std::round(value * 1000) / 1000; }

/// A moment of the log as seconds from its first reading.
double since_first(const record::Log& log, double seconds) {
  return log.readings.empty() ? 0 : rounded(seconds - log.readings.front().seconds);
}

std::string place_json(const base::Source& source, base::Span where) {
  if (where.empty()) return "null";
  const base::Place place = source.place(where.begin);
  std::string out;
  JsonList object(out, '{', '}');
  object.member("line", std::to_string(place.line));
  object.member("column", std::to_string(place.column));
  object.close();
  return out;
}

std::string kills_json(const record::Log& log, const JudgedPoint& one) {
  std::string out;
  JsonList list(out, '[', ']');
  for (const record::Kill& kill : one.kills) {
    list.begin();
    JsonList object(out, '{', '}');
    object.text("organism", kill.of->organism);
    object.text("food", kill.of->food);
    object.member("log10", json_number(rounded(kill.logs)));
    object.member("asked", json_number(kill.of->asked));
    object.member("reached", std::isnan(kill.reached) ? "null" : json_number(since_first(log, kill.reached)));
    object.text("asked_by", kill.of->asked_by);
    object.text("source", kill.of->source);
    object.close();
  }
  list.close();
  return out;
}

std::string point_json(const base::Source& source, const record::Log& log, const JudgedPoint& one) {
  std::string out;
  JsonList object(out, '{', '}', "\n   ");
  object.member("number", std::to_string(one.point.number));
  object.text("id", one.point.id);
  object.text("where", one.point.where);
  object.text("hazard", one.point.hazard);
  object.text("limit", one.point.limit);
  object.text("outcome",
              one.verdict.outcome == record::Outcome::open ? "not-shown" : record::outcome_name(one.verdict.outcome));
  object.begin("says");
  JsonList says(out, '[', ']');
  for (const std::string& line : one.verdict.says) says.item(json_string(line));
  says.close();
  object.member("place", place_json(source, one.verdict.where));
  object.begin("moments");
  JsonList moments(out, '[', ']');
  for (const record::Decisive& moment : one.verdict.moments) {
    moments.begin();
    JsonList item(out, '{', '}');
    item.member("seconds", json_number(since_first(log, moment.seconds)));
    item.text("label", moment.label);
    item.close();
  }
  moments.close();
  object.member("lethality", kills_json(log, one));
  object.close();
  return out;
}

std::string log_json(const JudgedLog& judged) {
  const record::Log& log = judged.log;
  std::string out;
  JsonList object(out, '{', '}');
  object.text("path", judged.source->path());
  object.text("scale", log.scale == record::Scale::fahrenheit ? "fahrenheit" : "celsius");
  object.text("column", log.column);
  object.text("day", log.day);
  object.member("begins", log.by_clock && !log.readings.empty()
                              ? json_string(record::moment_text(log, log.readings.front().seconds))
                              : "null");
  object.member("rows", std::to_string(log.rows));
  object.member("readings", std::to_string(log.readings.size()));
  object.member("usable", log.usable ? "true" : "false");
  object.close();
  return out;
}

std::string curve_json(const record::Log& log) {
  std::string out;
  JsonList list(out, '[', ']');
  for (const record::Reading& one : log.readings) {
    if (one.parted) list.item("null");
    list.item("[" + json_number(since_first(log, one.seconds)) + ", " + json_number(rounded(one.celsius)) + "]");
  }
  list.close();
  return out;
}

}  // namespace

std::string judged_json(const JudgedLog& judged) {
  std::string out;
  JsonList object(out, '{', '}', "\n ");
  object.member("schema", "1");
  object.text("fiche", judged.fiche.id);
  object.text("title", judged.fiche.title);
  object.member("log", log_json(judged));
  object.begin("control_points");
  JsonList points(out, '[', ']', "\n  ");
  for (const JudgedPoint& point : judged.points) points.item(point_json(*judged.source, judged.log, point));
  points.close();
  object.begin("findings");
  append_findings(out, *judged.source, judged.log.faults, "\n  ");
  object.member("curve", curve_json(judged.log));
  object.text("note", who_decides);
  object.close();
  return out + "\n";
}

std::string filled_json(const JudgedRecord& judged) {
  const record::FilledRecord& filled = judged.record;
  std::string out;
  JsonList object(out, '{', '}', "\n ");
  object.member("schema", "1");
  object.text("fiche", judged.fiche.id);
  object.text("title", judged.fiche.title);
  object.begin("record");
  JsonList record(out, '{', '}');
  record.text("path", judged.source->path());
  for (const auto& [name, text] :
       {std::pair{"date", &filled.date}, std::pair{"batch", &filled.batch}, std::pair{"size", &filled.size},
        std::pair{"made_by", &filled.made_by}, std::pair{"probe", &filled.probe}, std::pair{"verifier", &filled.verifier}}) {
    record.text(name, *text);
  }
  record.member("lots", std::to_string(filled.lots));
  record.member("lots_asked", std::to_string(filled.lots_asked));
  record.close();
  object.begin("control_points");
  JsonList points(out, '[', ']', "\n  ");
  for (std::size_t i = 0; i < filled.points.size(); ++i)
    points.item(point_json(*judged.source, filled.points[i].log, {judged.points[i], filled.points[i].verdict, {}}));
  points.close();
  object.begin("findings");
  append_findings(out, *judged.source, filled.faults, "\n  ");
  object.text("note", who_decides);
  object.close();
  return out + "\n";
}

std::string judged_svg(const JudgedLog& judged) {
  const record::Log& log = judged.log;
  draw::Curve curve;
  curve.title = judged.fiche.title;
  draw::Curve::Series probe;
  for (const record::Reading& one : log.readings) {
    const double seconds = since_first(log, one.seconds);
    if (one.parted) probe.points.push_back({seconds, std::nan("")});
    probe.points.push_back({seconds, one.celsius});
  }
  curve.series.push_back(std::move(probe));
  for (const JudgedPoint& one : judged.points) {
    for (const record::Stage& stage : one.point.asks.stages) {
      if (stage.least) curve.limits.push_back({*stage.least, stage.text});
      if (stage.most && !(stage.least && *stage.least == *stage.most)) curve.limits.push_back({*stage.most, stage.text});
    }
    for (const record::Decisive& moment : one.verdict.moments) {
      curve.marks.push_back({since_first(log, moment.seconds),
                             moment.label + (log.by_clock ? " at " : " after ") + record::moment_text(log, moment.seconds)});
    }
    for (const record::Kill& kill : one.kills) {
      if (!std::isnan(kill.reached))
        curve.marks.push_back(
            {since_first(log, kill.reached),
             std::string(kill.of->organism) + " " +
                 record::celsius_text(kill.of->asked).substr(0, record::celsius_text(kill.of->asked).find(' ')) + " log10"});
    }
  }
  return draw::curve_svg(curve);
}

}  // namespace tamis::cli
