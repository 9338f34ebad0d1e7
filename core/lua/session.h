#ifndef CORE_LUA_SESSION_H
#define CORE_LUA_SESSION_H

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/fiche.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/flow/flow.h"
#include "core/flow/states.h"
#include "core/lua/manifest.h"
#include "core/lua/settings.h"
#include "core/tally/makeup.h"

struct lua_State;

namespace tamis::lua {

class Session;
class Selecting;

/// A document that a plugin holds handles into, with what is known of it, read when first asked for.
class Opened {
 public:
  Opened(Session& session, std::shared_ptr<const fiche::Document> document);
  /// What somebody else has read already; it all outlives this.
  Opened(Session& session, const fiche::Fiche& fiche, const flow::Flow& flow);
  /// A copy that may be changed.
  Opened(Session& session, fiche::Document& editable);
  ~Opened();
  Opened(const Opened&) = delete;
  Opened& operator=(const Opened&) = delete;

  [[nodiscard]] const fiche::Document& document() const { return *document_; }
  [[nodiscard]] const std::string& path() const { return document_->source().path(); }
  [[nodiscard]] bool is_fiche() const { return document_->el(document_->root()) == fiche::El::fiche; }
  [[nodiscard]] bool may_change() const { return editable_ != nullptr; }
  [[nodiscard]] Session& session() const { return session_; }
  std::vector<base::Finding> findings;  ///< what the plugin said of it
  bool given = false;                   ///< the call is about it: findings may be said of it

  /// Counts up with every change, so that what was read before it is known to be old.
  [[nodiscard]] unsigned reading() const { return reading_; }

  fiche::Document& edit();  ///< only where may_change()
  const fiche::Fiche& fiche();
  const flow::Flow& flow();
  const flow::States& states();
  const tally::Makeup& makeup();
  const Selecting& selecting();
  const fiche::Ingredient* ingredient(fiche::Node node);  ///< null when it is none
  const fiche::Step* step(fiche::Node node);

 private:
  void find_places();
  void pay(std::size_t steps_a_byte) const;

  Session& session_;
  std::shared_ptr<const fiche::Document> kept_;
  const fiche::Document* document_;
  fiche::Document* editable_ = nullptr;
  const fiche::Fiche* fiche_ = nullptr;
  const flow::Flow* flow_ = nullptr;
  std::unique_ptr<fiche::Fiche> own_fiche_;
  std::unique_ptr<flow::Flow> own_flow_;
  std::unique_ptr<flow::States> states_;
  std::unique_ptr<tally::Makeup> makeup_;
  std::unique_ptr<Selecting> selecting_;
  std::vector<std::pair<fiche::Node, std::size_t>> ingredients_, steps_;  // sorted by node
  bool found_ = false;
  unsigned reading_ = 0;
};

/// What a plugin's call works on: the fiche at hand, kitchen, library, settings, and what it has said.
class Session {
 public:
  Session(const fiche::Kitchen& kitchen, fiche::Library& library, const Manifest& manifest, const Settings& settings);
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  const fiche::Kitchen& kitchen;
  fiche::Library& library;
  const Settings& settings;
  const std::vector<Taking>* takes;  ///< the settings there are
  Opened* main = nullptr;          ///< the fiche the call is about; of several the first
  const Addition* adding = nullptr;  ///< what is being called
  base::Severity severity = base::Severity::warning;
  std::string source;              ///< of its findings: who says so
  lua_State* payer = nullptr;      ///< whose budget pays for what is read now; null between calls
  std::size_t copies = 0;          ///< conversions made for it
  std::size_t written = 0;         ///< bytes that edits have put into the fiche
  std::size_t told = 0;            ///< bytes of findings
  std::string talk;                ///< what print() said
  fiche::Node in_hand = fiche::none;  ///< the element of `main` that was asked last

  Opened& add(std::unique_ptr<Opened> opened);
  /// The same, of a fiche that the call is about.
  Opened& give(std::unique_ptr<Opened> opened);
  [[nodiscard]] std::vector<Opened*> given() const;  ///< in the order they were given
  /// The same Opened for the same document each time.
  Opened& open(const std::shared_ptr<const fiche::Document>& document);
  Opened* kitchen_file();          ///< null where there is none

 private:
  std::vector<std::unique_ptr<Opened>> opened_;
  std::map<const fiche::Document*, Opened*> by_document_;
};

/// The session a state works for; set by the host for each call.
Session& session_of(lua_State* state);
void set_session(lua_State* state, Session* session);

}  // namespace tamis::lua

#endif
