#ifndef CORE_DRAW_CURVE_H
#define CORE_DRAW_CURVE_H

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tamis::draw {

/// Temperature over time: lines, the band they are likely to lie in, limits and moments.
struct Curve {
  struct Point {
    double seconds = 0;
    double celsius = 0;  ///< NaN breaks the line: nothing is known there
  };
  struct Series {
    std::string name;  ///< "likely", "probe"; may be empty when there is one
    std::vector<Point> points;  ///< in the order of time
  };
  /// Lower and upper edge, each in the order of time; they need not have the same times.
  struct Band {
    std::string name;
    std::vector<Point> low, high;
  };
  struct Limit {
    double celsius = 0;
    std::string label;  ///< "21 °C within 2 h"
  };
  struct Mark {
    double seconds = 0;
    std::string label;  ///< "out of the oven"
  };
  std::string title;
  std::vector<Series> series;
  std::optional<Band> band;
  std::vector<Limit> limits;
  std::vector<Mark> marks;
};

/// One SVG document (W3C SVG 1.1) that needs nothing else; the same bytes on every machine. Black, white and greys: lines
/// differ by their dashes. Time in seconds, minutes, hours or days, as fits.
std::string curve_svg(const Curve& curve);

/// For a terminal: `columns` wide at most (40 at least), `rows` for the plot itself. The first series as a line, later
/// ones as dots; in ASCII with *, o, x, + and : for the band.
struct CurvePaper {
  std::size_t columns = 80;
  std::size_t rows = 14;
  bool ascii = false;
};
std::string curve_text(const Curve& curve, const CurvePaper& paper);

}  // namespace tamis::draw

#endif
