// Counts of moulds, the wished mould, and what both do to the depth of the food.

#include <algorithm>

#include "core/change/figure.h"
#include "core/change/scale_mould.h"
#include "core/change/scale_work.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

/// Less than this and nobody sees it in a mould (common practice).
const Ratio unseen(2, 100);
/// From here on the depth tells on the time (common practice).
const Ratio telling(5, 100);

std::string mould_name(const MouldSize& mould) {
  return !mould.name.empty() ? mould.name : !mould.shape.empty() ? mould.shape : "mould";
}

/// A depth to the millimetre, or as a rule in inches shows it.
std::string length_text(const ScaleWork& work, Ratio millimetres) {
  if (work.author.reading.system == measure::System::us) {
    return work.text(measure::round_length(millimetres, measure::System::us, work.kitchen.tools).amount);
  }
  const Ratio shown = base::round_to(millimetres, 1);
  if (shown < 10) return work.text(measure::amount_of(shown, *measure::unit_by_id("mm")));
  return work.text(measure::amount_of(shown / 10, *measure::unit_by_id("cm")));
}

class Moulds {
 public:
  explicit Moulds(ScaleWork& work) : work_(work), document_(work.document) {}

  void run() {
    if (work_.mould) {
      change_mould();
    } else if (!work_.verbatim) {
      for (const Node yield : work_.author.yields) {
        const bool own = document_.parent(yield) == document_.root();
        if (own && (work_.yields.empty() || yield != work_.yields.front())) continue;
        count(yield, own ? work_.written : yield);
      }
    }
    if (work_.written != fiche::none) {
      for (const Node mould : children_of(document_, work_.written, El::mould)) look_in_kitchen(mould);
    }
  }

 private:
  // ---- more of the same

  void count(Node yield, Node written) {
    const auto from = children_of(document_, yield, El::mould), to = children_of(document_, written, El::mould);
    for (std::size_t i = 0; i < std::min(from.size(), to.size()); ++i) {
      const MouldSize mould = mould_of(document_, from[i], work_.author.reading);
      const Ratio exact = mould.count * work_.factor;
      Ratio whole = base::round_to(exact, 1);
      if (base::abs(whole - exact) > exact * unseen && whole < exact) whole = whole + 1;
      if (whole < 1) whole = 1;
      if (whole != mould.count || document_.find(from[i], At::count) != fiche::none) {
        document_.set_attribute(to[i], At::count, whole.text());
      }
      fill(from[i], to[i], mould, exact, whole);
    }
  }

  void fill(Node from, Node to, const MouldSize& mould, Ratio exact, Ratio whole) {
    const Ratio share = exact / whole;
    const Ratio off = base::abs(Ratio(1) - share);
    if (off <= unseen) return;
    const std::string these = work_.text(whole) + " × " + mould_name(mould);
    const base::Span where = document_.head_span(from);
    const std::string worth = work_.text(base::round_to(exact, Ratio(1, 100)));
    if (!mould.fill || !is_flat(mould)) {
      work_.say("mould-changed", Severity::advice, where,
                "the batch fills " + worth + " × " + mould_name(mould) + ": " + these + ", the last one not full",
                "fill the others as before, and give the last one the time it needs");
      return;
    }
    const Ratio lower = *mould.fill * share;
    document_.set_attribute(to, At::fill, length_text(work_, lower));
    const bool tells = off > telling;
    if (tells) deeper(document_.parent(document_.parent(from)), *mould.fill, lower);
    work_.say("mould-changed", tells ? Severity::warning : Severity::advice, where,
              "the batch fills " + worth + " × " + mould_name(mould) + ": spread over " + work_.text(whole) + " it stands " +
                  length_text(work_, lower) + " deep, not " + length_text(work_, *mould.fill),
              "fill all alike, or fill as deep as before and give the last one the time it needs");
  }

  /// What lies flat, from one depth in mm to another.
  void deeper(Node component, Ratio from, Ratio to) {
    const auto slab = [](Ratio depth) { return physics::Body{{{physics::Shape::slab, depth.approximate() / 2000}}}; };
    work_.sizes.push_back({component == document_.root() ? fiche::none : component, slab(from), slab(to),
                           length_text(work_, from), length_text(work_, to)});
  }

  // ---- another mould

