#include "core/cli/diff.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <random>

#include "tests/cli/process.h"

using tamis::cli::unified_diff;

TEST_CASE("two texts that are the same differ in nothing", "[diff]") {
  CHECK(unified_diff("a", "", "").empty());
  CHECK(unified_diff("a", "one\ntwo\n", "one\ntwo\n").empty());
}

TEST_CASE("a changed line stands between three lines of what is around it", "[diff]") {
  CHECK(unified_diff("f", "1\n2\n3\n4\n5\n6\n7\n8\n9\n", "1\n2\n3\n4\nfive\n6\n7\n8\n9\n") ==
        "--- f\n+++ f\n@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n");
}

TEST_CASE("changes far apart stand in hunks of their own, near ones share one", "[diff]") {
  const std::string before = "1\n2\n3\n4\n5\n6\n7\n8\n9\n10\n11\n12\n";
  CHECK(unified_diff("f", before, "one\n2\n3\n4\n5\n6\n7\n8\n9\n10\n11\ntwelve\n") ==
        "--- f\n+++ f\n@@ -1,4 +1,4 @@\n-1\n+one\n 2\n 3\n 4\n@@ -9,4 +9,4 @@\n 9\n 10\n 11\n-12\n+twelve\n");
  CHECK(unified_diff("f", "1\n2\n3\n4\n", "one\n2\n3\nfour\n") ==
        "--- f\n+++ f\n@@ -1,4 +1,4 @@\n-1\n+one\n 2\n 3\n-4\n+four\n");
}

TEST_CASE("a missing line end at the end of a file is said", "[diff]") {
  CHECK(unified_diff("f", "1", "1\n") == "--- f\n+++ f\n@@ -1 +1 @@\n-1\n\\ No newline at end of file\n+1\n");
  CHECK(unified_diff("f", "", "1\n") == "--- f\n+++ f\n@@ -0,0 +1 @@\n+1\n");
}

TEST_CASE("patch(1) makes the second text of the first", "[diff]") {
  if (std::system("patch --version >/dev/null 2>&1") != 0) {
    std::printf("SKIPPED: patch is not installed\n");
    return;
  }
  std::mt19937 random(20261125);
  const tamis::tests::TemporaryFolder folder;
  for (int round = 0; round < 60; ++round) {
    std::string before;
    std::string after;
    const auto lines = random() % 60;
    for (std::size_t i = 0; i < lines; ++i) {
      const std::string line = std::string(1, static_cast<char>('a' + random() % 4)) + "\n";
      if (random() % 8 != 0) before += line;
      if (random() % 8 != 0) after += line;
    }
    if (random() % 3 == 0 && !after.empty()) after.pop_back();
    CAPTURE(round, before, after);
    folder.write("f", before);
    folder.write("p", unified_diff("f", before, after));
    const std::string command = "cd " + folder.path() + " && patch -s -p0 < p";
    REQUIRE(std::system(command.c_str()) == 0);
    // patch takes a file away that it left empty.
    CHECK(folder.read("f") == after);
  }
}
