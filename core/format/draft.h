#ifndef CORE_FORMAT_DRAFT_H
#define CORE_FORMAT_DRAFT_H

#include <string>
#include <string_view>
#include <vector>

#include "core/base/source.h"
#include "core/fiche/kitchen.h"

namespace tamis::format {

struct DraftWish {
  std::string language;   ///< "" : found from the words
  std::string units;      ///< "metric", "us", "imperial"; "": found from the words, a question when they leave it open
};

/// Something the draft leaves open, by its place in the typed text.
struct Question {
  base::Span where;
  std::string words;
};

struct Drafted {
  std::string xml;   ///< the fiche, laid out; empty when the bytes are no text, and then the one question says why
  std::vector<Question> questions;
};

/// At most 1 MB is read. Deterministic.
///
/// Turns a recipe as people type it into a fiche. Invents nothing: what it cannot place stays in the text, with a
/// question.
Drafted read_draft(const base::Source& typed, const fiche::Kitchen& kitchen, const DraftWish& wish);

}  // namespace tamis::format

#endif
