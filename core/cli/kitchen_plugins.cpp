#include "core/cli/kitchen_plugins.h"

#include <algorithm>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/cli/file_library.h"
#include "core/cli/files.h"
#include "core/cli/plugin_files.h"
#include "core/fiche/prose.h"

namespace tamis::cli {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

std::string last_name(const std::string& folder) { return folder.substr(folder.rfind('/') + 1); }

KitchenPlugins::Broken in_words(const base::Source& source, const base::Finding& finding) {
  std::string why;
  if (!finding.where.empty()) {
    const base::Place place = source.place(finding.where.begin);
    why = "line " + std::to_string(place.line) + ", column " + std::to_string(place.column) + ": ";
  }
  why += finding.message;
  if (!finding.advice.empty()) why += "; " + finding.advice;
  return {source.path(), why};
}

}  // namespace

KitchenPlugins::KitchenPlugins(std::shared_ptr<const fiche::Kitchen> kitchen) : kitchen_(std::move(kitchen)) {}

void KitchenPlugins::say(Node n, At at, const std::string& message, const std::string& advice) {
  const fiche::Document& document = *kitchen_->document;
  const fiche::Attr attribute = document.find(n, at);
  base::Finding finding;
  finding.where = attribute == fiche::none ? document.head_span(n) : document.value_span(attribute);
  finding.message = message;
  finding.advice = advice;
  broken_.push_back(in_words(document.source(), finding));
}

void KitchenPlugins::read_kitchen() {
  if (read_) return;
  read_ = true;
  if (kitchen_->document == nullptr) return;
  const fiche::Document& document = *kitchen_->document;
  for (Node n = document.first_child(document.root()); n != fiche::none; n = document.next(n))
    if (document.el(n) == El::plugin) read_named(n);
}

void KitchenPlugins::read_named(Node plugin) {
  const fiche::Document& document = *kitchen_->document;
  const std::string id(base::trimmed(document.get(plugin, At::id)));
  const std::string path(document.get(plugin, At::path));
  const std::string folder = folder_of_plugin(document, plugin);
  if (folder.empty() && path.empty()) {
    std::vector<std::string> names;
    for (const std::string& one : boxed_plugins()) names.push_back(last_name(one));
    const std::string_view near = base::nearest(id, std::vector<std::string_view>(names.begin(), names.end()));
    return say(plugin, At::id, "there is no plugin \"" + id + "\" in the box",
               near.empty() ? "say where its folder is: path=\"...\"" : "write " + std::string(near));
  }
  if (folder.empty())
    return say(plugin, At::path, "there is no folder \"" + path + "\" beside the kitchen file",
               "say where the plugin's folder is, seen from the kitchen file");
  auto files = read_plugin_files(shown_path(real_path(folder)));
  if (!files) return say(plugin, path.empty() ? At::id : At::path, files.fault().message, "put the file there");
  auto entry = std::make_unique<Entry>();
  entry->files = *std::move(files);
  entry->named = plugin;
  std::vector<base::Finding> faults;
  entry->manifest = lua::read_manifest(entry->files.manifest, faults);
  for (const base::Finding& fault : faults) broken_.push_back(in_words(*entry->files.manifest, fault));
  if (!faults.empty()) return;
  if (entry->manifest.id != id)
    return say(plugin, At::id, "the plugin in " + entry->files.path + " calls itself \"" + entry->manifest.id + "\"",
               "write id=\"" + entry->manifest.id + "\"");
  if (check_names(*entry)) entries_.push_back(std::move(entry));
}

/// No two plugins add things of one name: the first has it.
bool KitchenPlugins::check_names(const Entry& entry) {
  const std::size_t before = broken_.size();
  for (const auto& other : entries_) {
    if (other->manifest.id == entry.manifest.id) {
      say(entry.named, At::id, "the plugin \"" + entry.manifest.id + "\" is named twice", "take one of them out");
      return false;
    }
    for (const std::string& one : entry.manifest.furnishes)
      if (std::find(other->manifest.furnishes.begin(), other->manifest.furnishes.end(), one) != other->manifest.furnishes.end())
        say(entry.named, At::id, "the " + one + " is given by the plugins " + other->manifest.id + " and " + entry.manifest.id,
            "take one of them out, or give it in the kitchen file");
    for (const lua::Addition& one : entry.manifest.additions)
      for (const lua::Addition& theirs : other->manifest.additions)
        if (one.id == theirs.id)
          say(entry.named, At::id,
              "\"" + one.id + "\" is added by the plugins " + other->manifest.id + " and " + entry.manifest.id,
              "take one of them out");
  }
  return broken_.size() == before;
}

bool KitchenPlugins::any_named(const fiche::Kitchen& kitchen) {
  return kitchen.document != nullptr && kitchen.document->child(kitchen.document->root(), El::plugin) != fiche::none;
}

bool KitchenPlugins::is_left_out(const Entry& entry) const {
  return std::find(left_out_.begin(), left_out_.end(), entry.manifest.id) != left_out_.end();
}

void KitchenPlugins::load_named() {
  read_kitchen();
  for (const auto& entry : entries_) {
    if (entry->named == fiche::none || entry->tried || is_left_out(*entry)) continue;
    entry->tried = true;
    if (entry->plugin == nullptr) load_entry(*entry, {}, broken_);
  }
}

