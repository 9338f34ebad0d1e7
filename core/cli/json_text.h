#ifndef CORE_CLI_JSON_TEXT_H
#define CORE_CLI_JSON_TEXT_H

#include <string>
#include <string_view>

namespace tamis::cli {

/// A JSON string with its quotes (RFC 8259). Bytes that are not UTF-8 become U+FFFD.
std::string json_string(std::string_view text);

/// Puts members into an object or items into an array with the commas between them.
class JsonList {
 public:
  /// "{" and "}", or "[" and "]"; `between` stands behind each comma.
  JsonList(std::string& out, char open, char close, std::string_view between = " ");
  JsonList(const JsonList&) = delete;
  JsonList& operator=(const JsonList&) = delete;
  ~JsonList() { close(); }

  void item(std::string_view json);  ///< already spelled
  void member(std::string_view name, std::string_view json);
  void text(std::string_view name, std::string_view value);  ///< member whose value is a string

  /// Ends it before its destructor does.
  void close();

  /// Starts an item or member whose value the caller appends to the string itself.
  void begin();
  void begin(std::string_view name);

 private:
  std::string& out_;
  char close_;
  std::string between_;
  bool first_ = true;
  bool closed_ = false;
};

/// The shortest decimal form that reads back as the same number; null when it is none.
std::string json_number(double value);

}  // namespace tamis::cli

#endif
