// Plugins that would take the program with them: it ends in time, says who did it, and what the others found stands.
#include <catch2/catch.hpp>

#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <thread>

#include "core/cli/crew.h"
#include "core/lua/watch.h"
#include "tests/cli/process.h"

using namespace tamis::cli;
using tamis::tests::Ran;
using tamis::tests::run_tamis;
using tamis::tests::TemporaryFolder;

namespace {

using Clock = std::chrono::steady_clock;

/// What Lua does in one instruction here takes long: reading 100 MB as a number. Its own clock or the supervisor ends it.
constexpr const char* stuck = R"(
function stuck(fiche)
  local long = ("f"):rep(1000)
  while #long < 100000000 do long = long .. long end
  long = "0x" .. long
  while true do local n = long + 1 + long + long + long + long + long + long + long + long end
end
)";

/// A kitchen with a plugin that gets stuck, one that can't be loaded and one that is good, and two fiches.
class House {
 public:
  House() {
    folder.write("kitchen.xml", R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps">
  <plugin id="broken" path="broken"/>
  <plugin id="stuck" path="stuck"/>
  <plugin id="good" path="good"/>
</kitchen>
)");
    manifest("broken", "", "");
    manifest("good", "", "");
    manifest("stuck", R"( instructions="200000000" memory="262144")",
             R"(<adds id="turn" kind="conversion" call="stuck"/><adds id="paper" kind="export" call="stuck"/>)");
    folder.write("broken/plugin.lua", "while true do end\n");
    folder.write("stuck/plugin.lua", stuck);
    folder.write("good/plugin.lua", "function good(fiche) print('seen', '\\27[2J') fiche:say(nil, 'from the good one') end\n");
    for (const char* name : {"a", "b"})
      folder.write(std::string(name) + ".fiche.xml",
                   "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"" + std::string(name) +
                       "\" lang=\"en\">\n  <title>Walnut slice</title>\n  <stpe>x</stpe>\n</fiche>\n");
  }

  void manifest(const std::string& id, const std::string& limits, const std::string& more) const {
    folder.write(id + "/plugin.xml", "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"" + id + "\" version=\"1\" api=\"1\"" +
                                         limits + "><adds id=\"" + id + "-check\" kind=\"check\" call=\"" + id + "\"/>" + more +
                                         "</manifest>\n");
  }

  /// Runs it, which must end within the limit and two seconds (and what a loaded machine takes to start a program).
  [[nodiscard]] Ran run(const std::vector<std::string>& words, int limits = 1) const {
    const auto start = Clock::now();
    Ran ran = run_tamis(words, {}, folder.path());
    CHECK(Clock::now() - start < std::chrono::seconds(3 * limits + 2));
    return ran;
  }

  TemporaryFolder folder;
};

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a plugin that gets stuck is ended, and its fiche checked without it", "[cli]") {
  const House house;
  const Ran ran = house.run({"check", "--seconds", "1", "a.fiche.xml"});
  CAPTURE(ran.out, ran.err);
  CHECK(ran.exit == 2);
  CHECK(has(ran.err, "broken/plugin.lua: a plugin cannot be loaded: line 1, column 1: it spent its 20 million instructions"));
  CHECK(has(ran.out, "took longer than its 1 second"));
  CHECK(has(ran.out, "a.fiche.xml:2:3: warning: from the good one [good-check]"));
  CHECK(has(ran.out, "a.fiche.xml:3:4: error: there is no element <stpe> [unknown-element]"));
  CHECK(has(ran.err, "seen\t\xEF\xBF\xBD[2J\n"));
  const Ran json = house.run({"check", "--seconds", "1", "--report", "json", "a.fiche.xml"});
  CHECK(json.exit == 2);
  CHECK(has(json.out, "took longer than its 1 second"));
  CHECK(has(json.out, "\"failed\": 1, \"errors\": 2, \"warnings\": 1"));
}

