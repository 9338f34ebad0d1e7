#include <string>
#include <vector>

#include "tests/change/comparing.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

struct Row {
  std::string was, is, expected;
};

/// What stands in the one component of the two fiches, and the lines told.
void check_rows(const std::vector<Row>& rows, const std::string& root = "units=\"metric\"",
                const fiche::Kitchen& kitchen = {}) {
  for (const Row& row : rows) {
    CAPTURE(row.was, row.is);
    CHECK(lines(changes(fiche_around(row.was, root), fiche_around(row.is, root), kitchen)) == row.expected);
  }
}

std::string sugar(const std::string& amount, const std::string& more = "") {
  return "<ingredient id=\"s\" food=\"sugar-white\" name=\"sugar\"" + more + ">" + amount + "</ingredient>";
}

std::string step(const std::string& inside, const std::string& more = "do=\"cook\"") {
  return "<step " + more + ">" + inside + "</step>";
}

}  // namespace

TEST_CASE("an amount is told by how much more or less there is", "[compare]") {
  check_rows({
      {sugar("150 g"), sugar("162 g"), "figures: 8 % more sugar: 162 g, was 150 g"},
      {sugar("162 g"), sugar("150 g"), "figures: 7.4 % less sugar: 150 g, was 162 g"},
      {sugar("100 g"), sugar("200 g"), "figures: twice as much sugar: 200 g, was 100 g"},
      {sugar("200 g"), sugar("100 g"), "figures: half as much sugar: 100 g, was 200 g"},
      {sugar("100 g"), sugar("250 g"), "figures: 2.5 times as much sugar: 250 g, was 100 g"},
      {sugar("100–120 g"), sugar("105–110 g"), "figures: sugar narrower: 105–110 g, was 100–120 g"},
      {sugar("to taste"), sugar("5 g"), "figures: sugar 5 g, was to taste"},
      {sugar("3"), sugar("4"), "figures: 33 % more sugar: 4, was 3"},
  });
}

TEST_CASE("a figure that means the same is no change", "[compare]") {
  check_rows({
      {sugar("1000 g"), sugar("1 kg"), ""},
      {sugar("1.5 kg"), sugar("1500.3 g"), ""},          // the scales read 1 g there
      {sugar("600 g"), sugar("601 g"), "figures: 0.2 % more sugar: 601 g, was 600 g"},
      {sugar("0.4 g"), sugar("0.5 g"), "figures: 25 % more sugar: 0.5 g, was 0.4 g"},
      {step("Boil <time>90 min</time>."), step("Boil <time>1 h 30 min</time>."), ""},
      {step("Boil <time>PT20M</time>."), step("Boil <time>20 minutes</time>."), ""},
      {step("Roll to <length>0.5 cm</length>."), step("Roll to <length>5 mm</length>."), ""},
      {step("To <food-temp>82–84 °C</food-temp>."), step("To <food-temp>82 to 84°C</food-temp>."), ""},
      {step("To <food-temp>85 °C</food-temp>."), step("To <food-temp>185 °F</food-temp>."), ""},
      {step("At <oven-temp mode=\"fan\">180 °C</oven-temp>."), step("At <oven-temp mode=\"fan\">350 °F</oven-temp>."), ""},
      {sugar("about 100 g"), sugar("100 g"), "wording: sugar 100 g, was about 100 g"},
  });
}

TEST_CASE("a cup is the cup of the units that are declared", "[compare]") {
  const auto milk = [](const std::string& amount) {
    return "<ingredient food=\"milk-whole\" name=\"milk\">" + amount + "</ingredient>";
  };
  const auto compared = [&](const std::string& was, const std::string& old_units, const std::string& is,
                            const std::string& new_units) {
    return lines(changes(fiche_around(milk(was), "units=\"" + old_units + "\""),
                         fiche_around(milk(is), "units=\"" + new_units + "\"")));
  };
  CHECK(compared("1 cup", "us", "236.6 ml", "us").empty());
  CHECK(compared("1 cup", "us", "236.6 ml", "metric") == "wording: household measures metric, was us");
  CHECK(compared("1 cup", "us", "1 cup", "imperial") ==
        "figures: 20 % more milk: 1 cup, was 1 cup\nwording: household measures imperial, was us");
  CHECK(compared("240 g", "us", "1 cup", "us") ==
        "wording: milk, as much but measured otherwise: 1 cup, was 240 g");
}

