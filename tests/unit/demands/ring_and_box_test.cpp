// Rings and boxes: what the tables of tests/verification do not show.

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include <catch2/catch.hpp>

#include "demands/box_frame.hpp"
#include "demands/ring_girder.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

Ring thin_ring() {
  return {.radius = 1.0 * m, .wall = 0.1 * m, .depth = 0.4 * m, .depth_counted = 0.4 * m, .poisson = 0.2, .forces = {}};
}

Ring on_picks(int picks, double up_N, double inward_N = 0.0) {
  Ring ring = thin_ring();
  for (int i = 0; i < picks; ++i)
    ring.forces.push_back({.at = (0.3 + 2.0 * M_PI * i / picks) * radian, .up = up_N * newton, .inward = inward_N * newton});
  return ring;
}

}  // namespace

TEST_CASE("a ring pinched by two level forces: P R/pi under them, P R (1/2 - 1/pi) between, P/2 of compression") {
  const auto state = assessed(ring_state(on_picks(2, 1.0, 1.0)));
  double least = 0.0, most = 0.0, axial = 0.0;
  for (const RingSection& section : state.sections) {
    least = std::min(least, section.level_bending.value());
    most = std::max(most, section.level_bending.value());
    axial = std::min(axial, section.axial.value());
  }
  CHECK(std::max(most, -least) == Approx(1.0 / M_PI).epsilon(1e-4));
  CHECK(std::min(most, -least) == Approx(0.5 - 1.0 / M_PI).epsilon(1e-4));
  CHECK(axial == Approx(-0.5).epsilon(1e-4));
}

TEST_CASE("inward forces at the top all round turn the ring's section: tension below, moment t R") {
  Ring ring = thin_ring();
  for (int i = 0; i < 90; ++i)
    ring.forces.push_back({.at = 2.0 * M_PI * i / 90 * radian, .up = 1e-3 * newton,
                           .inward = 2.0 * M_PI / 90.0 * newton, .above_middle = 1.0 * m});
  const auto state = assessed(ring_state(ring));
  for (const RingSection& section : state.sections) CHECK(section.bending.value() == Approx(1.0).epsilon(0.01));
}

TEST_CASE("picks outside the middle line twist the ring: tension at the top, moment P e over 2 pi") {
  Ring ring = thin_ring();
  for (int i = 0; i < 90; ++i)
    ring.forces.push_back({.at = 2.0 * M_PI * i / 90 * radian, .up = 2.0 * M_PI / 90.0 * newton,
                           .outside_middle = 0.01 * m});
  const auto state = assessed(ring_state(ring));
  double mean = 0.0;
  for (const RingSection& section : state.sections) mean += section.bending.value() / static_cast<double>(state.sections.size());
  CHECK(std::abs(mean) == Approx(0.01).epsilon(0.05));
}

TEST_CASE("the ring closes, and its tension is at least that of bending alone") {
  const auto state = assessed(ring_state(on_picks(3, 1000.0, 577.0)));
  CHECK(state.sections.front().bending.value() == Approx(state.sections.back().bending.value()).margin(1e-6));
  CHECK(state.sections.front().torsion.value() == Approx(state.sections.back().torsion.value()).margin(1e-6));
  const RingSection& most = state.most_tension();
  CHECK(most.tension.value() >= 6.0 * std::abs(most.bending.value()) / (0.1 * 0.4 * 0.4));
  Ring shallow = on_picks(3, 1000.0, 577.0);
  shallow.depth_counted = 0.2 * m;
  CHECK(assessed(ring_state(shallow)).most_tension().tension > most.tension);
}

TEST_CASE("torsion of rectangles: 0.1406 and 0.208, 0.229 and 0.246, a third when long") {
  CHECK(torsion_stiffness(1.0, 1.0) == Approx(0.1406).margin(0.00005));
  CHECK(1.0 / torsion_shear(1.0, 1.0) == Approx(0.208).margin(0.0005));
  CHECK(torsion_stiffness(2.0, 1.0) == Approx(0.229).margin(0.0005));
  CHECK(1.0 / torsion_shear(2.0, 1.0) == Approx(0.246).margin(0.0005));
  CHECK(torsion_stiffness(1000.0, 1.0) == Approx(1.0 / 3.0).epsilon(0.001));
}

