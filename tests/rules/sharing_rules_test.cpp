#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_text;
using tests::Checked;

namespace {

constexpr const char* trial = R"(<trial date="2026-03-14" batch="12 portions" verdict="passed"/>)";

/// A fiche that others use: one component with this in it, and all that is asked of the whole.
Checked shared(const std::string& part, const std::string& state = "tested", const std::string& lang = "en",
               const std::string& more = trial, const fiche::Kitchen& kitchen = {}) {
  return check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"example\" state=\"" + state + "\" lang=\"" + lang +
                        "\" units=\"metric\"><title>T</title>\n<component id=\"part\" title=\"Part\">\n" + part +
                        "\n<keep where=\"fridge\" for=\"2 days\"/></component>"
                        "<allergens>None.</allergens>" + more + "</fiche>",
                    kitchen);
}

}  // namespace

TEST_CASE("a draft is not asked what only others would miss") {
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic != "sharing" && rule->topic != "teaching") continue;
    std::string text = rules::example_document(rule->bad);
    for (const char* state : {" state=\"tested\"", " state=\"released\""}) {
      if (const std::size_t at = text.find(state); at != std::string::npos) text.erase(at, std::string(state).size());
    }
    CAPTURE(rule->id);
    CHECK(check_text(text).lines() == "");
  }
}

TEST_CASE("a tested fiche is told as advice, a released one as a warning or more") {
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic != "sharing" && rule->topic != "teaching") continue;
    CAPTURE(rule->id);
    for (const char* state : {"tested", "released"}) {
      std::string text = rules::example_document(rule->bad);
      const std::size_t at = text.find(" state=\"") + 8;
      text.replace(at, text.find('"', at) - at, state);
      const Checked checked = check_text(text);
      CAPTURE(state);
      REQUIRE(checked.rules() == rule->id);
      if (std::string(state) == "tested") {
        CHECK(checked.findings[0].severity == base::Severity::advice);
      } else {
        CHECK(checked.findings[0].severity >= base::Severity::warning);
      }
      const fiche::Kitchen own = tests::kitchen_of("<rule id=\"" + std::string(rule->id) + "\" severity=\"error\"/>");
      CHECK(check_text(text, own).findings[0].severity == base::Severity::error);
      const fiche::Kitchen mild = tests::kitchen_of("<rule id=\"" + std::string(rule->id) + "\" severity=\"advice\"/>");
      CHECK(check_text(text, mild).findings[0].severity == base::Severity::advice);
    }
  }
}

TEST_CASE("a control point without its limit is an error on a released fiche, unless the kitchen says otherwise") {
  const std::string part =
      R"(<step do="chill">Chill.<control check="probe" who="sous" action="chill on"> </control></step>)";
  CHECK(shared(part).findings.at(0).severity == base::Severity::advice);
  CHECK(shared(part, "released").findings.at(0).severity == base::Severity::error);
  const fiche::Kitchen mild = tests::kitchen_of(R"(<rule id="control-point-incomplete" severity="warning"/>)");
  CHECK(shared(part, "released", "en", trial, mild).findings.at(0).severity == base::Severity::warning);
}

TEST_CASE("one finding names all that a control point lacks") {
  const auto said = [](const std::string& control) {
    const Checked checked = shared("<step do=\"chill\">Chill." + control + "</step>");
    return checked.findings.empty() ? "" : checked.findings[0].message;
  };
  CHECK(said("<control/>") == "a control point without a limit, a check, someone who checks or a corrective action");
  CHECK(said(R"(<control check="look">No bone left.</control>)") ==
        "a control point without someone who checks or a corrective action");
  CHECK(said(R"(<control check="look" who="sous">No bone left.</control>)") ==
        "a control point without a corrective action");
  CHECK(said(R"(<control check="look" who="sous" action="  ">No bone left.</control>)") ==
        "a control point without a corrective action");
  CHECK(said(R"(<control check="look" who="sous" action="pass it again">No bone left.</control>)") == "");
}

