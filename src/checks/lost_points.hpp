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
// survivor that is asked for most of what breaks it. Empty where the stage names no rigging.
//
//   u = n_step (W + W_att) at the survivor / its ultimate resistance
//
// In a turn (but off a table, where it hangs in the end) the piece stays at its angle, and every angle of the sweep
// counts; a hook with one pick left does not hold it. Else the piece hangs free on the others; n_step is the largest of the rule set's factor for the sudden transfer, of the
// dynamic factor of the stage, and of what a pendulum pulls at the lowest point of its swing, let go at theta:
//
//   3 - 2 cos(theta)        theta: from the attitude before to that on what is left
//
// A body on a line of picks pulls less than a point mass, never more. Ultimate: nominal resistance of a headed insert,
// breaking load of sling and hardware, declared load times its factor of a rated insert. Not told: beams and sheaves
// themselves.
// Without a use: why none was found.
std::vector<PointLoss> lost_points(const StageFacts& facts);

// "without A1, A3 is asked for 1.31 of what breaks it (insert-breakout), and the piece swings by 25 deg"
std::string in_words(const PointLoss& loss, UnitSystem units);

}  // namespace firstpick::checks
