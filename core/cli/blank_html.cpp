#include <string_view>

#include "core/cli/record_of.h"

namespace tamis::cli {
namespace {

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
.fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr)); gap: 0 1.25rem; }
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

std::string field(std::string_view name) { return "<p class=\"field\"><span>" + text(name) + "</span></p>"; }

std::string fact(std::string_view name, const std::string& says) {
  return says.empty() ? "" : "<dt>" + std::string(name) + "</dt><dd>" + text(says) + "</dd>";
}

/// The scale that the reading is written in: that of what is asked.
std::string unit_of(const record::Line& line) { return record::scale_of(line.asked) == record::Scale::fahrenheit ? "°F" : "°C"; }

std::string lots_html(const std::vector<record::Line>& lines) {
  std::string rows;
  for (const record::Line& line : lines) {
    if (line.part != record::part::lot) continue;
    rows += "<tr><th scope=\"row\">" + text(line.of) + "</th><td>" + text(line.asked) + "</td><td></td><td></td></tr>\n";
  }
  if (rows.empty()) return "";
  return "<section><h2>Supplier’s lots</h2><table class=\"lots\"><thead><tr><th class=\"l1\" scope=\"col\">food</th><th "
         "class=\"l2\" scope=\"col\">amount</th>"
         "<th scope=\"col\">supplier, lot, use by</th><th class=\"l4\" scope=\"col\">initials</th></tr></thead><tbody>\n" +
         rows + "</tbody></table></section>\n";
}

std::string probe_html(const std::vector<record::Line>& lines) {
  std::string rows;
  for (const record::Line& line : lines) {
    if (line.part != record::part::probe) continue;
    rows += "<tr><th scope=\"row\" class=\"c1\">" + text(line.of) + "</th><td>" + text(line.asked) +
            "</td><td class=\"c2\"><span class=\"unit\">" + unit_of(line) + "</span></td><td class=\"c4\"></td></tr>\n";
  }
  return "<section class=\"keep\"><h2>Probe check, before the first reading</h2><table><thead><tr><th "
         "scope=\"col\">where</th><th scope=\"col\">should be</th>"
         "<th scope=\"col\">read</th><th scope=\"col\">initials</th></tr></thead><tbody>\n" +
         rows + "</tbody></table></section>\n";
}

std::string control_html(const record::ControlPoint& point, const std::vector<record::Line>& lines) {
  const bool by_hand = point.asks.way == record::ControlLimit::Way::none;
  std::string rows;
  for (const record::Line& line : lines) {
    if (line.point != point.number) continue;
    const std::string found = by_hand ? "yes / no" : "<span class=\"unit\">" + unit_of(line) + "</span>";
    rows += "<tr><th scope=\"row\">" + text(by_hand ? "met" : line.asked) + "</th><td>" + found +
            "</td><td></td><td></td><td></td></tr>\n";
  }
  return "<section class=\"control\"><h2>Control point " + std::to_string(point.number) +
         (point.hazard.empty() ? "" : ": " + text(point.hazard)) + "</h2><div><p class=\"limit\">" + text(point.limit) +
         "</p><dl>" + fact("where", point.where) + fact("check", point.check) + fact("how often", point.often) +
         fact("who", point.who) + fact("if missed", point.action) + fact("kept in", point.record) +
         "</dl><table><thead><tr><th class=\"c1\" scope=\"col\">asked</th><th class=\"c2\" scope=\"col\">read</th><th "
         "class=\"c3\" scope=\"col\">time</th><th class=\"c4\" scope=\"col\">initials</th>"
         "<th scope=\"col\">action taken</th></tr></thead><tbody>\n" +
         rows + "</tbody></table></div></section>\n";
}

}  // namespace

std::string blank_html(const fiche::Fiche& fiche, const std::vector<record::ControlPoint>& points) {
  const std::vector<record::Line> lines = record::blank_record(fiche, points);
  std::string size = "size";
  for (const record::Line& line : lines) {
    if (line.part == record::part::batch && line.of == "size" && !line.asked.empty())
      size += " (the fiche: " + line.asked + ")";
  }
  const std::string revision = record::revision_of(fiche);
  std::string out =
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/>\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\"/>\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n<title>Batch "
      "record: " +
      text(fiche.title) + "</title>\n<style>" + std::string(style) +
      "</style></head>\n<body><header><div><p class=\"kind\">Batch record</p><h1>" + text(fiche.title) +
      "</h1></div><p class=\"id\">" + text(fiche.id) + (revision.empty() ? "" : "<br/>" + text(revision)) +
      "</p></header>\n<main>";
  out += "<section class=\"fields\">" + field("date") + field("batch number") + field(size) + field("made by") + "</section>\n";
  out += lots_html(lines) + probe_html(lines);
  for (const record::ControlPoint& point : points) out += control_html(point, lines);
  out += "<section class=\"fields keep\">" + field("verified by") + field("date") + field("signature") + "</section>\n";
  return out + "</main><footer>" + std::string(who_decides) +
         " Write what was read, when it was read; strike out what is wrong, do not erase it.</footer></body></html>\n";
}

}  // namespace tamis::cli
