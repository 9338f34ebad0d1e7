#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/files.h"
#include "core/cli/folded.h"
#include "core/cli/output.h"
#include "core/cli/plugin_tests.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"kitchen", 'k', "FILE", "the plugins of this kitchen file, not of the kitchen.xml found above", "FILE"},
    Option{"renew", 0, "", "with test: write what the plugin makes now as what is expected", ""},
};

constexpr std::string_view help =
    R"(Checks are heard of the plugins that the kitchen file names; conversions and
exports can be asked of those in the box too.

"test" runs a plugin's own tests, the folders under its tests/, as it would run
in a kitchen that names it, and shows what is not as expected
(plugins/README.md tells how they are written).
)";

std::string heading(const KitchenPlugins::Held& one) {
  return one.manifest->id + " " + one.manifest->version + (one.of_kitchen ? " (the kitchen's): " : " (in the box): ") + one.path +
         "\n";
}

/// "check house-verb", "what it is (advice)".
Row row_of(const lua::Addition& addition) {
  std::string what = addition.summary;
  if (addition.kind == lua::Addition::Kind::check) what += " (" + std::string(base::severity_name(addition.severity)) + ")";
  return {std::string(lua::kind_name(addition.kind)) + " " + addition.id, what};
}

/// "setting units", "g kg ml (kitchen.xml, line 6): ids of the units that may stand".
Row row_of(const KitchenPlugins::SettingIs& setting) {
  std::string choices;
  for (const std::string& choice : setting.taking->choices) choices += (choices.empty() ? "; of " : ", ") + choice;
  std::string what = setting.from.empty() ? "not set" : setting.value + " (" + setting.from + choices + ")";
  if (!setting.taking->purpose.empty()) what += ": " + setting.taking->purpose;
  return {"setting " + setting.taking->name, what};
}

Row row_of(const lua::Limits& limits) {
  constexpr std::int64_t million = 1'000'000;
  constexpr std::size_t megabyte = std::size_t{1} << 20U;
  const bool millions = limits.instructions % million == 0;
  const bool megabytes = limits.bytes % megabyte == 0;
  std::string what = std::to_string(millions ? limits.instructions / million : limits.instructions);
  what += millions ? " million instructions a call, " : " instructions a call, ";
  what += std::to_string(megabytes ? limits.bytes / megabyte : limits.bytes / 1024);
  return {"limits", what + (megabytes ? " MB of memory" : " kB of memory")};
}

std::string misuse(const Request& request) {
  const bool test = !request.words.empty() && request.words.front() == "test";
  if (test && request.words.size() == 1) return "say which plugin to test, by its folder: tamis plugins test house/depth";
  if (test && request.has("kitchen")) return "a plugin is tested with the kitchen files of its tests, not with --kitchen";
  if (!test && request.has("renew")) return "--renew goes with test: tamis plugins test --renew PLUGIN";
  return {};
}

Exit run_plugins(const Request& request) {
  if (!request.words.empty() && request.words.front() == "test") return test_plugins(request);
  if (request.words.size() > 1 || (!request.words.empty() && kind_of(request.words.front()) != PathKind::folder)) {
    constexpr std::array<std::string_view, 1> subjects{"test"};
    complain(request.words.size() > 1 ? "one folder at a time" : request.words.front() + ": there is no such folder");
    if (const std::string near = did_you_mean(request.words.front(), subjects); !near.empty()) say("  → " + near);
    return Exit::failed;
  }
  Surroundings surroundings(request.get("kitchen"));
  const std::string here = request.words.empty() ? "./kitchen.xml" : request.words.front() + "/kitchen.xml";
  const Around& around = surroundings.of(here);
  if (!around.fault.empty()) {
    complain(around.kitchen_path + ": the kitchen file cannot be used: " + around.fault);
    return Exit::failed;
  }
  KitchenPlugins& plugins = surroundings.plugins(here);
  bool first = true;
  for (const KitchenPlugins::Held& one : plugins.all()) {
    const lua::Manifest& manifest = *one.manifest;
    std::vector<Row> rows;
    for (const lua::Addition& addition : manifest.additions) rows.push_back(row_of(addition));
    for (const std::string& what : manifest.furnishes) rows.push_back({what, "for the kitchen"});
    for (const KitchenPlugins::SettingIs& setting : plugins.settings(manifest)) rows.push_back(row_of(setting));
    if (!manifest.additions.empty()) rows.push_back(row_of(manifest.limits));
    print(harmless((first ? "" : "\n") + heading(one) + two_columns(rows)));
    first = false;
  }
  for (const KitchenPlugins::Broken& broken : plugins.broken())
    complain(harmless(broken.path + ": a plugin cannot be loaded: " + broken.why));
  return plugins.broken().empty() ? Exit::good : Exit::failed;
}

}  // namespace

extern const Verb verb_plugins;
const Verb verb_plugins{.name = "plugins",
                        .summary = "list the plugins there are, what they add and where they are from, or test them",
                        .usage = "tamis plugins [OPTIONS] [FOLDER] | test [--renew] PLUGIN...",
                        .help = help,
                        .words = "FOLDER",
                        .options = options,
                        .misuse = misuse,
                        .run = run_plugins};

}  // namespace tamis::cli
