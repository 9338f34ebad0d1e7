#include <array>

#include "core/change/swap_kind.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;

namespace {

struct Egg {
  std::string_view shell, liquid;
};
constexpr std::array<Egg, 3> eggs{
    {{"egg-whole", "egg-whole-frozen"}, {"egg-yolk", "egg-yolk-frozen"}, {"egg-white", "egg-white-frozen"}}};
constexpr Ratio in_whole = 50, yolk = 17, white = 33;  // g of a large egg: USDA SR28 01123, 01125, 01124

int part_of(std::string_view id) {
  for (int i = 0; i < static_cast<int>(eggs.size()); ++i) {
    const Egg& egg = eggs[static_cast<std::size_t>(i)];
    if (id == egg.shell || id == egg.liquid) return i;
  }
  return -1;
}

bool is_liquid(std::string_view id) { return id.ends_with("-frozen"); }

bool fits(std::string_view from, Foods to) {
  const int part = part_of(from);
  if (part < 0) return false;
  if (to.size() == 1) return part_of(to[0]) == part;
  return part == 0 && part_of(to[0]) + part_of(to[1]) == 3 && part_of(to[0]) != 0 && part_of(to[1]) != 0;
}

base::Finding no_such_size(const Stand& stand) {
  std::string sizes;
  for (const food::Measure& one : stand.food->measures) {
    const bool volume = one.what == "cup" || one.what == "tbsp" || one.what == "tsp" || one.what == "ml";
    if (volume || !one.note.empty() || sizes.find(one.what) != std::string::npos) continue;
    sizes += (sizes.empty() ? "" : ", ") + std::string(one.what);
  }
  return bad_swap(first_name(stand.food->english) + " has no size \"" + stand.figure + "\"",
                  sizes.empty() ? "write the food alone: " + stand.id : "sizes are " + sizes);
}

base::Result<StandIn> line_of(const SwapTask& task, const Stand& stand, Ratio factor) {
  StandIn line;
  line.factor = factor;
  line.english = first_name(stand.food->english);
  line.french = first_name(stand.food->french);
  if (is_liquid(general_food(task.kitchen, stand.id))) {
    if (!stand.figure.empty()) return no_such_size(stand);
    line.english = "liquid " + line.english.substr(line.english.find(' ') + 1);
    return line;
  }
  const auto piece = food::piece_of(*stand.food, stand.figure);
  if (!piece) return no_such_size(stand);
  line.piece_g = piece->grams;
  if (stand.figure.empty()) return line;
  line.sets.emplace_back(At::size, stand.figure);
  line.english += ", size " + stand.figure;
  line.french += ", calibre " + stand.figure;
  return line;
}

/// "eggs of 51 g, M, to 60 g, L": what is in the shell.
std::string sizes_in_words(const SwapTask& task, const StandIn& made) {
  const auto old = food::piece_of(*task.own.food, task.own.get(At::size));
  if (!old || !made.piece_g) return {};
  return " (one of the author's holds " + plain(old->grams) + " g, one of these " + plain(*made.piece_g) + " g)";
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  WorkedOut out;
  const bool two = task.stands.size() == 2;
  for (const Stand& stand : task.stands) {
    const bool is_yolk = part_of(general_food(task.kitchen, stand.id)) == 1;
    const Ratio share = two ? (is_yolk ? yolk : white) / in_whole : Ratio(1);
    auto line = line_of(task, stand, share);
    if (!line) return line.fault();
    out.lines.push_back(*line);
  }
  const bool to_liquid = is_liquid(general_food(task.kitchen, task.stands[0].id));
  out.how = two ? "34 % of its weight of yolk and 66 % of white"
                : "the weight out of the shell stays" + sizes_in_words(task, out.lines[0]);
  if (to_liquid) {
    out.english =
        "pasteurised egg whips to less and sets a little later; shake it before weighing, and mind its date once open";
    out.french =
        "l'œuf pasteurisé monte moins et prend un peu plus tard ; l'agiter avant de peser, surveiller la date une fois ouvert";
  } else if (is_liquid(general_food(task.kitchen, task.own.food_id))) {
    out.english = "shell egg is not pasteurised: what is not cooked through is now made with raw egg";
    out.french = "l'œuf coquille n'est pas pasteurisé : ce qui n'est pas cuit à cœur l'est désormais à l'œuf cru";
  }
  out.source = "pieces: " + std::string(task.stands[0].food->composition_source) +
               "; Regulation (EC) 589/2008 Article 4 for S to XL; "
               "yolk and white of one large egg: USDA SR28 01125, 01124";
  return out;
}

}  // namespace

/// The weight out of the shell stays. Where the author counts, whole eggs are counted as long as they come near enough,
/// else the eggs are weighed.
extern const SwapKind swap_eggs;
const SwapKind swap_eggs = {
    .what = "eggs: another size, liquid egg, or whole egg as yolk and white",
    .example = "eggs=egg-whole:L",
    .fits = fits,
    .moves_water = false,
    .work_out = work_out,
};

}  // namespace tamis::change
