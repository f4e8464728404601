// What holds in corners that other tests pass by: pulls round a ring, picks off its middle line, a beam that
// tilts in its slings, two slings to one insert, links much shorter than the piece, tension of panels beside
// their picks.

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "demands/panel_bending.hpp"
#include "demands/prestressed_line.hpp"
#include "demands/ring_girder.hpp"
#include "demands/rope_balance.hpp"
#include "demands/rope_equilibrium.hpp"
#include "demands/rope_sharing.hpp"
#include "demands/round_wall.hpp"
#include "demands/stepped_panel_bending.hpp"
#include "demands/tree_distributions.hpp"
#include "demands/turning_frame.hpp"
#include "demands/unrest.hpp"
#include "support/assessed.hpp"
#include "support/beam_lines.hpp"
#include "support/hung_pieces.hpp"
#include "support/stepped_panels.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

const std::string aside = "the legs pull the ring aside or round",
                  uneven = "the picks of the ring do not stand evenly about its axis";

// Picks of 1000 N at 0, 90, 180 and 270 degrees, radius 1 m.
Ring on_four_quarters() {
  Ring ring{.radius = 1.0 * m,
            .wall = 0.1 * m,
            .depth = 0.4 * m,
            .depth_counted = 0.4 * m,
            .poisson = 0.2,
            .forces = {}};
  for (int i = 0; i < 4; ++i) ring.forces.push_back({.at = 0.5 * M_PI * i * radian, .up = 1000.0 * newton});
  return ring;
}

std::vector<plan::PlanarPoint> box_of(double x0_m, double y0_m, double x1_m, double y1_m) {
  return {{x0_m * m, y0_m * m}, {x1_m * m, y0_m * m}, {x1_m * m, y1_m * m}, {x0_m * m, y1_m * m}};
}

PanelForce panel_force(double x_m, double y_m, double up_N, bool is_pick) {
  return {{x_m * m, y_m * m}, up_N * newton, {}, {}, {}, is_pick};
}

Rope rigid_rope(std::size_t span, double length) { return {span, 1, length, 0.0}; }

const std::array<Point, 3> axes_as_cast = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}};

// From the hook to one insert 0.2 over the load: one of 0.5 that does not stretch, and another.
RopeSystem<1> on_two_slings(double second_length, double second_give) {
  RopeSystem<1> system;
  system.load = {1.0};
  for (const std::size_t r : {0U, 1U}) system.spans[r] = {{in_space, {}}, {0, {0.0, 0.0, 0.2}}};
  system.ropes[0] = rigid_rope(0, 0.5);
  system.ropes[1] = {1, 1, second_length, second_give};
  system.span_count = system.rope_count = 2;
  return system;
}

Attitude<1> below_the_hook(const RopeSystem<1>& system) {
  return attitude(system, std::array<Pose, 1>{{{{0.0, 0.0, -0.7}, axes_as_cast}}});
}

}  // namespace

// A pull round at angle a goes along (-sin a, cos a), against what pulls outward a quarter before it: 70 - 70
// N, and with one inward there 70 + 70 N, of the 2 % of 4000 N that may be out of balance.
TEST_CASE(
    "ring: a pull round at one pick is balanced by an outward one a quarter before it, not by an inward "
    "one") {
  for (std::size_t k = 0; k < 4; ++k) {
    CAPTURE(k);
    Ring ring = on_four_quarters();
    ring.forces[k].around = 70.0 * newton;
    RingForce& before = ring.forces[(k + 3) % 4];
    before.inward = -70.0 * newton;
    CHECK(is_assessed(ring_state(ring)));
    before.inward = 70.0 * newton;
    CHECK(why_not(ring_state(ring)) == aside);
  }
}

TEST_CASE("ring: a pull round towards larger angles is taken from its axial tension at that pick") {
  Ring ring = on_four_quarters();
  ring.forces[1].around = 70.0 * newton;
  ring.forces[0].inward = -70.0 * newton;
  const auto state = assessed(ring_state(ring));
  const RingSection *before = nullptr, *behind = nullptr;
  for (const RingSection& section : state.sections)
    if (std::abs(section.at.value() - 0.5 * M_PI) < 1e-9) {
      if (!before) before = &section;
      behind = &section;
    }
  REQUIRE(before != behind);
  CHECK((behind->axial - before->axial).value() == Approx(-70.0));
}

