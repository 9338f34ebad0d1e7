#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/utf8.h"
#include "core/cli/question.h"
#include "core/measure/read.h"
#include "core/physics/media.h"

namespace tamis::cli {
namespace {

using Lies = Question::Lies;
using What = Question::What;

constexpr double pi = 3.141592653589793;
constexpr std::array<std::pair<std::string_view, What>, 4> whats{{{"cool", What::cool}, {"heat", What::heat}, {"freeze", What::freeze}, {"thaw", What::thaw}}};

/// "water 75, protein 20 %, fat 4".
struct Part {
  std::string_view name;
  double food::Composition::*grams;
};
constexpr std::array parts{
    Part{"water", &food::Composition::water}, Part{"protein", &food::Composition::protein}, Part{"fat", &food::Composition::fat},
    Part{"carbohydrate", &food::Composition::carbohydrate}, Part{"sugars", &food::Composition::sugars}, Part{"fibre", &food::Composition::fibre},
    Part{"ash", &food::Composition::ash}, Part{"alcohol", &food::Composition::alcohol},
};

class Reader {
 public:
  Reader(const Request& request, const Desk& desk) : request_(request), desk_(desk), reading_(desk.kitchen->reading) {}

  std::variant<Question, Misuse> read() {
    what();
    food();
    lengths();
    medium();
    temperatures();
    lie();
    if (!fault_.what.empty()) return fault_;
    return q_;
  }

 private:
  void refuse(std::string what, std::string advice) {
    if (fault_.what.empty()) fault_ = {std::move(what), std::move(advice)};
  }
  void refuse(const base::Finding& finding, std::string_view option) {
    refuse("--" + std::string(option) + ": " + finding.message, finding.advice);
  }

  void what() {
    std::vector<std::string_view> names;
    for (const auto& [name, what] : whats) names.push_back(name);
    if (request_.words.size() != 1) return refuse("say what is to happen", "write tamis predict cool, heat, freeze or thaw, and its options");
    const std::string& word = request_.words.front();
    for (const auto& [name, what] : whats)
      if (name == word) {
        q_.what = what;
        return;
      }
    const std::string near = did_you_mean(word, names);
    refuse("\"" + word + "\" cannot be predicted", near.empty() ? "it is one of cool, heat, freeze or thaw" : near);
  }

  // ---- the food
  void food() {
    if (request_.has("food") == request_.has("made-of"))
      return refuse(request_.has("food") ? "--food and --made-of both say what it is" : "say what food it is",
                    request_.has("food") ? "leave one of them out" : "write --food NAME, or --made-of \"water 75, protein 20, fat 4, ash 1\"");
    const auto composition = request_.has("food") ? of_table() : of_parts();
    if (!composition) return;
    const food::MakeupRead read = food::makeup_of(*composition);
    if (!read.makeup) {
      std::string missing;
      for (const std::string_view name : read.missing) missing += (missing.empty() ? "" : ", ") + std::string(name);
      return refuse("of " + q_.name + " the table does not have all that heat asks for: " + missing, "give it with --made-of \"water 75, protein 20, fat 4, ash 1\"");
    }
    q_.makeup = *read.makeup;
    q_.freezes = food::freezing_point(q_.makeup);
  }

  std::optional<food::Composition> of_table() {
    const std::string name = request_.get("food");
    const auto matches = find_foods(desk_, name, reading_.language);
    if (matches.empty() || !matches.front().sure) {
      refuse("no food is called \"" + name + "\"", matches.empty() ? "\"tamis foods\" lists all of them" : "did you mean \"" + std::string(matches.front().food->id) + "\"?");
      return std::nullopt;
    }
    const food::Food& food = *matches.front().food;
    q_.name = first_name(food.english);
    const fiche::Kitchen::OwnFood* own = matches.front().own;
    q_.kind = own != nullptr ? own->like : std::string(food.id);
    q_.role = food.role;
    const food::Composition& of = food.per_100_g;
    const bool milk = food.role == food::Role::dairy && of.water > 85 && of.fat < 8;
    const bool liquid = food.role == food::Role::liquid || food.role == food::Role::alcohol;
    q_.thin = (milk || (liquid && of.water > 70)) && food.id.find("jell") == std::string_view::npos;
    return of;
  }

