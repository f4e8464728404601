#include "loads/stage_load.hpp"

#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double W_kN = in(kN, 19776.0 * lbf);   // 19,200 lb and 3 %
const double grip_kN = in(m2, 168.0 * ft2);  // at 1 kPa

plan::Plan plan_with_pallet() {
  plan::Plan plan = culvert_plan();
  plan::Attached pallet;
  pallet.what = "pallet";
  pallet.weight = 2.0 * kN;
  plan.form->attached = {pallet};
  return plan;
}

Outcome<loads::StageLoad> load_in(plan::StageKind kind, const plan::Plan& plan,
                                  const tables::RuleSet& rules) {
  Trace trace;
  return loads::stage_load(plan, stage_of(kind), culvert_body(), rules, hand_made_tables(), trace);
}

}  // namespace

TEST_CASE("the strip stage carries weight, attached parts, adhesion and the dynamic factor") {
  const loads::StageLoad load =
      assessed(load_in(plan::StageKind::strip, plan_with_pallet(), hand_made_rules()));
  CHECK(in(kN, load.weight) == Approx(W_kN));
  CHECK(in(kN, load.attached) == Approx(2.0));
  CHECK(in(kN, load.adhesion) == Approx(grip_kN));
  CHECK(load.dynamic_factor.value() == Approx(1.3));
  CHECK(in(kN, load.total) == Approx(1.3 * (W_kN + 2.0) + grip_kN));
  REQUIRE(load.gear_loads.size() == 2);
  CHECK(in(kN, load.gear_loads[0].total) == Approx(1.3 * (W_kN + 2.0)));
  CHECK(in(kN, load.gear_loads[1].total) == Approx(in(kN, load.total)));
}

TEST_CASE("a later stage has weight, attached parts and dynamic factor, and no grip") {
  const loads::StageLoad load =
      assessed(load_in(plan::StageKind::yard, plan_with_pallet(), hand_made_rules()));
  CHECK(in(kN, load.attached) == Approx(2.0));
  CHECK(load.adhesion == Force{});
  CHECK(in(kN, load.total) == Approx(1.2 * (W_kN + 2.0)));
  REQUIRE(load.gear_loads.size() == 2);  // nobody says when the pallet is taken off
  CHECK(load.gear_loads[0].name == "hanging");
  CHECK(load.gear_loads[1].name == "hanging without form parts");
  CHECK(in(kN, load.gear_loads[0].total - load.gear_loads[1].total) == Approx(load.dynamic_factor.value() * 2.0));
}

TEST_CASE("what the insert factor multiplies follows the rule set, what the gear carries does not") {
  tables::RuleSet rules = hand_made_rules();
  rules.insert_load.value = tables::InsertLoad::weight_only;
  const loads::StageLoad load = assessed(load_in(plan::StageKind::strip, plan_with_pallet(), rules));
  REQUIRE(load.insert_loads.size() == 1);
  CHECK(in(kN, load.insert_loads[0].total) == Approx(W_kN + 2.0));
  REQUIRE(load.gear_loads.size() == 2);
  CHECK(in(kN, load.gear_loads[1].total) == Approx(1.3 * (W_kN + 2.0) + grip_kN));
}

TEST_CASE("the crane carries the weight, and the adhesion where the rule set says so") {
  tables::RuleSet rules = hand_made_rules();
  CHECK(in(kN, assessed(load_in(plan::StageKind::strip, plan_with_pallet(), rules)).crane_load) ==
        Approx(W_kN + 2.0 + grip_kN));
  rules.crane_load.value = tables::CraneLoad::weight_and_gear;
  CHECK(in(kN, assessed(load_in(plan::StageKind::strip, plan_with_pallet(), rules)).crane_load) ==
        Approx(W_kN + 2.0));
}

TEST_CASE("the uniform tolerance of the density leaves the centre of gravity where it is") {
  plan::Plan plan = culvert_plan();
  const double tolerance = GENERATE(0.0, 0.03, 0.5);
  plan.concrete.density_tolerance = Ratio::from_value(tolerance);
  const loads::StageLoad load = assessed(load_in(plan::StageKind::yard, plan, hand_made_rules()));
  CHECK(in(m, load.gear_loads.at(0).loads.at(0).at.x) == in(m, culvert_body().centroid.x));
  CHECK(in(m, load.gear_loads.at(0).loads.at(0).at.y) == in(m, culvert_body().centroid.y));
  CHECK(in(m, load.gear_loads.at(0).loads.at(0).at.z) == in(m, culvert_body().centroid.z));
}

