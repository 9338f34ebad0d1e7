#include "core/lua/manifest.h"

#include <algorithm>
#include <iterator>

#include "core/base/utf8.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/fiche/prose.h"
#include "core/format/format.h"
#include "core/lua/settings.h"
#include "core/rules/rule.h"

namespace tamis::lua {
namespace {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

constexpr std::size_t most_manifest = std::size_t{128} << 10U;  // bytes
constexpr std::size_t most_of_a_kind = 100;                     // additions, or settings

base::Finding fault_at(base::Span where, std::string message, std::string advice) {
  base::Finding fault;
  fault.rule = "plugin-error";
  fault.where = where;
  fault.message = std::move(message);
  fault.advice = std::move(advice);
  return fault;
}

std::string folded_text(const Document& document, Node n) {
  return std::string(base::trimmed(fiche::folded(document.all_text(n))));
}

base::Span attribute_place(const Document& document, Node n, At at) {
  const fiche::Attr found = document.find(n, at);
  return found == fiche::none ? document.head_span(n) : document.value_span(found);
}

/// A whole number that the schema has already seen; `otherwise` where there is none.
std::int64_t whole(std::string_view text, std::int64_t otherwise) {
  const auto read = base::Ratio::parse(base::trimmed(text));
  return read && read->whole() ? read->numerator() : otherwise;
}

base::Severity severity_of(std::string_view name) {
  using base::Severity;
  for (const Severity one : {Severity::off, Severity::advice, Severity::error})
    if (base::severity_name(one) == name) return one;
  return Severity::warning;
}

class Reader {
 public:
  Reader(std::shared_ptr<const Document> document, std::vector<base::Finding>& faults)
      : document_(*document), faults_(faults) {
    out_.document = std::move(document);
  }

  Manifest read() {
    const Node root = document_.root();
    out_.id = base::trimmed(document_.get(root, At::id));
    out_.version = document_.get(root, At::version);
    out_.licence = document_.get(root, At::licence);
    if (const Node summary = document_.child(root, El::summary); summary != fiche::none)
      out_.summary = folded_text(document_, summary);
    read_api(root);
    read_limits(root);
    for (Node n = document_.first_child(root); n != fiche::none; n = document_.next(n)) {
      const bool full = out_.additions.size() > most_of_a_kind || out_.takes.size() > most_of_a_kind;
      if (full) {
        say(document_.head_span(n), "the manifest names more than " + std::to_string(most_of_a_kind) + " things of a kind",
            "make two plugins of it");
        break;
      }
      if (document_.el(n) == El::adds) read_addition(n);
      if (document_.el(n) == El::takes) read_taking(n);
      if (document_.el(n) == El::food) furnish("food ", n, At::id);
      if (document_.el(n) == El::means) furnish("word ", n, At::word);
      if (document_.el(n) == El::verb) furnish("verb ", n, At::word);
    }
    judge_example_settings();
    if (out_.additions.empty() && out_.furnishes.empty() && faults_.empty())
      say(document_.head_span(root), "the manifest adds nothing", "add <adds id=\"...\" kind=\"check\"/>");
    return std::move(out_);
  }

 private:
  void say(base::Span where, std::string message, std::string advice) {
    faults_.push_back(fault_at(where, std::move(message), std::move(advice)));
  }

  void furnish(std::string what, Node n, At name) {
    what += base::trimmed(document_.get(n, name));
    if (std::find(out_.furnishes.begin(), out_.furnishes.end(), what) != out_.furnishes.end())
      say(attribute_place(document_, n, name), "the " + what + " is given twice", "take one of them out");
    out_.furnishes.push_back(std::move(what));
  }

  void read_api(Node root) {
    const std::int64_t wanted = whole(document_.get(root, At::api), 0);
    if (wanted >= 1 && wanted <= api_version) return;
    const std::string have = std::to_string(api_version);
    say(attribute_place(document_, root, At::api),
        "the plugin needs version " + std::string(document_.get(root, At::api)) + " of the interface; this is " + have,
        wanted < 1 ? "write api=\"" + have + "\"" : "use a newer Tamis, or a plugin written for version " + have);
  }

