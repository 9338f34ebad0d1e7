#include "core/lua/session.h"

#include <lua.h>

#include <algorithm>
#include <cassert>
#include <cstring>

#include "core/lua/meter.h"
#include "core/lua/selecting.h"

namespace tamis::lua {
namespace {

template <class List>
std::vector<std::pair<fiche::Node, std::size_t>> places_of(const List& list) {
  std::vector<std::pair<fiche::Node, std::size_t>> places;
  places.reserve(list.size());
  for (std::size_t i = 0; i < list.size(); ++i) places.emplace_back(list[i].node, i);
  std::sort(places.begin(), places.end());
  return places;
}

std::size_t place_in(const std::vector<std::pair<fiche::Node, std::size_t>>& places, fiche::Node node) {
  const auto found = std::lower_bound(places.begin(), places.end(), std::pair(node, std::size_t{0}));
  return found == places.end() || found->first != node ? places.size() : found->second;
}

}  // namespace

Opened::Opened(Session& session, std::shared_ptr<const fiche::Document> document)
    : session_(session), kept_(std::move(document)), document_(kept_.get()) {}

Opened::Opened(Session& session, const fiche::Fiche& fiche, const flow::Flow& flow)
    : session_(session), document_(fiche.document), fiche_(&fiche), flow_(&flow) {}

Opened::Opened(Session& session, fiche::Document& editable)
    : session_(session), document_(&editable), editable_(&editable) {}

Opened::~Opened() = default;

fiche::Document& Opened::edit() {
  assert(editable_ != nullptr);
  ++reading_;
  states_.reset();
  makeup_.reset();
  selecting_.reset();
  own_flow_.reset();
  own_fiche_.reset();
  fiche_ = nullptr;
  flow_ = nullptr;
  found_ = false;
  return *editable_;
}

/// For what is read on behalf of a call, again after every edit: some steps of Lua a byte, as measured.
void Opened::pay(std::size_t steps_a_byte) const {
  if (session_.payer == nullptr) return;
  const std::size_t written = editable_ == nullptr ? 0 : session_.written;
  spend(session_.payer, steps_a_byte * (document_->source().bytes().size() + written));
}

const fiche::Fiche& Opened::fiche() {
  if (fiche_ == nullptr) {
    pay(2);
    own_fiche_ = std::make_unique<fiche::Fiche>(fiche::read_fiche(*document_, session_.kitchen));
    fiche_ = own_fiche_.get();
  }
  return *fiche_;
}

const flow::Flow& Opened::flow() {
  if (flow_ == nullptr) {
    pay(2);
    own_flow_ = std::make_unique<flow::Flow>(flow::read_flow(fiche(), session_.library));
    flow_ = own_flow_.get();
  }
  return *flow_;
}

const flow::States& Opened::states() {
  if (states_ == nullptr) {
    pay(6);
    states_ = std::make_unique<flow::States>(flow::read_states(fiche(), flow(), session_.library));
  }
  return *states_;
}

const tally::Makeup& Opened::makeup() {
  if (makeup_ == nullptr) {
    pay(4);
    makeup_ = std::make_unique<tally::Makeup>(tally::read_makeup(fiche(), flow(), session_.library));
  }
  return *makeup_;
}

const Selecting& Opened::selecting() {
  if (selecting_ == nullptr) {
    pay(1);
    selecting_ = std::make_unique<Selecting>(*document_);
  }
  return *selecting_;
}

void Opened::find_places() {
  if (found_) return;
  ingredients_ = places_of(fiche().ingredients);
  steps_ = places_of(fiche().steps);
  found_ = true;
}

const fiche::Ingredient* Opened::ingredient(fiche::Node node) {
  find_places();
  const std::size_t at = place_in(ingredients_, node);
  return at == ingredients_.size() ? nullptr : &fiche().ingredients[at];
}

const fiche::Step* Opened::step(fiche::Node node) {
  find_places();
  const std::size_t at = place_in(steps_, node);
  return at == steps_.size() ? nullptr : &fiche().steps[at];
}

Session::Session(const fiche::Kitchen& the_kitchen, fiche::Library& the_library, const Manifest& manifest,
                 const Settings& the_settings)
    : kitchen(the_kitchen), library(the_library), settings(the_settings), takes(&manifest.takes) {}

Opened& Session::add(std::unique_ptr<Opened> opened) {
  opened_.push_back(std::move(opened));
  Opened& added = *opened_.back();
  by_document_.emplace(&added.document(), &added);
  return added;
}

Opened& Session::give(std::unique_ptr<Opened> opened) {
  Opened& added = add(std::move(opened));
  added.given = true;
  if (main == nullptr) main = &added;
  return added;
}

std::vector<Opened*> Session::given() const {
  std::vector<Opened*> found;
  for (const auto& one : opened_)
    if (one->given) found.push_back(one.get());
  return found;
}

Opened& Session::open(const std::shared_ptr<const fiche::Document>& document) {
  const auto known = by_document_.find(document.get());
  return known != by_document_.end() ? *known->second : add(std::make_unique<Opened>(*this, document));
}

Opened* Session::kitchen_file() { return kitchen.document == nullptr ? nullptr : &open(kitchen.document); }

Session& session_of(lua_State* state) {
  Session* session = nullptr;
  std::memcpy(&session, lua_getextraspace(state), sizeof session);
  assert(session != nullptr);
  return *session;
}

void set_session(lua_State* state, Session* session) {
  std::memcpy(lua_getextraspace(state), &session, sizeof session);
}

}  // namespace tamis::lua
