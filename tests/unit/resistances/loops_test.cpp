// What a leg of a loop holds, the share of the pull in it, and through-bolts: against arithmetic of the test, at each limit and
// one step beside it, and without each thing they need.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "resistances/loop_leg.hpp"
#include "resistances/loop_strands.hpp"
#include "resistances/through_bolt.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using resistances::LoopGrip;

namespace {

template <class T>
Sourced<T> some(T value) {
  return {value, Source{}};
}

tables::LoopModel model() {
  return {.strand_bond = {some(Stress{2.0 * MPa}), some(Stress{1.0 * MPa}), some(Stress{3.0 * MPa})},
          .bond_factor = some(Ratio{4.0}),
          .bond_strength = some(Stress{20.0 * MPa}),
          .strand_diameter = some(Length{16.0 * mm}),
          .strands = {{2, some(Ratio{1.8})}, {3, some(Ratio{2.5})}},
          .offset_factor = some(Ratio{0.6}),
          .offset_tested = some(Length{25.0 * mm}),
          .hook_factor = some(Ratio{0.9}),
          .pin_tested = some(Length{60.0 * mm}),
          .member_depth = some(Length{600.0 * mm}),
          .bar_bond = {some(RootStress::from_value(400.0)), some(RootStress::from_value(300.0))},  // 0.4, 0.3 MPa^0.5
          .bar_bend = some(Ratio{3.0}),
          .maximum_angle = {some(Angle{45.0 * deg}), some(Angle{30.0 * deg})}};
}

plan::Insert strand() {
  plan::Insert insert;
  insert.id = "L1";
  insert.kind = "loop-strand";
  insert.loop = plan::Loop{};
  insert.loop->diameter = 15.0 * mm;
  insert.loop->strands = 1;
  insert.loop->leg_length = 800.0 * mm;
  insert.loop->breaking_load = 260.0 * kN;
  return insert;
}

plan::Insert bar() {
  plan::Insert insert = strand();
  insert.kind = "loop-bar";
  insert.loop->strands.reset();
  return insert;
}

resistances::LoopFacts facts(double f_MPa, LoopGrip grip = LoopGrip::pin, bool documented = false) {
  return {f_MPa * MPa, f_MPa * MPa, grip, documented};
}

Outcome<Resistance<Force>> bond(const plan::Insert& insert, const resistances::LoopFacts& known) {
  Trace trace;
  return resistances::loop_leg_bond(insert, known, model(), trace);
}
double bond_kN(const plan::Insert& insert, const resistances::LoopFacts& known) {
  const auto found = bond(insert, known);
  if (const auto* gap = std::get_if<NotAssessed>(&found)) FAIL(gap->why);
  return in(kN, std::get<Resistance<Force>>(found).value);
}

const double one_kN = 4.0 * 1.0 * M_PI * 15.0 * 800.0 / 1000.0;  // factor, lowest safe bond, surface
constexpr double bad_numbers[] = {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()};

}  // namespace

TEST_CASE("bond of strand: the lowest safe bond, in proportion below the strength of the tests, no more above") {
  CHECK(bond_kN(strand(), facts(20.0)) == Approx(one_kN).epsilon(1e-12));
  CHECK(bond_kN(strand(), facts(40.0)) == bond_kN(strand(), facts(20.0)));
  CHECK(bond_kN(strand(), facts(10.0)) == Approx(0.5 * one_kN).epsilon(1e-12));
  CHECK(bond_kN(strand(), facts(std::nextafter(20.0, 0.0))) <= bond_kN(strand(), facts(20.0)));
}

