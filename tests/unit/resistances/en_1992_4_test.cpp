// The forms of EN 1992-4 where each of their cases begins and ends, and each thing without which there is no
// number. The values are worked out here from the equations the comments name, with the coefficients written
// out.

#include "resistances/en_1992_4.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "resistances/edge_breakout.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const Stress f_ck = 16.0 * MPa;
const double nan = std::numeric_limits<double>::quiet_NaN(),
             infinite = std::numeric_limits<double>::infinity();
const double no_use[] = {nan, infinite, -0.1};
const Direction right{1.0, 0.0, 0.0}, left{-1.0, 0.0, 0.0}, up{0.0, 1.0, 0.0}, down{0.0, -1.0, 0.0};

const tables::HeadedInsertModel& model() { return eu_rules().headed; }
const tables::En1992HeadedModel& en() { return *model().en; }

// An insert at the origin, the sides of its face at these distances in mm, uncracked: head of 600 mm2.
HeadedFace between(double to_right, double to_left, double to_up, double to_down, double h_ef,
                   double thick = 1e4) {
  HeadedFace face(rectangle(-to_left * mm, -to_down * mm, (to_left + to_right) * mm, (to_up + to_down) * mm),
                  thick * mm);
  HeadedInsert& insert = face.add("A", Length{}, Length{}, h_ef * mm);
  insert.d_a = 16.0 * mm;
  insert.A_brg = 600.0 * mm2;
  insert.cracked = false;
  return face;
}

// N0_Rk,cb by k5 c_1 sqrt(A_h f_ck), k5 12.2 uncracked and 8.7 cracked; in kN, of the 600 mm2 in 16 MPa.
double N0_blowout_kN(double c_1, double k5 = 12.2) { return k5 * c_1 * std::sqrt(600.0 * 16.0) / 1000.0; }

const std::string not_described =
    "insert A, its edges or the concrete strength are not described by numbers above zero";

}  // namespace

TEST_CASE("EN cone: no strength, no place of the resultant, no insert, no number: each with its reason") {
  const HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 100.0);
  Trace trace;
  ProjectedAreas areas;
  const auto why = [&](Stress strength, const Eccentricity& e) {
    return why_not(en_breakout(face.group(), areas, e, strength, model(), trace));
  };
  for (const double bad : {0.0, -1.0, nan, infinite})
    CHECK(why(bad * MPa, Eccentricity::none()) == "the concrete strength is not a number above zero");
  for (const double bad : {nan, infinite}) {
    CHECK(why(f_ck, Eccentricity(bad * mm, Length{})) ==
          "the place of the resultant of the group is not a number");
    CHECK(why(f_ck, Eccentricity(Length{}, bad * mm)) ==
          "the place of the resultant of the group is not a number");
  }
  CHECK(why(f_ck, Eccentricity(1e300 * m, 1e300 * m)) ==
        "the cone resistance about insert A is not a number above zero");
  CHECK_FALSE(is_assessed(en_breakout(Group{}, areas, Eccentricity::none(), f_ck, model(), trace)));
  HeadedFace two = between(1e4, 1e4, 1e4, 1e4, 100.0);
  two.add("B", 200.0 * mm, Length{}, 90.0 * mm);
  CHECK(why_not(en_breakout(two.group(), areas, Eccentricity::none(), f_ck, model(), trace)) ==
        "inserts A and B break out together but differ in embedment");
}

