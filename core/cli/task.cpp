#include "core/cli/task.h"

#include <cassert>
#include <cstring>

namespace tamis::cli {
namespace {

void put(std::string& out, std::uint64_t number) {
  char bytes[sizeof number];
  std::memcpy(bytes, &number, sizeof number);
  out.append(bytes, sizeof number);
}

void put(std::string& out, std::string_view text) {
  put(out, std::uint64_t{text.size()});
  out += text;
}

std::uint64_t take_number(std::string_view& bytes) {
  std::uint64_t number = 0;
  assert(bytes.size() >= sizeof number);
  std::memcpy(&number, bytes.data(), sizeof number);
  bytes.remove_prefix(sizeof number);
  return number;
}

std::string take_text(std::string_view& bytes) {
  const std::uint64_t size = take_number(bytes);
  assert(bytes.size() >= size);
  std::string text(bytes.substr(0, size));
  bytes.remove_prefix(size);
  return text;
}

}  // namespace

std::string spelled(const Task& task) {
  std::string out;
  put(out, task.path);
  put(out, std::uint64_t{task.held});
  put(out, task.bytes);
  put(out, task.line);
  put(out, task.fault);
  put(out, task.deaths);
  put(out, std::uint64_t{task.without.size()});
  for (const LeftOut& one : task.without) {
    put(out, one.plugin);
    put(out, one.why);
  }
  return out;
}

Task read_task(std::string_view bytes) {
  Task task;
  task.path = take_text(bytes);
  task.held = take_number(bytes) != 0;
  task.bytes = take_text(bytes);
  task.line = take_number(bytes);
  task.fault = take_text(bytes);
  task.deaths = take_number(bytes);
  for (std::uint64_t left = take_number(bytes); left > 0; --left) {
    LeftOut& one = task.without.emplace_back();
    one.plugin = take_text(bytes);
    one.why = take_text(bytes);
  }
  return task;
}

std::string spelled(const Outcome& outcome) {
  std::string out;
  put(out, outcome.path);
  put(out, outcome.part);
  put(out, std::uint64_t{outcome.faults.size()});
  for (const Fault& fault : outcome.faults) {
    put(out, fault.path);
    put(out, fault.why);
    put(out, std::uint64_t{fault.once});
  }
  const Totals& totals = outcome.totals;
  for (const std::size_t count :
       {totals.files, totals.failed, totals.errors, totals.warnings, totals.advice, totals.mendable})
    put(out, std::uint64_t{count});
  put(out, std::uint64_t{outcome.mendable});
  put(out, outcome.said);
  put(out, outcome.talk);
  return out;
}

Outcome read_outcome(std::string_view bytes) {
  Outcome outcome;
  outcome.path = take_text(bytes);
  outcome.part = take_text(bytes);
  for (std::uint64_t left = take_number(bytes); left > 0; --left) {
    Fault& fault = outcome.faults.emplace_back();
    fault.path = take_text(bytes);
    fault.why = take_text(bytes);
    fault.once = take_number(bytes) != 0;
  }
  Totals& totals = outcome.totals;
  for (std::size_t* count :
       {&totals.files, &totals.failed, &totals.errors, &totals.warnings, &totals.advice, &totals.mendable})
    *count = take_number(bytes);
  outcome.mendable = take_number(bytes) != 0;
  outcome.said = take_text(bytes);
  outcome.talk = take_text(bytes);
  return outcome;
}

}  // namespace tamis::cli
