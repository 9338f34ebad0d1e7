#include "core/rules/phrases.h"

#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

/// Letters of words, those beyond ASCII too.
bool in_word(std::string_view text, std::size_t at) {
  if (at >= text.size()) return false;
  const auto c = static_cast<unsigned char>(text[at]);
  return c >= 0x80 || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

std::vector<std::string> split(const std::string& all) {
  std::vector<std::string> out(1);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool ends = all[i] == '.' || all[i] == ';' || all[i] == '!';
    if (ends && (i + 1 == all.size() || all[i + 1] == ' ' || all[i + 1] == '\n')) {
      out.emplace_back();
    } else {
      out.back() += all[i] == '\n' ? ' ' : all[i];
    }
  }
  return out;
}

}  // namespace

const std::vector<std::string>& sentences_of(const Check& check, fiche::Node step) {
  struct Sentences {
    std::vector<std::string> list;
  };
  return check.once<Sentences>(step, [&] { return Sentences{split(own_sentence(check, step))}; }).list;
}

std::size_t find_phrase(std::string_view text, std::string_view phrase) {
  for (std::size_t at = text.find(phrase); at != std::string_view::npos; at = text.find(phrase, at + 1)) {
    const bool begins = at == 0 || !in_word(text, at - 1);
    if (begins && !in_word(text, at + phrase.size())) return at;
  }
  return std::string_view::npos;
}

bool has_phrase(std::string_view text, std::string_view phrases) {
  while (true) {
    const std::size_t end = phrases.find('|');
    if (find_phrase(text, phrases.substr(0, end)) != std::string_view::npos) return true;
    if (end == std::string_view::npos) return false;
    phrases.remove_prefix(end + 1);
  }
}

}  // namespace tamis::rules
