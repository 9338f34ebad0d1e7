#include <algorithm>
#include <array>
#include <charconv>
#include <string>

#include "core/cli/checking.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/shown.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"as", 0, "FORM", "how to tell it: for people, for programs, or the graph of the steps as a picture", "text|json|svg"},
    Option{"component", 'c', "ID", "only this component", ""},
    Option{"step", 's', "N", "only the step of that number in its component", ""},
    Option{"kitchen", 'k', "FILE", "the kitchen file, when it is not the one above the fiche", "FILE"},
};

constexpr std::string_view help =
    R"(For each step: what goes in, and what comes of it: how much, how warm, of
what it is made, the heat that all of it has had, its allergens. A range is
what the fiche leaves open; "not known" says why. All is worked out from the
fiche, the kitchen and the table of foods; nothing is guessed.

  $ tamis show --component cream --step 2 desserts/buckwheat-pear-frame.fiche.xml
  …
    2  cook
  …
       = custard                             808–834 g  82–84 °C
         water 70–71 %, fat 6.2–6.9 %, protein 4.5–5.2 %, sugars 17–18 %,
         salt 0.1–0.6 %
         all of it has been at 82 °C
         holds egg milk
)";

class Show {
 public:
  explicit Show(const Request& request) : request_(request), surroundings_(request.get("kitchen")) {
    const std::string number = request.get("step");
    std::from_chars(number.data(), number.data() + number.size(), step_);
  }

  Exit run() {
    for_each_source(request_.words, surroundings_, *report_, totals_, [this](const auto& source) {
      one(source);
      return !output_gone();
    });
    return totals_.exit();
  }

 private:
  void one(const std::shared_ptr<const base::Source>& source) {
    const format::Read read = format::read(source);
    if (read.document == nullptr) {
      report_->file(*source, read.findings);
      totals_.add(read.findings);
      return;
    }
    if (read.document->root() == fiche::none || read.document->el(read.document->root()) != fiche::El::fiche) {
      return refuse(*source, "is no fiche: there are no steps to show");
    }
    const fiche::Kitchen& kitchen = *surroundings_.of(source->path()).kitchen;
    fiche::Library& library = surroundings_.library(source->path());
    const fiche::Fiche fiche = fiche::read_fiche(*read.document, kitchen);
    const flow::Flow flow = flow::read_flow(fiche, library);
    const flow::States states = flow::read_states(fiche, flow, library);
    const flow::StepTimes times = flow::read_step_times(fiche, flow);
    flow::Ages ages(flow, times);
    const Shown shown{{fiche, flow, states, std::string(request_.get("component")), step_}, ages};
    if (!shown.component.empty() && shown.components().empty()) {
      return refuse(*source, "has no component \"" + shown.component + "\"" + its_components(fiche));
    }
    const auto components = shown.components();
    const bool has_step = std::any_of(components.begin(), components.end(), [&](fiche::Node node) { return !shown.steps_of(node).empty(); });
    if (step_ > 0 && !has_step) return refuse(*source, "has no step " + std::to_string(step_) + " there");
    const std::string form = request_.get("as", "text");
    print(form == "json" ? shown_json(shown) : form == "svg" ? shown_svg(shown) : shown_text(shown, colour_on_output()));
  }

  static std::string its_components(const fiche::Fiche& fiche) {
    std::string out;
    for (const fiche::Node node : fiche.components) {
      out += out.empty() ? "; it has " : ", ";
      out += fiche.document->get(node, fiche::At::id);
    }
    return out;
  }

  void refuse(const base::Source& source, const std::string& why) {
    ++totals_.failed;
    report_->failed(source.path(), why);
  }

  const Request& request_;
  Surroundings surroundings_;
  int step_ = 0;
  std::unique_ptr<Report> report_ = talk_report();
  Totals totals_;
};

std::string misuse(const Request& request) {
  if (request.words.empty()) return "say which fiche to show";
  if (request.words.size() > 1 || kind_of(request.words.front()) == PathKind::folder) return "one fiche at a time";
  const std::string step = request.get("step");
  const bool number = !step.empty() && step.size() < 6 && step.find_first_not_of("0123456789") == std::string::npos && step != "0";
  if (request.has("step") && !number) return "--step wants the number of a step in its component, from 1";
  return "";
}

Exit run_show(const Request& request) { return Show(request).run(); }

}  // namespace

extern const Verb verb_show;
const Verb verb_show{.name = "show",
                     .summary = "show what becomes of the food: amounts, warmth, composition, allergens after each step",
                     .usage = "tamis show [OPTIONS] FILE",
                     .help = help,
                     .words = "FILE",
                     .options = options,
                     .misuse = misuse,
                     .run = run_show};

}  // namespace tamis::cli