TEST_CASE(
    "EN cone: one cracked insert makes the whole group cracked, and psi_re is 0.5 + h_ef / 200 mm to 100 "
    "mm") {
  for (const auto& [first, second, k1] :
       {std::tuple{false, false, 12.7}, std::tuple{false, true, 8.9}, std::tuple{true, false, 8.9}}) {
    CAPTURE(first, second);
    HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 80.0);
    HeadedInsert& other = face.add("B", 150.0 * mm, Length{}, 80.0 * mm);
    other.d_a = 16.0 * mm;
    face.inserts[0].cracked = first;
    other.cracked = second;
    ProjectedAreas areas;
    Trace trace = Trace::recording();
    const auto N = assessed(en_breakout(face.group(), areas, Eccentricity::none(), f_ck, model(), trace));
    // A = (240 + 150) 240 over 240^2; psi_re = 0.5 + 80 / 200
    const double N_N = k1 * 4.0 * std::pow(80.0, 1.5) * (390.0 / 240.0) * 0.9;
    CHECK(in(newton, N.value) == Approx(N_N).epsilon(1e-9));
    CHECK(step_named(trace, "N_Rk_c").result.number == Approx(N_N).epsilon(1e-9));
    CHECK(step_named(trace, "psi_re").result.number == Approx(0.9));
    CHECK(step_named(trace, "psi_s").formula == "1");
    CHECK(step_named(trace, "A_cN").formula.empty());  // two inserts: an area without a formula
  }
}

TEST_CASE("EN cone: the printed area, factor and eccentricity near two edges") {
  // c 90 and 100 under c_cr = 120: A = (120 + 90)(120 + 100), psi_s = 0.7 + 0.3 x 90 / 120; e 12 and 24
  const HeadedFace face = between(1e4, 90.0, 100.0, 1e4, 80.0);
  ProjectedAreas areas;
  Trace trace = Trace::recording();
  const auto N =
      assessed(en_breakout(face.group(), areas, Eccentricity(12.0 * mm, -24.0 * mm), f_ck, model(), trace));
  const double N_N = 12.7 * 4.0 * std::pow(80.0, 1.5) * (210.0 * 220.0 / 57600.0) * 0.925 * 0.9 / (1.1 * 1.2);
  CHECK(in(newton, N.value) == Approx(N_N).epsilon(1e-9));
  const Step area = step_named(trace, "A_cN");
  CHECK(area.formula == "(min(c_1, r_N) + min(c_2, r_N)) * (min(c_3, r_N) + min(c_4, r_N))");
  CHECK(area.result.number == Approx(210.0 * 220.0).epsilon(1e-9));
  CHECK(step_named(trace, "psi_s").formula == "b + a * c / c_cr_N");
  CHECK(step_named(trace, "psi_ec").result.number == Approx(1.0 / 1.32).epsilon(1e-9));
}

TEST_CASE("EN pull-out: k2 7.5 cracked and 10.5 uncracked, and no number without head or strength") {
  HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 100.0);
  HeadedInsert& insert = face.inserts[0];
  Trace trace = Trace::recording();
  CHECK(in(newton, assessed(en_pullout(insert, f_ck, en(), trace)).value) == Approx(10.5 * 600.0 * 16.0));
  CHECK(step_named(trace, "N_Rk_p").words == "pull-out resistance of insert A, uncracked concrete");
  insert.cracked = true;
  CHECK(in(newton, assessed(en_pullout(insert, f_ck, en(), trace)).value) == Approx(7.5 * 600.0 * 16.0));
  CHECK(step_named(trace, "N_Rk_p").words == "pull-out resistance of insert A, cracked concrete");
  for (const double bad : {0.0, -1.0, nan, infinite}) {
    CAPTURE(bad);
    insert.A_brg = bad * mm2;
    CHECK(why_not(en_pullout(insert, f_ck, en(), trace)) ==
          "the head of insert A or the concrete strength is not a number above zero");
    insert.A_brg = 600.0 * mm2;
    CHECK(why_not(en_pullout(insert, bad * MPa, en(), trace)) ==
          "the head of insert A or the concrete strength is not a number above zero");
  }
  insert.A_brg = 1e200 * m2;
  CHECK_FALSE(is_assessed(en_pullout(insert, 1e200 * MPa, en(), trace)));  // each a number, not their product
}

