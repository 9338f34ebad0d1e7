#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/utf8.h"
#include "core/draw/curve.h"
#include "core/draw/curve_axes.h"

namespace tamis::draw {
namespace {

/// A cell of the plot: four by two dots of Unicode's braille patterns, or a character that stands there.
struct Cell {
  unsigned dots = 0;
  char32_t sign = 0;
};

class Plot {
 public:
  Plot(const Curve& curve, const CurvePaper& paper)
      : curve_(curve), ascii_(paper.ascii), rows_(std::max<std::size_t>(paper.rows, 4)), time_(time_axis(curve, 6)), celsius_(celsius_axis(curve, static_cast<int>(rows_) / 2)) {
    for (const Axis::Tick& tick : celsius_.ticks) left_ = std::max(left_, base::terminal_width(tick.words));
    const std::size_t all = std::max<std::size_t>(paper.columns, 40);
    std::size_t labels = 0;
    for (const Curve::Limit& limit : curve.limits) labels = std::max(labels, base::terminal_width(limit.label) + 1);
    if (labels > all / 3) labels = all / 3;
    columns_ = all - left_ - 2 - labels;
    label_room_ = labels;
    cells_.resize(rows_ * columns_);
  }

  std::string write() {
    if (curve_.band) band();
    for (const Curve::Mark& mark : curve_.marks)
      for (std::size_t i = 0; i < rows_; ++i) put(i, column(mark.seconds), ascii_ ? U'|' : U'┊');
    for (const Curve::Limit& limit : curve_.limits)
      for (std::size_t i = 0; i < columns_; ++i) put(row(limit.celsius), i, ascii_ ? U'-' : U'╌');
    for (std::size_t i = curve_.series.size(); i-- > 0;) series(i);
    std::string out = curve_.title.empty() ? "" : curve_.title + "\n";
    mark_labels(out);
    lines(out);
    foot(out);
    return out;
  }

 private:
  [[nodiscard]] std::size_t column(double seconds) const { return cell(time_.share(seconds), columns_); }
  [[nodiscard]] std::size_t row(double celsius) const { return cell(1 - celsius_.share(celsius), rows_); }
  static std::size_t cell(double share, std::size_t count) {
    return static_cast<std::size_t>(std::llround(std::clamp(share, 0.0, 1.0) * static_cast<double>(count - 1)));
  }
  Cell& at(std::size_t in_row, std::size_t in_column) { return cells_[in_row * columns_ + in_column]; }
  void put(std::size_t in_row, std::size_t in_column, char32_t sign) { at(in_row, in_column).sign = sign; }

  [[nodiscard]] double seconds_at(double column) const {
    return time_.from + (time_.to - time_.from) * column / static_cast<double>(columns_ - 1);
  }

  void band() {
    for (std::size_t i = 0; i < columns_; ++i) {
      const double seconds = seconds_at(static_cast<double>(i));
      const double low = celsius_at(curve_.band->low, seconds), high = celsius_at(curve_.band->high, seconds);
      if (!std::isfinite(low) || !std::isfinite(high)) continue;
      const std::size_t last = row(std::min(low, high));
      for (std::size_t j = row(std::max(low, high)); j <= last; ++j) put(j, i, ascii_ ? U':' : U'░');
    }
  }

  void series(std::size_t which) {
    static constexpr std::array signs{U'*', U'o', U'x', U'+'};
    const auto& points = curve_.series[which].points;
    // Two dots a column, and as many between as the line is steep.
    const std::size_t steps = columns_ * 2;
    double before = std::nan("");
    for (std::size_t i = 0; i < steps; ++i) {
      const double here = celsius_at(points, seconds_at((static_cast<double>(i) - 0.5) / 2));
      const double now = std::isfinite(here) ? here : i == 0 ? celsius_at(points, time_.from) : here;
      if (std::isfinite(now)) {
        if (ascii_) {
          put(row(now), i / 2, signs[which % signs.size()]);
        } else if (which == 0 || i % 2 == 0) {
          upright(i, dot(std::isfinite(before) && which == 0 ? before : now), dot(now));
        }
      }
      before = now;
    }
  }

  /// Dots from the top, four a row.
  [[nodiscard]] long dot(double celsius) const {
    return std::lround(std::clamp(1 - celsius_.share(celsius), 0.0, 1.0) * static_cast<double>(rows_ - 1) * 4) + 2;
  }
  void upright(std::size_t half_column, long from, long to) {
    static constexpr std::array<std::array<unsigned, 2>, 4> bits{{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}};
    const long step = to < from ? -1 : 1;
    for (long i = from == to ? from : from + step;; i += step) {
      const long line = std::clamp(i, 0L, static_cast<long>(rows_) * 4 - 1);
      at(static_cast<std::size_t>(line / 4), half_column / 2).dots |= bits[static_cast<std::size_t>(line % 4)][half_column % 2];
      if (i == to) break;
    }
  }

