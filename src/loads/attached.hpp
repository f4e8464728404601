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
  std::vector<AppliedLoad> loads;  // one for each part, in the plan's order; no force where it is off
  Force total{};
  std::vector<std::size_t> may_be_off;  // indices of those of which nobody said when they are taken off
};

// Not assessed: a weight that is not positive and finite, a point that is not finite.
// Without a stage: all of them.
Outcome<AttachedParts> attached_parts(const plan::Plan& plan, const piece::Body& body, Trace& trace,
                                      const plan::Stage* stage = nullptr);

}  // namespace firstpick::loads
