#include "core/fiche/kitchen.h"

#include <algorithm>
#include <limits>

#include "core/base/utf8.h"
#include "core/measure/trade_word.h"

namespace tamis::fiche {
namespace {

/// A span of temperature from an amount read as a temperature: "5 °C" is 5, "25 °F" is 125/9. Dial steps, offsets and
/// what a thermometer reads are differences, though people write them as temperatures.
base::Ratio difference_c(const measure::Amount& amount) {
  const measure::Quantity& quantity = amount.low.front();
  return quantity.value * quantity.unit->to_base;
}

class Reader {
 public:
  explicit Reader(std::shared_ptr<const Document> document) : document_(*document) {
    out_.document = std::move(document);
    out_.path = document_.source().path();
  }

  /// A plugin's manifest, read into a kitchen that is there.
  Reader(const Document& manifest, Kitchen&& kitchen) : document_(manifest), out_(std::move(kitchen)), of_kitchen_(false) {}

  Kitchen read_more() {
    for (Node c = document_.first_child(document_.root()); c != none; c = document_.next(c)) {
      const El el = document_.el(c);
      if (el == El::food && out_.own_food(text(c, At::id)) == nullptr) read_food(c);
      if (el == El::means) read_meaning(c);
      if (el == El::verb) read_verb(c);
    }
    return std::move(out_);
  }

  Kitchen read() {
    const Node root = document_.root();
    if (root == none) return std::move(out_);
    read_root(root);
    for (Node c = document_.first_child(root); c != none; c = document_.next(c)) {
      if (document_.kind(c) == NodeKind::element) read_child(c);
    }
    const auto finest_first = [](const auto& a, const auto& b) { return a.reads_g < b.reads_g; };
    std::sort(out_.tools.scales.begin(), out_.tools.scales.end(), finest_first);
    return std::move(out_);
  }

 private:
  void read_root(Node root) {
    out_.name = text(root, At::name);
    out_.language = text(root, At::lang);
    if (!out_.language.empty()) out_.reading.language = out_.language;
    out_.library_root = text(root, At::library);
    out_.limits = text(root, At::limits);
    out_.system = system_named(document_.get(root, At::units));
    if (out_.system) out_.reading.system = *out_.system;
    const std::string_view decimal = document_.get(root, At::decimal);
    if (decimal == "point") out_.reading.decimal = '.';
    if (decimal == "comma") out_.reading.decimal = ',';
    if (const auto height = amount(root, At::altitude, measure::length_kinds)) {
      out_.altitude_m = height->low_base() / 1000;
    }
  }

  void read_child(Node n) {
    switch (document_.el(n)) {
      case El::oven: return read_oven(n);
      case El::cold: return read_cold(n);
      case El::machine: return read_machine(n);
      case El::scales: return read_scales(n);
      case El::thermometer:
        if (const auto step = temperature(n, At::reads)) out_.tools.thermometer_step_c = difference_c(*step);
        return;
      case El::spoons: return read_set(n, out_.tools.spoons);
      case El::cups: return read_set(n, out_.tools.cups);
      case El::means: return read_meaning(n);
      case El::verb: return read_verb(n);
      case El::food: return read_food(n);
      case El::cross_contact: return read_cross_contact(n);
      case El::labour:
        if (auto hour = price(n, At::hour)) out_.labour.push_back(*std::move(hour));
        return;
      case El::packaging:
        if (auto one = price(n, At::price)) out_.packaging.push_back({text(n, At::id), text(n, At::name), *std::move(one)});
        return;
      case El::sale: return read_sale(n);
      case El::rule: return read_rule(n);
      default: return;
    }
  }

  void read_oven(Node n) {
    Kitchen::Oven oven;
    oven.id = text(n, At::id);
    oven.name = text(n, At::name);
    oven.mode = text(n, At::mode);
    oven.node = n;
    if (const auto least = temperature(n, At::least)) oven.least_c = least->low_base();
    if (const auto most = temperature(n, At::most)) oven.most_c = most->low_base();
    if (const auto offset = temperature(n, At::offset)) oven.offset_c = difference_c(*offset);
    if (const auto step = temperature(n, At::step)) {
      oven.step_c = difference_c(*step);
      const bool fahrenheit = step->low.front().unit->id == "degf";
      (fahrenheit ? out_.tools.oven_step_f : out_.tools.oven_step_c) = step->low.front().value;
    }
    out_.ovens.push_back(std::move(oven));
  }

  void read_cold(Node n) {
    const auto at = temperature(n, At::at);
    out_.colds.push_back({text(n, At::id), text(n, At::kind), at ? std::optional(at->low_base()) : std::nullopt, number(n, At::coefficient), n});
  }

  void read_machine(Node n) {
    out_.machines.push_back({text(n, At::id), text(n, At::kind), text(n, At::name),
                             amount(n, At::least, measure::amount_kinds), amount(n, At::most, measure::amount_kinds)});
  }

