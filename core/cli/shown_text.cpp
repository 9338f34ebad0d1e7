#include <algorithm>

#include "core/base/utf8.h"
#include "core/cli/folded.h"
#include "core/cli/output.h"
#include "core/cli/shown.h"

namespace tamis::cli {
namespace {

using fiche::At;
using flow::State;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

/// Filled up with spaces to so many columns.
std::string padded(std::string text, std::size_t columns) {
  const std::size_t width = base::terminal_width(text);
  if (width < columns) text.append(columns - width, ' ');
  return text;
}
std::string right(const std::string& text, std::size_t columns) {
  const std::size_t width = base::terminal_width(text);
  return (width < columns ? std::string(columns - width, ' ') : std::string()) + text;
}

std::string allergens_of(food::Allergens bits) {
  std::string out;
  for (const food::AllergenName& name : food::allergen_names()) {
    if ((bits & name.bit) == 0) continue;
    out += out.empty() ? "" : " ";
    out += name.id;
  }
  return out;
}

class Text {
 public:
  Text(const Shown& shown, bool colour) : shown_(shown), colour_(colour), language_(shown.fiche.reading.language) {}

  std::string write() {
    out_ += bold(harmless(shown_.fiche.title)) + "\n";
    for (const fiche::Node component : shown_.components()) write_component(component);
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string bold(const std::string& text) const { return colour_ ? "\033[1m" + text + "\033[0m" : text; }
  [[nodiscard]] std::string dim(const std::string& text) const { return colour_ ? "\033[2m" + text + "\033[0m" : text; }

  void write_component(fiche::Node component) {
    const auto steps = shown_.steps_of(component);
    const fiche::Document& document = *shown_.fiche.document;
    std::string title = component == fiche::none ? "Steps outside a component" : std::string(document.get(component, At::title));
    out_ += "\n" + bold(harmless(title));
    const std::string_view day = component == fiche::none ? "" : document.get(component, At::day);
    if (!day.empty()) out_ += ", day " + harmless(day);
    out_ += "\n";
    const std::string_view from = component == fiche::none ? "" : document.get(component, At::from);
    if (!from.empty()) write_made_elsewhere(component, from);
    for (const auto& [number, step] : steps) write_step(number, *step);
  }

  void write_made_elsewhere(fiche::Node component, std::string_view from) {
    out_ += "     made in " + harmless(from) + "\n";
    const int thing = shown_.flow.thing_of(component);
    if (thing >= 0) write_state(shown_.states.things[idx(thing)], "all of it");
  }

  void write_step(int number, const flow::Step& step) {
    const std::string doing = names_of_actions(shown_, step.index);
    std::string line = right(std::to_string(number), 3) + "  " + (doing.empty() ? "(no action said)" : harmless(doing));
    if (step.optional) line += ", if need be";
    if (!step.branch.empty()) line += ", way \"" + harmless(step.branch) + "\"";
    out_ += bold(line) + "\n";
    for (const int use : step.takes) write_use(use);
    if (step.gives.size() > 1) {
      write_state(shown_.states.steps[idx(step.index)], "all of it", step.index);
      for (const int thing : step.gives) {
        write_state(shown_.states.things[idx(thing)], harmless(name_of_result(shown_, thing)), step.index);
      }
    } else if (!step.gives.empty()) {
      const std::string name = harmless(name_of_result(shown_, step.gives.front()));
      write_state(shown_.states.things[idx(step.gives.front())], name.empty() ? "it goes on" : name, step.index);
    }
  }

  void write_use(int number) {
    const flow::Use& use = shown_.use(number);
    const flow::Thing& thing = shown_.thing(use.thing);
    const State& state = shown_.states.uses[idx(number)];
    std::string name = harmless(thing.name);
    if (name.empty()) name = use.how == flow::Use::How::carried ? "what comes of the step before" : "something without a name";
    if (use.instead) name = "or " + name;
    std::string line = "       " + padded(name, 30) + " " + right(mass_of(use, thing, state), 14) + "  " + padded(celsius_text(state.celsius), 14);
    const std::string age = use.how == flow::Use::How::carried ? "" : age_worth_telling(shown_.ages.of_use(number));
    if (!age.empty()) line += "  " + age + " old";
    if (!thing.counts) line += "  not of the food";
    out_ += dim(trimmed_end(line)) + "\n";
  }

  /// "Up to nine hours" is the length of a working day, where nothing is said.
  static std::string age_worth_telling(const std::optional<flow::TimeRange>& age) {
    const bool told = age && (age->least >= 60 || (age->most && *age->most <= 2 * 3600));
    return told ? age_text(age) : "";
  }

  [[nodiscard]] std::string mass_of(const flow::Use& use, const flow::Thing& thing, const State& state) const {
    if (use.instead && state.grams && state.grams->high == 0) return "instead";
    return thing.trace ? "a trace" : grams_text(state.grams, language_);
  }

  static std::string trimmed_end(std::string text) {
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
  }

  /// `here`: the step it comes of.
  void write_state(const State& state, const std::string& name, int here = -1) {
    here_ = here;
    if (state.grams && state.grams->high == 0) {
      out_ += "     = " + padded(name, 30) + "  nothing of the food\n";
      return;
    }
    out_ += trimmed_end("     = " + padded(name, 30) + " " + right(grams_text(state.grams, language_), 14) + "  " + celsius_text(state.celsius)) + "\n";
    row(shares_text(state, language_));
    std::string more;
    const auto add = [&more](const std::string& text) {
      if (text.empty()) return;
      more += more.empty() ? "" : "; ";
      more += text;
    };
    if (state.heat.celsius > 45) add(heat_of(state));
    if (state.depth_mm) add(grams_like(*state.depth_mm) + " cm deep");
    if (state.air == flow::Action::Air::in) add("air in it");
    row(more);
    row(allergens_line(state));
    not_known("how much", state.why_grams, !state.grams);
    not_known("what it is made of", state.why_shares, !state.knows_shares() && !(state.why_shares == state.why_grams && !state.grams));
    not_known("how warm", state.why_celsius, !state.knows_temperature() && !(state.why_celsius == state.why_grams && !state.grams));
  }

  std::string heat_of(const State& state) const {
    std::string out = "all of it has been at " + celsius_text({state.heat.celsius, state.heat.celsius});
    if (state.heat.seconds >= 1) out += " for " + age_text(flow::TimeRange{static_cast<flow::TimeNetwork::Seconds>(state.heat.seconds), static_cast<flow::TimeNetwork::Seconds>(state.heat.seconds)});
    return out;
  }

  static std::string grams_like(double mm) {
    std::string out = std::to_string(mm / 10);
    out.erase(out.find_last_not_of('0') + 1);
    if (out.ends_with('.')) out.pop_back();
    return out;
  }

  static std::string allergens_line(const State& state) {
    std::string out;
    const auto add = [&out](std::string_view what, const std::string& names) {
      if (names.empty()) return;
      out += out.empty() ? "" : "; ";
      out += what;
      out += names;
    };
    add("holds ", allergens_of(state.sure));
    add("assumed to hold ", allergens_of(state.assumed & ~state.sure));
    add("may hold ", allergens_of(state.may & ~(state.sure | state.assumed)));
    if (state.allergens_open) add("", "a food in it is not known, nor its allergens");
    return out;
  }

  void row(const std::string& text) {
    if (!text.empty()) out_ += "       " + folded(text, 7) + "\n";
  }

  void not_known(std::string_view what, const flow::Why& why, bool open) {
    if (!open) return;
    std::string line = "not known ";
    line += what;
    if (why.any()) line += ": " + harmless(flow::tell(why, shown_.fiche, shown_.flow, here_));
    row(line);
  }

  const Shown& shown_;
  bool colour_;
  std::string language_;
  int here_ = -1;
  std::string out_;
};

}  // namespace

std::string shown_text(const Shown& shown, bool colour) { return Text(shown, colour).write(); }

}  // namespace tamis::cli