TEST_CASE("bond of strand: number, offset and hook multiply, what was not tested is not assessed") {
  plan::Insert insert = strand();
  insert.loop->strands = 2;
  CHECK_FALSE(is_assessed(bond(insert, facts(20.0))));  // nobody says that they lie level
  insert.loop->offset = 0.0 * mm;
  CHECK(bond_kN(insert, facts(20.0)) == Approx(1.8 * one_kN).epsilon(1e-12));
  CHECK(bond_kN(insert, facts(20.0, LoopGrip::hook)) == Approx(1.8 * 0.9 * one_kN).epsilon(1e-12));
  insert.loop->offset = 25.0 * mm;
  CHECK(bond_kN(insert, facts(20.0)) == Approx(1.8 * 0.6 * one_kN).epsilon(1e-12));
  insert.loop->offset = 25.001 * mm;
  CHECK_FALSE(is_assessed(bond(insert, facts(20.0))));
  insert.loop->offset = 0.0 * mm;
  insert.loop->strands = 4;
  CHECK_FALSE(is_assessed(bond(insert, facts(20.0))));
  insert = strand();
  insert.loop->diameter = 16.0 * mm;
  CHECK(is_assessed(bond(insert, facts(20.0))));
  insert.loop->diameter = 16.001 * mm;
  CHECK_FALSE(is_assessed(bond(insert, facts(20.0))));
}

TEST_CASE("bond of strand: the engineer's own only with his document") {
  plan::Insert insert = strand();
  insert.loop->bond = 1.5 * MPa;
  CHECK_FALSE(is_assessed(bond(insert, facts(20.0))));
  CHECK(bond_kN(insert, facts(20.0, LoopGrip::pin, true)) == Approx(1.5 * one_kN).epsilon(1e-12));
}

TEST_CASE("bond of bar: the lowest coefficient, root of the strength for the formulas, wire rope has none") {
  CHECK(bond_kN(bar(), facts(25.0)) == Approx(0.3 * 5.0 * M_PI * 15.0 * 800.0 / 1000.0).epsilon(1e-12));
  resistances::LoopFacts floored = facts(10.0);
  floored.formula = 4.0 * MPa;
  CHECK(bond_kN(bar(), floored) == Approx(0.3 * 2.0 * M_PI * 15.0 * 800.0 / 1000.0).epsilon(1e-12));
  plan::Insert insert = bar();
  insert.loop->strands = 2;
  CHECK_FALSE(is_assessed(bond(insert, facts(25.0))));
  insert = bar();
  insert.loop->bond = 1.0 * MPa;
  CHECK_FALSE(is_assessed(bond(insert, facts(25.0, LoopGrip::pin, true))));
  insert = strand();
  insert.kind = "loop-rope";
  CHECK_FALSE(is_assessed(bond(insert, facts(25.0))));
}

TEST_CASE("loops: without a value, or with none above zero, nothing is assessed") {
  for (plan::Insert insert : {strand(), bar()}) {
    plan::Insert less = insert;
    less.loop->diameter.reset();
    CHECK_FALSE(is_assessed(bond(less, facts(20.0))));
    less = insert;
    less.loop->leg_length.reset();
    CHECK_FALSE(is_assessed(bond(less, facts(20.0))));
    less = insert;
    less.loop.reset();
    CHECK_FALSE(is_assessed(bond(less, facts(20.0))));
    for (const double bad : bad_numbers) {
      CAPTURE(insert.kind, bad);
      CHECK_FALSE(is_assessed(bond(insert, facts(bad))));
      less = insert;
      less.loop->diameter = bad * mm;
      CHECK_FALSE(is_assessed(bond(less, facts(20.0))));
      less = insert;
      less.loop->leg_length = bad * mm;
      CHECK_FALSE(is_assessed(bond(less, facts(20.0))));
    }
  }
  plan::Insert insert = strand();
  insert.loop->strands.reset();
  CHECK_FALSE(is_assessed(bond(insert, facts(20.0))));
}

