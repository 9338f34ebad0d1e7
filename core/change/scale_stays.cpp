// What a larger or smaller batch does not simply multiply. Said once a step at most, and only where the batch differs
// enough to tell; the same moulds, only more of them, keep their times, and nothing is said.

#include <algorithm>

#include "core/change/scale_step.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using food::Role;

namespace {

class Stays {
 public:
  explicit Stays(ScaleWork& work) : at_(work), work_(work), document_(work.document) {}

  void run() {
    for (const fiche::Step& step : work_.author.steps) look_at(step);
    if (at_.larger(4) || at_.smaller(4)) leavening();
    if (at_.larger(4)) seasoning();
    if (at_.larger(Ratio(3, 2))) hands_on();
  }

 private:
  void look_at(const fiche::Step& step) {
    if (document_.find(step.node, At::batch) != fiche::none) return;
    if (is_reduction(step)) return reduction(step);
    if (at_.differs() && ScaleStep::does(step, {"whisk", "whip", "knead", "mix", "beat", "cream"}) &&
        !ScaleStep::does(step, {"bake", "roast"}))
      return whisking(step);
    look_at_time(at_, step);
  }

  // ---- reduction

  bool is_reduction(const fiche::Step& step) const {
    return ScaleStep::does(step, {"reduce"}) || document_.find(step.node, At::reduce_by) != fiche::none ||
           document_.find(step.node, At::reduce_to) != fiche::none;
  }

  void reduction(const fiche::Step& step) {
    if (!at_.differs()) return;
    const fiche::Attr to = document_.find(step.node, At::reduce_to);
    const bool known = to != fiche::none || document_.find(step.node, At::reduce_by) != fiche::none;
    at_.say_once("reduction-not-scaled", document_.head_span(step.node),
              "the batch is " + at_.how_often + " times the author's, but a pan boils off by its surface: the time for this "
              "reduction does not follow",
              known ? "weigh the pan empty and go by the weight or the measure left, in a wider pan or in several"
                    : "weigh what is left of the author's batch once and reduce to " + at_.how_often + " times that");
  }

  // ---- mixing

  void whisking(const fiche::Step& step) {
    const std::string_view on = document_.get(step.node, At::on);
    const bool by_machine = on.find("mixer") != std::string_view::npos || !work_.kitchen.machines.empty();
    const auto time = at_.stated_time(step);
    if (!time || !by_machine || document_.find(step.node, At::unattended) != fiche::none) return;
    work_.say("whisking-not-scaled", Severity::advice, time->where,
              "the time is for the author's bowl; " + at_.how_often + " times as much in a larger machine takes another",
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
    const bool more = at_.larger(4);
    by_role("leavening-not-scaled", {Role::yeast, Role::leavening},
            ": multiplied by " + at_.how_often + " like the rest" +
                (more ? "; a large dough stays warm and works faster" : "; a small dough cools and works more slowly"),
            more ? "watch the dough, not the clock, and trim the leavening after a trial"
                 : "keep the dough warm, and give it time");
  }

  void seasoning() {
    by_role("seasoning-not-scaled", {Role::salt, Role::spice},
            ": multiplied by " + at_.how_often + " like the rest; in a large batch that is often too much",
            "where the dish can be tasted, put in three quarters, taste, then the rest; doughs and cures take all of it");
  }

  // ---- hands

  void hands_on() {
    if (work_.verbatim) return;
    for (const fiche::Step& step : work_.author.steps) {
      const fiche::Attr hands = document_.find(step.node, At::hands);
      if (hands == fiche::none) continue;
      work_.say("hands-on-not-scaled", Severity::advice, document_.attribute_span(hands),
                "hands-on times are those of the author's batch; this one is " + at_.how_often + " times as much",
                "plan more time or more hands for what is done piece by piece: cutting, filling, portioning");
      return;
    }
  }

  ScaleStep at_;
  ScaleWork& work_;
  const Document& document_;
};

}  // namespace

void say_what_stays(ScaleWork& work) { Stays(work).run(); }

}  // namespace tamis::change
