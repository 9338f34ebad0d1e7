#include <algorithm>

#include "core/rules/file_reference.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::Node;

struct Stop {
  const fiche::Document* document;
  Node component;
  friend bool operator==(const Stop&, const Stop&) = default;
};

/// Follows references from one component through the library, depth first, until it is met again.
class Chase {
 public:
  Chase(Check& check, Stop start) : check_(check), start_(start) {}

  /// The way back to the start that begins with this reference, in words; empty when there is none.
  std::vector<std::string> way_back(const fiche::Document& document, fiche::Attr from) {
    const FileReference reference = split_reference(document.attribute_value(from));
    const Target target = follow(document, reference.file, check_.library);
    if (target.document == nullptr) return {};
    if (target.held) held_.push_back(target.held);
    const fiche::Document& there = same_file(*target.document) ? check_.document : *target.document;
    for (const Node component : components_of(there)) {
      const bool meant = reference.part.empty() || there.get(component, fiche::At::id) == reference.part;
      if (!meant) continue;
      if (Stop{&there, component} == start_) return {name(start_)};
      std::vector<std::string> rest = beyond({&there, component});
      if (!rest.empty()) return rest;
    }
    return {};
  }

 private:
  std::vector<std::string> beyond(Stop stop) {
    if (std::find(seen_.begin(), seen_.end(), stop) != seen_.end()) return {};
    seen_.push_back(stop);
    for (const fiche::Attr from : references_in(*stop.document, stop.component)) {
      std::vector<std::string> rest = way_back(*stop.document, from);
      if (rest.empty()) continue;
      rest.insert(rest.begin(), name(stop));
      return rest;
    }
    return {};
  }

  /// The library reads the file at hand a second time; it is one file all the same.
  bool same_file(const fiche::Document& other) const {
    return &other == &check_.document || other.source().path() == check_.document.source().path() ||
           other.source().bytes() == check_.document.source().bytes();
  }

  static std::string name(Stop stop) {
    const std::string& path = stop.document->source().path();
    return path.substr(path.rfind('/') + 1) + "#" + std::string(stop.document->get(stop.component, fiche::At::id));
  }

  Check& check_;
  Stop start_;
  std::vector<Stop> seen_;
  std::vector<std::shared_ptr<const fiche::Document>> held_;
};

void run(Check& check) {
  if (references_in(check.document, check.structure).empty()) return;
  for (const Node component : components_of(check.document)) {
    for (const fiche::Attr from : references_in(check.document, component)) {
      Chase chase(check, {&check.document, component});
      const std::vector<std::string> way = chase.way_back(check.document, from);
      if (way.empty()) continue;
      std::string chain = way.back();
      for (const std::string& stop : way) chain += " → " + stop;
      check.say(check.document.value_span(from), "this component is made of itself: " + chain,
                "break the chain: one of these must be made from ingredients");
    }
  }
}

}  // namespace

/// A component that, through other files or its own, contains itself.
const Rule reference_cycle = {
    .id = "reference-cycle",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a component that is made of itself",
    .explanation = R"(A sauce made from a stock that is made from that sauce can never be started: no amount, no order
and no plan can be worked out.

A starter or a master stock that is fed from its own last batch is a result that comes back (result="…") or an
ingredient of its own, not a reference to the fiche that makes it.)",
    .bad = R"(    <ingredient from="#part">100 g</ingredient>)",
    .good = R"(    <ingredient food="cream-35">100 g</ingredient>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
