#include "core/tally/cost.h"

#include <algorithm>
#include <cmath>

#include "core/food/food.h"

namespace tamis::tally {
namespace {

using base::Ratio;
using fiche::Kitchen;
using Open = CostLine::Open;

/// To a millionth of the currency: the one rounding there is.
Ratio to_millionth(Ratio amount) { return base::round_to(amount, Ratio(1, 1'000'000)); }

/// A figure that went through the flow, exact again: to the milligram, or the millisecond.
Ratio to_thousandth(double figure) { return {std::llround(figure * 1000), 1000}; }

/// Grams in a pack; empty where it cannot be weighed.
std::optional<Ratio> pack_grams(const measure::Amount& pack, const food::Food* food) {
  if (!pack.has_figure()) return std::nullopt;
  Ratio each(1);
  if (pack.kind == measure::Kind::volume) {
    const auto density = food == nullptr ? std::nullopt : food::density_of(*food);
    if (!density) return std::nullopt;
    each = density->grams_per_ml;
  } else if (pack.kind == measure::Kind::count) {
    const auto piece = food == nullptr ? std::nullopt : food::piece_of(*food);
    if (!piece) return std::nullopt;
    each = piece->grams;
  } else if (pack.kind != measure::Kind::mass) {
    return std::nullopt;
  }
  const Ratio grams = pack.middle_base() * each;
  return grams.ok() && grams > 0 ? std::optional(grams) : std::nullopt;
}

bool is_water(const Entry& entry) { return entry.food != nullptr && entry.food->id == "water"; }

class Sum {
 public:
  Sum(const Makeup& makeup, const Kitchen& kitchen, std::string_view day) : makeup_(makeup), kitchen_(kitchen), day_(day) {}

  Cost run(std::string_view fiche_id) {
    for (const Entry& entry : makeup_.entries) {
      if (entry.part_of < 0) add_food(entry);
    }
    for (const Labour& labour : makeup_.labour) add_hands(labour);
    if (const Kitchen::Sale* sale = kitchen_.sale_of(fiche_id)) sell(*sale);
    out_.batch = out_.food + out_.hands + out_.packed;
    const auto portions = makeup_.portions ? std::optional(to_thousandth(*makeup_.portions)) : std::nullopt;
    if (portions) out_.portion = out_.batch / *portions;
    if (portions && out_.net && *out_.net > 0) {
      out_.food_share = out_.food / *portions / *out_.net;
      out_.share = *out_.portion / *out_.net;
    }
    return std::move(out_);
  }

 private:
  Cost::Of& component(fiche::Node node) {
    for (Cost::Of& one : out_.components) {
      if (one.component == node) return one;
    }
    return out_.components.emplace_back(Cost::Of{node, {}, {}});
  }

  /// The first price met says in what the dish is costed.
  bool agrees(const measure::Money& money) {
    if (out_.currency.empty()) out_.currency = money.currency;
    return out_.currency == money.currency;
  }

  void add_food(const Entry& entry) {
    CostLine line;
    line.name = name_in(kitchen_, entry);
    line.component = entry.component;
    line.grams = entry.listed;
    line.bought = grams_bought(entry, sold_by_piece(kitchen_, entry, day_));
    line.open = entry.trace ? Open::trace : cost_food(entry, line);
    if (line.bought && line.open != Open::water) out_.all_g += *line.bought;
    if (line.cost) {
      out_.food = out_.food + *line.cost;
      Cost::Of& of = component(entry.component);
      of.food = of.food + *line.cost;
      if (entry.counts && *entry.listed > 0) {
        const double left = std::max(0.0, 1 - taken(entry) / *entry.listed);
        out_.left_over = out_.left_over + to_millionth(*line.cost * to_millionth(Ratio(std::llround(left * 1e6), 1'000'000)));
      }
    } else if (line.open != Open::trace && line.open != Open::water) {
      out_.unpriced_g += line.bought.value_or(0);
    }
    out_.foods.push_back(std::move(line));
  }

