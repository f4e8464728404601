// A bolt through the concrete with a square plate on the far face: what steel, bearing and punching hold, before any factor.
#pragma once

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::resistances {

// A_se min(futa, 1.9 fya, 125 ksi). Not assessed: shank, steel or thread not said.
Outcome<Resistance<Force>> through_bolt_steel(const plan::Insert& insert, const tables::RuleSet& rules,
                                              const tables::Tables& tables, Trace& trace);

// 0.85 f_c A_1 under the plate. Not assessed: head_bearing_area not said.
Outcome<Resistance<Force>> plate_bearing(const plan::Insert& insert, Stress f_c, const tables::PlateModel& model,
                                         Trace& trace);

// 2.66 lambda sqrt(f_c) b_o h around the plate, plain concrete. Not assessed: washer not said, a curved face, an edge
// nearer than the body that punches out.
Outcome<Resistance<Force>> plate_punching(const plan::Insert& insert, const piece::InsertSite& site,
                                          const plan::Concrete& concrete, Stress f_c, const tables::Tables& tables,
                                          Trace& trace);

}  // namespace firstpick::resistances
