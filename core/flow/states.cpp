#include "core/flow/states.h"

#include "core/flow/walk.h"

namespace tamis::flow {
namespace {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

}  // namespace

std::optional<Range> States::held(int step, int thing) const {
  const int line = line_of[idx(thing)];
  if (line < 0 || apart[idx(step)]) return std::nullopt;
  return lines[idx(step) * (lines.size() / steps.size()) + idx(line)];
}

States read_states_within(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library, Chain& chain,
                          const fiche::Fiche* around, fiche::Node around_component) {
  if (fiche.document->root() == fiche::none) return {};
  chain.push_back(fiche.document->source().path());
  std::vector<Point> start;
  Start(fiche, flow, library, chain, around, around_component).read(start);
  chain.pop_back();
  return Walk(fiche, flow).run(std::move(start));
}

States read_states(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library) {
  Chain chain;
  return read_states_within(fiche, flow, library, chain, nullptr, fiche::none);
}

}  // namespace tamis::flow
