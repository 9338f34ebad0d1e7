#include <algorithm>
#include <cctype>
#include <regex>
#include <set>

#include <catch2/catch.hpp>

#include "core/base/utf8.h"
#include "core/measure/read.h"
#include "tests/against/place.h"
#include "tests/against/real_recipe.h"

// Every figure that the fourteen printed recipes state is said in their fiches: compared as measures, never as text.
// The printed side: real-recipes/*.json of the reference data (see its real_recipes_fields.md).

namespace tamis::tests {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

bool same(const measure::Amount& a, const measure::Amount& b) {
  if (a.form != b.form || a.kind != b.kind || a.words != b.words) return false;
  return !a.has_figure() || (a.low_base() == b.low_base() && a.high_base() == b.high_base());
}

/// Whether the statement (null: nothing stated) is that printed measure. "approx." is let be here.
bool states(const fiche::Fiche& fiche, const fiche::Statement* statement, const std::string& printed) {
  if (statement == nullptr || !statement->amount) return false;
  const auto read = measure::read_amount(printed, measure::amount_kinds, fiche.reading);
  return bool(read) && same(*statement->amount, *read);
}

/// One line of the printed list, and where the fiche says it: `holder` is the ingredient, or its amount for a batch.
struct Line {
  const fiche::Fiche& fiche;
  Node ingredient;
  Node holder;

