#include "record/utf8.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace firstpick;

TEST_CASE("a character is read with its length") {
  struct Row {
    std::string text;
    char32_t code;
    std::size_t length;
  };
  for (const Row& row : {Row{"a", U'a', 1}, Row{"\x7F", 0x7F, 1}, Row{"\xC2\x80", 0x80, 2},
                         Row{"\xC3\xA9", U'é', 2}, Row{"\xDF\xBF", 0x7FF, 2}, Row{"\xE0\xA0\x80", 0x800, 3},
                         Row{"\xED\x9F\xBF", 0xD7FF, 3}, Row{"\xEF\xBF\xBF", 0xFFFF, 3},
                         Row{"\xF0\x90\x80\x80", 0x10000, 4}, Row{"\xF4\x8F\xBF\xBF", 0x10FFFF, 4}}) {
    CAPTURE(row.text);
    const Utf8 read = utf8_at(row.text, 0);
    CHECK(read.valid);
    CHECK(read.code == row.code);
    CHECK(read.length == row.length);
  }
}

TEST_CASE("what is not UTF-8 is stepped over one byte at a time") {
  for (const std::string& text :
       {std::string("\x80"), std::string("\xC0\x80"), std::string("\xC1\xBF"), std::string("\xC3"),
        std::string("\xC3\x28"), std::string("\xE0\x80\x80"), std::string("\xE2\x82"),
        std::string("\xED\xA0\x80"), std::string("\xF0\x80\x80\x80"), std::string("\xF4\x90\x80\x80"),
        std::string("\xF5\x80\x80\x80"), std::string("\xFF")}) {
    CAPTURE(text);
    const Utf8 read = utf8_at(text, 0);
    CHECK_FALSE(read.valid);
    CHECK(read.length == 1);
    CHECK(read.code == static_cast<unsigned char>(text[0]));
  }
}

TEST_CASE("characters that hide or reorder are unprintable, letters are not") {
  for (const char32_t code : {char32_t{0}, U'\n', U'\t', char32_t{0x1B}, char32_t{0x7F}, char32_t{0x85},
                              char32_t{0x9F}, char32_t{0x200B}, char32_t{0x200E}, char32_t{0x2028},
                              char32_t{0x202E}, char32_t{0x2066}, char32_t{0xFEFF}, char32_t{0xE0041}}) {
    CAPTURE(static_cast<unsigned>(code));
    CHECK(is_unprintable(code));
  }
  for (const char32_t code :
       {U' ', U'~', char32_t{0xA0}, U'é', U'½', U'µ', char32_t{0x200C}, U'中', U'🏗'}) {
    CAPTURE(static_cast<unsigned>(code));
    CHECK_FALSE(is_unprintable(code));
  }
}
