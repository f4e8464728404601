// The explicit, ordered list of every rule. A rule that is not here does not exist; the coverage guard
// (checks/verdict.cpp) compares this list and the rule set's mandatory list with the findings actually given.

#include <algorithm>
#include <array>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view osha_inserts = "29 CFR 1926.704(c)";

const std::array rules{
    Rule{"stage-evaluated", "a stage that this version cannot evaluate passes unseen", "firstpick",
         Scope::piece, stage_evaluated},
    Rule{"engineer-named", "nobody owns the design of the lift", "plan practice", Scope::piece, engineer_named},
    Rule{"stated-weight", "the piece weighs more than the drawing says", "29 CFR 1910.180(h)(1)", Scope::piece,
         stated_weight},
    Rule{"strength-evidence", "the piece is lifted on a strength that nobody measured", "rule set", Scope::piece,
         strength_evidence},
    Rule{"evidence-age", "the test belongs to another time than the lift", "rule set", Scope::piece, evidence_age},
    Rule{"strength-below-required", "the concrete is weaker than the drawing requires for this stage", "rule set",
         Scope::piece, strength_below_required},
    Rule{"rigging-statics", "the piece does not hang as drawn, or not stably", "statics", Scope::rigging,
         rigging_statics},
    Rule{"hanging-tilt", "the piece hangs far out of level, or rolls over on free sheaves", "rule set", Scope::rigging,
         hanging_tilt},
    Rule{"piece-cracking", "the piece itself cracks in bending while it hangs", "ACI 318-25 19.2.3.1", Scope::piece,
         piece_cracking},
    Rule{"crane-overload", "the hook load exceeds the crane's rating", "29 CFR 1926.1417", Scope::crane,
         crane_overload},
    Rule{"sling-overload", "a leg carries more than its tag says", "29 CFR 1926.251(a)(2)", Scope::leg,
         sling_overload},
    Rule{"sling-angle", "a leg lies flatter than its limit", "ASME B30.9", Scope::leg, sling_angle},
    Rule{"hardware-factor", "lifting hardware without the factor the regulation demands", "29 CFR 1926.704(d)",
         Scope::leg, hardware_factor},
    Rule{"insert-kind", "an insert that no rule here can evaluate passes unseen", "firstpick", Scope::insert,
         insert_kind},
    Rule{"insert-position", "an insert is not where it was drawn", "inspection record", Scope::insert,
         insert_position},
    Rule{"insert-certificate", "an insert of unknown make or batch breaks", "supplier's certificate", Scope::insert,
         insert_certificate},
    Rule{"insert-embedment", "the head of an insert lies outside the concrete", "geometry", Scope::headed_insert,
         insert_embedment},
    Rule{"insert-steel-tension", "the steel of an insert breaks", "ACI 318-19 17.6.1", Scope::headed_insert,
         insert_steel_tension},
    Rule{"insert-breakout", "a cone of concrete breaks out with the insert", "ACI 318-19 17.6.2",
         Scope::headed_insert, insert_breakout},
    Rule{"insert-pullout", "the head of an insert pulls through the concrete", "ACI 318-19 17.6.3",
         Scope::headed_insert, insert_pullout},
    Rule{"insert-side-blowout", "the concrete beside a deep head near an edge blows out", "ACI 318-19 17.6.4",
         Scope::headed_insert, insert_side_blowout},
    Rule{"insert-steel-shear", "the steel of an insert shears off", "ACI 318-19 17.7.1", Scope::headed_insert,
         insert_steel_shear},
    Rule{"insert-edge-breakout", "shear breaks the edge of the concrete off", "ACI 318-19 17.7.2",
         Scope::headed_insert, insert_edge_breakout},
    Rule{"insert-pryout", "shear pries the insert out backwards", "ACI 318-19 17.7.3", Scope::headed_insert,
         insert_pryout},
    Rule{"insert-interaction", "tension and shear together exceed what each alone would allow", "ACI 318-19 17.8",
         Scope::headed_insert, insert_interaction},
    Rule{"insert-rating", "an insert carries more than its supplier declares", osha_inserts, Scope::rated_insert,
         insert_rating},
};

}  // namespace

std::span<const Rule> all_rules() { return rules; }

const Rule* rule_named(std::string_view id) {
  const auto found = std::ranges::find(rules, id, &Rule::id);
  return found == rules.end() ? nullptr : &*found;
}

}  // namespace firstpick::checks
