#include <array>
#include <string>
#include <vector>

#include "core/cli/desk.h"
#include "core/cli/folded.h"
#include "core/cli/json_text.h"
#include "core/cli/output.h"
#include "core/cli/turn.h"
#include "core/cli/verb.h"
#include "core/measure/read.h"
#include "core/measure/write.h"

namespace tamis::cli {
namespace {

using measure::Amount;
using measure::System;
using measure::Unit;

constexpr std::array options{
    Option{"in", 'i', "UNIT", "the unit wanted; the usual ones of the other systems when not given", ""},
    Option{"food", 'f', "FOOD", "what it is of: needed from cups to grams, from pieces to grams, and back",
           "FOOD"},
    Option{"system", 's', "SYSTEM", "whose cup, pint, ounce or spoon a bare name means", "us|imperial|metric"},
    Option{"oven", 0, "", "the temperature is on an oven's dial: round to what the dial can do", ""},
    Option{"lang", 'l', "LANGUAGE", "language the text is written in: en, fr, de, es", ""},
    Option{"as", 0, "FORM", "how to tell it; json needs --in", "text|json"},
    Option{"kitchen", 'k', "FILE", "the kitchen file whose scales, spoons and foods are used", "FILE"},
};

constexpr std::string_view help =
    R"(TEXT is an amount, a temperature, a length or a time as a recipe writes it.

  $ tamis measure "1 1/2 cup" --system us --food flour-wheat-white --in g
  1 ½ cups plain flour = 187.5 g, in the kitchen 188 g
    source: UCUM [cup_us]; 16 US tablespoons; SI brochure; USDA SR28 20081
  $ tamis measure "2 cups of flour" --system us --in g
  2 cups of flour = 250 g
    source: UCUM [cup_us]; 16 US tablespoons; SI brochure; USDA SR28 20081
  $ tamis measure "375 °F"
  375 °F
    metric  190.6 °C, thermometer 190.5 °C
)";

constexpr measure::Kinds every_kind = measure::amount_kinds | measure::temperature_kinds | measure::time_kinds;

/// What went wrong, said; the exit code that goes with it.
Exit refuse(const base::Finding& fault, Exit exit) {
  complain(fault.message);
  if (!fault.advice.empty()) say("  → " + harmless(fault.advice));
  return exit;
}

/// "187.5", or "about 187.53" digits that read well, with the unit.
std::string figure(base::Ratio value, const Unit& unit, const measure::Writing& writing) {
  measure::Writing plain = writing;
  plain.fractions = false;
  return measure::write_amount(measure::amount_of(value, unit), plain);
}

class Measuring {
 public:
  Measuring(const Request& request, const Desk& desk) : request_(request), desk_(desk) {
    reading_ = desk.kitchen->reading;
    if (request.has("lang")) reading_.language = request.get("lang");
    const std::string system = request.get("system");
    if (system == "us") reading_.system = System::us;
    if (system == "imperial") reading_.system = System::imperial;
    if (system == "metric") reading_.system = System::metric;
    turning_.tools = &desk.kitchen->tools;
    turning_.writing.language = reading_.language;
    turning_.oven = request.has("oven");
  }

  Exit run() {
    if (const Exit exit = find_food(); exit != Exit::good) return exit;
    std::string typed = request_.words.front();
    if (typed.find("×") != std::string::npos || typed.find(" x ") != std::string::npos) return lengths(typed);
    if (!request_.has("food")) take_food_from(typed);
    const auto read = measure::read_amount(typed, every_kind, reading_);
    if (!read) return refuse(read.fault(), Exit::found);
    if (!read->has_figure()) {
      complain("\"" + typed + "\" holds no figure");
      return Exit::found;
    }
    turning_.oven = turning_.oven || on_a_dial(*read);
    if (!request_.has("in")) return overview(*read);
    const auto unit = measure::read_unit(request_.get("in"), reading_);
    if (!unit) return refuse(unit.fault(), Exit::failed);
    return one(*read, **unit);
  }