  void change_mould() {
    const Node own = sized_mould(work_, work_.yields.front());
    const MouldSize from = mould_of(document_, own, work_.author.reading);
    const MouldSize& to = *work_.mould;
    const bool by_area = is_flat(from) && is_flat(to) && area_of(from) && area_of(to);
    const Node written = written_mould(own);
    write_sides(written, to, by_area);
    const std::string times = work_.text(base::round_to(work_.factor, Ratio(1, 100)));
    const base::Span where = document_.head_span(own);
    if (by_area) return say_area(where, times, from, to);
    if (from.volume != to.volume || from.height != to.height || from.length != to.length || from.diameter != to.diameter)
      work_.sizes.push_back({fiche::none, body_in(from), body_in(to), "", ""});
    work_.say("mould-changed", Severity::warning, where,
              "a " + mould_name(is_flat(from) ? to : from) + " is deep and goes by its volume, " + times +
                  " times the author's: the food stands at another depth",
              "fill as full as the author does, look early, and go by the cue and the core, not by the minutes");
  }

  void say_area(base::Span where, const std::string& times, const MouldSize& from, const MouldSize& to) {
    std::string kept = from.fill ? "the depth stays " + length_text(work_, *from.fill) : "the depth stays";
    const bool over = from.fill && to.height && *to.height < *from.fill;
    if (over) deeper(fiche::none, *from.fill, *to.height);
    work_.say("mould-changed", over ? Severity::warning : Severity::advice, where,
              "a " + mould_name(to) + " is flat and goes by its area, " + times + " times the author's: " +
                  (over ? "but it is only " + length_text(work_, *to.height) + " high for a fill of " +
                              length_text(work_, *from.fill)
                        : kept + ", and so do the times"),
              over ? "take a higher one, or make " +
                         work_.text(base::round_to(*from.fill / *to.height, Ratio(1, 100))) + " times as many"
                   : "spread to the same depth and weigh what goes into each");
  }

  Node written_mould(Node own) const {
    const Node yield = work_.yields.front();
    const auto from = children_of(document_, yield, El::mould), to = children_of(document_, work_.written, El::mould);
    const auto at = static_cast<std::size_t>(std::find(from.begin(), from.end(), own) - from.begin());
    return at < to.size() ? to[at] : own;
  }

  void write_sides(Node node, const MouldSize& mould, bool by_area) {
    const auto put = [&](At at, const std::string& text) {
      if (text.empty()) return document_.remove_attribute(node, at);
      document_.set_attribute(node, at, text);
    };
    put(At::name, mould.name);
    put(At::shape, mould.shape);
    put(At::count, mould.count.text());
    put(At::length, mould.length_text);
    put(At::width, mould.width_text);
    put(At::height, mould.height_text);
    put(At::diameter, mould.diameter_text);
    put(At::volume, mould.volume_text);
    put(At::holds, "");
    put(At::cut, "");
    if (!by_area) put(At::fill, "");
  }

  // ---- what the kitchen has

  void look_in_kitchen(Node written) {
    const auto& kitchen = work_.kitchen.document;
    if (kitchen == nullptr || kitchen->root() == fiche::none) return;
    const MouldSize needed = mould_of(document_, written, work_.author.reading);
    for (const Node node : children_of(*kitchen, kitchen->root(), El::mould)) {
      const MouldSize own = mould_of(*kitchen, node, work_.kitchen.reading);
      if (!same_size(needed, own) || needed.count <= own.count) continue;
      const std::int64_t rounds = (needed.count / own.count).floor() + ((needed.count / own.count).whole() ? 0 : 1);
      work_.say("moulds-missing", Severity::warning, document_.head_span(written),
                "the batch takes " + work_.text(needed.count) + " × " + mould_name(needed) + ", the kitchen has " +
                    work_.text(own.count),
                "make it in " + std::to_string(rounds) + " rounds, or ask for other moulds with --mould");
      return;
    }
  }

  static bool same_size(const MouldSize& a, const MouldSize& b) {
    return a.length == b.length && a.width == b.width && a.diameter == b.diameter && a.height == b.height &&
           (a.length || a.diameter);
  }

  ScaleWork& work_;
  Document& document_;
};

}  // namespace

void scale_moulds(ScaleWork& work) { Moulds(work).run(); }

}  // namespace tamis::change
