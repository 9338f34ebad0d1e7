#ifndef TESTS_CHANGE_RANDOM_FICHE_H
#define TESTS_CHANGE_RANDOM_FICHE_H

#include <random>
#include <string>

#include "tests/change/converting.h"

namespace tamis::tests {

/// Whole fiches that say everything a conversion touches, in one system; the same for the same seed.
class RandomFiche {
 public:
  RandomFiche(unsigned seed, System system) : random_(seed), system_(system) {}

  std::string fiche(bool declared) {
    std::string inside;
    const int ingredients = number(2, 6);
    for (int i = 0; i < ingredients; ++i) inside += ingredient(i);
    const int steps = number(1, 4);
    for (int i = 0; i < steps; ++i) inside += step(i);
    const std::string units = system_ == System::metric ? "metric" : system_ == System::us ? "us" : "imperial";
    return "<?xml version=\"1.0\"?>\n<!-- made -->\n<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\"" +
           (declared ? " units=\"" + units + "\"" : std::string()) + ">\n  <title>T</title>\n" + yield() +
           "  <component id=\"c\" title=\"C\">\n" + inside + "  </component>\n</fiche>\n";
  }

 private:
  int number(int least, int most) { return std::uniform_int_distribution<int>(least, most)(random_); }
  bool chance(int percent) { return number(1, 100) <= percent; }
  template <std::size_t Size>
  std::string one_of(const char* const (&words)[Size]) {
    return words[static_cast<std::size_t>(number(0, static_cast<int>(Size) - 1))];
  }

  std::string mass() {
    if (system_ == System::metric) {
      if (chance(20)) return std::to_string(number(1, 4)) + "." + std::to_string(number(1, 9)) + " kg";
      if (chance(20)) return std::to_string(number(1, 9)) + "–" + std::to_string(number(10, 30)) + " g";
      return std::to_string(number(2, 900)) + " g";
    }
    if (chance(30)) return std::to_string(number(1, 4)) + " lb " + std::to_string(number(1, 15)) + " oz";
    return std::to_string(number(1, 15)) + one_of({" oz", " 1/2 oz", "¼ oz"});
  }

  std::string volume() {
    if (system_ == System::metric) {
      return chance(70) ? std::to_string(number(10, 900)) + " ml" : std::to_string(number(1, 3)) + " l";
    }
    return std::to_string(number(1, 6)) + one_of({" cups", " 1/2 cups", " tbsp", " tsp", " pints", " fl oz"});
  }

  std::string amount() {
    const int kind = number(1, 10);
    if (kind <= 5) return mass();
    if (kind <= 8) return volume();
    return kind == 9 ? std::to_string(number(1, 6)) : "to taste";
  }

  std::string heat(int least, int most) {
    const int celsius = number(least, most);
    const auto in = [&](int value) { return std::to_string(system_ == System::metric ? value : value * 9 / 5 + 32); };
    const std::string unit = system_ == System::metric ? " °C" : " °F";
    switch (number(1, 4)) {
      case 1: return in(celsius) + "–" + in(celsius + 3) + unit;
      case 2: return "at most " + in(celsius) + unit;
      case 3: return "at least " + in(celsius) + unit;
      default: return in(celsius) + unit;
    }
  }

  std::string length() {
    return system_ == System::metric ? std::to_string(number(2, 60)) + one_of({" cm", " mm"})
                                     : std::to_string(number(1, 20)) + one_of({" in", " 1/2 in"});
  }

  std::string ingredient(int index) {
    std::string tag = "    <ingredient id=\"i" + std::to_string(index) + "\" food=\"" +
                      one_of({"flour-wheat-white", "sugar-white", "butter-unsalted", "milk-whole", "cream-35",
                              "gelatine-leaf", "salt", "egg-whole", "honey"}) + "\"";
    if (chance(15)) tag += "  purchase = '" + mass() + "'";
    if (chance(15)) tag += " at=\"" + heat(2, 40) + "\"";
    tag += ">";
    const std::string break_in = chance(20) ? "\n      " : "";
    std::string inner = break_in + amount() + break_in;
    if (chance(20)) inner += "<amount batch=\"b\">" + mass() + "</amount>";
    if (chance(15)) inner += "<!-- kept --><swap amount=\"" + mass() + "\">or this</swap>";
    return tag + inner + "</ingredient>\n";
  }

  std::string step(int index) {
    const std::string id = std::to_string(index);
    std::string text = "    <step do=\"mix\" makes=\"r" + id + "\">Take <use of=\"i0\" take=\"" + one_of({"1/2", "the rest"}) +
                       "\" at=\"" + heat(10, 60) + "\">it</use> with <amount>" + mass() + "</amount> &amp; ";
    text += "roll to <length>" + length() + " × " + length() + "</length>, bake at <oven-temp mode=\"" +
            one_of({"fan", "static"}) + "\">" + (system_ == System::metric ? "180 °C" : "350 °F") + "</oven-temp> to <food-temp>" +
            heat(60, 95) + "</food-temp>.";
    if (chance(40)) text += "<gate of=\"r" + id + "\">Wait for <food-temp>" + heat(20, 40) + "</food-temp>.</gate>";
    if (chance(40)) text += "<control hazard=\"growth\">Core <food-temp>" + heat(63, 80) + "</food-temp>.</control>";
    return text + "</step>\n";
  }

  std::string yield() {
    return "  <yield portions=\"8\" mass=\"" + mass() + "\"><mould shape=\"frame\" length=\"" + length() + "\" width=\"" +
           length() + "\" holds=\"" + mass() + "\"/><loss what=\"bowl\" amount=\"" + (chance(50) ? mass() : "3 %") +
           "\"/></yield>\n  <yield id=\"b\" portions=\"80\"/>\n";
  }

  std::mt19937 random_;
  System system_;
};

constexpr unsigned fiches_tried = 60;

inline ConvertWish random_wish(std::mt19937& random) {
  const auto pick = [&](unsigned most) { return std::uniform_int_distribution<unsigned>(0, most)(random); };
  ConvertWish made;
  made.units = std::vector{System::metric, System::us, System::imperial}[pick(2)];
  made.by = std::vector{By::as_written, By::mass, By::volume, By::both}[pick(3)];
  made.oven = std::vector<std::string>{"", "", "fan", "static"}[pick(3)];
  made.market = std::vector<std::string>{"", "", "US", "FR"}[pick(3)];
  return made;
}

}  // namespace tamis::tests

#endif
