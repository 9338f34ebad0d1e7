#include "core/change/market.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/base/utf8.h"
#include "core/change/kept.h"
#include "core/change/stand_in.h"
#include "core/change/swap_kind.h"
#include "core/physics/gelatine.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

constexpr MarketRow rows[] = {
#include "core/change/market.inc"
};

constexpr std::array<std::string_view, 4> known_markets = {"US", "GB", "FR", "DE"};

template <class Test>
bool any_of_list(std::string_view list, Test test) {
  while (true) {
    const std::size_t end = list.find('|');
    if (test(list.substr(0, end))) return true;
    if (end == std::string_view::npos) return false;
    list.remove_prefix(end + 1);
  }
}

bool in_list(std::string_view list, std::string_view word) {
  return any_of_list(list, [word](std::string_view one) { return one == word; });
}

/// "size=M|medium": whether the ingredient's attribute says one of these; a name, whether it holds the word.
bool condition_holds(const Document& document, Node ingredient, std::string_view when) {
  if (when.empty()) return true;
  const std::size_t equals = when.find('=');
  const At at = fiche::attribute_named(when.substr(0, equals));
  const std::string said = base::lower(base::trimmed(document.get(ingredient, at)));
  return any_of_list(when.substr(equals + 1), [&](std::string_view word) {
    const std::string wanted = base::lower(word);
    return at == At::name ? said.find(wanted) != std::string::npos : said == wanted;
  });
}

const MarketRow* row_for(const Work& work, const fiche::Ingredient& ingredient, std::string_view home) {
  const std::string_view food = general_food(work.kitchen, ingredient.food_id);
  for (const MarketRow& row : rows) {
    if (in_list(row.market, work.wish.market) && (row.home.empty() || in_list(row.home, home)) &&
        in_list(row.food, food) && condition_holds(*work.author.document, ingredient.node, row.when)) {
      return &row;
    }
  }
  return nullptr;
}

std::optional<Ratio> figure(std::string_view text) { return Ratio::parse(text); }

/// What the author's food holds: as the ingredient states it, else as the kitchen's own food does, else as the row
/// takes it to be.
struct Strength {
  Ratio value = 0;
  bool stated = true;
};

Ratio in_hundredths(double value) { return {std::llround(value * 100), 100}; }

Strength strength_of(const Work& work, const fiche::Ingredient& ingredient, const MarketRow& row) {
  const bool fat = row.recalculation == Recalculation::fat;
  const Document& document = *work.author.document;
  if (const std::string_view said = document.get(ingredient.node, fat ? At::fat : At::bloom); !said.empty()) {
    if (!fat) {
      if (const auto read = measure::read_number(said, work.author.reading); read && *read > 0) return {*read, true};
    } else if (const auto read = measure::read_share(said, work.author.reading);
               read && read->form == measure::Share::Form::fraction && read->fraction > 0) {
      return {read->fraction * 100, true};
    }
  }
  if (const auto* own = work.kitchen.own_food(ingredient.food_id)) {
    const std::optional<double> value = fat ? own->fat_percent : own->bloom;
    if (value && *value > 0) return {in_hundredths(*value), true};
  }
  return {*figure(row.from_figure), false};
}

Ratio gelatine_factor(const Ratio& from, const Ratio& to) {
  constexpr double places = 1e6;  // gelatine is weighed to a tenth of a gram at best
  return {std::llround(physics::gelatine_factor(from.approximate(), to.approximate()) * places), static_cast<std::int64_t>(places)};
}

struct Recalculated {
  Ratio factor = 1;
  std::string words;  ///< "the amount stays", "0.94 times its weight (200 bloom to 225, square root)"
};

Recalculated recalculate(const Work& work, const fiche::Ingredient& ingredient, const MarketRow& row) {
  if (row.recalculation == Recalculation::same) return {1, "the amount stays"};
  const Ratio to = *figure(row.to_figure);
  if (row.recalculation == Recalculation::times) return {to, to.text() + " of its weight"};
  const Strength from = strength_of(work, ingredient, row);
  const bool fat = row.recalculation == Recalculation::fat;
  const Ratio factor = fat ? from.value / to : gelatine_factor(from.value, to);
  const std::string unit = fat ? " % fat" : " bloom";
  return {factor, std::to_string((factor * 1000).nearest() / 1000) + "." +
                      std::to_string((factor * 1000).nearest() % 1000 + 1000).substr(1) + " times its weight (" +
                      plain(from.value) + unit + (from.stated ? "" : ", taken as usual: it is not stated,") + " to " +
                      plain(to) + (fat ? "" : ", by the square root") + ")"};
}

