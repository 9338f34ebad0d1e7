#ifndef CORE_CLI_FILE_LIBRARY_H
#define CORE_CLI_FILE_LIBRARY_H

#include <list>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/library.h"
#include "core/fiche/pictures.h"

namespace tamis::cli {

/// The files under one folder, as fiches speak of them. References are relative to the file they stand in, with
/// percent signs decoded (RFC 3986); one that leaves the folder, by its dots or by a link, is refused.
class FileLibrary final : public fiche::Library, public fiche::Pictures {
 public:
  explicit FileLibrary(const std::string& root);
  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view from_path,
                                                            std::string_view reference) override;
  base::Result<std::string> picture(std::string_view from_path, std::string_view reference) override;
  std::vector<std::string> list(std::string_view from_path) override;

 private:
  /// The real path of what a reference names, or why there is none.
  [[nodiscard]] base::Result<std::string> locate(std::string_view from_path, std::string_view reference) const;
  base::Result<std::shared_ptr<const fiche::Document>> read(const std::string& real);
  [[nodiscard]] bool holds(std::string_view real) const;

  using Entry = std::pair<std::string, std::shared_ptr<const fiche::Document>>;
  std::string root_;         // real path
  std::vector<std::string> listed_;  // real paths of its fiches, once asked for
  bool is_listed_ = false;
  std::list<Entry> recent_;  // most recently used first
  std::map<std::string, std::list<Entry>::iterator, std::less<>> by_path_;
};

/// A real path as it is shown: relative where it lies under the folder the run was started in.
std::string shown_path(const std::string& real);

/// Dots taken out of an absolute path without asking the disk: "/a/./b/../c" gives "/a/c".
std::string without_dots(std::string_view path);

}  // namespace tamis::cli

#endif
