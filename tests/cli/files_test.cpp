#include "core/cli/files.h"

#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "core/cli/file_library.h"
#include "tests/cli/process.h"

using namespace tamis::cli;
using tamis::tests::TemporaryFolder;

namespace {

std::vector<std::string> names_in(const std::string& folder) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) names.push_back(entry.path().filename());
  return names;
}

}  // namespace

TEST_CASE("a written file keeps its mode and leaves nothing beside it", "[files]") {
  const TemporaryFolder folder;
  const std::string path = folder.write("a.fiche.xml", "old");
  REQUIRE(::chmod(path.c_str(), 0640) == 0);
  CHECK(write_file(path, "new").empty());
  CHECK(folder.read("a.fiche.xml") == "new");
  struct stat about {};
  REQUIRE(::stat(path.c_str(), &about) == 0);
  CHECK((about.st_mode & 07777U) == 0640);
  CHECK(names_in(folder.path()).size() == 1);
}

TEST_CASE("writing through a link changes the file behind it and keeps the link", "[files]") {
  const TemporaryFolder folder;
  folder.write("real/a.fiche.xml", "old");
  const std::string link = folder.path() + "/a.fiche.xml";
  REQUIRE(::symlink("real/a.fiche.xml", link.c_str()) == 0);
  CHECK(write_file(link, "new").empty());
  CHECK(folder.read("real/a.fiche.xml") == "new");
  CHECK(std::filesystem::is_symlink(link));
}

TEST_CASE("what cannot be written says why and leaves the old bytes", "[files]") {
  const TemporaryFolder folder;
  CHECK(write_file(folder.path() + "/no/such/folder.xml", "x") == "there is no such file");
  CHECK(write_file(folder.path(), "x") == "it is a folder");
  CHECK(names_in(folder.path()).empty());
}

TEST_CASE("what cannot be read says why", "[files]") {
  const TemporaryFolder folder;
  REQUIRE(::mkfifo((folder.path() + "/pipe").c_str(), 0600) == 0);
  CHECK(read_file(folder.path() + "/none.xml").fault().message == "cannot be read: there is no such file");
  CHECK(read_file(folder.path()).fault().message == "cannot be read: it is a folder");
  CHECK(read_file(folder.path() + "/pipe").fault().message == "cannot be read: it is no ordinary file");
}

TEST_CASE("a folder gives its fiches in the order of their names, without what starts with a dot", "[files]") {
  const TemporaryFolder folder;
  for (const char* name : {"b.fiche.xml", "a/z.fiche.json", "a/c.fiche.xml", "kitchen.xml", "notes.xml",
                           ".git/x.fiche.xml", ".y.fiche.xml", "c.fiche.xml.bak"})
    folder.write(name, "");
  REQUIRE(::symlink(".", (folder.path() + "/loop").c_str()) == 0);
  std::vector<std::string> found;
  const auto keep = [&](const std::string& path) {
    found.push_back(path.substr(folder.path().size() + 1));
    return true;
  };
  walk(folder.path(), keep, [](const std::string& path, const std::string& why) { FAIL(path + why); });
  CHECK(found == std::vector<std::string>{"a/c.fiche.xml", "a/z.fiche.json", "b.fiche.xml", "kitchen.xml"});
}

TEST_CASE("a reference stays inside the library's folder", "[files]") {
  const TemporaryFolder folder;
  folder.write("library/base/custard.fiche.xml", tamis::tests::good_fiche);
  folder.write("library/base/two words.fiche.xml", tamis::tests::good_fiche);
  folder.write("library/desserts/slice.fiche.xml", tamis::tests::good_fiche);
  folder.write("outside.fiche.xml", tamis::tests::good_fiche);
  REQUIRE(::symlink("../../outside.fiche.xml", (folder.path() + "/library/base/link.fiche.xml").c_str()) == 0);
  FileLibrary library(folder.path() + "/library");
  const std::string from = folder.path() + "/library/desserts/slice.fiche.xml";
  struct Row {
    const char* reference;
    const char* rule;  ///< "" when it opens
  };
  const Row rows[] = {
      {"../base/custard.fiche.xml", ""},
      {"../base/two%20words.fiche.xml", ""},
      {"./../desserts/../base/custard.fiche.xml", ""},
      {"../base/none.fiche.xml", "dangling-reference"},
      {"../base", "dangling-reference"},
      {"../../outside.fiche.xml", "escaping-reference"},
      {"../base/link.fiche.xml", "escaping-reference"},
      {"../../none.fiche.xml", "escaping-reference"},
      {"/etc/hostname", "escaping-reference"},
      {"file:../base/custard.fiche.xml", "escaping-reference"},
      {"%2e%2e/%2e%2e/outside.fiche.xml", "escaping-reference"},
      {"..%2f..%2foutside.fiche.xml", "escaping-reference"},
      {"../base/custard.fiche.xml%00", "escaping-reference"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.reference);
    const auto opened = library.open(from, row.reference);
    CHECK((opened ? "" : opened.fault().rule) == row.rule);
  }
}

