// stage-evaluated: a kind of stage that this version does not compute is never a pass by silence.

#include <catch2/catch.hpp>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("stage-evaluated: lifts by crane are evaluated, a turn only when it is told") {
  SlabLift lift;
  using plan::StageKind;
  for (const StageKind kind : {StageKind::strip, StageKind::yard, StageKind::store, StageKind::haul, StageKind::set}) {
    lift.stage().kind = kind;
    CAPTURE(plan::word_for(kind));
    CHECK(finding_for("stage-evaluated", "SL-1", lift.facts()).result == Result::pass);
  }
  lift.stage().kind = StageKind::turn;
  const Finding finding = finding_for("stage-evaluated", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
  lift.stage().turn = plan::Turn{};
  CHECK(finding_for("stage-evaluated", "SL-1", lift.facts()).result == Result::pass);
}
