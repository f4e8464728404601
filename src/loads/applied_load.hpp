// A force straight down at a point of the piece.
#pragma once

#include "units/quantity.hpp"
#include "units/vector.hpp"

namespace firstpick::loads {

struct AppliedLoad {
  Position at;  // in piece axes
  Force force{};
};

}  // namespace firstpick::loads
