// The same plan with one thing changed, to see what it would need then.
#pragma once

#include <string>
#include <vector>

#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::checks {

struct ChangedPlan {
  std::string words;   // "legs 25 % longer"
  plan::Plan plan;
  bool moves_inserts = false;  // the body must be made again
};

// Longer legs, deeper headed inserts, picks moved towards and away from the middle of the piece. Nothing that the plan does
// not have: no deeper inserts where none is headed.
std::vector<ChangedPlan> changed_plans(const plan::Plan& plan, const piece::Body& body);

}  // namespace firstpick::checks
