#include "core/base/utf8.h"
#include "core/flow/stated_time.h"
#include "core/measure/write.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Statement;
using flow::TimeMark;

bool is_word(const Statement& statement) { return statement.amount && !statement.amount->has_figure(); }

bool apart(const flow::TimeRange& a, const flow::TimeRange& b) {
  return (a.most && *a.most < b.least) || (b.most && *b.most < a.least);
}

void hold_against(Check& check, const Statement& word, const Statement& figure) {
  const auto house = check.kitchen.meanings.find(word.amount->words);
  if (house == check.kitchen.meanings.end()) return;
  const auto meant = flow::time_meant(word, check.kitchen);
  const auto said = flow::time_meant(figure, check.kitchen);
  if (!meant || !said || !apart(*meant, *said)) return;
  const std::string meaning = measure::write_amount(house->second, {.no_break = false});
  check.say(figure.where, quoted(word.text) + " means " + meaning + " in this house, and here it is " + figure.text,
            "state the hours alone, or bring the figure to what the house means")
      .related.push_back({word.where, "the word", {}, {}, {}});
}

/// "overnight (14 h)": the figure in brackets right behind the word.
bool in_brackets_behind(const Check& check, const Statement& word, const Statement& figure) {
  const fiche::Node between = check.document.next(word.node);
  if (between == fiche::none || check.document.next(between) != figure.node) return false;
  if (check.document.kind(between) != fiche::NodeKind::text) return false;
  const std::string text = base::lower(base::trimmed(check.document.value(between)));
  return text == "(" || text == ", that is" || text == ", that is," || text == ", i.e.";
}

/// The step's unattended time against the only time in its sentence.
void look_at_pair(Check& check, const Statement& attribute, const std::vector<TimeMark>& marks) {
  if (marks.size() != 1 || marks.front().role != TimeMark::Role::length || marks.front().one_of_several) return;
  const Statement& mark = *marks.front().statement;
  if (check.document.get(mark.node, At::of) == "hands" || !attribute.amount) return;
  if (is_word(attribute) && !is_word(mark)) hold_against(check, attribute, mark);
  if (is_word(mark) && !is_word(attribute)) hold_against(check, mark, attribute);
}

void run(Check& check) {
  if (check.kitchen.meanings.empty()) return;
  for (const fiche::Step& step : check.fiche.steps) {
    const std::vector<TimeMark> marks = flow::time_marks(check.fiche, step.node);
    if (marks.empty()) continue;
    if (const Statement* unattended = check.fiche.statement(step.node, At::unattended)) look_at_pair(check, *unattended, marks);
    for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
      const Statement& word = *marks[i].statement;
      const Statement& figure = *marks[i + 1].statement;
      if (is_word(word) && !is_word(figure) && in_brackets_behind(check, word, figure)) hold_against(check, word, figure);
    }
  }
}

}  // namespace

/// "Overnight", with a figure beside it that is not what the house means by the word.
const Rule word_against_house_meaning = {
    .id = "word-against-house-meaning",
    .severity = base::Severity::warning,
    .topic = "order",
    .summary = "a trade word for a time, beside a figure that the house does not mean by it",
    .explanation = R"(The house has written down what it means by "overnight". A step that says overnight and counts six hours tells
the cook one thing and the plan another.

A choice ("4 h or overnight") and one rest after another ("1 h, then overnight") are let be.)",
    .bad = R"(    <step unattended="6 h">Rest the dough <time>overnight</time>.</step>)",
    .good = R"(    <step unattended="12 h">Rest the dough <time>overnight</time>.</step>)",
    .source = "the house's own kitchen file (means)",
    .schemas = "",
    .kitchen = R"(<means word="overnight" time="10 to 16 h"/>)",
    .run = run,
};

}  // namespace tamis::rules
