#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using plan::StageKind;

namespace {

Outcome<Stress> required(StageKind stage, const plan::Concrete& concrete) {
  Trace trace;
  return strength::required_strength(stage, concrete, hand_made_rules(), trace);
}

}  // namespace

TEST_CASE("each stage needs the strength that the drawing names for it") {
  const plan::Concrete concrete = concrete_with_evidence();
  CHECK(in(psi, assessed(required(StageKind::strip, concrete))) == Approx(2500.0));
  CHECK(in(psi, assessed(required(StageKind::haul, concrete))) == Approx(4000.0));
  const StageKind lift = GENERATE(StageKind::turn, StageKind::yard, StageKind::store, StageKind::set);
  CHECK(in(psi, assessed(required(lift, concrete))) == Approx(3000.0));
}

TEST_CASE("a strength that the drawing does not name is not assessed, and the remedy names the key") {
  const plan::Concrete nothing;
  CHECK(why_not(required(StageKind::strip, nothing)) ==
        "the strength required for the stage 'strip' is not in the plan");
  CHECK(remedy_for(required(StageKind::strip, nothing)) ==
        "write form_stripping_strength in [concrete] as the drawing has it, in the form \"2500 psi\"");
  CHECK(remedy_for(required(StageKind::haul, nothing)) ==
        "write transportation_strength in [concrete] as the drawing has it, in the form \"2500 psi\"");
  CHECK(remedy_for(required(StageKind::set, nothing)) ==
        "write lifting_strength in [concrete] as the drawing has it, in the form \"2500 psi\"");
}

TEST_CASE("the strength for one stage does not stand in for another") {
  plan::Concrete concrete;
  concrete.lifting_strength = 3000.0 * psi;
  CHECK_FALSE(is_assessed(required(StageKind::strip, concrete)));
  CHECK_FALSE(is_assessed(required(StageKind::haul, concrete)));
}

TEST_CASE("a drawing may not ask for less than the rule set's minimum") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.form_stripping_strength = 1500.0 * psi;
  CHECK(in(psi, assessed(required(StageKind::strip, concrete))) == Approx(2000.0));
}

TEST_CASE("the step of the required strength shows both sides") {
  Trace trace = Trace::recording();
  assessed(strength::required_strength(StageKind::strip, concrete_with_evidence(), hand_made_rules(), trace));
  const Step step = step_named(trace, "f_req");
  CHECK(step.formula == "max(f_drawing, f_min)");
  REQUIRE(step.given.size() == 2);
  CHECK(step.given[0].number == Approx(in(MPa, 2500.0 * psi)));
  CHECK(step.given[1].number == Approx(in(MPa, 2000.0 * psi)));
  CHECK(source_ids(step) == std::vector<std::string>{"hand-made.minimum_strength"});
}
