#ifndef CORE_FICHE_LIBRARY_H
#define CORE_FICHE_LIBRARY_H

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/fiche/document.h"

namespace tamis::fiche {

/// The other files a fiche may speak of. Checking is a function of bytes, kitchen and library; who opens files
/// implements this (core/format over a reader of core/cli; tests over a map).
class Library {
 public:
  virtual ~Library() = default;
  /// The document that `reference` ("../base/custard.fiche.xml", without "#part") names, seen from the file
  /// `from_path`. Refuses with rule
  ///   escaping-reference   it leaves the library's root, symlinks resolved
  ///   dangling-reference   there is no such file
  ///   or what the reader says of a file that cannot be read.
  /// The span of a refusal is empty. Documents are shared and read once.
  virtual base::Result<std::shared_ptr<const Document>> open(std::string_view from_path,
                                                             std::string_view reference) = 0;
  /// What open() takes, seen from that file, for each fiche of the library, itself too: in the order of their names,
  /// folder by folder, no more than most_listed. Empty where the library cannot be listed.
  virtual std::vector<std::string> list(std::string_view from_path);
  static constexpr std::size_t most_listed = 10'000;
};

/// A library with nothing in it: every reference dangles.
Library& empty_library();

}  // namespace tamis::fiche

#endif
