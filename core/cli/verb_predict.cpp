#include <array>
#include <cstdlib>

#include "core/cli/output.h"
#include "core/cli/predicted.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"food", 'f', "FOOD", "what it is, by the table of foods or the kitchen's own", "FOOD"},
    Option{"made-of", 0, "PERCENT", "or what it is made of: \"water 75, protein 20, fat 4, ash 1\"", ""},
    Option{"from", 0, "TEMPERATURE", "how warm it is at the start", ""},
    Option{"to", 0, "TEMPERATURE", "how warm it is to be", ""},
    Option{"in", 'i', "MEDIUM", "what it stands in: fridge, blast-chiller, ice-bath, water-bath, oven-fan ... or the kitchen's own", ""},
    Option{"air", 0, "TEMPERATURE", "how warm the air or the bath is", ""},
    Option{"coefficient", 0, "FIGURE", "how well it takes or gives heat, in W/(m² K)", ""},
    Option{"shape", 0, "SHAPE", "how it lies; a slab when nothing else is said", "slab|cylinder|sphere|brick"},
    Option{"depth", 0, "LENGTH", "how deep or thick it is", ""},
    Option{"diameter", 0, "LENGTH", "of a pot, a roll or a ball", ""},
    Option{"length", 0, "LENGTH", "of a brick or a pan", ""},
    Option{"width", 0, "LENGTH", "of a brick or a pan", ""},
    Option{"volume", 0, "AMOUNT", "how much it is; the depth may follow from it", ""},
    Option{"mass", 0, "AMOUNT", "how much it weighs; the depth may follow from it", ""},
    Option{"one-face", 0, "", "heat passes through the top alone: it stands on something thick or warm", ""},
    Option{"stirred", 0, "", "it is stirred, so that it has one temperature all through", ""},
    Option{"place", 0, "PLACE", "where in it: the centre when nothing is said", "centre|mean|surface"},
    Option{"as", 0, "FORM", "how to tell it: for people, for programs, or the curve as a picture", "text|json|svg"},
    Option{"kitchen", 'k', "FILE", "the kitchen file whose foods, fridges and ovens are used", "FILE"},
};

constexpr std::string_view help =
    R"(How long food takes to cool, heat, freeze or thaw: from the quickest to the
slowest that the medium allows, with what would shorten it.

  $ tamis predict thaw --food raspberry --depth "3 cm" --in fridge
  raspberries, 3 cm deep, from -18 °C to 0 °C in a fridge
  …
    20 h to 3.5 days, likely 37 h in the centre
  …
  What would shorten it:
    half as deep, 1.5 cm      9 h 45 min to 38 h, likely 18 h
    under cold running water  50 min to 2 h 15 min, likely 75 min
  …
)";

Exit run_predict(const Request& request) {
  const Desk desk = desk_of(request);
  if (!desk.fault.empty()) {
    complain(desk.fault);
    return Exit::failed;
  }
  const auto read = read_question(request, desk);
  if (const auto* misuse = std::get_if<Misuse>(&read)) {
    complain(misuse->what);
    if (!misuse->advice.empty()) say("  → " + harmless(misuse->advice));
    return Exit::failed;
  }
  const Predicted answer = predicted(std::get<Question>(read), desk);
  const std::string form = request.get("as", "text");
  const char* plain = std::getenv("NO_UNICODE");
  print(form == "json" ? predicted_json(answer) : form == "svg" ? predicted_svg(answer) : predicted_text(answer, output_columns(), plain != nullptr && *plain != '\0'));
  return Exit::good;
}

}  // namespace

extern const Verb verb_predict;
const Verb verb_predict{.name = "predict",
                        .summary = "tell how long food takes to cool, heat, freeze or thaw, and what would shorten it",
                        .usage = "tamis predict cool|heat|freeze|thaw [OPTIONS]",
                        .help = help,
                        .words = "cool|heat|freeze|thaw",
                        .options = options,
                        .run = run_predict};

}  // namespace tamis::cli
