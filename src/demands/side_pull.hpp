// How far a hung piece rolls when it is pulled aside.
//
//   W (d cos phi + z sin phi) = M        phi = asin(M / (W R)) - atan(d / z),   R = sqrt(d^2 + z^2)
//
// It rolls about a line between two picks. M: moment of the pull about that line; d: how far inside the line the centre of
// gravity hangs (zero where all picks are in one line); z: how deep below it. Up to M = W d a leg still holds it: phi = 0.
// Past M = W R, or with the centre of gravity not below the line, nothing holds it: 180 degrees.
// Source: statics. A lid of 800 kg, d = 0, z = 0.053 m, under 98 N at 1 m: 13.6 degrees.
#pragma once

#include "demands/hanging.hpp"
#include "piece/body.hpp"

namespace firstpick::demands {

Angle roll_under(Moment pull, Force weight, Length inside, Length depth);

struct Roll {
  Angle angle{};
  Moment pull{};               // about the line that governs
  Length inside{}, depth{};    // d, z
};

// The worst line of picks of a hung piece. `picks`: an equalised group counts as one pick, at its middle. The pull acts
// where it reaches farthest: level or plumb, at the rim of the piece.
Outcome<Roll> worst_roll(const std::vector<Position>& picks, const Position& centre, Force weight, Force side_pull,
                         const piece::Body& body, const Direction& up);

}  // namespace firstpick::demands
