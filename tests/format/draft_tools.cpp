#include "tests/format/draft_tools.h"

#include <algorithm>
#include <filesystem>

#include "core/base/utf8.h"
#include "tests/shared_files.h"

namespace tamis::tests {
namespace {

void collect(const fiche::Document& document, fiche::Node node, fiche::El el, std::vector<fiche::Node>& found) {
  for (fiche::Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != fiche::NodeKind::element) continue;
    if (document.el(c) == el) found.push_back(c);
    collect(document, c, el, found);
  }
}

void put(const fiche::Document& document, fiche::Node node, std::string& out) {
  for (fiche::Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::text) out += document.value(c);
    if (document.kind(c) != fiche::NodeKind::element) continue;
    out += "<" + std::string(document.name(c));
    for (fiche::Attr a = document.first_attribute(c); a != fiche::none; a = document.next_attribute(a)) {
      out += " " + std::string(document.attribute_name(a)) + "=\"" + std::string(document.attribute_value(a)) + "\"";
    }
    out += ">";
    put(document, c, out);
    out += "</" + std::string(document.name(c)) + ">";
  }
}

}  // namespace

format::Drafted drafted(std::string_view typed, const std::string& language, const std::string& units) {
  const base::Source source("draft.txt", std::string(typed));
  const fiche::Kitchen kitchen;
  format::DraftWish wish;
  wish.language = language;
  wish.units = units;
  return format::read_draft(source, kitchen, wish);
}

std::shared_ptr<fiche::Document> fiche_of(const format::Drafted& drafted) {
  return format::read_xml(std::make_shared<base::Source>("draft.fiche.xml", drafted.xml)).document;
}

std::string questions_of(std::string_view typed, const format::Drafted& drafted) {
  const base::Source source("draft.txt", std::string(typed));
  std::string out;
  for (const format::Question& question : drafted.questions) {
    const base::Place place = source.place(question.where.begin);
    out += std::to_string(place.line) + ":" + std::to_string(place.column) + ": " + question.words + "\n";
  }
  return out;
}

std::vector<fiche::Node> all_of(const fiche::Document& document, fiche::El el) {
  std::vector<fiche::Node> found;
  collect(document, document.top(), el, found);
  return found;
}

std::string inner_xml(const fiche::Document& document, fiche::Node node) {
  std::string out;
  put(document, node, out);
  return folded(out);
}

std::string ingredient_line(const fiche::Document& document, fiche::Node node, bool with_food) {
  std::string out = folded(document.direct_text(node) + " |");
  for (fiche::Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a)) {
    const std::string_view name = document.attribute_name(a);
    if (name == "id" || (name == "food" && !with_food)) continue;
    out += " " + std::string(name) + "=" + std::string(document.attribute_value(a));
  }
  return out;
}

std::string folded(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!space) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::vector<std::string> draft_names() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TAMIS_SOURCE_DIR) + "/tests/drafts")) {
    const std::string name = entry.path().filename().string();
    const bool questions = name.find(".questions.txt") != std::string::npos;
    if (entry.path().extension() == ".txt" && !questions) names.push_back(entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace tamis::tests