TEST_CASE("what cooking with heat must say depends on the word") {
  struct Row {
    const char* step;
    const char* rules;
  };
  const Row row = GENERATE(values<Row>({
      // nothing but a time: enough where boiling says how hot, not where heat is open
      {R"(<step do="cook" on="hob">Cook for <time>8 to 10 min</time>.</step>)", "heat-without-temperature-or-cue"},
      {R"(<step do="simmer" on="hob">Simmer for <time>20 min</time>.</step>)", ""},
      {R"(<step do="simmer" on="hob">Simmer.</step>)", "heat-without-temperature-or-cue"},
      {R"(<step do="boil" on="hob">Boil the syrup.</step>)", ""},
      {R"(<step do="melt" on="hob">Melt it.</step>)", ""},
      {R"(<step do="reduce" on="hob" reduce-by="3/4">Reduce by three quarters.</step>)", ""},
      {R"(<step do="reduce" on="hob">Reduce.</step>)", "heat-without-temperature-or-cue"},
      // a figure, a heat in words, a setting, a cue, a picture
      {R"(<step do="cook" on="hob">Cook to <food-temp>83 °C</food-temp>.</step>)", ""},
      {R"(<step do="cook" on="hob">Cook over low heat for <time>8 min</time>.</step>)", ""},
      {R"(<step do="cook" on="hob">Cook in boiling water for <time>8 min</time>.</step>)", ""},
      {R"(<step do="cook" on="hob" setting="medium">Cook for <time>8 min</time>.</step>)", ""},
      {R"(<step do="cook" on="hob">Cook <until>until it coats the spoon</until>.</step>)", ""},
      {R"(<step do="cook" on="hob">Cook.<done>It coats the spoon.</done></step>)", ""},
      {R"(<step do="cook" on="hob">Cook.<why>The flour must swell at <food-temp>80 °C</food-temp>.</why></step>)",
       "heat-without-temperature-or-cue"},
      // the same in words without marks
      {R"(<step do="warm" on="hob">Warm the syrup gently.</step>)", ""},
      {R"(<step do="reduce" on="hob">Reduce by half.</step>)", ""},
      {R"(<step do="cook" on="hob">Cook until it coats the spoon.</step>)", ""},
      {R"(<step do="roast" on="oven">Roast at 160 fan for <time>20 to 30 min</time>.</step>)", ""},
      {R"(<step do="roast" on="oven">Roast 160 of them for <time>20 to 30 min</time>.</step>)",
       "heat-without-temperature-or-cue"},
      {R"(<step do="fry" on="hob">Fry for <time>3 min</time> a side.</step>)", ""},
      {R"(<step do="deep-fry" on="hob">Fry for <time>3 to 4 min</time>.</step>)", "heat-without-temperature-or-cue"},
      // an oven's dial is not set by a cue
      {R"(<step do="roast" on="oven">Roast <until>until brown</until>.</step>)", "heat-without-temperature-or-cue"},
      {R"(<step do="roast" on="hob">Roast the spices <until>until they smell</until>.</step>)", ""},
      {R"(<step do="preheat" on="oven">Heat the oven to <oven-temp mode="fan">160 °C</oven-temp>.</step>
          <step do="roast" on="oven">Roast <until>until brown</until>.</step>)", ""},
      {R"(<step do="braise" on="oven">Braise for <time>2 to 3 h</time>.</step>)", "heat-without-temperature-or-cue"},
      {R"(<step do="roast" on="oven">Roast at <oven-temp mode="fan">160 °C</oven-temp>.</step>)", "heat-without-an-end"},
      {R"(<step do="roast" on="oven">Roast at <oven-temp mode="fan">220 °C</oven-temp>.</step>
          <step do="roast" on="oven">Turn down to <oven-temp mode="fan">150 °C</oven-temp>, core <food-temp
          place="core">52 °C</food-temp>.</step>)", ""},
      // oil set in the step before
      {R"(<step do="heat">Heat the oil to <medium-temp of="frying oil">175 °C</medium-temp>.</step>
          <step do="deep-fry">Fry for <time>3 to 4 min</time>, eight at a time.</step>)", ""},
      // a word without do, where it opens the sentence
      {R"(<step>Poach for <time>10 to 12 min</time>.</step>)", "heat-without-temperature-or-cue"},
      {R"(<step>Leave the poach pan out.</step>)", ""},
  }));
  CAPTURE(row.step);
  CHECK(shared(row.step).rules() == row.rules);
}

