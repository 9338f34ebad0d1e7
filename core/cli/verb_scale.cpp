#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <vector>

#include "core/change/scale.h"
#include "core/cli/checking.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"portions", 'p', "N", "for so many portions", ""},
    Option{"factor", 'f', "F", "so many times the fiche: 2.5, 1/3", ""},
    Option{"yield", 'y', "AMOUNT", "for so much in all: 3 kg, 2 l, 40 pieces", ""},
    Option{"ingredient", 'i', "ID=AMOUNT", "the batch that uses up what is on hand: milk=2.5 l", ""},
    Option{"mould", 'm', "MOULD", "for other moulds: \"4 ring-26\" of the kitchen file, \"frame 60 × 40 × 4 cm\"", ""},
    Option{"kitchen", 'k', "FILE", "scale for this kitchen's scales, spoons, machines and ovens", "FILE"},
    Option{"write", 'w', "FILE", "put it into this file; printed when not given", "FILE"},
};

constexpr std::string_view help =
    R"(Every amount is multiplied exactly and then rounded to what the kitchen can weigh and
measure; scaled-by in the fiche keeps the exact factor. What a batch does not simply
multiply (a time, a reduction, a mixer that is too small) is said on the side, by its
place in the fiche as it was.

  $ tamis scale --factor 1/2 --write half.fiche.xml base/sweet-pastry.fiche.xml
  base/sweet-pastry.fiche.xml:5:22: advice: the yield's words "two 26 cm tart cases" speak of the author's batch and were left out [not-scaled]
      5 | <yield mass="1 kg" words="two 26 cm tart cases"/>
        |                    ^~~~~~~~~~~~~~~~~~~~~~~~~~~~
    → write them anew for this batch
  wrote half.fiche.xml
)";

/// The options that say which batch; exactly one is given.
constexpr std::array<std::string_view, 5> ways = {"portions", "factor", "yield", "ingredient", "mould"};

change::ScaleWish wish_of(const Request& request) {
  using By = change::ScaleWish::By;
  constexpr std::array by = {By::portions, By::factor, By::yield, By::ingredient, By::mould};
  change::ScaleWish wish;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (!request.has(ways[i])) continue;
    wish.by = by[i];
    wish.text = request.get(ways[i]);
  }
  if (wish.by == By::ingredient) {
    const std::size_t equals = wish.text.find('=');
    wish.ingredient = wish.text.substr(0, equals);
    wish.text.erase(0, equals + 1);
  }
  return wish;
}

class Scale {
 public:
  explicit Scale(const Request& request)
      : request_(request), wish_(wish_of(request)), surroundings_(request.get("kitchen")) {}

  Exit run() {
    for_each_source(request_.words, surroundings_, *report_, totals_, [this](const auto& source) {
      one(source);
      return !output_gone();
    });
    return totals_.exit();
  }

 private:
  void tell(const base::Source& source, const std::vector<base::Finding>& findings) {
    report_->file(source, findings);
    totals_.add(findings);
  }

  void one(const std::shared_ptr<const base::Source>& source) {
    const format::Read read = format::read(source);
    if (read.document == nullptr) return tell(*source, read.findings);
    if (read.document->el(read.document->root()) != fiche::El::fiche) {
      ++totals_.failed;
      return report_->failed(source->path(), "is a kitchen file, which makes no batch");
    }
    const fiche::Kitchen& kitchen = *surroundings_.of(source->path()).kitchen;
    fiche::Library& library = surroundings_.library(source->path());
    change::Scaled scaled = change::scale(*read.document, kitchen, library, wish_);
    if (scaled.misread) {
      ++totals_.failed;
      complain(scaled.misread->message);
      say("  → " + harmless(scaled.misread->advice));
      return;
    }
    std::vector<base::Finding> findings = std::move(scaled.findings);
    const bool refused = std::any_of(findings.begin(), findings.end(), [](const base::Finding& one) {
      return one.rule == "not-scaled" && one.severity == base::Severity::error;
    });
    auto checked = rules::check(scaled.document, kitchen, library);
    std::move(checked.begin(), checked.end(), std::back_inserter(findings));
    base::sort_by_place(findings);
    tell(*source, findings);
    if (!refused) put(format::write(scaled.document));
  }

  void put(const std::string& text) {
    if (!request_.has("write")) return print(text);
    const std::string path = request_.get("write");
    const std::string why = write_file(path, text);
    if (why.empty()) {
      say("wrote " + harmless(path));
    } else {
      ++totals_.failed;
      report_->failed(path, "cannot be written: " + why);
    }
  }

  const Request& request_;
  change::ScaleWish wish_;
  Surroundings surroundings_;
  std::unique_ptr<Report> report_ = talk_report();
  Totals totals_;
};

std::string misuse(const Request& request) {
  const auto given = std::count_if(ways.begin(), ways.end(), [&](std::string_view way) { return request.has(way); });
  if (given == 0) return "say which batch: --portions, --factor, --yield, --ingredient or --mould";
  if (given > 1) return "one batch at a time: only one of --portions, --factor, --yield, --ingredient, --mould";
  if (request.has("ingredient") && request.get("ingredient").find('=') == std::string::npos) {
    return "write the ingredient as its id and what is on hand: --ingredient milk='2.5 l'";
  }
  if (request.words.empty()) return "say which fiche to scale";
  if (request.words.size() > 1 || kind_of(request.words.front()) == PathKind::folder) {
    return "one fiche at a time";
  }
  return "";
}

Exit run_scale(const Request& request) { return Scale(request).run(); }

}  // namespace

extern const Verb verb_scale;
const Verb verb_scale{.name = "scale",
                      .summary = "give a fiche for another batch: portions, yield, what is on hand, other moulds",
                      .usage = "tamis scale (--portions N | --factor F | --yield AMOUNT | …) [OPTIONS] FILE",
                      .help = help,
                      .words = "FILE",
                      .options = options,
                      .misuse = misuse,
                      .run = run_scale};

}  // namespace tamis::cli
