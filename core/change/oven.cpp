#include "core/change/oven.h"

#include <optional>

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using fiche::Statement;

namespace {

constexpr std::string_view common_rule =
    "common practice: a fan oven is set 20 °C or 25 °F lower than a static one for the same bake";
/// Where to look first after the oven changed: at four fifths of the time (common practice).
const Ratio first_look{4, 5};

Node step_of(const Document& document, Node node) {
  while (node != fiche::none && document.el(node) != El::step) node = document.parent(node);
  return node;
}

bool states_mode(const Document& document, Node within, std::string_view mode) {
  for (Node c = document.first_child(within); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != fiche::NodeKind::element) continue;
    if (document.el(c) == El::oven_temp && document.get(c, At::mode) == mode) return true;
    if (states_mode(document, c, mode)) return true;
  }
  return false;
}

/// The step's own time: what follows the oven figure in the sentence, else what the step states as unattended.
const Statement* time_of(const fiche::Fiche& fiche, Node step, Node oven) {
  const Document& document = *fiche.document;
  bool passed = false;
  for (const Statement& statement : fiche.statements) {
    if (statement.node == oven) passed = true;
    if (!passed || !statement.amount || document.el(statement.node) != El::time || statement.at != At::unknown) continue;
    if (document.get(statement.node, At::of) == "hands") continue;
    if (step_of(document, statement.node) == step) return &statement;
  }
  return step == fiche::none ? nullptr : fiche.statement(step, At::unattended);
}

std::string when_to_look(const Work& work, Node step, Node oven) {
  const Statement* time = time_of(work.author, step, oven);
  if (time == nullptr || !time->amount || !time->amount->has_figure()) return "look early; times are not recalculated";
  const std::int64_t minutes = (exact_low(*time->amount) * first_look / 60).floor();
  if (minutes < 1) return "look early; times are not recalculated";
  return "check from " + std::to_string(minutes) + " min; the time stays as it was written, \"" + time->text + "\"";
}

bool in_fahrenheit(const measure::Amount& amount) {
  return (amount.low.empty() ? amount.high : amount.low).front().unit->id == "degf";
}

void plan_one(Work& work, const Statement& statement) {
  const Document& document = *work.author.document;
  const std::string_view wanted = work.wish.oven;
  const std::string_view mode = document.get(statement.node, At::mode);
  if (mode == wanted || !statement.amount || !statement.amount->has_figure()) return;
  const Node step = step_of(document, statement.node);
  if (step != fiche::none && states_mode(document, step, wanted)) return;
  const std::string figure = "\"" + statement.text + "\"";
  if (mode != "fan" && mode != "static") {
    const bool unstated = mode.empty();
    return work.say("oven-mode-unknown", base::Severity::advice, statement.where,
                    figure + (unstated ? " stays: the fiche does not say whether it is for a fan or a static oven"
                                       : " stays: it is for a " + std::string(mode) + " oven, and no rule leads from that"),
                    unstated ? "state mode=\"static\" or mode=\"fan\" beside it" : "test it in the other oven",
                    "common practice");
  }
  const bool fahrenheit = in_fahrenheit(*statement.amount);
  work.oven_shifts[statement.node] = wanted == "fan" ? -1 : 1;
  work.say("oven-mode-changed", base::Severity::advice, statement.where,
           figure + " is for a " + std::string(mode) + " oven; for a " + std::string(wanted) + " oven it is set " +
               (fahrenheit ? "25 °F " : "20 °C ") + (wanted == "fan" ? "lower" : "higher"),
           when_to_look(work, step, statement.node), std::string(common_rule));
}

}  // namespace

Ratio between_modes(const measure::Amount& amount) { return in_fahrenheit(amount) ? Ratio(125, 9) : Ratio(20); }

void plan_oven_shifts(Work& work) {
  if (work.wish.oven != "fan" && work.wish.oven != "static") return;
  for (const Statement& statement : work.author.statements) {
    const bool own_text = statement.at == At::unknown && work.author.document->el(statement.node) == El::oven_temp;
    if (own_text) plan_one(work, statement);
  }
}

}  // namespace tamis::change
