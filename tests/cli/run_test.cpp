#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "core/base/utf8.h"
#include "tests/cli/process.h"

using tamis::tests::Ran;
using tamis::tests::run_tamis;
using tamis::tests::TemporaryFolder;
using Words = std::vector<std::string>;

namespace {

struct Row {
  Words words;
  std::string input;
  int exit;
  std::string out;
  std::string err;
};

void check_rows(const std::vector<Row>& rows, const std::string& folder = ".") {
  for (const Row& row : rows) {
    CAPTURE(row.words);
    const Ran ran = run_tamis(row.words, row.input, folder);
    CHECK(ran.exit == row.exit);
    CHECK(ran.out == row.out);
    CHECK(ran.err == row.err);
  }
}

}  // namespace

TEST_CASE("a mistyped verb, option or choice gets the nearest right one", "[cli]") {
  check_rows({
      {{"chek"}, "", 2, "", "tamis: there is no verb \"chek\"\n  → did you mean \"check\"?\n"},
      {{"exlpain"}, "", 2, "", "tamis: there is no verb \"exlpain\"\n  → did you mean \"explain\"?\n"},
      {{"zzz"}, "", 2, "", "tamis: there is no verb \"zzz\"\n  → \"tamis --help\" lists the verbs\n"},
      {{"--strict", "check"},
       "",
       2,
       "",
       "tamis: the verb comes first, before \"--strict\"\n  → write tamis VERB --strict\n"},
      {{"check", "--kichen", "k", "x"},
       "",
       2,
       "",
       "tamis: \"tamis check\" has no option \"--kichen\"\n  → did you mean --kitchen?\n"},
      {{"check", "--zzz"},
       "",
       2,
       "",
       "tamis: \"tamis check\" has no option \"--zzz\"\n  → \"tamis check --help\" lists the options\n"},
      {{"check", "-z", "x"},
       "",
       2,
       "",
       "tamis: \"tamis check\" has no option \"-z\"\n  → \"tamis check --help\" lists the options\n"},
      {{"check", "--report", "jsn", "x"},
       "",
       2,
       "",
       "tamis: --report cannot be \"jsn\"\n  → did you mean \"json\"?\n"},
      {{"check", "--report=yaml", "x"},
       "",
       2,
       "",
       "tamis: --report cannot be \"yaml\"\n  → it is one of text, json, sarif or junit\n"},
      {{"check", "x", "--report"}, "", 2, "", "tamis: --report needs a value\n  → write --report FORM\n"},
      {{"check", "--strict=yes", "x"},
       "",
       2,
       "",
       "tamis: --strict takes no value\n  → \"tamis check --help\" lists the options\n"},
      {{"check", "--report", "text", "--report", "json", "x"},
       "",
       2,
       "",
       "tamis: --report is given twice\n  → leave one of them out\n"},
      {{"check", "--repo", "json", "x"},
       "",
       2,
       "",
       "tamis: \"tamis check\" has no option \"--repo\"\n  → did you mean --report?\n"},
  });
}

TEST_CASE("a path in the verb's place is told what is missing", "[cli]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", "");
  check_rows({{{"a.fiche.xml"},
               "",
               2,
               "",
               "tamis: \"a.fiche.xml\" is a path; say what to do with it\n  → write tamis check a.fiche.xml\n"}},
             folder.path());
}

TEST_CASE("help goes to standard output, for the whole and for each verb", "[cli]") {
  const Ran whole = run_tamis({"--help"});
  CHECK(whole.exit == 0);
  CHECK(whole.err.empty());
  CHECK(run_tamis({"help"}).out == whole.out);
  CHECK(run_tamis({"-h"}).out == whole.out);
  const Ran nothing = run_tamis({});
  CHECK(nothing.exit == 2);
  CHECK(nothing.out.empty());
  CHECK(nothing.err == whole.out + "\n");
  const Ran verb = run_tamis({"check", "--help"});
  CHECK(verb.exit == 0);
  CHECK(verb.out.starts_with("usage: tamis check "));
  CHECK(run_tamis({"help", "check"}).out == verb.out);
  CHECK(run_tamis({"check", "-h", "whatever"}).out == verb.out);
}

