#include "core/draw/graph.h"

#include <algorithm>
#include <cmath>

#include "core/draw/graph_layout.h"
#include "core/draw/text_width.h"

namespace tamis::draw {
namespace {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

// Measures of the drawing, in px at 96 to the inch.
constexpr double size = 11;          // of letters
constexpr double heading_size = 13;
constexpr double line_height = 15;
constexpr double box_width = 236;
constexpr double pad = 8;
constexpr double frame_pad = 10;
constexpr double frame_title = 20;
constexpr double track = 7;          // between lines side by side
constexpr double row_gap = 26;
constexpr double column_gap = 34;
constexpr double margin = 16;
constexpr double page_title = 34;

std::string number(double value) {
  const auto tenths = static_cast<long>(std::lround(value * 10));
  std::string out = std::to_string(tenths / 10);
  if (tenths % 10 != 0) {
    out += '.';
    out += std::to_string(std::abs(tenths % 10));
  }
  return out;
}

/// One line of a box as it is drawn.
struct Row {
  std::string left, right;
  bool head = false;
};

class Drawing {
 public:
  explicit Drawing(const Graph& graph) : graph_(graph), layout_(lay_out(graph, headings_of(graph))) {}

  std::string draw() {
    for (const Graph::Box& box : graph_.boxes) rows_.push_back(rows_of(box));
    measure();
    std::string body;
    for (std::size_t i = 0; i < graph_.groups.size(); ++i) frame(body, i);
    for (const Layout::Line& line : layout_.lines) line_of(body, line);
    for (std::size_t i = 0; i < graph_.groups.size(); ++i) heading(body, i);
    for (std::size_t i = 0; i < graph_.boxes.size(); ++i) box_of(body, static_cast<int>(i));
    return head() + body + "</svg>\n";
  }

 private:
  // ---- measures
  static std::vector<double> headings_of(const Graph& graph) {
    std::vector<double> out;
    for (const std::string& group : graph.groups) out.push_back((text_width(group) * heading_size + frame_pad) / box_width);
    return out;
  }

  struct BoxRows {
    std::vector<Row> head, in, out;
    [[nodiscard]] std::size_t count() const { return head.size() + in.size() + out.size(); }
  };

  static std::vector<Row> folded(const Graph::Line& line, bool is_head) {
    const double all = (box_width - 2 * pad) / size;
    const double right = text_width(line.second);
    std::vector<Row> out;
    // A figure too wide to stand beside the words goes below them.
    const bool beside = right < 0.62 * all;
    for (const std::string& words : broken(line.first, beside && right > 0 ? all - right - 0.8 : all)) out.push_back({words, "", is_head});
    if (line.second.empty()) return out;
    if (beside) {
      out.front().right = line.second;
    } else {
      for (const std::string& words : broken(line.second, all)) out.push_back({"", words, is_head});
    }
    return out;
  }

  static BoxRows rows_of(const Graph::Box& box) {
    BoxRows out;
    const auto add = [](std::vector<Row>& rows, const Graph::Line& line, bool is_head) {
      for (Row& row : folded(line, is_head)) rows.push_back(std::move(row));
    };
    add(out.head, {box.head, ""}, true);
    for (const Graph::Line& line : box.in) add(out.in, line, false);
    for (const Graph::Line& line : box.out) add(out.out, line, false);
    return out;
  }

  [[nodiscard]] double height_of(int box) const {
    const BoxRows& rows = rows_[idx(box)];
    return static_cast<double>(rows.count()) * line_height + 2 * pad - 3 + (rows.out.empty() ? 0 : pad);
  }

  void measure() {
    double x = margin;
    for (int column = 0; column <= layout_.columns; ++column) {
      channel_.push_back(x);
      x += column_gap + std::max(0, layout_.column_tracks[idx(column)] - 1) * track;
      column_.push_back(x);
      x += box_width;
    }
    width_ = channel_.back() + column_gap + std::max(0, layout_.column_tracks.back() - 1) * track + margin;
    double y = margin + (graph_.title.empty() ? 0 : page_title);
    for (int row = 0; row < layout_.rows; ++row) {
      y += frame_pad + (starts_frame(row) ? frame_title : 0);
      row_.push_back(y);
      double height = 0;
      for (std::size_t i = 0; i < graph_.boxes.size(); ++i) {
        if (layout_.places[i].row == row) height = std::max(height, height_of(static_cast<int>(i)));
      }
      y += height + frame_pad;
      gap_.push_back(y);
      y += row_gap + layout_.row_tracks[idx(row)] * track;
    }
    height_ = (layout_.rows == 0 ? y : gap_.back()) + margin;
  }

  [[nodiscard]] bool starts_frame(int row) const {
    return std::any_of(layout_.frames.begin(), layout_.frames.end(),
                       [row](const Layout::Frame& frame) { return frame.bottom >= frame.top && frame.top == row; });
  }

