// How many times the batch is made, and from which column.

#include <cmath>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/change/figure.h"
#include "core/change/scale_mould.h"
#include "core/change/scale_work.h"
#include "core/change/subject.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::El;
using fiche::Node;
using measure::Amount;
using measure::Kind;

namespace {

using By = ScaleWish::By;

bool refuse(ScaleWork& work, base::Span where, std::string message, std::string advice) {
  work.say("not-scaled", Severity::error, where, "nothing was scaled: " + std::move(message), std::move(advice));
  return false;
}

/// The wish itself cannot be understood.
bool misread(ScaleWork& work, std::string message, std::string advice) {
  work.misread.emplace();
  work.misread->message = std::move(message);
  work.misread->advice = std::move(advice);
  return false;
}

base::Span root_span(const ScaleWork& work) { return work.document.head_span(work.document.root()); }
base::Span first_yield_span(const ScaleWork& work) {
  return work.yields.empty() ? root_span(work) : work.document.head_span(work.yields.front());
}

// ---- what a yield makes

std::optional<Ratio> each_of(const ScaleWork& work, Node yield, Kind kind) {
  const Amount* each = work.amount(yield, At::each);
  if (each == nullptr || each->kind != kind) return std::nullopt;
  auto how_many = work.number(yield, At::portions);
  if (!how_many) how_many = work.number(yield, At::pieces);
  if (!how_many) return std::nullopt;
  return each->middle_base() * (*how_many + work.number(yield, At::spare).value_or(0));
}

/// All of it, in g, ml or pieces.
std::optional<Ratio> size_of(const ScaleWork& work, Node yield, Kind kind) {
  switch (kind) {
    case Kind::count: {
      if (const auto pieces = work.number(yield, At::pieces)) return pieces;
      return work.number(yield, At::portions);
    }
    case Kind::mass: {
      if (const auto mass = work.number(yield, At::mass)) return mass;
      return each_of(work, yield, kind);
    }
    default: {
      if (const auto volume = work.number(yield, At::volume)) return volume;
      return each_of(work, yield, kind);
    }
  }
}

// ---- the wish

bool by_number(ScaleWork& work, At at) {
  const auto wanted = measure::read_number(work.wish.text, work.author.reading);
  if (!wanted || !(*wanted > 0)) {
    return misread(work, "\"" + work.wish.text + "\" is no number above zero",
                   at == At::portions ? "write how many portions, as 140" : "write how many times, as 2.5 or 1/3");
  }
  if (at == At::unknown) {
    work.factor = *wanted;
    return true;
  }
  const auto portions = work.yields.empty() ? std::nullopt : work.number(work.yields.front(), At::portions);
  if (!portions) {
    return refuse(work, first_yield_span(work), "the fiche does not say how many portions it makes",
                  "add <yield portions=\"…\"/>, or give a factor");
  }
  work.factor = *wanted / *portions;
  return true;
}

std::optional<Ratio> total_in_flow(const ScaleWork& work, Kind kind) {
  if (kind != Kind::mass || !work.flow.whole.out || !(work.flow.whole.out->middle() > 0)) return std::nullopt;
  return Ratio(std::llround(work.flow.whole.out->middle() * 10), 10);
}

bool by_yield(ScaleWork& work) {
  const auto wanted = measure::read_amount(work.wish.text, measure::amount_kinds, work.author.reading);
  if (!wanted) return misread(work, wanted.fault().message, wanted.fault().advice);
  if (!wanted->has_figure() || wanted->kind == Kind::length || !(wanted->middle_base() > 0)) {
    return misread(work, "\"" + work.wish.text + "\" is no mass, volume or number of pieces",
                   "write it as 3 kg, 2 l or 40 pieces");
  }
  auto made = work.yields.empty() ? std::nullopt : size_of(work, work.yields.front(), wanted->kind);
  if (!made) made = total_in_flow(work, wanted->kind);
  if (!made) {
    return refuse(work, first_yield_span(work),
                  "the fiche does not say what it makes by " + std::string(measure::kind_name(wanted->kind)),
                  "state it in <yield>, or ask by portions or by a factor");
  }
  work.factor = wanted->middle_base() / *made;
  return true;
}

// ---- what is on hand

const fiche::Ingredient* ingredient_named(const ScaleWork& work, std::string_view id) {
  for (const fiche::Ingredient& one : work.author.ingredients) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

std::string nearest_ingredient(const ScaleWork& work, std::string_view id) {
  std::vector<std::string_view> ids;
  for (const fiche::Ingredient& one : work.author.ingredients) {
    if (!one.id.empty()) ids.push_back(one.id);
  }
  const std::string_view near = base::nearest(id, ids);
  return near.empty() ? "give the id that the ingredient has in the fiche" : "is \"" + std::string(near) + "\" meant?";
}

/// How many of the ingredient's amount the wished one is, by weight, by volume, by number, or across its density.
std::optional<Ratio> times_of(const ScaleWork& work, const fiche::Ingredient& one, const Amount& on_hand) {
  const Subject subject = subject_of(work.author, one.node, At::unknown);
  const auto density = density_of(work.author, subject);
  for (const At at : {At::unknown, At::also, At::pieces}) {
    const Amount* stated = work.amount(one.node, at);
    if (stated == nullptr || !(stated->middle_base() > 0)) continue;
    const Ratio own = stated->middle_base();
    if (stated->kind == on_hand.kind) return on_hand.middle_base() / own;
    if (!density) continue;
    if (stated->kind == Kind::mass && on_hand.kind == Kind::volume) {
      return on_hand.middle_base() * density->grams_per_ml / own;
    }
    if (stated->kind == Kind::volume && on_hand.kind == Kind::mass) {
      return on_hand.middle_base() / (own * density->grams_per_ml);
    }
  }
  return std::nullopt;
}

bool by_ingredient(ScaleWork& work) {
  const fiche::Ingredient* one = ingredient_named(work, work.wish.ingredient);
  if (one == nullptr) {
    return misread(work, "there is no ingredient \"" + work.wish.ingredient + "\"",
                   nearest_ingredient(work, work.wish.ingredient));
  }
  const base::Span where = work.document.head_span(one->node);
  const auto on_hand = measure::read_amount(work.wish.text, measure::amount_kinds, work.author.reading);
  if (!on_hand) return misread(work, on_hand.fault().message, on_hand.fault().advice);
  if (!on_hand->has_figure() || !(on_hand->middle_base() > 0)) {
    return misread(work, "\"" + work.wish.text + "\" is no amount", "write it as 2.5 kg, 2 l or 30");
  }
  const auto times = times_of(work, *one, *on_hand);
  if (!times) {
    return refuse(work, where,
                  "\"" + work.wish.text + "\" cannot be held against the amount of \"" + work.wish.ingredient + "\"",
                  "give it in the unit that the fiche gives it in");
  }
  work.factor = *times;
  return true;
}

// ---- another mould

bool by_mould(ScaleWork& work) {
  const auto wished = read_mould(work.wish.text, work.kitchen, work.author.reading);
  if (!wished) {
    return misread(work, "\"" + work.wish.text + "\" is no mould of the kitchen and no shape with sides",
                   "write it as 4 ring-26 (a mould of the kitchen file) or as frame 60 × 40 × 4 cm");
  }
  const Node own = sized_mould(work, work.yields.empty() ? fiche::none : work.yields.front());
  if (own == fiche::none) {
    return refuse(work, first_yield_span(work), "the yield names no mould whose size is known",
                  "add <mould shape=\"…\" …/> with its sides to <yield>");
  }
  const MouldSize from = mould_of(work.document, own, work.author.reading);
  const bool by_area = is_flat(from) && is_flat(*wished) && area_of(from) && area_of(*wished);
  const auto now = by_area ? area_of(*wished) : volume_of(*wished);
  const auto before = by_area ? area_of(from) : volume_of(from);
  if (!now || !before) {
    return refuse(work, work.document.head_span(own), "a deep mould goes by its volume, which is not known of both",
                  "give the height of both moulds, or their volume");
  }
  work.factor = *now * wished->count / (*before * from.count);
  work.mould = wished;
  return true;
}

bool settle_factor(ScaleWork& work) {
  switch (work.wish.by) {
    case By::portions: return by_number(work, At::portions);
    case By::factor: return by_number(work, At::unknown);
    case By::yield: return by_yield(work);
    case By::ingredient: return by_ingredient(work);
    default: return by_mould(work);
  }
}

// ---- the column

/// What a yield makes in units of the first one; empty when the two cannot be held against each other.
std::optional<Ratio> ratio_to_first(const ScaleWork& work, Node yield) {
  // A first yield that a scaling made rounds its portions: its own size is the author's times the exact factor.
  const auto scaled_by = work.number(work.document.root(), At::scaled_by);
  const bool made = scaled_by && work.document.get(work.yields.front(), At::id).empty() && work.yields.size() > 1;
  const Node first = work.yields[made ? 1 : 0];
  const Ratio times = made ? Ratio(1) / *scaled_by : Ratio(1);
  if (made && yield == first) return times;
  const auto same_mould = [&] {
    const auto own = children_of(work.document, first, El::mould), other = children_of(work.document, yield, El::mould);
    if (own.empty() || other.empty()) return true;
    const auto a = volume_of(mould_of(work.document, own.front(), work.author.reading));
    const auto b = volume_of(mould_of(work.document, other.front(), work.author.reading));
    return a == b;
  };
  if (!same_mould()) return std::nullopt;
  for (const At at : {At::portions, At::pieces, At::mass, At::volume}) {
    const auto own = work.number(first, at), other = work.number(yield, at);
    if (own && other) return *other / *own * times;
  }
  return std::nullopt;
}

void settle_column(ScaleWork& work) {
  work.from_base = work.factor;
  double nearest = std::abs(std::log(work.factor.approximate()));
  for (const Node yield : work.yields) {
    if (work.document.get(yield, At::id).empty() || yield == work.yields.front()) continue;
    const auto ratio = ratio_to_first(work, yield);
    if (!ratio) continue;
    const double far = std::abs(std::log((work.factor / *ratio).approximate()));
    if (far >= nearest) continue;
    nearest = far;
    work.base = yield;
    work.from_base = work.factor / *ratio;
  }
}

}  // namespace

bool settle_batch(ScaleWork& work) {
  if (!settle_factor(work)) return false;
  constexpr std::int64_t most = 10000;
  if (!work.factor.ok() || work.factor > most || work.factor < Ratio(1, most)) {
    work.factor = 1;
    return refuse(work, first_yield_span(work), "the wish is more than 10,000 times the fiche, or less than a 10,000th",
                  "look at the figure again");
  }
  settle_column(work);
  return true;
}

}  // namespace tamis::change
