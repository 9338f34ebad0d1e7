// What a larger or smaller batch does not simply multiply. Said once a step at most, and only where the batch differs
// enough to tell; the same moulds, only more of them, keep their times, and nothing is said.

#include <algorithm>

#include "core/change/scale_work.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using food::Role;

namespace {

bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

class Stays {
 public:
  explicit Stays(ScaleWork& work) : work_(work), document_(work.document) {
    times_ = work_.text(base::round_to(work.factor, Ratio(1, 100)));
  }

  void run() {
    for (const fiche::Step& step : work_.author.steps) look_at(step);
    if (larger(4) || smaller(4)) leavening();
    if (larger(4)) seasoning();
    if (larger(Ratio(3, 2))) hands_on();
  }

 private:
  [[nodiscard]] bool larger(Ratio times) const { return work_.factor >= times; }
  [[nodiscard]] bool smaller(Ratio times) const { return work_.factor <= Ratio(1) / times; }
  [[nodiscard]] bool differs() const { return larger(Ratio(5, 4)) || smaller(Ratio(5, 4)); }

  static bool does(const fiche::Step& step, std::initializer_list<std::string_view> words) {
    return std::any_of(step.actions.begin(), step.actions.end(), [&](std::string_view a) { return one_of(a, words); });
  }

  /// A mark of time in the step's sentence, or its unattended time; of those for one batch only, none.
  std::optional<base::Span> stated_time(const fiche::Step& step) const {
    for (const fiche::Statement& one : work_.author.statements) {
      if (document_.el(one.node) != El::time || document_.find(one.node, At::batch) != fiche::none) continue;
      if (document_.find(one.node, At::depth) == fiche::none && document_.parent(one.node) == step.node) return one.where;
    }
    const fiche::Attr unattended = document_.find(step.node, At::unattended);
    if (unattended == fiche::none) return std::nullopt;
    return document_.value_span(unattended);
  }

  /// The component bakes or sets in the moulds of the fiche or its own: more of the same ones keep their time.
  bool in_moulds(Node component) const {
    if (component != fiche::none) {
      for (const Node yield : children_of(document_, component, El::yield)) {
        if (!children_of(document_, yield, El::mould).empty()) return true;
      }
    }
    if (work_.yields.empty() || children_of(document_, work_.yields.front(), El::mould).empty()) return false;
    return std::any_of(work_.author.steps.begin(), work_.author.steps.end(), [&](const fiche::Step& step) {
      return step.component == component &&
             does(step, {"bake", "roast", "spread", "fill", "pour", "assemble", "line", "pipe", "mould", "layer"});
    });
  }

  /// Says it at the first place; at further ones of the same rule and message, adds the place to that finding.
  void say_once(std::string_view rule, base::Span where, std::string message, std::string advice,
                std::string source = "common practice") {
    for (base::Finding& said : work_.findings) {
      if (said.rule != rule || said.message != message) continue;
      said.related.push_back({where, "and here", {}, {}, {}});
      return;
    }
    work_.say(rule, Severity::warning, where, std::move(message), std::move(advice), std::move(source));
  }

  /// More rolls of the same size keep their time.
  bool makes_pieces() const {
    if (work_.yields.empty()) return false;
    const Node yield = work_.yields.front();
    return document_.find(yield, At::pieces) != fiche::none || document_.find(yield, At::each) != fiche::none;
  }

  void look_at(const fiche::Step& step) {
    if (document_.find(step.node, At::batch) != fiche::none) return;
    if (is_reduction(step)) return reduction(step);
    if (does(step, {"bake", "roast"})) return baking(step);
    if (!differs()) return;
    if (does(step, {"whisk", "whip", "knead", "mix", "beat", "cream"})) return whisking(step);
    if (does(step, {"chill", "cool", "freeze"}) && !in_moulds(step.component)) return cooling(step);
  }

  // ---- reduction

  bool is_reduction(const fiche::Step& step) const {
    return does(step, {"reduce"}) || document_.find(step.node, At::reduce_by) != fiche::none ||
           document_.find(step.node, At::reduce_to) != fiche::none;
  }

  void reduction(const fiche::Step& step) {
    if (!differs()) return;
    const fiche::Attr to = document_.find(step.node, At::reduce_to);
    const bool known = to != fiche::none || document_.find(step.node, At::reduce_by) != fiche::none;
    say_once("reduction-not-scaled", document_.head_span(step.node),
              "the batch is " + times_ + " times the author's, but a pan boils off by its surface: the time for this "
              "reduction does not follow",
              known ? "weigh the pan empty and go by the weight or the measure left, in a wider pan or in several"
                    : "weigh what is left of the author's batch once and reduce to " + times_ + " times that");
  }

