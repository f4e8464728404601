// Question and answer on tilt-up inserts in the magazine Concrete Construction (date not known to us): a
// panel of 5,000 lb with an impact allowance of 50 % asks for inserts of 7,500 lb. Two of our notes disagree
// on whether the text itself was read. Tolerance: half of the last printed digit of the result, taken as 1
// lb: 0.5 lb.
//
// Outside  stage-load

#include "loads/stage_load.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("magazine example: 5,000 lb with 50 % impact is 7,500 lb") {
  plan::Plan plan;
  plan.concrete.density = 150.0 * lb_per_ft3;
  plan.concrete.density_tolerance = Ratio{};
  plan.form = plan::Form{};
  plan.form->nothing_grips = true;
  piece::Body panel;
  panel.volume = 5000.0 / 150.0 * ft3;
  plan::Stage strip;
  strip.dynamic_factor = Ratio::from_value(1.5);
  tables::RuleSet rules = us_rules();
  rules.insert_load.value = tables::InsertLoad::with_adhesion_and_dynamic;
  Trace trace;
  const auto load = assessed(loads::stage_load(plan, strip, panel, rules, tables::Tables{}, trace));
  CHECK(in(lbf, load.weight) == Approx(5000.0).margin(0.5).epsilon(0.0));
  CHECK(in(lbf, load.total) == Approx(7500.0).margin(0.5).epsilon(0.0));
  REQUIRE(load.insert_loads.size() == 1);
  CHECK(in(lbf, load.insert_loads[0].total) == Approx(7500.0).margin(0.5).epsilon(0.0));
}
