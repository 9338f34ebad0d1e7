#include "core/flow/outside.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/flow/amounts.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::Node;

/// The part of it that is taken; all of it when nothing is said.
std::optional<Grams> taken_of(const std::optional<Grams>& whole, const fiche::Statement* take) {
  if (take == nullptr) return whole;
  if (!take->share) return std::nullopt;
  switch (take->share->form) {
    case measure::Share::Form::fraction: {
      const double share = take->share->fraction.approximate();
      return whole ? std::optional(Grams{whole->low * share, whole->high * share}) : std::nullopt;
    }
    case measure::Share::Form::amount: return grams_of(take->share->amount, nullptr, {}, {});
    case measure::Share::Form::rest: return std::nullopt;
  }
  return std::nullopt;
}

std::optional<Grams> total_of(const Flow& flow, const fiche::Document& document, std::string_view part) {
  if (part.empty()) return flow.whole.out;
  for (const Total& total : flow.components) {
    if (document.get(total.node, At::id) == part) return total.out;
  }
  return std::nullopt;
}

std::optional<Grams> weigh_file(const fiche::Fiche& fiche, fiche::Library& library, Chain& chain, Node component) {
  const std::string_view from = base::trimmed(fiche.document->get(component, At::from));
  const std::size_t hash = std::min(from.find('#'), from.size());
  if (hash == 0 || chain.size() >= deepest_chain) return std::nullopt;
  const auto opened = library.open(fiche.document->source().path(), from.substr(0, hash));
  if (!opened || (*opened)->root() == fiche::none) return std::nullopt;
  const fiche::Document& document = **opened;
  if (std::find(chain.begin(), chain.end(), document.source().path()) != chain.end()) return std::nullopt;
  const fiche::Fiche other = fiche::read_fiche(document, *fiche.kitchen);
  const Flow flow = read_flow_within(other, library, chain, &fiche, component);
  return total_of(flow, document, hash < from.size() ? from.substr(hash + 1) : std::string_view{});
}

}  // namespace

std::vector<std::optional<Grams>> weigh_outside(const fiche::Fiche& fiche, fiche::Library& library, Chain& chain) {
  std::vector<std::optional<Grams>> out;
  for (std::size_t i = 0; i < fiche.components.size(); ++i) {
    const Node component = fiche.components[i];
    if (fiche.document->find(component, At::from) == fiche::none) continue;
    out.resize(fiche.components.size());
    const fiche::Statement* take = fiche.statement(component, At::take);
    const bool amount = take != nullptr && take->share && take->share->form == measure::Share::Form::amount;
    out[i] = taken_of(amount ? std::nullopt : weigh_file(fiche, library, chain, component), take);
  }
  return out;
}

}  // namespace tamis::flow