TEST_CASE("heat is asked for in the language of the fiche") {
  const auto said = [](const char* lang, const char* words) {
    return shared("<step>" + std::string(words) + "</step>", "tested", lang).rules();
  };
  CHECK(said("fr", "Cuire la crème.") == "heat-without-temperature-or-cue");
  CHECK(said("fr", "Cuire la crème à feu doux.") == "");
  CHECK(said("fr", "Mélanger avant de cuire.") == "");
  CHECK(said("de", "Die Creme unter Rühren erhitzen.") == "heat-without-temperature-or-cue");
  CHECK(said("de", "Die Creme bei schwacher Hitze erhitzen.") == "");
  CHECK(said("de", "Vor dem Erhitzen rühren.") == "");
  CHECK(said("es", "Cocer la crema.") == "heat-without-temperature-or-cue");
  CHECK(said("es", "Cocer la crema a fuego lento.") == "");
}

TEST_CASE("a flat time is doubted only where thickness decides and nothing else says when to stop") {
  const auto said = [](const std::string& inside, const char* action = "steam") {
    return shared("<step do=\"" + std::string(action) + "\">Do it " + inside + ".</step>").rules();
  };
  CHECK(said("for <time>12 min</time>") == "time-without-range");
  CHECK(said("for <time>10 to 14 min</time>") == "");
  CHECK(said("for <time>about 12 min</time>") == "");
  CHECK(said("for <time>at least 12 min</time>") == "");
  CHECK(said("for <time>12 min</time>, <until>until firm</until>") == "");
  CHECK(said("for <time>12 min</time> to <food-temp place=\"core\">70 °C</food-temp>") == "");
  CHECK(said("in pieces <length>3 cm</length> thick for <time>12 min</time>") == "");
  CHECK(said("for <time depth=\"at most 3 cm\">12 min</time>") == "");
  CHECK(said("for <time>12 min</time>", "boil") == "");
  CHECK(said("for <time>12 min</time>", "simmer") == "");
}

TEST_CASE("what is baked has a mould, a depth, a piece or a size in words") {
  const std::string bake = R"(<step do="bake">Bake at <oven-temp mode="fan">180 °C</oven-temp> <until>until brown</until>.)";
  const auto said = [&](const std::string& before, const std::string& inside = "") {
    return shared(before + bake + inside + "</step>").rules();
  };
  CHECK(said("") == "baking-without-mould-or-depth");
  CHECK(said(R"(<yield><mould shape="loaf" volume="1 l"/></yield>)") == "");
  CHECK(said(R"(<yield words="two 26 cm rings"/>)") == "");
  CHECK(said(R"(<yield words="two rings"/>)") == "baking-without-mould-or-depth");
  CHECK(said(R"(<yield pieces="12"/>)") == "");
  CHECK(said(R"(<step do="shape">Roll into pieces of <amount>40 g</amount>.</step>)") == "");
  CHECK(said(R"(<step do="roll">Roll out 3 mm thick.</step>)") == "");
  CHECK(said(R"(<step do="roll">Roll out <length>3 mm</length> thick.</step>)") == "");
  CHECK(said(R"(<ingredient food="apple" pieces="8">1.2 kg</ingredient>)") == "");
}

TEST_CASE("a fiche that serves the dish need not say how it keeps") {
  const auto said = [](const std::string& step) {
    return check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"x\" state=\"tested\" lang=\"en\" units=\"metric\"><title>T</title>"
                      "<component id=\"a\" title=\"A\">" + step + "</component><allergens>None.</allergens>" + trial +
                      "</fiche>")
        .rules();
  };
  CHECK(said("<step do=\"mix\">Stir for <time>2 minutes</time>.</step>") == "nothing-about-keeping");
  CHECK(said("<step do=\"mix serve\">Stir and plate.</step>") == "");
  CHECK(said("<step do=\"mix\">Stir, and send it out at once.</step>") == "");
  CHECK(said("<step do=\"mix\">Tip it in at once.</step><step do=\"mix\">Stir.</step>") == "nothing-about-keeping");
}

