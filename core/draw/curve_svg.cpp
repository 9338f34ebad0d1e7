#include <algorithm>
#include <array>
#include <cmath>

#include "core/draw/curve.h"
#include "core/draw/curve_axes.h"
#include "core/draw/text_width.h"

namespace tamis::draw {
namespace {

// Measures in px at 96 to the inch.
constexpr double size = 12;  // of letters
constexpr double width = 760, plot_height = 320;
constexpr double margin = 16;
constexpr double left_room = 56, below_room = 44;
constexpr double row = 16;  // of words

constexpr std::array dashes{"", "7 3", "2 3", "9 3 2 3"};

std::string number(double value) {
  const auto tenths = std::llround(value * 10);
  std::string out = tenths < 0 ? "-" : "";
  out += std::to_string(std::llabs(tenths) / 10);
  if (tenths % 10 != 0) out += "." + std::to_string(std::llabs(tenths) % 10);
  return out;
}

std::string at(double x, double y) { return number(x) + "," + number(y); }

class Drawing {
 public:
  explicit Drawing(const Curve& curve) : curve_(curve), time_(time_axis(curve, 9)), celsius_(celsius_axis(curve, 8)) {
    double labels = 0;
    for (const Curve::Limit& limit : curve.limits) labels = std::max(labels, text_width(limit.label) * size);
    left_ = margin + left_room;
    right_ = width - margin - (labels > 0 ? labels + 10 : 10);
    lay_marks();
    top_ = margin + (curve.title.empty() ? 0 : 30) + (has_legend() ? row + 8 : 0) + static_cast<double>(mark_rows_) * row + 4;
    bottom_ = top_ + plot_height;
  }

