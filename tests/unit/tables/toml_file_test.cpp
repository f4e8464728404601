#include "tables/toml_file.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace firstpick;
using namespace firstpick::tables;

namespace {

// "3:7: what (help)", or "read" where the text is read.
std::string outcome(const std::string& text) {
  const auto read = parse_toml("plan.toml", text);
  const auto* fault = std::get_if<Diagnostic>(&read);
  if (!fault) return "read";
  CHECK(fault->file == "plan.toml");
  const std::string help = fault->help.empty() ? "" : " (" + fault->help + ")";
  return std::to_string(fault->place.line) + ":" + std::to_string(fault->place.column) + ": " + fault->what +
         help;
}

Place place_of_key(const std::string& text, std::string_view key) {
  const auto read = parse_toml("plan.toml", text);
  REQUIRE(std::holds_alternative<toml::table>(read));
  const auto& table = std::get<toml::table>(read);
  const auto found = table.find(key);
  REQUIRE(found != table.end());
  return place_in(text, found->first.source().begin);
}

std::string repeated(const std::string& part, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += part;
  return all;
}

}  // namespace

TEST_CASE("plain TOML is read") {
  CHECK(outcome("") == "read");
  CHECK(outcome("a = 1\r\n[b]\r\nc = \"8 ft 4 in\" # here\r\n") == "read");
  CHECK(outcome("\xEF\xBB\xBF"
                "a = 1\n") == "read");
  const auto read = parse_toml("p", "length = \"8 ft\"\n");
  REQUIRE(std::holds_alternative<toml::table>(read));
  CHECK(std::get<toml::table>(read)["length"].value<std::string>() == "8 ft");
}

TEST_CASE("letters beyond ASCII are read inside quotes and comments of every kind") {
  CHECK(outcome("a = \"é\" # ½\n") == "read");
  CHECK(outcome("a = 'é'\n\"ü\" = 1\n") == "read");
  CHECK(outcome("a = \"\"\"\né \"\" \\\" µ\n\"\"\"\nb = '''é '' ²'''\n") == "read");
  CHECK(outcome("a = \"\"\"é\"\"\"\"\"\nb = 1\n") == "read");
  CHECK(outcome("a = \"\\\\\" # é\n") == "read");
}

TEST_CASE("letters beyond ASCII outside quotes are refused where they stand") {
  CHECK(outcome("a = 1\nb = é\n") ==
        "2:5: 'é' stands outside quotes (put the text in quotes, or leave the character out)");
  CHECK(outcome("b = 4½\n").starts_with("1:6: '½' stands outside quotes"));
  CHECK(outcome("a = \"\\\"\" é\n").starts_with("1:10: 'é' stands outside quotes"));
  CHECK(outcome("\xEF\xBB\xBE"
                "a = 1\n")
            .starts_with("1:1: '\xEF\xBB\xBE' stands outside quotes"));
  CHECK(outcome("\xEF\xBB\xBF"
                "é = 1\n")
            .starts_with("1:4: 'é' stands outside quotes"));
}

TEST_CASE("what is not text is refused") {
  CHECK(outcome("a = \"\xFF\"\n") == "1:6: the file is not UTF-8 text (save it as UTF-8)");
  CHECK(outcome("a = \"\x1B[31m\"\n") == "1:6: U+001B is a character that cannot be seen (delete it)");
  CHECK(outcome(std::string("a = 1\0\n", 7)).starts_with("1:6: U+0000"));
  CHECK(outcome("a = 1\rb = 2\n").starts_with("1:6: U+000D"));
  CHECK(outcome("# \xE2\x80\xAE\n").starts_with("1:3: U+202E"));
  CHECK(outcome("a = \"\x7F\"\n").starts_with("1:6: U+007F"));
  CHECK(outcome("a = \"\t\"\t#\t\n") == "read");
}

TEST_CASE("bytes on which the parser alone would stop the program are refused") {
  CHECK(outcome("[\n").starts_with("1:2: "));
  CHECK(outcome("s = 2['''\xEF\xBB\xBE\n")
            .starts_with("1:"));  // the two readers part here: nobody may trust the quotes
  CHECK(outcome("a = \"\"\"\\\n  \xC3\xA9\"\"\"\n") == "read");
}

