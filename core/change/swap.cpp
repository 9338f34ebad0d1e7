#include "core/change/swap.h"

#include <algorithm>
#include <map>

#include "core/change/author.h"
#include "core/change/kept.h"
#include "core/change/stand_in.h"
#include "core/change/subject.h"
#include "core/change/swap_work.h"

namespace tamis::change {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

std::string name_of(const fiche::Fiche& fiche, const fiche::Ingredient& line) {
  if (!line.name.empty()) return std::string(line.name);
  if (line.food == nullptr) return std::string(line.food_id);
  return first_name(std::string_view(fiche.language).starts_with("fr") ? line.food->french : line.food->english);
}

/// Whether something keeps this line from being swapped.
std::optional<base::Finding> obstacle(const fiche::Fiche& fiche, const fiche::Ingredient& line, std::size_t stands) {
  const Document& document = *fiche.document;
  if (line.food == nullptr)
    return bad_swap("the line \"" + name_of(fiche, line) + "\" names no food that is known",
                    "give it one: tamis foods finds it");
  if (document.child(line.node, El::part) != fiche::none) {
    return bad_swap("parts of \"" + name_of(fiche, line) + "\" are used apart", "write a line for each part, then swap those");
  }
  if (document.find(line.node, At::packs) != fiche::none) {
    return bad_swap("\"" + name_of(fiche, line) + "\" is counted in packs, and another food is sold in others",
                    "give the line a weight without packs, then swap it");
  }
  if (stands > 1 && document.el(document.parent(line.node)) == El::choice) {
    return bad_swap("\"" + name_of(fiche, line) + "\" is one of a choice, where a second line would be another choice",
                    "take the choice apart, or swap it for one food");
  }
  return std::nullopt;
}

class Swapper {
 public:
  Swapper(const Document& document, const fiche::Kitchen& kitchen) : wish_(), work_{document.clone(), kitchen, wish_} {}

  base::Result<Converted> run(std::span<const SwapWish> wishes) {
    for (const SwapWish& wish : wishes) {
      if (auto fault = take_back(wish)) return *fault;
    }
    work_.author = fiche::read_fiche(work_.document, work_.kitchen);
    work_.after = work_.author.reading;
    for (const SwapWish& wish : wishes) {
      if (auto fault = plan(wish)) return *fault;
    }
    for (LineSwap& swap : swaps_) write(swap);
    move_water(work_, swaps_);
    for (LineSwap& swap : swaps_) {
      if (swap.kind != nullptr)
        tell_swap(work_, swap);
      else
        home(swap);
    }
    base::sort_by_place(work_.findings);
    return Converted{std::move(work_.document), std::move(work_.findings)};
  }

 private:
  /// What stands in on the wish's lines now goes first.
  std::optional<base::Finding> take_back(const SwapWish& wish) {
    const fiche::Fiche now = fiche::read_fiche(work_.document, work_.kitchen);
    const auto lines = lines_meant(now, wish);
    if (!lines) return lines.fault();
    for (const std::size_t i : *lines) meant_[&wish].push_back(now.ingredients[i].node);
    for (const Node node : meant_[&wish]) {
      if (!stands_in_here(work_.document, node)) continue;
      standing_.push_back(node);
      take_back_food(work_.document, node);
    }
    return std::nullopt;
  }

  std::optional<base::Finding> plan(const SwapWish& wish) {
    const auto stands = stands_meant(work_.author, wish);
    if (!stands) return stands.fault();
    for (const Node node : meant_[&wish]) {
      for (const LineSwap& other : swaps_) {
        if (other.own.line->node == node) return bad_swap("two swaps for \"" + other.own.name + "\"", "name each line once");
      }
      const fiche::Ingredient* line = nullptr;
      for (const fiche::Ingredient& one : work_.author.ingredients) {
        if (one.node == node) line = &one;
      }
      if (line == nullptr) continue;
      if (auto fault = obstacle(work_.author, *line, stands->size())) return fault;
      if (auto fault = plan_line(*line, *stands)) return fault;
    }
    return std::nullopt;
  }

