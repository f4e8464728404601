// Edges of the adhesion: src/loads/adhesion.cpp.

#include <cmath>
#include <limits>

#include "loads/adhesion.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double nan_number = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

Outcome<loads::Adhesion> adhesion_of(const plan::Plan& plan, const piece::Body& body,
                                     const tables::Tables& tables) {
  Trace trace;
  return loads::adhesion(plan, stage_of(plan::StageKind::strip), body, tables, trace);
}

}  // namespace

TEST_CASE("adhesion: stated just below zero, or no number, is not assessed, stated zero is used") {
  plan::Plan plan = culvert_plan();
  const double bad = GENERATE(as<double>{}, std::nextafter(0.0, -1.0), -1000.0, nan_number, infinite);
  CAPTURE(bad);
  plan.form->contacts[0].adhesion = bad * Pa;
  CHECK(why_not(adhesion_of(plan, culvert_body(), hand_made_tables())) ==
        "the adhesion of form contact 1 is not a usable number");
  plan.form->contacts[0].adhesion = Stress{};
  CHECK(assessed(adhesion_of(plan, culvert_body(), hand_made_tables())).total == Force{});
}

TEST_CASE("adhesion: a table's value that is not above zero and finite is not assessed") {
  const double bad = GENERATE(as<double>{}, 0.0, -1.0, nan_number, infinite);
  CAPTURE(bad);
  tables::Tables tables = hand_made_tables();
  tables.form_faces.at("smooth").adhesion.value = bad * kPa;
  CHECK(why_not(adhesion_of(culvert_plan(), culvert_body(), tables)) ==
        "the adhesion of the finish 'smooth' in the tables is not a usable number");
}

TEST_CASE("adhesion: an area that is not above zero and finite is not assessed") {
  piece::Body body = culvert_body();
  const double bad = GENERATE(as<double>{}, 0.0, -1.0, nan_number, infinite);
  CAPTURE(bad);
  body.contacts[0].area = bad * m2;
  CHECK(why_not(adhesion_of(culvert_plan(), body, hand_made_tables())) ==
        "the area of form contact 1 is not a usable number");
}

TEST_CASE("adhesion: a face that the pull does not strip straight off counts with its whole area") {
  piece::Body body = culvert_body();
  const double whole_kN = in(kN, assessed(adhesion_of(culvert_plan(), body, hand_made_tables())).total);
  body.contacts[0].on_pull = Area{};
  CHECK(in(kN, assessed(adhesion_of(culvert_plan(), body, hand_made_tables())).total) == whole_kN);
}

TEST_CASE("adhesion: draft does not lower it") {
  plan::Plan plan = culvert_plan();
  plan.form->contacts[0].draft = 5.0 * deg;
  CHECK(assessed(adhesion_of(plan, culvert_body(), hand_made_tables())).total ==
        assessed(adhesion_of(culvert_plan(), culvert_body(), hand_made_tables())).total);
}
