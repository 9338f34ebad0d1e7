#include "core/cli/rule_pages.h"

#include <algorithm>
#include <memory>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/cli/folded.h"
#include "core/cli/json_text.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/format/format.h"
#include "core/lua/examples.h"

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

/// What the plugin's check says of its own.
std::vector<base::Finding> said_of(const KitchenPlugins::Offer& check) {
  const lua::Addition& addition = *check.addition;
  lua::TriedExample tried = lua::try_example(*check.files, *check.manifest, addition, addition.wrong);
  std::erase_if(tried.findings, [&addition](const base::Finding& finding) { return finding.rule != addition.id; });
  return std::move(tried.findings);
}

std::string said_text(const std::vector<base::Finding>& findings) {
  std::string out;
  for (const base::Finding& finding : findings) {
    out += "    says: " + folded(finding.message, 10) + "\n";
    if (!finding.advice.empty()) out += "        → " + folded(finding.advice, 10) + "\n";
  }
  return out;
}

std::string page_text(const RulePage& page, const std::vector<base::Finding>& said) {
  std::string out = page.id + " (" + std::string(base::severity_name(page.severity)) + ")\n  ";
  out += folded(page.summary, 2) + "\n\n";
  for (const std::string& paragraph : page.explanation) out += "  " + folded(paragraph, 2) + "\n\n";
  if (!page.kitchen.empty()) out += "  in a kitchen whose file says\n" + indented(example(page.kitchen), 6) + "\n";
  if (!page.bad.empty())
    out += "  wrong\n" + indented(example(page.bad), 6) + said_text(said) + "\n  right\n" +
           indented(example(page.good), 6) + "\n";
  return out + "  source: " + folded(page.source, 10, 10) + "\n";
}

/// How a kitchen file names the plugin with these settings.
std::string named(const std::string& id, const std::vector<std::pair<std::string, std::string>>& settings) {
  std::string out = "<plugin id=\"" + id + "\">\n";
  for (const auto& [name, value] : settings) out += "  <setting name=\"" + name + "\">" + value + "</setting>\n";
  return out + "</plugin>";
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

RulePage page_of(const rules::Rule& rule) {
  RulePage page;
  page.id = rule.id;
  page.severity = rule.severity;
  page.topic = rule.topic;
  page.summary = rule.summary;
  page.explanation = {std::string(rule.explanation)};
  page.kitchen = rule.kitchen;
  page.bad = rule.bad;
  page.good = rule.good;
  page.bad_document = rules::example_document(rule.bad);
  page.good_document = rules::example_document(rule.good);
  page.source = rule.source;
  page.schemas = rule.schemas;
  return page;
}

RulePage page_of(const KitchenPlugins::Offer& check) {
  const lua::Addition& addition = *check.addition;
  const lua::Manifest& manifest = *check.manifest;
  RulePage page;
  page.id = addition.id;
  page.severity = addition.severity;
  page.topic = "plugin " + manifest.id;
  page.summary = addition.summary;
  page.explanation = addition.notes;
  if (!check.of_kitchen)
    page.explanation.push_back("Heard where the kitchen file names the plugin: <plugin id=\"" + manifest.id + "\"/>.");
  if (!addition.settings.empty()) page.kitchen = named(manifest.id, addition.settings);
  page.bad = addition.wrong;
  page.good = addition.right;
  if (!page.bad.empty()) page.bad_document = lua::example_text(page.bad);
  if (!page.good.empty()) page.good_document = lua::example_text(page.good);
  page.source = "plugin " + manifest.id + " " + manifest.version + ", " + check.path;
  return page;
}

std::string rule_text(const rules::Rule& rule) { return page_text(page_of(rule), said_of(rule)); }

std::string rule_text(const KitchenPlugins::Offer& check) {
  return page_text(page_of(check), check.addition->wrong.empty() ? std::vector<base::Finding>{} : said_of(check));
}

std::string rules_json(const std::vector<RulePage>& wanted) {
  std::string out;
  {
    JsonList top(out, '{', '}');
    top.member("schema", "1");
    top.begin("rules");
    JsonList list(out, '[', ']', "\n");
    for (const RulePage& page : wanted) {
      list.begin();
      JsonList object(out, '{', '}');
      object.text("id", page.id);
      object.text("severity", base::severity_name(page.severity));
      object.text("topic", page.topic);
      object.text("summary", page.summary);
      std::string explanation;
      for (const std::string& paragraph : page.explanation) explanation += (explanation.empty() ? "" : "\n\n") + paragraph;
      object.text("explanation", explanation);
      object.text("bad", page.bad);
      object.text("good", page.good);
      object.text("kitchen", page.kitchen);
      object.text("bad_document", page.bad_document);
      object.text("good_document", page.good_document);
      object.text("source", page.source);
      object.member("schemas", schemas_list(page.schemas));
    }
  }
  return out + "\n";
}

}  // namespace tamis::cli
