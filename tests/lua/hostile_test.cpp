#include <catch2/catch.hpp>

#include <string>

#include "tests/lua/hosting.h"

using namespace tamis;
using tests::custard;
using tests::load_check;
using tests::load_plugin;
using tests::manifest_of;

namespace {

struct Body {
  const char* name;
  const char* lua;
  const char* says;  ///< a part of the one finding
};

constexpr const char* spent = "it spent its 2 million instructions";
constexpr const char* memory = "of memory";

// Bodies of a check. Each must end within its budget, with one finding that says what happened.
const Body bodies[] = {
    {"a loop", "while true do end", spent},
    {"a loop under pcall", "while true do pcall(function() while true do end end) end", spent},
    {"a loop in a handler of xpcall", "xpcall(error, function() while true do end end)", spent},
    {"a handler that fails", "xpcall(error, function() error('again') end)", "again"},
    {"a loop behind goto", "::again:: goto again", spent},
    {"recursion", "local function f() return 1 + f() end f()", memory},
    {"recursion under pcall", "local function f() pcall(f) end f() while true do end", spent},
    {"recursion through gsub", "local function f() return (('x'):gsub('x', f)) end f()", "C stack overflow"},
    {"recursion through tostring",
     "local t = setmetatable({}, {}) local m = {} m.__tostring = function(s) return tostring(s) end setmetatable(t, m) "
     "tostring(t)",
     "overflow"},
    {"memory in a table", "local t = {} for i = 1, 1e9 do t[i] = {} end", memory},
    {"memory in a string", "local s = 'x' while true do s = s .. s end", memory},
    {"memory under pcall", "while true do pcall(function() local s = 'x' while true do s = s .. s end end) end", memory},
    {"memory in nested tables", "local t while true do t = {t} end", memory},
    {"memory in amounts", "local t = {} local a = tamis.amount('1 kg') while true do t[#t + 1] = a * 2 end", memory},
    {"rep of nothing", "local s = string.rep('', 1 << 62) while true do end", spent},
    {"rep of much", "string.rep('x', 1 << 40)", "grows too long"},
    {"rep through a method", "('x'):rep(1 << 40)", "grows too long"},
    {"rep that wraps", "string.rep('xxxx', math.maxinteger)", "grows too long"},
    {"concatenation of long strings", "local s = ('x'):rep(1000000) while true do local t = s .. 'y' end", spent},
    {"a pattern that tries everything", "(('a'):rep(2000)):find(('a?'):rep(40) .. ('a'):rep(2000))", nullptr},
    {"a pattern of many stars", "(('a'):rep(3000)):find('.*.*.*.*b')", spent},
    {"a pattern of many lazy parts", "(('a'):rep(3000)):find('.-.-.-.-.-b')", spent},
    {"a balanced pattern over and over", "(('('):rep(20000)):find('%b()%b()')", spent},
    {"gsub without end", "local s = ('x'):rep(100000) while true do s:gsub('x', 'y') end", spent},
    {"insert into a lying table", "table.insert(setmetatable({}, {__len = function() return 1 << 62 end}), 1, 2) while true do end",
     spent},
    {"concat of a lying table", "table.concat(setmetatable({}, {__len = function() return 1 << 62 end})) while true do end",
     spent},
    {"move of all there is", "table.move({}, 1, math.maxinteger - 1, 2)", spent},
    {"unpack of all there is", "table.unpack({}, 1, 1 << 40)", spent},
    {"unpack of too much", "table.unpack({}, 1, 200000)", "too many results"},
    {"sort with a lie", "local t = {} for i = 1, 100000 do t[i] = i end table.sort(t, function() return true end)", spent},
    {"sort with an error", "table.sort({3, 2, 1}, function() error('no order') end)", "no order"},
    {"an error that is a table", "error({})", "an error that is a table"},
    {"an error that is nil", "error(nil)", "an error that is a nil"},
    {"an error whose __tostring loops",
     "error(setmetatable({}, {__tostring = function() while true do end end}))", "an error that is a table"},
    {"a finalizer", "setmetatable({}, {__gc = function() while true do end end})", "__gc is not there"},
    {"a closer", "local x <close> = setmetatable({}, {__close = function() while true do end end})", "__close is not there"},
    {"a closer that is put in later",
     "local m = {} local x = setmetatable({}, m) m.__close = function() while true do end end local y <close> = x",
     "non-closable"},
    {"a closer of a for loop", "local m = {} local x = setmetatable({}, m) m.__close = print "
                               "for i in function() return 1 end, nil, nil, x do end", "non-closable"},
    {"bytecode", "load('return 1')", "there is no global \"load\""},
    {"string.dump", "string.dump(print)", "there is no name in string \"dump\""},
    {"the other libraries", "io.open('/etc/hostname')", "there is no global \"io\""},
    {"os", "os.exit()", "there is no global \"os\""},
    {"debug", "debug.getregistry()", "there is no global \"debug\""},
    {"require", "require('os')", "there is no global \"require\""},
    {"coroutines", "coroutine.wrap(function() end)", "there is no global \"coroutine\""},
    {"random numbers", "math.random()", "there is no name in math \"random\""},
    {"_G", "_G.x = 1", "there is no global \"_G\""},
    {"writing into string", "string.rep = nil", "shared and cannot be written to"},
    {"inserting into string", "table.insert(string, 1)", "locked"},
    {"another metatable for string", "setmetatable(string, {})", "locked"},
    {"another metatable for the environment", "setmetatable(_ENV, {})", "locked"},
    {"the metatable of strings", "getmetatable('').__index = nil", "attempt to index a nil value"},
    {"writing into a value", "fiche.title = 'x'", "cannot be written to"},
    {"writing into tamis", "tamis.amount = print", "cannot be written to"},
    {"addresses by format", "string.format('%p', {})", "does not know %p"},
    {"a width without end", "string.format('%999d', 1)", "more than two digits"},
    {"a chain of __index", "local t = {} for i = 1, 3000 do t = setmetatable({}, {__index = t}) end local x = t.x", "loop"},
    {"pairs over tables as keys", "for k in pairs({[{}] = 1}) do end", "have no order"},
    {"findings without end", "while true do fiche:say(nil, 'x') end", "more than 1000 findings"},
    {"a finding without words", "fiche:say(nil, '')", "without a message"},
    {"a finding nowhere", "fiche:say(3, 'x')", "wanted element, text or place, got number"},
    {"talk without end", "while true do print(('x'):rep(1000)) end", spent},
    {"a change in a check", "fiche.root:set('id', 'x')", "only a conversion may change"},
    {"a value as another", "fiche.steps(fiche.root)", "wanted fiche, got element"},
    {"a step's call on an ingredient", "fiche:steps()[1].takes(fiche:ingredients()[1])", "wanted a step"},
    {"files without end", "while true do fiche:open('x.fiche.xml') end", spent},
    {"an amount beyond all measure", "local a = tamis.amount('1 kg') while true do a = a * 1000 end", "too large to be exact"},
};

}  // namespace

