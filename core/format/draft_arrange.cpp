#include "core/format/draft_arrange.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/format/draft_ingredient.h"
#include "core/format/draft_titles.h"
#include "core/format/draft_yield.h"
#include "core/food/food.h"

namespace tamis::format::draft {
namespace {

enum class Region : unsigned char { front, ingredients, method, notes };

constexpr std::size_t most_bare_heading_words = 4;  // a heading without mark, colon or capitals
constexpr std::size_t most_ingredient_words = 14;
constexpr std::size_t wrapped_line = 50;            // bytes: a line this long may go on in the next one

class Arranger {
 public:
  Arranger(Desk& desk, const std::vector<Line>& lines) : desk_(desk), lines_(lines), titles_(desk.lexicon) {}

  Recipe run() {
    take_title();
    for (; at_ < lines_.size(); ++at_) {
      if (!lines_[at_].blank()) place(lines_[at_]);
    }
    return std::move(recipe_);
  }

 private:
  [[nodiscard]] const Lexicon& words() const { return desk_.lexicon; }
  [[nodiscard]] bool blank_before() const { return at_ == 0 || lines_[at_ - 1].blank(); }
  [[nodiscard]] const Line* next_line() const {  ///< right below; null when blank or none
    return at_ + 1 < lines_.size() && !lines_[at_ + 1].blank() ? &lines_[at_ + 1] : nullptr;
  }
  [[nodiscard]] const Line* next_typed() const {  ///< the next that is not blank
    for (std::size_t i = at_ + 1; i < lines_.size(); ++i) {
      if (!lines_[i].blank()) return &lines_[i];
    }
    return nullptr;
  }

  // ---- the title

  void take_title() {
    while (at_ < lines_.size() && lines_[at_].blank()) ++at_;
    if (at_ == lines_.size()) return;
    const Line& line = lines_[at_];
    const bool section = words().is(Set::section_ingredients, line.words) || words().is(Set::section_method, line.words);
    if (line.words.empty() || section || (starts_with_amount(desk_, line) && line.words.size() < 8 && line.numbered == false && next_is_amount())) {
      recipe_.title = "Untitled";
      desk_.ask(line.whole, "no title: what is the dish called?");
      return;
    }
    recipe_.title = desk_.folded(line.text);
    ++at_;
  }

  [[nodiscard]] bool next_is_amount() const {
    const Line* next = next_typed();
    return next != nullptr && starts_with_amount(desk_, *next);
  }

  // ---- one line

  void place(const Line& line) {
    if (line.words.empty()) return place_signs(line);
    if (take_section(line) || take_day(line)) return;
    if (region_ == Region::notes && !line.marked) return take_note(line);
    if (words().match(Set::note_opens, line.words, 0) > 0 && !starts_with_amount(desk_, line) && opens_note(line)) return take_note(line);
    if (!line.numbered && take_yield(line)) return;
    if (is_heading(line)) return take_heading(line);
    if (is_ingredient(line)) return take_ingredient(line);
    if (is_step(line)) return take_step(line);
    take_remark(line);
  }

  /// Rows of dashes and the like part a text; anything else is kept.
  void place_signs(const Line& line) {
    const std::string_view text = desk_.slice(line.whole);
    const bool rule = text.find_first_not_of("-=*_~# .") == std::string_view::npos;
    if (!rule && !line.numbered) take_remark(line);
    if (line.numbered) number_alone_ = true;
  }

  [[nodiscard]] bool opens_note(const Line& line) const {
    const std::size_t used = words().match(Set::note_opens, line.words, 0);
    if (used == line.words.size()) return line.colon;
    const base::Span gap{line.words[used - 1].where.end, line.words[used].where.begin};
    return desk_.slice(gap).find(':') != std::string_view::npos || action_free(line);
  }
  [[nodiscard]] bool action_free(const Line& line) const { return !starts_with_verb(desk_, line) && !line.numbered; }

  bool take_section(const Line& line) {
    if (line.numbered || line.bullet) return false;
    if (words().is(Set::section_ingredients, line.words)) return open_section(Region::ingredients, {});
    if (words().is(Set::section_method, line.words)) return open_section(Region::method, line.text);
    if (words().is(Set::section_notes, line.words) && (line.colon || line.marked || next_line() != nullptr)) {
      return open_section(Region::notes, {});
    }
    return take_section_with_rest(line);
  }