TEST_CASE("deep nesting is refused, not followed to the end of the stack") {
  CHECK(outcome("a = " + repeated("[", 32) + repeated("]", 32) + "\n") == "read");
  CHECK(outcome("a = " + repeated("[", 33) + repeated("]", 33) + "\n") ==
        "1:38: brackets are nested deeper than 32");
  CHECK(outcome("a = " + repeated("[", 500000)).find("nested deeper") != std::string::npos);
  CHECK(outcome("a = " + repeated("{b=", 300000)).find("nested deeper") != std::string::npos);
  CHECK(outcome("a = \"" + repeated("[", 100) + "\" # " + repeated("[", 100) + "\n") == "read");
  CHECK(outcome("[a" + repeated(".a", 500000) + "]\n").find("more than 32 parts") != std::string::npos);
  CHECK(outcome("a" + repeated(".a", 500000) + " = 1\n").find("more than 32 parts") != std::string::npos);
  CHECK(outcome("a = [" + repeated("1.5, ", 200) + "]\n") == "read");
}

TEST_CASE("a file larger than any plan is refused") {
  CHECK(outcome("#" + std::string(largest_toml_file - 2, ' ') + "\n") == "read");
  CHECK(outcome("#" + std::string(largest_toml_file, ' ')) == "0:0: the file has more than 1048576 bytes");
}

TEST_CASE("a quantity without its quotes gets help") {
  CHECK(
      outcome("length = 8 ft 4 in # clear\n").ends_with(" (a quantity is written in quotes: \"8 ft 4 in\")"));
  CHECK(outcome("a = 1\nweight = 19.2kip\r\n").ends_with(" (a quantity is written in quotes: \"19.2kip\")"));
  CHECK(outcome("length = \"8 ft\n").find("quantity") == std::string::npos);
  CHECK(outcome("length 8 ft\n").find("quantity") == std::string::npos);
}

TEST_CASE("a quote that is not closed is told at the quote, in our words") {
  CHECK(outcome("a = 1\nmark = \"B-1\nb = 2\n") ==
        "2:8: this quote is not closed on its line (write \" at the end of the text too)");
  CHECK(outcome("mark = 'B-1\r\nb = 2\n") ==
        "1:8: this quote is not closed on its line (write ' at the end of the text too)");
  CHECK(outcome("mark = \"B-1") == "1:8: this quote is not closed on its line (write \" at the end of the text too)");
  CHECK(outcome("a = \"\"\"B-1\nb = 2\n") ==
        "1:5: the text that begins here with three quotes is not closed (it ends with the same three)");
  CHECK(outcome("a = [\"x\", \"y]\nb = 2\n").starts_with("1:11: this quote is not closed"));
  CHECK(outcome("length = \"8'-4\"\"\n") ==
        "1:16: a quote too many: the text was closed before it (inches inside quotes are written with in: \"8 ft 4 in\")");
  CHECK(outcome("# it's\na = \"it's\"\nb = 'say \"'\n") == "read");
  CHECK(outcome("a = = 1\nb = \"x\n").starts_with("1:"));  // the fault that comes first is told
}

TEST_CASE("a key twice is refused at its second place") {
  CHECK(outcome("a = 1\nb = 2\na = 3\n") == "3:5: cannot redefine existing integer 'a'");
}

TEST_CASE("places are counted in bytes") {
  const std::string text = "\"é\" = { x = 1 }\n\"½\".k = 1\n";
  const auto read = parse_toml("p", text);
  REQUIRE(std::holds_alternative<toml::table>(read));
  const auto& inner = *std::get<toml::table>(read).get("½")->as_table();
  const Place place = place_in(text, inner.find("k")->first.source().begin);
  CHECK(place.line == 2);
  CHECK(place.column == 6);
  CHECK(place_of_key("\xEF\xBB\xBF"
                     "a = 1\n",
                     "a")
            .column == 4);
  CHECK(place_of_key("x = 1\n  a = 1\n", "a").column == 3);
}

TEST_CASE("lines are found by number") {
  const Lines lines("one\r\ntwo\n\nfour");
  CHECK(lines.line(1) == "one");
  CHECK(lines.line(2) == "two");
  CHECK(lines.line(3) == "");
  CHECK(lines.line(4) == "four");
  CHECK(lines.line(0) == "");
  CHECK(lines.line(5) == "");
}
