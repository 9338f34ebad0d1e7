#include "core/format/draft_times.h"

#include <algorithm>
#include <string_view>

#include "core/format/draft_actions.h"

namespace tamis::format::draft {
namespace {

using fiche::El;

enum class Needs : unsigned char { unknown, hands, nobody };

/// Work that a person stands at, and waiting that nobody does. What depends on the kitchen (baking, simmering, a mixer
/// left alone) is neither.
Needs needs_of(std::string_view action) {
  for (const std::string_view word : {"knead", "stir", "whisk", "whip", "beat"})
    if (action == word) return Needs::hands;
  for (const std::string_view word : {"rest", "chill", "freeze", "cool", "soak", "proof", "infuse"})
    if (action == word) return Needs::nobody;
  return Needs::unknown;
}

/// The verb of the clause that the time stands in: the last before it.
std::string_view verb_before(const Desk& desk, const DraftStep& step, std::size_t time) {
  for (std::size_t i = time; i-- > 0;) {
    const Action action = action_at(desk.lexicon, step.words, i);
    if (action.words > 0) return action.word;
    if (step.words[i].opens_clause) return {};
  }
  return {};
}

bool is_unclear(const Desk& desk, const DraftStep& step, std::size_t first, std::size_t behind) {
  for (std::size_t back = 1; back <= 3 && back <= first; ++back)
    if (desk.lexicon.match(Set::time_unclear, step.words, first - back) == back) return true;
  return behind < step.words.size() && desk.lexicon.match(Set::time_unclear, step.words, behind) > 0;
}

}  // namespace

void find_times(const Desk& desk, DraftStep& step) {
  std::size_t hands = 0;
  std::size_t nobody = 0;
  for (const Mark& mark : step.marks) {
    if (mark.el != El::time) continue;
    const auto inside = [&](const Word& word) { return word.where.begin >= mark.where.begin; };
    const auto from = std::find_if(step.words.begin(), step.words.end(), inside);
    const auto first = static_cast<std::size_t>(from - step.words.begin());
    std::size_t behind = first;
    while (behind < step.words.size() && step.words[behind].where.begin < mark.where.end) ++behind;
    if (first == step.words.size() || step.words[first].opens_clause) continue;
    const Needs needs = needs_of(verb_before(desk, step, first));
    if (needs == Needs::unknown) continue;
    ++(needs == Needs::hands ? hands : nobody);
    if (!is_unclear(desk, step, first, behind))
      (needs == Needs::hands ? step.hands : step.unattended) = desk.folded(mark.where);
  }
  const bool by_machine = step.place == "mixer";
  if (hands != 1 || by_machine) step.hands.clear();
  if (nobody != 1) step.unattended.clear();
}

}  // namespace tamis::format::draft