  void mark_labels(std::string& out) const {
    if (curve_.marks.empty()) return;
    std::vector<std::string> above;
    for (const Curve::Mark& mark : curve_.marks) {
      const std::size_t wide = base::terminal_width(mark.label);
      const std::size_t wanted = left_ + 2 + column(mark.seconds);
      const std::size_t from = wanted + wide <= left_ + 2 + columns_ + label_room_ || wide >= wanted ? wanted : wanted + 1 - wide;
      std::size_t in = 0;
      while (in < above.size() && !above[in].empty() && base::terminal_width(above[in]) + 1 > from) ++in;
      if (in == above.size()) above.emplace_back();
      above[in] += std::string(from - std::min(from, base::terminal_width(above[in])), ' ') + mark.label;
    }
    for (auto line = above.rbegin(); line != above.rend(); ++line) out += *line + "\n";
  }

  void lines(std::string& out) {
    std::vector<std::string> ticks(rows_);
    for (const Axis::Tick& tick : celsius_.ticks) ticks[row(tick.at)] = tick.words;
    std::vector<double> wanted;
    for (const Curve::Limit& limit : curve_.limits) wanted.push_back(static_cast<double>(row(limit.celsius)));
    const std::vector<double> places = spread(wanted, 1, 0, static_cast<double>(rows_ - 1));
    for (std::size_t i = 0; i < rows_; ++i) {
      std::string line(left_ - base::terminal_width(ticks[i]), ' ');
      line += ticks[i];
      line += ticks[i].empty() ? (ascii_ ? " |" : " │") : (ascii_ ? " +" : " ┤");
      for (std::size_t j = 0; j < columns_; ++j) {
        const Cell& here = at(i, j);
        base::append_scalar(line, here.dots != 0 ? U'\u2800' + static_cast<char32_t>(here.dots) : here.sign != 0 ? here.sign : U' ');
      }
      for (std::size_t k = 0; k < places.size(); ++k)
        if (places[k] == static_cast<double>(i)) line += " " + curve_.limits[k].label;
      line.erase(line.find_last_not_of(' ') + 1);
      out += line + "\n";
    }
  }

  void foot(std::string& out) const {
    std::string axis(left_ + 1, ' ');
    std::string words(left_ + 2, ' ');
    axis += ascii_ ? "+" : "└";
    std::vector<bool> ticked(columns_);
    std::size_t end = left_ + 2;
    for (std::size_t i = 0; i < time_.ticks.size(); ++i) {
      const Axis::Tick& tick = time_.ticks[i];
      const std::string text = i > 0 ? tick.words : tick.words + " " + time_.unit;
      const std::size_t here = column(tick.at);
      const std::size_t centred = left_ + 2 + here - std::min(here, base::terminal_width(tick.words) / 2);
      const std::size_t from = std::min(centred, left_ + 2 + columns_ - base::terminal_width(text));
      ticked[here] = true;
      if (from < end && i > 0) continue;
      words += std::string(from - std::min(from, base::terminal_width(words)), ' ') + text;
      end = from + base::terminal_width(text) + 1;
    }
    for (std::size_t i = 0; i < columns_; ++i) axis += ticked[i] ? (ascii_ ? "+" : "┬") : (ascii_ ? "-" : "─");
    out += axis + "\n" + words + "\n";
    names(out);
  }

  void names(std::string& out) const {
    std::string line;
    const auto add = [&line](const std::string& sign, const std::string& name) {
      if (!name.empty()) line += (line.empty() ? "" : "   ") + sign + " " + name;
    };
    static constexpr std::array signs{"*", "o", "x", "+"};
    for (std::size_t i = 0; i < curve_.series.size(); ++i)
      add(ascii_ ? signs[i % signs.size()] : i == 0 ? "⠒⠒" : "⠂⠂", curve_.series[i].name);
    if (curve_.band) add(ascii_ ? "::" : "░░", curve_.band->name);
    if (!line.empty()) out += std::string(left_ + 2, ' ') + line + "\n";
  }

  const Curve& curve_;
  bool ascii_;
  std::size_t rows_, columns_ = 0, left_ = 2, label_room_ = 0;
  Axis time_, celsius_;
  std::vector<Cell> cells_;
};

}  // namespace

std::string curve_text(const Curve& curve, const CurvePaper& paper) { return Plot(curve, paper).write(); }

}  // namespace tamis::draw