TEST_CASE("EN pry-out: the shallowest of a group decides, k8 2 from 60 mm") {
  Trace trace = Trace::recording();
  for (const auto& [first, second, V_kN] :
       {std::tuple{100.0, 50.0, 10.0}, std::tuple{50.0, 100.0, 10.0}, std::tuple{100.0, 60.0, 20.0}}) {
    CAPTURE(first, second);
    HeadedFace face = between(1e4, 1e4, 1e4, 1e4, first);
    face.add("B", 500.0 * mm, Length{}, second * mm);
    CHECK(in(kN, assessed(en_pryout(face.group(), 10.0 * kN, en(), trace)).value) == Approx(V_kN));
    CHECK(step_named(trace, "V_Rk_cp").words == "pry-out resistance of 2 inserts, with A");
  }
  const HeadedFace alone = between(1e4, 1e4, 1e4, 1e4, 100.0);
  CHECK(in(kN, assessed(en_pryout(alone.group(), 10.0 * kN, en(), trace)).value) == Approx(20.0));
  CHECK(step_named(trace, "V_Rk_cp").words == "pry-out resistance of 1 insert, with A");
  for (const double bad : {0.0, -1.0, nan, infinite})
    CHECK(why_not(en_pryout(alone.group(), bad * kN, en(), trace)) ==
          "the pry-out resistance about insert A is not a number above zero");
}

TEST_CASE("EN steel: A_s f_uk in tension, k7 k6 A_s f_uk in shear, 0.8 of it for a short shank") {
  HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 80.0);  // 5 diameters: not short
  HeadedInsert& insert = face.inserts[0];
  insert.A_se = 157.0 * mm2;
  insert.f_uta = 500.0 * MPa;
  Trace trace = Trace::recording();
  CHECK(in(kN, assessed(en_steel_tension(insert, trace)).value) == Approx(78.5));
  CHECK(in(kN, assessed(en_steel_shear(insert, en(), trace)).value) == Approx(0.8 * 0.6 * 78.5));
  CHECK(step_named(trace, "V_Rk_s").words == "steel resistance of insert A in shear");
  insert.h_ef = 79.0 * mm;
  CHECK(in(kN, assessed(en_steel_shear(insert, en(), trace)).value) == Approx(0.8 * 0.8 * 0.6 * 78.5));
  CHECK(step_named(trace, "V_Rk_s").words == "steel resistance of insert A in shear, a short shank");
  insert.h_ef = 200.0 * mm;
  insert.f_uta = 501.0 * MPa;
  CHECK(in(kN, assessed(en_steel_shear(insert, en(), trace)).value) == Approx(0.8 * 0.5 * 0.157 * 501.0));
  insert.f_uta = 1000.0 * MPa;
  CHECK(in(kN, assessed(en_steel_shear(insert, en(), trace)).value) == Approx(0.8 * 0.5 * 157.0));
  insert.f_uta = 1001.0 * MPa;
  CHECK(why_not(en_steel_shear(insert, en(), trace)) ==
        "the steel of insert A is stronger than the formula of shear covers");
}

TEST_CASE("EN steel: without area, strength, depth or diameter there is no number") {
  const HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 100.0);
  const std::string why = "the steel of insert A is not described by numbers above zero";
  Trace trace;
  for (const double bad : {0.0, -1.0, nan, infinite}) {
    CAPTURE(bad);
    HeadedInsert insert = face.inserts[0];
    insert.A_se = bad * mm2;
    CHECK(why_not(en_steel_tension(insert, trace)) == why);
    CHECK(why_not(en_steel_shear(insert, en(), trace)) == why);
    insert = face.inserts[0];
    insert.f_uta = bad * MPa;
    CHECK(why_not(en_steel_tension(insert, trace)) == why);
    CHECK(why_not(en_steel_shear(insert, en(), trace)) == why);
    insert = face.inserts[0];
    insert.h_ef = bad * mm;
    CHECK(why_not(en_steel_shear(insert, en(), trace)) == why);
    insert = face.inserts[0];
    insert.d_a = bad * mm;
    CHECK(why_not(en_steel_shear(insert, en(), trace)) == why);
  }
  HeadedInsert overflow = face.inserts[0];
  overflow.A_se = 1e300 * m2;
  CHECK(why_not(en_steel_tension(overflow, trace)) == why);
  CHECK(why_not(en_steel_shear(overflow, en(), trace)) == why);
}

