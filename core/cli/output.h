#ifndef CORE_CLI_OUTPUT_H
#define CORE_CLI_OUTPUT_H

#include <string>
#include <string_view>

namespace tamis::cli {

/// Results: standard output, gathered in blocks and written through at the end of the run.
void print(std::string_view text);

/// Talk: standard error. What was printed before goes out first, so that the two keep their order on a terminal.
void talk(std::string_view text);
/// The same, with a line end added.
void say(std::string_view line);

/// A passing line on the terminal that standard error is ("1200 of 30000 files"): it takes the place of the last one,
/// and goes before anything else is written. Nothing happens where standard error is no terminal.
void show_passing(std::string_view line);
void clear_passing();
bool talk_is_terminal();

/// "tamis: " and the line: what went wrong with the command itself.
void complain(std::string_view line);

/// Writes through what print() gathered. False when standard output takes no more: silently when its reader has
/// gone (a closed pipe), with a complaint when it is anything else (a full disk).
bool flush_output();

/// True once standard output takes no more, so that long work may stop.
bool output_gone();

/// Colour only on a terminal that can, and never under NO_COLOR (https://no-color.org).
bool colour_on_output();
bool colour_on_talk();

/// Columns of the terminal standard output stands on; 80 when it is none.
std::size_t output_columns();

/// Text as a terminal may get it: control characters, bidirectional overrides and bytes that are not UTF-8 become
/// U+FFFD, so that no file can steer the reader's terminal. Tab and line feed stay.
std::string harmless(std::string_view text);

}  // namespace tamis::cli

#endif
