#include <initializer_list>

#include "core/rules/rule.h"

namespace tamis::rules {

std::string example_document(std::string_view example) {
  for (const std::string_view start : {"<fiche", "<kitchen", "<recipe", "<?", "<!", "{", "time,", "part,"}) {
    if (example.starts_with(start)) return std::string(example);
  }
  const bool released = example.starts_with("    <!-- in a released fiche -->");
  std::string out = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"example\"";
  if (released) out += " state=\"released\"";
  out +=
      " lang=\"en\" units=\"metric\">\n"
      "  <title>Example</title>\n"
      "  <component id=\"part\" title=\"Part\">\n";
  out += example;
  if (released) out += "\n    <keep where=\"fridge\" at=\"at most 4 °C\" for=\"2 days\"/>";
  out += "\n  </component>\n";
  if (released) {
    out +=
        "  <allergens>None of those that the law names.</allergens>\n"
        "  <trial date=\"2026-03-14\" batch=\"12 portions\" verdict=\"passed\"/>\n";
  }
  return out + "</fiche>\n";
}

std::string example_kitchen(const Rule& rule) {
  constexpr std::string_view element = "<kitchen";
  const std::string start = std::string(element) + " xmlns=\"urn:tamis:fiche:1\" name=\"Example\"";
  if (rule.kitchen.starts_with(element)) return start + std::string(rule.kitchen.substr(element.size()));
  return start + ">" + std::string(rule.kitchen) + "</kitchen>";
}

}  // namespace tamis::rules
