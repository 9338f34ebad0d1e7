#include "core/cli/shown.h"

#include "core/draw/steps_graph.h"

namespace tamis::cli {
namespace {

std::string time_text(flow::TimeNetwork::Seconds seconds) {
  if (seconds < 60) return std::to_string(seconds) + " s";
  const auto minutes = seconds / 60;
  if (minutes < 120) return std::to_string(minutes) + " min";
  const auto hours = minutes / 60;
  if (hours < 72) return std::to_string(hours) + (minutes % 60 >= 30 ? " ½ h" : " h");
  return std::to_string(hours / 24) + " days";
}

}  // namespace

std::string age_text(const std::optional<flow::TimeRange>& age) {
  if (!age) return "";
  if (!age->most) return age->least == 0 ? "" : time_text(age->least) + " or more";
  if (age->least == *age->most) return time_text(age->least);
  if (age->least == 0) return "up to " + time_text(*age->most);
  return time_text(age->least) + " to " + time_text(*age->most);
}

std::string shown_svg(const Shown& shown) { return draw::graph_svg(draw::steps_graph(shown)); }

}  // namespace tamis::cli