TEST_CASE("a ring that cannot be computed is not assessed") {
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  Ring ring = on_picks(3, 1000.0);
  SECTION("no picks") { ring.forces.clear(); }
  SECTION("one pick carries all") { ring.forces.resize(1); }
  SECTION("picks to one side") { ring.forces[1].at = ring.forces[0].at; }
  SECTION("a leg that pulls aside") { ring.forces[0].inward = 500.0 * newton; }
  SECTION("legs that pull round") { for (RingForce& force : ring.forces) force.around = 500.0 * newton; }
  SECTION("no number") { ring.forces[1].up = no_number * newton; }
  SECTION("no place") { ring.forces[1].at = no_number * radian; }
  SECTION("no radius") { ring.radius = 0.0 * m; }
  SECTION("no wall") { ring.wall = no_number * m; }
  SECTION("no depth") { ring.depth_counted = 0.0 * m; }
  CHECK_FALSE(is_assessed(ring_state(ring)));
}

TEST_CASE("a box: thrust above the middle of the slab bends it, nothing unusable is assessed") {
  BoxFrame box{.width = 2.0 * m, .height = 1.6 * m, .top = 0.2 * m, .bottom = 0.2 * m, .side = 0.2 * m,
               .top_load = 4.8 * kPa, .bottom_load = 4.8 * kPa, .side_load = 4.8 * kPa, .pick = 0.3 * m, .thrust = {}};
  const auto upright = assessed(box_moments(box));
  box.thrust = PlateMoment::from_value(1000.0);
  const auto inclined = assessed(box_moments(box));
  // Statics of the top slab: corner, pick and middle move together but for the thrust between the picks.
  CHECK((inclined.top_middle - inclined.top_corner - (upright.top_middle - upright.top_corner)).value() ==
        Approx(-1000.0));
  CHECK((inclined.top_pick - inclined.top_corner - (upright.top_pick - upright.top_corner)).value() ==
        Approx(0.0).margin(1e-9));
  CHECK(inclined.top_corner > upright.top_corner);  // the slab pulls its corners after it
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  SECTION("span") { box.width = 0.0 * m; }
  SECTION("thickness") { box.side = no_number * m; }
  SECTION("pick beyond the middle") { box.pick = 1.1 * m; }
  SECTION("pick outside") { box.pick = -0.1 * m; }
  SECTION("load") { box.side_load = no_number * kPa; }
  CHECK_FALSE(is_assessed(box_moments(box)));
}

namespace {

// Three picks with level pulls outward and round, over mid-depth and off the middle line, one of them
// heavier.
Ring uneven_ring() {
  Ring ring = on_picks(3, 1000.0, -200.0);
  ring.depth_counted = 0.3 * m;
  ring.forces[0].up = 1010.0 * newton;
  for (RingForce& force : ring.forces)
    force.around = 5.0 * newton, force.above_middle = 0.05 * m, force.outside_middle = 0.002 * m;
  return ring;
}

}  // namespace

