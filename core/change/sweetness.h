#ifndef CORE_CHANGE_SWEETNESS_H
#define CORE_CHANGE_SWEETNESS_H

#include <optional>
#include <string_view>

namespace tamis::change {

/// How sweet a gram of its dry matter tastes, sucrose being 1, by the table's id; empty for what is not in the list.
/// Common practice; tables differ by a tenth, and it falls with cold and with strength.
std::optional<double> sweetness_of(std::string_view food_id);

}  // namespace tamis::change

#endif
