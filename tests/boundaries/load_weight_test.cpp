// Edges of the weight: src/loads/weight.cpp.

#include <cmath>
#include <limits>

#include "loads/weight.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double nan_number = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

Outcome<Force> weight_of(const plan::Plan& plan, const piece::Body& body) {
  Trace trace;
  return loads::weight(plan, body, trace);
}

}  // namespace

TEST_CASE("weight: a tolerance just below zero, or no number, is not assessed, zero is used") {
  plan::Plan plan = culvert_plan();
  const double bad =
      GENERATE(as<double>{}, std::nextafter(0.0, -1.0), -0.03, nan_number, infinite, -infinite);
  CAPTURE(bad);
  plan.concrete.density_tolerance = Ratio::from_value(bad);
  CHECK(why_not(weight_of(plan, culvert_body())) == "the tolerance of the density is not a usable number");
  plan.concrete.density_tolerance = Ratio{};
  CHECK(is_assessed(weight_of(plan, culvert_body())));
}

TEST_CASE("weight: a density that is not above zero and finite is not assessed") {
  plan::Plan plan = culvert_plan();
  const double bad = GENERATE(as<double>{}, 0.0, -0.0, -2400.0, nan_number, infinite);
  CAPTURE(bad);
  plan.concrete.density = bad * kg_per_m3;
  CHECK(why_not(weight_of(plan, culvert_body())) == "the density is not a usable number");
}

TEST_CASE("weight: a volume that is not above zero and finite is not assessed") {
  piece::Body body = culvert_body();
  const double bad = GENERATE(as<double>{}, 0.0, -1.0, nan_number, infinite);
  CAPTURE(bad);
  body.volume = bad * m3;
  CHECK(why_not(weight_of(culvert_plan(), body)) == "the volume of the piece is not a usable number");
}

TEST_CASE(
    "weight: a stated weight that is not above zero and finite is not assessed, though geometry gives one") {
  plan::Plan plan = culvert_plan();
  const double bad = GENERATE(as<double>{}, 0.0, -1.0, nan_number, infinite);
  CAPTURE(bad);
  plan.piece.stated_weight = bad * kN;
  CHECK(why_not(weight_of(plan, culvert_body())) == "the stated weight is not a usable number");
}

TEST_CASE("weight: a product that overflows is not assessed") {
  plan::Plan plan = culvert_plan();
  plan.concrete.density = 1e308 * kg_per_m3;
  CHECK(why_not(weight_of(plan, culvert_body())) == "the weight of the piece is not a usable number");
}

TEST_CASE("weight: a stated weight one step over the upper bound is used, one step under is not") {
  plan::Plan plan = culvert_plan();
  const Force bound = assessed(weight_of(plan, culvert_body()));
  const Force above = Force::from_value(std::nextafter(bound.value(), infinite));
  const Force below = Force::from_value(std::nextafter(bound.value(), 0.0));
  plan.piece.stated_weight = above;
  CHECK(assessed(weight_of(plan, culvert_body())) == above);
  plan.piece.stated_weight = below;
  CHECK(assessed(weight_of(plan, culvert_body())) == bound);
  plan.piece.stated_weight = bound;
  CHECK(assessed(weight_of(plan, culvert_body())) == bound);
}
