#include "core/measure/unit.h"

#include <array>
#include <cassert>

namespace tamis::measure {
namespace {

struct Row {
  std::string_view id;
  Kind kind;
  System system;
  System also;
  std::string_view to_base;
  std::string_view offset;
  bool rough;
  std::string_view source;
};

constexpr Row rows[] = {
#define UNIT(id, kind, system, also, to_base, offset, rough, source) \
  {id, Kind::kind, System::system, System::also, to_base, offset, rough, source},
#include "core/measure/units.inc"
#undef UNIT
};

base::Ratio exact(std::string_view text) {
  // "-160/9" and "-273.15" as well as plain figures: the table's spelling, not a cook's.
  const auto value = base::Ratio::parse(text);
  assert(value && value->ok());
  return *value;
}

std::array<Unit, std::size(rows)> make_units() {
  std::array<Unit, std::size(rows)> made;
  for (std::size_t i = 0; i < made.size(); ++i) {
    const Row& row = rows[i];
    made[i] = {row.id,   row.kind, row.system, row.also, exact(row.to_base), exact(row.offset),
               row.rough, row.source};
  }
  return made;
}

}  // namespace

std::span<const Unit> units() {
  static const auto made = make_units();
  return made;
}

const Unit* unit_by_id(std::string_view id) {
  for (const Unit& unit : units()) {
    if (unit.id == id) return &unit;
  }
  return nullptr;
}

bool belongs_to(const Unit& unit, System system) {
  if (unit.system == System::trade) return true;
  if (unit.system == System::si) return system == System::metric || system == System::si;
  return unit.system == system || (unit.also != System::none && unit.also == system);
}

bool is_gas_mark(const Unit& unit) { return unit.id == "gas-mark"; }

std::string_view kind_name(Kind kind) {
  switch (kind) {
    case Kind::mass: return "mass";
    case Kind::volume: return "volume";
    case Kind::length: return "length";
    case Kind::count: return "count";
    case Kind::time: return "time";
    case Kind::temperature: return "temperature";
    case Kind::temperature_difference: return "temperature difference";
  }
  return "mass";
}

std::string_view system_name(System system) {
  switch (system) {
    case System::none: return "no system";
    case System::si: return "SI";
    case System::metric: return "metric";
    case System::us: return "US customary";
    case System::imperial: return "imperial";
    case System::trade: return "trade measures";
  }
  return "no system";
}

}  // namespace tamis::measure
