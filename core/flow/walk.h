#ifndef CORE_FLOW_WALK_H
#define CORE_FLOW_WALK_H

#include "core/flow/do_actions.h"
#include "core/flow/point.h"
#include "core/flow/step_says.h"
#include "core/flow/warm.h"

namespace tamis::flow {

/// Walks the ways through a recipe, step by step, and gathers their hull: the work of read_states(). Ways and steps are in
/// walk.cpp, heat in walk_heat.cpp, what is lost in walk_losses.cpp.
class Walk {
 public:
  Walk(const fiche::Fiche& fiche, const Flow& flow)
      : fiche_(fiche), flow_(flow), document_(*fiche.document), places_(*fiche.kitchen) {}

  States run(std::vector<Point> start);

 private:
  // ---- before
  void prepare();
  /// In something that is not brought to the boil.
  static bool poaches(const Doing& doing);
  static bool heats(const Doing& doing);

  // ---- one way
  /// All weighs the same as on the way before, and nothing is left out on the one that is not on the other.
  [[nodiscard]] bool goes_as_before(std::size_t way) const;
  void walk();
  void set_grams(int thing);
  void keep();
  /// Nothing is done to what they hold: they are what goes in.
  void components_without_steps();
  [[nodiscard]] bool of_this_variant(const Thing& thing) const;

  // ---- a step
  void work_out(const Step& step);
  void take(const Step& step, int number, Bath& bath);

  // ---- how warm
  /// As it goes in: as the step says, else as it was made and has stood since.
  void warm_up(const Step& step, int number, Point& point);
  void let_stand(const Step& maker, const Step& step, Point& point);
  /// The steps between the two are of the same component, and none of them is there to wait.
  [[nodiscard]] bool only_minutes_between(const Step& maker, const Step& step) const;
  [[nodiscard]] std::string_view day_of(const Step& step) const;
  /// What goes in before the words that say how warm it is made, meets and is heated; what follows goes into that.
  void meet(const Step& step, Point& made, const Bath& bath, bool left_out);
  static void take_heat(Point& made, const Point& from);
  [[nodiscard]] bool is_behind(const Step& step, const Going& going, fiche::Node mark) const;
  /// The temperature of what meets, and why it is open: the widest of them, or what melts.
  void blend(const Step& step, const std::vector<Going>& goings, Point& made);
  void heat_up(const Step& step, const std::vector<Going>& goings, Point& base, const Bath& bath, bool left_out);

  // ---- where it is
  void settle_in(const Step& step, Point& made);
  /// Out of what it was in, or into another shape.
  static bool moves(const Doing& doing);
  /// What an earlier step makes, as an ingredient.
  [[nodiscard]] bool comes_back(const Step& step, const Thing& thing) const;
  /// The share of every line in what goes in.
  void hold_lines(const Step& step);
  /// Into several things that are not alike.
  [[nodiscard]] bool divides(const Step& step) const;

  // ---- what is lost
  void lose_stated(const Step& step, Point& made);
  void lose_one(const Step& step, fiche::Node node, std::size_t number, double share, Point& made);
  [[nodiscard]] bool drips(const Step& step, const Point& made) const;
  void boil_off(const Step& step, double share, Point& made);
  /// What is taken out again has soaked up and given off.
  void take_out(const Step& step, double share, Point& made);

  /// What went in is in less, once this share of it is gone.
  void keep_lines(const Step& step, double lost);

  // ---- what is done
  void act(const Step& step, const Bath& bath, Point& made);
  [[nodiscard]] double pieces_in(const Step& step) const;

  // ---- what comes of it
  void give(const Step& step, Point& made);
  void divide(const Step& step, int thing);
  /// What a yield says of cooking is what its component loses in all.
  void lose_in_yield(const Step& step, Point& point, double before);

  const fiche::Fiche& fiche_;
  const Flow& flow_;
  const fiche::Document& document_;
  const Places places_;
  States out_;
  std::vector<Point> start_;
  std::vector<int> parts_;  // things that are parts of an ingredient
  std::vector<std::size_t> pieces_;  // lines that a sieve holds back
  std::vector<Doing> doing_;
  std::vector<StepSays> says_;
  std::vector<GoingIn> going_in_;
  std::vector<double> seconds_;                 // the least that each step heats
  std::vector<std::optional<double>> minutes_;  // the most
  std::vector<bool> covered_;
  std::vector<std::size_t> first_loss_;
  std::size_t lines_ = 0;
  // of the way at hand
  const Masses* masses_ = nullptr;
  bool first_ = false;
  std::vector<Point> points_, in_, after_;
  std::vector<double> row_;
  std::vector<Going> goings_;
};

}  // namespace tamis::flow

#endif
