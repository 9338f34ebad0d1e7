#include "core/rules/rule.h"

#include <algorithm>
#include <iterator>

#include "core/base/nearest.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

constexpr const Rule* all[] = {
#define TAMIS_RULE(name) &name,
#include "core/rules/rules.inc"
#undef TAMIS_RULE
};

}  // namespace

std::span<const Rule* const> rules() { return all; }

const Rule* rule_by_id(std::string_view id) {
  const auto* const found = std::find_if(std::begin(all), std::end(all), [id](const Rule* rule) { return rule->id == id; });
  return found == std::end(all) ? nullptr : *found;
}

std::string_view nearest_rule(std::string_view id) {
  std::vector<std::string_view> ids;
  for (const Rule* rule : all) ids.push_back(rule->id);
  return base::nearest(id, ids);
}

}  // namespace tamis::rules