TEST_CASE(
    "EN edge: the bearing length, at most 12 d of a shank to 24 mm, of a thicker one max(8 d, 300 mm)") {
  for (const auto& [d, h_ef, l_f] :
       {std::tuple{20.0, 500.0, 240.0}, std::tuple{20.0, 200.0, 200.0}, std::tuple{24.0, 500.0, 288.0},
        std::tuple{25.0, 500.0, 300.0}, std::tuple{40.0, 500.0, 320.0}, std::tuple{40.0, 310.0, 310.0}}) {
    CAPTURE(d, h_ef);
    const ShearEdge edge{.c_a1 = 150.0 * mm,
                         .c_a2 = {1e4 * mm, 1e4 * mm},
                         .s = Length{},
                         .s_max = Length{},
                         .eccentricity = Length{},
                         .h_a = 1e4 * mm,
                         .h_ef = h_ef * mm,
                         .d_a = d * mm,
                         .lambda_a = 1.0,
                         .cracked = true};
    Trace trace = Trace::recording();
    const EdgeStrength strength = en_shear_breakout(edge, f_ck, model(), trace);
    // (7.41) to (7.43) with k9 = 1.7
    const double alpha = 0.1 * std::sqrt(l_f / 150.0), beta = 0.1 * std::pow(d / 150.0, 0.2);
    const double V_N = 1.7 * std::pow(d, alpha) * std::pow(l_f, beta) * 4.0 * std::pow(150.0, 1.5);
    CHECK(step_named(trace, "l_f").result.number == Approx(l_f));
    CHECK(step_named(trace, "l_f").formula ==
          (d > 24.0 ? "min(h_ef, max(k_l * d, l_least))" : "min(h_ef, k_l * d)"));
    CHECK(in(newton, strength.towards) == Approx(V_N).epsilon(1e-9));
    CHECK(in(newton, strength.along) == Approx(2.0 * V_N).epsilon(1e-9));
  }
}

TEST_CASE("EN edge: a row with its resultant beside the middle, a corner on one side, thin concrete") {
  // c_1 100, reach 150; c_2 120 and 400, s 200, e 45, h 90: A = (120 + 200 + 150) 90 over 45,000
  ShearEdge edge{.c_a1 = 100.0 * mm,
                 .c_a2 = {120.0 * mm, 400.0 * mm},
                 .s = 200.0 * mm,
                 .s_max = 200.0 * mm,
                 .eccentricity = 45.0 * mm,
                 .h_a = 90.0 * mm,
                 .h_ef = 80.0 * mm,
                 .d_a = 16.0 * mm,
                 .lambda_a = 1.0,
                 .cracked = false};
  const double alpha = 0.1 * std::sqrt(0.8), beta = 0.1 * std::pow(0.16, 0.2);
  const double V0_N = 2.4 * std::pow(16.0, alpha) * std::pow(80.0, beta) * 4.0 * 1000.0;
  const double expected_N =
      V0_N * 470.0 * 90.0 / 45000.0 * (0.7 + 0.3 * 120.0 / 150.0) * std::sqrt(150.0 / 90.0) / 1.3;
  Trace trace = Trace::recording();
  CHECK(in(newton, en_shear_breakout(edge, f_ck, model(), trace).towards) ==
        Approx(expected_N).epsilon(1e-9));
  CHECK(step_named(trace, "psi_s").formula == "b + a * c_2 / r");
  CHECK(step_named(trace, "A_cV").result.number == Approx(470.0 * 90.0));
  std::swap(edge.c_a2[0], edge.c_a2[1]);
  CHECK(in(newton, en_shear_breakout(edge, f_ck, model(), trace).towards) ==
        Approx(expected_N).epsilon(1e-9));
  edge.c_a2 = {150.0 * mm, 150.0 * mm};
  en_shear_breakout(edge, f_ck, model(), trace);
  CHECK(step_named(trace, "psi_s").formula == "1");
  CHECK(step_named(trace, "psi_s").result.number == 1.0);
}

