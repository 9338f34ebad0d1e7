#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "core/change/compare_work.h"
#include "core/change/compare_words.h"
#include "core/change/kept.h"
#include "core/measure/write.h"

namespace tamis::change {

using fiche::At;
using fiche::Attr;
using fiche::El;
using fiche::Node;

namespace {

bool is_measure(fiche::Value value) {
  using fiche::Value;
  return value == Value::amount || value == Value::share || value == Value::temperature || value == Value::duration ||
         value == Value::length || value == Value::number;
}

Topic topic_of(const Comparing& work, El el, At at, Node in_new) {
  if (const Label* label = label_of(el, at); label != nullptr) {
    const bool told = label->topic == Topic::figures || label->topic == Topic::other;
    return told && in_safety(work.to, in_new) ? Topic::safety : label->topic;
  }
  if (in_safety(work.to, in_new)) return Topic::safety;
  const fiche::AttributeRule* rule = el == El::unknown ? nullptr : fiche::element_rule(el).attribute(at);
  return rule != nullptr && is_measure(rule->value) ? Topic::figures : Topic::other;
}

/// The value with ids as the new fiche has them, in words.
std::string comparable(const Comparing& work, fiche::Value value, std::string_view text, bool old) {
  const std::vector<std::string> words = words_of(text);
  if (value != fiche::Value::idref && value != fiche::Value::idrefs) return joined(words, 0, words.size());
  std::vector<std::string> ids;
  for (const std::string& id : words) ids.push_back(old ? work.pairs.id_in_new(id) : id);
  return joined(ids, 0, ids.size());
}

std::string spoken_value(const Side& side, fiche::Value value, std::string_view text) {
  const std::vector<std::string> words = words_of(text);
  if (value != fiche::Value::idref && value != fiche::Value::idrefs) return joined(words, 0, words.size());
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) out += (i == 0 ? "" : ", ") + side.name_of_id(words[i]);
  return out;
}

std::string with_space(std::string_view text) { return text.empty() ? "" : " " + std::string(text); }

/// Compares one attribute of a pair that at least one of the two has.
class One {
 public:
  One(Comparing& work, Node a, Node b, std::string_view name)
      : work_(work), a_(a), b_(b), old_(find(work.from.document(), a, name)), new_(find(work.to.document(), b, name)),
        name_(name), el_(work.to.document().el(b)), at_(fiche::attribute_named(name)) {}

  void run() {
    const fiche::AttributeRule* rule =
        el_ == El::unknown || at_ == At::unknown ? nullptr : fiche::element_rule(el_).attribute(at_);
    value_ = rule == nullptr ? fiche::Value::text : rule->value;
    const fiche::Statement* was = old_ == fiche::none ? nullptr : work_.from.fiche().statement(a_, at_);
    const fiche::Statement* is = new_ == fiche::none ? nullptr : work_.to.fiche().statement(b_, at_);
    if (was != nullptr && is != nullptr && is_measure(value_)) return figures(*was, *is);
    if (comparable(work_, value_, text(true), true) == comparable(work_, value_, text(false), false)) return;
    words();
  }

 private:
  static Attr find(const fiche::Document& document, Node node, std::string_view name) {
    for (Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a))
      if (document.attribute_name(a) == name) return a;
    return fiche::none;
  }

  std::string_view text(bool old) const {
    if (old) return old_ == fiche::none ? std::string_view() : work_.from.document().attribute_value(old_);
    return new_ == fiche::none ? std::string_view() : work_.to.document().attribute_value(new_);
  }

  void figures(const fiche::Statement& was, const fiche::Statement& is) {
    Manner manner = manner_of(work_, b_, at_);
    manner.topic = topic_of(work_, el_, at_, b_);
    if (el_ == El::ingredient && at_ == At::pieces && goes_with_amount(was, is)) return;
    // What a mould, its spares and a loss have may follow the batch or stay.
    const bool may_stay = at_ == At::count || at_ == At::spare || el_ == El::loss || el_ == El::use || at_ == At::packs;
    if (manner.factor != 1 && may_stay) {
      const Measured before = figure_of(work_.from, was);
      const Measured now = figure_of(work_.to, is);
      if (relate(before, now, 1, work_.from, work_.to).way == Relation::Way::same) return;
    }
    tell_figures(work_, was, is, manner);
  }

  /// Pieces that changed as their mass did are told with it.
  bool goes_with_amount(const fiche::Statement& was, const fiche::Statement& is) const {
    const fiche::Statement* old_amount = work_.from.fiche().statement(a_);
    const fiche::Statement* new_amount = work_.to.fiche().statement(b_);
    if (old_amount == nullptr || new_amount == nullptr) return false;
    const auto times = [&](const fiche::Statement& x, const fiche::Statement& y) {
      return relate(figure_of(work_.from, x), figure_of(work_.to, y), 1, work_.from, work_.to).times;
    };
    const double of_amount = times(*old_amount, *new_amount);
    return of_amount > 0 && std::abs(times(was, is) / of_amount - 1) < 0.02;
  }

