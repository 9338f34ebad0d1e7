#ifndef CORE_CHANGE_SWAP_KIND_H
#define CORE_CHANGE_SWAP_KIND_H

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/ratio.h"
#include "core/base/result.h"
#include "core/fiche/fiche.h"

namespace tamis::change {

using Foods = std::span<const std::string_view>;

/// A line of the ingredients as its author wrote it: what stood in for it before was taken back.
struct OwnLine {
  const fiche::Fiche* fiche = nullptr;
  const fiche::Ingredient* line = nullptr;
  std::string food_id;
  const food::Food* food = nullptr;
  std::string name;    ///< the author's words, else the food's name
  bool stood = false;  ///< another food stood in for it: the figure there now is no conversion of the kept one

  [[nodiscard]] std::string_view get(fiche::At at) const { return fiche->document->get(line->node, at); }
};

/// What is to stand in, found.
struct Stand {
  std::string id;
  const food::Food* food = nullptr;
  std::string figure;  ///< as typed behind the colon
};

struct SwapTask {
  const fiche::Kitchen& kitchen;
  const OwnLine& own;
  std::span<const Stand> stands;  ///< one or two
};

/// A line of what stands in.
struct StandIn {
  base::Ratio factor = 1;                               ///< grams of it for one gram of the author's
  std::string english, french;                          ///< its name on the line
  std::vector<std::pair<fiche::At, std::string>> sets;  ///< bloom="225"
  std::optional<base::Ratio> piece_g;                   ///< of foods that are counted: what one weighs
};

struct WorkedOut {
  std::vector<StandIn> lines;   ///< as the task's stands
  std::string how;              ///< "0.943 times its weight (200 bloom to 225, by the square root)"
  std::string english, french;  ///< for the cook, in the note and the advice; "" when there is nothing to look out for
  std::string source;
  bool fat_stays = false;  ///< by what is stated of it; the table's figures then say nothing of it
  bool sweetness = false;  ///< how sweet it is is worth a word
};

/// One kind of swap: core/change/swap_<name>.cpp and a line in core/change/swaps.inc.
struct SwapKind {
  std::string_view what;     ///< one line of help
  std::string_view example;  ///< "leaf=gelatine-powder:225"
  /// Whether it leads from one food to these, by ids of the table (of a kitchen's own food, what it is like).
  bool (*fits)(std::string_view from, Foods to);
  bool moves_water;  ///< what it brings of water goes off the component's water
  base::Result<WorkedOut> (*work_out)(const SwapTask& task);
};

std::span<const SwapKind* const> swap_kinds();

/// A refusal, for the desk: rule bad-swap.
base::Finding bad_swap(std::string message, std::string advice);

/// The table's food that a kitchen's own one is like, or itself.
std::string_view general_food(const fiche::Kitchen& kitchen, std::string_view id);

/// "48", "48 %": above 0 and at most 100; else empty.
std::optional<base::Ratio> percent_of(std::string_view typed, const measure::Reading& reading);

/// Grams in 100 g by the table, exact as printed there; empty where it is not reported.
std::optional<base::Ratio> in_100_g(double value);

/// Whether the id is one of these.
bool is_one_of(std::string_view id, std::span<const std::string_view> ids);

/// The first name of a food in English or French.
std::string first_name(std::string_view names);

/// "0.943": a factor to three places, without zeros at the end.
std::string factor_text(base::Ratio factor);
/// "35", "3.25": at most two places.
std::string plain(base::Ratio value);

}  // namespace tamis::change

#endif
