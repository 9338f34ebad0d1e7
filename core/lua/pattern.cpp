#include "core/lua/pattern.h"

#include <lauxlib.h>
#include <lua.h>

#include <cctype>

#include "core/lua/meter.h"

namespace tamis::lua {
namespace {

constexpr std::size_t open = static_cast<std::size_t>(-3);  // length of a capture that is not closed yet
constexpr int most_depth = 200;

bool is_of_class(unsigned char c, char name) {
  bool is = false;
  switch (std::tolower(static_cast<unsigned char>(name))) {
    case 'a': is = std::isalpha(c) != 0; break;
    case 'c': is = std::iscntrl(c) != 0; break;
    case 'd': is = std::isdigit(c) != 0; break;
    case 'g': is = std::isgraph(c) != 0; break;
    case 'l': is = std::islower(c) != 0; break;
    case 'p': is = std::ispunct(c) != 0; break;
    case 's': is = std::isspace(c) != 0; break;
    case 'u': is = std::isupper(c) != 0; break;
    case 'w': is = std::isalnum(c) != 0; break;
    case 'x': is = std::isxdigit(c) != 0; break;
    default: return name == static_cast<char>(c);
  }
  return std::isupper(static_cast<unsigned char>(name)) != 0 ? !is : is;
}

unsigned char byte(char c) { return static_cast<unsigned char>(c); }

}  // namespace

void Pattern::fail(const char* why) { luaL_error(state_, "malformed pattern (%s)", why); }

std::size_t Pattern::match(std::size_t from) {
  count_ = 0;
  depth_ = 0;
  return run(from, 0);
}

/// Matches from `s` on against the pattern from `p` on; gives where the match ends.
std::size_t Pattern::run(std::size_t s, std::size_t p) {
  if (++depth_ > most_depth) luaL_error(state_, "pattern too complex");
  std::size_t end = s;
  while (p < pattern_.size()) {
    spend(state_, 1);
    const char c = pattern_[p];
    const char next = p + 1 < pattern_.size() ? pattern_[p + 1] : '\0';
    if (c == '(') {
      end = next == ')' ? start_capture(s, p + 2, position) : start_capture(s, p + 1, open);
      --depth_;
      return end;
    }
    if (c == ')') {
      end = end_capture(s, p + 1);
      --depth_;
      return end;
    }
    if (c == '$' && p + 1 == pattern_.size()) {
      --depth_;
      return s == subject_.size() ? s : npos;
    }
    if (c == '%' && next == 'b') {
      end = balanced(s, p + 2);
      if (end == npos) break;
      s = end;
      p += 4;
      continue;
    }
    if (c == '%' && next == 'f') {
      if (p + 2 >= pattern_.size() || pattern_[p + 2] != '[') fail("missing '[' after '%f' in pattern");
      const std::size_t after = class_end(p + 2);
      const unsigned char before = s == 0 ? 0 : byte(subject_[s - 1]);
      const unsigned char here = s < subject_.size() ? byte(subject_[s]) : 0;
      if (in_set(before, p + 2, after - 1) || !in_set(here, p + 2, after - 1)) {
        end = npos;
        break;
      }
      p = after;
      continue;
    }
    if (c == '%' && std::isdigit(byte(next)) != 0) {
      end = again(s, next);
      if (end == npos) break;
      s = end;
      p += 2;
      continue;
    }
    const std::size_t after = class_end(p);
    const char many = after < pattern_.size() ? pattern_[after] : '\0';
    if (many == '*' || many == '+' || many == '-') {
      if (many == '-') {
        end = least_of(s, p, after);
      } else {
        end = many == '+' && !single(s, p, after) ? npos : most_of(s, p, after);
      }
      --depth_;
      return end;
    }
    const bool fits = single(s, p, after);
    if (many == '?') {
      if (fits) {
        end = run(s + 1, after + 1);
        if (end != npos) break;
      }
      p = after + 1;
      end = s;
      continue;
    }
    if (!fits) {
      end = npos;
      break;
    }
    ++s;
    p = after;
    end = s;
  }
  --depth_;
  if (p >= pattern_.size()) return s;
  return end;
}

std::size_t Pattern::start_capture(std::size_t s, std::size_t p, std::size_t length) {
  if (count_ >= most_captures) luaL_error(state_, "too many captures");
  held_[count_++] = {s, length};
  const std::size_t end = run(s, p);
  if (end == npos) --count_;
  return end;
}

std::size_t Pattern::end_capture(std::size_t s, std::size_t p) {
  const std::size_t number = capture_to_close();
  held_[number].length = s - held_[number].begin;
  const std::size_t end = run(s, p);
  if (end == npos) held_[number].length = open;
  return end;
}

std::size_t Pattern::most_of(std::size_t s, std::size_t p, std::size_t after) {
  const std::size_t least = pattern_[after] == '+' ? 1 : 0;
  std::size_t taken = 0;
  while (single(s + taken, p, after)) {
    spend(state_, 1);
    ++taken;
  }
  for (std::size_t left = taken + 1; left-- > least;) {
    const std::size_t end = run(s + left, after + 1);
    if (end != npos) return end;
  }
  return npos;
}

std::size_t Pattern::least_of(std::size_t s, std::size_t p, std::size_t after) {
  for (;;) {
    const std::size_t end = run(s, after + 1);
    if (end != npos) return end;
    if (!single(s, p, after)) return npos;
    spend(state_, 1);
    ++s;
  }
}

std::size_t Pattern::balanced(std::size_t s, std::size_t p) {
  if (p + 1 >= pattern_.size()) fail("missing arguments to '%b'");
  if (s >= subject_.size() || subject_[s] != pattern_[p]) return npos;
  std::size_t level = 1;
  for (std::size_t at = s + 1; at < subject_.size(); ++at) {
    spend(state_, 1);
    if (subject_[at] == pattern_[p + 1]) {
      if (--level == 0) return at + 1;
    } else if (subject_[at] == pattern_[p]) {
      ++level;
    }
  }
  return npos;
}

std::size_t Pattern::again(std::size_t s, char number) {
  const Capture& said = held_[checked_capture(number)];
  const std::string_view words = subject_.substr(said.begin, said.length);
  spend(state_, words.size() / 16);
  return subject_.substr(s, words.size()) == words ? s + words.size() : npos;
}

std::size_t Pattern::class_end(std::size_t p) {
  const char c = pattern_[p++];
  if (c == '%') {
    if (p >= pattern_.size()) fail("ends with '%'");
    return p + 1;
  }
  if (c != '[') return p;
  if (p < pattern_.size() && pattern_[p] == '^') ++p;
  do {
    if (p >= pattern_.size()) fail("missing ']'");
    if (pattern_[p++] == '%') ++p;
  } while (p >= pattern_.size() || pattern_[p] != ']');
  return p + 1;
}

bool Pattern::single(std::size_t s, std::size_t p, std::size_t after) {
  if (s >= subject_.size()) return false;
  const unsigned char c = byte(subject_[s]);
  switch (pattern_[p]) {
    case '.': return true;
    case '%': return is_of_class(c, pattern_[p + 1]);
    case '[': return in_set(c, p, after - 1);
    default: return byte(pattern_[p]) == c;
  }
}

/// `p` at the "[", `last` at the "]".
bool Pattern::in_set(unsigned char c, std::size_t p, std::size_t last) {
  spend(state_, (last - p) / 8);
  bool found = true;
  if (pattern_[p + 1] == '^') {
    found = false;
    ++p;
  }
  while (++p < last) {
    if (pattern_[p] == '%') {
      ++p;
      if (is_of_class(c, pattern_[p])) return found;
    } else if (pattern_[p + 1] == '-' && p + 2 < last) {
      if (byte(pattern_[p]) <= c && c <= byte(pattern_[p + 2])) return found;
      p += 2;
    } else if (byte(pattern_[p]) == c) {
      return found;
    }
  }
  return !found;
}

std::size_t Pattern::capture_to_close() {
  for (std::size_t at = count_; at-- > 0;)
    if (held_[at].length == open) return at;
  luaL_error(state_, "invalid pattern capture");
  return 0;
}

std::size_t Pattern::checked_capture(char number) {
  const std::size_t at = static_cast<std::size_t>(number - '1');
  if (number == '0' || at >= count_ || held_[at].length == open || held_[at].length == position)
    luaL_error(state_, "invalid capture index %%%c", number);
  return at;
}

}  // namespace tamis::lua
