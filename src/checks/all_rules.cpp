// The explicit, ordered list of every rule. A rule that is not here does not exist; the coverage guard
// (checks/verdict.cpp) compares this list and the rule set's mandatory list with the findings actually given.

#include <algorithm>
#include <array>
#include <unordered_map>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view declared_inserts = "29 CFR 1926.704(c); DGUV Regel 101-001 4.4.1";

const std::array rules{
    Rule{"stage-evaluated", "a stage that this version cannot evaluate passes unseen", "firstpick",
         Scope::piece, stage_evaluated},
    Rule{"engineer-named", "nobody owns the design of the lift", "plan practice", Scope::piece, engineer_named},
    Rule{"changed-since-sign-off", "the plan, the tables or the program are not those that the engineer signed",
         "plan practice", Scope::piece, changed_since_sign_off},
    Rule{"stated-weight", "the piece weighs more than the drawing says", "29 CFR 1910.180(h)(1)", Scope::piece,
         stated_weight},
    Rule{"attached-parts", "form parts leave with the piece and nobody counted them, or they fall as they are freed",
         "AS 3850.3:2021 2.5.2", Scope::piece, attached_parts},
    Rule{"strength-evidence", "the piece is lifted on a strength that nobody measured", "rule set", Scope::piece,
         strength_evidence},
    Rule{"evidence-age", "the test belongs to another time than the lift", "rule set", Scope::piece, evidence_age},
    Rule{"strength-below-required", "the concrete is weaker than the drawing requires for this stage", "rule set",
         Scope::piece, strength_below_required},
    Rule{"rigging-statics", "the piece does not hang as drawn, or not stably", "statics", Scope::rigging,
         rigging_statics},
    Rule{"hanging-tilt", "the piece hangs far out of level, or rolls over on free sheaves", "rule set", Scope::rigging,
         hanging_tilt},
    Rule{"pick-count", "a flat piece rolls over on one or two picks", "accident reports", Scope::rigging, pick_count},
    Rule{"leg-skew", "four legs share worse than this rule set takes them to", "0027/ND 5.6.12", Scope::rigging, leg_skew},
    Rule{"point-loss", "one point lets go and the others follow", "accident reports", Scope::rigging, point_loss},
    Rule{"leg-clearance", "a leg or the hook would have to go through the concrete", "geometry", Scope::rigging,
         leg_clearance},
    Rule{"hook-plumb", "two cranes pull each other aside", "statics", Scope::rigging, hook_plumb},
    Rule{"roll-stability", "the piece rolls over under a hand on a tag line", "statics", Scope::rigging,
         roll_stability},
    Rule{"picks-too-low", "the piece turns over, for it is held at or below its centre of gravity", "statics",
         Scope::rigging, picks_too_low},
    Rule{"teeter", "the piece teeters on picks too near each other", "statics", Scope::rigging, teeter},
    Rule{"turn-procedure", "a piece is turned without a written procedure", "BC OHS Regulation 14.42.1", Scope::piece,
         turn_procedure},
    Rule{"turn-slip", "the edge about which the piece turns slides away", "statics", Scope::piece, turn_slip},
    Rule{"turn-runaway", "the piece falls over its edge by itself", "statics", Scope::piece, turn_runaway},
    Rule{"turn-release", "the piece swings as it comes free of a tilting table", "statics", Scope::piece, turn_release},
    Rule{"piece-cracking", "the piece itself cracks in bending while it hangs",
         "ACI 318-25 19.2.3.1; EN 1992-1-1 3.1.8", Scope::piece, piece_cracking},
    Rule{"piece-shear", "the piece itself breaks in shear while it hangs", "ACI 318-19 14.5.5.1; EN 1992-1-1 12.6.3",
         Scope::piece, piece_shear},
    Rule{"insert-wall-bending", "an insert cracks the wall or slab that it pulls across",
         "ACI 318-25 19.2.3.1; EN 1992-1-1 3.1.8", Scope::insert, insert_wall_bending},
    Rule{"crane-overload", "the hook load exceeds the crane's rating", "29 CFR 1926.1417", Scope::crane,
         crane_overload},
    Rule{"beam-overload", "a lifting beam carries more than its plate says", "29 CFR 1926.251(a)(4)", Scope::beam,
         beam_overload},
    Rule{"sheave-overload", "a sheave pulls more than its plate says", "statics", Scope::sheave, sheave_overload},
    Rule{"crane-thresholds", "a lift close to the crane's rating is made without a written plan",
         "USACE EM 385-1-1, BC OHSR 14.1", Scope::crane, crane_thresholds},
    Rule{"critical-lift", "a piece is turned without a written plan", "BC OHSR 14.1", Scope::piece, critical_lift},
    Rule{"sling-overload", "a leg carries more than its tag says", "29 CFR 1926.251(a)(2)", Scope::leg,
         sling_overload},
    Rule{"sling-angle", "a leg lies flatter than its limit", "ASME B30.9; E4 M 01 82", Scope::leg, sling_angle},
    Rule{"hardware-factor", "lifting hardware without the factor the regulation demands",
         "29 CFR 1926.704(d); 2006/42/EC annex I", Scope::leg, hardware_factor},
    Rule{"hardware-overload", "a clutch, hook or shackle carries more than is marked on it",
         "29 CFR 1926.704(d); 2006/42/EC annex I", Scope::leg, hardware_overload},
    Rule{"clutch-mismatch", "a clutch of another size slips off the insert", "accident reports", Scope::leg,
         clutch_mismatch},
    Rule{"gear-inspection", "gear breaks at a crack that nobody has looked for",
         "Ontario Reg. 851 s. 51(1)(b); LOLER 1998 reg. 9(3)", Scope::gear, gear_inspection},
    Rule{"hook-latch", "a slack hook turns out of its loop", "Quebec S-2.1 r.13 s. 255", Scope::piece, hook_latch},
    Rule{"exclusion-zone", "somebody is under the piece", "29 CFR 1926.704(e)", Scope::piece, exclusion_zone},
    Rule{"tag-line", "the piece turns and hits somebody", "Ontario O.Reg 213/91 s. 179(1)", Scope::piece, tag_line},
    Rule{"signaller", "the operator is told two things, or nothing", "BC OHSR 14.42.1", Scope::piece, signaller},
    Rule{"insert-kind", "an insert that no rule here can evaluate passes unseen", "firstpick", Scope::insert,
         insert_kind},
    Rule{"bent-bar-eye", "an eye of bent reinforcing bar breaks", "accident reports", Scope::insert, bent_bar_eye},
    Rule{"connection-loop", "a loop made to connect pieces is lifted by", "drawings of road authorities", Scope::insert,
         connection_loop},
    Rule{"edge-insert-hanger-bar", "shear breaks a narrow edge open around its insert", "ACI 318-19 17.6.2",
         Scope::insert, edge_insert_hanger_bar},
    Rule{"insert-position", "an insert is not where it was drawn", "inspection record", Scope::insert,
         insert_position},
    Rule{"insert-certificate", "an insert of unknown make or batch breaks", "supplier's certificate", Scope::insert,
         insert_certificate},
    Rule{"insert-embedment", "the head of an insert lies outside the concrete", "geometry", Scope::headed_insert,
         insert_embedment},
    Rule{"insert-steel-tension", "the steel of an insert breaks",
         "ACI 318-19 17.6.1; EN 1992-4 7.2.1.3", Scope::headed_insert, insert_steel_tension},
    Rule{"insert-breakout", "a cone of concrete breaks out with the insert",
         "ACI 318-19 17.6.2; EN 1992-4 7.2.1.4", Scope::headed_insert, insert_breakout},
    Rule{"insert-pullout", "the head of an insert pulls through the concrete",
         "ACI 318-19 17.6.3; EN 1992-4 7.2.1.5", Scope::headed_insert, insert_pullout},
    Rule{"insert-side-blowout", "the concrete beside a deep head near an edge blows out",
         "ACI 318-19 17.6.4; EN 1992-4 7.2.1.8", Scope::headed_insert, insert_side_blowout},
    Rule{"insert-steel-shear", "the steel of an insert shears off",
         "ACI 318-19 17.7.1; EN 1992-4 7.2.2.3", Scope::headed_insert, insert_steel_shear},
    Rule{"insert-edge-breakout", "shear breaks the edge of the concrete off",
         "ACI 318-19 17.7.2; EN 1992-4 7.2.2.5", Scope::headed_insert, insert_edge_breakout},
    Rule{"insert-pryout", "shear pries the insert out backwards",
         "ACI 318-19 17.7.3; EN 1992-4 7.2.2.4", Scope::headed_insert, insert_pryout},
    Rule{"insert-interaction", "tension and shear together exceed what each alone would allow",
         "ACI 318-19 17.8; EN 1992-4 table 7.3", Scope::headed_insert, insert_interaction},
    Rule{"insert-rating", "an insert carries more than its supplier declares", declared_inserts, Scope::rated_insert,
         insert_rating},
    Rule{"insert-edge-distance", "an insert breaks out at an edge nearer than its supplier declares for",
         "WorkSafe WA Safety Alert 10/2012", Scope::rated_insert, insert_edge_distance},
    Rule{"insert-spacing", "inserts stand nearer to each other than their supplier declares for", "DGUV Regel 101-001 4.2.1",
         Scope::rated_insert, insert_spacing},
    Rule{"insert-angle", "an insert is pulled further aside than its supplier allows", "supplier's declaration",
         Scope::rated_insert, insert_angle},
    Rule{"loop-depth", "a loop ends outside the concrete, or in a member too shallow for what was tested", "geometry",
         Scope::loop_insert, loop_depth},
    Rule{"loop-bond", "a leg of a loop slips out of the concrete", "tests of loops, BS 8110-1 3.12.8.4",
         Scope::loop_insert, loop_bond},
    Rule{"loop-steel", "a leg of a loop breaks", "ACI 318-19 17.6.1", Scope::loop_insert, loop_steel},
    Rule{"loop-breakout", "a cone of concrete breaks out with a loop of bar", "ACI 318-19 17.6.2", Scope::loop_insert,
         loop_breakout},
    Rule{"loop-bend", "a loop is bent more sharply than its material stands", "ACI 318-19 table 25.3.1, tests of loops",
         Scope::loop_insert, loop_bend},
    Rule{"loop-angle", "a loop is pulled further aside than is accepted for loops", "CEN/TR 15728", Scope::loop_insert,
         loop_angle},
    Rule{"loop-edge", "the concrete beside a loop near an edge blows out", "tests of loops", Scope::loop_insert, loop_edge},
    Rule{"plate-steel", "the bolt through the concrete breaks", "ACI 318-19 17.6.1", Scope::plate_insert, plate_steel},
    Rule{"plate-bearing", "the concrete under the plate on the far face is crushed", "ACI 318-19 22.8.3",
         Scope::plate_insert, plate_bearing},
    Rule{"plate-punching", "the plate on the far face punches through", "ACI 318-19 14.5.5.1", Scope::plate_insert,
         plate_punching},
    Rule{"thread-engagement", "a screw-in part strips its thread", "DGUV Regel 101-001 4.5.4", Scope::insert,
         thread_engagement},
    Rule{"landing-stability", "the piece tips over once it is set down", "statics", Scope::piece, landing_stability},
    Rule{"landing-bearers", "nobody knows what each bearer carries", "statics", Scope::piece, landing_bearers},
    Rule{"haul-restraint", "the piece goes over on the vehicle", "accident reports", Scope::piece, haul_restraint},
    Rule{"wind-side-load", "a gust takes the piece off plumb", "statics", Scope::piece, wind_side_load},
    Rule{"scale-reading", "the crane's scale shows another weight than was computed, or more than was checked for",
         "common practice", Scope::piece, scale_reading},
};

}  // namespace

std::span<const Rule> all_rules() { return rules; }

const Rule* rule_named(std::string_view id) {
  static const auto by_id = [] {
    std::unordered_map<std::string_view, const Rule*> made;
    for (const Rule& rule : rules) made.emplace(rule.id, &rule);
    return made;
  }();
  const auto found = by_id.find(id);
  return found == by_id.end() ? nullptr : found->second;
}

}  // namespace firstpick::checks
