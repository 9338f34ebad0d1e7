#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <vector>

#include "core/change/convert.h"
#include "core/change/swap.h"
#include "core/cli/checking.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/plugin_choice.h"
#include "core/cli/plugin_work.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"units", 'u', "SYSTEM", "the units wanted; the fiche's own when not given", "metric|us|imperial"},
    Option{"by", 0, "WAY", "weigh it, measure it with cups and spoons, or give both; as written when not given",
           "mass|volume|both"},
    Option{"oven", 0, "MODE", "oven figures for this mode", "fan|static"},
    Option{"for", 0, "COUNTRY", "name the foods that can be bought there", "US|GB|FR|DE"},
    Option{"swap", 0, "LINE=FOOD", "put another food in place of one; more of them with ; between", ""},
    Option{"with", 0, "NAME", "do what a plugin offers instead (tamis plugins lists them)", ""},
    Option{"set", 0, "NAME=VALUE", "a setting of that plugin, over the kitchen's; more of them with ; between", ""},
    Option{"seconds", 0, "N", "how long a plugin may work on one fiche: 10 when not given", ""},
    Option{"kitchen", 'k', "FILE", "convert for this kitchen's scales, spoons and ovens", "FILE"},
    Option{"write", 'w', "", "put it into the fiche's own file; printed when not given", ""},
};

constexpr std::string_view help_with_units =
    R"(The author's own figure stays beside each new one, so that converting back gives
the same fiche again. What the reader must know (a spoon too coarse, a food sold
otherwise) is said on the side, by its place in the fiche as it was.

  $ tamis convert --units us --write base/sweet-pastry.fiche.xml
  wrote base/sweet-pastry.fiche.xml
  $ tamis convert --units metric --write base/sweet-pastry.fiche.xml
  wrote base/sweet-pastry.fiche.xml
)";

constexpr std::string_view help_with_swaps = R"(
--swap LINE=FOOD puts another food in and works its amount out anew. LINE is a
line's id, its food or its name; FOOD is one that tamis foods knows, with what
it is sold at behind a colon (bloom, size, percent). Two foods with + between
make a mix. Asking for the author's own food takes the swap back, as scaling and
other units do: swap last. The swaps there are:

)";

std::string_view help() {
  static const std::string text = [] {
    std::string out(help_with_units);
    out += help_with_swaps;
    for (const change::SwapHelp& swap : change::swap_help()) {
      out += "  " + std::string(swap.example) + "\n      " + std::string(swap.what) + "\n";
    }
    return out;
  }();
  return text;
}

change::ConvertWish wish_of(const Request& request) {
  change::ConvertWish wish;
  const std::string units = request.get("units");
  if (units == "us") wish.units = measure::System::us;
  if (units == "imperial") wish.units = measure::System::imperial;
  const std::string by = request.get("by");
  using By = change::ConvertWish::By;
  if (by == "mass") wish.by = By::mass;
  if (by == "volume") wish.by = By::volume;
  if (by == "both") wish.by = By::both;
  wish.oven = request.get("oven");
  wish.market = request.get("for");
  return wish;
}

bool is_many(const Request& request) {
  return request.words.size() > 1 || (!request.words.empty() && kind_of(request.words.front()) == PathKind::folder);
}

/// What is asked for is told in other figures, not only in another food.
bool wants_figures(const Request& request) {
  return request.has("units") || request.has("by") || request.has("oven") || request.has("for");
}

class Convert {
 public:
  explicit Convert(const Request& request)
      : request_(request), wish_(wish_of(request)), surroundings_(request.get("kitchen")) {}

  Exit run() {
    if (request_.has("with")) return by_plugin();
    if (request_.has("swap")) {
      auto swaps = change::read_swaps(request_.get("swap"));
      if (!swaps) return refuse(swaps.fault());
      swaps_ = std::move(*swaps);
    }
    for_each_source(request_.words, surroundings_, *report_, totals_, [this](const auto& source) {
      one(source);
      return !output_gone();
    });
    if (!swaps_.empty() && swapped_ == 0 && totals_.failed == 0 && !without_line_.message.empty()) {
      complain("none of these fiches has the line that \"" + request_.get("swap") + "\" names");
      return Exit::failed;
    }
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
    if (read.document->el(read.document->root()) != fiche::El::fiche)
      return;  // a kitchen file states, it does not convert
    const fiche::Kitchen& kitchen = *surroundings_.of(source->path()).kitchen;
    change::Converted converted{read.document->clone(), {}};
    if (wants_figures(request_)) converted = change::convert(*read.document, kitchen, wish_for(*read.document, kitchen));
    std::vector<base::Finding> findings = std::move(converted.findings);
    if (!swaps_.empty()) {
      auto swapped = change::swap_foods(converted.document, kitchen, swaps_);
      if (!swapped) return cannot(*source, swapped.fault());
      ++swapped_;
      converted.document = std::move(swapped->document);
      std::move(swapped->findings.begin(), swapped->findings.end(), std::back_inserter(findings));
    }
    auto checked = rules::check(converted.document, kitchen, surroundings_.library(source->path()));
    std::move(checked.begin(), checked.end(), std::back_inserter(findings));
    base::sort_by_place(findings);
    tell(*source, findings);
    put(source->path(), format::write(converted.document));
  }

