#include "core/cli/new_plugin.h"

#include <algorithm>
#include <array>

#include "core/lua/globals.h"

namespace tamis::cli {
namespace {

constexpr std::string_view manifest_start = R"(<?xml version="1.0" encoding="UTF-8"?>
<manifest xmlns="urn:tamis:fiche:1" id="@ID@" version="1" api="1" licence="Apache-2.0">
  <summary>What is poured is weighed.</summary>
)";

constexpr std::string_view manifest_check = R"(  <adds id="@CHECK@" kind="check" severity="warning">
    <summary>an ingredient is measured by volume, not weighed</summary>
    <note>A jug is read at a slant and a cup is filled by eye; the scales are not. Little of it may stay in spoons.</note>
    <wrong><![CDATA[
    <ingredient id="milk" food="milk-whole">250 ml</ingredient>
]]></wrong>
    <right><![CDATA[
    <ingredient id="milk" food="milk-whole">258 g</ingredient>
]]></right>
  </adds>
)";

constexpr std::string_view manifest_conversion = R"(  <adds id="@CONVERSION@" kind="conversion">
    <summary>weights in place of volumes, what the author wrote kept in was</summary>
  </adds>
)";

constexpr std::string_view manifest_export = R"(  <adds id="@EXPORT@" kind="export" ending="txt">
    <summary>what to weigh for each component, as plain text</summary>
  </adds>
)";

constexpr std::string_view manifest_end =
    R"(  <takes name="spoons" kind="number" default="30">millilitres up to which spoons will do</takes>
</manifest>
)";

constexpr std::string_view program_start =
    R"(-- What is poured is weighed. The fields and calls of values are listed in plugins/README.md.

-- The volume an ingredient is written in, where it is more than spoons; else nil.
local function poured_volume(ingredient)
  local amount = ingredient.amount
  if amount and amount.kind == "volume" and amount.high and amount.high > tamis.settings.spoons then
    return amount
  end
end

-- Its weight as this kitchen's scales read it; nil where the food or its density is not known.
local function scale_weight(ingredient)
  return ingredient.mass and ingredient.mass:rounded("metric", ingredient.food)
end
)";

constexpr std::string_view program_check = R"(
function @CHECK_CALL@(fiche)
  for _, ingredient in ipairs(fiche:ingredients()) do
    local volume, weight = poured_volume(ingredient), scale_weight(ingredient)
    if volume then
      fiche:say(ingredient, volume .. " of " .. ingredient.label .. " is measured, not weighed",
        weight and "write " .. weight or "weigh it once and write the weight")
    end
  end
end
)";

constexpr std::string_view program_conversion = R"(
function @CONVERSION_CALL@(fiche)
  for _, ingredient in ipairs(fiche:ingredients()) do
    local volume, weight = poured_volume(ingredient), scale_weight(ingredient)
    if volume and weight then
      ingredient:set("was", ingredient.own_text)
      ingredient:set_text(tostring(weight))
    end
  end
end
)";

constexpr std::string_view program_export = R"(
function @EXPORT_CALL@(fiche)
  local lines = {fiche.title}
  for _, component in ipairs(fiche:components()) do
    lines[#lines + 1] = "\n" .. component.title
    for _, ingredient in ipairs(component:all("ingredient")) do
      local amount = scale_weight(ingredient) or ingredient.amount
      lines[#lines + 1] = "  " .. (amount and amount .. " " or "") .. ingredient.label
    end
  end
  return table.concat(lines, "\n") .. "\n"
end
)";

constexpr std::string_view readme_start = R"(# @ID@

What is poured is weighed. Name it in `kitchen.xml`:

```xml
<plugin id="@ID@" path="@ID@">
  <setting name="spoons">15</setting>
</plugin>
```

| setting | what it sets | when not given |
| --- | --- | --- |
| spoons | millilitres up to which spoons will do | 30 |

| adds | kind | how to use it |
| --- | --- | --- |
)";
constexpr std::string_view readme_check = "| @CHECK@ | check | `tamis check FICHE` |\n";
constexpr std::string_view readme_conversion = "| @CONVERSION@ | conversion | `tamis convert --with @CONVERSION@ FICHE` |\n";
constexpr std::string_view readme_export = "| @EXPORT@ | export | `tamis export --as @EXPORT@ FICHE` |\n";
constexpr std::string_view readme_end = R"(
Its tests are the folders under `tests/`; `tamis plugins test @ID@` runs them.
)";

