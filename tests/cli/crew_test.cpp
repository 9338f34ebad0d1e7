#include "core/cli/crew.h"

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cerrno>
#include <csignal>

#include "core/cli/frames.h"
#include "core/cli/line_reader.h"
#include "tests/cli/process.h"

using namespace tamis::cli;

namespace {

Task task_of(std::uint64_t number) {
  Task task;
  task.path = "task " + std::to_string(number);
  task.line = number;
  return task;
}

/// Says the number, the deaths and the fault it was given.
Outcome told(const Task& task) {
  Outcome outcome;
  outcome.part = std::to_string(task.line);
  if (task.deaths > 0) outcome.part += "(" + std::to_string(task.deaths) + ")";
  if (!task.fault.empty()) outcome.part += "[" + task.fault + "]";
  return outcome;
}

struct Run {
  std::vector<std::string> parts;
  bool all = false;
};

Run run(unsigned workers, std::uint64_t tasks, const Work& work, std::size_t wanted = 1000000) {
  Run run;
  {
    Crew crew(workers, work, [&](const Outcome& outcome) {
      run.parts.push_back(outcome.part);
      return run.parts.size() < wanted;
    });
    for (std::uint64_t number = 1; number <= tasks; ++number)
      if (!crew.give(task_of(number))) break;
    run.all = crew.finish();
  }
  // Whoever is left over, alive or dead, would be found here.
  CHECK(::waitpid(-1, nullptr, WNOHANG) == -1);
  CHECK(errno == ECHILD);
  return run;
}

std::vector<std::string> numbers_to(std::uint64_t last) {
  std::vector<std::string> numbers;
  for (std::uint64_t number = 1; number <= last; ++number) numbers.push_back(std::to_string(number));
  return numbers;
}

}  // namespace

TEST_CASE("tasks come back in the order they were given, whatever each takes", "[crew]") {
  const Work uneven = [](const Task& task) {
    if (task.line % 7 == 0) ::usleep(3000);
    return told(task);
  };
  for (const unsigned workers : {1U, 2U, 3U, 8U}) {
    CAPTURE(workers);
    const Run ran = run(workers, 500, uneven);
    CHECK(ran.parts == numbers_to(500));
    CHECK(ran.all);
  }
}

TEST_CASE("a worker that dies leaves its task to another, and what waited behind it too", "[crew]") {
  const Work deadly = [](const Task& task) {
    if (task.line % 10 == 3 && task.deaths == 0) std::raise(SIGKILL);
    if (task.line % 10 == 6 && task.deaths == 0) ::_exit(3);
    return told(task);
  };
  const Run ran = run(2, 40, deadly);
  std::vector<std::string> expected = numbers_to(40);
  for (std::size_t i = 0; i < expected.size(); ++i)
    if ((i + 1) % 10 == 3 || (i + 1) % 10 == 6) expected[i] += "(1)";
  CHECK(ran.parts == expected);
  CHECK(ran.all);
}

TEST_CASE("a task that two workers died at is told as one that cannot be done", "[crew]") {
  const Work deadly = [](const Task& task) {
    if (task.line == 3 && task.fault.empty()) std::raise(SIGKILL);
    if (task.line == 5 && task.fault.empty()) ::_exit(3);
    return told(task);
  };
  const Run ran = run(2, 6, deadly);
  CHECK(ran.parts == std::vector<std::string>{
                         "1", "2", "3(2)[the work on it ended by itself, twice: signal 9 (killed)]", "4",
                         "5(2)[the work on it ended by itself, twice: exit code 3]", "6"});
}

TEST_CASE("when no more is wanted the workers are ended in the middle of their work", "[crew]") {
  const Work endless = [](const Task& task) {
    if (task.line > 20) ::pause();
    return told(task);
  };
  const Run ran = run(3, 1000, endless, 10);
  CHECK(ran.parts == numbers_to(10));
  CHECK_FALSE(ran.all);
}

TEST_CASE("a result larger than any pipe, and more of them than may wait, come through", "[crew]") {
  const Work large = [](const Task& task) {
    Outcome outcome = told(task);
    outcome.part.resize(std::size_t{3} << 20U, 'x');
    return outcome;
  };
  std::size_t bytes = 0;
  Crew crew(2, large, [&](const Outcome& outcome) {
    bytes += outcome.part.size();
    return true;
  });
  for (std::uint64_t number = 1; number <= 20; ++number) {
    Task task = task_of(number);
    task.bytes.resize(std::size_t{1} << 20U, 'y');
    REQUIRE(crew.give(std::move(task)));
  }
  CHECK(crew.finish());
  CHECK(bytes == std::size_t{60} << 20U);
}

