#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by the host of plugins (core/lua/host.h); no built-in check says it.
const Rule plugin_error = {
    .id = "plugin-error",
    .severity = base::Severity::error,
    .topic = "plugin",
    .summary = "a plugin of the house went wrong at work",
    .explanation = R"(A plugin that fails, spends more than it may, or hands back what cannot be used has not done its work on this
fiche: what it would have found is not known. The finding names the plugin, its function and line, and marks the element
it had in hand. All other findings stand.

Mend the plugin, or take it out of kitchen.xml until it is mended. A check that is silent because it broke is worse than
no check.)",
    .bad = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps">
  <plugin id="half-written" path="house/half-written"/>
</kitchen>)",
    .good = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps">
  <plugin id="house-style"/>
</kitchen>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
