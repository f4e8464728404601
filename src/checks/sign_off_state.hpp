// What the sign-off beside a plan says of the plan as it is now.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace firstpick::checks {

struct SignOffState {
  enum class Kind { none, valid, changed, faulty };
  Kind kind = Kind::none;
  std::string file;                    // of the sign-off; empty: none
  std::string engineer, signed_at;     // who and when, as the file says
  std::string verdict_then;            // "GO", "HOLD", "NO-GO"
  std::vector<std::string> changed;    // what is no longer as it was signed: "the plan", "the tables", ...
  std::string fault;                   // of a file that does not read, with line and column
};

std::string_view word_for(SignOffState::Kind kind);  // "none", "valid", "changed since sign-off", "faulty"

// One sentence: "signed by R. Example, 2026-03-02 08:00 +00:00, as GO"; "not signed"; ...
std::string in_words(const SignOffState& state);

}  // namespace firstpick::checks
