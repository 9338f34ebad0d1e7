#include <algorithm>

#include "core/base/utf8.h"
#include "core/fiche/reference.h"
#include "core/flow/how_warm.h"
#include "core/flow/point.h"
#include "core/flow/warm.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

std::optional<double> fraction_of(const fiche::Statement* said) {
  if (said == nullptr || !said->share || said->share->form != measure::Share::Form::fraction) return std::nullopt;
  return said->share->fraction.approximate();
}

bool is_reported(const Matter& matter) {
  return std::all_of(matter.parts.begin(), matter.parts.end(), [](const Range& part) { return part.width() < 0.005; });
}

}  // namespace

Start::Start(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library, Chain& chain,
             const fiche::Fiche* around, Node around_component)
    : fiche_(fiche), flow_(flow), library_(library), chain_(chain), around_(around), around_component_(around_component),
      places_(*fiche.kitchen) {}

void Start::read(std::vector<Point>& points) {
  points.assign(flow_.things.size(), {});
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Thing& thing = flow_.things[i];
    const int index = static_cast<int>(i);
    if (thing.kind == Thing::Kind::ingredient || thing.kind == Thing::Kind::part) {
      points[i] = of_ingredient(index);
    } else if (thing.maker < 0 && !fiche_.document->get(thing.component, At::from).empty()) {
      points[i] = from_file(index, thing.component);
    }
  }
}

std::string_view Start::food_of(int thing) const {
  const Thing& known = flow_.things[idx(thing)];
  if (around_ != nullptr) {
    const fiche::Document& document = *around_->document;
    for (Node c = document.first_child(around_component_); c != fiche::none; c = document.next(c)) {
      if (document.el(c) != El::override || document.get(c, At::ingredient) != known.id) continue;
      const std::string_view other = document.get(c, At::food);
      if (!other.empty()) return base::trimmed(other);
    }
  }
  if (known.kind == Thing::Kind::ingredient) return fiche_.ingredients[idx(known.ingredient)].food_id;
  return base::trimmed(fiche_.document->get(known.node, At::food));
}

Point Start::of_ingredient(int thing) {
  const Node node = flow_.things[idx(thing)].node;
  if (fiche_.document->find(node, At::from) != fiche::none) return from_file(thing, node);
  return of_food(thing, food_of(thing), node);
}

Point Start::of_food(int thing, std::string_view id, Node node) {
  Point made;
  const food::Food* food = id.empty() ? nullptr : fiche_.kitchen->find_food(id);
  if (food == nullptr) {
    made.matter = unknown_matter();
    made.why_shares = {Why::Reason::food_unknown, thing, -1};
    made.celsius = {places_.freezer().low, places_.room().high};
    made.why_celsius = {Why::Reason::kept, thing, -1};
    made.allergens_open = flow_.things[idx(thing)].returns < 0;
    return made;
  }
  const fiche::Kitchen::OwnFood* own = fiche_.kitchen->own_food(id);
  std::optional<double> fat = fraction_of(fiche_.statement(node, At::fat));
  if (!fat && own != nullptr && own->fat_percent) fat = *own->fat_percent / 100;
  made.matter = matter_of(*food, fat);
  if (!is_reported(made.matter)) made.why_shares = {Why::Reason::not_reported, thing, -1};
  set_celsius(made, *food, thing, node);
  made.roles = 1U << static_cast<unsigned>(food->role);
  const fiche::HeldAllergens held = fiche::allergens_held(*food, own);
  made.sure = held.sure;
  made.assumed = held.assumed;
  made.may = held.may;
  return made;
}

/// As stated, by the words of its line, else as it is kept.
void Start::set_celsius(Point& point, const food::Food& food, int thing, Node node) const {
  const fiche::Document& document = *fiche_.document;
  std::optional<Range> said = how_warm(document.get(node, At::prep), &food, *fiche_.kitchen);
  if (!said && (food.role == food::Role::liquid || food.id == "water")) said = how_warm(document.get(node, At::name), &food, *fiche_.kitchen);
  if (said && std::isinf(said->low)) said->low = std::min(said->high, places_.freezer().low);  // "-18 °C or lower"
  point.celsius = said.value_or(places_.store(food));
  if (const fiche::Statement* at = fiche_.statement(node, At::at)) {
    if (const auto stated = celsius_meant(*at, *fiche_.kitchen)) {
      point.celsius = narrowed(point.celsius, *stated);
      said = stated;
    }
  }
  if (!said) point.why_celsius = {Why::Reason::kept, thing, -1};
  point.solid = !(point.celsius.low >= 25);
}

Point Start::from_file(int thing, Node node) {
  Point unknown;
  unknown.matter = unknown_matter();
  unknown.why_shares = unknown.why_celsius = {Why::Reason::file, thing, -1};
  unknown.allergens_open = true;
  const fiche::FileReference reference = fiche::split_reference(fiche_.document->get(node, At::from));
  if (reference.file.empty() || chain_.size() >= deepest_chain) return unknown;
  const auto opened = library_.open(fiche_.document->source().path(), reference.file);
  if (!opened || (*opened)->root() == fiche::none) return unknown;
  const fiche::Document& document = **opened;
  if (std::find(chain_.begin(), chain_.end(), document.source().path()) != chain_.end()) return unknown;
  const fiche::Fiche other = fiche::read_fiche(document, *fiche_.kitchen);
  const bool component = fiche_.document->el(node) == El::component;
  const Flow flow = read_flow_within(other, library_, chain_, component ? &fiche_ : nullptr, component ? node : fiche::none);
  const States states = read_states_within(other, flow, library_, chain_, component ? &fiche_ : nullptr,
                                           component ? node : fiche::none);
  std::vector<Point> points;
  for (const Total& total : flow.components) {
    const bool wanted = reference.part.empty() ? !total.taken : document.get(total.node, At::id) == reference.part;
    const int made = wanted ? flow.thing_of(total.node) : -1;
    if (made < 0) continue;
    points.push_back(point_of(states.things[idx(made)]));
    points.back().grams = total.out ? total.out->middle() : std::numeric_limits<double>::quiet_NaN();
  }
  if (points.empty()) return unknown;
  std::vector<Going> goings;
  for (const Point& point : points) goings.push_back({&point, points.size() == 1 ? 1 : point.grams, thing});
  Point made = mix(goings, -1);
  // When it was made is not known: it may be as it was left, or have stood since.
  made.celsius = toward(mix_celsius(goings).celsius, hull_of(places_.room(), places_.fridge()));
  made.why_celsius = {Why::Reason::file, thing, -1};
  const auto here = [&](Why& why) {
    if (why.any()) why = {Why::Reason::file, thing, -1};
  };
  here(made.why_grams);
  here(made.why_shares);
  here(made.why_celsius);
  if (!component) made.matter = weighed_anew(made.matter);
  made.depth = made.vessel = fiche::none;
  made.depth_mm.reset();
  return made;
}

}  // namespace tamis::flow
