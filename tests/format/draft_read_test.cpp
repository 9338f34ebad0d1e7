// The shape of a draft: title, sections, components, yields; language and units; bytes that are no text.

#include <catch2/catch.hpp>

#include "tests/format/draft_tools.h"

using namespace tamis;

namespace {

std::string attribute(const std::string& typed, fiche::At at) {
  const auto document = tests::fiche_of(tests::drafted(typed));
  return std::string(document->get(document->root(), at));
}

std::vector<std::string> titles(const std::string& typed) {
  const auto document = tests::fiche_of(tests::drafted(typed));
  std::vector<std::string> out;
  for (const fiche::Node node : tests::all_of(*document, fiche::El::component)) {
    const auto child_count = [&](fiche::El el) {
      std::size_t n = 0;
      for (fiche::Node c = document->first_child(node); c != fiche::none; c = document->next(c)) n += document->el(c) == el;
      return std::to_string(n);
    };
    out.push_back(std::string(document->get(node, fiche::At::title)) + " " + child_count(fiche::El::ingredient) + "+" + child_count(fiche::El::step));
  }
  return out;
}

std::string yield_of(const std::string& line, const std::string& language) {
  const auto document = tests::fiche_of(tests::drafted("Dish\n" + line + "\n\n100 g sugar\n", language, "metric"));
  const auto yields = tests::all_of(*document, fiche::El::yield);
  if (yields.size() != 1) return std::to_string(yields.size()) + " yields";
  std::string out;
  const auto put = [&](fiche::Node node) {
    for (fiche::Attr a = document->first_attribute(node); a != fiche::none; a = document->next_attribute(a)) {
      if (document->attribute_name(a) == "words") continue;
      out += (out.empty() ? "" : " ") + std::string(document->attribute_name(a)) + "=" + std::string(document->attribute_value(a));
    }
  };
  put(yields[0]);
  for (const fiche::Node mould : tests::all_of(*document, fiche::El::mould)) put(mould);
  return out;
}

}  // namespace

TEST_CASE("headings of every usual kind open a component", "[draft]") {
  using Titles = std::vector<std::string>;
  CHECK(titles("Cake\n\nFor the sponge:\n100 g flour\nMix the flour.\n\nFor the cream:\n200 g milk\nBoil the milk.\n") == Titles{"Sponge 1+1", "Cream 1+1"});
  CHECK(titles("Cake\n\nSponge\n100 g flour\nMix the flour.\n\nCream\n200 g milk\nBoil the milk.\n") == Titles{"Sponge 1+1", "Cream 1+1"});
  CHECK(titles("Cake\n\nSPONGE\n100 g flour\nMix the flour.\nCREAM\n200 g milk\nBoil the milk.\n") == Titles{"SPONGE 1+1", "CREAM 1+1"});
  CHECK(titles("# Cake\n\n## Sponge\n- 100 g flour\n\n1. Mix the flour.\n\n## Cream\n- 200 g milk\n\n1. Boil the milk.\n") == Titles{"Sponge 1+1", "Cream 1+1"});
  CHECK(titles("Cake\n\nSponge:\n100 g flour\n\nCream:\n200 g milk\n\nMethod\n\nSponge\nMix the flour.\n\nCream\nBoil the milk.\n") == Titles{"Sponge 1+1", "Cream 1+1"});
  CHECK(titles("Cake\n\nSponge:\n100 g flour\n\nCream:\n200 g milk\n\nMethod\n1. Mix the flour.\n2. Boil the milk.\n") == Titles{"Sponge 1+0", "Cream 1+0", "Method 0+2"});
  CHECK(titles("Cake\n\nIngredients\n100 g flour\n200 g milk\n\nMethod\n1. Mix the flour.\n2. Boil the milk.\n") == Titles{"Cake 2+2"});
  CHECK(titles("cake\n100 g flour\n200 g milk\nmix the flour\nboil the milk\n") == Titles{"cake 2+2"});
  CHECK(titles("G\u00E2teau\n\nPour la cr\u00E8me\n200 g de lait\n\nFaire bouillir le lait.\n\nPour la p\u00E2te\n100 g de farine\n\nM\u00E9langer la farine avec de l'eau.\n") == Titles{"Cr\u00E8me 1+1", "P\u00E2te 1+1"});
  CHECK(titles("Kuchen\n\nF\u00FCr den Teig\n100 g Mehl\n\nF\u00FCr die Creme\n200 g Milch\n\nZubereitung\n1. Das Mehl mischen.\n") == Titles{"Teig 1+0", "Creme 1+0", "Zubereitung 0+1"});
}

TEST_CASE("the lines of one step stay one step", "[draft]") {
  CHECK(titles("Cake\n\n100 g flour\n\n1. Mix the flour\n   with water.\n2. Bake.\n") == std::vector<std::string>{"Cake 1+2"});
  CHECK(titles("Cake\n\n100 g flour\n\nMethod\nStep 1\nMix the flour. Let it rest.\nStep 2\nBake.\n") == std::vector<std::string>{"Cake 1+2"});
}