// dM/da = T + V R, dT/da = -M, dV/da = -w R, with the weight that balances the forces: w + w_c cos a + w_s
// sin a.
TEST_CASE("between its picks the ring is in balance everywhere") {
  const Ring ring = uneven_ring();
  const auto state = assessed(ring_state(ring));
  double up = 0.0, up_c = 0.0, up_s = 0.0;
  for (const RingForce& force : ring.forces) {
    const double a = force.at.value(), c = std::cos(a), s = std::sin(a), P = force.up.value(),
                 H = force.inward.value(), S = force.around.value();
    up += P;  // moments of all forces about the level axes, at arms R + 2 mm and 50 mm
    up_c += P * 1.002 * c + 0.05 * (H * c + S * s), up_s += P * 1.002 * s + 0.05 * (H * s - S * c);
  }
  int looked = 0;
  for (std::size_t i = 1; i < state.sections.size(); ++i) {
    const RingSection &from = state.sections[i - 1], &to = state.sections[i];
    const double d = to.at.value() - from.at.value(), a = 0.5 * (to.at.value() + from.at.value());
    if (!(d > 1e-6)) continue;
    ++looked;
    const double M = 0.5 * (from.bending + to.bending).value(), T = 0.5 * (from.torsion + to.torsion).value(),
                 V = 0.5 * (from.shear + to.shear).value();
    const double w = up / (2.0 * M_PI) + (up_c * std::cos(a) + up_s * std::sin(a)) / M_PI;
    CHECK((to.bending - from.bending).value() / d == Approx(T + V).margin(1e-3));
    CHECK((to.torsion - from.torsion).value() / d == Approx(-M).margin(1e-3));
    CHECK((to.shear - from.shear).value() / d == Approx(-w).margin(1e-3));
  }
  CHECK(looked >= 2880);
}

TEST_CASE("at a pick the shear grows by its force, the torsion by its arm, the bending by what goes around") {
  const Ring ring = uneven_ring();
  const auto state = assessed(ring_state(ring));
  std::size_t met = 0;
  for (std::size_t i = 1; i < state.sections.size(); ++i) {
    const RingSection &before = state.sections[i - 1], &behind = state.sections[i];
    if (behind.at != before.at || behind.shear == before.shear) continue;
    REQUIRE(met < 3);
    const RingForce& force = ring.forces[met++];
    CHECK(behind.at.value() == Approx(force.at.value()));
    CHECK((behind.shear - before.shear).value() == Approx(force.up.value()));
    CHECK((behind.torsion - before.torsion).value() == Approx(-200.0 * 0.05 + 0.002 * force.up.value()));
    CHECK((behind.bending - before.bending).value() == Approx(5.0 * 0.05));
  }
  CHECK(met == 3);
}

TEST_CASE(
    "inward forces alone: bending in the plane and axial force go together, m + R N or m - R N the same all "
    "round") {
  const auto state = assessed(ring_state(on_picks(3, 1000.0, 300.0)));
  const auto spread = [&](double sign) {
    double least = 1e300, most = -1e300;
    for (const RingSection& s : state.sections) {
      const double both = s.level_bending.value() + sign * s.axial.value();
      least = std::min(least, both), most = std::max(most, both);
    }
    return most - least;
  };
  CHECK(std::min(spread(1.0), spread(-1.0)) < 1e-6 * 300.0);
  CHECK(std::max(spread(1.0), spread(-1.0)) > 1.0);
  double mean = 0.0;  // no turn from one end of the cut to the other: the mean of m over the angle is nothing
  for (std::size_t i = 1; i < state.sections.size(); ++i)
    mean += 0.5 * (state.sections[i].level_bending + state.sections[i - 1].level_bending).value() *
            (state.sections[i].at - state.sections[i - 1].at).value();
  CHECK(mean == Approx(0.0).margin(0.05));
  double N_between = 0.0;  // half way between two of three: H / (2 sin 60) of compression
  for (const RingSection& s : state.sections)
    if (std::abs(s.at.value() - (0.3 + M_PI / 3.0)) < 1.2e-3) N_between = s.axial.value();
  CHECK(N_between == Approx(-300.0 / std::sqrt(3.0)).epsilon(1e-4));
}

