// The XML reader against two others: Expat, which is a strict, namespace-aware parser, says what is well-formed
// and what the events are (Expat 2.5, https://libexpat.github.io); pugixml, which is not strict, must at least
// read the same values out of what both accept (pugixml 1.13, https://pugixml.org).
#include <catch2/catch.hpp>

#include "tests/format/random_document.h"
#include "tests/format/reading.h"

#ifdef TAMIS_WITH_ORACLES
#include <expat.h>

#include <map>
#include <pugixml.hpp>
#include <set>

namespace tamis::tests {
namespace {

using fiche::Document;
using fiche::Node;
using fiche::NodeKind;

std::string normal_line_ends(std::string_view raw) {
  std::string out;
  for (std::size_t i = 0; i < raw.size(); ++i) {
    if (raw[i] == '\r' && raw.substr(i, 2) == "\r\n") continue;
    out += raw[i] == '\r' ? '\n' : raw[i];
  }
  return out;
}

// ---------------------------------------------------------------- Expat

/// What Expat reports, as lines of text. An element of a house's own is its source, whole.
class ExpatEvents {
 public:
  explicit ExpatEvents(const std::string& text) : text_(text), parser_(XML_ParserCreateNS("UTF-8", '|')) {
    XML_SetUserData(parser_, this);
    XML_SetElementHandler(parser_, &ExpatEvents::start, &ExpatEvents::end);
    XML_SetCharacterDataHandler(parser_, &ExpatEvents::text);
    XML_SetCommentHandler(parser_, &ExpatEvents::comment);
    XML_SetProcessingInstructionHandler(parser_, &ExpatEvents::instruction);
    good_ = XML_Parse(parser_, text.data(), static_cast<int>(text.size()), 1) == XML_STATUS_OK;
    error_at_ = static_cast<std::size_t>(XML_GetCurrentByteIndex(parser_));
    if (!good_) error_ = XML_ErrorString(XML_GetErrorCode(parser_));
    XML_ParserFree(parser_);
  }
  ExpatEvents(const ExpatEvents&) = delete;
  ExpatEvents& operator=(const ExpatEvents&) = delete;

  [[nodiscard]] bool good() const { return good_; }
  [[nodiscard]] const std::string& events() const { return events_; }
  [[nodiscard]] std::string error() const { return error_ + " at " + std::to_string(error_at_); }
  [[nodiscard]] bool stopped_at_high_byte() const {
    return error_at_ < text_.size() && static_cast<unsigned char>(text_[error_at_]) >= 0x80;
  }

 private:
  static ExpatEvents& self(void* data) { return *static_cast<ExpatEvents*>(data); }

  void flush() {
    if (!characters_.empty()) events_ += "T " + characters_ + "\n";
    characters_.clear();
  }

  static void start(void* data, const XML_Char* name, const XML_Char** attributes) {
    ExpatEvents& my = self(data);
    if (my.foreign_depth_ > 0) {
      ++my.foreign_depth_;
      return;
    }
    my.flush();
    const std::string expanded(name);
    const std::string ours = std::string(fiche::fiche_namespace) + "|";
    if (!expanded.starts_with(ours)) {
      my.foreign_depth_ = 1;
      my.foreign_begin_ = static_cast<std::size_t>(XML_GetCurrentByteIndex(my.parser_));
      return;
    }
    my.events_ += "E " + expanded.substr(ours.size()) + "\n";
    for (; *attributes != nullptr; attributes += 2) {
      my.events_ += "A " + std::string(attributes[0]) + "=" + attributes[1] + "\n";
    }
  }

  static void end(void* data, const XML_Char* /*name*/) {
    ExpatEvents& my = self(data);
    if (my.foreign_depth_ > 0) {
      if (--my.foreign_depth_ > 0) return;
      const auto close =
          static_cast<std::size_t>(XML_GetCurrentByteIndex(my.parser_) + XML_GetCurrentByteCount(my.parser_));
      my.events_ +=
          "F " +
          normal_line_ends(std::string_view(my.text_).substr(my.foreign_begin_, close - my.foreign_begin_)) + "\n";
      return;
    }
    my.flush();
    my.events_ += "/\n";
  }

  static void text(void* data, const XML_Char* text, int size) {
    if (self(data).foreign_depth_ == 0) self(data).characters_.append(text, static_cast<std::size_t>(size));
  }
  static void comment(void* data, const XML_Char* text) {
    if (self(data).foreign_depth_ > 0) return;
    self(data).flush();
    self(data).events_ += "C " + std::string(text) + "\n";
  }
  static void instruction(void* data, const XML_Char* target, const XML_Char* text) {
    if (self(data).foreign_depth_ > 0) return;
    self(data).flush();
    self(data).events_ += "P " + std::string(target) + " " + text + "\n";
  }

