// Whether a text of the plan says anything: blanks alone do not name an engineer or a certificate.
#pragma once

#include <string_view>

namespace firstpick::checks {

inline bool is_stated(std::string_view text) { return text.find_first_not_of(" \t\r\n") != std::string_view::npos; }

}  // namespace firstpick::checks
