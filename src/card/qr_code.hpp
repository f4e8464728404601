// A text as a square of dark and light modules, for a telephone to read (libqrencode stays inside).
#pragma once

#include <string>
#include <vector>

#include "card/page.hpp"

namespace firstpick::card {

// Dark modules as filled squares inside `square`, with the quiet margin of four modules that readers need.
// ISO/IEC 18004, error correction level M. Empty where the text is too long for a code.
std::vector<LineMark> qr_code(const std::string& text, const Rect& square);

}  // namespace firstpick::card
