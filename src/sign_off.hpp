// The sign-off beside a plan: where it lies, what it says of the plan as it is now, and a new one.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "checks/sign_off_state.hpp"
#include "plan/sign_off.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// The file as the caller found it. Without text: it is there and cannot be read, which is not "none".
struct SignOffText {
  std::string file;
  std::optional<std::string> text;
};

std::string sign_off_file_of(const std::string& plan_file);  // "a/piece.toml" -> "a/piece.signed.toml"
bool is_sign_off_file(std::string_view file);

// The state of a plan of this text under these rules and tables; `sign_off` absent: nobody has signed.
checks::SignOffState sign_off_state(const std::optional<SignOffText>& sign_off, std::string_view plan_text,
                                    const std::string& rules, const tables::Tables& tables);

// The seal that belongs to a signature: of its words as they are.
std::string seal_of(const plan::SignOff& sign_off);

// A signature under the plan as it is now.
plan::SignOff new_sign_off(const std::string& engineer, const plan::Timestamp& now, const std::string& verdict,
                           std::string_view plan_text, const std::string& rules, const tables::Tables& tables);

}  // namespace firstpick
