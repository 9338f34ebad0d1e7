// Manifests that are made to hurt: each is refused in a moment, with a place in the file, or does what it says and no more.
#include <catch2/catch.hpp>

#include <chrono>

#include "tests/lua/hosting.h"

using namespace tamis;

namespace {

const std::string start = "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\" version=\"1\" api=\"1\">";

std::string times(std::size_t count, const std::string& words) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) out += words;
  return out;
}

std::string additions(std::size_t count) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) out += "<adds id=\"a" + std::to_string(i) + "\" kind=\"check\" call=\"f\"/>";
  return out;
}

}  // namespace

TEST_CASE("a hostile manifest is refused in a moment") {
  const std::string check = "<adds id=\"own-check\" kind=\"check\" call=\"f\"/>";
  const std::pair<std::string, const char*> rows[] = {
      {"", "the file is empty"},
      {"<!DOCTYPE m [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;\">]>" + start + "<summary>&b;</summary></manifest>",
       "a DOCTYPE is refused"},
      {start + times(20000, "<adds>") + "</manifest>", "elements stand more than 256 deep"},
      {start + additions(100000) + "</manifest>", "larger than 128 kilobytes"},
      {start + additions(2000) + "</manifest>", "more than 100 things of a kind"},
      {start + check + times(1000, "<takes name=\"x\" kind=\"text\"/>") + "</manifest>", "stands here twice"},
      {start + times(90, check) + "</manifest>", "is added twice"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\xff\" version=\"1\" api=\"1\">" + check + "</manifest>", "is not UTF-8"},
      {start + "<adds id=\"own-check\" kind=\"virus\" call=\"f\"/></manifest>", "\"virus\""},
      {start + "<adds id=\"unknown-element\" kind=\"check\" call=\"f\"/></manifest>", "is a rule of the check itself"},
      {start + "<adds id=\"plugin-error\" kind=\"check\" call=\"f\"/></manifest>", "is a rule of the check itself"},
      {start + "<adds id=\"../../x\" kind=\"check\" call=\"f\"/></manifest>", "../../x"},
      {start + "<adds id=\"own-check\" kind=\"check\" call=\"string\"/></manifest>", "no function \"string\""},
      {start + "<adds id=\"own-check\" kind=\"check\" call=\"f.g\"/></manifest>", "f.g"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\" version=\"1\" api=\"99999999999999999999\">" + check + "</manifest>",
       "not a whole number"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\" version=\"1\" api=\"1\" memory=\"4000000000\">" + check +
           "</manifest>",
       "kilobytes"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\" version=\"1\" api=\"1\" instructions=\"900000000\">" + check +
           "</manifest>",
       "the most there is"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\" version=\"1\" api=\"1\" memory=\"-1\">" + check + "</manifest>", "-1"},
      {"<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"><title>A</title></fiche>", "no plugin's manifest"},
      {start + check + "<takes name=\"x\" kind=\"choice\"/></manifest>", "choice of nothing"},
      {start + check + "<takes name=\"x\" kind=\"number\" default=\"1e400\"/></manifest>", "1e400"},
      {start, "manifest"},
  };
  for (const auto& [manifest, says] : rows) {
    CAPTURE(manifest.substr(0, 200), says);
    const auto begin = std::chrono::steady_clock::now();
    const tests::Loaded loaded = tests::load_plugin(manifest, "function f(fiche) end\n");
    CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(5));
    CHECK(loaded.plugin == nullptr);
    const std::string lines = loaded.lines();
    CAPTURE(lines.substr(0, 500));
    CHECK(lines.find(says) != std::string::npos);
    for (const lua::LoadFault& fault : loaded.faults) CHECK(fault.finding.where.end <= fault.source->bytes().size());
  }
}
