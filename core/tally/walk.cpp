#include "core/tally/walk.h"

#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/flow/amounts.h"

namespace tamis::tally {

using fiche::At;
using fiche::El;
using fiche::Node;
using flow::loses_trim;
using flow::Step;
using flow::Thing;
using flow::Use;

Walk::Walk(const fiche::Fiche& fiche, const flow::Flow& flow, fiche::Library& library, flow::Chain& chain,
           const fiche::Fiche* around, Node around_component)
    : fiche_(fiche), flow_(flow), document_(*fiche.document), library_(library), chain_(chain), around_(around),
      around_component_(around_component) {}

void Walk::doubt(Doubt::Kind kind, std::string what, double grams, Node where) {
  doubts.push_back({kind, std::move(what), grams, where});
}

void Walk::run() {
  mixes_.resize(flow_.things.size());
  entry_of_.assign(flow_.things.size(), -1);
  known_.assign(flow_.steps.size(), true);
  chain_.push_back(document_.source().path());
  sum_labour();
  list();
  components_without_steps();
  for (const int step : flow_.order) work_out(flow_.steps[idx(step)]);
  chain_.pop_back();
  for (const flow::Total& total : flow_.components) {
    const int made = flow_.thing_of(total.node);
    if (made >= 0 && !total.taken && !thing(made).optional) whole_.add(mixes_[idx(made)]);
  }
  yield_losses(flow_.whole.node, whole_);
}

std::optional<Mix> Walk::made(std::string_view component) const {
  if (flow_.components.empty()) return std::nullopt;
  if (!component.empty()) {
    for (const flow::Total& total : flow_.components) {
      const int made = flow_.thing_of(total.node);
      if (base::trimmed(document_.get(total.node, At::id)) == component && made >= 0) return mixes_[idx(made)];
    }
    return std::nullopt;
  }
  return whole_;
}

// ---- the lists
/// On the way that is followed: the author's choice, the first variant, nothing optional.
bool Walk::is_made(const Thing& thing) const { return thing.variant <= 0 && !thing.optional; }

void Walk::list() {
  for (std::size_t i = 0; i < flow_.things.size(); ++i) {
    const Thing& one = flow_.things[i];
    if (one.kind == Thing::Kind::component) take_from_outside(static_cast<int>(i));
    if (one.kind != Thing::Kind::ingredient && one.kind != Thing::Kind::part) continue;
    const bool used = std::any_of(one.uses.begin(), one.uses.end(), [&](int use) {
      return !flow_.uses[idx(use)].instead;
    });
    if (!is_made(one) || (one.second_choice && !used) || (one.kind == Thing::Kind::part && !used)) continue;
    if (one.returns >= 0) continue;  // it is in what came back
    add_entry(static_cast<int>(i));
  }
}

const food::Food* Walk::overridden(int index, std::string& id) const {
  if (around_ == nullptr || thing(index).id.empty()) return nullptr;
  const fiche::Document& other = *around_->document;
  for (Node c = other.first_child(around_component_); c != fiche::none; c = other.next(c)) {
    if (other.el(c) != El::override || base::trimmed(other.get(c, At::ingredient)) != thing(index).id) continue;
    if (other.find(c, At::food) == fiche::none) return nullptr;
    id = words_of(other.get(c, At::food));
    return fiche_.kitchen->find_food(id);
  }
  return nullptr;
}

void Walk::add_entry(int index) {
  const Thing& one = thing(index);
  std::optional<double> grams;
  if (one.grams) grams = one.grams->middle();
  if (one.kind == Thing::Kind::ingredient && !base::trimmed(document_.get(one.node, At::from)).empty()) {
    Mix mix = from_outside(one.node, grams);
    mixes_[idx(index)] = std::move(mix);
    return;
  }
  Entry made;
  made.node = one.node;
  made.component = one.component;
  made.name = words_of(one.name);
  made.food_id = words_of(document_.get(one.node, At::food));
  made.food = fiche_.kitchen->find_food(made.food_id);
  if (std::string id; const food::Food* other = overridden(index, id)) {
    made.food = other;
    made.food_id = id;
    made.name = words_of(other->english.substr(0, other->english.find('|')));
  }
  made.counts = one.counts;
  made.trace = one.trace;
  made.listed = grams;
  weigh_as_bought(index, made);
  grams = made.listed;
  if (one.kind == Thing::Kind::part && one.was >= 0) made.part_of = entry_of_[idx(one.was)];
  if (!grams && !one.trace && one.counts) doubt(Doubt::Kind::no_mass, made.name, 0, one.node);
  entry_of_[idx(index)] = static_cast<int>(entries.size());
  if (grams) mixes_[idx(index)].put(entries.size(), *grams);
  if (!grams && !one.trace && one.counts) mixes_[idx(index)].mass_known = false;
  entries.push_back(std::move(made));
}

/// Weighed as bought and then peeled, the flow leaves what goes in open between none taken off and all of the trim: here it
/// is taken off.
void Walk::weigh_as_bought(int index, Entry& entry) const {
  const Thing& one = thing(index);
  if (one.kind != Thing::Kind::ingredient) return;
  entry.trimmed = loses_trim(document_.get(one.node, At::prep)) || document_.get(one.node, At::weighed) == "after";
  const fiche::Statement* said = fiche_.statement(one.node, At::purchase);
  if (said != nullptr && said->amount && said->amount->has_figure()) {
    if (const auto grams = flow::grams_of(*said->amount, entry.food, {}, {})) entry.bought = grams->middle();
  }
  const std::string_view weighed = document_.get(one.node, At::weighed);
  if (weighed != "bought" && weighed != "before") return;
  if (!entry.bought && one.grams) entry.bought = one.grams->high;
  const bool taken_off = one.grams && entry.food != nullptr && entry.food->trim_share > 0 &&
                         std::abs(one.grams->low - one.grams->high * (1 - entry.food->trim_share)) < 1e-6;
  if (taken_off) entry.listed = one.grams->low;
}

// ---- hands
Labour& Walk::labour_of(Node component) {
  for (Labour& one : labour) {
    if (one.component == component) return one;
  }
  return labour.emplace_back(Labour{component, 0, 0});
}

void Walk::sum_labour() {
  for (const Step& step : flow_.steps) {
    if (step.optional) continue;
    Labour& sum = labour_of(step.component);
    const fiche::Statement* hands = fiche_.statement(step.node, At::hands);
    if (hands != nullptr && hands->amount && hands->amount->has_figure()) {
      sum.seconds += hands->amount->middle_base().approximate();
    } else {
      ++sum.unstated;
    }
  }
}

// ---- components
/// What the component's file makes is the component; where it has steps of its own, what they begin with.
void Walk::take_from_outside(int component) {
  const Node node = thing(component).node;
  if (base::trimmed(document_.get(node, At::from)).empty()) return;
  for (std::size_t i = idx(component); i < flow_.things.size(); ++i) {
    const Thing& one = flow_.things[i];
    const bool made_there = one.kind == Thing::Kind::component || one.kind == Thing::Kind::result;
    if (!made_there || one.maker >= 0 || one.component != node) continue;
    std::optional<double> grams;
    if (one.grams) grams = one.grams->middle();
    mixes_[i] = from_outside(node, grams);
    return;
  }
}

void Walk::components_without_steps() {
  for (std::size_t i = 0; i < flow_.things.size(); ++i) {
    const Thing& one = flow_.things[i];
    const bool has_file = !base::trimmed(document_.get(one.node, At::from)).empty();
    if (one.kind == Thing::Kind::component && one.maker < 0 && !has_file) {
      Mix mix;
      for (std::size_t j = 0; j < flow_.things.size(); ++j) {
        const Thing& other = flow_.things[j];
        if (other.kind != Thing::Kind::ingredient || other.component != one.node || !other.counts) continue;
        if (!other.second_choice && is_made(other)) mix.add(mixes_[j]);
      }
      set_component(one.node, std::move(mix));
    }
  }
}

void Walk::set_component(Node node, Mix mix) {
  yield_losses(node, mix);
  if (const int made = flow_.thing_of(node); made >= 0) mixes_[idx(made)] = std::move(mix);
}

// ---- steps
bool Walk::happens(const Use& use) const {
  const Thing& taken = thing(use.thing);
  if (use.instead || !taken.counts || !is_made(taken)) return false;
  return !flow_.steps[idx(use.step)].optional || taken.kind == Thing::Kind::result;
}

double Walk::stated_share(const Use& use) {
  if (use.take == Use::Take::share) return use.share->approximate();
  if (use.take != Use::Take::amount || !use.grams) return 0;
  const double whole = mixes_[idx(use.thing)].mass();
  return whole > 0 ? std::min(1.0, use.grams->middle() / whole) : 0;
}

double Walk::share_of(const Use& use) {
  if (use.take == Use::Take::all) return 1;
  if (use.take == Use::Take::share || use.take == Use::Take::amount) return stated_share(use);
  double left = 1;
  int rests = 0;
  int unstated = 0;
  for (const int index : thing(use.thing).uses) {
    const Use& other = flow_.uses[idx(index)];
    if (!happens(other)) continue;
    left -= stated_share(other);
    rests += other.take == Use::Take::rest ? 1 : 0;
    unstated += other.take == Use::Take::unstated || other.take == Use::Take::all ? 1 : 0;
  }
  left = std::max(0.0, left);
  if (use.take == Use::Take::rest) return left / std::max(1, rests);
  return rests > 0 ? 0 : left / std::max(1, unstated);
}

void Walk::work_out(const Step& step) {
  Mix mix;
  for (const int index : step.takes) {
    const Use& use = flow_.uses[idx(index)];
    if (!happens(use)) continue;
    Mix taken = mixes_[idx(use.thing)];
    const int maker = thing(use.thing).maker;
    if (maker >= 0 && comes_together(step, maker)) taken.mass_known = known_[idx(maker)];
    mix.add(taken, share_of(use));
  }
  if (!step.optional) losses(step, mix);
  const int component = flow_.thing_of(step.component);
  const bool last = component >= 0 && thing(component).maker == step.index;
  if (step.gives.size() > 1) {
    Mix part;
    part.add(mix, 1 / static_cast<double>(step.gives.size()));
    part.mass_known = false;
    for (const int given : step.gives) mixes_[idx(given)] = part;
    known_[idx(step.index)] = mix.mass_known;
    const bool together = std::any_of(flow_.steps.begin(), flow_.steps.end(),
                                      [&](const Step& other) { return comes_together(other, step.index); });
    if (!together) doubt(Doubt::Kind::divided, std::string(thing(step.gives.front()).name), mix.mass(), step.node);
  }
  if (last) {
    set_component(step.component, mix);
    if (step.gives.size() == 1) mixes_[idx(step.gives.front())] = mixes_[idx(component)];
  } else if (step.gives.size() == 1) {
    mixes_[idx(step.gives.front())] = std::move(mix);
  }
}

/// Whether the step takes all that another one divided.
bool Walk::comes_together(const Step& step, int maker) const {
  const std::vector<int>& gives = flow_.steps[idx(maker)].gives;
  if (gives.size() < 2) return false;
  return std::all_of(gives.begin(), gives.end(), [&](int given) {
    return std::any_of(step.takes.begin(), step.takes.end(), [&](int use) {
      return flow_.uses[idx(use)].thing == given && flow_.uses[idx(use)].take == Use::Take::all;
    });
  });
}

}  // namespace tamis::tally
