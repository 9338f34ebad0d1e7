// Any bytes typed as a draft: never a crash or a hang; what comes out reads back, and every typed word is kept.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

#include "core/format/draft.h"
#include "core/format/format.h"
#include "tests/draft_words_kept.h"

namespace {

[[noreturn]] void fail(const char* what, const std::string& detail) {
  std::fprintf(stderr, "%s: %s\n", what, detail.c_str());
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  static const char* const languages[] = {"", "en", "fr", "de", "es"};
  static const char* const units[] = {"", "metric", "us", "imperial"};
  tamis::format::DraftWish wish;
  wish.language = languages[data[0] % 5];
  wish.units = units[data[0] / 5 % 4];
  const std::string typed(reinterpret_cast<const char*>(data + 1), size - 1);
  const tamis::base::Source source("draft.txt", typed);
  const tamis::fiche::Kitchen kitchen;
  const tamis::format::Drafted made = tamis::format::read_draft(source, kitchen, wish);
  for (const tamis::format::Question& question : made.questions) {
    if (question.where.end > typed.size() || question.where.begin > question.where.end) fail("a span outside", question.words);
  }
  if (made.xml.empty()) return made.questions.size() == 1 ? 0 : (fail("no fiche and no reason", ""), 0);
  const tamis::format::Read read = tamis::format::read_xml(std::make_shared<tamis::base::Source>("d.fiche.xml", made.xml));
  if (!read.document) fail("the fiche does not read back", made.xml);
  if (tamis::format::lay_out(*read.document, tamis::fiche::Spelling::xml) != made.xml) fail("not laid out", made.xml);
  const std::string lost = tamis::tests::lost_words(typed, made, *read.document, false);
  if (!lost.empty()) fail("words lost", lost + "\n" + made.xml);
  return 0;
}
