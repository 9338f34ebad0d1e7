#ifndef CORE_CLI_FILES_H
#define CORE_CLI_FILES_H

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/base/source.h"

namespace tamis::cli {

/// A file's bytes under the name it was given by; "-" is standard input. Reads no more than one byte past the
/// limit of format::most_bytes, which the reader then refuses by name. Refuses with rule "unreadable-file" and a
/// message that goes on from the path: "cannot be read: there is no such file".
base::Result<std::shared_ptr<const base::Source>> read_file(const std::string& path);

/// Puts the bytes in place of the file, or makes it, all or nothing: a temporary file in the same folder, flushed
/// to the disk, then renamed over it. An existing file keeps its mode, and stays where it is when it is a link.
/// Empty when it was done, else why not ("permission denied").
std::string write_file(const std::string& path, std::string_view bytes);

/// Makes a folder and those above it that are not there yet. Empty when it is there now, else why not.
std::string make_folders(const std::string& folder);

enum class PathKind : unsigned char { nothing, file, folder };
PathKind kind_of(const std::string& path);

/// ".fiche.xml" or ".fiche.json" at the end.
bool is_fiche_name(std::string_view name);

/// Names in a folder but those that start with a dot, sorted. 0, or the errno when it cannot be read.
int names_in(const std::string& folder, std::vector<std::string>& names);

/// Calls `found` with every fiche and kitchen.xml under a folder, in the order of their names, folder by folder.
/// Passes by what starts with a dot, folders that are links, and below the first folder those that hold a plugin.xml:
/// a plugin's fiches are its tests. A folder that cannot be read is told to `failed`
/// with the reason. Keeps no list of more than one folder at a time on each level; stops when `found` says false.
bool walk(const std::string& folder, const std::function<bool(const std::string&)>& found,
          const std::function<void(const std::string&, const std::string&)>& failed);

/// The folder part of a path: "a/b.xml" gives "a", "b.xml" gives ".", "/b.xml" gives "/".
std::string folder_of(std::string_view path);

/// The path with all links and dots resolved; empty when there is no such file.
std::string real_path(const std::string& path);

/// A reason the system gave (errno), in our words.
std::string reason(int code);

}  // namespace tamis::cli

#endif
