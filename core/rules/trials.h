#ifndef CORE_RULES_TRIALS_H
#define CORE_RULES_TRIALS_H

#include <optional>
#include <string_view>
#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// How much was made, in the ways that can be held against a yield; empty where nothing says.
struct BatchSize {
  std::optional<double> portions;
  std::optional<double> pieces;
  std::optional<double> grams;
  std::optional<double> millilitres;
};

/// "24 portions", "1.2 kg", "40 pieces of 60 g" as words (en, fr, de, es). What is not understood is left out.
BatchSize batch_size(std::string_view words, const measure::Reading& reading);
/// Of a yield element.
BatchSize batch_size(const Check& check, fiche::Node yield);

struct Trial {
  fiche::Node node = fiche::none;
  std::string_view batch;
  enum class Verdict : unsigned char { none, passed, failed } verdict = Verdict::none;
};
std::vector<Trial> trials_of(const fiche::Document& document);

}  // namespace tamis::rules

#endif
