#include "core/rules/foam.h"

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/gate_steps.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// The word before a mark and the one behind it: "the whipped <use>", "la <use> montée".
std::string words_beside(const Check& check, fiche::Node mark) {
  std::string out;
  if (mark == fiche::none) return out;
  const fiche::Document& document = check.document;
  if (const fiche::Node n = document.previous(mark); n != fiche::none && document.kind(n) == fiche::NodeKind::text) {
    const std::string_view text = base::trimmed(document.value(n));
    out += text.substr(text.find_last_of(" \n") + 1);
  }
  if (const fiche::Node n = document.next(mark); n != fiche::none && document.kind(n) == fiche::NodeKind::text) {
    const std::string_view text = base::trimmed(document.value(n));
    out += " " + std::string(text.substr(0, text.find_first_of(" .,;\n")));
  }
  return base::lower(out);
}

}  // namespace

bool says_whipped(std::string_view words) {
  return base::says(
      words, {"whipped", "beaten", "whisked", "fouett", "monté", "battu", "geschlagen", "aufgeschlagen", "montad", "batid"});
}

bool is_foam(const Check& check, const flow::Use& use, const flow::State& state) {
  const unsigned kinds = food_kinds(check).things[at(use.thing)];
  const bool can_hold_air =
      (kinds & (kind::cream | kind::egg)) != 0 && (kinds & (kind::chocolate | kind::any_gelatine | kind::unknown)) == 0;
  if (!can_hold_air) return false;
  if (state.air == flow::Action::Air::in) return true;
  const flow::Thing& thing = check.flow.things[at(use.thing)];
  if (thing.ingredient < 0) return false;
  if (does(check, use.step, {"whip"}) || says_whipped(words_beside(check, use.mark))) return true;
  const std::string words = std::string(check.document.get(thing.node, fiche::At::prep)) + " " + std::string(thing.name);
  return says_whipped(words);
}

}  // namespace tamis::rules
