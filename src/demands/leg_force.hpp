// The force of one leg on its insert: along the straight line from insert to hook.
//
//   F = T u,   u = (hook - insert) / |hook - insert|,   angle from horizontal = atan(u.up / |u x up|)
#pragma once

#include "demands/hanging.hpp"

namespace firstpick::demands {

// Not a number where the hook is at the insert.
Direction towards_hook(const Position& insert, const Position& hook);

LegForce leg_force(const Position& insert, Force tension, const Position& hook, const Direction& up);

}  // namespace firstpick::demands
