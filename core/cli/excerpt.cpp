#include "core/cli/excerpt.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "core/base/utf8.h"
#include "core/cli/output.h"

namespace tamis::cli {
namespace {

/// One scalar value as shown.
struct Cell {
  std::string text;
  std::size_t width = 0;
  std::size_t column = 0;  ///< columns before it, from the first cell on
  std::size_t at = 0;      ///< byte offset in the line
};

constexpr std::size_t tab_stop = 4;

bool starts_scalar(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

std::vector<Cell> cells_of(std::string_view line, std::size_t from, std::size_t to) {
  std::vector<Cell> cells;
  cells.reserve(to - from);
  std::size_t column = 0;
  for (std::size_t at = from; at < to;) {
    Cell& cell = cells.emplace_back();
    cell.at = at;
    cell.column = column;
    if (line[at] >= ' ' && line[at] <= '~') {
      cell.text = line[at++];
      cell.width = 1;
    } else {
      base::next_scalar(line, at);
      const std::string_view scalar = line.substr(cell.at, at - cell.at);
      cell.text = scalar == "\t" ? std::string(tab_stop - column % tab_stop, ' ') : harmless(scalar);
      cell.width = base::terminal_width(cell.text);
    }
    column += cell.width;
  }
  return cells;
}

std::size_t width_of(const std::vector<Cell>& cells, std::size_t from, std::size_t to) {
  return from == to ? 0 : cells[to - 1].column + cells[to - 1].width - cells[from].column;
}

/// Where in the line the span lies, in bytes.
struct Marked {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// The stretch of the line that can be of use: some bytes on both sides of where the mark begins.
std::vector<Cell> near_mark(std::string_view line, Marked mark, std::size_t columns, bool& cut_before,
                            bool& cut_after) {
  const std::size_t reach = columns * 4;
  std::size_t from = mark.begin > reach ? mark.begin - reach : 0;
  std::size_t to = std::min(line.size(), mark.begin + reach);
  while (from > 0 && !starts_scalar(line[from])) --from;
  while (to < line.size() && !starts_scalar(line[to])) ++to;
  cut_before = from > 0;
  cut_after = to < line.size();
  return cells_of(line, from, to);
}

}  // namespace

Excerpt excerpt(const base::Source& source, base::Span where, std::size_t columns) {
  const std::string_view line = source.line(source.place(where.begin).line);
  const std::size_t start =
      line.empty() ? where.begin : static_cast<std::size_t>(line.data() - source.bytes().data());
  Marked mark{std::min<std::size_t>(where.begin - start, line.size()), 0};
  mark.end = std::clamp<std::size_t>(where.end - start, mark.begin, line.size());

  bool cut_before = false;
  bool cut_after = false;
  const std::vector<Cell> cells = near_mark(line, mark, columns, cut_before, cut_after);
  const auto index_of = [&cells](std::size_t byte) {
    const auto found =
        std::find_if(cells.begin(), cells.end(), [byte](const Cell& cell) { return cell.at >= byte; });
    return static_cast<std::size_t>(found - cells.begin());
  };
  const std::size_t mark_begin = index_of(mark.begin);
  const std::size_t mark_end = index_of(mark.end);

  std::size_t first = 0;
  while (!cut_before && first < mark_begin && base::trimmed(cells[first].text).empty()) ++first;
  const std::size_t whole = width_of(cells, first, cells.size());
  if (whole > columns) {
    const std::size_t lead =
        std::max(columns / 3, columns - std::min(columns, width_of(cells, mark_begin, cells.size())));
    const std::size_t indented = first;
    while (first < mark_begin && width_of(cells, first, mark_begin) + 1 > lead) ++first;
    cut_before = cut_before || first > indented;
  }
  Excerpt shown;
  if (cut_before) shown.line = "…";
  shown.before = (cut_before ? 1 : 0) + width_of(cells, first, mark_begin);
  std::size_t used = cut_before ? 1 : 0;
  std::size_t last = first;
  const std::size_t room = columns - 1;
  while (last < cells.size() && (used + cells[last].width <= room ||
                                 (!cut_after && used + width_of(cells, last, cells.size()) <= columns))) {
    used += cells[last].width;
    shown.line += cells[last++].text;
  }
  if (last < cells.size() || cut_after) shown.line += "…";
  shown.marked =
      std::max<std::size_t>(1, width_of(cells, mark_begin, std::max(mark_begin, std::min(mark_end, last))));
  return shown;
}

}  // namespace tamis::cli