  // ---- times by depth and mass

  void baking(const fiche::Step& step) {
    const auto time = stated_time(step);
    if (!time) return;
    if (work_.depth_changes) {
      say_once("time-not-scaled", *time,
                "the food stands at another depth than the author's; the time was left as it is",
                "look early and go by the cue and the core: twice as deep takes up to four times as long",
                "conduction: the time grows with the square of the thickness");
      return;
    }
    // Without moulds or pieces a joint or a loaf may itself be larger.
    if (!in_moulds(step.component) && !(does(step, {"bake"}) && makes_pieces()) && differs()) {
      say_once("time-not-scaled", *time,
                "the batch is " + times_ + " times the author's, and the fiche names no mould: the time holds for pieces "
                "of the author's size",
                "make more pieces of the same size, or go by the core");
    }
  }

  void cooling(const fiche::Step& step) {
    const auto time = stated_time(step);
    if (!time || !larger(Ratio(3, 2))) return;
    say_once("time-not-scaled", *time,
              times_ + " times as much in one vessel cools more slowly; the time was left as it is",
              "divide it into shallow vessels, no deeper than the author's, and probe the middle");
  }

  // ---- mixing

  void whisking(const fiche::Step& step) {
    const std::string_view on = document_.get(step.node, At::on);
    const bool by_machine = on.find("mixer") != std::string_view::npos || !work_.kitchen.machines.empty();
    const auto time = stated_time(step);
    if (!time || !by_machine || document_.find(step.node, At::unattended) != fiche::none) return;
    work_.say("whisking-not-scaled", Severity::advice, *time,
              "the time is for the author's bowl; " + times_ + " times as much in a larger machine takes another",
              "go by the cue: the ribbon, the peak, the dough that comes off the bowl");
  }

  // ---- leavening and seasoning

  /// One finding for all ingredients of these roles: at the first one, the others named.
  void by_role(std::string_view rule, std::initializer_list<Role> roles, const std::string& what,
               const std::string& advice) {
    base::Finding* said = nullptr;
    for (const fiche::Ingredient& one : work_.author.ingredients) {
      if (one.food == nullptr || std::find(roles.begin(), roles.end(), one.food->role) == roles.end()) continue;
      if (one.amount < 0 || !work_.author.statements[static_cast<std::size_t>(one.amount)].amount) continue;
      const measure::Amount& amount = *work_.author.statements[static_cast<std::size_t>(one.amount)].amount;
      if (!amount.has_figure() || document_.find(one.node, At::per) != fiche::none) continue;
      if (work_.verbatim) return;  // the author has stated it for this batch
      if (said != nullptr) {
        said->related.push_back({document_.head_span(one.node), "and this one", {}, {}, {}});
        continue;
      }
      const std::string name(one.name.empty() ? one.food->english.substr(0, one.food->english.find('|')) : one.name);
      said = work_.say(rule, Severity::advice, document_.head_span(one.node), name + what, advice);
      if (said == nullptr) return;
    }
  }

  void leavening() {
    const bool more = larger(4);
    by_role("leavening-not-scaled", {Role::yeast, Role::leavening},
            ": multiplied by " + times_ + " like the rest" +
                (more ? "; a large dough stays warm and works faster" : "; a small dough cools and works more slowly"),
            more ? "watch the dough, not the clock, and trim the leavening after a trial"
                 : "keep the dough warm, and give it time");
  }

  void seasoning() {
    by_role("seasoning-not-scaled", {Role::salt, Role::spice},
            ": multiplied by " + times_ + " like the rest; in a large batch that is often too much",
            "where the dish can be tasted, put in three quarters, taste, then the rest; doughs and cures take all of it");
  }

  // ---- hands

  void hands_on() {
    if (work_.verbatim) return;
    for (const fiche::Step& step : work_.author.steps) {
      const fiche::Attr hands = document_.find(step.node, At::hands);
      if (hands == fiche::none) continue;
      work_.say("hands-on-not-scaled", Severity::advice, document_.attribute_span(hands),
                "hands-on times are those of the author's batch; this one is " + times_ + " times as much",
                "plan more time or more hands for what is done piece by piece: cutting, filling, portioning");
      return;
    }
  }

  ScaleWork& work_;
  const Document& document_;
  std::string times_;
};

}  // namespace

void say_what_stays(ScaleWork& work) { Stays(work).run(); }

}  // namespace tamis::change
