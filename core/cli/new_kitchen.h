#ifndef CORE_CLI_NEW_KITCHEN_H
#define CORE_CLI_NEW_KITCHEN_H

#include <string_view>

namespace tamis::cli {

/// The kitchen file that "tamis new kitchen" writes: every kind of line it can hold, with what it means.
extern const std::string_view new_kitchen_text;

}  // namespace tamis::cli

#endif