// Winkler's curved beam: m (r_n - r_i) / (A e r_i) inside, r_n = b / ln(r_o / r_i). Torsion of 3 : 1: alpha =
// 0.267 of the usual table (Timoshenko). Principal stress d/2 + sqrt(d^2/4 + tau^2).
TEST_CASE("the tension of a section is that of both bendings, the axial force and all shear") {
  const auto state = assessed(ring_state(uneven_ring()));
  const double b = 0.1, full = 0.4, h = 0.3, neutral = b / std::log(1.05 / 0.95), e = 1.0 - neutral;
  for (const RingSection& s : state.sections) {
    const double d = 6.0 * std::abs(s.bending.value()) / (b * h * h) +
                     std::abs(s.level_bending.value()) * (neutral - 0.95) / (b * full * e * 0.95) +
                     std::max(0.0, s.axial.value()) / (b * full);
    const double tau =
        std::abs(s.torsion.value()) / (0.267 * h * b * b) + 1.5 * std::abs(s.shear.value()) / (b * full);
    CHECK(s.tension.value() == Approx(0.5 * d + std::sqrt(0.25 * d * d + tau * tau)).epsilon(0.003));
  }
  double most = 0.0;
  for (const RingSection& s : state.sections) most = std::max(most, s.tension.value());
  CHECK(state.most_tension().tension.value() == most);
}

TEST_CASE("a place once more round, or the other way round, is the same place") {
  const auto one = assessed(ring_state(uneven_ring())).most_tension();
  for (const double turns : {1.0, -1.0, -2.0}) {
    Ring ring = uneven_ring();
    ring.forces[1].at = ring.forces[1].at + 2.0 * M_PI * turns * radian;
    const auto other = assessed(ring_state(ring)).most_tension();
    CHECK(other.tension.value() == Approx(one.tension.value()).epsilon(1e-9));
    CHECK(other.at.value() == Approx(one.at.value()).epsilon(1e-9));
  }
}

TEST_CASE("the ring: each number that is none, each limit of its shape, with the reason") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {nan, infinite, -infinite}) {
    CAPTURE(bad);
    for (int field = 0; field < 6; ++field) {
      CAPTURE(field);
      Ring ring = on_picks(3, 1000.0);
      RingForce& force = ring.forces[1];
      if (field == 0) force.up = bad * newton;
      if (field == 1) force.inward = bad * newton;
      if (field == 2) force.around = bad * newton;
      if (field == 3) force.above_middle = bad * m;
      if (field == 4) force.outside_middle = bad * m;
      if (field == 5) force.at = bad * radian;
      CHECK(why_not(ring_state(ring)) == "a force on the ring is not a usable number");
    }
  }
  const auto why = [](auto change) {
    Ring ring = on_picks(3, 1000.0);
    change(ring);
    return why_not(ring_state(ring));
  };
  const std::string number = "a number of the ring is not usable";
  CHECK(why([](Ring& r) { r.forces.clear(); }) == number);
  CHECK(why([](Ring& r) { r.radius = 0.05 * m; }) == number);  // no hole
  CHECK(why([](Ring& r) { r.wall = 0.0 * m; }) == number);
  CHECK(why([](Ring& r) { r.depth_counted = 0.0 * m; }) == number);
  CHECK(why([](Ring& r) { r.depth_counted = 0.41 * m; }) == number);
  CHECK(why([&](Ring& r) { r.depth = infinite * m; }) == number);
  CHECK(why([&](Ring& r) { r.radius = infinite * m; }) == number);
  CHECK(why([](Ring& r) { r.poisson = 0.5; }) == number);
  CHECK(why([](Ring& r) { r.poisson = -0.01; }) == number);
  CHECK(why([](Ring& r) {
          for (RingForce& f : r.forces) f.up = Force{};
        }) == "nothing carries the ring");
  CHECK(why([](Ring& r) {
          for (RingForce& f : r.forces) f.up = -1.0 * newton;
        }) == "nothing carries the ring");
}

