#include "core/base/ratio.h"
#include "tests/change/scaling.h"
#include "tests/shared_files.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

struct Row {
  const char* own;
  const char* factor;
  const char* becomes;
};

void check_rows(std::initializer_list<Row> rows, const std::string& root = "units=\"us\"",
                const fiche::Kitchen& kitchen = {}) {
  for (const Row& row : rows) {
    const Result made = scaled(fiche_around(row.own, root), by_factor(row.factor), kitchen);
    CAPTURE(row.own, row.factor);
    CHECK(inside(made) == row.becomes);
  }
}

std::string attribute(const std::string& xml, const std::string& name) {
  const std::size_t at = xml.find(" " + name + "=\"");
  if (at == std::string::npos) return "";
  const std::size_t begin = at + name.size() + 3;
  return xml.substr(begin, xml.find('"', begin) - begin);
}

/// Without the line breaks and indents between tags and text.
std::string on_one_line(const std::string& xml) {
  std::string out;
  const std::string text = with_spaces(xml);
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\n') {
      out += text[i];
      continue;
    }
    while (i + 1 < text.size() && text[i + 1] == ' ') ++i;
  }
  return out;
}

}  // namespace

TEST_CASE("a factor of one gives the bytes back") {
  for (const std::string name : {"desserts/buckwheat-pear-frame", "base/sweet-pastry"}) {
    const std::string own = project_file("tests/kitchen/" + name + ".fiche.xml");
    const Result made = scaled(own, by_factor("1"));
    CHECK(made.xml == own);
    CHECK(made.findings.empty());
  }
}

TEST_CASE("masses and volumes are multiplied exactly and rounded to what can be measured") {
  check_rows({
      {"<ingredient food=\"milk-whole\">300 g</ingredient>", "35/6", "<ingredient food=\"milk-whole\">1.75 kg</ingredient>"},
      {"<ingredient food=\"milk-whole\">1 cup</ingredient>", "3", "<ingredient food=\"milk-whole\">3 cups</ingredient>"},
      {"<ingredient food=\"salt\">1/2 tsp</ingredient>", "2", "<ingredient food=\"salt\">1 tsp</ingredient>"},
      {"<ingredient food=\"salt\">2 tsp</ingredient>", "2", "<ingredient food=\"salt\">1 tbsp 1 tsp</ingredient>"},
      {"<ingredient food=\"butter-unsalted\">9 oz</ingredient>", "2", "<ingredient food=\"butter-unsalted\">1 lb 2 oz</ingredient>"},
      {"<ingredient food=\"carrot\">400 to 500 g</ingredient>", "2", "<ingredient food=\"carrot\">800 g–1 kg</ingredient>"},
      {"<ingredient food=\"carrot\">about 400 g</ingredient>", "1/2", "<ingredient food=\"carrot\">about 200 g</ingredient>"},
      {"<ingredient food=\"salt\">to taste</ingredient>", "3", "<ingredient food=\"salt\">to taste</ingredient>"},
  });
  check_rows({{"<ingredient food=\"sugar-white\">2 tsp</ingredient>", "3", "<ingredient food=\"sugar-white\">2 tbsp</ingredient>"}},
             "units=\"metric\"");
}

TEST_CASE("what is stated otherwise follows or stays") {
  check_rows({
      {"<ingredient food=\"egg-whole\" per=\"portion\">50 g</ingredient>", "3",
       "<ingredient food=\"egg-whole\" per=\"portion\">50 g</ingredient>"},
      {"<ingredient food=\"pear\" purchase=\"1.2 kg\">900 g</ingredient>", "2",
       "<ingredient food=\"pear\" purchase=\"2.4 kg\">1.8 kg</ingredient>"},
      {"<ingredient id=\"a\" food=\"pear\">900 g</ingredient><ingredient food=\"lemon-juice\" as-much-as=\"a\" by=\"mass\" "
       "times=\"1/30\"/>", "2",
       "<ingredient id=\"a\" food=\"pear\">1.8 kg</ingredient><ingredient food=\"lemon-juice\" as-much-as=\"a\" by=\"mass\" "
       "times=\"1/30\"/>"},
      {"<ingredient id=\"a\" food=\"orange\">12</ingredient><ingredient food=\"water\" for-each=\"a\" each=\"3\">1 l</ingredient>",
       "2",
       "<ingredient id=\"a\" food=\"orange\">24</ingredient><ingredient food=\"water\" for-each=\"a\" each=\"3\">1 l</ingredient>"},
      {"<ingredient id=\"a\" food=\"water\" tops-up=\"b\" to=\"1 l\"/>", "3",
       "<ingredient id=\"a\" food=\"water\" tops-up=\"b\" to=\"3 l\"/>"},
      {"<ingredient food=\"vanilla-bean\">1</ingredient>", "5/2", "<ingredient food=\"vanilla-bean\">2 ½</ingredient>"},
      {"<ingredient food=\"bay-leaf\">1</ingredient>", "1/3", "<ingredient food=\"bay-leaf\">1</ingredient>"},
  });
}

