// stated-weight: the drawing and the solid tell the same piece, within the rule set's share (here 10 %).

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "loads/weight.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

Finding with_stated(SlabLift& lift, std::optional<Force> stated) {
  lift.plan.piece.stated_weight = stated;
  return finding_for("stated-weight", "SL-1", lift.facts());
}

Force of_geometry(SlabLift& lift) {
  lift.facts();
  return loads::nominal_weight(lift.plan, lift.body);
}

}  // namespace

TEST_CASE("stated-weight: passes where the drawing says what the solid weighs") {
  SlabLift lift;
  const Finding finding = with_stated(lift, of_geometry(lift));
  CHECK(finding.result == Result::pass);
  CHECK(finding.utilization.value() == 0.0);
}

TEST_CASE("stated-weight: missing without a weight on the drawing") {
  SlabLift lift;
  const Finding finding = with_stated(lift, {});
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("stated-weight: apart by the limit passes, by more is HOLD, heavier and lighter alike") {
  SlabLift lift;
  lift.rules.weight_disagreement.value = Ratio{0.125};  // exact in binary, so that the limit is met exactly
  const Force geometry = of_geometry(lift);
  for (const double side : {-1.0, 1.0}) {
    const Force at_limit{(1.0 + side * 0.125) * geometry};
    const Force beyond{(1.0 + side * 0.1251) * geometry};
    const Force inside{(1.0 + side * 0.1249) * geometry};
    CAPTURE(side);
    CHECK(with_stated(lift, inside).result == Result::pass);
    CHECK(with_stated(lift, at_limit).utilization.value() == Approx(1.0).epsilon(1e-12));
    const Finding finding = with_stated(lift, beyond);
    CHECK(finding.result == Result::missing);  // which of the two is wrong, nobody knows: HOLD, not NO-GO
    CHECK(finding.utilization.value() > 1.0);
    check_says_why(finding);
  }
}

TEST_CASE("stated-weight: 10 % apart to the newton") {
  SlabLift lift;
  const double geometry_N = of_geometry(lift).value();
  CHECK(with_stated(lift, Force::from_value(1.1 * geometry_N - 1.0)).result == Result::pass);
  CHECK(with_stated(lift, Force::from_value(1.1 * geometry_N + 1.0)).result == Result::missing);
  CHECK(with_stated(lift, Force::from_value(0.9 * geometry_N + 1.0)).result == Result::pass);
  CHECK(with_stated(lift, Force::from_value(0.9 * geometry_N - 1.0)).result == Result::missing);
}

TEST_CASE("stated-weight: a weight that is not a number is missing") {
  SlabLift lift;
  for (const double stated_kN : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    const Finding finding = with_stated(lift, stated_kN * kN);
    CHECK(finding.result == Result::missing);
    CHECK_FALSE(finding.text.empty());
  }
}

TEST_CASE("stated-weight: less dense than its kind of concrete is HOLD, denser a note") {
  SlabLift lift;  // here 2,200 to 2,600 kg/m3
  const auto with_density = [&](double kg_m3) {
    lift.plan.concrete.density = kg_m3 * kg_per_m3;
    return with_stated(lift, of_geometry(lift));
  };
  CHECK(with_density(2200.0).result == Result::pass);
  CHECK(with_density(2600.0).result == Result::pass);
  const Finding denser = with_density(2600.1);
  CHECK(denser.result == Result::note);
  CHECK(denser.text.find("2600") != std::string::npos);
  for (const double kg_m3 : {2199.9, 1200.0, 24.0, std::numeric_limits<double>::quiet_NaN()}) {
    CAPTURE(kg_m3);
    const Finding finding = with_density(kg_m3);
    CHECK(finding.result == Result::missing);
    check_says_why(finding);
  }
}
