#include "core/flow/step_says.h"

#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/flow/heat_words.h"
#include "core/flow/how_warm.h"
#include "core/flow/stated_time.h"
#include "core/measure/bound.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

class Reader {
 public:
  Reader(const fiche::Fiche& fiche, const Flow& flow, const Step& step, bool heats, bool poaches, std::vector<GoingIn>& uses)
      : fiche_(fiche), flow_(flow), step_(step), document_(*fiche.document), heats_(heats), poaches_(poaches), uses_(uses) {}

  StepSays read() {
    for (const int use : step_.takes) read_use(use);
    inside(step_.node, false);
    if (out_.food_mark != fiche::none) read_behind();
    if (heats_) read_between();
    return out_;
  }

 private:
  // ---- what is taken
  const food::Food* food_of(const Thing& thing) const {
    return thing.kind == Thing::Kind::ingredient ? fiche_.ingredients[idx(thing.ingredient)].food : nullptr;
  }

  void read_use(int number) {
    const Use& use = flow_.uses[idx(number)];
    if (use.mark == fiche::none) return;
    const food::Food* food = food_of(flow_.things[idx(use.thing)]);
    std::optional<Range>& celsius = uses_[idx(number)].celsius;
    const Node before = document_.previous(use.mark);
    if (before != fiche::none && document_.kind(before) == fiche::NodeKind::text) {
      celsius = how_warm(last_word(document_.value(before)), food, *fiche_.kitchen);
    }
    const Node words = document_.first_child(use.mark);
    if (words != fiche::none && document_.kind(words) == fiche::NodeKind::text) put(celsius, how_warm(document_.value(words), food, *fiche_.kitchen));
    put(celsius, how_warm(document_.get(use.mark, At::as), food, *fiche_.kitchen));
    if (const fiche::Statement* at = fiche_.statement(use.mark, At::at)) say(number, celsius_meant(*at, *fiche_.kitchen));
  }

  static void put(std::optional<Range>& into, const std::optional<Range>& stated) {
    if (stated) into = into && (std::isinf(stated->low) || std::isinf(stated->high)) ? narrowed(*into, *stated) : *stated;
  }

  /// By a figure, which takes the place of words.
  void say(int use, const std::optional<Range>& stated) {
    if (!stated) return;
    GoingIn& going = uses_[idx(use)];
    put(going.celsius, stated);
    going.figure = true;
  }

  static std::string_view last_word(std::string_view text) {
    text = base::trimmed(text);
    const std::size_t space = text.find_last_of(" \t\n\r");
    return space == text.npos ? text : text.substr(space + 1);
  }

  // ---- the sentence, and what must hold
  /// `gate`: inside one, or a control, of what the step makes.
  void inside(Node around, bool gate) {
    for (Node c = document_.first_child(around); c != fiche::none; c = document_.next(c)) {
      if (document_.kind(c) == fiche::NodeKind::element) element(c, gate);
    }
  }

  void element(Node n, bool gate) {
    switch (document_.el(n)) {
      case El::food_temp: return food_temp(n, gate);
      case El::oven_temp: return surround(n, out_.oven);
      case El::medium_temp: return surround(n, out_.medium);
      case El::room_temp: return surround(n, out_.room);
      case El::until: return inside(n, gate);
      case El::use: return inside_use(n, gate);
      case El::length: return length(n);
      case El::tool: return tool(n);
      case El::gate:
      case El::control: return inside_gate(n);
      default: return;
    }
  }

  void surround(Node n, std::optional<Range>& into) {
    const fiche::Statement* said = fiche_.statement(n);
    const auto meant = said == nullptr ? std::nullopt : celsius_meant(*said, *fiche_.kitchen);
    if (meant) into = into ? hull_of(*into, *meant) : *meant;
  }

  void food_temp(Node n, bool gate) {
    const fiche::Statement* said = fiche_.statement(n);
    auto meant = said == nullptr ? std::nullopt : celsius_meant(*said, *fiche_.kitchen);
    if (!meant || document_.get(n, At::place) == "surface") return;
    open_by_words(n, *meant);
    if (!gate && (is_a_moment(n, *meant) || is_of_the_use_before(n, *meant))) return;
    const std::string_view of = document_.get(n, At::of);
    if (!of.empty() && !is_given(of)) {
      if (gate || !poaches_) return say_of_taken(of, *meant);
      out_.liquid = out_.liquid ? hull_of(*out_.liquid, *meant) : *meant;
      return;
    }
    if (const fiche::Statement* held = fiche_.statement(n, At::for_)) {
      if (const auto time = time_meant(*held, *fiche_.kitchen)) out_.held_s = std::max(out_.held_s, static_cast<double>(time->least));
    }
    if (gate) {
      put(out_.end, meant);
      return;
    }
    out_.food = *meant;
    out_.food_mark = n;
    if (!out_.hottest || meant->low > out_.hottest->low) out_.hottest = *meant;
  }

