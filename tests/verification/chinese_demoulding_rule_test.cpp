// The demoulding load of GB 50666-2011 and JGJ 1-2014 (second-hand, clause numbers from memory): phi G + q A, and not less than
// 1.5 G; phi 1.2 and q 1.5 kN/m2 at least. The form of the rule is quoted; the three slabs are our own arithmetic with it, made
// before this test: 25 kN/m3, 3.6 x 2.4 x 0.06 m 28.512 kN, 6 x 2.4 x 0.15 m 86.4 kN, 3 x 3 x 0.20 m 67.5 kN by both branches.
// The shipped rule set two-branch-stripping has the load model; what legs carry is compared, before the load factors of its base.
// Tolerance: half a unit of the last digit.
//
// Computed stage-load, tables/rules/two-branch-stripping.toml

#include "loads/stage_load.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const tables::RuleSet& two_branches() { return us_tables().rule_sets.at("two-branch-stripping"); }

// A plan that says 0.4 kN/m2 of grip, less than the rule allows.
loads::StageLoad load_of(Length length, Length width, Length thickness, Stress stated = 0.4 * kPa) {
  plan::Plan plan;
  plan.concrete.density = 25000.0 / 9.80665 * kg_per_m3;
  plan.concrete.density_tolerance = Ratio{};
  plan.form = plan::Form{};
  plan.form->contacts.resize(1);
  plan.form->contacts.front().adhesion = stated;
  piece::Body slab;
  slab.volume = length * width * thickness;
  slab.contacts.resize(1);
  slab.contacts.front().area = length * width;
  plan::Stage strip;
  Trace trace;
  return assessed(loads::stage_load(plan, strip, slab, two_branches(), tables::Tables{}, trace));
}

Force most(const loads::StageLoad& load) {
  Force largest{};
  for (const loads::LoadSet& set : load.gear_loads) largest = std::max(largest, set.total);
  return largest;
}

}  // namespace

TEST_CASE("thin slab: 1.2 x 12.96 + 1.5 x 8.64 = 28.512 kN, 2.20 times its weight, the floor is 19.44 kN") {
  const auto load = load_of(3.6 * m, 2.4 * m, 0.06 * m);
  CHECK(in(kN, load.weight) == Approx(12.96).margin(0.005).epsilon(0.0));
  CHECK(in(kN, load.adhesion) == Approx(12.96).margin(0.005).epsilon(0.0));
  CHECK(in(kN, most(load)) == Approx(28.512).margin(0.0005).epsilon(0.0));
  CHECK(in(kN, load.floor) == Approx(19.44).margin(0.005).epsilon(0.0));
}

TEST_CASE("slab of 0.15 m: 86.4 kN, 1.60 times its weight") {
  const auto load = load_of(6.0 * m, 2.4 * m, 0.15 * m);
  CHECK(in(kN, most(load)) == Approx(86.4).margin(0.05).epsilon(0.0));
  CHECK(double{most(load) / load.weight} == Approx(1.60).margin(0.005).epsilon(0.0));
}

TEST_CASE("slab of 0.20 m: both branches give 67.5 kN, and a thicker one is governed by 1.5 G") {
  const auto load = load_of(3.0 * m, 3.0 * m, 0.20 * m);
  CHECK(in(kN, most(load)) == Approx(67.5).margin(0.05).epsilon(0.0));
  CHECK(in(kN, load.floor) == Approx(67.5).margin(0.05).epsilon(0.0));
  const auto thicker = load_of(3.0 * m, 3.0 * m, 0.30 * m);
  CHECK(in(kN, most(thicker)) == Approx(101.25).margin(0.005).epsilon(0.0));
  CHECK(thicker.total < most(thicker));
}

TEST_CASE("a grip that the plan states above 1.5 kN/m2 counts as stated: 1.2 x 54 + 2.0 x 14.4 = 93.6 kN") {
  CHECK(in(kN, most(load_of(6.0 * m, 2.4 * m, 0.15 * m, 2.0 * kPa))) == Approx(93.6).margin(0.05).epsilon(0.0));
}

TEST_CASE("transport and hoisting 1.5, turning 1.2, as quoted, the rest is that of the base") {
  for (const std::string stage : {"yard", "store", "haul", "set"})
    CHECK(two_branches().dynamic_factor.at(stage).value == 1.5);
  for (const std::string stage : {"strip", "turn"}) CHECK(two_branches().dynamic_factor.at(stage).value == 1.2);
  CHECK(two_branches().based_on == "eu");
  CHECK(two_branches().insert_factor.value == eu_rules().insert_factor.value);
  CHECK(two_branches().headed.en.has_value());
}
