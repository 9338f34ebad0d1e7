#include "core/cli/surroundings.h"

#include "core/cli/files.h"
#include "core/cli/plugin_files.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

std::shared_ptr<const Around> nothing_around() {
  Around around;
  around.kitchen = std::make_shared<const fiche::Kitchen>();
  return std::make_shared<const Around>(std::move(around));
}

std::string first_fault(const base::Source& source, const format::Read& read) {
  if (read.findings.empty()) return "it is no document";
  const base::Finding& finding = read.findings.front();
  const base::Place place = source.place(finding.where.begin);
  return "line " + std::to_string(place.line) + ", column " + std::to_string(place.column) + ": " +
         finding.message;
}

/// The foods, meanings and verbs of the plugins that the kitchen file names. What cannot be read is said when they are loaded.
void add_of_plugins(fiche::Kitchen& kitchen) {
  const fiche::Document& document = *kitchen.document;
  for (fiche::Node n = document.first_child(document.root()); n != fiche::none; n = document.next(n)) {
    if (document.el(n) != fiche::El::plugin) continue;
    const std::string folder = folder_of_plugin(document, n);
    const auto source = read_file(folder + "/plugin.xml");
    if (folder.empty() || !source) continue;
    const format::Read read = format::read(*source);
    if (read.document != nullptr && read.document->el(read.document->root()) == fiche::El::manifest)
      fiche::add_to_kitchen(kitchen, *read.document);
  }
}

Around read_around(const std::string& path) {
  Around around;
  around.kitchen = std::make_shared<const fiche::Kitchen>();
  around.kitchen_path = path;
  around.root = folder_of(path);
  const auto source = read_file(path);
  if (!source) {
    around.fault = source.fault().message;
    return around;
  }
  const format::Read read = format::read(*source);
  if (read.document == nullptr) {
    around.fault = first_fault(**source, read);
    return around;
  }
  if (read.document->el(read.document->root()) != fiche::El::kitchen) {
    around.fault = "it is no kitchen file: its first element is not <kitchen>";
    return around;
  }
  fiche::Kitchen kitchen = fiche::read_kitchen(read.document);
  add_of_plugins(kitchen);
  around.kitchen = std::make_shared<const fiche::Kitchen>(std::move(kitchen));
  const std::string& library = around.kitchen->library_root;
  if (!library.empty()) around.root = library.starts_with('/') ? library : around.root + "/" + library;
  return around;
}

}  // namespace

const Around& Surroundings::of(const std::string& path) {
  const std::string folder = folder_of(path);
  auto& kept = by_folder_[folder];
  if (kept == nullptr) kept = named_.empty() ? of_folder(real_path(folder)) : of_kitchen(named_);
  return *kept;
}

std::shared_ptr<const Around> Surroundings::of_folder(const std::string& real_folder) {
  for (std::string folder = real_folder; !folder.empty(); folder = folder_of(folder)) {
    const std::string path = (folder == "/" ? "" : folder) + "/kitchen.xml";
    if (kind_of(path) == PathKind::file) return of_kitchen(shown_path(path));
    if (folder == "/") break;
  }
  return of_kitchen("");
}

std::shared_ptr<const Around> Surroundings::of_kitchen(const std::string& path) {
  auto& kept = by_kitchen_[path];
  if (kept == nullptr) kept = path.empty() ? nothing_around() : std::make_shared<const Around>(read_around(path));
  return kept;
}

KitchenPlugins& Surroundings::plugins(const std::string& path) {
  const Around& around = of(path);
  auto& kept = plugins_[around.kitchen.get()];
  if (kept == nullptr) kept = std::make_unique<KitchenPlugins>(around.kitchen);
  kept->allow(time_);
  kept->leave_out(left_out_);
  return *kept;
}

fiche::Library& Surroundings::library(const std::string& path) {
  const Around& around = of(path);
  const std::string root = around.root.empty() ? folder_of(path) : around.root;
  if (library_ == nullptr || root != root_) {
    library_ = std::make_unique<FileLibrary>(root);
    root_ = root;
  }
  return *library_;
}

}  // namespace tamis::cli
