#include <array>
#include <memory>
#include <string>

#include "core/cli/compare_report.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/revisions.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

using Shared = std::shared_ptr<const fiche::Document>;

constexpr std::array options{
    Option{"kitchen", 'k', "FILE", "read both with this kitchen file, not the kitchen.xml found above each fiche",
           "FILE"},
    Option{"report", 'r', "FORM", "how to tell it", "text|json"},
};

constexpr std::string_view help =
    R"(OLD and NEW are fiches. One alone is held against its last released revision: the
fiche of the same id and a lower revision number, state "released", that its
folder keeps, beside it or in a folder "revisions" there; file names are free.
What lets more pass than before is marked with "!". Ends with 0 when nothing
changed, 1 when something did, 2 when the two could not be compared.

  $ tamis compare desserts/buckwheat-pear-frame.fiche.xml 2>&1 | grep custard
    custard 2 °C hotter: 82–84 °C, was 80–82 °C  (line 52)
)";

/// A fiche, or nothing when it has been said why not.
Shared fiche_at(const std::string& path) {
  const auto source = read_file(path);
  if (!source) {
    complain(path + ": " + source.fault().message);
    return nullptr;
  }
  const format::Read read = format::read(*source);
  if (read.document == nullptr) {
    talk_report()->file(**source, read.findings);
    complain(path + " cannot be read; nothing was compared");
    return nullptr;
  }
  const bool good = read.document->root() != fiche::none && read.document->el(read.document->root()) == fiche::El::fiche;
  if (!good) complain(path + " is no fiche");
  return good ? read.document : nullptr;
}

std::shared_ptr<const fiche::Kitchen> kitchen_of(Surroundings& surroundings, const Shared& fiche) {
  const Around& around = surroundings.of(fiche->source().path());
  if (around.fault.empty()) return around.kitchen;
  complain(around.kitchen_path + ": the kitchen file cannot be used: " + around.fault);
  return nullptr;
}

Shared older_of(const Request& request, const Shared& newer) {
  if (request.words.size() == 2) return fiche_at(request.words.front());
  auto found = last_released(*newer);
  if (found) return *found;
  complain(found.fault().message + "\n  → " + found.fault().advice);
  return nullptr;
}

std::string misuse(const Request& request) {
  if (request.words.empty()) return "say what to compare: OLD NEW, or one fiche against its last released revision";
  if (request.words.size() > 2) return "compare takes two fiches, OLD and NEW";
  for (const std::string& word : request.words) {
    if (word == "-") return "compare takes files, not standard input";
    if (kind_of(word) == PathKind::folder) return word + " is a folder; compare takes two fiches, OLD and NEW";
  }
  return {};
}

Exit run_compare(const Request& request) {
  Surroundings surroundings(request.get("kitchen"));
  const Shared newer = fiche_at(request.words.back());
  const Shared older = newer == nullptr ? nullptr : older_of(request, newer);
  if (older == nullptr) return Exit::failed;
  const auto old_kitchen = kitchen_of(surroundings, older);
  const auto new_kitchen = kitchen_of(surroundings, newer);
  if (old_kitchen == nullptr || new_kitchen == nullptr) return Exit::failed;
  const Comparison comparison{*older, *newer, change::compare({*older, *old_kitchen}, {*newer, *new_kitchen})};
  if (request.get("report") == "json") {
    print(comparison_json(comparison));
  } else {
    if (!comparison.changes.empty()) print(comparison_text(comparison, colour_on_output()));
    say(comparison_count(comparison));
  }
  return comparison.changes.empty() ? Exit::good : Exit::found;
}

}  // namespace

extern const Verb verb_compare;
const Verb verb_compare{.name = "compare",
                        .summary = "say what changed between two revisions of a fiche, by meaning",
                        .usage = "tamis compare [OPTIONS] [OLD] NEW",
                        .help = help,
                        .words = "FILE",
                        .options = options,
                        .misuse = misuse,
                        .run = run_compare};

}  // namespace tamis::cli
