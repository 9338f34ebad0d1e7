#include "core/format/xml_reader.h"

#include <cstring>

#include "core/base/utf8.h"
#include "core/format/encoding.h"
#include "core/format/xml_chars.h"

namespace tamis::format {
namespace {

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

}  // namespace

XmlReader::XmlReader(const std::string& text, fiche::Document* tree, std::vector<base::Finding>& findings)
    : base_(text.c_str()), end_(base_ + text.size()), p_(base_), tree_(tree), findings_(findings) {
  open_.reserve(32);
  attributes_.reserve(16);
}

bool XmlReader::fail(std::string_view rule, const char* begin, const char* end, std::string message,
                     std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.where = span(begin, end);
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  findings_.push_back(std::move(finding));
  return false;
}

fiche::Node XmlReader::parent() const { return open_.empty() ? 0 : open_.back().node; }

const char* XmlReader::character_end(const char* at) const {
  if (at == end_) return at;
  std::size_t next = 0;
  (void)base::next_scalar(std::string_view(at, static_cast<std::size_t>(end_ - at)), next);
  return at + next;
}

std::string XmlReader::shown(const char* at) const {
  if (at == end_) return "the end of the file";
  if (*at == '"') return "a double quote";
  return quoted(std::string_view(at, static_cast<std::size_t>(character_end(at) - at)));
}

bool XmlReader::read_document() {
  if (std::string_view(p_, static_cast<std::size_t>(end_ - p_)).starts_with(utf8_mark)) p_ += utf8_mark.size();
  if (std::strncmp(p_, "<?xml", 5) == 0 && is(p_[5], xml_space) && !declaration()) return false;
  return content();
}

bool XmlReader::read_foreign(std::span<const Prefix> declared) {
  prefixes_.assign(declared.begin(), declared.end());
  fragment_ = true;
  return content();
}

// One `name = "value"` of the XML declaration, when it stands there.
bool XmlReader::declared(std::string_view name, std::string_view& value) {
  const char* const back = p_;
  skip_space();
  if (p_ == back || std::strncmp(p_, name.data(), name.size()) != 0) {
    p_ = back;
    return false;
  }
  p_ += name.size();
  skip_space();
  if (*p_ != '=') return false;
  ++p_;
  skip_space();
  const char quote = *p_;
  if (quote != '"' && quote != '\'') return false;
  const char* const begin = ++p_;
  while (*p_ != quote && *p_ != '<' && p_ != end_) ++p_;
  if (*p_ != quote) return false;
  value = std::string_view(begin, static_cast<std::size_t>(p_ - begin));
  ++p_;
  return true;
}

bool XmlReader::declaration() {
  const char* const begin = p_;
  p_ += 5;
  std::string_view version, encoding, standalone;
  const auto digits = [](std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
  };
  if (!declared("version", version) || !version.starts_with("1.") || !digits(version.substr(2))) {
    return fail("not-well-formed", begin, p_, "the XML declaration does not give its version as 1.0",
                "write <?xml version=\"1.0\" encoding=\"UTF-8\"?>");
  }
  if (declared("encoding", encoding) && base::lower(encoding) != "utf-8") {
    return fail("not-utf-8", encoding.data(), encoding.data() + encoding.size(),
                "the file says it is " + quoted(encoding) + "; only UTF-8 is read",
                "save the file as UTF-8 and write encoding=\"UTF-8\"");
  }
  if (declared("standalone", standalone) && standalone != "yes" && standalone != "no") {
    return fail("not-well-formed", standalone.data(), standalone.data() + standalone.size(),
                "standalone is " + quoted(standalone) + ", it can be yes or no", "take standalone away");
  }
  skip_space();
  if (p_[0] != '?' || p_[1] != '>') {
    return fail("not-well-formed", p_, character_end(p_),
                "the XML declaration holds " + shown(p_) + " where its end ?> is expected",
                "write <?xml version=\"1.0\" encoding=\"UTF-8\"?>");
  }
  p_ += 2;
  return true;
}

bool XmlReader::content() {
  for (;;) {
    if (*p_ != '<' || (p_[1] == '!' && std::strncmp(p_, "<![CDATA[", 9) == 0)) {
      if (p_ == end_) return finish();
      if (!text()) return false;
    } else if (!markup()) {
      return false;
    }
  }
}

bool XmlReader::markup() {
  switch (p_[1]) {
    case '/':
      return end_tag();
    case '?':
      return instruction();
    case '!':
      if (p_[2] == '-' && p_[3] == '-') return comment();
      return doctype();
    default:
      return start_tag();
  }
}

bool XmlReader::end_tag() {
  const char* const begin = p_;
  p_ += 2;
  const char* const name = p_;
  if (!open_.empty()) {
    const Open& open = open_.back();
    const auto size = static_cast<std::size_t>(open.name_end - open.name);
    const bool same = static_cast<std::size_t>(end_ - p_) > size && std::memcmp(p_, open.name, size) == 0;
    if (same && (p_[size] == '>' || is(p_[size], xml_space))) {
      p_ += size;
      skip_space();
      if (*p_ == '>') return close(++p_);
      return fail("not-well-formed", begin, character_end(p_), "the end tag holds " + shown(p_) + " before its >",
                  "write </" + std::string(open.name, size) + ">");
    }
  }
  const char* colon = nullptr;
  if (!qualified_name(colon, "end tag")) return false;
  const std::string_view found(name, static_cast<std::size_t>(p_ - name));
  skip_space();
  if (*p_ == '>') ++p_;
  if (open_.empty()) {
    return fail("not-well-formed", begin, p_, "</" + std::string(found) + "> closes nothing: no element is open",
                "take it out, or write the <" + std::string(found) + "> it belongs to");
  }
  return wrong_end(open_.back(), begin, found);
}

bool XmlReader::wrong_end(const Open& open, const char* begin, std::string_view name) {
  const std::string expected(open.name, open.name_end);
  const std::string found(name);
  fail("not-well-formed", begin, p_, "found </" + found + ">, expected </" + expected + ">",
       "close <" + expected + "> first, or make the two names the same");
  last().related.push_back({span(open.name - 1, open.head_end), "<" + expected + "> opened here", {}, {}, {}});
  return false;
}

bool XmlReader::close(const char* end) {
  const Open closed = open_.back();
  open_.pop_back();
  if (open_.empty()) root_end_ = end;
  if (foreign_from_ == 0) {
    if (tree_ != nullptr) tree_->close(closed.node, offset(end));
  } else if (open_.size() + 1 == foreign_from_) {
    foreign_from_ = 0;
    keep_leaf(fiche::NodeKind::foreign, closed.name - 1,
              std::string_view(closed.name, static_cast<std::size_t>(closed.name_end - closed.name)),
              closed.name - 1, end, closed.head_end);
  }
  return true;
}

bool XmlReader::unclosed() {
  const Open& open = open_.back();
  const std::string name(open.name, open.name_end);
  fail("not-well-formed", open.name - 1, open.head_end, "<" + name + "> is never closed",
       "write </" + name + "> where it ends");
  last().related.push_back({span(end_, end_), "the file ends here", {}, {}, {}});
  return false;
}

bool XmlReader::finish() {
  if (!open_.empty()) return unclosed();
  if (root_seen_ && fragment_ && (base_[0] != '<' || base_[1] == '!' || base_[1] == '?' || root_end_ != end_)) {
    return fail("not-well-formed", base_, end_, "more than one element stands here",
                "give one element, and nothing before or behind it");
  }
  if (root_seen_) return true;
  return fail("not-well-formed", p_, p_, base_ == end_ ? "the file is empty" : "there is no element in the file",
              "a fiche starts with <fiche xmlns=\"" + std::string(fiche::fiche_namespace) + "\" id=\"...\">");
}

Read read_xml(std::shared_ptr<const base::Source> source) {
  Read made;
  const std::string& bytes = source->bytes();
  if (auto refusal = refuse_bytes(bytes)) {
    made.findings.push_back(std::move(*refusal));
    return made;
  }
  auto document = std::make_shared<fiche::Document>(source, fiche::Spelling::xml);
  // About what a fiche needs; a file of little else than tags grows the tree on the way.
  document->reserve(bytes.size() / 16 + 16, bytes.size() / 32 + 16);
  if (XmlReader(bytes, document.get(), made.findings).read_document()) made.document = std::move(document);
  return made;
}

}  // namespace tamis::format
