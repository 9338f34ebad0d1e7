#include <algorithm>
#include <random>
#include <set>
#include <string>
#include <tuple>

#include "tests/change/comparing.h"
#include "tests/change/random_fiche.h"
#include "tests/shared_files.h"

using namespace tamis;
using namespace tamis::tests;
using change::Change;

namespace {

std::vector<std::string> whole_fiches() {
  std::vector<std::string> out;
  for (unsigned seed = 0; seed < 20; ++seed) out.push_back(RandomFiche(seed, System::metric).fiche(true));
  out.push_back(project_file("tests/kitchen/desserts/buckwheat-pear-frame.fiche.xml"));
  out.push_back(project_file("tests/kitchen/base/sweet-pastry.fiche.xml"));
  out.push_back(project_file("tests/change/golden/hazelnut-set-cream.fiche.xml"));
  out.push_back(project_file("schemas/example.fiche.xml"));
  return out;
}

std::shared_ptr<fiche::Document> as_json(const std::string& xml) {
  const std::string json = format::lay_out(*document_of(xml), fiche::Spelling::json);
  auto read = format::read_json(std::make_shared<base::Source>("test.fiche.json", json));
  REQUIRE(read.document != nullptr);
  return read.document;
}

using Key = std::tuple<int, int, int, std::string, std::string, std::uint32_t, std::uint32_t>;

Key key_of(const Change& one) {
  const auto place = [](const std::optional<base::Span>& where) { return where ? where->begin : 0xFFFFFFFFU; };
  return {static_cast<int>(one.topic), static_cast<int>(one.kind), static_cast<int>(one.hold), one.is, one.was,
          place(one.new_where), place(one.old_where)};
}

Change mirrored(Change one) {
  std::swap(one.is, one.was);
  std::swap(one.new_where, one.old_where);
  if (one.kind == Change::Kind::added) {
    one.kind = Change::Kind::removed;
  } else if (one.kind == Change::Kind::removed) {
    one.kind = Change::Kind::added;
  }
  if (one.hold == Change::Hold::tightened) {
    one.hold = Change::Hold::loosened;
  } else if (one.hold == Change::Hold::loosened) {
    one.hold = Change::Hold::tightened;
  }
  return one;
}

std::multiset<Key> keys_of(const std::vector<Change>& changes, bool mirror) {
  std::multiset<Key> out;
  for (const Change& one : changes) out.insert(key_of(mirror ? mirrored(one) : one));
  return out;
}

/// Changes one thing in the text: takes a line out, doubles one, swaps two, or puts another figure in.
std::string disturbed(std::string xml, std::mt19937& random) {
  const auto pick = [&](std::size_t below) { return std::uniform_int_distribution<std::size_t>(0, below - 1)(random); };
  std::vector<std::string> lines;
  std::string line;
  for (const char c : xml) {
    line += c;
    if (c != '\n') continue;
    lines.push_back(std::move(line));
    line.clear();
  }
  std::vector<std::size_t> whole;  // elements that stand on a line of their own
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string_view text = base::trimmed(lines[i]);
    const bool ingredient = text.starts_with("<ingredient") && text.ends_with("</ingredient>");
    const bool step = text.starts_with("<step") && text.ends_with("</step>");
    if (ingredient || step) whole.push_back(i);
  }
  if (whole.size() < 2) return xml;
  const std::size_t at = whole[pick(whole.size())];
  const std::size_t other = whole[pick(whole.size())];
  switch (pick(3)) {
    case 0: lines[at].clear(); break;
    case 1: std::swap(lines[at], lines[other]); break;
    default: {
      const std::size_t digit = lines[at].find_first_of("123456789", lines[at].find('>'));
      if (digit != std::string::npos) lines[at][digit] = static_cast<char>('1' + static_cast<char>(pick(9)));
    }
  }
  std::string out;
  for (const std::string& one : lines) out += one;
  return out;
}

}  // namespace

TEST_CASE("a fiche does not differ from itself, from its layout or from its other spelling", "[compare]") {
  const fiche::Kitchen kitchen;
  for (const std::string& xml : whole_fiches()) {
    CAPTURE(xml);
    const auto own = document_of(xml);
    CHECK(lines(change::compare({*own, kitchen}, {*own, kitchen})).empty());
    const auto laid_out = document_of(format::lay_out(*own, fiche::Spelling::xml));
    CHECK(lines(change::compare({*own, kitchen}, {*laid_out, kitchen})).empty());
    const auto json = as_json(xml);
    CHECK(lines(change::compare({*own, kitchen}, {*json, kitchen})).empty());
    CHECK(lines(change::compare({*json, kitchen}, {*own, kitchen})).empty());
  }
}

TEST_CASE("of two fiches taken the other way round the same is told the other way round", "[compare]") {
  std::mt19937 random(7);
  const fiche::Kitchen kitchen;
  std::size_t told = 0;
  for (const std::string& xml : whole_fiches()) {
    std::string other = xml;
    for (int round = 0; round < 3; ++round) {
      other = disturbed(other, random);
      const std::vector<Change> there = changes(xml, other);
      const std::vector<Change> back = changes(other, xml);
      CAPTURE(xml, other, lines(there), lines(back));
      CHECK(keys_of(there, false) == keys_of(back, true));
      told += there.size();
    }
  }
  CHECK(told > 80);
}

TEST_CASE("any two fiches can be compared, and both ways tell the same", "[compare]") {
  const std::vector<std::string> all = whole_fiches();
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    const std::vector<Change> there = changes(all[i], all[i + 1]);
    const std::vector<Change> back = changes(all[i + 1], all[i]);
    CAPTURE(i, lines(there), lines(back));
    CHECK_FALSE(there.empty());
    CHECK(keys_of(there, false) == keys_of(back, true));
  }
}
