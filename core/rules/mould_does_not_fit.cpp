#include <numbers>
#include <string>

#include "core/rules/balance.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

std::optional<double> length_mm(const Check& check, Node mould, At at) {
  const fiche::Statement* said = check.fiche.statement(mould, at);
  if (said == nullptr || said->lengths.empty() || !said->lengths.front().has_figure()) return std::nullopt;
  return said->lengths.front().high_base().approximate();
}

/// Millilitres of one, to the brim or to the height it is filled to; empty for shapes without plain sides.
std::optional<double> millilitres(const Check& check, Node mould, At height) {
  const fiche::Statement* volume = check.fiche.statement(mould, At::volume);
  if (height == At::height && volume != nullptr && volume->amount && volume->amount->kind == measure::Kind::volume &&
      volume->amount->has_figure()) {
    return volume->amount->high_base().approximate();
  }
  const auto high = length_mm(check, mould, height);
  const std::string_view shape = check.document.get(mould, At::shape);
  const auto across = length_mm(check, mould, At::diameter);
  const auto length = length_mm(check, mould, At::length);
  const auto width = length_mm(check, mould, At::width);
  if (!high) return std::nullopt;
  if (across && (shape == "round" || shape == "ring")) return std::numbers::pi / 4 * *across * *across * *high / 1000;
  const bool square = shape == "square" && length && !width;
  const bool plain = shape == "frame" || shape == "tray" || shape == "rectangular" || shape == "square";
  if (length && (width || square) && plain) return *length * (square ? *length : *width) * *high / 1000;
  return std::nullopt;
}

/// All moulds of a yield: their volume, or empty when one is not known.
std::optional<double> all_of(const Check& check, Node yield, At height) {
  double sum = 0;
  int kinds = 0;
  for (Node c = check.document.first_child(yield); c != fiche::none; c = check.document.next(c)) {
    if (check.document.el(c) != El::mould) continue;
    const auto one = millilitres(check, c, height);
    const fiche::Statement* count = check.fiche.statement(c, At::count);
    if (!one || ++kinds > 1) return std::nullopt;  // two kinds: one after the other, or side by side; not known
    sum += *one * (count != nullptr && count->amount ? count->amount->high_base().approximate() : 1);
  }
  return kinds > 0 ? std::optional(sum) : std::nullopt;
}

void look_at(Check& check, Node yield, const std::optional<flow::Grams>& made) {
  if (yield == fiche::none || !made) return;
  const Node mould = check.document.child(yield, El::mould);
  if (mould == fiche::none || check.document.find(mould, At::holds) != fiche::none) return;
  const auto brim = all_of(check, yield, At::height);
  const auto fill = all_of(check, yield, At::fill);
  const double densest = 1.35;
  const double lightest = 0.2;
  const auto room = fill ? fill : brim;
  if (room && made->low > *room * densest) {
    check.say(check.document.head_span(mould),
              grams_text(*made) + " do not go into " + figure_text(*room, measure::Kind::volume) +
                  (fill ? ", as high as the moulds are said to be filled" : " of mould"),
              fill ? "correct fill=\"…\", take more moulds, or make less; say what stays over with <loss>"
                   : "take more or larger moulds, or make less; say what stays over with <loss>");
  } else if (fill && made->high < *fill * lightest) {
    check.say(check.document.head_span(mould),
              grams_text(*made) + " do not fill a mould to the " + figure_text(*fill, measure::Kind::volume) + " stated",
              "take fewer or smaller moulds, make more, or correct fill=\"…\"");
  }
}

void run(Check& check) {
  const Node root = check.document.root();
  if (root == fiche::none) return;
  for (const flow::Total& total : check.flow.components) look_at(check, check.document.child(total.node, El::yield), total.out);
  look_at(check, check.document.child(root, El::yield), check.flow.whole.out);
}

}  // namespace

/// The volume of a yield's moulds against its mass, at any density a kitchen makes.
const Rule mould_does_not_fit = {
    .id = "mould-does-not-fit",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "what is made does not fit its moulds",
    .explanation = R"(Two kilograms of cream in a frame of a litre and a half end on the tray. Where the inside of the moulds is known (a
volume, or straight sides: round, ring, square, frame, tray), what is made is held against it: at the density of a
boiled syrup, 1.35 g/ml, it must not come over the brim or the height stated; at that of a light foam, 0.2 g/ml, it
must reach that height. Between the two nothing is said.)",
    .bad = R"(    <yield><mould shape="frame" count="1" length="20 cm" width="15 cm" height="2 cm"/></yield>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .good = R"(    <yield><mould shape="frame" count="1" length="20 cm" width="15 cm" height="4 cm" fill="3.5 cm"/></yield>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
