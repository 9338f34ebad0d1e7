#include <algorithm>
#include <array>
#include <string>

#include "core/cli/checking.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"as", 0, "SPELLING", "the spelling to write; each file's own when not given", "xml|json"},
    Option{"write", 'w', "", "put it into the file; with --as, into a file beside it with the other ending", ""},
};

constexpr std::string_view help =
    R"(Prints the fiche laid out; white space may change, the meaning never. The other
spelling says the same: there and back gives the same file.

  $ tamis format --as json --write base/sweet-pastry.fiche.xml
  wrote base/sweet-pastry.fiche.json
)";

fiche::Spelling wanted(const Request& request, const fiche::Document& document) {
  const std::string as = request.get("as");
  if (as.empty()) return document.spelling();
  return as == "json" ? fiche::Spelling::json : fiche::Spelling::xml;
}

/// "a.fiche.xml" for JSON is "a.fiche.json"; a name without either ending gets the new one added.
std::string path_for(const std::string& path, fiche::Spelling spelling) {
  const std::string_view ending = spelling == fiche::Spelling::json ? ".json" : ".xml";
  const std::string_view other = spelling == fiche::Spelling::json ? ".xml" : ".json";
  if (path.ends_with(ending)) return path;
  const std::string stem = path.ends_with(other) ? path.substr(0, path.size() - other.size()) : path;
  return stem + std::string(ending);
}

class Format {
 public:
  explicit Format(const Request& request) : request_(request) {}

  Exit run() {
    Surroundings surroundings("");
    for_each_source(request_.words, surroundings, *report_, totals_, [this](const auto& source) {
      one(source);
      return !output_gone();
    });
    return totals_.exit();
  }

 private:
  void one(const std::shared_ptr<const base::Source>& source) {
    const format::Read read = format::read(source);
    if (read.document == nullptr) {
      report_->file(*source, read.findings);
      totals_.add(read.findings);
      return;
    }
    const fiche::Spelling spelling = wanted(request_, *read.document);
    const std::string text = format::lay_out(*read.document, spelling);
    if (request_.has("write"))
      write(*source, path_for(source->path(), spelling), text);
    else
      print(text);
  }

  void write(const base::Source& source, const std::string& path, const std::string& text) {
    if (path == source.path() && text == source.bytes()) return;
    const std::string why = write_file(path, text);
    if (why.empty()) {
      say("wrote " + harmless(path));
    } else {
      ++totals_.failed;
      report_->failed(path, "cannot be written: " + why);
    }
  }

  const Request& request_;
  std::unique_ptr<Report> report_ = talk_report();
  Totals totals_;
};

std::string misuse(const Request& request) {
  if (request.words.empty()) return "say what to lay out: a fiche, or a folder with --write";
  if (!request.has("write")) {
    const bool many = request.words.size() > 1 || kind_of(request.words.front()) == PathKind::folder;
    return many ? "more than one file can only be laid out in place: add --write" : "";
  }
  const bool input = std::find(request.words.begin(), request.words.end(), "-") != request.words.end();
  return input ? "standard input cannot be written to; leave --write out" : "";
}

Exit run_format(const Request& request) { return Format(request).run(); }

}  // namespace

extern const Verb verb_format;
const Verb verb_format{.name = "format",
                       .summary = "lay a fiche out neatly, or spell it in JSON or XML",
                       .usage = "tamis format [OPTIONS] PATH...",
                       .help = help,
                       .words = "FILE",
                       .options = options,
                       .misuse = misuse,
                       .run = run_format};

}  // namespace tamis::cli
