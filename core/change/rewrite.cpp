#include "core/change/rewrite.h"

#include <algorithm>
#include <optional>
#include <set>

#include "core/change/kept.h"
#include "core/change/oven.h"
#include "core/change/subject.h"

// A figure has up to two places: the text (or an attribute) and also. First the text's figure is chosen: the author's
// own where one stands in the wanted system and kind, else a conversion. Then also's, which must say more than the
// text. convert.h tells the rules; the author's document (Work::author) is read, the work's document written.

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;
using measure::System;

namespace {

using Amounts = std::vector<Amount>;
using By = ConvertWish::By;

constexpr const char* tolerance_source = "the food's tolerance (common practice)";

/// A figure chosen for a place, and the words for it.
struct Choice {
  Amounts amounts;
  std::string text;
  bool own = false;  ///< the author's words, not to be changed
};

/// What stands in one element (or attribute): the author's figure, the second one, and what they are of.
struct Pair {
  const Statement* text = nullptr;
  const Statement* also = nullptr;
  Amounts figure, second;  ///< second is empty when there is none that can be read
  Subject subject;
  const Swap* swap = nullptr;
};

/// A pair on its way: the text's figure, or another oven's.
struct Place {
  Pair pair;
  std::optional<Choice> text;
  std::optional<int> shift;
};

bool all_stand_in(const Amounts& amounts, System system) {
  return std::all_of(amounts.begin(), amounts.end(), [system](const Amount& a) { return stands_in(a, system); });
}

bool weighs_or_fills(Kind kind) { return kind == Kind::mass || kind == Kind::volume; }

bool is_poured(const food::Food& food, Kind author_kind) {
  switch (food.role) {
    case food::Role::liquid:
    case food::Role::alcohol: return true;
    case food::Role::dairy: return author_kind == Kind::volume;
    default: return false;
  }
}

class Rewriter {
 public:
  explicit Rewriter(Work& work) : work_(work), units_(work.wish.units) {}

  void run() {
    for (const Statement& statement : work_.author.statements) {
      if (statement.at == At::also || !is_ours(statement)) continue;
      Place place{pair_of(statement), std::nullopt, std::nullopt};
      if (place.pair.figure.empty()) continue;
      place.shift = statement.at == At::unknown ? shift_of(statement.node) : std::nullopt;
      if (!place.shift) place.text = choose_figure(place.pair);
      places_.push_back(std::move(place));
    }
    // A document whose figures all stand is left alone, and so are the second figures that its own reader wants.
    const auto stands = [](const Place& place) { return !place.text && !place.shift; };
    if (work_.wish.by != By::both && std::all_of(places_.begin(), places_.end(), stands)) return;
    for (const Place& place : places_) rewrite(place);
  }

 private:
  // ---- what is there

  bool is_ours(const Statement& statement) {
    const El el = work_.author.document->el(statement.node);
    if (kept_name(el, statement.at) == At::unknown || statement.value == fiche::Value::number) return false;
    if (!statement.fault) return true;
    if (!statement.fault->rule.starts_with("unknown-trade-word")) {
      work_.say("not-converted", base::Severity::warning, statement.where,
                "\"" + statement.text + "\" was left as it is: " + statement.fault->message, statement.fault->advice,
                statement.fault->source.empty() ? "common practice" : statement.fault->source);
    }
    return false;
  }

  Pair pair_of(const Statement& statement) const {
    Pair pair;
    pair.text = &statement;
    pair.figure = figures_of(statement);
    if (statement.at == At::unknown) pair.also = work_.author.statement(statement.node, At::also);
    if (pair.also != nullptr) pair.second = figures_of(*pair.also);
    pair.subject = subject_of(work_.author, statement.node, statement.at);
    const auto swap = work_.swaps.find(pair.subject.ingredient);
    if (swap != work_.swaps.end() && pair.subject.crosses) pair.swap = &swap->second;
    return pair;
  }

  static Choice own_words(const Statement& statement, const Amounts& amounts) {
    return {amounts, statement.text, true};
  }

  /// The words mean the same in the converted document.
  bool stays_readable(const Statement& statement, const Amounts& amounts) const {
    if (statement.value == fiche::Value::length) {
      const auto again = measure::read_lengths(statement.text, work_.after);
      return again && std::equal(again->begin(), again->end(), amounts.begin(), amounts.end(), same_figure);
    }
    const auto again = measure::read_amount(statement.text, measure::set_of(amounts.front().kind), work_.after);
    return again && same_figure(*again, amounts.front());
  }

