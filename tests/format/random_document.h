#ifndef TESTS_FORMAT_RANDOM_DOCUMENT_H
#define TESTS_FORMAT_RANDOM_DOCUMENT_H

#include <cstddef>
#include <random>
#include <string>
#include <string_view>

namespace tamis::tests {

/// Makes XML documents as nobody would write them and everybody could: any element anywhere, all the ways to spell
/// a character, comments, instructions, CDATA, a house's own elements, every kind of line end. Well-formed always.
class RandomDocument {
 public:
  explicit RandomDocument(unsigned seed) : random_(seed) {}

  std::string make() {
    std::string out;
    if (one_in(8)) out += "\xEF\xBB\xBF";
    if (one_in(2)) out += pick({"<?xml version=\"1.0\" encoding=\"UTF-8\"?>", "<?xml version='1.0'?>\r\n"});
    misc(out);
    const std::string root = pick({"fiche", "kitchen", "fiche", "step", "use", "oddity"});
    out += "<" + std::string(root) + blank() + "xmlns" + pick({"=", " = "}) + "\"urn:tamis:fiche:1\"";
    out += blank() + "xmlns:h='urn:example:house'" + blank() + "xmlns:k=\"urn:example:k&amp;co\"";
    attributes(out);
    out += pick({">", " >", "\n>"});
    content(out, 0);
    out += "</" + std::string(root) + pick({">", " >"});
    misc(out);
    return out;
  }

 private:
  std::size_t below(std::size_t most) { return random_() % most; }
  bool one_in(std::size_t n) { return below(n) == 0; }
  std::string pick(std::initializer_list<std::string_view> words) {
    return std::string(words.begin()[below(words.size())]);
  }
  std::string blank() { return pick({" ", " ", "  ", "\n  ", "\r\n", "\t"}); }

  void misc(std::string& out) {
    while (one_in(3)) {
      out += pick({"\n", "\r\n", " "});
      if (one_in(2)) out += leaf();
    }
  }

  std::string leaf() {
    return pick({"<!-- a - b -->", "<!---->", "<!-- two\n     lines & <b> -->", "<!--\r\n-->", "<?house do it?>",
                 "<?x?>", "<?y  1 < 2\r\n?>"});
  }

  std::string foreign() {
    return pick({"<h:x/>", "<h:tag a='1'  b=\"2\" >t &amp; <k:u/><!-- c --></h:tag >",
                 "<h:long>\r\n  <step>in the house's\n\n own</step>\n</h:long>",
                 "<k:w k:a='&#176;'><![CDATA[<&]]></k:w>"});
  }

  std::string piece() {
    return pick(
        {"a",
         "Warm the milk",
         "½",
         "180 °C",
         "\xC2\xA0",
         "\xF0\x9F\x8D\xB0",
         "é",
         "&amp;",
         "&lt;",
         "&#176;",
         "&#xA0;",
         "&#13;",
         "&#9;",
         "&#10;",
         "<![CDATA[ <b> & ]]>",
         "<![CDATA[]]>",
         "]]",
         "\"",
         "'",
         ">",
         "\n",
         "\r\n",
         "  ",
         " ",
         "\r",
         "over a low heat, stirring all the time with a wooden spoon until it coats the back of it and no longer",
         "\xE2\x80\xAF",
         "\\",
         "&quot;",
         "&apos;",
         "-",
         "\t"});
  }

  void text(std::string& out) {
    for (std::size_t n = below(6); n > 0; --n) {
      std::string next = piece();
      if (out.ends_with(']') && next == ">") next = " ";
      if (out.ends_with("]") && next == "]]") next = "x";
      out += next;
      if (one_in(3)) out += " ";
    }
  }

  void attributes(std::string& out) {
    static constexpr std::string_view names[] = {"id",       "of",     "do",     "on",     "content", "title",
                                                 "xml:lang", "h:mark", "k:mark", "was-at", "zest"};
    for (const std::string_view name : names) {
      if (!one_in(4)) continue;
      const bool single = one_in(4);
      out += blank() + std::string(name) + pick({"=", " =", "=\n"}) + (single ? "'" : "\"");
      for (std::size_t n = below(4); n > 0; --n) {
        std::string value = piece();
        if (value.starts_with("<!")) value = ">";
        if (value == (single ? "'" : "\"")) value = "&#x22;";
        out += value;
      }
      out += single ? "'" : "\"";
    }
  }

  void content(std::string& out, std::size_t depth) {
    for (std::size_t n = below(depth < 5 ? 7 : 2); n > 0; --n) {
      switch (below(6)) {
        case 0:
          out += leaf();
          break;
        case 1:
          out += foreign();
          break;
        case 2:
          text(out);
          break;
        case 3:
          out += pick({"\n", "\n    ", "\r\n  ", " ", "\n\n"});
          break;
        default:
          element(out, depth + 1);
      }
    }
  }

  void element(std::string& out, std::size_t depth) {
    const std::string name =
        pick({"title", "component", "ingredient", "step", "step", "use", "use", "amount", "until", "food-temp",
              "gate", "note", "part", "yield", "component", "novelty", "novelty"});
    out += "<" + name;
    attributes(out);
    if (one_in(4)) {
      out += pick({"/>", " />"});
      return;
    }
    out += pick({">", " >"});
    content(out, depth);
    out += "</" + name + pick({">", "\n>"});
  }

  std::mt19937 random_;
};

}  // namespace tamis::tests

#endif
