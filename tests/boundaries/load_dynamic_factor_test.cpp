// Edges of the dynamic factor: src/loads/dynamic_factor.cpp.

#include <cmath>
#include <limits>

#include "loads/dynamic_factor.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double nan_number = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();
const double just_below_one = std::nextafter(1.0, 0.0);

Outcome<Ratio> factor_of(const plan::Plan& plan, const plan::Stage& stage, const tables::RuleSet& rules,
                         const tables::Tables& tables) {
  Trace trace;
  return loads::dynamic_factor(plan, stage, rules, tables, trace);
}

plan::Plan plan_with_hoist(double speed_m_per_s) {
  plan::Plan plan = culvert_plan();
  plan.cranes[0].hoist_class = "slow";
  plan.cranes[0].hoist_speed = speed_m_per_s * m_per_s;
  return plan;
}

}  // namespace

TEST_CASE("dynamic factor: stated just below 1, or no number, is not assessed, 1 is used") {
  plan::Stage stage = stage_of(plan::StageKind::strip);
  const double bad = GENERATE(as<double>{}, just_below_one, 0.0, -1.3, nan_number, infinite);
  CAPTURE(bad);
  stage.dynamic_factor = Ratio::from_value(bad);
  CHECK(why_not(factor_of(culvert_plan(), stage, hand_made_rules(), hand_made_tables())) ==
        "the dynamic factor of the plan is below 1 or not a usable number");
  stage.dynamic_factor = Ratio::from_value(1.0);
  CHECK(assessed(factor_of(culvert_plan(), stage, hand_made_rules(), hand_made_tables())) ==
        Ratio::from_value(1.0));
}

TEST_CASE("dynamic factor: the rule set's just below 1, or no number, is not assessed, 1 is used") {
  tables::RuleSet rules = hand_made_rules();
  const plan::Stage stage = stage_of(plan::StageKind::strip);
  const double bad = GENERATE(as<double>{}, just_below_one, 0.0, -1.3, nan_number, infinite);
  CAPTURE(bad);
  rules.dynamic_factor.at("strip").value = Ratio::from_value(bad);
  CHECK(why_not(factor_of(culvert_plan(), stage, rules, hand_made_tables())) ==
        "the rule set's dynamic factor for the stage 'strip' is below 1 or not a usable number");
  rules.dynamic_factor.at("strip").value = Ratio::from_value(1.0);
  CHECK(assessed(factor_of(culvert_plan(), stage, rules, hand_made_tables())) == Ratio::from_value(1.0));
}

TEST_CASE("dynamic factor: a hoist speed below zero, or no number, is not assessed, zero is used") {
  const plan::Stage stage = stage_of(plan::StageKind::strip);
  const double bad = GENERATE(as<double>{}, std::nextafter(0.0, -1.0), -0.1, nan_number, infinite);
  CAPTURE(bad);
  CHECK(why_not(factor_of(plan_with_hoist(bad), stage, hand_made_rules(), hand_made_tables())) ==
        "the hoist speed of crane 'bay-2' is not a usable number");
  CHECK(is_assessed(factor_of(plan_with_hoist(0.0), stage, hand_made_rules(), hand_made_tables())));
}

TEST_CASE("dynamic factor: a hoist class that gives less than 1, or no number, is not assessed") {
  const plan::Stage stage = stage_of(plan::StageKind::strip);
  tables::Tables tables = hand_made_tables();
  const double bad = GENERATE(as<double>{}, just_below_one, nan_number, infinite);
  CAPTURE(bad);
  tables.hoists.at("slow").phi_min.value = Ratio::from_value(bad);
  CHECK(why_not(factor_of(plan_with_hoist(0.0), stage, hand_made_rules(), tables)) ==
        "the dynamic factor of hoist class 'slow' is not a usable number");
}

TEST_CASE("dynamic factor: where hoist and stage give the same, it is that, one step faster raises it") {
  const plan::Stage stage = stage_of(plan::StageKind::strip);
  tables::Tables tables = hand_made_tables();
  tables.hoists.at("slow").phi_min.value = Ratio::from_value(1.3);
  CHECK(assessed(factor_of(plan_with_hoist(0.0), stage, hand_made_rules(), tables)) ==
        Ratio::from_value(1.3));
  CHECK(assessed(factor_of(plan_with_hoist(1e-9), stage, hand_made_rules(), tables)) >
        Ratio::from_value(1.3));
}
