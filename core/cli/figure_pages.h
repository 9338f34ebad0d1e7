#ifndef CORE_CLI_FIGURE_PAGES_H
#define CORE_CLI_FIGURE_PAGES_H

#include <string>

namespace tamis::cli {

/// The figures of the trade that rules hold a recipe to, as core/rules/trade_figures.inc has them: name, range, source.
std::string figure_list();

/// The same: {"schema": 1, "figures": [{"name", "low", "high", "unit", "source"}]}.
std::string figures_json();

}  // namespace tamis::cli

#endif