TEST_CASE("a house meaning is the figure it stands for", "[compare]") {
  const fiche::Kitchen kitchen = kitchen_of(
      "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\"><means word=\"overnight\" time=\"10 to 16 h\"/></kitchen>");
  const std::string overnight = step("Rest <time>overnight</time>.");
  const std::string hours = step("Rest <time>10 to 16 h</time>.");
  check_rows({{overnight, hours, ""}}, "units=\"metric\"", kitchen);
  check_rows({{overnight, hours, "figures: cook 10 to 16 h, was overnight"}});
}

TEST_CASE("temperatures and times are told by how far they moved, of what they are", "[compare]") {
  check_rows({
      {step("Stir to <food-temp>82–84 °C</food-temp>.", "do=\"cook\" makes=\"custard\""),
       step("Stir to <food-temp>84–86 °C</food-temp>.", "do=\"cook\" makes=\"custard\""),
       "figures: custard 2 °C hotter: 84–86 °C, was 82–84 °C"},
      {step("Bake at <oven-temp mode=\"fan\">180 °C</oven-temp>.", "do=\"bake\""),
       step("Bake at <oven-temp mode=\"fan\">170 °C</oven-temp>.", "do=\"bake\""),
       "figures: bake oven 10 °C cooler: 170 °C, was 180 °C"},
      {step("Bake at <oven-temp mode=\"static\">180 °C</oven-temp>.", "do=\"bake\""),
       step("Bake at <oven-temp mode=\"fan\">180 °C</oven-temp>.", "do=\"bake\""),
       "figures: bake oven 180 °C fan, was 180 °C static"},
      {step("Bake at <oven-temp>180 °C</oven-temp>.", "do=\"bake\""),
       step("Bake at <oven-temp mode=\"fan\">160 °C</oven-temp>.", "do=\"bake\""),
       "figures: bake oven 160 °C fan, was 180 °C (mode not stated)"},
      {step("In a <medium-temp of=\"water bath\">60 °C</medium-temp> bath."),
       step("In a <medium-temp of=\"water bath\">65 °C</medium-temp> bath."),
       "figures: water bath 5 °C hotter: 65 °C, was 60 °C"},
      {step("To <food-temp>180 °F</food-temp>."), step("To <food-temp>185 °F</food-temp>."),
       "figures: cook 5 °F hotter: 185 °F, was 180 °F"},
      {step("Boil <time>12 to 16 minutes</time>."), step("Boil <time>14 to 18 minutes</time>."),
       "figures: cook 2 min longer: 14 to 18 minutes, was 12 to 16 minutes"},
      {step("Boil.", "do=\"boil\" hands=\"10 min\""), step("Boil.", "do=\"boil\" hands=\"8 min\""),
       "figures: boil 2 min shorter hands-on: 8 min, was 10 min"},
      {step("Rest <time>2 h</time>.", "do=\"rest\" unattended=\"2 h\""),
       step("Rest <time>3 h</time>.", "do=\"rest\" unattended=\"3 h\""),
       "figures: rest 1 h longer unattended: 3 h, was 2 h"},
      {step("Roll to <length>4 mm</length>.", "do=\"roll\""), step("Roll to <length>5 mm</length>.", "do=\"roll\""),
       "figures: roll length 5 mm, was 4 mm"},
  });
}

TEST_CASE("ingredients that come, go, change places with another or are called otherwise", "[compare]") {
  const std::string flour = "<ingredient id=\"f\" food=\"flour-wheat-white\" name=\"flour\">200 g</ingredient>";
  const std::string leaf = "<ingredient id=\"l\" food=\"gelatine-leaf\" name=\"gelatine\" bloom=\"200\">10 g</ingredient>";
  check_rows({
      {flour, flour + sugar("40 g"), "figures: new ingredient: 40 g sugar"},
      {flour + sugar("40 g"), flour, "figures: no longer: 40 g sugar"},
      {leaf, "<ingredient id=\"l\" food=\"gelatine-leaf\" name=\"gelatine\" bloom=\"180\">10 g</ingredient>",
       "figures: gelatine 180 bloom, was 200"},
      {sugar("100 g"), "<ingredient id=\"s\" food=\"sugar-brown\" name=\"brown sugar\">100 g</ingredient>",
       "figures: brown sugar in place of sugar"},
      {sugar("100 g"), "<ingredient id=\"s\" food=\"sugar-white\" name=\"caster sugar\">100 g</ingredient>",
       "wording: sugar now called caster sugar"},
      {sugar("100 g"), "<ingredient id=\"sug\" food=\"sugar-white\" name=\"sugar\">100 g</ingredient>", ""},
      {sugar("100 g"), sugar("100 g", " prep=\"sifted\""), "other: sugar sifted, was not stated"},
      {sugar("100 g", " prep=\"sifted\""), sugar("100 g"), "other: sugar sifted no longer stated"},
      {sugar("10 g") + flour, flour + sugar("10 g"), "wording: ingredients listed in another order"},
  });
}