  [[nodiscard]] bool says(At at, const std::string& printed) const {
    return states(fiche, fiche.statement(holder, at), printed);
  }
  [[nodiscard]] bool says_amount(const std::string& printed) const {
    return says(At::unknown, printed) || says(At::also, printed);
  }
  [[nodiscard]] std::string_view get(At at) const { return fiche.document->get(ingredient, at); }
  [[nodiscard]] bool says_packs(const std::string& number) const {
    return says(At::packs, number) && fiche.document->get(holder, At::pack) == "No. 10 can";
  }
};

/// A printed form that is more than a measure: what it looks like, and how the fiche says it.
struct Form {
  const char* pattern;
  bool (*said)(const Line&, const std::smatch&);
};

bool has_gap(const Line& line, const std::smatch&) {
  return line.fiche.document->child(line.ingredient, El::gap) != fiche::none;
}
bool is_as_heavy(const Line& line, const std::smatch&) {
  return !line.get(At::as_much_as).empty() && line.get(At::by) == "mass";
}
bool is_as_much(const Line& line, const std::smatch&) {
  return !line.get(At::as_much_as).empty() && line.get(At::by) == "volume";
}
bool tops_up(const Line& line, const std::smatch& match) {
  return line.says(At::to, match[1]) && !line.get(At::tops_up).empty();
}
bool is_before_whipping(const Line& line, const std::smatch& match) {
  return line.says_amount(match[1]) && line.get(At::weighed) == "before";
}
bool is_for_each(const Line& line, const std::smatch& match) {
  return line.says_amount(match[1]) && line.says(At::each, match[2]) && !line.get(At::for_each).empty();
}
bool is_packs_too(const Line& line, const std::smatch& match) {
  return line.says_amount(match[1]) && line.says_packs(match[2]);
}
bool is_packs_and_loose(const Line& line, const std::smatch& match) {
  return line.says_packs(match[1]) && line.says(At::loose, match[2]);
}
bool is_pieces(const Line& line, const std::smatch& match) { return line.says(At::pieces, match[1]); }
bool is_count(const Line& line, const std::smatch& match) { return line.says_amount(match[1]); }

const Form forms[] = {
    {"not given", has_gap},
    {"equal weight to .*", is_as_heavy},
    {"as much as .*", is_as_much},
    {"to make (.*) with .*", tops_up},
    {"whip from (.*)", is_before_whipping},
    {"(.*) to every ([0-9]+) .*", is_for_each},
    {"(.*) \\((?:approx\\. )?([0-9/]+) No\\. 10 cans?\\)", is_packs_too},
    {"([0-9]+) No\\. 10 cans? \\+ (.*)", is_packs_and_loose},
    {"([0-9]+) lf", is_pieces},
    {"([0-9]+) (?:\\(basis\\)|each)", is_count},
};

bool said(const Line& line, const std::string& printed) {
  std::smatch match;
  for (const Form& form : forms) {
    if (std::regex_match(printed, match, std::regex(form.pattern))) return form.said(line, match);
  }
  return line.says_amount(printed);
}

Node amount_for(const fiche::Document& document, Node ingredient, std::string_view batch) {
  for (Node c = document.first_child(ingredient); c != fiche::none; c = document.next(c)) {
    if (document.el(c) == El::amount && document.get(c, At::batch) == batch) return c;
  }
  return fiche::none;
}

std::size_t batch_number(const PrintedRecipe& printed, const std::string& batch) {
  for (std::size_t i = 0; i < printed.batches.size(); ++i) {
    if (printed.batches[i] == batch) return i;
  }
  return 0;  // the only batch, or the card's own words for the first
}

/// Figures with a unit that stand anywhere in a text.
struct PrintedFigure {
  measure::Amount amount;
  std::string text;
};
std::vector<PrintedFigure> figures_in(std::string_view text, const measure::Reading& reading) {
  constexpr measure::Kinds wanted = measure::temperature_kinds | measure::time_kinds | measure::length_kinds |
                                    measure::set_of(measure::Kind::mass) | measure::set_of(measure::Kind::volume);
  std::vector<PrintedFigure> out;
  bool word_start = true;
  for (std::size_t at = 0; at < text.size();) {
    const measure::Found found = word_start ? measure::find_amount(text.substr(at), wanted, reading) : measure::Found{};
    const std::size_t step = found.used == 0 ? 1 : found.used;
    if (found.used > 0 && found.amount.has_figure()) {
      out.push_back({found.amount, std::string(base::trimmed(text.substr(at, step)))});
    }
    word_start = std::isalnum(static_cast<unsigned char>(text[at + step - 1])) == 0;
    at += step;
  }
  return out;
}

bool is_figure(const fiche::Statement& s, const measure::Amount& amount) {
  if (s.share && s.share->form == measure::Share::Form::amount) return same(s.share->amount, amount);
  if (s.amount) return same(*s.amount, amount);
  return std::any_of(s.lengths.begin(), s.lengths.end(), [&](const measure::Amount& l) { return same(l, amount); });
}

/// Said somewhere in the fiche, or in an element of that kind.
bool stated(const fiche::Fiche& fiche, const measure::Amount& amount, El inside = El::unknown) {
  return std::any_of(fiche.statements.begin(), fiche.statements.end(), [&](const fiche::Statement& s) {
    if (!is_figure(s, amount)) return false;
    Node n = s.node;
    while (inside != El::unknown && fiche.document->el(n) != inside && n != fiche.document->root()) {
      n = fiche.document->parent(n);
    }
    return inside == El::unknown || fiche.document->el(n) == inside;
  });
}

bool has_mould(const fiche::Fiche& fiche, Node yield, const std::vector<measure::Amount>& size) {
  constexpr At sides[] = {At::length, At::width, At::height};
  for (Node mould = fiche.document->first_child(yield); mould != fiche::none; mould = fiche.document->next(mould)) {
    bool fits = fiche.document->el(mould) == El::mould;
    for (std::size_t i = 0; fits && i < size.size(); ++i) {
      const fiche::Statement* side = fiche.statement(mould, sides[i]);
      fits = side != nullptr && side->lengths.size() == 1 && same(side->lengths[0], size[i]);
    }
    if (fits) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("every printed weight, measure and issue is said in the fiche", "[real]") {
  std::size_t lines = 0;
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    CAPTURE(id);
    REQUIRE(real->fiche.ingredients.size() == printed->ingredients.size());
    for (std::size_t i = 0; i < printed->ingredients.size(); ++i) {
      const Node ingredient = real->fiche.ingredients[i].node;
      for (const PrintedAmount& amount : printed->ingredients[i].amounts) {
        const std::size_t batch = batch_number(*printed, amount.batch);
        const std::string_view batch_id = real->document->get(real->fiche.yields.at(batch), At::id);
        const Node holder = batch == 0 ? ingredient : amount_for(*real->document, ingredient, batch_id);
        CAPTURE(printed->ingredients[i].name, amount.batch, amount.weight, amount.measure, amount.issue);
        REQUIRE(holder != fiche::none);
        const Line line{real->fiche, ingredient, holder};
        CHECK((amount.weight.empty() || said(line, amount.weight)));
        CHECK((amount.measure.empty() || said(line, amount.measure)));
        CHECK((amount.issue.empty() || line.says(At::purchase, amount.issue)));
        ++lines;
      }
    }
  }
  CHECK(lines == 239);  // cells that the fourteen files print, batch by batch
}

TEST_CASE("what a printed recipe gives no amount has none in the fiche", "[real]") {
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    for (std::size_t i = 0; i < printed->ingredients.size(); ++i) {
      const auto& amounts = printed->ingredients[i].amounts;
      const bool none = std::all_of(amounts.begin(), amounts.end(), [](const PrintedAmount& a) {
        return a.weight.empty() && a.measure.empty();
      });
      CAPTURE(id, printed->ingredients[i].name);
      if (none) CHECK(real->document->child(real->fiche.ingredients.at(i).node, El::gap) != fiche::none);
    }
  }
}

TEST_CASE("every figure printed in yield, steps and notes is said in the fiche", "[real]") {
  std::set<std::vector<std::string>> excused;
  for (const auto& row : real_table("exceptions.csv")) excused.insert({row[0], row[1]});
  std::set<std::vector<std::string>> met;
  std::size_t count = 0;
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    for (const std::string& text : printed->facts) {
      for (const PrintedFigure& figure : figures_in(text, real->fiche.reading)) {
        CAPTURE(id, text, figure.text);
        ++count;
        const bool is_stated = stated(real->fiche, figure.amount);
        const bool is_excused = excused.count({id, figure.text}) != 0;
        CHECK(is_stated != is_excused);
        if (is_excused && !is_stated) met.insert({id, figure.text});
      }
    }
  }
  CHECK(met == excused);
  CHECK(count > 100);
}

