#include "core/change/compare.h"

#include <algorithm>
#include <tuple>

#include "core/change/compare_work.h"

namespace tamis::change {

using fiche::At;
using fiche::Node;

namespace {

constexpr std::string_view topic_names[] = {"safety", "figures", "order", "other", "wording"};
constexpr std::string_view kind_names[] = {"added", "removed", "changed", "moved", "reworded"};
constexpr std::string_view hold_names[] = {"", "tightened", "loosened"};

std::optional<base::Span> place_of(const Side& side, Node node) {
  if (node == fiche::none) return std::nullopt;
  const fiche::Document& document = side.document();
  return document.kind(node) == fiche::NodeKind::element ? document.head_span(node) : document.span(node);
}

/// Conversions are taken back before fiches are compared; that one of the two had gone through one is told.
void compare_conversions(Comparing& work, const Compared& from, const Compared& to) {
  const auto kept = [](const Compared& one) { return !one.document.get(one.document.root(), At::was_units).empty(); };
  if (kept(from) == kept(to)) return;
  Change change;
  change.kind = Change::Kind::reworded;
  change.topic = Topic::wording;
  change.what = "units";
  change.is = to.document.get(to.document.root(), At::units);
  change.was = from.document.get(from.document.root(), At::units);
  change.text = kept(to) ? "converted to " + change.is + " units; compared by the author's own figures"
                         : "no longer converted to " + change.was + " units; compared by the author's own figures";
  work.say(std::move(change), from.document.root(), to.document.root());
}

auto sorting_key(const Change& change) {
  const std::uint32_t place = change.new_where ? change.new_where->begin : change.old_where ? change.old_where->begin : 0;
  return std::tuple(change.topic, change.hold != Change::Hold::loosened, place);
}

}  // namespace

std::string_view topic_name(Topic topic) { return topic_names[static_cast<std::size_t>(topic)]; }
std::string_view kind_name(Change::Kind kind) { return kind_names[static_cast<std::size_t>(kind)]; }
std::string_view hold_name(Change::Hold hold) { return hold_names[static_cast<std::size_t>(hold)]; }

Comparing::Comparing(const Compared& old_fiche, const Compared& new_fiche)
    : from(old_fiche), to(new_fiche), pairs(from, to), batch(from, to, pairs) {}

void Comparing::say(Change change, Node in_old, Node in_new) {
  say(std::move(change), place_of(from, in_old), place_of(to, in_new));
}

void Comparing::say(Change change, std::optional<base::Span> in_old, std::optional<base::Span> in_new) {
  change.old_where = in_old;
  change.new_where = in_new;
  changes.push_back(std::move(change));
}

std::vector<Change> compare(const Compared& from, const Compared& to) {
  Comparing work(from, to);
  compare_batches(work);
  compare_allergens(work);
  compare_pair(work, work.from.document().root(), work.to.document().root());
  compare_order(work);
  compare_takes(work);
  compare_conversions(work, from, to);
  std::stable_sort(work.changes.begin(), work.changes.end(),
                   [](const Change& a, const Change& b) { return sorting_key(a) < sorting_key(b); });
  return std::move(work.changes);
}

}  // namespace tamis::change
