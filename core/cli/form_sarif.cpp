#include <cstddef>
#include <functional>
#include <unordered_set>

#include "core/cli/form.h"
#include "core/cli/json_text.h"
#include "core/cli/output.h"
#include "core/cli/spool.h"
#include "core/rules/reference.h"
#include "core/rules/rule.h"

// SARIF 2.1.0 (OASIS Standard, 27 March 2020; the sections named below are its own). The rules stand first, so that a
// result can point at its rule by number while the files go through; the lists of files and of failures close it.

namespace tamis::cli {
namespace {

/// 3.11.5: a brace that is no placeholder is doubled.
std::string message_text(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    out += c;
    if (c == '{' || c == '}') out += c;
  }
  return out;
}

void add_message(JsonList& object, std::string_view name, std::string_view text) {
  std::string message;
  {
    JsonList inner(message, '{', '}');
    inner.text("text", message_text(text));
  }
  object.member(name, message);
}

/// 3.10: a URI reference (RFC 3986), relative to the folder the run was started in.
std::string uri_of(std::string_view path) {
  constexpr std::string_view hex = "0123456789ABCDEF";
  constexpr std::string_view plain = "-._~/!$&'()*+,;=@";
  while (path.starts_with("./") && path.size() > 2) path.remove_prefix(2);
  std::string out = path.starts_with('/') ? "file://" : "";
  for (const char c : path) {
    const auto byte = static_cast<unsigned char>(c);
    const bool alone = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    if (alone || plain.find(c) != std::string_view::npos) {
      out += c;
    } else {
      out += '%';
      out += hex[byte >> 4U];
      out += hex[byte & 15U];
    }
  }
  return out;
}

void add_location_of(JsonList& object, std::string_view name, const std::string& path) {
  object.member(name, "{\"uri\": " + json_string(uri_of(path)) + "}");
}

std::string region(base::Place begin, base::Place end) {
  std::string out;
  JsonList object(out, '{', '}');
  object.member("startLine", std::to_string(begin.line));
  object.member("startColumn", std::to_string(begin.column));
  object.member("endLine", std::to_string(end.line));
  object.member("endColumn", std::to_string(end.column));
  object.close();
  return out;
}

std::string region(const base::Source& source, base::Span where) {
  return region(source.place(where.begin), source.place(where.end));
}

std::string physical(const std::string& path, const std::string& in_region) {
  std::string out;
  JsonList object(out, '{', '}');
  add_location_of(object, "artifactLocation", path);
  if (!in_region.empty()) object.member("region", in_region);
  object.close();
  return out;
}

std::string related_location(const base::Source& source, const base::Related& related) {
  const bool here = related.path.empty();
  const std::string in_region = here ? region(source, related.where) : region(related.place, related.end);
  std::string out;
  JsonList object(out, '{', '}');
  object.member("physicalLocation", physical(here ? source.path() : related.path, in_region));
  add_message(object, "message", related.message);
  object.close();
  return out;
}

std::string replacement(const base::Source& source, const base::Edit& edit) {
  std::string out;
  JsonList object(out, '{', '}');
  object.member("deletedRegion", region(source, edit.where));
  object.member("insertedContent", "{\"text\": " + json_string(edit.text) + "}");
  object.close();
  return out;
}

template <class Items, class Spell>
std::string array_of(const Items& items, const Spell& spell) {
  std::string out;
  JsonList list(out, '[', ']');
  for (const auto& item : items) list.item(spell(item));
  list.close();
  return out;
}

std::string fix(const base::Source& source, const base::Finding& finding) {
  std::string change;
  {
    JsonList object(change, '{', '}');
    add_location_of(object, "artifactLocation", source.path());
    object.member("replacements",
                  array_of(finding.edits, [&](const base::Edit& edit) { return replacement(source, edit); }));
  }
  std::string out;
  JsonList object(out, '{', '}');
  add_message(object, "description", finding.advice);
  object.member("artifactChanges", "[" + change + "]");
  object.close();
  return out;
}

std::string_view level_of(base::Severity severity) {
  if (severity == base::Severity::error) return "error";
  return severity == base::Severity::warning ? "warning" : "note";
}

std::string result(const base::Source& source, const base::Finding& finding, std::ptrdiff_t number) {
  std::string out;
  JsonList object(out, '{', '}');
  object.text("ruleId", finding.rule);
  if (number >= 0) object.member("ruleIndex", std::to_string(number));
  object.text("level", level_of(finding.severity));
  add_message(object, "message", finding.message + (finding.advice.empty() ? "" : "; " + finding.advice));
  object.member("locations", "[{\"physicalLocation\": " +
                                 physical(source.path(), region(source, finding.where)) + "}]");
  if (!finding.related.empty())
    object.member("relatedLocations", array_of(finding.related, [&](const base::Related& related) {
                    return related_location(source, related);
                  }));
  if (!finding.edits.empty()) object.member("fixes", "[" + fix(source, finding) + "]");
  object.close();
  return out;
}

std::string explanation_of(const RulePage& rule) {
  std::string out;
  for (const std::string& paragraph : rule.explanation) out += (out.empty() ? "" : "\n\n") + paragraph;
  return out.empty() ? rule.summary : out;
}

std::string help_of(const RulePage& rule) {
  std::string out = explanation_of(rule);
  if (!rule.bad.empty())
    out += "\n\nWrong:\n" + rules::shown_example(rule.bad) + "\n\nRight:\n" + rules::shown_example(rule.good);
  return out + "\n\nSource: " + rule.source;
}

std::string rule_object(const RulePage& rule) {
  std::string out;
  JsonList object(out, '{', '}');
  object.text("id", rule.id);
  add_message(object, "shortDescription", rule.summary);
  add_message(object, "fullDescription", explanation_of(rule));
  add_message(object, "help", help_of(rule));
  object.member("defaultConfiguration", "{\"level\": " + json_string(level_of(rule.severity)) + "}");
  object.member("properties", "{\"tags\": [" + json_string(rule.topic) + "]}");
  object.close();
  return out;
}

std::string notification(const std::string& path, const std::string& why) {
  std::string out;
  JsonList object(out, '{', '}');
  object.text("level", "error");
  add_message(object, "message", path + ": " + why);
  object.member("locations", "[{\"physicalLocation\": " + physical(path, "") + "}]");
  object.close();
  return out;
}

std::string artifact(const std::string& path) {
  std::string out;
  JsonList object(out, '{', '}');
  add_location_of(object, "location", path);
  object.text("encoding", "UTF-8");
  object.text("mimeType", path.ends_with(".json") ? "application/json" : "application/xml");
  object.member("roles", "[\"analysisTarget\"]");
  object.close();
  return out;
}

/// The items of an array as they come, a line each.
void add_line(Spool& lines, const std::string& item) { lines.add((lines.empty() ? "\n" : ",\n") + item); }

class SarifForm final : public Form {
 public:
  explicit SarifForm(std::vector<RulePage> plugin_checks) : plugin_checks_(std::move(plugin_checks)) {}

