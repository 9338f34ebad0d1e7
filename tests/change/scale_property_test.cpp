#include <cmath>
#include <iterator>

#include "core/fiche/fiche.h"
#include "tests/change/random_fiche.h"
#include "tests/change/scaling.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

constexpr const char* factors[] = {"2", "3", "5/2", "7", "35/6", "12"};

/// The figures that a scaling changes, in order.
std::vector<const measure::Amount*> amounts_of(const fiche::Fiche& fiche) {
  std::vector<const measure::Amount*> found;
  for (const fiche::Statement& one : fiche.statements) {
    if (one.value == fiche::Value::amount && one.amount && one.amount->has_figure()) found.push_back(&*one.amount);
  }
  return found;
}

/// Two roundings, each inside the food's tolerance at the widest (10 %), or half a piece.
bool close(const measure::Amount& a, const measure::Amount& b) {
  if (a.kind != b.kind) return false;
  const double x = a.middle_base().approximate(), y = b.middle_base().approximate();
  const double allowed = a.kind == measure::Kind::count ? 0.5 : 0.11 * x;
  return std::abs(x - y) <= allowed + 1e-9;
}

}  // namespace

TEST_CASE("a batch made larger and smaller again means the same within kitchen rounding") {
  for (const System system : {System::metric, System::us, System::imperial}) {
    for (unsigned seed = 0; seed < fiches_tried; ++seed) {
      const std::string own = RandomFiche(seed, system).fiche(true);
      const std::string factor = factors[seed % std::size(factors)];
      const base::Ratio times = *base::Ratio::parse(factor);
      const std::string larger = scaled(own, by_factor(factor)).xml;
      const std::string back = scaled(larger, by_factor((base::Ratio(1) / times).text())).xml;
      CAPTURE(seed, factor, own, larger, back);
      CHECK(larger.find("scaled-by=\"" + factor + "\"") != std::string::npos);
      CHECK(back.find("scaled-by") == std::string::npos);
      const auto before = document_of(own), after = document_of(back);
      const fiche::Kitchen kitchen;
      const fiche::Fiche a = fiche::read_fiche(*before, kitchen), b = fiche::read_fiche(*after, kitchen);
      const auto x = amounts_of(a), y = amounts_of(b);
      REQUIRE(x.size() == y.size());
      for (std::size_t i = 0; i < x.size(); ++i) {
        CAPTURE(i, x[i]->middle_base().text(), y[i]->middle_base().text());
        CHECK(close(*x[i], *y[i]));
      }
    }
  }
}

TEST_CASE("whatever the factor, a scaled fiche can be read, and its temperatures, times and lengths are the author's") {
  for (unsigned seed = 0; seed < fiches_tried; ++seed) {
    const std::string own = RandomFiche(seed + 500, System::metric).fiche(true);
    const std::string factor = std::to_string(1 + seed % 17) + "/" + std::to_string(1 + seed % 5);
    const auto before = document_of(own), after = document_of(scaled(own, by_factor(factor)).xml);
    const fiche::Kitchen kitchen;
    const fiche::Fiche a = fiche::read_fiche(*before, kitchen), b = fiche::read_fiche(*after, kitchen);
    CAPTURE(factor, own);
    std::string x, y;
    for (const auto& [fiche, text] : {std::pair(&a, &x), std::pair(&b, &y)}) {
      for (const fiche::Statement& one : fiche->statements) {
        if (fiche->document->el(one.node) == fiche::El::mould) continue;  // counted anew
        CHECK_FALSE(one.fault);
        if (one.value == fiche::Value::temperature || one.value == fiche::Value::duration || one.value == fiche::Value::length) {
          *text += one.text + "\n";
        }
      }
    }
    CHECK(x == y);
  }
}