TEST_CASE("whatever one of the loads does not assess, the stage does not assess") {
  plan::Plan no_tolerance = culvert_plan();
  no_tolerance.concrete.density_tolerance.reset();
  CHECK(why_not(load_in(plan::StageKind::strip, no_tolerance, hand_made_rules())) ==
        "the density has no tolerance, so the weight has no upper bound");

  plan::Plan weightless_pallet = plan_with_pallet();
  weightless_pallet.form->attached[0].weight = Force{};
  CHECK(why_not(load_in(plan::StageKind::strip, weightless_pallet, hand_made_rules())) ==
        "the weight of attached part 'pallet' is not a usable number");

  plan::Plan no_form = culvert_plan();
  no_form.form.reset();
  CHECK(why_not(load_in(plan::StageKind::strip, no_form, hand_made_rules())) ==
        "the plan does not say what grips the piece in its form");

  CHECK(why_not(load_in(plan::StageKind::store, culvert_plan(), hand_made_rules())) ==
        "the rule set 'hand-made' has no dynamic factor for the stage 'store'");
}

TEST_CASE("a load that acts at no point is not assessed, whichever loads the insert factor multiplies") {
  const Length nowhere = std::numeric_limits<double>::quiet_NaN() * m;
  tables::RuleSet rules = hand_made_rules();
  rules.insert_load.value =
      GENERATE(tables::InsertLoad::weight_only, tables::InsertLoad::with_adhesion_and_dynamic);
  piece::Body body = culvert_body();
  if (GENERATE(true, false))
    body.centroid.y = nowhere;
  else
    body.contacts[0].centroid.x = nowhere;
  Trace trace;
  CHECK(why_not(loads::stage_load(culvert_plan(), stage_of(plan::StageKind::strip), body, rules,
                                  hand_made_tables(), trace)) ==
        "a load or its point of application is not a usable number");
}

TEST_CASE("a sum of loads that overflows is not assessed") {
  plan::Plan plan = culvert_plan();
  plan.piece.stated_weight = Force::from_value(1e308);
  Trace trace;
  plan::Stage stage = stage_of(plan::StageKind::strip);
  stage.dynamic_factor = Ratio::from_value(10.0);
  CHECK(why_not(loads::stage_load(plan, stage, culvert_body(), hand_made_rules(), hand_made_tables(),
                                  trace)) == "a load or its point of application is not a usable number");
}

TEST_CASE("the steps of the stage name the choices of the rule set") {
  tables::RuleSet rules = hand_made_rules();
  rules.insert_load.value = tables::InsertLoad::weight_only;
  Trace trace = Trace::recording();
  assessed(loads::stage_load(plan_with_pallet(), stage_of(plan::StageKind::strip), culvert_body(), rules,
                             hand_made_tables(), trace));
  const Step total = step_named(trace, "F");
  CHECK(total.formula == "phi * (W + W_att) + F_adh");
  CHECK(total.result.number == Approx(1.3 * (W_kN + 2.0) + grip_kN));
  CHECK(total.given.size() == 4);
  CHECK(step_named(trace, "F_ins").formula == "W + W_att");
  CHECK(source_ids(step_named(trace, "F_ins")) == std::vector<std::string>{"hand-made.insert_load"});
  CHECK(step_named(trace, "F_crane").formula == "W + W_att + F_adh");
  CHECK(source_ids(step_named(trace, "F_crane")) == std::vector<std::string>{"hand-made.crane_load"});
}

TEST_CASE("a slab pulled from its form: 75, 87.5 and 100 kN at 1, 2 and 3 kPa") {
  // Computed by us: a slab of 5.0 x 2.5 x 0.20 m at 25 kN/m3, 62.5 kN, on 12.5 m2 of form. No outside check.
  plan::Plan plan = culvert_plan();
  plan.concrete.density = 25000.0 / standard_gravity_m_per_s2 * kg_per_m3;
  plan.concrete.density_tolerance = Ratio{};
  const double adhesion_kPa = GENERATE(1.0, 2.0, 3.0);
  plan.form->contacts[0].adhesion = adhesion_kPa * kPa;
  piece::Body body = culvert_body();
  body.volume = 2.5 * m3;
  body.contacts[0].area = 12.5 * m2;
  plan::Stage stage = stage_of(plan::StageKind::strip);
  stage.dynamic_factor = Ratio::from_value(1.0);
  Trace trace;
  const auto load =
      assessed(loads::stage_load(plan, stage, body, hand_made_rules(), hand_made_tables(), trace));
  CHECK(in(kN, load.total) == Approx(62.5 + 12.5 * adhesion_kPa).epsilon(1e-12));
}

TEST_CASE("a load at no point in any one direction, or of no size, is not assessed") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {nan, infinite, -infinite})
    for (Length Position::*const axis : {&Position::x, &Position::y, &Position::z}) {
      CAPTURE(bad);
      piece::Body body = culvert_body();
      body.centroid.*axis = bad * m;
      Trace trace;
      CHECK(why_not(loads::stage_load(culvert_plan(), stage_of(plan::StageKind::yard), body,
                                      hand_made_rules(), hand_made_tables(), trace)) ==
            "a load or its point of application is not a usable number");
      body = culvert_body();
      body.contacts[0].centroid.*axis = bad * m;
      CHECK(why_not(loads::stage_load(culvert_plan(), stage_of(plan::StageKind::strip), body,
                                      hand_made_rules(), hand_made_tables(), trace)) ==
            "a load or its point of application is not a usable number");
    }
}

