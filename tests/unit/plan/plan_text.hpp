// A small whole plan as text, to be changed in one place by each test; and tables whose words do not move.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/read_plan.hpp"

namespace firstpick::tests {

// Rule set "us", concretes normalweight and sand-lightweight, finishes smooth and rough, steels "grade 36"
// and
// "grade 55", slings chain and wire-rope, hoists slow, specimens "cylinder 4x8 in" and "cube 150 mm".
const tables::Tables& plan_words();

// Every section once, two inserts A1 and A2, two legs, stages strip and yard. It has no fault.
const std::string& whole_plan();

// `text` with `from`, which it must hold once, replaced.
std::string with(std::string text, std::string_view from, std::string_view to);

// The plan; a failure that shows the faults if there are any.
plan::Plan plan_of(std::string_view text);

// "9:8 'size' must be more than zero", one for each fault; the help behind " | " if there is any.
std::vector<std::string> faults_of(std::string_view text);

// Line and column at which `found` begins in `text`, as a fault writes them: "9:8".
std::string place_of(std::string_view text, std::string_view found);

}  // namespace firstpick::tests
