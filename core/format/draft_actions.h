#ifndef CORE_FORMAT_DRAFT_ACTIONS_H
#define CORE_FORMAT_DRAFT_ACTIONS_H

#include <span>
#include <string>
#include <string_view>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// A verb of the table core/format/draft_actions.inc found in a sentence.
struct Action {
  std::string_view word;      ///< the trade's: "fold"
  std::size_t words = 0;      ///< how many words of the text it takes; 0: none starts here
};

/// The verb that starts at this word, if it reads as one there.
Action action_at(const Lexicon& lexicon, std::span<const Word> words, std::size_t at);

/// Fills a step's actions ("melt fold") and place ("hob").
void find_actions(const Desk& desk, DraftStep& step);

}  // namespace tamis::format::draft

#endif
