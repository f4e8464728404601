// How far two words are apart, for "did you mean": letters inserted, left out, replaced, or swapped with the
// next.
#pragma once

#include <cstddef>
#include <string_view>

namespace firstpick {

std::size_t edit_distance(std::string_view a, std::string_view b);

// ASCII letters only: no locale.
bool same_but_for_case(std::string_view a, std::string_view b);

}  // namespace firstpick
