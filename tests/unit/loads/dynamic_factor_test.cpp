#include "loads/dynamic_factor.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

Outcome<Ratio> factor_of(const plan::Plan& plan, const plan::Stage& stage, Trace& trace) {
  return loads::dynamic_factor(plan, stage, hand_made_rules(), hand_made_tables(), trace);
}
Outcome<Ratio> factor_of(const plan::Plan& plan, const plan::Stage& stage) {
  Trace trace;
  return factor_of(plan, stage, trace);
}

plan::Plan plan_with_hoist(double speed_m_per_s) {
  plan::Plan plan = culvert_plan();
  plan.cranes[0].hoist_class = "slow";
  plan.cranes[0].hoist_speed = speed_m_per_s * m_per_s;
  return plan;
}

}  // namespace

TEST_CASE("the dynamic factor is the rule set's for the stage") {
  const plan::Plan plan = culvert_plan();
  CHECK(assessed(factor_of(plan, stage_of(plan::StageKind::strip))) == Ratio::from_value(1.3));
  CHECK(assessed(factor_of(plan, stage_of(plan::StageKind::yard))) == Ratio::from_value(1.2));
  CHECK(assessed(factor_of(plan, stage_of(plan::StageKind::haul))) == Ratio::from_value(1.5));
  CHECK(assessed(factor_of(plan, stage_of(plan::StageKind::set))) == Ratio::from_value(1.2));
}

TEST_CASE("a stage that the rule set has no factor for is not assessed") {
  const auto turn = factor_of(culvert_plan(), stage_of(plan::StageKind::turn));
  CHECK(why_not(turn) == "the rule set 'hand-made' has no dynamic factor for the stage 'turn'");
  CHECK(remedy_for(turn) == "write dynamic_factor in [[stage]], in the form \"1.5\"");
}

TEST_CASE("a factor stated by the plan is used as it is, even for a stage without one in the rule set") {
  plan::Stage stage = stage_of(GENERATE(plan::StageKind::strip, plan::StageKind::turn));
  stage.dynamic_factor = Ratio::from_value(1.05);
  Trace trace = Trace::recording();
  CHECK(assessed(factor_of(plan_with_hoist(2.0), stage, trace)) == Ratio::from_value(1.05));
  const Step step = step_named(trace, "phi");
  CHECK(step.words == "dynamic factor stated by the plan, instead of the rule set's");
  CHECK(step.formula.empty());
  CHECK(step.sources.empty());
}

TEST_CASE("a fast hoist raises the factor of the stage, a slow one does not lower it") {
  CHECK(assessed(factor_of(plan_with_hoist(1.0), stage_of(plan::StageKind::strip))).value() == Approx(1.44));
  CHECK(assessed(factor_of(plan_with_hoist(0.1), stage_of(plan::StageKind::strip))).value() == Approx(1.3));
  CHECK(assessed(factor_of(plan_with_hoist(0.0), stage_of(plan::StageKind::strip))).value() == Approx(1.3));
}

TEST_CASE("a hoist of which class or speed is missing changes nothing") {
  plan::Plan plan = plan_with_hoist(1.0);
  if (GENERATE(true, false))
    plan.cranes[0].hoist_class.clear();
  else
    plan.cranes[0].hoist_speed.reset();
  CHECK(assessed(factor_of(plan, stage_of(plan::StageKind::strip))) == Ratio::from_value(1.3));
}

TEST_CASE("a stage without a crane takes the rule set's factor") {
  plan::Stage stage = stage_of(plan::StageKind::strip);
  stage.crane.clear();
  CHECK(assessed(factor_of(plan_with_hoist(1.0), stage)) == Ratio::from_value(1.3));
}

TEST_CASE("the hoist is that of the stage's own crane") {
  plan::Plan plan = plan_with_hoist(1.0);
  plan::Crane other;
  other.id = "yard-1";
  plan.cranes.push_back(other);
  plan::Stage stage = stage_of(plan::StageKind::strip);
  stage.crane = "yard-1";
  CHECK(assessed(factor_of(plan, stage)) == Ratio::from_value(1.3));
}

