// Thin plates under uniform load. Numbers computed beforehand by a separate script (a
// conforming rectangular element of 16 freedoms, the flat slab by a double Fourier series too), no publication, but where a
// case says so: Roark's Formulas for Stress and Strain, table 11.4 case 1a (nu 0.3), read; deflection of the simply
// supported square also in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., table 8 (from memory).
//
// Unit load, unit short side a, unit rigidity: deflections in q a^4/D, moments in q a^2. Tolerance: 1 % of the
// deflection and 2 % of the row's largest moment, 3.5 % for means over a band at a pick: the accuracy of the mesh used. The
// printed digits are finer.
//
// Outside  piece-cracking

#include <catch2/catch.hpp>

#include <algorithm>

#include "support/plates.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr double size = 0.045;

PlateProblem unit_load(double nu) { return {1.0, nu, 1.0, {}, {}}; }

void check_deflection(double ours, double printed) { CHECK(ours == Approx(printed).epsilon(0.01)); }
void check_moment(double ours, double printed, double scale) { CHECK(ours == Approx(printed).margin(0.02 * scale)); }

}  // namespace

TEST_CASE("simply supported rectangle: Navier's series") {
  struct Row {
    double b, w, Mx_3, My_3, Mx_2, My_2;
  };
  for (const Row& row : {Row{1.0, 0.004062, 0.04789, 0.04789, 0.04420, 0.04420},
                         Row{1.2, 0.005651, 0.06269, 0.05009, 0.05926, 0.04485},
                         Row{1.5, 0.007724, 0.08116, 0.04984, 0.07836, 0.04257},
                         Row{2.0, 0.010129, 0.10168, 0.04635, 0.09994, 0.03670}})
    for (const double nu : {0.3, 0.2}) {
      CAPTURE(row.b, nu);
      const PlateMesh mesh = meshed(rectangle_shape(row.b), {{0.0, 0.0}}, size);
      PlateProblem problem = unit_load(nu);
      hold_simply(mesh, row.b, problem);
      const Bent centre = bent_at(solved(mesh, problem), 0);
      check_deflection(centre.w, row.w);
      check_moment(centre.Mx, nu == 0.3 ? row.Mx_3 : row.Mx_2, row.Mx_3);
      check_moment(centre.My, nu == 0.3 ? row.My_3 : row.My_2, row.Mx_3);
    }
}

TEST_CASE("simply supported rectangle: Roark table 11.4 case 1a, beta and alpha") {
  // M = beta q b^2/6, w = alpha q b^4/(E t^3) = alpha/(12 (1 - nu^2)) q b^4/D, b the short side there.
  struct Row {
    double ratio, beta, alpha;
  };
  for (const Row& row : {Row{1.0, .2874, .0444}, Row{1.2, .3762, .0616}, Row{1.4, .4530, .0770}, Row{1.6, .5172, .0906},
                         Row{1.8, .5688, .1017}, Row{2.0, .6102, .1110}, Row{3.0, .7134, .1335}}) {
    CAPTURE(row.ratio);
    const PlateMesh mesh = meshed(rectangle_shape(row.ratio), {{0.0, 0.0}}, size);
    PlateProblem problem = unit_load(0.3);
    hold_simply(mesh, row.ratio, problem);
    const Bent centre = bent_at(solved(mesh, problem), 0);
    CHECK(6.0 * centre.Mx == Approx(row.beta).epsilon(0.01));
    CHECK(12.0 * (1.0 - 0.09) * centre.w == Approx(row.alpha).epsilon(0.01));
  }
}

