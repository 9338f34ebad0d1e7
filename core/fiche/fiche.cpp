#include "core/fiche/fiche.h"

#include <algorithm>

#include "core/base/utf8.h"

namespace tamis::fiche {
namespace {

/// The kind of value an element's own text is; Value::text for prose and names.
Value text_value(El el) {
  switch (el) {
    case El::ingredient:
    case El::amount:
    case El::override: return Value::amount;
    case El::food_temp:
    case El::oven_temp:
    case El::medium_temp:
    case El::room_temp: return Value::temperature;
    case El::time: return Value::duration;
    case El::length: return Value::length;
    case El::share: return Value::share;
    default: return Value::text;
  }
}

bool is_measure(Value value) {
  return value == Value::amount || value == Value::share || value == Value::temperature || value == Value::duration ||
         value == Value::length || value == Value::number;
}

/// "was" and "was-…" keep a figure of before a conversion, written in that system's bare names.
bool is_kept_figure(At at) { return name_of(at).starts_with("was"); }

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> out;
  while (!(text = base::trimmed(text)).empty()) {
    const std::size_t end = std::min(text.find_first_of(" \t\n\r"), text.size());
    out.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return out;
}

class Reader {
 public:
  Reader(const Document& document, const Kitchen& kitchen) : document_(document) {
    out_.document = &document;
    out_.kitchen = &kitchen;
    out_.reading = kitchen.reading;
  }

  Fiche read() {
    const Node root = document_.root();
    if (root == none) return std::move(out_);
    read_root(root);
    out_.statements.reserve(128);
    visit(root, none);
    index_statements();
    return std::move(out_);
  }

 private:
  void read_root(Node root) {
    out_.id = document_.get(root, At::id);
    out_.language = document_.get(root, At::lang);
    if (out_.language.empty()) out_.language = out_.kitchen->language;
    if (!out_.language.empty()) out_.reading.language = out_.language;
    const std::string_view units = document_.get(root, At::units);
    if (const auto system = system_named(units)) out_.reading.system = *system;
    const std::string_view decimal = document_.get(root, At::decimal);
    if (decimal == "point") out_.reading.decimal = '.';
    if (decimal == "comma") out_.reading.decimal = ',';
    const Node title = document_.child(root, El::title);
    if (title == none) return;
    for (Node c = document_.first_child(title); c != none; c = document_.next(c)) {
      if (document_.kind(c) == NodeKind::text && out_.title.empty()) out_.title = base::trimmed(document_.value(c));
    }
  }

  void visit(Node n, Node component) {
    const El el = document_.el(n);
    if (el == El::component) {
      component = n;
      out_.components.push_back(n);
    }
    if (el == El::yield) out_.yields.push_back(n);
    if (el == El::step) out_.steps.push_back(step(n, component));
    if (el == El::use && !out_.steps.empty()) out_.steps.back().uses.push_back(n);
    const auto first = static_cast<int>(out_.statements.size());
    if (el != El::unknown) read_measures(n, el);
    if (el == El::ingredient) out_.ingredients.push_back(ingredient(n, component, first));
    for (Node c = document_.first_child(n); c != none; c = document_.next(c)) {
      if (document_.kind(c) == NodeKind::element) visit(c, component);
    }
  }

  void index_statements() {
    out_.by_node.reserve(out_.statements.size());
    for (std::size_t i = 0; i < out_.statements.size(); ++i) {
      out_.by_node.emplace_back(out_.statements[i].node, static_cast<std::uint32_t>(i));
    }
    std::sort(out_.by_node.begin(), out_.by_node.end());
  }

  Step step(Node n, Node component) {
    Step made;
    made.node = n;
    made.component = component;
    made.id = document_.get(n, At::id);
    made.actions = words_of(document_.get(n, At::do_));
    for (std::string_view& word : made.actions) word = out_.kitchen->trade_verb(word);
    made.makes = words_of(document_.get(n, At::makes));
    for (const std::string_view result : made.makes) out_.ids.emplace(result, n);
    return made;
  }

  Ingredient ingredient(Node n, Node component, int first_statement) {
    Ingredient made;
    made.node = n;
    made.component = component;
    made.id = document_.get(n, At::id);
    made.food_id = document_.get(n, At::food);
    made.food = made.food_id.empty() ? nullptr : out_.kitchen->find_food(made.food_id);
    made.name = document_.get(n, At::name);
    for (int i = first_statement; i < static_cast<int>(out_.statements.size()); ++i) {
      const Statement& statement = out_.statements[static_cast<std::size_t>(i)];
      if (statement.at == At::unknown) made.amount = i;
      if (statement.at == At::also) made.also = i;
      if (statement.at == At::was) made.was = i;
    }
    return made;
  }

