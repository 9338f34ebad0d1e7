#include "core/flow/weigh.h"

#include <algorithm>

#include "core/flow/losses.h"

namespace tamis::flow {

using fiche::At;
using fiche::El;
using fiche::Node;

void Weigh::run() {
  for (std::size_t i = 0; i < flow_.things.size(); ++i) flow_.things[i].trace = lines_[i].trace;
  const int variants = list_variants();
  prepare();
  for (int variant = 0; variant < std::max(1, variants); ++variant) {
    for (const bool most : {false, true}) walk({most, variant});
  }
  hand_over();
}

int Weigh::list_variants() {
  int most = 0;
  for (const Total& total : flow_.components) {
    int here = 0;
    for (Node c = work_.document.first_child(total.node); c != fiche::none; c = work_.document.next(c)) {
      if (work_.document.el(c) != El::variant) continue;
      flow_.variants.push_back({c, std::nullopt, total.marked, total.taken});
      variant_of_.emplace_back(total.node, here++);
    }
    most = std::max(most, here);
  }
  return most;
}

void Weigh::prepare() {
  thing_.resize(flow_.things.size());
  spread_.resize(flow_.things.size());
  use_.resize(flow_.uses.size());
  in_.resize(flow_.steps.size());
  out_.resize(flow_.steps.size());
  thing_hull_.resize(flow_.things.size());
  use_hull_.resize(flow_.uses.size());
  in_hull_.resize(flow_.steps.size());
  out_hull_.resize(flow_.steps.size());
  component_hull_.resize(flow_.components.size());
  variant_hull_.resize(flow_.variants.size());
  component_.resize(flow_.components.size());
  loss_hull_.resize(flow_.steps.size());
  for (std::size_t i = 0; i < flow_.steps.size(); ++i) list_losses(flow_.steps[i]);
}

void Weigh::list_losses(Step& step) {
  for (Node c = work_.document.first_child(step.node); c != fiche::none; c = work_.document.next(c)) {
    if (work_.document.el(c) == El::loss) step.losses.push_back({c, std::nullopt});
  }
  for (const At at : {At::removes, At::reduce_by, At::reduce_to}) {
    if (work_.document.find(step.node, at) != fiche::none) step.losses.push_back({step.node, std::nullopt});
  }
  loss_hull_[idx(step.index)].resize(step.losses.size());
}

void Weigh::walk(Way way) {
  way_ = way;
  std::fill(spread_.begin(), spread_.end(), false);
  std::fill(use_.begin(), use_.end(), unknown);
  std::fill(in_.begin(), in_.end(), unknown);
  std::fill(out_.begin(), out_.end(), unknown);
  std::fill(component_.begin(), component_.end(), unknown);
  for (std::size_t i = 0; i < thing_.size(); ++i) thing_[i] = stated_mass(static_cast<int>(i));
  components_without_steps();
  lost_.clear();
  for (const int step : flow_.order) work_out(step);
  for (std::size_t i = 0; i < thing_.size(); ++i) thing_hull_[i].add(thing_[i]);
  for (std::size_t i = 0; i < use_.size(); ++i) use_hull_[i].add(use_[i]);
  for (std::size_t i = 0; i < in_.size(); ++i) {
    in_hull_[i].add(in_[i]);
    out_hull_[i].add(out_[i]);
  }
  total_up();
  keep_way();
}

void Weigh::keep_way() {
  Masses& kept = flow_.ways.emplace_back(Masses{way_.most, way_.variant, thing_, use_, in_, out_, {}});
  std::size_t all = 0;
  std::vector<std::size_t> first(flow_.steps.size());
  for (std::size_t i = 0; i < flow_.steps.size(); ++i) {
    first[i] = all;
    all += flow_.steps[i].losses.size();
  }
  kept.lost.assign(all, unknown);
  for (const auto& [step, number, grams] : lost_) kept.lost[first[idx(step)] + number] = grams;
}

bool Weigh::of_this_variant(const Thing& thing) const {
  return thing.variant < 0 || thing.variant == std::min(way_.variant, variants_in(thing.component) - 1);
}

int Weigh::variants_in(Node component) const {
  int count = 0;
  for (const auto& [node, number] : variant_of_) count += node == component ? 1 : 0;
  return count;
}

double Weigh::stated_mass(int index) {
  const Line& line = lines_[idx(index)];
  if (line.grams) return end_of(*line.grams);
  if (line.trace) return 0;
  const Thing& thing = flow_.things[idx(index)];
  if (thing.kind == Thing::Kind::result && thing.maker < 0) return outside_mass(thing.component);
  return unknown;
}

double Weigh::outside_mass(Node component) const {
  for (std::size_t i = 0; i < flow_.components.size(); ++i) {
    if (flow_.components[i].node == component && i < outside_.size() && outside_[i]) return end_of(*outside_[i]);
  }
  return unknown;
}

void Weigh::components_without_steps() {
  for (std::size_t i = 0; i < flow_.things.size(); ++i) {
    const Thing& thing = flow_.things[i];
    if (thing.kind != Thing::Kind::component || thing.maker >= 0) continue;
    double mass = 0;
    if (!work_.document.get(thing.node, At::from).empty()) {
      mass = outside_mass(thing.node);
    } else {
      for (std::size_t j = 0; j < flow_.things.size(); ++j) {
        const Thing& other = flow_.things[j];
        if (other.kind != Thing::Kind::ingredient || other.component != thing.node || !other.counts) continue;
        if (other.second_choice || !of_this_variant(other) || (other.optional && !way_.most)) continue;
        mass += mass_of(static_cast<int>(j));
      }
    }
    set_component(thing.node, mass);
  }
}

void Weigh::set_component(Node node, double mass) {
  mass = after_yield_losses(work_, node, mass, way_.most);
  for (std::size_t i = 0; i < flow_.components.size(); ++i) {
    if (flow_.components[i].node == node) component_[i] = mass;
  }
  if (const int thing = flow_.thing_of(node); thing >= 0) thing_[idx(thing)] = mass;
}

double Weigh::mass_of(int index) {
  double& mass = thing_[idx(index)];
  const Line& line = lines_[idx(index)];
  if (known(mass)) return mass;
  if (line.follows >= 0) mass = line.times * thing_[idx(line.follows)];
  if (line.total) {
    double rest = end_of(*line.total);
    for (const int other : line.tops_up) rest -= mass_of(other);
    if (known(rest)) mass = std::max(0.0, rest);
  }
  const Thing& thing = flow_.things[idx(index)];
  if (!known(mass) && thing.returns >= 0 && !work_.fiche.statement(thing.node)) mass = thing_[idx(thing.returns)];
  return mass;
}

void Weigh::total_up() {
  double whole = 0;
  for (std::size_t i = 0; i < flow_.components.size(); ++i) {
    const Total& total = flow_.components[i];
    component_hull_[i].add(component_[i]);
    const int thing = flow_.thing_of(total.node);
    const bool left_out = !way_.most && thing >= 0 && flow_.things[idx(thing)].optional;
    if (!total.taken && !left_out) whole += component_[i];
  }
  if (flow_.components.empty()) whole = unknown;
  whole_hull_.add(after_yield_losses(work_, flow_.whole.node, whole, way_.most));
  for (std::size_t i = 0; i < variant_of_.size(); ++i) {
    const auto& [component, number] = variant_of_[i];
    if (std::min(way_.variant, variants_in(component) - 1) != number) continue;
    for (std::size_t j = 0; j < flow_.components.size(); ++j) {
      if (flow_.components[j].node == component) variant_hull_[i].add(component_[j]);
    }
  }
}

void Weigh::hand_over() {
  for (std::size_t i = 0; i < thing_.size(); ++i) {
    Thing& thing = flow_.things[i];
    thing.grams = lines_[i].grams && thing.variant >= 0 ? lines_[i].grams : thing_hull_[i].range();
    if (thing.trace) thing.grams.reset();
  }
  for (std::size_t i = 0; i < use_.size(); ++i) {
    if (!flow_.things[idx(flow_.uses[i].thing)].trace) flow_.uses[i].grams = use_hull_[i].range();
  }
  for (std::size_t i = 0; i < in_.size(); ++i) {
    Step& step = flow_.steps[i];
    step.in = in_hull_[i].range();
    step.out = out_hull_[i].range();
    for (std::size_t j = 0; j < step.losses.size(); ++j) step.losses[j].grams = loss_hull_[i][j].range();
  }
  for (std::size_t i = 0; i < component_.size(); ++i) flow_.components[i].out = component_hull_[i].range();
  for (std::size_t i = 0; i < variant_hull_.size(); ++i) flow_.variants[i].out = variant_hull_[i].range();
  flow_.whole.out = whole_hull_.range();
}

void weigh(Work& work, const std::vector<std::optional<Grams>>& outside) { Weigh(work, outside).run(); }

}  // namespace tamis::flow
