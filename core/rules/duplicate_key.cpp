#include "core/rules/registry.h"

namespace tamis::rules {

/// Two equal keys in one JSON object. Said by the reader (core/format).
const Rule duplicate_key = {
    .id = "duplicate-key",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a JSON object has one key twice",
    .explanation = R"(JSON readers keep the first or the last of two equal keys, as they please: two amounts of one ingredient become one, and not
the same one everywhere. Keep one of them.)",
    .bad = R"({"fiche": {"id": "example", "id": "other", "content": [{"title": {"content": ["Vanilla sauce"]}}]}})",
    .good = R"({"fiche": {"id": "example", "content": [{"title": {"content": ["Vanilla sauce"]}}]}})",
    .source = "RFC 8259, section 4",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
