#include <array>
#include <cstdio>
#include <optional>

#include "core/base/utf8.h"
#include "core/format/json_reader.h"
#include "core/format/xml_chars.h"

// What is wrong with a JSON file, in words. The parser says only that it can't go on; the place and the reason are
// found here, from the last token that was read.

namespace tamis::format {
namespace {

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

bool letter(char c) { return is(c, starts_name); }
bool digit(char c) { return c >= '0' && c <= '9'; }

/// The number that four hexadecimal digits give.
std::optional<char32_t> four_digits(std::string_view text) {
  if (text.size() < 4) return std::nullopt;
  char32_t value = 0;
  for (const char c : text.substr(0, 4)) {
    const bool hex_letter = (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
    if (!digit(c) && !hex_letter) return std::nullopt;
    value = value * 16U + static_cast<char32_t>(digit(c) ? c - '0' : (c | 0x20) - 'a' + 10);
  }
  return value;
}

bool high_surrogate(char32_t c) { return c >= 0xD800 && c <= 0xDBFF; }
bool low_surrogate(char32_t c) { return c >= 0xDC00 && c <= 0xDFFF; }

std::string code_point(char32_t c) {
  std::array<char, 16> out{};
  std::snprintf(out.data(), out.size(), "U+%04X", static_cast<unsigned>(c));
  return out.data();
}

}  // namespace

base::Span JsonReader::character(std::uint32_t at) const {
  if (at >= bytes_.size()) return {at, at};
  std::size_t next = at;
  (void)base::next_scalar(bytes_, next);
  return {at, static_cast<std::uint32_t>(next)};
}

std::string JsonReader::shown(std::uint32_t at) const {
  if (at >= bytes_.size()) return "the end of the file";
  if (bytes_[at] == '"') return "a text";
  return quoted(slice(character(at)));
}

std::uint32_t JsonReader::word_end(std::uint32_t at) const {
  while (at < bytes_.size() && (digit(bytes_[at]) || letter(bytes_[at]) || bytes_[at] == '.' ||
                                bytes_[at] == '-' || bytes_[at] == '+')) {
    ++at;
  }
  return at;
}

// RFC 8259, section 6. Behind a leading zero the number has ended.
std::uint32_t JsonReader::number_end(std::uint32_t at) const {
  const auto digits = [&] {
    while (digit(bytes_[at])) ++at;
  };
  if (bytes_[at] == '-') ++at;
  if (bytes_[at] == '0') {
    ++at;
  } else {
    digits();
  }
  if (bytes_[at] == '.') {
    ++at;
    digits();
  }
  if (bytes_[at] == 'e' || bytes_[at] == 'E') {
    at += bytes_[at + 1] == '-' || bytes_[at + 1] == '+' ? 2U : 1U;
    digits();
  }
  return at;
}

bool JsonReader::wants_name() const {
  if (wanted_ != Wanted::nothing || frames_.empty()) return false;
  const Place place = frames_.back().place;
  return place == Place::top || place == Place::item || place == Place::body;
}

std::string JsonReader::expected() const {
  switch (wanted_) {
    case Wanted::body:
      return "a text or an object";
    case Wanted::attribute:
      return "a text in quotes";
    case Wanted::content:
      return "an array";
    case Wanted::before:
    case Wanted::after:
      return "an array of comments";
    case Wanted::comment:
    case Wanted::instruction:
    case Wanted::foreign:
      return "a text in quotes";
    case Wanted::nothing:
      break;
  }
  if (frames_.empty()) return "an object";
  if (wants_name()) return "a name in quotes";
  return frames_.back().place == Place::content ? "a text or an element" : "a comment";
}

// A value of the wrong kind.
bool JsonReader::misplaced(base::Span token, std::string_view found) {
  std::string advice;
  const std::string name(name_text_);
  const bool in_content = wanted_ == Wanted::nothing && !frames_.empty();
  if (wanted_ == Wanted::content || wanted_ == Wanted::before || wanted_ == Wanted::after) {
    advice = "write " + quoted(slice(name_)) + ": [...]";
  } else if (wanted_ == Wanted::body) {
    advice = "write {\"" + name + "\": \"...\"} or {\"" + name + "\": {...}}";
  } else if (wanted_ == Wanted::attribute) {
    const bool yes = found == "true", no = found == "false";
    advice = yes               ? "write \"yes\""
             : no              ? "write \"no\""
             : found == "null" ? "leave it out"
                               : "write one text in quotes";
  } else if (in_content) {
    advice = "a sentence is an array of texts and elements: [\"Warm the \", {\"use\": {...}}, \".\"]";
  } else {
    advice = "a fiche is written {\"fiche\": {...}}";
  }
  return fail("not-well-formed", token, std::string(found) + " stands here, expected " + expected(),
              std::move(advice));
}

bool JsonReader::bad_name(base::Span inside, std::string_view name, bool attribute) {
  const std::string kind = attribute ? "an attribute" : "an element";
  if (!attribute && is_prefixed_name(name)) {
    return fail("not-well-formed", inside,
                quoted(name) + " has a prefix; an element of the house's own is written as XML",
                "write {\"#xml\": \"<" + std::string(name) + ">...</" + std::string(name) + ">\"}");
  }
  return fail("not-well-formed", inside, quoted(name) + " is not the name of " + kind,
              "names are letters, digits, - and _, and start with a letter");
}

// ---------------------------------------------------------------- strings

/// The escape at `at`; moves `next` past it. Also refuses what JSON can say and no text of ours can hold.
bool JsonReader::escape_fault(std::uint32_t at, std::uint32_t& next) {
  const std::string_view rest = std::string_view(bytes_).substr(at);
  if (rest.size() < 2 || std::string_view("\"\\/bfnrtu").find(rest[1]) == std::string_view::npos) {
    const base::Span after = character(at + 1);
    return fail("not-well-formed", {at, after.end},
                "the escape " + std::string(slice({at, after.end})) + " is not known",
                "write \\\\ for a backslash");
  }
  next = at + (rest[1] == 'u' ? 6U : 2U);
  const auto refuse = [&](char32_t c) {
    return fail("not-well-formed", {at, next}, "the character " + code_point(c) + " has no place in a text",
                "take it out");
  };
  if (rest[1] == 'b' || rest[1] == 'f') return refuse(rest[1] == 'b' ? 0x08 : 0x0C);
  if (rest[1] != 'u') return true;
  const auto first = four_digits(rest.substr(2));
  if (!first) {
    return fail("not-well-formed", {at, at + 2}, "\\u is not followed by four hexadecimal digits",
                "write it as \\u00B0");
  }
  if (!high_surrogate(*first) && !low_surrogate(*first)) return is_xml_char(*first) || refuse(*first);
  const auto second = rest.substr(6, 2) == "\\u" ? four_digits(rest.substr(8)) : std::nullopt;
  if (low_surrogate(*first) || !second || !low_surrogate(*second)) {
    return fail("not-well-formed", {at, next},
                "the escape " + std::string(rest.substr(0, 6)) + " is half of a pair",
                "write the two halves one behind the other, or the character itself");
  }
  next += 6;
  return true;
}

/// A string the parser took: its characters must be such as XML can hold too.
bool JsonReader::check_characters(base::Span inside) {
  const std::string_view raw = slice(inside);
  for (std::size_t at = raw.find('\\'); at != std::string_view::npos;) {
    std::uint32_t next = 0;
    if (!escape_fault(inside.begin + static_cast<std::uint32_t>(at), next)) return false;
    at = raw.find('\\', next - inside.begin);
  }
  return true;
}

/// A string the parser did not take.
bool JsonReader::string_fault(std::uint32_t at) {
  for (std::uint32_t p = at + 1; p < bytes_.size();) {
    if (bytes_[p] == '"') break;
    if (bytes_[p] == '\\') {
      std::uint32_t next = 0;
      if (!escape_fault(p, next)) return false;
      p = next;
    } else if (static_cast<unsigned char>(bytes_[p]) < 0x20) {
      const bool tab = bytes_[p] == '\t';
      return fail("not-well-formed", {p, p + 1}, tab ? "a tab stands in a text" : "the line ends in a text",
                  tab ? "write a space, or \\t" : "close the text with \" on its line, or write \\n");
    } else {
      ++p;
    }
  }
  return fail("not-well-formed", {at, at + 1}, "a text without its closing quote", "write \" where it ends");
}

bool JsonReader::number_fault(std::uint32_t at) {
  const base::Span number{at, word_end(at)};
  return fail("not-well-formed", number, std::string(slice(number)) + " is not a number that JSON knows",
              "write it in quotes");
}

// ---------------------------------------------------------------- between tokens

bool JsonReader::file_ends() {
  const auto end = static_cast<std::uint32_t>(bytes_.size());
  if (frames_.empty()) {
    return fail("not-well-formed", {end, end}, "the file is empty", "a fiche is written {\"fiche\": {...}}");
  }
  const Frame& frame = frames_.back();
  const bool array = frame.place == Place::content || frame.place == Place::leaves;
  fail("not-well-formed", {frame.begin, frame.begin + 1},
       array ? "\"[\" is never closed" : "\"{\" is never closed",
       array ? "write ] where it ends" : "write } where it ends");
  findings_.back().related.push_back({{end, end}, "the file ends here", {}, {}, {}});
  return false;
}

bool JsonReader::syntax_fault() {
  if (!findings_.empty()) return false;
  std::uint32_t at = skip_blank(read_to_);
  const auto next_is = [&](char c) { return at < bytes_.size() && bytes_[at] == c; };
  if (last_was_key_) {
    if (!next_is(':') && at < bytes_.size()) {
      return fail("not-well-formed", character(at),
                  shown(at) + " stands behind " + quoted(slice(name_)) + ", expected :",
                  "write \"" + std::string(slice(name_)) + "\": ...");
    }
    return value_fault(next_is(':') ? skip_blank(at + 1) : at);
  }
  if (frames_.empty() && tree_.root() != fiche::none) {
    return fail("not-well-formed", character(at), shown(at) + " stands behind the end of the document",
                "take it out");
  }
  if (frames_.empty() || frames_.back().items == 0) return value_fault(at);
  const bool array = frames_.back().place == Place::content || frames_.back().place == Place::leaves;
  if (at >= bytes_.size()) return file_ends();
  if (next_is('/')) return value_fault(at);
  if (!next_is(',')) {
    return fail("not-well-formed", character(at), shown(at) + " stands here, expected , or " + (array ? "]" : "}"),
                "put a comma between two pieces");
  }
  const std::uint32_t comma = at;
  at = skip_blank(at + 1);
  if (next_is(']') || next_is('}')) {
    fail("not-well-formed", {comma, comma + 1}, "a comma stands before " + shown(at), "take the comma out");
    findings_.back().edits.push_back({{comma, comma + 1}, ""});
    return false;
  }
  return value_fault(at);
}

/// Where a name or a value had to start.
bool JsonReader::value_fault(std::uint32_t at) {
  if (at >= bytes_.size()) return file_ends();
  const char c = bytes_[at];
  if (c == '"' && (wants_name() || wanted_ != Wanted::nothing || !frames_.empty())) return string_fault(at);
  if (c == '/' && at + 1 < bytes_.size() && (bytes_[at + 1] == '/' || bytes_[at + 1] == '*')) {
    return fail("not-well-formed", {at, at + 2}, "a comment stands here; JSON has none",
                "write {\"#comment\": \"...\"} where an element may stand");
  }
  if (c == '\'') {
    return fail("not-well-formed", {at, at + 1}, "a text stands in single quotes", "write it in double quotes");
  }
  if ((digit(c) || c == '-') && !wants_name()) return number_fault(at);
  if (letter(c)) {
    const base::Span word{at, word_end(at)};
    return fail("not-well-formed", word,
                std::string(slice(word)) + " stands without quotes, expected " + expected(),
                "write \"" + std::string(slice(word)) + "\"");
  }
  return fail(
      "not-well-formed", character(at), shown(at) + " stands here, expected " + expected(),
      frames_.empty() ? "a fiche is written {\"fiche\": {...}}" : "write it, or take out what stands before");
}

}  // namespace tamis::format
