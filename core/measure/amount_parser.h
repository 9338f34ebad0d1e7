#ifndef CORE_MEASURE_AMOUNT_PARSER_H
#define CORE_MEASURE_AMOUNT_PARSER_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/number.h"
#include "core/measure/phrase.h"
#include "core/measure/read.h"

namespace tamis::measure {

/// The one grammar of amounts. It reads from the start of a text as far as it understands:
///
///   statement  about? bound? about? (between | from)? parts (to parts)? bound-after? about-after?
///   parts      part (plus? part)*            of one kind; without a plus each smaller than the one before
///   part       number unit | number | prefix-unit number | rough-unit
///
/// A caller that wants the whole text looks at rest() and, when something is left, at fault().
class AmountParser {
 public:
  AmountParser(std::string_view text, Kinds wanted, const Reading& reading, bool in_sentence);

  std::optional<Amount> statement();
  [[nodiscard]] std::size_t used() const { return at_; }
  [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }
  /// Why nothing was read, or why reading stopped where it did.
  [[nodiscard]] const std::optional<base::Finding>& fault() const { return fault_; }

 private:
  struct Part {
    base::Ratio value;
    const Unit* unit = nullptr;
    bool bare = true;  ///< may stand without a unit
  };
  using Parts = std::vector<Part>;

  std::optional<Amount> plain();
  std::optional<Parts> parts();
  std::optional<Part> part();
  std::optional<Part> rough_part();
  std::optional<Part> prefixed_part();
  bool add_part(Parts& parts);
  bool add_minutes(Parts& parts);
  bool take_unit(Part& part);
  bool take_minus();
  bool take(std::size_t bytes);
  bool take_phrase(PhraseRole role);
  bool bound(Amount& amount, bool after);
  bool range(Amount& amount, Parts& low, bool between);
  bool settle(Parts& parts, const Parts* other);
  bool fill(Amount& amount, const Parts& parts, bool high);
  void refuse_without_unit(std::size_t from, const Part& figure);
  void skip_spaces();
  void refuse(base::Finding finding, std::size_t from);
  void refuse(std::string_view rule, std::size_t from, std::size_t to, std::string message, std::string advice);

  std::string_view text_;
  Kinds wanted_;
  const Reading& reading_;
  bool in_sentence_;
  std::string language_;
  NumberStyle style_;
  std::size_t at_ = 0;
  std::optional<base::Finding> fault_;
};

}  // namespace tamis::measure

#endif
