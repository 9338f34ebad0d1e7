#include "core/change/work.h"

#include <cmath>

namespace tamis::change {

void Work::say(std::string_view rule, base::Severity severity, base::Span where, std::string message,
               std::string advice, std::string source) {
  if (const auto own = kitchen.severities.find(rule); own != kitchen.severities.end()) severity = own->second;
  if (severity == base::Severity::off) return;
  base::Finding finding;
  finding.rule = rule;
  finding.severity = severity;
  finding.where = where;
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  finding.source = std::move(source);
  findings.push_back(std::move(finding));
}

std::string percent(double share) {
  const long long tenths = std::llround(share * 1000);
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " %";
}

std::vector<measure::Amount> figures_of(const fiche::Statement& statement) {
  if (statement.value == fiche::Value::number) return {};
  if (statement.amount) return {*statement.amount};
  if (statement.share && statement.share->form == measure::Share::Form::amount) return {statement.share->amount};
  return statement.lengths;
}

}  // namespace tamis::change
