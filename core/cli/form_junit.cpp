#include <algorithm>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "core/cli/form.h"
#include "core/cli/output.h"
#include "core/format/format.h"

// JUnit XML has no standard of its own; what is written is what build servers have in common (the schema of the
// Jenkins xUnit plugin, which is MIT): <testsuites>, a <testsuite> a file, a <testcase> a rule that found something in
// it. Errors are failures; warnings are skipped tests, so that a server counts and shows them without failing the
// build; advice is the output of a test that passed. A file with nothing to say has one passed test, one that could
// not be checked has one error. Counts stand on each suite only: those of the whole are known too late.

namespace tamis::cli {
namespace {

/// Text that XML 1.0 can hold: what it has no sign for becomes U+FFFD.
std::string xml(std::string_view text, bool attribute) {
  std::string held;
  for (std::size_t at = 0; at < text.size();) {
    const char32_t c = base::next_scalar(text, at).value_or(0xFFFD);
    const bool fits = c >= 0x20 ? c != 0xFFFE && c != 0xFFFF : c == '\t' || c == '\n' || c == '\r';
    base::append_scalar(held, fits ? c : 0xFFFD);
  }
  return format::escaped(held, fiche::Spelling::xml, attribute);
}

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + xml(value, true) + "\"";
}

/// All findings of one rule in one file.
struct Case {
  std::string rule;
  std::vector<base::Finding> findings;
  [[nodiscard]] base::Severity worst() const {
    base::Severity worst = base::Severity::advice;
    for (const base::Finding& finding : findings) worst = std::max(worst, finding.severity);
    return worst;
  }
};

/// In the order in which the rules first speak.
std::vector<Case> cases_of(const std::vector<base::Finding>& findings) {
  std::vector<Case> cases;
  for (const base::Finding& finding : findings) {
    auto found = std::find_if(cases.begin(), cases.end(), [&](const Case& c) { return c.rule == finding.rule; });
    if (found == cases.end()) found = cases.insert(cases.end(), {finding.rule, {}});
    found->findings.push_back(finding);
  }
  return cases;
}

std::string suite_start(const std::string& path, std::size_t tests, std::size_t failures, std::size_t errors,
                        std::size_t skipped) {
  return "<testsuite" + attribute("name", path) + attribute("tests", std::to_string(tests)) +
         attribute("failures", std::to_string(failures)) + attribute("errors", std::to_string(errors)) +
         attribute("skipped", std::to_string(skipped)) + ">\n";
}

std::string case_start(const std::string& name, const std::string& path) {
  return "  <testcase" + attribute("name", name) + attribute("classname", path);
}

class JunitForm final : public Form {
 public:
  explicit JunitForm(bool strict) : least_failure_(strict ? base::Severity::warning : base::Severity::error) {}

  [[nodiscard]] std::string file(const base::Source& source,
                                 const std::vector<base::Finding>& findings) const override {
    const std::vector<Case> cases = cases_of(findings);
    std::size_t failures = 0;
    std::size_t skipped = 0;
    std::string body;
    for (const Case& one : cases) {
      const base::Severity worst = one.worst();
      if (worst >= least_failure_)
        ++failures;
      else if (worst == base::Severity::warning)
        ++skipped;
      body += spelled(source, one);
    }
    if (cases.empty()) body = case_start("no finding", source.path()) + "/>\n";
    return suite_start(source.path(), std::max<std::size_t>(cases.size(), 1), failures, 0, skipped) + body +
           "</testsuite>\n";
  }

  [[nodiscard]] std::string failed(const std::string& path, const std::string& why) const override {
    return suite_start(path, 1, 0, 1, 0) + case_start("can be checked", path) + ">\n    <error" +
           attribute("message", why) + "/>\n  </testcase>\n</testsuite>\n";
  }

  [[nodiscard]] std::string start() const override {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"tamis check\">\n";
  }

  [[nodiscard]] std::string_view before(bool) const override { return ""; }

  void end(const Totals&, Exit) override { print("</testsuites>\n"); }

 private:
  [[nodiscard]] std::string spelled(const base::Source& source, const Case& one) const {
    const base::Severity worst = one.worst();
    const std::string text = xml(lines_->file(source, one.findings), false);
    std::string out = case_start(one.rule, source.path()) + ">\n    ";
    if (worst >= least_failure_)
      out += "<failure" + attribute("type", base::severity_name(worst)) +
             attribute("message", one.findings.front().message + more(one.findings.size())) + ">" + text + "</failure>";
    else if (worst == base::Severity::warning)
      out += "<skipped>" + text + "</skipped>";
    else
      out += "<system-out>" + text + "</system-out>";
    return out + "\n  </testcase>\n";
  }

  static std::string more(std::size_t count) {
    return count < 2 ? "" : " (and " + std::to_string(count - 1) + " more)";
  }

  base::Severity least_failure_;
  std::unique_ptr<Form> lines_ = text_form({});
};

}  // namespace

std::unique_ptr<Form> junit_form(bool strict) { return std::make_unique<JunitForm>(strict); }

}  // namespace tamis::cli