TEST_CASE("yield lines give portions, pieces, mass and mould", "[draft]") {
  CHECK(yield_of("Serves 12", "en") == "portions=12");
  CHECK(yield_of("Serves 10-12", "en") == "");
  CHECK(yield_of("Makes 16 pieces", "en") == "pieces=16");
  CHECK(yield_of("Makes 1.2 kg", "en") == "mass=1.2 kg");
  CHECK(yield_of("For a 20 cm ring, 4.5 cm high", "en") == "shape=ring diameter=20 cm height=4.5 cm");
  CHECK(yield_of("for a 20 x 30 cm tin", "en") == "length=20 cm width=30 cm");
  CHECK(yield_of("Pour 8 personnes", "fr") == "portions=8");
  CHECK(yield_of("Pour un cercle de 22 cm, 2 cm de haut", "fr") == "shape=ring diameter=22 cm height=2 cm");
  CHECK(yield_of("F\u00FCr 12 Portionen", "de") == "portions=12");
  CHECK(yield_of("Springform 26 cm", "de") == "shape=round diameter=26 cm");
  CHECK(yield_of("Para 6 personas", "es") == "portions=6");
}

TEST_CASE("language and units are found from the words, or left open", "[draft]") {
  CHECK(attribute("Cake\n\n1 cup all-purpose flour\n\nMix the flour and bake at 350\u00B0F until golden.\n", fiche::At::lang) == "en-US");
  CHECK(attribute("Cake\n\n1 cup all-purpose flour\n\nMix the flour and bake at 350\u00B0F until golden.\n", fiche::At::units) == "us");
  CHECK(attribute("Cake\n\n8 oz plain flour\n\nMix the flour and bake at gas mark 4 until golden.\n", fiche::At::units) == "imperial");
  CHECK(attribute("Cake\n\n250 g flour\n\nMix the flour with the water.\n", fiche::At::units) == "metric");
  CHECK(attribute("Cake\n\n1 cup flour\n\nMix the flour and bake at 180 \u00B0C.\n", fiche::At::units) == "");
  CHECK(attribute("G\u00E2teau\n\n250 g de farine\n\nM\u00E9langer la farine avec les \u0153ufs.\n", fiche::At::lang) == "fr");
  CHECK(attribute("Kuchen\n\n250 g Mehl\n\nDas Mehl mit den Eiern mischen.\n", fiche::At::lang) == "de");
  CHECK(attribute("Bizcocho\n\n250 g de harina\n\nMezclar la harina con los huevos.\n", fiche::At::lang) == "es");
  CHECK(attribute("Zzz\n", fiche::At::lang) == "");
}

TEST_CASE("a cup whose system nobody said is kept as written, with a question", "[draft]") {
  const std::string typed = "Cake\n\n1 cup flour\n\nMix the flour and bake at 180 \u00B0C.\n";
  const format::Drafted made = tests::drafted(typed);
  CHECK(made.xml.find(">1 cup</ingredient>") != std::string::npos);
  CHECK(tests::questions_of(typed, made) == "3:1: \"cup\": US (237 ml), imperial (284 ml) or metric (250 ml)? say with --units\n");
  CHECK(tests::drafted(typed, "", "us").questions.empty());
}

TEST_CASE("bytes that are no text are named for what they are", "[draft]") {
  const auto words = [](std::string_view bytes) {
    const format::Drafted made = tests::drafted(bytes);
    CHECK(made.xml.empty());
    return tests::questions_of(bytes, made);
  };
  CHECK(words("") == "1:1: the draft is empty\n");
  CHECK(words(" \n\t") == "1:1: the draft is empty\n");
  CHECK(words("\xFF\xFE" "C\0a\0"  "k\0e\0") == "1:1: the draft is in UTF-16; save it as UTF-8\n");
  CHECK(words("Cake\n\ncr\xE8me\n") == "3:3: the draft looks like Latin-1 (Windows-1252); save it as UTF-8\n");
  CHECK(words("Cake\n\xC3\xC3\xC3\x28\n") == "2:1: bytes that are not UTF-8; save the draft as UTF-8\n");
  CHECK(words(std::string("Cake\n1\0 g", 9)) == "2:2: a zero byte: this is no text file\n");
  CHECK(words(std::string((std::size_t{1} << 20U) + 1, 'a')) == "1:1: the draft is 1048577 bytes long; at most 1048576 are read\n");
}

TEST_CASE("signs that XML must not hold do no harm", "[draft]") {
  const auto document = tests::fiche_of(tests::drafted("Cake \x01 & <b>\n\n250 g \"flour\" < 5 & co\x0C\n"));
  REQUIRE(document);
  CHECK(tests::folded(document->all_text(document->child(document->root(), fiche::El::title))) == "Cake & <b>");
}

TEST_CASE("what finds no place is kept as a note, with a question", "[draft]") {
  const std::string typed = "Cake\n\nIngredients\n250 g flour\n\nMethod\n1. Mix the flour.\n\n@@@ @@@\n";
  const format::Drafted made = tests::drafted(typed);
  CHECK(tests::questions_of(typed, made) == "9:1: what is this line? it is kept as a note\n");
  CHECK(made.xml.find("<note>@@@ @@@</note>") != std::string::npos);
}

TEST_CASE("a long draft takes time in proportion", "[draft]") {
  std::string typed = "Cake\n\nIngredients\n";
  for (int i = 0; i < 4000; ++i) typed += "250 g butter, diced\n";
  typed += "\nMethod\n";
  for (int i = 0; i < 400; ++i) typed += std::to_string(i % 100) + ". Melt half the cocoa at 180 \u00B0C until golden for 20 minutes.\n";
  const format::Drafted made = tests::drafted(typed);
  CHECK(tests::all_of(*tests::fiche_of(made), fiche::El::ingredient).size() == 4000);
}
