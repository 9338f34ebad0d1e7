#ifndef CORE_RULES_RULE_H
#define CORE_RULES_RULE_H

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/fiche.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/flow/ages.h"
#include "core/flow/flow.h"
#include "core/flow/states.h"
#include "core/rules/structure.h"

namespace tamis::rules {

struct Rule;
class Check;

/// Rules from elsewhere that are heard after those built in: a house's plugins (core/lua).
class MoreRules {
 public:
  virtual ~MoreRules() = default;
  virtual void run(Check& check) = 0;
};

/// What a rule sees, and where it says what it found.
class Check {
 public:
  Check(const fiche::Fiche& the_fiche, const fiche::Kitchen& the_kitchen, fiche::Library& the_library,
        const Structure& the_structure, const flow::Flow& the_flow, std::vector<base::Finding>& findings)
      : fiche(the_fiche), kitchen(the_kitchen), library(the_library), document(*the_fiche.document),
        structure(the_structure), flow(the_flow), findings_(findings) {}

  const fiche::Fiche& fiche;
  const fiche::Kitchen& kitchen;
  fiche::Library& library;
  const fiche::Document& document;
  const Structure& structure;
  const flow::Flow& flow;
  /// What becomes of the food, when the steps can be done, and how old what is taken can be: each worked out when a rule
  /// first asks for it.
  const flow::States& states() const;
  const flow::StepTimes& times() const;
  flow::Ages& ages() const;

  /// What several rules need and each would work out again: `make()` gives it to the first that asks, the others see the
  /// same. There is one of a type, so give the fact a type of its own; it may rest on the fiche alone, never on the rule.
  template <typename Fact, typename Make>
  const Fact& once(Make make) const {
    static constexpr char key = 0;
    for (const auto& [known, fact] : facts_)
      if (known == &key) return *static_cast<const Fact*>(fact.get());
    auto made = std::make_shared<const Fact>(make());
    facts_.emplace_back(&key, made);
    return *made;
  }

  /// The same of one step, or another node.
  template <typename Fact, typename Make>
  const Fact& once(fiche::Node of, Make make) const {
    struct ByNode {
      mutable std::unordered_map<fiche::Node, Fact> facts;
    };
    auto& facts = once<ByNode>([] { return ByNode(); }).facts;
    const auto known = facts.find(of);
    return known != facts.end() ? known->second : facts.emplace(of, make()).first->second;
  }

  /// Adds a finding of the rule at hand, with the rule's severity (or the kitchen's) and source, and gives it back
  /// for advice, related places and edits. Words as base::Finding asks.
  base::Finding& say(base::Span where, std::string message, std::string advice = {});

  /// Adds a finding that is no built-in rule's, as it is: rule, severity and source are the caller's.
  void add(base::Finding finding) { findings_.push_back(std::move(finding)); }

  /// Lifts a finding above its rule's usual severity because this case is worse; a severity that the kitchen has set
  /// stays as it is.
  void worsen(base::Finding& finding, base::Severity severity) const;

  /// An edit that sets the whole value of an attribute, or the own text of an element with text alone, escaped for
  /// the document's spelling.
  [[nodiscard]] base::Edit edit_value(fiche::Attr attribute, std::string_view text) const;
  [[nodiscard]] base::Edit edit_span(base::Span where, std::string_view text, bool in_attribute) const;

 private:
  friend std::vector<base::Finding> check(const fiche::Document&, const fiche::Kitchen&, fiche::Library&, MoreRules*);
  const Rule* rule_ = nullptr;
  base::Severity severity_ = base::Severity::error;
  bool severity_is_the_kitchens_ = false;
  std::vector<base::Finding>& findings_;
  mutable std::vector<std::pair<const char*, std::shared_ptr<const void>>> facts_;
  mutable std::optional<flow::Ages> ages_;
};

/// One rule: core/rules/<id with underscores>.cpp and a line in core/rules/rules.inc.
/// Examples are a whole file (starting "<fiche", "<kitchen", "<?", "<!" or "{"), or what stands in a component, which
/// example_document() wraps: in a draft, or, where it starts with the comment "in a released fiche", in a fiche that has
/// all that others need of it. The bad one must raise this rule and no other, the good one nothing at all.
struct Rule {
  std::string_view id;        ///< reads as "allow ID": what was found, not the cure
  base::Severity severity;
  std::string_view topic;     ///< "document", "measure", "balance", "order", "temperature", "safety", "sharing", "teaching",
                              ///< "labelling", "conversion", "scaling" (both said by core/change), "record" (said by
                              ///< core/record, whose examples are CSV), "plugin" (said by core/lua)
  std::string_view summary;   ///< one line
  std::string_view explanation;  ///< what, why it matters in the kitchen, when to leave it
  std::string_view bad;
  std::string_view good;
  std::string_view source;
  /// Which schema languages refuse the bad example: "rng xsd json", "" when only the check can.
  std::string_view schemas;
  /// What the kitchen file says where the examples are judged: "<means .../>", or "<kitchen altitude=.../>"; "" for a
  /// kitchen that says nothing.
  std::string_view kitchen = {};
  void (*run)(Check&);        ///< null: said by a reader (not-well-formed and the like)
};

std::span<const Rule* const> rules();
const Rule* rule_by_id(std::string_view id);       ///< null when there is none
std::string_view nearest_rule(std::string_view id);  ///< the id that was most likely meant; "" when none is near
std::string example_document(std::string_view example);
std::string example_kitchen(const Rule& rule);       ///< the kitchen file of its examples

/// Everything there is to say about a document that could be read, in file order. A pure function of its arguments.
/// A rule the kitchen has switched off does not run; error findings of the document rules stop nothing.
std::vector<base::Finding> check(const fiche::Document& document, const fiche::Kitchen& kitchen,
                                 fiche::Library& library, MoreRules* more = nullptr);

}  // namespace tamis::rules

#endif
