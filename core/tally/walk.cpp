#include "core/tally/walk.h"

#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/fiche/reference.h"
#include "core/flow/amounts.h"
#include "core/flow/losses.h"

namespace tamis::tally {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using flow::loses_trim;
using flow::Step;
using flow::Thing;
using flow::Use;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

std::string words_of(std::string_view text) { return std::string(base::trimmed(text)); }

}  // namespace

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

Mix Walk::from_outside(Node node, std::optional<double> grams) {
  const std::string title = words_of(document_.get(node, document_.el(node) == El::component ? At::title : At::name));
  const fiche::FileReference reference = fiche::split_reference(document_.get(node, At::from));
  Node component = node;
  while (component != fiche::none && document_.el(component) != El::component) component = document_.parent(component);
  Mix out;
  const auto missing = [&] {
    Entry unknown;
    unknown.node = node;
    unknown.component = component;
    unknown.name = title;
    unknown.listed = grams;
    doubt(Doubt::Kind::file_missing, title, grams.value_or(0), node);
    if (grams) out.put(entries.size(), *grams);
    out.mass_known = grams.has_value();
    entries.push_back(std::move(unknown));
    return std::move(out);
  };
  if (reference.file.empty() || chain_.size() >= flow::deepest_chain) return missing();
  const fiche::Target target = fiche::follow(document_, reference.file, library_);
  if (target.document == nullptr || target.document->root() == fiche::none) return missing();
  const fiche::Document& other = *target.document;
  if (std::find(chain_.begin(), chain_.end(), other.source().path()) != chain_.end()) return missing();
  const fiche::Fiche read = fiche::read_fiche(other, *fiche_.kitchen);
  const flow::Flow flow = flow::read_flow_within(read, library_, chain_, &fiche_, node);
  Walk inner(read, flow, library_, chain_, &fiche_, node);
  inner.run();
  const auto mix = inner.made(reference.part);
  if (!mix || !(mix->mass() > 0)) return missing();
  const double share = grams ? *grams / mix->mass() : 1;
  const Node part = reference.part.empty() ? fiche::none : fiche::component_named(other, reference.part);
  const std::string in = part == fiche::none ? other.all_text(other.child(other.root(), El::title)) : words_of(other.get(part, At::title));
  for (Doubt& one : inner.doubts) doubt(one.kind, one.what.empty() ? title : one.what, share * one.grams, node);
  const std::size_t first = entries.size();
  for (std::size_t i = 0; i < inner.entries.size(); ++i) {
    Entry& one = inner.entries[i];
    const bool here = one.counts || part == fiche::none || one.component == part;
    const std::optional<double> listed = one.listed;
    if (one.part_of >= 0) one.part_of += static_cast<int>(first);
    if (one.held == nullptr) one.held = target.held;
    if (one.in.empty()) one.in = words_of(in);
    one.component = component;
    // Of the batch of the other file, what was made for this one.
    if (one.counts && listed) one.listed = share * mix->used_of(i);
    if (!one.counts && listed) one.listed = here ? share * *listed : 0;
    if (one.bought && listed && *listed > 0) one.bought = *one.bought * *one.listed / *listed;
    out.grams.resize(first + i + 1);
    out.used.resize(first + i + 1);
    out.grams.back() = share * mix->of(i);
    out.used.back() = share * mix->used_of(i);
    entries.push_back(std::move(one));
  }
  Labour& sum = labour_of(component);
  for (const Labour& one : inner.labour) {
    if (part != fiche::none && one.component != part) continue;
    sum.seconds += share * one.seconds;
    sum.unstated += one.unstated;
  }
  out.water_out = share * mix->water_out;
  out.mass_known = mix->mass_known || grams.has_value();
  return out;
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

// ---- losses
void Walk::losses(const Step& step, Mix& mix) {
  const auto unknown = [&] {
    mix.mass_known = false;
    doubt(Doubt::Kind::loss_unknown, step.gives.empty() ? std::string() : std::string(thing(step.gives.front()).name), 0, step.node);
  };
  std::optional<double> weighed;
  const bool removes = document_.find(step.node, At::removes) != fiche::none;
  for (Node c = document_.first_child(step.node); c != fiche::none; c = document_.next(c)) {
    if (document_.el(c) != El::loss) continue;
    const double lost = flow::lost_by(fiche_.statement(c, At::amount), mix.mass(), false);
    if (std::isnan(lost)) {
      unknown();
    } else if (document_.get(c, At::what) == "cooking") {
      mix.lose_water(lost);
    } else if (removes) {
      weighed = weighed.value_or(0) + lost;
    } else {
      mix.lose_of_all(lost);
    }
  }
  if (removes) take_out(step, weighed, mix);
  for (const At at : {At::reduce_by, At::reduce_to}) {
    if (document_.find(step.node, at) == fiche::none) continue;
    const double figure = flow::lost_by(fiche_.statement(step.node, at), mix.mass(), false);
    if (std::isnan(figure)) {
      unknown();
    } else {
      mix.lose_water(at == At::reduce_by ? figure : std::max(0.0, mix.mass() - figure));
    }
  }
}

void Walk::take_out(const Step& step, std::optional<double> weighed, Mix& mix) {
  std::string_view ids = document_.get(step.node, At::removes);
  std::vector<std::size_t> gone;
  double mass = 0;
  std::string names;
  for (std::size_t at = 0; at < ids.size();) {
    const std::size_t end = std::min(ids.find(' ', at), ids.size());
    const int named = flow_.thing_named(ids.substr(at, end - at));
    at = end + 1;
    if (named < 0) continue;
    for (std::size_t i = 0; i < mixes_[idx(named)].grams.size(); ++i) {
      if (mixes_[idx(named)].grams[i] <= 0 || mix.of(i) <= 0) continue;
      gone.push_back(i);
      mass += mix.of(i);
      names += (names.empty() ? "" : ", ") + entries[i].name;
    }
  }
  const double whole = mix.mass();
  const double share = weighed && mass > 0 ? std::min(1.0, *weighed / mass) : 1;
  for (const std::size_t entry : gone) mix.lose_entry(entry, share);
  if (weighed && *weighed > mass) mix.lose_of_all(*weighed - mass);
  // A bay leaf leaves a taste; five kilos of bones leave more than that.
  if (mass > 0.01 * whole) doubt(Doubt::Kind::taken_out, names, mass * (1 - share), step.node);
}

bool Walk::stated_by_a_step(Node owner, std::string_view what) const {
  return std::any_of(flow_.steps.begin(), flow_.steps.end(), [&](const Step& step) {
    if (step.component != owner && owner != flow_.whole.node) return false;
    return std::any_of(step.losses.begin(), step.losses.end(), [&](const flow::Lost& lost) {
      return lost.node != step.node && document_.get(lost.node, At::what) == what;
    });
  });
}

bool Walk::a_step_reduces(Node owner) const {
  return std::any_of(flow_.steps.begin(), flow_.steps.end(), [&](const Step& step) {
    return (step.component == owner || owner == flow_.whole.node) &&
           (document_.find(step.node, At::reduce_by) != fiche::none || document_.find(step.node, At::reduce_to) != fiche::none);
  });
}

void Walk::yield_losses(Node owner, Mix& mix) {
  const Node yield = document_.child(owner, El::yield);
  if (yield == fiche::none) return;
  for (Node c = document_.first_child(yield); c != fiche::none; c = document_.next(c)) {
    if (document_.el(c) != El::loss) continue;
    const std::string_view what = document_.get(c, At::what);
    if (stated_by_a_step(owner, what) || (what == "cooking" && a_step_reduces(owner))) continue;
    const double lost = flow::lost_by(fiche_.statement(c, At::amount), mix.mass(), false);
    if (std::isnan(lost)) {
      mix.mass_known = false;
      doubt(Doubt::Kind::loss_unknown, words_of(document_.get(owner, At::title)), 0, c);
    } else if (what == "cooking") {
      mix.lose_water(lost);
    } else {
      mix.lose_of_all(lost);
    }
  }
}

}  // namespace tamis::tally
