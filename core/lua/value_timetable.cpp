// When the steps of a fiche are done (api.inc, core/flow/timetable.h).
#include "core/flow/timetable.h"

#include <lua.h>

#include "core/flow/step_times.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/record.h"
#include "core/lua/values.h"

namespace tamis::lua {

int fiche_timetable(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  const std::string_view clock = string_at(state, 2);
  const auto service = flow::clock_time(clock);
  if (!service) raise(state, "\"" + std::string(clock.substr(0, 20)) + "\" is no time of day; write \"19:00\"");
  const std::size_t steps = opened.flow().steps.size();
  spend(state, 20'000 + steps * steps * 200);
  const flow::Timetable table = flow::lay_backwards(opened.fiche(), opened.flow(), *service);
  if (!table.fits) {
    lua_pushnil(state);
    return 1;
  }
  return push_list(state, table.steps, [&](const flow::TimetableStep& one) {
    Record record(state);
    push_element(state, opened, opened.flow().steps[static_cast<std::size_t>(one.step)].node);
    record.set("step");
    record.number("start", static_cast<double>(one.start));
    record.number("finish", static_cast<double>(one.end));
    record.flag("stated", one.stated);
    record.flag("out_of_hours", one.out_of_hours);
  });
}

}  // namespace tamis::lua
