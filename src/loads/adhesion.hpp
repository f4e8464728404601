// Grip of the form on the piece.
#pragma once

#include <optional>
#include <vector>

#include "loads/applied_load.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::loads {

struct Adhesion {
  std::vector<AppliedLoad> loads;  // one for each [[form.contact]], in the plan's order
  Force total{};
};

// Nothing once the piece is out of its form (plan/form_state.hpp). `least`: no contact counts with less per area, whatever
// plan and tables say.
// Not assessed, in the stage that brings it out: no [form]; no contact and no `contact = []`; a finish that is missing or
// not in the tables; an adhesion or an area that is not a usable number.
Outcome<Adhesion> adhesion(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                           const tables::Tables& tables, Trace& trace,
                           const std::optional<Sourced<Stress>>& least = {});

}  // namespace firstpick::loads
