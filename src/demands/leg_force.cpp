#include "demands/leg_force.hpp"

#include <cmath>

namespace firstpick::demands {

Direction towards_hook(const Position& insert, const Position& hook) {
  const Position along = hook - insert;
  const Length length = norm(along);
  return {along.x / length, along.y / length, along.z / length};
}

LegForce leg_force(const Position& insert, Force tension, const Position& hook, const Direction& up) {
  const Direction u = towards_hook(insert, hook);
  return {tension, std::atan2(dot(u, up), norm(cross(u, up))) * radian, u * tension};
}

}  // namespace firstpick::demands