TEST_CASE("a trial counts when it says that it passed") {
  const auto said = [](const std::string& trials, const char* state = "tested") {
    const Checked checked = shared("<step do=\"mix\">Mix.</step>", state, "en", trials);
    return checked.findings.empty() ? "" : checked.findings[0].message;
  };
  CHECK(said("") == "tested, and no trial is on record");
  CHECK(said("", "released") == "released, and no trial is on record");
  CHECK(said(R"(<trial date="2026-03-14"/>)") == "tested, and no trial says that it passed");
  CHECK(said(R"(<trial date="2026-03-14" verdict="failed"/>)") == "tested, and every trial on record failed");
  CHECK(said(R"(<trial date="2026-03-14" verdict="failed"/><trial date="2026-03-15" verdict="passed"/>)") == "");
  CHECK(said(R"(<trial date="2026-03-14" verdict="passed-with-changes"/>)", "released") == "");
}

TEST_CASE("a batch is held against the largest one tried") {
  struct Row {
    const char* root;
    const char* yield;
    const char* trials;
    const char* said;
  };
  const Row row = GENERATE(values<Row>({
      {"", R"(<yield portions="140"/>)", "12 portions", "written for 140 portions, and the largest batch tried was 12 portions"},
      {"", R"(<yield portions="36"/>)", "24 portions", ""},
      {"", R"(<yield portions="37"/>)", "24 portions", "written for 37 portions, and the largest batch tried was 24 portions"},
      {"", R"(<yield portions="12"/>)", "24 portions", ""},
      {"", R"(<yield mass="5 kg"/>)", "1 kg", "written for 5 kg, and the largest batch tried was 1 kg"},
      {"", R"(<yield mass="5 kg"/>)", "4000 g, in two tubs", ""},
      {"", R"(<yield volume="10 l"/>)", "2 l", "written for 10 l, and the largest batch tried was 2 l"},
      {"", R"(<yield pieces="60"/>)", "20 pieces of 45 g", "written for 60 pieces, and the largest batch tried was 20 pieces"},
      {"", R"(<yield portions="40" mass="4 kg"/>)", "4 kg", ""},
      {"", R"(<yield portions="40"/>)", "one frame", ""},
      {"scaled-by=\"35/3\"", R"(<yield portions="140"/>)", "one frame",
       "12 times the author's batch, and no trial says that it was made at this size"},
      {"scaled-by=\"35/3\"", R"(<yield portions="140"/>)", "140 portions", ""},
      {"scaled-by=\"1.2\"", R"(<yield portions="14"/>)", "one frame", ""},
  }));
  CAPTURE(row.root, row.yield, row.trials);
  const Checked checked = check_text(
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"x\" state=\"released\" lang=\"en\" units=\"metric\" " + std::string(row.root) +
      "><title>T</title>" + row.yield + "<component id=\"a\" title=\"A\"><step do=\"serve\">Serve.</step></component>"
      "<allergens>None.</allergens><trial date=\"2026-03-14\" verdict=\"passed\" batch=\"" + row.trials +
      "\"/><trial date=\"2026-03-15\" verdict=\"failed\" batch=\"1000 portions\"/></fiche>");
  CHECK((checked.findings.empty() ? "" : checked.findings[0].message) == row.said);
}

TEST_CASE("the kitchen says how far beyond its trials a batch may go") {
  const auto said = [](const char* value) {
    const fiche::Kitchen kitchen = tests::kitchen_of("<rule id=\"batch-beyond-trials\" value=\"" + std::string(value) + "\"/>");
    return check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="x" state="released" lang="en" units="metric"><title>T</title>
<yield portions="40"/><component id="a" title="A"><step do="serve">Serve.</step></component>
<allergens>None.</allergens><trial date="2026-03-14" verdict="passed" batch="12 portions"/></fiche>)", kitchen).rules();
  };
  CHECK(said("2") == "batch-beyond-trials");
  CHECK(said("4") == "");
  CHECK(said("lots") == "batch-beyond-trials");
}
