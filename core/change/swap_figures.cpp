#include <algorithm>

#include "core/change/figure.h"
#include "core/change/kept.h"
#include "core/change/stand_in.h"
#include "core/change/subject.h"
#include "core/change/swap_work.h"
#include "core/measure/write.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::El;
using fiche::Fiche;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;
using measure::System;

namespace {

/// Beyond this, what stands beside a kept figure was changed by hand since, and is the author's own.
const Ratio most_rounding{6, 100};

bool was_changed_since(const Amount& now, const Amount& kept) {
  if (!now.has_figure() || !kept.has_figure() || now.kind != kept.kind) return false;
  const Ratio was = exact_low(kept);
  return base::abs(exact_low(now) - was) > base::abs(was) * most_rounding;
}

System system_of(const Amount& amount, System usual) {
  if (is_unmeasured(amount)) return usual == System::us || usual == System::imperial ? usual : System::metric;
  for (const System system : {System::metric, System::us, System::imperial}) {
    if (stands_in(amount, system)) return system;
  }
  return System::metric;
}

/// Grams in one piece or leaf of the author's, as a count of its unit.
std::optional<Ratio> grams_in_one(const OwnLine& own) {
  const auto piece = own.food == nullptr ? std::nullopt : food::piece_of(*own.food, own.get(At::size));
  if (!piece) return std::nullopt;
  return piece->grams;
}

std::optional<Ratio> to_grams(const Fiche& fiche, const OwnLine& own, Kind kind) {
  if (kind == Kind::mass) return Ratio(1);
  if (kind == Kind::count) return grams_in_one(own);
  if (kind != Kind::volume) return std::nullopt;
  Subject subject = subject_of(fiche, own.line->node, At::unknown);
  subject.food = own.food;
  const auto density = density_of(fiche, subject);
  return density ? std::optional(density->grams_per_ml) : std::nullopt;
}

/// One figure of a line on its way.
class FigureWriter {
 public:
  FigureWriter(Work& work, const LineSwap& swap, std::size_t which)
      : work_(work), swap_(swap), line_(swap.made.lines[which]), food_(*swap.stands[which].food), subject_() {
    subject_.food = &food_;
    subject_.tolerance.share = food::tolerance_of(food_.role);
  }

  /// The words for an author's figure; empty where it says nothing that can be worked out ("to taste").
  std::optional<std::string> words(const Statement& statement, const std::vector<Amount>& figures) {
    if (figures.size() != 1 || !figures[0].has_figure()) return std::nullopt;
    const Amount& amount = figures[0];
    const auto grams = to_grams(work_.author, swap_.own, amount.kind);
    if (!grams) return std::nullopt;
    const System system = system_of(now_of(statement, amount), work_.author.reading.system);
    const Ratio factor = *grams * line_.factor;
    if (amount.kind == Kind::count && line_.piece_g) {
      if (auto counted = count(amount, factor)) return counted;
    }
    Passage way{Kind::mass, factor, 0};
    if (amount.kind == Kind::volume) {
      if (const auto density = food::density_of(food_)) way = {Kind::volume, factor / density->grams_per_ml, 0};
    }
    const Target target{system, &work_.kitchen.tools, subject_.tolerance, false, false, false};
    const auto made = convert_figure(amount, way, target);
    if (!made) return std::nullopt;
    grams_ = exact_high(made->amount) * (way.kind == Kind::mass ? Ratio(1) : factor / way.factor);
    std::string text = write_figure(made->amount, work_.after);
    say_rounding(statement, text, made->ends);
    return text;
  }

  /// What the last figure weighs as written.
  [[nodiscard]] Ratio grams() const { return grams_; }
  [[nodiscard]] bool counted() const { return counted_; }

 private:
  [[nodiscard]] Amount now_of(const Statement& statement, const Amount& otherwise) const {
    const std::vector<Amount> now = figures_of(statement);
    return now.empty() ? otherwise : now[0];
  }

  /// Whole eggs as long as they come near enough.
  std::optional<std::string> count(const Amount& amount, Ratio factor) {
    Amount made = amount;
    for (auto* side : {&made.low, &made.high}) {
      if (side->empty()) continue;
      const Ratio exact = (side == &made.low ? exact_low(amount) : exact_high(amount)) * factor / *line_.piece_g;
      const Ratio whole = exact.nearest();
      if (side->size() != 1 || !(whole > 0) || base::abs(whole - exact) > exact * subject_.tolerance.share) return std::nullopt;
      side->front().value = whole;
    }
    counted_ = true;
    return write_figure(made, work_.after);
  }

