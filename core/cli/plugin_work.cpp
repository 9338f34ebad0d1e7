#include "core/cli/plugin_work.h"

#include "core/cli/checking.h"
#include "core/cli/frames.h"
#include "core/cli/output.h"
#include "core/cli/plugin_choice.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

// Frames of a task's bytes: path and bytes of each fiche; of an outcome's part: name and bytes of each file.
void put_frame(std::string& out, std::string_view bytes) { append_frame(out, 0, bytes); }

std::string take_frame(std::string_view& bytes) {
  Frame frame;
  const std::size_t taken = first_frame(bytes, frame);
  std::string text(frame.bytes);
  bytes.remove_prefix(taken);
  return text;
}

}  // namespace

PluginWork::PluginWork(Wish wish, bool all, Surroundings& surroundings, Report& report, Totals& totals, Put put)
    : wish_(std::move(wish)), all_(all), surroundings_(surroundings), report_(report), totals_(totals), put_(std::move(put)),
      crew_(1, [this](const Task& task) { return work(task); }, [this](const Outcome& outcome) { return take(outcome); },
            [](const Task&) { return true; }) {}

bool PluginWork::give(const std::vector<std::shared_ptr<const base::Source>>& sources) {
  Task task;
  task.path = sources.front()->path();
  task.held = true;
  for (const auto& source : sources) {
    put_frame(task.bytes, source->path());
    put_frame(task.bytes, source->bytes());
  }
  return crew_.give(std::move(task));
}

std::vector<lua::MadeFile> PluginWork::made(const Task& task, const Documents& documents, Findings& findings,
                                            Outcome& outcome) {
  Chosen chosen = choose_plugin(surroundings_.plugins(task.path), wish_.kind, wish_.name, wish_.settings, task.without);
  outcome.faults = std::move(chosen.faults);
  if (chosen.plugin == nullptr) {
    for (const LeftOut& one : task.without) findings.front().push_back(left_out(one));
    if (!outcome.faults.empty()) outcome.totals.failed = 1;
    return {};
  }
  const fiche::Kitchen& kitchen = *surroundings_.of(task.path).kitchen;
  fiche::Library& library = surroundings_.library(task.path);
  if (wish_.kind == lua::Addition::Kind::conversion) {
    lua::PluginConverted converted = chosen.plugin->convert(*chosen.addition, *documents.front(), kitchen, library);
    outcome.talk = harmless(converted.talk);
    findings.front() = std::move(converted.findings);
    if (!converted.done) return {};
    return {{"", format::write(converted.document)}};
  }
  lua::ExportedAll exported = chosen.plugin->export_all(*chosen.addition, documents, kitchen, library);
  outcome.talk = harmless(exported.talk);
  findings = std::move(exported.findings);
  return std::move(exported.files);
}

Outcome PluginWork::work(const Task& task) {
  Outcome outcome;
  outcome.path = task.path;
  if (!task.fault.empty()) {
    outcome.faults.push_back({task.path, task.fault});
    outcome.totals.failed = 1;
    return outcome;
  }
  std::vector<std::shared_ptr<const base::Source>> sources;
  Documents documents;
  Findings findings;
  for (std::string_view bytes = task.bytes; !bytes.empty();) {
    const std::string path = take_frame(bytes);
    sources.push_back(std::make_shared<const base::Source>(path, take_frame(bytes)));
    format::Read read = format::read(sources.back());
    if (read.document == nullptr) {
      findings.push_back(std::move(read.findings));
      continue;
    }
    if (read.document->el(read.document->root()) != fiche::El::fiche) return outcome;  // a kitchen file is no recipe
    findings.emplace_back();
    documents.push_back(read.document);
  }
  std::vector<lua::MadeFile> files;
  if (documents.size() == sources.size()) files = made(task, documents, findings, outcome);
  if (!outcome.faults.empty()) return outcome;
  for (std::size_t i = 0; i < sources.size(); ++i) {
    base::sort_by_place(findings[i]);
    outcome.totals.add(findings[i]);
    outcome.said += report_.spelled(*sources[i], findings[i]);
  }
  // What came of it, though it may be no file at all.
  outcome.mendable = true;
  for (const lua::MadeFile& file : files) {
    put_frame(outcome.part, file.name);
    put_frame(outcome.part, file.bytes);
  }
  return outcome;
}

bool PluginWork::take(const Outcome& outcome) {
  for (const Fault& fault : outcome.faults) {
    if (fault.path.empty())
      complain(fault.why);
    else
      report_.failed(fault.path, fault.why);
  }
  talk(outcome.talk);
  totals_.add(outcome.totals);
  report_.part(outcome.said);
  if (outcome.mendable) {
    std::vector<lua::MadeFile> files;
    for (std::string_view bytes = outcome.part; !bytes.empty();) {
      lua::MadeFile& file = files.emplace_back();
      file.name = take_frame(bytes);
      file.bytes = take_frame(bytes);
    }
    put_(outcome.path, files);
  }
  return !output_gone() && (all_ || totals_.failed == 0);
}

}  // namespace tamis::cli
