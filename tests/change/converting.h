#ifndef TESTS_CHANGE_CONVERTING_H
#define TESTS_CHANGE_CONVERTING_H

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/base/utf8.h"
#include "core/change/convert.h"
#include "core/fiche/kitchen.h"
#include "core/format/format.h"

namespace tamis::tests {

using change::ConvertWish;
using By = ConvertWish::By;
using measure::System;

inline std::shared_ptr<fiche::Document> document_of(const std::string& xml) {
  auto read = format::read_xml(std::make_shared<base::Source>("test.fiche.xml", xml));
  CAPTURE(xml);
  REQUIRE(read.document != nullptr);
  return read.document;
}

inline fiche::Kitchen kitchen_of(const std::string& xml) { return fiche::read_kitchen(document_of(xml)); }

/// A fiche around what stands in its one component. `root` is what else the root element says: units="us".
inline std::string fiche_around(const std::string& inside, const std::string& root = "", const std::string& lang = "en") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"" + lang + "\"" + (root.empty() ? "" : " " + root) +
         "><title>T</title><component id=\"c\" title=\"C\">\n" + inside + "\n</component></fiche>";
}

struct Result {
  std::string xml;
  std::vector<base::Finding> findings;
  std::optional<base::Finding> misread = {};
  [[nodiscard]] const base::Finding* finding(std::string_view rule) const {
    for (const base::Finding& one : findings) {
      if (one.rule == rule) return &one;
    }
    return nullptr;
  }
};

inline Result converted(const std::string& xml, const ConvertWish& wish, const fiche::Kitchen& kitchen = {}) {
  const auto document = document_of(xml);
  change::Converted made = change::convert(*document, kitchen, wish);
  return {format::write(made.document), std::move(made.findings)};
}

inline ConvertWish wish(System units, By by = By::as_written) { return {units, by, "", ""}; }

/// Where people may not break a line in a figure, as the writer has it.
inline std::string with_spaces(std::string text) {
  for (const std::string_view space : {"\u00A0", "\u202F"}) {
    for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space)) {
      text.replace(at, space.size(), " ");
    }
  }
  return text;
}

/// What stands in the component after a conversion, no-break spaces as spaces.
inline std::string inside(const Result& result) {
  const std::string xml = with_spaces(result.xml);
  const std::size_t begin = xml.find("title=\"C\">");
  const std::size_t end = xml.rfind("</component>");
  if (begin == std::string::npos || end == std::string::npos) return xml;
  return std::string(base::trimmed(std::string_view(xml).substr(begin + 10, end - begin - 10)));
}

}  // namespace tamis::tests

#endif
