#include "core/change/scale_step.h"

#include <algorithm>

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::El;

ScaleStep::ScaleStep(ScaleWork& the_work)
    : work(the_work),
      document(the_work.document),
      how_often(the_work.text(base::round_to(the_work.factor, Ratio(1, 100)))) {}

bool ScaleStep::does(const fiche::Step& step, std::initializer_list<std::string_view> words) {
  return std::any_of(step.actions.begin(), step.actions.end(), [&](std::string_view action) {
    return std::find(words.begin(), words.end(), action) != words.end();
  });
}

std::optional<ScaleStep::Time> ScaleStep::stated_time(const fiche::Step& step) const {
  const auto read = [](base::Span where, std::string written, const fiche::Statement* said) {
    Time out{where, std::move(written), std::nullopt, std::nullopt};
    if (said == nullptr || !said->amount || !said->amount->has_figure()) return out;
    const Ratio least = said->amount->low_base(), most = said->amount->high_base();
    if (!least.ok() || !most.ok() || !(least > 0)) return out;
    out.least = least.approximate();
    out.most = most.approximate();
    return out;
  };
  for (const fiche::Statement& one : work.author.statements) {
    if (document.el(one.node) != El::time || document.find(one.node, At::batch) != fiche::none) continue;
    if (document.find(one.node, At::depth) == fiche::none && document.parent(one.node) == step.node)
      return read(one.where, document.all_text(one.node), &one);
  }
  const fiche::Attr unattended = document.find(step.node, At::unattended);
  if (unattended == fiche::none) return std::nullopt;
  return read(document.value_span(unattended), std::string(document.get(step.node, At::unattended)),
              work.author.statement(step.node, At::unattended));
}

void ScaleStep::say_once(std::string_view rule, base::Span where, std::string message, std::string advice,
                         std::string source) {
  for (base::Finding& said : work.findings) {
    if (said.rule != rule || said.message != message) continue;
    said.related.push_back({where, "and here", {}, {}, {}});
    return;
  }
  work.say(rule, base::Severity::warning, where, std::move(message), std::move(advice), std::move(source));
}

}  // namespace tamis::change
