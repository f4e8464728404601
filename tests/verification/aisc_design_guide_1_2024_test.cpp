// AISC Design Guide 1, 3rd ed. (2024), examples 4.7-3 (pp. 70-76) and 4.7-4 (pp. 76-78), which apply ACI
// 318-19(22). Quoted at second hand. f'c 4,000 psi, normalweight, cracked; forces in kip, lengths in in.
// Tolerance: half a unit of the last printed digit.
//
// Outside  us insert-steel-tension, us insert-pullout, us insert-breakout, us insert-edge-breakout

#include <catch2/catch.hpp>

#include "resistances/basic_breakout.hpp"
#include "resistances/breakout.hpp"
#include "resistances/edge_breakout.hpp"
#include "resistances/pullout.hpp"
#include "resistances/steel_tension.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const Stress f_c = 4000.0 * psi;

// Example 4.7-3: four rods F1554 Gr 36, 7/8 in, 4.00 x 4.00 in, h_ef 15.0 in, large footing.
HeadedFace four_rods() {
  HeadedFace face = wide_face();
  for (const auto& [id, x, y] :
       {std::tuple{"1", 0.0, 0.0}, {"2", 4.0, 0.0}, {"3", 4.0, 4.0}, {"4", 0.0, 4.0}}) {
    HeadedInsert& rod = face.add(id, x * inch, y * inch, 15.0 * inch);
    rod.d_a = 0.875 * inch;
    rod.A_se = 0.462 * in2;
    rod.A_brg = 1.19 * in2;
  }
  return face;
}

}  // namespace

TEST_CASE("example 4.7-3, p. 71: steel strength of one rod in tension") {
  const HeadedFace face = four_rods();
  Trace trace;
  CHECK(in(kip, assessed(steel_tension(face.inserts[0], trace)).value) == Approx(26.8).margin(0.05));
}

TEST_CASE("example 4.7-3, table 4-2: pullout of one rod with a heavy hex nut, phi 0.70") {
  const HeadedFace face = four_rods();
  Trace trace;
  const Force N_pn = assessed(pullout(face.inserts[0], f_c, us_rules().headed, trace)).value;
  CHECK(0.70 * in(kip, N_pn) == Approx(26.7).margin(0.05));
}

TEST_CASE("example 4.7-3: areas and factors of the group of four") {
  const HeadedFace face = four_rods();
  ProjectedAreas areas;
  Trace trace = Trace::recording();
  assessed(breakout(face.group(), areas, Eccentricity::none(), f_c, us_rules().headed, trace));
  CHECK(step_named(trace, "A_Nc").result.number == Approx(2400.0).margin(5.0));   // three digits printed
  CHECK(step_named(trace, "A_Nco").result.number == Approx(2030.0).margin(5.0));  // three digits printed
  CHECK(step_named(trace, "psi_ec").result.number == Approx(1.0).margin(1e-12));
  CHECK(step_named(trace, "psi_ed").result.number == Approx(1.0).margin(1e-12));
}

TEST_CASE("example 4.7-3: basic breakout strength by the 5/3 power") {
  const Force N_b = basic_breakout_deep(15.0 * inch, 1.0, f_c, us_rules().headed);
  CHECK(in(kip, N_b) == Approx(92.3).margin(0.05));
}

TEST_CASE("example 4.7-3: breakout strength of the group by the 5/3 power") {
  const HeadedFace face = four_rods();
  ProjectedAreas areas;
  const double ratio = assessed(areas.area(face.group(), 22.5 * inch)) / (2025.0 * in2);
  const Force N_b = basic_breakout_deep(15.0 * inch, 1.0, f_c, us_rules().headed);
  CHECK(ratio * in(kip, N_b) == Approx(109.0).margin(0.5));
}

// Known different: the example takes the 5/3 power, which ACI 318-19 17.6.2.2.3 allows between 11 and 25
// in. Nobody makes that choice for a plan, so the program takes the lesser form, here the 1.5 power: 24
// sqrt(4000) 15^1.5 = 88.18 kip.
TEST_CASE("example 4.7-3: the program stays below the printed 109 kip, by the 1.5 power") {
  const HeadedFace face = four_rods();
  ProjectedAreas areas;
  Trace trace;
  const Force N_cbg =
      assessed(breakout(face.group(), areas, Eccentricity::none(), f_c, us_rules().headed, trace)).value;
  CHECK(in(kip, N_cbg) == Approx(24.0 * std::sqrt(4000.0) * std::pow(15.0, 1.5) * 2401.0 / 2025.0 / 1000.0));
  CHECK(in(kip, N_cbg) < 109.0);
}

namespace {

// Example 4.7-4: the two front rods of a 4 x 4 in pattern, c_a1 12.0 in, c_a2 and h_a at least 18.0 in,
// h_ef >= 8 d_a. The text says 7/8 in rods and calculates with 3/4 in; the 9 of the basic strength governs
// for both.
HeadedFace two_front_rods() {
  HeadedFace face(rectangle(-18.0 * inch, -100.0 * inch, 40.0 * inch, 112.0 * inch), 18.0 * inch);
  for (const double x : {0.0, 4.0}) {
    HeadedInsert& rod = face.add(x == 0.0 ? "1" : "2", x * inch, 0.0 * inch, 15.0 * inch);
    rod.d_a = 0.875 * inch;
  }
  return face;
}
const Direction to_edge{0.0, 1.0, 0.0};

}  // namespace

TEST_CASE("example 4.7-4, pp. 76-78: shear breakout of the two front rods towards the edge") {
  const HeadedFace face = two_front_rods();
  Trace trace = Trace::recording();
  const auto strength =
      assessed(edge_breakout(face.group(), to_edge, to_edge, Length{}, f_c, us_rules().headed, trace));
  REQUIRE(strength.has_value());
  CHECK(in(kip, strength->value) == Approx(26.3).margin(0.05));
  CHECK(step_named(trace, "A_Vc").result.number == Approx(720.0).margin(0.5));
  CHECK(step_named(trace, "A_Vco").result.number == Approx(648.0).margin(0.5));
  CHECK(step_named(trace, "V_b").result.number == Approx(23700.0).margin(50.0));
  CHECK(step_named(trace, "psi_ec").result.number == Approx(1.0).margin(1e-12));
  CHECK(step_named(trace, "psi_ed").result.number == Approx(1.0).margin(1e-12));
  CHECK(step_named(trace, "psi_h").result.number == Approx(1.0).margin(1e-12));
}

// The steel step of example 4.7-4 (0.450 x 58 x 0.442 = 11.5 kip) works on the gross area with a factor for
// threads and is another formula than V_sa = 0.6 A_se f_uta: nothing here can be held against it.