TEST_CASE("no line of help is wider than a terminal of 80 columns", "[cli]") {
  for (const Words& words : std::vector<Words>{{"--help"},
                                               {"new", "--help"},
                                               {"check", "--help"},
                                               {"format", "--help"},
                                               {"explain", "--help"},
                                               {"foods", "--help"},
                                               {"measure", "--help"},
                                               {"convert", "--help"},
                                               {"completion", "--help"},
                                               {"explain"}}) {
    const std::string out = run_tamis(words).out;
    CAPTURE(words, out);
    CHECK_FALSE(out.empty());
    std::size_t start = 0;
    while (start < out.size()) {
      const std::size_t end = out.find('\n', start);
      CHECK(tamis::base::terminal_width(out.substr(start, end - start)) <= 80);
      start = end + 1;
    }
  }
}

TEST_CASE("the version is one line", "[cli]") { CHECK(run_tamis({"--version"}).out.starts_with("tamis 0.")); }

TEST_CASE("a check ends with 0, 1 or 2 as its contract says", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("good.fiche.xml", tamis::tests::good_fiche);
  folder.write("bad.fiche.xml", tamis::tests::bad_fiche);
  const auto exit_of = [&](const Words& words) { return run_tamis(words, "", folder.path()).exit; };
  CHECK(exit_of({"check", "good.fiche.xml"}) == 0);
  CHECK(exit_of({"check", "--strict", "good.fiche.xml"}) == 0);
  CHECK(exit_of({"check", "bad.fiche.xml"}) == 1);
  CHECK(exit_of({"check", "."}) == 1);
  CHECK(exit_of({"check", "none.fiche.xml"}) == 2);
  CHECK(exit_of({"check", "bad.fiche.xml", "none.fiche.xml"}) == 2);
  CHECK(exit_of({"check"}) == 2);
  CHECK(exit_of({"check", "--kitchen", "none.xml", "good.fiche.xml"}) == 2);
  CHECK(exit_of({"check", "--write", "good.fiche.xml"}) == 2);
}

TEST_CASE("a finding is shown with its line, a mark and what to do", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("bad.fiche.xml", tamis::tests::bad_fiche);
  const Ran ran = run_tamis({"check", "bad.fiche.xml"}, "", folder.path());
  CHECK(ran.out ==
        "bad.fiche.xml:5:6: error: there is no element <ingredint> [unknown-element]\n"
        "    5 | <ingredint food=\"sugar-white\">500 g</ingredint>\n"
        "      |  ^~~~~~~~~\n"
        "  → write <ingredient>\n");
  CHECK(ran.err == "1 file checked: 1 error found; 1 with a sure fix (--mend)\n");
}

TEST_CASE("standard input is read where the path is a dash", "[cli][check]") {
  const Ran bad = run_tamis({"check", "-"}, tamis::tests::bad_fiche);
  CHECK(bad.exit == 1);
  CHECK(bad.out.starts_with("-:5:6: error: "));
  CHECK(run_tamis({"check", "-"}, tamis::tests::good_fiche).exit == 0);
  CHECK(run_tamis({"check", "-"}, "").exit == 1);
}

TEST_CASE("mend shows a patch and changes nothing; with write it changes the file", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("bad.fiche.xml", tamis::tests::bad_fiche);
  const Ran shown = run_tamis({"check", "--mend", "bad.fiche.xml"}, "", folder.path());
  CHECK(shown.exit == 1);
  CHECK(shown.out ==
        "--- bad.fiche.xml\n"
        "+++ bad.fiche.xml\n"
        "@@ -2,7 +2,7 @@\n"
        "   <title>Plain syrup</title>\n"
        "   <component id=\"syrup\" title=\"Syrup\">\n"
        "     <ingredient id=\"water\" food=\"water\">500 g</ingredient>\n"
        "-    <ingredint food=\"sugar-white\">500 g</ingredint>\n"
        "+    <ingredient food=\"sugar-white\">500 g</ingredient>\n"
        "     <step do=\"boil\" on=\"hob\">Bring the <use of=\"water\">water</use> and the sugar to the "
        "boil.</step>\n"
        "   </component>\n"
        " </fiche>\n");
  CHECK(shown.err == "1 file of 1 can be mended; without --mend: 1 error found\n");
  CHECK(folder.read("bad.fiche.xml") == tamis::tests::bad_fiche);
  const Ran written = run_tamis({"check", "--mend", "--write", "bad.fiche.xml"}, "", folder.path());
  CHECK(written.exit == 0);
  CHECK(written.out.empty());
  CHECK(written.err == "mended bad.fiche.xml\n1 file checked: nothing found\n");
  CHECK(folder.read("bad.fiche.xml").find("ingredint") == std::string::npos);
  CHECK(run_tamis({"check", "--mend", "bad.fiche.xml"}, "", folder.path()).out.empty());
}

