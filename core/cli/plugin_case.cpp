#include "core/cli/plugin_case.h"

#include <algorithm>
#include <array>

#include "core/cli/arguments.h"
#include "core/cli/files.h"

namespace tamis::cli {
namespace {

using Kind = lua::Addition::Kind;

std::string with_advice(std::string fault, const std::string& advice) {
  return advice.empty() ? fault : std::move(fault) + "; " + advice;
}

/// Reads one test folder.
class CaseReader {
 public:
  CaseReader(std::string folder, std::string name, const lua::Manifest& manifest) : manifest_(manifest) {
    out_.folder = std::move(folder);
    out_.name = std::move(name);
  }

  PluginCase read() {
    for (const std::string& name : names("")) {
      const bool folder = is_folder(name);
      if (name == "kitchen.xml" && !folder) {
        out_.has_kitchen = true;
      } else if (is_fiche_name(name) && name.starts_with("case.fiche.") && !folder) {
        if (!out_.fiche.empty()) fault(name, "a test has one recipe; this is the second");
        out_.fiche = name;
      } else if (name == "findings.txt" && !folder) {
        expect(name);
        if (!adds(Kind::check)) fault(name, "the plugin adds no check");
      } else if (name == "converted" && folder) {
        read_made(name, Kind::conversion);
      } else if (name == "exported" && folder) {
        read_made(name, Kind::export_);
      } else if (name == "together" && folder) {
        read_together(name);
      } else if (name != "library" || !folder) {
        strange(name);
      }
    }
    if (out_.fiche.empty()) fault("", "holds no case.fiche.xml, the recipe to test with");
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string full(const std::string& within) const {
    return within.empty() ? out_.folder : out_.folder + "/" + within;
  }
  [[nodiscard]] bool is_folder(const std::string& within) const { return kind_of(full(within)) == PathKind::folder; }
  void fault(const std::string& within, const std::string& what) { out_.faults.push_back(full(within) + ": " + what); }

  std::vector<std::string> names(const std::string& within) {
    std::vector<std::string> found;
    if (const int why = names_in(full(within), found); why != 0) fault(within, "cannot be read: " + reason(why));
    return found;
  }

  void strange(const std::string& name) {
    constexpr std::array<std::string_view, 7> known{"case.fiche.xml", "kitchen.xml", "findings.txt",
                                                    "converted",      "exported",    "library",
                                                    "together"};
    const std::string near = did_you_mean(name, known);
    fault(name, with_advice("is no part of a test", near.empty() ? "put other fiches into library" : near));
  }

  void expect(const std::string& within) {
    const auto file = read_file(full(within));
    if (file)
      out_.expected.emplace(within, (*file)->bytes());
    else
      fault(within, file.fault().message);
  }

  [[nodiscard]] bool adds(Kind kind) const {
    return std::any_of(manifest_.additions.begin(), manifest_.additions.end(),
                       [kind](const lua::Addition& addition) { return addition.kind == kind; });
  }

  void read_together(const std::string& place) {
    for (const std::string& name : names(place)) {
      const std::string within = place + "/" + name;
      if (is_fiche_name(name) && !is_folder(within))
        out_.together.push_back(within);
      else
        fault(within, "is no fiche");
    }
  }

  /// The id must be of something the plugin adds.
  bool known(const std::string& within, const std::string& id, Kind kind) {
    std::vector<std::string_view> ids;
    for (const lua::Addition& addition : manifest_.additions)
      if (addition.kind == kind) ids.push_back(addition.id);
    if (std::find(ids.begin(), ids.end(), id) != ids.end()) return true;
    fault(within, with_advice("the plugin adds no " + std::string(lua::kind_name(kind)) + " \"" + id + "\"",
                              did_you_mean(id, ids)));
    return false;
  }

  /// converted/ID.fiche.xml, exported/ID/NAME, and ID.findings.txt in both.
  void read_made(const std::string& place, Kind kind) {
    constexpr std::string_view said = ".findings.txt";
    for (const std::string& name : names(place)) {
      const std::string within = place + "/" + name;
      if (is_folder(within)) {
        if (kind == Kind::conversion) {
          fault(within, "is a folder; what a conversion makes is one file, ID.fiche.xml");
        } else if (known(within, name, kind)) {
          for (const std::string& file : names(within)) expect(within + "/" + file);
        }
      } else if (name.ends_with(said)) {
        if (known(within, name.substr(0, name.size() - said.size()), kind)) expect(within);
      } else if (kind == Kind::conversion && is_fiche_name(name)) {
        if (known(within, name.substr(0, name.rfind(".fiche.")), kind)) expect(within);
      } else {
        fault(within, kind == Kind::conversion ? "is no part of a test; what a conversion makes is ID.fiche.xml"
                                               : "is no part of a test; the files of an export stand in exported/ID/");
      }
    }
  }

  const lua::Manifest& manifest_;
  PluginCase out_;
};

}  // namespace

std::vector<PluginCase> read_plugin_cases(const std::string& plugin_folder, const lua::Manifest& manifest,
                                          std::vector<std::string>& faults) {
  std::vector<PluginCase> cases;
  const std::string tests = plugin_folder + "/tests";
  std::vector<std::string> found;
  if (kind_of(tests) != PathKind::folder) {
    if (manifest.additions.empty()) return cases;  // foods and words alone: the kitchen's check judges them
    faults.push_back(plugin_folder + ": has no tests; each is a folder tests/NAME with a case.fiche.xml");
    return cases;
  }
  if (const int why = names_in(tests, found); why != 0) faults.push_back(tests + ": cannot be read: " + reason(why));
  for (const std::string& name : found) {
    const std::string folder = tests + "/" + name;
    if (kind_of(folder) == PathKind::folder)
      cases.push_back(CaseReader(folder, name, manifest).read());
    else
      faults.push_back(folder + ": is no folder; a test is a folder tests/NAME with a case.fiche.xml");
  }
  if (found.empty()) faults.push_back(tests + ": is empty; a test is a folder tests/NAME with a case.fiche.xml");
  return cases;
}

std::string place_of(const lua::Addition& addition) {
  switch (addition.kind) {
    case Kind::check: return "findings.txt";
    case Kind::conversion: return "converted/" + addition.id;
    case Kind::export_: break;
  }
  return "exported/" + addition.id;
}

bool expects(const PluginCase& one, const lua::Addition& addition) {
  const std::string place = place_of(addition);
  return std::any_of(one.expected.begin(), one.expected.end(), [&place](const auto& file) {
    const std::string& path = file.first;
    if (!path.starts_with(place)) return false;
    const std::string_view rest = std::string_view(path).substr(place.size());
    return rest.empty() || rest.starts_with('/') || rest == ".findings.txt" || rest == ".fiche.xml" || rest == ".fiche.json";
  });
}

}  // namespace tamis::cli
