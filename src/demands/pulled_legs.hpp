// The forces of the legs under a hook that pulls a given force, in every admissible sharing.
#pragma once

#include <string>
#include <vector>

#include "demands/hook_over_legs.hpp"

namespace firstpick::demands {

// In the order of the legs; slack ones without tension. A name only where there are several.
std::vector<Sharing> pulled_legs(const std::vector<HungLeg>& legs, const HookOverLegs& hook, Force pull,
                                 const Direction& up);

}  // namespace firstpick::demands