TEST_CASE("the ring: what does not balance, within 2 % and beyond") {
  const std::string uneven = "the picks of the ring do not stand evenly about its axis",
                    aside = "the legs pull the ring aside or round";
  const auto with = [](double more_N, double outside_mm, double inward_N, double above_m, double around_N) {
    Ring ring = on_picks(3, 1000.0);
    ring.forces[0].up = (1000.0 + more_N) * newton;
    ring.forces[0].outside_middle = outside_mm * mm;
    ring.forces[0].inward = inward_N * newton;
    ring.forces[0].above_middle = above_m * m;
    for (RingForce& force : ring.forces) force.around = around_N * newton;
    return ring_state(ring);
  };
  CHECK(is_assessed(with(30.0, 0, 0, 0, 0)));  // 2 x 30 / 3030
  CHECK(why_not(with(31.0, 0, 0, 0, 0)) == uneven);
  CHECK(is_assessed(with(0, 29.0, 0, 0, 0)));  // 2 x 29 / 3000
  CHECK(why_not(with(0, 31.0, 0, 0, 0)) == uneven);
  CHECK(is_assessed(with(0, 0, 59.0, 0, 0)));  // of 60 N
  CHECK(why_not(with(0, 0, 61.0, 0, 0)) == aside);
  CHECK(is_assessed(with(0, 0, 0, 0, 19.0)));  // 57 of 60 N
  CHECK(why_not(with(0, 0, 0, 0, 21.0)) == aside);
  CHECK(why_not(with(10.0, 0, 50.0, 0.5, 0)) == uneven);  // 10 + 25 N to one side
  CHECK(is_assessed(with(-10.0, 0, 50.0, 0.5, 0)));       // 25 - 10 N
}

TEST_CASE("a box: limits of each number") {
  const BoxFrame box{.width = 2.0 * m,
                     .height = 1.6 * m,
                     .top = 0.2 * m,
                     .bottom = 0.25 * m,
                     .side = 0.15 * m,
                     .top_load = 4.8 * kPa,
                     .bottom_load = 6.0 * kPa,
                     .side_load = 3.6 * kPa,
                     .pick = 0.3 * m,
                     .thrust = {}};
  for (const double pick : {0.0, 1.0}) {
    BoxFrame one = box;
    one.pick = pick * m;
    CHECK(is_assessed(box_moments(one)));
  }
  for (Length BoxFrame::*const size :
       {&BoxFrame::width, &BoxFrame::height, &BoxFrame::top, &BoxFrame::bottom, &BoxFrame::side})
    for (const double bad :
         {0.0, -0.1, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
      BoxFrame one = box;
      one.*size = bad * m;
      CHECK(why_not(box_moments(one)) == "a number of the box is not usable");
    }
  for (Stress BoxFrame::*const load : {&BoxFrame::top_load, &BoxFrame::bottom_load, &BoxFrame::side_load})
    for (const double bad :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
      BoxFrame one = box;
      one.*load = bad * kPa;
      CHECK(why_not(box_moments(one)) == "a number of the box is not usable");
    }
  BoxFrame one = box;
  one.thrust = PlateMoment::from_value(std::numeric_limits<double>::quiet_NaN());
  CHECK(why_not(box_moments(one)) == "a number of the box is not usable");
}

// Statics of each part, whatever it is stiff like: over the top slab from corner to middle P c - w B^2 / 8,
// over the bottom slab w B^2 / 8; slopes of corners that meet are alike, which the moments satisfy by three
// moment areas.
TEST_CASE("a box: each slab in balance between its corners") {
  const BoxFrame box{.width = 2.0 * m,
                     .height = 1.6 * m,
                     .top = 0.2 * m,
                     .bottom = 0.25 * m,
                     .side = 0.15 * m,
                     .top_load = 4.8 * kPa,
                     .bottom_load = 6.0 * kPa,
                     .side_load = 3.6 * kPa,
                     .pick = 0.3 * m,
                     .thrust = {}};
  const auto found = assessed(box_moments(box));
  const double P = 0.5 * (4800.0 + 6000.0) * 2.0 + 3600.0 * 1.6;
  CHECK((found.top_middle - found.top_corner).value() == Approx(P * 0.3 - 4800.0 * 4.0 / 8.0));
  CHECK((found.top_pick - found.top_corner).value() == Approx((P - 4800.0) * 0.3 + 4800.0 * 0.3 * 0.3 / 2.0));
  CHECK((found.bottom_middle - found.bottom_corner).value() == Approx(6000.0 * 4.0 / 8.0));
}
