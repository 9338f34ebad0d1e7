#include <algorithm>
#include <array>

#include "core/change/compare_work.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

constexpr std::array labels{
#define LABEL(el, at, topic, before, behind) Label{El::el, At::at, Topic::topic, before, behind},
#include "core/change/compare_labels.inc"
#undef LABEL
};

/// Amounts that grow with the batch.
bool grows(const fiche::Document& document, Node node, At at) {
  switch (document.el(node)) {
    case El::ingredient:
      return document.get(node, At::per).empty() &&
             (at == At::unknown || at == At::also || at == At::purchase || at == At::packs || at == At::loose ||
              at == At::pieces || at == At::to);
    case El::amount: return at != At::batch && at != At::pack;
    case El::override: return true;
    case El::use: return at == At::take;
    case El::yield:
      return at == At::portions || at == At::pieces || at == At::mass || at == At::volume || at == At::spare;
    case El::mould: return at == At::count;
    case El::loss: return at == At::amount;
    default: return false;
  }
}

class Finder {
 public:
  Finder(const Comparing& work, Node node, At at)
      : side_(work.to), document_(side_.document()), node_(node), at_(at), el_(document_.el(node)) {
    const Node step = side_.around(node, El::step);
    if (step != fiche::none) step_ = side_.name(step);
    made_.topic = in_safety(side_, node) ? Topic::safety : Topic::figures;
    if (grows(document_, node, at)) made_.factor = work.batch.factor_at(node);
  }

  Manner run() {
    if (at_ == At::unknown) {
      own_text();
    } else {
      attribute();
    }
    return made_;
  }

 private:
  std::string_view get(At at) const { return document_.get(node_, at); }

  std::string at_step() const { return step_.empty() ? "" : " at " + step_; }

  /// What a mark in a sentence stands in when there is no step: "note", "keeping".
  std::string place() const {
    if (!step_.empty()) return step_;
    for (Node n = document_.parent(node_); n != fiche::none && n != document_.root(); n = document_.parent(n)) {
      if (!fiche::element_rule(El::summary).may_hold(document_.el(n))) return side_.name(n);
    }
    return "fiche";
  }

  void condition(std::string before, Bound bound) {
    made_.condition = true;
    made_.before = std::move(before);
    made_.bound = bound;
  }

  void in_condition() {
    if (side_.around(node_, El::control) != fiche::none) {
      condition("control point" + at_step(), Bound::limit);
    } else if (in_gate(side_, node_)) {
      condition("gate" + at_step(), Bound::as_written);
    }
  }

  void own_text() {
    const std::string_view of = get(At::of);
    switch (el_) {
      case El::ingredient:
      case El::override:
        made_.amount = true;
        made_.subject = side_.name(node_);
        made_.behind = side_.in_component(node_);
        return;
      case El::amount: return amount();
      case El::food_temp: {
        const Node step = side_.around(node_, El::step);
        const std::string_view spot = get(At::place);
        made_.subject = !of.empty()            ? side_.name_of_id(of)
                        : !spot.empty()        ? std::string(spot)
                        : step == fiche::none  ? place()
                                               : side_.product(step);
        break;
      }
      case El::oven_temp: made_.subject = place() + " oven"; break;
      case El::medium_temp: made_.subject = of.empty() ? place() : std::string(of); break;
      case El::room_temp: made_.subject = "room"; break;
      case El::time:
        made_.subject = place();
        if (!of.empty()) made_.behind = of == "hands" ? " hands-on" : " unattended";
        break;
      case El::length: made_.subject = place() + " length"; break;
      case El::share: made_.subject = place() + " share" + (of.empty() ? "" : " of " + std::string(of)); break;
      default: made_.subject = side_.name(node_);
    }
    in_condition();
  }

  void amount() {
    const Node use = side_.around(node_, El::use);
    const Node ingredient = side_.around(node_, El::ingredient);
    made_.amount = use != fiche::none || ingredient != fiche::none;
    if (ingredient != fiche::none) {
      made_.subject = side_.name(ingredient);
      made_.behind = " for batch " + std::string(get(At::batch));
    } else if (use != fiche::none) {
      made_.subject = side_.name_of_id(document_.get(use, At::of));
      made_.behind = at_step();
    } else {
      made_.subject = place() + " amount";
    }
    in_condition();
  }

  void attribute() {
    const Label* label = label_of(el_, at_);
    const std::string called = label == nullptr ? std::string(fiche::name_of(at_)) : std::string(label->before);
    made_.subject = owner();
    if (!called.empty()) made_.subject += (made_.subject.empty() ? "" : " ") + called;
    if (label != nullptr && !label->behind.empty()) {
      const bool timed = at_ == At::hands || at_ == At::unattended;
      (timed ? made_.behind : made_.suffix) = " " + std::string(label->behind);
    }
    if (el_ == El::yield) made_.behind = side_.in_component(node_);
    conditions();
  }

  std::string owner() const {
    switch (el_) {
      case El::fiche:
      case El::yield: return {};
      case El::use: return side_.name_of_id(get(At::of)) + at_step();
      case El::control:
      case El::gate: return side_.name(node_) + at_step();
      case El::ingredient: return side_.name(node_);
      case El::keep: return side_.name(node_) + side_.in_component(node_);
      default:
        return fiche::element_rule(El::summary).may_hold(el_) ? place() : side_.name(node_);
    }
  }

  void conditions() {
    const std::string whole = std::move(made_.subject);
    made_.subject.clear();
    if (el_ == El::keep && at_ == At::for_) return condition(whole, Bound::at_most);
    if (el_ == El::keep && at_ == At::at) return condition(whole, Bound::limit);
    if (el_ == El::step && at_ == At::at_least) return condition("least wait before " + step_, Bound::at_least);
    if (el_ == El::step && at_ == At::at_most) return condition("longest wait before " + step_, Bound::at_most);
    if (el_ == El::ingredient && at_ == At::at) return condition("start temperature of " + side_.name(node_), Bound::as_written);
    made_.subject = whole;
    if (el_ == El::use && at_ == At::at) {
      made_.subject = side_.name_of_id(get(At::of));
      return condition("gate" + at_step(), Bound::as_written);
    }
    if (el_ == El::food_temp && at_ == At::for_) {
      in_condition();
      if (made_.bound == Bound::limit) made_.bound = Bound::at_least;
    }
  }

  const Side& side_;
  const fiche::Document& document_;
  Node node_;
  At at_;
  El el_;
  std::string step_;
  Manner made_;
};

}  // namespace

const Label* label_of(El el, At at) {
  const auto found =
      std::find_if(labels.begin(), labels.end(), [&](const Label& one) { return one.el == el && one.at == at; });
  return found == labels.end() ? nullptr : &*found;
}

Manner manner_of(const Comparing& work, Node in_new, At at) { return Finder(work, in_new, at).run(); }

bool in_safety(const Side& side, Node node) {
  return side.around(node, El::control) != fiche::none || side.around(node, El::keep) != fiche::none ||
         side.around(node, El::caution) != fiche::none || side.around(node, El::allergens) != fiche::none;
}

bool in_gate(const Side& side, Node node) { return side.around(node, El::gate) != fiche::none; }

}  // namespace tamis::change
