#include <algorithm>

#include "core/food/allergen_bits.h"
#include "core/food/food.h"

namespace tamis::food {
namespace {

constexpr AllergenName names[] = {
#define ALLERGEN(id, english, french, eu, us, source) {#id, allergen::id, english, french, eu, us, source},
#include "core/food/allergens.inc"
#undef ALLERGEN
};

bool separates(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == ',' || c == ';'; }

}  // namespace

std::span<const AllergenName> allergen_names() { return names; }

Allergens read_allergens(std::string_view words, std::vector<std::string_view>& unknown) {
  Allergens bits = 0;
  while (!words.empty()) {
    const auto* stop = std::find_if(words.begin(), words.end(), separates);
    const std::string_view word = words.substr(0, static_cast<std::size_t>(stop - words.begin()));
    words.remove_prefix(std::min(word.size() + 1, words.size()));
    if (word.empty()) continue;
    const auto named = [&](const AllergenName& name) { return name.id == word; };
    const auto* found = std::find_if(std::begin(names), std::end(names), named);
    if (found == std::end(names)) {
      unknown.push_back(word);
    } else {
      bits |= found->bit;
    }
  }
  return bits;
}

}  // namespace tamis::food
