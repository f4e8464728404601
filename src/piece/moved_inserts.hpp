// A body that was made once, with the inserts of a plan whose solids and form are the same: nothing else is made anew.
#pragma once

#include <variant>
#include <vector>

#include "piece/body.hpp"

namespace firstpick::piece {

// Faults: an insert that does not lie on the concrete, or on an edge of it; a body that nobody built.
std::variant<Body, std::vector<Diagnostic>> with_inserts_of(const Body& body, const plan::Plan& plan);

}  // namespace firstpick::piece
