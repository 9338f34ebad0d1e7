#include "core/lua/settings.h"

#include <algorithm>

#include "core/base/nearest.h"
#include "core/base/ratio.h"
#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/rules/near_miss.h"

namespace tamis::lua {
namespace {

base::Finding refusal(std::string message, std::string advice) {
  base::Finding fault;
  fault.rule = "plugin-error";
  fault.message = std::move(message);
  fault.advice = std::move(advice);
  return fault;
}

std::vector<std::string_view> views(const std::vector<std::string>& words) { return {words.begin(), words.end()}; }

base::Result<SettingValue> read_choice(const Taking& taking, std::string text) {
  if (std::find(taking.choices.begin(), taking.choices.end(), text) != taking.choices.end())
    return SettingValue(std::move(text));
  const auto choices = views(taking.choices);
  const std::string_view near = base::nearest(text, choices);
  return refusal("the setting \"" + taking.name + "\" cannot be " + rules::quoted(text),
                 near.empty() ? "it is one of " + rules::list_of(choices) : "write " + std::string(near));
}

}  // namespace

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(separator), text.size());
    const std::string_view part = base::trimmed(text.substr(0, end));
    if (!part.empty()) parts.emplace_back(part);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

base::Result<SettingValue> read_setting(const Taking& taking, std::string_view written) {
  std::string text(base::trimmed(fiche::folded(written)));
  switch (taking.kind) {
    case Taking::Kind::text: return SettingValue(std::move(text));
    case Taking::Kind::words: return SettingValue(split(text, ' '));
    case Taking::Kind::list: return SettingValue(split(text, ';'));
    case Taking::Kind::choice: return read_choice(taking, std::move(text));
    case Taking::Kind::yes:
      if (text == "yes" || text == "no") return SettingValue(text == "yes");
      return refusal("the setting \"" + taking.name + "\" is " + rules::quoted(text) + ", not yes or no",
                     "write yes or no");
    case Taking::Kind::number: break;
  }
  const auto number = base::Ratio::parse(text);
  if (number && number->ok()) return SettingValue(number->approximate());
  return refusal("the setting \"" + taking.name + "\" is " + rules::quoted(text) + ", not a number",
                 "write a figure: 20, 1.5");
}

Settings standard_settings(const Manifest& manifest) {
  Settings settings;
  for (const Taking& taking : manifest.takes) {
    const bool many = taking.kind == Taking::Kind::words || taking.kind == Taking::Kind::list;
    if (!taking.standard && many) settings.emplace(taking.name, std::vector<std::string>());
    if (!taking.standard) continue;
    auto value = read_setting(taking, *taking.standard);
    if (value) settings.insert_or_assign(taking.name, *std::move(value));
  }
  return settings;
}

base::Result<bool> put_setting(const Manifest& manifest, std::string_view name, std::string_view text,
                               Settings& settings) {
  const auto found = std::find_if(manifest.takes.begin(), manifest.takes.end(),
                                  [name](const Taking& taking) { return taking.name == name; });
  if (found == manifest.takes.end()) {
    std::vector<std::string_view> names;
    for (const Taking& taking : manifest.takes) names.push_back(taking.name);
    const std::string_view near = base::nearest(name, names);
    const std::string none = names.empty() ? "it takes no settings" : "it takes " + rules::list_of(names);
    return refusal("the plugin " + manifest.id + " has no setting " + rules::quoted(name),
                   near.empty() ? none : "write " + std::string(near));
  }
  auto value = read_setting(*found, text);
  if (!value) return std::move(value.fault());
  settings.insert_or_assign(found->name, *std::move(value));
  return true;
}

void put_settings(const Manifest& manifest, const fiche::Document& kitchen, fiche::Node plugin, Settings& settings,
                  std::vector<base::Finding>& faults) {
  using fiche::At;
  using fiche::El;
  std::vector<std::string> seen;
  for (fiche::Node n = kitchen.first_child(plugin); n != fiche::none; n = kitchen.next(n)) {
    if (kitchen.el(n) != El::setting) continue;
    const fiche::Attr named = kitchen.find(n, At::name);
    if (named == fiche::none) continue;  // the check of the kitchen file says so
    std::string name(base::trimmed(kitchen.attribute_value(named)));
    auto put = put_setting(manifest, name, kitchen.direct_text(n), settings);
    if (std::find(seen.begin(), seen.end(), name) != seen.end())
      put = refusal("the setting \"" + name + "\" stands here twice", "take one of them out");
    seen.push_back(name);
    if (put) continue;
    put.fault().where = kitchen.span(n);
    faults.push_back(std::move(put.fault()));
  }
}

}  // namespace tamis::lua
