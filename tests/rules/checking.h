#ifndef TESTS_RULES_CHECKING_H
#define TESTS_RULES_CHECKING_H

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/base/source.h"
#include "core/fiche/library.h"
#include "core/format/format.h"
#include "core/rules/rule.h"

namespace tamis::tests {

/// A library of texts by their names.
class TextLibrary final : public fiche::Library {
 public:
  std::map<std::string, std::string> texts;

  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view, std::string_view reference) override {
    const std::string name(reference);
    if (name.starts_with("../..")) return refusal("escaping-reference", name);
    if (const auto known = read_.find(name); known != read_.end()) return known->second;
    const auto text = texts.find(name);
    if (text == texts.end()) return refusal("dangling-reference", "there is no file \"" + name + "\"");
    format::Read read = format::read(std::make_shared<const base::Source>(name, text->second));
    if (!read.document) return read.findings.front();
    return read_.emplace(name, read.document).first->second;
  }

 private:
  static base::Finding refusal(std::string rule, std::string message) {
    base::Finding made;
    made.rule = std::move(rule);
    made.message = std::move(message);
    return made;
  }
  std::map<std::string, std::shared_ptr<const fiche::Document>> read_;
};

/// Everything the reader and the check say about a text, in order.
struct Checked {
  std::shared_ptr<const base::Source> source;
  std::vector<base::Finding> findings;

  /// "rule" of each, with a space between.
  std::string rules() const {
    std::string out;
    for (const base::Finding& finding : findings) out += (out.empty() ? "" : " ") + finding.rule;
    return out;
  }
  /// "line:column rule: message" of each, a line each.
  std::string lines() const {
    std::string out;
    for (const base::Finding& finding : findings) {
      const base::Place place = source->place(finding.where.begin);
      out += std::to_string(place.line) + ":" + std::to_string(place.column) + " " + finding.rule + ": " +
             finding.message + "\n";
    }
    return out;
  }
  std::string marked(std::size_t i = 0) const { return std::string(source->slice(findings.at(i).where)); }
};

inline Checked check_text(const std::string& text, const fiche::Kitchen& kitchen = {},
                          fiche::Library& library = fiche::empty_library(), const std::string& name = "example.fiche.xml") {
  Checked out;
  const bool json = text.starts_with("{") && !name.ends_with(".json");
  out.source = std::make_shared<const base::Source>(json ? "example.fiche.json" : name, text);
  format::Read read = format::read(out.source);
  out.findings = std::move(read.findings);
  if (!read.document) return out;
  for (base::Finding& finding : rules::check(*read.document, kitchen, library)) out.findings.push_back(std::move(finding));
  return out;
}

/// What stands in a component, checked inside the usual fiche around it; its first line is line 4.
inline Checked check_part(const std::string& part, const fiche::Kitchen& kitchen = {},
                          fiche::Library& library = fiche::empty_library()) {
  return check_text(rules::example_document(part), kitchen, library);
}

inline fiche::Kitchen kitchen_of(const std::string& inner) {
  const std::string text = "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\">" + inner + "</kitchen>";
  format::Read read = format::read(std::make_shared<const base::Source>("kitchen.xml", text));
  return read.document ? fiche::read_kitchen(read.document) : fiche::Kitchen{};
}

/// The text with a finding's edits made.
inline std::string mended(const Checked& checked, std::size_t i = 0) {
  std::string out = checked.source->bytes();
  const auto& edits = checked.findings.at(i).edits;
  for (auto edit = edits.rbegin(); edit != edits.rend(); ++edit) {
    out.replace(edit->where.begin, edit->where.end - edit->where.begin, edit->text);
  }
  return out;
}

}  // namespace tamis::tests

#endif
