#ifndef CORE_BASE_RATIO_H
#define CORE_BASE_RATIO_H

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tamis::base {

/// An exact number: a ratio of two int64 in lowest terms, the denominator positive.
/// Arithmetic runs over 128-bit intermediates. A result that does not fit is not rounded and not wrapped: it
/// becomes `Ratio::overflow()`, which stays what it is through all further arithmetic and compares unequal to
/// everything. Ask `ok()` once, at the end of a sum. Division by zero gives overflow() too.
class Ratio {
 public:
  constexpr Ratio() = default;
  constexpr Ratio(std::int64_t whole) : numerator_(whole) {}  // NOLINT: whole numbers are ratios
  Ratio(std::int64_t numerator, std::int64_t denominator);

  static Ratio overflow();
  /// What is known to be in lowest terms with the denominator above zero.
  static Ratio of_lowest_terms(std::int64_t numerator, std::int64_t denominator);
  /// "12", "-3", "0.25", "7/8", "453.59237"; point as decimal sign, nothing else around. Empty when it is not that
  /// or does not fit.
  static std::optional<Ratio> parse(std::string_view text);

  [[nodiscard]] constexpr std::int64_t numerator() const { return numerator_; }
  [[nodiscard]] constexpr std::int64_t denominator() const { return denominator_; }
  [[nodiscard]] constexpr bool ok() const { return denominator_ != 0; }
  [[nodiscard]] constexpr bool whole() const { return denominator_ == 1; }
  [[nodiscard]] double approximate() const;
  /// "n/d", or "n" when whole.
  [[nodiscard]] std::string text() const;
  /// With so many decimal places (0 to 18), point as sign, the last one rounded, halves away from zero: "6.99". Every ratio
  /// that is ok can be written so; "overflow" is not.
  [[nodiscard]] std::string decimal(int places) const;

  /// Largest whole number not above it / nearest whole number, halves away from zero. Overflow gives 0.
  [[nodiscard]] std::int64_t floor() const;
  [[nodiscard]] std::int64_t nearest() const;

  friend Ratio operator+(Ratio a, Ratio b);
  friend Ratio operator-(Ratio a, Ratio b);
  friend Ratio operator*(Ratio a, Ratio b);
  friend Ratio operator/(Ratio a, Ratio b);
  Ratio operator-() const;
  friend bool operator==(Ratio a, Ratio b);
  friend bool operator<(Ratio a, Ratio b);
  friend bool operator>(Ratio a, Ratio b) { return b < a; }
  friend bool operator<=(Ratio a, Ratio b) { return a < b || a == b; }
  friend bool operator>=(Ratio a, Ratio b) { return b <= a; }

 private:
  std::int64_t numerator_ = 0;
  std::int64_t denominator_ = 1;  // 0: overflow
};

Ratio abs(Ratio value);
/// The multiple of `step` nearest to `value`, halves away from zero. `step` must be above zero.
Ratio round_to(Ratio value, Ratio step);

}  // namespace tamis::base

#endif
