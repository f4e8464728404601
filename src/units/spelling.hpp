// How far two words are apart, for "did you mean": letters inserted, left out, replaced, or swapped with the
// next.
#pragma once

#include <cstddef>
#include <string_view>

namespace firstpick {

enum class Capitals { count, do_not_count };  // ASCII letters only

std::size_t edit_distance(std::string_view a, std::string_view b, Capitals capitals = Capitals::count);

// ASCII letters only: no locale.
bool same_but_for_case(std::string_view a, std::string_view b);

}  // namespace firstpick