/// A recipe that is poured by volume, or weighed.
constexpr std::string_view recipe = R"(<?xml version="1.0" encoding="UTF-8"?>
<fiche xmlns="urn:tamis:fiche:1" id="honey-milk" lang="en" units="metric" state="draft">
  <title>Honey milk</title>
  <component id="milk-base" title="Milk">
    <ingredient id="milk" food="milk-whole"@WAS@>@MILK@</ingredient>
    <ingredient id="honey" food="honey">1 tbsp</ingredient>
    <step do="heat">Heat the <use of="milk">milk</use> with the <use of="honey">honey</use> to
      <food-temp>80 °C</food-temp>.</step>
  </component>
</fiche>
)";

constexpr std::string_view found = R"(5:5 warning @CHECK@: 250@~ml of whole milk is measured, not weighed
  → write 258@~g
)";

constexpr std::string_view list = R"(Honey milk

Milk
  258@~g whole milk
  21–22@~g honey
)";

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

/// A word that no function of the plugin can have: it is one of Lua, or means something in the program already.
bool is_taken(std::string_view call) {
  constexpr std::array<std::string_view, 25> words{
      "and", "break", "do", "else", "elseif", "end",  "false", "for",   "function", "goto", "if", "in", "local",
      "nil", "not",   "or", "repeat", "return", "then", "true", "until", "while", "poured_volume", "scale_weight", "tamis"};
  const auto named = [call](const lua::Global& global) { return global.name == call || global.library == call; };
  const auto globals = lua::global_names();
  return std::find(words.begin(), words.end(), call) != words.end() || std::any_of(globals.begin(), globals.end(), named);
}

/// Fills in the names.
class Names {
 public:
  explicit Names(const NewPlugin& wanted) : id_(wanted.id) {
    const bool several = int{wanted.check} + int{wanted.conversion} + int{wanted.export_} > 1;
    const bool longer = several || is_taken(call(id_));
    check_ = id_ + (longer ? "-check" : "");
    conversion_ = id_ + (longer ? "-conversion" : "");
    export__ = id_ + (longer ? "-export" : "");
  }

  [[nodiscard]] const std::string& conversion() const { return conversion_; }
  [[nodiscard]] const std::string& export_() const { return export__; }

  [[nodiscard]] std::string in(std::string_view text) const {
    std::string out(text);
    replace_all(out, "@ID@", id_);
    replace_all(out, "@CHECK@", check_);
    replace_all(out, "@CONVERSION@", conversion_);
    replace_all(out, "@EXPORT@", export__);
    replace_all(out, "@CHECK_CALL@", call(check_));
    replace_all(out, "@CONVERSION_CALL@", call(conversion_));
    replace_all(out, "@EXPORT_CALL@", call(export__));
    replace_all(out, "@~", "\u00a0");  // as figures are written
    return out;
  }

 private:
  static std::string call(std::string id) {
    std::replace(id.begin(), id.end(), '-', '_');
    return id;
  }

  std::string id_, check_, conversion_, export__;
};

std::string recipe_with(std::string_view milk, std::string_view was) {
  std::string out(recipe);
  replace_all(out, "@MILK@", milk);
  replace_all(out, "@WAS@", was.empty() ? "" : " was=\"" + std::string(was) + "\"");
  return out;
}

}  // namespace

std::vector<NewFile> new_plugin_files(const NewPlugin& wanted) {
  const Names names(wanted);
  const auto joined = [&](std::string_view start, std::string_view check, std::string_view conversion,
                          std::string_view export_, std::string_view end) {
    std::string text(start);
    if (wanted.check) text += check;
    if (wanted.conversion) text += conversion;
    if (wanted.export_) text += export_;
    return names.in(text += end);
  };
  std::vector<NewFile> files;
  files.push_back({"plugin.xml", joined(manifest_start, manifest_check, manifest_conversion, manifest_export, manifest_end)});
  files.push_back({"plugin.lua", joined(program_start, program_check, program_conversion, program_export, "")});
  files.push_back({"README.md", joined(readme_start, readme_check, readme_conversion, readme_export, readme_end)});
  for (const bool poured : {true, false}) {
    const std::string folder = poured ? "tests/poured/" : "tests/weighed/";
    const std::string weighed = recipe_with("258\u00a0g", poured ? "250 ml" : "");
    files.push_back({folder + "case.fiche.xml", poured ? recipe_with("250 ml", "") : weighed});
    if (wanted.check) files.push_back({folder + "findings.txt", poured ? names.in(found) : "nothing\n"});
    if (wanted.conversion) files.push_back({folder + "converted/" + names.conversion() + ".fiche.xml", weighed});
    if (wanted.export_)
      files.push_back({folder + "exported/" + names.export_() + "/honey-milk.txt", names.in(list)});
  }
  return files;
}

}  // namespace tamis::cli
