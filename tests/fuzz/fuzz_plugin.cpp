// The border of plugins, from any bytes: a manifest is read or refused with a place in it; a program made of calls of the
// interface with wild arguments ends within its budget, gives the same bytes twice, and leaves no broken finding, file or
// fiche. What starts with "<" is a manifest, all else a program.

#include <cstdint>
#include <cstdio>
#include <memory>
#include <string>
#include <string_view>

#include "core/base/utf8.h"
#include "core/fiche/library.h"
#include "core/format/format.h"
#include "core/lua/plugin.h"
#include "core/lua/values.h"
#include "tests/fuzz/reading.h"

namespace {

using namespace tamis;

const char* const fiche_text = R"(<fiche xmlns="urn:tamis:fiche:1" id="custard" lang="en" units="metric">
  <title>Vanilla custard</title>
  <component id="cream" title="Custard">
    <ingredient id="milk" food="milk-whole">300 g</ingredient>
    <ingredient id="yolks" food="egg-yolk" pieces="5">90 g</ingredient>
    <step do="cook" makes="custard">Pour the <use of="milk">milk</use> over the <use of="yolks">yolks</use>,
      stir to <food-temp>82 °C</food-temp>.<gate>at most 4 °C</gate></step>
    <step do="chill">Chill the <use of="custard">custard</use> for <time>2 h</time>.</step>
  </component>
</fiche>
)";

/// Takes choices from the bytes, until there are no more.
class Choices {
 public:
  explicit Choices(std::string_view bytes) : bytes_(bytes) {}
  [[nodiscard]] bool more() const { return at_ < bytes_.size(); }
  std::uint8_t next() { return more() ? static_cast<std::uint8_t>(bytes_[at_++]) : 0; }
  template <std::size_t Size>
  const char* one_of(const char* const (&list)[Size]) {
    return list[next() % Size];
  }
  std::string some(std::size_t most) {
    const std::size_t size = next() % (most + 1);
    const std::string_view taken = bytes_.substr(at_, size);
    at_ += taken.size();
    return std::string(taken);
  }

 private:
  std::string_view bytes_;
  std::size_t at_ = 0;
};

/// Bytes as a string of Lua.
std::string quoted(std::string_view bytes) {
  std::string out = "'";
  for (const char c : bytes) {
    char escaped[8];
    std::snprintf(escaped, sizeof escaped, "\\x%02x", static_cast<unsigned char>(c));
    out += escaped;
  }
  return out + "'";
}

const char* const starts[] = {"fiche",         "fiche.root", "e",     "t",    "x",    "v", "tamis", "tamis.settings",
                              "tamis.kitchen", "string",     "table", "utf8", "math", "f", "l"};
const char* const wild[] = {"nil",
                            "true",
                            "0",
                            "-1",
                            "1",
                            "2",
                            "1 << 62",
                            "math.mininteger",
                            "math.maxinteger",
                            "0/0",
                            "1/0",
                            "1e308",
                            "{}",
                            "{1, 2, 3}",
                            "{{name = 'a', bytes = 'b'}}",
                            "print",
                            "error",
                            "x",
                            "v",
                            "e",
                            "t",
                            "f",
                            "l",
                            "fiche",
                            "fiche.root",
                            "function(...) return ... end",
                            "function() error(e) end",
                            "setmetatable({}, {__index = fiche, __tostring = f})",
                            "'step'",
                            "'ingredient'",
                            "'title'",
                            "'id'",
                            "'us'",
                            "'eu'",
                            "'metric'",
                            "'%a+'",
                            "'(.-)%1'",
                            "'%d'",
                            "'water'",
                            "'note'"};

std::string argument(Choices& choices) {
  return choices.next() % 8 == 0 ? quoted(choices.some(12)) : choices.one_of(wild);
}

std::string arguments(Choices& choices) {
  std::string out;
  for (int left = choices.next() % 4; left > 0; --left) out += (out.empty() ? "" : ", ") + argument(choices);
  return out;
}

const char* const operators[] = {"+", "-", "*", "/", "..", "<", "==", "//", "%", "&"};
const char* const library_names[] = {"rep",    "find",      "gsub",   "gmatch", "format", "byte",      "sub",  "char",
                                     "concat", "insert",    "remove", "move",   "sort",   "unpack",    "pack", "len",
                                     "offset", "codepoint", "codes",  "upper",  "match",  "tointeger", "fmod"};
const char* const plain_calls[] = {"pairs",        "next",   "tostring", "tonumber", "select", "setmetatable",
                                   "getmetatable", "rawget", "rawlen",   "rawequal", "ipairs", "print",
                                   "xpcall",       "pcall",  "error",    "assert",   "type"};

