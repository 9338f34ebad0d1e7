#ifndef TESTS_FICHE_READ_H
#define TESTS_FICHE_READ_H

#include <catch2/catch.hpp>
#include <memory>
#include <string>

#include "core/format/format.h"

namespace tamis::tests {

/// A document from XML in the test itself; the test fails when it cannot be read.
inline std::shared_ptr<fiche::Document> document_of(std::string xml, std::string path = "test.fiche.xml") {
  auto read = format::read_xml(std::make_shared<base::Source>(std::move(path), std::move(xml)));
  for (const base::Finding& finding : read.findings) FAIL_CHECK(finding.message);
  REQUIRE(read.document);
  return read.document;
}

/// A fiche with this inside its one component.
inline std::string fiche_with(const std::string& inside, const std::string& attributes = "lang=\"en\" units=\"us\"") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" " + attributes +
         "><title>Test</title><component id=\"c\" title=\"C\">" + inside + "</component></fiche>";
}

}  // namespace tamis::tests

#endif
