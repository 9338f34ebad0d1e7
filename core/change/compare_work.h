#ifndef CORE_CHANGE_COMPARE_WORK_H
#define CORE_CHANGE_COMPARE_WORK_H

#include <string>
#include <vector>

#include "core/change/compare.h"
#include "core/change/compare_batch.h"
#include "core/change/compare_figure.h"
#include "core/change/compare_pair.h"
#include "core/change/compare_side.h"

namespace tamis::change {

/// One comparison under way: the two sides, which element is which, and what was found so far.
struct Comparing {
  Comparing(const Compared& old_fiche, const Compared& new_fiche);

  Side from;
  Side to;
  Pairs pairs;
  Batch batch;
  std::vector<Change> changes = {};

  /// Adds a change; the nodes say where, fiche::none where it is not there.
  void say(Change change, fiche::Node in_old, fiche::Node in_new);
  void say(Change change, std::optional<base::Span> in_old, std::optional<base::Span> in_new);
};

/// What a figure is told as.
struct Manner {
  Topic topic = Topic::figures;
  Bound bound = Bound::as_written;
  bool condition = false;  ///< a figure that lets pass or not: tightened or loosened
  bool amount = false;     ///< of an ingredient: "8 % more sugar in the mousse"
  double factor = 1;
  std::string subject;     ///< "custard", "sugar"
  std::string behind;      ///< " in the mousse", " unattended"
  std::string suffix;      ///< behind the new figure: " bloom"
  std::string before;      ///< "gate", "control point", "keeping": what is tightened or loosened; "" for others
  std::string comment;     ///< behind the figures: "8.5 % of it by weight, was 7.9 %"
};

// The passes, each over its own part of the two fiches.
void compare_pair(Comparing& work, fiche::Node in_old, fiche::Node in_new);         // compare_elements.cpp
void compare_attributes(Comparing& work, fiche::Node in_old, fiche::Node in_new);   // compare_attributes.cpp
void compare_sentence(Comparing& work, fiche::Node in_old, fiche::Node in_new);     // compare_prose.cpp
void compare_allergens(Comparing& work);                                            // compare_allergens.cpp
void compare_batches(Comparing& work);                                              // compare_tell.cpp
void compare_order(Comparing& work);                                                // compare_order.cpp
void compare_takes(Comparing& work);                                                // compare_takes.cpp

/// Tells of an element that is only in the new fiche, or only in the old one.
void tell_added(Comparing& work, fiche::Node in_new);                                // compare_came.cpp
void tell_removed(Comparing& work, fiche::Node in_old);

/// "8.5 %" of 0.085.
std::string percent_of_whole(double share);

/// Tells of two statements when they differ (compare_tell.cpp).
void tell_figures(Comparing& work, const fiche::Statement& was, const fiche::Statement& is, const Manner& manner);

/// How a figure is told that stands there (At::unknown: the element's own text).
Manner manner_of(const Comparing& work, fiche::Node in_new, fiche::At at);

/// What an attribute is called in a list of changes (core/change/compare_labels.inc); null when by its own name.
struct Label {
  fiche::El el;
  fiche::At at;
  Topic topic;
  std::string_view before, behind;
};
const Label* label_of(fiche::El el, fiche::At at);

/// Whether it stands in a control point, a keeping or a caution, or in a gate.
bool in_safety(const Side& side, fiche::Node node);
bool in_gate(const Side& side, fiche::Node node);

/// The attributes that a statement of changes leaves to other passes, or that mean nothing by themselves.
bool is_silent(fiche::El el, fiche::At at);

}  // namespace tamis::change

#endif
