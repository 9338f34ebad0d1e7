#include "core/rules/stated_heat.h"

#include <map>

#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/rules/figure_value.h"
#include "core/rules/sentence.h"
#include "core/rules/step_name.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using Form = measure::Amount::Form;

bool is_heat(El el) { return el == El::food_temp || el == El::oven_temp || el == El::medium_temp; }

/// Walks the words of a step's own sentences.
class Walk {
 public:
  explicit Walk(const Check& check) : check_(check), document_(check.document) {}

  std::vector<StatedHeat> heats(Node step) {
    for (Node c = document_.first_child(step); c != fiche::none; c = document_.next(c)) take(c);
    return std::move(out_);
  }

 private:
  void take(Node n) {
    if (document_.kind(n) == fiche::NodeKind::text) return read(document_.value(n));
    if (document_.kind(n) != fiche::NodeKind::element || !fiche::is_mark(document_, n)) return;
    if (document_.el(n) == El::until) {
      for (Node c = document_.first_child(n); c != fiche::none; c = document_.next(c)) take(c);
    } else if (is_heat(document_.el(n))) {
      heat(n);
    } else {
      words_ += base::lower(document_.all_text(n));
    }
  }

  void read(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
      const bool ends = text[i] == '.' || text[i] == ';' || text[i] == '!';
      if (ends && (i + 1 == text.size() || text[i + 1] == ' ' || text[i + 1] == '\n')) {
        ++sentence_;
        words_.clear();
      } else {
        words_ += text[i];
      }
    }
  }

  void heat(Node n) {
    const Statement* statement = check_.fiche.statement(n);
    if (statement != nullptr && statement->amount) {
      out_.push_back({statement, document_.el(n), low_of(*statement), high_of(*statement), sentence_, base::lower(words_)});
    }
    words_.clear();
  }

  const Check& check_;
  const fiche::Document& document_;
  std::vector<StatedHeat> out_;
  std::string words_;
  int sentence_ = 0;
};

/// Whether the figure is of what the step makes: said of nothing else.
bool is_of_the_product(const Check& check, const Statement& statement, int step) {
  const std::string_view of = check.document.get(statement.node, At::of);
  if (of.empty()) return true;
  for (const int given : check.flow.steps[static_cast<std::size_t>(step)].gives) {
    if (check.flow.things[static_cast<std::size_t>(given)].id == of) return true;
  }
  return false;
}

/// Whether anything is taken or timed behind the mark, or the words go on to cool or to wait.
bool goes_on_behind(const fiche::Document& document, Node mark, Node step) {
  std::string words;
  Node c = mark;
  for (Node up = mark; up != step; up = document.parent(up)) {
    for (c = document.next(up); c != fiche::none; c = document.next(c)) {
      const bool text = document.kind(c) == fiche::NodeKind::text;
      if (!text && (document.kind(c) != fiche::NodeKind::element || !fiche::is_mark(document, c))) continue;
      const El el = document.el(c);
      if (!text && (el == El::use || el == El::time || is_heat(el))) return true;
      words += document.all_text(c) + " ";
    }
  }
  words = base::lower(words);
  return says_cooling(words) || says_waiting(words) || says(words, {"pour", "add", "verser", "ajout", "gieß", "verter"});
}

}  // namespace

std::optional<double> low_of(const Statement& statement) {
  if (!statement.amount || !statement.amount->has_figure() || statement.amount->form == Form::at_most) return std::nullopt;
  return lowest_of(*statement.amount);
}

std::optional<double> high_of(const Statement& statement) {
  if (!statement.amount || !statement.amount->has_figure() || statement.amount->form == Form::at_least) return std::nullopt;
  return highest_of(*statement.amount);
}

const std::vector<StatedHeat>& stated_heats(const Check& check, Node step) {
  using Heats = std::map<Node, std::vector<StatedHeat>>;
  static const std::vector<StatedHeat> none;
  const Heats& heats = check.once<Heats>([&] {
    Heats made;
    for (const Statement& statement : check.fiche.statements) {
      if (!is_heat(check.document.el(statement.node))) continue;
      Node in = statement.node;
      while (in != fiche::none && check.document.el(in) != El::step) in = check.document.parent(in);
      if (in != fiche::none && !made.contains(in)) made.emplace(in, Walk(check).heats(in));
    }
    return made;
  });
  const auto found = heats.find(step);
  return found == heats.end() ? none : found->second;
}

const Statement* left_at(const Check& check, int step) {
  const Node node = check.flow.steps[static_cast<std::size_t>(step)].node;
  if (check.document.find(node, At::unattended) != fiche::none) return nullptr;
  const std::vector<StatedHeat>& heats = stated_heats(check, node);
  if (heats.empty() || heats.back().el != El::food_temp) return nullptr;
  const Statement& last = *heats.back().statement;
  if (check.document.get(last.node, At::place) == "surface" || !is_of_the_product(check, last, step)) return nullptr;
  return goes_on_behind(check.document, last.node, node) ? nullptr : &last;
}

bool says_sugar_or_fat(std::string_view text) {
  return says(text, {"sugar",  "syrup",   "caramel", "candy",   "candied", "toffee", "fudge",  "nougat", "praline", "brittle", "honey",
                     "jam",    "jelly",   "marmalade", "glucose", "isomalt", "fondant", "marshmallow", "glaze",
                     "sucre",  "sirop",   "miel",    "confit",  "gelée",   "zucker", "sirup",  "karamell", "honig", "gelee",
                     "azúcar", "almíbar", "caramelo", "mermelada",
                     "oil",    "fat",     "fry",     "fried",   "lard",    "dripping", "ghee", "butter", "huile", "friture", "frire",
                     "öl",     "fett",    "frittier", "butter", "aceite",  "freír",  "manteca", "roux"});
}

bool says_pressure(std::string_view text) {
  return says(text, {"pressur", "autoclave", "retort", "canner", "lb pressure", "bar ", "sous pression", "cocotte-minute", "druck",
                     "schnellkoch", "presión", "combi", "superheat"});
}

}  // namespace tamis::rules
