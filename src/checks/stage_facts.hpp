// Everything computed for one stage, frozen before anything is judged. Rules read it; nothing writes to it.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "checks/mode_table.hpp"
#include "demands/hanging.hpp"
#include "demands/insert_force.hpp"
#include "loads/stage_load.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "resistances/headed_insert.hpp"
#include "resistances/insert_group.hpp"
#include "resistances/projected_area.hpp"
#include "tables/tables.hpp"

namespace firstpick::checks {

// One way the load may come to the legs: a load set shared in one admissible way.
struct Situation {
  std::string name;                            // "breaking free, legs A1 and A3 only"
  std::vector<demands::LegForce> legs;         // in the rigging's order
  bool some_legs_only = false;                 // a sharing that leaves legs slack: gear that equalises would mend it
};

// The same situation as the inserts feel it: one force for each insert of the plan, zero where no leg pulls.
struct InsertSituation {
  std::string name;
  std::vector<demands::InsertForce> forces;
  bool some_legs_only = false;
};

// What does not change from stage to stage: the inserts as the formulas need them.
struct Anchorage {
  std::vector<Outcome<resistances::HeadedInsert>> headed;  // in the plan's order; not assessed for other kinds
  std::vector<std::vector<std::size_t>> groups;            // indices of inserts whose breakout bodies meet
  std::vector<resistances::EdgeRow> blowout_rows, shear_rows;  // inserts side by side along an edge
  mutable resistances::ProjectedAreas areas;               // memo of clipped areas; same answer every time
};

struct BendingMemo;

struct StageFacts {
  const plan::Plan& plan;
  const plan::Stage& stage;
  const plan::Rigging* rigging = nullptr;      // null: the stage names none
  const plan::Crane* crane = nullptr;
  const piece::Body& body;
  const tables::Tables& tables;
  const tables::RuleSet& rules;
  const Anchorage& anchorage;

  Outcome<loads::StageLoad> load;
  Outcome<demands::HungPiece> hung;                // the rigging as the statics see it, with what the legs carry
  Outcome<demands::Hanging> hanging;               // the piece hanging free, elastic legs
  Outcome<std::vector<InsertSituation>> insert_situations;  // with what the insert factor multiplies
  Outcome<std::vector<Situation>> gear_situations;    // with what legs carry
  Outcome<Stress> usable_strength, required_strength, formula_strength;
  std::shared_ptr<BendingMemo> bending;               // once computed; the same at any strength of the concrete
  ModeTable modes;                                    // of the inserts, empty where the situations are not assessed
  bool in_words = true;  // false: who only asks for results is spared the sentences of headed inserts that fail
};

StageFacts stage_facts(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                       const Anchorage& anchorage, const tables::RuleSet& rules, const tables::Tables& tables,
                       Trace& trace);

Anchorage anchorage(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                    const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::checks
