#include <string_view>

#include "core/cli/record_of.h"
#include "core/record/words.h"

namespace tamis::cli {
namespace {

using record::Word;

// Paper first, A4 and Letter alike: no page size is set, widths go with the sheet. Black on white, told apart by weight and
// rules.
constexpr std::string_view style = R"(
:root { --ink: #161514; --soft: #57534d; --rule: #8d887f; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 52rem; padding: 1.25rem; color: var(--ink); background: #fff;
  font: 15px/1.4 "Noto Sans", "Segoe UI", Roboto, "Liberation Sans", "DejaVu Sans", sans-serif; font-variant-numeric: lining-nums tabular-nums; }
h1 { font-size: 1.7rem; line-height: 1.15; margin: 0; text-wrap: balance; }
h2 { font-size: 1rem; margin: 0; }
p { margin: 0; }
header { border-bottom: 4px solid; padding-bottom: .5rem; display: flex; flex-wrap: wrap;
  justify-content: space-between; align-items: end; gap: .25rem 2rem; }
.kind { font-weight: 700; letter-spacing: .08em; text-transform: uppercase; font-size: .8rem; }
.id { color: var(--soft); font-size: .85rem; text-align: right; }
section { margin-top: 1.1rem; }
.fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0 1.25rem; }
.field { border-bottom: 1px solid; padding-top: 1.7rem; font-size: .8rem; color: var(--soft); }
.field span { display: inline-block; transform: translateY(1.35em); }
.fields { padding-bottom: 1rem; }
table { border-collapse: collapse; width: 100%; margin-top: .35rem; }
th, td { border: 1px solid var(--rule); padding: .2rem .45rem; text-align: left; vertical-align: middle;
  font-weight: 400; overflow-wrap: anywhere; }
thead th { overflow-wrap: normal; font-size: .78rem; color: var(--soft); border-top: 0; border-left-color: transparent;
  border-right-color: transparent; padding-block: .1rem; }
tbody tr { height: 1.75rem; }
.control { border: 3px solid; }
.control > h2 { background: var(--ink); color: #fff; padding: .3rem .6rem; -webkit-print-color-adjust: exact;
  print-color-adjust: exact; }
.control > div { padding: .45rem .6rem .6rem; }
.limit { font-weight: 700; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: 0 .8rem; margin: .25rem 0 0; font-size: .88rem; }
dt { color: var(--soft); } dd { margin: 0; }
.control table { table-layout: fixed; }
.control tbody tr { height: 2rem; }
.c1 { width: 31%; } .c2 { width: 14%; } .c3 { width: 12%; } .c4 { width: 12%; }
.lots { table-layout: fixed; } .lots .l1 { width: 38%; } .lots .l2 { width: 14%; } .lots .l4 { width: 12%; }
.unit { float: right; color: var(--soft); font-size: .85rem; }
footer { margin-top: 1.4rem; font-size: .8rem; color: var(--soft); border-top: 1px solid var(--rule); padding-top: .4rem; }
.control, tr, .keep { break-inside: avoid; }
thead { display: table-header-group; }
@media screen and (max-width: 34rem) {
  .control table, .lots { table-layout: auto; } .id { text-align: left; } th, td { padding-inline: .25rem; } thead th { font-size: .68rem; }
}
@media print, (min-width: 34.01rem) { dl { grid-template-columns: max-content 1fr max-content 1fr; } }
@page { margin: 13mm; }
@media print { body { max-width: none; padding: 0; font-size: 10.5pt; } }
)";

std::string text(std::string_view plain) {
  std::string out;
  for (const char c : plain) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t') out += c;
    }
  }
  return out;
}

/// The scale that the reading is written in: that of what is asked.
std::string unit_of(const record::Line& line) {
  return record::scale_of(line.asked) == record::Scale::fahrenheit ? "°F" : "°C";
}

class Page {
 public:
  Page(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points)
      : fiche_(fiche), points_(points), lines_(record::blank_record(fiche, points)) {}

  std::string write() {
    const std::string revision = record::revision_of(fiche_);
    std::string out = "<!DOCTYPE html>\n<html lang=\"" + std::string(record::spoken(fiche_.language)) + "\"><head>";
    out += "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n";
    out += "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n";
    out += "<title>" + say(Word::batch_record) + ": " + text(fiche_.title) + "</title>\n<style>" + std::string(style);
    out += "</style></head>\n<body><header><div><p class=\"kind\">" + say(Word::batch_record) + "</p><h1>" + text(fiche_.title);
    out += "</h1></div><p class=\"id\">" + text(fiche_.id) + (revision.empty() ? "" : "<br/>" + text(revision)) +
           "</p></header>\n<main>";
    out += "<section class=\"fields\">" + field(Word::date) + field(Word::batch_number) + size() + field(Word::made_by) +
           "</section>\n";
    out += lots() + probe();
    for (const record::ControlPoint& point : points_) out += control(point);
    out += "<section class=\"fields keep\">" + field(Word::verified_by) + field(Word::date) + field(Word::signature) +
           "</section>\n";
    return out + "</main><footer>" + say(Word::decides) + " " + say(Word::as_read) + "</footer></body></html>\n";
  }

