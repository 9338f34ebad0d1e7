#include "core/record/control_limit.h"

#include <algorithm>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/measure/bound.h"
#include "core/measure/read.h"
#include "core/record/words.h"
#include "core/rules/figure_value.h"

namespace tamis::record {
namespace {

using base::says;
using fiche::At;
using fiche::El;
using fiche::Node;
using Form = measure::Amount::Form;
using measure::Bound;

std::string folded(std::string_view text) { return fiche::folded(base::trimmed(text)); }

/// "From 57 °C": the words end with it.
bool says_from(std::string_view words) {
  words = base::trimmed(words);
  const std::size_t space = words.find_last_of(" \t\n\r");
  const std::string_view last = space == words.npos ? words : words.substr(space + 1);
  for (const std::string_view from : {"from", "de", "depuis", "von", "ab", "desde"}) {
    if (last == from) return true;
  }
  return false;
}
bool says_more(std::string_view words) { return says(words, {"more", "further", "de plus", "weitere", "más"}); }
bool says_for(std::string_view words) { return says(words, {"for", "hold", "pendant", "während", "durante"}); }
bool says_stay(std::string_view words) {
  return says(
      words, {"stay",   "keep",         "kept",     "hold",  "held",     "maintain", "stor",   "until",   "throughout", "never",
              "always", "all the time", "reste",    "jusqu", "toujou",   "mainten",  "mainti", "conserv", "bleib",      "immer",
              "bis ",   "gehalten",     "gelagert", "queda", "mantiene", "mantener", "hasta",  "siempre"});
}
/// Before a figure: where it is to go; behind one: how long it stays.
bool says_until(std::string_view words) { return says(words, {"until", "jusqu", "bis ", "hasta"}); }
bool says_reach(std::string_view words) {
  return says(words, {"reach", "goes in", "when it", "atteint", "erreicht", "alcanza"});
}

/// A control's marks and words, read in order.
class Reading {
 public:
  Reading(const fiche::Fiche& fiche, Node control) : fiche_(fiche), document_(*fiche.document), control_(control) {}

  ControlLimit read() {
    for (Node n = document_.first_child(control_); n != fiche::none; n = document_.next(n)) {
      const El el = document_.el(n);
      if (el == El::food_temp) {
        temperature(n);
      } else if (el == El::time) {
        time(n);
      } else {
        words_ += base::lower(document_.all_text(n));
      }
    }
    all_words_ += words_;
    if (time_ != nullptr && says_more(words_)) time_->from_the_start = false;
    settle();
    return std::move(out_);
  }

 private:
  void take_words() {
    if (time_ != nullptr) time_->from_the_start = !says_more(words_);
    time_ = nullptr;
    all_words_ += words_ + "|";
  }

  void temperature(Node n) {
    const fiche::Statement* figure = fiche_.statement(n);
    take_words();
    const std::string before = std::move(words_);
    words_.clear();
    if (figure == nullptr || !figure->amount || !figure->amount->has_figure()) {
      unclear_ = true;
      return;
    }
    const measure::Amount& amount = *figure->amount;
    const double low = rules::lowest_of(amount);
    const double high = rules::highest_of(amount);
    reaches_ = reaches_ || says_until(before);
    if (amount.form == Form::exact && says_from(before)) {
      from_ = low;
      from_text_ = figure->text;
      return;
    }
    const Bound bound = amount.form == Form::exact ? measure::bound_before(before, fiche_.language) : Bound::none;
    if (bound == Bound::unclear) {
      unclear_ = true;
      return;
    }
    Stage stage;
    stage.text = figure->text;
    stage.from = from_;
    if (from_) stage.from_text = from_text_;
    if (amount.form == Form::at_least || amount.form == Form::range || bound == Bound::least) stage.least = low;
    if (amount.form == Form::at_most || amount.form == Form::range || bound == Bound::most) stage.most = high;
    if (!stage.least && !stage.most) towards(stage, low);
    if (const fiche::Statement* hold = fiche_.statement(n, At::for_);
        hold != nullptr && hold->amount && hold->amount->has_figure())
      stage.hold = rules::lowest_of(*hold->amount);
    out_.stages.push_back(stage);
    from_.reset();
  }

