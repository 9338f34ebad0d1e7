#include "core/cli/files.h"

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <utility>
#include <vector>

#include "core/base/utf8.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

class Descriptor {
 public:
  explicit Descriptor(int held) : held_(held) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (held_ > STDERR_FILENO) ::close(held_);
  }
  [[nodiscard]] int get() const { return held_; }

 private:
  int held_;
};

base::Finding unreadable(const std::string& why) {
  base::Finding refusal;
  refusal.rule = "unreadable-file";
  refusal.message = "cannot be read: " + why;
  return refusal;
}

/// 0, or the errno of the read that failed.
int read_to_limit(int descriptor, std::size_t expected, std::string& bytes) {
  constexpr std::size_t limit = format::most_bytes + 1;
  bytes.resize(std::min(expected + 1, limit));
  std::size_t size = 0;
  while (size < limit) {
    if (size == bytes.size()) bytes.resize(std::min(limit, bytes.size() * 2 + 4096));
    const ssize_t got = ::read(descriptor, bytes.data() + size, bytes.size() - size);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return errno;
    if (got == 0) break;
    size += static_cast<std::size_t>(got);
  }
  bytes.resize(size);
  return 0;
}

/// Where a write must go: behind a link to what it points to, so that the link stays.
std::string write_target(const std::string& path) {
  const std::string real = real_path(path);
  return real.empty() ? path : real;
}

int fill_and_flush(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return ::fsync(descriptor) == 0 ? 0 : errno;
}

/// The mode, and where we may the owner, of the file that is replaced; a new file's as the user's mask has it.
int take_over(int descriptor, const std::string& target) {
  struct stat about {};
  if (::stat(target.c_str(), &about) == 0) {
    if (::fchown(descriptor, about.st_uid, about.st_gid) != 0 && errno != EPERM) return errno;
    return ::fchmod(descriptor, about.st_mode & 07777U) == 0 ? 0 : errno;
  }
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return ::fchmod(descriptor, 0666U & ~mask) == 0 ? 0 : errno;
}

void flush_folder(const std::string& folder) {
  const Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (opened.get() >= 0) ::fsync(opened.get());
}

struct Listed {
  std::string name;
  bool folder = false;
};

bool is_folder_entry(const std::string& path, const dirent& entry) {
  if (entry.d_type == DT_DIR) return true;
  if (entry.d_type != DT_UNKNOWN) return false;
  struct stat about {};
  return ::lstat(path.c_str(), &about) == 0 && S_ISDIR(about.st_mode);
}

int list(const std::string& folder, std::vector<Listed>& listed) {
  DIR* opened = ::opendir(folder.c_str());
  if (opened == nullptr) return errno;
  errno = 0;
  while (const dirent* entry = ::readdir(opened)) {
    const std::string name = entry->d_name;
    if (name.front() == '.') continue;
    const bool inner = is_folder_entry(folder + "/" + name, *entry);
    if (inner || is_fiche_name(name) || name == "kitchen.xml") listed.push_back({name, inner});
    errno = 0;
  }
  const int why = errno;
  ::closedir(opened);
  std::sort(listed.begin(), listed.end(), [](const Listed& a, const Listed& b) { return a.name < b.name; });
  return why;
}

}  // namespace

std::string reason(int code) {
  switch (code) {
    case ENOENT:
      return "there is no such file";
    case EACCES:
    case EPERM:
      return "permission denied";
    case EISDIR:
      return "it is a folder";
    case ENOTDIR:
      return "a part of its path is no folder";
    case ENOSPC:
      return "the disk is full";
    case EROFS:
      return "the disk is write-protected";
    case ENAMETOOLONG:
      return "its name is too long";
    case ELOOP:
      return "its links go in a circle";
    default:
      return base::lower(std::strerror(code));
  }
}

base::Result<std::shared_ptr<const base::Source>> read_file(const std::string& path) {
  const bool input = path == "-";
  // Not blocking, so that a pipe nobody writes to is refused below rather than waited for.
  const Descriptor file(input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.get() < 0) return unreadable(reason(errno));
  struct stat about {};
  if (::fstat(file.get(), &about) != 0) return unreadable(reason(errno));
  if (S_ISDIR(about.st_mode)) return unreadable("it is a folder");
  if (!input && !S_ISREG(about.st_mode)) return unreadable("it is no ordinary file");
  std::string bytes;
  const int why = read_to_limit(file.get(), static_cast<std::size_t>(std::max<off_t>(about.st_size, 0)), bytes);
  if (why != 0) return unreadable(reason(why));
  return std::shared_ptr<const base::Source>(std::make_shared<base::Source>(path, std::move(bytes)));
}

std::string write_file(const std::string& path, std::string_view bytes) {
  const std::string target = write_target(path);
  if (kind_of(target) == PathKind::folder) return reason(EISDIR);
  std::string made = folder_of(target) + "/.tamis-XXXXXX";
  int why = 0;
  {
    const Descriptor file(::mkostemp(made.data(), O_CLOEXEC));
    if (file.get() < 0) return reason(errno);
    why = fill_and_flush(file.get(), bytes);
    if (why == 0) why = take_over(file.get(), target);
  }
  if (why == 0 && ::rename(made.c_str(), target.c_str()) != 0) why = errno;
  if (why != 0) {
    ::unlink(made.c_str());
    return reason(why);
  }
  flush_folder(folder_of(target));
  return {};
}

std::string make_folders(const std::string& folder) {
  if (kind_of(folder) == PathKind::folder) return {};
  if (const std::string above = folder_of(folder); above != folder) {
    std::string why = make_folders(above);
    if (!why.empty()) return why;
  }
  return ::mkdir(folder.c_str(), 0777) == 0 || errno == EEXIST ? "" : reason(errno);
}

PathKind kind_of(const std::string& path) {
  struct stat about {};
  if (::stat(path.c_str(), &about) != 0) return PathKind::nothing;
  return S_ISDIR(about.st_mode) ? PathKind::folder : PathKind::file;
}

int names_in(const std::string& folder, std::vector<std::string>& names) {
  DIR* opened = ::opendir(folder.c_str());
  if (opened == nullptr) return errno;
  errno = 0;
  while (const dirent* entry = ::readdir(opened)) {
    if (entry->d_name[0] != '.') names.emplace_back(entry->d_name);
    errno = 0;
  }
  const int why = errno;
  ::closedir(opened);
  std::sort(names.begin(), names.end());
  return why;
}

bool is_fiche_name(std::string_view name) { return name.ends_with(".fiche.xml") || name.ends_with(".fiche.json"); }

bool walk(const std::string& folder, const std::function<bool(const std::string&)>& found,
          const std::function<void(const std::string&, const std::string&)>& failed) {
  std::vector<Listed> listed;
  const int why = list(folder, listed);
  if (why != 0) failed(folder, reason(why));
  const std::string start = folder.ends_with('/') ? folder : folder + "/";
  for (const Listed& entry : listed) {
    const std::string path = start + entry.name;
    if (entry.folder && kind_of(path + "/plugin.xml") == PathKind::file) continue;
    if (entry.folder ? !walk(path, found, failed) : !found(path)) return false;
  }
  return true;
}

std::string folder_of(std::string_view path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string_view::npos) return ".";
  return std::string(slash == 0 ? "/" : path.substr(0, slash));
}

std::string real_path(const std::string& path) {
  char* resolved = ::realpath(path.c_str(), nullptr);
  if (resolved == nullptr) return {};
  std::string real = resolved;
  std::free(resolved);
  return real;
}

}  // namespace tamis::cli
