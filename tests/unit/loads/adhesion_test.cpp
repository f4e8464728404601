#include "loads/adhesion.hpp"

#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const plan::Stage strip = stage_of(plan::StageKind::strip);

Outcome<loads::Adhesion> adhesion_of(const plan::Plan& plan) {
  Trace trace;
  return loads::adhesion(plan, strip, culvert_body(), hand_made_tables(), trace);
}

}  // namespace

TEST_CASE("adhesion is the table's stress of the finish on the whole contact area") {
  const loads::Adhesion grip = assessed(adhesion_of(culvert_plan()));
  REQUIRE(grip.loads.size() == 1);
  CHECK(in(kN, grip.total) == Approx(1.0 * in(m2, 168.0 * ft2)).epsilon(1e-12));
  CHECK(in(kN, grip.loads[0].force) == Approx(in(kN, grip.total)));
}

TEST_CASE("adhesion acts at the centroid of its contact area, not of the piece") {
  const loads::Adhesion grip = assessed(adhesion_of(culvert_plan()));
  CHECK(in(ft, grip.loads.at(0).at.z) == Approx(3.0));
}

TEST_CASE("an adhesion stated by the plan replaces the table's, higher or lower") {
  plan::Plan plan = culvert_plan();
  const double stated_kPa = GENERATE(0.0, 0.24, 5.0);
  CAPTURE(stated_kPa);
  plan.form->contacts[0].adhesion = stated_kPa * kPa;
  plan.form->contacts[0].finish = GENERATE(as<std::string>{}, "smooth", "", "a finish nobody knows");
  CHECK(in(kN, assessed(adhesion_of(plan)).total) == Approx(stated_kPa * in(m2, 168.0 * ft2)).epsilon(1e-12));
}

TEST_CASE("contacts add up, each at its own place") {
  plan::Plan plan = culvert_plan();
  plan.form->contacts.push_back(plan.form->contacts[0]);
  plan.form->contacts[1].finish = "rough";
  piece::Body body = culvert_body();
  body.contacts.push_back({2.0 * m2, 2.0 * m2, {1.0 * m, 2.0 * m, 0.0 * m}, {}});
  Trace trace = Trace::recording();
  const loads::Adhesion grip = assessed(loads::adhesion(plan, strip, body, hand_made_tables(), trace));
  REQUIRE(grip.loads.size() == 2);
  CHECK(in(kN, grip.loads[1].force) == Approx(6.0));
  CHECK(in(m, grip.loads[1].at.y) == Approx(2.0));
  CHECK(in(kN, grip.total) == Approx(in(m2, 168.0 * ft2) + 6.0).epsilon(1e-12));
  CHECK(step_named(trace, "F_adh").formula == "F_adh_1 + F_adh_2");
  CHECK(source_ids(step_named(trace, "F_adh_2")) == std::vector<std::string>{"hand-made.adhesion.rough"});
}

TEST_CASE("nothing grips outside the strip stage, whatever the form says") {
  const auto kind = GENERATE(plan::StageKind::turn, plan::StageKind::yard, plan::StageKind::store,
                             plan::StageKind::haul, plan::StageKind::set);
  plan::Plan plan = culvert_plan();
  if (GENERATE(true, false)) plan.form.reset();
  Trace trace = Trace::recording();
  const auto grip =
      assessed(loads::adhesion(plan, stage_of(kind), culvert_body(), hand_made_tables(), trace));
  CHECK(grip.loads.empty());
  CHECK(grip.total == Force{});
  CHECK(step_named(trace, "F_adh").result.number == 0.0);
}

TEST_CASE("a strip stage that does not say what grips the piece is not assessed") {
  plan::Plan plan = culvert_plan();
  plan.form.reset();
  CHECK(why_not(adhesion_of(plan)) == "the plan does not say what grips the piece in its form");
  CHECK(
      remedy_for(adhesion_of(plan)) ==
      "write [form] with a [[form.contact]] for each gripped face, or with contact = [] where nothing grips");

  plan.form = plan::Form{};
  CHECK(why_not(adhesion_of(plan)) == "[form] does not say which faces of the piece it grips");
}

TEST_CASE("that nothing grips the piece is a statement, and it is printed") {
  plan::Plan plan = culvert_plan();
  plan.form = plan::Form{};
  plan.form->nothing_grips = true;
  Trace trace = Trace::recording();
  const auto grip = assessed(loads::adhesion(plan, strip, culvert_body(), hand_made_tables(), trace));
  CHECK(grip.total == Force{});
  CHECK(step_named(trace, "F_adh").words ==
        "adhesion of the form: the plan states that nothing grips the piece");
}

TEST_CASE("a finish that the tables do not hold is not assessed, and the remedy lists those they hold") {
  plan::Plan plan = culvert_plan();
  plan.form->contacts[0].finish = "velvet";
  CHECK(why_not(adhesion_of(plan)) == "the tables hold no adhesion for the finish 'velvet'");
  CHECK(remedy_for(adhesion_of(plan)) ==
        "write adhesion in [[form.contact]], or a finish of the tables: rough, smooth");
  plan.form->contacts[0].finish.clear();
  CHECK(why_not(adhesion_of(plan)) == "form contact 1 has neither a finish nor an adhesion");
}

