#include "tables/toml_scan.hpp"

#include <algorithm>
#include <cstdint>

#include <fmt/format.h>

#include "record/utf8.hpp"

namespace firstpick::tables {
namespace {

constexpr int deepest_brackets = 32;
constexpr int longest_dotted_key = 32;

// Walks over the text as a TOML reader does, just closely enough to know what is quoted and what is a
// comment. Where the text is malformed the two may part, but only behind the place at which the parser stops.
class Scan {
 public:
  Scan(std::string_view text, std::size_t from) : text_(text), at_(from) {}

  std::optional<Unreadable> first_unreadable() {
    while (at_ < text_.size()) {
      if (is_plain_text(text_[at_])) {
        ++at_;
        continue;
      }
      const Utf8 character = utf8_at(text_, at_);
      if (auto fault = refused(character)) return fault;
      if (character.length == 1) follow(text_[at_]);
      at_ += character.length;
    }
    return {};
  }

  std::optional<Unreadable> first_unclosed_quote() {
    while (at_ < text_.size()) {
      const bool in_line = inside_ == Inside::basic || inside_ == Inside::literal;
      if (in_line && text_[at_] == '\n') return unclosed();
      follow(text_[at_]);
      ++at_;
    }
    return inside_ == Inside::plain || inside_ == Inside::comment ? std::nullopt : unclosed();
  }

 private:
  enum class Inside { plain, comment, basic, literal, long_basic, long_literal };

  // Nothing begins or ends here, and nothing is refused: most of a file, gone past without another look.
  bool is_plain_text(char c) const {
    constexpr std::string_view followed = "#\"'\\[]{}=,.";
    return c >= ' ' && c < '\x7F' && followed.find(c) == std::string_view::npos && depth_ <= deepest_brackets &&
           dots_ <= longest_dotted_key;
  }

  std::optional<Unreadable> refused(const Utf8& character) const {
    if (!character.valid) return Unreadable{at_, "the file is not UTF-8 text", "save it as UTF-8"};
    const bool line_end = character.code == '\n' ||
                          (character.code == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n');
    if (is_unprintable(character.code) && character.code != '\t' && !line_end)
      return Unreadable{at_,
                        fmt::format("U+{:04X} is a character that cannot be seen",
                                    static_cast<std::uint32_t>(character.code)),
                        "delete it"};
    if (character.length > 1 && inside_ == Inside::plain)
      return Unreadable{at_, fmt::format("'{}' stands outside quotes", text_.substr(at_, character.length)),
                        "put the text in quotes, or leave the character out"};
    if (depth_ > deepest_brackets)
      return Unreadable{at_, fmt::format("brackets are nested deeper than {}", deepest_brackets), {}};
    if (dots_ > longest_dotted_key)
      return Unreadable{at_, fmt::format("a dotted key has more than {} parts", longest_dotted_key), {}};
    return {};
  }

  // A quote right behind one that closes: "8'-4"" was meant for inches.
  std::optional<Unreadable> unclosed() const {
    if (inside_ == Inside::long_basic || inside_ == Inside::long_literal)
      return Unreadable{opened_, "the text that begins here with three quotes is not closed",
                        "it ends with the same three"};
    const char quote = text_[opened_];
    if (opened_ > 0 && text_[opened_ - 1] == quote && quote == '"')
      return Unreadable{opened_, "a quote too many: the text was closed before it",
                        "inches inside quotes are written with in: \"8 ft 4 in\""};
    return Unreadable{
        opened_, "this quote is not closed on its line",
        quote == '"' ? "write \" at the end of the text too" : "write ' at the end of the text too"};
  }

  bool next_are(char quote) const {
    return at_ + 2 < text_.size() && text_[at_ + 1] == quote && text_[at_ + 2] == quote;
  }

  void open(char quote, Inside short_string, Inside long_string) {
    const bool is_long = next_are(quote);
    opened_ = at_;
    inside_ = is_long ? long_string : short_string;
    if (is_long) at_ += 2;
  }

  // Three quotes close a long string; up to two more in front of them belong to it.
  void close_long(char quote) {
    if (!next_are(quote)) return;
    at_ += 2;
    for (int more = 0; more < 2 && at_ + 1 < text_.size() && text_[at_ + 1] == quote; ++more) ++at_;
    inside_ = Inside::plain;
  }

  void follow(char c) {
    switch (inside_) {
      case Inside::plain: follow_plain(c); break;
      case Inside::comment:
        if (c == '\n') inside_ = Inside::plain;
        break;
      case Inside::basic:
        if (c == '\\' && at_ + 1 < text_.size() && (text_[at_ + 1] == '"' || text_[at_ + 1] == '\\')) ++at_;
        if (c == '"' || c == '\n') inside_ = Inside::plain;
        break;
      case Inside::literal:
        if (c == '\'' || c == '\n') inside_ = Inside::plain;
        break;
      case Inside::long_basic:
        if (c == '\\' && at_ + 1 < text_.size() && (text_[at_ + 1] == '"' || text_[at_ + 1] == '\\')) ++at_;
        if (c == '"') close_long('"');
        break;
      case Inside::long_literal:
        if (c == '\'') close_long('\'');
        break;
    }
  }

  void follow_plain(char c) {
    switch (c) {
      case '#': inside_ = Inside::comment; break;
      case '"': open('"', Inside::basic, Inside::long_basic); break;
      case '\'': open('\'', Inside::literal, Inside::long_literal); break;
      case '[':
      case '{':
        ++depth_;
        dots_ = 0;
        break;
      case ']':
      case '}':
        depth_ = std::max(0, depth_ - 1);
        dots_ = 0;
        break;
      case '=':
      case ',':
      case '\n': dots_ = 0; break;
      case '.': ++dots_; break;
      default: break;
    }
  }

  std::string_view text_;
  std::size_t at_;
  std::size_t opened_ = 0;  // the quote before the text that it is in
  Inside inside_ = Inside::plain;
  int depth_ = 0;
  int dots_ = 0;
};

}  // namespace

std::optional<Unreadable> first_unreadable(std::string_view text, std::size_t from) {
  return Scan(text, from).first_unreadable();
}

std::optional<Unreadable> first_unclosed_quote(std::string_view text, std::size_t from) {
  return Scan(text, from).first_unclosed_quote();
}

}  // namespace firstpick::tables
