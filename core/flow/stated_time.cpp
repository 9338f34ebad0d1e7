#include "core/flow/stated_time.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/measure/trade_word.h"

namespace tamis::flow {
namespace {

using base::Ratio;
using fiche::At;
using fiche::El;
using fiche::Node;
using measure::Amount;
using Seconds = TimeNetwork::Seconds;

std::optional<Seconds> rounded(Ratio seconds, bool up) {
  if (!seconds.ok()) return std::nullopt;
  const Seconds down = seconds.floor();
  return std::min(up && !seconds.whole() ? down + 1 : down, TimeNetwork::longest);
}

std::optional<TimeRange> range_of(const Amount& amount) {
  using Form = Amount::Form;
  if (amount.form == Form::words) return std::nullopt;
  TimeRange out;
  if (amount.form != Form::at_most) {
    const auto least = rounded(amount.about ? amount.low_base() * Ratio(3, 4) : amount.low_base(), false);
    if (!least) return std::nullopt;
    out.least = *least;
  }
  if (amount.form != Form::at_least) {
    out.most = rounded(amount.about ? amount.high_base() * Ratio(5, 4) : amount.high_base(), true);
    if (!out.most) return std::nullopt;
  }
  return out;
}

std::optional<TimeRange> range_of_word(std::string_view id, const fiche::Kitchen& kitchen) {
  if (const auto house = kitchen.meanings.find(id); house != kitchen.meanings.end()) return range_of(house->second);
  const measure::TradeWord* word = measure::trade_word_by_id(id);
  if (word == nullptr || word->meaning.empty()) return std::nullopt;
  const auto usual = measure::read_duration(word->meaning, {});
  return usual ? range_of(*usual) : std::nullopt;
}

bool ends_with_one(std::string_view text, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(), [text](std::string_view word) {
    if (!text.ends_with(word)) return false;
    return text.size() == word.size() || text[text.size() - word.size() - 1] == ' ';
  });
}

/// The text beside a mark without blank at its ends; "" where there is none.
std::string_view text_beside(const fiche::Document& document, Node beside) {
  if (beside == fiche::none || document.kind(beside) != fiche::NodeKind::text) return {};
  return base::trimmed(document.value(beside));
}

constexpr std::size_t few_words = 32;  // bytes: more than any of the words looked for

/// The last words before a mark and the first behind it, in lower case.
std::string words_before(const fiche::Document& document, Node mark) {
  const std::string_view text = text_beside(document, document.previous(mark));
  return base::lower(text.substr(text.size() - std::min(text.size(), few_words)));
}
std::string words_behind(const fiche::Document& document, Node mark) {
  return base::lower(text_beside(document, document.next(mark)).substr(0, few_words));
}

TimeMark::Role role_of(const fiche::Statement& statement, std::string_view before) {
  const std::string own = base::lower(statement.text);
  for (const std::string_view word : {"within ", "en moins de ", "innerhalb ", "binnen ", "en menos de "}) {
    if (own.starts_with(word)) return TimeMark::Role::limit;
  }
  if (ends_with_one(before, {"within", "within the", "en moins de", "innerhalb von", "innerhalb", "binnen", "en menos de"})) {
    return TimeMark::Role::limit;
  }
  if (ends_with_one(before, {"every", "after", "before", "each", "last", "first", "than", "toutes les", "chaque", "après",
                             "au bout de", "avant", "alle", "nach", "vor", "nach etwa", "cada", "después de", "antes de"})) {
    return TimeMark::Role::other;
  }
  return TimeMark::Role::length;
}

bool is_alternative(const fiche::Document& document, Node mark, std::string_view before) {
  for (const At at : {At::mode, At::batch, At::depth, At::altitude}) {
    if (document.find(mark, at) != fiche::none) return true;
  }
  const std::string behind = words_behind(document, mark) + " ";
  const auto starts = [&behind](std::string_view word) { return behind.starts_with(word); };
  return ends_with_one(before, {"or", "or for", "or at least", "ou", "ou pendant", "oder", "o", "better", "mieux", "besser"}) ||
         starts("or ") || starts(", or ") || starts("ou ") || starts(", ou ") || starts("oder ") || starts(", oder ");
}

bool is_for_first_batch(const fiche::Fiche& fiche, Node mark) {
  const std::string_view batch = fiche.document->get(mark, At::batch);
  return batch.empty() || fiche.yields.empty() || fiche.document->get(fiche.yields.front(), At::id) == batch;
}

std::optional<TimeRange> attribute_time(const fiche::Fiche& fiche, Node step, At at) {
  const fiche::Statement* statement = fiche.statement(step, at);
  return statement == nullptr ? std::nullopt : time_meant(*statement, *fiche.kitchen);
}

/// Marks that stand for each other count as the shortest of them; marks that follow on each other take at least as long
/// as the longest.
std::optional<TimeRange> sentence_time(const std::vector<TimeMark>& marks) {
  std::optional<Seconds> shortest;
  std::optional<Seconds> longest;
  std::size_t count = 0;
  for (const TimeMark& mark : marks) {
    if (mark.role != TimeMark::Role::length) continue;
    ++count;
    if (mark.one_of_several) {
      shortest = std::min(shortest.value_or(mark.range.least), mark.range.least);
    } else {
      longest = std::max(longest.value_or(0), mark.range.least);
    }
  }
  if (count == 0) return std::nullopt;
  TimeRange out{std::max(shortest.value_or(0), longest.value_or(0)), {}};
  if (count == 1 && marks.size() == 1) out.most = marks.front().range.most;
  return out;
}

TimeRange sum(const TimeRange& a, const TimeRange& b) {
  TimeRange out{a.least + b.least, {}};
  if (a.most && b.most) out.most = *a.most + *b.most;
  return out;
}

TimeRange longer(const TimeRange& a, const TimeRange& b) {
  TimeRange out{std::max(a.least, b.least), {}};
  if (a.most && b.most) out.most = std::max(*a.most, *b.most);
  return out;
}

/// How many times the step is done, where it says so; else once.
Seconds repeats(const fiche::Fiche& fiche, Node step) {
  const fiche::Statement* statement = fiche.statement(step, At::repeat);
  if (statement == nullptr || !statement->amount || !statement->amount->has_figure()) return 1;
  return std::clamp<Seconds>(statement->amount->high_base().floor(), 1, 1000);
}

}  // namespace