TEST_CASE("form contacts that geometry did not find are not assessed") {
  piece::Body body = culvert_body();
  body.contacts.clear();
  Trace trace;
  CHECK(why_not(loads::adhesion(culvert_plan(), strip, body, hand_made_tables(), trace)) ==
        "geometry found 0 of the 1 form contacts");
}

TEST_CASE("the steps of adhesion show the whole area and its part on the pull") {
  Trace trace = Trace::recording();
  assessed(loads::adhesion(culvert_plan(), strip, culvert_body(), hand_made_tables(), trace));
  CHECK(step_named(trace, "A_pull_1").result.number == Approx(in(m2, 16.8 * ft2)));
  const Step force = step_named(trace, "F_adh_1");
  CHECK(force.formula == "a_1 * A_1");
  REQUIRE(force.given.size() == 2);
  CHECK(force.given[1].number == Approx(in(m2, 168.0 * ft2)));
  CHECK(force.result.number == Approx(force.given[0].number * force.given[1].number));
  CHECK(source_ids(force) == std::vector<std::string>{"hand-made.adhesion.smooth"});
}

TEST_CASE("an adhesion stated by the plan has no table behind it, and its step says so") {
  plan::Plan plan = culvert_plan();
  plan.form->contacts[0].adhesion = 2.0 * kPa;
  Trace trace = Trace::recording();
  assessed(loads::adhesion(plan, strip, culvert_body(), hand_made_tables(), trace));
  const Step force = step_named(trace, "F_adh_1");
  CHECK(force.words == "adhesion of form contact 1, stated by the plan");
  CHECK(force.sources.empty());
}

TEST_CASE("an adhesion or an area that is no usable number is named with the number of its contact") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  Trace trace;
  for (const double bad : {-1.0, nan, infinite}) {
    CAPTURE(bad);
    plan::Plan plan = culvert_plan();
    plan.form->contacts[0].adhesion = bad * kPa;
    CHECK(why_not(adhesion_of(plan)) == "the adhesion of form contact 1 is not a usable number");
    tables::Tables tables = hand_made_tables();
    tables.form_faces.at("smooth").adhesion.value = bad * kPa;
    CHECK(why_not(loads::adhesion(culvert_plan(), strip, culvert_body(), tables, trace)) ==
          "the adhesion of the finish 'smooth' in the tables is not a usable number");
    piece::Body body = culvert_body();
    body.contacts[0].area = bad * m2;
    CHECK(why_not(loads::adhesion(culvert_plan(), strip, body, hand_made_tables(), trace)) ==
          "the area of form contact 1 is not a usable number");
  }
  piece::Body body = culvert_body();
  body.contacts[0].area = Area{};
  CHECK(why_not(loads::adhesion(culvert_plan(), strip, body, hand_made_tables(), trace)) ==
        "the area of form contact 1 is not a usable number");
  tables::Tables tables = hand_made_tables();
  tables.form_faces.at("smooth").adhesion.value = Stress{};
  CHECK(why_not(loads::adhesion(culvert_plan(), strip, culvert_body(), tables, trace)) ==
        "the adhesion of the finish 'smooth' in the tables is not a usable number");
}

TEST_CASE("an adhesion below the least of the rule set is raised to it, one at or above it stays") {
  for (const auto& [stated_kPa, counts_kPa] :
       {std::pair{1.4, 1.5}, std::pair{1.5, 1.5}, std::pair{1.6, 1.6}}) {
    CAPTURE(stated_kPa);
    plan::Plan plan = culvert_plan();
    plan.form->contacts[0].adhesion = stated_kPa * kPa;
    Trace trace = Trace::recording();
    const auto grip = assessed(loads::adhesion(plan, strip, culvert_body(), hand_made_tables(), trace,
                                               made("adhesion_least", Stress{1.5 * kPa})));
    CHECK(in(kN, grip.total) == Approx(counts_kPa * in(m2, 168.0 * ft2)).epsilon(1e-12));
    CHECK(step_named(trace, "F_adh_1").words ==
          (stated_kPa < 1.5
               ? "adhesion of form contact 1, stated by the plan, raised to the least of the rule set"
               : "adhesion of form contact 1, stated by the plan"));
  }
}

TEST_CASE("a first stage that is not strip asks for the form too, with another remedy") {
  plan::Plan plan = culvert_plan();
  plan.stages = {stage_of(plan::StageKind::yard)};
  plan.form.reset();
  Trace trace;
  const auto grip = loads::adhesion(plan, plan.stages.front(), culvert_body(), hand_made_tables(), trace);
  CHECK(why_not(grip) == "the plan does not say what grips the piece in its form");
  CHECK(remedy_for(grip).starts_with("[form] released = true where it was out of its form before"));
}