  std::optional<food::Composition> of_parts() {
    q_.name = "food";
    food::Composition out{};
    std::array<bool, parts.size()> given{};
    std::string rest = request_.get("made-of");
    std::replace(rest.begin(), rest.end(), ';', ',');
    double sum = 0;
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find(','), rest.size());
      const std::string one(base::trimmed(std::string_view(rest).substr(0, end)));
      rest.erase(0, end + 1);
      if (one.empty()) continue;
      const std::size_t space = one.find_first_of(" =:");
      const std::string name = base::lower(one.substr(0, space));
      std::string figure(base::trimmed(space == std::string::npos ? std::string_view() : std::string_view(one).substr(space + 1)));
      if (figure.ends_with('%')) figure.pop_back();
      const auto part = std::find_if(parts.begin(), parts.end(), [&name](const Part& known) { return known.name == name || (name == "fiber" && known.name == "fibre") || (name == "sugar" && known.name == "sugars"); });
      if (part == parts.end()) {
        std::vector<std::string_view> names;
        for (const Part& known : parts) names.push_back(known.name);
        const std::string near = did_you_mean(name, names);
        refuse("--made-of: \"" + name + "\" is no constituent", near.empty() ? "it is one of water, protein, fat, carbohydrate, sugars, fibre, ash or alcohol" : near);
        return std::nullopt;
      }
      const auto number = measure::read_number(base::trimmed(figure), reading_);
      if (!number || *number < base::Ratio(0) || *number > base::Ratio(100)) {
        refuse("--made-of: \"" + one + "\" is no percentage", "write a figure from 0 to 100: \"" + std::string(part->name) + " 12\"");
        return std::nullopt;
      }
      out.*(part->grams) = number->approximate();
      given[static_cast<std::size_t>(part - parts.begin())] = true;
    }
    // Sugars and fibre are carbohydrate, said or not.
    const bool carbohydrate = given[3];
    if (!carbohydrate) out.carbohydrate = out.sugars + out.fibre;
    sum = out.water + out.protein + out.fat + out.carbohydrate + out.ash + out.alcohol;
    if (sum < 97 || sum > 103) {
      refuse("--made-of adds up to " + std::to_string(std::lround(sum)) + " %", sum < 97 ? "say what the rest is: carbohydrate, ash, ..." : "the parts are percent of the whole; sugars and fibre are counted within carbohydrate");
      return std::nullopt;
    }
    return out;
  }

  // ---- figures
  double figure(std::string_view option, measure::Kinds kinds, double in_base) {
    if (!request_.has(option)) return 0;
    const auto read = measure::read_amount(request_.get(option), kinds, reading_);
    if (!read) {
      refuse(read.fault(), option);
      return 0;
    }
    if (!read->has_figure() || read->form != measure::Amount::Form::exact || read->low_base() <= base::Ratio(0)) {
      refuse("--" + std::string(option) + ": \"" + request_.get(option) + "\" is not one figure above 0", "write it with its unit: \"5 cm\", \"20 l\"");
      return 0;
    }
    return read->low_base().approximate() * in_base;
  }

  void lengths() {
    q_.depth = figure("depth", measure::length_kinds, 1e-3);
    q_.diameter = figure("diameter", measure::length_kinds, 1e-3);
    q_.length = figure("length", measure::length_kinds, 1e-3);
    q_.width = figure("width", measure::length_kinds, 1e-3);
    q_.volume = figure("volume", measure::set_of(measure::Kind::volume), 1e-6);
    const double grams = figure("mass", measure::set_of(measure::Kind::mass), 1);
    if (grams > 0 && q_.volume > 0) return refuse("--mass and --volume both say how much it is", "leave one of them out");
    if (grams > 0 && fault_.what.empty()) q_.volume = grams / 1000 / food::unfrozen(q_.makeup, 20).density;
    q_.one_face = request_.has("one-face");
    const std::string place = request_.get("place", "centre");
    q_.place = place == "mean" ? physics::Place::mean : place == "surface" ? physics::Place::surface : physics::Place::centre;
    q_.by_hand = request_.has("stirred");
    q_.stirred = q_.by_hand || (q_.thin && (q_.what == What::cool || q_.what == What::heat));
    if (request_.has("stirred") && (q_.what == What::freeze || q_.what == What::thaw)) refuse("what freezes or thaws is not stirred", "leave --stirred out");
  }

