#include "core/rules/reference.h"

#include <algorithm>
#include <array>
#include <cstdio>

#include "core/base/utf8.h"

namespace tamis::rules {
namespace {

std::string code(std::string_view example) {
  const bool csv = example.starts_with("time,") || example.starts_with("part,");
  const std::string_view language = example.starts_with("{") ? "json" : csv ? "csv" : "xml";
  return "```" + std::string(language) + "\n" + shown_example(example) + "\n```\n";
}

std::string who_refuses(const Rule& rule) {
  if (rule.topic == "record") return "No schema is for logs";
  if (rule.schemas.empty()) return "No schema refuses the bad example";
  std::string out = "The bad example is refused by";
  std::string_view rest = rule.schemas;
  while (!rest.empty()) {
    const std::size_t space = std::min(rest.find(' '), rest.size());
    const std::string_view name = rest.substr(0, space);
    out += out.ends_with("by") ? " " : ", ";
    out += name == "rng" ? "RELAX NG" : name == "xsd" ? "XSD" : "JSON Schema";
    rest.remove_prefix(std::min(space + 1, rest.size()));
  }
  return out;
}

std::string section(const Rule& rule) {
  std::string out = "### " + std::string(rule.id) + "\n\n";
  out += "*" + std::string(base::severity_name(rule.severity)) + "*: " + std::string(rule.summary) + ".\n\n";
  out += std::string(rule.explanation) + "\n\n";
  if (!rule.kitchen.empty()) out += "In a kitchen whose file says `" + std::string(rule.kitchen) + "`.\n\n";
  out += "Found:\n\n" + code(rule.bad) + "\nGood:\n\n" + code(rule.good) + "\n";
  out += who_refuses(rule) + ". Source: " + std::string(rule.source) + ".\n\n";
  return out;
}

struct Topic {
  std::string_view name;
  std::string_view heading;
};
constexpr std::array topics{
    Topic{"document", "The document"},
    Topic{"measure", "Measures"},
    Topic{"balance", "Balance: what goes in and what comes out"},
    Topic{"order", "Order and waiting"},
    Topic{"temperature", "Temperatures as stated"},
    Topic{"safety", "Food safety"},
    Topic{"sharing", "Ready to share (a tested or released fiche)"},
    Topic{"teaching", "Teaching (a tested or released fiche)"},
    Topic{"labelling", "Label and cost"},
    Topic{"conversion", "Conversions (said by `tamis convert`)"},
    Topic{"scaling", "Batches (said by `tamis scale`)"},
    Topic{"record", "Logs and batch records (said by `tamis record`)"},
    Topic{"plugin", "Plugins (said by their host)"},
};

}  // namespace

std::string shown_example(std::string_view example) {
  std::string out;
  for (std::size_t at = 0; at < example.size();) {
    const std::size_t begin = at;
    if (!base::next_scalar(example, at)) {
      std::array<char, 8> escaped{};
      std::snprintf(escaped.data(), escaped.size(), "\\x%02X", static_cast<unsigned>(static_cast<unsigned char>(example[begin])));
      out += escaped.data();
      continue;
    }
    std::size_t same = begin;
    while (same < example.size() && example[same] == example[begin]) ++same;
    if (same - begin > 80) {
      out += std::string(3, example[begin]) + "…(" + std::to_string(same - begin) + " times)";
      at = same;
    } else {
      out += example.substr(begin, at - begin);
    }
  }
  return out;
}

std::string reference_page() {
  std::string list;
  std::string sections;
  for (const Topic& topic : topics) {
    const auto belongs = [&topic](const Rule* rule) { return rule->topic == topic.name; };
    if (std::none_of(rules().begin(), rules().end(), belongs)) continue;
    list += "## " + std::string(topic.heading) + "\n\n";
    list += "| rule | severity | what it finds |\n| --- | --- | --- |\n";
    for (const Rule* rule : rules()) {
      if (!belongs(rule)) continue;
      list += "| [" + std::string(rule->id) + "](#" + std::string(rule->id) + ") | " +
              std::string(base::severity_name(rule->severity)) + " | " + std::string(rule->summary) + " |\n";
    }
    list += "\n";
  }
  sections += "## Each rule\n\n";
  for (const Rule* rule : rules()) sections += section(*rule);
  sections.pop_back();
  return list + sections;
}

}  // namespace tamis::rules
