#ifndef CORE_RULES_BALANCE_H
#define CORE_RULES_BALANCE_H

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "core/rules/rule.h"

namespace tamis::rules {

// What the rules of topic "balance" share: what a kitchen allows for, and how masses are written in a message.

constexpr std::size_t index_of(int i) { return static_cast<std::size_t>(i); }

/// Weighing and printing round: up to 5 % is no difference (common practice).
inline constexpr double weighing = 0.05;

/// What a yield can state of the mass that goes in, as shares of it (common practice):
///   at most 105 %: weighing. More is believed only where the food is boiled in water, which is then not judged;
///   at least  90 % of what is not heated: the bowl, the spoon, the knife;
///             85 % of what is heated, where the loss in cooking is stated;
///             60 % of what is heated, where it is not: bread loses 10 to 15 %, a roast 20 to 30 %, a jam 20 to 40 %.
struct Allowance {
  double least = 0.9;
  double most = 1 + weighing;
  bool judged = true;
  /// How what is stated and what is made differ: "more than", "much less than"; "" when they may be the same.
  [[nodiscard]] std::string_view difference(const flow::Grams& stated, const flow::Grams& made) const;
};
/// Of a component, or of the whole fiche (its root); `yield` may state what is lost.
Allowance allowance_for(const Check& check, fiche::Node owner, fiche::Node yield);

/// Calls `look_at` for every component that has a yield and an outcome, then for the fiche as a whole: owner, yield, made.
void for_each_yield(const Check& check, const std::function<void(fiche::Node, fiche::Node, const flow::Grams&)>& look_at);

/// Grams of a mass as written; of a volume between 0.5 and 1.35 g/ml: from a whipped cream to a boiled syrup (common
/// practice). Empty for other kinds and for words.
std::optional<flow::Grams> grams_stated(const measure::Amount& amount);

/// "250 g", "1.2 to 1.4 kg".
std::string grams_text(const flow::Grams& grams);

/// The name of a thing as a message says it: in quotes.
std::string called(const flow::Thing& thing);

/// Where a use is said: its mark, else its step.
base::Span place_of(const Check& check, const flow::Use& use);

/// Two uses that happen in one making: not on two branches, neither only if something is so.
bool made_together(const flow::Flow& flow, const flow::Use& a, const flow::Use& b);

/// The component's steps name what they use, so that what they do not name is not used.
bool is_marked(const flow::Flow& flow, fiche::Node component);

}  // namespace tamis::rules

#endif
