#ifndef CORE_CHANGE_COMPARE_H
#define CORE_CHANGE_COMPARE_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/source.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"

namespace tamis::change {

/// What a change touches; the order in which changes are told.
enum class Topic : unsigned char {
  safety,   ///< allergens, control points, cautions, keeping
  figures,  ///< foods, amounts, temperatures, times, yields, moulds, gates
  order,    ///< steps that came, went or moved
  other,    ///< state, trials, equipment, people, sources
  wording,  ///< reads differently, means the same
};
std::string_view topic_name(Topic topic);  // "safety", "figures", "order", "other", "wording"

/// One thing that differs between two fiches.
struct Change {
  enum class Kind : unsigned char { added, removed, changed, moved, reworded } kind = Kind::changed;
  /// What became of a condition: of a gate, a control point, a keeping, an allergen statement.
  enum class Hold : unsigned char { same, tightened, loosened } hold = Hold::same;
  Topic topic = Topic::other;
  std::string text;  ///< one line, as a pastry chef would say it: "custard 2 °C hotter: 84–86 °C, was 82–84 °C"
  std::string what;  ///< what it is about: "custard", "sugar in the mousse"
  std::string is, was;  ///< as written in the new and in the old fiche; "" where there is nothing
  std::optional<base::Span> new_where, old_where;  ///< in each source; empty where it is not there
};
std::string_view kind_name(Change::Kind kind);  // "added", "removed", "changed", "moved", "reworded"
std::string_view hold_name(Change::Hold hold);  // "", "tightened", "loosened"

/// A fiche and the kitchen it is read with.
struct Compared {
  const fiche::Document& document;
  const fiche::Kitchen& kitchen;
};

/// What changed from one fiche to another by meaning, what moved, and what only reads differently. Sorted: by topic, what
/// was loosened first, then by place. Empty when the two say the same, whatever their layout, comments and spelling.
/// Of two fiches taken the other way round the same is told the other way round: what was added is removed, what was
/// tightened is loosened, and so on.
///
/// Figures. By meaning, and no finer than the coarser of the two kitchens can measure: 1000 g is 1 kg, a US cup is
/// 236.6 ml, 350 °F on an oven's dial is 180 °C; a fan oven is never a static one. Words ("overnight") are what each
/// kitchen means by them, where it says so. A fiche that went through a conversion is read as its author wrote it.
/// Where the greater part of the amounts changed by one factor, this is said once, of the whole fiche or of a
/// component, and then only what does not follow.
///
/// Elements. The same one is found by its id, food, name, action and result, by the likeness of its words and by where
/// it stands; so what was renamed or moved is not told as gone and new (core/change/compare_pair.h). Ids themselves
/// mean nothing but what they tie together.
///
/// Gates, control points and keeping. A condition that lets more pass is loosened: a higher "at most", a lower "at
/// least", a wider range, an exact limit moved to the unsafe side (below from 50 °C up, above to 25 °C; common practice),
/// a longer keeping, a control point that is gone.
///
/// Both must be fiches (the root element is fiche).
std::vector<Change> compare(const Compared& from, const Compared& to);

}  // namespace tamis::change

#endif
