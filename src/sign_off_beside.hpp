// Reads the sign-off that lies beside a plan, for the commands.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <system_error>

#include "sign_off.hpp"
#include "whole_file.hpp"

namespace firstpick {

// Nothing only where no such file is there: one that cannot be read is told.
inline std::optional<SignOffText> sign_off_beside(const std::string& plan_file) {
  const std::string file = sign_off_file_of(plan_file);
  std::error_code error;
  if (std::filesystem::symlink_status(file, error).type() == std::filesystem::file_type::not_found) return {};
  return SignOffText{file, whole_file(file)};
}

}  // namespace firstpick
