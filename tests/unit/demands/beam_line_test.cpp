#include "demands/beam_line.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <string>

#include "support/beam_lines.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double no_number = std::numeric_limits<double>::quiet_NaN();

BeamLine held() { return on_supports(unit_beam(), {0.2, 0.8}); }

}  // namespace

TEST_CASE("a propped cantilever as an overhanging beam: supports under both ends of a far span") {
  // Three supports at 0, 1/2 and 1: 3/16, 5/8 and 3/16 of w L (continuous beam of two equal spans).
  const BeamLine beam = on_supports(unit_beam(), {0.0, 0.5, 1.0});
  CHECK(reaction_kN(beam, 0) == Approx(3.0 / 16.0));
  CHECK(reaction_kN(beam, 1) == Approx(5.0 / 8.0));
  CHECK(reaction_kN(beam, 2) == Approx(3.0 / 16.0));
  CHECK(moment_kNm(section_behind(state_of(beam), 0.5)) == Approx(-1.0 / 32.0));
}

TEST_CASE("the stiffer part draws load where supports are more than two") {
  // Two equal spans L/2, the right of twice the stiffness: theorem of three moments, M (1 + 1/2) L/2 / 3 per side:
  // 2 M (l + l/2) = -w l^3/4 (1 + 1/2), so M = -w l^2/8 for any stiffness; the reactions stay symmetric.
  BeamLine beam{{rectangle_step(0.0, 0.5, 0.1, 0.1, 1.0), rectangle_step(0.5, 1.0, 0.2, 0.1, 1.0)}, {}};
  CHECK(moment_kNm(section_behind(state_of(on_supports(beam, {0.0, 0.5, 1.0})), 0.5)) == Approx(-1.0 / 32.0));
  // Load on the left span only: 2 M (l/I1 + l/I2) = -w l^3/(4 I1), I2 = 2 I1: M = -w l^2/12.
  beam.steps[1].load = LineLoad{};
  CHECK(moment_kNm(section_behind(state_of(on_supports(beam, {0.0, 0.5, 1.0})), 0.5)) == Approx(-0.25 / 12.0));
}

TEST_CASE("supports may be given in any order") {
  const auto reactions = assessed(demands::support_reactions(unit_beam(), {1.0 * m, 0.0 * m, 0.5 * m}));
  CHECK(in(kN, reactions[2]) == Approx(5.0 / 8.0));
}

TEST_CASE("a point load in mid-span") {
  BeamLine beam{{rectangle_step(0.0, 2.0, 0.1, 0.1, 0.0)}, {upward(1.0 * m, -10.0 * kN)}};
  CHECK(moment_kNm(state_of(on_supports(beam, {0.0, 2.0})).most_sagging()) == Approx(5.0));
}

TEST_CASE("prestress below the centroid presses the bottom") {
  // 100 kN, 30 mm below the centroid of 0.1 x 0.2 m, no load: N/A = -5 MPa, N e/S = 4.5 MPa.
  BeamLine beam{{rectangle_step(0.0, 2.0, 0.1, 0.2, 0.0)}, {}};
  beam.steps[0].prestress = demands::Prestress{100.0 * kN, 70.0 * mm};
  const BeamSection section = state_of(beam).most_top_tension();
  CHECK(in(MPa, section.top_stress) == Approx(-0.5));
  CHECK(in(MPa, section.bottom_stress) == Approx(-9.5));
}

TEST_CASE("a thrust carries its moment over a step in the centroid") {
  // Pressed at mid-depth of the shallow end, whose centroid is 0.05 m below that of the deep end.
  BeamLine beam{{rectangle_step(0.0, 1.0, 0.1, 0.1, 0.0), rectangle_step(1.0, 2.0, 0.1, 0.2, 0.0)}, {}};
  beam.forces = {{0.0 * m, 50.0 * mm, 10.0 * kN, {}}, {2.0 * m, 50.0 * mm, -10.0 * kN, {}}};
  const BeamState state = state_of(beam);
  CHECK(moment_kNm(section_before(state, 1.0)) == Approx(0.0).margin(1e-12));
  CHECK(moment_kNm(section_behind(state, 1.0)) == Approx(-0.5));
  CHECK(in(kN, section_behind(state, 1.0).axial) == Approx(-10.0));
}

TEST_CASE("what cannot be computed is not assessed") {
  BeamLine beam = held();
  SECTION("no steps") { beam.steps.clear(); }
  SECTION("no area") { beam.steps[0].area = Area{}; }
  SECTION("stiffness not a number") { beam.steps[0].second_moment = SecondMoment::from_value(no_number); }
  SECTION("load not a number") { beam.steps[0].load = no_number * kN / m; }
  SECTION("centroid outside the section") { beam.steps[0].centroid = 2.0 * m; }
  SECTION("a gap") {
    beam.steps.push_back(rectangle_step(1.1, 1.2, 0.1, 0.1, 0.0));
  }
  SECTION("a force beyond the end") { beam.forces.push_back(upward(1.5 * m, 0.0 * kN)); }
  SECTION("a force that is not a number") { beam.forces[0].up = no_number * kN; }
  SECTION("forces that do not balance") { beam.forces[0].up *= 1.001; }
  SECTION("thrust that does not balance") { beam.forces[0].along = 1.0 * kN; }
  CHECK_FALSE(why_not(demands::beam_state(beam)).empty());
}

