#include "core/change/rewriter.h"

namespace tamis::change {

using fiche::At;
using fiche::Node;
using fiche::Statement;
using measure::Kind;

namespace {

bool weighs_or_fills(Kind kind) { return kind == Kind::mass || kind == Kind::volume; }

bool is_poured(const food::Food& food, Kind author_kind) {
  switch (food.role) {
    case food::Role::liquid:
    case food::Role::alcohol: return true;
    case food::Role::dairy: return author_kind == Kind::volume;
    default: return false;
  }
}

}  // namespace

Kind Rewriter::wanted_kind(const Pair& pair) const {
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

std::optional<int> Rewriter::shift_of(Node node) const {
  const auto shift = work_.oven_shifts.find(node);
  return shift == work_.oven_shifts.end() ? std::nullopt : std::optional(shift->second);
}

std::optional<Choice> Rewriter::choose_figure(const Pair& pair) {
  const bool one_place = pair.text->at != At::unknown;
  return one_place && work_.wish.by == By::both ? plain_attribute(pair) : choose_text(pair);
}

std::optional<Choice> Rewriter::choose_text(const Pair& pair) {
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

std::optional<Choice> Rewriter::swapped_text(const Pair& pair, Kind from) {
  const Kind to = from == Kind::count ? Kind::mass : wanted_kind(pair);
  auto way = passage(pair, from, to);
  if (!way) way = passage(pair, from, from == Kind::count ? Kind::mass : from);
  if (!way || (is_unmeasured(pair.figure.front()) && from != Kind::count)) return std::nullopt;
  return converted(pair, *pair.text, pair.figure, *way, units_);
}

void Rewriter::say_no_density(const Pair& pair, Kind kept) {
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

std::optional<Choice> Rewriter::other_kind(const Pair& pair, const Amounts& text) {
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

std::optional<Choice> Rewriter::choose_also(const Pair& pair, const Amounts& text) {
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

bool Rewriter::is_other_system(const Statement& statement, const Amounts& amounts) const {
  return !all_stand_in(amounts, units_) && stays_readable(statement, amounts);
}

}  // namespace tamis::change
