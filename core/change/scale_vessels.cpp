// Mixers and ovens that the new batch is too large or too small for. Food is taken at about 1 kg a litre (common
// practice: doughs a little more, creams a little less); where a machine states a mass, that is used.

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/utf8.h"
#include "core/change/scale_mould.h"
#include "core/change/scale_work.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using measure::Amount;

namespace {

/// A vessel with a least and a most, in g or ml.
struct Vessel {
  std::string name;
  std::optional<double> least, most;
  std::string least_text, most_text;
};

bool has_word(std::string_view words, std::string_view word) {
  while (!words.empty()) {
    const std::size_t end = std::min(words.find(' '), words.size());
    if (words.substr(0, end) == word) return true;
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return false;
}

class Vessels {
 public:
  explicit Vessels(ScaleWork& work)
      : work_(work), document_(work.document), equipment_(children_of(document_, document_.root(), El::equipment)) {
    for (const Node component : work_.author.components) {
      const auto own = children_of(document_, component, El::equipment);
      equipment_.insert(equipment_.end(), own.begin(), own.end());
    }
  }

  void run() {
    for (const flow::Step& step : work_.flow.steps) machine_of(step);
    yields();
    ovens();
  }

 private:
  // ---- machines

  Vessel vessel(std::string name, const Amount* least, const Amount* most) const {
    Vessel made{std::move(name), {}, {}, {}, {}};
    if (least != nullptr) {
      made.least = least->middle_base().approximate();
      made.least_text = work_.text(*least);
    }
    if (most != nullptr) {
      made.most = most->middle_base().approximate();
      made.most_text = work_.text(*most);
    }
    return made;
  }

  /// Vessels that "on" can mean: the fiche's own equipment where it states limits, else the kitchen's machines of that
  /// id or kind.
  std::vector<Vessel> vessels_for(std::string_view on) const {
    std::vector<Vessel> found;
    std::string kind(on);
    for (const Node equipment : equipment_) {
      if (document_.get(equipment, At::id) != on && !has_word(document_.get(equipment, At::kind), on)) continue;
      const Amount *least = work_.amount(equipment, At::least), *most = work_.amount(equipment, At::most);
      if (least != nullptr || most != nullptr) {
        const std::string name = document_.direct_text(equipment);
        return {vessel(std::string(base::trimmed(name)), least, most)};
      }
      if (!document_.get(equipment, At::kind).empty()) kind = document_.get(equipment, At::kind);
    }
    // A machine that is too small has others of its kind beside it.
    for (const fiche::Kitchen::Machine& machine : work_.kitchen.machines) {
      if (machine.id == on) kind = machine.kind;
    }
    for (const fiche::Kitchen::Machine& machine : work_.kitchen.machines) {
      if (machine.kind != kind) continue;
      const auto figure = [](const std::optional<Amount>& a) { return a && a->has_figure() ? &*a : nullptr; };
      found.push_back(
          vessel(machine.name.empty() ? machine.id : machine.name, figure(machine.least), figure(machine.most)));
    }
    return found;
  }

  void machine_of(const flow::Step& step) {
    if (!step.in || !(step.in->middle() > 0)) return;
    const std::string_view on = document_.get(step.node, At::on);
    const auto vessels = on.empty() ? std::vector<Vessel>() : vessels_for(on);
    if (vessels.empty()) return;
    const double author = step.in->middle();
    const double mass = author * work_.factor.approximate();
    const auto largest = std::max_element(vessels.begin(), vessels.end(), [](const Vessel& a, const Vessel& b) {
      return a.most.value_or(0) < b.most.value_or(0);
    });
    constexpr double near = 1.05;
    if (largest->most && mass > *largest->most * near) {
      if (said_.insert({step.component, largest->name}).second) split(step, *largest, mass);
      return;
    }
    const auto smallest = std::min_element(vessels.begin(), vessels.end(), [](const Vessel& a, const Vessel& b) {
      return a.least.value_or(0) < b.least.value_or(0);
    });
    if (smallest->least && mass * near < *smallest->least && said_.insert({step.component, smallest->name}).second) {
      work_.say("below-least", Severity::warning, document_.head_span(step.node),
                "about " + work_.grams(mass) + " is less than the " + smallest->name + " works with: at least " +
                    smallest->least_text,
                "make " + work_.grams(*smallest->least) + " and keep the rest, or do it by hand");
    }
  }

  void split(const flow::Step& step, const Vessel& vessel, double mass) {
    auto batches = static_cast<std::int64_t>(std::ceil(mass / *vessel.most));
    const double each = mass / static_cast<double>(batches);
    std::string message = "about " + work_.grams(mass) + " does not go into the " + vessel.name + " at once: it takes " +
                          vessel.most_text;
    base::Finding* said =
        work_.say("batch-split", Severity::advice, document_.head_span(step.node), std::move(message),
                  std::to_string(batches) + " batches of " + work_.grams(each) + " each" + shares(step, batches));
    if (said == nullptr || !vessel.least || each >= *vessel.least) return;
    said->severity = std::max(said->severity, Severity::warning);
    said->advice += "; that is less than the " + vessel.least_text + " it works with";
  }

  /// ": 438 g eggs, 219 g sugar" for the ingredients that this step takes whole.
  std::string shares(const flow::Step& step, std::int64_t batches) const {
    std::string out;
    for (const int at : step.takes) {
      const flow::Use& use = work_.flow.uses[static_cast<std::size_t>(at)];
      if (use.thing < 0 || !use.grams || use.mark == fiche::none) continue;
      const flow::Thing& thing = work_.flow.things[static_cast<std::size_t>(use.thing)];
      if (thing.kind != flow::Thing::Kind::ingredient) continue;
      const double grams = use.grams->middle() * work_.factor.approximate() / static_cast<double>(batches);
      out += (out.empty() ? ": " : ", ") + work_.grams(grams) + " " + std::string(thing.name);
    }
    return out;
  }

  // ---- the least and the most that a yield states

  void yields() {
    for (const Node yield : work_.author.yields) {
      if (document_.parent(yield) == document_.root() && yield != work_.yields.front()) continue;
      for (const At at : {At::least, At::most}) {
        const Amount* limit = work_.amount(yield, at);
        if (limit == nullptr) continue;
        const At own = limit->kind == measure::Kind::mass     ? At::mass
                       : limit->kind == measure::Kind::volume ? At::volume
                                                              : At::pieces;
        auto made = work_.number(yield, own);
        if (!made && own == At::pieces) made = work_.number(yield, At::portions);
        if (made) limit_of(yield, at, *limit, *made * work_.factor, own);
      }
    }
  }

  void limit_of(Node yield, At at, const Amount& limit, Ratio now, At own) {
    const Ratio bound = limit.middle_base();
    const base::Span where = document_.attribute_span(document_.find(yield, at));
    const std::string unit = own == At::mass ? "g" : own == At::volume ? "ml" : "piece";
    const std::string shown = work_.text(measure::amount_of(base::round_to(now, 1), *measure::unit_by_id(unit)));
    if (at == At::least && now < bound) {
      const Ratio over = base::round_to(bound - now, 1);
      work_.say("below-least", Severity::warning, where,
                "the batch comes to " + shown + ", the least that is made is " + work_.text(limit),
                "make the least and keep the rest: " +
                    work_.text(measure::amount_of(over, *measure::unit_by_id(unit))));
    }
    if (at == At::most && now > bound) {
      const Ratio rounds = now / bound;
      const std::int64_t batches = rounds.whole() ? rounds.numerator() : rounds.floor() + 1;
      work_.say("batch-split", Severity::advice, where,
                "the batch comes to " + shown + ", the most that is made at once is " + work_.text(limit),
                std::to_string(batches) + " batches, each " + work_.text(base::round_to(work_.factor / batches, Ratio(1, 100))) +
                    " times the fiche");
    }
  }

  // ---- ovens

  std::int64_t trays_of_kitchen() const {
    const auto& kitchen = work_.kitchen.document;
    std::int64_t most = 0;
    for (const fiche::Kitchen::Oven& oven : work_.kitchen.ovens) {
      if (kitchen == nullptr || oven.node == fiche::none) continue;
      const auto trays = measure::read_number(kitchen->get(oven.node, At::trays), work_.kitchen.reading);
      if (trays) most = std::max(most, trays->floor());
    }
    return most;
  }

  /// So many of them stand on a baker's tray of 60 × 40 cm, a finger apart (common practice).
  static std::int64_t on_a_tray(const MouldSize& mould) {
    const double gap = 10;
    const double length = (mould.diameter ? mould.diameter : mould.length).value_or(600).approximate() + gap;
    const double width = (mould.diameter ? mould.diameter : mould.width).value_or(400).approximate() + gap;
    const auto fit = [](double side, double one) { return static_cast<std::int64_t>((side + 10) / one); };
    return std::max<std::int64_t>(1, std::max(fit(600, length) * fit(400, width), fit(600, width) * fit(400, length)));
  }

  void ovens() {
    const std::int64_t trays = trays_of_kitchen();
    const Node yield = work_.yields.empty() ? fiche::none : work_.yields.front();
    const Node node = sized_mould(work_, yield);
    if (node == fiche::none) return;
    const MouldSize own = mould_of(document_, node, work_.author.reading);
    const MouldSize& now = work_.mould ? *work_.mould : own;
    const Ratio count = work_.mould ? now.count : own.count * work_.factor;
    for (const fiche::Step& step : work_.author.steps) {
      if (document_.get(step.node, At::on) != "oven" && !has_oven(step.node)) continue;
      const auto load = work_.number(step.node, At::load);
      const Ratio room = load ? *load : Ratio(trays * on_a_tray(now));
      if (!(room > 0) || count <= room || own.count > room) continue;
      const Ratio loads = count / room;
      const std::int64_t rounds = loads.whole() ? loads.numerator() : loads.floor() + 1;
      work_.say("oven-loads", Severity::advice, document_.head_span(step.node),
                work_.text(base::round_to(count + Ratio(49, 100), 1)) + " × " +
                    (now.name.empty() ? now.shape : now.name) + " do not go into the oven at once: it takes " +
                    work_.text(room),
                "bake " + std::to_string(rounds) + " loads; the time stays, the waiting ones keep cold or covered");
      return;
    }
  }

  bool has_oven(Node step) const {
    for (const fiche::Statement& one : work_.author.statements) {
      if (document_.el(one.node) == El::oven_temp && document_.parent(one.node) == step) return true;
    }
    return false;
  }

  ScaleWork& work_;
  const Document& document_;
  std::vector<Node> equipment_;
  std::set<std::pair<Node, std::string>> said_;
};

}  // namespace

void look_at_vessels(ScaleWork& work) { Vessels(work).run(); }

}  // namespace tamis::change
