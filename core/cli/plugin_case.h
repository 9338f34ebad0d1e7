#ifndef CORE_CLI_PLUGIN_CASE_H
#define CORE_CLI_PLUGIN_CASE_H

#include <map>
#include <string>
#include <vector>

#include "core/lua/manifest.h"

namespace tamis::cli {

/// Files of a test by their path within its folder: "findings.txt", "exported/sheet/pan.html".
using CaseFiles = std::map<std::string, std::string, std::less<>>;

/// One of a plugin's own tests: the folder tests/NAME/ with
///   case.fiche.xml (or case.fiche.json)   the recipe
///   kitchen.xml                           the kitchen, with the plugin's settings; may be left out
///   library/...                           other fiches that the recipe speaks of; may be left out
///   together/NAME.fiche.xml...            what an export over all fiches is made of, behind the recipe; may be left out
/// and what is expected of it:
///   findings.txt                          what the plugin's checks find
///   converted/ID.fiche.xml                what the conversion makes of it
///   exported/ID/NAME...                   the files that the export makes of it
///   converted/ID.findings.txt, exported/ID.findings.txt   what they have to say; none: nothing
struct PluginCase {
  std::string name;
  std::string folder;      ///< its path
  std::string fiche;       ///< "case.fiche.xml"; "" when there is none
  std::vector<std::string> together;  ///< "together/b.fiche.xml", in the order of their names
  bool has_kitchen = false;
  CaseFiles expected;
  std::vector<std::string> faults;  ///< what is no part of such a folder, or cannot be read, each with its path
};

/// Reads the tests under a plugin's folder, in the order of their names. Faults of tests/ itself go to `faults`; a plugin that
/// adds nothing, and gives foods and words alone, may have none, and nothing is expected in one but a recipe without errors.
std::vector<PluginCase> read_plugin_cases(const std::string& plugin_folder, const lua::Manifest& manifest,
                                          std::vector<std::string>& faults);

/// Whether the test says what is expected of it; of checks all are asked at once.
bool expects(const PluginCase& one, const lua::Addition& addition);

/// Where what comes of an addition stands: "findings.txt", "converted/ID", "exported/ID".
std::string place_of(const lua::Addition& addition);

}  // namespace tamis::cli

#endif
