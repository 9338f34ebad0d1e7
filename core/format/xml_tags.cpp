#include <algorithm>
#include <cstring>
#include <unordered_set>

#include "core/format/xml_chars.h"
#include "core/format/xml_reader.h"

namespace tamis::format {
namespace {

// Numbers of namespaces, see resolve(): those declared at the root follow.
constexpr std::uint32_t no_space = 0, xmlns_space = 1, xml_space_number = 2, first_declared = 3;

std::string_view view(const char* begin, const char* end) {
  return {begin, static_cast<std::size_t>(end - begin)};
}
std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

bool curly_quote(const char* at) {
  return std::strncmp(at, "\u201C", 3) == 0 || std::strncmp(at, "\u201D", 3) == 0 ||
         std::strncmp(at, "\u2018", 3) == 0 || std::strncmp(at, "\u2019", 3) == 0;
}

std::string own_namespace() { return "xmlns=\"" + std::string(fiche::fiche_namespace) + "\""; }

}  // namespace

bool XmlReader::qualified_name(const char*& colon, std::string_view what) {
  const char* const begin = p_;
  p_ = skip_name(p_);
  if (p_ != begin && *p_ == ':') {
    colon = ++p_;
    p_ = skip_name(p_);
    if (p_ == colon) {
      return fail("not-well-formed", begin, p_,
                  "the name " + quoted(view(begin, p_)) + " has nothing behind its colon",
                  "write a prefix, a colon and a name, or the name alone");
    }
  }
  if (p_ == begin || *p_ == ':') {
    return fail("not-well-formed", p_, character_end(p_),
                shown(p_) + " has no place in the name of an " + std::string(what),
                "names are letters, digits, - and _, start with a letter and have at most one prefix");
  }
  if (static_cast<std::size_t>(p_ - begin) > most_name_bytes) {
    return fail("over-limit", begin, p_,
                "a name of " + std::to_string(p_ - begin) + " bytes; at most " + std::to_string(most_name_bytes) +
                    " are read",
                "use a shorter name");
  }
  return true;
}

bool XmlReader::start_tag() {
  const char* const begin = p_++;
  const char* const name = p_;
  if (!is(*p_, starts_name | not_ascii)) return less_than_in_text(begin);
  const char* colon = nullptr;
  if (!qualified_name(colon, "element")) return false;
  const char* const name_end = p_;
  attributes_.clear();
  for (;;) {
    const char* const before = p_;
    skip_space();
    if (*p_ == '>') {
      ++p_;
      return open_element(begin, name, colon, name_end, false);
    }
    if (*p_ == '/' && p_[1] == '>') {
      p_ += 2;
      return open_element(begin, name, colon, name_end, true);
    }
    if (p_ == before || !is(*p_, starts_name | not_ascii)) return tag_fault(begin);
    if (!attribute()) return false;
  }
}

// Where a tag goes on with something that is neither an attribute nor its end.
bool XmlReader::tag_fault(const char* begin) {
  const std::string_view tag = view(begin, std::min(skip_name(begin + 1), p_));
  if (p_ == end_ || *p_ == '<') {
    return fail("not-well-formed", begin, p_, "the tag " + std::string(tag) + " has no >",
                "write > where the tag ends");
  }
  if (!attributes_.empty() && is(*p_, starts_name | not_ascii)) {
    return fail("not-well-formed", p_, character_end(p_), "no space before " + shown(p_),
                "put a space between two attributes");
  }
  return fail("not-well-formed", p_, character_end(p_),
              shown(p_) + " in the tag " + std::string(tag) + ", expected an attribute or >",
              "take it out, or close the tag before it");
}

bool XmlReader::attribute() {
  Attribute made{};
  made.name = p_;
  if (!qualified_name(made.colon, "attribute")) return false;
  made.name_end = p_;
  const std::string_view name = view(made.name, made.name_end);
  skip_space();
  if (*p_ != '=') {
    return fail("not-well-formed", made.name, made.name_end, "the attribute " + quoted(name) + " has no value",
                "write " + std::string(name) + "=\"...\"");
  }
  ++p_;
  skip_space();
  if (!attribute_value(made)) return false;
  if (attributes_.size() == most_attributes) {
    return fail("over-limit", made.name, made.name_end,
                "more than " + std::to_string(most_attributes) + " attributes in one tag",
                "use child elements instead");
  }
  attributes_.push_back(made);
  return true;
}

bool XmlReader::attribute_value(Attribute& made) {
  const std::string name(made.name, made.name_end);
  const char quote = *p_;
  if (quote != '"' && quote != '\'') {
    const char* const begin = p_;
    const bool curly = curly_quote(p_);
    while (p_ != end_ && !is(*p_, xml_space) && *p_ != '>' && *p_ != '<') ++p_;
    return fail("not-well-formed", begin, p_,
                "the value of " + quoted(name) + (curly ? " stands in curly quotes" : " is not in quotes"),
                "write " + name + "=\"...\" with straight quotes");
  }
  made.value = ++p_;
  for (;;) {
    while (!is(*p_, stops_value)) ++p_;
    if (*p_ == quote) break;
    if (*p_ == '&') {
      made.decode = true;
      if (!reference()) return false;
    } else if (*p_ == '<' || p_ == end_) {
      const char* const shown_end = std::min(p_, made.value + 40);
      const std::string found = p_ == end_ ? "the file ends" : "\"<\" stands";
      return fail("not-well-formed", p_ == end_ ? made.name : p_, p_ == end_ ? shown_end : p_ + 1,
                  found + " in the value of " + quoted(name),
                  p_ == end_ ? "close the value with a quote" : "close the value with a quote, or write &lt;");
    } else {
      made.decode = made.decode || is(*p_, xml_space);
      ++p_;
    }
  }
  made.value_end = p_++;
  return true;
}

// ---------------------------------------------------------------- namespaces

bool XmlReader::check_attributes(const char* tag) {
  if (!declare_prefixes(tag)) return false;
  for (Attribute& attribute : attributes_) {
    if (!resolve(attribute)) return false;
  }
  return unique_attributes();
}

bool XmlReader::declare_prefixes(const char* tag) {
  const bool root = open_.empty() && !fragment_;
  for (const Attribute& attribute : attributes_) {
    if (*attribute.name != 'x') continue;
    const std::string_view prefix =
        view(attribute.name, attribute.colon != nullptr ? attribute.colon - 1 : attribute.name_end);
    if (prefix != "xmlns") continue;
    if (!root) {
      return fail("prefix-below-root", attribute.name, attribute.value_end + 1,
                  quoted(view(attribute.name, attribute.name_end)) + " stands on <" +
                      std::string(view(tag, skip_name(tag))) + ">, below the root element",
                  "declare prefixes on the root element, where every reader looks for them");
    }
    std::string uri;
    decode_attribute(view(attribute.value, attribute.value_end), uri);
    if (attribute.colon != nullptr && !declare(attribute, std::move(uri))) return false;
  }
  return true;
}

PrefixFault prefix_fault(std::string_view name, std::string_view uri) {
  const bool reserved = name == "xmlns" || uri == xmlns_namespace || (name == "xml") != (uri == xml_namespace);
  if (uri.empty()) {
    return {"not-well-formed", "the prefix " + quoted(name) + " stands for no namespace",
            "give the namespace a name, such as urn:example:house"};
  }
  if (reserved) {
    return {"not-well-formed", "the prefix " + quoted(name) + " uses a name that XML keeps for itself",
            "use another prefix and namespace"};
  }
  if (uri == fiche::fiche_namespace) {
    return {"wrong-namespace", "the prefix " + quoted(name) + " stands for the fiche's own namespace",
            "write " + own_namespace() + " and fiche names without \"" + std::string(name) + ":\""};
  }
  return {};
}

bool XmlReader::declare(const Attribute& attribute, std::string uri) {
  const std::string_view name = view(attribute.colon, attribute.name_end);
  PrefixFault fault = prefix_fault(name, uri);
  if (!fault.rule.empty()) {
    return fail(fault.rule, attribute.name, attribute.value_end + 1, std::move(fault.message),
                std::move(fault.advice));
  }
  if (name != "xml") prefixes_.push_back({std::string(name), std::move(uri)});
  return true;
}

// Equal numbers for equal namespaces, so that two prefixes of one namespace are seen as such.
bool XmlReader::resolve(Attribute& attribute) {
  attribute.space = no_space;
  if (attribute.colon == nullptr) return true;
  const std::string_view prefix = view(attribute.name, attribute.colon - 1);
  if (prefix == "xmlns" || prefix == "xml") {
    attribute.space = prefix == "xml" ? xml_space_number : xmlns_space;
    return true;
  }
  if (!known_prefix(attribute.name, attribute.colon)) return false;
  const auto named =
      std::find_if(prefixes_.begin(), prefixes_.end(), [&](const Prefix& p) { return p.name == prefix; });
  const auto first = std::find_if(prefixes_.begin(), named, [&](const Prefix& p) { return p.uri == named->uri; });
  attribute.space = first_declared + static_cast<std::uint32_t>(first - prefixes_.begin());
  return true;
}

bool XmlReader::known_prefix(const char* name, const char* colon) {
  const std::string_view prefix = view(name, colon - 1);
  if (prefix == "xml") return true;
  for (const Prefix& declared : prefixes_) {
    if (declared.name == prefix) return true;
  }
  return fail("undeclared-prefix", name, colon - 1, "the prefix " + quoted(prefix) + " is not declared",
              "write xmlns:" + std::string(prefix) + "=\"...\" on the root element");
}

bool XmlReader::twice(const Attribute& first, const Attribute& again) {
  const std::string_view name = view(again.name, again.name_end);
  fail("not-well-formed", again.name, again.value_end + 1, "the attribute " + quoted(name) + " is given twice",
       "keep one of the two");
  last().related.push_back({span(first.name, first.value_end + 1), "given here first", {}, {}, {}});
  return false;
}

bool XmlReader::unique_attributes() {
  const auto local = [](const Attribute& a) { return view(a.colon != nullptr ? a.colon : a.name, a.name_end); };
  constexpr std::size_t few = 12;
  if (attributes_.size() <= few) {
    for (std::size_t i = 1; i < attributes_.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const Attribute &a = attributes_[i], &b = attributes_[j];
        const bool alike = *a.name == *b.name || a.space != no_space;  // nearly always enough to tell them apart
        if (alike && a.space == b.space && local(a) == local(b)) return twice(b, a);
      }
    }
    return true;
  }
  const auto hash = [&](const Attribute* a) { return std::hash<std::string_view>()(local(*a)) + a->space; };
  const auto equal = [&](const Attribute* a, const Attribute* b) {
    return a->space == b->space && local(*a) == local(*b);
  };
  std::unordered_set<const Attribute*, decltype(hash), decltype(equal)> seen(attributes_.size() * 2, hash, equal);
  for (const Attribute& attribute : attributes_) {
    const auto [first, added] = seen.insert(&attribute);
    if (!added) return twice(**first, attribute);
  }
  return true;
}