 private:
  Exit find_food() {
    if (!request_.has("food")) return Exit::good;
    const std::string name = request_.get("food");
    const std::vector<FoodMatch> matches = find_foods(desk_, name, reading_.language);
    if (!matches.empty() && matches.front().sure) {
      turning_.food = matches.front().food;
      return Exit::good;
    }
    complain("no food is called \"" + name + "\"");
    if (matches.empty())
      say("  → \"tamis foods\" lists all of them");
    else
      say("  → did you mean \"" + std::string(matches.front().food->id) + "\"?");
    return Exit::failed;
  }

  /// "4 eggs", "2 cups of flour": the amount is left in `typed` when what follows it is surely a food.
  void take_food_from(std::string& typed) {
    if (measure::read_amount(typed, every_kind, reading_)) return;
    for (std::size_t space = typed.find(' '); space != std::string::npos; space = typed.find(' ', space + 1)) {
      const auto amount = measure::read_amount(typed.substr(0, space), every_kind, reading_);
      if (!amount || !amount->has_figure()) continue;
      std::string name = typed.substr(space + 1);
      for (const std::string_view of : {"of ", "de ", "d'", "d’"})
        if (name.starts_with(of)) name.erase(0, of.size());
      const std::vector<FoodMatch> matches = find_foods(desk_, name, reading_.language);
      if (matches.empty() || !matches.front().sure) continue;
      turning_.food = matches.front().food;
      called_ = typed.substr(space + 1);
      typed.erase(space);
      return;
    }
  }

  /// The one figure, or both ends of a range; "at least" and "at most" have one end.
  [[nodiscard]] static std::vector<base::Ratio> ends(const Amount& amount) {
    if (amount.form == Amount::Form::range) return {amount.low_base(), amount.high_base()};
    return {amount.form == Amount::Form::at_most ? amount.high_base() : amount.low_base()};
  }

  /// Rough as written: a pinch, or "about".
  [[nodiscard]] static bool rough(const Amount& amount) {
    for (const auto* side : {&amount.low, &amount.high})
      for (const measure::Quantity& quantity : *side)
        if (quantity.unit->rough) return true;
    return amount.about;
  }

  /// Gas marks and thermostat numbers stand on ovens and nowhere else.
  [[nodiscard]] static bool on_a_dial(const Amount& amount) {
    for (const auto* side : {&amount.low, &amount.high})
      for (const measure::Quantity& quantity : *side)
        if (measure::is_gas_mark(*quantity.unit) || quantity.unit->id == "thermostat") return true;
    return false;
  }

  Exit one(const Amount& amount, const Unit& unit) {
    std::vector<Turned> turned;
    for (const base::Ratio end : ends(amount)) {
      const auto result = turn(end, amount.kind, unit, turning_);
      if (!result) return refuse(result.fault(), Exit::found);
      turned.push_back(*result);
      turned.back().exact = turned.back().exact && !rough(amount);
    }
    if (request_.get("as") == "json")
      print(json(amount, turned));
    else
      print(text(amount, turned));
    for (const Turned& side : turned)
      if (!side.warning.empty()) say("  → " + side.warning);
    return Exit::good;
  }

  [[nodiscard]] std::string json(const Amount& amount, const std::vector<Turned>& turned) const {
    std::string out;
    {
      JsonList object(out, '{', '}');
      const auto add = [&object](const Turned& side, const std::string& before) {
        object.member(before + "value", json_number(side.value.approximate()));
        object.member(before + "exact", side.exact ? json_string(side.value.text()) : "null");
        object.text(before + "kitchen", side.kitchen);
      };
      add(turned.front(), "");
      if (turned.size() > 1) add(turned.back(), "to_");
      object.text("unit", turned.front().unit->id);
      object.text("source", sources_of(amount, *turned.front().unit, turning_.food));
    }
    return out + "\n";
  }

