#include "core/format/json_reader.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/format/encoding.h"
#include "core/format/format.h"
#include "core/format/xml_chars.h"

namespace tamis::format {
namespace {

using fiche::Node;
using fiche::NodeKind;

std::uint32_t offset(std::size_t at) { return static_cast<std::uint32_t>(at); }
std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

}  // namespace

bool JsonReader::fail(std::string_view rule, base::Span where, std::string message, std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.where = where;
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  findings_.push_back(std::move(finding));
  return false;
}

std::uint32_t JsonReader::skip_blank(std::uint32_t at) const {
  if (at == 0 && bytes_.starts_with(utf8_mark)) at = offset(utf8_mark.size());
  while (at < bytes_.size() && is(bytes_[at], xml_space)) ++at;
  return at;
}

// The token that ends at `next`, and what was wanted of it is settled.
base::Span JsonReader::token(std::size_t next) {
  std::uint32_t at = skip_blank(read_to_);
  while (at < bytes_.size() && (bytes_[at] == ',' || bytes_[at] == ':')) at = skip_blank(at + 1);
  read_to_ = offset(next);
  last_was_key_ = false;
  return {at, read_to_};
}

/// The slice of the source when nothing in it was escaped.
std::string_view JsonReader::kept(base::Span inside, std::string_view text) const {
  const std::string_view raw = slice(inside);
  return raw == text ? raw : text;
}

bool JsonReader::open(Place place, Node node, base::Span token) {
  frames_.push_back({place, node, token.begin});
  wanted_ = Wanted::nothing;
  return true;
}

// ---------------------------------------------------------------- events

bool JsonReader::start_object(std::size_t next) {
  const base::Span at = token(next);
  if (frames_.empty()) return open(Place::top, tree_.top(), at);
  Frame& frame = frames_.back();
  if (wanted_ == Wanted::body) {
    ++depth_;
    return open(Place::body, element_, at);
  }
  if (wanted_ != Wanted::nothing || (frame.place != Place::content && frame.place != Place::leaves)) {
    return misplaced(at, "an object");
  }
  ++frame.items;
  return open(Place::item, frame.node, at);
}

bool JsonReader::end_object(std::size_t next) {
  const base::Span at = token(next);
  const Frame frame = frames_.back();
  if (frame.place == Place::item && frame.items == 0) {
    return fail("not-well-formed", {frame.begin, at.end}, "an empty object",
                "write {\"name\": ...}, or take it out");
  }
  if (frame.place == Place::top && tree_.root() == fiche::none) {
    return fail("not-well-formed", {frame.begin, frame.begin + 1}, "there is no fiche in the file",
                "write {\"fiche\": {\"id\": \"...\", \"content\": [...]}}");
  }
  frames_.pop_back();
  if (frame.place == Place::item && frame.element != fiche::none) tree_.close(frame.element, at.end);
  if (frame.place == Place::body) {
    --depth_;
    element_ = frame.node;
    body_ends(at.end);
  }
  return true;
}

// The root is a member, not an object of its own.
void JsonReader::body_ends(std::size_t end) {
  if (frames_.back().place == Place::top) tree_.close(element_, offset(end));
}

bool JsonReader::start_array(std::size_t next) {
  const base::Span at = token(next);
  if (wanted_ == Wanted::content) return open(Place::content, frames_.back().node, at);
  if (wanted_ == Wanted::before || wanted_ == Wanted::after) {
    after_now_ = wanted_ == Wanted::after;
    return open(Place::leaves, tree_.top(), at);
  }
  return misplaced(at, "an array");
}

bool JsonReader::end_array(std::size_t next) {
  token(next);
  frames_.pop_back();
  return true;
}

bool JsonReader::number() {
  const base::Span start = token(read_to_);
  const base::Span at{start.begin, number_end(start.begin)};
  read_to_ = at.end;
  if (wanted_ != Wanted::attribute) return misplaced(at, "the number " + std::string(slice(at)));
  return new_attribute(at, at, slice(at));
}

bool JsonReader::word(std::size_t next) {
  const base::Span at = token(next);
  return misplaced(at, std::string(slice(at)));
}

bool JsonReader::string(std::size_t next, const std::string& text) {
  const base::Span at = token(next);
  const base::Span inside{at.begin + 1, at.end - 1};
  if (!check_characters(inside)) return false;
  const std::string_view value = kept(inside, text);
  switch (wanted_) {
    case Wanted::attribute:
      return new_attribute(at, inside, value);
    case Wanted::body:
      new_text(element_, inside, value);
      wanted_ = Wanted::nothing;
      body_ends(at.end);
      return true;
    case Wanted::comment:
    case Wanted::instruction:
    case Wanted::foreign:
      return new_leaf(inside, value);
    case Wanted::nothing:
      break;
    default:
      return misplaced(at, "a text");
  }
  if (frames_.empty() || frames_.back().place != Place::content) return misplaced(at, "a text");
  ++frames_.back().items;
  new_text(frames_.back().node, inside, value);
  return true;
}

bool JsonReader::key(std::size_t next, const std::string& text) {
  const base::Span at = token(next);
  name_ = {at.begin + 1, at.end - 1};
  name_kept_ = text;
  name_text_ = kept(name_, name_kept_);
  last_was_key_ = true;
  const bool ours = text == "content" || text.starts_with('#');
  if (ours && name_text_.data() == name_kept_.data()) {
    return fail("not-well-formed", name_, "the name " + quoted(name_text_) + " is written with escapes",
                "write it plainly");
  }
  switch (frames_.back().place) {
    case Place::top:
      return top_key(name_, name_text_);
    case Place::body:
      return body_key(name_, name_text_);
    default:
      return item_key(name_, name_text_);
  }
}

// ---------------------------------------------------------------- names

bool JsonReader::top_key(base::Span inside, std::string_view name) {
  ++frames_.back().items;
  if (name == "#before" || name == "#after") {
    bool& given = name == "#before" ? before_given_ : after_given_;
    if (given) return fail("duplicate-key", inside, quoted(name) + " is given twice", "bring the two together");
    given = true;
    wanted_ = name == "#before" ? Wanted::before : Wanted::after;
    return true;
  }
  if (tree_.root() != fiche::none) {
    const bool same = tree_.name(tree_.root()) == name;
    fail(same ? "duplicate-key" : "not-well-formed", inside,
         same ? quoted(name) + " is given twice"
              : quoted(name) + " stands beside " + quoted(tree_.name(tree_.root())),
         "one file holds one fiche or one kitchen");
    findings_.back().related.push_back({tree_.name_span(tree_.root()), "given here first", {}, {}, {}});
    return false;
  }
  return new_element(inside, name, inside.begin - 1);
}

bool JsonReader::item_key(base::Span inside, std::string_view name) {
  Frame& frame = frames_.back();
  if (frame.items++ > 0) {
    return fail("not-well-formed", inside, quoted(name) + " is a second name in one object",
                "give each its own object: {\"a\": ...}, {\"b\": ...}");
  }
  wanted_ = name == "#comment"       ? Wanted::comment
            : name == "#instruction" ? Wanted::instruction
            : name == "#xml"         ? Wanted::foreign
                                     : Wanted::nothing;
  const bool leaves = frames_[frames_.size() - 2].place == Place::leaves;
  if (leaves && (wanted_ == Wanted::nothing || wanted_ == Wanted::foreign)) {
    return fail("not-well-formed", inside, quoted(name) + " stands outside the fiche",
                "only {\"#comment\": ...} and {\"#instruction\": ...} can stand there");
  }
  if (wanted_ != Wanted::nothing) return true;
  if (!new_element(inside, name, frame.begin)) return false;
  frames_.back().element = element_;
  return true;
}

bool JsonReader::body_key(base::Span inside, std::string_view name) {
  Frame& frame = frames_.back();
  ++frame.items;
  if (name == "content") {
    if (frame.content)
      return fail("duplicate-key", inside, "\"content\" is given twice", "bring the two together");
    frame.content = true;
    wanted_ = Wanted::content;
    return true;
  }
  if (name == "#content") name_text_ = name = name.substr(1);
  if (!is_prefixed_name(name)) return bad_name(inside, name, true);
  if (name.size() > most_name_bytes) {
    return fail("over-limit", inside,
                "a name of " + std::to_string(name.size()) + " bytes; at most " + std::to_string(most_name_bytes) +
                    " are read",
                "use a shorter name");
  }
  if (frame.items > most_attributes + (frame.content ? 1U : 0U)) {
    return fail("over-limit", inside,
                "more than " + std::to_string(most_attributes) + " attributes in one element",
                "use elements in its content instead");
  }
  if (seen_before(inside, name)) return false;
  wanted_ = Wanted::attribute;
  return true;
}

// Few names are compared one by one; many are looked up, so that a long object costs no more for each name.
bool JsonReader::seen_before(base::Span inside, std::string_view name) {
  constexpr std::uint32_t few = 16;
  const Frame& frame = frames_.back();
  bool seen = false;
  if (frame.items > few) {
    if (many_names_of_ != frame.node) many_names_.clear();
    many_names_of_ = frame.node;
    if (many_names_.empty()) {
      for (fiche::Attr a = tree_.first_attribute(frame.node); a != fiche::none; a = tree_.next_attribute(a)) {
        many_names_.insert(tree_.attribute_name(a));
      }
    }
    seen = many_names_.contains(name);
  } else {
    for (fiche::Attr a = tree_.first_attribute(frame.node); a != fiche::none; a = tree_.next_attribute(a)) {
      seen = seen || tree_.attribute_name(a) == name;
    }
  }
  if (seen) fail("duplicate-key", inside, quoted(name) + " is given twice", "keep one of the two");
  return seen;
}

bool JsonReader::new_element(base::Span inside, std::string_view name, std::uint32_t begin) {
  if (!is_plain_name(name)) return bad_name(inside, name, false);
  if (name.size() > most_name_bytes) {
    return fail("over-limit", inside,
                "a name of " + std::to_string(name.size()) + " bytes; at most " + std::to_string(most_name_bytes) +
                    " are read",
                "use a shorter name");
  }
  if (depth_ == most_depth) {
    return fail("over-limit", inside, "elements stand more than " + std::to_string(most_depth) + " deep",
                "bring it to fewer levels");
  }
  const bool root = frames_.back().place == Place::top;
  fiche::Document::NewNode made;
  made.parent = frames_.back().node;
  made.name = name;
  made.name_span = inside;
  made.head_span = {inside.begin - 1, inside.end + 1};
  made.span = {begin, inside.end + 1};
  made.before = root ? first_after_ : fiche::none;
  element_ = tree_.append(made);
  if (root) tree_.set_root(element_);
  wanted_ = Wanted::body;
  return true;
}

// ---------------------------------------------------------------- values

void JsonReader::new_text(Node parent, base::Span inside, std::string_view value) {
  if (value.empty()) return;
  fiche::Document::NewNode made;
  made.kind = NodeKind::text;
  made.parent = parent;
  made.value = value;
  made.span = made.name_span = made.head_span = made.raw = inside;
  tree_.append(made);
}

bool JsonReader::new_attribute(base::Span whole, base::Span inside, std::string_view value) {
  const Node owner = frames_.back().node;
  wanted_ = Wanted::nothing;
  if (name_text_.starts_with("xmlns") && !namespace_attribute(name_text_, value)) return false;
  const fiche::Attr made = tree_.append_attribute(owner, name_text_, value, name_, inside, whole.end);
  if (name_text_.find(':') != std::string_view::npos) prefixed_.push_back(made);
  if (many_names_of_ == owner) many_names_.insert(tree_.attribute_name(made));
  return true;
}

bool JsonReader::namespace_attribute(std::string_view name, std::string_view value) {
  if (name != "xmlns" && !name.starts_with("xmlns:")) return true;
  const Node owner = frames_.back().node;
  if (owner != tree_.root()) {
    return fail("prefix-below-root", name_,
                quoted(name) + " stands in " + quoted(tree_.name(owner)) + ", below the root element",
                "declare prefixes in the root element, where every reader looks for them");
  }
  if (name == "xmlns" && value != fiche::fiche_namespace) {
    return fail("wrong-namespace", name_,
                "the namespace is " + quoted(value) + ", expected " + quoted(fiche::fiche_namespace),
                "leave \"xmlns\" out: it goes without saying in JSON");
  }
  return true;
}

bool JsonReader::new_leaf(base::Span inside, std::string_view value) {
  const Wanted kind = wanted_;
  wanted_ = Wanted::nothing;
  std::string with_line_feeds;
  if (value.find('\r') != std::string_view::npos) {
    append_with_line_feeds(with_line_feeds, value);
    value = with_line_feeds;
  }
  if (kind == Wanted::instruction) return instruction(inside, value);
  if (kind == Wanted::comment && (value.find("--") != std::string_view::npos || value.ends_with('-'))) {
    return fail("not-well-formed", inside, "a comment with \"--\" in it or \"-\" at its end, which XML can't hold",
                "write single dashes, or long ones (–)");
  }
  const std::size_t name_end = std::min(value.find_first_of(" \t\n/>", 1), value.size());
  const bool comment = kind == Wanted::comment;
  append_leaf(comment ? NodeKind::comment : NodeKind::foreign, inside,
              comment || value.empty() ? std::string_view() : value.substr(1, name_end - 1), value);
  return true;
}

bool JsonReader::instruction(base::Span inside, std::string_view value) {
  const std::size_t end = std::min(value.find_first_of(" \t\n"), value.size());
  const std::string_view target = value.substr(0, end);
  const std::size_t data = std::min(value.find_first_not_of(" \t\n", end), value.size());
  if (!is_plain_name(target) || base::lower(target) == "xml" || value.find("?>") != std::string_view::npos ||
      target.size() > most_name_bytes) {
    return fail("not-well-formed", inside, "an instruction without a proper name, or with \"?>\" in it",
                "write \"name text\"; the name \"xml\" is kept for XML itself");
  }
  append_leaf(NodeKind::instruction, inside, target, value.substr(data));
  return true;
}

void JsonReader::append_leaf(NodeKind kind, base::Span inside, std::string_view name, std::string_view value) {
  const Frame& item = frames_.back();
  const bool outside = frames_[frames_.size() - 2].place == Place::leaves;
  fiche::Document::NewNode made;
  made.kind = kind;
  made.parent = item.node;
  made.name = name;
  made.value = value;
  made.span = {item.begin, inside.end};  // up to the object's end, once that is read
  made.raw = inside;
  made.head_span = made.name_span = {name_.begin - 1, name_.end + 1};
  if (outside && !after_now_) made.before = tree_.root() != fiche::none ? tree_.root() : first_after_;
  const Node n = tree_.append(made);
  if (outside && after_now_ && first_after_ == fiche::none) first_after_ = n;
  if (kind == NodeKind::foreign) foreign_.push_back(n);
  frames_.back().element = n;
}

}  // namespace tamis::format
