#ifndef TESTS_REPOSITORY_TREE_H
#define TESTS_REPOSITORY_TREE_H

#include <string>
#include <string_view>
#include <vector>

namespace tamis::tests {

/// Every file of the project, relative to its root, in order: without dot-files and what building makes.
std::vector<std::string> project_files();

/// Names at the root of the project, without dot-files and build folders.
std::vector<std::string> top_level_names();

std::vector<std::string> lines_of(const std::string& text);

/// "core/base/ratio.h" → "base"; "" for what stands in no folder of core.
std::string core_folder(std::string_view path);

}  // namespace tamis::tests

#endif