TEST_CASE("EN edge: towards each of the four edges the distance to that edge counts") {
  const HeadedFace face = between(100.0, 130.0, 170.0, 220.0, 80.0);
  const auto V_N = [&](double c_1, double c_2,
                       double c_3) {  // c_2, c_3 beside; the least counts, cut at 1.5 c_1
    const double alpha = 0.1 * std::sqrt(80.0 / c_1), beta = 0.1 * std::pow(16.0 / c_1, 0.2), r = 1.5 * c_1;
    const double area = (std::min(r, c_2) + std::min(r, c_3)) / (2.0 * r);
    return 2.4 * std::pow(16.0, alpha) * std::pow(80.0, beta) * 4.0 * std::pow(c_1, 1.5) * area *
           std::min(1.0, 0.7 + 0.3 * std::min(c_2, c_3) / r);
  };
  const double of[] = {V_N(100, 170, 220), V_N(130, 170, 220), V_N(170, 100, 130), V_N(220, 100, 130)};
  const Direction all[] = {right, left, up, down};
  for (std::size_t i = 0; i < 4; ++i) {
    CAPTURE(i);
    const bool sideways =
        i >= 2;  // a shear along x has the edges above and below beside it, at twice their strength
    double least = of[i];
    for (const std::size_t beside : {sideways ? 0U : 2U, sideways ? 1U : 3U})
      least = std::min(least, 2.0 * of[beside]);
    Trace trace;
    CHECK(in(newton, assessed(edge_breakout(face.inserts[0], all[i], f_ck, model(), trace)).value) ==
          Approx(least).epsilon(1e-9));
  }
}

TEST_CASE(
    "EN blow-out: the edge that allows least, whichever of the four it is, with the corners beside it") {
  // c_1 60; beside it 101 and far; h_ef 200. psi_s = 0.7 + 0.3 x 101 / 120, A = (101 + 120) 240 over 240^2.
  const double N_kN = N0_blowout_kN(60.0) * 221.0 / 240.0 * (0.7 + 0.3 * 101.0 / 120.0);
  const std::pair<HeadedFace, std::string> all[] = {{between(60.0, 1e4, 101.0, 1e4, 200.0), "+x"},
                                                    {between(1e4, 60.0, 1e4, 101.0, 200.0), "-x"},
                                                    {between(101.0, 1e4, 60.0, 1e4, 200.0), "+y"},
                                                    {between(1e4, 101.0, 1e4, 60.0, 200.0), "-y"}};
  for (const auto& [face, towards] : all) {
    CAPTURE(towards);
    Trace trace = Trace::recording();
    const auto N = assessed(en_side_blowout(face.inserts[0], f_ck, model(), trace));
    REQUIRE(N);
    CHECK(in(kN, N->value) == Approx(N_kN).epsilon(1e-9));
    CHECK(step_named(trace, "N_Rk_cb").words == "blow-out resistance of insert A, edge towards " + towards);
    CHECK(step_named(trace, "N_Rk_cb").result.number == Approx(1000.0 * N_kN).epsilon(1e-9));
    CHECK(step_named(trace, "N0_Rk_cb").words ==
          "blow-out resistance of one head far from corners, uncracked concrete");
  }
}

