#include "core/rules/held_allergens.h"

#include <algorithm>
#include <set>

#include "core/base/utf8.h"
#include "core/food/allergen_bits.h"
#include "core/food/sure_allergens.h"
#include "core/rules/file_reference.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

bool is_element(const Document& document, Node n, El el) {
  return document.kind(n) == fiche::NodeKind::element && document.el(n) == el;
}

bool is_always_in(const Document& document, Node ingredient) {
  if (document.get(ingredient, At::optional) == "yes") return false;
  const std::string_view purpose = document.get(ingredient, At::purpose);
  if (purpose == "bath" || purpose == "boiling" || purpose == "cover") return false;
  const Node parent = document.parent(ingredient);
  return !is_element(document, parent, El::choice) || document.child(parent, El::ingredient) == ingredient;
}

std::string name_of(const Document& document, Node line, const food::Food& food) {
  const std::string_view own = base::trimmed(document.get(line, At::name));
  return std::string(own.empty() ? food.english.substr(0, food.english.find('|')) : own);
}

class Walk {
 public:
  explicit Walk(const Check& check) : check_(check) {}

  std::vector<HeldAllergens> run() {
    whole(check_.document, fiche::none, {});
    return std::move(found_);
  }

 private:
  /// `where` is the place in the document at hand that leads to what is read; none while reading that document itself.
  void whole(const Document& document, Node where, const std::string& in) { inside(document, document.root(), where, in); }

  void inside(const Document& document, Node n, Node where, const std::string& in) {
    if (n == fiche::none || !seen_.emplace(&document, n).second) return;
    const bool optional = document.kind(n) == fiche::NodeKind::element && document.get(n, At::optional) == "yes";
    if (optional && n != document.root()) return;
    const Node place = where == fiche::none ? n : where;
    if (is_element(document, n, El::ingredient) && !is_always_in(document, n)) return;
    if (is_element(document, n, El::ingredient) || is_element(document, n, El::override)) add(document, n, place, in);
    if (document.find(n, At::from) != fiche::none) other_file(document, n, place);
    if (is_element(document, n, El::ingredient)) return;
    for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
      if (document.kind(c) == fiche::NodeKind::element) inside(document, c, where, in);
    }
  }

  void add(const Document& document, Node line, Node place, const std::string& in) {
    const std::string_view id = base::trimmed(document.get(line, At::food));
    const food::Food* food = check_.kitchen.find_food(id);
    if (food == nullptr) return;
    const fiche::Kitchen::OwnFood* own = check_.kitchen.own_food(id);
    HeldAllergens made;
    made.bits = own == nullptr             ? food::sure_allergens(*food)
                : own->specified.empty() ? own->contains | food::sure_allergens(*food)
                                         : own->contains;
    if (made.bits == 0) return;
    made.food = name_of(document, line, *food) + (in.empty() ? "" : " in " + in);
    if (own != nullptr) made.specified = own->specified;
    made.where = place;
    found_.push_back(std::move(made));
  }

  /// Foods that an override replaces are not read in the other file.
  void other_file(const Document& document, Node n, Node place) {
    const FileReference reference = split_reference(document.get(n, At::from));
    if (reference.file.empty() || depth_ >= 8) return;
    Target target = follow(document, reference.file, check_.library);
    if (target.document == nullptr || target.document->root() == fiche::none) return;
    const Document& other = *target.document;
    const Node part = reference.part.empty() ? other.root() : component_named(other, reference.part);
    if (part == fiche::none) return;
    for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
      if (is_element(document, c, El::override) && document.find(c, At::food) != fiche::none) skip(other, part, document.get(c, At::ingredient));
    }
    held_.push_back(target.held);
    ++depth_;
    inside(other, part, place, other.all_text(other.child(other.root(), El::title)));
    --depth_;
  }

  void skip(const Document& document, Node n, std::string_view id) {
    for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
      if (document.kind(c) != fiche::NodeKind::element) continue;
      if (is_element(document, c, El::ingredient) && document.get(c, At::id) == id) seen_.emplace(&document, c);
      skip(document, c, id);
    }
  }

  const Check& check_;
  std::vector<HeldAllergens> found_;
  std::set<std::pair<const Document*, Node>> seen_;
  std::vector<std::shared_ptr<const Document>> held_;
  int depth_ = 0;
};

}  // namespace

std::vector<HeldAllergens> held_allergens(const Check& check) { return Walk(check).run(); }

food::Allergens left_out(food::Allergens held, food::Allergens stated) {
  constexpr food::Allergens grain = food::allergen::gluten | food::allergen::wheat;
  if ((held & grain) == grain && (stated & grain) != 0) held &= ~grain;
  return held & ~stated;
}

std::string allergen_list(food::Allergens bits, std::string_view between) {
  std::string out;
  for (const food::AllergenName& name : food::allergen_names()) {
    if ((bits & name.bit) == 0) continue;
    if (!out.empty()) out += between;
    out += name.id;
  }
  return out;
}

}  // namespace tamis::rules
