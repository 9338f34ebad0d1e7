#include "core/change/scale_work.h"

#include <cmath>

#include "core/change/figure.h"
#include "core/measure/write.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Node;

base::Finding* ScaleWork::say(std::string_view rule, base::Severity severity, base::Span where, std::string message,
                              std::string advice, std::string source) {
  if (const auto own = kitchen.severities.find(rule); own != kitchen.severities.end()) severity = own->second;
  if (severity == base::Severity::off) return nullptr;
  base::Finding finding;
  finding.rule = rule;
  finding.severity = severity;
  finding.where = where;
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  finding.source = std::move(source);
  findings.push_back(std::move(finding));
  return &findings.back();
}

const flow::States& ScaleWork::states() {
  if (!known_states) known_states = flow::read_states(author, flow, library);
  return *known_states;
}

const measure::Amount* ScaleWork::amount(Node node, At at) const {
  const fiche::Statement* said = author.statement(node, at);
  return said != nullptr && said->amount && said->amount->has_figure() ? &*said->amount : nullptr;
}

std::optional<Ratio> ScaleWork::number(Node node, At at) const {
  const measure::Amount* said = amount(node, at);
  if (said == nullptr) return std::nullopt;
  const Ratio value = said->middle_base();
  return value.ok() && value > 0 ? std::optional(value) : std::nullopt;
}

std::string ScaleWork::text(const measure::Amount& amount) const { return write_figure(amount, author.reading); }

std::string ScaleWork::text(Ratio number) const {
  return text(measure::amount_of(number, *measure::unit_by_id("piece")));
}

std::string ScaleWork::grams(double value) const {
  const Ratio exact(std::llround(value * 10), 10);
  return text(measure::round_mass(exact, measure::System::metric, kitchen.tools, {Ratio(5, 100)}).amount);
}

std::vector<Node> children_of(const fiche::Document& document, Node node, fiche::El el) {
  std::vector<Node> found;
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element && document.el(c) == el) found.push_back(c);
  }
  return found;
}

}  // namespace tamis::change
