#ifndef CORE_CHANGE_COMPARE_PAIR_H
#define CORE_CHANGE_COMPARE_PAIR_H

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/change/compare_side.h"

namespace tamis::change {

/// Which element of the new fiche is which of the old one.
///
/// Elements are weighed against each other, and the best pairs are taken first, as long as they speak for each other
/// enough:
///   component   id, likeness of the title, likeness of all that is in it
///   ingredient  id, food, name, amount, its component; in another component an id needs more to speak for it
///   step        id, likeness of the sentence, action, what it makes, its component; in another component it needs its
///               id or most of its words
///   others      among the children of a pair: id, what names such an element (the date of a trial, the hazard of a
///               control point), likeness of the words, place
/// The weights are our own. Pairs are the same whichever fiche is called the new one.
class Pairs {
 public:
  Pairs(const Side& from, const Side& to);

  /// The element's partner in the other fiche; none when it has none.
  [[nodiscard]] fiche::Node in_new(fiche::Node in_old) const { return partner(to_new_, in_old); }
  [[nodiscard]] fiche::Node in_old(fiche::Node in_new) const { return partner(to_old_, in_new); }

  /// What an id of the old fiche is called in the new one; the id itself where nothing tells.
  [[nodiscard]] std::string id_in_new(std::string_view id) const;

 private:
  using Partners = std::map<fiche::Node, fiche::Node>;
  static fiche::Node partner(const Partners& partners, fiche::Node node);

  void pair(fiche::Node a, fiche::Node b);
  void pair_components();
  void pair_ingredients();
  void pair_steps();
  /// Pairs the other children of a pair; what it finds is added to `open`, for their own children.
  void pair_children(fiche::Node a, fiche::Node b, std::vector<std::pair<fiche::Node, fiche::Node>>& open);
  void pair_ids();
  [[nodiscard]] bool in_one_component(fiche::Node a, fiche::Node b) const;

  const Side& from_;
  const Side& to_;
  Partners to_new_, to_old_;
  std::map<std::string, std::string, std::less<>> ids_;
};

/// Of elements that stand on both sides, in the order of the new fiche, with their places in the old one and the length
/// of their words: which of them moved. The fewest and shortest that can be said to have moved; `tie` decides among
/// equals and must not depend on which fiche is the new one.
struct Standing {
  std::size_t old_place = 0;
  std::size_t length = 0;
  std::string tie;
};
std::vector<bool> moved_among(const std::vector<Standing>& standing);

}  // namespace tamis::change

#endif
