#include "core/cli/plugin_choice.h"

#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/output.h"

namespace tamis::cli {
namespace {

void fail(Report& report, Totals& totals, const std::string& path, const std::string& why) {
  ++totals.failed;
  report.failed(path, why);
}

}  // namespace

std::string offered(KitchenPlugins& plugins, lua::Addition::Kind kind) {
  std::string names;
  for (const KitchenPlugins::Offer& offer : plugins.offers()) {
    if (offer.addition->kind != kind) continue;
    if (!names.empty()) names += ", ";
    names += offer.addition->id;
  }
  return names;
}

Chosen choose_plugin(KitchenPlugins& plugins, lua::Addition::Kind kind, std::string_view name,
                     std::string_view settings, Report& report, Totals& totals) {
  const std::vector<KitchenPlugins::Offer> offers = plugins.offers();
  std::vector<KitchenPlugins::Broken> faults;
  std::vector<std::string_view> names;
  for (const KitchenPlugins::Offer& offer : offers) {
    if (offer.addition->kind != kind) continue;
    names.push_back(offer.addition->id);
    if (offer.addition->id != name) continue;
    lua::Plugin* plugin = plugins.load(offer, settings, faults);
    for (const auto& fault : faults) fail(report, totals, fault.path, "a plugin cannot be used: " + fault.why);
    return {plugin, offer.addition};
  }
  for (const auto& fault : plugins.broken()) fail(report, totals, fault.path, "a plugin cannot be loaded: " + fault.why);
  ++totals.failed;
  complain("no plugin adds the " + std::string(lua::kind_name(kind)) + " \"" + std::string(name) + "\"");
  const std::string near = did_you_mean(name, names);
  if (!near.empty() || !names.empty()) say("  → " + (near.empty() ? "there is " + offered(plugins, kind) : near));
  return {};
}

}  // namespace tamis::cli