TEST_CASE("what cannot be read is said on standard error and the rest is still checked", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("bad.fiche.xml", tamis::tests::bad_fiche);
  folder.write("empty/notes.txt", "");
  const Ran ran = run_tamis({"check", "none.fiche.xml", "empty", "bad.fiche.xml"}, "", folder.path());
  CHECK(ran.exit == 2);
  CHECK(ran.out.starts_with("bad.fiche.xml:5:6: error: "));
  CHECK(ran.err ==
        "tamis: none.fiche.xml: cannot be read: there is no such file\n"
        "tamis: empty: holds no fiche (a file that ends in .fiche.xml or .fiche.json)\n"
        "1 file checked: 1 error found; 2 could not be checked; 1 with a sure fix (--mend)\n");
}

TEST_CASE("a folder that cannot be read is said, and what stands beside it is still checked", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("a/shut/x.fiche.xml", tamis::tests::good_fiche);
  folder.write("a/z.fiche.xml", tamis::tests::good_fiche);
  const std::string shut = folder.path() + "/a/shut";
  REQUIRE(::chmod(shut.c_str(), 0) == 0);
  if (::access(shut.c_str(), R_OK) == 0) {
    // The superuser may read it all the same: a folder that is none in the end (a link in a circle) cannot be.
    REQUIRE(::chmod(shut.c_str(), 0700) == 0);
    std::filesystem::remove_all(shut);
    const std::string deep = std::string(250, 'd');
    std::string path = folder.path() + "/a";
    REQUIRE(::chdir(path.c_str()) == 0);
    for (int i = 0; i < 17; ++i) REQUIRE((::mkdir(deep.c_str(), 0700) == 0 && ::chdir(deep.c_str()) == 0));
    REQUIRE(::chdir("/") == 0);
    const Ran ran = run_tamis({"check", folder.path() + "/a"});
    CHECK(ran.exit == 2);
    CHECK(ran.err.find(": cannot be read: its name is too long\n") != std::string::npos);
    CHECK(ran.err.ends_with("1 file checked: nothing found; 1 could not be checked\n"));
    return;
  }
  const Ran ran = run_tamis({"check", "a"}, "", folder.path());
  CHECK(::chmod(shut.c_str(), 0700) == 0);
  CHECK(ran.exit == 2);
  CHECK(ran.err ==
        "tamis: a/shut: cannot be read: permission denied\n1 file checked: nothing found; 1 could not be checked\n");
}

TEST_CASE("a stream or a number of jobs that makes no sense is refused in words", "[cli][check]") {
  check_rows({
      {{"check", "--jobs", "two", "."}, "", 2, "", "tamis: --jobs is a number from 1 to 256, or auto for one a core\n"},
      {{"check", "--stream", "--report", "json"}, "", 2, "", "tamis: --stream has a form of its own; leave --report out\n"},
      {{"check", "--stream", "none"}, "", 2, "", "tamis: none: cannot be read: there is no such file\n0 lines read: nothing found\n"},
      {{"check", "--mend", "--report", "sarif", "x"},
       "",
       2,
       "",
       "tamis: --mend alone prints a patch; --report sarif goes with --mend --write, or without --mend\n"},
  });
}

TEST_CASE("a conversion without units keeps those of the fiche", "[cli][convert]") {
  const std::string fiche =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"b\" lang=\"en\" units=\"metric\"><title>Bread</title><component id=\"a\" title=\"A\">"
      "<ingredient food=\"flour-wheat-white\">500 g</ingredient><step>Bake at <oven-temp mode=\"fan\">200 °C</oven-temp>.</step>"
      "</component></fiche>";
  const auto ran = run_tamis({"convert", "--oven", "static", "-"}, fiche);
  CHECK(ran.exit == 0);
  CHECK(ran.out.find(">500 g<") != std::string::npos);
  CHECK(ran.out.find("mode=\"static\" was=\"200 °C\"") != std::string::npos);
}

TEST_CASE("an amount may name its food", "[cli][measure]") {
  CHECK(run_tamis({"measure", "4 eggs", "--in", "g"}).out.starts_with("4 eggs = 200\u00A0g\n"));
  CHECK(run_tamis({"measure", "2 cups of flour", "--system", "us", "--in", "g"}).out.starts_with("2\u00A0cups of flour = 250\u00A0g\n"));
  const auto unknown = run_tamis({"measure", "2 xyz", "--in", "g"});
  CHECK(unknown.exit == 1);
  CHECK(unknown.err.find("\"xyz\" is no unit") != std::string::npos);
}

