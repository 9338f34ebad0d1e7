#include "tests/lua/hosting.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "core/format/format.h"
#include "core/rules/rule.h"
#include "tests/shared_files.h"

namespace tamis::tests {

const std::string custard = R"(<fiche xmlns="urn:tamis:fiche:1" id="custard" lang="en" units="metric">
  <title>Vanilla custard</title>
  <component id="cream" title="Custard">
    <ingredient id="milk" food="milk-whole">300 g</ingredient>
    <ingredient id="yolks" food="egg-yolk" pieces="5">90 g</ingredient>
    <step do="cook" makes="custard" hands="8 min">Pour the <use of="milk">milk</use> over the <use of="yolks">yolks</use>,
      stir to <food-temp>82–84 °C</food-temp>.<gate>at most 4 °C</gate></step>
    <step do="chill">Chill the <use of="custard">custard</use> for <time>2 h</time>.</step>
  </component>
</fiche>
)";

std::string manifest_of(std::string_view kind, std::string_view more) {
  const std::string id = kind == "check" ? "house-test" : kind == "conversion" ? "turn" : "paper";
  return "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"trial\" version=\"3\" api=\"1\"><adds id=\"" + id + "\" kind=\"" +
         std::string(kind) + "\" severity=\"warning\"/>" + std::string(more) + "</manifest>";
}

std::string Loaded::lines() const {
  std::string out;
  for (const lua::LoadFault& fault : faults) {
    const base::Place place = fault.source->place(fault.finding.where.begin);
    out += fault.source->path() + ":" + std::to_string(place.line) + ":" + std::to_string(place.column) + ": " +
           fault.finding.message + " [" + fault.finding.advice + "]\n";
  }
  return out;
}

Loaded load_plugin(const std::string& manifest, const std::string& program, std::string_view settings) {
  lua::PluginFiles files;
  files.path = "trial";
  files.manifest = std::make_shared<base::Source>("plugin.xml", manifest);
  files.programs = {std::make_shared<base::Source>("plugin.lua", program)};
  return load_files(files, settings);
}

Loaded load_files(const lua::PluginFiles& files, std::string_view settings) {
  Loaded loaded;
  std::vector<base::Finding> faults;
  const lua::Manifest read = lua::read_manifest(files.manifest, faults);
  for (base::Finding& fault : faults) loaded.faults.push_back({files.manifest, std::move(fault)});
  if (!loaded.faults.empty()) return loaded;
  lua::Settings values = lua::standard_settings(read);
  for (const std::string& setting : lua::split(settings, '|')) {
    const std::size_t equals = setting.find('=');
    auto put = lua::put_setting(read, setting.substr(0, equals), setting.substr(equals + 1), values);
    if (!put) loaded.faults.push_back({files.manifest, std::move(put.fault())});
  }
  if (loaded.faults.empty()) loaded.plugin = lua::Plugin::load(files, read, std::move(values), loaded.faults);
  return loaded;
}

Loaded load_boxed(const std::string& id, std::string_view settings) {
  const std::string folder = "plugins/" + id + "/";
  lua::PluginFiles files;
  files.path = folder;
  files.manifest = std::make_shared<base::Source>("plugin.xml", project_file(folder + "plugin.xml"));
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(TAMIS_SOURCE_DIR) / folder))
    if (entry.path().extension() == ".lua" && entry.path().stem() != "plugin") names.push_back(entry.path().filename());
  std::sort(names.begin(), names.end());
  names.emplace_back("plugin.lua");
  for (const std::string& name : names)
    files.programs.push_back(std::make_shared<base::Source>(name, project_file(folder + name)));
  return load_files(files, settings);
}

Loaded load_check(const std::string& body) {
  return load_plugin(manifest_of("check"), "function house_test(fiche)\n" + body + "\nend\n");
}

void check_kept(const std::string& name, const std::string& made) {
  const std::string path = "tests/lua/" + name;
  if (std::getenv("TAMIS_WRITE_GOLDEN") != nullptr)
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/" + path, std::ios::binary) << made;
  CAPTURE(name);
  CHECK((made == project_file(path)));  // in brackets: never printed whole
}

std::vector<std::pair<std::string, std::string>> project_fiches(std::vector<std::string> places) {
  namespace fs = std::filesystem;
  std::vector<std::pair<std::string, std::string>> found;
  for (const std::string& place : places) {
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(TAMIS_SOURCE_DIR) / place)) {
      const std::string path = fs::relative(entry.path(), TAMIS_SOURCE_DIR).string();
      if (path.ends_with(".fiche.xml")) found.emplace_back(path, project_file(path));
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::shared_ptr<const fiche::Document> document_of(const std::string& text, const std::string& path) {
  return format::read(std::make_shared<base::Source>(path, text)).document;
}

std::string said(lua::Plugin& plugin, const std::string& text, const fiche::Kitchen& kitchen, fiche::Library& library) {
  const auto document = document_of(text, text.starts_with("{") ? "a.fiche.json" : "a.fiche.xml");
  if (document == nullptr) return "unreadable\n";
  lua::PluginChecks checks({&plugin});
  std::string out;
  for (const base::Finding& finding : rules::check(*document, kitchen, library, &checks)) {
    if (rules::rule_by_id(finding.rule) != nullptr && finding.rule != "plugin-error") continue;
    const base::Place place = document->source().place(finding.where.begin);
    out += std::to_string(place.line) + ":" + std::to_string(place.column) + " " + finding.rule + ": " + finding.message;
    if (!finding.advice.empty() && finding.rule != "plugin-error") out += " [" + finding.advice + "]";
    out += "\n";
  }
  return out;
}

}  // namespace tamis::tests
