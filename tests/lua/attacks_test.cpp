// The attacks of tests/lua/attacks: one hostile plugin a file. Its first lines say what must come of it, for each kind of
// thing a plugin adds: "-- check, conversion: instructions". What there may be:
//   instructions, memory   the budget is spent, and that is the finding
//   spent                  one of the two
//   error "words"          one finding, with these words
//   harmless               nothing goes wrong, or is held by the plugin's own pcall
//   load: "words"          the plugin is not even loaded
#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "core/base/utf8.h"
#include "core/format/format.h"
#include "core/rules/rule.h"
#include "tests/lua/hosting.h"
#include "tests/shared_files.h"

using namespace tamis;

namespace {

constexpr auto longest = std::chrono::seconds(12);  // of one call: the host's own clock, and two

struct Attack {
  std::string name;
  std::string program;
  /// What must come of it, as `kind`; "" when it is not tried as that.
  [[nodiscard]] std::string must(const std::string& kind) const {
    std::istringstream lines(program);
    for (std::string line; std::getline(lines, line) && line.starts_with("-- ");) {
      const std::size_t colon = line.find(": ");
      if (line.substr(0, colon).find(kind) != std::string::npos) return line.substr(colon + 2);
    }
    return {};
  }
};

std::vector<Attack> attacks() {
  std::vector<Attack> all;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(TAMIS_SOURCE_DIR) / "tests/lua/attacks")) {
    std::ifstream file(entry.path(), std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    all.push_back({entry.path().stem(), bytes.str()});
  }
  std::sort(all.begin(), all.end(), [](const Attack& a, const Attack& b) { return a.name < b.name; });
  return all;
}

/// Whether a message is what must come of an attack.
bool is_right(const std::string& message, const std::string& must) {
  const bool instructions = message.find("it spent its 1 million instructions") != std::string::npos;
  const bool memory = message.find("it needed more than its 8192 kilobytes of memory") != std::string::npos ||
                      message.find("grows too long") != std::string::npos;
  if (must == "instructions") return instructions;
  if (must == "memory") return memory;
  if (must == "spent") return instructions || memory;
  const std::size_t first = must.find('"');
  return first != std::string::npos && message.find(must.substr(first + 1, must.size() - first - 2)) != std::string::npos;
}

tests::Loaded load(const Attack& attack) {
  return tests::load_plugin(
      "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"trial\" version=\"1\" api=\"1\" instructions=\"1000000\" memory=\"8192\">"
      "<adds id=\"turn\" kind=\"conversion\" call=\"attack\"/><adds id=\"paper\" kind=\"export\" call=\"attack\"/>"
      "<adds id=\"house-test\" kind=\"check\" call=\"attack\"/><takes name=\"word\" kind=\"text\">a word</takes></manifest>",
      attack.program);
}

/// The custard with something to find in it, and one step more.
std::string victim() {
  std::string text = tests::custard;
  text.insert(text.find("    <step"), "    <ingredient id=\"sugar\" food=\"sugar-white\">60 g</ingredient>\n");
  return text;
}

/// Has every fiche that is asked for, up to a point; "self" is the one at hand.
class Shelf final : public fiche::Library {
 public:
  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view /*from*/, std::string_view reference) override {
    const std::string name(reference);
    if (!name.ends_with(".fiche.xml") || name.find_first_of("/\\") != std::string::npos || name == "none.fiche.xml" ||
        name.find('\0') != std::string::npos) {
      base::Finding refusal;
      refusal.rule = "dangling-reference";
      refusal.message = "there is no such file";
      return refusal;
    }
    auto& kept = documents_[name];
    if (kept == nullptr) kept = tests::document_of(victim(), name == "self.fiche.xml" ? "a.fiche.xml" : name);
    return kept;
  }

 private:
  std::map<std::string, std::shared_ptr<const fiche::Document>> documents_;
};

class Clock {
 public:
  ~Clock() { CHECK(std::chrono::steady_clock::now() - start_ < longest); }

 private:
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

std::string spelled(const base::Finding& finding) {
  std::string out =
      std::to_string(finding.where.begin) + " " + finding.rule + ": " + finding.message + " [" + finding.advice + "]";
  for (const base::Related& related : finding.related) out += " / " + related.message;
  for (const base::Edit& edit : finding.edits) out += " -> " + edit.text;
  return out;
}

bool is_error_of(const base::Finding& finding) {
  return finding.rule == "plugin-error" && finding.message.starts_with("plugin trial, attack");
}

/// What must be so of every finding, whoever made it.
void check_finding(const base::Finding& finding, std::size_t size) {
  CHECK(finding.where.begin <= finding.where.end);
  CHECK(finding.where.end <= size);
  CHECK_FALSE(finding.message.empty());
  CHECK(finding.message.size() <= 2500);
  CHECK(base::find_invalid_utf8(finding.message) == std::string_view::npos);
  CHECK(finding.message.find('\n') == std::string::npos);
}

/// The one error there may be is what must come of the attack.
void check_errors(const std::vector<base::Finding>& findings, const std::string& must, const std::string& kind) {
  std::vector<std::string> errors;
  for (const base::Finding& finding : findings) {
    check_finding(finding, victim().size());
    if (is_error_of(finding)) errors.push_back(finding.message);
  }
  if (must == "harmless") {
    if (kind == "export")
      std::erase_if(errors, [](const std::string& error) { return error.find("the export gave a") != std::string::npos; });
    CHECK(errors == std::vector<std::string>());
    return;
  }
  REQUIRE(errors.size() == 1);
  CAPTURE(errors.front());
  CHECK(is_right(errors.front(), must));
}

std::vector<std::string> check_with(const std::vector<lua::Plugin*>& plugins, std::vector<base::Finding>* kept = nullptr) {
  Shelf shelf;
  const auto document = tests::document_of(victim());
  lua::PluginChecks checks(plugins);
  const Clock clock;
  const auto findings = rules::check(*document, {}, shelf, &checks);
  std::vector<std::string> lines;
  for (const base::Finding& finding : findings)
    if (finding.rule != "house-test" && !is_error_of(finding)) lines.push_back(spelled(finding));
  if (kept != nullptr) *kept = findings;
  return lines;
}

std::string all_of(const std::vector<base::Finding>& findings) {
  std::string out;
  for (const base::Finding& finding : findings) out += spelled(finding) + "\n";
  return out;
}

}  // namespace