  /// Without --units those of the fiche stay.
  [[nodiscard]] change::ConvertWish wish_for(const fiche::Document& document, const fiche::Kitchen& kitchen) const {
    change::ConvertWish wish = wish_;
    if (request_.has("units")) return wish;
    const measure::System own = fiche::read_fiche(document, kitchen).reading.system;
    if (own == measure::System::us || own == measure::System::imperial) wish.units = own;
    return wish;
  }

  /// The wish itself is at fault: nothing of this fiche is changed. Of many fiches, not all have that line.
  void cannot(const base::Source& source, const base::Finding& fault) {
    if (fault.rule == change::no_such_line && many_) {
      without_line_ = fault;
      return;
    }
    ++totals_.failed;
    report_->failed(source.path(), fault.message + (fault.advice.empty() ? "" : "\n  → " + fault.advice));
  }

  static Exit refuse(const base::Finding& fault) {
    complain(fault.message);
    say("  → " + fault.advice);
    return Exit::failed;
  }

  Exit by_plugin() {
    surroundings_.allow(seconds_of(request_));
    PluginWork work({lua::Addition::Kind::conversion, request_.get("with"), request_.get("set")}, true, surroundings_, *report_,
                    totals_, [this](const std::string& path, const std::vector<lua::MadeFile>& files) {
                      if (!files.empty()) put(path, files.front().bytes);
                    });
    for_each_source(request_.words, surroundings_, *report_, totals_, [&](const auto& source) { return work.give({source}); });
    work.finish();
    return totals_.exit();
  }

  void put(const std::string& path, const std::string& text) {
    if (!request_.has("write")) return print(text);
    const auto before = read_file(path);
    if (before && text == (*before)->bytes()) return;
    const std::string why = write_file(path, text);
    if (why.empty()) {
      say("wrote " + harmless(path));
    } else {
      ++totals_.failed;
      report_->failed(path, "cannot be written: " + why);
    }
  }

  const Request& request_;
  change::ConvertWish wish_;
  std::vector<change::SwapWish> swaps_;
  bool many_ = is_many(request_);
  std::size_t swapped_ = 0;     ///< fiches
  base::Finding without_line_;  ///< of the last fiche that has no such line
  Surroundings surroundings_;
  std::unique_ptr<Report> report_ = talk_report();
  Totals totals_;
};

std::string misuse(const Request& request) {
  if (request.has("with") && request.has("swap")) return "--with and --swap are two conversions: do one, then the other";
  if (request.has("with") && request.has("units")) return "--with and --units are two conversions: do one, then the other";
  if (request.has("set") && !request.has("with")) return "--set is for the plugin that --with names";
  if (request.has("with") && wants_figures(request))
    return "a plugin converts by its own settings: --set, not --by, --oven or --for";
  if (!wants_figures(request) && !request.has("with") && !request.has("swap"))
    return "say what is wanted: --units metric, us or imperial; --by, --oven, --for, --swap or --with";
  if (const std::string wrong = seconds_misuse(request); !wrong.empty()) return wrong;
  if (request.words.empty()) return "say what to convert: a fiche, or a folder with --write";
  if (!request.has("write")) {
    return is_many(request) ? "more than one fiche can only be converted in place: add --write" : "";
  }
  for (const std::string& word : request.words) {
    if (word == "-") return "standard input cannot be written to; leave --write out";
    if (kind_of(word) == PathKind::nothing)
      return "there is no " + harmless(word) + "; --write takes no name, it writes into the fiche itself: nothing was written";
  }
  return "";
}

Exit run_convert(const Request& request) { return Convert(request).run(); }

}  // namespace

extern const Verb verb_convert;
const Verb verb_convert{.name = "convert",
                        .summary = "give a fiche in other units, with other foods, and in foods that can be bought elsewhere",
                        .usage = "tamis convert --units SYSTEM | --swap LINE=FOOD [OPTIONS] PATH...",
                        .help = help(),
                        .words = "FILE",
                        .options = options,
                        .misuse = misuse,
                        .run = run_convert};

}  // namespace tamis::cli