// 950 N at 1.05 m against 1000 N at 1 m: 2 x 2.5/3950; at 0.95 m 2 x 97.5/3950 = 4.9 % of the weight to one
// side.
TEST_CASE("ring: a lighter pick farther out balances the one across, on each side alike") {
  for (std::size_t k = 0; k < 4; ++k) {
    CAPTURE(k);
    Ring ring = on_four_quarters();
    ring.forces[k].up = 950.0 * newton;
    ring.forces[k].outside_middle = 50.0 * mm;
    CHECK(is_assessed(ring_state(ring)));
    ring.forces[k].outside_middle = -50.0 * mm;
    CHECK(why_not(ring_state(ring)) == uneven);
  }
}

TEST_CASE("round wall: pulls that add up to more than any number are no usable numbers") {
  RoundBand band{.inside = 0.95 * m, .outside = 1.05 * m, .height = 0.5 * m, .pulls = {}};
  band.pulls = {{Angle{}, 1e308 * newton, 1e308 * newton}};
  CHECK(why_not(round_state(band)) == "a number of the round wall that the insert bends is not usable");
}

TEST_CASE(
    "turning: what is level across an edge is of unit length, though the edge falls by 0.9 mm in a "
    "kilometre") {
  for (const double to_y : {0.0, 1.0})
    for (const double centre_side : {1.0, -1.0}) {
      const auto frame = assessed(frame_about_edge({at_m(0.0, 0.0, 0.0), at_m(1.0, to_y, 0.9e-6)},
                                                   at_m(0.5, 0.5 * to_y + centre_side, 0.1)));
      CHECK(norm(frame.rising) == Approx(1.0).epsilon(1e-14));
      CHECK(frame.rising.y * centre_side > 0.0);
      CHECK(std::abs(dot(frame.rising, frame.along)) < 1e-14);
    }
}

TEST_CASE("two slings of one length from the hook to one insert share evenly what they carried unevenly") {
  const RopeSystem<1> system = on_two_slings(0.5, 0.0);
  Tensions tension{0.7, 0.3};
  share_evenly(system, below_the_hook(system), tension);
  CHECK(tension[0] == Approx(0.5).epsilon(1e-12));
  CHECK(tension[1] == Approx(0.5).epsilon(1e-12));
}

// The second sling is 3e-8 shorter and gives 1e-7 under the whole load: stretched to the length of the first
// it holds 0.3 of it, and the first the other 0.7.
TEST_CASE("a sling that does not stretch leaves a stiff one beside it what that holds at the same length") {
  const RopeSystem<1> system = on_two_slings(0.5 - 3e-8, 1e-7);
  Attitude<1> at = below_the_hook(system);
  Tensions tension{0.5, 0.5};
  REQUIRE(balance(system, at, tension, 0.0, Rigid::held));
  CHECK(tension[0] == Approx(0.7).margin(1e-3));
  CHECK(tension[1] == Approx(0.3).margin(1e-3));
  CHECK(at.length[0] == Approx(0.5).epsilon(1e-10));
}

// The beam is turned by asin 0.6 about y; its centre of gravity 0.5 m along its own z axis stands 0.3 m to
// one side. Levers about the other sling: (6 x 1.3 + 10 x 1)/2 = 8.9 kN and (6 x 0.7 + 10 x 1)/2 = 7.1 kN.
TEST_CASE("a beam that tilts in its slings: a centre of gravity over its axis loads the sling it leans to") {
  for (const double over_axis : {1.0, -1.0}) {
    HungPiece piece;
    piece.carriers = {{"beam", 6.0 * kN, at_m(0.0, 0.0, 0.5 * over_axis), false}};
    piece.legs = {{"beam", at_m(-1.0, 0.0, 0.0), 2.0 * m, does_not_stretch},
                  {"beam", at_m(1.0, 0.0, 0.0), 2.0 * m, does_not_stretch},
                  {"A1", at_m(0.0, 0.0, 0.5), 1.5 * m, does_not_stretch}};
    piece.legs[0].to_carrier = piece.legs[1].to_carrier = piece.legs[2].from_carrier = 0;
    piece.legs[1].from_at = at_m(2.0, 0.0, 0.0);
    piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
    Hanging hanging;
    hanging.up = {0.0, 0.0, 1.0};
    hanging.legs.resize(3);
    hanging.spans = {{at_m(-1.0, 0.0, 4.0), at_m(-1.0, 0.0, 2.0)},
                     {at_m(1.0, 0.0, 4.0), at_m(1.0, 0.0, 2.0)},
                     {at_m(0.0, 0.0, 2.0), at_m(0.0, 0.0, 0.5)}};
    CarrierPose pose;
    pose.origin = at_m(0.0, 0.0, 2.0);
    pose.axes = {{{0.8, 0.0, -0.6}, {0.0, 1.0, 0.0}, {0.6, 0.0, 0.8}}};
    hanging.carriers = {pose};
    const auto shared = assessed(tree_distributions(piece, hanging));
    REQUIRE(shared.size() == 1);
    CHECK(in(kN, shared[0].legs[0].tension) == Approx(8.0 - 0.9 * over_axis));
    CHECK(in(kN, shared[0].legs[1].tension) == Approx(8.0 + 0.9 * over_axis));
    CHECK(in(kN, shared[0].legs[2].tension) == Approx(10.0));
  }
}

