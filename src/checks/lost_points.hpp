// What the others carry when one point of the rigging lets go.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// One for each rope of the rigging (an insert, its clutch, its leg: the same loss), in the order of the legs: the
// survivor that is asked for most of what breaks it. Empty in a turn and where the stage names no rigging.
//
//   u = n_step (W + W_att) at the survivor / its ultimate resistance
//
// The piece has come to rest on the others, hanging free; n_step is the rule set's factor for the sudden transfer. The
// dynamic factor of the stage is not put on top of it; where that is larger it takes its place. Ultimate: nominal
// resistance of a headed insert, breaking load of sling and hardware, declared load times its factor of a rated insert.
// Not told: beams and sheaves themselves, and the swing until the piece has come to rest.
// Without a use: why none was found.
std::vector<PointLoss> lost_points(const StageFacts& facts);

// "without A1, A3 is asked for 1.31 of what breaks it (insert-breakout)"
std::string in_words(const PointLoss& loss);

}  // namespace firstpick::checks
