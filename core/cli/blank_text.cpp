#include "core/base/utf8.h"
#include "core/cli/folded.h"
#include "core/cli/output.h"
#include "core/cli/record_of.h"
#include "core/record/words.h"

namespace tamis::cli {
namespace {

using record::Word;

/// Filled up to so many columns with `with`, cut never.
std::string padded(const std::string& text, std::size_t width, char with = ' ') {
  const std::size_t has = base::terminal_width(text);
  return has < width ? text + std::string(width - has, with) : text;
}

/// "  date ______________".
std::string blank(const std::string& name, std::size_t columns) {
  const std::size_t has = base::terminal_width(name) + 1;
  return name + " " + std::string(columns > has + 8 ? columns - has : 8, '_');
}

std::string lot_line(const record::Line& line) {
  const std::string what = harmless(line.of + (line.asked.empty() ? "" : ", " + line.asked));
  return "  " + padded(what + " ", 42, '.') + " " + std::string(page_width - 45, '_') + "\n";
}

std::string unit_of(const record::Line& line) {
  return record::scale_of(line.asked) == record::Scale::fahrenheit ? "°F" : "°C";
}

class Page {
 public:
  Page(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points)
      : fiche_(fiche), points_(points), lines_(record::blank_record(fiche, points)) {}

  std::string write() {
    const std::string revision = record::revision_of(fiche_);
    out_ = say(Word::batch_record) + ": " + harmless(fiche_.title) + "\n" +
           harmless(std::string(fiche_.id) + (revision.empty() ? "" : ", " + revision)) + "\n\n";
    std::string size = say(Word::size);
    for (const record::Line& line : lines_) {
      if (line.part == record::part::batch && line.of == "size" && !line.asked.empty())
        size += " (" + harmless(line.asked) + ")";
    }
    out_ += "  " + padded(blank(say(Word::date), 36), 38) + blank(say(Word::batch_number), 40) + "\n\n";
    out_ += "  " + padded(blank(size, 36), 38) + blank(say(Word::made_by), 40) + "\n\n" + say(Word::lots) + "\n";
    for (const record::Line& line : lines_) {
      if (line.part == record::part::lot) out_ += lot_line(line);
    }
    out_ += "\n" + say(Word::probe_check) + "\n";
    for (const record::Line& line : lines_) {
      if (line.part != record::part::probe) continue;
      const std::string where = say(line.of == "in ice water" ? Word::in_ice : Word::in_boiling) + ": " + line.asked;
      out_ += "  " + padded(where, 46) + " ______ " + unit_of(line) + "  " + say(Word::initials) + " ______\n";
    }
    for (const record::ControlPoint& point : points_) control(point);
    out_ += "\n  " + padded(blank(say(Word::verified_by), 44), 46) + blank(say(Word::date), 30) + "\n\n";
    return out_ + folded(say(Word::decides), 0) + "\n";
  }

 private:
  [[nodiscard]] std::string say(Word word, std::string_view x = {}) const { return record::said(word, fiche_.language, x); }

  void fact(Word word, const std::string& says) {
    if (!says.empty()) out_ += "  " + folded(harmless(say(word) + ": " + says), 6, 2) + "\n";
  }

  void control(const record::ControlPoint& point) {
    out_ += "\n" + say(Word::control_point, std::to_string(point.number)) +
            harmless((point.where.empty() ? "" : ", " + point.where) + (point.hazard.empty() ? "" : ": " + point.hazard)) +
            "\n";
    fact(Word::limit, point.limit);
    fact(Word::check, point.check);
    fact(Word::often, point.often);
    fact(Word::who, point.who);
    fact(Word::if_missed, point.action);
    const bool by_hand = point.asks.way == record::ControlLimit::Way::none;
    for (const record::Line& line : lines_) {
      if (line.point != point.number) continue;
      out_ += "\n  " + harmless(by_hand ? say(Word::met) + " " + say(Word::yes_no) : line.asked) + "\n    ";
      if (!by_hand) out_ += "______ " + unit_of(line) + "  " + say(Word::time) + " ____:____  ";
      out_ += say(Word::initials) + " ______  " + blank(say(Word::action), 32) + "\n";
    }
  }

  const fiche::Fiche& fiche_;
  const std::vector<record::ControlPoint>& points_;
  std::vector<record::Line> lines_;
  std::string out_;
};

}  // namespace

std::string blank_text(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points) {
  return Page(fiche, points).write();
}

}  // namespace tamis::cli