  void read_scales(Node n) {
    const auto reads = amount(n, At::reads, measure::set_of(measure::Kind::mass));
    if (!reads || reads->low_base() <= 0) return;
    const auto most = amount(n, At::most, measure::set_of(measure::Kind::mass));
    forget_usual(scales_stated_, out_.tools.scales);
    out_.tools.scales.push_back({reads->low_base(), most ? most->low_base() : base::Ratio(1'000'000)});
  }

  /// "1/4 tsp; 1/2 tsp; 1 tbsp"
  void read_set(Node n, std::vector<measure::Quantity>& set) {
    measure::Reading reading = out_.reading;
    if (const auto own = system_named(document_.get(n, At::units))) reading.system = *own;
    std::vector<measure::Quantity> found;
    const std::string all = document_.direct_text(n);
    for (std::string_view rest = all; !rest.empty();) {
      const std::size_t end = std::min(rest.find(';'), rest.size());
      const auto one = measure::read_amount(base::trimmed(rest.substr(0, end)),
                                            measure::set_of(measure::Kind::volume), reading);
      if (one && one->has_figure() && one->low.size() == 1) found.push_back(one->low.front());
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.in_base() < b.in_base(); });
    if (!found.empty()) set = std::move(found);
  }

  void read_meaning(Node n) {
    const std::string word = base::lower(base::trimmed(document_.get(n, At::word)));
    std::string id = word;
    // The house writes the word as it says it; rules look it up by the table's id.
    for (const measure::Kinds kinds : {measure::time_kinds, measure::temperature_kinds, measure::amount_kinds}) {
      const auto read = measure::read_amount(word, kinds, out_.reading);
      if (read && !read->has_figure()) {
        id = read->words;
        break;
      }
    }
    if (const auto time = amount(n, At::time, measure::time_kinds)) out_.meanings.emplace(id, *time);
    if (const auto heat = temperature(n, At::temperature)) out_.meanings.emplace(id, *heat);
    if (const auto some = amount(n, At::amount, measure::amount_kinds)) out_.meanings.emplace(id, *some);
  }

  void read_verb(Node n) {
    std::string word = text(n, At::word);
    if (!word.empty()) out_.verbs.emplace(std::move(word), text(n, At::like));
  }

  void read_food(Node n) {
    auto made = std::make_unique<Kitchen::OwnFood>();
    made->node = of_kitchen_ ? n : none;
    made->id = text(n, At::id);
    made->name = text(n, At::name);
    made->like = text(n, At::like);
    made->supplier = text(n, At::supplier);
    made->ingredients = text(n, At::ingredients);
    made->specified = text(n, At::specified);
    made->bloom = number(n, At::bloom);
    made->fat_percent = percent(n, At::fat);
    made->cocoa_percent = percent(n, At::cocoa);
    std::vector<std::string_view> unknown;
    made->contains = food::read_allergens(document_.get(n, At::contains), unknown);
    made->may_contain = food::read_allergens(document_.get(n, At::may_contain), unknown);
    if (const food::Food* like = food::food_by_id(made->like)) {
      made->food = *like;
    } else {
      made->food = nameless();
    }
    made->food.id = made->id;
    // The house names its foods in its own language; in the other one they are called as the food they are like.
    if (!made->name.empty()) {
      const bool french = out_.language.starts_with("fr");
      if (french || made->food.french.empty()) made->food.french = made->name;
      if (!french || made->food.english.empty()) made->food.english = made->name;
    }
    if (!made->specified.empty()) {
      made->food.allergens = made->contains;
      made->food.allergen_source = "supplier's specification";
    } else {
      made->food.allergens |= made->contains;
    }
    if (const auto trim = share(n, At::trim)) {
      made->food.trim_share = trim->approximate();
      made->food.trim_source = "kitchen file";
    }
    if (auto own = price(n, At::price)) made->prices.push_back(*std::move(own));
    made->stock = amount(n, At::stock, measure::amount_kinds);
    for (Node c = document_.first_child(n); c != none; c = document_.next(c)) {
      if (document_.el(c) == El::declared) {
        read_declared(c, made->food.per_100_g);
        made->food.composition_source = "declared by the supplier; what is not, of the food it is like";
      }
      if (document_.el(c) != El::bought) continue;
      if (auto other = price(c, At::price)) made->prices.push_back(*std::move(other));
    }
    put_in_measures(n, *made);
    out_.foods.push_back(std::move(made));
  }

  /// The house's own "1 cup = 125 g" and mass of a piece come before the table's.
  void put_in_measures(Node n, Kitchen::OwnFood& made) {
    const std::string_view density = document_.get(n, At::density);
    if (const std::size_t equals = density.find('='); equals != std::string_view::npos) {
      const auto volume = measure::read_amount(base::trimmed(density.substr(0, equals)),
                                               measure::set_of(measure::Kind::volume), out_.reading);
      const auto mass = measure::read_amount(base::trimmed(density.substr(equals + 1)),
                                             measure::set_of(measure::Kind::mass), out_.reading);
      if (volume && mass && volume->has_figure() && mass->has_figure() && volume->low_base() > 0) {
        const double per_ml = (mass->low_base() / volume->low_base()).approximate();
        made.measures.push_back({"ml", per_ml, "", "kitchen file"});
      }
    }
    if (const auto piece = amount(n, At::piece, measure::set_of(measure::Kind::mass))) {
      made.measures.push_back({"piece", piece->low_base().approximate(), "", "kitchen file"});
    }
    if (made.measures.empty()) return;
    const bool own_density = made.measures.front().what == "ml";
    for (const food::Measure& table : made.food.measures) {
      const bool volume = table.what == "cup" || table.what == "tbsp" || table.what == "tsp" || table.what == "ml";
      if (!(own_density && volume && table.note.empty())) made.measures.push_back(table);
    }
    made.food.measures = made.measures;
  }

