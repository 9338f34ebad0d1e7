#include "core/cli/report.h"

#include "core/cli/form.h"
#include "core/cli/output.h"

namespace tamis::cli {
namespace {

class TalkReport final : public Report {
 public:
  void file(const base::Source& source, const std::vector<base::Finding>& findings) override {
    part(spelled(source, findings));
  }

  [[nodiscard]] std::string spelled(const base::Source& source, const std::vector<base::Finding>& findings) const override {
    return form_->file(source, findings);
  }

  void part(const std::string& text) override {
    if (text.empty()) return;
    talk(std::string(form_->before(first_)) + text);
    first_ = false;
  }

  void failed(const std::string& path, const std::string& why) override { complain(path + ": " + why); }

 private:
  std::unique_ptr<Form> form_ = text_form({colour_on_talk(), output_columns()});
  bool first_ = true;
};

}  // namespace

std::unique_ptr<Report> talk_report() { return std::make_unique<TalkReport>(); }

std::string count_of(std::size_t count, std::string_view what) {
  return std::to_string(count) + " " + std::string(what) + (count == 1 ? "" : "s");
}

std::string counted(const Totals& totals) {
  std::string out;
  const auto add = [&out](std::size_t count, const std::string& text) {
    if (count > 0) out += (out.empty() ? "" : ", ") + text;
  };
  add(totals.errors, count_of(totals.errors, "error"));
  add(totals.warnings, count_of(totals.warnings, "warning"));
  add(totals.advice, std::to_string(totals.advice) + " advice");
  return out.empty() ? "nothing" : out;
}

void Totals::add(const std::vector<base::Finding>& found) {
  for (const base::Finding& finding : found) {
    if (finding.severity == base::Severity::error) ++errors;
    if (finding.severity == base::Severity::warning) ++warnings;
    if (finding.severity == base::Severity::advice) ++advice;
    if (!finding.edits.empty()) ++mendable;
  }
}

void Totals::add(const Totals& more) {
  files += more.files;
  failed += more.failed;
  errors += more.errors;
  warnings += more.warnings;
  advice += more.advice;
  mendable += more.mendable;
}

}  // namespace tamis::cli