  void read_limits(Node root) {
    const std::int64_t instructions = whole(document_.get(root, At::instructions), out_.limits.instructions);
    if (instructions < 1 || instructions > most_instructions)
      say(attribute_place(document_, root, At::instructions),
          "the plugin asks for " + std::to_string(instructions) + " instructions; the most there is is " +
              std::to_string(most_instructions),
          "ask for fewer");
    out_.limits.instructions = instructions;
    constexpr std::int64_t kilobyte = 1024;
    const std::int64_t usual = static_cast<std::int64_t>(out_.limits.bytes) / kilobyte;
    const std::int64_t memory = whole(document_.get(root, At::memory), usual);
    constexpr std::int64_t least = 256;
    if (memory < least || memory > static_cast<std::int64_t>(most_bytes) / kilobyte)
      say(attribute_place(document_, root, At::memory),
          "the plugin asks for " + std::to_string(memory) + " kilobytes; it can have " + std::to_string(least) + " to " +
              std::to_string(static_cast<std::int64_t>(most_bytes) / kilobyte),
          "ask for a figure between the two");
    else
      out_.limits.bytes = static_cast<std::size_t>(memory * kilobyte);
  }

  void read_addition(Node n) {
    Addition made;
    made.id = base::trimmed(document_.get(n, At::id));
    made.where = attribute_place(document_, n, At::id);
    const std::string_view kind = document_.get(n, At::kind);
    if (kind == "conversion") made.kind = Addition::Kind::conversion;
    if (kind == "export") made.kind = Addition::Kind::export_;
    if (document_.find(n, At::severity) != fiche::none) made.severity = severity_of(document_.get(n, At::severity));
    made.call = document_.get(n, At::call);
    if (made.call.empty()) {
      made.call = made.id;
      std::replace(made.call.begin(), made.call.end(), '-', '_');
    }
    made.ending = document_.get(n, At::ending);
    made.over_all = document_.get(n, At::over) == "all";
    for (Node inner = document_.first_child(n); inner != fiche::none; inner = document_.next(inner)) {
      if (document_.el(inner) == El::summary) made.summary = folded_text(document_, inner);
      if (document_.el(inner) == El::note) made.notes.push_back(folded_text(document_, inner));
      if (document_.el(inner) == El::wrong) made.wrong = document_.all_text(inner);
      if (document_.el(inner) == El::right) made.right = document_.all_text(inner);
      if (document_.el(inner) == El::setting)
        made.settings.emplace_back(base::trimmed(document_.get(inner, At::name)), document_.direct_text(inner));
    }
    if (made.summary.empty()) made.summary = out_.summary;
    judge(made);
    judge_examples(n, made);
    out_.additions.push_back(std::move(made));
  }

  void judge(const Addition& made) {
    const bool twice = std::any_of(out_.additions.begin(), out_.additions.end(),
                                   [&made](const Addition& other) { return other.id == made.id; });
    if (twice) say(made.where, "\"" + made.id + "\" is added twice", "give one of them another id");
    if (made.over_all && made.kind != Addition::Kind::export_)
      say(made.where, "\"" + made.id + "\" is no export: a check or conversion is of one fiche", "take over=\"all\" out");
    if (made.kind == Addition::Kind::check && rules::rule_by_id(made.id) != nullptr)
      say(made.where, "\"" + made.id + "\" is a rule of the check itself", "give the plugin's check another id");
  }

  void judge_examples(Node n, const Addition& made) {
    const bool none = made.wrong.empty() && made.right.empty();
    if (made.kind != Addition::Kind::check && !(none && made.settings.empty()))
      say(document_.head_span(n), "\"" + made.id + "\" is no check, and has the examples of one", "take them out");
    else if (made.wrong.empty() != made.right.empty())
      say(document_.head_span(n), "\"" + made.id + "\" has one example", "give both, <wrong> and <right>");
  }