TEST_CASE("EN blow-out: of two edges near, the later one where it allows less, the first where it does") {
  // 100 and 60 opposite to each other: both blow out (h_ef 200), the nearer allows less
  for (const auto& [to_right, to_left] : {std::pair{100.0, 60.0}, std::pair{60.0, 100.0}}) {
    Trace trace;
    const HeadedFace face = between(to_right, to_left, 1e4, 1e4, 200.0);
    const auto N = assessed(en_side_blowout(face.inserts[0], f_ck, model(), trace));
    REQUIRE(N);
    CHECK(in(kN, N->value) == Approx(N0_blowout_kN(60.0)).epsilon(1e-9));
  }
}

TEST_CASE("EN blow-out: where an edge, the head, the depth or the strength is no number there is none") {
  const HeadedFace face = between(60.0, 1e4, 1e4, 1e4, 200.0);
  Trace trace;
  for (const double bad : {0.0, -1.0, nan, infinite}) {
    CAPTURE(bad);
    for (std::size_t i = 0; i < 4; ++i) {
      HeadedInsert insert = face.inserts[0];
      insert.edges.c[i] = bad * mm;
      CHECK(why_not(en_side_blowout(insert, f_ck, model(), trace)) == not_described);
    }
    HeadedInsert insert = face.inserts[0];
    insert.A_brg = bad * mm2;
    CHECK(why_not(en_side_blowout(insert, f_ck, model(), trace)) == not_described);
    CHECK(why_not(en_side_blowout(face.inserts[0], bad * MPa, model(), trace)) == not_described);
    insert = face.inserts[0];
    insert.h_ef = bad * mm;
    CHECK(why_not(en_side_blowout(insert, f_ck, model(), trace)) == not_described);
  }
  // The head as deep as the concrete is thick.
  const HeadedFace thin = between(60.0, 1e4, 1e4, 1e4, 200.0, 200.0);
  CHECK(why_not(en_side_blowout(thin.inserts[0], f_ck, model(), trace)) == not_described);
  HeadedInsert huge = face.inserts[0];
  huge.A_brg = 1e308 * m2;
  CHECK(why_not(en_side_blowout(huge, 1e301 * MPa, model(), trace)) == not_described);
}

TEST_CASE("EN blow-out far from every edge: none, and still not without head and strength") {
  const HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 200.0);
  Trace trace;
  CHECK_FALSE(assessed(en_side_blowout(face.inserts[0], f_ck, model(), trace)).has_value());
  for (const double bad : {0.0, -1.0, nan, infinite}) {
    HeadedInsert insert = face.inserts[0];
    insert.A_brg = bad * mm2;
    CHECK(why_not(en_side_blowout(insert, f_ck, model(), trace)) == not_described);
    CHECK(why_not(en_side_blowout(face.inserts[0], bad * MPa, model(), trace)) == not_described);
  }
  HeadedInsert shallow = face.inserts[0];
  shallow.h_ef = -1.0 * mm;
  CHECK(why_not(en_side_blowout(shallow, f_ck, model(), trace)) == not_described);
}

TEST_CASE(
    "EN blow-out of a row: one cracked head makes the row cracked, the least of edge, head, cover and "
    "corners") {
  for (const std::size_t worse : {0U, 1U}) {
    CAPTURE(worse);
    HeadedFace face = between(60.0, 1e4, 1e4, 1e4, 200.0);
    HeadedInsert& other = face.add("B", Length{}, 150.0 * mm, 200.0 * mm);
    other.A_brg = 600.0 * mm2;
    other.cracked = false;
    face.inserts[worse].cracked = true;
    face.inserts[worse].A_brg = 400.0 * mm2;
    face.sites[worse].thickness = 240.0 * mm;
    Trace trace = Trace::recording();
    const auto N = assessed(en_side_blowout(face.group(), right, Length{}, f_ck, model(), trace));
    REQUIRE(N);
    // N0 = 8.7 x 60 x sqrt(400 x 16); A = (120 + 150 + 120)(120 + 40) over 240^2; psi_g = sqrt 2 - 0.41421 x
    // 150 / 240
    const double psi_g = std::sqrt(2.0) + (1.0 - std::sqrt(2.0)) * 150.0 / 240.0;
    const double N_N = 8.7 * 60.0 * 80.0 * (390.0 * 160.0 / 57600.0) * psi_g;
    CHECK(in(newton, N->value) == Approx(N_N).epsilon(1e-9));
    CHECK(step_named(trace, "N0_Rk_cb").words ==
          "blow-out resistance of one head far from corners, cracked concrete");
    CHECK(step_named(trace, "N_Rk_cb").words ==
          "blow-out resistance of 2 inserts in a row with A, edge towards +x");
  }
}

