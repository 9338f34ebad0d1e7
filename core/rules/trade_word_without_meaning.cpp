#include <set>

#include "core/measure/trade_word.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

/// An attribute that shows the form of a meaning: with the word's usual one where it has one.
std::string meaning_attribute(const measure::TradeWord& word) {
  const bool time = word.kind == measure::Kind::time;
  const bool temperature = word.kind == measure::Kind::temperature;
  const std::string_view sample = time ? "10 to 16 h" : temperature ? "180 °C" : "5 g";
  const std::string_view name = time ? "time" : temperature ? "temperature" : "amount";
  return std::string(name) + "=\"" + std::string(word.meaning.empty() ? sample : word.meaning) + "\"";
}

void run(Check& check) {
  std::set<std::string_view> said;
  for (const fiche::Statement& statement : check.fiche.statements) {
    if (!statement.amount || statement.amount->has_figure()) continue;
    const measure::TradeWord* word = measure::trade_word_by_id(statement.amount->words);
    if (word == nullptr || !word->needs_house || check.kitchen.meanings.contains(word->id)) continue;
    if (!said.insert(word->id).second) continue;
    base::Finding& finding =
        check.say(statement.where, quoted(statement.text) + " means something else in every kitchen, and this one does not say",
                  "add <means word=\"" + statement.text + "\" " + meaning_attribute(*word) + "/> to the kitchen file");
    for (const fiche::Statement& later : check.fiche.statements) {
      if (&later <= &statement || !later.amount || later.amount->words != word->id) continue;
      finding.related.push_back({later.where, "here too", {}, {}, {}});
    }
  }
}

}  // namespace

/// A word of the trade that kitchens understand differently, and this kitchen's file gives no meaning. Said once a word.
const Rule trade_word_without_meaning = {
    .id = "trade-word-without-meaning",
    .severity = base::Severity::advice,
    .topic = "measure",
    .summary = "a word of the trade that the house gives no meaning",
    .explanation = R"("Overnight" is eight hours in one kitchen and sixteen in another; a "moderate oven" is anything from
160 to 190 °C. The cook who knows the house knows; the one who reads the card elsewhere does not, and no plan can be
made from the word.

Say what the house means once, in the kitchen file, with <means>. Words that everyone takes alike ("to taste") need
none.)",
    .bad = R"(    <step>Chill <time>overnight</time>.</step>)",
    .good = R"(    <step>Chill for <time>10 to 16 h</time>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
