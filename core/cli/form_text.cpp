#include <algorithm>
#include <array>

#include "core/cli/excerpt.h"
#include "core/cli/form.h"
#include "core/cli/output.h"

// A finding as people read it:
//
//   desserts/slice.fiche.xml:12:34: error: what was found and what was expected [rule]
//      12 | <ingredient food="milk-whole">1 cup</ingredient>
//         |                               ^~~~~
//     → what to do
//     desserts/slice.fiche.xml:3:1: another place that belongs to it

namespace tamis::cli {
namespace {

constexpr std::string_view bold = "\033[1m";
constexpr std::string_view faint = "\033[2m";
constexpr std::string_view red = "\033[1;31m";
constexpr std::string_view yellow = "\033[1;33m";
constexpr std::string_view blue = "\033[1;36m";
constexpr std::string_view green = "\033[32m";

std::string_view colour_of(base::Severity severity) {
  switch (severity) {
    case base::Severity::error:
      return red;
    case base::Severity::warning:
      return yellow;
    default:
      return blue;
  }
}

std::string place_text(base::Place place) {
  return std::to_string(place.line) + ":" + std::to_string(place.column);
}

class TextForm final : public Form {
 public:
  explicit TextForm(Look look) : look_(look) {}

  [[nodiscard]] std::string file(const base::Source& source,
                                 const std::vector<base::Finding>& findings) const override {
    std::string out;
    for (const base::Finding& finding : findings) {
      out += before(out.empty());
      out += one(source, finding);
    }
    return out;
  }

  /// An empty line between findings.
  [[nodiscard]] std::string_view before(bool first) const override { return first ? "" : "\n"; }

  void end(const Totals& totals, Exit) override {
    std::string line = count_of(totals.files, "file") + " checked: " + counted(totals) + " found";
    if (totals.failed > 0) line += "; " + std::to_string(totals.failed) + " could not be checked";
    if (totals.mendable > 0) line += "; " + std::to_string(totals.mendable) + " with a sure fix (--mend)";
    say(line);
  }

 private:
  [[nodiscard]] std::string paint(std::string_view code, std::string_view text) const {
    return look_.colour ? std::string(code) + std::string(text) + "\033[0m" : std::string(text);
  }

  [[nodiscard]] std::string one(const base::Source& source, const base::Finding& finding) const {
    const base::Place place = source.place(finding.where.begin);
    const std::string head = harmless(source.path()) + ":" + place_text(place) + ":";
    std::string out = paint(bold, head) + " " + paint(colour_of(finding.severity), base::severity_name(finding.severity)) +
           ": " + harmless(finding.message) + " " + paint(faint, "[" + finding.rule + "]") + "\n";
    out += source_lines(source, finding, place);
    if (!finding.advice.empty()) out += "  " + paint(green, "→") + " " + harmless(finding.advice) + "\n";
    for (const base::Related& related : finding.related) out += related_line(source, related);
    return out;
  }

  [[nodiscard]] std::string source_lines(const base::Source& source, const base::Finding& finding,
                                         base::Place place) const {
    const std::string number = std::to_string(place.line);
    const std::size_t gutter = std::max<std::size_t>(number.size(), 5);
    const Excerpt shown = excerpt(source, finding.where, look_.columns - gutter - 3);
    if (shown.line.empty()) return {};
    const std::string mark = "^" + std::string(shown.marked - 1, '~');
    return std::string(gutter - number.size(), ' ') + paint(faint, number + " |") + " " + shown.line + "\n" +
           std::string(gutter, ' ') + paint(faint, " |") + " " + std::string(shown.before, ' ') +
           paint(colour_of(finding.severity), mark) + "\n";
  }

  [[nodiscard]] static std::string related_line(const base::Source& source, const base::Related& related) {
    const bool here = related.path.empty();
    const base::Place place = here ? source.place(related.where.begin) : related.place;
    return "  " + harmless(here ? source.path() : related.path) + ":" + place_text(place) + ": " +
           harmless(related.message) + "\n";
  }

  Look look_;
};

}  // namespace

std::unique_ptr<Form> text_form(Look look) { return std::make_unique<TextForm>(look); }

}  // namespace tamis::cli