bool XmlReader::root_namespace(const char* name, const char* colon, const char* name_end) {
  const std::string shown_name(name, name_end);
  if (fragment_) {
    if (colon != nullptr) return known_prefix(name, colon);
    return fail("wrong-namespace", name, name_end, "<" + shown_name + "> has no prefix",
                "an element of the house's own has a prefix that the root element declares");
  }
  const auto given = std::find_if(attributes_.begin(), attributes_.end(),
                                  [](const Attribute& a) { return view(a.name, a.name_end) == "xmlns"; });
  if (colon != nullptr) {
    return known_prefix(name, colon) &&
           fail("wrong-namespace", name, name_end, "the root element <" + shown_name + "> has a prefix",
                "write it without prefix, with " + own_namespace());
  }
  if (given == attributes_.end()) {
    fail("wrong-namespace", name, name_end,
         "the root element <" + shown_name + "> has no namespace, expected " + std::string(fiche::fiche_namespace),
         "write <" + shown_name + " " + own_namespace() + " ...>");
    const bool ours = shown_name == "fiche" || shown_name == "kitchen";
    if (ours) last().edits.push_back({span(name_end, name_end), " " + own_namespace()});
    return false;
  }
  std::string uri;
  decode_attribute(view(given->value, given->value_end), uri);
  return uri == fiche::fiche_namespace ||
         fail("wrong-namespace", given->value, given->value_end,
              "the namespace is " + quoted(uri) + ", expected " + quoted(fiche::fiche_namespace),
              "write " + own_namespace() + " if this is a fiche or a kitchen file");
}