  void say_rounding(const Statement& statement, const std::string& text, const std::vector<measure::Rounded>& ends) {
    for (const measure::Rounded& end : ends) {
      if (end.within) continue;
      work_.say("conversion-beyond-tolerance",
                subject_.tolerance.share <= Ratio(2, 100) ? base::Severity::warning : base::Severity::advice, statement.where,
                "\"" + statement.text + "\" becomes \"" + text + "\", " + percent(end.share) + " off; " +
                    first_name(food_.english) + " allows " + percent(subject_.tolerance.share.approximate()),
                end.better.empty() ? "weigh it on finer scales" : end.better, "the food's tolerance (common practice)");
      return;
    }
  }

  Work& work_;
  const LineSwap& swap_;
  const StandIn& line_;
  const food::Food& food_;
  Subject subject_;
  Ratio grams_ = 0;
  bool counted_ = false;
};

/// Writes over the author's figure; one that is kept already stays kept.
void put_figure(Work& work, Node node, At at, const std::string& text) {
  const At kept = kept_name(work.document.el(node), at);
  const bool has = work.document.find(node, kept) != fiche::none;
  if (!has) return write_over(work.document, node, at, text);
  if (at == At::unknown) return put_text(work.document, node, text);
  work.document.set_attribute(node, at, text);
}

/// As many as must be cracked for that weight; nothing of what is not counted.
void put_pieces(Work& work, Node node, const std::optional<Ratio>& piece, const FigureWriter& figure) {
  fiche::Document& document = work.document;
  const bool had = document.find(node, At::pieces) != fiche::none;
  if (figure.counted() || !piece || !(figure.grams() > 0)) {
    if (had) set_aside(document, node, At::pieces);
    return;
  }
  const Ratio exact = figure.grams() / *piece;
  Ratio whole = exact.nearest();
  if (whole < exact && exact - whole > Ratio(1, 10)) whole = whole + 1;
  if (whole < 1) whole = 1;
  const std::string count = measure::write_number(whole, {});
  if (had) return write_over(document, node, At::pieces, count);
  document.set_attribute(node, At::pieces, count);
}

bool is_of_line(const Statement& statement, const Subject& subject, const LineSwap& swap) {
  return statement.at != At::also && subject.crosses && subject.ingredient == swap.own.line->node;
}

void write_second(Work& work, const LineSwap& swap, const Statement& statement, Kind shown) {
  const Statement* second = work.author.statement(statement.node, At::also);
  if (second == nullptr) return;
  FigureWriter figure(work, swap, 0);
  const std::vector<Amount> own = own_figures(work.author, *second, swap.own.stood);
  const bool mixed = own.empty() || own[0].kind == Kind::count ||
                     (shown == Kind::mass && own[0].kind == Kind::mass && figures_of(statement)[0].kind == Kind::count);
  const auto text = mixed ? std::nullopt : figure.words(*second, own);
  if (text) return put_figure(work, statement.node, At::also, *text);
  if (work.document.find(statement.node, At::was_also) == fiche::none)
    return set_aside(work.document, statement.node, At::also);
  work.document.remove_attribute(statement.node, At::also);
}

}  // namespace

std::vector<Amount> own_figures(const Fiche& fiche, const Statement& statement, bool stood) {
  const std::vector<Amount> now = figures_of(statement);
  const At at = kept_name(fiche.document->el(statement.node), statement.at);
  const Statement* kept = at == At::unknown ? nullptr : fiche.statement(statement.node, at);
  if (kept == nullptr || kept->fault) return now;
  const std::vector<Amount> own = figures_of(*kept);
  if (own.empty()) return now;
  return !stood && !now.empty() && was_changed_since(now[0], own[0]) ? now : own;
}

