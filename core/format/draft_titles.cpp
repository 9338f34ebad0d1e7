#include "core/format/draft_titles.h"

#include "core/format/draft_keys.h"

namespace tamis::format::draft {

std::string heading_title(const Desk& desk, const Line& line) {
  const std::size_t lead = desk.lexicon.match(Set::heading_for, line.words, 0);
  base::Span where = line.text;
  if (lead > 0 && lead < line.words.size()) where.begin = line.words[lead].where.begin;
  std::string title = desk.folded(where);
  while (!title.empty() && (title.back() == ':' || title.back() == '.')) title.pop_back();
  if (!title.empty() && title[0] >= 'a' && title[0] <= 'z') title[0] = static_cast<char>(title[0] - 'a' + 'A');
  return title;
}

std::size_t Titles::find(const Recipe& recipe, const std::string& title) const {
  const std::string whole = slug(title, most_heading_words);
  if (const auto same = by_title_.find(whole); same != by_title_.end()) return same->second;
  const auto alike = by_head_.find(head_stem(title));
  if (alike == by_head_.end() || alike->second.size() != 1) return none;
  const std::string other = slug(recipe.components[alike->second[0]].title, most_heading_words);
  const bool part = whole.find(other) != std::string::npos || other.find(whole) != std::string::npos;
  return part ? alike->second[0] : none;
}

std::string Titles::head_stem(const std::string& title) const {
  return stem(head_of(lexicon_, title), lexicon_.language());
}

void Titles::remember(const Recipe& recipe, std::size_t component) {
  const std::string& title = recipe.components[component].title;
  by_title_.emplace(slug(title, most_heading_words), component);
  std::vector<std::size_t>& alike = by_head_[head_stem(title)];
  if (alike.size() < 2) alike.push_back(component);
}

}  // namespace tamis::format::draft