TEST_CASE("rectangle on its four corners") {
  struct Row {
    double nu, b, w, Mx, My, short_w, short_Mx, long_w, long_My;
  };
  const std::vector<Row> rows = {
      {0.0, 1.0, 0.02820, 0.1058, 0.1058, 0.01743, 0.1594, 0.01743, 0.1594},
      {0.15, 1.0, 0.02634, 0.1088, 0.1088, 0.01718, 0.1551, 0.01718, 0.1551},
      {0.2, 1.0, 0.02595, 0.1098, 0.1098, 0.01727, 0.1536, 0.01727, 0.1536},
      {0.2, 1.2, 0.04000, 0.1033, 0.1652, 0.01883, 0.1669, 0.03345, 0.2074},
      {0.2, 1.5, 0.07960, 0.0934, 0.2676, 0.02147, 0.1896, 0.07676, 0.3063},
      {0.2, 2.0, 0.22597, 0.0781, 0.4887, 0.02636, 0.2320, 0.23047, 0.5211},
      {0.25, 1.0, 0.02567, 0.1108, 0.1108, 0.01746, 0.1521, 0.01746, 0.1521},
      {0.3, 1.0, 0.025507, 0.11171, 0.11171, 0.017747, 0.15044, 0.017747, 0.15044},
      {0.3, 1.2, 0.03951, 0.1063, 0.1669, 0.01917, 0.1619, 0.03464, 0.2047},
      {0.3, 1.5, 0.07983, 0.0980, 0.2690, 0.02156, 0.1814, 0.08007, 0.3043},
      {0.3, 2.0, 0.23116, 0.0855, 0.4894, 0.02596, 0.2177, 0.24184, 0.5202}};
  for (const Row& row : rows) {
    CAPTURE(row.nu, row.b);
    const double y = 0.5 * row.b;
    const PlateMesh mesh = meshed(rectangle_shape(row.b),
                                  {{0, 0}, {0, y}, {0.5, 0}, {-0.5, -y}, {0.5, -y}, {0.5, y}, {-0.5, y}}, size);
    PlateProblem problem = unit_load(row.nu);
    for (std::size_t corner = 3; corner < 7; ++corner) problem.held.push_back(3 * mesh.focus_nodes[corner]);
    const PlateSolution plate = solved(mesh, problem);
    const double scale = std::max(row.My, row.long_My);
    check_deflection(bent_at(plate, 0).w, row.w);
    check_moment(bent_at(plate, 0).Mx, row.Mx, scale);
    check_moment(bent_at(plate, 0).My, row.My, scale);
    check_deflection(bent_at(plate, 1).w, row.short_w);
    check_moment(bent_at(plate, 1).Mx, row.short_Mx, scale);
    check_deflection(bent_at(plate, 2).w, row.long_w);
    check_moment(bent_at(plate, 2).My, row.long_My, scale);
    // Statics, for any nu: mean of M_y over the mid section is q b^2/8; each corner carries a quarter.
    CHECK((*plate.strip_moments({0, 0}, true, 1.0))[1] == Approx(row.b * row.b / 8.0).epsilon(0.01));
    CHECK(plate.reaction(3 * mesh.focus_nodes[3]) == Approx(row.b / 4.0).epsilon(1e-4));
  }
}

TEST_CASE("interior panel of a flat slab on points") {
  // Here q b^4/D and q b^2 of the long side.
  struct Row {
    double b, w, Mx_2, My_2, Mx_3, My_3, a_line_x, a_line_y, b_line_x, b_line_y;
  };
  for (const Row& row : {Row{1.0, 0.00580, .0331, .0331, .0359, .0359, .0514, -.0183, -.0183, .0514},
                         Row{1.2, 0.00427, .0210, .0363, .0243, .0377, .0390, -.0285, -.0048, .0474},
                         Row{1.5, 0.00338, .0130, .0393, .0169, .0398, .0275, -.0393, .0036, .0442},
                         Row{2.0, 0.00291, .0093, .0411, .0133, .0412, .0164, -.0503, .0074, .0422}})
    for (const double nu : {0.2, 0.3}) {
      CAPTURE(row.b, nu);
      const double y = 0.5 * row.b, square = row.b * row.b;
      const PlateMesh mesh = meshed(rectangle_shape(row.b),
                                    {{0, 0}, {0, y}, {0.5, 0}, {-0.5, -y}, {0.5, -y}, {0.5, y}, {-0.5, y}}, size);
      PlateProblem problem = unit_load(nu);
      hold_as_symmetric(mesh, row.b, problem);
      for (std::size_t corner = 3; corner < 7; ++corner) problem.held.push_back(3 * mesh.focus_nodes[corner]);
      const PlateSolution plate = solved(mesh, problem);
      const double scale = 0.05;
      if (nu == 0.2) CHECK(bent_at(plate, 0).w / (square * square) == Approx(row.w).epsilon(0.01));
      check_moment(bent_at(plate, 0).Mx / square, nu == 0.2 ? row.Mx_2 : row.Mx_3, scale);
      check_moment(bent_at(plate, 0).My / square, nu == 0.2 ? row.My_2 : row.My_3, scale);
      if (nu != 0.2) continue;
      check_moment(bent_at(plate, 1).Mx / square, row.a_line_x, scale);
      check_moment(bent_at(plate, 1).My / square, row.a_line_y, scale);
      check_moment(bent_at(plate, 2).Mx / square, row.b_line_x, scale);
      check_moment(bent_at(plate, 2).My / square, row.b_line_y, scale);
    }
}