  /// What the supplier declares of 100 g goes before what the table has; the table's carbohydrate has the fibre in it.
  void read_declared(Node n, food::Composition& out) {
    const auto take = [&](At at, double& into) {
      if (const auto figure = number(n, at)) into = *figure;
    };
    take(At::water, out.water);
    take(At::fat, out.fat);
    take(At::saturates, out.saturated);
    take(At::sugars, out.sugars);
    take(At::fibre, out.fibre);
    take(At::protein, out.protein);
    if (const auto salt = number(n, At::salt)) out.sodium_mg = *salt * 1000 / 2.5;
    if (const auto available = number(n, At::carbohydrate)) {
      if (!(out.fibre >= 0)) out.fibre = 0;
      out.carbohydrate = *available + out.fibre;
    }
  }

  void read_cross_contact(Node n) {
    std::vector<std::string_view> unknown;
    out_.cross_contacts.push_back({food::read_allergens(document_.get(n, At::may_contain), unknown), text(n, At::where)});
  }

  void read_sale(Node n) {
    const auto money = measure::read_money(document_.get(n, At::price));
    if (!money) return;
    Kitchen::Sale made{text(n, At::fiche), *money, share(n, At::tax), share(n, At::aim), {}, n};
    const std::string all = text(n, At::packaging);
    for (std::string_view rest = all; !rest.empty();) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      if (end > 0) made.packaging.emplace_back(rest.substr(0, end));
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    out_.sales.push_back(std::move(made));
  }

  std::optional<Kitchen::Price> price(Node n, At at) const {
    auto money = measure::read_money(document_.get(n, at));
    if (!money) return std::nullopt;
    return Kitchen::Price{text(n, At::since), *std::move(money), amount(n, At::pack, measure::amount_kinds), of_kitchen_ ? n : none};
  }

  static food::Food nameless() {
    constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
    food::Food made{};
    made.per_100_g = {unknown, unknown, unknown, unknown, unknown, unknown, unknown, unknown, unknown, unknown, unknown};
    made.trim_share = unknown;
    return made;
  }

  void read_rule(Node n) {
    const std::string id = text(n, At::id);
    const std::string_view severity = document_.get(n, At::severity);
    for (const base::Severity one : {base::Severity::off, base::Severity::advice, base::Severity::warning,
                                     base::Severity::error}) {
      if (severity == base::severity_name(one)) out_.severities[id] = one;
    }
    if (document_.find(n, At::value) != none) out_.rule_values[id] = text(n, At::value);
  }

  /// The first scales, spoons or cups a kitchen states take the place of the usual ones.
  template <class Tools>
  static void forget_usual(bool& stated, Tools& tools) {
    if (!stated) tools.clear();
    stated = true;
  }

  std::string text(Node n, At at) const { return std::string(base::trimmed(document_.get(n, at))); }

  std::optional<measure::Amount> amount(Node n, At at, measure::Kinds kinds) const {
    const std::string_view written = base::trimmed(document_.get(n, at));
    if (written.empty()) return std::nullopt;
    auto read = measure::read_amount(written, kinds, out_.reading);
    if (!read || !read->has_figure()) return std::nullopt;
    return *std::move(read);
  }

  std::optional<measure::Amount> temperature(Node n, At at) const {
    auto read = amount(n, at, measure::temperature_kinds);
    return read && read->form == measure::Amount::Form::exact ? read : std::nullopt;
  }

  std::optional<double> number(Node n, At at) const {
    const auto read = measure::read_number(base::trimmed(document_.get(n, at)), out_.reading);
    if (!read) return std::nullopt;
    return read->approximate();
  }

  std::optional<base::Ratio> share(Node n, At at) const {
    const auto read = measure::read_share(base::trimmed(document_.get(n, at)), out_.reading);
    if (!read || read->form != measure::Share::Form::fraction) return std::nullopt;
    return read->fraction;
  }

  std::optional<double> percent(Node n, At at) const {
    const auto read = share(n, at);
    return read ? std::optional(100 * read->approximate()) : std::nullopt;
  }

  const Document& document_;
  Kitchen out_;
  bool scales_stated_ = false;
  bool of_kitchen_ = true;  ///< else a plugin's manifest
};

}  // namespace

Kitchen read_kitchen(std::shared_ptr<const Document> document) { return Reader(std::move(document)).read(); }

void add_to_kitchen(Kitchen& kitchen, const Document& manifest) { kitchen = Reader(manifest, std::move(kitchen)).read_more(); }

}  // namespace tamis::fiche
