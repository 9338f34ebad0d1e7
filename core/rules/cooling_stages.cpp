#include "core/rules/cooling_stages.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"
#include "core/flow/stated_time.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;

/// Whether the words right behind say that the time comes on top: "within 4 h more".
bool is_more(const fiche::Document& document, Node mark) {
  const Node behind = document.next(mark);
  if (behind == fiche::none || document.kind(behind) != fiche::NodeKind::text) return false;
  const std::string words = base::lower(base::trimmed(document.value(behind)));
  constexpr std::array<std::string_view, 6> more{"more", "further", "de plus", "weiter", "más", "after that"};
  return std::any_of(more.begin(), more.end(),
                     [&words](std::string_view word) { return words.starts_with(word); });
}

}  // namespace

std::vector<CoolingStage> cooling_stages(const Check& check, Node in) {
  const fiche::Document& document = check.document;
  const bool control = document.el(in) == El::control;
  const std::vector<flow::TimeMark> marks = flow::time_marks(check.fiche, in);
  std::vector<CoolingStage> out;
  const fiche::Statement* heat = nullptr;
  const flow::TimeMark* waits = nullptr;  // a time that no temperature stands before
  const auto add = [&](const flow::TimeMark& time) {
    const auto celsius = high_of(*heat) ? high_of(*heat) : low_of(*heat);
    if (!celsius) return;
    double seconds = static_cast<double>(time.range.most.value_or(time.range.least));
    if (!out.empty() && is_more(document, time.statement->node)) seconds += out.back().seconds;
    out.push_back({heat, time.statement, *celsius, seconds});
  };
  for (Node c = document.first_child(in); c != fiche::none; c = document.next(c)) {
    if (document.el(c) == El::food_temp) {
      const fiche::Statement* said = check.fiche.statement(c);
      if (said == nullptr || !said->amount || !said->amount->has_figure()) continue;
      heat = said;
      if (waits != nullptr) add(*waits);
      waits = nullptr;
    }
    if (document.el(c) != El::time) continue;
    const auto mark = std::find_if(marks.begin(), marks.end(),
                                   [c](const flow::TimeMark& one) { return one.statement->node == c; });
    if (mark == marks.end() || mark->one_of_several || mark->role == flow::TimeMark::Role::other) continue;
    const bool limit = mark->role == flow::TimeMark::Role::limit ||
                       mark->statement->amount->form == measure::Amount::Form::at_most;
    if (!control && !limit) continue;
    if (heat == nullptr) {
      waits = &*mark;
    } else {
      add(*mark);
    }
  }
  return out;
}

}  // namespace tamis::rules
