#include "core/change/scale_figures.h"

#include <algorithm>

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;

void Figures::taken_component(Node component) {
  if (document_.find(component, At::from) == fiche::none || work_.factor == 1) return;
  const Statement* take = fiche_.statement(component, At::take);
  const Ratio part = take == nullptr ? Ratio(1)
                     : take->share && take->share->form == measure::Share::Form::fraction ? take->share->fraction
                                                                                          : Ratio(0);
  if (part == 0) return;  // an amount: taken with the others; the rest stays the rest
  const Ratio now = part * work_.factor;
  if (now <= 1) return document_.set_attribute(component, At::take, share_text(now));
  if (const auto made = made_there(component)) {
    const Amount taken{Amount::Form::exact, true, Kind::mass, {{*made * now, measure::unit_by_id("g")}}, {}, {}};
    const Statement place = take != nullptr ? *take : Statement{component, fiche::none, At::take, {}, "all of it",
                                                                document_.head_span(component), {}, {}, {}, {}};
    const Amount exact = measure::amount_of(*made * part, *measure::unit_by_id("g"));
    return document_.set_attribute(component, At::take, measured(place, exact, work_.factor, {}));
  }
  work_.say("not-scaled", Severity::warning, document_.head_span(component),
            "\"" + std::string(document_.get(component, At::title)) + "\" is taken " + work_.text(now) +
                " times, and its own fiche does not say how much it makes",
            "state its mass in the other file's <yield>, or make it so many times");
}

std::optional<Ratio> Figures::made_there(Node component) const {
  const std::string from(document_.get(component, At::from));
  const std::size_t hash = std::min(from.find('#'), from.size());
  const auto opened = work_.library.open(document_.source().path(), std::string_view(from).substr(0, hash));
  if (!opened) return std::nullopt;
  const fiche::Fiche other = fiche::read_fiche(**opened, work_.kitchen);
  const std::string_view wanted = hash < from.size() ? std::string_view(from).substr(hash + 1) : std::string_view();
  Node first = fiche::none;
  for (const Node yield : other.yields) {
    const Node above = other.document->parent(yield);
    const bool of_it = other.document->el(above) == El::component && other.document->get(above, At::id) == wanted;
    if (other.document->find(yield, At::mass) == fiche::none) continue;
    if (of_it || first == fiche::none) first = yield;
    if (of_it) break;
  }
  const Statement* mass = first == fiche::none ? nullptr : other.statement(first, At::mass);
  if (mass == nullptr || !mass->amount || !mass->amount->has_figure()) return std::nullopt;
  return mass->amount->middle_base();
}

}  // namespace tamis::change
