// Limits of insert-rating: the strength the rating is declared at, an included factor of 1.

#include "resistances/rated.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

plan::Insert with(plan::Rating rating) {
  plan::Insert insert;
  insert.id = "R1";
  insert.kind = "rated";
  insert.rating = rating;
  return insert;
}
const plan::Rating declared{
    .load = 40.0 * kN, .at_strength = 15.0 * MPa, .includes_factor = 4.0, .place = {}};

Outcome<Resistance<Force>> outcome_of(const plan::Rating& rating, Stress usable) {
  Trace trace;
  return resistances::rated(with(rating), usable, hand_made_rules(), trace);
}

}  // namespace

TEST_CASE("insert-rating: at the declared strength, one step below and above") {
  const Force whole = 160.0 * kN;
  CHECK(assessed(outcome_of(declared, 15.0 * MPa)).value == whole);
  CHECK(assessed(outcome_of(declared, one_step_above(Stress{15.0 * MPa}))).value == whole);
  const Force below = assessed(outcome_of(declared, one_step_below(Stress{15.0 * MPa}))).value;
  CHECK(below <= whole);
  CHECK(in(kN, below) == Approx(160.0));
}

TEST_CASE("insert-rating: an included factor of 1 is one, less is none") {
  plan::Rating rating = declared;
  rating.includes_factor = 1.0;
  CHECK(in(kN, assessed(outcome_of(rating, 15.0 * MPa)).value) == Approx(40.0));
  for (const double bad : {std::nextafter(1.0, 0.0), 0.0, -4.0, std::numeric_limits<double>::quiet_NaN(),
                           std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    rating.includes_factor = bad;
    CHECK_FALSE(is_assessed(outcome_of(rating, 15.0 * MPa)));
  }
}

TEST_CASE("insert-rating: load and both strengths must be numbers above zero") {
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    CHECK_FALSE(is_assessed(outcome_of(declared, bad * MPa)));
    plan::Rating rating = declared;
    rating.load = bad * kN;
    CHECK_FALSE(is_assessed(outcome_of(rating, 15.0 * MPa)));
    rating = declared;
    rating.at_strength = bad * MPa;
    CHECK_FALSE(is_assessed(outcome_of(rating, 15.0 * MPa)));
  }
}
