#ifndef TESTS_FLOW_FLOWING_H
#define TESTS_FLOW_FLOWING_H

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "core/fiche/library.h"
#include "core/flow/flow.h"
#include "core/format/format.h"

namespace tamis::tests {

/// A library of texts by their names.
class FlowLibrary final : public fiche::Library {
 public:
  std::map<std::string, std::string> texts;
  int opened = 0;

  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view, std::string_view reference) override {
    ++opened;
    const auto text = texts.find(std::string(reference));
    if (text == texts.end()) return base::Finding{};
    format::Read read = format::read(std::make_shared<const base::Source>(text->first, text->second));
    if (!read.document) return base::Finding{};
    return std::shared_ptr<const fiche::Document>(read.document);
  }
};

/// A fiche and its flow, kept together.
struct Flowing {
  fiche::Kitchen kitchen;
  std::shared_ptr<fiche::Document> document;
  fiche::Fiche fiche;
  flow::Flow flow;
};

inline std::unique_ptr<Flowing> flow_of(const std::string& text, fiche::Library& library = fiche::empty_library(),
                                        const std::string& name = "test.fiche.xml") {
  auto out = std::make_unique<Flowing>();
  format::Read read = format::read(std::make_shared<const base::Source>(name, text));
  for (const base::Finding& finding : read.findings) FAIL_CHECK(finding.message);
  REQUIRE(read.document);
  out->document = read.document;
  out->fiche = fiche::read_fiche(*out->document, out->kitchen);
  out->flow = flow::read_flow(out->fiche, library);
  return out;
}

/// Components as given, in a fiche.
inline std::string fiche_of(const std::string& inside) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\"><title>F</title>" + inside + "</fiche>";
}
/// What stands in its one component.
inline std::string component_of(const std::string& inside) {
  return fiche_of("<component id=\"c\" title=\"C\">" + inside + "</component>");
}

inline std::string grams_text(const std::optional<flow::Grams>& grams) {
  if (!grams) return "?";
  char buffer[64];
  if (std::abs(grams->high - grams->low) < 0.005) {
    std::snprintf(buffer, sizeof buffer, "%.6g", std::round(100 * grams->middle()) / 100);
  } else {
    std::snprintf(buffer, sizeof buffer, "%.6g-%.6g", std::round(100 * grams->low) / 100,
                  std::round(100 * grams->high) / 100);
  }
  return buffer;
}

inline std::string thing_text(const Flowing& flowing, int index) {
  const flow::Thing& thing = flowing.flow.things.at(static_cast<std::size_t>(index));
  std::string out(thing.id.empty() ? "·" : thing.id);
  if (thing.kind == flow::Thing::Kind::result && thing.was >= 0) out += "'";
  return out;
}

/// "0: eggs sugar > foam; 1<0: +foam flour > batter" : a step, < the one it goes on from, what it takes (+ carried,
/// ~ assumed, / instead of another), > what it gives, | the steps it waits for where they are more than that one.
inline std::string graph_text(const Flowing& flowing) {
  std::string out;
  for (const flow::Step& step : flowing.flow.steps) {
    out += (out.empty() ? "" : "; ") + std::to_string(step.index);
    if (step.before >= 0) out += "<" + std::to_string(step.before);
    out += ":";
    if (step.aside) out += " aside";
    for (const int index : step.takes) {
      const flow::Use& use = flowing.flow.uses.at(static_cast<std::size_t>(index));
      const char* how = use.how == flow::Use::How::carried ? "+" : use.how == flow::Use::How::assumed ? "~" : "";
      out += std::string(" ") + (use.instead ? "/" : "") + how + thing_text(flowing, use.thing);
      if (use.take == flow::Use::Take::unstated) out += "?";
    }
    if (!step.gives.empty()) out += " >";
    for (const int thing : step.gives) out += " " + thing_text(flowing, thing);
    const bool alone = step.waits_for.empty() || (step.waits_for.size() == 1 && step.waits_for.front() == step.before);
    if (!alone) out += " |";
    if (!alone) {
      for (const int earlier : step.waits_for) out += " " + std::to_string(earlier);
    }
  }
  return out;
}

}  // namespace tamis::tests

#endif
