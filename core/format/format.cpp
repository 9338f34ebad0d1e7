#include "core/format/format.h"

#include "core/format/encoding.h"
#include "core/format/json_writer.h"
#include "core/format/layout.h"
#include "core/format/xml_writer.h"

namespace tamis::format {

fiche::Spelling spelling_of(const base::Source& source) {
  if (source.path() != "-") {
    return source.path().ends_with(".json") ? fiche::Spelling::json : fiche::Spelling::xml;
  }
  std::string_view bytes = source.bytes();
  if (bytes.starts_with(utf8_mark)) bytes.remove_prefix(utf8_mark.size());
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && bytes[first] == '{' ? fiche::Spelling::json : fiche::Spelling::xml;
}

Read read(std::shared_ptr<const base::Source> source) {
  return spelling_of(*source) == fiche::Spelling::json ? read_json(std::move(source))
                                                       : read_xml(std::move(source));
}

std::string write(const fiche::Document& document) {
  return document.spelling() == fiche::Spelling::json ? write_json(document) : write_xml(document);
}

std::string lay_out(const fiche::Document& document, fiche::Spelling spelling) {
  return spelling == fiche::Spelling::json ? JsonLayout(document).whole() : XmlLayout(document).whole();
}

}  // namespace tamis::format
