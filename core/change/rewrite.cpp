#include "core/change/rewriter.h"

#include <algorithm>

#include "core/change/kept.h"
#include "core/change/oven.h"
#include "core/change/rewrite.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;
using measure::System;

void Rewriter::run() {
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

bool all_stand_in(const Amounts& amounts, System system) {
  return std::all_of(amounts.begin(), amounts.end(), [system](const Amount& a) { return stands_in(a, system); });
}

bool Rewriter::is_ours(const Statement& statement) {
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

Pair Rewriter::pair_of(const Statement& statement) const {
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

Choice Rewriter::own_words(const Statement& statement, const Amounts& amounts) {
  return {amounts, statement.text, true};
}

bool Rewriter::stays_readable(const Statement& statement, const Amounts& amounts) const {
  if (statement.value == fiche::Value::length) {
    const auto again = measure::read_lengths(statement.text, work_.after);
    return again && std::equal(again->begin(), again->end(), amounts.begin(), amounts.end(), same_figure);
  }
  const auto again = measure::read_amount(statement.text, measure::set_of(amounts.front().kind), work_.after);
  return again && same_figure(*again, amounts.front());
}

void Rewriter::rewrite(const Place& place) {
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

void Rewriter::write(const Pair& pair, const std::optional<Choice>& text, const std::optional<Choice>& also,
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

std::optional<Choice> Rewriter::plain_attribute(const Pair& pair) {
  if (is_unmeasured(pair.figure.front()) || all_stand_in(pair.figure, units_)) return std::nullopt;
  const Kind kind = pair.figure.front().kind;
  const auto way = passage(pair, kind, kind);
  return way ? converted(pair, *pair.text, pair.figure, *way, units_) : std::nullopt;
}

System Rewriter::scale_of(const Amounts& amounts) {
  return stands_in(amounts.front(), System::metric) ? System::metric : System::us;
}

void Rewriter::rewrite_oven(const Pair& pair, int shift) {
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

void rewrite_figures(Work& work) { Rewriter(work).run(); }

}  // namespace tamis::change
