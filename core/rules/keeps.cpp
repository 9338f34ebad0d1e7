#include "core/rules/keeps.h"

#include "core/base/utf8.h"
#include "core/rules/gate_steps.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hot_from = 35;   // °C: held warmer than that, it is meant to be hot
constexpr double frozen_to = -5;  // °C

bool says_frozen(std::string_view words) {
  return says(words, {"freez", "frozen", "congél", "surgel", "tiefk", "gefr", "congel"});
}
bool says_fridge(std::string_view words) {
  return says(words, {"fridge", "refrigerat", "cold", "chill", "frigo", "réfrig", "froid", "chambre froide",
                      "kühl", "kalt", "nevera", "frigor", "cámara", "frío"});
}
bool says_hot(std::string_view words) {
  return says(words, {"water bath", "bain", "hot", "hob", "oven", "warm", "steam table", "four", "chaud", "ofen",
                      "heiß", "wasserbad", "baño", "horno", "caliente"});
}

/// By where it stands; where that says nothing, by its temperature.
Store store_of(std::string_view where, const std::optional<double>& low, const std::optional<double>& high) {
  if (says_frozen(where)) return Store::freezer;
  if (says_hot(where)) return Store::hot;
  if (says_fridge(where)) return Store::fridge;
  const std::optional<double>& any = high ? high : low;
  if (!any) return Store::dry;
  return *any <= frozen_to  ? Store::freezer
         : *any >= hot_from ? Store::hot
         : *any < 12        ? Store::fridge
                            : Store::dry;
}

class Reader {
 public:
  explicit Reader(const Check& check) : check_(check) {}

  std::vector<Kept> read() {
    for (const auto& [node, rule] : check_.structure.elements) {
      if (rule->el == El::keep) keep(node);
    }
    for (int step = 0; step < static_cast<int>(check_.flow.steps.size()); ++step) {
      if (does(check_, step, {"hold", "keep", "store"})) hold(step);
    }
    return std::move(out_);
  }

 private:
  /// The step that makes what is kept: of a result the one that names it, of a component its last, of the fiche
  /// the last.
  [[nodiscard]] int maker_of(Node keep) const {
    const std::string_view of = check_.document.get(keep, At::of);
    const int thing =
        of.empty() ? check_.flow.thing_of(check_.document.parent(keep)) : check_.flow.thing_named(of);
    if (thing >= 0) return check_.flow.things[at(thing)].maker;
    return of.empty() && check_.document.parent(keep) == check_.document.root()
               ? static_cast<int>(check_.flow.steps.size()) - 1
               : -1;
  }

  void set_heat(Kept& kept, const fiche::Statement* heat) const {
    if (heat == nullptr || !heat->amount || !heat->amount->has_figure()) return;
    kept.heat = heat;
    kept.low = low_of(*heat);
    kept.high = high_of(*heat);
  }

  void set_time(Kept& kept, const fiche::Statement* time) const {
    if (time == nullptr) return;
    kept.time = time;
    kept.length = flow::time_meant(*time, check_.kitchen);
  }

  void keep(Node node) {
    Kept kept;
    kept.node = node;
    kept.step = maker_of(node);
    if (kept.step < 0) return;
    const std::string where = base::lower(check_.document.get(node, At::where));
    kept.words = where + " " + base::lower(check_.document.all_text(node)) + " " +
                 base::lower(check_.document.get(node, At::reheat));
    set_heat(kept, check_.fiche.statement(node, At::at));
    set_time(kept, check_.fiche.statement(node, At::for_));
    kept.store = store_of(where, kept.low, kept.high);
    out_.push_back(std::move(kept));
  }

  void hold(int step) {
    const Node node = check_.flow.steps[at(step)].node;
    Kept kept;
    kept.node = node;
    kept.step = step;
    kept.holds = true;
    kept.words = words_of(check_, step);
    for (Node c = check_.document.first_child(node); c != fiche::none; c = check_.document.next(c)) {
      if (check_.document.el(c) == El::control)
        kept.words += " " + base::lower(check_.document.get(c, At::action));
    }
    for (const StatedHeat& heat : stated_heats(check_, node)) {
      if (heat.el != El::oven_temp && check_.document.get(heat.statement->node, At::place) != "surface")
        set_heat(kept, heat.statement);
    }
    set_time(kept, check_.fiche.statement(node, At::unattended));
    for (const flow::TimeMark& mark : flow::time_marks(check_.fiche, node)) set_time(kept, mark.statement);
    kept.store = store_of(kept.words + " " + std::string(check_.document.get(node, At::on)), kept.low, kept.high);
    if (kept.low || kept.high) kept.store = store_of({}, kept.low, kept.high);
    out_.push_back(std::move(kept));
  }

  const Check& check_;
  std::vector<Kept> out_;
};

}  // namespace

const std::vector<Kept>& keeps_of(const Check& check) {
  struct All {
    std::vector<Kept> keeps;
  };
  return check.once<All>([&] { return All{Reader(check).read()}; }).keeps;
}

bool says_thrown_away(std::string_view text) {
  return says(text, {"thrown", "throw", "discard", "bin ", "jet", "wegwerf", "weggeworfen", "verwirf", "verworfen",
                     "desech", "tira"});
}

bool keeps_otherwise(std::string_view text) {
  return says(text, {"jar",   "canned", "tinned", "bottled",  "steril",   "vacuum",     "brine",   "dried",
                     "cured", "salted", "bocal",  "bocaux",   "conserve", "eingeweckt", "einmach", "dose",
                     "tarro", "lata",   "fridge", "refriger", "frigo",    "kühl",       "nevera"});
}

const std::string& cautions_of(const Check& check) {
  struct Cautions {
    std::string words;
  };
  return check
      .once<Cautions>([&] {
        Cautions made;
        for (const auto& [node, rule] : check.structure.elements) {
          if (rule->el == El::caution) made.words += base::lower(check.document.all_text(node)) + " ";
        }
        return made;
      })
      .words;
}

}  // namespace tamis::rules
