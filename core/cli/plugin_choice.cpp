#include "core/cli/plugin_choice.h"

#include <algorithm>
#include <cstdlib>
#include <vector>

#include "core/cli/arguments.h"

namespace tamis::cli {
namespace {

constexpr int most_seconds = 3600;

}  // namespace

std::chrono::seconds seconds_of(const Request& request) {
  return request.has("seconds") ? std::chrono::seconds(std::atoi(request.get("seconds").c_str())) : lua::Limits{}.time;
}

std::string seconds_misuse(const Request& request) {
  const std::string text = request.get("seconds", "10");
  const bool digits = !text.empty() && text.size() < 5 && text.find_first_not_of("0123456789") == std::string::npos;
  const int number = digits ? std::atoi(text.c_str()) : 0;
  return number >= 1 && number <= most_seconds ? "" : "--seconds is a whole number from 1 to " + std::to_string(most_seconds);
}

std::string offered(KitchenPlugins& plugins, lua::Addition::Kind kind) {
  std::string names;
  for (const KitchenPlugins::Offer& offer : plugins.offers()) {
    if (offer.addition->kind != kind) continue;
    if (!names.empty()) names += ", ";
    names += offer.addition->id;
  }
  return names;
}

Chosen choose_plugin(KitchenPlugins& plugins, lua::Addition::Kind kind, std::string_view name, std::string_view settings,
                     const std::vector<LeftOut>& left_out) {
  const std::vector<KitchenPlugins::Offer> offers = plugins.offers();
  Chosen chosen;
  std::vector<std::string_view> names;
  for (const KitchenPlugins::Offer& offer : offers) {
    if (offer.addition->kind != kind) continue;
    names.push_back(offer.addition->id);
    if (offer.addition->id != name) continue;
    chosen.addition = offer.addition;
    const bool out = std::any_of(left_out.begin(), left_out.end(),
                                 [&offer](const LeftOut& one) { return one.plugin == offer.manifest->id; });
    if (out) return chosen;
    std::vector<KitchenPlugins::Broken> broken;
    chosen.plugin = plugins.load(offer, settings, broken);
    for (const auto& one : broken) chosen.faults.push_back({one.path, "a plugin cannot be used: " + one.why});
    return chosen;
  }
  for (const auto& one : plugins.broken()) chosen.faults.push_back({one.path, "a plugin cannot be loaded: " + one.why});
  std::string why = "no plugin adds the " + std::string(lua::kind_name(kind)) + " \"" + std::string(name) + "\"";
  const std::string near = did_you_mean(name, names);
  if (!near.empty() || !names.empty()) why += "\n  → " + (near.empty() ? "there is " + offered(plugins, kind) : near);
  chosen.faults.push_back({"", std::move(why)});
  return chosen;
}

}  // namespace tamis::cli