namespace {

// Four picks at the share s from every side; focus 0 centre, 1 middle of a short side, 2 of a long side, 3 corner, then picks.
PlateSolution on_four_picks(double b, double s, double nu) {
  const double y = 0.5 * b, px = 0.5 - s, py = y - s * b;
  const PlateMesh mesh = meshed(rectangle_shape(b),
                                {{0, 0}, {0, y}, {0.5, 0}, {0.5, y}, {-px, -py}, {px, -py}, {px, py}, {-px, py}}, size);
  PlateProblem problem = unit_load(nu);
  for (std::size_t pick = 4; pick < 8; ++pick) problem.held.push_back(3 * mesh.focus_nodes[pick]);
  return solved(mesh, problem);
}

}  // namespace

TEST_CASE("rectangle on four picks inside it, nu 0.2") {
  struct Row {
    double b, s, w, short_w, long_w, corner_w, Mx, My, short_Mx, long_My;
  };
  const std::vector<Row> rows = {
      {1.0, .15, .004365, .001397, .001397, -.002793, .0447, .0447, .0562, .0562},
      {1.0, .20, .001488, .000521, .000521, -.000716, .0219, .0219, .0252, .0252},
      {1.0, .2071, .001186, .000507, .000507, -.000363, .0186, .0186, .0210, .0210},
      {1.0, .22, .000696, .000543, .000543, .000305, .0125, .0125, .0136, .0136},
      {1.0, .25, -.000179, .000900, .000900, .001975, -.0021, -.0021, -.0027, -.0027},
      {1.5, .20, .004603, -.001071, .004078, -.002285, .0213, .0528, .0211, .0596},
      {1.5, .2071, .003639, -.000289, .003267, -.001173, .0181, .0452, .0170, .0508},
      {2.0, .20, .013195, -.005465, .013410, -.006727, .0228, .0967, .0176, .1053},
      {2.0, .2071, .010351, -.002499, .010528, -.003478, .0198, .0829, .0140, .0903}};
  for (const Row& row : rows) {
    CAPTURE(row.b, row.s);
    const PlateSolution plate = on_four_picks(row.b, row.s, 0.2);
    // Near 0.22 the deflections of load and picks cancel: not less than 3e-5 is asked for.
    const double most_w = std::max({row.w, row.long_w, std::abs(row.corner_w), 0.003});
    CHECK(bent_at(plate, 0).w == Approx(row.w).margin(0.01 * most_w));
    CHECK(bent_at(plate, 1).w == Approx(row.short_w).margin(0.01 * most_w));
    CHECK(bent_at(plate, 2).w == Approx(row.long_w).margin(0.01 * most_w));
    CHECK(bent_at(plate, 3).w == Approx(row.corner_w).margin(0.01 * most_w));
    const double scale = std::max(row.long_My, 0.03);
    check_moment(bent_at(plate, 0).Mx, row.Mx, scale);
    check_moment(bent_at(plate, 0).My, row.My, scale);
    check_moment(bent_at(plate, 1).Mx, row.short_Mx, scale);
    check_moment(bent_at(plate, 2).My, row.long_My, scale);
    // Statics, exact: the mean of M_x over the whole line through two picks, and over the middle.
    CHECK((*plate.strip_moments({0.5 - row.s, 0}, false, row.b))[0] == Approx(-0.5 * row.s * row.s).margin(0.0005));
    CHECK((*plate.strip_moments({0, 0}, false, row.b))[0] ==
          Approx(0.5 * (0.5 - row.s) - 1.0 / 8.0).margin(0.0005));
  }
}