TEST_CASE(
    "whichever side of a piece is up, a pick on that side holds it and one on the other lets it roll over") {
  Hanging hanging;
  hanging.legs.resize(1);
  hanging.legs[0].tension = 10.0 * kN;
  for (const Direction& up :
       {Direction{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}, {0.6, 0.8, 0.0}, {0.0, -1.0, 0.0}})
    for (const double side : {0.5, -0.5}) {
      CAPTURE(up.x, up.y, up.z, side);
      HungPiece piece;
      piece.legs = {{"A1", at_m(side * up.x, side * up.y, side * up.z), 2.0 * m, does_not_stretch}};
      piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
      piece.upright = up;
      CHECK(rolled_over(piece, hanging).why ==
            (side > 0.0 ? "the piece would turn by more than a right angle before it hangs"
                        : "the piece would roll over: its centre of gravity is above the picks"));
    }
}

// Lifted at its ends, 12 m x 0.4 x 0.6 m, 5.766 kN/m: w L^2/8/Z in the middle, which is no end and no middle
// of what the strands divide the line into: they end at 9 m, and are all there from 0.6 m to 8.4 m.
TEST_CASE(
    "strands that end short of the piece: the worst is read in mid-span, between the places where they "
    "change") {
  const BeamLine line = on_supports(BeamLine{{rectangle_step(0.0, 12.0, 0.4, 0.6, 5.766)}, {}}, {0.0, 12.0});
  const Ratio one = Ratio::from_value(1.0);
  const StrandRow row{60.0 * kN, {{0.0 * m, 0.25 * m}, {9.0 * m, 0.25 * m}}, 0.6 * m};
  const auto state = assessed(prestressed_state(line, {row}, {one, one, one, one, one, one}));
  const double M_Z = 5.766 * 144.0 / 8.0 / 0.024, P_A = 60.0 / 0.24, Pe_Z = 60.0 * 0.05 / 0.024;  // kPa
  CHECK(in(kPa, state.tension.stress) == Approx(M_Z - P_A - Pe_Z).epsilon(1e-9));
  CHECK(in(m, state.tension.at) == Approx(6.0).epsilon(1e-6));
  CHECK_FALSE(state.tension.top);
  CHECK(in(kPa, state.compression.stress) == Approx(-M_Z - P_A + Pe_Z).epsilon(1e-9));
  CHECK(in(m, state.compression.at) == Approx(6.0).epsilon(1e-6));
  CHECK(state.compression.top);
}