  const std::string& text_;
  XML_Parser parser_;
  std::string events_, characters_, error_;
  std::size_t error_at_ = 0, foreign_begin_ = 0;
  int foreign_depth_ = 0;
  bool good_ = false;
};

// ---------------------------------------------------------------- ours

class OurEvents {
 public:
  explicit OurEvents(const Document& d) : d_(d) {
    for (fiche::Attr a = d.first_attribute(d.root()); a != fiche::none; a = d.next_attribute(a)) {
      const std::string name(d.attribute_name(a));
      if (name.starts_with("xmlns:")) uris_[name.substr(6)] = d.attribute_value(a);
    }
    uris_["xml"] = "http://www.w3.org/XML/1998/namespace";
    for (Node c = d.first_child(d.top()); c != fiche::none; c = d.next(c)) node(c);
  }
  [[nodiscard]] const std::string& events() const { return out_; }

 private:
  std::string expanded(std::string_view name) {
    const std::size_t colon = name.find(':');
    if (colon == std::string_view::npos) return std::string(name);
    return uris_.at(std::string(name.substr(0, colon))) + "|" + std::string(name.substr(colon + 1));
  }

  void node(Node n) {
    const std::string value(d_.value(n));
    switch (d_.kind(n)) {
      case NodeKind::text:
        if (!value.empty()) out_ += "T " + value + "\n";
        return;
      case NodeKind::comment:
        out_ += "C " + value + "\n";
        return;
      case NodeKind::instruction:
        out_ += "P " + std::string(d_.name(n)) + " " + value + "\n";
        return;
      case NodeKind::foreign:
        out_ += "F " + value + "\n";
        return;
      case NodeKind::element:
        break;
    }
    out_ += "E " + std::string(d_.name(n)) + "\n";
    for (fiche::Attr a = d_.first_attribute(n); a != fiche::none; a = d_.next_attribute(a)) {
      const std::string_view name = d_.attribute_name(a);
      if (name == "xmlns" || name.starts_with("xmlns:")) continue;
      out_ += "A " + expanded(name) + "=" + std::string(d_.attribute_value(a)) + "\n";
    }
    for (Node c = d_.first_child(n); c != fiche::none; c = d_.next(c)) node(c);
    out_ += "/\n";
  }

  const Document& d_;
  std::map<std::string, std::string> uris_;
  std::string out_;
};

// ---------------------------------------------------------------- pugixml

class PugiEvents {
 public:
  explicit PugiEvents(const pugi::xml_node& top) {
    for (const pugi::xml_node& child : top) node(child);
    flush();
  }
  [[nodiscard]] const std::string& events() const { return out_; }

 private:
  void flush() {
    if (!characters_.empty()) out_ += "T " + characters_ + "\n";
    characters_.clear();
  }
  void node(const pugi::xml_node& n) {
    if (n.type() == pugi::node_pcdata || n.type() == pugi::node_cdata) {
      characters_ += n.value();
      return;
    }
    flush();
    const std::string name = n.name();
    switch (n.type()) {
      case pugi::node_comment:
        out_ += std::string("C ") + n.value() + "\n";
        return;
      case pugi::node_pi:
        out_ += "P " + name + "\n";
        return;
      case pugi::node_element:
        break;
      default:
        return;
    }
    if (name.find(':') != std::string::npos) {
      out_ += "F\n";
      return;
    }
    out_ += "E " + name + "\n";
    for (const pugi::xml_attribute& a : n.attributes())
      out_ += std::string("A ") + a.name() + "=" + a.value() + "\n";
    for (const pugi::xml_node& child : n) node(child);
    flush();
    out_ += "/\n";
  }

  std::string out_, characters_;
};

/// Ours, as far as pugixml tells the same: it gives instructions without their data alike, and no foreign source.
class OurPlainEvents {
 public:
  explicit OurPlainEvents(const Document& d) : d_(d) {
    for (Node c = d.first_child(d.top()); c != fiche::none; c = d.next(c)) node(c);
  }
  [[nodiscard]] const std::string& events() const { return out_; }

 private:
  void node(Node n) {
    const std::string value(d_.value(n));
    switch (d_.kind(n)) {
      case NodeKind::text:
        if (!value.empty()) out_ += "T " + value + "\n";
        return;
      case NodeKind::comment:
        out_ += "C " + value + "\n";
        return;
      case NodeKind::instruction:
        out_ += "P " + std::string(d_.name(n)) + "\n";
        return;
      case NodeKind::foreign:
        out_ += "F\n";
        return;
      case NodeKind::element:
        break;
    }
    out_ += "E " + std::string(d_.name(n)) + "\n";
    for (fiche::Attr a = d_.first_attribute(n); a != fiche::none; a = d_.next_attribute(a)) {
      out_ += "A " + std::string(d_.attribute_name(a)) + "=" + std::string(d_.attribute_value(a)) + "\n";
    }
    for (Node c = d_.first_child(n); c != fiche::none; c = d_.next(c)) node(c);
    out_ += "/\n";
  }

