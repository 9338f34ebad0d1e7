#ifndef CORE_CHANGE_COMPARE_SCORE_H
#define CORE_CHANGE_COMPARE_SCORE_H

#include <string>
#include <vector>

#include "core/change/compare_side.h"

namespace tamis::change {

/// What an element is known by.
struct Traits {
  fiche::El el = fiche::El::unknown;
  std::string id, food, name, text;  ///< name: title, author's words; text: its own amount or sentence
  std::string actions, makes;
  std::string key;                   ///< what names such an element: the date of a trial, the hazard of a control point
  std::vector<std::string> words, title_words;
};
Traits traits_of(const Side& side, fiche::Node node);

/// What speaks for two elements being the same; 1 or more is enough for an ingredient or step.
inline constexpr double least_for_component = 2.5;
inline constexpr double least_for_block = 1;
double score_component(const Traits& a, const Traits& b);
double score_ingredient(const Traits& a, const Traits& b, bool one_component);
double score_step(const Traits& a, const Traits& b, bool one_component);
double score_block(const Traits& a, const Traits& b);

}  // namespace tamis::change

#endif
