// The flat faces on which a piece stands, in axes on the ground.
#pragma once

#include <vector>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::demands {

struct BasePlane {
  Direction u, v, up;  // right-handed
  Length level{};      // of the ground, along up
  std::vector<std::vector<plan::PlanarPoint>> rings;  // of every face that stands on it: outlines and openings

  plan::PlanarPoint foot(const Position& p) const;
};

// Not assessed: no flat face looks straight down at the lowest level; a curved face may reach lower.
Outcome<BasePlane> base_plane(const piece::Body& body, const Direction& up);

// Every corner of its flat faces, and of the box around it where it has curved ones: what encloses the piece.
std::vector<Position> corners_of(const piece::Body& body);

}  // namespace firstpick::demands
