// The demoulding load of GB 50666-2011 and JGJ 1-2014 (second-hand, clause numbers from memory): phi G + q A, and not less than
// 1.5 G; phi 1.2 and q 1.5 kN/m2 at least. The form of the rule is quoted; the three slabs are our own arithmetic with it, made
// before this test: 25 kN/m3, 3.6 x 2.4 x 0.06 m 28.512 kN, 6 x 2.4 x 0.15 m 86.4 kN, 3 x 3 x 0.20 m 67.5 kN by both branches.
// No rule set is shipped (docs/rule-set.md): the rule set us is given the load model in the test. Tolerance: half a unit of the
// last digit.
//
// Computed stage-load

#include "loads/stage_load.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

loads::StageLoad load_of(Length length, Length width, Length thickness) {
  plan::Plan plan;
  plan.concrete.density = 25000.0 / 9.80665 * kg_per_m3;
  plan.concrete.density_tolerance = Ratio{};
  plan.form = plan::Form{};
  plan.form->contacts.resize(1);
  plan.form->contacts.front().adhesion = 1.5 * kPa;
  piece::Body slab;
  slab.volume = length * width * thickness;
  slab.contacts.resize(1);
  slab.contacts.front().area = length * width;
  tables::RuleSet rules = us_rules();
  rules.insert_load.value = tables::InsertLoad::with_adhesion_and_dynamic;
  rules.dynamic_factor.at("strip").value = Ratio{1.2};
  rules.load_floor = Sourced<Ratio>{Ratio{1.5}, {}};
  plan::Stage strip;
  Trace trace;
  return assessed(loads::stage_load(plan, strip, slab, rules, tables::Tables{}, trace));
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
