#include "core/cli/compare_report.h"

#include <algorithm>
#include <array>

#include "core/cli/json_text.h"
#include "core/cli/output.h"
#include "core/cli/report.h"

// The JSON is published as schemas/compare.schema.json; "schema" counts up when it changes so that an older reader
// would misread it.

namespace tamis::cli {
namespace {

using change::Change;
using change::Topic;
using fiche::At;

constexpr std::array topics{Topic::safety, Topic::figures, Topic::order, Topic::other, Topic::wording};
constexpr std::array<std::string_view, 5> headings{"food safety", "figures", "order", "other", "reads differently"};

std::string_view heading(Topic topic) { return headings[static_cast<std::size_t>(topic)]; }

/// "desserts/slice.fiche.xml, revision 3, released".
std::string titled(const fiche::Document& document) {
  std::string out = document.source().path();
  const std::string_view revision = document.get(document.root(), At::revision);
  const std::string_view state = document.get(document.root(), At::state);
  if (!revision.empty()) out += ", revision " + std::string(revision);
  if (!state.empty()) out += ", " + std::string(state);
  return harmless(out);
}

std::string line_in(const fiche::Document& document, base::Span where) {
  return std::to_string(document.source().place(where.begin).line);
}

std::string place_text(const Comparison& comparison, const Change& change) {
  if (change.new_where) return "line " + line_in(comparison.to, *change.new_where);
  return change.old_where ? "was line " + line_in(comparison.from, *change.old_where) : "";
}

std::string change_line(const Comparison& comparison, const Change& change, bool colour) {
  const bool loosened = change.hold == Change::Hold::loosened;
  const std::string text = harmless(change.text);
  const std::string place = "  (" + place_text(comparison, change) + ")\n";
  if (!colour) return (loosened ? "! " : "  ") + text + place;
  return (loosened ? "\033[1;31m! " + text + "\033[0m" : "  " + text) + "\033[2m" + place.substr(0, place.size() - 1) + "\033[0m\n";
}

std::size_t count_in(const Comparison& comparison, Topic topic) {
  return static_cast<std::size_t>(std::count_if(comparison.changes.begin(), comparison.changes.end(),
                                                [topic](const Change& change) { return change.topic == topic; }));
}

std::string place_json(const fiche::Document& document, const std::optional<base::Span>& where) {
  if (!where) return "null";
  std::string out;
  {
    JsonList object(out, '{', '}');
    const base::Place begin = document.source().place(where->begin);
    const base::Place end = document.source().place(where->end);
    object.member("line", std::to_string(begin.line));
    object.member("column", std::to_string(begin.column));
    object.member("end_line", std::to_string(end.line));
    object.member("end_column", std::to_string(end.column));
  }
  return out;
}

std::string fiche_json(const fiche::Document& document) {
  std::string out;
  {
    JsonList object(out, '{', '}');
    object.text("path", document.source().path());
    object.text("id", document.get(document.root(), At::id));
    object.text("revision", document.get(document.root(), At::revision));
    object.text("state", document.get(document.root(), At::state));
  }
  return out;
}

std::string change_json(const Comparison& comparison, const Change& change) {
  std::string out;
  {
    JsonList object(out, '{', '}');
    object.text("topic", change::topic_name(change.topic));
    object.text("kind", change::kind_name(change.kind));
    object.text("hold", change::hold_name(change.hold));
    object.text("text", change.text);
    object.text("what", change.what);
    object.text("is", change.is);
    object.text("was", change.was);
    object.member("new", place_json(comparison.to, change.new_where));
    object.member("old", place_json(comparison.from, change.old_where));
  }
  return out;
}

}  // namespace

std::string comparison_text(const Comparison& comparison, bool colour) {
  std::string out = titled(comparison.to) + "\n  against " + titled(comparison.from) + "\n";
  for (const Topic topic : topics) {
    if (count_in(comparison, topic) == 0) continue;
    const std::string name(heading(topic));
    out += "\n" + (colour ? "\033[1m" + name + "\033[0m" : name) + "\n";
    for (const Change& change : comparison.changes)
      if (change.topic == topic) out += change_line(comparison, change, colour);
  }
  return out;
}

std::string comparison_json(const Comparison& comparison) {
  std::string out = "{\"schema\": 1, \"tamis\": \"" TAMIS_VERSION "\",\n";
  out += "\"old\": " + fiche_json(comparison.from) + ",\n\"new\": " + fiche_json(comparison.to) + ",\n\"changes\": ";
  {
    JsonList list(out, '[', ']', "\n  ");
    for (const Change& change : comparison.changes) list.item(change_json(comparison, change));
  }
  out += ",\n\"totals\": ";
  {
    JsonList totals(out, '{', '}');
    totals.member("changes", std::to_string(comparison.changes.size()));
    for (const Topic topic : topics) totals.member(change::topic_name(topic), std::to_string(count_in(comparison, topic)));
  }
  return out + "}\n";
}

std::string comparison_count(const Comparison& comparison) {
  if (comparison.changes.empty()) return "nothing changed: the two say the same";
  std::string out = count_of(comparison.changes.size(), "change");
  bool first = true;
  for (const Topic topic : topics) {
    const std::size_t count = count_in(comparison, topic);
    if (count == 0) continue;
    out += (first ? ": " : ", ") + std::to_string(count) + (topic == Topic::wording ? " " : " in ") +
           std::string(topic == Topic::wording ? "only reads differently" : heading(topic));
    first = false;
  }
  return out;
}

}  // namespace tamis::cli
