#include "tests/bench/house_rules.h"

#include <algorithm>
#include <string>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/fiche/vocabulary.h"
#include "core/measure/unit.h"
#include "core/measure/write.h"

namespace tamis::bench {
namespace {

using fiche::Document;
using fiche::El;
using fiche::Node;

bool is_letter(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

/// Runs of letters, with the apostrophes and hyphens in them.
template <class Found>
void for_each_word(std::string_view text, Found found) {
  for (std::size_t at = 0; at < text.size();) {
    while (at < text.size() && !is_letter(text[at])) ++at;
    const std::size_t begin = at;
    while (at < text.size() && (is_letter(text[at]) || text[at] == '\'' || text[at] == '-')) ++at;
    if (at > begin && !found(text.substr(begin, at - begin), begin)) return;
  }
}

bool has(const std::vector<std::string_view>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

std::string joined(const std::vector<std::string_view>& list) {
  std::string out;
  for (const std::string_view word : list) out.append(out.empty() ? "" : ", ").append(word);
  return out;
}

class House {
 public:
  House(rules::Check& check, const HouseSettings& settings) : check_(check), document_(check.document), settings_(settings) {}

  void run() {
    title();
    units();
    step_lengths();
    verbs();
    fields();
    words();
  }

 private:
  void say(std::string_view rule, base::Severity severity, base::Span where, std::string message, std::string advice) {
    base::Finding made;
    made.rule = rule;
    made.severity = severity;
    made.where = where;
    made.message = std::move(message);
    made.advice = std::move(advice);
    made.source = "plugin house-style 1";
    check_.add(std::move(made));
  }

  [[nodiscard]] base::Span all_of(Node text) const { return document_.text_span(text, 0, document_.value(text).size()); }

  [[nodiscard]] Node below(Node node, Node top) const {
    if (const Node inner = document_.first_child(node); inner != fiche::none) return inner;
    while (node != top && node != fiche::none) {
      if (const Node beside = document_.next(node); beside != fiche::none) return beside;
      node = document_.parent(node);
    }
    return fiche::none;
  }
  [[nodiscard]] Node first_text(Node top) const {
    for (Node n = below(top, top); n != fiche::none; n = below(n, top))
      if (document_.kind(n) == fiche::NodeKind::text && !fiche::is_blank(document_.value(n))) return n;
    return fiche::none;
  }

  void title() {
    const Node element = document_.child(document_.root(), El::title);
    const Node text = element == fiche::none ? element : first_text(element);
    if (text == fiche::none) return;
    const std::string title = fiche::folded(base::trimmed(document_.all_text(element)));
    const std::size_t letters = base::count_scalars(title);
    if (letters > settings_.title_letters)
      say("house-title", base::Severity::advice, all_of(text),
          "the title has " + std::to_string(letters) + " letters; the house's limit is " + std::to_string(settings_.title_letters),
          "shorten it, and put the rest into <summary>");
    std::size_t number = 0, count = 0, capitals = 0;
    for_each_word(title, [&](std::string_view word, std::size_t) {
      if (number++ == 0 || base::count_scalars(word) < 4) return true;
      ++count;
      if (word[0] >= 'A' && word[0] <= 'Z') ++capitals;
      return true;
    });
    if (count >= 2 && capitals == count && !check_.fiche.language.starts_with("de"))
      say("house-title", base::Severity::advice, all_of(text),
          "every word of the title has a capital; this house writes titles like this one",
          "leave the capital to the first word and to names");
  }

  void units() {
    for (const fiche::Statement& one : check_.fiche.statements) {
      if (one.attribute != fiche::none || one.fault || !one.amount || one.amount->low.empty()) continue;
      switch (document_.el(one.node)) {
        case El::ingredient: case El::amount: case El::food_temp: case El::oven_temp: case El::medium_temp: case El::room_temp:
        case El::time: case El::length: break;
        default: continue;
      }
      const measure::Unit& unit = *one.amount->low.front().unit;
      if (has(settings_.units, unit.id)) continue;
      std::vector<std::string_view> alike;
      for (const std::string_view id : settings_.units)
        if (measure::unit_by_id(id)->kind == unit.kind) alike.push_back(id);
      const std::string advice = alike.empty() ? "leave the figure out, or put " + std::string(unit.id) + " among the units in kitchen.xml"
                                               : "write it in " + joined(alike);
      measure::Writing writing;
      writing.language = check_.fiche.language;
      say("house-unit", base::Severity::warning, all_of(first_text(one.node)),
          measure::write_amount(*one.amount, writing) + ": this house does not measure in " + std::string(unit.id), advice);
    }
  }

  void step_lengths() {
    for (const fiche::Step& step : check_.fiche.steps) {
      std::string prose;
      for (Node n = document_.first_child(step.node); n != fiche::none; n = document_.next(n)) {
        if (document_.kind(n) == fiche::NodeKind::text) prose += document_.value(n);
        else if (fiche::is_mark(document_, n)) prose += document_.all_text(n);
      }
      std::size_t words = 0;
      for_each_word(prose, [&words](std::string_view, std::size_t) { return ++words > 0; });
      if (words > settings_.step_words)
        say("house-step-length", base::Severity::advice, document_.head_span(step.node),
            std::to_string(words) + " words in one step; this house stops at " + std::to_string(settings_.step_words),
            "split it, or move what is no instruction into <why>");
    }
  }

  void verbs() {
    for (const fiche::Step& step : check_.fiche.steps) {
      const Node text = first_text(step.node);
      if (text == fiche::none) continue;
      for_each_word(document_.value(text), [&](std::string_view word, std::size_t at) {
        if (has(settings_.verbs, base::lower(word))) return false;
        const std::string_view near = base::nearest(word, settings_.verbs);
        say("house-verb", base::Severity::advice, document_.text_span(text, at, at + word.size()),
            "the step starts with \"" + std::string(word) + "\", which is none of the house's verbs",
            near.empty() ? "start with what the cook does: " + joined(settings_.verbs) : "write \"" + std::string(near) + "\"");
        return false;
      });
    }
  }

  void fields() {
    for (const std::string_view wanted : settings_.required) {
      const El el = fiche::element_named(wanted);
      bool there = false;
      for (Node n = below(document_.root(), document_.root()); n != fiche::none && !there; n = below(n, document_.root()))
        there = document_.el(n) == el;
      if (there) continue;
      const Node title = document_.child(document_.root(), El::title);
      say("house-field", base::Severity::warning, document_.head_span(title == fiche::none ? document_.root() : title),
          "no <" + std::string(wanted) + ">: this house wants it on every fiche", "add <" + std::string(wanted) + ">");
    }
  }

  void words() {
    for (const auto& [words, instead] : settings_.instead) {
      for (Node n = below(document_.root(), document_.root()); n != fiche::none; n = below(n, document_.root())) {
        if (document_.kind(n) != fiche::NodeKind::text) continue;
        const std::string small = base::lower(document_.value(n));
        for (std::size_t at = small.find(words); at != small.npos; at = small.find(words, at + 1)) {
          if ((at > 0 && is_letter(small[at - 1])) || (at + words.size() < small.size() && is_letter(small[at + words.size()])))
            continue;
          say("house-word", base::Severity::warning, document_.text_span(n, at, at + words.size()),
              "\"" + std::string(document_.value(n).substr(at, words.size())) + "\" is not said in this house",
              "write " + std::string(instead));
        }
      }
    }
  }

  rules::Check& check_;
  const Document& document_;
  const HouseSettings& settings_;
};

}  // namespace

void run_house_rules(rules::Check& check, const HouseSettings& settings) {
  if (check.document.root() != fiche::none && check.document.el(check.document.root()) == El::fiche) House(check, settings).run();
}

}  // namespace tamis::bench
