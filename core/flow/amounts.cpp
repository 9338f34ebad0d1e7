#include "core/flow/amounts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/utf8.h"
#include "core/food/splits.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

Grams times(Grams grams, double factor) { return {grams.low * factor, grams.high * factor}; }

/// Foods of which a count or a pinch is nothing beside the rest.
bool is_seasoning(const food::Food* food) {
  if (food == nullptr) return false;
  switch (food->role) {
    case food::Role::salt:
    case food::Role::spice:
    case food::Role::flavouring:
    case food::Role::garnish: return true;
    default: return false;
  }
}

/// The share of a food that one of its parts is, by the table.
std::optional<double> share_by_table(const food::Food& food, std::string_view part) {
  const std::vector<food::Split> splits = food::splits_of(food);
  const auto found = std::find_if(splits.begin(), splits.end(), [part](const food::Split& one) { return one.id == part; });
  if (found == splits.end()) return std::nullopt;
  if (food::splits_by_mass(food)) return found->grams / 100;
  const auto piece = food::piece_of(food);
  return piece ? std::optional(found->grams / piece->grams.approximate()) : std::nullopt;
}

/// The number of a plain figure, or of portions: middle of a range.
double middle(const Amount& amount) { return amount.middle_base().approximate(); }

}  // namespace

bool loses_trim(std::string_view prep) {
  constexpr std::array words = {"peel", "core", "stone", "pit", "shell", "trim", "bone", "seed", "hull", "skin",
                                "épluch", "dénoyaut", "pel", "geschält", "entkernt"};
  return std::any_of(words.begin(), words.end(), [&](const char* word) { return prep.find(word) != prep.npos; });
}

/// A line as its measures stand: what it says in each kind.
struct Amounts::Measured {
  std::optional<Grams> mass, volume, count;
};

Amounts::Amounts(const Work& work) : work_(work) {}

const std::vector<Line>& Amounts::read() {
  lines_.assign(work_.flow.things.size(), {});
  state_.assign(work_.flow.things.size(), 0);
  for (std::size_t i = 0; i < lines_.size(); ++i) read_line(static_cast<int>(i));
  return lines_;
}

Line& Amounts::line(int thing) {
  read_line(thing);
  return lines_[idx(thing)];
}

void Amounts::read_line(int thing) {
  if (state_[idx(thing)] != 0) return;  // read, or it goes round
  state_[idx(thing)] = 1;
  const Thing::Kind kind = work_.flow.things[idx(thing)].kind;
  if (kind == Thing::Kind::ingredient) read_ingredient(thing);
  if (kind == Thing::Kind::part) read_part(thing);
  state_[idx(thing)] = 2;
}

const Statement* Amounts::stated(int thing, At at) const { return work_.fiche.statement(work_.flow.things[idx(thing)].node, at); }

double Amounts::number(int thing, At at, double otherwise) const {
  const Statement* said = stated(thing, at);
  return said == nullptr || !said->amount ? otherwise : middle(*said->amount);
}

int Amounts::named(std::string_view id) const {
  const int name = work_.name_of(base::trimmed(id));
  return name < 0 ? -1 : work_.names[idx(name)].first;
}

const food::Food* Amounts::food_of(int thing) const {
  const Thing& known = work_.flow.things[idx(thing)];
  if (const Node override = override_of(thing); override != fiche::none) {
    const std::string_view other = work_.around->document->get(override, At::food);
    if (!other.empty()) return work_.fiche.kitchen->find_food(other);
  }
  if (known.kind == Thing::Kind::ingredient) return work_.fiche.ingredients[idx(known.ingredient)].food;
  const std::string_view food = work_.document.get(known.node, At::food);
  return food.empty() ? nullptr : work_.fiche.kitchen->find_food(food);
}

