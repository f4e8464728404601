// Edges of the attached parts: src/loads/attached.cpp.

#include <limits>

#include "loads/attached.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double nan_number = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

Outcome<loads::AttachedParts> parts_of(const plan::Attached& part) {
  plan::Plan plan = culvert_plan();
  plan.form->attached = {part};
  Trace trace;
  return loads::attached_parts(plan, culvert_body(), trace);
}

}  // namespace

TEST_CASE("attached: a weight that is not above zero and finite is not assessed") {
  plan::Attached part;
  part.what = "pallet";
  const double bad = GENERATE(as<double>{}, 0.0, -350.0, nan_number, infinite);
  CAPTURE(bad);
  part.weight = bad * lbf;
  CHECK(why_not(parts_of(part)) == "the weight of attached part 'pallet' is not a usable number");
}

TEST_CASE("attached: the least weight above zero counts") {
  plan::Attached part;
  part.weight = Force::from_value(std::numeric_limits<double>::denorm_min());
  CHECK(assessed(parts_of(part)).total == part.weight);
}

TEST_CASE("attached: a point that is not finite is not assessed") {
  plan::Attached part;
  part.what = "core";
  part.weight = 1.0 * kN;
  const double bad = GENERATE(as<double>{}, nan_number, infinite, -infinite);
  const int axis = GENERATE(0, 1, 2);
  CAPTURE(bad, axis);
  part.at = Position{(axis == 0 ? bad : 0.0) * m, (axis == 1 ? bad : 0.0) * m, (axis == 2 ? bad : 0.0) * m};
  CHECK(why_not(parts_of(part)) == "the point of attached part 'core' is not a usable number");
}