  /// Of what was bought as one, yolks and whites, what all parts of it went into counts.
  double taken(const Entry& entry) const {
    const auto index = static_cast<int>(&entry - makeup_.entries.data());
    double sum = entry.used;
    for (const Entry& other : makeup_.entries) sum += other.part_of == index ? other.used : 0;
    return sum;
  }

  const Kitchen::Price* price_of(const Entry& entry) const {
    const Kitchen::OwnFood* own = kitchen_.own_food(entry.food_id);
    return own == nullptr ? nullptr : fiche::price_on(own->prices, day_);
  }

  Open cost_food(const Entry& entry, CostLine& line) {
    const Kitchen::Price* price = price_of(entry);
    if (price == nullptr) return is_water(entry) ? Open::water : Open::no_price;
    if (!agrees(price->money)) return Open::other_currency;
    const auto pack = price->pack ? pack_grams(*price->pack, entry.food) : std::nullopt;
    if (!pack) return Open::no_pack;
    if (!line.bought) return Open::no_mass;
    line.since = price->since;
    const Ratio cost = to_millionth(price->money.amount / *pack * to_thousandth(*line.bought));
    if (!cost.ok()) return Open::no_mass;
    line.cost = cost;
    return Open::nothing;
  }

  void add_hands(const Labour& labour) {
    out_.seconds += labour.seconds;
    out_.steps_unstated += labour.unstated;
    const Kitchen::Price* hour = fiche::price_on(kitchen_.labour, day_);
    if (hour == nullptr || !agrees(hour->money)) return;
    out_.hour_known = true;
    const Ratio cost = to_millionth(hour->money.amount * to_thousandth(labour.seconds) / Ratio(3600));
    out_.hands = out_.hands + cost;
    Cost::Of& of = component(labour.component);
    of.hands = of.hands + cost;
  }

  void sell(const Kitchen::Sale& sale) {
    for (const std::string& id : sale.packaging) pack_in(id);
    if (!agrees(sale.price)) return;
    out_.price = sale.price.amount;
    out_.net = sale.price.amount / (Ratio(1) + sale.tax.value_or(Ratio(0)));
    out_.aim = sale.aim;
  }

  void pack_in(const std::string& id) {
    std::vector<Kitchen::Price> prices;
    CostLine line;
    line.name = id;
    for (const Kitchen::Packaging& one : kitchen_.packaging) {
      if (one.id != id) continue;
      prices.push_back(one.price);
      if (!one.name.empty()) line.name = one.name;
    }
    const Kitchen::Price* price = fiche::price_on(prices, day_);
    if (price == nullptr) {
      line.open = Open::no_price;
    } else if (!agrees(price->money)) {
      line.open = Open::other_currency;
    } else if (!makeup_.portions) {
      line.open = Open::no_mass;
    } else {
      const bool counted = price->pack && price->pack->has_figure() && price->pack->kind == measure::Kind::count;
      const Ratio pack = counted ? price->pack->middle_base() : Ratio(1);
      line.since = price->since;
      line.cost = to_millionth(price->money.amount / pack * to_thousandth(*makeup_.portions));
      out_.packed = out_.packed + *line.cost;
    }
    out_.packaging.push_back(std::move(line));
  }

  const Makeup& makeup_;
  const Kitchen& kitchen_;
  std::string_view day_;
  Cost out_;
};

}  // namespace

std::string_view open_name(Open open) {
  switch (open) {
    case Open::nothing: return "";
    case Open::no_price: return "no_price";
    case Open::no_pack: return "no_pack";
    case Open::no_mass: return "no_mass";
    case Open::trace: return "trace";
    case Open::water: return "water";
    case Open::other_currency: return "other_currency";
  }
  return "";
}

bool Cost::complete() const {
  const auto open = [](const CostLine& line) {
    return line.open != Open::nothing && line.open != Open::trace && line.open != Open::water;
  };
  return std::none_of(foods.begin(), foods.end(), open) && std::none_of(packaging.begin(), packaging.end(), open) &&
         (hour_known || seconds == 0) && steps_unstated == 0;
}

Cost cost_of(const Makeup& makeup, const Kitchen& kitchen, std::string_view fiche_id, std::string_view day) {
  return Sum(makeup, kitchen, day).run(fiche_id);
}

}  // namespace tamis::tally
