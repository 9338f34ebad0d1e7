#include "tests/cli/process.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace tamis::tests {
namespace {

struct Pipe {
  int read_end = -1;
  int write_end = -1;
  Pipe() {
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
    read_end = ends[0];
    write_end = ends[1];
  }
};

[[noreturn]] void become(const std::vector<std::string>& words, const std::string& folder, const Pipe& in,
                         const Pipe& out, const Pipe& err) {
  ::dup2(in.read_end, STDIN_FILENO);
  ::dup2(out.write_end, STDOUT_FILENO);
  ::dup2(err.write_end, STDERR_FILENO);
  if (::chdir(folder.c_str()) != 0) ::_exit(126);
  std::vector<char*> argv{const_cast<char*>(TAMIS_BINARY)};
  for (const std::string& word : words) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  ::execv(TAMIS_BINARY, argv.data());
  ::_exit(127);
}

/// Reads what is there; false at the end.
bool take(int from, std::string& into) {
  std::array<char, 65536> bytes{};
  const ssize_t got = ::read(from, bytes.data(), bytes.size());
  if (got > 0) into.append(bytes.data(), static_cast<std::size_t>(got));
  return got > 0;
}

void exchange(int to, const std::string& input, int out, int err, Ran& ran) {
  std::size_t sent = 0;
  std::array<pollfd, 3> ends{pollfd{to, POLLOUT, 0}, pollfd{out, POLLIN, 0}, pollfd{err, POLLIN, 0}};
  if (input.empty()) {
    ::close(to);
    ends[0].fd = -1;
  }
  while (ends[1].fd >= 0 || ends[2].fd >= 0) {
    ::poll(ends.data(), ends.size(), -1);
    if (ends[1].revents != 0 && !take(out, ran.out)) ends[1].fd = -1;
    if (ends[2].revents != 0 && !take(err, ran.err)) ends[2].fd = -1;
    if (ends[0].fd < 0 || ends[0].revents == 0) continue;
    const ssize_t written = ::write(to, input.data() + sent, input.size() - sent);
    if (written > 0) sent += static_cast<std::size_t>(written);
    if (written < 0 || sent == input.size()) {
      ::close(to);
      ends[0].fd = -1;
    }
  }
}

}  // namespace

Ran run_tamis(const std::vector<std::string>& words, const std::string& input, const std::string& folder) {
  ::signal(SIGPIPE, SIG_IGN);
  ::setenv("NO_COLOR", "1", 1);
  const Pipe in;
  const Pipe out;
  const Pipe err;
  const pid_t child = ::fork();
  if (child == 0) become(words, folder, in, out, err);
  ::close(in.read_end);
  ::close(out.write_end);
  ::close(err.write_end);
  Ran ran;
  exchange(in.write_end, input, out.read_end, err.read_end, ran);
  ::close(out.read_end);
  ::close(err.read_end);
  int status = 0;
  ::waitpid(child, &status, 0);
  ran.exit = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return ran;
}

TemporaryFolder::TemporaryFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "tamis-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  path_ = std::filesystem::canonical(name).string();
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string TemporaryFolder::write(const std::string& name, const std::string& bytes) const {
  const std::filesystem::path path = std::filesystem::path(path_) / name;
  std::filesystem::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << bytes;
  return path.string();
}

std::string TemporaryFolder::read(const std::string& name) const {
  std::ifstream in(std::filesystem::path(path_) / name, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

const char* const good_fiche = R"(<fiche xmlns="urn:tamis:fiche:1" id="syrup" lang="en" units="metric">
  <title>Plain syrup</title>
  <component id="syrup" title="Syrup">
    <ingredient id="water" food="water">500 g</ingredient>
    <ingredient id="sugar" food="sugar-white">500 g</ingredient>
    <step do="boil" on="hob">Bring the <use of="water">water</use> and the <use of="sugar">sugar</use> to the boil.</step>
  </component>
</fiche>
)";

const char* const bad_fiche = R"(<fiche xmlns="urn:tamis:fiche:1" id="syrup" lang="en" units="metric">
  <title>Plain syrup</title>
  <component id="syrup" title="Syrup">
    <ingredient id="water" food="water">500 g</ingredient>
    <ingredint food="sugar-white">500 g</ingredint>
    <step do="boil" on="hob">Bring the <use of="water">water</use> and the sugar to the boil.</step>
  </component>
</fiche>
)";

}  // namespace tamis::tests
