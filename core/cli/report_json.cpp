#include "core/cli/json_text.h"
#include "core/cli/output.h"
#include "core/cli/report.h"

// The report's shape is published as schemas/report.schema.json; "schema" counts up when it changes so that an
// older reader would misread it.

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

class JsonReport final : public Report {
 public:
  JsonReport() { print("{\"schema\": 1, \"tamis\": \"" TAMIS_VERSION "\", \"files\": ["); }

  void file(const base::Source& source, const std::vector<base::Finding>& findings) override {
    std::string out = separator();
    {
      JsonList object(out, '{', '}');
      object.text("path", source.path());
      object.begin("findings");
      JsonList list(out, '[', ']', "\n  ");
      for (const base::Finding& finding : findings) {
        list.begin();
        add_finding(out, source, finding);
      }
    }
    print(out);
  }

  void failed(const std::string& path, const std::string& why) override {
    complain(path + ": " + why);
    std::string out = separator();
    {
      JsonList object(out, '{', '}');
      object.text("path", path);
      object.text("failed", why);
      object.member("findings", "[]");
    }
    print(out);
  }

  void end(const Totals& totals) override {
    std::string out = "],\n\"totals\": ";
    {
      JsonList object(out, '{', '}');
      object.member("files", std::to_string(totals.files));
      object.member("failed", std::to_string(totals.failed));
      object.member("errors", std::to_string(totals.errors));
      object.member("warnings", std::to_string(totals.warnings));
      object.member("advice", std::to_string(totals.advice));
    }
    print(out + "}\n");
  }

 private:
  std::string separator() {
    const std::string out = first_ ? "\n" : ",\n";
    first_ = false;
    return out;
  }

  bool first_ = true;
};

}  // namespace

std::unique_ptr<Report> json_report() { return std::make_unique<JsonReport>(); }

}  // namespace tamis::cli
