#ifndef TESTS_FORMAT_READING_H
#define TESTS_FORMAT_READING_H

#include <memory>
#include <string>

#include "core/format/format.h"

namespace tamis::tests {

inline std::shared_ptr<const base::Source> source_of(std::string text, std::string path = "a.fiche.xml") {
  return std::make_shared<const base::Source>(std::move(path), std::move(text));
}

inline format::Read read_xml(std::string text) { return format::read_xml(source_of(std::move(text))); }
inline format::Read read_json(std::string text) {
  return format::read_json(source_of(std::move(text), "a.fiche.json"));
}

}  // namespace tamis::tests

#endif
