#include "core/rules/soaking.h"

#include "core/base/says.h"

namespace tamis::rules {

bool says_soaked(std::string_view words) {
  return base::says(words,
                    {"soak",       "bloom",         "soften",      "hydrat",     "réhydrat", "sprinkl",  "swell",    "swollen",
                     "squeez",     "wring",         "wrung",       "cold water", "instant",  "tremp",    "ramoll",   "gonfl",
                     "essor",      "eau froide",    "eingeweicht", "einweich",   "weich",    "quell",    "gequoll",  "ausdrück",
                     "ausgedrück", "kaltem wasser", "hidrat",      "remoj",      "escurr",   "ablandar", "agua fría"});
}

}  // namespace tamis::rules
