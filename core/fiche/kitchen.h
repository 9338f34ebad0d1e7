#ifndef CORE_FICHE_KITCHEN_H
#define CORE_FICHE_KITCHEN_H

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/food/food.h"
#include "core/measure/amount.h"
#include "core/measure/kitchen_tools.h"
#include "core/measure/money.h"
#include "core/measure/read.h"

namespace tamis::fiche {

/// "metric", "us", "imperial" as fiche/@units and kitchen/@units say it.
std::optional<measure::System> system_named(std::string_view name);

/// A house's own file, read into values. A default-made one is a kitchen that states nothing.
struct Kitchen {
  struct Oven {
    std::string id, name, mode;
    std::optional<base::Ratio> least_c, most_c, step_c, offset_c;
    Node node = none;
  };
  struct Cold {
    std::string id, kind;  ///< kind: "fridge", "freezer", "blast-chiller"
    std::optional<base::Ratio> at_c;
    std::optional<double> coefficient;  ///< of surfaces in its air, W/(m² K)
    Node node = none;
  };
  struct Machine {
    std::string id, kind, name;
    std::optional<measure::Amount> least, most;
  };
  /// What so much of something costs from a day on.
  struct Price {
    std::string since;                     ///< "2026-03-01"; "" when not stated: from always
    measure::Money money;
    std::optional<measure::Amount> pack;   ///< empty when it is not stated how much that buys
    Node node = none;
  };
  struct OwnFood {
    std::string id, name, like, supplier, ingredients, specified;
    food::Allergens contains = 0, may_contain = 0;
    std::optional<double> bloom, fat_percent, cocoa_percent;
    std::vector<Price> prices;  ///< in the order of the file
    std::optional<measure::Amount> stock;  ///< in the store
    food::Food food;  ///< the table's food it is like, with its own density and piece put in
    std::vector<food::Measure> measures;
    Node node = none;
  };

  struct Packaging {
    std::string id, name;
    Price price;
  };
  struct Sale {
    std::string fiche;                     ///< its id
    measure::Money price;                  ///< of a portion, tax in it
    std::optional<base::Ratio> tax, aim;   ///< shares: 1/10
    std::vector<std::string> packaging;    ///< ids
    Node node = none;
  };
  struct CrossContact {
    food::Allergens may_contain = 0;
    std::string where;
  };

  std::string name;
  std::string path;          ///< of the kitchen file; "" without one
  std::string library_root;  ///< as written; "" when not given
  measure::Reading reading;  ///< language, units, decimal sign of the house, where a fiche states none
  std::string language;      ///< "" when not stated
  std::optional<measure::System> system;
  std::optional<base::Ratio> altitude_m;
  std::string limits;        ///< whose limits of food safety: "us", "uk", ...; "" when not stated
  std::vector<Oven> ovens;
  std::vector<Cold> colds;
  std::vector<Machine> machines;
  measure::KitchenTools tools;
  std::map<std::string, std::string, std::less<>> verbs;  ///< the house's word for what a step does → the trade's
  std::map<std::string, measure::Amount, std::less<>> meanings;  ///< trade word id → what the house means
  std::vector<std::unique_ptr<OwnFood>> foods;                    ///< addresses stay good
  std::vector<Price> labour;              ///< of an hour
  std::vector<Packaging> packaging;       ///< one for each day of a price
  std::vector<Sale> sales;
  std::vector<CrossContact> cross_contacts;
  std::map<std::string, base::Severity, std::less<>> severities;  ///< rule id → severity
  std::map<std::string, std::string, std::less<>> rule_values;
  std::shared_ptr<const Document> document;

  /// The kitchen's food of that id, or the table's; null when neither has it.
  [[nodiscard]] const food::Food* find_food(std::string_view id) const;
  [[nodiscard]] const OwnFood* own_food(std::string_view id) const;
  /// The table's food that the kitchen's own one is like; the id itself for the others.
  [[nodiscard]] std::string_view general_id(std::string_view id) const;
  [[nodiscard]] const Sale* sale_of(std::string_view fiche_id) const;  ///< null when it is not said
  /// The trade's word for a house's own; the word itself for the others.
  [[nodiscard]] std::string_view trade_verb(std::string_view word) const;
};

/// The price that holds on a day ("2026-03-01"): of those that have begun the latest, of two of one day the one that
/// stands first. With "" the latest of all. Null when there is none.
const Kitchen::Price* price_on(const std::vector<Kitchen::Price>& prices, std::string_view day);

/// What a food as this house buys it brings of the allergens: `sure` by what it is, or by the supplier's specification of
/// it; `assumed` because it is usual in such a food; `may` because its supplier does not rule it out.
struct HeldAllergens {
  food::Allergens sure = 0, assumed = 0, may = 0;
};
/// `own` is null for the table's.
HeldAllergens allergens_held(const food::Food& food, const Kitchen::OwnFood* own);

/// Reads a kitchen document into values. What it cannot read it leaves out: the check of the kitchen file, which
/// runs the document and measure rules on it, says what and why.
Kitchen read_kitchen(std::shared_ptr<const Document> document);

/// Puts the foods, meanings and verbs of a plugin's manifest into a kitchen; what the kitchen has of the same name stays.
void add_to_kitchen(Kitchen& kitchen, const Document& manifest);

}  // namespace tamis::fiche

#endif
