// Pictures: the graph of the steps, the curve of the food's temperature, photographs (api.inc).
#include <lua.h>

#include "core/draw/food_curve.h"
#include "core/draw/steps_graph.h"
#include "core/fiche/pictures.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

using fiche::At;
using fiche::El;

/// Laying out boxes goes over pairs of them.
draw::Steps steps_at(lua_State* state, Opened& opened, std::string_view component) {
  constexpr std::size_t each = 5'000, pair = 20;
  const std::size_t count = opened.flow().steps.size();
  spend(state, each * count + pair * count * count);
  return {opened.fiche(), opened.flow(), opened.states(), std::string(component)};
}

int push_drawing(lua_State* state, const std::string& svg) {
  spend(state, svg.size() / 4);
  push(state, svg);
  return 1;
}

int push_reason(lua_State* state, std::string_view why) {
  lua_pushnil(state);
  push(state, why);
  return 2;
}

/// RFC 4648, section 4.
std::string base64(std::string_view bytes) {
  constexpr std::string_view signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  out.reserve((bytes.size() + 2) / 3 * 4);
  const auto at = [&](std::size_t i) { return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U; };
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const unsigned group = at(i) << 16U | at(i + 1) << 8U | at(i + 2);
    out += signs[group >> 18U];
    out += signs[group >> 12U & 63U];
    out += i + 1 < bytes.size() ? signs[group >> 6U & 63U] : '=';
    out += i + 2 < bytes.size() ? signs[group & 63U] : '=';
  }
  return out;
}

}  // namespace

int fiche_graph(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  std::string_view component;
  if (!lua_isnoneornil(state, 2)) {
    const NodeValue& value = element_at(state, 2);
    if (value.opened != &opened || opened.document().el(value.node) != El::component)
      raise(state, "graph takes a component of the same fiche");
    component = opened.document().get(value.node, At::id);
    if (component.empty()) raise(state, "that component has no id");
  }
  return push_drawing(state, draw::graph_svg(draw::steps_graph(steps_at(state, opened, component))));
}

int element_curve(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const std::string_view component = value.opened->document().get(value.node, At::id);
  if (component.empty()) return push_reason(state, "the component has no id");
  const auto curve = draw::food_curve(steps_at(state, *value.opened, component));
  return curve ? push_drawing(state, draw::curve_svg(*curve)) : push_reason(state, curve.fault().message);
}

int element_data(lua_State* state) {
  constexpr std::size_t cost = 100'000;  // a file is read
  const NodeValue& value = element_at(state, 1);
  spend(state, cost);
  auto* pictures = dynamic_cast<fiche::Pictures*>(&value.opened->session().library);
  if (pictures == nullptr) return push_reason(state, "pictures cannot be read here");
  const auto got = pictures->picture(value.opened->path(), value.opened->document().get(value.node, At::href));
  if (!got) return push_reason(state, got.fault().message);
  spend(state, got->size() / 4);
  push(state, "data:" + std::string(fiche::picture_type(*got)) + ";base64," + base64(*got));
  return 1;
}

}  // namespace tamis::lua
