#include "core/format/format.h"

#include "core/format/layout.h"
#include "core/format/xml_writer.h"

namespace tamis::format {

fiche::Spelling spelling_of(const base::Source& source) {
  if (source.path() != "-") {
    return source.path().ends_with(".json") ? fiche::Spelling::json : fiche::Spelling::xml;
  }
  const std::string& bytes = source.bytes();
  const std::size_t first = bytes.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  return first != std::string::npos && bytes[first] == '{' ? fiche::Spelling::json : fiche::Spelling::xml;
}

std::string write(const fiche::Document& document) {
  return write_xml(document);
}

std::string lay_out(const fiche::Document& document, fiche::Spelling) {
  return lay_out_xml(document);
}

Read read(std::shared_ptr<const base::Source> source) {
  return read_xml(std::move(source));
}

}  // namespace tamis::format
