#include "core/physics/conduction.h"

#include <algorithm>
#include <cmath>

namespace tamis::physics {
namespace {

constexpr int most_terms = 400;
constexpr double half_space_until = 1e-4;

/// exp(x²) erfc(x), without overflow.
double scaled_erfc(double x) {
  if (x < 20) return std::exp(x * x) * std::erfc(x);
  return 0.5641895835477563 / x * (1 - 1 / (2 * x * x));
}

/// The series of one part, its roots found once, as they are needed.
class Series {
 public:
  Series(Shape shape, double biot) : shape_(shape), biot_(biot) {}

  double left(double fo, Place place) {
    if (fo <= 0) return 1;
    if (fo < half_space_until) {
      if (place == Place::centre) return 1;
      if (place == Place::surface) return scaled_erfc(biot_ * std::sqrt(fo));
    }
    double sum = 0;
    for (int i = 0; i < most_terms; ++i) {
      if (static_cast<std::size_t>(i) == terms_.size()) terms_.push_back(term(shape_, biot_, i));
      const Term& here = terms_[static_cast<std::size_t>(i)];
      const double fading = std::exp(-here.root * here.root * fo);
      sum += here.factor(place) * fading;
      if (fading < 1e-9) break;
    }
    return std::clamp(sum, 0.0, 1.0);
  }

 private:
  Shape shape_;
  double biot_;
  std::vector<Term> terms_;
};

/// Where on a part to look, so that the product is at that place: only the first part's face is at the surface.
Place on_part(Place place, std::size_t part) { return place == Place::surface && part > 0 ? Place::centre : place; }

/// All parts, for many times.
class Product {
 public:
  Product(const Body& body, const Material& material, double coefficient) {
    for (const Body::Part& part : body.parts) {
      parts_.emplace_back(part.shape, coefficient * part.length / material.conductivity);
      per_second_.push_back(material.diffusivity() / (part.length * part.length));
    }
  }

  double left(double seconds, Place place) {
    double out = 1;
    for (std::size_t i = 0; i < parts_.size(); ++i) out *= parts_[i].left(per_second_[i] * seconds, on_part(place, i));
    return out;
  }

 private:
  std::vector<Series> parts_;
  std::vector<double> per_second_;  // Fourier number a second
};

/// The first terms of all parts as one: factor × exp(−rate × seconds); and what the second ones are beside them.
struct First {
  double factor = 1;
  double rate = 0;
  double good_from = 0;  // seconds from which each part's Fourier number is at least 0.05, and others() holds
  struct Second {
    double share = 0;  // of the first, at the start
    double rate = 0;   // by which it fades faster
  };
  std::vector<Second> seconds;

  /// At most that share of the first term is in all the others, from good_from on.
  [[nodiscard]] double others(double at) const {
    constexpr double and_the_rest = 1.3;
    double out = 1;
    for (const Second& second : seconds) out *= 1 + and_the_rest * second.share * std::exp(-second.rate * at);
    return out - 1;
  }
};
First first_of(const Body& body, const Material& material, double coefficient, Place place) {
  First out;
  for (std::size_t i = 0; i < body.parts.size(); ++i) {
    const Body::Part& part = body.parts[i];
    const double biot = coefficient * part.length / material.conductivity;
    const Term one = term(part.shape, biot, 0);
    const Term two = term(part.shape, biot, 1);
    const Place here = on_part(place, i);
    const double per_second = material.diffusivity() / (part.length * part.length);
    out.factor *= one.factor(here);
    out.rate += one.root * one.root * per_second;
    out.good_from = std::max(out.good_from, 0.05 / per_second);
    out.seconds.push_back({std::abs(two.factor(here) / one.factor(here)), (two.root * two.root - one.root * one.root) * per_second});
  }
  return out;
}

}  // namespace

double left(Shape shape, double biot, double fo, Place place) { return Series(shape, biot).left(fo, place); }

double left(const Body& body, const Material& material, double coefficient, double seconds, Place place) {
  return Product(body, material, coefficient).left(seconds, place);
}

std::optional<double> time_to(const Body& body, const Material& material, double coefficient, double share, Place place) {
  if (share >= 1) return 0;
  if (!(share > 0)) return std::nullopt;
  Product product(body, material, coefficient);
  const First first = first_of(body, material, coefficient, place);
  // The first term is at most 2.1 times too large or too small at any time, so the time is near the one that it gives.
  double high = std::max((std::log(std::max(1.0, first.factor)) - std::log(share)) / first.rate, 1e-9);
  while (product.left(high, place) > share) high *= 1.5;
  double low = high / 2;
  while (low > 1e-9 && product.left(low, place) < share) low /= 2;
  // False position on the logarithm, halved where it creeps (Illinois).
  double at_low = std::log(product.left(low, place) / share);
  double at_high = std::log(product.left(high, place) / share);
  int side = 0;
  for (int i = 0; i < 60 && high - low > 1e-6 * high; ++i) {
    double middle = low + (high - low) * at_low / (at_low - at_high);
    if (!(middle > low && middle < high)) middle = (low + high) / 2;
    const double there = product.left(middle, place);
    const double at_middle = there > 0 ? std::log(there / share) : -50;
    if (at_middle > 0) {
      low = middle;
      at_low = at_middle;
      if (side == 1) at_high /= 2;
      side = 1;
    } else {
      high = middle;
      at_high = at_middle;
      if (side == -1) at_low /= 2;
      side = -1;
    }
    if (std::abs(at_middle) < 1e-9) return middle;
  }
  return (low + high) / 2;
}

std::optional<Bounds> screen_time_to(const Body& body, const Material& material, double coefficient, double share, Place place) {
  if (share >= 1) return Bounds{0, 0};
  if (!(share > 0)) return std::nullopt;
  const First first = first_of(body, material, coefficient, place);
  const double alone = std::log(first.factor / share) / first.rate;
  const double from = std::max(alone, first.good_from);
  // What is left lies within first (1 ± others), and others fade: so no more than the share is left at `high` ...
  const double high = std::max(from, alone + std::log(1 + first.others(from)) / first.rate);
  // ... and no less at `low`.
  double low = alone;
  for (int i = 0; i < 8 && low >= first.good_from; ++i) {
    const double others = first.others(low);
    if (others >= 1) break;
    const double at_least = alone + std::log(1 - others) / first.rate;
    if (low <= at_least) return Bounds{low, high};
    low = at_least - 0.001 * alone;
  }
  return Bounds{0, high};
}

}  // namespace tamis::physics
