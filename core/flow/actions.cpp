#include "core/flow/actions.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace tamis::flow {
namespace {

constexpr Action rows[] = {
#define ACTION(word, heat, off, air, rest, needs) \
  {word, Action::Heat::heat, (off) / 100.0, Action::Air::air, Action::Rest::rest, needs},
#include "core/flow/actions.inc"
};

constexpr auto sorted = [] {
  std::array<Action, std::size(rows)> all{};
  std::copy(std::begin(rows), std::end(rows), all.begin());
  std::sort(all.begin(), all.end(), [](const Action& a, const Action& b) { return a.word < b.word; });
  return all;
}();

constexpr bool each_once = std::adjacent_find(sorted.begin(), sorted.end(), [](const Action& a, const Action& b) {
                             return a.word == b.word;
                           }) == sorted.end();
static_assert(each_once, "an action has two lines in actions.inc");

}  // namespace

std::span<const Action> actions() { return sorted; }

const Action* action_named(std::string_view word) {
  const auto found = std::lower_bound(sorted.begin(), sorted.end(), word,
                                      [](const Action& action, std::string_view wanted) { return action.word < wanted; });
  return found == sorted.end() || found->word != word ? nullptr : &*found;
}

}  // namespace tamis::flow
