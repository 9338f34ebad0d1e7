#include "core/change/author.h"

#include <algorithm>
#include <string>

#include "core/change/figure.h"
#include "core/change/kept.h"
#include "core/change/stand_in.h"
#include "core/change/subject.h"
#include "core/change/work.h"
#include "core/fiche/fiche.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;

namespace {

/// Beyond this share of the figure, no rounding of a usual kitchen explains what stands beside a kept figure; it is
/// the tolerance of an ordinary food (core/food, tolerance_of), with a little for a kitchen that rounds otherwise.
const Ratio most_rounding{6, 100};

class Restorer {
 public:
  Restorer(const Document& document, const fiche::Kitchen& kitchen)
      : now_(fiche::read_fiche(document, kitchen)), out_{document.clone(), {}} {}

  Restored run() {
    const Document& document = *now_.document;
    const Node root = document.root();
    if (root == fiche::none || document.el(root) != El::fiche) return std::move(out_);
    author_reading_ = now_.reading;
    author_reading_.system = author_system(root);
    keep_changed_figures();
    restore_below(root);
    restore_units(root);
    return std::move(out_);
  }

 private:
  measure::System author_system(Node root) const {
    const std::string_view kept = now_.document->get(root, At::was_units);
    if (const auto system = fiche::system_named(kept)) return *system;
    return kept.empty() ? now_.reading.system : now_.kitchen->reading.system;
  }

  // ---- figures changed since a conversion

  void keep_changed_figures() {
    for (const Statement& kept : now_.statements) {
      if (kept.at != At::was && author_name(kept.at) == At::unknown) continue;
      if (kept.at == At::was_also) continue;  // goes with was
      const At at = author_name(kept.at);
      const Statement* now = now_.statement(kept.node, at);
      if (now == nullptr || is_conversion(*now, kept)) continue;
      keep_change(*now, kept);
    }
  }

  bool is_conversion(const Statement& now, const Statement& kept) const {
    const Document& document = *now_.document;
    const Subject subject = subject_of(now_, now.node, now.at);
    const Node of = subject.ingredient;
    if (of != fiche::none && document.find(of, At::was_food) != fiche::none) return true;  // recalculated
    if (document.find(now.node, At::was_mode) != fiche::none) return true;
    if (now.text == kept.text) return true;
    if (now.at == At::unknown && now.text == document.get(now.node, At::was_also)) return true;
    const std::vector<Amount> a = figures_of(now);
    const std::vector<Amount> b = figures_of(kept);
    if (a.empty() || b.empty()) return true;  // what cannot be read cannot be judged
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i) {
      if (!is_conversion(a[i], b[i], subject)) return false;
    }
    return true;
  }

  bool is_conversion(const Amount& now, const Amount& kept, const Subject& subject) const {
    if (!now.has_figure() || !kept.has_figure()) return now.words == kept.words;
    Passage passage{now.kind, 1, 0};
    if (now.kind != kept.kind) {
      const auto density = density_of(now_, subject);
      if (!density) return true;
      passage.factor = now.kind == Kind::mass ? density->grams_per_ml : Ratio(1) / density->grams_per_ml;
    }
    const Target target{now_.reading.system, &now_.kitchen->tools, subject.tolerance,
                        subject.oven,        subject.gate,         subject.control};
    const auto again = convert_figure(kept, passage, target);
    if (!again || same_figure(again->amount, now)) return true;
    return near(exact_low(now), exact_low(kept) * passage.factor, now.kind, subject) &&
           near(exact_high(now), exact_high(kept) * passage.factor, now.kind, subject);
  }

  bool near(Ratio now, Ratio kept, Kind kind, const Subject& subject) const {
    const Ratio off = base::abs(now - kept);
    if (kind != Kind::temperature) return off <= base::abs(kept) * most_rounding;
    const measure::KitchenTools& tools = now_.kitchen->tools;
    const Ratio fahrenheit = tools.oven_step_f * Ratio(5, 9);
    const Ratio dial = fahrenheit < tools.oven_step_c ? tools.oven_step_c : fahrenheit;
    return off <= (subject.oven ? dial : tools.thermometer_step_c + 1);
  }

  void keep_change(const Statement& now, const Statement& kept) {
    out_.findings.push_back(
        {"changed-after-conversion", base::Severity::warning, now.where,
         "\"" + now.text + "\" is no conversion of the author's \"" + kept.text + "\" any more: it was changed since",
         "\"" + now.text + "\" counts as the author's figure now; put the old one back by hand if the change was a slip",
         "common practice", {}, {}});
    Document& document = out_.document;
    const std::string text = spelled_for_author(now);
    if (now.at == At::unknown) {
      put_text(document, now.node, text);
      // A second figure that only a conversion wrote goes with it.
      if (document.find(now.node, At::was_also) == fiche::none) document.remove_attribute(now.node, At::also);
    } else {
      document.set_attribute(now.node, now.at, text);
    }
    document.remove_attribute(now.node, kept.at);
  }

  /// The text itself where it reads the same under the author's units, else exactly in base units.
  std::string spelled_for_author(const Statement& now) const {
    std::vector<Amount> amounts = figures_of(now);
    const auto read = now.value == fiche::Value::length ? measure::read_lengths(now.text, author_reading_)
                                                        : read_one(now.text, amounts.front().kind);
    if (read && read->size() == amounts.size() &&
        std::equal(read->begin(), read->end(), amounts.begin(), same_figure)) {
      return now.text;
    }
    return write_exactly(std::move(amounts), author_reading_);
  }

  base::Result<std::vector<Amount>> read_one(std::string_view text, Kind kind) const {
    const auto read = measure::read_amount(text, measure::set_of(kind), author_reading_);
    if (!read) return read.fault();
    return std::vector<Amount>{*read};
  }

  // ---- taking back

  void restore_below(Node node) {
    Document& document = out_.document;
    restore_element(document, node);
    for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
      if (document.kind(c) == fiche::NodeKind::element) restore_below(c);
    }
  }

  void restore_units(Node root) {
    Document& document = out_.document;
    const std::string units(document.get(root, At::was_units));
    if (units.empty()) return;
    document.remove_attribute(root, At::was_units);
    if (units == "none") return document.remove_attribute(root, At::units);
    document.set_attribute(root, At::units, units);
  }

  fiche::Fiche now_;
  measure::Reading author_reading_;
  Restored out_;
};

}  // namespace

void restore_element(Document& document, Node node) {
  if (document.find(node, At::was) != fiche::none) {
    put_text(document, node, document.get(node, At::was));
    document.remove_attribute(node, At::was);
    if (document.find(node, At::was_also) == fiche::none) document.remove_attribute(node, At::also);
  }
  if (document.el(node) == El::ingredient) take_back_food(document, node);
  std::vector<At> kept;
  for (fiche::Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a)) {
    const At at = author_name(document.at(a));
    if (document.at(a) != At::was_units && at != At::unknown) kept.push_back(at);
  }
  for (const At at : kept) put_back(document, node, at);
}

Restored restore_author(const Document& document, const fiche::Kitchen& kitchen) {
  return Restorer(document, kitchen).run();
}

}  // namespace tamis::change
