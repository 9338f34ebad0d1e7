#include "core/change/scale_figures.h"

#include <algorithm>

#include "core/change/scale_count.h"
#include "core/change/work.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Statement;
using measure::Amount;
using measure::Kind;

Amount Figures::rounded_count(const Amount& amount, Ratio factor, const food::Food* food) const {
  Amount made = amount;
  const measure::Unit& unit = *(amount.low.empty() ? amount.high : amount.low).front().unit;
  if (!amount.low.empty()) {
    made.low = one_quantity(whole_count(food, unit, amount.low_base() * factor / unit.to_base), unit);
  }
  if (!amount.high.empty()) {
    made.high = one_quantity(whole_count(food, unit, amount.high_base() * factor / unit.to_base), unit);
  }
  if (made.form == Amount::Form::range && made.low_base() == made.high_base()) {
    made.form = Amount::Form::exact;
    made.high.clear();
  }
  return made;
}

void Figures::count(const Column& column, const Statement& said, const Subject& subject) {
  const Amount made = rounded_count(*said.amount, column.factor, subject.food);
  const Ratio exact = said.amount->middle_base() * column.factor;
  if (is_egg(subject.food)) return eggs(column, said, subject, made, exact);
  write(column.ingredient, said.at, work_.text(made));
  if (said.at != At::unknown && said.at != At::pieces) return;
  const Ratio error = base::abs(made.middle_base() - exact);
  const Ratio allowed = std::max(subject.tolerance.share, Ratio(25, 1000), [](Ratio a, Ratio b) { return a < b; });
  const bool leads = said.at == At::unknown && work_.amount(column.from, At::also) == nullptr;
  if (error <= exact * allowed || said.amount->about) return;
  if (!leads && !(subject.food != nullptr && subject.food->role == food::Role::setting)) return;
  const std::string name = name_of(fiche_, subject);
  work_.say("count-rounded", Severity::advice, said.where,
            name + ": " + said.text + " times " + work_.text(column.factor) + " becomes " + work_.text(made) + ", " +
                percent((error / exact).approximate()) + (made.middle_base() > exact ? " more" : " less"),
            leads ? "taste, or weigh it: a small one or a large one makes up for it"
                  : "weigh it: the weight beside the count is the one to go by");
}

bool Figures::whole_eggs() const {
  const auto& kitchen = work_.kitchen.document;
  if (kitchen == nullptr || kitchen->root() == fiche::none) return true;
  return kitchen->get(kitchen->root(), At::eggs) != "grams";
}

std::optional<Ratio> Figures::grams_of_one(const Column& column, const Statement& said, const Subject& subject) const {
  const Amount* mass = work_.amount(column.from, said.at == At::unknown ? At::also : At::unknown);
  if (mass != nullptr && mass->kind == Kind::mass) return mass->middle_base() / said.amount->middle_base();
  const auto piece = food::piece_of(*subject.food, document_.get(column.ingredient, At::size));
  return piece ? std::optional(piece->grams) : std::nullopt;
}

void Figures::eggs(const Column& column, const Statement& said, const Subject& subject, const Amount& made, Ratio exact) {
  const Ratio over = made.middle_base() - exact;
  const bool fits = base::abs(over) <= exact * subject.tolerance.share;
  const auto each = grams_of_one(column, said, subject);
  if (fits || !each || (said.at != At::unknown && said.at != At::pieces)) {
    return write(column.ingredient, said.at, work_.text(made));
  }
  const bool weighed = said.at == At::pieces || work_.amount(column.from, At::also) != nullptr;
  const bool far = over > exact * Ratio(12, 100);
  const std::string needed = work_.grams((exact * *each).approximate());
  if (said.at == At::pieces) {
    // A count that the weight beside it would contradict is left out.
    if (far) {
      document_.remove_attribute(column.ingredient, At::pieces);
    } else {
      document_.set_attribute(column.ingredient, At::pieces, work_.text(made));
    }
  } else if (weighed || (!far && whole_eggs())) {
    write(column.ingredient, At::unknown, work_.text(made));
  } else {
    write(column.ingredient, At::unknown, needed);
  }
  if (!whole_eggs() && weighed) return;
  const std::string rest = subject.food->id.find("yolk") != std::string_view::npos    ? "yolk"
                           : subject.food->id.find("white") != std::string_view::npos ? "egg white"
                                                                                      : "beaten egg";
  work_.say("surplus", Severity::advice, said.where,
            "break " + work_.text(made) + " for the " + needed + " of " + name_of(fiche_, subject) +
                " that the batch takes",
            "keep the rest: " + work_.grams((over * *each).approximate()) + " of " + rest);
}

void Figures::packs(const Column& column, const Statement& said) {
  const Amount& amount = *said.amount;
  const Ratio exact = amount.middle_base() * column.factor;
  const Ratio eighths = base::round_to(exact, exact < 1 ? Ratio(1, 8) : exact < 10 ? Ratio(1, 4) : Ratio(1, 2));
  Amount made = amount;
  const measure::Unit& unit = *(amount.low.empty() ? amount.high : amount.low).front().unit;
  made.form = Amount::Form::exact;
  made.low = one_quantity(eighths == 0 ? Ratio(1, 8) : eighths, unit);
  made.high.clear();
  made.about = amount.about || made.low_base() != exact;
  document_.set_attribute(column.ingredient, At::packs, work_.text(made));
  const std::int64_t opened = exact.whole() ? exact.numerator() : exact.floor() + 1;
  const Ratio left = Ratio(opened) - exact;
  const bool loose = document_.find(column.from, At::loose) != fiche::none;
  if (left == 0 || loose || left * 20 < exact || amount.about) return;
  const std::string pack(document_.get(column.from, At::pack));
  const Amount* mass = work_.amount(column.from);
  const bool by_mass = mass != nullptr && mass->kind == Kind::mass;
  work_.say("surplus", Severity::advice, said.where,
            "open " + std::to_string(opened) + " × " + (pack.empty() ? "the pack" : pack) + " for " +
                work_.text(exact) + " of it",
            "keep the rest: " + (by_mass ? work_.grams((mass->middle_base() * column.factor / exact * left).approximate())
                                         : work_.text(base::round_to(left, Ratio(1, 8))) + " of one"));
}

}  // namespace tamis::change