TEST_CASE("supports that cannot carry are not assessed") {
  const auto refused = [](std::vector<Length> supports) {
    return why_not(demands::support_reactions(unit_beam(), supports));
  };
  CHECK(refused({0.5 * m}) == "the piece needs two supports to stand on");
  CHECK(refused({0.5 * m, 0.5 * m}) == "two supports at one place");
  CHECK(refused({0.5 * m, 1.5 * m}) == "a support lies beyond the ends of the piece");
  CHECK(refused({0.5 * m, no_number * m}).size() > 0);
  CHECK(refused(std::vector<Length>(17, 0.5 * m)) == "more than 16 supports under one line");
}

TEST_CASE("of a section each number that is none, and each order of its heights that is none, is refused") {
  const std::string no_section = "a section of the piece has no usable stiffness or load";
  const auto why = [](auto change) {
    BeamLine beam = held();
    change(beam.steps[0]);
    return why_not(demands::beam_state(beam));
  };
  for (const double bad :
       {no_number, std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    for (Length BeamStep::*const height :
         {&BeamStep::bottom, &BeamStep::centroid, &BeamStep::top, &BeamStep::from, &BeamStep::to})
      CHECK(why([&](BeamStep& step) { step.*height = bad * m; }) == no_section);
    CHECK(why([&](BeamStep& step) { step.area = bad * m2; }) == no_section);
    CHECK(why([&](BeamStep& step) { step.second_moment = SecondMoment::from_value(bad); }) == no_section);
    CHECK(why([&](BeamStep& step) { step.load = bad * kN / m; }) == no_section);
    CHECK(why([&](BeamStep& step) { step.prestress = {bad * kN, 0.05 * m}; }) == no_section);
    CHECK(why([&](BeamStep& step) { step.prestress = {1.0 * kN, bad * m}; }) == no_section);
  }
  CHECK(why([](BeamStep& step) { step.area = Area{}; }) == no_section);
  CHECK(why([](BeamStep& step) { step.second_moment = SecondMoment{}; }) == no_section);
  CHECK(why([](BeamStep& step) { step.to = step.from; }) == no_section);
  CHECK(why([](BeamStep& step) { step.centroid = step.bottom; }) == no_section);
  CHECK(why([](BeamStep& step) { step.top = step.centroid; }) == no_section);
  BeamLine with_strands = held();
  with_strands.steps[0].prestress = {1.0 * kN, 0.05 * m};
  CHECK(is_assessed(demands::beam_state(with_strands)));
}

TEST_CASE("of a force on a line each number that is none is refused, and one beyond either end") {
  for (const double bad : {no_number, std::numeric_limits<double>::infinity()}) {
    const auto why = [](auto change) {
      BeamLine beam = held();
      change(beam.forces[0]);
      return why_not(demands::beam_state(beam));
    };
    const std::string no_force = "a force on the piece is not a usable number";
    CHECK(why([&](BeamForce& force) { force.at = bad * m; }) == no_force);
    CHECK(why([&](BeamForce& force) { force.height = bad * m; }) == no_force);
    CHECK(why([&](BeamForce& force) { force.along = bad * kN; }) == no_force);
    CHECK(why([&](BeamForce& force) { force.up = bad * kN; }) == no_force);
  }
  for (const double at : {-0.001, 1.001}) {
    BeamLine beam = held();
    beam.forces.push_back(upward(at * m, Force{}));
    CHECK(why_not(demands::beam_state(beam)) == "a force acts beyond the ends of the piece");
  }
  BeamLine gap = held();
  gap.steps.push_back(rectangle_step(0.999, 1.2, 0.1, 0.1, 0.0));
  CHECK(why_not(demands::beam_state(gap)) == "the sections of the piece leave a gap or overlap");
}

// w L^2/8 in the middle, where the shear is zero; w (L/2 - x) of shear and w x (L - x)/2 of moment on the
// way.
TEST_CASE("between its ends the moment is extreme where the shear is zero, and only there") {
  const BeamState state = state_of(on_supports(unit_beam(), {0.0, 1.0}));
  REQUIRE(state.sections.size() == 3);
  CHECK(in(m, state.sections[1].at) == Approx(0.5));
  CHECK(moment_kNm(state.sections[1]) == Approx(1.0 / 8.0));
  const BeamState off = state_of(on_supports(unit_beam(), {0.0, 0.75}));  // 1/3 and 2/3 of the load
  CHECK(in(m, off.most_sagging().at) == Approx(1.0 / 3.0));
  CHECK(moment_kNm(off.most_sagging()) == Approx(1.0 / 18.0));
  CHECK(in(m, off.most_hogging().at) == Approx(0.75));
  CHECK(moment_kNm(off.most_hogging()) == Approx(-1.0 / 32.0));
}
