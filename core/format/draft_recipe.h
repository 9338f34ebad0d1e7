#ifndef CORE_FORMAT_DRAFT_RECIPE_H
#define CORE_FORMAT_DRAFT_RECIPE_H

#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/fiche/kitchen.h"
#include "core/fiche/vocabulary.h"
#include "core/format/draft.h"
#include "core/format/draft_words.h"
#include "core/measure/read.h"

namespace tamis::format::draft {

/// What every pass works with: the typed text, how it is read, and where questions go.
///
/// Passes, in order: clean (draft.cpp), language, lines, arrange (which reads ingredient and yield lines), figures and
/// actions of each step, links, write. Spans are byte offsets into the typed text throughout.
struct Desk {
  std::string text;              ///< the typed bytes; control characters made spaces, so offsets agree
  const fiche::Kitchen& kitchen;
  measure::Reading reading;
  Lexicon lexicon;
  std::vector<Question> questions;
  std::set<std::string> asked;   ///< questions that are put once a draft, by what they are about

  [[nodiscard]] std::string_view slice(base::Span span) const {
    return std::string_view(text).substr(span.begin, span.end - span.begin);
  }
  [[nodiscard]] std::string folded(base::Span span) const { return folded_space(slice(span)); }
  void ask(base::Span where, std::string words) { questions.push_back({where, std::move(words)}); }
  /// Puts a question that one answer settles for the whole draft.
  void ask_once(const std::string& about, base::Span where, std::string words);
};

using Attributes = std::vector<std::pair<fiche::At, std::string>>;

/// A part of a sentence that becomes an element.
struct Mark {
  base::Span where;
  base::Span said;                ///< what of it stands in the sentence, where an attribute holds the rest; empty: all
  fiche::El el = fiche::El::unknown;
  Attributes attributes;
};

/// A phrase by which a sentence may name an ingredient. rank 0: the whole name; 1: holds the noun that names it;
/// 2: another noun of it ("vanilla" of "vanilla extract").
struct Key {
  std::vector<std::string> words;  ///< stems
  int rank = 0;
};

struct DraftPart {
  std::string id, word;
  bool zest = false;
};

struct DraftIngredient {
  base::Span line;
  std::string id, food, name, prep, pieces, size, amount, also, fat, cocoa, purpose;
  std::string bare;               ///< the name without "for the tin"
  std::string pack;               ///< filled: pieces counts packs of it
  bool optional = false;
  std::vector<DraftPart> parts;
  std::vector<Key> keys;
  bool used = false;
};

struct DraftStep {
  base::Span text;                ///< without its number
  std::vector<Word> words;
  std::vector<Mark> marks;        ///< nested or apart, never crossing
  struct Unclear {
    Mark mark;                    ///< its element still to be found
    std::string question;
  };
  std::vector<Unclear> unclear;   ///< temperatures of which the words around do not say what has them
  std::string actions, place, day;
  std::string hands, unattended;  ///< as typed, where the sentence says so plainly
  std::string makes;              ///< id of the result that the author gives a name to
  base::Span result;              ///< that name
};

struct DraftYield {
  Attributes attributes;
  Attributes mould;               ///< empty: none
};

/// A remark: on a line of its own, kept as it was typed.
struct DraftNote {
  base::Span text;
  bool asked = false;
};

struct DraftComponent {
  std::string id, title, day;
  base::Span heading;
  bool own_title = true;          ///< false: it goes by the dish's title
  bool whole_method = false;      ///< the method of all components, told in one go
  std::vector<DraftYield> yields;
  std::vector<DraftIngredient> ingredients;
  std::vector<DraftStep> steps;
  std::vector<base::Span> notes;
};

struct Recipe {
  std::string title, language, units;
  std::vector<base::Span> summary, notes;
  std::vector<DraftYield> yields;
  std::vector<DraftComponent> components;
};

/// A name as an XML id: ASCII letters, digits and hyphens, at most three words; "" when nothing is left of it.
std::string slug(std::string_view name, std::size_t most_words = 3);

}  // namespace tamis::format::draft

#endif