TEST_CASE("a hostile body of a check ends within its budget, with one finding that says what happened") {
  for (const Body& body : bodies) {
    CAPTURE(body.name);
    const tests::Loaded loaded =
        load_plugin("<manifest xmlns=\"urn:tamis:fiche:1\" id=\"trial\" version=\"3\" api=\"1\" instructions=\"2000000\" "
                    "memory=\"8192\"><adds id=\"house-test\" kind=\"check\"/></manifest>",
                    "function house_test(fiche)\n" + std::string(body.lua) + "\nend\n");
    REQUIRE(loaded.lines() == "");
    const std::string said = tests::said(*loaded.plugin, custard);
    CAPTURE(said);
    if (body.says == nullptr) continue;
    std::size_t findings = 0;
    for (std::size_t at = said.find("plugin-error: plugin trial, house_test"); at != std::string::npos;
         at = said.find("plugin-error: plugin trial, house_test", at + 1))
      ++findings;
    CHECK(findings == 1);
    CHECK(said.find(body.says) != std::string::npos);
    // And the state is as good as before.
    CHECK(tests::said(*loaded.plugin, custard) == said);
  }
}

TEST_CASE("a hostile program is refused when it is loaded") {
  const std::pair<const char*, const char*> programs[] = {
      {"while true do end", "it spent its"},
      {"error({})", "an error that is a table"},
      {"x = = 1", "unexpected symbol near '='"},
      {"\x1bLua\x54", "attempt to load a binary chunk"},
      {"local s = 'x' while true do s = s .. s end", "of memory"},
      {"return fiche.title", "there is no global \"fiche\""},
  };
  for (const auto& [program, says] : programs) {
    CAPTURE(program);
    const tests::Loaded loaded = load_plugin(manifest_of("check"), program);
    CHECK(loaded.plugin == nullptr);
    CHECK(loaded.lines().find(says) != std::string::npos);
  }
}

TEST_CASE("what one call leaves behind is not there for the next") {
  const tests::Loaded loaded = load_check("if rawget(_ENV, 'seen') then fiche:say(nil, 'seen') end seen = true");
  REQUIRE(loaded.lines() == "");
  CHECK(tests::said(*loaded.plugin, custard) == "");
  CHECK(tests::said(*loaded.plugin, custard) == "");
}
