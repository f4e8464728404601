// The force of a leg turned into the insert's own axes.
//
//   tension = F . n where it pulls out, else 0;   shear = |F - (F . n) n|
//
// n is the outward normal of the face. Source: geometry.
#pragma once

#include "demands/hanging.hpp"
#include "piece/body.hpp"

namespace firstpick::demands {

struct InsertForce {
  Force tension{};  // along the outward normal of the face; zero where the leg presses the insert in
  Force shear{};    // in the plane of the face
  Force shear_u{}, shear_v{};  // its components on the face's axes (InsertSite::u, v)
  bool presses_in = false;     // the leg runs into the concrete: not a pick that can exist
};

// What is not a number stays so in the result, and compares as not assessed.
InsertForce insert_force(const LegForce& leg, const piece::InsertSite& site);

}  // namespace firstpick::demands
