#include "core/tally/makeup.h"

#include "core/tally/walk.h"

namespace tamis::tally {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// What the yield says of the whole.
struct Stated {
  Node node = fiche::none;
  std::optional<double> portions, mass;
  bool pieces = false;
};

std::optional<double> figure(const fiche::Fiche& fiche, Node yield, At at) {
  const fiche::Statement* said = fiche.statement(yield, at);
  if (said == nullptr || !said->amount || !said->amount->has_figure()) return std::nullopt;
  const base::Ratio middle = said->amount->middle_base();
  return middle.ok() ? std::optional(middle.approximate()) : std::nullopt;
}

std::optional<double> grams_figure(const fiche::Fiche& fiche, Node yield, At at) {
  const fiche::Statement* said = fiche.statement(yield, at);
  return said != nullptr && said->amount && said->amount->kind == measure::Kind::mass ? figure(fiche, yield, at) : std::nullopt;
}

/// The first yield of the fiche; of one without, that of its only component that nothing takes.
Node yield_of(const fiche::Fiche& fiche, const flow::Flow& flow) {
  const Node own = fiche.document->child(fiche.document->root(), El::yield);
  if (own != fiche::none) return own;
  Node found = fiche::none;
  for (const flow::Total& total : flow.components) {
    if (total.taken) continue;
    if (found != fiche::none) return fiche::none;
    found = fiche.document->child(total.node, El::yield);
  }
  return found;
}

Stated read_yield(const fiche::Fiche& fiche, const flow::Flow& flow) {
  Stated out;
  out.node = yield_of(fiche, flow);
  if (out.node == fiche::none) return out;
  out.portions = figure(fiche, out.node, At::portions);
  if (!out.portions) {
    out.portions = figure(fiche, out.node, At::pieces);
    out.pieces = out.portions.has_value();
  }
  if (out.portions) *out.portions += figure(fiche, out.node, At::spare).value_or(0);
  if (out.portions && !(*out.portions > 0)) out.portions.reset();
  out.mass = grams_figure(fiche, out.node, At::mass);
  const auto each = grams_figure(fiche, out.node, At::each);
  if (!out.mass && out.portions && each) out.mass = *out.portions * *each;
  return out;
}

/// Lets what is made come to what the yield states, where it states less than goes in.
void come_to(const Stated& stated, Mix& mix, std::vector<Doubt>& doubts) {
  if (!stated.mass) return;
  if (!mix.mass_known) {
    doubts.push_back({Doubt::Kind::yield_for_mass, {}, *stated.mass, stated.node});
    return;
  }
  constexpr double same = 0.005;       // rounding of a stated yield
  constexpr double left_in_bowls = 0.05;
  const double made = mix.mass();
  const double less = made - *stated.mass;
  if (less < -same * made) {
    doubts.push_back({Doubt::Kind::yield_over, {}, -less, stated.node});
  } else if (less > left_in_bowls * made) {
    mix.lose_water(less);
    doubts.push_back({Doubt::Kind::cooked_down, {}, less, stated.node});
  } else if (less > same * made) {
    mix.lose_of_all(less);
    doubts.push_back({Doubt::Kind::left_behind, {}, less, stated.node});
  }
}

}  // namespace

std::string_view doubt_name(Doubt::Kind kind) {
  switch (kind) {
    case Doubt::Kind::no_mass: return "no_mass";
    case Doubt::Kind::divided: return "divided";
    case Doubt::Kind::loss_unknown: return "loss_unknown";
    case Doubt::Kind::taken_out: return "taken_out";
    case Doubt::Kind::cooked_down: return "cooked_down";
    case Doubt::Kind::left_behind: return "left_behind";
    case Doubt::Kind::yield_over: return "yield_over";
    case Doubt::Kind::yield_for_mass: return "yield_for_mass";
    case Doubt::Kind::file_missing: return "file_missing";
  }
  return "";
}

std::optional<double> grams_bought(const Entry& entry, bool by_piece) {
  if (entry.bought) return entry.bought;
  if (!entry.listed || entry.food == nullptr) return entry.listed;
  const double trim = entry.food->trim_share;
  if (!(trim > 0 && trim < 1) || by_piece) return entry.listed;
  const bool by_house = entry.food->trim_source == "kitchen file";
  return by_house || entry.trimmed ? *entry.listed / (1 - trim) : *entry.listed;
}

std::string name_in(const fiche::Kitchen& kitchen, const Entry& entry) {
  const fiche::Kitchen::OwnFood* own = kitchen.own_food(entry.food_id);
  return own != nullptr && !own->name.empty() ? own->name : entry.name;
}

bool sold_by_piece(const fiche::Kitchen& kitchen, const Entry& entry, std::string_view day) {
  const fiche::Kitchen::OwnFood* own = kitchen.own_food(entry.food_id);
  const fiche::Kitchen::Price* price = own == nullptr ? nullptr : fiche::price_on(own->prices, day);
  return price != nullptr && price->pack && price->pack->kind == measure::Kind::count;
}

Makeup read_makeup(const fiche::Fiche& fiche, const flow::Flow& flow, fiche::Library& library) {
  Makeup out;
  if (fiche.document->root() == fiche::none) return out;
  flow::Chain chain;
  Walk walk(fiche, flow, library, chain);
  walk.run();
  std::optional<Mix> mix = walk.made({});
  out.entries = std::move(walk.entries);
  out.doubts = std::move(walk.doubts);
  out.labour = std::move(walk.labour);
  out.bases = std::move(walk.bases);
  const Stated stated = read_yield(fiche, flow);
  out.portions = stated.portions;
  out.pieces = stated.pieces;
  if (!mix) return out;
  come_to(stated, *mix, out.doubts);
  for (std::size_t i = 0; i < out.entries.size(); ++i) {
    out.entries[i].served = mix->of(i);
    out.entries[i].used = mix->used_of(i);
  }
  out.water_out = mix->water_out;
  out.mass = mix->mass_known ? std::optional(mix->mass()) : stated.mass;
  if (out.mass && out.portions) out.portion_mass = *out.mass / *out.portions;
  return out;
}

}  // namespace tamis::tally
