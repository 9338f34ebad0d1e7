#include "core/rules/language_tag.h"

#include <algorithm>
#include <iterator>
#include <vector>

#include "core/base/nearest.h"
#include "core/base/utf8.h"

namespace tamis::rules {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }
bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool letters(std::string_view s) { return std::all_of(s.begin(), s.end(), letter); }
bool digits(std::string_view s) { return std::all_of(s.begin(), s.end(), digit); }
bool letters_or_digits(std::string_view s) {
  return std::all_of(s.begin(), s.end(), [](char c) { return letter(c) || digit(c); });
}

std::vector<std::string_view> parts_of(std::string_view tag) {
  std::vector<std::string_view> out;
  for (std::size_t at = 0;;) {
    const std::size_t hyphen = std::min(tag.find('-', at), tag.size());
    out.push_back(tag.substr(at, hyphen - at));
    if (hyphen == tag.size()) return out;
    at = hyphen + 1;
  }
}

/// The irregular tags of RFC 5646, section 2.1; the regular ones fit the grammar.
constexpr std::string_view irregular[] = {"en-gb-oed", "i-ami",     "i-bnn", "i-default",  "i-enochian", "i-hak",
                                          "i-klingon", "i-lux",     "i-mingo", "i-navajo", "i-pwn",      "i-tao",
                                          "i-tay",     "i-tsu",     "sgn-be-fr", "sgn-be-nl", "sgn-ch-de"};

/// One pass over the parts in the grammar's order: language, extlang, script, region, variants, extensions, private.
class Grammar {
 public:
  explicit Grammar(std::string_view tag) : parts_(parts_of(tag)) {}

  bool holds() {
    if (is_private(parts_[0])) return private_use();
    if (!take([](auto s) { return (s.size() == 2 || s.size() == 3) && letters(s); })) return false;
    for (int i = 0; i < 3; ++i) (void)take([](auto s) { return s.size() == 3 && letters(s); });
    (void)take([](auto s) { return s.size() == 4 && letters(s); });
    (void)take([](auto s) { return (s.size() == 2 && letters(s)) || (s.size() == 3 && digits(s)); });
    while (take([](auto s) {
      return letters_or_digits(s) && ((s.size() >= 5 && s.size() <= 8) || (s.size() == 4 && digit(s[0])));
    })) {
    }
    while (extension()) {
    }
    return at_ == parts_.size() || private_use();
  }

 private:
  static bool is_private(std::string_view part) { return part == "x" || part == "X"; }

  template <class Fits>
  bool take(Fits fits) {
    if (at_ == parts_.size() || !fits(parts_[at_])) return false;
    ++at_;
    return true;
  }
  bool extension() {
    if (!take([](auto s) { return s.size() == 1 && letters_or_digits(s) && !is_private(s); })) return false;
    bool some = false;
    while (take([](auto s) { return s.size() >= 2 && s.size() <= 8 && letters_or_digits(s); })) some = true;
    if (!some) at_ = parts_.size() + 1;  // refuses the tag: nothing follows the letter
    return some;
  }
  bool private_use() {
    if (at_ > parts_.size() || !take(is_private)) return false;
    bool some = false;
    while (take([](auto s) { return !s.empty() && s.size() <= 8 && letters_or_digits(s); })) some = true;
    return some && at_ == parts_.size();
  }

  std::vector<std::string_view> parts_;
  std::size_t at_ = 0;
};

bool well_formed(std::string_view tag) {
  if (tag.empty()) return false;
  const std::string small = base::lower(tag);
  return std::find(std::begin(irregular), std::end(irregular), small) != std::end(irregular) || Grammar(tag).holds();
}

/// Names people write where a tag is wanted: in English and in the language itself.
struct Named {
  std::string_view name;
  std::string_view tag;
};
constexpr Named named[] = {
    {"english", "en"},   {"anglais", "en"},    {"british", "en-GB"},   {"american", "en-US"}, {"french", "fr"},
    {"français", "fr"},  {"francais", "fr"},   {"german", "de"},       {"deutsch", "de"},     {"spanish", "es"},
    {"español", "es"},   {"espanol", "es"},    {"italian", "it"},      {"italiano", "it"},    {"portuguese", "pt"},
    {"português", "pt"}, {"dutch", "nl"},      {"nederlands", "nl"},   {"danish", "da"},      {"swedish", "sv"},
    {"norwegian", "no"}, {"finnish", "fi"},    {"polish", "pl"},       {"czech", "cs"},       {"greek", "el"},
    {"turkish", "tr"},   {"russian", "ru"},    {"arabic", "ar"},       {"hebrew", "he"},      {"japanese", "ja"},
    {"chinese", "zh"},   {"korean", "ko"},     {"hindi", "hi"},        {"catalan", "ca"},     {"basque", "eu"},
    {"hungarian", "hu"}, {"romanian", "ro"},   {"ukrainian", "uk"},    {"welsh", "cy"},       {"irish", "ga"},
};

TagVerdict by_name(std::string_view tag) {
  std::vector<std::string_view> names;
  for (const Named& one : named) names.push_back(one.name);
  const std::string_view name = base::nearest(tag, names);
  const auto* const found = std::find_if(std::begin(named), std::end(named), [&](const Named& one) { return one.name == name; });
  if (name.empty() || found == std::end(named)) return {};
  return {false, std::string(found->tag), base::lower(tag) == name};
}

}  // namespace

TagVerdict judge_language_tag(std::string_view tag) {
  if (well_formed(tag)) return {true, {}, false};
  std::string hyphens(tag);
  std::replace(hyphens.begin(), hyphens.end(), '_', '-');
  std::replace(hyphens.begin(), hyphens.end(), ' ', '-');
  if (hyphens != tag && well_formed(hyphens)) return {false, hyphens, true};
  return by_name(tag);
}

}  // namespace tamis::rules
