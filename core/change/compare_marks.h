#ifndef CORE_CHANGE_COMPARE_MARKS_H
#define CORE_CHANGE_COMPARE_MARKS_H

#include <string>
#include <utility>
#include <vector>

#include "core/change/compare_work.h"

namespace tamis::change {

/// A sentence as a row of words. A marked figure is one word that stands for its kind, so that only its words around it
/// are compared here and the figure itself by what it means.
struct Line {
  std::vector<std::string> words;         ///< figures as their kind
  std::vector<std::string> shown;         ///< the same words as they are read
  std::vector<fiche::Node> figures;       ///< marked figures, in order
  std::vector<std::size_t> figure_words;  ///< the word each of them stands in
  std::vector<fiche::Node> others;        ///< marks that are no figures: use, until, tool ...
};
Line line_of(const Side& side, fiche::Node node);

/// The words of a mark as they are read.
std::string words_in_line(const Side& side, fiche::Node mark);

/// Takes the words of these figures out of the line.
void leave_out(Line& line, const std::vector<fiche::Node>& figures);

/// Which mark of the new sentence is which of the old one, by kind, what they are of, their words and their order.
/// Takings (use) are paired by what is taken; those that are left over are no figures and left to compare_takes().
struct MarkPairs {
  std::vector<std::pair<fiche::Node, fiche::Node>> pairs;
  std::vector<fiche::Node> only_old, only_new;  ///< figures
};
MarkPairs pair_marks(const Comparing& work, const Line& was, const Line& is);

/// As the other differing_words(), the words shown as they are read.
std::string differing_words(const Line& from, const Line& to);

}  // namespace tamis::change

#endif
