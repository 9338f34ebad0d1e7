#include "core/flow/heat_words.h"

#include "core/base/says.h"

namespace tamis::flow {

using base::says;

bool says_cooling(std::string_view text) {
  return says(text, {"cool", "cold", "chill", "ice", "fridge", "freez", "froz", "refriger", "rest", "stand", "temper", "set aside",
                     "refroid", "tiéd", "froid", "glac", "frigo", "repos", "kühl", "kalt", "abkühl", "eis", "ruh", "lauwarm",
                     "enfri", "frí", "frio", "nevera", "repos", "templ"});
}

bool says_heating(std::string_view text) {
  return says(text, {"hot", "heat", "warm", "boil", "melt", "simmer", "scald", "cook", "bake", "roast", "steam", "toast", "fry",
                     "chauff", "chaud", "bouill", "fond", "cuire", "cuis", "heiß", "heiss", "erhitz", "erwärm", "koch", "schmelz",
                     "back", "calent", "calient", "herv", "fund", "cocer", "cuec"});
}

bool says_waiting(std::string_view text) {
  return says(text, {"when", "once", "wait", "leave", "let ", "as soon as", "only then", "meanwhile", "quand", "lorsqu", "dès que",
                     "une fois", "attend", "laiss", "wenn", "sobald", "warten", "lassen", "cuando", "una vez",
                     "esperar", "dejar"});
}

bool says_to_cool(std::string_view text) {
  return says(text, {"cool", "chill", "leave ", "let ", "rest", "stand ", "stand.", "set aside", "refrigerat", "freez", "to the fridge", "in the fridge",
                     "over ice", "in ice", "refroid", "tiédir", "tiédisse", "laiss", "repos", "au frais", "réserv", "kühl", "abkühl",
                     "auskühl", "ruhen", "kalt stell", "enfri", "repos", "dejar", "deje", "templar", "nevera"});
}

bool says_to_heat(std::string_view text) { return says_heating(text) || says(text, {"reduc", "rédui", "einkoch", "reduz", "braise", "stew"}); }

bool says_joining(std::string_view text) {
  return says(text, {"pour", "add", "stir in", "whisk in", "beat in", "blend in", "fold in", "mix in", "rain", "onto", "into", "over the",
                     "on to", "with which", "vers", "ajout", "incorpor", "sur le", "sur la", "sur les", "dans le", "dans la", "dans les",
                     "gieß", "giess", "geb", "zugeb", "hinzu", "unterr", "einr", "über d", "auf d", "vert", "viert", "añad", "sobre",
                     "mezcl"});
}

bool says_off_the_heat(std::string_view text) {
  return says(text, {"off the heat", "off heat", "from the heat", "off the hob", "off the fire", "hors du feu", "du feu", "vom herd",
                     "vom feuer", "fuera del fuego", "del fuego"});
}

bool says_covered(std::string_view text) {
  return says(text, {"lid", "covered", "cover and", "Cover and", "cover,", "Cover,", "cover;", "Cover;", "under paper", "couvercle",
                     "à couvert", "couvrir et", "Couvrir et", "zugedeckt", "Deckel", "tapado", "tapada", "con tapa"});
}

bool says_gradually(std::string_view text) {
  return says(text, {"stream", "a little at a time", "little by little", "by degrees", "slowly", "gradually", "bit by bit", "in three",
                     "in two goes", "drop by drop", "in a thread", "drizzl", "peu à peu", "en filet", "en plusieurs fois",
                     "progressivement", "goutte à goutte", "nach und nach", "in dünnem strahl", "langsam", "portionsweise",
                     "poco a poco", "en hilo", "lentamente"});
}

}  // namespace tamis::flow