  // ---- drawing
  [[nodiscard]] std::string head() const {
    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + number(width_) + "\" height=\"" + number(height_) +
                      "\" viewBox=\"0 0 " + number(width_) + " " + number(height_) + "\" font-family=\"'DejaVu Sans', Arial, sans-serif\" font-size=\"" +
                      number(size) + "\">\n<title>" + xml_text(graph_.title) + "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n" +
                      "<defs><marker id=\"arrow\" viewBox=\"0 0 8 8\" refX=\"7\" refY=\"4\" markerWidth=\"8\" markerHeight=\"8\" orient=\"auto\">" +
                      "<path d=\"M0,0.5 L8,4 L0,7.5 z\"/></marker></defs>\n";
    if (!graph_.title.empty()) out += text(margin, margin + 18, graph_.title, "font-size=\"18\" font-weight=\"bold\"");
    return out;
  }

  static std::string text(double x, double y, const std::string& words, const std::string& how) {
    return "<text x=\"" + number(x) + "\" y=\"" + number(y) + "\"" + (how.empty() ? "" : " ") + how + ">" + xml_text(words) + "</text>\n";
  }

  void frame(std::string& out, std::size_t group) const {
    const Layout::Frame& frame = layout_.frames[group];
    if (frame.bottom < frame.top) return;
    const double left = column_[idx(frame.left)] - frame_pad, right = column_[idx(frame.right)] + box_width + frame_pad;
    const double top = row_[idx(frame.top)] - frame_pad - frame_title, bottom = gap_[idx(frame.bottom)];
    out += "<rect x=\"" + number(left) + "\" y=\"" + number(top) + "\" width=\"" + number(right - left) + "\" height=\"" + number(bottom - top) +
           "\" rx=\"6\" fill=\"#f2f2f2\" stroke=\"#999\"/>\n";
  }

  void heading(std::string& out, std::size_t group) const {
    const Layout::Frame& frame = layout_.frames[group];
    if (frame.bottom < frame.top) return;
    out += text(column_[idx(frame.left)], row_[idx(frame.top)] - frame_pad - frame_title + 16, graph_.groups[group], "font-size=\"" + number(heading_size) + "\" font-weight=\"bold\"");
  }

  [[nodiscard]] double x_of(int box, double along) const { return column_[idx(layout_.places[idx(box)].column)] + box_width * along; }
  [[nodiscard]] double across(int row, int on) const { return gap_[idx(row)] + row_gap / 2 - 6 + on * track; }

  void line_of(std::string& out, const Layout::Line& line) const {
    const int from = layout_.places[idx(line.from)].row, to = layout_.places[idx(line.to)].row;
    const double leaves = x_of(line.from, line.leaves), arrives = x_of(line.to, line.arrives);
    std::string path = "M" + number(leaves) + "," + number(row_[idx(from)] + height_of(line.from));
    const auto down_to = [&path](double y) { path += " V" + number(y); };
    const auto over_to = [&path](double x) { path += " H" + number(x); };
    if (line.upper >= 0) {
      down_to(across(from, line.upper));
      if (line.channel >= 0) {
        over_to(channel_[idx(line.channel)] + column_gap / 2 + line.track * track);
        down_to(across(to - 1, line.lower));
      }
      over_to(arrives);
    }
    down_to(row_[idx(to)] - 1);
    out += "<path d=\"" + path + "\" fill=\"none\" stroke=\"#fff\" stroke-width=\"4\"/>\n";
    out += "<path d=\"" + path + "\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.3\" marker-end=\"url(#arrow)\"/>\n";
  }

  void box_of(std::string& out, int box) const {
    const Layout::Place& place = layout_.places[idx(box)];
    const BoxRows& rows = rows_[idx(box)];
    const double x = column_[idx(place.column)], height = height_of(box);
    double y = row_[idx(place.row)];
    out += "<rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + number(box_width) + "\" height=\"" + number(height) +
           "\" fill=\"#fff\" stroke=\"#000\"" + (graph_.boxes[idx(box)].perhaps ? " stroke-dasharray=\"6 3\"" : "") + "/>\n";
    y += pad - 4;
    const auto write = [&](const std::vector<Row>& some, const std::string& how) {
      for (const Row& row : some) {
        y += line_height;
        const std::string style = row.head ? "font-weight=\"bold\"" : how;
        if (!row.left.empty()) out += text(x + pad, y, row.left, style);
        if (!row.right.empty()) out += text(x + box_width - pad, y, row.right, "text-anchor=\"end\"" + (style.empty() ? "" : " " + style));
      }
    };
    write(rows.head, "");
    write(rows.in, "");
    if (rows.out.empty()) return;
    y += pad;
    out += "<path d=\"M" + number(x) + "," + number(y - 2) + " H" + number(x + box_width) + "\" stroke=\"#000\" stroke-width=\"0.8\"/>\n";
    write(rows.out, "font-style=\"italic\"");
  }

  const Graph& graph_;
  const Layout layout_;
  std::vector<BoxRows> rows_;
  std::vector<double> channel_, column_, row_, gap_;
  double width_ = 0, height_ = 0;
};

}  // namespace

std::string graph_svg(const Graph& graph) { return Drawing(graph).draw(); }

}  // namespace tamis::draw
