#include "core/cli/check_file.h"

#include "core/cli/diff.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

/// How often a mended text is read again for fixes that only show, or only fit, once others are in.
constexpr int most_rounds = 8;

std::shared_ptr<const base::Source> source_of(const Task& task, Outcome& outcome) {
  if (task.held) return std::make_shared<base::Source>(task.path, task.bytes);
  auto source = read_file(task.path);
  if (source) return *source;
  outcome.faults.push_back({task.path, source.fault().message});
  return nullptr;
}

base::Finding worker_died() {
  base::Finding made;
  made.rule = "plugin-error";
  made.message = "a worker process died at this fiche; it was checked again without plugins";
  made.advice = "take the plugins out of kitchen.xml one by one to find the one that does it";
  made.source = "common practice";
  return made;
}

}  // namespace

Outcome CheckFile::operator()(const Task& task) {
  Outcome outcome;
  outcome.path = task.path;
  if (!task.fault.empty()) outcome.faults.push_back({task.path, task.fault});
  const auto source = task.fault.empty() ? source_of(task, outcome) : nullptr;
  const bool good = source != nullptr && look_around(task, outcome);
  if (!outcome.faults.empty()) outcome.totals.failed = 1;
  if (source == nullptr || !good) return outcome;
  if (mend_ == Mend::show) {
    show_patch(source, outcome);
  } else {
    const auto judged = mend_ == Mend::write ? mend(source, outcome) : source;
    outcome.part = form_.file(*judged, judge(judged, outcome));
  }
  return outcome;
}

/// A file that a worker died at is judged without plugins, and says so. False where it cannot be judged; a plugin that cannot
/// be loaded is told, and the file is judged with the others.
bool CheckFile::look_around(const Task& task, Outcome& outcome) {
  deaths_ = task.deaths;
  without_ = task.without;
  hear_for(task, surroundings_);
  if (auto fault = broken_kitchen(task.path, surroundings_)) {
    outcome.faults.push_back(std::move(*fault));
    return false;
  }
  for (Fault& fault : broken_plugins(task.path, surroundings_)) outcome.faults.push_back(std::move(fault));
  return true;
}

std::vector<base::Finding> CheckFile::judge(const std::shared_ptr<const base::Source>& source, Outcome& outcome) {
  surroundings_.take_talk(source->path());
  std::vector<base::Finding> findings = check_source(source, surroundings_, state_).findings;
  if (deaths_ > 0) findings.push_back(worker_died());
  for (const LeftOut& one : without_) findings.push_back(left_out(one));
  outcome.talk = harmless(surroundings_.take_talk(source->path()));
  ++outcome.totals.files;
  outcome.totals.add(findings);
  return findings;
}

std::string CheckFile::mended_bytes(std::shared_ptr<const base::Source> source) {
  for (int round = 0; round < most_rounds; ++round) {
    std::string better = mended(*source, check_source(source, surroundings_, state_).findings);
    if (better == source->bytes()) break;
    auto next = std::make_shared<base::Source>(source->path(), std::move(better));
    if (format::read(next).document == nullptr) break;  // no fix may cost a file
    source = std::move(next);
  }
  return source->bytes();
}

void CheckFile::show_patch(const std::shared_ptr<const base::Source>& source, Outcome& outcome) {
  judge(source, outcome);
  outcome.part = unified_diff(source->path(), source->bytes(), mended_bytes(source));
  outcome.mendable = !outcome.part.empty();
}

/// What there is to judge when the fixes are in the file; the file as it was when they could not be written.
std::shared_ptr<const base::Source> CheckFile::mend(const std::shared_ptr<const base::Source>& source,
                                                    Outcome& outcome) {
  const std::string better = mended_bytes(source);
  if (better == source->bytes()) return source;
  const std::string why = write_file(source->path(), better);
  if (!why.empty()) {
    ++outcome.totals.failed;
    outcome.faults.push_back({source->path(), "cannot be written: " + why});
    return source;
  }
  outcome.said = "mended " + harmless(source->path());
  return std::make_shared<base::Source>(source->path(), better);
}

}  // namespace tamis::cli