TEST_CASE("an attack by a check is contained, and what the others found stands") {
  const tests::Loaded other = tests::load_plugin(
      "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"other\" version=\"1\" api=\"1\"><adds id=\"other-check\" "
      "kind=\"check\"/></manifest>",
      "function other_check(fiche)\n"
      "  fiche:say(fiche:steps()[1], (' x '):rep(2) .. tamis.upper(fiche.title) .. #fiche:ingredients() .. string.format('%d', "
      "7))\nend\n");
  REQUIRE(other.plugin != nullptr);
  const auto without = check_with({other.plugin.get()});
  REQUIRE(without.size() >= 2);
  REQUIRE(std::any_of(without.begin(), without.end(),
                      [](const std::string& line) { return line.find("VANILLA CUSTARD37") != std::string::npos; }));
  std::size_t tried = 0;
  for (const Attack& attack : attacks()) {
    CAPTURE(attack.name);
    const std::string must = attack.must("check");
    if (must.empty()) continue;
    ++tried;
    const tests::Loaded loaded = load(attack);
    REQUIRE(loaded.lines() == "");
    std::vector<base::Finding> first, second;
    CHECK(check_with({loaded.plugin.get(), other.plugin.get()}, &first) == without);
    check_errors(first, must, "check");
    CHECK(check_with({other.plugin.get(), loaded.plugin.get()}, &second) == without);
    CHECK(all_of(first).size() == all_of(second).size());
    check_with({loaded.plugin.get(), other.plugin.get()}, &second);
    CHECK((all_of(second) == all_of(first)));
  }
  CHECK(tried > 100);
}

TEST_CASE("an attack by a conversion is contained, and leaves the fiche as it was when it fails") {
  std::size_t tried = 0;
  for (const Attack& attack : attacks()) {
    CAPTURE(attack.name);
    const std::string must = attack.must("conversion");
    if (must.empty()) continue;
    ++tried;
    const tests::Loaded loaded = load(attack);
    REQUIRE(loaded.lines() == "");
    const auto document = tests::document_of(victim());
    std::string before;
    for (int round = 0; round < 2; ++round) {
      Shelf shelf;
      const Clock clock;
      const lua::PluginConverted made = loaded.plugin->convert(loaded.plugin->manifest().additions[0], *document, {}, shelf);
      CHECK(made.done == (must == "harmless"));
      check_errors(made.findings, must, "conversion");
      const std::string written = format::write(made.document);
      if (!made.done) CHECK((written == victim()));
      CHECK(format::read(std::make_shared<base::Source>("a.fiche.xml", written)).document != nullptr);
      CHECK(made.talk.size() < 200000);
      const std::string now = written + all_of(made.findings) + made.talk;
      if (round == 1) CHECK((now == before));  // in brackets: never printed whole
      before = now;
    }
  }
  CHECK(tried > 100);
}

TEST_CASE("an attack by an export is contained, and makes no file when it fails") {
  std::size_t tried = 0;
  for (const Attack& attack : attacks()) {
    CAPTURE(attack.name);
    const std::string must = attack.must("export");
    if (must.empty()) continue;
    ++tried;
    const tests::Loaded loaded = load(attack);
    REQUIRE(loaded.lines() == "");
    const auto document = tests::document_of(victim());
    std::string before;
    for (int round = 0; round < 2; ++round) {
      Shelf shelf;
      const Clock clock;
      const lua::Exported made = loaded.plugin->export_fiche(loaded.plugin->manifest().additions[1], document, {}, shelf);
      check_errors(made.findings, must, "export");
      if (must != "harmless") CHECK(made.files.empty());
      std::string now = all_of(made.findings) + made.talk;
      for (const lua::MadeFile& file : made.files) now += file.name + file.bytes;
      if (round == 1) CHECK((now == before));  // in brackets: never printed whole
      before = now;
    }
  }
  CHECK(tried > 100);
}

TEST_CASE("an attack that is no program is not loaded") {
  std::size_t tried = 0;
  for (const Attack& attack : attacks()) {
    CAPTURE(attack.name);
    if (attack.must("load").empty()) continue;
    ++tried;
    const tests::Loaded loaded = load(attack);
    CHECK(loaded.plugin == nullptr);
    REQUIRE(loaded.faults.size() == 1);
    CHECK(is_right(loaded.faults.front().finding.message, attack.must("load")));
  }
  CHECK(tried > 0);
}

TEST_CASE("every attack says what must come of it") {
  for (const Attack& attack : attacks()) {
    CAPTURE(attack.name);
    CHECK(attack.must("check") + attack.must("conversion") + attack.must("export") + attack.must("load") != "");
  }
}
