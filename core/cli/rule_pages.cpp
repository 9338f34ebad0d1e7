#include "core/cli/rule_pages.h"

#include <algorithm>
#include <memory>
#include <vector>

#include "core/base/finding.h"
#include "core/cli/folded.h"
#include "core/cli/json_text.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

std::vector<std::string_view> topics() {
  std::vector<std::string_view> found;
  for (const rules::Rule* rule : rules::rules())
    if (std::find(found.begin(), found.end(), rule->topic) == found.end()) found.push_back(rule->topic);
  return found;
}

std::string heading(std::string_view topic) {
  std::string out(topic);
  if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
  return out;
}

/// The kitchen in which the rule's examples stand.
fiche::Kitchen kitchen_of(const rules::Rule& rule) {
  format::Read read = format::read(std::make_shared<base::Source>("kitchen.xml", rules::example_kitchen(rule)));
  return read.document == nullptr ? fiche::Kitchen{} : fiche::read_kitchen(read.document);
}

/// What the check says of the rule's wrong example.
std::vector<base::Finding> said_of(const rules::Rule& rule) {
  const auto source = std::make_shared<base::Source>(
      rule.bad.starts_with("{") ? "example.fiche.json" : "example.fiche.xml", rules::example_document(rule.bad));
  format::Read read = format::read(source);
  std::vector<base::Finding> findings = std::move(read.findings);
  if (read.document != nullptr) {
    const fiche::Kitchen kitchen = kitchen_of(rule);
    for (base::Finding& finding : rules::check(*read.document, kitchen, fiche::empty_library()))
      findings.push_back(std::move(finding));
  }
  std::erase_if(findings, [&rule](const base::Finding& finding) { return finding.rule != rule.id; });
  return findings;
}

/// An example without the blank lines around it and the indentation all its lines share.
std::string example(std::string_view text) {
  while (text.starts_with('\n')) text.remove_prefix(1);
  while (text.ends_with('\n') || text.ends_with(' ')) text.remove_suffix(1);
  std::size_t shared = text.size();
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::size_t word = text.find_first_not_of(' ', at);
    if (word < end) shared = std::min(shared, word - at);
    at = end + 1;
  }
  std::string out;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    if (end > at + shared) out += text.substr(at + shared, end - at - shared);
    out += '\n';
    at = end + 1;
  }
  return out;
}

std::string said_text(const rules::Rule& rule) {
  std::string out;
  for (const base::Finding& finding : said_of(rule)) {
    out += "    says: " + folded(finding.message, 10) + "\n";
    if (!finding.advice.empty()) out += "        → " + folded(finding.advice, 10) + "\n";
  }
  return out;
}

std::string schemas_list(std::string_view names) {
  std::string out;
  JsonList list(out, '[', ']');
  while (!names.empty()) {
    const std::size_t space = std::min(names.find(' '), names.size());
    if (space > 0) list.item(json_string(names.substr(0, space)));
    names.remove_prefix(std::min(space + 1, names.size()));
  }
  return out;
}

}  // namespace

std::string rule_list(const std::vector<KitchenPlugins::Offer>& plugin_checks) {
  std::string out;
  for (const std::string_view topic : topics()) {
    out += (out.empty() ? "" : "\n") + heading(topic) + "\n";
    std::vector<Row> rows;
    for (const rules::Rule* rule : rules::rules())
      if (rule->topic == topic) rows.push_back({std::string(rule->id), std::string(rule->summary)});
    out += two_columns(rows);
  }
  for (std::size_t i = 0; i < plugin_checks.size();) {
    const lua::Manifest* manifest = plugin_checks[i].manifest;
    std::vector<Row> rows;
    const bool heard = plugin_checks[i].of_kitchen;
    for (; i < plugin_checks.size() && plugin_checks[i].manifest == manifest; ++i)
      rows.push_back({plugin_checks[i].addition->id, plugin_checks[i].addition->summary});
    out += "\nPlugin " + manifest->id + (heard ? "\n" : " (heard where kitchen.xml names it)\n") + two_columns(rows);
  }
  return out + "\n\"tamis explain RULE\" tells more about one of them.\n";
}

std::string plugin_check_text(const KitchenPlugins::Offer& check) {
  const lua::Addition& addition = *check.addition;
  std::string out = addition.id + " (" + std::string(base::severity_name(addition.severity)) + ")\n  " +
                    folded(addition.summary, 2) + "\n\n";
  for (const std::string& note : addition.notes) out += "  " + folded(note, 2) + "\n\n";
  if (!check.of_kitchen) out += "  " + folded("Heard where the kitchen file names the plugin: <plugin id=\"" + check.manifest->id + "\"/>.", 2) + "\n\n";
  return out + "  source: plugin " + check.manifest->id + " " + check.manifest->version + ", " + check.path + "\n";
}

std::string rule_text(const rules::Rule& rule) {
  std::string out = std::string(rule.id) + " (" + std::string(base::severity_name(rule.severity)) + ")\n  " +
                    folded(rule.summary, 2) + "\n\n";
  out += "  " + folded(rule.explanation, 2) + "\n\n";
  if (!rule.kitchen.empty()) out += "  in a kitchen whose file says\n" + indented(example(rule.kitchen), 6) + "\n";
  out += "  wrong\n" + indented(example(rule.bad), 6) + said_text(rule);
  out += "\n  right\n" + indented(example(rule.good), 6);
  return out + "\n  source: " + folded(rule.source, 10, 10) + "\n";
}

std::string rules_json(std::span<const rules::Rule* const> wanted) {
  std::string out;
  {
    JsonList top(out, '{', '}');
    top.member("schema", "1");
    top.begin("rules");
    JsonList list(out, '[', ']', "\n");
    for (const rules::Rule* rule : wanted) {
      list.begin();
      JsonList object(out, '{', '}');
      object.text("id", rule->id);
      object.text("severity", base::severity_name(rule->severity));
      object.text("topic", rule->topic);
      object.text("summary", rule->summary);
      object.text("explanation", rule->explanation);
      object.text("bad", rule->bad);
      object.text("good", rule->good);
      object.text("kitchen", rule->kitchen);
      object.text("bad_document", rules::example_document(rule->bad));
      object.text("good_document", rules::example_document(rule->good));
      object.text("source", rule->source);
      object.member("schemas", schemas_list(rule->schemas));
    }
  }
  return out + "\n";
}

}  // namespace tamis::cli
