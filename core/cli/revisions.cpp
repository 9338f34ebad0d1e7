#include "core/cli/revisions.h"

#include <charconv>
#include <limits>

#include "core/cli/files.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

using fiche::At;
using fiche::Document;
using Shared = std::shared_ptr<const Document>;

constexpr long long unnumbered = std::numeric_limits<long long>::max();

long long revision_of(const Document& document) {
  const std::string_view text = document.get(document.root(), At::revision);
  long long number = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
  return text.empty() || read.ec != std::errc() || read.ptr != text.data() + text.size() ? unnumbered : number;
}

bool is_fiche(const Document& document) {
  return document.root() != fiche::none && document.el(document.root()) == fiche::El::fiche;
}

/// The folder itself, and its subfolder of revisions.
class Search {
 public:
  explicit Search(const Document& fiche) : fiche_(fiche), own_(revision_of(fiche)) {}

  Shared run() {
    const std::string folder = folder_of(fiche_.source().path());
    const auto nothing = [](const std::string&, const std::string&) {};
    // Every fiche below is named, and those of other folders passed by unread.
    walk(folder, [&](const std::string& path) { return folder_of(path) != folder || look_at(path); }, nothing);
    const std::string kept = folder + "/" + revisions_folder;
    if (kind_of(kept) == PathKind::folder) walk(kept, [&](const std::string& path) { return look_at(path); }, nothing);
    return best_;
  }

 private:
  bool look_at(const std::string& path) {
    if (!is_fiche_name(path) || real_path(path) == real_path(fiche_.source().path())) return true;
    const auto source = read_file(path.starts_with("./") ? path.substr(2) : path);
    if (!source) return true;
    const Shared document = format::read(*source).document;
    if (document != nullptr && is_fiche(*document)) consider(document);
    return true;
  }

  void consider(const Shared& document) {
    const auto root = document->root();
    if (document->get(root, At::id) != fiche_.get(fiche_.root(), At::id)) return;
    if (document->get(root, At::state) != "released") return;
    const long long number = revision_of(*document);
    if (number >= own_ || (best_ != nullptr && number <= revision_of(*best_))) return;
    best_ = document;
  }

  const Document& fiche_;
  long long own_;
  Shared best_;
};

}  // namespace

base::Result<Shared> last_released(const Document& fiche) {
  if (Shared found = Search(fiche).run(); found != nullptr) return found;
  base::Finding refusal;
  refusal.rule = "no-released-revision";
  const std::string_view revision = fiche.get(fiche.root(), At::revision);
  const std::string folder = folder_of(fiche.source().path());
  const std::string kept = (folder == "." ? "" : folder + "/") + revisions_folder;
  refusal.message = "no released revision of \"" + std::string(fiche.get(fiche.root(), At::id)) + "\"" +
                    (revision.empty() ? "" : " below " + std::string(revision)) + " beside it or in " + kept;
  refusal.advice = "keep what is released in a folder \"" + std::string(revisions_folder) +
                   "\" beside the fiche, under any name, or name both: tamis compare OLD NEW";
  return refusal;
}

}  // namespace tamis::cli
