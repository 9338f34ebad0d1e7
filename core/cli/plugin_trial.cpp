#include "core/cli/plugin_trial.h"

#include <algorithm>
#include <memory>

#include "core/base/utf8.h"
#include "core/cli/file_library.h"
#include "core/cli/files.h"
#include "core/cli/finding_lines.h"
#include "core/format/format.h"
#include "core/lua/examples.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Kind = lua::Addition::Kind;

/// The files of the test's folder, seen from a recipe that is named without it.
class CaseLibrary final : public fiche::Library, public fiche::Pictures {
 public:
  explicit CaseLibrary(const PluginCase& one) : one_(one), files_(one.folder) {}
  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view from, std::string_view reference) override {
    return files_.open(real_name(from), reference);
  }
  base::Result<std::string> picture(std::string_view from, std::string_view reference) override {
    return files_.picture(real_name(from), reference);
  }
  std::vector<std::string> list(std::string_view from) override { return files_.list(real_name(from)); }

 private:
  [[nodiscard]] std::string real_name(std::string_view from) const {
    const bool ours = from == one_.fiche || from.starts_with("together/");
    return ours ? one_.folder + "/" + std::string(from) : std::string(from);
  }

  const PluginCase& one_;
  FileLibrary files_;
};

std::string fault_line(const std::string& path, const base::Source& source, const base::Finding& finding) {
  const base::Place place = source.place(finding.where.begin);
  std::string line = path + ":" + std::to_string(place.line) + ":" + std::to_string(place.column) + ": " + finding.message;
  return finding.advice.empty() ? line : line + "; " + finding.advice;
}

class Trying {
 public:
  Trying(const lua::PluginFiles& files, const lua::Manifest& manifest, const PluginCase& one)
      : files_(files), manifest_(manifest), one_(one), library_(one) {}

  Trial run(bool all) {
    if (!read_kitchen()) return std::move(out_);
    fiche::add_to_kitchen(kitchen_, *manifest_.document);
    if (!read_recipes() || !load()) return std::move(out_);
    const auto wanted = [&](const lua::Addition& addition) { return all || expects(one_, addition); };
    tell_errors();
    const bool checks = std::any_of(manifest_.additions.begin(), manifest_.additions.end(), [&](const auto& addition) {
      return addition.kind == Kind::check && wanted(addition);
    });
    if (checks) check();
    for (const lua::Addition& addition : manifest_.additions) {
      if (!wanted(addition)) continue;
      if (addition.kind == Kind::conversion) convert(addition);
      if (addition.kind == Kind::export_) make_files(addition);
    }
    return std::move(out_);
  }

 private:
  bool read(const std::string& name, std::shared_ptr<const fiche::Document>& document) {
    const std::string path = one_.folder + "/" + name;
    const auto file = read_file(path);
    if (!file) {
      out_.faults.push_back(path + ": " + file.fault().message);
      return false;
    }
    const auto source = std::make_shared<base::Source>(name, (*file)->bytes());
    const format::Read read = format::read(source);
    if (read.document == nullptr && !read.findings.empty())
      out_.faults.push_back(fault_line(path, *source, read.findings.front()));
    document = read.document;
    return document != nullptr && document->root() != fiche::none;
  }

  bool read_kitchen() {
    std::shared_ptr<const fiche::Document> document;
    if (!one_.has_kitchen) return true;
    if (!read("kitchen.xml", document)) return false;
    if (document->el(document->root()) != El::kitchen) {
      out_.faults.push_back(one_.folder + "/kitchen.xml: it is no kitchen file: its first element is not <kitchen>");
      return false;
    }
    kitchen_ = fiche::read_kitchen(document);
    return true;
  }

  /// The recipe, and those that stand beside it.
  bool read_recipes() {
    std::vector<std::string> names = {one_.fiche};
    names.insert(names.end(), one_.together.begin(), one_.together.end());
    for (const std::string& name : names) {
      std::shared_ptr<const fiche::Document> document;
      if (!read(name, document)) return false;
      if (document->el(document->root()) != El::fiche) {
        out_.faults.push_back(one_.folder + "/" + name + ": it is no fiche: its first element is not <fiche>");
        return false;
      }
      recipes_.push_back(std::move(document));
    }
    recipe_ = recipes_.front();
    return true;
  }

  bool load() {
    lua::Settings settings = lua::standard_settings(manifest_);
    std::vector<base::Finding> wrong;
    if (kitchen_.document != nullptr) {
      const fiche::Document& document = *kitchen_.document;
      for (Node n = document.first_child(document.root()); n != fiche::none; n = document.next(n))
        if (document.el(n) == El::plugin && base::trimmed(document.get(n, At::id)) == manifest_.id)
          lua::put_settings(manifest_, document, n, settings, wrong);
      for (const base::Finding& fault : wrong)
        out_.faults.push_back(fault_line(one_.folder + "/kitchen.xml", document.source(), fault));
    }
    if (!wrong.empty()) return false;
    std::vector<lua::LoadFault> faults;
    plugin_ = lua::Plugin::load(files_, manifest_, std::move(settings), faults);
    for (const lua::LoadFault& fault : faults)
      out_.faults.push_back(fault_line(fault.source->path(), *fault.source, fault.finding));
    return plugin_ != nullptr;
  }

