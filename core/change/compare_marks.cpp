#include "core/change/compare_marks.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/change/compare_words.h"
#include "core/fiche/prose.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::NodeKind;

namespace {

/// Stands in a text for a marked figure; a byte that no document holds (XML 1.0, 2.2).
constexpr char figure_sign = '\x01';

bool is_figure(El el) {
  switch (el) {
    case El::amount:
    case El::food_temp:
    case El::oven_temp:
    case El::medium_temp:
    case El::room_temp:
    case El::time:
    case El::length:
    case El::share: return true;
    default: return false;
  }
}

void add_text(const Side& side, Node node, std::string& text, Line& line) {
  const fiche::Document& document = side.document();
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == NodeKind::text) text += document.value(c);
    if (document.kind(c) != NodeKind::element || !fiche::is_mark(document, c)) continue;
    if (is_figure(document.el(c))) {
      line.figures.push_back(c);
      text += figure_sign;
    } else {
      line.others.push_back(c);
      add_text(side, c, text, line);
    }
  }
}

struct Candidate {
  double score = 0;
  std::size_t a = 0, b = 0;
  [[nodiscard]] auto key() const { return std::tuple(-score, a < b ? b - a : a - b, std::min(a, b), a); }
};

/// One kind of figure on both sides: as many as there are on the side with fewer, the likest first.
void pair_kind(const Comparing& work, const std::vector<Node>& as, const std::vector<Node>& bs, MarkPairs& out) {
  const auto score = [&](Node a, Node b) {
    const fiche::Document& from = work.from.document();
    const fiche::Document& to = work.to.document();
    const bool of = work.pairs.id_in_new(from.get(a, At::of)) == to.get(b, At::of);
    const bool text = words_in_line(work.from, a) == words_in_line(work.to, b);
    return (of ? 2 : 0) + (text ? 1.5 : 0) + (from.get(a, At::mode) == to.get(b, At::mode) ? 1 : 0);
  };
  std::vector<Candidate> candidates;
  constexpr std::size_t most = 200;  // of a kind in one sentence, that are weighed
  for (std::size_t i = 0; i < std::min(as.size(), most); ++i)
    for (std::size_t j = 0; j < std::min(bs.size(), most); ++j)
      candidates.push_back({as.size() == bs.size() ? (i == j ? 1.0 : 0.0) : score(as[i], bs[j]), i, j});
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& x, const Candidate& y) { return x.key() < y.key(); });
  std::vector<bool> taken_a(as.size(), false);
  std::vector<bool> taken_b(bs.size(), false);
  for (const Candidate& one : candidates) {
    if (taken_a[one.a] || taken_b[one.b]) continue;
    taken_a[one.a] = taken_b[one.b] = true;
    out.pairs.emplace_back(as[one.a], bs[one.b]);
  }
  for (std::size_t i = 0; i < as.size(); ++i)
    if (!taken_a[i]) out.only_old.push_back(as[i]);
  for (std::size_t j = 0; j < bs.size(); ++j)
    if (!taken_b[j]) out.only_new.push_back(bs[j]);
}

/// Marks that are no figures: the first of a target with the first, and so on.
void pair_others(const Comparing& work, const Line& was, const Line& is, MarkPairs& out) {
  const auto key = [&](const Side& side, Node node, bool old) {
    const fiche::Document& document = side.document();
    std::string of;
    for (const std::string& id : words_of(document.get(node, At::of))) of += " " + (old ? work.pairs.id_in_new(id) : id);
    return std::string(document.name(node)) + of;
  };
  std::multimap<std::string, Node> open;
  for (const Node mark : was.others) open.emplace(key(work.from, mark, true), mark);
  for (const Node mark : is.others) {
    const auto found = open.lower_bound(key(work.to, mark, false));
    if (found == open.end() || found->first != key(work.to, mark, false)) continue;
    out.pairs.emplace_back(found->second, mark);
    open.erase(found);
  }
}

}  // namespace

std::string words_in_line(const Side& side, Node mark) {
  const std::vector<std::string> words = words_of(side.document().all_text(mark));
  return joined(words, 0, words.size());
}

Line line_of(const Side& side, Node node) {
  Line line;
  std::string text;
  add_text(side, node, text, line);
  line.shown = words_of(text);
  std::size_t figure = 0;
  for (std::size_t i = 0; i < line.shown.size(); ++i) {
    std::string word;
    std::string shown;
    for (const char c : line.shown[i]) {
      if (c != figure_sign) {
        word += c;
        shown += c;
        continue;
      }
      const Node mark = line.figures[figure++];
      line.figure_words.push_back(i);
      word += figure_sign + std::string(side.document().name(mark));
      shown += words_in_line(side, mark);
    }
    line.words.push_back(std::move(word));
    line.shown[i] = std::move(shown);
  }
  return line;
}

void leave_out(Line& line, const std::vector<Node>& figures) {
  for (std::size_t i = line.figures.size(); i-- > 0;) {
    if (std::find(figures.begin(), figures.end(), line.figures[i]) == figures.end()) continue;
    const std::size_t word = line.figure_words[i];
    const bool alone = line.words[word].find(figure_sign, 1) == std::string::npos;
    if (!alone) continue;
    line.words.erase(line.words.begin() + static_cast<std::ptrdiff_t>(word));
    line.shown.erase(line.shown.begin() + static_cast<std::ptrdiff_t>(word));
  }
}

MarkPairs pair_marks(const Comparing& work, const Line& was, const Line& is) {
  MarkPairs out;
  std::map<El, std::pair<std::vector<Node>, std::vector<Node>>> kinds;
  for (const Node mark : was.figures) kinds[work.from.document().el(mark)].first.push_back(mark);
  for (const Node mark : is.figures) kinds[work.to.document().el(mark)].second.push_back(mark);
  for (const auto& [el, both] : kinds) pair_kind(work, both.first, both.second, out);
  pair_others(work, was, is, out);
  return out;
}

std::string differing_words(const Line& from, const Line& to) {
  return differing_words(from.words, to.words, from.shown, to.shown);
}

}  // namespace tamis::change
