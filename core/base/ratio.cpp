#include "core/base/ratio.h"

#include <limits>
#include <numeric>

namespace tamis::base {
namespace {

// __int128 is a compiler extension on both compilers we build with; pedantic builds want it said.
__extension__ using Wide = __int128;

constexpr Wide lowest = std::numeric_limits<std::int64_t>::min();
constexpr Wide highest = std::numeric_limits<std::int64_t>::max();

/// Division of 128 bits is slow; what fits 64 goes on in 64.
Wide greatest_common_divisor(Wide a, Wide b) {
  constexpr Wide narrow = std::numeric_limits<std::int64_t>::max();
  if (a < 0) a = -a;
  if (b < 0) b = -b;
  while (b != 0) {
    if (a <= narrow && b <= narrow) return std::gcd(static_cast<std::int64_t>(a), static_cast<std::int64_t>(b));
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

bool fits(Wide value) { return value > lowest && value <= highest; }

Ratio reduced(Wide numerator, Wide denominator) {
  if (denominator == 0) return Ratio::overflow();
  if (denominator < 0) {
    numerator = -numerator;
    denominator = -denominator;
  }
  const Wide common = greatest_common_divisor(numerator, denominator);
  if (common != 1) {
    numerator /= common;
    denominator /= common;
  }
  if (!fits(numerator) || !fits(denominator)) return Ratio::overflow();
  return Ratio::of_lowest_terms(static_cast<std::int64_t>(numerator), static_cast<std::int64_t>(denominator));
}

Ratio whole_or_overflow(Wide value) { return fits(value) ? Ratio(static_cast<std::int64_t>(value)) : Ratio::overflow(); }

/// Nearest whole number to a ratio whose denominator is above zero, halves away from zero. Nothing here is doubled, so that
/// any product of two int64 will do.
Wide nearest_whole(Wide numerator, Wide denominator) {
  const bool minus = numerator < 0;
  if (minus) numerator = -numerator;
  Wide whole = numerator / denominator;
  const Wide rest = numerator % denominator;
  if (rest >= denominator - rest) ++whole;
  return minus ? -whole : whole;
}

bool read_digits(std::string_view text, std::size_t& at, std::int64_t& value, std::int64_t& scale) {
  const std::size_t start = at;
  while (at < text.size() && text[at] >= '0' && text[at] <= '9') {
    if (value > (std::numeric_limits<std::int64_t>::max() - 9) / 10) return false;
    if (scale > std::numeric_limits<std::int64_t>::max() / 10) return false;
    value = value * 10 + (text[at] - '0');
    scale *= 10;
    ++at;
  }
  return at > start;
}

}  // namespace

Ratio::Ratio(std::int64_t numerator, std::int64_t denominator) {
  constexpr auto low = std::numeric_limits<std::int64_t>::min();
  if (denominator == 0 || numerator == low || denominator == low) {
    denominator_ = 0;
    return;
  }
  const std::int64_t common = std::gcd(numerator, denominator);
  const std::int64_t sign = denominator < 0 ? -1 : 1;
  numerator_ = numerator / common * sign;
  denominator_ = denominator / common * sign;
}

Ratio Ratio::overflow() { return of_lowest_terms(0, 0); }

Ratio Ratio::of_lowest_terms(std::int64_t numerator, std::int64_t denominator) {
  Ratio made;
  made.numerator_ = numerator;
  made.denominator_ = denominator;
  return made;
}

std::optional<Ratio> Ratio::parse(std::string_view text) {
  std::size_t at = 0;
  const bool minus = !text.empty() && text[0] == '-';
  if (minus) ++at;
  std::int64_t top = 0;
  std::int64_t ignored = 1;
  if (!read_digits(text, at, top, ignored)) return std::nullopt;
  std::int64_t bottom = 1;
  if (at < text.size() && text[at] == '.') {
    ++at;
    if (!read_digits(text, at, top, bottom)) return std::nullopt;
  } else if (at < text.size() && text[at] == '/') {
    ++at;
    bottom = 0;
    ignored = 1;
    if (!read_digits(text, at, bottom, ignored) || bottom == 0) return std::nullopt;
  }
  if (at != text.size()) return std::nullopt;
  return Ratio(minus ? -top : top, bottom);
}

double Ratio::approximate() const {
  if (!ok()) return std::numeric_limits<double>::quiet_NaN();
  return static_cast<double>(numerator_) / static_cast<double>(denominator_);
}

std::string Ratio::text() const {
  if (!ok()) return "overflow";
  std::string out = std::to_string(numerator_);
  if (denominator_ != 1) out += "/" + std::to_string(denominator_);
  return out;
}

std::string Ratio::decimal(int places) const {
  if (!ok()) return "overflow";
  Wide scale = 1;
  for (int place = 0; place < places; ++place) scale *= 10;
  const Wide top = numerator_ < 0 ? -static_cast<Wide>(numerator_) : static_cast<Wide>(numerator_);
  Wide whole = top / denominator_;
  Wide part = nearest_whole(top % denominator_ * scale, denominator_);
  if (part == scale) {
    ++whole;
    part = 0;
  }
  std::string out = numerator_ < 0 && (whole != 0 || part != 0) ? "-" : "";
  out += std::to_string(static_cast<std::uint64_t>(whole));
  if (places <= 0) return out;
  const std::string figures = std::to_string(static_cast<std::int64_t>(part));
  return out + "." + std::string(static_cast<std::size_t>(places) - figures.size(), '0') + figures;
}

std::int64_t Ratio::floor() const {
  if (!ok()) return 0;
  const std::int64_t quotient = numerator_ / denominator_;
  return numerator_ % denominator_ < 0 ? quotient - 1 : quotient;
}

std::int64_t Ratio::nearest() const {
  if (!ok()) return 0;
  return static_cast<std::int64_t>(nearest_whole(numerator_, denominator_));
}

Ratio operator+(Ratio a, Ratio b) {
  if (!a.ok() || !b.ok()) return Ratio::overflow();
  if (b.numerator_ == 0) return a;
  if (a.whole() && b.whole()) return whole_or_overflow(static_cast<Wide>(a.numerator_) + b.numerator_);
  // Each product is below 2^126, so their sum fits 127 bits.
  return reduced(static_cast<Wide>(a.numerator_) * b.denominator_ + static_cast<Wide>(b.numerator_) * a.denominator_,
                 static_cast<Wide>(a.denominator_) * b.denominator_);
}

Ratio operator-(Ratio a, Ratio b) { return a + -b; }

Ratio operator*(Ratio a, Ratio b) {
  if (!a.ok() || !b.ok()) return Ratio::overflow();
  if (a.whole() && b.whole()) return whole_or_overflow(static_cast<Wide>(a.numerator_) * b.numerator_);
  return reduced(static_cast<Wide>(a.numerator_) * b.numerator_, static_cast<Wide>(a.denominator_) * b.denominator_);
}

Ratio operator/(Ratio a, Ratio b) {
  if (!a.ok() || !b.ok()) return Ratio::overflow();
  return reduced(static_cast<Wide>(a.numerator_) * b.denominator_, static_cast<Wide>(a.denominator_) * b.numerator_);
}

Ratio Ratio::operator-() const {
  Ratio made = *this;
  made.numerator_ = -made.numerator_;
  return made;
}

bool operator==(Ratio a, Ratio b) {
  return a.ok() && b.ok() && a.numerator_ == b.numerator_ && a.denominator_ == b.denominator_;
}

bool operator<(Ratio a, Ratio b) {
  if (!a.ok() || !b.ok()) return false;
  return static_cast<Wide>(a.numerator_) * b.denominator_ < static_cast<Wide>(b.numerator_) * a.denominator_;
}

Ratio abs(Ratio value) { return value < 0 ? -value : value; }

Ratio round_to(Ratio value, Ratio step) {
  if (!value.ok() || !step.ok() || step <= 0) return Ratio::overflow();
  const Wide steps = nearest_whole(static_cast<Wide>(value.numerator()) * step.denominator(),
                                   static_cast<Wide>(value.denominator()) * step.numerator());
  return fits(steps) ? Ratio(static_cast<std::int64_t>(steps)) * step : Ratio::overflow();
}

}  // namespace tamis::base