TEST_CASE("a crane or a hoist class that nobody knows is not assessed") {
  plan::Stage stage = stage_of(plan::StageKind::strip);
  stage.crane = "bay-9";
  CHECK(why_not(factor_of(culvert_plan(), stage)) == "the plan has no crane 'bay-9'");

  plan::Plan plan = plan_with_hoist(1.0);
  plan.cranes[0].hoist_class = "furious";
  const auto factor = factor_of(plan, stage_of(plan::StageKind::strip));
  CHECK(why_not(factor) == "the tables hold no hoist class 'furious'");
  CHECK(remedy_for(factor) == "write hoist_class in [[crane]] as one of: slow");
}

TEST_CASE("the steps of the factor name every table entry that took part") {
  Trace trace = Trace::recording();
  assessed(factor_of(plan_with_hoist(1.0), stage_of(plan::StageKind::strip), trace));
  const Step hoist = step_named(trace, "phi_hoist");
  REQUIRE(hoist.given.size() == 3);
  CHECK(hoist.result.number == Approx(hoist.given[0].number + hoist.given[1].number * hoist.given[2].number));
  CHECK(source_ids(hoist) == std::vector<std::string>{"hand-made.phi_min.slow", "hand-made.beta.slow"});
  const Step factor = step_named(trace, "phi");
  CHECK(factor.formula == "max(phi_stage, phi_hoist)");
  CHECK(factor.given.size() == 2);
  CHECK(source_ids(factor) == std::vector<std::string>{"hand-made.dynamic.strip"});
}

TEST_CASE("a dynamic factor below 1, or that is no number, is not assessed, whoever gives it") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {std::nextafter(1.0, 0.0), 0.0, -1.3, nan, infinite}) {
    CAPTURE(bad);
    plan::Stage stage = stage_of(plan::StageKind::strip);
    stage.dynamic_factor = Ratio{bad};
    CHECK(why_not(factor_of(culvert_plan(), stage)) ==
          "the dynamic factor of the plan is below 1 or not a usable number");
    tables::RuleSet rules = hand_made_rules();
    rules.dynamic_factor.at("strip").value = bad;
    Trace trace;
    CHECK(why_not(loads::dynamic_factor(culvert_plan(), stage_of(plan::StageKind::strip), rules,
                                        hand_made_tables(), trace)) ==
          "the rule set's dynamic factor for the stage 'strip' is below 1 or not a usable number");
  }
  plan::Stage stage = stage_of(plan::StageKind::strip);
  stage.dynamic_factor = Ratio{1.0};
  CHECK(assessed(factor_of(culvert_plan(), stage)).value() == 1.0);
}

TEST_CASE("a hoist speed below zero or of no number is not assessed, nor a class whose factor is below 1") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {-0.001, nan, infinite})
    CHECK(why_not(factor_of(plan_with_hoist(bad), stage_of(plan::StageKind::strip))) ==
          "the hoist speed of crane 'bay-2' is not a usable number");
  tables::Tables tables = hand_made_tables();
  tables.hoists.at("slow").phi_min.value = 0.5;
  Trace trace;
  CHECK(why_not(loads::dynamic_factor(plan_with_hoist(0.1), stage_of(plan::StageKind::strip),
                                      hand_made_rules(), tables, trace)) ==
        "the dynamic factor of hoist class 'slow' is not a usable number");
}

TEST_CASE("the first stage brings the piece out of its form: the larger of its factor and that of strip") {
  plan::Plan plan = culvert_plan();
  for (const auto& [kind, phi] :
       {std::pair{plan::StageKind::yard, 1.3}, std::pair{plan::StageKind::haul, 1.5}}) {
    plan.stages = {stage_of(kind)};
    Trace trace = Trace::recording();
    CHECK(assessed(factor_of(plan, plan.stages.front(), trace)).value() == phi);
    const bool by_strip = kind == plan::StageKind::yard;
    CHECK((step_named(trace, "phi").words.find("that of strip") != std::string::npos) == by_strip);
    CHECK(source_ids(step_named(trace, "phi")) ==
          std::vector<std::string>{by_strip ? "hand-made.dynamic.strip" : "hand-made.dynamic.haul"});
    tables::RuleSet rules = hand_made_rules();
    rules.dynamic_factor.erase("strip");
    CHECK(why_not(loads::dynamic_factor(plan, plan.stages.front(), rules, hand_made_tables(), trace)) ==
          "the rule set 'hand-made' has no dynamic factor for the stage 'strip'");
  }
  plan.form->released = true;  // it was out of its form before
  plan.stages = {stage_of(plan::StageKind::yard)};
  CHECK(assessed(factor_of(plan, plan.stages.front())).value() == 1.2);
}
