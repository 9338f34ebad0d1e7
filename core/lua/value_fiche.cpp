// The fiche (api.inc).
#include <lua.h>

#include "core/base/utf8.h"
#include "core/format/format.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"
#include "core/lua/walk.h"

namespace tamis::lua {
namespace {

constexpr std::size_t most_findings = 1000;
constexpr std::size_t most_words = 2000;  // bytes of one message or advice
constexpr std::size_t most_places = 100;  // of one finding: related ones, or those that it mends

int push_system(lua_State* state, measure::System system) {
  switch (system) {
    case measure::System::metric: push(state, "metric"); break;
    case measure::System::us: push(state, "us"); break;
    case measure::System::imperial: push(state, "imperial"); break;
    default: lua_pushnil(state);
  }
  return 1;
}

/// Findings are kept outside of Lua's memory: they have a bound of their own.
void keep(lua_State* state, std::size_t bytes) {
  constexpr std::size_t most_told = std::size_t{4} << 20U;
  spend(state, 8 + bytes / 8);
  Session& session = session_of(state);
  session.told += bytes;
  if (session.told > most_told) raise(state, "the findings of one call come to more than 4 MB");
}

/// One line, no longer than a finding may be, without what is not UTF-8.
std::string message_at(lua_State* state, int index) {
  std::string_view words = string_at(state, index, "");
  if (words.size() > most_words) words = words.substr(0, most_words);
  if (const std::size_t bad = base::find_invalid_utf8(words); bad != std::string_view::npos)
    words = words.substr(0, bad);
  return plain_words(words);
}

fiche::Node title_of(const fiche::Document& document) {
  const fiche::Node title = document.child(document.root(), fiche::El::title);
  return title == fiche::none ? document.root() : title;
}

}  // namespace

int fiche_id(lua_State* state) {
  push(state, fiche_at(state, 1).fiche().id);
  return 1;
}

int fiche_title(lua_State* state) {
  const fiche::Document& document = fiche_at(state, 1).document();
  const fiche::Node title = document.child(document.root(), fiche::El::title);
  push(state, title == fiche::none ? "" : plain_words(document.all_text(title)));
  return 1;
}

int fiche_language(lua_State* state) {
  push(state, fiche_at(state, 1).fiche().reading.language);
  return 1;
}

int fiche_system(lua_State* state) { return push_system(state, fiche_at(state, 1).fiche().reading.system); }

int fiche_path(lua_State* state) {
  push(state, fiche_at(state, 1).path());
  return 1;
}

int fiche_root(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  push_element(state, opened, opened.document().root());
  return 1;
}

int fiche_mass(lua_State* state) {
  push_mass(state, fiche_at(state, 1).flow().whole.out);
  return 1;
}

int fiche_components(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_elements(state, opened, opened.fiche().components);
}

int fiche_ingredients(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_list(state, opened.fiche().ingredients,
                   [&](const fiche::Ingredient& one) { push_element(state, opened, one.node); });
}

int fiche_steps(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_list(state, opened.fiche().steps, [&](const fiche::Step& one) { push_element(state, opened, one.node); });
}

int fiche_yields(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_elements(state, opened, opened.fiche().yields);
}

int fiche_all(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  const WantedKinds wanted(state, 2);
  return push_elements(state, opened, elements_below(state, opened.document(), opened.document().top(), wanted));
}

int fiche_select(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  return push_selected(state, opened, opened.document().root(), 2);
}

int fiche_find(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  const auto& ids = opened.fiche().ids;
  const auto found = ids.find(string_at(state, 2));
  push_element(state, opened, found == ids.end() ? fiche::none : found->second);
  return 1;
}

int fiche_things(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  int index = -1;
  return push_list(state, opened.flow().things,
                   [&](const flow::Thing&) { push_indexed(state, Type::thing, opened, ++index); });
}

int fiche_open(lua_State* state) {
  constexpr std::size_t cost = 100'000;  // a file is read
  Opened& opened = fiche_at(state, 1);
  const std::string_view reference = string_at(state, 2);
  spend(state, cost);
  Session& session = opened.session();
  const auto got = session.library.open(opened.path(), reference.substr(0, reference.find('#')));
  if (got && (*got)->el((*got)->root()) == fiche::El::fiche) {
    push_fiche(state, session.open(*got));
    return 1;
  }
  lua_pushnil(state);
  push(state, got ? "it is no fiche" : got.fault().message);
  return 2;
}

int fiche_library(lua_State* state) {
  constexpr std::size_t cost = 100'000;  // folders are read
  constexpr std::size_t cost_of_one = 100;
  Opened& opened = fiche_at(state, 1);
  spend(state, cost);
  const std::vector<std::string> references = opened.session().library.list(opened.path());
  spend(state, references.size() * cost_of_one);
  return push_list(state, references, [state](const std::string& one) { push(state, one); });
}

int fiche_say(lua_State* state) {
  Opened& opened = fiche_at(state, 1);
  Session& session = opened.session();
  if (!opened.given) raise(state, "findings are about the fiche at hand; another one can be a related place");
  if (opened.findings.size() >= most_findings)
    raise(state, "more than " + std::to_string(most_findings) + " findings in one fiche");
  base::Finding made;
  if (lua_isnil(state, 2)) {
    made.where = opened.document().head_span(title_of(opened.document()));
  } else {
    const PlaceValue place = place_at(state, 2);
    if (place.opened != &opened) raise(state, "the place is in another file");
    made.where = place.where;
  }
  made.rule = session.adding->id;
  made.severity = session.severity;
  made.message = message_at(state, 3);
  made.advice = message_at(state, 4);
  made.source = session.source;
  if (made.message.empty()) raise(state, "a finding without a message");
  keep(state, made.message.size() + made.advice.size());
  opened.findings.push_back(std::move(made));
  push_indexed(state, Type::finding, opened, static_cast<int>(opened.findings.size()) - 1);
  return 1;
}

int finding_also(lua_State* state) {
  const IndexValue& value = indexed_at(state, 1, Type::finding);
  const PlaceValue place = place_at(state, 2);
  base::Finding& finding = value.opened->findings[static_cast<std::size_t>(value.index)];
  if (finding.related.size() >= most_places) raise(state, "more than " + std::to_string(most_places) + " related places");
  base::Related related;
  related.where = place.where;
  related.message = message_at(state, 3);
  if (place.opened != value.opened) {
    const base::Source& source = place.opened->document().source();
    related.path = source.path();
    related.place = source.place(place.where.begin);
    related.end = source.place(place.where.end);
  }
  keep(state, related.message.size() + related.path.size() + sizeof related);
  finding.related.push_back(std::move(related));
  lua_settop(state, 1);
  return 1;
}

int finding_mend(lua_State* state) {
  const IndexValue& value = indexed_at(state, 1, Type::finding);
  const PlaceValue place = place_at(state, 2);
  const std::string_view words = string_at(state, 3);
  if (place.opened != value.opened) raise(state, "the place is in another file");
  if (!place.value) raise(state, "mend takes the place of a text, of bytes in it, or of the value of an attribute");
  check_words(state, words);
  keep(state, words.size());
  const fiche::Spelling spelling = place.opened->document().spelling();
  base::Finding& finding = value.opened->findings[static_cast<std::size_t>(value.index)];
  if (finding.edits.size() >= most_places) raise(state, "more than " + std::to_string(most_places) + " mends in one finding");
  for (const base::Edit& edit : finding.edits)
    if (edit.where == place.where || (edit.where.begin < place.where.end && place.where.begin < edit.where.end))
      raise(state, "the finding mends this place already");
  finding.edits.push_back({place.where, format::escaped(words, spelling, place.in_attribute)});
  lua_settop(state, 1);
  return 1;
}

}  // namespace tamis::lua