std::optional<base::Finding> cannot_be_weighed(const Fiche& fiche, const OwnLine& own) {
  for (const Statement& statement : fiche.statements) {
    const Subject subject = subject_of(fiche, statement.node, statement.at);
    if (subject.ingredient != own.line->node || !subject.crosses || statement.at == At::also) continue;
    if (statement.fault) return bad_swap(own.name + ": " + statement.fault->message, statement.fault->advice);
    for (const Amount& amount : own_figures(fiche, statement, own.stood)) {
      if (!amount.has_figure() || (is_unmeasured(amount) && amount.kind != Kind::count) || to_grams(fiche, own, amount.kind))
        continue;
      return bad_swap("what \"" + statement.text + "\" of " + own.name + " weighs is not known",
                      "give the line a weight, then swap it");
    }
  }
  return std::nullopt;
}

std::optional<Ratio> own_grams(const Fiche& fiche, const OwnLine& own) {
  const Statement* statement = fiche.statement(own.line->node);
  if (statement == nullptr) return std::nullopt;
  const std::vector<Amount> figures = own_figures(fiche, *statement, own.stood);
  if (figures.size() != 1 || figures[0].form != Amount::Form::exact || !figures[0].has_figure()) return std::nullopt;
  const auto grams = to_grams(fiche, own, figures[0].kind);
  if (!grams) return std::nullopt;
  const Ratio all = exact_low(figures[0]) * *grams;
  return all.ok() ? std::optional(all) : std::nullopt;
}

void write_figures(Work& work, LineSwap& swap) {
  const bool mixed = swap.stands.size() > 1;
  for (const Statement& statement : work.author.statements) {
    const Subject subject = subject_of(work.author, statement.node, statement.at);
    if (!is_of_line(statement, subject, swap) || statement.fault) continue;
    const El el = work.author.document->el(statement.node);
    const bool in_list =
        el == El::ingredient ||
        (el == El::amount && work.author.document->el(work.author.document->parent(statement.node)) == El::ingredient);
    if (kept_name(el, statement.at) == At::unknown || (mixed && !in_list)) continue;
    FigureWriter figure(work, swap, 0);
    const auto text = figure.words(statement, own_figures(work.author, statement, swap.own.stood));
    if (!text) continue;
    put_figure(work, statement.node, statement.at, *text);
    if (statement.at != At::unknown) continue;
    if (in_list && swap.kind != nullptr) put_pieces(work, statement.node, swap.made.lines[0].piece_g, figure);
    if (statement.node == swap.own.line->node) swap.shown.push_back(*text);
    write_second(work, swap, statement, Kind::mass);
  }
}

void write_added_line(Work& work, LineSwap& swap) {
  fiche::Document& document = work.document;
  const Node own = swap.own.line->node;
  const Node parent = document.parent(own);
  const Node line = document.add_element(parent, El::ingredient, document.next(own));
  const std::string id = swap.own.line->id.empty() ? "" : std::string(swap.own.line->id) + "-2";
  if (!id.empty()) document.set_attribute(line, At::id, id);
  document.set_attribute(line, At::food, swap.stands[1].id);
  document.set_attribute(line, At::was_food, no_line);
  const StandIn& made = swap.made.lines[1];
  const bool french = work.author.language.starts_with("fr");
  document.set_attribute(line, At::name, french ? made.french : made.english);
  for (const At at : {At::group, At::optional, At::per, At::purpose}) {
    if (const std::string same(document.get(own, at)); !same.empty()) document.set_attribute(line, at, same);
  }
  for (const auto& [at, value] : made.sets) document.set_attribute(line, at, value);
  for (const Statement& statement : work.author.statements) {
    const bool batch = document.el(statement.node) == El::amount && document.parent(statement.node) == own;
    if (statement.at != At::unknown || statement.fault || (statement.node != own && !batch)) continue;
    FigureWriter figure(work, swap, 1);
    const auto text = figure.words(statement, own_figures(work.author, statement, swap.own.stood));
    if (!text) continue;
    Node into = line;
    if (batch) {
      into = document.add_element(line, El::amount);
      document.set_attribute(into, At::batch, std::string(document.get(statement.node, At::batch)));
    } else {
      swap.shown.push_back(*text);
    }
    document.add_text(into, *text);
    put_pieces(work, into, made.piece_g, figure);
  }
  if (id.empty()) return;
  for (const fiche::Step& step : work.author.steps) {
    for (const Node use : step.uses) {
      const std::string of(document.get(use, At::of));
      if ((" " + of + " ").find(" " + std::string(swap.own.line->id) + " ") != std::string::npos)
        document.set_attribute(use, At::of, of + " " + id);
    }
  }
}

}  // namespace tamis::change
