#include "resistances/rated.hpp"

#include <cmath>
#include <limits>
#include <optional>
#include <string>

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

TEST_CASE("a rating of no usable load, strength or factor, or below a factor of 1, gives no number") {
  const std::string why = "the rating of insert R1 is not described by usable numbers";
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    plan::Insert insert = rated_insert();
    insert.rating->load = bad * kN;
    CHECK(why_not(outcome_of(insert, 15.0 * MPa)) == why);
    insert = rated_insert();
    insert.rating->at_strength = bad * MPa;
    CHECK(why_not(outcome_of(insert, 15.0 * MPa)) == why);
    insert = rated_insert();
    insert.rating->includes_factor = bad;
    CHECK(why_not(outcome_of(insert, 15.0 * MPa)) == why);
    CHECK(why_not(outcome_of(rated_insert(), bad * MPa)) ==
          "the concrete strength is not a number above zero");
  }
  plan::Insert insert = rated_insert();
  insert.rating->includes_factor = 0.99;
  CHECK(why_not(outcome_of(insert, 15.0 * MPa)) == why);
  insert.rating->includes_factor = 1.0;
  CHECK(in(kN, assessed(outcome_of(insert, 15.0 * MPa)).value) == Approx(40.0));
  insert.rating->includes_factor = 1e308;
  CHECK(why_not(outcome_of(insert, 15.0 * MPa)) == why);
}

TEST_CASE(
    "where a rating holds only as declared, weaker concrete has none, and the remedy names the lower "
    "declaration") {
  CHECK(in(kN, assessed(outcome_of(rated_insert(), 15.0 * MPa, tables::RatingScaling::as_declared)).value) ==
        Approx(160.0));
  const auto weaker = [](std::optional<Stress> basis) {
    tables::RuleSet rules = hand_made_rules();
    rules.rating_scaling.value = tables::RatingScaling::as_declared;
    if (basis) rules.rating_basis = made("rating_basis", Stress{*basis});
    Trace trace;
    return resistances::rated(rated_insert(), 14.0 * MPa, rules, trace);
  };
  const std::string any =
      "more strength before lifting, or a capacity that the supplier declares for this strength";
  CHECK(why_not(weaker({})) ==
        "the rating of insert R1 is declared for 15.0 MPa, and the concrete has 14.0 MPa");
  CHECK(remedy_for(weaker({})) == any);
  CHECK(remedy_for(weaker(15.0 * MPa)) == any);  // it is declared for that, and for nothing lower
  CHECK(remedy_for(weaker(10.0 * MPa)).starts_with("the capacity that its supplier declares for 10.0"));
}

TEST_CASE("the step prints the root where the rule set scales by it") {
  tables::RuleSet rules = hand_made_rules();
  rules.rating_scaling.value = tables::RatingScaling::square_root;
  Trace trace = Trace::recording();
  resistances::rated(rated_insert(), 7.5 * MPa, rules, trace);
  CHECK(step_named(trace, "U").formula == "P * n_P * sqrt(f / f_at)");
  CHECK(step_named(trace, "U").words ==
        "load at which insert R1 fails by its declaration, lowered to the strength of this lift");
  resistances::rated(rated_insert(), 15.0 * MPa, rules, trace);
  CHECK(step_named(trace, "U").words == "load at which insert R1 fails by its declaration, as declared");
}
