#include "core/draw/graph_layout.h"

#include <algorithm>
#include <numeric>

namespace tamis::draw {
namespace {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

/// A stretch of a gap, and the line in it.
struct Stretch {
  double from, to;
  int* track;
};

/// Gives each stretch the first track where it meets no other; how many tracks that takes.
int put_on_tracks(std::vector<Stretch>& stretches) {
  std::stable_sort(stretches.begin(), stretches.end(), [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
  std::vector<double> ends;
  for (Stretch& stretch : stretches) {
    std::size_t track = 0;
    while (track < ends.size() && ends[track] >= stretch.from) ++track;
    if (track == ends.size()) ends.push_back(0);
    ends[track] = stretch.to;
    *stretch.track = static_cast<int>(track);
  }
  return static_cast<int>(ends.size());
}

class LayOut {
 public:
  LayOut(const Graph& graph, const std::vector<double>& headings) : graph_(graph), headings_(headings) {}

  Layout run() {
    out_.places.resize(graph_.boxes.size());
    out_.frames.resize(graph_.groups.size());
    put_in_order();
    put_in_rows();
    put_in_columns();
    draw_lines();
    return std::move(out_);
  }

 private:
  [[nodiscard]] const Graph::Box& box(int i) const { return graph_.boxes[idx(i)]; }
  Layout::Place& place(int i) { return out_.places[idx(i)]; }

  /// Each behind what it takes from; what goes round comes last, and what it waits for is forgotten.
  void put_in_order() {
    const int count = static_cast<int>(graph_.boxes.size());
    after_.resize(idx(count));
    std::vector<bool> done(idx(count), false);
    const auto ready = [&](int i) {
      return std::all_of(box(i).after.begin(), box(i).after.end(), [&](int other) { return done[idx(other)]; });
    };
    while (static_cast<int>(order_.size()) < count) {
      int next = -1;
      for (int i = 0; i < count && next < 0; ++i) next = !done[idx(i)] && ready(i) ? i : -1;
      for (int i = 0; i < count && next < 0; ++i) next = !done[idx(i)] ? i : -1;
      for (const int other : box(next).after) {
        if (done[idx(other)]) after_[idx(next)].push_back(other);
      }
      done[idx(next)] = true;
      order_.push_back(next);
    }
  }

  void put_in_rows() {
    for (const int i : order_) {
      for (const int other : after_[idx(i)]) place(i).row = std::max(place(i).row, place(other).row + 1);
      out_.rows = std::max(out_.rows, place(i).row + 1);
    }
    std::vector<int> latest(graph_.boxes.size(), -1);
    for (auto i = order_.rbegin(); i != order_.rend(); ++i) {
      if (latest[idx(*i)] >= 0) place(*i).row = latest[idx(*i)] - 1;
      for (const int other : after_[idx(*i)]) {
        int& row = latest[idx(other)];
        row = row < 0 ? place(*i).row : std::min(row, place(*i).row);
      }
    }
  }

  void put_in_columns() {
    std::vector<std::vector<int>> members(graph_.groups.size() + 1);  // the last: boxes of no group
    for (const int i : order_) members[box(i).group < 0 ? graph_.groups.size() : idx(box(i).group)].push_back(i);
    std::vector<Layout::Frame> taken;
    for (std::size_t group = 0; group < members.size(); ++group) {
      if (members[group].empty()) continue;
      Layout::Frame frame = inside(members[group]);
      while (std::any_of(taken.begin(), taken.end(), [&](const Layout::Frame& other) { return meet(frame, other); })) {
        ++frame.left;
        ++frame.right;
      }
      for (const int i : members[group]) place(i).column += frame.left;
      taken.push_back(frame);
      out_.columns = std::max(out_.columns, frame.right + 1);
      if (group < graph_.groups.size()) out_.frames[group] = frame;
    }
  }

  /// Columns of a group from 0 on, and its frame there.
  Layout::Frame inside(const std::vector<int>& members) {
    Layout::Frame frame{out_.rows, -1, 0, 0};
    std::vector<std::pair<int, int>> taken;  // row and column
    for (const int i : members) {
      int column = 0;
      for (const int other : after_[idx(i)]) {
        if (box(other).group == box(i).group) column = place(other).column;
      }
      const auto is_taken = [&](int at) { return std::find(taken.begin(), taken.end(), std::pair(place(i).row, at)) != taken.end(); };
      if (is_taken(column)) column = 0;
      while (is_taken(column)) ++column;
      place(i).column = column;
      taken.emplace_back(place(i).row, column);
      frame = {std::min(frame.top, place(i).row), std::max(frame.bottom, place(i).row), 0, std::max(frame.right, column)};
    }
    return frame;
  }

  static bool meet(const Layout::Frame& a, const Layout::Frame& b) {
    return a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;
  }

  // ---- lines
  void draw_lines() {
    for (const int i : order_) {
      for (const int other : after_[idx(i)]) {
        Layout::Line line;
        line.from = other;
        line.to = i;
        out_.lines.push_back(line);
      }
    }
    for (Layout::Line& line : out_.lines) choose_channel(line);
    fan_out();
    std::vector<std::vector<Stretch>> rows(idx(std::max(1, out_.rows))), columns(idx(out_.columns + 1));
    for (Layout::Line& line : out_.lines) run_line(line, rows, columns);
    for (auto& row : rows) out_.row_tracks.push_back(put_on_tracks(row));
    for (auto& column : columns) out_.column_tracks.push_back(put_on_tracks(column));
  }

  /// Lines leave and arrive in the order of where they go and come from.
  void fan_out() {
    for (std::size_t i = 0; i < graph_.boxes.size(); ++i) {
      std::vector<Layout::Line*> leaving, arriving;
      for (Layout::Line& line : out_.lines) {
        if (line.from == static_cast<int>(i)) leaving.push_back(&line);
        if (line.to == static_cast<int>(i)) arriving.push_back(&line);
      }
      const auto by_column = [this](int Layout::Line::*end) {
        const auto at = [this, end](const Layout::Line* line) { return line->channel >= 0 ? line->channel : place(line->*end).column + 0.5; };
        return [at](const Layout::Line* a, const Layout::Line* b) { return at(a) < at(b); };
      };
      std::stable_sort(leaving.begin(), leaving.end(), by_column(&Layout::Line::to));
      std::stable_sort(arriving.begin(), arriving.end(), by_column(&Layout::Line::from));
      const auto spread = [](std::size_t n, std::size_t of, double from) {
        return from + (1 - from) * static_cast<double>(n + 1) / static_cast<double>(of + 1);
      };
      const double heading = heading_over(static_cast<int>(i));
      // A hair to the right, so that what arrives does not run in the line of what leaves above.
      const double aside = arriving.size() == 1 && heading <= 0 && runs_straight(*arriving.front()) ? 0 : 0.025;
      for (std::size_t n = 0; n < leaving.size(); ++n) leaving[n]->leaves = spread(n, leaving.size(), 0);
      for (std::size_t n = 0; n < arriving.size(); ++n) arriving[n]->arrives = spread(n, arriving.size(), heading) + aside;
    }
  }

  /// Down in the gap beside the box it goes to, on the side it comes from; from row to row it needs none.
  void choose_channel(Layout::Line& line) {
    const Layout::Place from = place(line.from), to = place(line.to);
    if (to.row > from.row + 1) line.channel = from.column > to.column ? to.column + 1 : to.column;
  }

  bool runs_straight(const Layout::Line& line) {
    const auto leaving = std::count_if(out_.lines.begin(), out_.lines.end(), [&](const Layout::Line& other) { return other.from == line.from; });
    return line.channel < 0 && leaving == 1 && place(line.from).column == place(line.to).column;
  }

  /// How much of its width lies under the heading of its group.
  double heading_over(int i) {
    const int group = box(i).group;
    if (group < 0) return 0;
    const Layout::Frame& frame = out_.frames[idx(group)];
    const bool under = place(i).row == frame.top && place(i).column == frame.left;
    return under ? std::min(0.8, headings_[idx(group)]) : 0;
  }

  /// Where it leaves or arrives, in columns.
  double leaves_at(const Layout::Line& line) { return place(line.from).column + line.leaves; }
  double arrives_at(const Layout::Line& line) { return place(line.to).column + line.arrives; }

  void run_line(Layout::Line& line, std::vector<std::vector<Stretch>>& rows, std::vector<std::vector<Stretch>>& columns) {
    const Layout::Place from = place(line.from), to = place(line.to);
    const double leaves = leaves_at(line), arrives = arrives_at(line);
    if (line.channel < 0) {
      if (leaves != arrives) rows[idx(from.row)].push_back({std::min(leaves, arrives), std::max(leaves, arrives), &line.upper});
      return;
    }
    const double at = line.channel;
    rows[idx(from.row)].push_back({std::min(leaves, at), std::max(leaves, at), &line.upper});
    columns[idx(line.channel)].push_back({from.row + 0.5, to.row - 0.5, &line.track});
    rows[idx(to.row - 1)].push_back({std::min(arrives, at), std::max(arrives, at), &line.lower});
  }

  const Graph& graph_;
  const std::vector<double>& headings_;
  Layout out_;
  std::vector<std::vector<int>> after_;
  std::vector<int> order_;
};

}  // namespace

Layout lay_out(const Graph& graph, const std::vector<double>& headings) { return LayOut(graph, headings).run(); }

}  // namespace tamis::draw
