// Parts of the form that leave with the piece.
#pragma once

#include <vector>

#include "loads/applied_load.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"

namespace firstpick::loads {

struct AttachedParts {
  std::vector<AppliedLoad> loads;  // one for each part, in the plan's order
  Force total{};
};

// Not assessed: a weight that is not positive and finite, a point that is not finite.
Outcome<AttachedParts> attached_parts(const plan::Plan& plan, const piece::Body& body, Trace& trace);

}  // namespace firstpick::loads