TEST_CASE("ids may change as long as they tie the same things together", "[compare]") {
  const std::string was = sugar("100 g") + step("Melt the <use of=\"s\">sugar</use>.", "do=\"melt\" makes=\"caramel\"") +
                          step("Cool the <use of=\"caramel\">caramel</use>.", "do=\"cool\"");
  const std::string is = "<ingredient id=\"sugar\" food=\"sugar-white\" name=\"sugar\">100 g</ingredient>" +
                         step("Melt the <use of=\"sugar\">sugar</use>.", "do=\"melt\" makes=\"blond\"") +
                         step("Cool the <use of=\"blond\">caramel</use>.", "do=\"cool\"");
  check_rows({{was, is, ""}});
}

TEST_CASE("steps that come, go or move", "[compare]") {
  const std::string mix = step("Mix the dough by hand for a while.", "do=\"mix\"");
  const std::string rest = step("Leave it alone under a cloth.", "do=\"rest\"");
  const std::string glaze = step("Brush the top all over with the warm apricot glaze.", "do=\"glaze\"");
  check_rows({
      {mix + glaze, mix + rest + glaze, "order: new step, rest between mix and glaze: \"Leave it alone under a cloth.\""},
      {mix + rest + glaze, mix + glaze, "order: step gone, rest between mix and glaze: \"Leave it alone under a cloth.\""},
      {mix + glaze + rest, mix + rest + glaze, "order: rest now before the glaze"},
      {mix + rest + glaze, mix + glaze + rest, "order: rest now after the glaze"},
      {mix, step("Mix the dough by machine for a while.", "do=\"mix\""),
       "wording: mix reads differently: \"machine\", was \"hand\""},
      {mix, step("\n   Mix  the dough <!-- well -->by hand\n for a while. ", "do=\"mix\""), ""},
  });
}

TEST_CASE("what goes in first, and at which step", "[compare]") {
  const std::string list = sugar("10 g") + "<ingredient id=\"b\" food=\"butter-unsalted\" name=\"butter\">10 g</ingredient>";
  const std::string s = "<use of=\"s\">sugar</use>";
  const std::string b = "<use of=\"b\">butter</use>";
  check_rows({
      {list + step("Add the " + s + ", then the " + b + ".", "do=\"add\""),
       list + step("Add the " + b + ", then the " + s + ".", "do=\"add\""),
       "order: at add, sugar now goes in after the butter"},
      {list + step("Melt the " + b + " and the " + s + " slowly.", "do=\"melt\"") + step("Fold in the nuts.", "do=\"fold\""),
       list + step("Melt the " + b + " slowly.", "do=\"melt\"") + step("Fold in the nuts and the " + s + ".", "do=\"fold\""),
       "order: sugar now goes in at fold, was at melt\n"
       "wording: melt reads differently: \"and the sugar\" is gone\n"
       "wording: fold reads differently: \"nuts and the sugar.\", was \"nuts.\""},
      {list + step("Work in the " + b + " take.", "do=\"add\""),
       list + step("Work in the <use of=\"b\" take=\"1/2\">butter</use> take.", "do=\"add\""),
       "figures: butter at add 1/2, was not stated"},
  });
}

