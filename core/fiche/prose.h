#ifndef CORE_FICHE_PROSE_H
#define CORE_FICHE_PROSE_H

#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/document.h"

namespace tamis::fiche {

// White space in a fiche, and what stands in the line and what on a line of its own. The formatter, the writer and
// same_meaning() all ask here.
//
// Blank is space, tab and line feed, and nothing else: a no-break space (U+00A0) and its kin are letters that the
// author set, never touched. A run of blank in text means one space. At the ends of a block, and beside a block,
// it means nothing.
//
// A *mark* stands in the line of a sentence (use, amount, food-temp, until ...: what the schema's `prose` lists);
// every other element is a *block* (step, gate, note ...). Besides: an amount of an ingredient is a block (the
// amount of another batch), and an element we do not know is a mark where its parent may hold text. What is in a
// mark is in the line with it.
//
// The content of a block falls into *runs*: each block in it is one, and what stands between two blocks is one. A
// run with words or marks is prose; one of comments, instructions and foreign XML alone is not, and the blank in
// it means nothing.

/// No letter but space, tab, line feed.
bool is_blank(std::string_view text);

/// Every run of blank as one space; ends kept.
std::string folded(std::string_view text);

/// Whether the element stands in the line, being a child of `parent`.
bool is_mark(const Document& document, Node element);

/// Whether the element's text is sentences, which may be broken over lines; else it is a value (a title, an
/// amount).
bool holds_prose(El el);

/// A piece of content: text (node is none) as folded and trimmed, never empty; or a node.
struct Part {
  Node node = none;
  std::string text;
};

struct Run {
  bool prose = false;
  std::vector<Part> parts;  ///< one block; or prose; or comments, instructions, foreign XML
};

/// The content of an element as it counts. With `in_line` (the element is a mark, or in one) it is one run of
/// prose and its ends are not trimmed. Runs without parts are left out.
std::vector<Run> runs_of(const Document& document, Node element, bool in_line);

}  // namespace tamis::fiche

#endif
