#include "units/scanner.hpp"

#include <fmt/format.h>

namespace firstpick {
namespace {

// Characters of typeset text, with what to type for them.
struct Typeset {
  std::string_view utf8;
  std::string_view help;
};
constexpr Typeset typeset[] = {
    {"²", "write 2 for ²: \"m2\", \"in2\""},
    {"³", "write 3 for ³: \"m3\", \"lb/ft3\""},
    {"°", "write \"deg\" for an angle, \"degC\" or \"degF\" for a temperature"},
    {"º", "write \"deg\" for an angle, \"degC\" or \"degF\" for a temperature"},
    {"℃", "write \"degC\" for ℃"},
    {"℉", "write \"degF\" for ℉"},
    {"′", "write ' or \"ft\" for ′"},
    {"‘", "write ' or \"ft\" for ‘"},
    {"’", "write ' or \"ft\" for ’"},
    {"″", "write \" or \"in\" for ″"},
    {"“", "write \" or \"in\" for “"},
    {"”", "write \" or \"in\" for ”"},
    {"µ", "µ is not read: write the length in mm"},
    {"μ", "μ is not read: write the length in mm"},
    {"·", "write a space for ·: \"kN m\""},
    {"⋅", "write a space for ⋅: \"kN m\""},
    {"×", "one quantity is read here: a product is not"},
    {"−", "write the minus sign of the keyboard: -"},
    {"–", "write the minus sign of the keyboard: -"},
    {"—", "write the minus sign of the keyboard: -"},
    {"½", "write 1/2 for ½: \"4 1/2 in\""},
    {"¼", "write 1/4 for ¼: \"4 1/4 in\""},
    {"¾", "write 3/4 for ¾: \"4 3/4 in\""},
    {"⅛", "write 1/8 for ⅛: \"4 1/8 in\""},
    {"⅜", "write 3/8 for ⅜: \"4 3/8 in\""},
    {"⅝", "write 5/8 for ⅝: \"4 5/8 in\""},
    {"⅞", "write 7/8 for ⅞: \"4 7/8 in\""},
    {"⁄", "write / for ⁄: \"5/8 in\""},
    {"∕", "write / for ∕: \"5/8 in\""},
    {"√", "write a square root as a power: \"psi^0.5\""},
    {"‰", "write a number for ‰: \"0.003\", or use %"},
    {"\u00a0", "a no-break space is not read: write an ordinary space"},
    {"\u2009", "a thin space is not read: write an ordinary space"},
    {"\u202f", "a narrow space is not read: write an ordinary space"},
};

struct Plain {
  char character;
  std::string_view help;
};
constexpr Plain plain[] = {
    {',',
     "a comma is not read, because 2,100 is 2100 in one country and 2.1 in another: "
     "write 2100 or 2.1, with a point for decimals and nothing between thousands"},
    {'.', "write a decimal point between digits, and a space between the units of a product: \"kN m\""},
    {'(',
     "brackets stand only around a divisor, as in \"lbf / (psi^0.5 in^1.5)\", or a power, as in "
     "\"in^(5/3)\""},
    {')',
     "brackets stand only around a divisor, as in \"lbf / (psi^0.5 in^1.5)\", or a power, as in "
     "\"in^(5/3)\""},
    {'-', "a hyphen joins feet and inches, as in 8'-4\" or \"8 ft - 4 in\"; a range is not one quantity"},
    {'+', "one quantity is read here, a sum is not"},
    {'*', "one quantity is read here, a product is not"},
    {'/', "a fraction is digits without spaces, as in \"5/8 in\" or \"4 1/2 in\"; a unit has one divisor"},
    {':', "write a time as \"14 h 30 min\""},
    {'#', "write \"lb\""},
    {'~', "write the value itself, without ~"},
    {'<', "write the value itself, without <"},
    {'>', "write the value itself, without >"},
    {'=', "write the value itself, without ="},
    {'\'', "' is feet: it stands right after the number of feet, as in 8'-4\""},
    {'"', "\" is inches: it stands right after the number of inches, as in 8'-4\""},
    {'%', "% stands alone, right after its number"},
};

}  // namespace

bool Scanner::take(char c) {
  if (at_end() || text_[at_] != c) return false;
  ++at_;
  return true;
}

bool Scanner::skip_spaces() {
  const std::size_t from = at_;
  while (ahead() == ' ' || ahead() == '\t') ++at_;
  return at_ > from;
}

std::string_view Scanner::digits() {
  const std::size_t from = at_;
  while (is_digit(ahead())) ++at_;
  return since(from);
}

std::string_view Scanner::letters() {
  const std::size_t from = at_;
  while (is_letter(ahead())) ++at_;
  return since(from);
}

QuantityFault Scanner::unexpected(std::string_view wanted) const {
  if (at_end()) return {at_, fmt::format("{} expected, but the text ends here", wanted), {}};
  const std::string_view rest = text_.substr(at_);
  for (const Typeset& t : typeset)
    if (rest.starts_with(t.utf8))
      return {at_, fmt::format("'{}' cannot be read", t.utf8), std::string{t.help}};
  const char c = rest.front();
  if (c < ' ' || c > '~')
    return {at_, fmt::format("byte 0x{:02x} cannot be read", static_cast<unsigned char>(c)),
            "a quantity is written in plain ASCII on one line"};
  for (const Plain& p : plain)
    if (c == p.character) return {at_, fmt::format("{} expected, not '{}'", wanted, c), std::string{p.help}};
  return {at_, fmt::format("{} expected, not '{}'", wanted, c), {}};
}

std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 40;
  std::string printable;
  for (const char c : text.substr(0, longest)) printable += c >= ' ' && c <= '~' ? c : '?';
  return text.size() > longest ? fmt::format("'{}...'", printable) : fmt::format("'{}'", printable);
}

}  // namespace firstpick