TEST_CASE("steel of loops: breaking load times strands, area times credited steel") {
  const tables::RuleSet rules = hand_made_rules();
  tables::Tables all;
  all.loops = model();
  all.steels.emplace("soft", tables::Steel{"soft", some(Stress{500.0 * MPa}), some(Stress{250.0 * MPa})});
  Trace trace;
  const auto steel = [&](const plan::Insert& insert, LoopGrip grip = LoopGrip::pin) {
    return resistances::loop_leg_steel(insert, grip, rules, all, trace);
  };
  plan::Insert insert = strand();
  insert.loop->strands = 3;
  insert.loop->offset = 0.0 * mm;
  const auto found = steel(insert, LoopGrip::hook);
  REQUIRE(is_assessed(found));
  CHECK(in(kN, std::get<Resistance<Force>>(found).value) == Approx(260.0 * 2.5 * 0.9).epsilon(1e-12));
  for (const double bad : bad_numbers) {
    insert.loop->breaking_load = bad * kN;
    CHECK_FALSE(is_assessed(steel(insert)));
  }
  insert.loop->breaking_load.reset();
  CHECK_FALSE(is_assessed(steel(insert)));

  plan::Insert of_bar = bar();
  CHECK_FALSE(is_assessed(steel(of_bar)));  // no steel
  of_bar.steel = "unknown";
  CHECK_FALSE(is_assessed(steel(of_bar)));
  of_bar.steel = "soft";  // 1.9 x 250 = 475 is less than 500
  const auto area = steel(of_bar);
  REQUIRE(is_assessed(area));
  CHECK(in(kN, std::get<Resistance<Force>>(area).value) == Approx(0.25 * M_PI * 15.0 * 15.0 * 475.0 / 1000.0).epsilon(1e-12));
  for (const double bad : bad_numbers) {
    of_bar.loop->diameter = bad * mm;
    CHECK_FALSE(is_assessed(steel(of_bar)));
  }
  insert = strand();
  insert.kind = "loop-rope";
  CHECK_FALSE(is_assessed(steel(insert)));
}

TEST_CASE("grip of strand: a hook, or a pin at least as thick as in the tests") {
  Trace trace;
  plan::Insert insert = strand();
  const auto grip = [&](bool hook) { return resistances::strand_grip(insert, hook, model(), trace); };
  CHECK(std::get<LoopGrip>(grip(true)) == LoopGrip::hook);
  CHECK_FALSE(is_assessed(grip(false)));
  insert.loop->pin = 60.0 * mm;
  CHECK(std::get<LoopGrip>(grip(false)) == LoopGrip::pin);
  for (const double d_mm : {std::nextafter(59.99, 0.0), 0.0, -60.0, std::numeric_limits<double>::quiet_NaN()}) {
    insert.loop->pin = d_mm * mm;
    CHECK_FALSE(is_assessed(grip(false)));
  }
}

TEST_CASE("bearing under a plate: coefficient, strength and area, nothing without them") {
  const tables::PlateModel plates{.bearing = some(Ratio{0.85}),
                                  .punching = some(RootStress::from_value(220.0)),
                                  .thread_engagement = some(Ratio{1.5})};
  Trace trace;
  plan::Insert insert;
  insert.id = "P1";
  CHECK_FALSE(is_assessed(resistances::plate_bearing(insert, 20.0 * MPa, plates, trace)));
  insert.head_bearing_area = 9600.0 * mm * mm;
  const auto found = resistances::plate_bearing(insert, 20.0 * MPa, plates, trace);
  REQUIRE(is_assessed(found));
  CHECK(in(kN, std::get<Resistance<Force>>(found).value) == Approx(0.85 * 20.0 * 9.6).epsilon(1e-12));
  for (const double bad : bad_numbers) {
    CHECK_FALSE(is_assessed(resistances::plate_bearing(insert, bad * MPa, plates, trace)));
    plan::Insert less = insert;
    less.head_bearing_area = bad * mm * mm;
    CHECK_FALSE(is_assessed(resistances::plate_bearing(less, 20.0 * MPa, plates, trace)));
  }
}