  static double bare(const std::string& text) {
    char* end = nullptr;
    const double out = std::strtod(text.c_str(), &end);
    return end != text.c_str() && *end == '\0' ? out : NAN;
  }

  std::optional<double> celsius(std::string_view option) {
    if (!request_.has(option)) return std::nullopt;
    const std::string text = request_.get(option);
    if (!std::isnan(bare(text))) {
      refuse("--" + std::string(option) + ": \"" + text + "\" lacks °C or °F", "write --" + std::string(option) + " \"" + text + " °C\"");
      return std::nullopt;
    }
    const auto read = measure::read_temperature(text, reading_);
    if (!read) {
      refuse(read.fault(), option);
      return std::nullopt;
    }
    if (!read->has_figure() || read->form != measure::Amount::Form::exact) {
      refuse("--" + std::string(option) + ": \"" + text + "\" is not one temperature", "write one figure: \"5 °C\"");
      return std::nullopt;
    }
    const double value = read->low_base().approximate();
    if (value < -60 || value > 250) refuse("--" + std::string(option) + ": " + text + " is beyond what this is good for", "from -60 to 250 °C");
    return value;
  }

  void medium() {
    const auto air = celsius("air");
    double coefficient = 0;
    if (request_.has("coefficient")) {
      coefficient = bare(request_.get("coefficient"));
      if (!(coefficient > 0.1 && coefficient < 100000)) refuse("--coefficient: \"" + request_.get("coefficient") + "\" is no figure of W/(m² K)", "still air about 8, a blast chiller 30, stirred water 400");
    }
    const bool usual = !request_.has("in") && !air;
    if (usual && q_.what == What::heat) return refuse("say what it heats in", "write --in water-bath --air \"85 °C\", or another medium");
    const std::string in = request_.has("in") ? request_.get("in") : usual ? (q_.what == What::freeze ? "freezer" : "fridge") : "";
    if (in.empty()) {
      if (coefficient == 0) return refuse("--air wants --coefficient, or --in MEDIUM", "still air about 8 W/(m² K), a blast chiller 30");
      q_.in = "in air";
    } else {
      const auto around = flow::around_in(*desk_.kitchen, in);
      if (!around) return unknown_medium(in);
      q_.medium = around->medium->id;
      q_.in = around->medium->english;
      q_.exposure = around->exposure;
    }
    if (air) q_.exposure.celsius = flow::exactly(*air);
    if (coefficient > 0) q_.exposure.coefficient = flow::exactly(coefficient);
    if (coefficient > 0) q_.exposure.moving = flow::exactly(0.6 * coefficient);
    if (std::isnan(q_.exposure.celsius.likely)) refuse("how warm is it " + q_.in + "?", "write --air \"85 °C\"");
  }

  void unknown_medium(const std::string& in) {
    std::vector<std::string_view> names;
    for (const physics::Medium& medium : physics::media()) names.push_back(medium.id);
    for (const auto& cold : desk_.kitchen->colds) names.push_back(cold.id);
    const std::string near = did_you_mean(in, names);
    std::string all;
    for (const physics::Medium& medium : physics::media()) all += (all.empty() ? "" : ", ") + std::string(medium.id);
    refuse("--in: \"" + in + "\" is no medium that is known", near.empty() ? "it is one of " + all : near);
  }

  void temperatures() {
    const auto from = celsius("from"), to = celsius("to");
    const double freezes = q_.freezes.likely;
    if (!from && q_.what != What::thaw) refuse("say how warm it is at the start", "write --from \"90 °C\"");
    if (!to && (q_.what == What::cool || q_.what == What::heat)) refuse("say how warm it is to be", "write --to \"5 °C\"");
    q_.from = from.value_or(-18);
    q_.to = to.value_or(q_.what == What::freeze ? -18 : 0);
    if (!fault_.what.empty()) return;
    const bool down = q_.what == What::cool || q_.what == What::freeze;
    if (down ? q_.to >= q_.from : q_.to <= q_.from) {
      const std::string other = down ? (q_.what == What::freeze ? "thaw" : "heat") : q_.what == What::thaw ? "freeze" : "cool";
      return refuse("it is to end " + std::string(down ? "no colder" : "no warmer") + " than it starts", "turn --from and --to round, or ask for " + other);
    }
    const std::string at = text_of(freezes);
    if (q_.what == What::freeze && q_.to > freezes) refuse(q_.name + " freezes only below " + at, "write --to \"-18 °C\", or ask for cool");
    if (q_.what == What::thaw && q_.from > freezes) refuse(q_.name + " is not frozen above " + at, "ask for heat");
    if (q_.what == What::cool && q_.to < freezes) refuse(q_.name + " freezes at " + at, "ask for freeze");
  }
  static std::string text_of(double celsius) { return (celsius < 0 ? "-" : "") + std::to_string(std::lround(std::abs(celsius) * 10) / 10) + "." + std::to_string(std::lround(std::abs(celsius) * 10) % 10) + " °C"; }

