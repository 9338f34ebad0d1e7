#include "core/lua/plugin.h"

#include <algorithm>
#include <cassert>
#include <map>

#include "core/base/nearest.h"
#include "core/format/format.h"
#include "core/lua/session.h"
#include "core/lua/watch.h"

namespace tamis::lua {
namespace {

using fiche::Document;
using fiche::El;
using fiche::Node;

std::string file_name(const base::Source& source) {
  const std::string& path = source.path();
  return path.substr(path.rfind('/') + 1);
}

/// A line of a program, from its first letter on; the last one with letters before it, where it has none.
base::Span line_span(const base::Source& source, int line) {
  std::string_view words;
  for (auto number = static_cast<std::uint32_t>(std::max(line, 1)); number > 0 && words.empty(); --number)
    words = source.line(number);
  if (words.empty()) return {};
  const auto start = static_cast<std::uint32_t>(words.data() - source.bytes().data());
  const auto indent = static_cast<std::uint32_t>(std::min(words.find_first_not_of(" \t"), words.size() - 1));
  return {start + indent, start + static_cast<std::uint32_t>(words.size())};
}

base::Span title_span(const Document& document) {
  if (document.root() == fiche::none) return {};
  const Node title = document.child(document.root(), El::title);
  return document.head_span(title == fiche::none ? document.root() : title);
}

base::Severity severity_of(const fiche::Kitchen& kitchen, std::string_view rule, base::Severity usual) {
  const auto own = kitchen.severities.find(rule);
  return own == kitchen.severities.end() ? usual : own->second;
}

using Counts = std::map<std::string, std::size_t, std::less<>>;

/// Errors of a document by rule, and the first of each.
Counts errors_of(const std::vector<base::Finding>& findings) {
  Counts counts;
  for (const base::Finding& finding : findings)
    if (finding.severity == base::Severity::error) ++counts[finding.rule];
  return counts;
}

/// The first error of `after` whose rule is said more often than before; null when there is none.
const base::Finding* new_error(const std::vector<base::Finding>& before, const std::vector<base::Finding>& after) {
  const Counts old = errors_of(before);
  const Counts now = errors_of(after);
  for (const base::Finding& finding : after) {
    if (finding.severity != base::Severity::error) continue;
    const auto was = old.find(finding.rule);
    if (now.find(finding.rule)->second > (was == old.end() ? 0 : was->second)) return &finding;
  }
  return nullptr;
}

/// A name for the one file of an export: the fiche's id with the export's ending; of many fiches the export's own id.
std::string usual_name(const Document& document, const Addition& wanted) {
  const std::string ending = "." + (wanted.ending.empty() ? "txt" : wanted.ending);
  if (wanted.over_all) return wanted.id + ending;
  std::string name;
  for (const char c : document.get(document.root(), fiche::At::id)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' ||
                       (c == '.' && !name.empty());
    if (plain) name += c;
  }
  if (name.empty()) name = "fiche";
  return name + ending;
}

}  // namespace

Plugin::Plugin(const PluginFiles& files, const Manifest& manifest, Settings settings)
    : manifest_(manifest), path_(files.path), settings_(std::move(settings)), programs_(files.programs),
      engine_(manifest.limits) {}

std::unique_ptr<Plugin> Plugin::load(const PluginFiles& files, const Manifest& manifest, Settings settings,
                                     std::vector<LoadFault>& faults) {
  const Watched watched(manifest.id, manifest.limits.time);
  std::unique_ptr<Plugin> made(new Plugin(files, manifest, std::move(settings)));
  if (!manifest.additions.empty() && (files.programs.empty() || file_name(*files.programs.back()) != "plugin.lua")) {
    LoadFault fault{manifest.document->shared_source(), {}};
    fault.finding.rule = "plugin-error";
    fault.finding.where = manifest.additions.front().where;
    fault.finding.message = "there is no plugin.lua for " + manifest.additions.front().id;
    fault.finding.advice = "write function " + manifest.additions.front().call + "(fiche) ... end in plugin.lua beside plugin.xml";
    faults.push_back(std::move(fault));
    return nullptr;
  }
  if (!made->compile(files, faults) || !made->try_out(faults)) return nullptr;
  return made;
}

LoadFault Plugin::fault_of(const Failure& failure) const {
  LoadFault fault;
  fault.source = programs_.empty() ? manifest_.document->shared_source() : programs_.back();
  for (const auto& program : programs_)
    if (file_name(*program) == failure.file) fault.source = program;
  fault.finding.rule = "plugin-error";
  fault.finding.message = failure.what;
  fault.finding.advice = "mend the plugin, or take it out of kitchen.xml until it is mended";
  if (failure.line > 0) fault.finding.where = line_span(*fault.source, failure.line);
  return fault;
}

bool Plugin::compile(const PluginFiles& files, std::vector<LoadFault>& faults) {
  bool good = true;
  for (const auto& program : files.programs) {
    Failure failure;
    if (engine_.compile(*program, file_name(*program), failure)) continue;
    faults.push_back(fault_of(failure));
    good = false;
  }
  return good;
}

bool Plugin::try_out(std::vector<LoadFault>& faults) {
  const fiche::Kitchen kitchen;
  Session session(kitchen, fiche::empty_library(), manifest_, settings_);
  Failure failure;
  if (!engine_.start(session, failure)) {
    faults.push_back(fault_of(failure));
    return false;
  }
  bool good = true;
  const std::vector<std::string> names = engine_.functions();
  const std::vector<std::string_view> views(names.begin(), names.end());
  for (const Addition& addition : manifest_.additions) {
    if (engine_.has_function(addition.call)) continue;
    LoadFault fault;
    fault.source = manifest_.document->shared_source();
    fault.finding.rule = "plugin-error";
    fault.finding.where = addition.where;
    fault.finding.message = "plugin.lua has no function \"" + addition.call + "\" for " + addition.id;
    const std::string_view near = base::nearest(addition.call, views);
    fault.finding.advice = near.empty() ? "write function " + addition.call + "(fiche) ... end in plugin.lua, without local"
                                        : "did you mean \"" + std::string(near) + "\"?";
    faults.push_back(std::move(fault));
    good = false;
  }
  return good;
}

std::string Plugin::source_name() const { return "plugin " + manifest_.id + " " + manifest_.version; }

void Plugin::complain(Session& session, const Addition& addition, const Failure& failure) {
  const base::Severity severity = severity_of(session.kitchen, "plugin-error", base::Severity::error);
  if (severity == base::Severity::off) return;
  const Document& document = session.main->document();
  base::Finding made;
  made.rule = "plugin-error";
  made.severity = severity;
  made.where = session.in_hand == fiche::none ? title_span(document) : document.head_span(session.in_hand);
  made.message = "plugin " + manifest_.id + ", " + addition.call;
  if (failure.line > 0) made.message += " at " + failure.file + ":" + std::to_string(failure.line);
  if (session.in_hand != fiche::none) made.message += ", <" + std::string(document.name(session.in_hand)) + "> in hand";
  made.message += ": " + failure.what;
  made.advice = addition.kind == Addition::Kind::check ? "mend the plugin; what else it would have found here is not known"
                                                       : "mend the plugin; nothing was made";
  made.source = source_name();
  session.main->findings.push_back(std::move(made));
}

/// One call; `started` says whether the environment at hand is fresh enough for it.
bool Plugin::work(Session& session, const Addition& addition, bool& started, std::vector<MadeFile>* made) {
  session.adding = &addition;
  std::vector<std::size_t> findings;
  for (const Opened* one : session.given()) findings.push_back(one->findings.size());
  const std::size_t talk = session.talk.size();
  const std::size_t told = session.told;
  for (bool again : {true, false}) {
    Failure failure;
    session.in_hand = fiche::none;
    const bool good = (started || engine_.start(session, failure)) && engine_.call(session, addition.call, made, failure);
    started = good;
    if (good) return true;
    if (again && failure.memory && session.written == 0) {
      // What earlier fiches left in memory must not tell in this one.
      engine_.collect();
      for (std::size_t i = 0; i < findings.size(); ++i) session.given()[i]->findings.resize(findings[i]);
      session.talk.resize(talk);
      session.told = told;
      session.copies = 0;
      if (made != nullptr) made->clear();
      continue;
    }
    if (engine_.meter().late()) session.in_hand = fiche::none;
    complain(session, addition, failure);
    break;
  }
  return false;
}

void Plugin::run_checks(rules::Check& check, std::string& talk) {
  const Document& document = check.document;
  if (document.root() == fiche::none || document.el(document.root()) != El::fiche) return;
  const Watched watched(manifest_.id, manifest_.limits.time);
  engine_.start_clock();
  Session session(check.kitchen, check.library, manifest_, settings_);
  Opened& at_hand = session.give(std::make_unique<Opened>(session, check.fiche, check.flow));
  session.source = source_name();
  bool started = false;
  for (const Addition& addition : manifest_.additions) {
    if (addition.kind != Addition::Kind::check) continue;
    session.severity = severity_of(check.kitchen, addition.id, addition.severity);
    if (session.severity == base::Severity::off) continue;
    work(session, addition, started, nullptr);
    for (base::Finding& finding : at_hand.findings) check.add(std::move(finding));
    at_hand.findings.clear();
    if (engine_.meter().late()) break;
  }
  talk += session.talk;
}

PluginConverted Plugin::convert(const Addition& conversion, const Document& document, const fiche::Kitchen& kitchen,
                                fiche::Library& library) {
  assert(conversion.kind == Addition::Kind::conversion);
  const Watched watched(manifest_.id, manifest_.limits.time);
  engine_.start_clock();
  engine_.collect();
  Document copy = document.clone();
  Session session(kitchen, library, manifest_, settings_);
  Opened& at_hand = session.give(std::make_unique<Opened>(session, copy));
  session.source = source_name();
  session.severity = severity_of(kitchen, conversion.id, base::Severity::warning);
  bool started = false;
  bool done = work(session, conversion, started, nullptr);
  if (done) {
    const auto source = std::make_shared<base::Source>(document.source().path(), format::write(copy));
    const format::Read again = format::read(source);
    std::vector<base::Finding> after =
        again.document == nullptr ? again.findings : rules::check(*again.document, kitchen, library);
    if (const base::Finding* worse = new_error(rules::check(document, kitchen, library), after)) {
      session.in_hand = fiche::none;
      const base::Place at = source->place(worse->where.begin);
      complain(session, conversion,
               {"what it made cannot be used, line " + std::to_string(at.line) + ", column " + std::to_string(at.column) + " of it: " +
                    worse->message,
                "", 0});
      done = false;
    }
  }
  return {done ? std::move(copy) : document.clone(), std::move(at_hand.findings), std::move(session.talk), done};
}

Exported Plugin::export_fiche(const Addition& wanted, const std::shared_ptr<const Document>& document,
                              const fiche::Kitchen& kitchen, fiche::Library& library) {
  ExportedAll made = export_all(wanted, {document}, kitchen, library);
  return {std::move(made.files), std::move(made.findings.front()), std::move(made.talk)};
}

ExportedAll Plugin::export_all(const Addition& wanted, const std::vector<std::shared_ptr<const Document>>& documents,
                               const fiche::Kitchen& kitchen, fiche::Library& library) {
  assert(wanted.kind == Addition::Kind::export_ && !documents.empty());
  const Watched watched(manifest_.id, manifest_.limits.time);
  engine_.start_clock();
  Session session(kitchen, library, manifest_, settings_);
  std::vector<Opened*> given;
  for (const auto& document : documents) given.push_back(&session.give(std::make_unique<Opened>(session, document)));
  session.source = source_name();
  session.severity = severity_of(kitchen, wanted.id, base::Severity::warning);
  std::vector<MadeFile> files;
  bool started = false;
  if (!work(session, wanted, started, &files)) files.clear();
  for (MadeFile& file : files)
    if (file.name.empty()) file.name = usual_name(*documents.front(), wanted);
  ExportedAll made{std::move(files), {}, std::move(session.talk)};
  for (Opened* one : given) made.findings.push_back(std::move(one->findings));
  return made;
}

void PluginChecks::run(rules::Check& check) {
  for (Plugin* plugin : plugins_) plugin->run_checks(check, talk_);
}

}  // namespace tamis::lua