void Amounts::read_ingredient(int thing) {
  const Node node = work_.flow.things[idx(thing)].node;
  const fiche::Document& document = work_.document;
  Line& made = lines_[idx(thing)];
  if (document.find(node, At::tops_up) != fiche::none) return top_up(thing);
  if (const int other = named(document.get(node, At::as_much_as)); other >= 0) return as_much_as(thing, other);
  if (const auto said = measured(thing)) made.grams = said->mass;
  const Statement* own = stated(thing, At::unknown);
  const bool words = own != nullptr && own->amount && !own->amount->has_figure();
  if (!made.grams && (words || (own != nullptr && is_seasoning(food_of(thing))))) made.trace = true;
  if (made.grams) {
    if (const int other = named(document.get(node, At::for_each)); other >= 0) for_each(thing, other);
  }
  if (made.grams) {
    if (const auto many = how_many(thing, document.get(node, At::per))) {
      made.grams = times(*made.grams, *many);
    } else {
      made.grams.reset();
    }
  }
}

const Amount* Amounts::figure_of(const Statement* said) const {
  if (said == nullptr || !said->amount) return nullptr;
  const Amount* amount = &*said->amount;
  if (!amount->has_figure()) {
    const auto house = work_.fiche.kitchen->meanings.find(amount->words);
    if (house == work_.fiche.kitchen->meanings.end() || !house->second.has_figure()) return nullptr;
    amount = &house->second;
  }
  return amount->low_base().ok() && amount->high_base().ok() ? amount : nullptr;
}

Node Amounts::override_of(int thing) const {
  if (work_.around == nullptr) return fiche::none;
  const fiche::Document& document = *work_.around->document;
  for (Node c = document.first_child(work_.around_component); c != fiche::none; c = document.next(c)) {
    if (document.el(c) == El::override && document.get(c, At::ingredient) == work_.flow.things[idx(thing)].id) return c;
  }
  return fiche::none;
}

std::optional<Amounts::Measured> Amounts::measured(int thing) const {
  const Node node = work_.flow.things[idx(thing)].node;
  const Node override = override_of(thing);
  const food::Food* food = food_of(thing);
  std::array<const Amount*, 3> figures = {};
  if (override != fiche::none) {
    figures[0] = figure_of(work_.around->statement(override));
  } else {
    figures = {figure_of(stated(thing, At::unknown)), figure_of(stated(thing, At::also)), figure_of(stated(thing, At::pieces))};
  }
  const std::string_view prep = work_.document.get(node, At::prep);
  Measured out;
  for (const Kind kind : {Kind::mass, Kind::volume, Kind::count}) {
    for (const Amount* figure : figures) {
      if (figure == nullptr || figure->kind != kind) continue;
      std::optional<Grams>& slot = kind == Kind::mass ? out.mass : kind == Kind::volume ? out.volume : out.count;
      const bool first = !slot;
      if (!out.mass) out.mass = grams_of(*figure, food, prep, work_.document.get(node, At::size));
      if (first && kind != Kind::mass) slot = Grams{figure->low_base().approximate(), figure->high_base().approximate()};
    }
  }
  if (!out.mass && !out.volume && !out.count) return std::nullopt;
  const std::string_view weighed = work_.document.get(node, At::weighed);
  const bool trimmed = (weighed == "bought" || weighed == "before") && loses_trim(prep);
  if (trimmed && out.mass && food != nullptr && food->trim_share > 0) out.mass->low *= 1 - food->trim_share;
  return out;
}

std::optional<double> Amounts::how_many(int thing, std::string_view per) const {
  if (per.empty()) return 1.0;
  const fiche::Document& document = work_.document;
  const Node component = work_.flow.things[idx(thing)].component;
  const auto of_yield = [&](Node yield) -> std::optional<double> {
    if (yield == fiche::none) return std::nullopt;
    if (per == "mould") {
      double count = 0;
      for (Node c = document.first_child(yield); c != fiche::none; c = document.next(c)) {
        if (document.el(c) != El::mould) continue;
        const Statement* said = work_.fiche.statement(c, At::count);
        count += said == nullptr || !said->amount ? 1 : middle(*said->amount);
      }
      return count > 0 ? std::optional(count) : std::nullopt;
    }
    const Statement* said = work_.fiche.statement(yield, per == "portion" ? At::portions : At::pieces);
    if (said == nullptr || !said->amount) return std::nullopt;
    const Statement* spare = work_.fiche.statement(yield, At::spare);
    return middle(*said->amount) + (spare != nullptr && spare->amount ? middle(*spare->amount) : 0);
  };
  if (component != fiche::none) {
    if (const auto many = of_yield(document.child(component, El::yield))) return many;
  }
  return of_yield(work_.first_yield);
}