  // ---- conversions

  /// The exact way from a kind to another (or the same), for this food and what may stand in for it. Empty where a
  /// density is wanted and not known.
  std::optional<Passage> passage(const Pair& pair, Kind from, Kind to) const {
    Passage way{to, 1, 0};
    const bool swapped = pair.swap != nullptr && pair.swap->mass_factor != 1;
    if (from == to && !swapped) return way;
    if (swapped) way.factor = pair.swap->mass_factor;
    if (from == Kind::volume && (to == Kind::mass || swapped)) {
      const auto density = density_of(work_.author, pair.subject);
      if (!density) return from == to ? std::optional(way) : std::nullopt;
      way.factor = way.factor * density->grams_per_ml;
    }
    if (from == Kind::count) {
      const auto piece = pair.subject.food == nullptr ? std::nullopt : food::piece_of(*pair.subject.food);
      if (!piece) return std::nullopt;
      way.factor = way.factor * piece->grams;
    }
    if (to == Kind::volume) {
      Subject now = pair.subject;
      if (pair.swap != nullptr && pair.swap->food != nullptr) now.food = pair.swap->food;
      const auto density = density_of(work_.author, now);
      if (!density) return std::nullopt;
      way.factor = way.factor / density->grams_per_ml;
    }
    return way;
  }

  Target target(const Pair& pair, System units) const {
    return {units,           &work_.kitchen.tools, pair.subject.tolerance,
            pair.subject.oven, pair.subject.gate,  pair.subject.control};
  }

  std::optional<Choice> converted(const Pair& pair, const Statement& from, const Amounts& amounts,
                                  const Passage& way, System units) {
    Choice made;
    std::vector<measure::Rounded> ends;
    for (const Amount& amount : amounts) {
      auto figure = amount.has_figure() ? convert_figure(amount, way, target(pair, units)) : std::nullopt;
      if (!figure) return std::nullopt;
      if (comes_to_nothing(*figure)) return too_small(from, amounts);
      made.amounts.push_back(std::move(figure->amount));
      ends.insert(ends.end(), figure->ends.begin(), figure->ends.end());
    }
    made.text = from.value == fiche::Value::length ? write_lengths(made.amounts, work_.after)
                                                   : write_figure(made.amounts.front(), work_.after);
    say_rounding(pair, from, made, ends);
    return made;
  }

  static bool comes_to_nothing(const Figure& figure) {
    return std::any_of(figure.ends.begin(), figure.ends.end(), [](const measure::Rounded& end) {
      return end.amount.kind != Kind::temperature && end.exact > 0 && end.amount.low_base() == 0;
    });
  }

  /// Less than the system's measures show: it stays as the author wrote it, exactly respelled where that would be
  /// read otherwise.
  std::optional<Choice> too_small(const Statement& from, const Amounts& amounts) {
    work_.say("conversion-beyond-tolerance", base::Severity::warning, from.where,
              "\"" + from.text + "\" stays: it is too little to be measured in " +
                  std::string(measure::system_name(units_)) + " units",
              "weigh it as written", tolerance_source);
    if (stays_readable(from, amounts)) return std::nullopt;
    return Choice{{amounts.front()}, write_exactly(amounts, work_.after), false};
  }

  void say_rounding(const Pair& pair, const Statement& from, const Choice& made,
                    const std::vector<measure::Rounded>& ends) {
    for (const measure::Rounded& end : ends) {
      if (end.within) continue;
      const bool strict = pair.subject.tolerance.share <= Ratio(2, 100);
      work_.say("conversion-beyond-tolerance", strict ? base::Severity::warning : base::Severity::advice, from.where,
                "\"" + from.text + "\" becomes \"" + made.text + "\", " + percent(end.share) + " off; " +
                    name_of(work_.author, pair.subject) + " allows " +
                    percent(pair.subject.tolerance.share.approximate()),
                end.better.empty() ? "weigh it" : end.better, tolerance_source);
      return;
    }
  }

  // ---- the text's figure

