// A line with strands stretched before it was cast: the worst tension and compression of its lowest and
// highest fibre, over all loads between a least and a most, and all forces of each row of strands between
// theirs.
//
//   stress(x) = s (N/A + M (z_c - z)/I) + sum over rows of P(x) (-1/A - (z_c - z_p(x)) (z_c - z)/I)
//   P(x)      = p P_0 min(1, (x - x_0)/(t l_t), (x_1 - x)/(t l_t))        of a row bonded from x_0 to x_1, else zero
//
// N, M of the loads with all legs (beam_line.hpp), s between load_least and load_most. Each row is at its
// least (p = least, t = transfer_most) or at its most (p = most, t = transfer_least), place by place and
// fibre by fibre, whichever hurts. A row that is not level is taken with its level force: its slope is
// slight.
//
// Exact: between places where anything changes, a kink, an end of a transfer or a row that passes the edge of
// the kern, the
// stress is a parabola, read at both ends and at its vertex.
//
// Source   statics of a straight uncracked beam, plane sections; no outside constant. The piece hangs: its
//          camber shifts no load between the legs.
#pragma once

#include <string>
#include <vector>

#include "demands/beam_line.hpp"

namespace firstpick::demands {

struct StrandPoint {
  Length at{};  // along the line
  Length height{};
};

struct StrandRow {
  Force force{};
  std::vector<StrandPoint> points;  // at least two, towards larger x
  Length transfer{};
};

struct PrestressRange {
  Ratio least{}, most{};                    // of the force of a row
  Ratio transfer_least{}, transfer_most{};  // of its transfer length
  Ratio load_least{}, load_most{};          // of the loads of the line and its legs
};

// The stress of one fibre, with its parts.
struct FibreStress {
  Stress stress{};  // tension positive
  Length at{};
  bool top = false;
  Ratio load{};                        // s
  Stress of_load{};                    // of the whole load, before s
  std::vector<Stress> of_rows;         // in their order
  std::vector<Force> rows;             // what each holds there
  std::vector<bool> at_most;           // each at its most, or at its least
  std::vector<Length> below_centroid;  // z_c - z_p of each
  Area area{};
  SecondMoment second_moment{};
  Length from_centroid{};  // from the centroid to the fibre, never negative
};

struct PrestressedState {
  FibreStress tension;      // the largest stress of all
  FibreStress compression;  // the least stress of all
};

// Not assessed: what beam_state does not assess; a row without two points in order, without force or transfer
// length, beyond the ends or outside the depth of the piece; a range that is not one.
Outcome<PrestressedState> prestressed_state(const BeamLine& beam, const std::vector<StrandRow>& rows,
                                            const PrestressRange& range);

}  // namespace firstpick::demands
