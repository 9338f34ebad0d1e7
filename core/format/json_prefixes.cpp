#include <algorithm>
#include <set>
#include <tuple>

#include "core/format/json_reader.h"

// Prefixes, and the foreign XML that uses them. Members stand in any order, so a prefix may be declared behind its
// use: all this is known at the end only.

namespace tamis::format {
namespace {

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

}  // namespace

bool JsonReader::declare_prefixes() {
  for (fiche::Attr a = tree_.first_attribute(tree_.root()); a != fiche::none; a = tree_.next_attribute(a)) {
    const std::string_view name = tree_.attribute_name(a);
    if (!name.starts_with("xmlns:")) continue;
    PrefixFault fault = prefix_fault(name.substr(6), tree_.attribute_value(a));
    if (!fault.rule.empty()) {
      return fail(fault.rule, tree_.attribute_span(a), std::move(fault.message), std::move(fault.advice));
    }
    prefixes_.push_back({std::string(name.substr(6)), std::string(tree_.attribute_value(a))});
  }
  return true;
}

bool JsonReader::check_prefixes() {
  std::set<std::tuple<fiche::Node, std::string_view, std::string_view>> seen;
  for (const fiche::Attr a : prefixed_) {
    const std::string_view name = tree_.attribute_name(a);
    const std::string_view prefix = name.substr(0, name.find(':'));
    if (prefix == "xmlns") continue;
    const auto declared =
        std::find_if(prefixes_.begin(), prefixes_.end(), [&](const Prefix& p) { return p.name == prefix; });
    if (declared == prefixes_.end() && prefix != "xml") {
      return fail("undeclared-prefix", tree_.attribute_name_span(a),
                  "the prefix " + quoted(prefix) + " is not declared",
                  "write \"xmlns:" + std::string(prefix) + "\": \"...\" in the root element");
    }
    const std::string_view uri = prefix == "xml" ? xml_namespace : std::string_view(declared->uri);
    if (!seen.emplace(tree_.owner(a), uri, name.substr(prefix.size() + 1)).second) {
      return fail("duplicate-key", tree_.attribute_name_span(a), quoted(name) + " is given twice",
                  "keep one of the two");
    }
  }
  return true;
}

bool JsonReader::check_foreign() {
  for (const fiche::Node n : foreign_) {
    const std::string xml(tree_.value(n));
    std::vector<base::Finding> found;
    if (XmlReader(xml, nullptr, found).read_foreign(prefixes_)) continue;
    base::Finding finding = std::move(found.front());
    finding.where = tree_.text_span(n, finding.where.begin, finding.where.end);
    for (base::Related& related : finding.related) {
      related.where = tree_.text_span(n, related.where.begin, related.where.end);
    }
    finding.edits.clear();
    findings_.push_back(std::move(finding));
    return false;
  }
  return true;
}

bool JsonReader::finish() { return declare_prefixes() && check_prefixes() && check_foreign(); }

}  // namespace tamis::format