  Kind wanted_kind(const Pair& pair) const {
    const Kind kind = pair.figure.front().kind;
    if (!pair.subject.crosses || !weighs_or_fills(kind)) return kind;
    switch (work_.wish.by) {
      case By::mass: return Kind::mass;
      case By::volume: return Kind::volume;
      case By::both:
        return pair.subject.food != nullptr && is_poured(*pair.subject.food, kind) ? Kind::volume : Kind::mass;
      default: return kind;
    }
  }

  std::optional<int> shift_of(Node node) const {
    const auto shift = work_.oven_shifts.find(node);
    return shift == work_.oven_shifts.end() ? std::nullopt : std::optional(shift->second);
  }

  std::optional<Choice> choose_figure(const Pair& pair) {
    const bool one_place = pair.text->at != At::unknown;
    return one_place && work_.wish.by == By::both ? plain_attribute(pair) : choose_text(pair);
  }

  /// What goes into the text; empty when the author's figure stays where it is.
  std::optional<Choice> choose_text(const Pair& pair) {
    const Kind from = pair.figure.front().kind;
    if (pair.swap != nullptr && pair.swap->mass_factor != 1) return swapped_text(pair, from);
    if (is_unmeasured(pair.figure.front())) return std::nullopt;
    Kind to = wanted_kind(pair);
    auto way = passage(pair, from, to);
    const bool second_serves = !pair.second.empty() && all_stand_in(pair.second, units_) &&
                               (pair.second.front().kind == to || work_.wish.by == By::as_written) &&
                               !is_unmeasured(pair.second.front());
    if (from == to && all_stand_in(pair.figure, units_)) return std::nullopt;
    if (second_serves) return own_words(*pair.also, pair.second);
    if (!way) {
      say_no_density(pair, from);
      to = from;
      if (all_stand_in(pair.figure, units_)) return std::nullopt;
      way = passage(pair, from, from);
    }
    return converted(pair, *pair.text, pair.figure, *way, units_);
  }

  std::optional<Choice> swapped_text(const Pair& pair, Kind from) {
    const Kind to = from == Kind::count ? Kind::mass : wanted_kind(pair);
    auto way = passage(pair, from, to);
    if (!way) way = passage(pair, from, from == Kind::count ? Kind::mass : from);
    if (!way || (is_unmeasured(pair.figure.front()) && from != Kind::count)) return std::nullopt;
    return converted(pair, *pair.text, pair.figure, *way, units_);
  }

  void say_no_density(const Pair& pair, Kind kept) {
    const Node place = pair.subject.ingredient == fiche::none ? pair.text->node : pair.subject.ingredient;
    if (!said_no_density_.insert(place).second) return;
    const std::string other = kept == Kind::mass ? "a mass" : "a volume";
    const bool unnamed = pair.subject.food_id.empty();
    work_.say("no-density-for-conversion", base::Severity::advice, pair.text->where,
              "\"" + pair.text->text + "\" stays " + other + ": " +
                  (unnamed ? "the ingredient names no food"
                           : "no density is known for " + name_of(work_.author, pair.subject)),
              unnamed ? "give it a food (tamis foods finds one)"
                      : "weigh a cup of it once and state density=\"1 cup = ... g\" in the kitchen file",
              "common practice");
  }

  // ---- also's figure

  std::optional<Choice> other_kind(const Pair& pair, const Amounts& text) {
    const Kind first = text.front().kind;
    if (work_.wish.by != By::both || !pair.subject.crosses || !weighs_or_fills(first)) return std::nullopt;
    if (is_unmeasured(text.front())) return std::nullopt;  // a pinch has no second figure
    const Kind other = first == Kind::mass ? Kind::volume : Kind::mass;
    if (pair.swap == nullptr) {
      if (pair.figure.front().kind == other && all_stand_in(pair.figure, units_)) {
        return own_words(*pair.text, pair.figure);
      }
      if (!pair.second.empty() && pair.second.front().kind == other && all_stand_in(pair.second, units_)) {
        return own_words(*pair.also, pair.second);
      }
    }
    const auto way = passage(pair, pair.figure.front().kind, other);
    if (!way) {
      say_no_density(pair, first);
      return std::nullopt;
    }
    return converted(pair, *pair.text, pair.figure, *way, units_);
  }

