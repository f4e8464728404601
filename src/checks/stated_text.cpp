#include "checks/stated_text.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace firstpick::checks {

namespace {

// Letters and digits, small, without what stands between them: "N/A" and "n.a." are "na".
std::string bare_word(std::string_view text) {
  std::string bare;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 'A' && byte <= 'Z')
      bare += static_cast<char>(byte - 'A' + 'a');
    else if (byte >= 0x80 || (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z'))
      bare += c;
  }
  return bare;
}

// "no certificate", "not yet issued": begins by denying, and has no digit as "No. 12" has.
bool denies(std::string_view text) {
  constexpr std::array<std::string_view, 9> denying{"no",      "not",     "none",     "without", "never",
                                                    "missing", "unknown", "awaiting", "pending"};
  constexpr std::string_view digits = "0123456789";
  if (text.find_first_of(digits) != std::string_view::npos) return false;
  const std::size_t start = std::min(text.find_first_not_of(" \t-*(\"'"), text.size());
  return std::ranges::find(denying, bare_word(text.substr(start, text.find(' ', start) - start))) !=
         denying.end();
}

}  // namespace

bool is_stated(std::string_view text) {
  constexpr std::array<std::string_view, 21> nothing{"na",
                                                     "nil",
                                                     "null",
                                                     "nothing",
                                                     "nobody",
                                                     "noone",
                                                     "tbd",
                                                     "tba",
                                                     "tbc",
                                                     "tobedone",
                                                     "tobeadvised",
                                                     "tobeconfirmed",
                                                     "tobedetermined",
                                                     "todo",
                                                     "later",
                                                     "open",
                                                     "yes",
                                                     "ok",
                                                     "x",
                                                     "xx",
                                                     "xxx"};
  const std::string bare = bare_word(text);
  return !bare.empty() && !denies(text) && std::ranges::find(nothing, bare) == nothing.end();
}

}  // namespace firstpick::checks
