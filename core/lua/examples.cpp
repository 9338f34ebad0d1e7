#include "core/lua/examples.h"

#include <iterator>

#include "core/base/utf8.h"
#include "core/format/format.h"
#include "core/rules/rule.h"

namespace tamis::lua {

std::string example_text(std::string_view example) {
  const std::string_view bare = base::trimmed(example);
  if (bare.starts_with("<fiche") || bare.starts_with("<?") || bare.starts_with('{')) return std::string(bare);
  while (!example.empty() && (example.front() == '\n' || example.front() == '\r')) example.remove_prefix(1);
  while (!example.empty() && base::trimmed(example.substr(example.size() - 1)).empty()) example.remove_suffix(1);
  return rules::example_document(example);
}

TriedExample try_example(const PluginFiles& files, const Manifest& manifest, const Addition& addition,
                         std::string_view example) {
  TriedExample out;
  Settings settings = standard_settings(manifest);
  for (const auto& [name, value] : addition.settings) {
    const auto put = put_setting(manifest, name, value, settings);
    if (!put) out.faults.push_back({manifest.document->shared_source(), put.fault()});
  }
  std::string text = example_text(example);
  const char* const name = text.starts_with('{') ? "example.fiche.json" : "example.fiche.xml";
  out.source = std::make_shared<base::Source>(name, std::move(text));
  if (!out.faults.empty()) return out;
  const auto plugin = Plugin::load(files, manifest, std::move(settings), out.faults);
  if (plugin == nullptr) return out;
  const format::Read read = format::read(out.source);
  out.findings = read.findings;
  if (read.document == nullptr) return out;
  PluginChecks checks({plugin.get()});
  fiche::Kitchen kitchen;
  fiche::add_to_kitchen(kitchen, *manifest.document);
  auto found = rules::check(*read.document, kitchen, fiche::empty_library(), &checks);
  std::move(found.begin(), found.end(), std::back_inserter(out.findings));
  return out;
}

}  // namespace tamis::lua
