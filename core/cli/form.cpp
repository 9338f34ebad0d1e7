#include "core/cli/form.h"

namespace tamis::cli {

std::string Form::failed(const std::string&, const std::string&) const { return {}; }
std::string Form::start() const { return {}; }
void Form::done(const std::string&, const std::string&) {}

}  // namespace tamis::cli
