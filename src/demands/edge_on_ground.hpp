// Whether a piece can be turned about an edge: the edge is its own, and nothing of the piece reaches below it.
//
//   (p - A) . up(t) >= 0     for every point p of the piece and every t of the turn
//
// up(t) of less than half a turn lies between its two ends, so that what holds at both holds between them; start, middle
// and end therefore hold for all of a turn of up to half a turn. Source: geometry.
#pragma once

#include <optional>

#include "demands/turning_frame.hpp"
#include "piece/body.hpp"

namespace firstpick::demands {

// Nothing, or why not: a point of the piece below the edge (1 mm), a curved face that may be, an edge that is no edge
// of a flat face of the piece.
std::optional<NotAssessed> edge_refusal(const piece::Body& body, const TurningFrame& frame, Angle from, Angle to);

}  // namespace firstpick::demands
