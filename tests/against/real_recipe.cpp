#include "tests/against/real_recipe.h"

#include <stdexcept>

#include <nlohmann/json.hpp>

#include "core/format/format.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

namespace tamis::tests {
namespace {

using nlohmann::json;

std::string text(const json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

bool flag(const json& object, const char* key) { return object.value(key, false); }

std::vector<std::string> texts(const json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end()) return {};
  if (found->is_string()) return {found->get<std::string>()};
  return found->get<std::vector<std::string>>();
}

PrintedIngredient ingredient(const json& row) {
  PrintedIngredient out;
  out.name = text(row, "name");
  out.group = text(row, "alternate_group");
  out.recipe = text(row, "subrecipe");
  out.component = text(row, "component");
  out.parts = texts(row, "splits");
  out.tops_up = flag(row, "top_up");
  const json bought = row.value("as_purchased", json::object());
  for (const json& amount : row.at("amounts")) {
    PrintedAmount made{text(amount, "batch"), text(amount, "weight"), text(amount, "measure"), text(amount, "issue")};
    if (made.issue.empty()) made.issue = text(bought, made.batch.c_str());
    out.amounts.push_back(std::move(made));
  }
  return out;
}

PrintedStep step(const json& row) {
  PrintedStep out;
  out.equipment = texts(row, "equipment");
  out.removes = texts(row, "removes");
  out.reduce_by = text(row.value("reduce", json::object()), "by");
  out.branch = text(row, "branch");
  out.control = flag(row, "ccp");
  out.conditional = flag(row, "conditional");
  out.missing = flag(row, "missing");
  return out;
}

void all_texts(const json& value, std::vector<std::string>& out) {
  if (value.is_string()) out.push_back(value.get<std::string>());
  if (value.is_structured()) {
    for (const json& inner : value) all_texts(inner, out);
  }
}

bool has_digit(const std::string& words) { return words.find_first_of("0123456789") != std::string::npos; }

PrintedRecipe recipe(const json& file) {
  PrintedRecipe out;
  out.batches = texts(file, "batch_sizes");
  out.controls = texts(file, "ccp");
  out.quirks = texts(file, "quirks");
  out.portions = file.at("portions").get<std::vector<int>>();
  for (const json& row : file.at("ingredients")) out.ingredients.push_back(ingredient(row));
  for (const json& row : file.at("steps")) {
    out.steps.push_back(step(row));
    for (const std::string& heat : texts(row, "temps")) {
      if (!has_digit(heat)) out.heat_words.push_back(heat);
    }
  }
  for (const json& pair : file.at("printed_pairs")) out.pairs.emplace_back(text(pair, "us"), text(pair, "metric"));
  for (const auto& key : {"title", "yield", "steps", "ccp", "core_temperatures"}) {
    if (file.contains(key)) all_texts(file.at(key), out.facts);
  }
  for (const json& row : file.at("ingredients")) {
    out.facts.push_back(text(row, "name"));
    out.facts.push_back(text(row, "notes"));
  }
  return out;
}

}  // namespace

const std::vector<std::string>& real_recipes() {
  static const std::vector<std::string> names = {
      "afrs-beef-stew-l022",          "afrs-roast-rib-l004",      "afrs-vanilla-cream-pudding-j018",
      "beeton-orange-marmalade-1566", "escoffier-hollandaise-30", "farmer-charlotte-russe",
      "nist-banana-bread",            "usda-canning-syrups",      "usda-chicken-vegetable-soup-h040b",
      "usda-minestrone-h070",         "usda-peach-cobbler-b18",   "usda-potato-salad-e09",
      "usda-white-sauce-c07",         "usda-whole-grain-dinner-rolls"};
  return names;
}

std::unique_ptr<RealFiche> real_fiche(const std::string& id) {
  const std::string path = "tests/against/real/" + id + ".fiche.xml";
  format::Read read = format::read(std::make_shared<base::Source>(path, project_file(path)));
  if (read.document == nullptr || !read.findings.empty()) throw std::runtime_error("cannot read " + path);
  auto out = std::make_unique<RealFiche>();
  out->document = std::move(read.document);
  out->fiche = fiche::read_fiche(*out->document, out->kitchen);
  return out;
}

std::optional<PrintedRecipe> printed_recipe(const std::string& id) {
  const std::optional<std::string> bytes = shared_file("real-recipes/" + id + ".json");
  if (!bytes) return std::nullopt;
  return recipe(json::parse(*bytes));
}

std::vector<std::vector<std::string>> real_table(const std::string& name) {
  std::vector<std::vector<std::string>> rows = read_csv_fields(project_file("tests/against/real/" + name));
  if (rows.empty()) throw std::runtime_error("cannot read " + name);
  for (const auto& row : rows) {
    if (row.size() != rows.front().size()) throw std::runtime_error(name + ": a row of another length");
  }
  rows.erase(rows.begin());
  return rows;
}

}  // namespace tamis::tests
