#include <catch2/catch.hpp>
#include <cstdio>
#include <ctime>

#include "tests/rules/checking.h"
#include "tests/shared_files.h"

using namespace tamis;

// Prints, never fails: what is measured depends on the machine. The benchmark is scripts/bench.
TEST_CASE("what reading and checking a fiche of about 6 KB costs is printed") {
  const std::string text = tests::project_file("tests/against/real/usda-peach-cobbler-b18.fiche.xml");
  REQUIRE(text.size() > 4000);
  const fiche::Kitchen kitchen;
  constexpr int rounds = 200;
  const auto source = std::make_shared<const base::Source>("a.fiche.xml", text);
  std::size_t said = 0;
  said += rules::check(*format::read(source).document, kitchen, fiche::empty_library()).size();  // builds the tables
  const auto start = std::clock();
  for (int i = 0; i < rounds; ++i) said += format::read(source).document ? 1U : 0U;
  const auto between = std::clock();
  const format::Read read = format::read(source);
  for (int i = 0; i < rounds; ++i) said += rules::check(*read.document, kitchen, fiche::empty_library()).size();
  const auto end = std::clock();
  for (int i = 0; i < rounds; ++i) said += fiche::read_fiche(*read.document, kitchen).statements.size();
  const auto last = std::clock();
  const auto micro = [](std::clock_t span) { return 1e6 * static_cast<double>(span) / CLOCKS_PER_SEC / rounds; };
  std::printf("%zu bytes, processor time: read %.1f µs, check %.1f µs (of which into values %.1f µs)\n", text.size(),
              micro(between - start), micro(end - between), micro(last - end));
  CHECK(said > 0);
}
