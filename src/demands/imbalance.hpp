// Proof of a hung pose: what is left unbalanced, recomputed from positions and nothing the search knew.
//
//   force    |sum of leg forces - sum of loads x up| of the piece and of each beam and sheave, the worst, over
//            the total load
//   moment   |sum of moments of both about the load centre| of each, the worst, over total load x size
//   length   |L - L0 (1 + T/EA)| of a taut rope, L - L0 of a slack one if more than zero, over the size
//
// Size: the longest of the legs and of the distances from the load centre to the inserts. Not a number: not
// balanced.
#pragma once

#include "demands/hanging.hpp"

namespace firstpick::demands {

struct Imbalance {
  double force = 0.0, moment = 0.0, length = 0.0;
  bool a_leg_pushes = false;
};

Imbalance imbalance(const HungPiece& piece, const Hanging& hanging);

// To 1e-9 of each, no leg pushing; not a number is not.
bool is_balanced(const Imbalance& left);

struct LoadCentre {
  Position at;
  Force total{};
  Length size{};
};

// Loads must be finite, none negative, their sum above zero.
LoadCentre load_centre(const HungPiece& piece);

}  // namespace firstpick::demands