/// A statement: something asked of a value, kept for those that follow; what fails is passed over.
std::string statement(Choices& choices) {
  const lua::Member* member = &lua::members()[choices.next() % lua::members().size()];
  switch (choices.next() % 8) {
    case 0: return "x = " + argument(choices);
    case 1: return "v = " + std::string(choices.one_of(plain_calls)) + "(" + arguments(choices) + ")";
    case 2:
      return "l = " + std::string(choices.one_of(starts)) + "." + choices.one_of(library_names) + "(" + arguments(choices) +
             ")";
    case 3: return "v = x " + std::string(choices.one_of(operators)) + " " + argument(choices);
    case 4:
      return "e = fiche:all(" + std::string(choices.next() % 2 == 0 ? "" : "'step'") + ")[" +
             std::to_string(choices.next() % 12) + "] or e";
    case 5: return "t = e.first_text or t";
    default: break;
  }
  const std::string of = choices.one_of(starts);
  const std::string name(member->name);
  if (!member->call) return "x = " + of + "." + name;
  const bool point = member->type == lua::Type::tamis || choices.next() % 16 == 0;
  return std::string(choices.next() % 2 == 0 ? "x" : "f") + " = " + of + (point ? "." : ":") + name + "(" + arguments(choices) +
         ")";
}

std::string program(Choices& choices) {
  std::string out =
      "function work(fiche)\n  local x, v, l, e, t, f = 1, {}, {}, fiche.root, fiche.root.first_text, fiche:steps()[1]\n";
  for (int left = 60; left > 0 && choices.more(); --left) out += "  pcall(function() " + statement(choices) + " end)\n";
  return out + "  return x\nend\n";
}

std::unique_ptr<lua::Plugin> load(const std::string& manifest, const std::string& program, bool& read) {
  lua::PluginFiles files;
  files.path = "trial";
  files.manifest = std::make_shared<base::Source>("plugin.xml", manifest);
  files.programs = {std::make_shared<base::Source>("plugin.lua", program)};
  std::vector<base::Finding> faults;
  const lua::Manifest made = lua::read_manifest(files.manifest, faults);
  read = faults.empty();
  for (const base::Finding& fault : faults) {
    fuzz::must(!fault.message.empty(), "a refusal says why", manifest);
    fuzz::must(fault.where.begin <= fault.where.end && fault.where.end <= manifest.size(), "its span lies in the file",
               manifest);
  }
  if (!read) return nullptr;
  std::vector<lua::LoadFault> wrong;
  auto plugin = lua::Plugin::load(files, made, lua::standard_settings(made), wrong);
  fuzz::must((plugin == nullptr) == !wrong.empty(), "it is loaded, or it is said why not", manifest);
  return plugin;
}

std::string told(const std::vector<base::Finding>& findings, std::size_t size, const std::string& program) {
  std::string out;
  for (const base::Finding& finding : findings) {
    fuzz::must(finding.where.begin <= finding.where.end && finding.where.end <= size, "a finding lies in the file", program);
    fuzz::must(!finding.message.empty() && base::find_invalid_utf8(finding.message) == std::string_view::npos,
               "a message is text", program);
    out += finding.rule + finding.message + finding.advice;
    for (const base::Edit& edit : finding.edits) {
      fuzz::must(edit.where.end <= size, "a mend lies in the file", program);
      out += edit.text;
    }
  }
  return out;
}

/// All that it does with the fiche, once.
std::string done(lua::Plugin& plugin, const std::shared_ptr<const fiche::Document>& document, const std::string& program) {
  const std::size_t size = document->source().bytes().size();
  const auto& adds = plugin.manifest().additions;
  lua::PluginChecks checks({&plugin});
  std::string out = told(rules::check(*document, {}, fiche::empty_library(), &checks), size, program) + checks.take_talk();
  const lua::PluginConverted turned = plugin.convert(adds[1], *document, {}, fiche::empty_library());
  const std::string written = format::write(turned.document);
  fuzz::must(format::read(std::make_shared<base::Source>("a.fiche.xml", written)).document != nullptr,
             "what was converted can be read", program);
  fuzz::must(turned.done || written == document->source().bytes(), "what failed has changed nothing", program);
  out += told(turned.findings, size, program) + written;
  const lua::Exported paper = plugin.export_fiche(adds[2], document, {}, fiche::empty_library());
  for (const lua::MadeFile& file : paper.files) {
    fuzz::must(!file.name.empty() && file.name.find_first_of("/\\:") == std::string::npos && file.name.front() != '.',
               "a file has a plain name", program);
    out += file.name + file.bytes;
  }
  return out + told(paper.findings, size, program) + paper.talk;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 2) return 0;
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  bool read = false;
  if (bytes.front() == '<') {
    load(std::string(bytes), "function a(fiche) end\n", read);
    return 0;
  }
  static const std::string manifest =
      "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"trial\" version=\"1\" api=\"1\" instructions=\"200000\" memory=\"4096\">"
      "<adds id=\"a-check\" kind=\"check\" call=\"work\"/><adds id=\"a-turn\" kind=\"conversion\" call=\"work\"/>"
      "<adds id=\"a-paper\" kind=\"export\" call=\"work\"/></manifest>";
  static const auto document = format::read(std::make_shared<base::Source>("a.fiche.xml", fiche_text)).document;
  Choices choices(bytes);
  const std::string text = program(choices);
  const auto plugin = load(manifest, text, read);
  fuzz::must(plugin != nullptr, "a program of these calls can be loaded", text);
  const std::string once = done(*plugin, document, text);
  fuzz::must(done(*plugin, document, text) == once, "the same fiche gives the same bytes", text);
  return 0;
}
