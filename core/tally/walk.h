#ifndef CORE_TALLY_WALK_H
#define CORE_TALLY_WALK_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/utf8.h"
#include "core/flow/outside.h"
#include "core/tally/makeup.h"
#include "core/tally/mix.h"

namespace tamis::tally {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }
inline std::string words_of(std::string_view text) { return std::string(base::trimmed(text)); }

/// Follows what is in it through the steps of one fiche, in the order that its flow has put them in.
class Walk {
 public:
  /// `around`: the fiche that takes this one in, and the component of it whose overrides hold here.
  Walk(const fiche::Fiche& fiche, const flow::Flow& flow, fiche::Library& library, flow::Chain& chain,
       const fiche::Fiche* around = nullptr, fiche::Node around_component = fiche::none);

  void run();
  /// What the component of that id makes; with "" what the fiche makes, less what its yield says is lost.
  [[nodiscard]] std::optional<Mix> made(std::string_view component) const;
  std::vector<Entry> entries;
  std::vector<Doubt> doubts;
  std::vector<Labour> labour;
  std::vector<Base> bases;

 private:
  [[nodiscard]] const flow::Thing& thing(int index) const { return flow_.things[static_cast<std::size_t>(index)]; }
  void list();
  void add_entry(int thing);
  void weigh_as_bought(int thing, Entry& entry) const;
  void sum_labour();
  Labour& labour_of(fiche::Node component);
  [[nodiscard]] const food::Food* overridden(int thing, std::string& id) const;
  [[nodiscard]] bool is_made(const flow::Thing& thing) const;
  [[nodiscard]] bool happens(const flow::Use& use) const;
  void take_from_outside(int component);
  void take_bases(Walk& inner, const Mix& mix, double share, fiche::Node component);
  void components_without_steps();
  void work_out(const flow::Step& step);
  [[nodiscard]] double share_of(const flow::Use& use);
  [[nodiscard]] double stated_share(const flow::Use& use);
  [[nodiscard]] bool comes_together(const flow::Step& step, int maker) const;
  void losses(const flow::Step& step, Mix& mix);
  void take_out(const flow::Step& step, std::optional<double> weighed, Mix& mix);
  void yield_losses(fiche::Node owner, Mix& mix);
  [[nodiscard]] bool stated_by_a_step(fiche::Node owner, std::string_view what) const;
  [[nodiscard]] bool a_step_reduces(fiche::Node owner) const;
  void set_component(fiche::Node node, Mix mix);
  /// What the file that `node` names in from makes, as a mix of entries added here for it; as much of it as is taken.
  [[nodiscard]] Mix from_outside(fiche::Node node, std::optional<double> grams);
  void doubt(Doubt::Kind kind, std::string what, double grams, fiche::Node where);

  const fiche::Fiche& fiche_;
  const flow::Flow& flow_;
  const fiche::Document& document_;
  fiche::Library& library_;
  flow::Chain& chain_;
  const fiche::Fiche* around_;
  fiche::Node around_component_;
  std::vector<Mix> mixes_;      // of each thing
  Mix whole_;                   // less what the fiche's yield says is lost
  std::vector<bool> known_;    // of each step: the mass of what it made, before it was divided
  std::vector<int> entry_of_;   // of each thing; -1 when none
};

}  // namespace tamis::tally

#endif