// ---------------------------------------------------------------- elements

bool XmlReader::open_element(const char* begin, const char* name, const char* colon, const char* name_end,
                             bool empty) {
  if (open_.empty() && root_seen_) {
    return fail("not-well-formed", begin, p_, "a second root element <" + std::string(name, name_end) + ">",
                fragment_ ? "give one element" : "one file holds one fiche or one kitchen");
  }
  if (open_.size() == most_depth) {
    return fail("over-limit", begin, p_, "elements stand more than " + std::to_string(most_depth) + " deep",
                "bring it to fewer levels");
  }
  if (!check_attributes(name)) return false;
  if (open_.empty() ? !root_namespace(name, colon, name_end) : colon != nullptr && !known_prefix(name, colon)) {
    return false;
  }
  root_seen_ = true;
  fiche::Node node = fiche::none;
  if (foreign_from_ == 0 && (colon != nullptr || fragment_)) {
    if (empty) keep_leaf(fiche::NodeKind::foreign, begin, view(name, name_end), begin, p_, p_);
    if (!empty) foreign_from_ = open_.size() + 1;
  } else if (foreign_from_ == 0 && tree_ != nullptr) {
    fiche::Document::NewNode made;
    made.parent = parent();
    made.name = view(name, name_end);
    made.span = made.head_span = span(begin, p_);
    made.name_span = span(name, name_end);
    node = tree_->append(made);
    if (open_.empty()) tree_->set_root(node);
    keep_attributes(node);
  }
  if (!empty) open_.push_back({name, name_end, p_, node});
  if (empty && open_.empty()) root_end_ = p_;
  return true;
}

void XmlReader::keep_attributes(fiche::Node node) {
  for (const Attribute& attribute : attributes_) {
    std::string_view value = view(attribute.value, attribute.value_end);
    if (attribute.decode) {
      scratch_.clear();
      decode_attribute(value, scratch_);
      value = scratch_;
    }
    tree_->append_attribute(node, view(attribute.name, attribute.name_end), value,
                            span(attribute.name, attribute.name_end), span(attribute.value, attribute.value_end),
                            offset(attribute.value_end) + 1);
  }
}

}  // namespace tamis::format