// Weightless, parts of 500 N hung at four places of its ends, four picks of 500 N 0.4 m inside them: 2 x 500
// x 0.4 N m of hogging all the way between the picks, on 0.5 m of width; 6 M/(b t^2) of it, t = 0.1 m there
// and 0.2 m elsewhere.
TEST_CASE("a panel that is thin between its picks cracks at the top there, by the section it has there") {
  SteppedPanel panel{.outer = box_of(0.0, 0.0, 1.6, 0.5),
                     .holes = {},
                     .zones = {{box_of(0.0, 0.0, 0.6, 0.5), {}, 0.0 * m, -0.2 * m},
                               {box_of(0.6, 0.0, 1.0, 0.5), {}, 0.0 * m, -0.1 * m},
                               {box_of(1.0, 0.0, 1.6, 0.5), {}, 0.0 * m, -0.2 * m}},
                     .poisson = Ratio{},
                     .loads = {},
                     .patch = 0.1 * m,
                     .strip = 0.3 * m};
  SteppedLoad load{.pressure = {Stress{}, Stress{}, Stress{}}, .forces = {}};
  for (const double y_m : {0.125, 0.375}) {
    for (const double x_m : {0.0, 1.6}) load.forces.push_back(panel_force(x_m, y_m, -500.0, false));
    for (const double x_m : {0.4, 1.2}) load.forces.push_back(panel_force(x_m, y_m, 500.0, true));
  }
  panel.loads = {load};
  const auto bent = assessed(stepped_panel_bending(panel)).front();
  const double mean_MPa = 6.0 * 2.0 * 500.0 * 0.4 / (0.5 * 0.1 * 0.1) / 1e6;
  CHECK(in(MPa, bent.top.tension) >= 0.99 * mean_MPa);
  CHECK(in(MPa, bent.top.tension) <= 1.2 * mean_MPa);
  CHECK(in(m, bent.top.at.x) >= 0.55);
  CHECK(in(m, bent.top.at.x) <= 1.05);
}

// 1000 N hung 0.45 m from one of two picks 1.5 m apart: 700 x 0.45 N m below it over 1 m of width, more at
// its place.
TEST_CASE("a part hung on a panel off its middle: the bottom is in tension most where it hangs") {
  SteppedPanel panel = panel_of_two_halves();
  panel.zones[1].bottom = panel.zones[0].bottom;
  panel.loads = {{.pressure = {Stress{}, Stress{}},
                  .forces = {panel_force(0.25, 0.5, 700.0, true), panel_force(1.75, 0.5, 300.0, true),
                             panel_force(0.7, 0.5, -1000.0, false)}}};
  const auto bent = assessed(stepped_panel_bending(panel)).front();
  CHECK(std::hypot(in(m, bent.bottom.at.x) - 0.7, in(m, bent.bottom.at.y) - 0.5) < 0.075);
  CHECK(in(MPa, bent.bottom.tension) > 6.0 * 700.0 * 0.45 / (1.0 * 0.1 * 0.1) / 1e6);
}

// A prop under the middle of a panel carries 9 of its 10 kN, two picks 0.25 m to each side the rest. Tension
// at the top within half a strip of a pick is that of the strips: with strips of 0.5 m the prop stands just
// there.
TEST_CASE("what lies half a strip from a pick belongs to the strip, as what lies nearer") {
  const auto top_with = [](double strip_m) {
    Panel panel;
    panel.outer = box_of(0.0, 0.0, 2.0, 2.0);
    panel.poisson = Ratio{0.2};
    panel.patch = 0.2 * m, panel.strip = strip_m * m;
    panel.loads = {{.pressure = 2500.0 * Pa,
                    .forces = {panel_force(1.0, 0.75, 500.0, true), panel_force(1.0, 1.25, 500.0, true),
                               panel_force(1.0, 1.0, 9000.0, false)}}};
    return assessed(panel_bending(panel)).front().top_tension.moment.value();
  };
  const double just_there = top_with(0.5);
  CHECK(just_there == Approx(top_with(0.5 + 1e-6)).epsilon(1e-3));
  CHECK(just_there < 0.95 * top_with(0.5 - 1e-6));
}

// Links of a thousandth of the size, 4 thousandths from the middle, the load a quarter of the size above
// them: a stretch of 2 % of their length lets them hold it, and links that do not stretch hold it the more.
TEST_CASE("a load above four links that do not stretch stands, however short they are") {
  constexpr double length = 1e-3, from_middle = 4e-3, above = 0.25;
  RopeSystem<1> system;
  system.load = {1.0};
  system.yaw_is_free = false;
  for (const double x : {from_middle, -from_middle})
    for (const double y : {from_middle, -from_middle}) {
      system.spans[system.span_count] = {{in_space, {x, y, 0.0}}, {0, {x, y, -above}}};
      system.ropes[system.rope_count++] = rigid_rope(system.span_count++, length);
    }
  const Rest<1> rest = come_to_rest<1>(system, {{{{0.0, 0.0, above - length}, axes_as_cast}}});
  REQUIRE(rest.ending == Ending::at_rest);
  for (std::size_t r = 0; r < 4; ++r) CHECK(rest.tension[r] == Approx(0.25).epsilon(1e-6));
  CHECK(rest.poses[0].origin.z == Approx(above - length).epsilon(1e-9));
}
