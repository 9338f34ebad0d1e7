#include "core/base/utf8.h"
#include "core/cli/folded.h"
#include "core/cli/output.h"
#include "core/cli/record_of.h"

namespace tamis::cli {
namespace {

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

std::string unit_of(const record::Line& line) { return record::scale_of(line.asked) == record::Scale::fahrenheit ? "°F" : "°C"; }

std::string control_text(const record::ControlPoint& point) {
  std::string out = "\nControl point " + std::to_string(point.number);
  out += harmless((point.where.empty() ? "" : ", " + point.where) + (point.hazard.empty() ? "" : ": " + point.hazard)) + "\n";
  out += "  " + folded(harmless("limit: " + point.limit), 9, 2) + "\n";
  std::string how = point.check;
  for (const std::string& more : {point.often, point.who.empty() ? point.who : "by " + point.who}) {
    if (!more.empty()) how += (how.empty() ? "" : ", ") + more;
  }
  if (!how.empty()) out += "  " + folded(harmless("check: " + how), 9, 2) + "\n";
  if (!point.action.empty()) out += "  " + folded(harmless("if missed: " + point.action), 13, 2) + "\n";
  return out;
}

}  // namespace

std::string blank_text(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points) {
  const std::string revision = record::revision_of(fiche);
  std::string out = "BATCH RECORD  " + harmless(fiche.title) + "\n" +
                    harmless(std::string(fiche.id) + (revision.empty() ? "" : ", " + revision)) + "\n\n";
  const std::vector<record::Line> lines = record::blank_record(fiche, points);
  std::string size;
  for (const record::Line& line : lines) {
    if (line.part == record::part::batch && line.of == "size") size = line.asked;
  }
  out += "  " + padded(blank("date", 36), 38) + blank("batch number", 40) + "\n\n";
  out +=
      "  " + padded(blank("size" + (size.empty() ? size : " (" + harmless(size) + ")"), 36), 38) + blank("made by", 40) + "\n";
  out += "\nSupplier's lots\n";
  for (const record::Line& line : lines) {
    if (line.part == record::part::lot) out += lot_line(line);
  }
  out += "\nProbe check\n";
  for (const record::Line& line : lines) {
    if (line.part == record::part::probe) out += "  " + padded(line.of + ": " + line.asked, 44) + " ______ " + unit_of(line) + "  by ______\n";
  }
  std::size_t at = 0;
  for (const record::ControlPoint& point : points) {
    out += control_text(point);
    for (; at < lines.size() && lines[at].point != point.number; ++at) {
    }
    for (; at < lines.size() && lines[at].point == point.number; ++at) {
      const bool by_hand = point.asks.way == record::ControlLimit::Way::none;
      out += "\n  " + harmless(by_hand ? "met? yes / no" : lines[at].asked) + "\n    " +
             std::string(by_hand ? "by ______  action ______________________________" : "______ " + unit_of(lines[at]) + "  at ____:____  by ______  action ____________________") + "\n";
    }
  }
  out += "\n  " + padded(blank("verified by", 44), 46) + blank("date", 30) + "\n\n" + std::string(who_decides) + "\n";
  return out;
}

}  // namespace tamis::cli