 private:
  [[nodiscard]] std::string say(Word word, std::string_view x = {}) const {
    return text(record::said(word, fiche_.language, x));
  }
  [[nodiscard]] static std::string field_of(const std::string& html) {
    return "<p class=\"field\"><span>" + html + "</span></p>";
  }
  [[nodiscard]] std::string field(Word word) const { return field_of(say(word)); }
  [[nodiscard]] std::string head(Word word, std::string_view column = {}) const {
    const std::string marked = column.empty() ? "" : " class=\"" + std::string(column) + "\"";
    return "<th" + marked + " scope=\"col\">" + say(word) + "</th>";
  }
  [[nodiscard]] std::string fact(Word word, const std::string& says) const {
    return says.empty() ? "" : "<dt>" + say(word) + "</dt><dd>" + text(says) + "</dd>";
  }

  [[nodiscard]] std::string size() const {
    for (const record::Line& line : lines_) {
      if (line.part == record::part::batch && line.of == "size" && !line.asked.empty())
        return field_of(say(Word::size_of_fiche, line.asked));
    }
    return field(Word::size);
  }

  [[nodiscard]] std::string lots() const {
    std::string rows;
    for (const record::Line& line : lines_) {
      if (line.part != record::part::lot) continue;
      rows += "<tr><th scope=\"row\">" + text(line.of) + "</th><td>" + text(line.asked) + "</td><td></td><td></td></tr>\n";
    }
    if (rows.empty()) return "";
    return "<section><h2>" + say(Word::lots) + "</h2><table class=\"lots\"><thead><tr>" + head(Word::food, "l1") +
           head(Word::amount, "l2") + head(Word::supplier) + head(Word::initials, "l4") + "</tr></thead><tbody>\n" + rows +
           "</tbody></table></section>\n";
  }

  [[nodiscard]] std::string probe() const {
    std::string rows;
    for (const record::Line& line : lines_) {
      if (line.part != record::part::probe) continue;
      rows += "<tr><th scope=\"row\" class=\"c1\">" + say(line.of == "in ice water" ? Word::in_ice : Word::in_boiling) +
              "</th><td>";
      rows += text(line.asked) + "</td><td class=\"c2\"><span class=\"unit\">" + unit_of(line) +
              "</span></td><td class=\"c4\"></td></tr>\n";
    }
    return "<section class=\"keep\"><h2>" + say(Word::probe_check) + "</h2><table><thead><tr>" + head(Word::where) +
           head(Word::should_be) + head(Word::read) + head(Word::initials) + "</tr></thead><tbody>\n" + rows +
           "</tbody></table></section>\n";
  }

  [[nodiscard]] std::string control(const record::ControlPoint& point) const {
    const bool by_hand = point.asks.way == record::ControlLimit::Way::none;
    std::string rows;
    for (const record::Line& line : lines_) {
      if (line.point != point.number) continue;
      const std::string found = by_hand ? say(Word::yes_no) : "<span class=\"unit\">" + unit_of(line) + "</span>";
      rows += "<tr><th scope=\"row\">" + (by_hand ? say(Word::met) : text(line.asked)) + "</th><td>" + found +
              "</td><td></td><td></td><td></td></tr>\n";
    }
    std::string out = "<section class=\"control\"><h2>" + say(Word::control_point, std::to_string(point.number));
    out += (point.hazard.empty() ? "" : ": " + text(point.hazard)) + "</h2><div><p class=\"limit\">" + text(point.limit) +
           "</p><dl>";
    out += fact(Word::where, point.where) + fact(Word::check, point.check) + fact(Word::often, point.often);
    out += fact(Word::who, point.who) + fact(Word::if_missed, point.action) + fact(Word::kept_in, point.record);
    out += "</dl><table><thead><tr>" + head(Word::asked, "c1") + head(Word::read, "c2") + head(Word::time, "c3");
    out += head(Word::initials, "c4") + head(Word::action) + "</tr></thead><tbody>\n";
    return out + rows + "</tbody></table></div></section>\n";
  }

  const fiche::Fiche& fiche_;
  const std::vector<record::ControlPoint>& points_;
  std::vector<record::Line> lines_;
};

}  // namespace

std::string blank_html(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points) {
  return Page(fiche, points).write();
}

}  // namespace tamis::cli
