#include <cmath>

#include "core/cli/json_text.h"
#include "core/cli/shown.h"

// Published as schemas/show.schema.json; "schema" counts up when it changes so that an older reader would misread it.
// Figures are rounded as numbers of six figures, so that every machine prints the same.

namespace tamis::cli {
namespace {

using fiche::At;
using flow::Range;
using flow::State;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

std::string number(double value) {
  if (!std::isfinite(value)) return "null";
  if (value == 0) return "0";
  const double scale = std::pow(10, 5 - std::floor(std::log10(std::abs(value))));
  const double rounded = std::round(value * scale) / scale;
  return json_number(std::abs(rounded) < 1e-9 ? 0 : rounded);
}

std::string range(const Range& range) { return "{\"low\": " + number(range.low) + ", \"high\": " + number(range.high) + "}"; }

std::string allergens(food::Allergens bits) {
  std::string out;
  JsonList list(out, '[', ']');
  for (const food::AllergenName& name : food::allergen_names()) {
    if ((bits & name.bit) != 0) list.item(json_string(name.id));
  }
  list.close();
  return out;
}

std::string underscored(std::string_view words) {
  std::string out(words);
  for (char& c : out) c = c == ' ' ? '_' : c;
  return out;
}

class Json {
 public:
  explicit Json(const Shown& shown) : shown_(shown) {}

  std::string write() {
    const fiche::Document& document = *shown_.fiche.document;
    {
      JsonList all(out_, '{', '}', "\n ");
      all.member("schema", "1");
      all.text("path", document.source().path());
      all.text("id", shown_.fiche.id);
      all.text("title", shown_.fiche.title);
      all.begin("components");
      JsonList list(out_, '[', ']', "\n  ");
      for (const fiche::Node component : shown_.components()) {
        list.begin();
        write_component(component);
      }
    }
    return out_ + "\n";
  }

 private:
  void write_component(fiche::Node component) {
    const fiche::Document& document = *shown_.fiche.document;
    JsonList all(out_, '{', '}', "\n   ");
    all.text("id", component == fiche::none ? "" : document.get(component, At::id));
    all.text("title", component == fiche::none ? "" : document.get(component, At::title));
    all.begin("steps");
    JsonList list(out_, '[', ']', "\n    ");
    for (const auto& [number, step] : shown_.steps_of(component)) {
      list.begin();
      write_step(number, *step);
    }
  }

  void write_step(int number_in_component, const flow::Step& step) {
    const fiche::Document& document = *shown_.fiche.document;
    JsonList all(out_, '{', '}', "\n     ");
    all.member("number", std::to_string(number_in_component));
    all.member("line", std::to_string(document.source().place(document.span(step.node).begin).line));
    all.begin("do");
    {
      JsonList words(out_, '[', ']');
      for (const std::string_view word : shown_.fiche.steps[idx(step.index)].actions) words.item(json_string(word));
    }
    all.member("optional", step.optional ? "true" : "false");
    all.begin("takes");
    {
      JsonList uses(out_, '[', ']', "\n      ");
      for (const int use : step.takes) {
        uses.begin();
        write_use(use);
      }
    }
    all.begin("gives");
    {
      JsonList things(out_, '[', ']', "\n      ");
      for (const int thing : step.gives) {
        things.begin();
        JsonList made(out_, '{', '}', "\n       ");
        made.text("name", shown_.thing(thing).name);
        write_state(made, shown_.states.things[idx(thing)]);
      }
    }
    all.begin("out");
    JsonList together(out_, '{', '}', "\n      ");
    write_state(together, shown_.states.steps[idx(step.index)]);
  }

  void write_use(int number_of_use) {
    const flow::Use& use = shown_.use(number_of_use);
    const flow::Thing& thing = shown_.thing(use.thing);
    const State& state = shown_.states.uses[idx(number_of_use)];
    constexpr std::string_view kinds[] = {"ingredient", "part", "result", "component"};
    JsonList all(out_, '{', '}');
    all.text("id", thing.id);
    all.text("name", thing.name);
    all.text("kind", kinds[static_cast<std::size_t>(thing.kind)]);
    all.member("of_the_food", thing.counts ? "true" : "false");
    all.member("instead", use.instead ? "true" : "false");
    all.member("grams", thing.trace ? range({0, 0}) : state.grams ? range(*state.grams) : "null");
    all.member("celsius", range(state.celsius));
    const auto age = shown_.ages.of_use(number_of_use);
    if (age) all.member("age_s", "{\"least\": " + std::to_string(age->least) + ", \"most\": " + (age->most ? std::to_string(*age->most) : "null") + "}");
  }

  void write_state(JsonList& all, const State& state) {
    all.member("grams", state.grams ? range(*state.grams) : "null");
    why(all, "grams_open", state.why_grams);
    all.begin("shares");
    {
      JsonList shares(out_, '{', '}');
      for (std::size_t i = 0; i < flow::constituents; ++i) {
        const auto constituent = static_cast<flow::Constituent>(i);
        shares.member(underscored(flow::constituent_name(constituent)), range(state.share(constituent)));
      }
    }
    why(all, "shares_open", state.why_shares);
    all.member("kcal_per_100_g", range({100 * state.kcal_per_g.low, 100 * state.kcal_per_g.high}));
    all.member("celsius", range(state.celsius));
    why(all, "celsius_open", state.why_celsius);
    all.member("has_been_at", std::isinf(state.heat.celsius) ? "null"
                                  : "{\"celsius\": " + number(state.heat.celsius) + ", \"seconds\": " + number(state.heat.seconds) + "}");
    all.member("air", state.air == flow::Action::Air::in ? "true" : "false");
    all.member("depth_mm", state.depth_mm ? number(*state.depth_mm) : "null");
    all.member("allergens", "{\"sure\": " + allergens(state.sure) + ", \"assumed\": " + allergens(state.assumed & ~state.sure) +
                                ", \"may\": " + allergens(state.may & ~(state.sure | state.assumed)) +
                                ", \"open\": " + (state.allergens_open ? "true" : "false") + "}");
  }

  void why(JsonList& all, std::string_view name, const flow::Why& why) {
    if (why.any()) all.text(name, flow::tell(why, shown_.fiche, shown_.flow));
  }

  const Shown& shown_;
  std::string out_;
};

}  // namespace

std::string shown_json(const Shown& shown) { return Json(shown).write(); }

}  // namespace tamis::cli
