#include "core/cli/predicted.h"

#include <algorithm>
#include <cmath>

namespace tamis::cli {
namespace {

using Lies = Question::Lies;
using What = Question::What;

std::string centimetres(double metres) {
  const long tenths = std::lround(metres * 1000);
  return std::to_string(tenths / 10) + (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10)) + " cm";
}

class Shortening {
 public:
  Shortening(const Question& question, const Desk& desk, const physics::Prediction& answer) : q_(question), desk_(desk), answer_(answer) {}

  std::vector<Predicted::Shorter> find() {
    std::optional<Question> shallower = thinner();
    if (shallower) try_out(thinner_words_, *shallower);
    for (const char* medium : media()) {
      auto there = in(q_, medium);
      if (!there) continue;
      try_out(there->in, *there);
      if (!shallower) continue;
      auto both = in(*shallower, medium);
      if (both && best_ > 4 * 3600) try_out(thinner_words_ + " " + both->in, *both);
    }
    return std::move(out_);
  }

 private:
  /// Pans 5 cm deep where there is a depth of more and the amount is known; else half as thick.
  std::optional<Question> thinner() {
    Question q = q_;
    constexpr double pan = 0.05;
    const bool lies_flat = q.lies != Lies::sphere && q.depth > 0;
    if (lies_flat && q.volume > 0 && q.depth > 0.07 && (q.stirred || q.what == What::cool)) {
      const double pans = std::max(2.0, std::ceil(q.depth / pan - 0.01));
      q.lies = Lies::slab;
      q.depth = pan;
      q.diameter = q.length = q.width = 0;
      q.volume /= pans;
      thinner_words_ = std::to_string(std::lround(pans)) + " pans 5 cm deep";
      // Of one pan as wide as what it was: the whole, divided.
      return q;
    }
    const double half = q.smallest() / 2;
    if (half < 0.004) return std::nullopt;
    for (double* side : {&q.depth, &q.diameter, &q.length, &q.width})
      if (*side == q_.smallest()) *side = half;
    q.volume /= q_.lies == Lies::sphere ? 8 : 2;
    thinner_words_ = std::string(q_.lies == Lies::slab ? "half as deep, " : "half as thick, ") + centimetres(half);
    return q;
  }

  [[nodiscard]] std::vector<const char*> media() const {
    switch (q_.what) {
      case What::cool: return {"ice-bath", "blast-chiller"};
      case What::freeze: return {"blast-freezer"};
      case What::thaw: return {"running-water"};
      case What::heat: return {};
    }
    return {};
  }

  std::optional<Question> in(const Question& question, const char* medium) const {
    if (q_.medium == medium || q_.medium.starts_with("ice-bath")) return std::nullopt;
    const auto around = flow::around_in(*desk_.kitchen, medium);
    if (!around || std::isnan(around->exposure.celsius.likely)) return std::nullopt;
    Question out = question;
    out.medium = around->medium->id;
    out.in = around->medium->english;
    out.exposure = around->exposure;
    return out;
  }

  void try_out(const std::string& words, const Question& question) {
    const physics::Prediction answer = question.predict();
    if (!answer.likely.seconds) return;
    if (answer_.likely.seconds && *answer.likely.seconds > 0.9 * *answer_.likely.seconds) return;
    best_ = std::min(best_, *answer.likely.seconds);
    out_.push_back({words, answer});
  }

  const Question& q_;
  const Desk& desk_;
  const physics::Prediction& answer_;
  std::string thinner_words_;
  double best_ = 1e18;
  std::vector<Predicted::Shorter> out_;
};

}  // namespace

Predicted predicted(const Question& question, const Desk& desk) {
  Predicted out{question, question.predict(), {}};
  out.shorter = Shortening(question, desk, out.answer).find();
  return out;
}

draw::Curve curve_of(const Predicted& predicted) {
  const physics::Prediction& answer = predicted.answer;
  double end = 0;
  for (const auto* one : {&answer.low, &answer.likely, &answer.high})
    if (one->seconds) end = std::max(end, *one->seconds);
  if (!answer.high.seconds || !answer.likely.seconds) {
    const auto& points = answer.likely.points.empty() ? answer.high.points : answer.likely.points;
    if (!points.empty()) end = std::max(1.3 * end, points.back().first);
  }
  const auto until_end = [end](const physics::Prediction::Case& one) {
    std::vector<draw::Curve::Point> out;
    for (const auto& [seconds, celsius] : one.points) {
      if (seconds > end) break;
      out.push_back({seconds, celsius});
    }
    return out;
  };
  draw::Curve curve;
  curve.title = sentence_of(predicted.question);
  curve.series.push_back({"likely", until_end(answer.likely)});
  if (answer.low.coefficient != answer.high.coefficient || answer.low.medium != answer.high.medium) {
    curve.band = draw::Curve::Band{"from the quickest to the slowest", until_end(answer.low), until_end(answer.high)};
    if (answer.low.seconds && *answer.low.seconds < end) curve.band->low.push_back({end, predicted.question.to});
  }
  curve.limits.push_back({predicted.question.to, celsius_said(predicted.question.to)});
  return curve;
}

std::string predicted_svg(const Predicted& predicted) { return draw::curve_svg(curve_of(predicted)); }

}  // namespace tamis::cli
