#ifndef TESTS_TALLY_TALLYING_H
#define TESTS_TALLY_TALLYING_H

#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <memory>
#include <string>

#include "core/fiche/library.h"
#include "core/flow/flow.h"
#include "core/format/format.h"
#include "core/tally/makeup.h"
#include "tests/shared_files.h"

namespace tamis::tests {

/// Texts by their names; else the files of the project's demo kitchen, as they speak of each other.
class TallyLibrary final : public fiche::Library {
 public:
  std::map<std::string, std::string> texts;

  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view from, std::string_view reference) override {
    const std::filesystem::path beside = std::filesystem::path(from).parent_path() / reference;
    const std::string path = beside.lexically_normal().generic_string();
    const auto text = texts.find(std::string(reference));
    const std::string bytes = text != texts.end() ? text->second : project_file(path);
    if (bytes.empty()) return base::Finding{};
    format::Read read = format::read(std::make_shared<const base::Source>(text != texts.end() ? text->first : path, bytes));
    if (!read.document) return base::Finding{};
    return std::shared_ptr<const fiche::Document>(read.document);
  }
};

inline fiche::Kitchen kitchen_from(const std::string& text) {
  format::Read read = format::read(std::make_shared<const base::Source>("kitchen.xml", text));
  REQUIRE(read.document);
  return fiche::read_kitchen(read.document);
}
inline fiche::Kitchen kitchen_with(const std::string& inner) {
  return kitchen_from("<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\">" + inner + "</kitchen>");
}
inline fiche::Kitchen demo_kitchen() { return kitchen_from(project_file("tests/kitchen/kitchen.xml")); }

/// A fiche, its flow and what it is made up of, kept together.
struct Tallying {
  fiche::Kitchen kitchen;
  TallyLibrary library;
  std::shared_ptr<fiche::Document> document;
  fiche::Fiche fiche;
  flow::Flow flow;
  tally::Makeup makeup;

  /// "milk 480/500, sugar ?": served of what is listed, in g; "(tin)" behind what is not of the food.
  [[nodiscard]] std::string entries() const {
    std::string out;
    for (const tally::Entry& one : makeup.entries) {
      out += (out.empty() ? "" : ", ") + one.name + " " + figure(one.served) + "/" + (one.listed ? figure(*one.listed) : "?");
      if (!one.counts) out += " not of the food";
      if (one.trace) out += " trace";
    }
    return out;
  }
  [[nodiscard]] std::string doubts() const {
    std::string out;
    for (const tally::Doubt& one : makeup.doubts) {
      out += (out.empty() ? "" : ", ") + std::string(tally::doubt_name(one.kind)) + (one.what.empty() ? "" : " " + one.what) + " " +
             figure(one.grams);
    }
    return out;
  }
  static std::string figure(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.6g", std::round(100 * value) / 100);
    return buffer;
  }
};

inline std::unique_ptr<Tallying> tally_of(const std::string& text, fiche::Kitchen kitchen = {}, TallyLibrary library = {},
                                          const std::string& name = "test.fiche.xml") {
  auto out = std::make_unique<Tallying>();
  out->kitchen = std::move(kitchen);
  out->library = std::move(library);
  format::Read read = format::read(std::make_shared<const base::Source>(name, text));
  for (const base::Finding& finding : read.findings) FAIL_CHECK(finding.message);
  REQUIRE(read.document);
  out->document = read.document;
  out->fiche = fiche::read_fiche(*out->document, out->kitchen);
  out->flow = flow::read_flow(out->fiche, out->library);
  out->makeup = tally::read_makeup(out->fiche, out->flow, out->library);
  return out;
}

/// A fiche of the demo kitchen: "desserts/damson-almond-tart".
inline std::unique_ptr<Tallying> demo_tally(const std::string& path) {
  const std::string file = "tests/kitchen/" + path + ".fiche.xml";
  return tally_of(project_file(file), demo_kitchen(), {}, file);
}

/// Components as given, in a fiche.
inline std::string tally_fiche(const std::string& inside) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\"><title>F</title>" + inside + "</fiche>";
}

}  // namespace tamis::tests

#endif
