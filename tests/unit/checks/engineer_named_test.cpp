// engineer-named: somebody who may answer for the lift is named.

#include <catch2/catch.hpp>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("engineer-named: passes with a name") {
  SlabLift lift;
  CHECK(finding_for("engineer-named", "SL-1", lift.facts()).result == Result::pass);
}

TEST_CASE("engineer-named: missing without one") {
  SlabLift lift;
  lift.plan.piece.engineer = GENERATE("", " ", "\t ");
  const Finding finding = finding_for("engineer-named", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}