std::optional<TimeRange> time_meant(const fiche::Statement& statement, const fiche::Kitchen& kitchen) {
  if (!statement.amount || statement.amount->kind != measure::Kind::time) return std::nullopt;
  if (!statement.amount->has_figure()) return range_of_word(statement.amount->words, kitchen);
  return range_of(*statement.amount);
}

std::vector<TimeMark> time_marks(const fiche::Fiche& fiche, Node step) {
  std::vector<TimeMark> out;
  const fiche::Document& document = *fiche.document;
  for (Node c = document.first_child(step); c != fiche::none; c = document.next(c)) {
    if (document.el(c) != El::time || !is_for_first_batch(fiche, c)) continue;
    const fiche::Statement* statement = fiche.statement(c);
    if (statement == nullptr) continue;
    const auto range = time_meant(*statement, *fiche.kitchen);
    if (!range) continue;
    const std::string before = words_before(document, c);
    out.push_back({statement, *range, role_of(*statement, before), is_alternative(document, c, before)});
  }
  return out;
}

StepLength read_length(const fiche::Fiche& fiche, Node step) { return read_length(fiche, step, time_marks(fiche, step)); }

StepLength read_length(const fiche::Fiche& fiche, Node step, const std::vector<TimeMark>& marks) {
  StepLength out;
  out.hands = attribute_time(fiche, step, At::hands);
  out.unattended = attribute_time(fiche, step, At::unattended);
  out.sentence = sentence_time(marks);
  out.stated = out.hands || out.unattended || out.sentence;
  if (!out.stated) return out;
  if (out.hands || out.unattended) {
    const TimeRange nothing{0, 0};
    out.whole = sum(out.hands.value_or(nothing), out.unattended.value_or(nothing));
    if (out.sentence) out.whole = longer(out.whole, *out.sentence);
  } else {
    out.whole = *out.sentence;
  }
  // Whether its times are of one turn or of all is not said: at least the one, at most all.
  if (out.whole.most) out.whole.most = *out.whole.most * repeats(fiche, step);
  return out;
}

}  // namespace tamis::flow