TEST_CASE("the limits of printed control points stand in a control", "[real]") {
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    for (const std::string& text : printed->controls) {
      const auto figures = figures_in(text, real->fiche.reading);
      CAPTURE(id, text);
      CHECK_FALSE(figures.empty());
      for (const PrintedFigure& figure : figures) CHECK(stated(real->fiche, figure.amount, El::control));
    }
  }
}

TEST_CASE("portions and batch sizes are those printed", "[real]") {
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    CAPTURE(id);
    REQUIRE(real->fiche.yields.size() == printed->batches.size());
    for (std::size_t i = 0; i < printed->portions.size(); ++i) {
      const Node yield = real->fiche.yields.at(i);
      const fiche::Statement* portions = real->fiche.statement(yield, At::portions);
      if (portions == nullptr) portions = real->fiche.statement(yield, At::pieces);
      REQUIRE(portions != nullptr);
      CHECK(portions->amount->low_base() == base::Ratio(printed->portions[i]));
    }
  }
}

TEST_CASE("sizes and numbers of printed pans are those of the fiche", "[real]") {
  const std::regex size("([0-9]+(?: [0-9]/[0-9])?(?: x [0-9]+(?: [0-9]/[0-9])?)+ in)");
  const std::regex number("([0-9]+) for ([0-9]+) servings");
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    for (const PrintedStep& step : printed->steps) {
      for (const std::string& tool : step.equipment) {
        CAPTURE(id, tool);
        std::smatch match;
        if (std::regex_search(tool, match, size)) {
          const auto wanted = measure::read_lengths(match[1].str(), real->fiche.reading);
          REQUIRE(bool(wanted));
          const auto& all = real->fiche.statements;
          CHECK(std::any_of(all.begin(), all.end(), [&](const fiche::Statement& s) {
            return s.lengths.size() == wanted->size() &&
                   std::equal(s.lengths.begin(), s.lengths.end(), wanted->begin(), same);
          }));
          if (wanted->size() == 3) {
            for (const Node yield : real->fiche.yields) CHECK(has_mould(real->fiche, yield, *wanted));
          }
        }
        for (auto m = std::sregex_iterator(tool.begin(), tool.end(), number); m != std::sregex_iterator(); ++m) {
          const std::string place = "yield[portions=" + (*m)[2].str() + "] mould[count=" + (*m)[1].str() + "]";
          CHECK_FALSE(at_place(*real->document, place).empty());
        }
      }
    }
  }
}

}  // namespace tamis::tests