  /// Once all settings are known.
  void judge_example_settings() {
    for (const Addition& addition : out_.additions) {
      Settings settings;
      for (const auto& [name, value] : addition.settings) {
        const auto put = put_setting(out_, name, value, settings);
        if (!put) say(addition.where, "the examples of \"" + addition.id + "\": " + put.fault().message, put.fault().advice);
      }
    }
  }

  void read_taking(Node n) {
    Taking made;
    made.name = base::trimmed(document_.get(n, At::name));
    made.where = attribute_place(document_, n, At::name);
    made.purpose = folded_text(document_, n);
    made.kind = taking_kind(document_.get(n, At::kind));
    made.choices = split(document_.get(n, At::choices), '|');
    if (const fiche::Attr standard = document_.find(n, At::default_); standard != fiche::none)
      made.standard = document_.attribute_value(standard);
    if (made.kind == Taking::Kind::choice && made.choices.empty())
      say(document_.head_span(n), "the setting \"" + made.name + "\" is a choice of nothing",
          "add choices=\"one|other\"");
    const bool twice = std::any_of(out_.takes.begin(), out_.takes.end(),
                                   [&made](const Taking& other) { return other.name == made.name; });
    if (twice) say(made.where, "the setting \"" + made.name + "\" stands here twice", "take one of them out");
    if (made.standard) judge_standard(n, made);
    out_.takes.push_back(std::move(made));
  }

  void judge_standard(Node n, const Taking& made) {
    const auto value = read_setting(made, *made.standard);
    if (!value) say(attribute_place(document_, n, At::default_), value.fault().message, value.fault().advice);
  }

  static Taking::Kind taking_kind(std::string_view kind) {
    using Kind = Taking::Kind;
    if (kind == "number") return Kind::number;
    if (kind == "yes") return Kind::yes;
    if (kind == "words") return Kind::words;
    if (kind == "list") return Kind::list;
    return kind == "choice" ? Kind::choice : Kind::text;
  }

  const Document& document_;
  std::vector<base::Finding>& faults_;
  Manifest out_;
};

void keep_errors(std::vector<base::Finding> findings, std::vector<base::Finding>& faults) {
  std::copy_if(std::make_move_iterator(findings.begin()), std::make_move_iterator(findings.end()),
               std::back_inserter(faults),
               [](const base::Finding& finding) { return finding.severity == base::Severity::error; });
}

}  // namespace

Manifest read_manifest(const std::shared_ptr<const base::Source>& source, std::vector<base::Finding>& faults) {
  if (source->bytes().size() > most_manifest) {
    faults.push_back(fault_at({}, "the manifest is larger than " + std::to_string(most_manifest >> 10U) + " kilobytes",
                              "put what explains the plugin into its README"));
    return {};
  }
  format::Read read = format::read(source);
  if (read.document == nullptr) {
    faults = std::move(read.findings);
    return {};
  }
  const Document& document = *read.document;
  if (document.el(document.root()) != El::manifest) {
    const base::Span where = document.root() == fiche::none ? base::Span{} : document.name_span(document.root());
    faults.push_back(fault_at(where, "this is no plugin's manifest: its first element is not <manifest>",
                              "start it with <manifest xmlns=\"urn:tamis:fiche:1\" id=\"...\" version=\"1\" api=\"1\">"));
    return {};
  }
  keep_errors(rules::check(document, {}, fiche::empty_library()), faults);
  Manifest made = Reader(read.document, faults).read();
  base::sort_by_place(faults);
  return made;
}

std::string_view kind_name(Addition::Kind kind) {
  switch (kind) {
    case Addition::Kind::check: return "check";
    case Addition::Kind::conversion: return "conversion";
    case Addition::Kind::export_: break;
  }
  return "export";
}

}  // namespace tamis::lua