bool KitchenPlugins::load_entry(Entry& entry, std::string_view settings, std::vector<Broken>& faults) {
  lua::Settings values = lua::standard_settings(entry.manifest);
  const std::size_t before = faults.size();
  if (entry.named != fiche::none) {
    std::vector<base::Finding> wrong;
    lua::put_settings(entry.manifest, *kitchen_->document, entry.named, values, wrong);
    for (const base::Finding& fault : wrong) faults.push_back(in_words(kitchen_->document->source(), fault));
  }
  for (const std::string& setting : lua::split(settings, ';')) {
    const std::size_t equals = setting.find('=');
    if (equals == std::string::npos) {
      faults.push_back({"--set", "\"" + setting + "\" is no setting; write name=value"});
      continue;
    }
    const auto put = lua::put_setting(entry.manifest, base::trimmed(setting.substr(0, equals)),
                                      setting.substr(equals + 1), values);
    if (!put) faults.push_back({"--set", put.fault().message + "; " + put.fault().advice});
  }
  if (faults.size() > before) return false;
  std::vector<lua::LoadFault> wrong;
  entry.manifest.limits.time = time_;
  entry.plugin = lua::Plugin::load(entry.files, entry.manifest, std::move(values), wrong);
  entry.with = settings;
  for (const lua::LoadFault& fault : wrong) faults.push_back(in_words(*fault.source, fault.finding));
  return entry.plugin != nullptr;
}

const std::vector<KitchenPlugins::Broken>& KitchenPlugins::broken() {
  load_named();
  return broken_;
}

lua::PluginChecks* KitchenPlugins::checks() {
  load_named();
  std::vector<lua::Plugin*> plugins;
  for (const auto& entry : entries_)
    if (entry->named != fiche::none && entry->plugin != nullptr && !is_left_out(*entry)) plugins.push_back(entry->plugin.get());
  if (plugins != heard_) {
    checks_ = plugins.empty() ? nullptr : std::make_unique<lua::PluginChecks>(plugins);
    heard_ = std::move(plugins);
  }
  return checks_.get();
}

void KitchenPlugins::read_box() {
  read_kitchen();
  if (box_read_) return;
  box_read_ = true;
  for (const std::string& folder : boxed_plugins()) {
    auto files = read_plugin_files(shown_path(folder));
    if (!files) {
      broken_.push_back({folder, files.fault().message});
      continue;
    }
    auto entry = std::make_unique<Entry>();
    entry->files = *std::move(files);
    std::vector<base::Finding> faults;
    entry->manifest = lua::read_manifest(entry->files.manifest, faults);
    for (const base::Finding& fault : faults) broken_.push_back(in_words(*entry->files.manifest, fault));
    const bool known = std::any_of(entries_.begin(), entries_.end(), [&entry](const auto& other) {
      return other->manifest.id == entry->manifest.id;
    });
    if (faults.empty() && !known) entries_.push_back(std::move(entry));
  }
}

std::vector<KitchenPlugins::Held> KitchenPlugins::all() {
  read_box();
  std::vector<Held> out;
  for (const auto& entry : entries_) out.push_back({&entry->manifest, entry->files.path, entry->named != fiche::none});
  return out;
}

std::vector<KitchenPlugins::Offer> KitchenPlugins::offers() {
  read_box();
  std::vector<Offer> out;
  for (const auto& entry : entries_)
    for (const lua::Addition& addition : entry->manifest.additions)
      out.push_back({&entry->manifest, &addition, &entry->files, entry->files.path, entry->named != fiche::none});
  return out;
}

std::vector<KitchenPlugins::SettingIs> KitchenPlugins::settings(const lua::Manifest& manifest) {
  std::vector<SettingIs> out;
  for (const lua::Taking& taking : manifest.takes)
    out.push_back({&taking, taking.standard.value_or(""), taking.standard ? "by default" : ""});
  const auto entry = std::find_if(entries_.begin(), entries_.end(),
                                  [&manifest](const auto& one) { return &one->manifest == &manifest; });
  if (entry == entries_.end() || (*entry)->named == fiche::none) return out;
  const fiche::Document& document = *kitchen_->document;
  for (Node n = document.first_child((*entry)->named); n != fiche::none; n = document.next(n)) {
    if (document.el(n) != El::setting) continue;
    const std::string_view name = base::trimmed(document.get(n, At::name));
    for (SettingIs& setting : out) {
      if (setting.taking->name != name) continue;
      setting.value = base::trimmed(fiche::folded(document.direct_text(n)));
      setting.from = last_name(document.source().path()) + ", line " +
                     std::to_string(document.source().place(document.span(n).begin).line);
    }
  }
  return out;
}

lua::Plugin* KitchenPlugins::load(const Offer& offer, std::string_view settings, std::vector<Broken>& faults) {
  for (const auto& entry : entries_) {
    if (&entry->manifest != offer.manifest) continue;
    const bool ready = entry->plugin != nullptr && entry->with == settings;
    return ready || load_entry(*entry, settings, faults) ? entry->plugin.get() : nullptr;
  }
  return nullptr;
}

}  // namespace tamis::cli