TEST_CASE(
    "with load factors: 1.15 on the weights with dynamic factor, 1.5 on the grip, and the step says so") {
  tables::RuleSet rules = hand_made_rules();
  rules.load_factors = tables::LoadFactors{made_ratio("gamma_G", 1.15), made_ratio("gamma_adh", 1.5)};
  const auto of = [&](plan::StageKind kind, Trace& trace) {
    return assessed(loads::stage_load(plan_with_pallet(), stage_of(kind), culvert_body(), rules,
                                      hand_made_tables(), trace));
  };
  Trace strip = Trace::recording();
  const loads::StageLoad load = of(plan::StageKind::strip, strip);
  const double factored_kN = 1.15 * 1.3 * (W_kN + 2.0) + 1.5 * grip_kN;
  REQUIRE(load.insert_loads.size() == 2);
  CHECK(load.insert_loads[1].name == "breaking free with load factors");
  CHECK(in(kN, load.insert_loads[1].total) == Approx(factored_kN));
  CHECK(in(kN, load.gear_loads[1].total) == Approx(1.3 * (W_kN + 2.0) + grip_kN));  // legs: without
  const Step step = step_named(strip, "F_ins");
  CHECK(step.formula == "gamma_G * phi * (W + W_att) + gamma_adh * F_adh");
  CHECK(step.result.number == Approx(factored_kN));
  CHECK(step.given.size() == 6);
  CHECK(source_ids(step) ==
        std::vector<std::string>{"hand-made.insert_load", "hand-made.gamma_G", "hand-made.gamma_adh"});

  Trace yard = Trace::recording();  // nothing grips: the first set
  CHECK(in(kN, of(plan::StageKind::yard, yard).insert_loads[0].total) == Approx(1.15 * 1.2 * (W_kN + 2.0)));
  CHECK(step_named(yard, "F_ins").result.number == Approx(1.15 * 1.2 * (W_kN + 2.0)));

  rules.insert_load.value = tables::InsertLoad::weight_only;
  Trace at_rest = Trace::recording();
  CHECK(in(kN, of(plan::StageKind::strip, at_rest).insert_loads[0].total) == Approx(1.15 * (W_kN + 2.0)));
  const Step rest = step_named(at_rest, "F_ins");
  CHECK(rest.formula == "gamma_G * (W + W_att)");
  CHECK(rest.words == "load on headed inserts: a factor on the weights, no dynamic factor, no adhesion");
  CHECK(rest.result.number == Approx(1.15 * (W_kN + 2.0)));
  CHECK(rest.given.size() == 3);
}

TEST_CASE("a least load of the strip is a set of its own where the piece leaves its form, and nowhere else") {
  tables::RuleSet rules = hand_made_rules();
  rules.load_floor = made_ratio("load_floor", 2.5);
  Trace trace = Trace::recording();
  const auto strip = assessed(loads::stage_load(plan_with_pallet(), stage_of(plan::StageKind::strip),
                                                culvert_body(), rules, hand_made_tables(), trace));
  CHECK(in(kN, strip.floor) == Approx(2.5 * (W_kN + 2.0)));
  CHECK(strip.gear_loads.back().name == "least load");
  CHECK(in(kN, strip.gear_loads.back().total) == Approx(2.5 * (W_kN + 2.0)));
  CHECK(step_named(trace, "F_floor").result.number == Approx(2.5 * (W_kN + 2.0)));
  CHECK(step_named(trace, "F_ins").formula == "phi * (W + W_att) + F_adh");
  CHECK(step_named(trace, "F_ins").words ==
        "load that the insert factor multiplies: with dynamic factor and adhesion");
  Trace later = Trace::recording();
  const auto yard = assessed(loads::stage_load(plan_with_pallet(), stage_of(plan::StageKind::yard),
                                               culvert_body(), rules, hand_made_tables(), later));
  CHECK(yard.floor == Force{});
  CHECK_FALSE(has_step(later, "F_floor"));
  for (const loads::LoadSet& set : yard.gear_loads) CHECK(set.name != "least load");
}

TEST_CASE("the step of the crane load shows the grip only where the rule set counts it") {
  tables::RuleSet rules = hand_made_rules();
  for (const bool with_grip : {true, false}) {
    rules.crane_load.value =
        with_grip ? tables::CraneLoad::with_adhesion : tables::CraneLoad::weight_and_gear;
    Trace trace = Trace::recording();
    assessed(loads::stage_load(plan_with_pallet(), stage_of(plan::StageKind::strip), culvert_body(), rules,
                               hand_made_tables(), trace));
    const Step step = step_named(trace, "F_crane");
    CHECK(step.formula == (with_grip ? "W + W_att + F_adh" : "W + W_att"));
    CHECK(step.given.size() == (with_grip ? 3U : 2U));
    CHECK(step.result.number == Approx(W_kN + 2.0 + (with_grip ? grip_kN : 0.0)));
  }
}
