// An earlier audit, as `firstpick audit --json` wrote it, against this one.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "audit/audit.hpp"

namespace firstpick::audit {

// Fills Audit::changes, in the order of files, those that are worse first. What is wrong with the earlier audit, else
// nothing.
std::optional<Diagnostic> compare_with_earlier(const std::string& file, std::string_view text, Audit& audit);

}  // namespace firstpick::audit