TEST_CASE("in a sentence the amounts follow, and temperatures, times and lengths stay") {
  check_rows({
      {"<step>Heat <amount>200 g</amount> to <food-temp>80 °C</food-temp> for <time>5 min</time>, <length>1 cm</length> "
       "deep.</step>", "2",
       "<step>Heat <amount>400 g</amount> to <food-temp>80 °C</food-temp> for <time>5 min</time>, <length>1 cm</length> "
       "deep.</step>"},
      {"<step>Pour <amount>200 g</amount> into each ring. Keep <amount>100 g</amount>.</step>", "2",
       "<step>Pour <amount>200 g</amount> into each ring. Keep <amount>200 g</amount>.</step>"},
      {"<step do=\"serve\">Serve <amount>1 cup</amount>.</step>", "2", "<step do=\"serve\">Serve <amount>1 cup</amount>.</step>"},
      {"<step><use of=\"a\" take=\"125 g\">125 g of the sugar</use> and <use of=\"a\" take=\"1/2\">half</use>.</step>", "2",
       "<step><use of=\"a\" take=\"250 g\">250 g of the sugar</use> and <use of=\"a\" take=\"1/2\">half</use>.</step>"},
      {"<step>Stir.<gate>At most <amount>2 kg</amount> in the bowl.</gate><note>The author had <amount>1 kg</amount>.</note></step>",
       "2",
       "<step>Stir.<gate>At most <amount>2 kg</amount> in the bowl.</gate><note>The author had <amount>1 kg</amount>.</note></step>"},
      {"<step reduce-to=\"300 g\">Boil down.</step>", "2", "<step reduce-to=\"600 g\">Boil down.</step>"},
  });
}

TEST_CASE("portions, factor, yield and what is on hand lead to the same batch") {
  const std::string own = with_yield("<yield portions=\"24\" each=\"100 g\" mass=\"2.4 kg\"/>",
                                     "<ingredient id=\"milk\" food=\"milk-whole\">600 g</ingredient>");
  const std::vector<ScaleWish> wishes = {{ScaleWish::By::portions, "60", ""},
                                         {ScaleWish::By::factor, "5/2", ""},
                                         {ScaleWish::By::factor, "2.5", ""},
                                         {ScaleWish::By::yield, "6 kg", ""},
                                         {ScaleWish::By::yield, "60", ""},
                                         {ScaleWish::By::ingredient, "1.5 kg", "milk"}};
  for (const ScaleWish& wish : wishes) {
    CAPTURE(wish.text);
    const std::string made = with_spaces(scaled(own, wish).xml);
    CHECK(attribute(made, "scaled-by") == "5/2");
    CHECK(attribute(made, "portions") == "60");
    CHECK(attribute(made, "mass") == "6 kg");
    CHECK(made.find(">1.5 kg<") != std::string::npos);
  }
}

TEST_CASE("a wish that cannot be understood changes nothing and says why, of no place in the fiche") {
  const std::string own = with_yield("<yield portions=\"24\"/>", "<ingredient id=\"milk\" food=\"milk-whole\">600 g</ingredient>");
  const std::vector<std::pair<ScaleWish, std::string>> rows = {
      {{ScaleWish::By::portions, "many", ""}, "\"many\" is no number above zero"},
      {{ScaleWish::By::factor, "0", ""}, "\"0\" is no number above zero"},
      {{ScaleWish::By::ingredient, "1 kg", "mlik"}, "there is no ingredient \"mlik\""},
      {{ScaleWish::By::mould, "4 buckets", ""}, "\"4 buckets\" is no mould of the kitchen and no shape with sides"},
      {{ScaleWish::By::yield, "20 cm", ""}, "\"20 cm\" is no mass, volume or number of pieces"},
  };
  for (const auto& [wish, message] : rows) {
    CAPTURE(wish.text);
    const Result made = scaled(own, wish);
    CHECK(made.xml == own);
    CHECK(made.findings.empty());
    REQUIRE(made.misread);
    CHECK(made.misread->message == message);
    CHECK_FALSE(made.misread->advice.empty());
  }
}

