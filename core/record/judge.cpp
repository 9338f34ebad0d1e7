#include "core/record/judge.h"

#include <algorithm>
#include <cmath>

namespace tamis::record {
namespace {

constexpr double hair = Stage::hair;

class Judging {
 public:
  Judging(const ControlLimit& asks, const Log& log) : asks_(asks), log_(log), readings_(log.readings) {}

  Verdict judge() {
    if (asks_.way == ControlLimit::Way::none) {
      out_.says.emplace_back(asks_.unclear ? "its words do not say whether the figure is a least or a most: look at it by hand, and write which"
                                           : "its limit is of no temperature that a log can show: look at it by hand");
    } else if (!log_.usable) {
      out_.says.emplace_back("nothing can be judged by this log");
    } else if (asks_.way == ControlLimit::Way::stay) {
      stay();
    } else {
      reach();
    }
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string moment(double seconds) const { return moment_text(log_, seconds); }
  /// "at 10:42", "after 6 min": whichever the log lets us say.
  [[nodiscard]] std::string at(double seconds) const { return (log_.by_clock ? "at " : "after ") + moment(seconds); }

  [[nodiscard]] std::string degrees(double celsius) const { return degrees_text(log_.scale, celsius); }

  void say(Outcome outcome, std::string line, const Reading* decided = nullptr) {
    out_.says.push_back(std::move(line));
    if (outcome == Outcome::missed && worst_ != Outcome::missed && decided != nullptr) out_.where = decided->where;
    if (worst_ == Outcome::missed) return;
    if (outcome != Outcome::met) worst_ = outcome;
    out_.outcome = worst_;
  }

  /// When something happened, as far as readings show it: between two of them.
  struct Between {
    double earliest, latest;  ///< s
  };
  /// Of what a reading is the first to show, with those before it from `first` on that do not.
  [[nodiscard]] Between shown_by(std::size_t reading, std::size_t first) const {
    const std::size_t before = reading > first && !log_.by_hand ? reading - 1 : reading;
    return {readings_[before].seconds, readings_[reading].seconds};
  }

  void reach() {
    out_.outcome = Outcome::met;
    std::size_t from = 0;
    std::optional<Between> start, before;
    for (const Stage& stage : asks_.stages) {
      from = first_of(stage, from);
      std::size_t found = from;
      while (found < readings_.size() && !stage.is_shown_by(readings_[found].celsius)) ++found;
      const bool reached = found < readings_.size();
      if (!start) {
        start = start_of(stage, from, reached ? found : readings_.size());
        from_hottest_ = !stage.from && from > 0;
      }
      const Between clock = stage.from_the_start || !before ? *start : *before;
      if (!reached) {
        not_reached(stage, clock, from);
        return;
      }
      before = shown_by(found, from);
      out_.moments.push_back({before->latest, degrees(readings_[found].celsius)});
      in_time(stage, clock, *before, readings_[found]);
      if (stage.hold) held(stage, found);
      if (stage.least && stage.most) not_beyond(stage, found);
      from = found;
    }
  }

  /// The reading to look from: a food that was heated first is cooled from its hottest on, or from where it has been as hot as
  /// the fiche says.
  [[nodiscard]] std::size_t first_of(const Stage& stage, std::size_t from) const {
    const bool cooled = !stage.least && stage.most;
    if (stage.from) {
      for (std::size_t i = from; i < readings_.size(); ++i) {
        if (cooled ? readings_[i].celsius >= *stage.from - hair : readings_[i].celsius <= *stage.from + hair) return i;
      }
    } else if (cooled && from == 0) {
      for (std::size_t i = 1; i < readings_.size(); ++i) {
        if (readings_[i].celsius >= readings_[from].celsius) from = i;
      }
    }
    return from;
  }

  /// Where the clock starts: behind the last reading, before the stage was reached, that is as hot as `from` says (or as cold,
  /// where it is heated); at the first reading where the fiche says nothing.
  Between start_of(const Stage& stage, std::size_t first, std::size_t end) {
    Between out{readings_[first].seconds, readings_[first].seconds};
    if (!stage.from) return out;
    known_start_ = false;
    const bool cooled = stage.most.has_value();
    for (std::size_t i = first; i < end; ++i) {
      if (cooled ? readings_[i].celsius < *stage.from - hair : readings_[i].celsius > *stage.from + hair) continue;
      out = {readings_[i].seconds, readings_[log_.by_hand ? i : std::min(i + 1, readings_.size() - 1)].seconds};
      known_start_ = true;
    }
    return out;
  }

  [[nodiscard]] std::string clock_words(const Stage& stage, const Between& clock) const {
    if (stage.from) return "after " + stage.from_text + " " + at(clock.earliest);
    if (!stage.from_the_start) return "after that";
    if (asks_.stages.front().from) return "after " + asks_.stages.front().from_text;
    return std::string("after the ") + (from_hottest_ ? "hottest" : "first") + " reading" +
           (log_.by_clock || from_hottest_ ? " " + at(clock.earliest) : "");
  }

  void not_reached(const Stage& stage, const Between& clock, std::size_t from) {
    const auto by_heat = [](const Reading& a, const Reading& b) { return a.celsius < b.celsius; };
    const auto begin = readings_.begin() + static_cast<std::ptrdiff_t>(from);
    const Reading& nearest =
        stage.least ? *std::max_element(begin, readings_.end(), by_heat) : *std::min_element(begin, readings_.end(), by_heat);
    const Reading& last = readings_.back();
    const double passed = last.seconds - clock.latest;
    std::string line = stage.text + " not reached: " + degrees(nearest.celsius) + " at the " +
                       (stage.least ? "hottest, " : "coldest, ") + at(nearest.seconds);
    if (!stage.within) return say(Outcome::missed, line, &nearest);
    if (known_start_ && passed > *stage.within)
      return say(Outcome::missed, line + ", and " + span_text(*stage.within) + " were over", &last);
    say(Outcome::open, line + "; the log ends after " + span_text(passed) + " of " + span_text(*stage.within));
  }

  void in_time(const Stage& stage, const Between& clock, const Between& reached, const Reading& found) {
    std::string line = degrees(found.celsius) + " " + at(found.seconds);
    if (!stage.within) {
      if (!stage.hold) say(Outcome::met, line + ": " + stage.text + " reached");
      return;
    }
    const double most = reached.latest - clock.earliest;
    const double least = std::max(reached.earliest - clock.latest, 0.0);
    const bool close = least <= *stage.within && most > *stage.within;
    line += ": " + stage.text + " reached " + (close ? span_text(least) + " to " : std::string()) + span_text(most) + " " +
            clock_words(stage, clock) + ", " + span_text(*stage.within) + " allowed";
    if (least > *stage.within + 1e-6) return say(Outcome::missed, line, &found);
    if (!known_start_) {
      return say(Outcome::open, line + "; but the log begins at " + degrees(readings_.front().celsius) +
                                    ", so how long it took from " + asks_.stages.front().from_text + " is not shown");
    }
    if (close) return say(Outcome::open, line + "; the readings stand too far apart to show it");
    say(Outcome::met, line);
  }

  /// A run of readings that show a stage: as long as they show it, and as long as it can have been by those on both sides.
  struct Run {
    std::size_t first = 0, last = 0;
    double shown = 0, possible = 0;  ///< s
  };
  [[nodiscard]] Run run_at(const Stage& stage, std::size_t first) const {
    std::size_t last = first;
    while (last + 1 < readings_.size() && !readings_[last + 1].parted && stage.is_shown_by(readings_[last + 1].celsius)) ++last;
    Run out{first, last, readings_[last].seconds - readings_[first].seconds, INFINITY};
    const bool open = first == 0 || readings_[first].parted || last + 1 == readings_.size() || readings_[last + 1].parted;
    constexpr double minute = 60;  // times by hand are whole minutes: two readings show any part of one
    if (log_.by_hand && last > first && *stage.hold < minute) out.shown = std::max(out.shown, *stage.hold);
    if (!open) out.possible = readings_[last + 1].seconds - readings_[first - 1].seconds + (log_.by_hand ? minute : 0);
    return out;
  }

  void held(const Stage& stage, std::size_t from) {
    Run longest;
    double possible = 0;
    for (std::size_t i = from; i < readings_.size();) {
      if (!stage.is_shown_by(readings_[i].celsius)) {
        ++i;
        continue;
      }
      const Run run = run_at(stage, i);
      if (run.shown > longest.shown || longest.possible == 0) longest = run;
      possible = std::max(possible, run.possible);
      i = run.last + 1;
    }
    const bool met = longest.shown + 1e-6 >= *stage.hold;
    const double shown = readings_[longest.last].seconds - readings_[longest.first].seconds;
    const std::string line = stage.text + " from " + moment(readings_[longest.first].seconds) + " for " + span_text(shown) +
                             ", " + span_text(*stage.hold) + " asked";
    if (met) return say(Outcome::met, line);
    if (std::isinf(possible)) return say(Outcome::open, line + "; what came before or after is not in the log");
    if (possible >= *stage.hold) return say(Outcome::open, line + "; the readings stand too far apart to show more");
    say(Outcome::missed, line, &readings_[longest.first]);
  }

  /// Of a range: what is reached may not go out at the far side.
  void not_beyond(const Stage& stage, std::size_t from) {
    for (std::size_t i = from; i < readings_.size(); ++i) {
      const Reading& one = readings_[i];
      if (one.celsius > *stage.most + hair)
        return say(Outcome::missed, degrees(one.celsius) + " " + at(one.seconds) + ", beyond " + stage.text, &one);
    }
  }

  void stay() {
    out_.outcome = Outcome::met;
    const Stage& stage = asks_.stages.front();
    std::size_t from = 0;
    // What is kept cold is put in warm and may take its time to get there; what is kept hot is hot from the start.
    if (stage.most && !stage.least) {
      while (from < readings_.size() && !stage.is_shown_by(readings_[from].celsius)) ++from;
      if (from == readings_.size()) return not_reached(stage, {readings_.front().seconds, readings_.front().seconds}, 0);
    }
    const auto begin = readings_.begin() + static_cast<std::ptrdiff_t>(from);
    const auto out = std::find_if(begin, readings_.end(), [&](const Reading& one) { return !stage.is_shown_by(one.celsius); });
    if (from > 0) out_.moments.push_back({begin->seconds, degrees(begin->celsius)});
    if (out != readings_.end()) {
      double outside = 0;
      for (auto i = out; i + 1 < readings_.end(); ++i) {
        if (!stage.is_shown_by(i->celsius)) outside += (i + 1)->seconds - i->seconds;
      }
      out_.moments.push_back({out->seconds, degrees(out->celsius)});
      const auto worst = std::max_element(begin, readings_.end(),
                                          [&](const Reading& a, const Reading& b) { return off(stage, a) < off(stage, b); });
      return say(Outcome::missed,
                 degrees(out->celsius) + " " + at(out->seconds) + ", not " + stage.text + "; " + degrees(worst->celsius) +
                     " at the worst, " + span_text(outside) + " outside in all",
                 &*out);
    }
    const std::string line =
        stage.text + " in every reading from " + moment(begin->seconds) + " to " + moment(readings_.back().seconds);
    if (std::any_of(begin + 1, readings_.end(), [](const Reading& one) { return one.parted; }))
      return say(Outcome::open, line + ", but not without a break");
    if (readings_.size() == from + 1) return say(Outcome::open, stage.text + " in one reading alone, " + at(begin->seconds));
    say(Outcome::met, line);
  }

  /// How far outside a reading lies, K.
  static double off(const Stage& stage, const Reading& one) {
    const double below = stage.least ? *stage.least - one.celsius : 0;
    const double above = stage.most ? one.celsius - *stage.most : 0;
    return std::max({below, above, 0.0});
  }

  const ControlLimit& asks_;
  const Log& log_;
  const std::vector<Reading>& readings_;
  Verdict out_;
  Outcome worst_ = Outcome::met;
  bool known_start_ = true, from_hottest_ = false;
};

}  // namespace

std::string_view outcome_name(Outcome outcome) {
  return outcome == Outcome::met ? "met" : outcome == Outcome::missed ? "missed" : "not shown";
}

Verdict judge(const ControlLimit& asks, const Log& log) { return Judging(asks, log).judge(); }

}  // namespace tamis::record
