#ifndef TESTS_FUZZ_READING_H
#define TESTS_FUZZ_READING_H

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

#include "core/format/format.h"

namespace tamis::fuzz {

/// Holds a promise; ends the run when it is broken.
inline void must(bool held, const char* promise, const std::string& text) {
  if (held) return;
  std::fprintf(stderr, "broken: %s\n%s\n", promise, text.c_str());
  std::abort();
}

inline format::Read read_as(const std::string& text, fiche::Spelling spelling) {
  auto source = std::make_shared<const base::Source>("fuzz", text);
  return spelling == fiche::Spelling::xml ? format::read_xml(std::move(source))
                                          : format::read_json(std::move(source));
}

/// Every promise of the readers, writers and layouts, on whatever bytes.
inline void check_reading(const std::string& text, fiche::Spelling spelling) {
  const format::Read read = read_as(text, spelling);
  if (read.document == nullptr) {
    must(!read.findings.empty(), "a refusal says why", text);
    for (const base::Finding& finding : read.findings) {
      must(finding.where.begin <= finding.where.end && finding.where.end <= text.size(),
           "its span lies in the file", text);
    }
    return;
  }
  must(format::write(*read.document) == text, "an unedited file is written back byte for byte", text);
  const std::string xml = format::lay_out(*read.document, fiche::Spelling::xml);
  const std::string json = format::lay_out(*read.document, fiche::Spelling::json);
  const format::Read from_xml = read_as(xml, fiche::Spelling::xml);
  const format::Read from_json = read_as(json, fiche::Spelling::json);
  must(from_xml.document != nullptr, "what was laid out can be read", xml);
  must(from_json.document != nullptr, "what was laid out can be read", json);
  must(same_meaning(*read.document, *from_xml.document), "laying out changes no meaning", xml);
  must(same_meaning(*read.document, *from_json.document), "laying out changes no meaning", json);
  must(format::lay_out(*from_xml.document, fiche::Spelling::xml) == xml, "laying out twice changes nothing", xml);
  must(format::lay_out(*from_json.document, fiche::Spelling::json) == json, "laying out twice changes nothing",
       json);
  must(format::lay_out(*from_json.document, fiche::Spelling::xml) == xml, "XML, JSON, XML gives the same bytes",
       json);

  // The same once more with everything touched.
  auto edited = read.document->clone();
  for (fiche::Node n = edited.first_child(edited.top()); n != fiche::none; n = edited.next(n)) {
    if (edited.kind(n) != fiche::NodeKind::element) continue;
    edited.set_attribute(n, fiche::At::id, "a<\"&\t");
    const fiche::Node first = edited.first_child(n);
    edited.set_text(edited.add_element(n, fiche::El::note, first), "b ]]> & c");
    (void)edited.add_element(n, fiche::El::use);
    if (first != fiche::none) edited.remove(first);
  }
  const std::string written = format::write(edited);
  const format::Read again = read_as(written, spelling);
  must(again.document != nullptr, "an edited document can be read", written);
  must(same_meaning(edited, *again.document), "an edited document means what the edits say", written);
}

}  // namespace tamis::fuzz

#endif
