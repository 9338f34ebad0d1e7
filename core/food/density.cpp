#include <algorithm>
#include <array>
#include <charconv>
#include <string>

#include "core/base/utf8.h"
#include "core/food/food.h"

namespace tamis::food {
namespace {

/// Volumes a measure can be of, in order of the error that filling one carries: the largest first. `ml` is a
/// density stated as such. USDA measured with US customary cups and spoons of 236.5882365 ml and its parts.
struct Volume {
  std::string_view what;
  std::int64_t numerator;
  std::int64_t denominator;
};
constexpr std::int64_t cup_1e7 = 2365882365;
constexpr Volume volumes[] = {
    {"ml", 1, 1},
    {"cup", cup_1e7, 10'000'000},
    {"fl oz", cup_1e7, 80'000'000},
    {"quart", cup_1e7, 2'500'000},
    {"tbsp", cup_1e7, 160'000'000},
    {"tsp", cup_1e7, 480'000'000},
};

/// Ways of filling a cup with the same food in the same state: what a bare "cup" may have been.
constexpr std::string_view fillings[] = {"sifted", "unsifted", "scooped", "packed", "unpacked", "not packed"};

int rank_of(std::string_view what) {
  const auto same = [&](const Volume& volume) { return volume.what == what; };
  const auto* found = std::find_if(std::begin(volumes), std::end(volumes), same);
  return found == std::end(volumes) ? -1 : static_cast<int>(found - std::begin(volumes));
}

/// The figure as the table spells it, exactly: 14.2 is 142/10.
base::Ratio exact(double grams) {
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), grams, std::chars_format::fixed).ptr;
  const std::string_view spelled(text.data(), static_cast<std::size_t>(end - text.data()));
  return base::Ratio::parse(spelled).value_or(base::Ratio::overflow());
}

base::Ratio grams_per_ml(const Measure& measure) {
  const Volume& volume = volumes[rank_of(measure.what)];
  return exact(measure.grams) / base::Ratio(volume.numerator, volume.denominator);
}

bool parts_words(char c) { return c == ' ' || c == ',' || c == '(' || c == ')'; }

/// Calls `use` with each word of a form or of what was asked for.
template <class Use>
void each_word(std::string_view text, Use use) {
  while (!text.empty()) {
    const auto end = static_cast<std::size_t>(std::find_if(text.begin(), text.end(), parts_words) - text.begin());
    if (end > 0) use(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

bool has_word(std::string_view text, std::string_view wanted) {
  bool found = false;
  each_word(text, [&](std::string_view word) { found = found || word == wanted; });
  return found;
}

/// How many words of the form are in what was asked for. "packed" is not like "not packed".
std::size_t likeness(std::string_view form, std::string_view asked) {
  if (has_word(form, "not") != has_word(asked, "not")) return 0;
  std::size_t shared = 0;
  each_word(form, [&](std::string_view word) { shared += word.size() > 2 && has_word(asked, word) ? 1U : 0U; });
  return shared;
}

/// The form asked for, or the plain one, or the first; "" is the plain one.
std::string_view choose_form(const Food& food, std::string_view asked) {
  std::string_view best;
  std::size_t most = 0;
  bool plain = false;
  const Measure* first = nullptr;
  for (const Measure& measure : food.measures) {
    if (rank_of(measure.what) < 0) continue;
    if (first == nullptr) first = &measure;
    plain = plain || measure.note.empty();
    const std::size_t like = asked.empty() ? 0 : likeness(measure.note, asked);
    if (like > most) {
      most = like;
      best = measure.note;
    }
  }
  if (most > 0 || plain || first == nullptr) return best;
  return first->note;
}

bool is_filling(std::string_view note) {
  return note.empty() || std::find(std::begin(fillings), std::end(fillings), note) != std::end(fillings);
}

/// Of the figures of this form and, when no form was asked for, of all that could be meant.
double spread_of(const Food& food, std::string_view form, bool asked) {
  double least = 0;
  double most = 0;
  for (const Measure& measure : food.measures) {
    if (rank_of(measure.what) < 0) continue;
    const bool could_be_meant = !asked && (!is_filling(form) || is_filling(measure.note));
    if (measure.note != form && !could_be_meant) continue;
    const double density = grams_per_ml(measure).approximate();
    least = most == 0 ? density : std::min(least, density);
    most = std::max(most, density);
  }
  return most > 0 ? (most - least) / (most + least) : 0;
}

std::string full_name(const Measure& measure) {
  return std::string(measure.what).append(" ").append(measure.note);
}

}  // namespace

std::optional<Density> density_of(const Food& food, std::string_view note) {
  const std::string asked = base::lower(base::trimmed(note));
  const std::string_view form = choose_form(food, asked);
  const Measure* best = nullptr;
  for (const Measure& measure : food.measures) {
    if (rank_of(measure.what) < 0 || measure.note != form) continue;
    if (best == nullptr || rank_of(measure.what) < rank_of(best->what)) best = &measure;
  }
  if (best == nullptr) return std::nullopt;
  const bool answered = !asked.empty() && likeness(form, asked) > 0;
  return Density{grams_per_ml(*best), spread_of(food, form, answered), form, best->source};
}

std::optional<Piece> piece_of(const Food& food, std::string_view size) {
  const std::string_view asked = base::trimmed(size);
  const bool usual = asked.empty() || asked == "piece" || asked == "each" || asked == "whole";
  const Measure* found = nullptr;
  int rank = 0;  // 1: the usual one; 2: by its form ("bronze", "leaf bronze"); 3: by its name
  for (const Measure& measure : food.measures) {
    if (rank_of(measure.what) >= 0) continue;
    int here = usual ? 1 : 0;
    if (!asked.empty() && (measure.note == asked || full_name(measure) == asked)) here = 2;
    if (measure.what == asked) here = 3;
    if (here <= rank) continue;
    found = &measure;
    rank = here;
  }
  if (found == nullptr) return std::nullopt;
  return Piece{exact(found->grams), found->what, found->note, found->source};
}

}  // namespace tamis::food
