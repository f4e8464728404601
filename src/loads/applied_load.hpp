// A force straight down at a point of the piece.
#pragma once

#include <string>
#include <vector>

#include "record/trace.hpp"
#include "units/quantity.hpp"
#include "units/vector.hpp"

namespace firstpick::loads {

struct AppliedLoad {
  Position at;  // in piece axes
  Force force{};
};

Force sum_of(const std::vector<AppliedLoad>& loads);

// The step "symbol = symbol_1 + symbol_2 + ..." of their sum, in kN.
Step sum_step(std::string words, const std::string& symbol, const std::vector<AppliedLoad>& loads);

}  // namespace firstpick::loads
