// What acts on the piece in one stage, before anyone asks who carries it.
#pragma once

#include <vector>

#include "loads/applied_load.hpp"
#include "loads/load_sets.hpp"
#include "loads/weight.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::loads {

struct StageLoad {
  Force weight{};           // volume x density x (1 + tolerance) x g, or the stated weight where that is more
  Force attached{};         // form parts that leave with the piece
  Force adhesion{};         // grip of the form; zero where the stage has no form
  Ratio dynamic_factor{};
  Force total{};            // dynamic factor x (weight + attached) + adhesion
  Force floor{};            // least load of a strip, of a rule set that has one; else zero
  std::vector<LoadSet> insert_loads;   // what the insert factor multiplies, by the rule set's choice
  std::vector<LoadSet> gear_loads;     // what legs carry: always with dynamic factor and adhesion
  Force crane_load{};       // weight + attached (+ adhesion by the rule set); rigging and block come on top
};

// Not assessed: density tolerance missing, a strip stage without [form], a finish without adhesion, ...:
// whatever weight, attached_parts, adhesion and dynamic_factor do not assess; a load or its point that is not
// finite.
Outcome<StageLoad> stage_load(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                              const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::loads