  [[nodiscard]] std::string file(const base::Source& source,
                                 const std::vector<base::Finding>& findings) const override {
    std::string out;
    for (const base::Finding& finding : findings) {
      if (!out.empty()) out += ",\n";
      out += result(source, finding, number_of(finding.rule));
    }
    return out;
  }

  [[nodiscard]] std::string start() const override {
    std::string out =
        "{\"$schema\": \"https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json\",\n"
        "\"version\": \"2.1.0\", \"runs\": [{\"tool\": {\"driver\": {\"name\": \"tamis\", \"version\": \"" TAMIS_VERSION
        "\", \"semanticVersion\": \"" TAMIS_VERSION "\", \"rules\": [";
    for (const rules::Rule* rule : rules::rules())
      out += (rule == rules::rules().front() ? "\n" : ",\n") + rule_object(page_of(*rule));
    for (const RulePage& check : plugin_checks_) out += ",\n" + rule_object(check);
    return out + "]}},\n\"columnKind\": \"unicodeCodePoints\", "
                 "\"newlineSequences\": [\"\\r\\n\", \"\\n\", \"\\r\"],\n\"results\": [";
  }

  [[nodiscard]] std::string_view before(bool first) const override { return first ? "\n" : ",\n"; }

  void done(const std::string& path, const std::string& why) override {
    if (!why.empty())
      add_line(failures_, notification(path, why));
    else if (listed_.insert(std::hash<std::string>{}(uri_of(path))).second)
      add_line(artifacts_, artifact(path));
  }

  void end(const Totals& totals, Exit exit) override {
    print("],\n\"artifacts\": [");
    artifacts_.print_out();
    print("],\n\"invocations\": [{\"executionSuccessful\": " + std::string(totals.failed == 0 ? "true" : "false") +
          ", \"exitCode\": " + std::to_string(static_cast<int>(exit)) + ", \"toolExecutionNotifications\": [");
    failures_.print_out();
    print("]}]}]}\n");
  }

 private:
  /// Its number among the rules that the report lists; -1 for one that is not there (of a plugin of another kitchen).
  [[nodiscard]] std::ptrdiff_t number_of(std::string_view rule) const {
    std::ptrdiff_t number = 0;
    for (const rules::Rule* one : rules::rules()) {
      if (one->id == rule) return number;
      ++number;
    }
    for (const RulePage& one : plugin_checks_) {
      if (one.id == rule) return number;
      ++number;
    }
    return -1;
  }

  std::vector<RulePage> plugin_checks_;
  Spool artifacts_;
  std::unordered_set<std::size_t> listed_;  // 3.14.15: no file twice; hashes, for they are small
  Spool failures_;
};

}  // namespace

std::unique_ptr<Form> sarif_form(std::vector<RulePage> plugin_checks) {
  return std::make_unique<SarifForm>(std::move(plugin_checks));
}

}  // namespace tamis::cli
