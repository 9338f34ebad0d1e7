#include "core/cli/finding_json.h"

#include "core/cli/json_text.h"

namespace tamis::cli {
namespace {

void add_places(JsonList& object, base::Place begin, base::Place end) {
  object.member("line", std::to_string(begin.line));
  object.member("column", std::to_string(begin.column));
  object.member("end_line", std::to_string(end.line));
  object.member("end_column", std::to_string(end.column));
}

void add_related(std::string& out, const base::Source& source, const base::Related& related) {
  const bool here = related.path.empty();
  JsonList object(out, '{', '}');
  object.text("path", here ? source.path() : related.path);
  add_places(object, here ? source.place(related.where.begin) : related.place,
             here ? source.place(related.where.end) : related.end);
  object.text("message", related.message);
}

void add_edit(std::string& out, const base::Source& source, const base::Edit& edit) {
  JsonList object(out, '{', '}');
  add_places(object, source.place(edit.where.begin), source.place(edit.where.end));
  object.text("text", edit.text);
}

void add_finding(std::string& out, const base::Source& source, const base::Finding& finding) {
  JsonList object(out, '{', '}');
  object.text("rule", finding.rule);
  object.text("severity", base::severity_name(finding.severity));
  add_places(object, source.place(finding.where.begin), source.place(finding.where.end));
  object.text("message", finding.message);
  object.text("advice", finding.advice);
  object.text("source", finding.source);
  object.begin("related");
  {
    JsonList list(out, '[', ']');
    for (const base::Related& related : finding.related) {
      list.begin();
      add_related(out, source, related);
    }
  }
  object.begin("edits");
  JsonList list(out, '[', ']');
  for (const base::Edit& edit : finding.edits) {
    list.begin();
    add_edit(out, source, edit);
  }
}

}  // namespace

void append_findings(std::string& out, const base::Source& source, const std::vector<base::Finding>& findings,
                     std::string_view between) {
  JsonList list(out, '[', ']', between);
  for (const base::Finding& finding : findings) {
    list.begin();
    add_finding(out, source, finding);
  }
}

}  // namespace tamis::cli
