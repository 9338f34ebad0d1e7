// Recipes at random, sensible or not: whatever is done, the bounds hold together.
#include <algorithm>
#include <random>

#include "core/flow/ages.h"
#include "tests/flow/stated.h"

namespace tamis {
namespace {

using flow::Constituent;
using flow::State;
using tests::states_of;

class Writer {
 public:
  explicit Writer(unsigned seed) : random_(seed) {}

  std::string write() {
    std::string text = "<component id=\"c\" title=\"C\">";
    if (one_in(4)) text += R"(<yield mass="1 kg"><loss what="cooking" amount="10 %"/><loss what="trim" amount="30 g"/></yield>)";
    const int lines = 1 + below(6);
    for (int i = 0; i < lines; ++i) text += ingredient(i);
    const int steps = 1 + below(8);
    for (int i = 0; i < steps; ++i) text += step(i, lines);
    return tests::fiche_of(text + "</component>");
  }

 private:
  int below(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }
  bool one_in(int count) { return below(count) == 0; }
  const char* one_of(std::initializer_list<const char*> words) { return *(words.begin() + below(static_cast<int>(words.size()))); }

  std::string ingredient(int i) {
    std::string out = "<ingredient id=\"i" + std::to_string(i) + "\"";
    if (!one_in(8)) {
      out += " food=\"";
      out += one_of({"water", "sugar-white", "butter-unsalted", "egg-whole", "flour-wheat-white", "milk-whole", "cream-35", "wine-red", "pear",
                     "beef-stewing", "chocolate-dark-70", "salt", "butter-dry-84", "gelatine-leaf", "oil-sunflower", "no-such-food"});
      out += "\"";
    }
    if (one_in(6)) out += std::string(" prep=\"") + one_of({"melted", "softened", "frozen", "boiling", "diced"}) + "\"";
    if (one_in(8)) out += " optional=\"yes\"";
    if (one_in(8)) out += std::string(" purpose=\"") + one_of({"bath", "boiling", "tin", "cover"}) + "\"";
    return out + ">" + one_of({"100 g", "1 kg", "2 to 300 g", "0 g", "to taste", "", "3"}) + "</ingredient>";
  }

  std::string step(int number, int lines) {
    std::string out = "<step";
    if (!one_in(8)) {
      out += " do=\"";
      const int words = 1 + below(3);
      for (int i = 0; i < words; ++i) {
        const auto all = flow::actions();
        out += i == 0 ? "" : " ";
        out += one_in(20) ? "whirl" : std::string(all[static_cast<std::size_t>(below(static_cast<int>(all.size())))].word);
      }
      out += "\"";
    }
    if (one_in(3)) out += std::string(" on=\"") + one_of({"hob", "oven", "fridge", "freezer", "ice", "mixer", "water-bath"}) + "\"";
    if (one_in(6)) out += std::string(" ") + one_of({"reduce-by=\"1/2\"", "reduce-to=\"50 g\"", "reduce-by=\"95 %\"", "reduce-to=\"1/10\""});
    if (one_in(10)) out += " removes=\"i0\"";
    if (one_in(10)) out += " optional=\"yes\"";
    if (one_in(8)) out += std::string(" branch=\"") + one_of({"a", "b"}) + "\"";
    if (one_in(4)) out += std::string(" unattended=\"") + one_of({"5 min", "overnight", "2 to 3 h"}) + "\"";
    out += " makes=\"r" + std::to_string(number) + (one_in(6) ? " q" + std::to_string(number) : "") + "\">Do ";
    const int uses = below(4);
    for (int i = 0; i < uses; ++i) out += use(number, lines);
    if (one_in(3)) out += std::string(" to <food-temp>") + one_of({"82–84 °C", "at most 38 °C", "boiling", "-18 °C", "at least 60 °C", "hot"}) + "</food-temp>";
    if (one_in(5)) out += std::string(" at <oven-temp>") + one_of({"180 °C", "hot oven"}) + "</oven-temp>";
    if (one_in(6)) out += std::string(" in <medium-temp of=\"bath\">") + one_of({"60 °C", "at most 5 °C"}) + "</medium-temp>";
    if (one_in(6)) out += std::string("<loss what=\"") + one_of({"bowl", "cooking", "straining", "trim"}) + "\" amount=\"" + one_of({"5 %", "20 g", "2 kg"}) + "\"/>";
    if (one_in(6)) out += "<control>At <food-temp>at least 75 °C</food-temp>.</control>";
    return out + " , cover and cool.</step>";
  }

  std::string use(int number, int lines) {
    const bool made = number > 0 && one_in(2);
    std::string out = made ? "<use of=\"r" + std::to_string(below(number)) + "\"" : "<use of=\"i" + std::to_string(below(lines)) + "\"";
    if (one_in(5)) out += std::string(" take=\"") + one_of({"1/2", "the rest", "50 g"}) + "\"";
    if (one_in(5)) out += std::string(" at=\"") + one_of({"24–28 °C", "at most 6 °C", "at least 90 °C"}) + "\"";
    return out + ">it</use> and ";
  }

  std::mt19937 random_;
};

void hold_together(const State& state) {
  double least = 0, most = 0;
  for (std::size_t i = 0; i < flow::constituents; ++i) {
    const flow::Range& share = state.shares[i];
    CHECK(share.low >= 0);
    CHECK(share.low <= share.high + 1e-9);
    CHECK(share.high <= 1);
    if (static_cast<Constituent>(i) == Constituent::salt) continue;
    least += share.low;
    most += share.high;
  }
  CHECK(least <= 1.02);  // the table's own figures add up to within a hundredth or two
  if (!state.grams || state.grams->high > 0) CHECK(most >= 0.98);
  CHECK(state.celsius.low <= state.celsius.high);
  CHECK_FALSE(std::isnan(state.celsius.low));
  CHECK_FALSE(std::isnan(state.celsius.high));
  CHECK(state.kcal_per_g.low <= state.kcal_per_g.high + 1e-9);
  if (state.grams) {
    CHECK(state.grams->low >= 0);
    CHECK(state.grams->low <= state.grams->high);
  }
  CHECK(state.heat.seconds >= 0);
}

TEST_CASE("whatever a recipe does, the bounds hold together", "[states]") {
  for (unsigned seed = 1; seed <= 400; ++seed) {
    const std::string text = Writer(seed).write();
    CAPTURE(seed, text);
    const auto made = states_of(text);
    for (const State& state : made.states.steps) hold_together(state);
    for (const State& state : made.states.uses) CHECK_FALSE(std::isnan(state.celsius.low));
    for (std::size_t step = 0; step < made.states.steps.size(); ++step) {
      for (std::size_t thing = 0; thing < made.states.things.size(); ++thing) {
        const auto held = made.states.held(static_cast<int>(step), static_cast<int>(thing));
        if (held) CHECK(held->low >= 0);
        if (held) CHECK(held->high <= 100);
      }
    }
    const flow::StepTimes times = flow::read_step_times(made.flowing->fiche, made.flowing->flow);
    flow::Ages ages(made.flowing->flow, times);
    for (std::size_t use = 0; use < made.states.uses.size(); ++use) {
      const auto age = ages.of_use(static_cast<int>(use));
      if (age) CHECK(age->least >= 0);
    }
  }
}

}  // namespace
}  // namespace tamis
