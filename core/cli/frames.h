#ifndef CORE_CLI_FRAMES_H
#define CORE_CLI_FRAMES_H

#include <cstdint>
#include <string>
#include <string_view>

namespace tamis::cli {

/// What goes between the supervisor and a worker: a number and some bytes, their length before them.
struct Frame {
  std::uint64_t number = 0;
  std::string_view bytes;
};

void append_frame(std::string& out, std::uint64_t number, std::string_view bytes);

/// The first whole frame of what was received, and how much of it the frame takes; 0: it is not all there yet.
std::size_t first_frame(std::string_view received, Frame& frame);

}  // namespace tamis::cli

#endif
