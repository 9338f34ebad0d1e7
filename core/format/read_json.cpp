#include <iterator>
#include <nlohmann/json.hpp>

#include "core/format/encoding.h"
#include "core/format/format.h"
#include "core/format/json_reader.h"

// The JSON parser is the library's; JsonReader gets its events, each with the place where it stands.

namespace tamis::format {
namespace {

/// Characters of the text, counted from outside while the parser takes them.
struct Counting {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  const char* at = nullptr;
  const char** reached = nullptr;

  const char& operator*() const { return *at; }
  Counting& operator++() {
    ++at;
    if (reached != nullptr) *reached = at;
    return *this;
  }
  Counting operator++(int) {
    Counting before = *this;
    ++*this;
    return before;
  }
  bool operator==(const Counting& other) const { return at == other.at; }
};

/// The library's events, handed on with their place.
class Events {
 public:
  Events(JsonReader& reader, const char* base, const char* const& reached)
      : reader_(reader), base_(base), reached_(reached) {}

  bool null() { return reader_.word(next()); }
  bool boolean(bool /*value*/) { return reader_.word(next()); }
  bool number_integer(nlohmann::json::number_integer_t /*value*/) { return reader_.number(); }
  bool number_unsigned(nlohmann::json::number_unsigned_t /*value*/) { return reader_.number(); }
  bool number_float(nlohmann::json::number_float_t /*value*/, const std::string& /*text*/) {
    return reader_.number();
  }
  bool string(const std::string& text) { return reader_.string(next(), text); }
  static bool binary(const nlohmann::json::binary_t& /*value*/) { return false; }
  bool start_object(std::size_t /*size*/) { return reader_.start_object(next()); }
  bool key(const std::string& text) { return reader_.key(next(), text); }
  bool end_object() { return reader_.end_object(next()); }
  bool start_array(std::size_t /*size*/) { return reader_.start_array(next()); }
  bool end_array() { return reader_.end_array(next()); }
  bool parse_error(std::size_t /*place*/, const std::string& /*token*/, const nlohmann::json::exception& /*why*/) {
    return reader_.syntax_fault();
  }

 private:
  [[nodiscard]] std::size_t next() const { return static_cast<std::size_t>(reached_ - base_); }

  JsonReader& reader_;
  const char* base_;
  const char* const& reached_;
};

}  // namespace

Read read_json(std::shared_ptr<const base::Source> source) {
  Read made;
  const std::string& bytes = source->bytes();
  if (auto refusal = refuse_bytes(bytes)) {
    made.findings.push_back(std::move(*refusal));
    return made;
  }
  auto document = std::make_shared<fiche::Document>(source, fiche::Spelling::json);
  document->reserve(bytes.size() / 24 + 16, bytes.size() / 32 + 16);
  JsonReader reader(*source, *document, made.findings);
  const char* reached = bytes.data();
  Events events(reader, bytes.data(), reached);
  const Counting first{bytes.data(), &reached}, last{bytes.data() + bytes.size(), nullptr};
  const bool good = nlohmann::json::sax_parse(first, last, &events);
  if (good && reader.finish()) made.document = std::move(document);
  return made;
}

}  // namespace tamis::format
