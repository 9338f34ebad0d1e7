#include "core/change/convert.h"

#include "core/change/author.h"
#include "core/change/market.h"
#include "core/change/oven.h"
#include "core/change/rewrite.h"
#include "core/change/work.h"

namespace tamis::change {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

std::string_view units_word(measure::System system) {
  switch (system) {
    case measure::System::us: return "us";
    case measure::System::imperial: return "imperial";
    default: return "metric";
  }
}

/// Names whose system nobody declared: they would read as figures of the new one. True when there are any.
bool refuse_undeclared(Work& work) {
  bool any = false;
  for (const fiche::Statement& statement : work.author.statements) {
    if (!statement.fault || statement.fault->rule != "ambiguous-unit") continue;
    any = true;
    work.say("not-converted", base::Severity::error, statement.where,
             "nothing was converted: " + statement.fault->message, statement.fault->advice, statement.fault->source);
  }
  return any;
}

void declare_units(Work& work, Node root) {
  const std::string_view wanted = units_word(work.wish.units);
  const std::string own(work.document.get(root, At::units));
  if (!work.touched || own == wanted) return;
  work.document.set_attribute(root, At::units, wanted);
  work.document.set_attribute(root, At::was_units, own.empty() ? "none" : own);
}

}  // namespace

Converted convert(const Document& document, const fiche::Kitchen& kitchen, const ConvertWish& wish) {
  const Node root = document.root();
  if (root == fiche::none || document.el(root) != El::fiche) return {document.clone(), {}};
  Restored restored = restore_author(document, kitchen);
  Work work{std::move(restored.document), kitchen, wish};
  for (base::Finding& changed : restored.findings) {
    work.say(changed.rule, changed.severity, changed.where, std::move(changed.message), std::move(changed.advice),
             std::move(changed.source));
  }
  work.author = fiche::read_fiche(work.document, kitchen);
  work.after = work.author.reading;
  work.after.system = wish.units;
  if (refuse_undeclared(work)) {
    base::sort_by_place(work.findings);
    return {document.clone(), std::move(work.findings)};
  }
  plan_oven_shifts(work);
  plan_swaps(work);
  rewrite_figures(work);
  write_swaps(work);
  declare_units(work, root);
  base::sort_by_place(work.findings);
  return {std::move(work.document), std::move(work.findings)};
}

}  // namespace tamis::change
