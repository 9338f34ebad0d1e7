#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <set>

#include <catch2/catch.hpp>

#include "core/base/utf8.h"
#include "core/change/figure.h"
#include "core/change/kept.h"
#include "core/change/scale.h"
#include "core/change/subject.h"
#include "core/format/format.h"
#include "tests/against/real_recipe.h"

// The government cards print their amounts for two batches. Scaling one column gives the other, there and back, within
// what a kitchen rounds and what the card itself rounded; where it does not, tests/against/real/scaling.csv tells why.

namespace tamis::tests {
namespace {

using change::ScaleWish;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using measure::Amount;
using measure::Kind;

constexpr At places[] = {At::also, At::pieces, At::purchase, At::packs, At::pack, At::loose, At::to};

struct Card {
  const char* id;
  const char* first;   ///< the yield whose amounts are the text
  const char* second;  ///< the yield whose amounts are a column
  const char* times;   ///< second over first, as the card's portions or sizes say
};
/// All fiches of tests/against/real that print two batches that are multiples of each other; why others are not
/// compared stands in scaling.csv.
constexpr Card cards[] = {
    {"usda-chicken-vegetable-soup-h040b", "servings-25", "servings-50", "2"},
    {"usda-minestrone-h070", "servings-50", "servings-100", "2"},
    {"usda-peach-cobbler-b18", "servings-25", "servings-50", "2"},
    {"usda-potato-salad-e09", "servings-50", "servings-100", "2"},
    {"usda-white-sauce-c07", "quart-1", "quart-2", "2"},
    {"usda-whole-grain-dinner-rolls", "servings-50", "servings-100", "2"},
};

/// A column's words for one line.
struct Words {
  std::string text;
  std::map<At, std::string> others;
};

Words words_of(const Document& document, Node node) {
  Words words;
  const std::string text = document.direct_text(node);
  words.text = base::trimmed(text);
  for (const At at : places) {
    if (document.find(node, at) != fiche::none) words.others[at] = document.get(node, at);
  }
  return words;
}

Node column_of(const Document& document, Node ingredient) {
  const Node column = document.child(ingredient, El::amount);
  return column != fiche::none && document.find(column, At::batch) != fiche::none ? column : fiche::none;
}

void put_words(Document& document, Node node, const Words& words) {
  if (words.text.empty() || document.direct_text(node).find_first_not_of(" \n") != std::string::npos) {
    change::put_text(document, node, words.text);
  } else {
    document.add_text(node, words.text, document.first_child(node));
  }
  for (const At at : places) {
    document.remove_attribute(node, at);
    if (words.others.contains(at)) document.set_attribute(node, at, words.others.at(at));
  }
}

/// The fiche with one column only.
Document with_one_column(const RealFiche& real, bool second) {
  Document document = real.document->clone();
  for (const fiche::Ingredient& one : real.fiche.ingredients) {
    const Node column = column_of(document, one.node);
    if (column == fiche::none) continue;
    const Words words = words_of(document, column);
    document.remove(column);
    if (second) put_words(document, one.node, words);
  }
  return document;
}


/// Half the last step of a printed figure: cards round to 1/4 oz, 1/4 tsp, a tablespoon in cups, 1/4 cup in quarts.
double card_step(const Amount& amount) {
  if (amount.low.empty()) return 0;
  const measure::Unit& unit = *amount.low.back().unit;
  const auto half = [](double of, std::string_view unit_id) {
    return of / 2 * measure::unit_by_id(unit_id)->to_base.approximate();
  };
  if (unit.kind == Kind::mass) return half(0.25, "oz");
  if (unit.id == "tsp-us" || unit.id == "tbsp-us") return half(0.25, "tsp-us");
  if (unit.id == "cup-us") return half(1, "tbsp-us");
  return unit.kind == Kind::volume ? half(0.25, "cup-us") : 0;
}

bool agrees(const Amount& made, const Amount& printed, double share) {
  if (made.kind != printed.kind || !made.has_figure() || !printed.has_figure()) return false;
  const double a = made.middle_base().approximate(), b = printed.middle_base().approximate();
  return std::abs(a - b) <= share * b + card_step(printed) + 1e-9;
}

std::vector<Amount> amounts_of(const fiche::Fiche& fiche, Node node) {
  std::vector<Amount> found;
  for (const At at : {At::unknown, At::also}) {
    const fiche::Statement* said = fiche.statement(node, at);
    if (said != nullptr && said->amount && said->amount->has_figure()) found.push_back(*said->amount);
  }
  return found;
}

/// The same amount in the other kind, by the food's density.
std::vector<Amount> with_density(const fiche::Fiche& fiche, Node ingredient, std::vector<Amount> amounts) {
  const auto density = change::density_of(fiche, change::subject_of(fiche, ingredient, At::unknown));
  const std::size_t size = amounts.size();
  for (std::size_t i = 0; density && i < size; ++i) {
    if (amounts[i].kind == Kind::volume) {
      amounts.push_back(measure::amount_of(amounts[i].middle_base() * density->grams_per_ml, *measure::unit_by_id("g")));
    }
  }
  return amounts;
}

struct Difference {
  std::string file, direction, ingredient, made, printed;
};

void compare(const Card& card, bool back, std::vector<Difference>& differences, int& compared) {
  const auto real = real_fiche(card.id);
  const Document base = with_one_column(*real, back);
  const std::string factor = back ? "1/" + std::string(card.times) : card.times;
  const change::Scaled scaled = change::scale(base, real->kitchen, fiche::empty_library(), {ScaleWish::By::factor, factor, ""});
  const fiche::Fiche made = fiche::read_fiche(scaled.document, real->kitchen);
  for (const fiche::Ingredient& one : real->fiche.ingredients) {
    const Node column = column_of(*real->document, one.node);
    if (column == fiche::none) continue;
    const auto printed = amounts_of(real->fiche, back ? one.node : column);
    const auto own = with_density(made, one.node, amounts_of(made, one.node));
    if (printed.empty()) continue;
    ++compared;
    const double share =
        change::subject_of(made, one.node, At::unknown).tolerance.share.approximate();
    // Every printed figure of a kind that the scaled line states must be it; at least one is of such a kind.
    int met = 0;
    bool same = true;
    for (const Amount& b : printed) {
      const auto of_kind = std::find_if(own.begin(), own.end(), [&](const Amount& a) { return a.kind == b.kind; });
      if (of_kind == own.end()) continue;
      ++met;
      same = same && agrees(*of_kind, b, share);
    }
    same = same && met > 0;
    if (!same) {
      differences.push_back({card.id, back ? "down" : "up", std::string(one.id), words_of(scaled.document, one.node).text,
                             words_of(*real->document, back ? one.node : column).text});
    }
  }
}

}  // namespace

TEST_CASE("scaling one printed batch of a card gives the other printed column") {
  std::set<std::vector<std::string>> expected;
  for (const auto& row : real_table("scaling.csv")) {
    CHECK(row.at(3).size() > 10);
    if (row.at(1) == "not compared") {
      CHECK(std::none_of(std::begin(cards), std::end(cards), [&](const Card& card) { return card.id == row.at(0); }));
      continue;
    }
    expected.insert({row.at(0), row.at(1), row.at(2)});
  }
  std::vector<Difference> differences;
  int compared = 0;
  for (const Card& card : cards) {
    for (const bool back : {false, true}) compare(card, back, differences, compared);
  }
  CHECK(compared > 120);
  for (const Difference& one : differences) {
    CAPTURE(one.file, one.direction, one.ingredient, one.made, one.printed);
    CHECK(expected.erase({one.file, one.direction, one.ingredient}) == 1);
  }
  for (const auto& row : expected) {
    CAPTURE(row[0], row[1], row[2]);
    FAIL_CHECK("the exception is none any more");
  }
}

TEST_CASE("a printed batch that is asked for is the printed column word for word, and the way back is the card") {
  for (const Card& card : cards) {
    const auto real = real_fiche(card.id);
    CAPTURE(card.id);
    const change::Scaled made =
        change::scale(*real->document, real->kitchen, fiche::empty_library(), {ScaleWish::By::factor, card.times, ""});
    CHECK(made.factor == *base::Ratio::parse(card.times));
    for (const fiche::Ingredient& one : real->fiche.ingredients) {
      const Node column = column_of(*real->document, one.node);
      if (column == fiche::none) continue;
      CAPTURE(one.id);
      const Words now = words_of(made.document, one.node), printed = words_of(*real->document, column);
      CHECK(now.text == printed.text);
      CHECK(now.others == printed.others);
    }
    const auto written = format::read_xml(std::make_shared<base::Source>("x.fiche.xml", format::write(made.document)));
    REQUIRE(written.document != nullptr);
    const change::Scaled back = change::scale(*written.document, real->kitchen, fiche::empty_library(),
                                              {ScaleWish::By::factor, "1/" + std::string(card.times), ""});
    CHECK(fiche::same_meaning(back.document, *real->document));
  }
}

}  // namespace tamis::tests