TEST_CASE("EN blow-out of a row: a head for which it does not occur adds nothing, none left is no limit") {
  HeadedFace face = between(60.0, 1e4, 1e4, 1e4, 200.0);
  HeadedInsert& shallow = face.add("B", Length{}, 150.0 * mm, 119.0 * mm);  // 0.5 x 119 < 60
  shallow.A_brg = 600.0 * mm2;
  Trace trace;
  const auto N = assessed(en_side_blowout(face.group(), right, 30.0 * mm, f_ck, model(), trace));
  REQUIRE(N);
  CHECK(in(kN, N->value) == Approx(N0_blowout_kN(60.0) / (1.0 + 30.0 / 120.0)).epsilon(1e-9));
  face.inserts[0].h_ef = 119.0 * mm;
  CHECK_FALSE(assessed(en_side_blowout(face.group(), right, 30.0 * mm, f_ck, model(), trace)).has_value());
}

TEST_CASE("EN blow-out of a row: without inserts, place, head, cover or strength there is no number") {
  const HeadedFace face = between(60.0, 1e4, 1e4, 1e4, 200.0);
  const auto row = [&](const HeadedFace& of, Length e, Stress f) {
    Trace trace;
    return en_side_blowout(of.group(), right, e, f, model(), trace);
  };
  Trace trace;
  CHECK(why_not(en_side_blowout(Group{}, right, Length{}, f_ck, model(), trace)) == "a row without inserts");
  for (const double bad : {nan, infinite})
    CHECK(why_not(row(face, bad * mm, f_ck)) == "the place of the resultant of the row is not a number");
  for (const double bad : {0.0, -1.0, nan, infinite}) {
    CAPTURE(bad);
    CHECK(why_not(row(face, Length{}, bad * MPa)) == not_described);
    HeadedFace less = between(60.0, 1e4, 1e4, 1e4, 200.0);
    less.inserts[0].A_brg = bad * mm2;
    CHECK(why_not(row(less, Length{}, f_ck)) == not_described);
  }
  for (const double thickness : {200.0, 150.0, nan, infinite}) {  // nothing, or no number, below the head
    CAPTURE(thickness);
    HeadedFace less = between(60.0, 1e4, 1e4, 1e4, 200.0);
    less.sites[0].thickness = thickness * mm;
    CHECK(why_not(row(less, Length{}, f_ck)) == not_described);
  }
  HeadedFace outside = between(60.0, 1e4, 1e4, 1e4, 200.0);
  outside.sites[0].outline.outer.clear();
  CHECK(why_not(en_side_blowout(outside.group(), {0.6, 0.8, 0.0}, Length{}, f_ck, model(), trace)) ==
        "insert A does not lie inside the outline of its face");
  HeadedFace huge = between(60.0, 1e4, 1e4, 1e4, 200.0);
  huge.inserts[0].A_brg = 1e308 * m2;
  CHECK(why_not(row(huge, Length{}, 1e301 * MPa)) == not_described);
}

