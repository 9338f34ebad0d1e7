#include <cmath>

#include "core/change/compare_work.h"
#include "core/measure/write.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using measure::Kind;
using Way = Relation::Way;

namespace {

/// To three significant digits, without noughts at the end: "8", "0.35", "11.7".
std::string number_text(double value) {
  value = std::abs(value);
  const int digits = value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3;
  const double scale = std::pow(10.0, digits);
  const double rounded = std::round(value * scale);
  if (rounded > 1e15) return "many";
  const base::Ratio exact(static_cast<std::int64_t>(rounded), static_cast<std::int64_t>(scale));
  return measure::write_number(exact, {"en", false, false, 6});
}

std::string percent_text(double share) {
  const double percent = std::abs(share) * 100;
  const double shown = percent >= 9.95 ? std::round(percent) : std::round(percent * 10) / 10;
  return number_text(shown) + " %";
}

std::string duration_text(double seconds) {
  const auto whole = static_cast<std::int64_t>(std::llround(std::abs(seconds)));
  const std::int64_t minutes = whole / 60;
  if (whole < 120 && whole % 60 != 0) return std::to_string(whole) + " s";
  if (minutes == 24 * 60) return "1 day";
  if (minutes % (24 * 60) == 0 && minutes > 0) return std::to_string(minutes / (24 * 60)) + " days";
  if (minutes < 120 && minutes != 60) return std::to_string(minutes) + " min";
  const std::string rest = minutes % 60 == 0 ? "" : " " + std::to_string(minutes % 60) + " min";
  return std::to_string(minutes / 60) + " h" + rest;
}

std::string degrees_text(double celsius, bool fahrenheit) {
  return fahrenheit ? number_text(celsius * 1.8) + " °F" : number_text(celsius) + " °C";
}

/// "2 °C hotter", "10 min longer", "narrower"; "" where only the figures can tell.
std::string difference(const Relation& relation, const Measured& is) {
  if (relation.way == Way::narrower) return "narrower";
  if (relation.way == Way::wider) return "wider";
  if (relation.way != Way::more && relation.way != Way::less) return {};
  const bool more = relation.way == Way::more;
  const auto with = [&](const std::string& by, const char* up, const char* down) {
    const std::string word = more ? up : down;
    return relation.by == 0 ? word : by + " " + word;
  };
  switch (is.kind) {
    case Kind::temperature: return with(degrees_text(relation.by, is.fahrenheit), "hotter", "cooler");
    case Kind::time: return with(duration_text(relation.by), "longer", "shorter");
    default: return {};
  }
}

/// "8 % more sugar in the mousse", "twice as much sugar in the mousse"; of a scaled batch "8 % more sugar than × 2 makes it".
std::string amount_head(const Relation& relation, const Measured& is, const Manner& manner) {
  const std::string of = manner.subject + manner.behind;
  const std::string scaled = manner.factor == 1 ? "" : " × " + number_text(manner.factor) + " makes it";
  const double times = relation.times;
  const bool counted = is.kind == Kind::count;
  if (relation.way == Way::narrower || relation.way == Way::wider) return of + " " + difference(relation, is);
  if ((relation.way != Way::more && relation.way != Way::less) || times <= 0) return of;
  const std::string much = counted ? " as many " : " as much ";
  const std::string as_scaled = scaled.empty() ? "" : " as" + scaled;
  if (std::abs(times - 2) < 0.005) return "twice" + much + of + as_scaled;
  if (std::abs(times - 0.5) < 0.005) return "half" + much + of + as_scaled;
  if (times > 2) return number_text(times) + " times" + much + of + as_scaled;
  const std::string word = times > 1 ? " more " : counted ? " fewer " : " less ";
  return percent_text(times - 1) + word + of + (scaled.empty() ? "" : " than" + scaled);
}

std::string head_of(const Relation& relation, const Measured& is, const Manner& manner) {
  if (manner.amount) return amount_head(relation, is, manner);
  const std::string word = difference(relation, is);
  if (word.empty()) return manner.subject + manner.behind;
  return manner.subject + (manner.subject.empty() ? "" : " ") + word + manner.behind;
}

std::string conditional(const std::string& before, Change::Hold hold, const std::string& head) {
  if (before.empty()) return head;
  const std::string held = hold == Change::Hold::same ? "" : " " + std::string(hold_name(hold));
  return before + held + (head.empty() ? "" : ": " + head);
}

}  // namespace

std::string percent_of_whole(double share) { return percent_text(share); }

void tell_figures(Comparing& work, const fiche::Statement& was, const fiche::Statement& is, const Manner& manner) {
  const Measured before = figure_of(work.from, was);
  const Measured now = figure_of(work.to, is);
  const Relation relation = relate(before, now, manner.factor, work.from, work.to);
  const bool about = relation.way == Way::same && before.about != now.about;
  if (relation.way == Way::same && !about) return;
  Change change;
  change.topic = manner.topic;
  change.what = manner.subject + manner.behind;
  change.is = now.text;
  change.was = before.text;
  if (manner.condition) change.hold = hold_of(before, now, manner.bound);
  std::string head;
  if (about || relation.way == Way::measured_otherwise) {
    change.kind = Change::Kind::reworded;
    change.topic = Topic::wording;
    change.hold = Change::Hold::same;
    head = manner.subject + manner.behind + (about ? "" : ", as much but measured otherwise");
  } else {
    head = head_of(relation, now, manner);
  }
  const bool plain = head == manner.subject + manner.behind;
  const std::string between = head.empty() ? (manner.before.empty() ? "" : ": ")
                              : plain      ? " "
                              : manner.before.empty() ? ": " : ", ";
  change.text = conditional(manner.before, change.hold, head) + between + now.text + manner.suffix;
  change.text += ", was " + before.text;
  const bool stays = manner.factor != 1 && relate(before, now, 1, work.from, work.to).way == Way::same;
  if (stays) change.text = manner.subject + manner.behind + " stays at " + now.text + ", not × " + number_text(manner.factor);
  if (!manner.comment.empty()) change.text += "; " + manner.comment;
  work.say(std::move(change), was.where, is.where);
}

void compare_batches(Comparing& work) {
  const auto tell = [&](double factor, const std::string& what, Node in_old, Node in_new) {
    Change change;
    change.topic = Topic::figures;
    change.what = what;
    change.text = "the whole " + what + " × " + number_text(factor);
    work.say(std::move(change), in_old, in_new);
  };
  const Node old_root = work.from.document().root();
  const Node new_root = work.to.document().root();
  const double whole = work.batch.factor();
  if (whole != 1) tell(whole, "batch", old_root, new_root);
  for (const auto& [component, factor] : work.batch.components()) {
    const Node before = work.pairs.in_old(component);
    if (factor == whole || before == fiche::none) continue;
    if (factor != 1) {
      tell(factor, work.to.name(component), before, component);
      continue;
    }
    Change change;
    change.topic = Topic::figures;
    change.what = work.to.name(component);
    change.text = change.what + " stays as it was, though the whole batch is × " + number_text(whole);
    work.say(std::move(change), before, component);
  }
}

}  // namespace tamis::change
