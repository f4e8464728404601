// A place in the text of a quantity, and the faults that can be told from one character.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "units/parse.hpp"

namespace firstpick {

template <class T>
using Read = std::variant<T, QuantityFault>;

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  std::size_t at() const { return at_; }
  bool at_end() const { return at_ == text_.size(); }
  char ahead(std::size_t n = 0) const { return at_ + n < text_.size() ? text_[at_ + n] : '\0'; }
  std::string_view since(std::size_t from) const { return text_.substr(from, at_ - from); }

  void step(std::size_t n = 1) { at_ = n < text_.size() - at_ ? at_ + n : text_.size(); }
  void go_back_to(std::size_t at) { at_ = at; }
  bool take(char c);           // true, and one further, if `c` is next
  bool skip_spaces();          // spaces and tabs; true if there were any
  std::string_view digits();   // takes them
  std::string_view letters();  // takes them; ASCII

  // Says what the next character is and what to write instead of it: comma, superscript, degree sign,
  // bracket.
  QuantityFault unexpected(std::string_view wanted) const;

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

// std::isdigit and std::isalpha ask the locale; these do not.
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// A piece of the user's text for a message: printable, and not longer than a line can take.
std::string quoted(std::string_view text);

}  // namespace firstpick