TEST_CASE("means over a band at a pick, four picks at 0.2071, nu 0.2") {
  struct Row {
    double b, band, Mx, My;  // band: share of the side across; M_y in q b^2
  };
  for (const Row& row :
       {Row{1.0, .10, -.0568, -.0568}, Row{1.0, .20, -.0408, -.0408}, Row{1.0, .40, -.0262, -.0262},
        Row{1.5, .10, -.0728, -.0453}, Row{1.5, .20, -.0490, -.0346}, Row{1.5, .40, -.0279, -.0248},
        Row{2.0, .10, -.0869, -.0394}, Row{2.0, .20, -.0558, -.0314}, Row{2.0, .40, -.0291, -.0240}}) {
    CAPTURE(row.b, row.band);
    const PlateSolution plate = on_four_picks(row.b, 0.2071, 0.2);
    const PlatePoint pick{0.5 - 0.2071, (0.5 - 0.2071) * row.b};
    CHECK((*plate.strip_moments(pick, false, row.band * row.b))[0] == Approx(row.Mx).epsilon(0.035));
    CHECK((*plate.strip_moments(pick, true, row.band))[1] / (row.b * row.b) == Approx(row.My).epsilon(0.035));
  }
}

TEST_CASE("twist of a free plate by corner forces: P a b/(2 D (1 - nu)), exactly") {
  for (const double b : {1.0, 1.5}) {
    const double y = 0.5 * b, nu = 0.2, P = 1.0;
    const PlateMesh mesh = meshed(rectangle_shape(b), {{-0.5, -y}, {0.5, -y}, {0.5, y}, {-0.5, y}, {0, 0}}, 0.1);
    PlateProblem problem{1.0, nu, 0.0, {{3 * mesh.focus_nodes[2], P}}, {}};
    for (const std::size_t held : {0U, 1U, 3U}) problem.held.push_back(3 * mesh.focus_nodes[held]);
    const PlateSolution plate = solved(mesh, problem);
    CHECK(plate.deflection(mesh.focus_nodes[2]) == Approx(P * b / (2.0 * (1.0 - nu))).epsilon(1e-9));
    CHECK(std::abs((*plate.moments({0.1, 0.1}))[2]) == Approx(0.5 * P).epsilon(1e-9));
    CHECK(plate.reaction(3 * mesh.focus_nodes[1]) == Approx(P).epsilon(1e-9));
  }
}

TEST_CASE("four interior points pushed in a twist, nu 0.2: deflection at a point c V a^2/D") {
  struct Row {
    double b, s, c;
  };
  for (const Row& row : {Row{1.0, .1, .06982}, Row{1.0, .2, .02705}, Row{1.0, .25, .01534}, Row{1.5, .1, .10562},
                         Row{1.5, .2, .04152}, Row{1.5, .2071, .03852}}) {
    CAPTURE(row.b, row.s);
    const double px = 0.5 - row.s, py = (0.5 - row.s) * row.b;
    const PlateMesh mesh = meshed(rectangle_shape(row.b), {{-px, -py}, {px, -py}, {px, py}, {-px, py}}, size);
    PlateProblem problem{1.0, 0.2, 0.0, {{3 * mesh.focus_nodes[2], 1.0}}, {}};
    for (const std::size_t held : {0U, 1U, 3U}) problem.held.push_back(3 * mesh.focus_nodes[held]);
    // Relative to the plane through three points the fourth moves four times as far as each does in the twist.
    CHECK(solved(mesh, problem).deflection(mesh.focus_nodes[2]) / 4.0 == Approx(row.c).epsilon(0.015));
  }
}
