#include "core/tally/walk.h"

#include <algorithm>

#include "core/fiche/reference.h"

namespace tamis::tally {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

/// Of each line whether what is taken of it is parts, yolks or zest.
std::vector<bool> taken_in_parts(const std::vector<Entry>& entries, const Mix& mix) {
  std::vector<bool> out(entries.size());
  for (std::size_t i = 0; i < entries.size(); ++i)
    if (entries[i].part_of >= 0 && mix.used_of(i) > 0) out[idx(entries[i].part_of)] = true;
  return out;
}

}  // namespace

/// What the other file takes from files of its own, as far as it went into what is taken here.
void Walk::take_bases(Walk& inner, const Mix& mix, double share, Node component) {
  for (Base& one : inner.bases) {
    double used = 0;
    double listed = 0;
    for (std::size_t i = one.first; i < one.end; ++i) {
      const Entry& entry = inner.entries[i];
      if (!entry.counts || !entry.listed || entry.part_of >= 0) continue;
      used += mix.used_of(i);
      listed += *entry.listed;
    }
    const double part = listed > 0 ? std::min(1.0, used / listed) : 1;
    if (!(part > 0)) continue;
    one.grams *= share * part;
    one.batches *= share * part;
    one.component = component;
    one.first += entries.size();
    one.end += entries.size();
    bases.push_back(std::move(one));
  }
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
  take_bases(inner, *mix, share, component);
  Base base{target.held, component, words_of(in), share * mix->mass(), share, first, first + inner.entries.size()};
  bases.push_back(std::move(base));
  const std::vector<bool> in_parts = taken_in_parts(inner.entries, *mix);
  for (std::size_t i = 0; i < inner.entries.size(); ++i) {
    Entry& one = inner.entries[i];
    const bool here = one.counts || part == fiche::none || one.component == part;
    const std::optional<double> listed = one.listed;
    if (one.part_of >= 0) one.part_of += static_cast<int>(first);
    if (one.held == nullptr) one.held = target.held;
    if (one.in.empty()) one.in = words_of(in);
    one.component = component;
    one.share *= share;
    // Of the batch of the other file, what was made for this one; of what is bought whole and taken in parts, the whole.
    if (one.counts && listed) one.listed = share * (in_parts[i] ? *listed : mix->used_of(i));
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

}  // namespace tamis::tally