  /// The figure, and as the kitchen can measure it where that differs.
  [[nodiscard]] std::string right_side(const std::vector<Turned>& turned, const measure::Writing& writing) const {
    std::string exact;
    std::string kitchen;
    for (const Turned& side : turned) {
      exact += (exact.empty() ? "" : " to ") + figure(side.value, *side.unit, writing);
      kitchen += (kitchen.empty() ? "" : " to ") + side.kitchen;
    }
    if (exact == kitchen) return exact;
    const bool temperature = turned.front().unit->kind == measure::Kind::temperature;
    const std::string where = !temperature ? "in the kitchen " : turning_.oven ? "oven dial " : "thermometer ";
    return exact + ", " + where + kitchen;
  }

  [[nodiscard]] std::string left_side(const Amount& amount) const {
    std::string left = measure::write_amount(amount, turning_.writing);
    if (turning_.food != nullptr) left += " " + (called_.empty() ? first_name(turning_.food->english) : called_);
    return left;
  }

  [[nodiscard]] std::string text(const Amount& amount, const std::vector<Turned>& turned) const {
    const std::string source = sources_of(amount, *turned.front().unit, turning_.food);
    return left_side(amount) + " = " + right_side(turned, turning_.writing) + "\n" +
           (source.empty() ? "" : "  source: " + folded(source, 10) + "\n");
  }

  Exit overview(const Amount& amount) {
    measure::Writing short_writing = turning_.writing;
    short_writing.digits = 4;
    std::vector<Row> rows;
    for (const Unit* unit : usual_units(amount, turning_.food)) {
      std::vector<Turned> turned;
      for (const base::Ratio end : ends(amount))
        if (const auto result = turn(end, amount.kind, *unit, turning_)) turned.push_back(*result);
      if (!turned.empty()) rows.push_back({whose(*unit), right_side(turned, short_writing)});
    }
    print(left_side(amount) + "\n" + two_columns(rows));
    return Exit::good;
  }

  [[nodiscard]] static std::string whose(const Unit& unit) {
    return unit.system == System::si ? "metric" : std::string(measure::system_name(unit.system));
  }

  /// "12 × 20 in": each side on its own, in the unit wanted or the other system's usual one.
  Exit lengths(const std::string& typed) {
    const auto read = measure::read_lengths(typed, reading_);
    if (!read) return refuse(read.fault(), Exit::found);
    if (request_.get("as") == "json") {
      complain("--as json answers for one length at a time");
      return Exit::failed;
    }
    std::string left;
    std::string exact;
    std::string kitchen;
    for (const Amount& side : *read) {
      const Unit* unit = usual_units(side, nullptr).front();
      if (request_.has("in")) {
        const auto wanted = measure::read_unit(request_.get("in"), reading_);
        if (!wanted) return refuse(wanted.fault(), Exit::failed);
        unit = *wanted;
      }
      const auto turned = turn(side.low_base(), side.kind, *unit, turning_);
      if (!turned) return refuse(turned.fault(), Exit::found);
      const std::string times = left.empty() ? "" : " × ";
      left += times + measure::write_amount(side, turning_.writing);
      exact += times + figure(turned->value, *unit, turning_.writing);
      kitchen += times + turned->kitchen;
    }
    print(left + " = " + exact + (exact == kitchen ? "" : ", in the kitchen " + kitchen) + "\n");
    return Exit::good;
  }

  const Request& request_;
  const Desk& desk_;
  measure::Reading reading_;
  Turning turning_;
  std::string called_;  ///< the food, as typed after the amount
};

Exit run_measure(const Request& request) {
  if (request.words.size() != 1) {
    complain("write the amount as one text in quotes: tamis measure \"1 1/2 cup\" --system us");
    return Exit::failed;
  }
  if (request.get("as") == "json" && !request.has("in")) {
    complain("--as json answers for one unit: add --in UNIT");
    return Exit::failed;
  }
  const Desk desk = desk_of(request);
  if (!desk.fault.empty()) {
    complain(desk.fault);
    return Exit::failed;
  }
  return Measuring(request, desk).run();
}

}  // namespace

extern const Verb verb_measure;
const Verb verb_measure{.name = "measure",
                        .summary = "turn an amount, a temperature or a length into other units",
                        .usage = "tamis measure [OPTIONS] TEXT",
                        .help = help,
                        .words = "TEXT",
                        .options = options,
                        .run = run_measure};

}  // namespace tamis::cli
