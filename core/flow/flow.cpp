#include "core/flow/flow.h"

#include <algorithm>

#include "core/flow/outside.h"
#include "core/flow/work.h"

namespace tamis::flow {

int Flow::thing_of(fiche::Node node) const {
  const auto found = std::lower_bound(by_node.begin(), by_node.end(), std::pair(node, -1));
  return found == by_node.end() || found->first != node ? -1 : found->second;
}

int Flow::thing_named(std::string_view id) const {
  const auto found = std::lower_bound(by_id.begin(), by_id.end(), std::pair(id, -1));
  return found == by_id.end() || found->first != id ? -1 : found->second;
}

int Flow::step_of(fiche::Node node) const {
  const auto found = std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return step.node == node; });
  return found == steps.end() ? -1 : found->index;
}

Flow read_flow_within(const fiche::Fiche& fiche, fiche::Library& library, Chain& chain, const fiche::Fiche* around,
                      fiche::Node around_component) {
  if (fiche.document->root() == fiche::none) return {};
  Work work(fiche);
  work.around = around;
  work.around_component = around_component;
  work.flow.whole.node = fiche.document->root();
  for (const fiche::Node yield : fiche.yields) {
    if (work.first_yield == fiche::none && fiche.document->parent(yield) == fiche.document->root()) work.first_yield = yield;
  }
  list_things(work);
  list_steps(work);
  join_steps(work);
  assume_uses(work);
  put_in_order(work);
  chain.push_back(fiche.document->source().path());
  weigh(work, weigh_outside(fiche, library, chain));
  chain.pop_back();
  return std::move(work.flow);
}

Flow read_flow(const fiche::Fiche& fiche, fiche::Library& library) {
  Chain chain;
  return read_flow_within(fiche, library, chain, nullptr, fiche::none);
}

}  // namespace tamis::flow
