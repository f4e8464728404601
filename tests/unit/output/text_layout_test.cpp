// Columns and paragraphs: nothing lost, nothing wider than asked.

#include <catch2/catch.hpp>

#include <string>

#include "output/text_layout.hpp"

using namespace firstpick::output;

TEST_CASE("a column is a code point, not a byte") {
  CHECK(columns_of("") == 0);
  CHECK(columns_of("abc") == 3);
  CHECK(columns_of("d\xC3\xA9" "collage") == 9);
  CHECK(columns_of("\xE6\xA2\x81") == 1);
}

TEST_CASE("padded fills or cuts, and shows that it cut") {
  CHECK(padded("abc", 5) == "abc  ");
  CHECK(padded("abcde", 5) == "abcde");
  CHECK(padded("abcdef", 5) == "abc..");
  CHECK(padded_left("abc", 5) == "  abc");
  CHECK(padded("abcdef", 2) == "ab");
  CHECK(padded("\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9", 3) == "\xC3\xA9..");
}

TEST_CASE("a paragraph breaks at spaces") {
  CHECK(paragraph("- ", "  ", "one two three", 9) == "- one two\n  three\n");
  CHECK(paragraph("", "", "one", 80) == "one\n");
  CHECK(paragraph("", "", "", 80) == "\n");
  CHECK(paragraph("> ", "  ", "   one    two   ", 80) == "> one two\n");
}

TEST_CASE("a word longer than a line is broken and nothing of it is lost") {
  CHECK(paragraph("", " ", "abcdefghij", 4) == "abcd\n efg\n hij\n");
  CHECK(paragraph("", "", "ab cdefgh", 4) == "ab\ncdef\ngh\n");
}

TEST_CASE("no line of a paragraph is wider than asked, and the letters stay in order") {
  const std::string text = "A crane of more capacity, or less grip of the form: " + std::string(90, 'x') + " end.";
  for (std::size_t width = 8; width <= 100; ++width) {
    const std::string broken = paragraph("  - ", "    ", text, width);
    std::string letters, line;
    for (const char c : broken) {
      if (c == '\n') {
        CAPTURE(width, line);
        CHECK(columns_of(line) <= width);
        line.clear();
      } else {
        line += c;
      }
      if (c != ' ' && c != '\n') letters += c;
    }
    std::string expected = "-";
    for (const char c : text)
      if (c != ' ') expected += c;
    CHECK(letters == expected);
  }
}

TEST_CASE("a code point is never cut in two") {
  const std::string text = paragraph("", "", "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9", 2);
  CHECK(text == "\xC3\xA9\xC3\xA9\n\xC3\xA9\xC3\xA9\n\xC3\xA9\n");
}