TEST_CASE("EN interaction: a use that is no number, or below nothing, gives no number") {
  Trace trace;
  const auto& power = eu_rules().anchor_bars->en->interaction_power;
  for (const double bad : no_use) {
    CAPTURE(bad);
    CHECK(std::isnan(en_steel_interaction(bad, 0.5, en(), trace).value()));
    CHECK(std::isnan(en_steel_interaction(0.5, bad, en(), trace).value()));
    CHECK(std::isnan(en_concrete_interaction(bad, 0.5, model(), trace).value()));
    CHECK(std::isnan(en_concrete_interaction(0.5, bad, model(), trace).value()));
    CHECK(std::isnan(en_interaction_beside_bars(bad, 0.5, power, trace).value()));
    CHECK(std::isnan(en_interaction_beside_bars(0.5, bad, power, trace).value()));
  }
  CHECK(en_steel_interaction(0.0, 0.5, en(), trace).value() == Approx(0.5));
  CHECK(en_concrete_interaction(0.5, 0.0, model(), trace).value() == Approx(0.5));
}

TEST_CASE(
    "EN blow-out of a row in a corner: the least distance of any head to each of the two sides beside it") {
  // Towards +x, c_1 60, h_ef 200. A at y = 0 and B at y = 150; sides at y = 230 and -90: 80 and 90 beside the
  // row.
  HeadedFace face = between(60.0, 1e4, 230.0, 90.0, 200.0);
  HeadedInsert& other = face.add("B", Length{}, 150.0 * mm, 200.0 * mm);
  other.A_brg = 600.0 * mm2;
  other.cracked = false;
  Trace trace;
  const auto N = assessed(en_side_blowout(face.group(), right, Length{}, f_ck, model(), trace));
  REQUIRE(N);
  const double psi_g = std::sqrt(2.0) + (1.0 - std::sqrt(2.0)) * 150.0 / 240.0,
               psi_s = 0.7 + 0.3 * 80.0 / 120.0;
  CHECK(in(kN, N->value) ==
        Approx(N0_blowout_kN(60.0) * (80.0 + 150.0 + 90.0) / 240.0 * psi_s * psi_g).epsilon(1e-9));
}

// Table 4.1: steel in tension 1.2 / (f_yk / f_uk), at least 1.4; in shear 1.0 / (f_yk / f_uk), at least 1.25,
// where f_uk is at most 800 MPa and f_yk / f_uk at most 0.8, else 1.5.
TEST_CASE("EN partial factors of steel, by its yield strength over its strength") {
  HeadedFace face = between(1e4, 1e4, 1e4, 1e4, 100.0);
  HeadedInsert& insert = face.inserts[0];
  Trace trace;
  for (const auto& [f_uk, f_yk, tension, shear] :
       {std::tuple{500.0, 300.0, 2.0, 5.0 / 3.0}, std::tuple{800.0, 640.0, 1.5, 1.25},
        std::tuple{500.0, 450.0, 1.4, 1.5}, std::tuple{900.0, 600.0, 1.8, 1.5}}) {
    CAPTURE(f_uk, f_yk);
    insert.f_uta = f_uk * MPa, insert.f_ya = f_yk * MPa;
    CHECK(partial_factor_of_steel_tension(insert, en(), trace).value.value() == Approx(tension));
    CHECK(partial_factor_of_steel_shear(insert, en(), trace).value.value() == Approx(shear));
  }
  CHECK(partial_factor_of_concrete(en(), trace).value.value() == Approx(1.5));
}

TEST_CASE("EN concrete: the kinder of the power form and the linear one over 1.2") {
  Trace trace;
  CHECK(en_concrete_interaction(0.95, 0.25, model(), trace).value() == Approx(1.0));
  CHECK(en_concrete_interaction(0.7, 0.6, model(), trace).value() ==
        Approx(std::min(std::pow(std::pow(0.7, 1.5) + std::pow(0.6, 1.5), 1.0 / 1.5), 1.3 / 1.2)));
}
