#include "core/record/csv.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"

namespace tamis::record {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::string_view formula_starts = "=+-@\t\r";

constexpr char guard = '\'';

/// Whether a spreadsheet takes it for a formula, or would once guards are taken off.
bool is_formula(std::string_view text) {
  const std::size_t first = text.find_first_not_of(guard);
  return first != std::string_view::npos && formula_starts.find(text[first]) != std::string_view::npos;
}

base::Span span(std::size_t begin, std::size_t end) {
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

base::Finding fault(base::Span where, std::string message, std::string advice) {
  base::Finding out;
  out.rule = "log-unreadable";
  out.where = where;
  out.message = std::move(message);
  out.advice = std::move(advice);
  return out;
}

/// The one that parts most of the first lines; of those that part as many, a tab or a semicolon before the comma, which may
/// stand in figures.
char separator_of(std::string_view text) {
  constexpr std::array candidates{'\t', ';', ','};
  std::array<int, 3> lines{};
  int seen = 0;
  while (!text.empty() && seen < 20) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (base::trimmed(line).empty()) continue;
    ++seen;
    for (std::size_t i = 0; i < candidates.size(); ++i) lines[i] += line.find(candidates[i]) != std::string_view::npos ? 1 : 0;
  }
  const auto most = std::max_element(lines.begin(), lines.end());
  return *most == 0 ? ',' : candidates[static_cast<std::size_t>(most - lines.begin())];
}

class Reader {
 public:
  Reader(std::string_view text, std::size_t start, Csv& out) : text_(text), at_(start), out_(out) {}

  void read() {
    while (at_ < text_.size()) row();
  }

 private:
  [[nodiscard]] bool at_line_end() const { return at_ >= text_.size() || text_[at_] == '\n' || text_[at_] == '\r'; }

  void row() {
    const std::size_t begin = at_;
    CsvRow row;
    for (;;) {
      row.fields.push_back(at_ < text_.size() && text_[at_] == '"' ? quoted() : plain());
      if (at_line_end()) break;
      ++at_;  // the separator
    }
    row.where = span(begin, at_);
    if (at_ < text_.size() && text_[at_] == '\r') ++at_;
    if (at_ < text_.size() && text_[at_] == '\n') ++at_;
    const bool blank = std::all_of(row.fields.begin(), row.fields.end(), [](const CsvField& one) { return one.text.empty(); });
    if (!blank || row.fields.size() > 1) out_.rows.push_back(std::move(row));
  }

  CsvField plain() {
    const std::size_t begin = at_;
    while (!at_line_end() && text_[at_] != out_.separator) {
      if (text_[at_] == '"' && !told_quote_) {
        out_.faults.push_back(fault(span(at_, at_ + 1), "a quote within a field that does not begin with one",
                                    "put the whole field in quotes, and write a quote in it twice"));
        told_quote_ = true;
      }
      ++at_;
    }
    return {std::string(base::trimmed(text_.substr(begin, at_ - begin))), span(begin, at_)};
  }

  CsvField quoted() {
    const std::size_t begin = ++at_;
    std::string text;
    while (at_ < text_.size()) {
      if (text_[at_] != '"') {
        text += text_[at_++];
      } else if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
        text += '"';
        at_ += 2;
      } else {
        break;
      }
    }
    const base::Span where = span(begin, at_);
    if (at_ >= text_.size()) {
      out_.faults.push_back(fault(span(begin - 1, begin), "a quote is opened and never closed",
                                  "close it; all that follows was taken for one field"));
    } else {
      const std::size_t behind = ++at_;
      while (!at_line_end() && text_[at_] != out_.separator) ++at_;
      const std::string_view rest = base::trimmed(text_.substr(behind, at_ - behind));
      if (!rest.empty()) {
        out_.faults.push_back(fault(span(behind, at_), "words behind a closing quote", "put the whole field in quotes"));
        text += rest;
      }
    }
    return {std::string(base::trimmed(text)), where};
  }

  std::string_view text_;
  std::size_t at_;
  Csv& out_;
  bool told_quote_ = false;
};

}  // namespace

Csv read_csv(const base::Source& source) {
  Csv out;
  const std::string_view text = source.bytes();
  const std::size_t start = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
  const std::size_t bad = base::find_invalid_utf8(text);
  const std::size_t nul = text.find('\0');
  if (const std::size_t first = std::min(bad, nul); first != std::string_view::npos) {
    out.faults.push_back(fault(span(first, first + 1), "not a text in UTF-8", "save it as CSV in UTF-8 and try again"));
    return out;
  }
  out.separator = separator_of(text.substr(start));
  Reader(text, start, out).read();
  return out;
}

std::string csv_cell(std::string_view text) {
  std::string out;
  if (is_formula(text)) out += guard;
  out += text;
  if (out.find_first_of(",;\t\"\r\n") == std::string::npos && base::trimmed(out).size() == out.size()) return out;
  std::string quoted = "\"";
  for (const char c : out) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::string_view unguarded(std::string_view cell) {
  return cell.starts_with(guard) && is_formula(cell) ? cell.substr(1) : cell;
}

}  // namespace tamis::record
