#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/food_kinds.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;

bool names_a_grade(std::string_view words) {
  return base::says(words, {"gold", "silver", "bronze", "platin", "titan", "argent", "or", "bloom", "oro", "plata", "silber",
                            " g ", "per leaf"});
}

bool is_leaf(const Check& check, const fiche::Ingredient& line) {
  if (line.food_id == "gelatine-leaf") return true;
  const auto* own = check.kitchen.own_food(line.food_id);
  return own != nullptr && own->like == "gelatine-leaf" && !own->bloom && own->measures.empty();
}

void look_at(Check& check, const fiche::Ingredient& line) {
  if (line.amount < 0 || !is_leaf(check, line)) return;
  const fiche::Statement& amount = check.fiche.statements[static_cast<std::size_t>(line.amount)];
  if (!amount.amount || !amount.amount->has_figure() || amount.amount->kind != measure::Kind::count) return;
  const fiche::Document& document = check.document;
  for (const At other : {At::bloom, At::also, At::size, At::was})
    if (document.find(line.node, other) != fiche::none) return;
  if (names_a_grade(base::lower(line.name)) || names_a_grade(base::lower(document.get(line.node, At::prep)))) return;
  check.say(amount.where,
            "leaves of gelatine by number, and nothing says how heavy or how strong: a leaf weighs 1.7 g (platinum) to 3.3 g "
            "(bronze)",
            "weigh them and give the strength of the pack: 10 g, bloom=\"200\"");
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::gelatine) == 0) return;
  for (const fiche::Ingredient& line : check.fiche.ingredients) look_at(check, line);
}

}  // namespace

/// "5 leaves of gelatine".
const Rule gelatine_leaf_without_weight = {
    .id = "gelatine-leaf-without-weight",
    .severity = base::Severity::advice,
    .topic = "measure",
    .summary = "gelatine in leaves, without weight, strength or grade",
    .explanation = R"(A leaf is what the pack makes of it: bronze 3.3 g, silver 2.5, gold 2, platinum 1.7, weaker
leaves being heavier so that one sets about as much as another; but not all packs keep to that, and the same word is
sold in other sizes elsewhere. Grams and bloom travel.)",
    .bad = R"(    <ingredient id="leaf" food="gelatine-leaf">5 pieces</ingredient>)",
    .good = R"(    <ingredient id="leaf" food="gelatine-leaf" bloom="200" pieces="5">10 g</ingredient>)",
    .source = "common practice table of leaf grades",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