  /// A slip in the recipe would have the plugin see something else than its author; where an error is meant, the test's
  /// kitchen.xml switches that rule off.
  void tell_errors() {
    for (const auto& recipe : recipes_)
      for (const base::Finding& finding : rules::check(*recipe, kitchen_, library_))
        if (finding.severity == base::Severity::error)
          out_.faults.push_back(fault_line(one_.folder + "/" + recipe->source().path(), recipe->source(), finding) + " [" +
                                finding.rule + "]");
  }

  /// Its own findings only: what the built-in rules say is theirs to test.
  [[nodiscard]] bool is_ours(const base::Finding& finding) const {
    return finding.source.starts_with("plugin " + manifest_.id + " ");
  }

  void check() {
    lua::PluginChecks checks({plugin_.get()});
    std::vector<base::Finding> findings = rules::check(*recipe_, kitchen_, library_, &checks);
    std::erase_if(findings, [this](const base::Finding& finding) { return !is_ours(finding); });
    out_.made["findings.txt"] = finding_lines(recipe_->source(), std::move(findings));
  }

  void say(const lua::Addition& addition, std::vector<base::Finding> findings) {
    if (!findings.empty())
      out_.made[place_of(addition) + ".findings.txt"] = finding_lines(recipe_->source(), std::move(findings));
  }

  void convert(const lua::Addition& addition) {
    lua::PluginConverted made = plugin_->convert(addition, *recipe_, kitchen_, library_);
    say(addition, std::move(made.findings));
    const std::string ending = one_.fiche.substr(one_.fiche.find('.'));
    if (made.done) out_.made[place_of(addition) + ending] = format::write(made.document);
  }

  void make_together(const lua::Addition& addition) {
    lua::ExportedAll made = plugin_->export_all(addition, recipes_, kitchen_, library_);
    std::string said;
    for (std::size_t i = 0; i < recipes_.size(); ++i) {
      const base::Source& source = recipes_[i]->source();
      if (!made.findings[i].empty())
        said += finding_lines(source, std::move(made.findings[i]), i == 0 ? "" : source.path() + ":");
    }
    if (!said.empty()) out_.made[place_of(addition) + ".findings.txt"] = said;
    for (lua::MadeFile& file : made.files) out_.made[place_of(addition) + "/" + file.name] = std::move(file.bytes);
  }

  void make_files(const lua::Addition& addition) {
    if (addition.over_all) return make_together(addition);
    lua::Exported made = plugin_->export_fiche(addition, recipe_, kitchen_, library_);
    say(addition, std::move(made.findings));
    for (lua::MadeFile& file : made.files) out_.made[place_of(addition) + "/" + file.name] = std::move(file.bytes);
  }

  const lua::PluginFiles& files_;
  const lua::Manifest& manifest_;
  const PluginCase& one_;
  CaseLibrary library_;
  fiche::Kitchen kitchen_;
  std::vector<std::shared_ptr<const fiche::Document>> recipes_;
  std::shared_ptr<const fiche::Document> recipe_;  ///< the first of them
  std::unique_ptr<lua::Plugin> plugin_;
  Trial out_;
};

std::string tried_example(const lua::PluginFiles& files, const lua::Manifest& manifest, const lua::Addition& check,
                          bool is_right) {
  const base::Place at = files.manifest->place(check.where.begin);
  const std::string start = files.manifest->path() + ":" + std::to_string(at.line) + ":" + std::to_string(at.column) +
                            ": the " + (is_right ? "right" : "wrong") + " example of " + check.id;
  const lua::TriedExample tried = lua::try_example(files, manifest, check, is_right ? check.right : check.wrong);
  std::string told;
  bool found = false;
  for (const lua::LoadFault& fault : tried.faults) told += start + ": " + fault.finding.message + "\n";
  for (const base::Finding& finding : tried.findings) {
    const bool own = finding.rule == check.id;
    found = found || own;
    if (own ? is_right : finding.severity == base::Severity::error)
      told += start + ": " + finding.message + (finding.advice.empty() ? "" : "; " + finding.advice) + " [" + finding.rule +
              "]\n";
  }
  if (!found && !is_right && told.empty()) told += start + ": the check does not find it\n";
  return told;
}

}  // namespace

Trial try_case(const lua::PluginFiles& files, const lua::Manifest& manifest, const PluginCase& one, bool all) {
  return Trying(files, manifest, one).run(all);
}

std::string tried_examples(const lua::PluginFiles& files, const lua::Manifest& manifest, const lua::Addition& check) {
  return tried_example(files, manifest, check, false) + tried_example(files, manifest, check, true);
}

}  // namespace tamis::cli
