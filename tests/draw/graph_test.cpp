#include "core/draw/graph.h"

#include <catch2/catch.hpp>
#include <random>

#include "core/draw/graph_layout.h"
#include "core/draw/text_width.h"

namespace tamis {
namespace {

using draw::Graph;
using draw::Layout;

Graph::Box box(const char* head, int group, std::vector<int> after) {
  Graph::Box made;
  made.head = head;
  made.group = group;
  made.after = std::move(after);
  return made;
}

Layout laid_out(const Graph& graph) { return draw::lay_out(graph, std::vector<double>(graph.groups.size(), 0.2)); }

Graph random_graph(unsigned seed) {
  std::mt19937 random(seed);
  Graph graph;
  const int groups = 1 + static_cast<int>(random() % 5);
  for (int i = 0; i < groups; ++i) graph.groups.push_back("G" + std::to_string(i));
  const int boxes = 1 + static_cast<int>(random() % 25);
  for (int i = 0; i < boxes; ++i) {
    std::vector<int> after;
    for (int other = 0; other < i; ++other) {
      if (random() % 6 == 0) after.push_back(other);
    }
    graph.boxes.push_back(box("b", i * groups / boxes, after));
  }
  return graph;
}

TEST_CASE("a box stands below all that it takes from, and none on another", "[draw]") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const Graph graph = random_graph(seed);
    const Layout layout = laid_out(graph);
    for (std::size_t i = 0; i < graph.boxes.size(); ++i) {
      for (const int other : graph.boxes[i].after) CHECK(layout.places[static_cast<std::size_t>(other)].row < layout.places[i].row);
      for (std::size_t j = 0; j < i; ++j) {
        CHECK((layout.places[i].row != layout.places[j].row || layout.places[i].column != layout.places[j].column));
      }
    }
  }
}

TEST_CASE("frames hold their boxes and do not meet", "[draw]") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const Graph graph = random_graph(seed);
    const Layout layout = laid_out(graph);
    for (std::size_t i = 0; i < graph.boxes.size(); ++i) {
      const Layout::Frame& frame = layout.frames[static_cast<std::size_t>(graph.boxes[i].group)];
      CHECK(layout.places[i].row >= frame.top);
      CHECK(layout.places[i].row <= frame.bottom);
      CHECK(layout.places[i].column >= frame.left);
      CHECK(layout.places[i].column <= frame.right);
    }
    for (std::size_t i = 0; i < layout.frames.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const Layout::Frame &a = layout.frames[i], &b = layout.frames[j];
        CHECK_FALSE((a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right));
      }
    }
  }
}

TEST_CASE("lines that share a gap have tracks of their own where they would meet", "[draw]") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const Graph graph = random_graph(seed);
    const Layout layout = laid_out(graph);
    for (std::size_t i = 0; i < layout.lines.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const Layout::Line &a = layout.lines[i], &b = layout.lines[j];
        if (a.channel < 0 || a.channel != b.channel || a.track != b.track) continue;
        const auto top = [&](const Layout::Line& line) { return layout.places[static_cast<std::size_t>(line.from)].row; };
        const auto bottom = [&](const Layout::Line& line) { return layout.places[static_cast<std::size_t>(line.to)].row - 1; };
        CHECK((bottom(a) < top(b) || bottom(b) < top(a)));
      }
    }
  }
}

TEST_CASE("a chain stands in one column, and its lines run straight", "[draw]") {
  Graph graph;
  graph.groups = {"Sponge"};
  graph.boxes = {box("whisk", 0, {}), box("fold", 0, {0}), box("bake", 0, {1})};
  const Layout layout = laid_out(graph);
  CHECK(layout.columns == 1);
  CHECK(layout.rows == 3);
  for (const Layout::Line& line : layout.lines) CHECK(line.upper == -1);
}

TEST_CASE("what is taken late stands just above what takes it", "[draw]") {
  Graph graph;
  graph.groups = {"A", "B"};
  graph.boxes = {box("1", 0, {}), box("2", 0, {0}), box("soak", 1, {}), box("all", 0, {1, 2})};
  CHECK(laid_out(graph).places[2].row == 1);
}

TEST_CASE("a circle is drawn as far as it can be", "[draw]") {
  Graph graph;
  graph.groups = {"A"};
  graph.boxes = {box("1", 0, {1}), box("2", 0, {0})};
  const Layout layout = laid_out(graph);
  CHECK(layout.lines.size() == 1);
  CHECK(draw::graph_svg(graph).find("</svg>") != std::string::npos);
}

TEST_CASE("words of a recipe cannot break the picture", "[draw]") {
  Graph graph;
  graph.title = "Salt & <pepper>";
  graph.groups = {"\"A\""};
  graph.boxes = {box("1  stir", 0, {})};
  graph.boxes[0].in = {{"a very long name of something that does not fit in one line of a box", "1000–2000 g"}, {"\x01", ""}};
  const std::string svg = draw::graph_svg(graph);
  CHECK(svg.find("Salt &amp; &lt;pepper&gt;") != std::string::npos);
  CHECK(svg.find('\x01') == std::string::npos);
  CHECK(svg == draw::graph_svg(graph));
  CHECK(draw::graph_svg({}).find("</svg>") != std::string::npos);
}

TEST_CASE("text is broken between words, a wide word alone", "[draw]") {
  CHECK(draw::broken("one two three", 100) == std::vector<std::string>{"one two three"});
  CHECK(draw::broken("one two", 0.1) == std::vector<std::string>{"one", "two"});
  CHECK(draw::broken("", 10) == std::vector<std::string>{""});
  CHECK(draw::text_width("crème") == Approx(draw::text_width("creme")));
}

}  // namespace
}  // namespace tamis