TEST_CASE("a plugin that gets stuck is ended as a conversion and as an export, and nothing is written", "[cli]") {
  const House house;
  Ran ran = house.run({"convert", "--seconds", "1", "--with", "turn", "--write", "a.fiche.xml"});
  CHECK(ran.exit == 1);
  CHECK(has(ran.err, "took longer than its 1 second"));
  ran = house.run({"export", "--seconds", "1", "--as", "paper", "--to", "out", "a.fiche.xml"});
  CHECK(ran.exit == 1);
  CHECK(has(ran.err, "took longer than its 1 second"));
  CHECK(::access((house.folder.path() + "/out").c_str(), F_OK) != 0);
}

TEST_CASE("of two plugins that add one name the first has it, and the second is left out and told", "[cli]") {
  const TemporaryFolder folder;
  folder.write(
      "kitchen.xml",
      "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"F\"><plugin id=\"one\" path=\"one\"/><plugin id=\"two\" path=\"two\"/>"
      "<plugin id=\"one\" path=\"one\"/></kitchen>\n");
  for (const std::string id : {"one", "two"}) {
    folder.write(id + "/plugin.xml", "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"" + id +
                                         "\" version=\"1\" api=\"1\"><adds id=\"same\" kind=\"check\"/></manifest>\n");
    folder.write(id + "/plugin.lua", "function same(fiche) fiche:say(nil, 'from " + id + "') end\n");
  }
  folder.write("a.fiche.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><title>A</title></fiche>\n");
  const Ran ran = run_tamis({"check", "a.fiche.xml"}, {}, folder.path());
  CHECK(ran.exit == 2);
  CHECK(has(ran.out, "warning: from one [same]"));
  CHECK_FALSE(has(ran.out, "from two"));
  CHECK(has(ran.err, "\"same\" is added by the plugins one and two; take one of them out"));
  CHECK(has(ran.err, "the plugin \"one\" is named twice; take one of them out"));
}

TEST_CASE("what lies in a plugin's folder and is no file is refused and not waited for", "[cli]") {
  const House house;
  const std::string strange = house.folder.path() + "/broken/strange.lua";
  REQUIRE(::mkfifo(strange.c_str(), 0600) == 0);
  Ran ran = house.run({"check", "--seconds", "1", "b.fiche.xml"});
  CHECK(has(ran.err, "broken/strange.lua cannot be read: it is no ordinary file"));
  CHECK(has(ran.out, "from the good one [good-check]"));
  REQUIRE(::unlink(strange.c_str()) == 0);
  REQUIRE(::symlink("/dev/zero", strange.c_str()) == 0);
  ran = house.run({"check", "--seconds", "1", "b.fiche.xml"});
  CHECK(has(ran.err, "broken/strange.lua cannot be read: it is no ordinary file"));
  CHECK(has(ran.out, "there is no element <stpe> [unknown-element]"));
}

TEST_CASE("the seconds a plugin may take are a number", "[cli]") {
  const House house;
  for (const char* wrong : {"0", "-1", "x", "1.5", "99999"}) {
    CAPTURE(wrong);
    const Ran ran = house.run({"check", "--seconds", wrong, "a.fiche.xml"});
    CHECK(ran.exit == 2);
    CHECK(has(ran.err, "--seconds is a whole number from 1 to 3600"));
  }
}

TEST_CASE("an export is not written through a link", "[cli]") {
  const TemporaryFolder folder;
  folder.write("kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"F\"><plugin id=\"own\" path=\"own\"/></kitchen>\n");
  folder.write("own/plugin.xml", "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"own\" version=\"1\" api=\"1\">"
                                 "<adds id=\"paper\" kind=\"export\"/></manifest>\n");
  folder.write("own/plugin.lua", "function paper(fiche) return {{name = 'x.txt', bytes = 'mine'}} end\n");
  folder.write("a.fiche.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><title>A</title></fiche>\n");
  folder.write("elsewhere.txt", "theirs");
  folder.write("out/y.txt", "");
  REQUIRE(::symlink((folder.path() + "/elsewhere.txt").c_str(), (folder.path() + "/out/x.txt").c_str()) == 0);
  const Ran ran = run_tamis({"export", "--as", "paper", "--to", "out", "--replace", "a.fiche.xml"}, {}, folder.path());
  CHECK(ran.exit == 2);
  CHECK(has(ran.err, "out/x.txt: is a link; what it leads to is not written over"));
  CHECK(folder.read("elsewhere.txt") == "theirs");
}