  /// "Method: melt the butter", "Ingredients (serves 4)".
  bool take_section_with_rest(const Line& line) {
    const std::size_t list = words().match(Set::section_ingredients, line.words, 0);
    const std::size_t method = words().match(Set::section_method, line.words, 0);
    const std::size_t used = std::max(list, method);
    if (used == 0 || used >= line.words.size()) return false;
    const std::string_view gap = desk_.slice({line.words[used - 1].where.end, line.words[used].where.begin});
    if (gap.find_first_of(":(-\xE2") == std::string_view::npos && !(list > 0 && yield_behind(line, used))) return false;
    open_section(list > 0 ? Region::ingredients : Region::method, {line.words[0].where.begin, line.words[used - 1].where.end});
    Line rest = line;
    rest.text.begin = line.words[used].where.begin;
    rest.words.erase(rest.words.begin(), rest.words.begin() + static_cast<std::ptrdiff_t>(used));
    while (rest.text.end > rest.words.back().where.end && desk_.text[rest.text.end - 1] == ')') --rest.text.end;
    if (list == 0) {
      take_step(rest);
    } else if (!take_yield(rest)) {
      take_remark(rest);
    }
    return true;
  }
  [[nodiscard]] bool yield_behind(const Line& line, std::size_t used) const {
    return read_yield(desk_, {line.words[used].where.begin, line.text.end}).has_value();
  }

  bool open_section(Region region, base::Span typed) {
    region_ = region;
    if (region == Region::method) method_word_ = typed;
    if (region == Region::ingredients && !headed_) current_ = none;
    return true;
  }

  bool take_day(const Line& line) {
    const std::size_t used = words().match(Set::day, line.words, 0);
    if (used == 0 || line.words.size() < 2 || !line.words[used].figure() || line.words[used].text.size() > 2) return false;
    if (line.words[used].text.find_first_not_of("0123456789") != std::string::npos || line.numbered) return false;
    if (line.words.size() > most_heading_words || line.stop) return false;
    day_ = line.words[used].text;
    if (line.words.size() == used + 1) return true;
    Line rest = line;
    rest.text.begin = line.words[used + 1].where.begin;
    rest.words.erase(rest.words.begin(), rest.words.begin() + static_cast<std::ptrdiff_t>(used + 1));
    const DraftComponent* known = component_named(desk_.folded(rest.text));
    if (known != nullptr || words().match(Set::heading_for_strong, rest.words, 0) > 0 || next_is_amount()) {
      take_heading(rest);
    } else {
      note(rest.text);
    }
    return true;
  }

  bool take_yield(const Line& line) {
    if (region_ == Region::method && !line.bullet && starts_with_verb(desk_, line)) return false;
    base::Span where = line.text;
    std::optional<DraftYield> made = read_yield(desk_, where);
    if (!made) return false;
    const bool own = headed_ && current_ != none && recipe_.components[current_].steps.empty();
    add_yield(own ? recipe_.components[current_].yields : recipe_.yields, std::move(*made));
    return true;
  }

  // ---- headings

  [[nodiscard]] bool is_heading(const Line& line) const {
    if (line.marked) return true;
    if (line.numbered || line.words.size() > most_heading_words || (line.stop && !line.colon)) return false;
    if (line.bullet && !line.colon) return false;
    const std::size_t lead = words().match(Set::heading_for_strong, line.words, 0);
    if (lead > 0 && lead < line.words.size() && (line.colon || heading_fits(line))) return true;
    if (line.figures && !line.colon) return false;
    if (line.colon && line.words.size() <= 6) return !line.figures || !starts_with_amount(desk_, line);
    if (line.capitals && line.words.size() <= 6 && !line.bullet) return true;
    return bare_heading(line);
  }

  [[nodiscard]] bool heading_fits(const Line& line) const {
    return line.words.size() <= 6 && !line.figures && blank_or_step_before() && next_typed() != nullptr;
  }
  [[nodiscard]] bool blank_or_step_before() const { return blank_before() || last_was_step_ || at_start_; }