TEST_CASE("what is told between tasks keeps its turn", "[crew]") {
  for (const unsigned workers : {1U, 2U}) {
    std::string all;
    Crew crew(workers, told, [&](const Outcome& outcome) {
      all += outcome.part;
      return true;
    });
    for (std::uint64_t number = 1; number <= 5; ++number) {
      crew.give(task_of(number));
      Outcome between;
      between.part = "-";
      crew.tell(std::move(between));
    }
    crew.finish();
    CHECK(all == "1-2-3-4-5-");
  }
}

TEST_CASE("tasks and outcomes are the same on both sides of a pipe", "[crew]") {
  Task task{"a\n\xff", true, std::string("b\0c", 3), 7, "fault", 1, {{"p", "why"}}};
  const Task task_there = read_task(spelled(task));
  CHECK(task_there.path == task.path);
  CHECK(task_there.held);
  CHECK(task_there.bytes == task.bytes);
  CHECK(task_there.line == 7);
  CHECK(task_there.fault == "fault");
  CHECK(task_there.deaths == 1);
  REQUIRE(task_there.without.size() == 1);
  CHECK((task_there.without[0].plugin == "p" && task_there.without[0].why == "why"));
  Outcome outcome{"path", "part", {{"k", "why", true}, {"l", "", false}}, {1, 2, 3, 4, 5, 6}, true, "said", "talk"};
  const Outcome there = read_outcome(spelled(outcome));
  CHECK(there.path == "path");
  CHECK(there.part == "part");
  REQUIRE(there.faults.size() == 2);
  CHECK((there.faults[0].path == "k" && there.faults[0].why == "why" && there.faults[0].once));
  CHECK((there.faults[1].path == "l" && there.faults[1].why.empty() && !there.faults[1].once));
  CHECK(there.totals.files == 1);
  CHECK(there.totals.failed == 2);
  CHECK(there.totals.errors == 3);
  CHECK(there.totals.warnings == 4);
  CHECK(there.totals.advice == 5);
  CHECK(there.totals.mendable == 6);
  CHECK(there.mendable);
  CHECK(there.said == "said");
  CHECK(there.talk == "talk");
}

TEST_CASE("a frame is taken only when it is all there", "[crew]") {
  std::string bytes;
  append_frame(bytes, 9, "abc");
  append_frame(bytes, 10, "");
  Frame frame;
  for (std::size_t cut = 0; cut < 19; ++cut) CHECK(first_frame(std::string_view(bytes).substr(0, cut), frame) == 0);
  REQUIRE(first_frame(bytes, frame) == 19);
  CHECK(frame.number == 9);
  CHECK(frame.bytes == "abc");
  CHECK(first_frame(std::string_view(bytes).substr(19), frame) == 16);
  CHECK(frame.number == 10);
}

TEST_CASE("the number of jobs is a number, or the number of cores", "[crew]") {
  CHECK(jobs_of("1") == 1);
  CHECK(jobs_of("12") == 12);
  CHECK(jobs_of("auto") >= 1);
  CHECK(jobs_of("0") == 0);
  for (const char* wrong : {"", "-1", "two", "2x", " 2", "257", "99999999999"}) {
    CAPTURE(wrong);
    CHECK(jobs_of(wrong) == 0);
  }
}

TEST_CASE("lines are read in memory of one, however they end and however long they are", "[lines]") {
  using Got = LineReader::Got;
  const std::string long_line(200000, 'x');
  const std::vector<std::pair<std::string, std::vector<std::string>>> rows{
      {"", {}},
      {"a", {"a"}},
      {"a\n", {"a"}},
      {"a\r\nb", {"a", "b"}},
      {"\n\na\n", {"", "", "a"}},
      {long_line + "\nb\n", {"too long", "b"}},
      {"a\n" + long_line, {"a", "too long"}},
      {std::string(1000, 'y') + "\n" + std::string(1001, 'y') + "\nz", {std::string(1000, 'y'), "too long", "z"}},
  };
  for (const auto& [input, expected] : rows) {
    CAPTURE(input.substr(0, 20), input.size());
    const tamis::tests::TemporaryFolder folder;
    std::FILE* file = std::fopen(folder.write("lines", input).c_str(), "r");
    REQUIRE(file != nullptr);
    LineReader reader(::fileno(file), 1000);
    std::vector<std::string> lines;
    std::string line;
    for (Got got = reader.next(line); got != Got::end; got = reader.next(line)) {
      REQUIRE(got != Got::fault);
      lines.push_back(got == Got::too_long ? "too long" : line);
    }
    std::fclose(file);
    CHECK(lines == expected);
  }
}