namespace {


/// Tasks 1 to `tasks` by that work, each kept apart.
std::vector<std::string> run(unsigned workers, std::uint64_t tasks, const Work& work) {
  std::vector<std::string> parts;
  Crew crew(workers, work,
            [&](const Outcome& outcome) {
              parts.push_back(outcome.part);
              return true;
            },
            [](const Task&) { return true; });
  for (std::uint64_t number = 1; number <= tasks; ++number) {
    Task task;
    task.line = number;
    crew.give(std::move(task));
  }
  CHECK(crew.finish());
  return parts;
}

bool without(const Task& task, const std::string& plugin) {
  for (const LeftOut& one : task.without)
    if (one.plugin == plugin) return true;
  return false;
}

std::string told(const Task& task) {
  std::string out = std::to_string(task.line);
  for (const LeftOut& one : task.without) out += " " + one.plugin + " " + one.why + ";";
  return out;
}

}  // namespace

TEST_CASE("a plugin that ends its process is left out of that task, and after three of all", "[crew]") {
  const Work deadly = [](const Task& task) {
    if (!without(task, "bad") && task.line % 2 == 0) {
      const tamis::lua::Watched watched("bad", std::chrono::seconds(5));
      std::raise(SIGKILL);
    }
    Outcome outcome;
    outcome.part = told(task);
    return outcome;
  };
  const std::string why = " bad ended the process it ran in: signal 9 (killed);";
  for (const unsigned workers : {1U, 2U}) {
    CAPTURE(workers);
    const auto parts = run(workers, 30, deadly);
    REQUIRE(parts.size() == 30);
    for (const std::size_t number : {2UL, 4UL, 6UL, 30UL}) CHECK(parts[number - 1] == std::to_string(number) + why);
    CHECK(parts[0] == "1");
    CHECK(parts[28] == "29" + why);
  }
}

TEST_CASE("two plugins that end their process are both left out", "[crew]") {
  const Work deadly = [](const Task& task) {
    for (const char* plugin : {"first", "second"}) {
      if (without(task, plugin)) continue;
      const tamis::lua::Watched watched(plugin, std::chrono::seconds(5));
      ::_exit(4);
    }
    Outcome outcome;
    outcome.part = told(task);
    return outcome;
  };
  const auto parts = run(1, 1, deadly);
  CHECK(parts == std::vector<std::string>{
                     "1 first ended the process it ran in: exit code 4; second ended the process it ran in: exit code 4;"});
}

TEST_CASE("a plugin that is overdue is ended within two seconds of its time", "[crew]") {
  const auto start = Clock::now();
  const Work endless = [](const Task& task) {
    if (!without(task, "slow")) {
      const tamis::lua::Watched watched("slow", std::chrono::seconds(1));
      for (;;) ::pause();
    }
    Outcome outcome;
    outcome.part = told(task);
    return outcome;
  };
  CHECK(run(1, 1, endless) == std::vector<std::string>{"1 slow took longer than its 1 second and was ended;"});
  CHECK(Clock::now() - start < std::chrono::seconds(3));
}

TEST_CASE("work that is slow without a plugin is waited for", "[crew]") {
  const Work slow = [](const Task& task) {
    { const tamis::lua::Watched watched("quick", std::chrono::seconds(1)); }
    std::this_thread::sleep_for(std::chrono::milliseconds(2500));
    Outcome outcome;
    outcome.part = told(task);
    return outcome;
  };
  CHECK(run(1, 1, slow) == std::vector<std::string>{"1"});
}
