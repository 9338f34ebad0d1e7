// The amounts of the new batch: exact times the factor, rounded to what the kitchen can measure.

#include <algorithm>
#include <array>

#include "core/base/utf8.h"
#include "core/change/figure.h"
#include "core/change/kept.h"
#include "core/change/scale_count.h"
#include "core/change/scale_sentence.h"
#include "core/change/scale_work.h"
#include "core/change/subject.h"
#include "core/change/work.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;
using measure::System;

namespace {

/// A column's figures: where the amount and its companions are read from.
struct Line {
  Node ingredient = fiche::none;
  Node from = fiche::none;  ///< the ingredient itself, or its amount for a batch
  Ratio factor = 1;
};

constexpr std::array ingredient_places = {At::also, At::pieces, At::purchase, At::packs, At::loose, At::to};

System system_of(const Amount& amount) {
  for (const auto* parts : {&amount.low, &amount.high}) {
    for (const measure::Quantity& part : *parts) {
      const System system = part.unit->system;
      if (system == System::us || system == System::imperial) return system;
    }
  }
  return System::metric;
}

/// A metric cup or spoon, which stays one.
bool is_metric_spoon(const Amount& amount) {
  return amount.form == Amount::Form::exact && amount.kind == Kind::volume && !amount.low.empty() &&
         std::all_of(amount.low.begin(), amount.low.end(),
                     [](const measure::Quantity& part) { return part.unit->system == System::metric; });
}

class Figures {
 public:
  explicit Figures(ScaleWork& work) : work_(work), document_(work.document), fiche_(work.author) {}

  void run() {
    for (const fiche::Ingredient& one : fiche_.ingredients) ingredient(one);
    for (const Node component : fiche_.components) taken_component(component);
    for (const Statement& statement : fiche_.statements) other(statement);
    for (const Node yield : fiche_.yields) makes(yield);
  }

 private:
  // ---- ingredients

  Line line_of(const fiche::Ingredient& one) const {
    if (work_.base != fiche::none) {
      const std::string_view batch = document_.get(work_.base, At::id);
      for (const Node column : children_of(document_, one.node, El::amount)) {
        if (document_.get(column, At::batch) == batch) return {one.node, column, work_.from_base};
      }
    }
    return {one.node, one.node, work_.factor};
  }

  void ingredient(const fiche::Ingredient& one) {
    // What is given for each of something, or of another line, follows by itself.
    if (document_.find(one.node, At::per) != fiche::none || document_.find(one.node, At::for_each) != fiche::none) return;
    const Line line = line_of(one);
    if (line.from != one.node) copy_packs(line);
    put(line, At::unknown);
    for (const At at : ingredient_places) put(line, at);
    for (const Node swap : children_of(document_, one.node, El::swap)) {
      for (const At at : {At::amount, At::packs}) put({swap, swap, work_.factor}, at);
    }
  }

  void copy_packs(const Line& line) {
    for (const At at : {At::also, At::pieces, At::purchase, At::packs, At::pack, At::loose, At::to}) {
      if (document_.find(line.from, at) == fiche::none) {
        document_.remove_attribute(line.ingredient, at);
      } else if (at == At::pack) {
        document_.set_attribute(line.ingredient, at, std::string(document_.get(line.from, at)));
      }
    }
  }

  /// The figure of one place, for the new batch.
  void put(const Line& line, At at) {
    const Statement* said = fiche_.statement(line.from, at);
    if (said == nullptr) return;
    if (!said->amount || !said->amount->has_figure()) {
      if (said->fault) {
        work_.say("not-scaled", Severity::warning, said->where,
                  "\"" + said->text + "\" was left as it is: " + said->fault->message, said->fault->advice);
      }
      if (line.from != line.ingredient) write(line.ingredient, at, said->text);
      return;
    }
    if (line.factor == 1) {
      if (line.from != line.ingredient) write(line.ingredient, at, said->text);
      return;
    }
    const Subject subject = subject_of(fiche_, line.from, at);
    if (at == At::packs) return packs(line, *said);
    if (said->amount->kind == Kind::count) return count(line, *said, subject);
    write(line.ingredient, at, measured(*said, *said->amount, line.factor, subject));
  }

