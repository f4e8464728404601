// The steps of loads and strength, computed again from what they print, for cases that no plan file may have.

#include <cmath>

#include "loads/stage_load.hpp"
#include "strength/evidence_age.hpp"
#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/formula.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

std::size_t recomputed(const Trace& trace) {
  std::size_t formulas = 0;
  for (const Trace::Entry& entry : trace.steps()) {
    CAPTURE(entry.step.words, entry.step.formula);
    CHECK((!entry.step.clause.empty() || !entry.step.sources.empty()));
    if (entry.step.formula.empty()) continue;
    Symbols given;
    for (const Term& term : entry.step.given) given[term.symbol] = term.number;
    CHECK(value_of(entry.step.formula, given) == Approx(entry.step.result.number).epsilon(1e-12));
    ++formulas;
  }
  return formulas;
}

plan::Plan plan_with_everything() {
  plan::Plan plan = culvert_plan();
  plan.piece.stated_weight = 20.0 * kip;
  plan::Attached pallet;
  pallet.what = "pallet";
  pallet.weight = 350.0 * lbf;
  plan.form->attached = {pallet, pallet};
  plan.form->contacts.push_back(plan.form->contacts[0]);
  plan.form->contacts[1].adhesion = 2.0 * kPa;
  plan.cranes[0].hoist_class = "slow";
  plan.cranes[0].hoist_speed = 1.0 * m_per_s;
  return plan;
}

}  // namespace

TEST_CASE("loads: every printed formula gives the printed number") {
  piece::Body body = culvert_body();
  body.contacts.push_back(body.contacts[0]);
  tables::RuleSet rules = hand_made_rules();
  rules.insert_load.value =
      GENERATE(tables::InsertLoad::weight_only, tables::InsertLoad::with_adhesion_and_dynamic);
  rules.crane_load.value = GENERATE(tables::CraneLoad::weight_and_gear, tables::CraneLoad::with_adhesion);
  Trace trace = Trace::recording();
  assessed(loads::stage_load(plan_with_everything(), stage_of(plan::StageKind::strip), body, rules,
                             hand_made_tables(), trace));
  CHECK(recomputed(trace) == 12);
}

TEST_CASE("loads: a stage after the strip, and one with a factor of the plan's own") {
  Trace trace = Trace::recording();
  plan::Stage stage = stage_of(plan::StageKind::yard);
  stage.dynamic_factor = Ratio::from_value(1.25);
  piece::Body body = culvert_body();
  assessed(
      loads::stage_load(plan_with_everything(), stage, body, hand_made_rules(), hand_made_tables(), trace));
  CHECK(recomputed(trace) == 7);
}

TEST_CASE("strength: every printed formula gives the printed number") {
  const double lowest_psi = GENERATE(1900.0, 2550.0, 11000.0);
  CAPTURE(lowest_psi);
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->results = {1.2 * lowest_psi * psi, lowest_psi * psi};
  concrete.evidence->valid_for = 24.0 * hour;
  plan::Stage stage;
  stage.at = plan::Timestamp{tested_second + 3600, false, "lift"};
  Trace trace = Trace::recording();
  const Stress usable =
      assessed(strength::usable_strength(concrete, hand_made_rules(), hand_made_tables(), trace));
  assessed(strength::required_strength(plan::StageKind::strip, concrete, hand_made_rules(), trace));
  assessed(strength::formula_strength(usable, hand_made_rules(), trace));
  assessed(strength::evidence_age(concrete, stage, hand_made_rules(), trace));
  CHECK(recomputed(trace) == 4);
}
