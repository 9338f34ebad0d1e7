// The drafts of tests/drafts against the fiche and the questions that a reader has approved.
//
// To accept a change after reading it:  ACCEPT=1 build/tests/tests_format "[golden]"  then  git diff tests/drafts

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>

#include "tests/format/draft_tools.h"
#include "tests/shared_files.h"

using namespace tamis;

namespace {

bool accepting() {
  const char* accept = std::getenv("ACCEPT");
  return accept != nullptr && std::string(accept) == "1";
}

void hold(const std::string& path, const std::string& now) {
  CAPTURE(path);
  if (accepting()) {
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/" + path, std::ios::binary) << now;
    SUCCEED("accepted");
    return;
  }
  CHECK(tests::project_file(path) == now);
}

}  // namespace

TEST_CASE("typed recipes become the fiches and questions that were approved", "[draft][golden]") {
  const std::vector<std::string> names = tests::draft_names();
  REQUIRE(names.size() >= 16);
  for (const std::string& name : names) {
    const std::string typed = tests::project_file("tests/drafts/" + name + ".txt");
    REQUIRE_FALSE(typed.empty());
    const format::Drafted made = tests::drafted(typed);
    hold("tests/drafts/" + name + ".fiche.xml", made.xml);
    hold("tests/drafts/" + name + ".questions.txt", tests::questions_of(typed, made));
  }
}
