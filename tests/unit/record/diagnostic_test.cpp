#include "record/diagnostic.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace firstpick;

namespace {

const std::string plan = "format = 1\n[rigging]\nsling_angel = \"60 deg\"\n";

}  // namespace

TEST_CASE("a fault shows its place, its line and a caret below the word") {
  const Diagnostic fault{
      "plan.toml", {3, 1}, "[rigging] has no key 'sling_angel'", "did you mean 'sling_angle'?", 11};
  CHECK(show(fault, plan) ==
        "plan.toml:3:1: error: [rigging] has no key 'sling_angel'\n"
        "    3 | sling_angel = \"60 deg\"\n"
        "      | ^^^^^^^^^^^\n"
        "      = help: did you mean 'sling_angle'?\n");
}

TEST_CASE("without the file only the place is told, without help no help line") {
  const Diagnostic fault{"plan.toml", {3, 15}, "wrong", ""};
  CHECK(show(fault) == "plan.toml:3:15: error: wrong\n");
  CHECK(show(fault, plan) ==
        "plan.toml:3:15: error: wrong\n"
        "    3 | sling_angel = \"60 deg\"\n"
        "      |               ^\n");
}

TEST_CASE("a fault of the file as a whole has no line") {
  CHECK(show({"plan.toml", {}, "there is no such file", ""}, plan) ==
        "plan.toml: error: there is no such file\n");
}

TEST_CASE("the caret stays below its word behind tabs, letters of two bytes and Windows line ends") {
  const Diagnostic fault{"p", {2, 10}, "here", "", 3};
  CHECK(show(fault, "x\r\n\té = \"\xC3\xA9\"abc\r\ny") ==
        "p:2:10: error: here\n"
        "    2 |  é = \"é\"abc\n"
        "      |        ^^^\n");
}

TEST_CASE("a place past the end of the line or of the file still gives a caret") {
  CHECK(show({"p", {1, 400}, "end", ""}, "abc\n") == "p:1:400: error: end\n    1 | abc\n      |    ^\n");
  CHECK(show({"p", {9, 1}, "end", ""}, "abc\n") == "p:9:1: error: end\n    9 | \n      | ^\n");
}

TEST_CASE("of a long line the part around the fault is shown") {
  const std::string line = std::string(300, 'a') + "!" + std::string(300, 'b');
  CHECK(show({"p", {1, 301}, "here", ""}, line) == "p:1:301: error: here\n    1 | ..." +
                                                       std::string(50, 'a') + "!" + std::string(49, 'b') +
                                                       "...\n      | " + std::string(53, ' ') + "^\n");
}

TEST_CASE("nothing in a fault reaches the terminal as a command") {
  const std::string evil = "a\x1B[31m\xE2\x80\xAE\x80\n";
  const std::string shown = show({evil, {1, 1}, evil, evil}, evil);
  for (const char c : shown) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  CHECK(shown.find("\xE2\x80\xAE") == std::string::npos);
  CHECK(shown.find("a\\x1B[31m\\u202E\\x80\\n:1:1: error: ") == 0);
}

TEST_CASE("text is made printable byte by byte where it must be") {
  CHECK(printable("") == "");
  CHECK(printable("8 ft ½ é 中") == "8 ft ½ é 中");
  CHECK(printable(std::string_view("a\0b", 3)) == "a\\x00b");
  CHECK(printable("a\tb\nc\rd") == "a\\tb\\nc\\x0Dd");
  CHECK(printable("\xC2\x85\xFF\xF3\xA0\x81\x81") == "\\x85\\xFF\\uE0041");
}

TEST_CASE("a suggestion climbs down the ladder: the only one, a near one, the list") {
  CHECK(suggestion("anything", {}) == "");
  CHECK(suggestion("anything", {"rating"}) == "the only one is 'rating'");
  CHECK(suggestion("sling_angel", {"legs", "sling_angle", "id"}) == "did you mean 'sling_angle'?");
  CHECK(suggestion("hauling", {"strip", "yard"}) == "there are: 'strip', 'yard'");
}

TEST_CASE("two edits are near, three are not, capitals and swapped neighbours are cheap") {
  CHECK(suggestion("embedmnt", {"embedment", "shank"}) == "did you mean 'embedment'?");
  CHECK(suggestion("embdmnt", {"embedment", "shank"}) == "did you mean 'embedment'?");
  CHECK(suggestion("embdmn", {"embedment", "shank"}) == "there are: 'embedment', 'shank'");
  CHECK(suggestion("EMBEDMENT", {"embedment", "shank"}) == "did you mean 'embedment'?");
  CHECK(suggestion("ebmedmnet", {"embedment", "shank"}) == "did you mean 'embedment'?");
  CHECK(suggestion("shink", {"shanks", "shank"}) == "did you mean 'shank'?");
}

TEST_CASE("a short word is not guessed from half of its letters") {
  CHECK(suggestion("id", {"at", "to", "of"}) == "there are: 'at', 'to', 'of'");
}

TEST_CASE("an endless word is not compared and a long list is cut") {
  CHECK(suggestion(std::string(100000, 'a'), {"aa", "ab"}) == "there are: 'aa', 'ab'");
  const std::vector<std::string_view> many(30, "word");
  const std::string list = suggestion("other", many);
  CHECK(list.ends_with("'word' and 6 more"));
}
