#include "core/measure/unit_reader.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/measure/name_index.h"
#include "core/measure/write.h"

namespace tamis::measure {
namespace {

/// Some entries of one name. There are few; a name with more would be a fault of the table (tables_test counts them).
class Entries {
 public:
  static constexpr std::size_t most = 16;
  void push_back(const NameEntry* entry) {
    if (count_ < most) held_[count_++] = entry;
  }
  [[nodiscard]] bool empty() const { return count_ == 0; }
  [[nodiscard]] const NameEntry* front() const { return held_[0]; }
  [[nodiscard]] const NameEntry* const* begin() const { return held_; }
  [[nodiscard]] const NameEntry* const* end() const { return held_ + count_; }

 private:
  const NameEntry* held_[most] = {};
  std::size_t count_ = 0;
};

constexpr Kind all_kinds[] = {Kind::mass, Kind::volume,      Kind::length,                Kind::count,
                              Kind::time, Kind::temperature, Kind::temperature_difference};

Entries of_language(std::span<const NameEntry> entries, std::string_view written, std::string_view language) {
  Entries own;
  Entries english;
  Entries ids;
  for (const NameEntry& entry : entries) {
    if (!entry.stands_for(written, language)) continue;
    const bool at_home = !entry.id && (entry.language.empty() || entry.language == language);
    (entry.id ? ids : at_home ? own : english).push_back(&entry);
  }
  return !own.empty() ? own : !english.empty() ? english : ids;
}

/// Those of the first wanted kind; none when no entry is of a wanted kind.
Entries of_kind(const Entries& entries, Kinds wanted) {
  Entries kept;
  for (const NameEntry* entry : entries) {
    if (!wants(wanted, entry->unit->kind)) continue;
    if (kept.empty() || kept.front()->unit->kind == entry->unit->kind) kept.push_back(entry);
  }
  return kept;
}

const Unit* the_only(const Entries& entries) {
  const Unit* unit = entries.empty() ? nullptr : entries.front()->unit;
  for (const NameEntry* entry : entries) {
    if (entry->unit != unit) return nullptr;
  }
  return unit;
}

const Unit* by_system(const Entries& entries, System system) {
  Entries kept;
  for (const NameEntry* entry : entries) {
    if (belongs_to(*entry->unit, system)) kept.push_back(entry);
  }
  if (const Unit* unit = the_only(kept)) return unit;
  if (!kept.empty()) return nullptr;
  for (const NameEntry* entry : entries) {
    if (entry->usual) return entry->unit;
  }
  return nullptr;
}

base::Finding refusal(std::string_view rule, std::size_t end, std::string message, std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.where = {0, static_cast<std::uint32_t>(end)};
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  return finding;
}

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

/// "236.6 ml in US customary measure"
std::string meaning(const Unit& unit) {
  if (unit.kind == Kind::temperature) return std::string(written_name(unit, "en", false));
  const std::string base = unit.kind == Kind::mass ? " g" : unit.kind == Kind::length ? " mm" : " ml";
  Writing plain;
  plain.fractions = false;
  plain.digits = 4;
  return write_number(unit.to_base, plain) + base + " in " + std::string(system_name(unit.system)) + " measure";
}

std::string joined(const std::vector<std::string>& parts, std::string_view last) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) out += i + 1 == parts.size() ? std::string(last) : ", ";
    out += parts[i];
  }
  return out;
}

base::Finding ambiguous(std::string_view name, const Entries& entries) {
  std::vector<std::string> meanings;
  for (const NameEntry* entry : entries) {
    std::string one = meaning(*entry->unit);
    if (std::find(meanings.begin(), meanings.end(), one) == meanings.end()) meanings.push_back(std::move(one));
  }
  const bool temperature = entries.front()->unit->kind == Kind::temperature;
  const bool mass = entries.front()->unit->kind == Kind::mass;
  return refusal("ambiguous-unit", name.size(),
                 quoted(name) + " can mean " + joined(meanings, " or ") + "; nothing says which",
                 temperature ? "write °C or °F"
                             : std::string("say whose measure it is (units us, imperial or metric), or write ") +
                                   (mass ? "grams" : "millilitres"));
}

base::Finding wrong_kind(std::string_view name, Kind kind, Kinds wanted) {
  return refusal("wrong-kind", name.size(),
                 quoted(name) + " measures " + std::string(kind_name(kind)) + "; " + kinds_text(wanted) +
                     " was expected",
                 "");
}

