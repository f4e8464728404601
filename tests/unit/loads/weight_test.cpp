#include "loads/weight.hpp"

#include <cmath>
#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

Outcome<Force> weight_of(const plan::Plan& plan, const piece::Body& body) {
  Trace trace;
  return loads::weight(plan, body, trace);
}

}  // namespace

TEST_CASE("the nominal weight is volume times density") {
  // 21.333 ft2 x 6 ft at 150 lb/ft3: 19,200 lb, computed by hand.
  CHECK(in(lbf, loads::nominal_weight(culvert_plan(), culvert_body())) == Approx(19200.0).epsilon(1e-12));
}

TEST_CASE("without a stated weight the upper bound of the density counts") {
  CHECK(in(lbf, assessed(weight_of(culvert_plan(), culvert_body()))) == Approx(19776.0).epsilon(1e-12));
}

TEST_CASE("a tolerance of zero is a statement of the plan and is used") {
  plan::Plan plan = culvert_plan();
  plan.concrete.density_tolerance = Ratio{};
  CHECK(in(lbf, assessed(weight_of(plan, culvert_body()))) == Approx(19200.0).epsilon(1e-12));
}

TEST_CASE("the heavier of the upper bound and the stated weight counts, however far apart they are") {
  plan::Plan plan = culvert_plan();
  const double stated_lb = GENERATE(1.0, 19200.0, 19775.0, 19777.0, 21000.0, 100000.0);
  CAPTURE(stated_lb);
  plan.piece.stated_weight = stated_lb * lbf;
  CHECK(in(lbf, assessed(weight_of(plan, culvert_body()))) ==
        Approx(std::max(19776.0, stated_lb)).epsilon(1e-12));
}

TEST_CASE("a weight without an upper bound is not assessed, and the remedy names the line") {
  plan::Plan plan = culvert_plan();
  plan.concrete.density_tolerance.reset();
  plan.piece.stated_weight = 25000.0 * lbf;
  const auto weight = weight_of(plan, culvert_body());
  CHECK(why_not(weight) == "the density has no tolerance, so the weight has no upper bound");
  CHECK(remedy_for(weight) == "write density_tolerance in [concrete], in the form \"3 %\"");
}

TEST_CASE("the steps of the weight put in what the plan and geometry gave") {
  plan::Plan plan = culvert_plan();
  plan.piece.stated_weight = 20.0 * kip;
  Trace trace = Trace::recording();
  assessed(loads::weight(plan, culvert_body(), trace));

  const Step mass = step_named(trace, "m_max");
  REQUIRE(mass.given.size() == 3);
  CHECK(mass.formula == "V * rho * (1 + t)");
  CHECK(mass.result.number ==
        Approx(mass.given[0].number * mass.given[1].number * (1.0 + mass.given[2].number)).epsilon(1e-12));
  const Step bound = step_named(trace, "W_max");
  CHECK(bound.result.unit == "N");
  CHECK(bound.result.number == Approx(mass.result.number * 9.80665).epsilon(1e-12));
  const Step used = step_named(trace, "W");
  CHECK(used.formula == "max(W_max, W_stated)");
  CHECK(used.result.number == Approx(in(kN, 20.0 * kip)).epsilon(1e-12));
}

TEST_CASE("a plan without a stated weight says so in its steps") {
  Trace trace = Trace::recording();
  assessed(loads::weight(culvert_plan(), culvert_body(), trace));
  const Step used = step_named(trace, "W");
  CHECK(used.formula == "W_max");
  CHECK(used.words == "weight used; the plan states none");
}

TEST_CASE(
    "the least weight: the density less its tolerance, or the stated weight where that is lighter still") {
  plan::Plan plan = culvert_plan();
  CHECK(in(lbf, assessed(loads::least_weight(plan, culvert_body()))) ==
        Approx(0.97 * 19200.0).epsilon(1e-12));
  plan.piece.stated_weight = 18000.0 * lbf;
  CHECK(in(lbf, assessed(loads::least_weight(plan, culvert_body()))) == Approx(18000.0).epsilon(1e-12));
  plan.piece.stated_weight = 20000.0 * lbf;
  CHECK(in(lbf, assessed(loads::least_weight(plan, culvert_body()))) ==
        Approx(0.97 * 19200.0).epsilon(1e-12));
  plan.concrete.density_tolerance.reset();
  CHECK(why_not(loads::least_weight(plan, culvert_body())) ==
        "the density has no tolerance, so the weight has no lower bound");
}

TEST_CASE("a volume, density, tolerance or stated weight that is no usable number is named") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {-1.0, nan, infinite}) {
    CAPTURE(bad);
    piece::Body body = culvert_body();
    body.volume = bad * ft3;
    CHECK(why_not(weight_of(culvert_plan(), body)) == "the volume of the piece is not a usable number");
    plan::Plan plan = culvert_plan();
    plan.concrete.density = bad * lb_per_ft3;
    CHECK(why_not(weight_of(plan, culvert_body())) == "the density is not a usable number");
    plan = culvert_plan();
    plan.concrete.density_tolerance = Ratio{bad};
    CHECK(why_not(weight_of(plan, culvert_body())) == "the tolerance of the density is not a usable number");
    plan = culvert_plan();
    plan.piece.stated_weight = bad * lbf;
    CHECK(why_not(weight_of(plan, culvert_body())) == "the stated weight is not a usable number");
  }
  piece::Body body = culvert_body();
  body.volume = Volume{};
  CHECK(why_not(weight_of(culvert_plan(), body)) == "the volume of the piece is not a usable number");
  plan::Plan plan = culvert_plan();
  plan.concrete.density = Density{};
  CHECK(why_not(weight_of(plan, culvert_body())) == "the density is not a usable number");
  plan = culvert_plan();
  plan.piece.stated_weight = Force{};
  CHECK(why_not(weight_of(plan, culvert_body())) == "the stated weight is not a usable number");
  body.volume = Volume::from_value(1e308);
  CHECK(why_not(weight_of(culvert_plan(), body)) == "the weight of the piece is not a usable number");
}