TEST_CASE("a gas mark is given in figures that an oven's dial has", "[cli][measure]") {
  CHECK(run_tamis({"measure", "gas mark 4", "--in", "C"}).out.find(", oven dial 180") != std::string::npos);
  CHECK(run_tamis({"measure", "176 °C", "--in", "F"}).out.find(", thermometer 349") != std::string::npos);
}

TEST_CASE("a broken kitchen file stops the check of what it stands over, and is said once", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("kitchen.xml", "<kitchen");
  folder.write("a.fiche.xml", tamis::tests::good_fiche);
  folder.write("b/b.fiche.xml", tamis::tests::good_fiche);
  const Ran ran = run_tamis({"check", "a.fiche.xml", "b"}, "", folder.path());
  CHECK(ran.exit == 2);
  CHECK(ran.out.empty());
  CHECK(ran.err.starts_with("tamis: kitchen.xml: the kitchen file cannot be used: line 1, column "));
  CHECK(ran.err.ends_with("\n0 files checked: nothing found; 2 could not be checked\n"));
  CHECK(run_tamis({"check", "kitchen.xml"}, "", folder.path()).exit == 1);
}

TEST_CASE("file names that are no text, or that would steer a terminal, do no harm", "[cli][check]") {
  const TemporaryFolder folder;
  folder.write("\xff\x1b[2J.fiche.xml", tamis::tests::bad_fiche);
  const Ran text = run_tamis({"check", "."}, "", folder.path());
  CHECK(text.exit == 1);
  CHECK(text.out.starts_with("./��[2J.fiche.xml:5:6: error: "));
  const Ran json = run_tamis({"check", "--report", "json", "."}, "", folder.path());
  CHECK(json.out.find("\"path\": \"./�\\u001b[2J.fiche.xml\"") != std::string::npos);
}

TEST_CASE("the same files give the same bytes", "[cli][check]") {
  const TemporaryFolder folder;
  for (const char* name : {"a.fiche.xml", "b/c.fiche.xml", "b/a.fiche.xml"})
    folder.write(name, tamis::tests::bad_fiche);
  for (const char* form : {"text", "json", "sarif", "junit"}) {
    const Words words{"check", "--report", form, "."};
    const Ran first = run_tamis(words, "", folder.path());
    const Ran second = run_tamis(words, "", folder.path());
    CHECK(first.out == second.out);
    CHECK(first.err == second.err);
    CHECK(first.out.find("a.fiche.xml") < first.out.find("b/a.fiche.xml"));
  }
}

TEST_CASE("format prints one file and lays out many only in place", "[cli][format]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", tamis::tests::good_fiche);
  folder.write("b.fiche.xml", tamis::tests::good_fiche);
  const Ran one = run_tamis({"format", "a.fiche.xml"}, "", folder.path());
  CHECK(one.exit == 0);
  CHECK(one.err.empty());
  const Ran many = run_tamis({"format", "."}, "", folder.path());
  CHECK(many.exit == 2);
  CHECK(many.err == "tamis: more than one file can only be laid out in place: add --write\n");
  CHECK(run_tamis({"format", "--write", "."}, "", folder.path()).exit == 0);
  CHECK(folder.read("a.fiche.xml") == one.out);
  CHECK(run_tamis({"format", "--write", "."}, "", folder.path()).err.empty());
}

TEST_CASE("format puts the other spelling beside the file", "[cli][format]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", tamis::tests::good_fiche);
  REQUIRE(run_tamis({"format", "--write", "a.fiche.xml"}, "", folder.path()).exit == 0);
  const Ran ran = run_tamis({"format", "--as", "json", "--write", "a.fiche.xml"}, "", folder.path());
  CHECK(ran.exit == 0);
  CHECK(ran.err == "wrote a.fiche.json\n");
  const std::string laid_out = folder.read("a.fiche.xml");
  CHECK(run_tamis({"format", "--as", "xml", "a.fiche.json"}, "", folder.path()).out == laid_out);
}

TEST_CASE("a rule is explained; one that is not there is not guessed at", "[cli][explain]") {
  CHECK(run_tamis({"explain", "unknown-element"}).out.starts_with("unknown-element (error)\n"));
  check_rows({{{"explain", "unknown-elment"},
               "",
               2,
               "",
               "tamis: there is no rule \"unknown-elment\"\n  → did you mean \"unknown-element\"?\n"}});
}
