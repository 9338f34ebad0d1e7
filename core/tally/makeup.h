#ifndef CORE_TALLY_MAKEUP_H
#define CORE_TALLY_MAKEUP_H

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/fiche/library.h"
#include "core/flow/flow.h"

namespace tamis::tally {

// What a dish is made up of: every line of its ingredient lists, those of components kept in other files too, with the
// grams of it that go in and the grams that are in what is made. One way through the recipe is followed: the author's own
// choice, the first variant, the first branch, nothing that is optional; of a range its middle.
//
// Losses by cooking and reductions are water; losses in bowl, frame and trim are of everything alike. What a step takes
// out again (removes) is gone; where the loss states its weight, what it weighed less than it did going in has stayed in
// the liquid. What a step divides without a figure is taken as equal parts, and masses behind it as not known.

/// One line of an ingredient list, or a part of one that steps take by itself (yolk, zest).
struct Entry {
  std::shared_ptr<const fiche::Document> held;  ///< keeps another file's document; null for the fiche's own
  fiche::Node node = fiche::none;       ///< the ingredient or part, in its own document
  fiche::Node component = fiche::none;  ///< the component of the fiche at hand that it comes with
  std::string name;                     ///< the author's, else the food's
  std::string in;                       ///< title of the other file's component; "" for a line of the fiche itself
  std::string food_id;
  const food::Food* food = nullptr;     ///< null when neither the kitchen nor the table knows it
  bool counts = true;                   ///< is of the food: false for tin butter, bench flour, a bath
  bool trace = false;                   ///< a pinch, to taste: no mass
  int part_of = -1;                     ///< the entry it is a part of; that one is what is bought
  std::optional<double> listed;         ///< g that the batch takes of it as the list has it; empty when not known
  std::optional<double> bought;         ///< g of it as bought, where the list says so: purchase, or weighed as bought
  double share = 1;                     ///< how many times the other file's batch is taken
  bool trimmed = false;                 ///< its words say that something is taken off before it is weighed
  double used = 0;                      ///< g of those that went into what is made
  double served = 0;                    ///< g of those that are in what is made; water boiled out is not taken off
};

/// g of it as bought: what its list says, else what goes in with the trim on top, where the kitchen states a trim or its
/// words say that something is taken off. Sold by the piece nothing comes on top: what a piece weighs is its edible part.
/// Empty when it is not known what goes in.
std::optional<double> grams_bought(const Entry& entry, bool by_piece);

/// As the house calls it, else as its line does.
std::string name_in(const fiche::Kitchen& kitchen, const Entry& entry);
/// Whether the house buys it by the piece, by the price of that day (fiche::price_on).
bool sold_by_piece(const fiche::Kitchen& kitchen, const Entry& entry, std::string_view day);

/// Something made in the house by another fiche.
struct Base {
  std::shared_ptr<const fiche::Document> held;  ///< the other fiche
  fiche::Node component = fiche::none;  ///< of the fiche at hand, that it comes with
  std::string title;                    ///< of the component that is taken, else of the other fiche
  double grams = 0;                     ///< g of it that are taken
  double batches = 0;                   ///< of the other fiche as it is written
  std::size_t first = 0, end = 0;       ///< its lines in entries
};

/// Hands-on time, as the steps of a component state it.
struct Labour {
  fiche::Node component = fiche::none;  ///< of the fiche at hand; none for steps outside every component
  double seconds = 0;                   ///< of what is made in another file, the share that is taken of it
  int unstated = 0;                     ///< steps that state none
};

/// Something that keeps the figures from being sure.
struct Doubt {
  enum class Kind : unsigned char {
    no_mass,        ///< a line weighs nobody knows what
    divided,        ///< a step divides what it holds and does not say how much each part gets
    loss_unknown,   ///< a loss without a figure that can be weighed
    taken_out,      ///< what was cooked in it and taken out again left something behind
    cooked_down,    ///< the yield states less than goes in: the difference is taken as water
    left_behind,    ///< likewise, up to 5 %: as of everything alike
    yield_over,     ///< the yield states more than goes in
    yield_for_mass, ///< the masses through the steps are not known: the yield's own is taken
    file_missing,   ///< a component or ingredient kept in another file that cannot be read
  } kind;
  std::string what;      ///< the line, component or step it is about; "" for the whole
  double grams = 0;
  fiche::Node where = fiche::none;  ///< in the fiche at hand
};
std::string_view doubt_name(Doubt::Kind kind);  ///< "no_mass", ...

struct Makeup {
  std::vector<Entry> entries;    ///< in the order of the lists
  std::vector<Base> bases;       ///< what comes from other files, theirs too; each time that one is taken
  double water_out = 0;          ///< g of water that has gone from what is made
  std::optional<double> mass;    ///< g of all that is made; empty when not known
  std::optional<double> portions;       ///< or pieces, spare ones too; empty when the yield states neither
  bool pieces = false;                  ///< the yield counts pieces
  std::optional<double> portion_mass;   ///< g
  std::vector<Labour> labour;    ///< in document order
  std::vector<Doubt> doubts;
};

Makeup read_makeup(const fiche::Fiche& fiche, const flow::Flow& flow, fiche::Library& library);

}  // namespace tamis::tally

#endif
