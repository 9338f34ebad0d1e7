#ifndef TESTS_AGAINST_REAL_RECIPE_H
#define TESTS_AGAINST_REAL_RECIPE_H

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/fiche/fiche.h"

namespace tamis::tests {

/// Names of the fourteen fiches of tests/against/real, without ending.
const std::vector<std::string>& real_recipes();

/// One of them, read; the kitchen states nothing.
struct RealFiche {
  std::shared_ptr<fiche::Document> document;
  fiche::Kitchen kitchen;
  fiche::Fiche fiche;
};
std::unique_ptr<RealFiche> real_fiche(const std::string& id);

/// The same recipe as the source prints it (real-recipes/<id>.json of the reference data).
struct PrintedAmount {
  std::string batch, weight, measure, issue;  ///< "" where the source prints nothing
};
struct PrintedIngredient {
  std::string name, group, recipe, component;
  std::vector<std::string> parts;
  std::vector<PrintedAmount> amounts;
  bool tops_up = false;
};
struct PrintedStep {
  std::vector<std::string> equipment, removes;
  std::string reduce_by, branch;
  bool control = false, conditional = false, missing = false;
};
struct PrintedRecipe {
  std::vector<std::string> batches, controls, quirks;
  std::vector<std::string> facts;  ///< texts that may hold a figure: yield, steps, names and notes of ingredients
  std::vector<std::string> heat_words;  ///< "temps" without a figure
  std::vector<int> portions;
  std::vector<PrintedIngredient> ingredients;
  std::vector<PrintedStep> steps;
  std::vector<std::pair<std::string, std::string>> pairs;  ///< US and metric
};
std::optional<PrintedRecipe> printed_recipe(const std::string& id);  ///< empty, with SKIPPED said, without the data

/// Rows of a CSV file of tests/against/real, header left out; every row has as many fields as the header.
std::vector<std::vector<std::string>> real_table(const std::string& name);

}  // namespace tamis::tests

#endif