TEST_CASE("a gate or control point that lets more pass is loosened, and stands first", "[compare]") {
  const auto gate = [](const std::string& inside) {
    return step("Fold.<gate>At <food-temp>" + inside + "</food-temp>.</gate>", "do=\"fold\" makes=\"mousse\"");
  };
  const auto control = [](const std::string& inside, const std::string& more = "hazard=\"growth\"") {
    return step("Chill.<control " + more + ">Core <food-temp place=\"core\">" + inside + "</food-temp>.</control>",
                "do=\"chill\"");
  };
  check_rows({
      {gate("24–28 °C"), gate("24–30 °C"), "figures! gate at fold loosened: mousse wider, 24–30 °C, was 24–28 °C"},
      {gate("24–28 °C"), gate("25–27 °C"), "figures: gate at fold tightened: mousse narrower, 25–27 °C, was 24–28 °C"},
      {gate("24–28 °C"), gate("26–30 °C"), "figures: gate at fold: mousse 2 °C hotter, 26–30 °C, was 24–28 °C"},
      {control("at most 5 °C"), control("at most 8 °C"),
       "safety! control point at chill loosened: core 3 °C hotter, at most 8 °C, was at most 5 °C"},
      {control("at most 5 °C"), control("at most 3 °C"),
       "safety: control point at chill tightened: core 2 °C cooler, at most 3 °C, was at most 5 °C"},
      {control("75 °C"), control("70 °C"),
       "safety! control point at chill loosened: core 5 °C cooler, 70 °C, was 75 °C"},
      {control("75 °C"), control("at least 75 °C"),
       "safety: control point at chill: core at least 75 °C, was 75 °C"},
      {control("75 °C"), step("Chill.", "do=\"chill\""),
       "safety! no longer: control point at chill: \"Core 75 °C.\""},
      {step("Chill.", "do=\"chill\""), control("75 °C"), "safety: new control point at chill: \"Core 75 °C.\""},
      {control("75 °C", "hazard=\"growth\" often=\"each batch\""), control("75 °C"),
       "safety! control point at chill checked each batch no longer stated"},
      {control("75 °C", "hazard=\"growth\" often=\"each batch\""), control("75 °C", "hazard=\"growth\" often=\"each day\""),
       "safety: control point at chill checked each day, was each batch"},
      {"<keep where=\"fridge\" at=\"at most 5 °C\" for=\"2 days\">Covered.</keep>",
       "<keep where=\"fridge\" at=\"at most 5 °C\" for=\"3 days\">Covered.</keep>",
       "safety! keeping loosened: 1 day longer, 3 days, was 2 days"},
      {step("Pour.", "do=\"pour\" at-most=\"10 min\""), step("Pour.", "do=\"pour\" at-most=\"15 min\""),
       "figures! longest wait before pour loosened: 5 min longer, 15 min, was 10 min"},
  });
}

TEST_CASE("allergens come first, stated and brought in", "[compare]") {
  const auto root = [](const std::string& inside, const std::string& ingredients = "") {
    return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\"><title>T</title>" + inside +
           "<component id=\"c\" title=\"C\">" + ingredients + "</component></fiche>";
  };
  const std::string egg = "<allergens contains=\"egg\"/>";
  CHECK(lines(changes(root(egg), root("<allergens contains=\"egg nuts\"/>"))) == "safety: allergen added: nuts");
  CHECK(lines(changes(root("<allergens contains=\"egg nuts\"/>"), root(egg))) == "safety! allergen no longer stated: nuts");
  CHECK(lines(changes(root("<allergens contains=\"egg nuts\"/>"), root("<allergens contains=\"egg\" may-contain=\"nuts\"/>"))) ==
        "safety! allergen nuts: may contain, was contains");
  CHECK(lines(changes(root(egg), root(""))) == "safety! allergen no longer stated: egg");
  CHECK(lines(changes(root(egg), root(egg, "<ingredient food=\"milk-whole\" name=\"milk\">1 l</ingredient>"))) ==
        "safety: brought in by milk: milk, which the fiche does not state\nfigures: new ingredient: 1 l milk");
}

TEST_CASE("state, trials, yield and moulds", "[compare]") {
  const auto root = [](const std::string& attributes, const std::string& inside = "") {
    return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\" " + attributes + "><title>T</title>" +
           inside + "<component id=\"c\" title=\"C\"/></fiche>";
  };
  const std::string mould = "<mould shape=\"frame\" length=\"36 cm\" width=\"26 cm\"/></yield>";
  const std::vector<Row> rows{
      {root("state=\"tested\""), root("state=\"released\""), "other: state released, was tested"},
      {root("", "<yield portions=\"24\" each=\"100 g\"/>"), root("", "<yield portions=\"24\" each=\"95 g\"/>"),
       "figures: portion 95 g, was 100 g"},
      {root("", "<yield portions=\"24\">" + mould), root("", "<yield portions=\"20\">" + mould),
       "figures: portions 20, was 24"},
      {root("", "<yield portions=\"24\">" + mould),
       root("", "<yield portions=\"24\"><mould shape=\"frame\" length=\"40 cm\" width=\"26 cm\"/></yield>"),
       "figures: frame length 40 cm, was 36 cm"},
      {root(""), root("", "<trial date=\"2026-05-20\" by=\"sous\" verdict=\"passed-with-changes\"/>"),
       "other: trial added: 2026-05-20, passed with changes"},
      {root("", "<caution>Hot.</caution>"), root(""), "safety: no longer: caution: \"Hot.\""},
      {root("", "<equipment kind=\"mixer\">bench mixer</equipment>"), root(""),
       "other: no longer: bench mixer: \"bench mixer\""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.was, row.is);
    CHECK(lines(changes(row.was, row.is)) == row.expected);
  }
}