  /// "below 6 °C", "never above 84 °C", where the words stand before the mark.
  void open_by_words(Node n, Range& meant) const {
    const Node before = document_.previous(n);
    if (before == fiche::none || document_.kind(before) != fiche::NodeKind::text) return;
    const measure::Bound bound = measure::bound_before(document_.value(before), fiche_.language);
    if (bound == measure::Bound::most || bound == measure::Bound::unclear) meant.low = -open_end;
    if (bound == measure::Bound::least || bound == measure::Bound::unclear) meant.high = open_end;
  }

  [[nodiscard]] std::string word_before(Node n) const {
    const Node before = document_.previous(n);
    if (before == fiche::none || document_.kind(before) != fiche::NodeKind::text) return {};
    return base::lower(last_word(document_.value(before)));
  }

  /// "At 60 °C blend in the butter": of the one thing made before that it takes, which is said there to be so warm. "Boil
  /// to 121 °C. At 114 °C start the mixer": of nothing that comes of it.
  bool is_a_moment(Node n, const Range& meant) {
    const std::string word = word_before(n);
    if (word != "at" && word != "à" && word != "bei" && word != "a") return false;
    bool use_before = false, use_behind = false;
    int made = -1, several = 0;
    for (const int number : step_.takes) {
      const Use& use = flow_.uses[idx(number)];
      use_before = use_before || (use.mark != fiche::none && use.mark < n);
      use_behind = use_behind || (use.mark != fiche::none && use.mark > n);
      if (flow_.things[idx(use.thing)].maker < 0) continue;
      made = number;
      ++several;
    }
    if (!use_before && use_behind && several == 1 && step_.takes.size() > 1) {
      say(made, meant);
      return true;
    }
    return out_.food && !use_behind;
  }

  /// "Fold in the melted butter at 60 °C": of the butter, where several things meet and nothing is heated.
  bool is_of_the_use_before(Node n, const Range& meant) {
    const int number = use_before(document_, step_, flow_, n);
    if (heats_ || number < 0 || step_.takes.size() < 2) return false;
    say(number, meant);
    return true;
  }

  [[nodiscard]] bool is_given(std::string_view id) const {
    return std::any_of(step_.gives.begin(), step_.gives.end(), [&](int thing) { return flow_.things[idx(thing)].id == id; });
  }

  void say_of_taken(std::string_view id, const Range& meant) {
    for (const int use : step_.takes) {
      if (flow_.things[idx(flow_.uses[idx(use)].thing)].id == id) say(use, meant);
    }
  }

  /// "the custard (24 °C)": a temperature inside the mark is of what it takes.
  void inside_use(Node mark, bool gate) {
    if (gate) return;
    for (Node c = document_.first_child(mark); c != fiche::none; c = document_.next(c)) {
      if (document_.kind(c) != fiche::NodeKind::element || document_.el(c) != El::food_temp) continue;
      const fiche::Statement* said = fiche_.statement(c);
      const auto meant = said == nullptr ? std::nullopt : celsius_meant(*said, *fiche_.kitchen);
      for (const int use : step_.takes) {
        if (flow_.uses[idx(use)].mark == mark) say(use, meant);
      }
    }
  }

  void inside_gate(Node n) {
    const std::string_view of = document_.get(n, At::of);
    if (of.empty() || is_given(of)) return inside(n, true);
    for (Node c = document_.first_child(n); c != fiche::none; c = document_.next(c)) {
      if (document_.kind(c) != fiche::NodeKind::element || document_.el(c) != El::food_temp) continue;
      const fiche::Statement* said = fiche_.statement(c);
      if (const auto meant = said == nullptr ? std::nullopt : celsius_meant(*said, *fiche_.kitchen)) say_of_taken(of, *meant);
    }
  }

