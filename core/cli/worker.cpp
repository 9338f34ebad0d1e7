#include "core/cli/worker.h"

#include <fcntl.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <new>
#include <string>

#include "core/cli/frames.h"

namespace tamis::cli {
namespace {

constexpr int out_of_memory = 3;

/// Standard input is the supervisor's to read and standard output its own to write.
void let_go_of_streams() {
  const int nothing = ::open("/dev/null", O_RDWR | O_CLOEXEC);
  if (nothing < 0) return;
  ::dup2(nothing, STDIN_FILENO);
  ::dup2(nothing, STDOUT_FILENO);
  if (nothing > STDERR_FILENO) ::close(nothing);
}

bool receive(int socket, std::string& received) {
  std::array<char, 65536> block{};
  for (;;) {
    const ssize_t got = ::recv(socket, block.data(), block.size(), 0);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return false;
    received.append(block.data(), static_cast<std::size_t>(got));
    return true;
  }
}

bool send_all(int socket, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t sent = ::send(socket, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (sent < 0 && errno == EINTR) continue;
    if (sent < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(sent));
  }
  return true;
}

}  // namespace

void be_worker(int socket, const Work& work) {
  let_go_of_streams();
  std::string received;
  Frame frame;
  for (;;) {
    const std::size_t taken = first_frame(received, frame);
    if (taken == 0) {
      if (!receive(socket, received)) ::_exit(0);
      continue;
    }
    std::string answer;
    try {
      append_frame(answer, frame.number, spelled(work(read_task(frame.bytes))));
    } catch (const std::bad_alloc&) {
      ::_exit(out_of_memory);
    }
    received.erase(0, taken);
    if (!send_all(socket, answer)) ::_exit(0);
  }
}

}  // namespace tamis::cli