  /// What goes into also; empty when nothing is left to say there. Of another kind than the text, it follows into the
  /// wanted system. Of the same kind, it is what the text does not say: the author's figure in another system.
  std::optional<Choice> choose_also(const Pair& pair, const Amounts& text) {
    if (auto both = other_kind(pair, text)) return both;
    if (pair.second.empty()) return std::nullopt;
    const bool swapped = pair.swap != nullptr && pair.swap->mass_factor != 1;
    const Kind kind = pair.second.front().kind;
    if (!swapped && is_unmeasured(pair.second.front())) return own_words(*pair.also, pair.second);
    if (kind != text.front().kind) {
      if (!swapped && all_stand_in(pair.second, units_)) return own_words(*pair.also, pair.second);
      const auto way = passage(pair, kind, kind);
      return way ? converted(pair, *pair.also, pair.second, *way, units_) : std::nullopt;
    }
    if (swapped) return std::nullopt;
    if (is_other_system(*pair.also, pair.second)) return own_words(*pair.also, pair.second);
    if (is_other_system(*pair.text, pair.figure)) return own_words(*pair.text, pair.figure);
    return std::nullopt;
  }

  bool is_other_system(const Statement& statement, const Amounts& amounts) const {
    return !all_stand_in(amounts, units_) && stays_readable(statement, amounts);
  }

  // ---- writing

  void rewrite(const Place& place) {
    const Pair& pair = place.pair;
    if (place.shift) return rewrite_oven(pair, *place.shift);
    if (pair.text->at != At::unknown) {
      if (!place.text) return;
      write_over(work_.document, pair.text->node, pair.text->at, place.text->text);
      work_.touched = true;
      return;
    }
    const Amounts& shown = place.text ? place.text->amounts : pair.figure;
    const bool unreadable_also = pair.also != nullptr && pair.second.empty();
    write(pair, place.text, unreadable_also ? std::nullopt : choose_also(pair, shown), unreadable_also);
  }

  void write(const Pair& pair, const std::optional<Choice>& text, const std::optional<Choice>& also,
             bool leave_also) {
    fiche::Document& document = work_.document;
    const Node node = pair.text->node;
    const std::string second = pair.also == nullptr ? std::string() : std::string(document.get(node, At::also));
    const bool added = also && pair.also == nullptr;
    if (text || added) {
      write_over(document, node, At::unknown, text ? text->text : pair.text->text);
      work_.touched = true;
    }
    if (pair.also == nullptr) {
      if (also) document.set_attribute(node, At::also, also->text);
      return;
    }
    if (leave_also || (also && also->text == pair.also->text && also->own)) {
      if (text) document.set_attribute(node, At::was_also, second);
      return;
    }
    work_.touched = true;
    if (!also) return set_aside(document, node, At::also);
    write_over(document, node, At::also, also->text);
  }

  /// With one place only, "both" leaves mass mass and volume volume.
  std::optional<Choice> plain_attribute(const Pair& pair) {
    if (is_unmeasured(pair.figure.front()) || all_stand_in(pair.figure, units_)) return std::nullopt;
    const Kind kind = pair.figure.front().kind;
    const auto way = passage(pair, kind, kind);
    return way ? converted(pair, *pair.text, pair.figure, *way, units_) : std::nullopt;
  }

  // ---- another oven

  static System scale_of(const Amounts& amounts) {
    return stands_in(amounts.front(), System::metric) ? System::metric : System::us;
  }

  void rewrite_oven(const Pair& pair, int shift) {
    const bool second_first = !pair.second.empty() && !all_stand_in(pair.figure, units_) &&
                              all_stand_in(pair.second, units_);
    const auto way = [shift](const Amounts& amounts) {
      return Passage{Kind::temperature, 1, between_modes(amounts.front()) * shift};
    };
    const Amounts& figure = second_first ? pair.second : pair.figure;
    const Statement& first = second_first ? *pair.also : *pair.text;
    const auto text = converted(pair, first, figure, way(figure), units_);
    if (!text) return;
    std::optional<Choice> also;
    if (!pair.second.empty()) {
      const Amounts& rest = second_first ? pair.figure : pair.second;
      if (scale_of(rest) != scale_of(text->amounts)) {
        also = converted(pair, second_first ? *pair.text : *pair.also, rest, way(rest), scale_of(rest));
      }
    }
    write(pair, text, also, false);
    write_over(work_.document, pair.text->node, At::mode, work_.wish.oven);
  }

  Work& work_;
  System units_;
  std::vector<Place> places_;
  std::set<Node> said_no_density_;
};

}  // namespace

void rewrite_figures(Work& work) { Rewriter(work).run(); }

}  // namespace tamis::change