TEST_CASE("a wish that cannot be met changes nothing and says why") {
  const std::string own = with_yield("<yield portions=\"24\"/>", "<ingredient id=\"milk\" food=\"milk-whole\">600 g</ingredient>");
  const std::vector<std::pair<ScaleWish, std::string>> rows = {
      {{ScaleWish::By::yield, "3 l", ""}, "nothing was scaled: the fiche does not say what it makes by volume"},
      {{ScaleWish::By::mould, "ring 26 cm", ""}, "nothing was scaled: the yield names no mould whose size is known"},
      {{ScaleWish::By::factor, "1000000", ""}, "nothing was scaled: the wish is more than 10,000 times the fiche, or less than a 10,000th"},
  };
  for (const auto& [wish, message] : rows) {
    CAPTURE(wish.text);
    const Result made = scaled(own, wish);
    CHECK(made.xml == own);
    REQUIRE(made.findings.size() == 1);
    CHECK(made.findings.front().severity == base::Severity::error);
    CHECK(made.findings.front().message == message);
  }
}

TEST_CASE("whole eggs: the weight stays exact and the rest is named") {
  const std::string own = fiche_around("<ingredient food=\"egg-whole\" name=\"eggs\" pieces=\"6\">300 g</ingredient>");
  const Result made = scaled(own, by_factor("9/10"));
  CHECK(inside(made) == "<ingredient food=\"egg-whole\" name=\"eggs\" pieces=\"6\">270 g</ingredient>");
  const base::Finding* rest = made.finding("surplus");
  REQUIRE(rest != nullptr);
  CHECK(with_spaces(rest->message) == "break 6 for the 270 g of eggs that the batch takes");
  CHECK(with_spaces(rest->advice) == "keep the rest: 30 g of beaten egg");
  const Result weighed = scaled(own, by_factor("9/10"), small_kitchen(" eggs=\"grams\""));
  CHECK(weighed.finding("surplus") == nullptr);
  CHECK(inside(weighed) == inside(made));
  // A count alone: whole eggs, or grams where the kitchen weighs them or one egg would be far too much.
  check_rows({{"<ingredient food=\"egg-whole\">12</ingredient>", "3/2", "<ingredient food=\"egg-whole\">18</ingredient>"},
              {"<ingredient food=\"egg-whole\">12</ingredient>", "29/40", "<ingredient food=\"egg-whole\">9</ingredient>"},
              {"<ingredient food=\"egg-whole\">1</ingredient>", "1/2", "<ingredient food=\"egg-whole\">25 g</ingredient>"}});
  check_rows({{"<ingredient food=\"egg-whole\">12</ingredient>", "29/40", "<ingredient food=\"egg-whole\">435 g</ingredient>"}}, "",
             small_kitchen(" eggs=\"grams\""));
}

TEST_CASE("packs are counted exactly and the rest of the last one is kept") {
  const std::string own = fiche_around("<ingredient food=\"tomato-canned\" packs=\"2\" pack=\"2.5 kg can\">5 kg</ingredient>");
  const Result made = scaled(own, by_factor("3/4"));
  CHECK(inside(made) == "<ingredient food=\"tomato-canned\" packs=\"1 ½\" pack=\"2.5 kg can\">3.75 kg</ingredient>");
  REQUIRE(made.finding("surplus") != nullptr);
  CHECK(with_spaces(made.finding("surplus")->message) == "open 2 × 2.5 kg can for 1 ½ of it");
  CHECK(with_spaces(made.finding("surplus")->advice) == "keep the rest: 1.25 kg");
}

TEST_CASE("more of the same moulds keep depth and time, and nothing is said of them") {
  const std::string own = with_yield(
      "<yield portions=\"8\"><mould shape=\"ring\" count=\"1\" diameter=\"26 cm\" height=\"3 cm\" fill=\"2 cm\"/></yield>",
      "<ingredient food=\"milk-whole\">300 g</ingredient><step do=\"bake\">Bake <time>20 min</time>.</step>");
  const Result made = scaled(own, by_portions("24"));
  CHECK(made.findings.empty());
  CHECK(attribute(made.xml, "count") == "3");
  CHECK(attribute(made.xml, "fill") == "2 cm");
}

TEST_CASE("moulds that do not come out even stand lower, and the time is no longer sure") {
  const std::string own = with_yield(
      "<yield portions=\"8\"><mould shape=\"ring\" count=\"2\" diameter=\"26 cm\" height=\"3 cm\" fill=\"3 cm\"/></yield>",
      "<ingredient food=\"milk-whole\">300 g</ingredient><step do=\"bake\">Bake <time>20 min</time>.</step>");
  const Result made = scaled(own, by_portions("10"));
  CHECK(attribute(made.xml, "count") == "3");
  CHECK(with_spaces(attribute(made.xml, "fill")) == "2.5 cm");
  CHECK(with_spaces(message_of(made.finding("mould-changed"))) ==
        "the batch fills 2 ½ × ring: spread over 3 it stands 2.5 cm deep, not 3 cm");
  CHECK(made.finding("time-not-scaled") != nullptr);
}

