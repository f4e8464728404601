// The cracked section: what it refuses, and where it is pressed all over.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "demands/cracked_section.hpp"
#include "support/assessed.hpp"
#include "support/beam_lines.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::demands;

namespace {

constexpr Moment kN_m = Moment::from_value(1000.0);

CrackedSection beam() {
  return {.width = 300.0 * mm, .bottom = 0.0 * mm, .top = 600.0 * mm, .layers = {{1500.0 * mm2, 60.0 * mm}},
          .modular_ratio = Ratio::from_value(8.0)};
}

}  // namespace

TEST_CASE("a thrust inside the kern keeps the section pressed all over: at, below and above its edge") {
  const CrackedSection section = beam();
  const Force thrust = 600.0 * kN;
  const Moment edge = thrust * (100.0 * mm);  // h/6
  const auto inside = assessed(cracked_stress(section, -thrust, edge * (1.0 - 1e-9)));
  CHECK(inside.whole);
  CHECK(inside.bars.front() == Stress{});
  CHECK(in(MPa, inside.concrete) == Approx(2.0 * 600e3 / (300.0 * 600.0)));
  CHECK(assessed(cracked_stress(section, -thrust, edge)).whole);
  const auto outside = assessed(cracked_stress(section, -thrust, 1.2 * edge));
  CHECK_FALSE(outside.whole);
  CHECK(outside.pressed < 600.0 * mm);
}

TEST_CASE("nothing acts: nothing is asked") {
  const auto stress = assessed(cracked_stress(beam(), {}, {}));
  CHECK(stress.whole);
  CHECK(stress.concrete == Stress{});
}

TEST_CASE("bars on the pressed side alone do not carry") {
  CHECK_FALSE(why_not(cracked_stress(beam(), {}, -50.0 * kN_m)).empty());
  CrackedSection none = beam();
  none.layers.clear();
  CHECK_FALSE(why_not(cracked_stress(none, {}, 50.0 * kN_m)).empty());
}

TEST_CASE("a pull that goes through the bars opens the whole depth") {
  const CrackedSection section = beam();  // bars 240 mm below the middle
  const Force pull = 100.0 * kN;
  CHECK(is_assessed(cracked_stress(section, pull, pull * (241.0 * mm))));
  CHECK_FALSE(why_not(cracked_stress(section, pull, pull * (240.0 * mm))).empty());
  CHECK_FALSE(why_not(cracked_stress(section, pull, pull * (239.0 * mm))).empty());
}

TEST_CASE("numbers that are not usable are refused") {
  CrackedSection section = beam();
  Force axial{};
  Moment moment = 50.0 * kN_m;
  const double nan = std::nan("");
  SECTION("width") { section.width = Length::from_value(nan); }
  SECTION("no width") { section.width = Length{}; }
  SECTION("upside down") { std::swap(section.top, section.bottom); }
  SECTION("n below one") { section.modular_ratio = Ratio::from_value(1.0 - 1e-9); }
  SECTION("n") { section.modular_ratio = Ratio::from_value(nan); }
  SECTION("axial") { axial = Force::from_value(nan); }
  SECTION("moment") { moment = Moment::from_value(std::numeric_limits<double>::infinity()); }
  SECTION("area") { section.layers[0].area = Area{}; }
  SECTION("area, not a number") { section.layers[0].area = Area::from_value(nan); }
  SECTION("below the piece") { section.layers[0].height = 0.0 * mm; }
  SECTION("above the piece") { section.layers[0].height = 600.0 * mm; }
  SECTION("nowhere") { section.layers[0].height = Length::from_value(nan); }
  CHECK_FALSE(why_not(cracked_stress(section, axial, moment)).empty());
}

TEST_CASE("n = 1 is usable") {
  CrackedSection section = beam();
  section.modular_ratio = Ratio::from_value(1.0);
  CHECK(assessed(cracked_stress(section, {}, 50.0 * kN_m)).bars.front() > Stress{});
}

