#ifndef CORE_CHANGE_COMPARE_SIDE_H
#define CORE_CHANGE_COMPARE_SIDE_H

#include <string>
#include <string_view>
#include <vector>

#include "core/change/compare.h"
#include "core/fiche/fiche.h"

namespace tamis::change {

/// One of the two fiches under comparison, as its author wrote it (what a conversion wrote is taken back), and what its
/// elements are called in a sentence.
class Side {
 public:
  explicit Side(const Compared& given);
  Side(const Side&) = delete;
  Side& operator=(const Side&) = delete;

  const fiche::Document& document() const { return document_; }
  const fiche::Fiche& fiche() const { return fiche_; }
  const fiche::Kitchen& kitchen() const { return *fiche_.kitchen; }

  /// Elements of that name anywhere in the fiche, in document order.
  std::vector<fiche::Node> all(fiche::El el) const;
  /// Child elements that are no marks of a sentence.
  std::vector<fiche::Node> blocks(fiche::Node parent) const;
  /// The nearest element of that name around the node, or the node itself; none when there is none.
  fiche::Node around(fiche::Node node, fiche::El el) const;

  /// Text of an element's own sentence, marks included, blocks left out.
  std::string sentence(fiche::Node node) const;

  /// What an element is called: "sugar", "bake", "mousse", "frame", "keeping", "trial of 2026-05-20".
  std::string name(fiche::Node node) const;
  /// What an id stands for: the ingredient's name, the component's title, the result in words.
  std::string name_of_id(std::string_view id) const;
  /// What a step is about: the one result it makes, else its name.
  std::string product(fiche::Node step) const;
  /// " in the mousse"; "" outside components, and where there is only one.
  std::string in_component(fiche::Node node) const;

 private:
  std::string step_name(fiche::Node step) const;
  std::string block_name(fiche::Node node) const;
  bool shares_action(fiche::Node step) const;

  fiche::Document document_;
  fiche::Fiche fiche_;
};

/// "Set vanilla cream" as it stands inside a sentence: "set vanilla cream". "BBQ sauce" stays.
std::string inside_sentence(std::string_view title);

}  // namespace tamis::change

#endif