TEST_CASE("strands of a loop: each thing without which there is no factor is named") {
  Trace trace;
  const auto why = [&](const plan::Insert& insert, const tables::LoopModel& of) {
    return why_not(resistances::strand_multiplier(insert, LoopGrip::pin, of, trace));
  };
  plan::Insert insert = strand();
  insert.loop->strands.reset();
  CHECK(why(insert, model()) == "how many strands loop L1 has is not in the plan");
  insert.loop.reset();
  CHECK(why(insert, model()) == "how many strands loop L1 has is not in the plan");
  insert = strand();
  insert.loop->strands = 5;
  CHECK(why(insert, model()) == "no test of a loop of 5 strands is in the tables");
  insert.loop->strands = 2;
  CHECK(why(insert, model()) == "whether the strands of loop L1 lie level is not in the plan");
  for (const double bad :
       {-0.001, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    insert.loop->offset = bad * mm;
    CHECK(why(insert, model()) == "the offset of the strands of loop L1 is not a usable number");
  }
  insert.loop->offset = 25.001 * mm;
  CHECK(why(insert, model()) == "the strands of loop L1 differ more in height than in any test");
  insert.loop->offset = 0.0 * mm;
  for (const double bad : bad_numbers) {
    tables::LoopModel none = model();
    none.strands.at(2).value = bad;
    CHECK(why(insert, none) == "the reduction for the strands of a loop is not a usable number");
  }
}

TEST_CASE("strands of a loop: the step says how many, in words of one or of more") {
  Trace trace = Trace::recording();
  plan::Insert insert = strand();
  CHECK(assessed(resistances::strand_multiplier(insert, LoopGrip::hook, model(), trace)).value() == 0.9);
  CHECK(step_named(trace, "k").words == "what 1 strand of loop L1 holds over one on a thick pin");
  insert.loop->strands = 3;
  insert.loop->offset = 1.0 * mm;
  CHECK(assessed(resistances::strand_multiplier(insert, LoopGrip::pin, model(), trace)).value() ==
        Approx(2.5 * 0.6));
  CHECK(step_named(trace, "k").words == "what 3 strands of loop L1 hold over one on a thick pin");
}

TEST_CASE(
    "steel of loops: without loop, table or level strands, or with more than one bar, each reason is named") {
  const tables::RuleSet rules = hand_made_rules();
  tables::Tables all;
  all.steels.emplace("soft", tables::Steel{"soft", some(Stress{500.0 * MPa}), some(Stress{250.0 * MPa})});
  Trace trace;
  const auto why = [&](const plan::Insert& insert) {
    return why_not(resistances::loop_leg_steel(insert, LoopGrip::pin, rules, all, trace));
  };
  CHECK(why(strand()) == "the table of loops is not there");
  all.loops = model();
  plan::Insert insert = strand();
  insert.loop.reset();
  CHECK(why(insert) == "the breaking load of the strand of loop L1 is not in the plan");
  insert = strand();
  insert.loop->strands = 2;
  CHECK(why(insert) == "whether the strands of loop L1 lie level is not in the plan");
  insert = strand();
  insert.loop->breaking_load = std::numeric_limits<double>::infinity() * kN;
  CHECK(why(insert) == "the breaking load of loop L1 is not a number above zero");
  insert.loop->strands = 3;  // each a number, not their product
  insert.loop->offset = 0.0 * mm;
  insert.loop->breaking_load = 1e308 * newton;
  CHECK(why(insert) == "the breaking load of loop L1 is not a number above zero");
  insert = bar();
  insert.steel = "soft";
  insert.loop->diameter.reset();
  CHECK(why(insert) == "diameter and steel of the bar of loop L1 are not both in the plan");
  insert.loop.reset();
  CHECK(why(insert) == "diameter and steel of the bar of loop L1 are not both in the plan");
  insert = bar();
  insert.steel = "soft";
  insert.loop->strands = 2;
  CHECK(why(insert) == "loop L1 has more than one bar, for which no source was read");
  insert.loop->strands = 1;
  for (const double bad : bad_numbers) {
    CAPTURE(bad);
    all.steels.at("soft").futa.value = bad * MPa;
    CHECK(why(insert) == "the steel of loop L1 is not described by numbers above zero");
    all.steels.at("soft").futa.value = 500.0 * MPa;
    all.steels.at("soft").fya.value = bad * MPa;
    CHECK(why(insert) == "the steel of loop L1 is not described by numbers above zero");
    all.steels.at("soft").fya.value = 250.0 * MPa;
  }
  insert.loop->diameter = 1e200 * m;
  CHECK(why(insert) == "the steel of loop L1 is not described by numbers above zero");
}

TEST_CASE("steel of a bar loop by EN 1992-4: pi / 4 d^2 f_uk, the limits of ACI 318 not asked") {
  tables::RuleSet rules = hand_made_rules();
  tables::Tables all;
  all.steels.emplace("soft", tables::Steel{"soft", some(Stress{500.0 * MPa}), some(Stress{250.0 * MPa})});
  plan::Insert insert = bar();
  insert.steel = "soft";
  for (const bool by_en : {false, true}) {
    if (by_en) rules.headed = eu_rules().headed;
    Trace trace = Trace::recording();
    const auto R = assessed(resistances::loop_leg_steel(insert, LoopGrip::pin, rules, all, trace));
    const double expected_kN = std::acos(-1.0) / 4.0 * 225.0 * (by_en ? 500.0 : 475.0) / 1000.0;
    CHECK(in(kN, R.value) == Approx(expected_kN).epsilon(1e-12));
    const Step step = step_named(trace, "R");
    CHECK(step.result.number == Approx(expected_kN).epsilon(1e-12));
    CHECK(step.given.front().number == Approx(std::acos(-1.0)).epsilon(1e-15));
    CHECK(step.clause == (by_en ? "EN 1992-4 7.2.1.3" : "ACI 318-19 17.6.1.2"));
  }
}

TEST_CASE(
    "bond of loops: without strength for the formulas, or with a product that is no number, nothing is "
    "assessed") {
  const std::string why = "the bond of loop L1 is not described by numbers above zero";
  for (const double bad : bad_numbers) {
    resistances::LoopFacts known = facts(20.0);
    known.formula = bad * MPa;
    CHECK(why_not(bond(strand(), known)) == why);
    CHECK(why_not(bond(bar(), known)) == why);
    known = facts(20.0);
    known.usable = bad * MPa;
    CHECK(why_not(bond(bar(), known)) == why);
  }
  plan::Insert insert = bar();
  insert.loop->leg_length = 1e200 * m;
  insert.loop->diameter = 1e200 * m;
  CHECK(why_not(bond(insert, facts(20.0))) == why);
  insert = strand();
  insert.loop->strands = 2;
  CHECK(why_not(bond(insert, facts(20.0))) == "whether the strands of loop L1 lie level is not in the plan");
}

TEST_CASE("bearing under a plate: each a number, not their product") {
  const tables::PlateModel plates{.bearing = some(Ratio{0.85}),
                                  .punching = some(RootStress::from_value(220.0)),
                                  .thread_engagement = some(Ratio{1.5})};
  Trace trace;
  plan::Insert insert;
  insert.id = "P1";
  CHECK(why_not(resistances::plate_bearing(insert, 20.0 * MPa, plates, trace)) ==
        "the area of the plate of insert P1 on the concrete is not in the plan");
  insert.head_bearing_area = 1e200 * m2;
  CHECK(why_not(resistances::plate_bearing(insert, 1e200 * MPa, plates, trace)) ==
        "the plate of insert P1 is not described by numbers above zero");
}

TEST_CASE("grip of strand: without a loop in the plan nothing is known of its pin") {
  Trace trace;
  plan::Insert insert = strand();
  insert.loop.reset();
  CHECK(why_not(resistances::strand_grip(insert, false, model(), trace)) ==
        "what goes through loop L1 is no hook, and its diameter is not in the plan");
  CHECK(assessed(resistances::strand_grip(insert, true, model(), trace)) == LoopGrip::hook);
}