  /// "Sponge" alone on its line, over a list or a method.
  [[nodiscard]] bool bare_heading(const Line& line) const {
    if (line.words.size() > most_bare_heading_words || line.bullet) return false;
    const Line* below = next_typed();
    if (below == nullptr) return false;
    if (words().is(Set::assembly, line.words)) return true;
    if (component_named(desk_.folded(line.text)) != nullptr && region_ == Region::method) return true;
    if (starts_with_verb(desk_, line) || desk_.slice(line.text).find(',') != std::string_view::npos) return false;
    if (!blank_or_step_before()) return false;
    const bool over_list = starts_with_amount(desk_, *below) || ends_with_amount(desk_, *below) || below->bullet;
    const bool over_step = region_ == Region::method &&
                           (below->numbered || starts_with_verb(desk_, *below) || below->words.size() > 5);
    if (over_list && next_line() != nullptr) return true;
    return (over_list || over_step) && food_named(line).empty();
  }

  [[nodiscard]] std::string food_named(const Line& line) const {
    const auto matches = food::look_up(desk_.folded(line.text), words().language() == "fr" ? "fr" : "en", 1);
    return matches.empty() || matches[0].how != food::Match::How::exact ? std::string() : std::string(matches[0].food->id);
  }

  static constexpr std::size_t none = Titles::none;

  [[nodiscard]] const DraftComponent* component_named(const std::string& title) const {
    const std::size_t found = titles_.find(recipe_, title);
    return found == none ? nullptr : &recipe_.components[found];
  }

  void take_heading(const Line& line) {
    std::string title = heading_title(desk_, line);
    last_was_step_ = last_was_ingredient_ = false;
    if (title.empty()) return;
    headed_ = true;
    const std::size_t known = titles_.find(recipe_, title);
    if (known != none && (region_ == Region::method || recipe_.components[known].steps.empty())) {
      current_ = known;
      if (region_ != Region::method && !recipe_.components[known].ingredients.empty()) region_ = Region::method;
      if (slug(title, most_heading_words) != slug(recipe_.components[known].title, most_heading_words)) note(line.text);
      return;
    }
    open_component(std::move(title), line.text);
    titles_.remember(recipe_, current_);
    if (region_ != Region::method || !steps_behind(line)) region_ = Region::front;
  }

  /// In a method, what stands below a heading is a step unless it reads as an ingredient.
  [[nodiscard]] bool steps_behind(const Line&) const {
    const Line* below = next_typed();
    return below != nullptr && (below->numbered || (!starts_with_amount(desk_, *below) && !ends_with_amount(desk_, *below)));
  }

  void open_component(std::string title, base::Span heading) {
    DraftComponent component;
    component.title = std::move(title);
    component.heading = heading;
    component.day = day_;
    recipe_.components.push_back(std::move(component));
    current_ = recipe_.components.size() - 1;
  }

  DraftComponent& current() {
    if (current_ == none) {
      open_component(recipe_.title, {});
      recipe_.components.back().own_title = false;
    }
    return recipe_.components[current_];
  }

  // ---- ingredients

  [[nodiscard]] bool is_ingredient(const Line& line) const {
    if (line.words.size() > most_ingredient_words && line.stop) return false;
    const bool amount = starts_with_amount(desk_, line) || (ends_with_amount(desk_, line) && line.words.size() <= 7);
    if (region_ == Region::method) {
      return amount && !line.numbered && !line.stop && line.words.size() <= 10 && !starts_with_verb(desk_, line) &&
             !has_verb(desk_, line) && !number_alone_;
    }
    if (starts_with_verb(desk_, line)) return false;
    if (amount) return line.words.size() <= 2 * most_ingredient_words;
    if (line.words.size() > 9 || line.stop) return false;
    if (region_ == Region::ingredients) return line.bullet || !line.numbered;
    return headed_and_listed(line);
  }

  /// Without a figure and without a word over it, a line is an ingredient when those around it are.
  [[nodiscard]] bool headed_and_listed(const Line& line) const {
    if (line.numbered || last_was_step_) return false;
    const Line* below = next_line();
    const bool list_below = below != nullptr && (starts_with_amount(desk_, *below) || ends_with_amount(desk_, *below));
    return (last_was_ingredient_ && !blank_before()) || (list_below && headed_) || (line.bullet && headed_);
  }

  void take_ingredient(const Line& line) {
    if (region_ == Region::method && !current_has_steps_only()) region_ = Region::ingredients;
    if (region_ == Region::front) region_ = Region::ingredients;
    for (DraftIngredient& made : read_ingredients(desk_, line.text)) current().ingredients.push_back(std::move(made));
    last_was_ingredient_ = true;
    last_was_step_ = at_start_ = false;
  }
  [[nodiscard]] bool current_has_steps_only() const {
    return current_ != none && recipe_.components[current_].ingredients.empty() && !recipe_.components[current_].steps.empty();
  }