void Amounts::as_much_as(int thing, int other) {
  Line& made = lines_[idx(thing)];
  const Node node = work_.flow.things[idx(thing)].node;
  const std::string_view by = work_.document.get(node, At::by);
  const double factor = number(thing, At::times, 1);
  if (work_.flow.things[idx(other)].kind == Thing::Kind::result || work_.flow.things[idx(other)].kind == Thing::Kind::component) {
    if (!by.empty() && by != "mass") return;
    made.follows = other;
    made.times = factor;
    return;
  }
  const Line its = line(other);
  if (by.empty() || by == "mass") {
    if (its.grams) made.grams = times(*its.grams, factor);
    made.trace = its.trace;
    return;
  }
  const auto said = work_.flow.things[idx(other)].kind == Thing::Kind::ingredient ? measured(other) : std::nullopt;
  const auto& figure = !said ? std::nullopt : by == "volume" ? said->volume : said->count;
  const food::Food* food = food_of(thing);
  if (!figure || food == nullptr) return;
  const std::string_view prep = work_.document.get(node, At::prep);
  Amount amount = measure::amount_of(1, *measure::unit_by_id(by == "volume" ? "ml" : "piece"));
  if (const auto each = grams_of(amount, food, prep, work_.document.get(node, At::size))) {
    made.grams = Grams{figure->low * each->low * factor, figure->high * each->high * factor};
  }
}

void Amounts::for_each(int thing, int other) {
  Line& made = lines_[idx(thing)];
  const Statement* each = stated(thing, At::each);
  const auto its = work_.flow.things[idx(other)].kind == Thing::Kind::ingredient ? measured(other) : std::nullopt;
  const Kind kind = each != nullptr && each->amount && each->amount->has_figure() ? each->amount->kind : Kind::count;
  const double per = each != nullptr && each->amount && each->amount->has_figure() ? middle(*each->amount) : 1;
  const auto& figure = !its ? std::nullopt : kind == Kind::mass ? its->mass : kind == Kind::volume ? its->volume : its->count;
  if (!figure || !(per > 0)) {
    made.grams.reset();
    return;
  }
  made.grams = Grams{made.grams->low * figure->low / per, made.grams->high * figure->high / per};
}

void Amounts::top_up(int thing) {
  Line& made = lines_[idx(thing)];
  const Node node = work_.flow.things[idx(thing)].node;
  const Statement* to = stated(thing, At::to);
  if (to == nullptr || !to->amount) return;
  std::string_view ids = work_.document.get(node, At::tops_up);
  const food::Food* food = food_of(thing);
  while (!(ids = base::trimmed(ids)).empty()) {
    const std::size_t end = std::min(ids.find_first_of(" \t\n\r"), ids.size());
    const int other = named(ids.substr(0, end));
    ids.remove_prefix(end);
    if (other < 0) return;
    made.tops_up.push_back(other);
    if (const food::Food* its = food_of(other); its != nullptr) food = its;  // what is topped up is most of it
  }
  made.total = grams_of(*to->amount, food, {}, {});
  if (!made.total) made.total = grams_of(*to->amount, food_of(thing), {}, {});
}

void Amounts::read_part(int thing) {
  const Thing& part = work_.flow.things[idx(thing)];
  const Line& whole = line(part.was);
  Line& made = lines_[idx(thing)];
  made.trace = whole.trace;
  const Statement* said = stated(thing, At::share);
  if (said != nullptr && said->share && said->share->form == measure::Share::Form::amount) {
    made.grams = grams_of(said->share->amount, food_of(thing), {}, {});
    return;
  }
  if (!whole.grams) return;
  std::optional<double> share;
  if (said != nullptr && said->share && said->share->form == measure::Share::Form::fraction) {
    share = said->share->fraction.approximate();
  } else if (const food::Food* food = food_of(part.was); food != nullptr && said == nullptr) {
    share = share_by_table(*food, work_.document.get(part.node, At::food));
  }
  if (share) made.grams = times(*whole.grams, *share);
}

}  // namespace tamis::flow