  void write(Node node, At at, const std::string& text) {
    if (at != At::unknown) return document_.set_attribute(node, at, text);
    if (fiche_.statement(node) != nullptr) return put_text(document_, node, text);
    document_.add_text(node, text, document_.first_child(node));
  }

  // ---- masses and volumes

  std::string measured(const Statement& said, const Amount& amount, Ratio factor, const Subject& subject) {
    if (is_metric_spoon(amount)) {
      const Ratio exact = amount.low_base() * factor;
      const measure::Rounded made =
          measure::round_spoons(exact, System::metric, work_.kitchen.tools, subject.tolerance);
      Amount shown = made.amount;
      shown.about = amount.about;
      const std::string text = write_figure(shown, fiche_.reading);
      say_rounding(said, text, {made}, subject, factor);
      return text;
    }
    const Target target{system_of(amount), &work_.kitchen.tools, subject.tolerance, false, false, false};
    const auto figure = convert_figure(amount, {amount.kind, factor, 0}, target);
    if (!figure || comes_to_nothing(*figure)) {
      work_.say("not-scaled", Severity::warning, said.where,
                "\"" + said.text + "\" was left as it is: " + work_.text(factor) + " times it cannot be measured here",
                "weigh it on finer scales, or make a larger batch and keep the rest");
      return said.text;
    }
    const std::string text = write_figure(figure->amount, fiche_.reading);
    say_rounding(said, text, figure->ends, subject, factor);
    return text;
  }

  static bool comes_to_nothing(const Figure& figure) {
    return std::any_of(figure.ends.begin(), figure.ends.end(), [](const measure::Rounded& end) {
      return end.exact > 0 && end.amount.low_base() == 0;
    });
  }

  void say_rounding(const Statement& said, const std::string& text, const std::vector<measure::Rounded>& ends,
                    const Subject& subject, Ratio factor) {
    if (said.at == At::also) return;  // the text is the figure that counts
    for (const measure::Rounded& end : ends) {
      if (end.within) continue;
      const bool strict = subject.tolerance.share <= Ratio(2, 100);
      work_.say("scaled-beyond-tolerance", strict ? Severity::warning : Severity::advice, said.where,
                work_.text(factor) + " times \"" + said.text + "\" becomes \"" + text + "\", " + percent(end.share) +
                    " off; " + name_of(fiche_, subject) + " allows " + percent(subject.tolerance.share.approximate()),
                end.better.empty() ? "weigh it" : end.better, "the food's tolerance (common practice)");
      return;
    }
  }

  // ---- counts

  static std::vector<measure::Quantity> one_quantity(Ratio value, const measure::Unit& unit) { return {{value, &unit}}; }