/// "in" is an inch where a figure's unit can stand and a preposition where a sentence goes on.
bool is_preposition(std::string_view name, std::string_view after) {
  if (name != "in" && name != "In") return false;
  if (after.size() < 2 || after[0] != ' ') return false;
  std::size_t end = 1;
  while (end < after.size() && ((after[end] >= 'a' && after[end] <= 'z') || after[end] == '-')) ++end;
  if (end == 1) return false;
  static constexpr std::string_view of_lengths[] = {
      "deep", "wide",   "long",   "thick", "high",     "tall",    "square", "round", "cubes", "pieces", "slices",
      "dice", "strips", "rounds", "discs", "diameter", "lengths", "apart",  "by",    "x",     "to",     "or",
      "tin",  "tins",   "pan",    "pans",  "ring",     "rings",   "mould",  "frame", "cake",  "and",    "across"};
  const std::string_view word = after.substr(1, end - 1);
  return std::find(std::begin(of_lengths), std::end(of_lengths), word) == std::end(of_lengths);
}

bool goes_on(std::string_view after_stop) {
  std::size_t at = 0;
  while (at < after_stop.size() && after_stop[at] == ' ') ++at;
  if (at == 0 || at == after_stop.size()) return false;
  const char c = after_stop[at];
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '(' || static_cast<unsigned char>(c) >= 0xC0;
}

/// In a sentence, a name of one or two letters is taken for a unit only where the language itself has it.
bool too_short_abroad(std::string_view name, const Entries& entries, std::string_view language) {
  const NameEntry& entry = *entries.front();
  return !entry.language.empty() && entry.language != language && base::count_scalars(name) <= 2;
}

/// The letters, digits and signs up to a space or a comma.
std::string_view first_word(std::string_view text) {
  constexpr std::size_t longest = 48;
  std::size_t at = 0;
  while (at < text.size() && at < longest) {
    std::size_t next = at;
    const auto c = base::next_scalar(text, next);
    if (!c || base::is_space(*c) || *c == U',' || *c == U';' || *c == U'(') break;
    at = next;
  }
  return text.substr(0, at);
}

/// Short names lie close together ("flour" is not far from "floz"), so a short word must be nearer.
std::string_view near_enough(std::string_view word, std::span<const std::string_view> names) {
  const std::string_view near = base::nearest(word, names);
  const std::size_t letters = base::count_scalars(word);
  const bool far = letters <= 5 && base::edit_distance(base::lower(word), base::lower(near), 1) > 1;
  return far ? std::string_view() : near;
}

std::string example_of(Kinds wanted) {
  std::vector<std::string> examples;
  const auto add = [&](Kind kind, std::string_view unit) {
    if (wants(wanted, kind)) examples.emplace_back(unit);
  };
  add(Kind::mass, "g");
  add(Kind::volume, "ml");
  add(Kind::length, "cm");
  add(Kind::time, "min");
  add(Kind::temperature, "°C");
  return examples.empty() ? "write a plain number" : "write a unit such as " + joined(examples, " or ");
}

}  // namespace

bool wants(Kinds wanted, Kind kind) { return (wanted & set_of(kind)) != 0; }

std::string kinds_text(Kinds wanted) {
  std::vector<std::string> names;
  for (const Kind kind : all_kinds) {
    if (wants(wanted, kind)) names.emplace_back(kind_name(kind));
  }
  return joined(names, " or ");
}

UnitFound scan_unit(std::string_view text, Kinds wanted, const Reading& reading, bool in_sentence) {
  const std::string language = primary_language(reading.language);
  const NameMatch match = match_name(text, language);
  UnitFound found;
  if (match.used == 0) return found;
  const std::string_view name = text.substr(0, match.used);
  const std::string_view after = text.substr(match.used);
  const Entries named = of_language(match.entries, name, language);
  if (in_sentence && (is_preposition(name, after) || too_short_abroad(name, named, language))) return found;
  found.used = match.used;
  const bool stop = takes_stop(name) && after.starts_with('.') && (!in_sentence || goes_on(after.substr(1)));
  if (stop) ++found.used;
  const Entries fitting = of_kind(named, wanted);
  if (fitting.empty()) {
    found.fault = wrong_kind(name, named.front()->unit->kind, wanted);
    return found;
  }
  found.unit = the_only(fitting);
  if (found.unit == nullptr) found.unit = by_system(fitting, reading.system);
  if (found.unit == nullptr) found.fault = ambiguous(name, fitting);
  return found;
}

base::Finding unknown_unit(std::string_view text, Kinds wanted, const Reading& reading) {
  const std::string_view word = first_word(text);
  const std::string language = primary_language(reading.language);
  const std::vector<std::string_view> names = names_for(wanted, language);
  const std::string_view near = near_enough(word, names);
  return refusal("unknown-unit", word.size(), quoted(word) + " is no unit of " + kinds_text(wanted),
                 near.empty() ? example_of(wanted) : "did you mean " + quoted(near) + "?");
}

}  // namespace tamis::measure
