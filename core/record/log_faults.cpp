#include "core/record/log_faults.h"

#include <algorithm>
#include <cmath>

namespace tamis::record {
namespace {

constexpr std::size_t most_said = 8;
// Common practice, ours: food in a kitchen lies between a freezer at −60 °C and sugar at 200 °C, and a core does not leap.
constexpr double coldest = -60, hottest = 320;  // °C
constexpr double leap = 10;                     // K
constexpr double leap_time = 300;               // s
constexpr double back = 0.25;                   // of the leap: how near the reading behind it comes to the one before
constexpr double usual_times = 3;
constexpr double least_gap = 60;  // s
constexpr std::size_t least_readings = 5;

/// Whether the `count` readings from `at` lie a leap away from both neighbours, to one side.
bool is_spike(const std::vector<Reading>& readings, std::size_t at, std::size_t count) {
  if (at == 0 || at + count >= readings.size()) return false;
  const Reading& before = readings[at - 1];
  const Reading& behind = readings[at + count];
  double least = INFINITY;
  for (std::size_t i = at; i <= at + count; ++i) {
    if (readings[i].parted || readings[i].seconds - readings[i - 1].seconds > leap_time) return false;
  }
  const double side = readings[at].celsius > before.celsius ? 1 : -1;
  for (std::size_t i = at; i < at + count; ++i) {
    least = std::min({least, side * (readings[i].celsius - before.celsius), side * (readings[i].celsius - behind.celsius)});
  }
  return least >= leap && std::abs(behind.celsius - before.celsius) <= back * least;
}

}  // namespace

void LogFaults::say(std::string_view rule, base::Span where, std::string message, std::string advice) {
  Count& count = counts_[std::string(rule)];
  if (count.said >= most_said) {
    ++count.more;
    return;
  }
  ++count.said;
  count.last = out_.size();
  base::Finding finding;
  finding.rule = rule;
  finding.where = where;
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  out_.push_back(std::move(finding));
}

void LogFaults::finish() {
  for (const auto& [rule, count] : counts_) {
    if (count.more > 0) out_[count.last].message += "; and " + std::to_string(count.more) + " more like it";
  }
  base::sort_by_place(out_);
}

void part_at_spikes(Log& log, LogFaults& faults) {
  std::vector<Reading> kept;
  const std::vector<Reading>& all = log.readings;
  bool parted = false;
  for (std::size_t i = 0; i < all.size();) {
    std::size_t spike = 0;
    const bool beyond = all[i].celsius < coldest || all[i].celsius > hottest;
    if (beyond) {
      spike = 1;
      faults.say("log-spike", all[i].where,
                 degrees_text(log.scale, all[i].celsius) + " is no temperature of food: the probe was off or broken",
                 "look at probe and cable; the reading is left out, and no verdict goes across it");
    } else {
      for (std::size_t count = 1; count <= 2 && spike == 0; ++count) spike = is_spike(all, i, count) ? count : 0;
      if (spike > 0) {
        const std::string leaps = "leaps from " + degrees_text(log.scale, all[i - 1].celsius) + " to " +
                                  degrees_text(log.scale, all[i].celsius) + " and back to " +
                                  degrees_text(log.scale, all[i + spike].celsius) + " within " +
                                  span_text(all[i + spike].seconds - all[i - 1].seconds);
        faults.say("log-spike", all[i].where, leaps,
                   "no core does that: look at the probe; the reading is left out, and no verdict goes across it");
      }
    }
    if (spike == 0) {
      kept.push_back(all[i]);
      kept.back().parted = kept.back().parted || parted;
    }
    parted = spike > 0;
    i += std::max<std::size_t>(spike, 1);
  }
  log.readings = std::move(kept);
}

void part_at_gaps(Log& log, LogFaults& faults) {
  std::vector<double> between;
  for (std::size_t i = 1; i < log.readings.size(); ++i)
    between.push_back(log.readings[i].seconds - log.readings[i - 1].seconds);
  if (between.size() + 1 < least_readings) return;
  std::vector<double> sorted = between;
  std::nth_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2), sorted.end());
  const double usual = sorted[sorted.size() / 2];
  for (std::size_t i = 0; i < between.size(); ++i) {
    if (between[i] <= std::max(usual_times * usual, least_gap)) continue;
    log.readings[i + 1].parted = true;
    faults.say("log-gap", log.readings[i + 1].where,
               "no reading for " + span_text(between[i]) + ", from " + moment_text(log, log.readings[i].seconds) + " to " +
                   moment_text(log, log.readings[i + 1].seconds) + "; the others come every " + span_text(usual),
               "nothing is counted across it: what the food did there is not known");
  }
}

}  // namespace tamis::record