TEST_CASE("law: stresses balance force and moment, more bars, less moment, more thrust ask less of the bars") {
  BeamDice dice(17);
  for (int i = 0; i < 300; ++i) {
    CrackedSection section{.width = dice.between(0.1, 1.0) * m, .bottom = dice.between(-1.0, 1.0) * m, .top = {},
                           .layers = {}, .modular_ratio = Ratio::from_value(dice.between(5.0, 15.0))};
    const double h = dice.between(0.1, 1.2);
    section.top = section.bottom + h * m;
    const int layers = 1 + static_cast<int>(dice.between(0.0, 3.0));
    for (int l = 0; l < layers; ++l)
      section.layers.push_back({dice.between(1e-4, 3e-3) * m2,
                                section.bottom + (l == 0 ? dice.between(0.05, 0.3) : dice.between(0.05, 0.95)) * h * m});
    const double M = dice.between(10e3, 200e3), N = -dice.between(0.0, 1.0) * M / h;
    const auto found = cracked_stress(section, N * newton, Moment::from_value(M));
    const auto stress = assessed(found);
    CAPTURE(i, h, M, N, layers);
    REQUIRE_FALSE(stress.whole);
    const double b = section.width.value(), x = stress.pressed.value(), f_c = stress.concrete.value();
    const double n = section.modular_ratio.value();
    double force = -0.5 * b * x * f_c, moment = 0.5 * b * x * f_c * (0.5 * h - x / 3.0);
    for (std::size_t l = 0; l < stress.bars.size(); ++l) {
      const double d = (section.top - section.layers[l].height).value();
      const double displaced = d < x ? f_c * (x - d) / x : 0.0;
      const double bar = (stress.bars[l].value() + displaced) * section.layers[l].area.value();
      force += bar;
      moment += bar * (d - 0.5 * h);
    }
    CHECK(force == Approx(N).margin(1e-6 * M / h));
    CHECK(moment == Approx(M).epsilon(1e-6));
    CHECK(stress.bars.front().value() == Approx(n * f_c / x * ((section.top - section.layers.front().height).value() - x)));

    CrackedSection more = section;
    more.layers.front().area *= 1.2;
    CHECK(assessed(cracked_stress(more, N * newton, Moment::from_value(M))).bars.front() <= stress.bars.front());
    CHECK(assessed(cracked_stress(section, N * newton, Moment::from_value(1.1 * M))).bars.front() >= stress.bars.front());
    CHECK(assessed(cracked_stress(section, (N - 0.1 * M / h) * newton, Moment::from_value(M))).bars.front() <=
          stress.bars.front());
  }
}

// Bars 60 mm below the pressed face, 7 x 1500 mm2 more than the concrete they stand in: the kern of the whole section is
// (b h^3/12 + 7 A 0.54 x 0.24)/(b h^2/2 + 7 A 0.54) = 0.0067608/0.05967 = 113.304 mm deep instead of h/6 = 100.
TEST_CASE("bars near the pressed face make the kern deeper: whole up to there") {
  CrackedSection section = beam();
  section.layers[0].height = 540.0 * mm;
  const Force thrust = 100.0 * kN;
  const auto inside = assessed(cracked_stress(section, -thrust, thrust * (113.2 * mm)));
  CHECK(inside.whole);
  CHECK(in(mm, inside.pressed) == Approx(600.0));
  CHECK(in(MPa, inside.concrete) == Approx((1.0 + 6.0 * 113.2 / 600.0) * 100e3 / (300.0 * 600.0)));
  CHECK(why_not(cracked_stress(section, -thrust, thrust * (113.4 * mm))) ==
        "no bars lie on the side that is pulled");
}

// Thirty times as much steel near the top as near the bottom, pulled at mid-depth without a moment. The centroid of the
// bars lies above the pull: the lower ones carry nearly half of it, and the top is pressed a little.
TEST_CASE("a pull without a moment stresses the bars") {
  CrackedSection section = beam();
  section.layers = {{30.0 * 200.0 * mm2, 540.0 * mm}, {200.0 * mm2, 60.0 * mm}};
  const double pull = 100e3;
  for (const double moment : {0.0, 1.0, 100.0}) {
    CAPTURE(moment);
    const auto found = assessed(cracked_stress(section, pull * newton, Moment::from_value(moment)));
    const double x = in(mm, found.pressed), f_c = in(MPa, found.concrete);
    REQUIRE(found.bars.size() == 2);
    const double upper = in(MPa, found.bars[0]), lower = in(MPa, found.bars[1]);
    CHECK(x > 0.0);
    CHECK(x < 60.0);
    CHECK(6000.0 * upper + 200.0 * lower - 0.5 * 300.0 * x * f_c == Approx(pull).epsilon(1e-6));
    CHECK(-6000.0 * upper * 240.0 + 200.0 * lower * 240.0 + 0.5 * 300.0 * x * f_c * (300.0 - x / 3.0) ==
          Approx(1000.0 * moment).margin(100.0));
    CHECK(lower > 0.4 * pull / 200.0);
  }
}

TEST_CASE("numbers that the search for the pressed depth cannot hold are refused") {
  const std::string not_found = "the pressed depth of the cracked section was not found";
  // b h^2 is more than there is, but only with all of h.
  CrackedSection wide{.width = 1e305 * m, .bottom = 0.0 * m, .top = 1000.0 * m,
                      .layers = {{Area::from_value(1e293), 100.0 * m}}, .modular_ratio = Ratio::from_value(8.0)};
  CHECK(why_not(cracked_stress(wide, -1e-300 * newton, Moment::from_value(1.0))) == not_found);
  // The slope of the stress is more than there is, or no number.
  CrackedSection slight{.width = 1e-10 * m, .bottom = 0.0 * m, .top = 1e-10 * m,
                        .layers = {{Area::from_value(1e-22), 1e-11 * m}}, .modular_ratio = Ratio::from_value(8.0)};
  CHECK(why_not(cracked_stress(slight, {}, Moment::from_value(1e300))) == not_found);
  slight.width = slight.top = 1e-60 * m;
  slight.layers = {{Area::from_value(1e-122), 1e-61 * m}};
  CHECK(why_not(cracked_stress(slight, {}, Moment::from_value(1e-100))) == not_found);
}
