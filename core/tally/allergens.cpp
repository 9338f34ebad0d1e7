#include "core/tally/allergens.h"

#include <set>

#include "core/base/utf8.h"
#include "core/fiche/reference.h"
#include "core/food/allergen_bits.h"

namespace tamis::tally {
namespace {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

bool is_element(const Document& document, Node n, El el) {
  return document.kind(n) == fiche::NodeKind::element && document.el(n) == el;
}

bool is_eaten(const Document& document, Node ingredient) {
  const std::string_view purpose = document.get(ingredient, At::purpose);
  return purpose != "bath" && purpose != "boiling" && purpose != "cover";
}

bool is_an_option(const Document& document, Node n) {
  if (document.get(n, At::optional) == "yes") return true;
  const Node parent = document.parent(n);
  return is_element(document, parent, El::choice) && document.child(parent, El::ingredient) != n;
}

std::string name_of(const Document& document, Node line, const food::Food* food) {
  const std::string_view own = base::trimmed(document.get(line, At::name));
  if (!own.empty()) return std::string(own);
  if (food != nullptr) return std::string(food->english.substr(0, food->english.find('|')));
  return std::string(base::trimmed(document.get(line, At::food)));
}

class Walk {
 public:
  Walk(const fiche::Kitchen& kitchen, fiche::Library& library) : kitchen_(kitchen), library_(library) {}

  std::vector<AllergenLine> run(const Document& document) {
    inside(document, document.root(), fiche::none, {}, false);
    return std::move(found_);
  }

 private:
  /// What another file is entered by, and what is skipped in one: what is in those is seen where they are.
  static bool may_come_again(const Document& document, Node n) {
    return n == document.root() || is_element(document, n, El::component) || is_element(document, n, El::ingredient);
  }

  /// `place` is what leads to it in the document at hand; none while reading that document itself.
  void inside(const Document& document, Node n, Node place, const std::string& in, bool option) {
    if (n == fiche::none || (may_come_again(document, n) && !seen_.emplace(&document, n).second)) return;
    const bool line = is_element(document, n, El::ingredient);
    if (line && !is_eaten(document, n)) return;
    option = option || (n != document.root() && is_an_option(document, n));
    const Node where = place == fiche::none ? n : place;
    if (line || is_element(document, n, El::override)) add(document, n, where, in, option);
    if (document.find(n, At::from) != fiche::none) other_file(document, n, where, option);
    for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
      if (document.kind(c) != fiche::NodeKind::element) continue;
      if (!line) {
        inside(document, c, place, in, option);
      } else if (is_element(document, c, El::swap) && document.find(c, At::food) != fiche::none) {
        add(document, c, place == fiche::none ? c : place, in, true);
      }
    }
  }

  void add(const Document& document, Node line, Node where, const std::string& in, bool option) {
    const std::string_view id = base::trimmed(document.get(line, At::food));
    const food::Food* food = kitchen_.find_food(id);
    AllergenLine made;
    if (food == nullptr) {
      // What another file or another line tells is no gap; neither is an override of an amount alone.
      const bool told = document.find(line, At::from) != fiche::none || document.find(line, At::result) != fiche::none;
      if (told || is_element(document, line, El::override)) return;
      made.unknown = true;
    } else {
      const fiche::Kitchen::OwnFood* own = kitchen_.own_food(id);
      const fiche::HeldAllergens held = fiche::allergens_held(*food, own);
      made.sure = held.sure;
      made.usual = held.assumed;
      made.may = held.may;
      if (own != nullptr) made.specified = own->specified;
      if ((made.sure | made.usual | made.may) == 0) return;
    }
    made.food = name_of(document, line, food) + (in.empty() ? "" : " in " + in);
    made.option = option;
    made.where = where;
    found_.push_back(std::move(made));
  }

  /// Foods that an override replaces are not read in the other file.
  void other_file(const Document& document, Node n, Node where, bool option) {
    const fiche::FileReference reference = fiche::split_reference(document.get(n, At::from));
    if (reference.file.empty()) return;
    fiche::Target target;
    if (depth_ < 8) target = fiche::follow(document, reference.file, library_);
    const Document* other = target.document;
    const bool readable = other != nullptr && other->root() != fiche::none;
    const Node part = !readable                ? fiche::none
                      : reference.part.empty() ? other->root()
                                               : fiche::component_named(*other, reference.part);
    if (part == fiche::none) {
      AllergenLine made;
      const std::string_view title = document.get(n, At::title);
      made.food = title.empty() ? name_of(document, n, nullptr) : std::string(title);
      made.unknown = true;
      made.option = option;
      made.where = where;
      found_.push_back(std::move(made));
      return;
    }
    for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
      if (is_element(document, c, El::override) && document.find(c, At::food) != fiche::none) {
        skip(*other, part, document.get(c, At::ingredient));
      }
    }
    held_.push_back(target.held);
    ++depth_;
    inside(*other, part, where, other->all_text(other->child(other->root(), El::title)), option);
    --depth_;
  }

  void skip(const Document& document, Node n, std::string_view id) {
    for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
      if (document.kind(c) != fiche::NodeKind::element) continue;
      if (is_element(document, c, El::ingredient) && document.get(c, At::id) == id) seen_.emplace(&document, c);
      skip(document, c, id);
    }
  }

  const fiche::Kitchen& kitchen_;
  fiche::Library& library_;
  std::vector<AllergenLine> found_;
  std::set<std::pair<const Document*, Node>> seen_;
  std::vector<std::shared_ptr<const Document>> held_;
  int depth_ = 0;
};

}  // namespace

std::vector<AllergenLine> allergen_lines(const Document& document, const fiche::Kitchen& kitchen,
                                         fiche::Library& library) {
  return Walk(kitchen, library).run(document);
}

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

}  // namespace tamis::tally
