#ifndef CORE_LUA_MANIFEST_H
#define CORE_LUA_MANIFEST_H

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/fiche/document.h"
#include "core/lua/meter.h"

namespace tamis::lua {

/// The version of what a plugin can use (plugins/README.md). A plugin that needs a later one is not loaded.
inline constexpr long api_version = 1;

/// One thing a plugin adds.
struct Addition {
  enum class Kind : unsigned char { check, conversion, export_ } kind = Kind::check;
  std::string id;
  std::string summary;
  base::Severity severity = base::Severity::warning;  ///< of a check, where the kitchen does not say
  std::string call;                                   ///< the function in plugin.lua
  std::string ending;                                 ///< of an export's file, "html"
  bool over_all = false;                              ///< an export: called once, with the list of all fiches named
  std::vector<std::string> notes;                     ///< what else there is to know of it, a paragraph each
  std::string wrong, right;                           ///< of a check: examples, as of rules::Rule; both or neither
  std::vector<std::pair<std::string, std::string>> settings;  ///< those its examples are judged with, names and values
  base::Span where;                                   ///< in the manifest: its id
};

/// A setting the plugin takes.
struct Taking {
  enum class Kind : unsigned char { text, number, yes, words, list, choice } kind = Kind::text;
  std::string name;
  std::string purpose;
  std::optional<std::string> standard;  ///< what it is when the kitchen does not say
  std::vector<std::string> choices;
  base::Span where;
};

/// A plugin's plugin.xml, read.
struct Manifest {
  std::string id, version, licence, summary;
  Limits limits;
  std::vector<Addition> additions;
  std::vector<Taking> takes;
  std::vector<std::string> furnishes;  ///< what it gives the kitchen: "food house-oats", "word ladle", "verb buzz"
  std::shared_ptr<const fiche::Document> document;
};

/// Reads a manifest. Everything the check's document rules call an error is one here, and so is an api newer than
/// api_version, a name given twice, a limit past the most there is, a default that is not of its kind.
/// Errors go to `faults`, their spans in the manifest's source; the manifest is only of use without any.
Manifest read_manifest(const std::shared_ptr<const base::Source>& source, std::vector<base::Finding>& faults);

std::string_view kind_name(Addition::Kind kind);  ///< "check", "conversion", "export"

}  // namespace tamis::lua

#endif
