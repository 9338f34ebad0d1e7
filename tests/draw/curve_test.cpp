#include "core/draw/curve.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "core/base/utf8.h"
#include "core/draw/curve_axes.h"

namespace tamis {
namespace {

using draw::Curve;

Curve cooling() {
  Curve curve;
  curve.title = "Stock in the fridge";
  Curve::Series likely{"likely", {}};
  Curve::Band band{"range", {}, {}};
  for (int i = 0; i <= 40; ++i) {
    const double seconds = i * 360.0;
    likely.points.push_back({seconds, 4 + 86 * std::exp(-seconds / 5000)});
    band.low.push_back({seconds, 4 + 86 * std::exp(-seconds / 3500)});
    band.high.push_back({seconds, 4 + 86 * std::exp(-seconds / 7000)});
  }
  curve.series.push_back(likely);
  curve.band = band;
  curve.limits = {{21, "21 °C"}, {5, "5 °C"}};
  curve.marks = {{7200, "2 h"}};
  return curve;
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t found = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++found;
  return found;
}

TEST_CASE("time is told in the unit that fits", "[draw]") {
  const auto unit = [](double seconds) {
    Curve curve;
    curve.series.push_back({"", {{0, 20}, {seconds, 5}}});
    return draw::time_axis(curve, 8).unit;
  };
  CHECK(unit(90) == "s");
  CHECK(unit(20 * 60) == "min");
  CHECK(unit(5 * 3600) == "h");
  CHECK(unit(6 * 86400) == "days");
}

TEST_CASE("marks of the axes stand at whole figures within the axis", "[draw]") {
  for (const double seconds : {7.0, 100.0, 1000.0, 5000.0, 20000.0, 100000.0, 1000000.0}) {
    for (const double celsius : {-40.0, 4.9, 5.0, 60.0, 230.0}) {
      CAPTURE(seconds, celsius);
      Curve curve;
      curve.series.push_back({"", {{0, 20}, {seconds, celsius}}});
      for (const draw::Axis& axis : {draw::time_axis(curve, 8), draw::celsius_axis(curve, 8)}) {
        CHECK(axis.ticks.size() >= 2);
        CHECK(axis.ticks.size() <= 11);
        for (const auto& tick : axis.ticks) {
          CHECK(tick.at >= axis.from - 1e-6);
          CHECK(tick.at <= axis.to + 1e-6);
        }
      }
    }
  }
}

TEST_CASE("a point without a temperature breaks the line", "[draw]") {
  Curve curve;
  curve.series.push_back({"", {{0, 60}, {60, 50}, {90, std::nan("")}, {120, 40}, {180, 35}}});
  const std::string svg = draw::curve_svg(curve);
  const std::size_t line = svg.find("stroke-width=\"2\"");
  REQUIRE(line != std::string::npos);
  const std::size_t from = svg.rfind("d=\"", line);
  CHECK(count(svg.substr(from, line - from), "M") == 2);
  CHECK(std::isnan(draw::celsius_at(curve.series[0].points, 100)));
  CHECK(draw::celsius_at(curve.series[0].points, 30) == 55);
  CHECK(std::isnan(draw::celsius_at(curve.series[0].points, 181)));
}

TEST_CASE("labels keep apart, in their order, as near to their lines as can be", "[draw]") {
  CHECK(draw::spread({10, 11, 50}, 5, 0, 100) == std::vector<double>{10, 15, 50});
  CHECK(draw::spread({99, 98}, 5, 0, 100) == std::vector<double>{100, 95});
  CHECK(draw::spread({}, 5, 0, 100).empty());
}

TEST_CASE("the picture holds every word, escaped", "[draw]") {
  Curve curve = cooling();
  curve.title = "Stock & <bones>";
  const std::string svg = draw::curve_svg(curve);
  for (const char* words : {"Stock &amp; &lt;bones&gt;", ">likely<", ">range<", ">21 °C<", ">5 °C<", ">2 h<", "\u00A0°C<", ">h<"}) {
    CAPTURE(words);
    CHECK(svg.find(words) != std::string::npos);
  }
}

TEST_CASE("the terminal's curve keeps within its width, in plain ASCII too", "[draw]") {
  for (const std::size_t columns : {40U, 61U, 80U, 120U}) {
    for (const bool ascii : {false, true}) {
      CAPTURE(columns, ascii);
      Curve curve = cooling();
      if (columns == 61) curve.series[0].points.push_back({36000, 4});
      if (ascii) curve.limits = {{21, "21 C"}, {5, "5 C"}};
      const std::string text = draw::curve_text(curve, {columns, 12, ascii});
      std::size_t from = 0;
      std::size_t lines = 0;
      for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', from)) {
        CHECK(base::terminal_width(text.substr(from, end - from)) <= columns);
        from = end + 1;
        ++lines;
      }
      CHECK(lines == 17);
      if (ascii) CHECK(std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 128; }));
    }
  }
}

TEST_CASE("a curve of the terminal falls from the upper left to the lower right", "[draw]") {
  Curve curve;
  curve.series.push_back({"", {{0, 100}, {600, 0}}});
  const std::string text = draw::curve_text(curve, {44, 6, true});
  CHECK(text ==
        "100 +****\n"
        "    |   *********\n"
        "    |           *********\n"
        " 50 +                   *********\n"
        "    |                           *********\n"
        "  0 +                                   ****\n"
        "    ++-------+------+-------+------+-------+\n"
        "     0 min   2      4       6      8      10\n");
}

TEST_CASE("nothing to draw is an empty plot", "[draw]") {
  CHECK(draw::curve_svg({}).find("</svg>") != std::string::npos);
  CHECK(draw::curve_text({}, {}).find("100") != std::string::npos);
}

}  // namespace
}  // namespace tamis
