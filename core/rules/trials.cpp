#include "core/rules/trials.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"
#include "core/rules/figure_value.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

template <std::size_t n>
bool starts_with_any(std::string_view text, const std::array<std::string_view, n>& words) {
  return std::any_of(words.begin(), words.end(), [text](std::string_view word) { return text.starts_with(word); });
}

constexpr std::array<std::string_view, 8> portion_words{"portion", "serving", "cover", "part", "couvert", "ración",
                                                        "racion", "plate"};
constexpr std::array<std::string_view, 4> piece_words{"piece", "pièce", "stück", "pieza"};

/// Nothing where the amount is of another kind.
void put_in(BatchSize& size, const measure::Amount& amount) {
  if (!amount.has_figure()) return;
  if (amount.kind == measure::Kind::mass && !size.grams) size.grams = highest_of(amount);
  if (amount.kind == measure::Kind::volume && !size.millilitres) size.millilitres = highest_of(amount);
}

std::optional<double> number(std::string_view text, const measure::Reading& reading) {
  const auto read = measure::read_number(base::trimmed(text), reading);
  if (!read || !read->ok() || read->approximate() <= 0) return {};
  return read->approximate();
}

}  // namespace

BatchSize batch_size(std::string_view words, const measure::Reading& reading) {
  BatchSize out;
  const std::string text = base::lower(words);
  for (std::size_t at = 0; at < text.size();) {
    if (!is_digit(text[at])) {
      ++at;
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && (is_digit(text[end]) || text[end] == '.' || text[end] == ',' || text[end] == '/')) ++end;
    const std::string_view behind = base::trimmed(std::string_view(text).substr(end));
    const auto figure = number(std::string_view(text).substr(at, end - at), reading);
    if (figure && starts_with_any(behind, portion_words) && !out.portions) out.portions = figure;
    if (figure && starts_with_any(behind, piece_words) && !out.pieces) out.pieces = figure;
    const measure::Found found = measure::find_amount(
        std::string_view(words).substr(at), measure::set_of(measure::Kind::mass) | measure::set_of(measure::Kind::volume),
        reading);
    if (found.used > 0) put_in(out, found.amount);
    at = std::max(end, at + found.used);
  }
  return out;
}

BatchSize batch_size(const Check& check, Node yield) {
  BatchSize out;
  out.portions = number(check.document.get(yield, At::portions), check.fiche.reading);
  out.pieces = number(check.document.get(yield, At::pieces), check.fiche.reading);
  for (const At at : {At::mass, At::volume}) {
    const fiche::Statement* stated = check.fiche.statement(yield, at);
    if (stated != nullptr && stated->amount) put_in(out, *stated->amount);
  }
  return out;
}

std::vector<Trial> trials_of(const fiche::Document& document) {
  std::vector<Trial> out;
  for (Node c = document.first_child(document.root()); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != fiche::NodeKind::element || document.el(c) != El::trial) continue;
    const std::string_view verdict = base::trimmed(document.get(c, At::verdict));
    out.push_back({c, base::trimmed(document.get(c, At::batch)),
                   verdict.starts_with("passed") ? Trial::Verdict::passed
                   : verdict == "failed"         ? Trial::Verdict::failed
                                                 : Trial::Verdict::none});
  }
  return out;
}

}  // namespace tamis::rules
