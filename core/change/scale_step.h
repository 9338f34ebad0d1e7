#ifndef CORE_CHANGE_SCALE_STEP_H
#define CORE_CHANGE_SCALE_STEP_H

#include <initializer_list>
#include <optional>
#include <string>

#include "core/change/scale_work.h"
#include "core/flow/states.h"

namespace tamis::change {

/// What the passes over the steps of a scaling ask of one.
class ScaleStep {
 public:
  explicit ScaleStep(ScaleWork& work);

  [[nodiscard]] bool larger(base::Ratio times) const { return work.factor >= times; }
  [[nodiscard]] bool smaller(base::Ratio times) const { return work.factor <= base::Ratio(1) / times; }
  /// Enough to tell.
  [[nodiscard]] bool differs() const { return larger(base::Ratio(5, 4)) || smaller(base::Ratio(5, 4)); }
  static bool does(const fiche::Step& step, std::initializer_list<std::string_view> words);

  /// A time that a step states: a mark in its sentence, or its unattended time; of those for one batch or depth
  /// only, none.
  struct Time {
    base::Span where;
    std::string written;                ///< "40 to 50 min"
    std::optional<double> least, most;  ///< s; empty for words
  };
  [[nodiscard]] std::optional<Time> stated_time(const fiche::Step& step) const;

  /// Says a warning at the first place; at further ones of the same rule and message, adds the place to that
  /// finding.
  void say_once(std::string_view rule, base::Span where, std::string message, std::string advice,
                std::string source = "common practice");

  ScaleWork& work;
  const fiche::Document& document;
  std::string how_often;  ///< how many times the author's batch it is: "1.5"
};

/// Says of a step that its stated time is for another depth or mass, and what it is likely to take now.
void look_at_time(ScaleStep& at, const fiche::Step& step);

}  // namespace tamis::change

#endif