  /// "1 cm deep", "2 cm dick".
  void length(Node n) {
    const fiche::Statement* said = fiche_.statement(n);
    const Node behind = document_.next(n);
    if (said == nullptr || said->lengths.size() != 1 || behind == fiche::none || document_.kind(behind) != fiche::NodeKind::text) return;
    std::string_view words = base::trimmed(document_.value(behind));
    const std::string next = base::lower(words.substr(0, words.find_first_of(" ,.;")));
    if (next != "deep" && next != "thick" && next != "high" && next != "d'épaisseur" && next != "dick" && next != "hoch" && next != "tief") return;
    const measure::Amount& length = said->lengths.front();
    if (!length.has_figure() || !length.middle_base().ok()) return;
    out_.depth_mm = length.middle_base().approximate();
    out_.depth = n;
  }

  void tool(Node n) {
    const std::string_view ref = document_.get(n, At::ref);
    if (ref.empty()) return;
    for (auto [known, end] = fiche_.ids.equal_range(ref); known != end; ++known) {
      if (document_.el(known->second) == El::mould) out_.vessel = known->second;
    }
  }

  /// The words between the first and the last thing it names, and behind that.
  void read_between() {
    Node first = fiche::none, last = fiche::none;
    for (const int number : step_.takes) {
      const Node mark = flow_.uses[idx(number)].mark;
      if (mark == fiche::none || document_.parent(mark) != step_.node) continue;
      if (first == fiche::none || mark < first) first = mark;
      if (last == fiche::none || mark > last) last = mark;
    }
    if (first == last) return;
    std::string between, behind;
    for (Node c = document_.next(first); c != fiche::none; c = document_.next(c)) {
      if (document_.kind(c) != fiche::NodeKind::text) continue;
      (c < last ? between : behind) += document_.value(c);
    }
    out_.heats_a_part = says_joining(base::lower(between)) && !says_to_heat(base::lower(behind));
  }

  void read_behind() {
    std::string words;
    bool goes_on = false;
    for (Node up = out_.food_mark; up != step_.node; up = document_.parent(up)) {
      for (Node c = document_.next(up); c != fiche::none; c = document_.next(c)) {
        const bool text = document_.kind(c) == fiche::NodeKind::text;
        if (!text && (document_.kind(c) != fiche::NodeKind::element || !says_on(document_.el(c)))) continue;
        const bool lasts = !text && (document_.el(c) == El::until || document_.el(c) == El::time);
        goes_on = goes_on || (lasts && says_off_the_heat(base::lower(words)));
        words += document_.all_text(c);
        words += ' ';
      }
    }
    words = base::lower(words);
    out_.off_the_heat = says_off_the_heat(words);
    out_.cools_after = says_to_cool(words) || (out_.off_the_heat && goes_on);
    out_.heats_after = says_heating(words) && !out_.off_the_heat;
  }

  static bool says_on(El el) {
    return el == El::use || el == El::until || el == El::time || el == El::tool || el == El::medium_temp || el == El::room_temp;
  }

  const fiche::Fiche& fiche_;
  const Flow& flow_;
  const Step& step_;
  const fiche::Document& document_;
  bool heats_;
  bool poaches_;
  std::vector<GoingIn>& uses_;
  StepSays out_;
};

}  // namespace

int use_before(const fiche::Document& document, const Step& step, const Flow& flow, Node figure) {
  const Node between = document.previous(figure);
  if (between == fiche::none || document.kind(between) != fiche::NodeKind::text) return -1;
  const std::string words = base::lower(base::trimmed(document.value(between)));
  if (words != "at" && words != "à" && words != "bei" && words != "a" && words != ", at" && words != "(") return -1;
  const Node mark = document.previous(between);
  for (const int number : step.takes)
    if (mark != fiche::none && flow.uses[idx(number)].mark == mark) return number;
  return -1;
}

StepSays read_step_says(const fiche::Fiche& fiche, const Flow& flow, const Step& step, bool heats, bool poaches,
                        std::vector<GoingIn>& uses) {
  return Reader(fiche, flow, step, heats, poaches, uses).read();
}

bool is_covered(const fiche::Document& document, Node step) {
  for (Node c = document.first_child(step); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::text && says_covered(document.value(c))) return true;
  }
  return false;
}

bool goes_in_gradually(const fiche::Fiche& fiche, const Flow& flow, int use) {
  const Use& taken = flow.uses[idx(use)];
  const fiche::Document& document = *fiche.document;
  if (taken.mark != fiche::none && says_gradually(base::lower(document.get(taken.mark, At::as)))) return true;
  std::string words;
  const Node step = flow.steps[idx(taken.step)].node;
  for (Node c = document.first_child(step); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::text) words += document.value(c);
  }
  return says_gradually(base::lower(words));
}

}  // namespace tamis::flow
