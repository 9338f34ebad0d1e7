#include <array>

#include "core/cli/verb.h"

namespace tamis::cli {

#define TAMIS_VERB(name) extern const Verb verb_##name;
#include "core/cli/verbs.inc"

namespace {

constexpr std::array table{
#define TAMIS_VERB(name) &verb_##name,
#include "core/cli/verbs.inc"
};

}  // namespace

std::span<const Verb* const> verbs() { return table; }

const Verb* verb_named(std::string_view name) {
  for (const Verb* verb : table)
    if (verb->name == name) return verb;
  return nullptr;
}

}  // namespace tamis::cli
