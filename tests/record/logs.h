#ifndef TESTS_RECORD_LOGS_H
#define TESTS_RECORD_LOGS_H

#include <memory>
#include <string>
#include <vector>

#include "core/base/source.h"
#include "core/record/log.h"

namespace tamis::tests {

/// A log read from text, with its source for places.
struct ReadLog {
  std::shared_ptr<base::Source> source;
  record::Csv table;
  record::Log log;

  /// "3:5 log-spike: words" a line.
  [[nodiscard]] std::string faults() const {
    std::string out;
    for (const base::Finding& one : log.faults) {
      const base::Place place = source->place(one.where.begin);
      out += std::to_string(place.line) + ":" + std::to_string(place.column) + " " + one.rule + ": " + one.message + "\n";
    }
    return out;
  }
  /// "600 63.2" a reading, a "/" before what is parted from the one above.
  [[nodiscard]] std::string readings() const {
    std::string out;
    for (const record::Reading& one : log.readings) {
      out += out.empty() ? "" : " ";
      out += (one.parted ? "/" : "") + std::to_string(static_cast<long>(one.seconds)) + "=" + record::celsius_text(one.celsius);
    }
    return out;
  }
};

inline ReadLog read_log(std::string text, const record::LogWish& wish = {}) {
  ReadLog out;
  out.source = std::make_shared<base::Source>("log.csv", std::move(text));
  out.table = record::read_csv(*out.source);
  out.log = record::read_log(out.table, wish);
  return out;
}

}  // namespace tamis::tests

#endif