  // ---- how it lies
  void lie() {
    if (!fault_.what.empty()) return;
    const std::string shape = request_.get("shape", guessed_shape());
    if (shape.empty()) return refuse("a diameter alone may be a ball or a long roll", "add --shape sphere or --shape cylinder");
    q_.lies = shape == "slab" ? Lies::slab : shape == "cylinder" ? Lies::cylinder : shape == "sphere" ? Lies::sphere : Lies::brick;
    switch (q_.lies) {
      case Lies::slab: return slab();
      case Lies::cylinder: return cylinder();
      case Lies::sphere: return sphere();
      case Lies::brick: return brick();
    }
  }

  [[nodiscard]] std::string guessed_shape() const {
    if (q_.diameter > 0) return q_.depth > 0 || q_.length > 0 || q_.volume > 0 ? "cylinder" : "";
    return q_.length > 0 && q_.width > 0 && q_.depth > 0 ? "brick" : "slab";
  }

  /// The one that is missing; a refusal when nothing is, and they do not agree.
  void follows(double& side, double found, std::string_view option) {
    if (q_.volume <= 0) return;
    if (side <= 0) {
      side = found;
    } else if (std::abs(found / side - 1) > 0.15) {
      refuse("as much as that does not stand " + centimetres(side) + " but " + centimetres(found) + " " + (option == "depth" ? "deep" : "across") + " there", "leave --" + std::string(option) + " out, or mend what does not fit");
    }
  }
  static std::string centimetres(double metres) {
    const long tenths = std::lround(metres * 1000);
    return std::to_string(tenths / 10) + (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10)) + " cm";
  }
  void wants(double side, std::string_view option, std::string_view example) {
    if (side <= 0) refuse("say how " + std::string(option == "depth" ? "deep" : option == "diameter" ? "thick" : option == "length" ? "long" : "wide") + " it is", "write --" + std::string(option) + " \"" + std::string(example) + "\"");
  }

  void slab() {
    if (q_.length > 0 && q_.width > 0) follows(q_.depth, q_.volume / (q_.length * q_.width), "depth");
    if (q_.length > 0 && q_.width > 0 && q_.volume <= 0) q_.volume = q_.depth * q_.length * q_.width;
    wants(q_.depth, "depth", "4 cm");
  }
  void cylinder() {
    if (q_.depth <= 0) std::swap(q_.depth, q_.length);
    q_.length = q_.width = 0;
    if (q_.diameter > 0) {
      follows(q_.depth, q_.volume / (pi * q_.diameter * q_.diameter / 4), "depth");
    } else if (q_.depth > 0) {
      follows(q_.diameter, std::sqrt(q_.volume / q_.depth * 4 / pi), "diameter");
    }
    wants(q_.diameter, "diameter", "8 cm");
    if (q_.volume <= 0 && q_.depth > 0) q_.volume = pi * q_.diameter * q_.diameter / 4 * q_.depth;
  }
  void sphere() {
    follows(q_.diameter, std::cbrt(q_.volume * 6 / pi), "diameter");
    q_.depth = q_.length = q_.width = 0;
    wants(q_.diameter, "diameter", "6 cm");
  }
  void brick() {
    if (q_.length > 0 && q_.width > 0) follows(q_.depth, q_.volume / (q_.length * q_.width), "depth");
    wants(q_.depth, "depth", "4 cm");
    wants(q_.length, "length", "30 cm");
    wants(q_.width, "width", "20 cm");
    q_.volume = q_.depth * q_.length * q_.width;
  }

  const Request& request_;
  const Desk& desk_;
  const measure::Reading& reading_;
  Question q_;
  Misuse fault_;
};

}  // namespace

std::variant<Question, Misuse> read_question(const Request& request, const Desk& desk) { return Reader(request, desk).read(); }

}  // namespace tamis::cli