  std::string draw() {
    open();
    grid();
    if (curve_.band) band();
    for (const Curve::Mark& mark : curve_.marks)
      line(x(mark.seconds), top_, x(mark.seconds), bottom_, "stroke=\"#000\" stroke-width=\"0.8\" stroke-dasharray=\"1 3\"");
    for (const Curve::Limit& limit : curve_.limits)
      line(left_, y(limit.celsius), right_, y(limit.celsius), "stroke=\"#000\" stroke-width=\"1\" stroke-dasharray=\"4 3\"");
    for (std::size_t i = 0; i < curve_.series.size(); ++i) series(i);
    line(left_, top_, left_, bottom_, "stroke=\"#000\"");
    line(left_, bottom_, right_, bottom_, "stroke=\"#000\"");
    labels();
    if (has_legend()) legend();
    return out_ + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(double seconds) const { return left_ + (right_ - left_) * time_.share(seconds); }
  [[nodiscard]] double y(double celsius) const { return bottom_ - (bottom_ - top_) * celsius_.share(celsius); }
  [[nodiscard]] bool has_legend() const {
    return (curve_.band && !curve_.band->name.empty()) ||
           std::any_of(curve_.series.begin(), curve_.series.end(), [](const auto& one) { return !one.name.empty(); });
  }

  /// Words of moments stand above the plot, each in the lowest row where there is room.
  void lay_marks() {
    std::vector<double> taken;
    for (const Curve::Mark& mark : curve_.marks) {
      const double half = text_width(mark.label) * size / 2;
      const double middle = std::clamp(x(mark.seconds), left_ + std::min(half, 0.5 * (right_ - left_)), std::max(right_ - half, left_));
      std::size_t in = 0;
      while (in < taken.size() && taken[in] > middle - half - 6) ++in;
      if (in == taken.size()) taken.push_back(0);
      taken[in] = middle + half;
      marks_.push_back({middle, in});
    }
    mark_rows_ = taken.size();
  }

  void open() {
    const std::string height = number(bottom_ + below_room);
    out_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + number(width) + "\" height=\"" + height + "\" viewBox=\"0 0 " +
           number(width) + " " + height + "\" font-family=\"'DejaVu Sans', Arial, sans-serif\" font-size=\"" + number(size) +
           "\">\n<title>" + xml_text(curve_.title) + "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
    if (!curve_.title.empty()) words(margin, margin + 16, curve_.title, "font-size=\"16\" font-weight=\"bold\"");
  }

  void words(double at_x, double at_y, const std::string& text, const std::string& how) {
    out_ += "<text x=\"" + number(at_x) + "\" y=\"" + number(at_y) + "\"" + (how.empty() ? "" : " ") + how + ">" + xml_text(text) + "</text>\n";
  }
  void line(double x1, double y1, double x2, double y2, const std::string& how) {
    out_ += "<path d=\"M" + at(x1, y1) + " L" + at(x2, y2) + "\" fill=\"none\" " + how + "/>\n";
  }

  void grid() {
    for (const Axis::Tick& tick : celsius_.ticks) {
      line(left_, y(tick.at), right_, y(tick.at), "stroke=\"#ddd\"");
      const bool top = tick.at == celsius_.ticks.back().at;
      words(left_ - 8, y(tick.at) + 4, tick.words + (top ? "\u00A0" + celsius_.unit : ""), "text-anchor=\"end\"");
    }
    for (const Axis::Tick& tick : time_.ticks) {
      line(x(tick.at), top_, x(tick.at), bottom_, "stroke=\"#ddd\"");
      words(x(tick.at), bottom_ + 18, tick.words, "text-anchor=\"middle\"");
    }
    words((left_ + right_) / 2, bottom_ + 36, time_.unit, "text-anchor=\"middle\"");
  }

  void band() {
    std::string path;
    const auto add = [&](const Curve::Point& point) {
      if (std::isfinite(point.celsius)) path += (path.empty() ? "M" : " L") + at(x(point.seconds), y(point.celsius));
    };
    std::for_each(curve_.band->low.begin(), curve_.band->low.end(), add);
    std::for_each(curve_.band->high.rbegin(), curve_.band->high.rend(), add);
    if (!path.empty()) out_ += "<path d=\"" + path + " Z\" fill=\"#bbb\" fill-opacity=\"0.6\"/>\n";
  }

  void series(std::size_t which) {
    std::string path;
    bool pen_up = true;
    for (const Curve::Point& point : curve_.series[which].points) {
      if (!std::isfinite(point.celsius)) {
        pen_up = true;
        continue;
      }
      path += (path.empty() ? "M" : pen_up ? " M" : " L") + at(x(point.seconds), y(point.celsius));
      pen_up = false;
    }
    if (path.empty()) return;
    out_ += "<path d=\"" + path + "\" fill=\"none\" stroke=\"#000\" stroke-width=\"2\" stroke-linejoin=\"round\" stroke-linecap=\"round\"" + dash(which) + "/>\n";
  }

  static std::string dash(std::size_t which) {
    const std::string pattern = dashes[which % dashes.size()];
    return pattern.empty() ? "" : " stroke-dasharray=\"" + pattern + "\"";
  }

  void labels() {
    std::vector<double> wanted;
    for (const Curve::Limit& limit : curve_.limits) wanted.push_back(y(limit.celsius) + 4);
    const std::vector<double> places = spread(wanted, size + 3, top_ + size, bottom_);
    for (std::size_t i = 0; i < places.size(); ++i) words(right_ + 8, places[i], curve_.limits[i].label, "");
    for (std::size_t i = 0; i < marks_.size(); ++i)
      words(marks_[i].first, top_ - 6 - static_cast<double>(marks_[i].second) * row, curve_.marks[i].label, "text-anchor=\"middle\"");
  }

  void legend() {
    const double base = margin + (curve_.title.empty() ? 0 : 30) + size;
    double from = left_;
    for (std::size_t i = 0; i < curve_.series.size(); ++i) {
      if (curve_.series[i].name.empty()) continue;
      line(from, base - 4, from + 26, base - 4, "stroke=\"#000\" stroke-width=\"2\"" + dash(i));
      words(from + 32, base, curve_.series[i].name, "");
      from += 32 + text_width(curve_.series[i].name) * size + 18;
    }
    if (!curve_.band || curve_.band->name.empty()) return;
    out_ += "<rect x=\"" + number(from) + "\" y=\"" + number(base - 10) + "\" width=\"26\" height=\"11\" fill=\"#bbb\" fill-opacity=\"0.6\"/>\n";
    words(from + 32, base, curve_.band->name, "");
  }

  const Curve& curve_;
  Axis time_, celsius_;
  double left_ = 0, right_ = 0, top_ = 0, bottom_ = 0;
  std::vector<std::pair<double, std::size_t>> marks_;  // middle of the words, row
  std::size_t mark_rows_ = 0;
  std::string out_;
};

}  // namespace

std::string curve_svg(const Curve& curve) { return Drawing(curve).draw(); }

}  // namespace tamis::draw
