#include <catch2/catch.hpp>

#include <map>
#include <string>

#include "core/fiche/pictures.h"
#include "tests/lua/hosting.h"

// What a plugin can have drawn, and the photographs beside a fiche: fiche:graph, component:curve, photo:data.

using namespace tamis;

namespace {

const std::string fiche = R"(<fiche xmlns="urn:tamis:fiche:1" id="stock" lang="en" units="metric"><title>Stock</title>
<component id="s" title="Stock"><ingredient id="water" food="water">5 l</ingredient>
<step do="boil" makes="hot" unattended="20 min">Bring the <use of="water">water</use> to <food-temp>100 °C</food-temp>.</step>
<step do="cool" makes="cold" unattended="2 h">Cool the <use of="hot">stock</use> to <food-temp>4 °C</food-temp>.<photo href="pot.png" alt="the pot"/></step>
</component><component id="none" title="Nothing"><step>Wait.</step></component></fiche>)";

/// Pictures by their names, as a library of files would hand them out.
class Album final : public fiche::Library, public fiche::Pictures {
 public:
  std::map<std::string, std::string, std::less<>> bytes;
  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view, std::string_view) override { return base::Finding{}; }
  base::Result<std::string> picture(std::string_view from, std::string_view reference) override {
    CHECK(from == "a.fiche.xml");
    const auto found = bytes.find(reference);
    if (found != bytes.end()) return found->second;
    base::Finding fault;
    fault.message = "there is no file";
    return fault;
  }
};

/// What the body gives back, for the fiche above; a fault of the plugin where it has one.
std::string made(const std::string& body, fiche::Library& library) {
  const tests::Loaded loaded = tests::load_plugin(tests::manifest_of("export"), "function paper(fiche)\n" + body + "\nend\n");
  REQUIRE(loaded.lines() == "");
  const lua::Exported out = loaded.plugin->export_fiche(loaded.plugin->manifest().additions.front(),
                                                        tests::document_of(fiche, "a.fiche.xml"), {}, library);
  if (!out.findings.empty()) return out.findings.front().message;
  return out.files.size() == 1 ? out.files.front().bytes : "";
}
std::string made(const std::string& body) { return made(body, fiche::empty_library()); }

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a plugin has the steps drawn, all of them or those of one component") {
  const std::string all = made("return fiche:graph()");
  CHECK(all.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
  for (const char* words : {">Stock</text>", "boil", "cool", "= cold", ">Nothing</text>"}) CHECK(has(all, words));
  const std::string one = made("return fiche:graph(fiche:components()[1])");
  CHECK(has(one, "= cold"));
  CHECK(!has(one, "Nothing"));
  CHECK(has(made("return fiche:graph(fiche:steps()[1])"), "graph takes a component of the same fiche"));
}

TEST_CASE("the curve of a component joins what is known, and there is none where nothing is") {
  const std::string curve = made("return fiche:components()[1]:curve()");
  CHECK(curve.starts_with("<svg "));
  CHECK(has(curve, ">100</text>"));
  CHECK(made("local svg, why = fiche:components()[2]:curve() return tostring(svg) .. \": \" .. why") ==
        "nil: the temperature of the food is not known at two moments that stated times join");
}

TEST_CASE("a photograph comes as a data: URI, by what its first bytes say it is") {
  const std::string body = "local uri, why = fiche:all(\"photo\")[1]:data() return uri or why";
  Album album;
  CHECK(made(body, album) == "there is no file");
  album.bytes["pot.png"] = "\x89PNG\r\n\x1A\n" "a";
  CHECK(made(body, album) == "data:image/png;base64,iVBORw0KGgph");
  album.bytes["pot.png"] += "bc";  // RFC 4648, section 4: no filling, one sign, two
  CHECK(made(body, album) == "data:image/png;base64,iVBORw0KGgphYmM=");
  album.bytes["pot.png"] += "de";
  CHECK(made(body, album) == "data:image/png;base64,iVBORw0KGgphYmNkZQ==");
  album.bytes["pot.png"] = "\xFF\xD8\xFF\xE0";
  CHECK(made(body, album) == "data:image/jpeg;base64,/9j/4A==");
  CHECK(made(body) == "pictures cannot be read here");
  CHECK(fiche::picture_type("GIF89a").empty());
  CHECK(fiche::picture_type("<svg/>").empty());
  CHECK(fiche::picture_type("").empty());
}
