#ifndef CORE_FLOW_HEAT_WORDS_H
#define CORE_FLOW_HEAT_WORDS_H

#include <string_view>

namespace tamis::flow {

/// Words of cooling, of waiting, of warming, of a choice of moment ("when it is"), in en, fr, de and es.
bool says_cooling(std::string_view lower_text);
bool says_heating(std::string_view lower_text);
bool says_waiting(std::string_view lower_text);
/// Of what is done to let it cool: verbs alone, no cold plates and ice creams.
bool says_to_cool(std::string_view lower_text);
/// Of boiling down, as well as what says_heating() knows.
bool says_to_heat(std::string_view lower_text);
/// Of putting more to what is there: pour, add, stir in, onto.
bool says_joining(std::string_view lower_text);
/// Of taking it off the heat.
bool says_off_the_heat(std::string_view lower_text);
/// Of a lid; as written, for small and capital letters.
bool says_covered(std::string_view text);
/// Of putting something in by and by: in a thin stream, a little at a time.
bool says_gradually(std::string_view lower_text);

}  // namespace tamis::flow

#endif
