#ifndef CORE_DRAW_GRAPH_LAYOUT_H
#define CORE_DRAW_GRAPH_LAYOUT_H

#include <utility>
#include <vector>

#include "core/draw/graph.h"

namespace tamis::draw {

/// Where the boxes of a graph stand: in which row and column, and how the lines between them run in the gaps.
///
/// Rows: as far down as what takes of it allows, so that lines are short. Columns: within a group a box stands below the
/// one it goes on from; groups stand where they do not meet, each as far left as it can. Lines leave a box below, run
/// across in the gap under its row, down in a gap between columns, and into the next box from above; in every gap each
/// line that would meet another has a track of its own.
///
/// What arrives at a box under the heading of its group arrives to the right of the heading.
struct Layout {
  struct Place {
    int row = 0;
    int column = 0;
  };
  /// A line from box to box. Tracks count from 0 in their gap; -1: it does not run there.
  struct Line {
    int from = -1, to = -1;
    double leaves = 0.5, arrives = 0.5;  ///< where along the edge of the box, 0 to 1 from the left
    int upper = -1;                    ///< track in the gap below the row it comes from
    int channel = -1;                  ///< gap between columns, numbered by the column at its right
    int track = -1;                    ///< track in that gap
    int lower = -1;                    ///< track in the gap above the row it goes to
  };
  struct Frame {
    int top = 0, bottom = -1, left = 0, right = -1;  ///< rows and columns, ends included; none when bottom < top
  };
  int rows = 0, columns = 0;
  std::vector<Place> places;      ///< of boxes
  std::vector<Frame> frames;      ///< of groups
  std::vector<Line> lines;
  std::vector<int> row_tracks;    ///< in the gap below each row
  std::vector<int> column_tracks; ///< in the gap left of each column, and at the very right
};
/// `headings`: how much of a box's width the heading of each group takes.
Layout lay_out(const Graph& graph, const std::vector<double>& headings);

}  // namespace tamis::draw

#endif
