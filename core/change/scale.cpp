#include "core/change/scale.h"

#include <iterator>

#include "core/change/author.h"
#include "core/change/convert.h"
#include "core/change/market.h"
#include "core/change/scale_work.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

bool is_converted(const Document& document, Node node) {
  for (fiche::Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a)) {
    if (document.attribute_name(a).starts_with("was")) return true;
  }
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element && is_converted(document, c)) return true;
  }
  return false;
}

std::string mode_after(const Document& document, Node node) {
  if (document.find(node, At::was_mode) != fiche::none) return std::string(document.get(node, At::mode));
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != fiche::NodeKind::element) continue;
    std::string found = mode_after(document, c);
    if (!found.empty()) return found;
  }
  return {};
}

/// The wish that turns the author's document into this one; where a hand changed it since, the likeliest one.
ConvertWish conversion_of(const Document& author, const Document& now, const fiche::Kitchen& kitchen) {
  ConvertWish likely;
  likely.units = fiche::read_fiche(now, kitchen).reading.system;
  likely.oven = mode_after(now, now.root());
  std::vector<std::string> countries = {""};
  for (const std::string_view country : markets()) countries.emplace_back(country);
  for (const std::string& country : countries) {
    for (const auto by : {ConvertWish::By::as_written, ConvertWish::By::mass, ConvertWish::By::volume, ConvertWish::By::both}) {
      ConvertWish wish{likely.units, by, likely.oven, country};
      if (fiche::same_meaning(convert(author, kitchen, wish).document, now)) return wish;
    }
  }
  return likely;
}

/// A figure that cannot be read would be left behind in a batch that grows round it.
bool refuse_unreadable(ScaleWork& work) {
  bool any = false;
  for (const fiche::Statement& statement : work.author.statements) {
    const El el = work.document.el(statement.node);
    const bool grows = el == El::ingredient || el == El::amount;
    if (!statement.fault || !grows || statement.at != At::unknown) continue;
    if (statement.fault->rule.starts_with("unknown-trade-word")) continue;
    any = true;
    work.say("not-scaled", base::Severity::error, statement.where,
             "nothing was scaled: " + statement.fault->message, statement.fault->advice,
             statement.fault->source.empty() ? "common practice" : statement.fault->source);
  }
  return any;
}

void write_factor(ScaleWork& work) {
  Document& document = work.document;
  const Node root = document.root();
  const auto before = work.number(root, At::scaled_by);
  const Ratio now = before.value_or(1) * work.factor;
  if (now == 1) return document.remove_attribute(root, At::scaled_by);
  if (now.ok()) document.set_attribute(root, At::scaled_by, now.text());
}

std::vector<Node> own_yields(const fiche::Fiche& fiche) {
  const Document& document = *fiche.document;
  std::vector<Node> own;
  for (const Node yield : fiche.yields) {
    if (document.parent(yield) == document.root()) own.push_back(yield);
  }
  return own;
}

Scaled scale_author(const Document& document, const fiche::Kitchen& kitchen, fiche::Library& library,
                    const ScaleWish& wish) {
  ScaleWork work{document.clone(), kitchen, library, wish};
  work.author = fiche::read_fiche(work.document, kitchen);
  work.yields = own_yields(work.author);
  if (!work.yields.empty()) work.written = work.yields.front();
  work.flow = flow::read_flow(work.author, library);
  if (refuse_unreadable(work) || !settle_batch(work) || (work.factor == 1 && !work.mould)) {
    base::sort_by_place(work.findings);
    return {document.clone(), std::move(work.findings), 1, std::move(work.misread)};
  }
  // Read what the author's document says first: the figures' passes change it.
  look_at_vessels(work);
  keep_columns(work);
  if (work.factor != 1) scale_figures(work);
  scale_moulds(work);
  say_what_stays(work);
  write_factor(work);
  drop_columns(work);
  base::sort_by_place(work.findings);
  return {std::move(work.document), std::move(work.findings), work.factor};
}

}  // namespace

Scaled scale(const Document& document, const fiche::Kitchen& kitchen, fiche::Library& library, const ScaleWish& wish) {
  const Node root = document.root();
  if (root == fiche::none || document.el(root) != El::fiche) return {document.clone(), {}, 1};
  if (!is_converted(document, root)) return scale_author(document, kitchen, library, wish);
  Restored author = restore_author(document, kitchen);
  Scaled scaled = scale_author(author.document, kitchen, library, wish);
  if (scaled.factor == 1) return {document.clone(), std::move(scaled.findings), 1, std::move(scaled.misread)};
  Converted again = convert(scaled.document, kitchen, conversion_of(author.document, document, kitchen));
  std::move(author.findings.begin(), author.findings.end(), std::back_inserter(again.findings));
  std::move(scaled.findings.begin(), scaled.findings.end(), std::back_inserter(again.findings));
  base::sort_by_place(again.findings);
  return {std::move(again.document), std::move(again.findings), scaled.factor};
}

}  // namespace tamis::change
