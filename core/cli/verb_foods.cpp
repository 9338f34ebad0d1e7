#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "core/cli/desk.h"
#include "core/cli/folded.h"
#include "core/cli/food_pages.h"
#include "core/cli/json_text.h"
#include "core/cli/output.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"lang", 'l', "LANGUAGE", "language the name is in, looked in first; English when not given", "en|fr"},
    Option{"as", 0, "FORM", "how to tell it", "text|json"},
    Option{"kitchen", 'k', "FILE", "the kitchen file whose own foods are looked in first", "FILE"},
};

constexpr std::string_view help =
    R"(Without NAME it lists all foods. Allergens of a generic food are assumed: only
the supplier's specification of what you bought settles them.

  $ tamis foods beer
  beer
    names      beer, lager, ale
    in French  bière, bière blonde
    its part   alcohol
  …
)";

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

std::string own_id(const FoodMatch& match) {
  return match.own != nullptr ? match.own->id : std::string(match.food->id);
}

std::vector<FoodMatch> all_foods(const Desk& desk) {
  std::vector<FoodMatch> all;
  for (const auto& own : desk.kitchen->foods) all.push_back({&own->food, own.get(), true});
  for (const food::Food& food : food::foods()) all.push_back({&food, nullptr, true});
  return all;
}

std::string foods_json(const std::vector<FoodMatch>& matches) {
  std::string out;
  {
    JsonList object(out, '{', '}');
    object.member("schema", "1");
    object.begin("foods");
    JsonList list(out, '[', ']', "\n");
    for (const FoodMatch& match : matches) list.item(food_json(match));
  }
  return out + "\n";
}

std::string short_list(const std::vector<FoodMatch>& matches, const std::string& language) {
  std::vector<Row> rows;
  for (const FoodMatch& match : matches) {
    const std::string_view names =
        language == "fr" && !match.food->french.empty() ? match.food->french : match.food->english;
    rows.push_back(
        {own_id(match), match.own != nullptr && !match.own->name.empty() ? match.own->name : first_name(names)});
  }
  return two_columns(rows);
}

Exit not_found(const std::string& name, const std::vector<FoodMatch>& near, const std::string& language) {
  complain("no food is called \"" + name + "\"");
  if (near.empty())
    say("  → \"tamis foods\" lists all of them");
  else
    talk("  → near to it:\n" + short_list(near, language));
  return Exit::found;
}

Exit run_foods(const Request& request) {
  const Desk desk = desk_of(request);
  if (!desk.fault.empty()) {
    complain(desk.fault);
    return Exit::failed;
  }
  const std::string language = request.get("lang", "en");
  const bool json = request.get("as") == "json";
  if (request.words.empty()) {
    print(json ? foods_json(all_foods(desk)) : short_list(all_foods(desk), language));
    return Exit::good;
  }
  const std::string name = joined(request.words);
  std::vector<FoodMatch> matches = find_foods(desk, name, language);
  const auto sure_end =
      std::stable_partition(matches.begin(), matches.end(), [](const FoodMatch& m) { return m.sure; });
  if (sure_end == matches.begin()) return not_found(name, matches, language);
  matches.erase(sure_end, matches.end());
  if (json) {
    print(foods_json(matches));
    return Exit::good;
  }
  print(food_text(matches.front()));
  matches.erase(matches.begin());
  if (!matches.empty()) print("\nit can also mean\n" + short_list(matches, language));
  return Exit::good;
}

}  // namespace

extern const Verb verb_foods;
const Verb verb_foods{.name = "foods",
                      .summary = "look up a food: what is in it, what a cup or a piece weighs, its allergens",
                      .usage = "tamis foods [OPTIONS] [NAME]",
                      .help = help,
                      .words = "FOOD",
                      .options = options,
                      .run = run_foods};

}  // namespace tamis::cli
