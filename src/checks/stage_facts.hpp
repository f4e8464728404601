// Everything computed for one stage, frozen before anything is judged. Rules read it; nothing writes to it.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "checks/mode_table.hpp"
#include "checks/turn_sweep.hpp"
#include "demands/hanging.hpp"
#include "demands/insert_force.hpp"
#include "loads/stage_load.hpp"
#include "loads/wind.hpp"
#include "piece/body.hpp"
#include "piece/insert_wall.hpp"
#include "piece/section.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "resistances/edge_distance.hpp"
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
  bool turning = false;                        // at one angle of a turn, which the name tells
};

// The same situation as the inserts feel it: one force for each insert of the plan, zero where no leg pulls.
struct InsertSituation {
  std::string name;
  std::vector<demands::InsertForce> forces;
  bool some_legs_only = false;
  bool turning = false;
};

// What does not change from stage to stage: the inserts as the formulas need them.
struct Anchorage {
  std::vector<Outcome<resistances::HeadedInsert>> headed;  // in the plan's order; not assessed for other kinds
  std::vector<std::vector<std::size_t>> groups;            // indices of inserts whose breakout bodies meet
  std::vector<resistances::EdgeRow> blowout_rows, shear_rows;  // inserts side by side along an edge
  mutable resistances::ProjectedAreas areas;               // memo of clipped areas; same answer every time
  // What of the solid was measured, kept: the walls of the inserts, in the plan's order, and the piece cut across an axis.
  mutable std::vector<std::optional<Outcome<piece::InsertWall>>> walls;
  mutable std::map<plan::Axis, Outcome<std::vector<piece::Stretch>>> cut_across;
  // Of rated inserts, along the axes of their sites.
  mutable std::vector<std::optional<Outcome<resistances::EdgeDistances>>> edges;
};

struct BendingMemo;
struct SignOffState;

// The bending of each stage of one plan, kept by who judges it at several strengths or times: neither changes it. Never
// for another plan, body or rule set.
class KnownBending {
 public:
  std::shared_ptr<BendingMemo> of_stage(std::size_t stage);

 private:
  std::vector<std::shared_ptr<BendingMemo>> stages_;
};

struct StageFacts {
  const plan::Plan& plan;
  const plan::Stage& stage;
  const plan::Rigging* rigging = nullptr;      // null: the stage names none; in a turn the legs of both hooks
  const plan::Crane* crane = nullptr;
  const piece::Body& body;
  const tables::Tables& tables;
  const tables::RuleSet& rules;
  const Anchorage& anchorage;

  Outcome<loads::StageLoad> load;
  Outcome<demands::HungPiece> hung;                // the rigging as the statics see it, with what the legs carry
  Outcome<demands::Hanging> hanging;               // the piece hanging free, elastic legs
  std::vector<demands::Hanging> without_parts{};   // the same without form parts, where they may be off by now
  Outcome<std::vector<InsertSituation>> insert_situations;  // with what the insert factor multiplies
  Outcome<std::vector<Situation>> gear_situations;    // with what legs carry
  Outcome<Stress> usable_strength, required_strength, formula_strength;
  Outcome<Direction> up_before, up_after;             // the vertical in piece axes, as the stage starts and ends
  std::shared_ptr<const plan::Rigging> joined;        // keeps `rigging` of a turn stage
  std::optional<Outcome<TurnSweep>> turning;          // of a turn stage
  std::optional<Outcome<loads::WindLoad>> wind{};     // where the plan gives its speed
  std::shared_ptr<BendingMemo> bending;               // once computed; the same at any strength of the concrete
  std::vector<Outcome<resistances::HeadedInsert>> as_cracked{};  // the inserts as this stage counts them; empty: as drawn
  bool against_ultimate = false;                      // held against what breaks an insert, without factors
  ModeTable modes;                                    // of the inserts, empty where the situations are not assessed
  bool tells_losses = false;  // the report names what the loss of one point asks of the others, even if it does not decide
  bool in_words = true;  // false: who only asks for results is spared the sentences of headed inserts that fail
  const SignOffState* sign_off = nullptr;  // null: nobody has signed the plan
};

// The situations as the inserts feel them. Not assessed: a leg that would run into the concrete.
Outcome<std::vector<InsertSituation>> on_inserts(const Outcome<std::vector<Situation>>& situations,
                                                 const plan::Plan& plan, const plan::Rigging* rigging,
                                                 const piece::Body& body);

// How the piece hangs under one load set, and every way the set may come to the legs; the elastic one first.
struct Shared {
  demands::HungPiece hung;
  demands::Hanging hanging;
  std::vector<Situation> situations;
};
Outcome<Shared> shared(const plan::Plan& plan, const plan::Rigging* rigging, const loads::LoadSet& set,
                       const tables::RuleSet& rules, const tables::Tables& tables, const Direction& upright);

// `bending`: what is known of it already; null: nothing.
StageFacts stage_facts(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                       const Anchorage& anchorage, const tables::RuleSet& rules, const tables::Tables& tables,
                       Trace& trace, std::shared_ptr<BendingMemo> bending = nullptr);

Anchorage anchorage(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                    const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::checks