  /// "To 21 °C": down when it comes from above, up from below.
  void towards(Stage& stage, double celsius) {
    std::optional<double> start = stage.from;
    if (!start && !out_.stages.empty()) start = out_.stages.back().most ? out_.stages.back().most : out_.stages.back().least;
    if (!start) {
      unclear_ = true;
    } else if (celsius < *start) {
      stage.most = celsius;
    } else {
      stage.least = celsius;
    }
  }

  void time(Node n) {
    const fiche::Statement* figure = fiche_.statement(n);
    take_words();
    const std::string before = std::move(words_);
    words_.clear();
    if (out_.stages.empty() || figure == nullptr || !figure->amount || !figure->amount->has_figure()) return;
    Stage& stage = out_.stages.back();
    if (says_for(before) && !says(before, {"within"})) {
      if (!stage.hold) stage.hold = rules::lowest_of(*figure->amount);
    } else if (!stage.within) {
      stage.within = rules::highest_of(*figure->amount);
      time_ = &stage;
    }
  }

  void settle() {
    if (const fiche::Attr often = document_.find(control_, At::often); often != fiche::none) {
      std::string_view text = base::trimmed(document_.attribute_value(often));
      for (const std::string_view every : {"every ", "toutes les ", "alle ", "cada "}) {
        if (!base::lower(text).starts_with(every)) continue;
        const auto amount = measure::read_duration(text.substr(every.size()), fiche_.reading);
        if (amount && amount->has_figure()) out_.each = rules::lowest_of(*amount);
      }
    }
    out_.unclear = unclear_;
    if (unclear_ || out_.stages.empty()) {
      out_.stages.clear();
      return;
    }
    const bool one = out_.stages.size() == 1 && !out_.stages.front().within && !out_.stages.front().hold;
    const std::string hazard = base::lower(document_.get(control_, At::hazard));
    const bool stays = one && !reaches_ && !says_reach(all_words_) && (says_stay(all_words_) || says_stay(hazard) || out_.each);
    out_.way = stays ? ControlLimit::Way::stay : ControlLimit::Way::reach;
  }

  const fiche::Fiche& fiche_;
  const fiche::Document& document_;
  Node control_;
  ControlLimit out_;
  std::string words_, all_words_;
  std::optional<double> from_;
  std::string from_text_;
  Stage* time_ = nullptr;  // whose time was the last mark
  bool unclear_ = false;
  bool reaches_ = false;
};

std::string where_of(const fiche::Fiche& fiche, Node step, Node component) {
  std::string out = component == fiche::none ? "" : folded(fiche.document->get(component, At::title));
  int number = 0;
  for (const fiche::Step& one : fiche.steps) {
    if (one.component == component) ++number;
    if (one.node == step) return out + (out.empty() ? "" : ", ") + said(Word::step, fiche.language, std::to_string(number));
  }
  return out;
}

}  // namespace

std::vector<ControlPoint> control_points(const fiche::Fiche& fiche) {
  std::vector<ControlPoint> out;
  const fiche::Document& document = *fiche.document;
  for (const fiche::Step& step : fiche.steps) {
    for (Node n = document.first_child(step.node); n != fiche::none; n = document.next(n)) {
      if (document.el(n) != El::control) continue;
      ControlPoint point;
      point.node = n;
      point.step = step.node;
      point.component = step.component;
      point.number = static_cast<int>(out.size()) + 1;
      point.id = document.get(n, At::id);
      point.hazard = folded(document.get(n, At::hazard));
      point.limit = folded(document.all_text(n));
      point.check = folded(document.get(n, At::check));
      point.often = folded(document.get(n, At::often));
      point.who = folded(document.get(n, At::who));
      point.action = folded(document.get(n, At::action));
      point.record = folded(document.get(n, At::record));
      point.where = where_of(fiche, step.node, step.component);
      point.asks = Reading(fiche, n).read();
      out.push_back(std::move(point));
    }
  }
  return out;
}

}  // namespace tamis::record
