#include "resistances/rated.hpp"

#include <cmath>

#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

plan::Insert rated_insert() {
  plan::Insert insert;
  insert.id = "R1";
  insert.kind = "rated";
  insert.rating =
      plan::Rating{.load = 40.0 * kN, .at_strength = 15.0 * MPa, .includes_factor = 4.0, .place = {}};
  return insert;
}
Outcome<Resistance<Force>> outcome_of(const plan::Insert& insert, Stress usable,
                                      tables::RatingScaling scaling = tables::RatingScaling::proportional) {
  tables::RuleSet rules = hand_made_rules();
  rules.rating_scaling.value = scaling;
  Trace trace;
  return resistances::rated(insert, usable, rules, trace);
}

}  // namespace

TEST_CASE("at its strength a rated insert fails at load times the factor it includes") {
  CHECK(in(kN, assessed(outcome_of(rated_insert(), 15.0 * MPa)).value) == Approx(160.0));
}

TEST_CASE("more strength than declared gives no more") {
  CHECK(in(kN, assessed(outcome_of(rated_insert(), 60.0 * MPa)).value) == Approx(160.0));
  CHECK(in(kN, assessed(outcome_of(rated_insert(), 60.0 * MPa, tables::RatingScaling::square_root)).value) ==
        Approx(160.0));
}

TEST_CASE("less strength gives less, in proportion or by the root as the rule set says") {
  CHECK(in(kN, assessed(outcome_of(rated_insert(), 7.5 * MPa)).value) == Approx(80.0));
  CHECK(in(kN, assessed(outcome_of(rated_insert(), 7.5 * MPa, tables::RatingScaling::square_root)).value) ==
        Approx(160.0 * std::sqrt(0.5)));
}

TEST_CASE("a rating that does not say its strength or its factor is not assessed") {
  plan::Insert insert = rated_insert();
  insert.rating->at_strength.reset();
  CHECK(why_not(outcome_of(insert, 15.0 * MPa)) ==
        "the rating of insert R1 does not say at which concrete strength it holds");
  insert = rated_insert();
  insert.rating->includes_factor.reset();
  CHECK(why_not(outcome_of(insert, 15.0 * MPa)) ==
        "the rating of insert R1 does not say which factor on failure it includes");
  insert.rating.reset();
  CHECK(why_not(outcome_of(insert, 15.0 * MPa)) == "insert R1 has no rating");
  CHECK(remedy_for(outcome_of(insert, 15.0 * MPa)).starts_with("[[insert]] rating = {"));
}

TEST_CASE("the step prints the scaling it used") {
  Trace trace = Trace::recording();
  resistances::rated(rated_insert(), 7.5 * MPa, hand_made_rules(), trace);
  CHECK(step_named(trace, "U").formula == "P * n_P * f / f_at");
  resistances::rated(rated_insert(), 20.0 * MPa, hand_made_rules(), trace);
  CHECK(step_named(trace, "U").formula == "P * n_P");
}
