// A fiche in another system (api.inc). In a file of its own: what converting needs is needed by nothing else here.
#include <lua.h>

#include <memory>
#include <vector>

#include "core/change/convert.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

constexpr std::size_t cost_per_byte = 100;  // a file is read, converted and kept
constexpr std::size_t most_copies = 16;     // in one call, so that they can't be piled up

const base::Finding* first_error(const std::vector<base::Finding>& findings) {
  for (const base::Finding& finding : findings)
    if (finding.severity == base::Severity::error) return &finding;
  return nullptr;
}

}  // namespace

int fiche_converted(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  Session& session = opened.session();
  if (++session.copies > most_copies) raise(state, "more than " + std::to_string(most_copies) + " conversions in one call");
  spend(state, cost_per_byte * opened.document().source().bytes().size());
  change::ConvertWish wish;
  wish.units = system_at(state, 2);
  change::Converted made = change::convert(opened.document(), session.kitchen, wish);
  if (const base::Finding* error = first_error(made.findings)) {
    lua_pushnil(state);
    push(state, error->message);
    return 2;
  }
  push_fiche(state, session.open(std::make_shared<const fiche::Document>(std::move(made.document))));
  push_list(state, made.findings, [&](const base::Finding& finding) { push(state, finding.message); });
  return 2;
}

}  // namespace tamis::lua
