#include <algorithm>
#include <cstdio>
#include <cstring>

#include "core/base/utf8.h"
#include "core/format/xml_chars.h"
#include "core/format/xml_reader.h"

namespace tamis::format {
namespace {

std::string_view view(const char* begin, const char* end) {
  return {begin, static_cast<std::size_t>(end - begin)};
}

struct Named {
  std::string_view name;
  char32_t character;
};
constexpr Named entities[] = {{"amp", '&'}, {"lt", '<'}, {"gt", '>'}, {"quot", '"'}, {"apos", '\''}};

// Names that HTML gives to characters a recipe holds (HTML 4.01, section 24); for the advice only.
constexpr Named html_names[] = {
    {"nbsp", 160},   {"deg", 176},    {"times", 215},   {"frac14", 188}, {"frac12", 189}, {"frac34", 190},
    {"ndash", 8211}, {"mdash", 8212}, {"hellip", 8230}, {"agrave", 224}, {"acirc", 226},  {"auml", 228},
    {"ccedil", 231}, {"egrave", 232}, {"eacute", 233},  {"ecirc", 234},  {"euml", 235},   {"icirc", 238},
    {"iuml", 239},   {"ntilde", 241}, {"oacute", 243},  {"ocirc", 244},  {"ouml", 246},   {"szlig", 223},
    {"ucirc", 251},  {"uuml", 252},   {"aacute", 225},  {"iacute", 237}, {"uacute", 250}, {"Eacute", 201},
    {"lsquo", 8216}, {"rsquo", 8217}, {"ldquo", 8220},  {"rdquo", 8221}, {"laquo", 171},  {"raquo", 187},
    {"copy", 169},   {"euro", 8364},  {"pound", 163},   {"micro", 181},  {"middot", 183}, {"thinsp", 8201},
    {"oelig", 339},  {"plusmn", 177}, {"bull", 8226},   {"Auml", 196},   {"Ouml", 214},   {"Uuml", 220},
};

/// The character of a reference that has been checked; `at` moves past its semicolon.
char32_t referred(std::string_view raw, std::size_t& at) {
  const std::size_t end = raw.find(';', at);
  const std::string_view name = raw.substr(at + 1, end - at - 1);
  at = end + 1;
  if (name[0] != '#') {
    for (const Named& entity : entities) {
      if (entity.name == name) return entity.character;
    }
    return 0xFFFD;
  }
  const bool hex = name[1] == 'x';
  char32_t value = 0;
  for (const char c : name.substr(hex ? 2 : 1)) {
    const auto digit = static_cast<char32_t>(c <= '9' ? c - '0' : (c | 0x20) - 'a' + 10);
    value = value * (hex ? 16U : 10U) + digit;
  }
  return value;
}

constexpr std::string_view cdata_open = "<![CDATA[";

}  // namespace

void decode_text(std::string_view raw, std::string& out) {
  std::size_t at = 0;
  while (at < raw.size()) {
    const std::size_t stop = std::min(raw.find_first_of("&\r<", at), raw.size());
    out += raw.substr(at, stop - at);
    at = stop;
    if (at == raw.size()) return;
    if (raw[at] == '&') {
      base::append_scalar(out, referred(raw, at));
    } else if (raw[at] == '<') {
      const std::size_t end = raw.find("]]>", at);
      append_with_line_feeds(out, raw.substr(at + cdata_open.size(), end - at - cdata_open.size()));
      at = end + 3;
    } else {
      out += '\n';
      at += raw.substr(at, 2) == "\r\n" ? 2U : 1U;
    }
  }
}

void decode_attribute(std::string_view raw, std::string& out) {
  for (std::size_t at = 0; at < raw.size();) {
    if (raw[at] == '&') {
      base::append_scalar(out, referred(raw, at));
    } else if (is(raw[at], xml_space)) {
      out += ' ';
      at += raw.substr(at, 2) == "\r\n" ? 2U : 1U;
    } else {
      out += raw[at++];
    }
  }
}

// ---------------------------------------------------------------- text

bool XmlReader::text() {
  const char* const begin = p_;
  bool decode = false;
  for (;;) {
    while (!is(*p_, stops_text)) ++p_;
    if (*p_ == '&') {
      decode = true;
      if (!reference()) return false;
    } else if (*p_ == ']') {
      if (p_[1] == ']' && p_[2] == '>') {
        return fail("not-well-formed", p_, p_ + 3, "\"]]>\" stands in the text", "write ]]&gt;");
      }
      ++p_;
    } else if (*p_ == '\r') {
      decode = true;
      ++p_;
    } else if (*p_ == '<' && p_[1] == '!' && std::strncmp(p_, cdata_open.data(), cdata_open.size()) == 0) {
      decode = true;
      if (!cdata()) return false;
    } else {
      break;  // a tag, or the end of the file
    }
  }
  if (open_.empty()) return outside_root(begin);
  if (tree_ == nullptr || foreign_from_ != 0) return true;
  fiche::Document::NewNode made;
  made.kind = fiche::NodeKind::text;
  made.parent = parent();
  made.value = view(begin, p_);
  made.span = made.name_span = made.head_span = made.raw = span(begin, p_);
  if (decode) {
    scratch_.clear();
    decode_text(made.value, scratch_);
    made.value = scratch_;
  }
  tree_->append(made);
  return true;
}

bool XmlReader::outside_root(const char* begin) {
  while (begin != p_ && is(*begin, xml_space)) ++begin;
  if (begin == p_) return true;
  const char* end = begin;
  while (end != p_ && *end != '\n' && *end != '\r') ++end;
  if (root_seen_) {
    return fail("not-well-formed", begin, end, "text stands behind the root element",
                "take it out, or bring it inside the root element");
  }
  return fail("not-well-formed", begin, end, "the file starts with text, expected <fiche or <kitchen",
              "a typed recipe becomes a fiche with: tamis new fiche --from FILE");
}

bool XmlReader::cdata() {
  const char* const begin = p_;
  const std::string_view rest = view(p_, end_);
  const std::size_t close = rest.find("]]>");
  if (close == std::string_view::npos) {
    return fail("not-well-formed", begin, begin + cdata_open.size(), "a CDATA section without its end",
                "write ]]> where it ends");
  }
  p_ += close + 3;
  return true;
}

bool XmlReader::less_than_in_text(const char* at) {
  fail("not-well-formed", at, at + 1, "\"<\" is followed by " + shown(at + 1) + ", expected the name of a tag",
       "write &lt; where the sign itself is meant");
  const bool sign = is(at[1], xml_space) || (at[1] >= '0' && at[1] <= '9') || at[1] == '=';
  if (sign && !open_.empty()) last().edits.push_back({span(at, at + 1), "&lt;"});
  return false;
}

// ---------------------------------------------------------------- references

bool XmlReader::reference() {
  if (p_[1] == '#') return number_reference();
  const char* const end = skip_name(p_ + 1);
  if (end != p_ + 1 && *end == ';') return named_reference();
  fail("not-well-formed", p_, p_ + 1, "\"&\" stands alone", "write &amp;");
  last().edits.push_back({span(p_, p_ + 1), "&amp;"});
  return false;
}

bool XmlReader::number_reference() {
  const char* const begin = p_;
  const bool hex = p_[2] == 'x';
  p_ += hex ? 3 : 2;
  const char* const digits = p_;
  const auto is_digit = [hex](char c) {
    return (c >= '0' && c <= '9') || (hex && ((c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F')));
  };
  char32_t value = 0;
  for (; is_digit(*p_); ++p_) {
    const auto digit = static_cast<char32_t>(*p_ <= '9' ? *p_ - '0' : (*p_ | 0x20) - 'a' + 10);
    value = std::min<char32_t>(value * (hex ? 16U : 10U) + digit, 0x110000);
  }
  if (p_ == digits || *p_ != ';') {
    return fail(
        "not-well-formed", begin, p_,
        "the character number " + std::string(view(begin, p_)) + " has no " + (p_ == digits ? "digits" : ";"),
        "write it as &#176; or &#xB0;, or write the character itself");
  }
  ++p_;
  if (is_xml_char(value)) return true;
  return fail("not-well-formed", begin, p_, std::string(view(begin, p_)) + " is no character that a text can hold",
              "take it out");
}

bool XmlReader::named_reference() {
  const char* const begin = p_;
  p_ = skip_name(p_ + 1);
  const std::string_view name = view(begin + 1, p_++);
  for (const Named& entity : entities) {
    if (entity.name == name) return true;
  }
  std::string advice = "write the character itself, or its number as &#...;";
  std::string number;
  for (const Named& known : html_names) {
    if (known.name == name) number = "&#" + std::to_string(static_cast<unsigned>(known.character)) + ";";
  }
  if (!number.empty()) advice = "write " + number + " or the character itself";
  fail("unknown-entity", begin, p_,
       "&" + std::string(name) + "; is not known; only &amp; &lt; &gt; &quot; &apos; have names",
       std::move(advice));
  if (!number.empty()) last().edits.push_back({span(begin, p_), number});
  return false;
}

// ---------------------------------------------------------------- comments, instructions, DOCTYPE

void XmlReader::keep_leaf(fiche::NodeKind kind, const char* begin, std::string_view name, const char* value,
                          const char* value_end, const char* head_end) {
  if (tree_ == nullptr || foreign_from_ != 0) return;
  fiche::Document::NewNode made;
  made.kind = kind;
  made.parent = parent();
  made.name = name;
  made.value = view(value, value_end);
  made.span = span(begin, p_);
  made.head_span = span(begin, head_end);
  made.name_span = name.empty() ? made.head_span : span(name.data(), name.data() + name.size());
  made.raw = span(value, value_end);
  if (made.value.find('\r') != std::string_view::npos) {
    scratch_.clear();
    append_with_line_feeds(scratch_, made.value);
    made.value = scratch_;
  }
  tree_->append(made);
}

bool XmlReader::comment() {
  const char* const begin = p_;
  const std::string_view rest = view(p_ + 4, end_);
  const std::size_t dashes = rest.find("--");
  if (dashes == std::string_view::npos) {
    return fail("not-well-formed", begin, begin + 4, "a comment without its end", "write --> where it ends");
  }
  const char* const end = p_ + 4 + dashes;
  if (end[2] != '>') {
    return fail("not-well-formed", end, end + 2, "\"--\" stands inside a comment",
                "write a single dash, or a long one (–)");
  }
  p_ = end + 3;
  keep_leaf(fiche::NodeKind::comment, begin, {}, begin + 4, end, p_);
  return true;
}

bool XmlReader::instruction() {
  const char* const begin = p_;
  const char* const target_end = skip_name(p_ + 2);
  const std::string_view target = view(p_ + 2, target_end);
  if (target.empty() || (!is(*target_end, xml_space) && std::strncmp(target_end, "?>", 2) != 0)) {
    return fail("not-well-formed", begin, character_end(target_end),
                "a processing instruction without a proper name",
                "it is written <?name text?>; a colon has no place in its name");
  }
  if (target.size() > most_name_bytes) {
    return fail("over-limit", target.data(), target_end,
                "a name of " + std::to_string(target.size()) + " bytes; at most " +
                    std::to_string(most_name_bytes) + " are read",
                "use a shorter name");
  }
  if (base::lower(target) == "xml") {
    return fail("not-well-formed", begin, target_end,
                "the XML declaration can only be the first thing in the file",
                "move it to the very start, or take it out");
  }
  const std::string_view rest = view(target_end, end_);
  const std::size_t close = rest.find("?>");
  if (close == std::string_view::npos) {
    return fail("not-well-formed", begin, target_end, "a processing instruction without its end",
                "write ?> where it ends");
  }
  const char* const end = target_end + close;
  const char* data = target_end;
  while (data != end && is(*data, xml_space)) ++data;
  p_ = end + 2;
  keep_leaf(fiche::NodeKind::instruction, begin, target, data, end, p_);
  return true;
}

bool XmlReader::doctype() {
  const char* end = p_ + 2;
  while (is(*end, starts_name)) ++end;
  if (base::lower(view(p_ + 2, end)) == "doctype") {
    return fail("doctype", p_, end, "a DOCTYPE is refused: a fiche brings no entities or outside parts of its own",
                "take the DOCTYPE out; write characters as themselves or as &#...;");
  }
  return fail("not-well-formed", p_, end,
              "\"" + std::string(view(p_, end)) + "\" starts neither a comment nor a CDATA section",
              "a comment is written <!-- ... -->");
}

}  // namespace tamis::format