  std::optional<base::Finding> plan_line(const fiche::Ingredient& line, const std::vector<Stand>& stands) {
    LineSwap swap;
    const bool stood = std::find(standing_.begin(), standing_.end(), line.node) != standing_.end();
    swap.own = {&work_.author, &line, std::string(line.food_id), line.food, name_of(work_.author, line), stood};
    swap.stands = stands;
    const auto kind = kind_of_swap(swap.own, stands);
    if (!kind) return kind.fault();
    swap.kind = *kind;
    swap.related = places_of(work_.author, swap.own);
    if (swap.kind == nullptr) {
      swap.made.lines.emplace_back();
    } else {
      if (auto fault = cannot_be_weighed(work_.author, swap.own)) return fault;
      auto made = swap.kind->work_out({work_.kitchen, swap.own, swap.stands});
      if (!made) return made.fault();
      swap.made = std::move(*made);
      swap.own_g = own_grams(work_.author, swap.own);
    }
    swaps_.push_back(std::move(swap));
    return std::nullopt;
  }

  void write(LineSwap& swap) {
    Document& document = work_.document;
    if (swap.kind == nullptr) return;
    const Node node = swap.own.line->node;
    write_figures(work_, swap);
    const StandIn& made = swap.made.lines[0];
    for (const auto& [at, value] : made.sets) say_of_food(node, at, value);
    for (const At at : {At::size, At::bloom, At::fat, At::cocoa}) {
      const bool says = std::any_of(made.sets.begin(), made.sets.end(), [at](const auto& one) { return one.first == at; });
      if (!says && document.find(node, at) != fiche::none) set_aside(document, node, at);
    }
    set_purchase_aside(node);
    const bool same_food = swap.stands[0].id == swap.own.food_id;
    const std::string own_name(document.get(node, At::name));
    const std::string name = work_.author.language.starts_with("fr") ? made.french : made.english;
    if (!same_food || !own_name.empty()) say_of_food(node, At::name, same_food ? own_name : name);
    write_over(document, node, At::food, swap.stands[0].id);
    if (swap.stands.size() > 1) write_added_line(work_, swap);
  }

  /// What was to be bought of the author's food.
  void set_purchase_aside(Node node) {
    Document& document = work_.document;
    if (document.find(node, At::purchase) == fiche::none) return;
    if (document.find(node, At::was_purchase) == fiche::none) return set_aside(document, node, At::purchase);
    document.remove_attribute(node, At::purchase);
  }

  void say_of_food(Node node, At at, const std::string& value) {
    if (work_.document.find(node, at) != fiche::none) return write_over(work_.document, node, at, value);
    work_.document.set_attribute(node, at, value);
  }

  /// The author's own figures again, where the fiche is in the author's own units.
  void home(LineSwap& swap) {
    Document& document = work_.document;
    if (document.find(document.root(), At::was_units) != fiche::none) return write_figures(work_, swap);
    std::vector<Node> nodes;
    for (const fiche::Statement& statement : work_.author.statements) {
      if (subject_of(work_.author, statement.node, statement.at).ingredient == swap.own.line->node)
        nodes.push_back(statement.node);
    }
    for (const Node node : nodes) restore_element(document, node);
  }

  ConvertWish wish_;
  Work work_;
  std::map<const SwapWish*, std::vector<Node>> meant_;
  std::vector<Node> standing_;
  std::vector<LineSwap> swaps_;
};

}  // namespace

base::Result<Converted> swap_foods(const Document& document, const fiche::Kitchen& kitchen, std::span<const SwapWish> wishes) {
  return Swapper(document, kitchen).run(wishes);
}

std::vector<SwapHelp> swap_help() {
  std::vector<SwapHelp> out;
  for (const SwapKind* kind : swap_kinds()) out.push_back({kind->what, kind->example});
  return out;
}

}  // namespace tamis::change
