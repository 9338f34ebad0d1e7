#ifndef CORE_FORMAT_FORMAT_H
#define CORE_FORMAT_FORMAT_H

#include <memory>
#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/fiche/document.h"

namespace tamis::format {

/// What reading gives: a tree, or the findings that say why there is none (severity error, at most a few: reading
/// stops at the first place where a file is not well-formed).
struct Read {
  std::shared_ptr<fiche::Document> document;  ///< null when the file could not be read
  std::vector<base::Finding> findings;
};

/// Limits of reading. A file past one is refused with a finding that names the limit.
inline constexpr std::size_t most_bytes = std::size_t{64} << 20U;
inline constexpr std::size_t most_depth = 256;
inline constexpr std::size_t most_name_bytes = 256;
inline constexpr std::size_t most_attributes = 256;

/// The spelling a path's ending names (.json: JSON; all else XML), or, for "-", the first byte that is no space.
fiche::Spelling spelling_of(const base::Source& source);

Read read_xml(std::shared_ptr<const base::Source> source);
Read read_json(std::shared_ptr<const base::Source> source);
Read read(std::shared_ptr<const base::Source> source);  ///< by spelling_of

/// The document in its own spelling: what no edit touched is put back byte for byte.
std::string write(const fiche::Document& document);

/// The document laid out afresh, in either spelling (schemas/README.md, "Layout"). Idempotent; never changes
/// meaning; comments, instructions and foreign XML stay.
std::string lay_out(const fiche::Document& document, fiche::Spelling spelling);

/// A text as it must stand inside an attribute value or text of that spelling.
std::string escaped(std::string_view text, fiche::Spelling spelling, bool attribute);

}  // namespace tamis::format

#endif