  const Document& d_;
  std::string out_;
};

// ---------------------------------------------------------------- mutants

std::string mutated(std::string text, std::mt19937& random) {
  static const std::string pieces[] = {"<",
                                       ">",
                                       "/",
                                       "&",
                                       ";",
                                       "\"",
                                       "'",
                                       "=",
                                       " ",
                                       ":",
                                       "]]>",
                                       "--",
                                       "<!--",
                                       "-->",
                                       "<?",
                                       "?>",
                                       "<![CDATA[",
                                       "</a>",
                                       "<a>",
                                       "x",
                                       "&#x41;",
                                       "&#0;",
                                       "&lt;",
                                       "xmlns:h=\"u\"",
                                       "h:",
                                       "é",
                                       "\xC3",
                                       "\x01",
                                       "<?xml version=\"1.0\"?>",
                                       "\t",
                                       "xml:",
                                       " id=\"a\"",
                                       "<h:x/>",
                                       "&nbsp;",
                                       "-",
                                       "?",
                                       "!",
                                       "\r",
                                       "<k:y k:a='1' h:a='1'/>"};
  for (std::size_t n = random() % 4 == 0 ? 3 : 1; n > 0 && !text.empty(); --n) {
    const std::size_t at = random() % text.size();
    const std::size_t size = 1 + random() % 4;
    switch (random() % 5) {
      case 0:
        text.erase(at, size);
        break;
      case 1:
        text.insert(at, pieces[random() % std::size(pieces)]);
        break;
      case 2:
        text.replace(at, 1, pieces[random() % std::size(pieces)]);
        break;
      case 3:
        text.insert(random() % text.size(), text.substr(at, size * 8));
        break;
      default:
        text.erase(at, size * 8);
    }
  }
  return text;
}

/// Refusals of ours that have nothing to do with being well-formed.
bool our_own_refusal(const base::Finding& finding) {
  static const std::set<std::string> rules = {"doctype", "over-limit", "wrong-namespace", "prefix-below-root",
                                              "not-utf-8"};
  // Expat takes any version; the fifth edition of XML 1.0 wants 1.x.
  return rules.contains(finding.rule) ||
         finding.message.starts_with("the XML declaration does not give its version");
}

struct Tally {
  unsigned taken = 0, refused = 0, set_apart = 0;
};

void compare(const std::string& text, Tally& tally) {
  const format::Read read = read_xml(text);
  const ExpatEvents expat(text);
  const std::string refusal = read.findings.empty() ? "" : read.findings.front().message;
  CAPTURE(text, refusal, expat.error());
  if (read.document == nullptr) {
    REQUIRE(read.findings.size() == 1);
    const bool own = our_own_refusal(read.findings.front());
    if (!own) REQUIRE_FALSE(expat.good());
    ++(own ? tally.set_apart : tally.refused);
    return;
  }
  // Expat knows the letters that names could have before the fifth edition.
  if (!expat.good() && expat.stopped_at_high_byte()) {
    ++tally.set_apart;
    return;
  }
  ++tally.taken;
  REQUIRE(expat.good());
  REQUIRE(OurEvents(*read.document).events() == expat.events());

  pugi::xml_document pugi_document;
  REQUIRE(pugi_document.load_buffer(text.data(), text.size(),
                                    (pugi::parse_full | pugi::parse_ws_pcdata) & ~pugi::parse_declaration,
                                    pugi::encoding_utf8));
  REQUIRE(OurPlainEvents(*read.document).events() == PugiEvents(pugi_document).events());
}

}  // namespace

TEST_CASE("the XML reader takes and refuses what Expat does, and reads the same", "[against]") {
  Tally tally;
  for (unsigned seed = 1; seed <= 300; ++seed) compare(RandomDocument(seed).make(), tally);
  CHECK(tally.taken == 300);
}

TEST_CASE("the XML reader agrees with Expat on thousands of damaged documents", "[against]") {
  std::mt19937 random(20260211);
  Tally tally;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    const std::string good = RandomDocument(seed).make();
    for (int n = 0; n < 20; ++n) compare(mutated(good, random), tally);
  }
  // Most of it must have been compared.
  CHECK(tally.taken > 1000);
  CHECK(tally.refused > 2000);
  CHECK(tally.set_apart < 1000);
}

}  // namespace tamis::tests

#else

TEST_CASE("the XML reader takes and refuses what Expat does, and reads the same", "[against]") {
  std::printf("SKIPPED: Expat and pugixml were not there when the tests were built\n");
}

#endif
