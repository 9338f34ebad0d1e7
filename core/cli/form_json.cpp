#include "core/cli/finding_json.h"
#include "core/cli/form.h"
#include "core/cli/json_text.h"
#include "core/cli/output.h"

// The report's shape is published as schemas/report.schema.json; "schema" counts up when it changes so that an
// older reader would misread it.

namespace tamis::cli {
namespace {

class JsonForm final : public Form {
 public:
  [[nodiscard]] std::string file(const base::Source& source,
                                 const std::vector<base::Finding>& findings) const override {
    std::string out;
    {
      JsonList object(out, '{', '}');
      object.text("path", source.path());
      object.begin("findings");
      append_findings(out, source, findings, "\n  ");
    }
    return out;
  }

  [[nodiscard]] std::string failed(const std::string& path, const std::string& why) const override {
    std::string out;
    {
      JsonList object(out, '{', '}');
      object.text("path", path);
      object.text("failed", why);
      object.member("findings", "[]");
    }
    return out;
  }

  [[nodiscard]] std::string start() const override {
    return "{\"schema\": 1, \"tamis\": \"" TAMIS_VERSION "\", \"files\": [";
  }

  [[nodiscard]] std::string_view before(bool first) const override { return first ? "\n" : ",\n"; }

  void end(const Totals& totals, Exit) override {
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
};

}  // namespace

std::unique_ptr<Form> json_form() { return std::make_unique<JsonForm>(); }

}  // namespace tamis::cli
