#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) { say_reading_faults(check, "unknown-trade-word"); }

}  // namespace

/// A word where a figure is expected, and no table or kitchen knows it.
const Rule unknown_trade_word = {
    .id = "unknown-trade-word",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a word in place of a figure that nobody knows",
    .explanation = R"(Some words of the trade stand for a figure: "overnight", "to taste", "room temperature". Others do
not, and a plan cannot wait for "a fair while".

Write a figure or one of the known words. A cue that the cook watches for ("until golden") is marked with <until>.)",
    .bad = R"(    <step>Rest for <time>a goodly while</time>.</step>)",
    .good = R"(    <step>Rest for <time>20 to 30 min</time>.</step>)",
    .source = "the table of trade words (core/measure/trade_words.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
