#include <initializer_list>

#include "core/rules/rule.h"

namespace tamis::rules {

std::string example_document(std::string_view example) {
  for (const std::string_view start : {"<fiche", "<kitchen", "<recipe", "<?", "<!", "{"}) {
    if (example.starts_with(start)) return std::string(example);
  }
  std::string out =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"example\" lang=\"en\" units=\"metric\">\n"
      "  <title>Example</title>\n"
      "  <component id=\"part\" title=\"Part\">\n";
  out += example;
  out += "\n  </component>\n</fiche>\n";
  return out;
}

}  // namespace tamis::rules
