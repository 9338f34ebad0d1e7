#include "core/cli/output.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "core/base/utf8.h"

namespace tamis::cli {
namespace {

// The process has one standard output, so there is one of these.
struct Output {
  std::string gathered;
  bool gone = false;
  bool passing = false;  // a passing line stands on the terminal
};

Output& output() {
  static Output one;
  return one;
}

constexpr std::size_t block = std::size_t{1} << 16U;

bool write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

/// One that understands more than a typewriter.
bool terminal(int descriptor) {
  const char* kind = std::getenv("TERM");
  return kind != nullptr && std::strcmp(kind, "dumb") != 0 && ::isatty(descriptor) == 1;
}

bool terminal_with_colour(int descriptor) {
  const char* refused = std::getenv("NO_COLOR");
  return (refused == nullptr || *refused == '\0') && terminal(descriptor);
}

bool steers(char32_t c) {
  const bool control = (c < 0x20 && c != '\t' && c != '\n') || (c >= 0x7F && c < 0xA0);
  const bool direction =
      (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0x200E || c == 0x200F;
  return control || direction || c == 0x2028 || c == 0x2029;
}

}  // namespace

void print(std::string_view text) {
  output().gathered += text;
  if (output().gathered.size() >= block) flush_output();
}

void talk(std::string_view text) {
  flush_output();
  clear_passing();
  write_all(STDERR_FILENO, text);
}

void say(std::string_view line) { talk(std::string(line) + "\n"); }

bool talk_is_terminal() { return terminal(STDERR_FILENO); }

void show_passing(std::string_view line) {
  if (!talk_is_terminal()) return;
  output().passing = true;
  write_all(STDERR_FILENO, "\r" + std::string(line) + "\033[K");
}

void clear_passing() {
  if (!output().passing) return;
  output().passing = false;
  write_all(STDERR_FILENO, "\r\033[K");
}

void complain(std::string_view line) { say("tamis: " + harmless(line)); }

bool flush_output() {
  Output& out = output();
  if (!out.gathered.empty()) clear_passing();
  if (!out.gone && !write_all(STDOUT_FILENO, out.gathered)) {
    out.gone = true;
    const int why = errno;
    out.gathered.clear();
    if (why != EPIPE) complain(std::string("standard output takes no more: ") + std::strerror(why));
  }
  out.gathered.clear();
  return !out.gone;
}

bool output_gone() { return output().gone; }

bool colour_on_output() { return terminal_with_colour(STDOUT_FILENO); }
bool colour_on_talk() { return terminal_with_colour(STDERR_FILENO); }

std::size_t output_columns() {
  winsize size{};
  const bool known =
      ::isatty(STDOUT_FILENO) == 1 && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0;
  return known ? std::max<std::size_t>(size.ws_col, 40) : 80;
}

std::string harmless(std::string_view text) {
  const auto is_plain = [](char c) { return (c >= ' ' && c <= '~') || c == '\t' || c == '\n'; };
  const auto plain = static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), is_plain) - text.begin());
  std::string out(text.substr(0, plain));
  for (std::size_t at = plain; at < text.size();) {
    const auto scalar = base::next_scalar(text, at);
    base::append_scalar(out, scalar && !steers(*scalar) ? *scalar : 0xFFFD);
  }
  return out;
}

}  // namespace tamis::cli
