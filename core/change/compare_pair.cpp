#include "core/change/compare_pair.h"

#include <algorithm>
#include <tuple>

#include "core/change/compare_score.h"
#include "core/change/compare_words.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

/// Up to so many pairs every element is weighed against every other; beyond, only against those near its place.
constexpr std::size_t most_pairs = 40'000;
constexpr std::size_t near = 40;

struct Candidate {
  double score = 0;
  std::size_t a = 0, b = 0;  // places in the two lists
  [[nodiscard]] auto key() const { return std::tuple(-score, a < b ? b - a : a - b, std::min(a, b), a); }
};

/// The best pairs of two lists, best first; `score` gives what speaks for a pair, and at least `least` is wanted.
template <class Score>
std::vector<std::pair<std::size_t, std::size_t>> best_pairs(std::size_t as, std::size_t bs, double least, Score score) {
  std::vector<Candidate> candidates;
  const bool all = bs == 0 || as <= most_pairs / bs;
  for (std::size_t a = 0; a < as; ++a) {
    for (std::size_t b = 0; b < bs; ++b) {
      if (!all && (a < b ? b - a : a - b) > near) continue;
      const double speaks = score(a, b);
      if (speaks >= least) candidates.push_back({speaks, a, b});
    }
  }
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& x, const Candidate& y) { return x.key() < y.key(); });
  std::vector<bool> taken_a(as, false);
  std::vector<bool> taken_b(bs, false);
  std::vector<std::pair<std::size_t, std::size_t>> out;
  for (const Candidate& one : candidates) {
    if (taken_a[one.a] || taken_b[one.b]) continue;
    taken_a[one.a] = taken_b[one.b] = true;
    out.emplace_back(one.a, one.b);
  }
  return out;
}

std::vector<Traits> traits_of(const Side& side, const std::vector<Node>& nodes) {
  std::vector<Traits> out;
  out.reserve(nodes.size());
  for (const Node node : nodes) out.push_back(traits_of(side, node));
  return out;
}

}  // namespace

Pairs::Pairs(const Side& from, const Side& to) : from_(from), to_(to) {
  pair(from.document().root(), to.document().root());
  pair_components();
  pair_ingredients();
  pair_steps();
  std::vector<std::pair<Node, Node>> open(to_new_.begin(), to_new_.end());
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    pair_children(a, b, open);
  }
  pair_ids();
}

Node Pairs::partner(const Partners& partners, Node node) {
  const auto found = partners.find(node);
  return found == partners.end() ? fiche::none : found->second;
}

void Pairs::pair(Node a, Node b) {
  to_new_.emplace(a, b);
  to_old_.emplace(b, a);
}

bool Pairs::in_one_component(Node a, Node b) const {
  const Node component = from_.around(a, El::component);
  const Node other = to_.around(b, El::component);
  return component == fiche::none ? other == fiche::none : in_new(component) == other;
}

void Pairs::pair_components() {
  const std::vector<Node> as = from_.all(El::component);
  const std::vector<Node> bs = to_.all(El::component);
  const std::vector<Traits> left = traits_of(from_, as);
  const std::vector<Traits> right = traits_of(to_, bs);
  for (const auto& [a, b] : best_pairs(as.size(), bs.size(), least_for_component,
                                       [&](std::size_t i, std::size_t j) { return score_component(left[i], right[j]); }))
    pair(as[a], bs[b]);
}

void Pairs::pair_ingredients() {
  const std::vector<Node> as = from_.all(El::ingredient);
  const std::vector<Node> bs = to_.all(El::ingredient);
  const std::vector<Traits> left = traits_of(from_, as);
  const std::vector<Traits> right = traits_of(to_, bs);
  for (const auto& [a, b] : best_pairs(as.size(), bs.size(), 1, [&](std::size_t i, std::size_t j) {
         return score_ingredient(left[i], right[j], in_one_component(as[i], bs[j]));
       }))
    pair(as[a], bs[b]);
}

void Pairs::pair_steps() {
  const std::vector<Node> as = from_.all(El::step);
  const std::vector<Node> bs = to_.all(El::step);
  const std::vector<Traits> left = traits_of(from_, as);
  const std::vector<Traits> right = traits_of(to_, bs);
  for (const auto& [a, b] : best_pairs(as.size(), bs.size(), 1, [&](std::size_t i, std::size_t j) {
         return score_step(left[i], right[j], in_one_component(as[i], bs[j]));
       }))
    pair(as[a], bs[b]);
}

void Pairs::pair_children(Node a, Node b, std::vector<std::pair<Node, Node>>& open) {
  std::vector<Node> as;
  std::vector<Node> bs;
  for (const Node n : from_.blocks(a))
    if (in_new(n) == fiche::none) as.push_back(n);
  for (const Node n : to_.blocks(b))
    if (in_old(n) == fiche::none) bs.push_back(n);
  const auto is_late = [](const Side& side, Node n) {
    const El el = side.document().el(n);
    return el == El::component || el == El::ingredient || el == El::step;  // weighed already
  };
  std::erase_if(as, [&](Node n) { return is_late(from_, n); });
  std::erase_if(bs, [&](Node n) { return is_late(to_, n); });
  const std::vector<Traits> left = traits_of(from_, as);
  const std::vector<Traits> right = traits_of(to_, bs);
  for (const auto& [i, j] : best_pairs(as.size(), bs.size(), least_for_block,
                                       [&](std::size_t x, std::size_t y) { return score_block(left[x], right[y]); })) {
    pair(as[i], bs[j]);
    open.emplace_back(as[i], bs[j]);
  }
}

void Pairs::pair_ids() {
  for (const auto& [a, b] : to_new_) {
    const auto take = [&](const std::string& old_id, const std::string& new_id) {
      if (!old_id.empty() && !new_id.empty()) ids_.emplace(old_id, new_id);
    };
    take(std::string(from_.document().get(a, At::id)), std::string(to_.document().get(b, At::id)));
    const std::vector<std::string> was = words_of(from_.document().get(a, At::makes));
    const std::vector<std::string> is = words_of(to_.document().get(b, At::makes));
    for (std::size_t i = 0; was.size() == is.size() && i < was.size(); ++i) take(was[i], is[i]);
  }
}

std::string Pairs::id_in_new(std::string_view id) const {
  const auto found = ids_.find(id);
  return found == ids_.end() ? std::string(id) : found->second;
}

namespace {

/// Heavier the longer the words, then by a number that only the tie decides.
std::uint64_t weight_of(const Standing& one) {
  std::uint64_t hash = 1469598103934665603U;  // FNV-1a
  for (const char c : one.tie) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211U;
  return (std::uint64_t{1} << 44U) + (std::min<std::uint64_t>(one.length, 0xFFFFFU) << 20U) + (hash & 0xFFFFFU);
}

}  // namespace

std::vector<bool> moved_among(const std::vector<Standing>& standing) {
  const std::size_t count = standing.size();
  std::vector<std::uint64_t> best(count);
  std::vector<std::size_t> before(count, count);
  std::size_t last = count;
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      const bool in_order = standing[k].old_place < standing[i].old_place;
      if (in_order && (before[i] == count || best[k] > best[before[i]])) before[i] = k;
    }
    best[i] = weight_of(standing[i]) + (before[i] == count ? 0 : best[before[i]]);
    if (last == count || best[i] > best[last]) last = i;
  }
  std::vector<bool> moved(count, true);
  for (; last != count; last = before[last]) moved[last] = false;
  return moved;
}

}  // namespace tamis::change