  void words() {
    const Label* label = label_of(el_, at_);
    Change change;
    change.topic = topic_of(work_, el_, at_, b_);
    change.kind = new_ == fiche::none   ? Change::Kind::removed
                  : old_ == fiche::none ? Change::Kind::added
                                        : Change::Kind::changed;
    if (change.topic == Topic::wording && change.kind == Change::Kind::changed) change.kind = Change::Kind::reworded;
    change.is = spoken_value(work_.to, value_, text(false));
    change.was = spoken_value(work_.from, value_, text(true));
    const Manner manner = manner_of(work_, b_, at_);
    const std::string head = manner.before + (manner.before.empty() || manner.subject.empty() ? "" : ": ") + manner.subject;
    const std::string behind = label == nullptr ? "" : with_space(label->behind);
    change.what = head;
    change.hold = hold(change.kind);
    const bool name = at_ == At::name || at_ == At::title;
    if (name && change.kind == Change::Kind::reworded) {
      change.text = work_.from.name(a_) + " now called " + change.is;
    } else if (change.kind == Change::Kind::removed) {
      change.text = head + with_space(change.was) + behind + " no longer stated";
    } else {
      change.text = head + with_space(change.is) + behind;
      change.text += change.kind == Change::Kind::added ? ", was not stated" : ", was " + change.was;
    }
    if (change.text.starts_with(' ')) change.text.erase(0, 1);
    work_.say(std::move(change), place(work_.from, old_, a_), place(work_.to, new_, b_));
  }

  /// A temperature, a time or a corrective action that is no longer stated lets more pass.
  Change::Hold hold(Change::Kind kind) const {
    const bool holds = manner_of(work_, b_, at_).condition || (el_ == El::control && at_ != At::id);
    if (!holds || kind == Change::Kind::changed) return Change::Hold::same;
    return kind == Change::Kind::added ? Change::Hold::tightened : Change::Hold::loosened;
  }

  static base::Span place(const Side& side, Attr attribute, Node node) {
    return attribute == fiche::none ? side.document().head_span(node) : side.document().attribute_span(attribute);
  }

  Comparing& work_;
  Node a_, b_;
  Attr old_, new_;
  std::string_view name_;
  El el_;
  At at_;
  fiche::Value value_ = fiche::Value::text;
};

void add_names(const fiche::Document& document, Node node, std::vector<std::string_view>& names) {
  const El el = document.el(node);
  for (Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a)) {
    const std::string_view name = document.attribute_name(a);
    if (name.starts_with("xmlns") || is_silent(el, document.at(a))) continue;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
}

/// A food in the place of another.
void compare_food(Comparing& work, Node a, Node b) {
  const std::string_view was = work.from.document().get(a, At::food);
  const std::string_view is = work.to.document().get(b, At::food);
  if (was == is || was.empty() || is.empty()) return;
  Change change;
  change.topic = Topic::figures;
  change.is = is;
  change.was = was;
  change.what = work.to.name(b) + work.to.in_component(b);
  const std::string old_name = work.from.name(a);
  const bool alike = old_name == work.to.name(b);
  change.text = (alike ? std::string(is) : work.to.name(b)) + " in place of " + (alike ? std::string(was) : old_name) +
                work.to.in_component(b);
  work.say(std::move(change), a, b);
}

bool food_changed(const Comparing& work, Node a, Node b) {
  return work.from.document().get(a, At::food) != work.to.document().get(b, At::food);
}

}  // namespace

bool is_silent(El el, At at) {
  if (el == El::fiche) return at == At::scaled_by || at == At::was_units;
  switch (at) {
    case At::id:
    case At::food:
    case At::makes: return true;
    case At::contains:
    case At::may_contain: return el == El::allergens;
    case At::of: return el == El::use;
    case At::was:
    case At::was_food: return true;
    default: return author_name(at) != At::unknown;
  }
}

void compare_attributes(Comparing& work, Node a, Node b) {
  std::vector<std::string_view> names;
  add_names(work.to.document(), b, names);
  add_names(work.from.document(), a, names);
  const El el = work.to.document().el(b);
  const bool has_food = el == El::ingredient || el == El::swap || el == El::part || el == El::override;
  if (has_food) compare_food(work, a, b);
  for (const std::string_view name : names) {
    if (name == "name" && has_food && food_changed(work, a, b)) continue;
    One(work, a, b, name).run();
  }
}

}  // namespace tamis::change