std::string_view country(std::string_view market) {
  if (market == "US") return "in the US";
  if (market == "GB") return "in Britain";
  return market == "FR" ? "in France" : "in Germany";
}

bool in_french(const Work& work) { return work.author.language.starts_with("fr"); }

std::string author_name_of(const Work& work, const fiche::Ingredient& ingredient) {
  if (!ingredient.name.empty()) return std::string(ingredient.name);
  if (ingredient.food == nullptr) return std::string(ingredient.food_id);
  const std::string_view names = in_french(work) ? ingredient.food->french : ingredient.food->english;
  return std::string(names.substr(0, names.find('|')));
}

void plan_one(Work& work, const fiche::Ingredient& ingredient, const MarketRow& row) {
  const Recalculated again = recalculate(work, ingredient, row);
  Swap swap;
  swap.row = &row;
  swap.mass_factor = again.factor;
  swap.food = row.to.empty() ? ingredient.food : work.kitchen.find_food(row.to);
  swap.instead_of = author_name_of(work, ingredient);
  work.say("market-swap", base::Severity::advice, work.author.document->head_span(ingredient.node),
           "\"" + swap.instead_of + "\" is \"" + std::string(in_french(work) ? row.french : row.english) + "\" " +
               std::string(country(work.wish.market)) + "; " + again.words,
           std::string(row.english_risk), std::string(row.source));
  work.swaps[ingredient.node] = std::move(swap);
}

// ---- writing

/// "size=large", over what the author wrote; an attribute that was not there stays away.
void write_setting(Document& document, Node node, std::string_view sets) {
  const std::size_t equals = sets.find('=');
  if (equals == std::string_view::npos) return;
  const At at = fiche::attribute_named(sets.substr(0, equals));
  if (document.find(node, at) != fiche::none) write_over(document, node, at, sets.substr(equals + 1));
}

/// A count of leaves beside the mass says nothing of a powder.
void set_counts_aside(Document& document, Node ingredient) {
  if (document.find(ingredient, At::pieces) != fiche::none) set_aside(document, ingredient, At::pieces);
  for (Node c = document.first_child(ingredient); c != fiche::none; c = document.next(c)) {
    if (document.el(c) == El::amount && document.find(c, At::pieces) != fiche::none) set_aside(document, c, At::pieces);
  }
}

void tell_the_cook(const Work& work, Document& document, Node ingredient, const Swap& swap) {
  const MarketRow& row = *swap.row;
  const bool french = in_french(work);
  const std::string_view name = french ? row.french : row.english;
  const std::string_view risk = french ? row.french_risk : row.english_risk;
  write_note(document, ingredient, market_note,
             std::string(name) + (french ? " au lieu de " : " for ") + swap.instead_of + (french ? " ; " : "; ") + std::string(risk));
}

void write_one(Work& work, Node ingredient, const Swap& swap) {
  Document& document = work.document;
  const MarketRow& row = *swap.row;
  const std::string_view name = in_french(work) ? row.french : row.english;
  write_setting(document, ingredient, row.sets);
  if (row.recalculation != Recalculation::same) set_counts_aside(document, ingredient);
  if (document.find(ingredient, At::name) != fiche::none) {
    write_over(document, ingredient, At::name, name);
  } else {
    document.set_attribute(ingredient, At::name, name);
  }
  const std::string food(row.to.empty() ? document.get(ingredient, At::food) : row.to);
  write_over(document, ingredient, At::food, food);
  tell_the_cook(work, document, ingredient, swap);
}

}  // namespace

std::span<const MarketRow> market_rows() { return rows; }
std::span<const std::string_view> markets() { return known_markets; }

std::string_view home_market(const fiche::Fiche& fiche) {
  const std::string_view language = fiche.language;
  if (language.size() >= 5 && language[2] == '-') {
    for (const std::string_view market : known_markets) {
      if (language.substr(3) == market) return market;
    }
    return "EU";
  }
  if (language.starts_with("fr")) return "FR";
  if (language.starts_with("de")) return "DE";
  if (fiche.reading.system == measure::System::us) return "US";
  return fiche.reading.system == measure::System::imperial ? "GB" : "EU";
}

void plan_swaps(Work& work) {
  if (work.wish.market.empty()) return;
  const std::string_view home = home_market(work.author);
  if (home == work.wish.market) return;
  for (const fiche::Ingredient& ingredient : work.author.ingredients) {
    if (ingredient.food_id.empty()) continue;
    if (const MarketRow* row = row_for(work, ingredient, home)) plan_one(work, ingredient, *row);
  }
}

void write_swaps(Work& work) {
  for (const auto& [ingredient, swap] : work.swaps) write_one(work, ingredient, swap);
}

}  // namespace tamis::change
