#ifndef CORE_DRAW_GRAPH_H
#define CORE_DRAW_GRAPH_H

#include <string>
#include <utility>
#include <vector>

namespace tamis::draw {

/// Work that flows from box to box, drawn downwards in layers: a box stands below all that it takes from, boxes of one
/// group in one frame. In black, white and greys, for paper too; nothing is told by shade alone.
struct Graph {
  /// Words on the left, a figure on the right.
  using Line = std::pair<std::string, std::string>;
  struct Box {
    std::string head;
    std::vector<Line> in;     ///< what goes in
    std::vector<Line> out;    ///< what comes of it, below a rule
    int group = -1;           ///< index into groups
    std::vector<int> after;   ///< boxes it takes from; one that would go round is drawn as if it were not there
    bool perhaps = false;     ///< drawn with a broken edge: it may be left out
  };
  std::string title;
  std::vector<std::string> groups;
  std::vector<Box> boxes;
};

/// One SVG document (W3C SVG 1.1) that needs nothing else; the same bytes on every machine.
std::string graph_svg(const Graph& graph);

}  // namespace tamis::draw

#endif