TEST_CASE("another mould: flat goods by the area, deep ones by the volume, and it is said which") {
  const fiche::Kitchen kitchen = small_kitchen();
  const std::string flat = with_yield(
      "<yield portions=\"24\"><mould shape=\"frame\" count=\"1\" length=\"36 cm\" width=\"26 cm\" height=\"4 cm\" fill=\"3 "
      "cm\"/></yield>");
  const Result area = scaled(flat, {ScaleWish::By::mould, "2 frame 60 × 40 × 4 cm", ""}, kitchen);
  CHECK(attribute(area.xml, "scaled-by") == "200/39");
  CHECK(attribute(area.xml, "portions") == "123");
  CHECK(attribute(area.xml, "count") == "2");
  CHECK(with_spaces(attribute(area.xml, "length")) == "60 cm");
  CHECK(attribute(area.xml, "fill") == "3 cm");
  CHECK(with_spaces(message_of(area.finding("mould-changed"))) ==
        "a frame is flat and goes by its area, 5.13 times the author's: the depth stays 3 cm, and so do the times");
  const Result rings = scaled(flat, {ScaleWish::By::mould, "2 ring-26", ""}, kitchen);
  CHECK(attribute(rings.xml, "name") == "tart ring");
  CHECK(attribute(rings.xml, "diameter") == "26 cm");
  CHECK(attribute(rings.xml, "width").empty());

  const std::string deep = with_yield(
      "<yield portions=\"10\"><mould shape=\"loaf\" length=\"25 cm\" width=\"10 cm\" height=\"8 cm\"/></yield>");
  const Result volume = scaled(deep, {ScaleWish::By::mould, "loaf 30 × 10 × 10 cm", ""});
  CHECK(attribute(volume.xml, "scaled-by") == "3/2");
  CHECK(with_spaces(message_of(volume.finding("mould-changed"))) ==
        "a loaf is deep and goes by its volume, 1 ½ times the author's: the food stands at another depth");
}

TEST_CASE("a mixer that is too small has equal batches, none under its least") {
  const std::string own = fiche_around(
      "<ingredient id=\"f\" food=\"flour-wheat-white\" name=\"flour\">2 kg</ingredient><ingredient id=\"w\" food=\"water\" "
      "name=\"water\">1 kg</ingredient><step do=\"mix\" on=\"mixer\">Mix <use of=\"f\">flour</use> and <use "
      "of=\"w\">water</use>.</step>");
  const Result made = scaled(own, by_factor("3"), small_kitchen());
  const base::Finding* split = made.finding("batch-split");
  REQUIRE(split != nullptr);
  CHECK(with_spaces(split->message) == "about 9 kg does not go into the mixer at once: it takes 4.5 l");
  CHECK(with_spaces(split->advice) == "2 batches of 4.5 kg each: 3 kg flour, 1.5 kg water");
  const Result little = scaled(own, by_factor("1/10"), small_kitchen());
  CHECK(with_spaces(message_of(little.finding("below-least"))) == "about 300 g is less than the mixer works with: at least 0.4 l");
}

TEST_CASE("a stated batch is taken word for word, and any other from the nearest") {
  const std::string own = with_yield(
      "<yield id=\"small\" portions=\"50\"/><yield id=\"large\" portions=\"100\"/>",
      "<ingredient food=\"salt\" also=\"9 g\">1 1/2 tsp<amount batch=\"large\">1 Tbsp</amount></ingredient>", "units=\"us\"");
  const std::string large = on_one_line(scaled(own, by_portions("100")).xml);
  CHECK(large.find("<ingredient food=\"salt\">1 Tbsp<amount batch=\"small\" also=\"9 g\">1 1/2 tsp</amount><amount "
                   "batch=\"large\">1 Tbsp</amount></ingredient>") != std::string::npos);
  CHECK(attribute(large, "scaled-by") == "2");
  CHECK(large.find("<yield portions=\"100\"/>") < large.find("<yield id=\"small\""));
  const std::string most = on_one_line(scaled(own, by_portions("200")).xml);
  CHECK(most.find("<ingredient food=\"salt\">2 tbsp<amount batch=\"small\"") != std::string::npos);
  // Back at the author's batch, the fiche is the author's.
  const auto again = document_of(scaled(large, by_portions("50")).xml);
  CHECK(fiche::same_meaning(*again, *document_of(own)));
}

TEST_CASE("a converted fiche is scaled from the author's figures and converted again") {
  const std::string own = fiche_around("<ingredient food=\"milk-whole\">350 ml</ingredient>", "units=\"metric\"");
  const Result us = converted(own, wish(System::us));
  const Result made = scaled(us.xml, by_factor("2"));
  CHECK(inside(made) == "<ingredient food=\"milk-whole\" was=\"700 ml\">3 cups</ingredient>");
  const Result home = converted(made.xml, wish(System::metric));
  CHECK(inside(home) == "<ingredient food=\"milk-whole\">700 ml</ingredient>");
}
