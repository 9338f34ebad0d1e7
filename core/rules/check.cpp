#include <algorithm>

#include "core/rules/rule.h"

namespace tamis::rules {
namespace {

/// A text as it must be spelled inside the document's own syntax.
std::string spelled(std::string_view text, fiche::Spelling spelling, bool in_attribute) {
  std::string out;
  for (const char c : text) {
    if (spelling == fiche::Spelling::json) {
      if (c == '"' || c == '\\') out += '\\';
      out += c;
    } else if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"' && in_attribute) {
      out += "&quot;";
    } else if (c == '\'' && in_attribute) {
      out += "&apos;";
    } else {
      out += c;
    }
  }
  return out;
}

}  // namespace

const flow::States& Check::states() const {
  return once<flow::States>([this] { return flow::read_states(fiche, flow, library); });
}

const flow::StepTimes& Check::times() const {
  return once<flow::StepTimes>([this] { return flow::read_step_times(fiche, flow); });
}

flow::Ages& Check::ages() const {
  if (!ages_) ages_.emplace(flow, times());
  return *ages_;
}

base::Finding& Check::say(base::Span where, std::string message, std::string advice) {
  base::Finding& made = findings_.emplace_back();
  made.rule = rule_->id;
  made.severity = severity_;
  made.where = where;
  made.message = std::move(message);
  made.advice = std::move(advice);
  made.source = rule_->source;
  return made;
}

void Check::worsen(base::Finding& finding, base::Severity severity) const {
  if (!severity_is_the_kitchens_) finding.severity = std::max(finding.severity, severity);
}

base::Edit Check::edit_value(fiche::Attr attribute, std::string_view text) const {
  return edit_span(document.value_span(attribute), text, true);
}

base::Edit Check::edit_span(base::Span where, std::string_view text, bool in_attribute) const {
  return {where, spelled(text, document.spelling(), in_attribute)};
}

std::vector<base::Finding> check(const fiche::Document& document, const fiche::Kitchen& kitchen,
                                 fiche::Library& library, MoreRules* more) {
  std::vector<base::Finding> findings;
  const fiche::Fiche fiche = fiche::read_fiche(document, kitchen);
  const Structure structure = read_structure(document);
  const flow::Flow flow = flow::read_flow(fiche, library);
  Check check(fiche, kitchen, library, structure, flow, findings);
  for (const Rule* rule : rules()) {
    if (rule->run == nullptr) continue;
    const auto house = kitchen.severities.find(rule->id);
    check.severity_is_the_kitchens_ = house != kitchen.severities.end();
    check.severity_ = check.severity_is_the_kitchens_ ? house->second : rule->severity;
    if (check.severity_ == base::Severity::off) continue;
    check.rule_ = rule;
    rule->run(check);
  }
  if (more != nullptr) more->run(check);
  base::sort_by_place(findings);
  return findings;
}

}  // namespace tamis::rules