TEST_CASE("a batch that grew as a whole is told once, then what does not follow", "[compare]") {
  const auto list = [](const std::string& a, const std::string& b, const std::string& c, const std::string& d) {
    return "<ingredient food=\"flour-wheat-white\" name=\"flour\">" + a +
           "</ingredient><ingredient food=\"butter-unsalted\" name=\"butter\">" + b +
           "</ingredient><ingredient food=\"egg-whole\" name=\"eggs\">" + c + "</ingredient>" + sugar(d);
  };
  check_rows({
      {list("500 g", "250 g", "4", "100 g"), list("1 kg", "500 g", "8", "200 g"), "figures: the whole batch × 2"},
      {list("500 g", "250 g", "4", "100 g"), list("1 kg", "500 g", "8", "216 g"),
       "figures: the whole batch × 2\nfigures: 8 % more sugar than × 2 makes it: 216 g, was 100 g; 10 % of it by weight, was 9.5 %"},
      {list("500 g", "250 g", "4", "100 g"), list("1 kg", "500 g", "8", "100 g"),
       "figures: the whole batch × 2\nfigures: sugar stays at 100 g, not × 2; 5 % of it by weight, was 9.5 %"},
      {list("500 g", "250 g", "5", "100 g"), list("750 g", "375 g", "8", "150 g"), "figures: the whole batch × 1.5"},
      {list("500 g", "250 g", "4", "100 g"), list("500 g", "250 g", "4", "200 g"),
       "figures: twice as much sugar: 200 g, was 100 g"},
  });
}

TEST_CASE("a component that moved, was renamed or grew alone", "[compare]") {
  const auto fiche = [](const std::string& inside) {
    return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\"><title>T</title>" + inside + "</fiche>";
  };
  const auto sponge = [](const std::string& title, const std::string& eggs, const std::string& flour) {
    return "<component id=\"sponge\" title=\"" + title + "\"><ingredient food=\"egg-whole\" name=\"eggs\">" + eggs +
           "</ingredient><ingredient food=\"flour-wheat-white\" name=\"flour\">" + flour +
           "</ingredient><step do=\"whisk\">Whisk the eggs to the ribbon and fold in the flour.</step></component>";
  };
  const std::string cream =
      "<component id=\"cream\" title=\"Cream\"><ingredient food=\"cream-35\" name=\"cream\">500 g</ingredient>"
      "<ingredient food=\"sugar-white\" name=\"sugar\">50 g</ingredient><step do=\"whip\">Whip all to soft peaks.</step></component>";
  const std::string was = fiche(sponge("Sponge", "300 g", "150 g") + cream);
  CHECK(lines(changes(was, fiche(cream + sponge("Sponge", "300 g", "150 g")))) == "order: cream now before the sponge");
  CHECK(lines(changes(was, fiche(sponge("Light sponge", "300 g", "150 g") + cream))) ==
        "wording: sponge now called Light sponge");
  CHECK(lines(changes(was, fiche(sponge("Sponge", "450 g", "225 g") + cream))) == "figures: the whole sponge × 1.5");
  CHECK(lines(changes(was, fiche(sponge("Sponge", "324 g", "150 g") + cream))) ==
        "figures: 8 % more eggs in the sponge: 324 g, was 300 g");
  CHECK(lines(changes(was, fiche(cream))) == "safety: no longer brought in by eggs: egg\n"
        "safety: no longer brought in by flour: gluten, wheat\n"
        "figures: no longer: component sponge (2 ingredients, 1 step)");
}

TEST_CASE("a fiche that was converted is compared by its author's figures", "[compare]") {
  const std::string own = fiche_around(sugar("250 g") + step("Bake at <oven-temp mode=\"fan\">180 °C</oven-temp>."),
                                       "units=\"metric\"");
  const std::string us = converted(own, wish(System::us)).xml;
  REQUIRE(us != own);
  CHECK(lines(changes(own, us)) == "wording: converted to us units; compared by the author's own figures");
}
