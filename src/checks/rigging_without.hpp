// A rigging after one of its ropes has let go.
#pragma once

#include <cstddef>
#include <vector>

#include "plan/plan.hpp"

namespace firstpick::checks {

// The legs that let go together, as indices, each leg in one set: legs that are one rope over a sheave run out at once.
std::vector<std::vector<std::size_t>> ropes_of(const plan::Rigging& rigging);

// The rigging without these legs and without all that falls or goes slack with them: a beam or a sheave that hangs on
// nothing takes its own legs along, one that carries nothing any more is left out, a rope that loses one end runs out.
plan::Rigging rigging_without(const plan::Rigging& rigging, const std::vector<std::size_t>& legs);

}  // namespace firstpick::checks
