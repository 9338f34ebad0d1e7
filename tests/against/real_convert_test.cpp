#include <algorithm>
#include <cmath>
#include <regex>

#include <catch2/catch.hpp>

#include "core/change/convert.h"
#include "core/format/format.h"
#include "tests/against/real_recipe.h"

// Converting the fourteen printed recipes: it agrees with the pairs of US and metric values that their sources print
// (general card A-27 of the Armed Forces Recipe Service; the NIST cooking equivalency table), within what a kitchen's
// scale, spoons and dials round to, and it comes back to the printed figures.

namespace tamis::tests {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using measure::Kind;

/// What a kitchen's tools can round away (common practice): a scale that reads 1 g, the marks of a measuring jug, a
/// probe that reads 1 °C, an oven dial in steps of 5 °C.
constexpr double scale_step_g = 1;
constexpr double volume_share = 0.03;
constexpr double probe_step_c = 1;
constexpr double oven_step_c = 5;

double rounding_of(const measure::Amount& amount, bool oven) {
  const double value = amount.low_base().approximate();
  if (amount.kind == Kind::temperature) return oven ? oven_step_c : probe_step_c;
  if (amount.kind == Kind::volume) return std::max(0.1, volume_share * value);
  return std::max(scale_step_g, 0.01 * value);
}

bool agree(const measure::Amount& a, const measure::Amount& b, bool oven) {
  const double most = rounding_of(b, oven);
  return a.kind == b.kind && std::abs((a.low_base() - b.low_base()).approximate()) <= most &&
         std::abs((a.high_base() - b.high_base()).approximate()) <= most;
}

struct Small {
  std::shared_ptr<fiche::Document> document;
  Node node = fiche::none;  ///< the element that has the figure
};

/// A fiche of one figure.
Small small_fiche(const std::string& figure, El el, const std::string& units) {
  const std::string inside =
      el == El::ingredient ? "<ingredient id=\"x\" name=\"anything\">" + figure + "</ingredient>"
      : el == El::oven_temp ? "<step do=\"bake\">Bake at <oven-temp>" + figure + "</oven-temp>.</step>"
                            : "<step do=\"heat\">Heat to <food-temp>" + figure + "</food-temp>.</step>";
  format::Read read = format::read(std::make_shared<base::Source>(
      "small.fiche.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"small\" lang=\"en-US\" units=\"" + units +
                             "\"><title>Small</title><component id=\"c\" title=\"C\">" + inside +
                             "</component></fiche>"));
  REQUIRE(read.document != nullptr);
  Small out{read.document, fiche::none};
  const fiche::Kitchen kitchen;
  for (const fiche::Statement& s : fiche::read_fiche(*out.document, kitchen).statements) out.node = s.node;
  REQUIRE(out.document->el(out.node) == el);
  return out;
}

change::ConvertWish to(measure::System units) {
  change::ConvertWish wish;
  wish.units = units;
  return wish;
}

/// "moderate oven 350-375 F" → "350-375 F", "1 ounce (by weight)" → "1 ounce".
std::string bare(const std::string& printed) {
  const std::string inside = std::regex_replace(printed, std::regex(" *\\([^)]*\\)"), "");
  return inside.substr(inside.find_first_of("0123456789"));
}

measure::Amount converted_figure(const Small& small, const fiche::Kitchen& kitchen, measure::System units) {
  const change::Converted converted = change::convert(*small.document, kitchen, to(units));
  const fiche::Fiche read = fiche::read_fiche(converted.document, kitchen);
  const fiche::Statement* statement = read.statement(small.node);
  REQUIRE(statement != nullptr);
  REQUIRE(statement->amount);
  return *statement->amount;
}

}  // namespace

TEST_CASE("converting agrees with the pairs that the sources print", "[real]") {
  const fiche::Kitchen kitchen;
  std::size_t pairs = 0;
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    for (const auto& [us, metric] : printed->pairs) {
      CAPTURE(id, us, metric);
      const measure::Reading reading{"en-US", measure::System::us, 0};
      const auto wanted = measure::read_amount(
          bare(metric), measure::amount_kinds | measure::temperature_kinds, reading);
      REQUIRE(bool(wanted));
      const bool hot = wanted->kind == Kind::temperature;
      const bool oven = hot && wanted->low_base() > base::Ratio(100);
      const El el = !hot ? El::ingredient : oven ? El::oven_temp : El::food_temp;
      const measure::Amount to_metric =
          converted_figure(small_fiche(bare(us), el, "us"), kitchen, measure::System::metric);
      CHECK(agree(to_metric, *wanted, oven));
      const auto home = measure::read_amount(bare(us), measure::amount_kinds | measure::temperature_kinds, reading);
      REQUIRE(bool(home));
      const measure::Amount to_us =
          converted_figure(small_fiche(bare(metric), el, "metric"), kitchen, measure::System::us);
      CHECK(agree(to_us, *home, oven));
      ++pairs;
    }
  }
  CHECK(pairs == 30);
}

TEST_CASE("each figure of a real recipe converts within kitchen rounding, or a finding says so", "[real]") {
  std::size_t compared = 0;
  for (const std::string& id : real_recipes()) {
    const auto real = real_fiche(id);
    const auto away = real->fiche.reading.system == measure::System::metric ? measure::System::us
                                                                             : measure::System::metric;
    const change::Converted converted = change::convert(*real->document, real->kitchen, to(away));
    const fiche::Fiche after = fiche::read_fiche(converted.document, real->kitchen);
    for (const fiche::Statement& kept : after.statements) {
      if (kept.at != At::was) continue;
      const fiche::Statement* now = after.statement(kept.node);
      CAPTURE(id, kept.text, now == nullptr ? std::string() : now->text);
      REQUIRE(now != nullptr);
      REQUIRE((now->amount || !now->lengths.empty()));
      if (!now->amount || !kept.amount || !kept.amount->has_figure()) continue;
      const bool oven = converted.document.el(kept.node) == El::oven_temp;
      const base::Span home = real->document->span(kept.node);
      const bool excused = std::any_of(converted.findings.begin(), converted.findings.end(), [&](const auto& f) {
        return home.begin <= f.where.begin && f.where.begin < home.end;
      });
      CHECK((excused || agree(*now->amount, *kept.amount, oven)));
      ++compared;
    }
  }
  CHECK(compared > 250);
}

TEST_CASE("a real recipe converted there and back has its printed figures again", "[real]") {
  for (const std::string& id : real_recipes()) {
    const auto real = real_fiche(id);
    const auto home = real->fiche.reading.system;
    for (const auto away : {measure::System::metric, measure::System::us, measure::System::imperial}) {
      if (away == home) continue;
      CAPTURE(id, measure::system_name(away));
      const change::Converted there = change::convert(*real->document, real->kitchen, to(away));
      const bool changed = format::write(there.document) != real->document->source().bytes();
      CHECK((changed || away == measure::System::imperial));  // pounds, ounces and °F are those of both
      const change::Converted back = change::convert(there.document, real->kitchen, to(home));
      CHECK(fiche::same_meaning(back.document, *real->document));
    }
  }
}

}  // namespace tamis::tests
