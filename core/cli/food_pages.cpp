#include "core/cli/food_pages.h"

#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include "core/base/ratio.h"
#include "core/cli/folded.h"
#include "core/cli/json_text.h"
#include "core/measure/write.h"

namespace tamis::cli {
namespace {

struct Part {
  std::string_view name;  ///< in JSON
  std::string_view words;
  std::string_view unit;
  double food::Composition::*value;
};

constexpr std::array parts{
    Part{"energy_kcal", "energy", "kcal", &food::Composition::energy_kcal},
    Part{"water_g", "water", "g", &food::Composition::water},
    Part{"protein_g", "protein", "g", &food::Composition::protein},
    Part{"fat_g", "fat", "g", &food::Composition::fat},
    Part{"saturated_g", "of it saturated", "g", &food::Composition::saturated},
    Part{"carbohydrate_g", "carbohydrate", "g", &food::Composition::carbohydrate},
    Part{"sugars_g", "of it sugars", "g", &food::Composition::sugars},
    Part{"fibre_g", "fibre", "g", &food::Composition::fibre},
    Part{"ash_g", "ash", "g", &food::Composition::ash},
    Part{"sodium_mg", "sodium", "mg", &food::Composition::sodium_mg},
    Part{"alcohol_g", "alcohol", "g", &food::Composition::alcohol},
};

std::string names_text(std::string_view names) {
  std::string out;
  for (const char c : names) out += c == '|' ? std::string(", ") : std::string(1, c);
  return out;
}

std::string composition_text(const food::Food& food) {
  std::string out;
  for (const Part& part : parts) {
    const double value = food.per_100_g.*part.value;
    if (std::isnan(value) || (value == 0 && part.value == &food::Composition::alcohol)) continue;
    out += (out.empty() ? "" : ", ") + std::string(part.words) + " " + json_number(value) + " " +
           std::string(part.unit);
  }
  return out;
}

std::string allergen_list(food::Allergens bits) {
  std::string out;
  for (const food::AllergenName& name : food::allergen_names())
    if ((bits & name.bit) != 0) out += (out.empty() ? "" : ", ") + std::string(name.english);
  return out.empty() ? "none" : out;
}

/// A figure with its source in round brackets behind it.
std::string with_source(const std::string& text, std::string_view source) {
  return source.empty() ? text : text + " (" + std::string(source) + ")";
}

std::string measure_label(const food::Measure& measure) {
  std::string label = "1 " + std::string(measure.what);
  if (!measure.note.empty()) label += ", " + std::string(measure.note);
  return label;
}

std::string density_text(const food::Density& density) {
  std::string text = json_number(std::round(density.grams_per_ml.approximate() * 1000) / 1000) + " g/ml";
  const double spread = std::round(density.spread * 100);
  if (spread > 0) text += ", its forms ±" + json_number(spread) + " %";
  return with_source(text, density.source);
}

/// What a supplier's specification says, or that there is none.
std::string allergens_text(const FoodMatch& match) {
  if (match.own != nullptr && !match.own->specified.empty()) {
    std::string text = allergen_list(match.own->contains);
    if (match.own->may_contain != 0) text += "; may contain " + allergen_list(match.own->may_contain);
    return with_source(text, "supplier's specification of " + match.own->specified);
  }
  return with_source(
      "assumed: " + allergen_list(match.food->allergens) + "; only the supplier's specification settles it",
      match.food->allergen_source);
}

std::string own_text(const fiche::Kitchen::OwnFood& own) {
  const std::string name = own.name.empty() ? own.id : own.name;
  return own.supplier.empty() ? name : name + ", bought from " + own.supplier;
}

std::string json_or_null(std::string_view text) { return text.empty() ? "null" : json_string(text); }

std::string names_json(std::string_view names) {
  std::string out;
  JsonList list(out, '[', ']');
  while (!names.empty()) {
    const std::size_t bar = std::min(names.find('|'), names.size());
    list.item(json_string(names.substr(0, bar)));
    names.remove_prefix(std::min(bar + 1, names.size()));
  }
  return out;
}

std::string composition_json(const food::Food& food) {
  std::string out;
  JsonList object(out, '{', '}');
  for (const Part& part : parts) object.member(part.name, json_number(food.per_100_g.*part.value));
  object.member("source", json_or_null(food.composition_source));
  return out;
}

std::string measures_json(const food::Food& food) {
  std::string out;
  JsonList list(out, '[', ']');
  for (const food::Measure& measure : food.measures) {
    list.begin();
    JsonList object(out, '{', '}');
    object.text("what", measure.what);
    object.member("note", json_or_null(measure.note));
    object.member("grams", json_number(measure.grams));
    object.member("source", json_or_null(measure.source));
  }
  return out;
}

std::string allergen_ids(food::Allergens bits) {
  std::string out;
  JsonList list(out, '[', ']');
  for (const food::AllergenName& name : food::allergen_names())
    if ((bits & name.bit) != 0) list.item(json_string(name.id));
  return out;
}

std::string allergens_json(const FoodMatch& match) {
  const bool specified = match.own != nullptr && !match.own->specified.empty();
  std::string out;
  JsonList object(out, '{', '}');
  object.member("contains", allergen_ids(specified ? match.own->contains : match.food->allergens));
  object.member("may_contain", allergen_ids(specified ? match.own->may_contain : 0));
  object.member("assumed", specified ? "false" : "true");
  object.member("source", specified ? json_string("supplier's specification of " + match.own->specified)
                                    : json_or_null(match.food->allergen_source));
  return out;
}

}  // namespace

std::string food_text(const FoodMatch& match) {
  const food::Food& food = *match.food;
  std::vector<Row> rows;
  if (match.own != nullptr) rows.push_back({"this kitchen", own_text(*match.own)});
  rows.push_back({"names", names_text(food.english)});
  if (!food.french.empty()) rows.push_back({"in French", names_text(food.french)});
  rows.push_back({"its part", std::string(food::role_name(food.role))});
  rows.push_back({"in 100 g", with_source(composition_text(food), food.composition_source)});
  for (const food::Measure& measure : food.measures)
    rows.push_back({measure_label(measure), with_source(json_number(measure.grams) + " g", measure.source)});
  if (const auto density = food::density_of(food)) rows.push_back({"density", density_text(*density)});
  if (!std::isnan(food.trim_share))
    rows.push_back(
        {"trim", with_source(json_number(std::round(food.trim_share * 1000) / 10) + " %", food.trim_source)});
  if (!food.splits.empty()) rows.push_back({"splits into", std::string(food.splits)});
  rows.push_back({"allergens", allergens_text(match)});
  return (match.own != nullptr ? match.own->id : std::string(food.id)) + "\n" + two_columns(rows);
}

std::string food_json(const FoodMatch& match) {
  const food::Food& food = *match.food;
  std::string out;
  JsonList object(out, '{', '}');
  object.text("id", match.own != nullptr ? std::string_view(match.own->id) : food.id);
  object.member("english", names_json(food.english));
  object.member("french", names_json(food.french));
  object.text("role", food::role_name(food.role));
  object.member("per_100_g", composition_json(food));
  object.member("measures", measures_json(food));
  const auto density = food::density_of(food);
  object.member("density_g_per_ml", density ? json_number(density->grams_per_ml.approximate()) : "null");
  object.member("trim_share", json_number(food.trim_share));
  object.member("trim_source", json_or_null(food.trim_source));
  object.member("splits", json_or_null(food.splits));
  object.member("allergens", allergens_json(match));
  return out;
}

}  // namespace tamis::cli
