#ifndef CORE_LUA_REFERENCE_H
#define CORE_LUA_REFERENCE_H

#include <string>

namespace tamis::lua {

/// The tables of plugins/README.md (Markdown), from api.inc and globals.inc.
std::string values_reference();
std::string globals_reference();

}  // namespace tamis::lua

#endif