  Amount rounded_count(const Amount& amount, Ratio factor, const food::Food* food) const {
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

  void count(const Line& line, const Statement& said, const Subject& subject) {
    const Amount made = rounded_count(*said.amount, line.factor, subject.food);
    const Ratio exact = said.amount->middle_base() * line.factor;
    if (is_egg(subject.food)) return eggs(line, said, subject, made, exact);
    write(line.ingredient, said.at, work_.text(made));
    if (said.at != At::unknown && said.at != At::pieces) return;
    const Ratio error = base::abs(made.middle_base() - exact);
    const Ratio allowed = std::max(subject.tolerance.share, Ratio(25, 1000), [](Ratio a, Ratio b) { return a < b; });
    const bool leads = said.at == At::unknown && work_.amount(line.from, At::also) == nullptr;
    if (error <= exact * allowed || said.amount->about) return;
    if (!leads && !(subject.food != nullptr && subject.food->role == food::Role::setting)) return;
    const std::string name = name_of(fiche_, subject);
    work_.say("count-rounded", Severity::advice, said.where,
              name + ": " + said.text + " times " + work_.text(line.factor) + " becomes " + work_.text(made) + ", " +
                  percent((error / exact).approximate()) + (made.middle_base() > exact ? " more" : " less"),
              leads ? "taste, or weigh it: a small one or a large one makes up for it"
                    : "weigh it: the weight beside the count is the one to go by");
  }

  bool whole_eggs() const {
    const auto& kitchen = work_.kitchen.document;
    if (kitchen == nullptr || kitchen->root() == fiche::none) return true;
    return kitchen->get(kitchen->root(), At::eggs) != "grams";
  }

  /// Grams in one, by the author's own weight where it is given, else by the table.
  std::optional<Ratio> grams_of_one(const Line& line, const Statement& said, const Subject& subject) const {
    const Amount* mass = work_.amount(line.from, said.at == At::unknown ? At::also : At::unknown);
    if (mass != nullptr && mass->kind == Kind::mass) return mass->middle_base() / said.amount->middle_base();
    const auto piece = food::piece_of(*subject.food, document_.get(line.ingredient, At::size));
    return piece ? std::optional(piece->grams) : std::nullopt;
  }

  void eggs(const Line& line, const Statement& said, const Subject& subject, const Amount& made, Ratio exact) {
    const Ratio over = made.middle_base() - exact;
    const bool fits = base::abs(over) <= exact * subject.tolerance.share;
    const auto each = grams_of_one(line, said, subject);
    if (fits || !each || (said.at != At::unknown && said.at != At::pieces)) {
      return write(line.ingredient, said.at, work_.text(made));
    }
    const bool weighed = said.at == At::pieces || work_.amount(line.from, At::also) != nullptr;
    const bool far = over > exact * Ratio(12, 100);
    const std::string needed = work_.grams((exact * *each).approximate());
    if (said.at == At::pieces) {
      // A count that the weight beside it would contradict is left out.
      if (far) {
        document_.remove_attribute(line.ingredient, At::pieces);
      } else {
        document_.set_attribute(line.ingredient, At::pieces, work_.text(made));
      }
    } else if (weighed || (!far && whole_eggs())) {
      write(line.ingredient, At::unknown, work_.text(made));
    } else {
      write(line.ingredient, At::unknown, needed);
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

  // ---- packs

  void packs(const Line& line, const Statement& said) {
    const Amount& amount = *said.amount;
    const Ratio exact = amount.middle_base() * line.factor;
    const Ratio eighths = base::round_to(exact, exact < 1 ? Ratio(1, 8) : exact < 10 ? Ratio(1, 4) : Ratio(1, 2));
    Amount made = amount;
    const measure::Unit& unit = *(amount.low.empty() ? amount.high : amount.low).front().unit;
    made.form = Amount::Form::exact;
    made.low = one_quantity(eighths == 0 ? Ratio(1, 8) : eighths, unit);
    made.high.clear();
    made.about = amount.about || made.low_base() != exact;
    document_.set_attribute(line.ingredient, At::packs, work_.text(made));
    const std::int64_t opened = exact.whole() ? exact.numerator() : exact.floor() + 1;
    const Ratio left = Ratio(opened) - exact;
    const bool loose = document_.find(line.from, At::loose) != fiche::none;
    if (left == 0 || loose || left * 20 < exact || amount.about) return;
    const std::string pack(document_.get(line.from, At::pack));
    const Amount* mass = work_.amount(line.from);
    const bool by_mass = mass != nullptr && mass->kind == Kind::mass;
    work_.say("surplus", Severity::advice, said.where,
              "open " + std::to_string(opened) + " × " + (pack.empty() ? "the pack" : pack) + " for " +
                  work_.text(exact) + " of it",
              "keep the rest: " + (by_mass ? work_.grams((mass->middle_base() * line.factor / exact * left).approximate())
                                           : work_.text(base::round_to(left, Ratio(1, 8))) + " of one"));
  }

  // ---- a component of another file

  void taken_component(Node component) {
    if (document_.find(component, At::from) == fiche::none || work_.factor == 1) return;
    const Statement* take = fiche_.statement(component, At::take);
    const Ratio part = take == nullptr ? Ratio(1)
                       : take->share && take->share->form == measure::Share::Form::fraction ? take->share->fraction
                                                                                            : Ratio(0);
    if (part == 0) return;  // an amount: taken with the others; the rest stays the rest
    const Ratio now = part * work_.factor;
    if (now <= 1) return document_.set_attribute(component, At::take, share_text(now));
    if (const auto made = made_there(component)) {
      const Amount taken{Amount::Form::exact, true, Kind::mass, {{*made * now, measure::unit_by_id("g")}}, {}, {}};
      const Statement place = take != nullptr ? *take : Statement{component, fiche::none, At::take, {}, "all of it",
                                                                  document_.head_span(component), {}, {}, {}, {}};
      const Amount exact = measure::amount_of(*made * part, *measure::unit_by_id("g"));
      return document_.set_attribute(component, At::take, measured(place, exact, work_.factor, {}));
    }
    work_.say("not-scaled", Severity::warning, document_.head_span(component),
              "\"" + std::string(document_.get(component, At::title)) + "\" is taken " + work_.text(now) +
                  " times, and its own fiche does not say how much it makes",
              "state its mass in the other file's <yield>, or make it so many times");
  }

  std::string share_text(Ratio share) const { return share == 1 ? "all" : share.text(); }

  /// Grams that the other file makes.
  std::optional<Ratio> made_there(Node component) const {
    const std::string from(document_.get(component, At::from));
    const std::size_t hash = std::min(from.find('#'), from.size());
    const auto opened = work_.library.open(document_.source().path(), std::string_view(from).substr(0, hash));
    if (!opened) return std::nullopt;
    const fiche::Fiche other = fiche::read_fiche(**opened, work_.kitchen);
    const std::string_view wanted = hash < from.size() ? std::string_view(from).substr(hash + 1) : std::string_view();
    Node first = fiche::none;
    for (const Node yield : other.yields) {
      const Node above = other.document->parent(yield);
      const bool of_it = other.document->el(above) == El::component && other.document->get(above, At::id) == wanted;
      if (other.document->find(yield, At::mass) == fiche::none) continue;
      if (of_it || first == fiche::none) first = yield;
      if (of_it) break;
    }
    const Statement* mass = first == fiche::none ? nullptr : other.statement(first, At::mass);
    if (mass == nullptr || !mass->amount || !mass->amount->has_figure()) return std::nullopt;
    return mass->amount->middle_base();
  }

  // ---- sentences, losses, takes

  bool grows(const Statement& statement) const {
    switch (document_.el(statement.node)) {
      case El::amount: return statement.at == At::unknown || statement.at == At::also;
      case El::use: return statement.at == At::take;
      case El::component: return statement.at == At::take;
      case El::loss: return statement.at == At::amount;
      case El::part: return statement.at == At::share;
      case El::step: return statement.at == At::reduce_by || statement.at == At::reduce_to;
      default: return false;
    }
  }

  void other(const Statement& statement) {
    if (!grows(statement)) return;
    const Node node = statement.node;
    const El el = document_.el(node);
    if (el == El::amount && (!stands_in_sentence(document_, node) || document_.find(node, At::batch) != fiche::none)) return;
    if (el == El::loss && in_other_yield(node)) return;
    const Amount* amount = statement.amount ? &*statement.amount
                           : statement.share && statement.share->form == measure::Share::Form::amount
                               ? &statement.share->amount
                               : nullptr;
    if (amount == nullptr || !amount->has_figure() || is_for_each(fiche_, node, *amount)) return;
    if (work_.factor == 1) return;
    const Subject subject = subject_of(fiche_, node, statement.at);
    const std::string text = amount->kind == Kind::count
                                 ? work_.text(rounded_count(*amount, work_.factor, subject.food))
                             : amount->kind == Kind::length ? statement.text
                                                            : measured(statement, *amount, work_.factor, subject);
    if (el == El::use) replace_in_words(node, statement.text, text);
    const Node to = el == El::loss ? written_loss(node) : node;
    if (to != fiche::none) write(to, statement.at, text);
  }

  bool in_other_yield(Node loss) const {
    const Node above = document_.parent(loss);
    return document_.el(above) == El::yield && !work_.yields.empty() && above != work_.yields.front() &&
           document_.parent(above) == document_.root();
  }

  /// A loss of the first yield belongs to the new batch's; of a batch that the author states it stays as stated.
  Node written_loss(Node loss) const {
    const Node above = document_.parent(loss);
    if (work_.yields.empty() || above != work_.yields.front()) return loss;
    if (work_.verbatim) return fiche::none;
    const auto from = children_of(document_, above, El::loss), to = children_of(document_, work_.written, El::loss);
    const auto at = static_cast<std::size_t>(std::find(from.begin(), from.end(), loss) - from.begin());
    return at < to.size() ? to[at] : loss;
  }

  /// The figure that the words of a use repeat ("1 lb of the dough").
  void replace_in_words(Node use, std::string_view old, std::string_view now) {
    for (Node c = document_.first_child(use); c != fiche::none; c = document_.next(c)) {
      if (document_.kind(c) != fiche::NodeKind::text) continue;
      std::string words(document_.value(c));
      const std::size_t at = words.find(old);
      if (at == std::string::npos) continue;
      document_.set_value(c, words.replace(at, old.size(), now));
      return;
    }
  }

  // ---- yields

  void makes(Node yield) {
    const bool own = document_.parent(yield) == document_.root();
    if (own && (work_.yields.empty() || yield != work_.yields.front())) return;
    if (own && work_.verbatim) return;
    const Node to = own ? work_.written : yield;
    for (const At at : {At::portions, At::pieces, At::spare}) {
      if (const auto count = work_.number(yield, at)) document_.set_attribute(to, at, number_text(*count, at));
    }
    for (const At at : {At::mass, At::volume}) {
      const Statement* said = fiche_.statement(yield, at);
      if (said == nullptr || !said->amount || !said->amount->has_figure()) continue;
      document_.set_attribute(to, at, measured(*said, *said->amount, work_.factor, {}));
    }
    words(yield, to);
  }

  /// Whole portions: what falls short of one is not promised.
  std::string number_text(Ratio count, At at) const {
    const Ratio exact = count * work_.factor;
    if (exact.whole()) return exact.text();
    const Ratio near = base::round_to(exact, 1);
    const bool close = base::abs(near - exact) * 200 <= exact;
    const Ratio shown = close || at == At::spare ? near : Ratio(exact.floor());
    return shown < 1 && at != At::spare ? work_.text(base::round_to(exact, Ratio(1, 4))) : shown.text();
  }

  void words(Node yield, Node to) {
    const fiche::Attr words = document_.find(yield, At::words);
    if (words == fiche::none) return;
    work_.say("not-scaled", Severity::advice, document_.attribute_span(words),
              "the yield's words \"" + std::string(document_.attribute_value(words)) +
                  "\" speak of the author's batch and were left out",
              "write them anew for this batch");
    document_.remove_attribute(to, At::words);
  }

  ScaleWork& work_;
  Document& document_;
  const fiche::Fiche& fiche_;
};

}  // namespace

void scale_figures(ScaleWork& work) { Figures(work).run(); }

}  // namespace tamis::change
