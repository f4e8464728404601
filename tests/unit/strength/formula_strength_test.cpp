#include <cmath>

#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

double formula_psi(double usable_psi) {
  Trace trace;
  return in(psi, assessed(strength::formula_strength(usable_psi * psi, hand_made_rules(), trace)));
}

}  // namespace

TEST_CASE("within the range of the formulas the strength goes in as it is") {
  CHECK(formula_psi(2500.0) == Approx(2500.0));
  CHECK(formula_psi(4000.0) == Approx(4000.0));
  CHECK(formula_psi(10000.0) == Approx(10000.0));
}

TEST_CASE("more strength than the formulas credit is not credited") {
  CHECK(formula_psi(12000.0) == Approx(10000.0));
}

TEST_CASE("below the range a square-root law falls in proportion to strength") {
  const double usable_psi = GENERATE(2499.0, 2000.0, 1250.0, 500.0, 1.0);
  CAPTURE(usable_psi);
  CHECK(std::sqrt(formula_psi(usable_psi)) == Approx(std::sqrt(2500.0) * usable_psi / 2500.0).epsilon(1e-12));
}

TEST_CASE("below the range a law linear in the strength falls faster than in proportion") {
  const double usable_psi = GENERATE(2499.0, 2000.0, 1250.0, 500.0, 1.0);
  CHECK(formula_psi(usable_psi) < usable_psi);
  CHECK(formula_psi(usable_psi) / 2500.0 == Approx(std::pow(usable_psi / 2500.0, 2)).epsilon(1e-12));
}

TEST_CASE("more strength never gives less, and no step is higher than the strength itself") {
  double before = 0.0;
  for (double usable_psi = 10.0; usable_psi <= 12000.0; usable_psi += 10.0) {
    const double now = formula_psi(usable_psi);
    CAPTURE(usable_psi, before, now);
    REQUIRE(now >= before);
    REQUIRE(now <= usable_psi * (1.0 + 1e-12));
    before = now;
  }
}

TEST_CASE("a rule set that refuses below the range gives both numbers in both units") {
  tables::RuleSet rules = hand_made_rules();
  rules.below_floor.value = tables::BelowFloor::refuse;
  Trace trace;
  CHECK(why_not(strength::formula_strength(2490.0 * psi, rules, trace)) ==
        "the strength of the concrete, 17.1 MPa (2490 psi), is below 17.3 MPa (2500 psi), the least the "
        "anchor formulas "
        "cover");
  CHECK(in(psi, assessed(strength::formula_strength(2500.0 * psi, rules, trace))) == Approx(2500.0));
}

TEST_CASE("the steps of the formula strength name the limit that took part") {
  Trace trace = Trace::recording();
  assessed(strength::formula_strength(2000.0 * psi, hand_made_rules(), trace));
  const Step lowered = step_named(trace, "f");
  CHECK(lowered.formula == "f_c * f_c / f_least");
  CHECK(source_ids(lowered) == std::vector<std::string>{"hand-made.f_c_least", "hand-made.below_floor"});
  assessed(strength::formula_strength(3000.0 * psi, hand_made_rules(), trace));
  const Step credited = step_named(trace, "f");
  CHECK(credited.formula == "min(f_c, f_most)");
  CHECK(source_ids(credited) == std::vector<std::string>{"hand-made.f_c_most"});
}
