// The file that `firstpick sign` leaves beside a plan: who signed what. docs/sign-off.md has it in words.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "plan/keys.hpp"
#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

struct SignOff {
  std::string engineer;
  Timestamp signed_at;
  std::string verdict;                // "GO", "HOLD", "NO-GO" on that day
  std::string rules, program;         // rule set and version of the program
  std::string plan, tables;           // SHA-256 of each alone, so that it can be said which has changed
  std::string fingerprint;            // of all four together
  std::string seal;                   // SHA-256 of everything above: a word of the file that was changed by hand shows
};

const SectionList& sign_off_sections();

// The sign-off, or every fault of its file in the order of the text.
std::variant<SignOff, std::vector<Diagnostic>> read_sign_off(const std::string& file, std::string_view text,
                                                             const tables::Tables& tables);

// The file itself; read_sign_off gives it back.
std::string text_of(const SignOff& sign_off);

}  // namespace firstpick::plan
