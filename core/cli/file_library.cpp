#include "core/cli/file_library.h"

#include <vector>

#include "core/cli/files.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

// Documents kept at hand: enough for the shared preparations of a large library, few enough to bound memory.
constexpr std::size_t most_kept = 64;

base::Finding refusal(std::string_view rule, std::string message) {
  base::Finding finding;
  finding.rule = rule;
  finding.message = std::move(message);
  return finding;
}

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::string percent_decoded(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const int high = text[at] == '%' && at + 2 < text.size() ? hex_digit(text[at + 1]) : -1;
    const int low = high >= 0 ? hex_digit(text[at + 2]) : -1;
    if (low >= 0) {
      out += static_cast<char>(high * 16 + low);
      at += 2;
    } else {
      out += text[at];
    }
  }
  return out;
}

/// A real path as a reference from a real folder; what a reference takes otherwise is percent-encoded (RFC 3986).
std::string seen_from(std::string_view folder, std::string_view path) {
  std::size_t shared = 0;  // up to the last slash of both
  const std::string start = folder == "/" ? "/" : std::string(folder) + "/";
  for (std::size_t at = 0; at < std::min(start.size(), path.size()) && start[at] == path[at]; ++at)
    if (start[at] == '/') shared = at + 1;
  std::string out;
  for (const char c : std::string_view(start).substr(shared))
    if (c == '/') out += "../";
  if (out.empty() && path.substr(shared, path.find('/', shared) - shared).find(':') != std::string_view::npos) out = "./";
  for (const char c : path.substr(shared)) out += c == '%' ? "%25" : c == '#' ? "%23" : std::string(1, c);
  return out;
}

/// Starts like "https:" or "/": not a path from the file it stands in.
bool leads_elsewhere(std::string_view reference) {
  const std::size_t colon = reference.find(':');
  return reference.starts_with('/') || (colon != std::string_view::npos && colon < reference.find('/'));
}

}  // namespace

std::string without_dots(std::string_view path) {
  std::vector<std::string_view> parts;
  while (!path.empty()) {
    const std::size_t slash = std::min(path.find('/'), path.size());
    const std::string_view part = path.substr(0, slash);
    if (part == ".." && !parts.empty()) parts.pop_back();
    if (!part.empty() && part != "." && part != "..") parts.push_back(part);
    path.remove_prefix(std::min(slash + 1, path.size()));
  }
  std::string out;
  for (const std::string_view part : parts) (out += '/') += part;
  return out.empty() ? "/" : out;
}

std::string shown_path(const std::string& real) {
  const std::string here = real_path(".");
  const bool under = here != "/" && real.starts_with(here + "/");
  return under ? real.substr(here.size() + 1) : real;
}

FileLibrary::FileLibrary(const std::string& root) : root_(real_path(root)) {}

bool FileLibrary::holds(std::string_view real) const {
  if (root_ == "/") return true;
  return !root_.empty() && real.size() > root_.size() && real.starts_with(root_) && real[root_.size()] == '/';
}

base::Result<std::string> FileLibrary::locate(std::string_view from_path, std::string_view reference) const {
  const std::string wanted = percent_decoded(reference);
  const std::string named = "\"" + std::string(reference) + "\"";
  const std::string outside = named + " lies outside the library folder " + shown_path(root_);
  if (leads_elsewhere(wanted) || wanted.find('\0') != std::string::npos)
    return refusal("escaping-reference", outside);
  const std::string folder = real_path(folder_of(from_path));
  if (!holds(without_dots(folder + "/" + wanted))) return refusal("escaping-reference", outside);
  std::string real = real_path(folder + "/" + wanted);
  if (real.empty()) return refusal("dangling-reference", "there is no file " + named);
  if (!holds(real)) return refusal("escaping-reference", outside + " once its links are followed");
  return real;
}

base::Result<std::shared_ptr<const fiche::Document>> FileLibrary::open(std::string_view from_path,
                                                                       std::string_view reference) {
  auto real = locate(from_path, reference);
  if (!real) return std::move(real.fault());
  return read(*real);
}

base::Result<std::string> FileLibrary::picture(std::string_view from_path, std::string_view reference) {
  auto real = locate(from_path, reference);
  if (!real) return std::move(real.fault());
  const std::string path = shown_path(*real);
  const auto source = read_file(path);
  if (!source) return refusal("unreadable-picture", path + " " + source.fault().message);
  const std::string_view bytes = (*source)->bytes();
  if (bytes.size() > fiche::most_picture_bytes)
    return refusal("unreadable-picture", path + " has more than 2 MB; make it smaller");
  if (fiche::picture_type(bytes).empty()) return refusal("unreadable-picture", path + " is no PNG or JPEG");
  return std::string(bytes);
}

std::vector<std::string> FileLibrary::list(std::string_view from_path) {
  if (!is_listed_ && !root_.empty()) {
    const auto found = [this](const std::string& path) {
      if (is_fiche_name(path)) listed_.push_back(path);
      return listed_.size() < most_listed;
    };
    walk(root_, found, [](const std::string&, const std::string&) {});  // who asks for that folder is told
  }
  is_listed_ = true;
  const std::string folder = real_path(folder_of(from_path));
  std::vector<std::string> out;
  if (!folder.empty())
    for (const std::string& path : listed_) out.push_back(seen_from(folder, path));
  return out;
}

base::Result<std::shared_ptr<const fiche::Document>> FileLibrary::read(const std::string& real) {
  if (const auto kept = by_path_.find(real); kept != by_path_.end()) {
    recent_.splice(recent_.begin(), recent_, kept->second);
    return recent_.front().second;
  }
  auto source = read_file(shown_path(real));
  if (!source) return refusal("dangling-reference", shown_path(real) + " " + source.fault().message);
  const format::Read read = format::read(*source);
  if (read.document == nullptr) {
    if (!read.findings.empty()) return read.findings.front();
    return refusal("dangling-reference", shown_path(real) + " cannot be read");
  }
  recent_.emplace_front(real, read.document);
  by_path_[real] = recent_.begin();
  if (recent_.size() > most_kept) {
    by_path_.erase(recent_.back().first);
    recent_.pop_back();
  }
  return std::shared_ptr<const fiche::Document>(read.document);
}

}  // namespace tamis::cli