  void read_measures(Node n, El el) {
    const Value own = text_value(el);
    if (own != Value::text) read_text(n, own);
    const ElementRule& rule = element_rule(el);
    for (Attr a = document_.first_attribute(n); a != none; a = document_.next_attribute(a)) {
      const AttributeRule* known = rule.attribute(document_.at(a));
      if (known == nullptr) continue;
      if (known->value == Value::id && n != document_.root()) out_.ids.emplace(document_.attribute_value(a), n);
      if (is_measure(known->value)) read_attribute(n, a, known->value);
    }
  }

  /// An element's own amount is all its text outside child elements. It is one text as a rule; where children divide
  /// it, the pieces are read as one and a finding marks from the first to the last.
  void read_text(Node n, Value value) {
    Node only = none;
    bool divided = false;
    base::Span whole;
    for (Node c = document_.first_child(n); c != none; c = document_.next(c)) {
      if (document_.kind(c) != NodeKind::text || base::trimmed(document_.value(c)).empty()) continue;
      divided = only != none;
      if (only == none) {
        only = c;
        whole = document_.span(c);
      }
      whole.end = document_.span(c).end;
    }
    if (only == none) return;
    Statement made;
    made.node = n;
    made.value = value;
    if (divided) {
      const std::string all = document_.direct_text(n);
      made.text = base::trimmed(all);
      made.where = whole;
      interpret(made, out_.reading, [&](std::size_t, std::size_t) { return whole; });
    } else {
      const std::string_view text = document_.value(only);
      const std::string_view inner = base::trimmed(text);
      const auto shift = static_cast<std::size_t>(inner.data() - text.data());
      made.text = inner;
      made.where = document_.text_span(only, shift, shift + inner.size());
      interpret(made, out_.reading, [&](std::size_t begin, std::size_t end) {
        return document_.text_span(only, shift + begin, shift + end);
      });
    }
    out_.statements.push_back(std::move(made));
  }

  void read_attribute(Node n, Attr a, Value value) {
    const std::string_view text = document_.attribute_value(a);
    const std::string_view inner = base::trimmed(text);
    if (inner.empty()) return;  // the rule about values says so
    const auto shift = static_cast<std::size_t>(inner.data() - text.data());
    Statement made;
    made.node = n;
    made.attribute = a;
    made.at = document_.at(a);
    made.value = value;
    made.text = inner;
    made.where = document_.value_span(a, shift, shift + inner.size());
    measure::Reading reading = out_.reading;
    if (is_kept_figure(made.at)) reading.system = kept_system();
    interpret(made, reading, [&](std::size_t begin, std::size_t end) {
      return document_.value_span(a, shift + begin, shift + end);
    });
    out_.statements.push_back(std::move(made));
  }

  /// The author's own figures use the bare names of was-units; of the kitchen, where the author declared none.
  measure::System kept_system() const {
    const std::string_view kept = document_.get(document_.root(), At::was_units);
    if (const auto system = system_named(kept)) return *system;
    return kept.empty() ? out_.reading.system : out_.kitchen->reading.system;
  }

  template <class Spanner>
  void interpret(Statement& made, const measure::Reading& reading, Spanner span) {
    const auto refuse = [&](base::Finding fault) {
      fault.where = span(fault.where.begin, std::max(fault.where.end, fault.where.begin));
      if (fault.where.empty()) fault.where = made.where;
      made.fault = std::move(fault);
    };
    const auto amount = [&](measure::Kinds kinds) {
      auto read = measure::read_amount(made.text, kinds, reading);
      if (read) {
        made.amount = *std::move(read);
      } else {
        refuse(std::move(read.fault()));
      }
    };
    switch (made.value) {
      case Value::amount: return amount(measure::amount_kinds);
      case Value::temperature: return amount(measure::temperature_kinds);
      case Value::duration: return amount(measure::time_kinds);
      case Value::share: {
        auto read = measure::read_share(made.text, reading);
        if (read) {
          made.share = *std::move(read);
        } else {
          refuse(std::move(read.fault()));
        }
        return;
      }
      case Value::length: {
        auto read = measure::read_lengths(made.text, reading);
        if (read) {
          made.lengths = *std::move(read);
        } else {
          refuse(std::move(read.fault()));
        }
        return;
      }
      default: {
        auto read = measure::read_number(made.text, reading);
        if (read) {
          made.amount = measure::amount_of(*read, *measure::unit_by_id("piece"));
        } else {
          refuse(std::move(read.fault()));
        }
      }
    }
  }

  const Document& document_;
  Fiche out_;
};

}  // namespace

const Statement* Fiche::statement(Node n, At at) const {
  auto entry = std::lower_bound(by_node.begin(), by_node.end(), std::pair(n, std::uint32_t{0}));
  for (; entry != by_node.end() && entry->first == n; ++entry) {
    if (statements[entry->second].at == at) return &statements[entry->second];
  }
  return nullptr;
}

Fiche read_fiche(const Document& document, const Kitchen& kitchen) { return Reader(document, kitchen).read(); }

}  // namespace tamis::fiche
