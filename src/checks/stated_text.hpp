// Whether a text of the plan says anything: blanks, a dash or a question mark name no engineer and no
// certificate, nor does a word that says that there is none yet.
#pragma once

#include <string_view>

namespace firstpick::checks {

// It has a letter of any script or a digit, and is not a word for nothing.
bool is_stated(std::string_view text);

}  // namespace firstpick::checks
