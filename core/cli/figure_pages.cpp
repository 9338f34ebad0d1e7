#include "core/cli/figure_pages.h"

#include <algorithm>

#include "core/cli/folded.h"
#include "core/cli/json_text.h"
#include "core/rules/trade_figures.h"

namespace tamis::cli {
namespace {

/// "egg_yolk_sets" as a cook says it.
std::string spoken(std::string_view name) {
  std::string out(name);
  std::replace(out.begin(), out.end(), '_', ' ');
  return out;
}

}  // namespace

std::string figure_list() {
  std::string out;
  for (const rules::TradeFigure& figure : rules::trade_figures()) {
    out += spoken(figure.name) + ": " + rules::text_of(figure) + "\n  " + folded(figure.source, 2) + "\n";
  }
  return out;
}

std::string figures_json() {
  std::string out;
  {
    JsonList top(out, '{', '}');
    top.member("schema", "1");
    top.begin("figures");
    JsonList list(out, '[', ']', "\n");
    for (const rules::TradeFigure& figure : rules::trade_figures()) {
      list.begin();
      JsonList object(out, '{', '}');
      object.text("name", spoken(figure.name));
      object.member("low", json_number(figure.low));
      object.member("high", json_number(figure.high));
      object.text("unit", figure.unit);
      object.text("source", figure.source);
    }
  }
  return out + "\n";
}

}  // namespace tamis::cli
