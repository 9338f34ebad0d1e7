// Any bytes as a thermometer's log: never a crash or a hang; what comes out is in order, every fault lies in the file, and no
// verdict says "met" by readings that are not there.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/record/judge.h"
#include "core/record/log.h"

namespace {

[[noreturn]] void fail(const char* what, const std::string& detail) {
  std::fprintf(stderr, "%s: %s\n", what, detail.c_str());
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace tamis;
  if (size == 0) return 0;
  record::LogWish wish;
  wish.scale = static_cast<record::Scale>(data[0] % 3);
  wish.number_seconds = data[0] / 3 % 2 == 0 ? 0 : 60;
  if (data[0] / 6 % 4 == 3) wish.column = "2";
  const base::Source source("log.csv", std::string(reinterpret_cast<const char*>(data + 1), size - 1));
  const record::Log log = record::read_log(record::read_csv(source), wish);
  for (const base::Finding& fault : log.faults) {
    if (fault.where.end > source.bytes().size() || fault.where.begin > fault.where.end) fail("a span outside", fault.message);
  }
  for (std::size_t i = 1; i < log.readings.size(); ++i) {
    if (!(log.readings[i].seconds > log.readings[i - 1].seconds))
      fail("out of order", record::moment_text(log, log.readings[i].seconds));
  }
  record::ControlLimit hold;
  hold.way = data[0] % 2 == 0 ? record::ControlLimit::Way::reach : record::ControlLimit::Way::stay;
  record::Stage stage;
  stage.least = 63;
  if (data[0] % 2 == 0) stage.hold = 240;
  stage.text = "at least 63 °C";
  hold.stages.push_back(stage);
  const record::Verdict verdict = record::judge(hold, log);
  if (verdict.outcome != record::Outcome::met) return 0;
  if (!log.usable) fail("met by a log that cannot be used", source.bytes());
  bool hot = false;
  for (const record::Reading& one : log.readings) hot = hot || one.celsius >= 62.9;
  if (!hot) fail("met without a reading", source.bytes());
  return 0;
}