TEST_CASE("a picture of the library is a PNG or JPEG of at most 2 MB inside its folder", "[files]") {
  const TemporaryFolder folder;
  const std::string png = "\x89PNG\r\n\x1A\n";
  folder.write("library/img/a.png", png + "bytes");
  folder.write("library/img/a%20b.jpg", "");
  folder.write("library/img/a b.jpg", "\xFF\xD8\xFF\xE0");
  folder.write("library/img/a.svg", "<svg/>");
  folder.write("library/img/large.png", png + std::string(tamis::fiche::most_picture_bytes - png.size() + 1, 'a'));
  folder.write("library/img/largest.png", png + std::string(tamis::fiche::most_picture_bytes - png.size(), 'a'));
  folder.write("outside.png", png);
  REQUIRE(::symlink("../../outside.png", (folder.path() + "/library/img/link.png").c_str()) == 0);
  FileLibrary library(folder.path() + "/library");
  const std::string from = folder.path() + "/library/desserts.fiche.xml";
  const auto read = library.picture(from, "img/a.png");
  REQUIRE(read);
  CHECK(*read == png + "bytes");
  CHECK(library.picture(from, "img/a%20b.jpg"));
  CHECK(library.picture(from, "img/largest.png"));
  struct Row {
    const char* reference;
    const char* rule;
  };
  const Row rows[] = {
      {"img/none.png", "dangling-reference"},   {"img", "unreadable-picture"},           {"img/a.svg", "unreadable-picture"},
      {"img/large.png", "unreadable-picture"},  {"../outside.png", "escaping-reference"}, {"img/link.png", "escaping-reference"},
      {"/etc/passwd", "escaping-reference"},    {"https://a/b.png", "escaping-reference"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.reference);
    const auto refused = library.picture(from, row.reference);
    REQUIRE(!refused);
    CHECK(refused.fault().rule == row.rule);
  }
}

TEST_CASE("a library lists its fiches as they are opened from one of them", "[files]") {
  const TemporaryFolder folder;
  for (const char* name : {"base/custard.fiche.xml", "base/two words.fiche.xml", "base/50% #1.fiche.xml", "base/plain.xml",
                           "desserts/a:b.fiche.xml", "desserts/slice.fiche.xml", "plugin/plugin.xml", "plugin/tests/x/case.fiche.xml"})
    folder.write("library/" + std::string(name), tamis::tests::good_fiche);
  folder.write("outside.fiche.xml", tamis::tests::good_fiche);
  FileLibrary library(folder.path() + "/library");
  const std::string from = folder.path() + "/library/desserts/slice.fiche.xml";
  const std::vector<std::string> listed = library.list(from);
  CHECK(listed == std::vector<std::string>{"../base/50%25 %231.fiche.xml", "../base/custard.fiche.xml",
                                           "../base/two words.fiche.xml", "./a:b.fiche.xml", "slice.fiche.xml"});
  for (const std::string& reference : listed) {
    CAPTURE(reference);
    CHECK(library.open(from, reference));
  }
  CHECK(library.list(folder.path() + "/none/x.fiche.xml").empty());
}

TEST_CASE("a document of the library is read once", "[files]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", tamis::tests::good_fiche);
  FileLibrary library(folder.path());
  const std::string from = folder.path() + "/b.fiche.xml";
  const auto first = library.open(from, "a.fiche.xml");
  const auto second = library.open(from, "./a.fiche.xml");
  REQUIRE(first);
  REQUIRE(second);
  CHECK(*first == *second);
}