  // ---- steps

  [[nodiscard]] bool is_step(const Line& line) const {
    if (line.numbered || region_ == Region::method || number_alone_) return true;
    if (starts_with_verb(desk_, line)) return true;
    const bool begun = headed_ || !recipe_.components.empty();
    return begun && has_verb(desk_, line);
  }

  /// A line that breaks off: behind a comma, "and", "the".
  [[nodiscard]] bool left_open(const Line& line) const {
    const std::string_view text = desk_.slice(line.whole);
    return text.ends_with(',') || line.words.empty() || words().match(Set::goes_on, line.words, line.words.size() - 1) > 0;
  }

  /// A line goes on with the step before it: it has no number where that one had, or was cut at the margin.
  [[nodiscard]] bool continues(const Line& line) const {
    if (!last_was_step_ || blank_before() || line.numbered || line.bullet || at_ == 0) return false;
    const Line& before = lines_[at_ - 1];
    if (last_step_numbered_) return true;
    const std::string_view text = desk_.slice(line.text);
    const bool small = !text.empty() && text[0] >= 'a' && text[0] <= 'z';
    if (starts_with_verb(desk_, line) && !left_open(before)) return false;
    return small && !before.stop && before.whole.end - before.whole.begin >= wrapped_line;
  }

  void take_step(const Line& line) {
    if (continues(line) && current_ != none && !recipe_.components[current_].steps.empty()) {
      DraftStep& step = recipe_.components[current_].steps.back();
      step.text.end = line.whole.end;
      return;
    }
    region_ = Region::method;
    open_whole_method();
    DraftStep step;
    step.text = {line.text.begin, line.whole.end};
    DraftComponent& component = current();
    if (component.day != day_) step.day = day_;
    component.steps.push_back(std::move(step));
    last_was_step_ = true;
    last_was_ingredient_ = number_alone_ = at_start_ = false;
    last_step_numbered_ = line.numbered;
  }

  /// Several lists and no step yet: the method is told in one go, for all of them.
  void open_whole_method() {
    if (any_step_) return;
    any_step_ = true;
    std::size_t lists = 0;
    for (const DraftComponent& component : recipe_.components) lists += component.ingredients.empty() ? 0U : 1U;
    if (lists < 2 || current_ == none || recipe_.components[current_].ingredients.empty()) return;
    if (current_ + 1 != recipe_.components.size()) return;
    const bool typed = !method_word_.empty();
    open_component(typed ? desk_.folded(method_word_) : recipe_.title, method_word_);
    recipe_.components.back().whole_method = true;
    recipe_.components.back().own_title = false;
  }

  // ---- remarks

  void note(base::Span where) {
    if (current_ == none) {
      recipe_.notes.push_back(where);
    } else {
      recipe_.components[current_].notes.push_back(where);
    }
  }

  void take_note(const Line& line) {
    if (region_ == Region::notes) {
      recipe_.notes.push_back(line.text);
    } else {
      note(line.text);
    }
    last_was_step_ = last_was_ingredient_ = false;
  }

  void take_remark(const Line& line) {
    if (recipe_.components.empty() && recipe_.summary.empty() && !line.words.empty()) {
      recipe_.summary.push_back(line.text);
      return;
    }
    note(line.text);
    desk_.ask(line.whole, "what is this line? it is kept as a note");
    last_was_step_ = last_was_ingredient_ = false;
  }

  Desk& desk_;
  const std::vector<Line>& lines_;
  Recipe recipe_;
  std::size_t at_ = 0;
  Region region_ = Region::front;
  std::size_t current_ = none;      ///< component
  std::string day_;
  base::Span method_word_;
  Titles titles_;
  bool any_step_ = false;
  bool headed_ = false;
  bool at_start_ = true;            ///< no ingredient or step yet
  bool last_was_step_ = false, last_step_numbered_ = false, last_was_ingredient_ = false;
  bool number_alone_ = false;       ///< "Step 1" stood on a line of its own
};

}  // namespace

Recipe arrange(Desk& desk, const std::vector<Line>& lines) { return Arranger(desk, lines).run(); }

}  // namespace tamis::format::draft
