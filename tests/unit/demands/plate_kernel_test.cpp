// The parts that the bending of panels is made of, each against what it must give exactly: fields that an
// element holds without error, places told by shares, means of what is linear, meshes that cover their shape.

#include <array>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "demands/plate_element.hpp"
#include "demands/plate_grid.hpp"
#include "demands/plate_membrane.hpp"
#include "demands/plate_mesh.hpp"
#include "demands/plate_shape.hpp"
#include "demands/plate_six_corners.hpp"

using namespace firstpick::demands;

namespace {

const std::array<PlatePoint, 3> oblique = {PlatePoint{0.3, -0.2}, PlatePoint{2.1, 0.4}, PlatePoint{0.9, 1.7}};
constexpr std::array<std::array<double, 2>, 5> places = {
    {{0.0, 0.0}, {1.0, 0.0}, {0.0, 1.0}, {0.2, 0.3}, {0.55, 0.15}}};

// w = a x^2 + b x y + c y^2 + d x + e y + f with w, dw/dy, -dw/dx at each corner.
struct Quadratic {
  double a, b, c, d = 0.7, e = -1.3, f = 2.0;
  ElementVector at(const std::array<PlatePoint, 3>& corners) const {
    ElementVector values{};
    for (std::size_t i = 0; i < 3; ++i) {
      const double x = corners[i].x_m, y = corners[i].y_m;
      values[3 * i] = a * x * x + b * x * y + c * y * y + d * x + e * y + f;
      values[3 * i + 1] = b * x + 2.0 * c * y + e;
      values[3 * i + 2] = -(2.0 * a * x + b * y + d);
    }
    return values;
  }
};

double product(const ElementMatrix& matrix, const ElementVector& left, const ElementVector& right) {
  double sum = 0.0;
  for (std::size_t i = 0; i < 9; ++i)
    for (std::size_t j = 0; j < 9; ++j) sum += left[i] * matrix[i][j] * right[j];
  return sum;
}

PlateMesh two_triangles(double width, double height) {
  return {{{0.0, 0.0}, {width, 0.0}, {width, height}, {0.0, height}}, {{0, 1, 2}, {0, 2, 3}}, {}, 0.0};
}

PlateMesh meshed(const PlateShape& shape, const std::vector<PlatePoint>& focus, double size_m) {
  auto mesh = plate_mesh(shape, focus, size_m);
  REQUIRE(mesh);
  return *std::move(mesh);
}

double signed_area_m2(const PlateMesh& mesh, const std::array<int, 3>& t) {
  const auto at = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(t[i])]; };
  return 0.5 * ((at(1).x_m - at(0).x_m) * (at(2).y_m - at(0).y_m) -
                (at(2).x_m - at(0).x_m) * (at(1).y_m - at(0).y_m));
}

PlateShape box(double width, double height) {
  return {{{0.0, 0.0}, {width, 0.0}, {width, height}, {0.0, height}}, {}};
}

}  // namespace

TEST_CASE("plate element: even curvature has its moments everywhere, exactly") {
  const PlateElement element(oblique);
  const double D = 3.0, nu = 0.2;
  for (const Quadratic& w : {Quadratic{1.0, 0.0, 0.0}, Quadratic{0.0, 1.0, 0.0}, Quadratic{0.0, 0.0, 1.0},
                             Quadratic{0.4, -1.1, 0.8}})
    for (const auto& [s, t] : places) {
      CAPTURE(w.a, w.b, w.c, s, t);
      const auto M = PlateElement::moments(element.curvatures(s, t), w.at(oblique), D, nu);
      CHECK(M[0] == Approx(-D * (2.0 * w.a + nu * 2.0 * w.c)).margin(1e-12));
      CHECK(M[1] == Approx(-D * (2.0 * w.c + nu * 2.0 * w.a)).margin(1e-12));
      CHECK(M[2] == Approx(-D * (1.0 - nu) * w.b).margin(1e-12));
    }
}

TEST_CASE("plate element: its energy is that of even curvature over its area, none of a rigid motion") {
  const PlateElement element(oblique);
  const double D = 3.0, nu = 0.2;
  const ElementMatrix K = element.stiffness(D, nu);
  CHECK(element.area_m2() == Approx(0.5 * (1.8 * 1.9 - 0.6 * 0.6)));
  const Quadratic w{0.4, -1.1, 0.8};
  const double x = 2.0 * w.a, y = 2.0 * w.c, xy = w.b;
  CHECK(product(K, w.at(oblique), w.at(oblique)) ==
        Approx(element.area_m2() * D * (x * x + y * y + 2.0 * nu * x * y + 2.0 * (1.0 - nu) * xy * xy))
            .epsilon(1e-12));
  const ElementVector rigid = Quadratic{0.0, 0.0, 0.0}.at(oblique);
  for (std::size_t i = 0; i < 9; ++i) {
    double force = 0.0;
    for (std::size_t j = 0; j < 9; ++j) {
      force += K[i][j] * rigid[j];
      CHECK(K[i][j] == Approx(K[j][i]).margin(1e-12));
    }
    CHECK(force == Approx(0.0).margin(1e-12));
  }
}

// The energy of any motion, by another rule of three points that is exact for it too.
TEST_CASE("plate element: its stiffness is the integral of moment times curvature, whatever the motion") {
  const PlateElement element(oblique);
  const double D = 2.0, nu = 0.3;
  const ElementMatrix K = element.stiffness(D, nu);
  for (std::size_t f = 0; f < 9; ++f) {
    ElementVector one{};
    one[f] = 1.0, one[(f + 4) % 9] = -0.6;
    double energy = 0.0;
    for (const auto& [s, t] : {std::array{1.0 / 6.0, 1.0 / 6.0}, std::array{2.0 / 3.0, 1.0 / 6.0},
                               std::array{1.0 / 6.0, 2.0 / 3.0}}) {
      const auto rows = element.curvatures(s, t);
      const auto M = PlateElement::moments(rows, one, D, nu);
      for (std::size_t row = 0; row < 3; ++row) {
        double curvature = 0.0;
        for (std::size_t i = 0; i < 9; ++i) curvature += rows[row][i] * one[i];
        energy += element.area_m2() / 3.0 * M[row] * curvature;
      }
    }
    CHECK(product(K, one, one) == Approx(energy).epsilon(1e-12));
  }
}

TEST_CASE(
    "six-cornered triangles: strains of any quadratic displacement are exact, and the law that of plane "
    "stress") {
  const PlateMesh mesh{{oblique[0], oblique[1], oblique[2], {2.6, 2.2}}, {{0, 1, 2}, {1, 3, 2}}, {}, 0.0};
  const SixCorneredMesh six(mesh, 0.25);
  REQUIRE(six.nodes == 9);  // 4 corners, 5 sides, one of them shared
  CHECK(six.triangles[0][4] == six.triangles[1][5]);
  const auto place_of = [&](std::size_t t, std::size_t local) {
    const auto corner = [&](std::size_t i) {
      return mesh.nodes[static_cast<std::size_t>(mesh.triangles[t][i])];
    };
    if (local < 3) return corner(local);
    const PlatePoint a = corner(local - 3), b = corner((local - 2) % 3);
    return PlatePoint{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
  };
  const auto u = [](const PlatePoint& p) {
    return 1.0 + 2.0 * p.x_m - p.y_m + 0.5 * p.x_m * p.x_m + 0.7 * p.x_m * p.y_m - 0.2 * p.y_m * p.y_m;
  };
  const auto v = [](const PlatePoint& p) {
    return 3.0 - p.x_m + 0.4 * p.y_m - 0.3 * p.x_m * p.x_m + 0.9 * p.x_m * p.y_m + 0.6 * p.y_m * p.y_m;
  };
  std::vector<double> motion(static_cast<std::size_t>(2 * six.nodes));
  for (std::size_t t = 0; t < 2; ++t)
    for (std::size_t local = 0; local < 6; ++local) {
      motion[static_cast<std::size_t>(six.freedom(t, 2 * local))] = u(place_of(t, local));
      motion[static_cast<std::size_t>(six.freedom(t, 2 * local + 1))] = v(place_of(t, local));
    }
  for (std::size_t t = 0; t < 2; ++t)
    for (const auto& [s, r] : places) {
      const auto rows = six.strains(t, s, r);
      std::array<double, 3> strain{};
      for (std::size_t row = 0; row < 3; ++row)
        for (std::size_t i = 0; i < 12; ++i)
          strain[row] += rows[row][i] * motion[static_cast<std::size_t>(six.freedom(t, i))];
      const PlatePoint a = place_of(t, 0), b = place_of(t, 1), c = place_of(t, 2);
      const double x = a.x_m + s * (b.x_m - a.x_m) + r * (c.x_m - a.x_m),
                   y = a.y_m + s * (b.y_m - a.y_m) + r * (c.y_m - a.y_m);
      CHECK(strain[0] == Approx(2.0 + x + 0.7 * y).margin(1e-12));
      CHECK(strain[1] == Approx(0.4 + 0.9 * x + 1.2 * y).margin(1e-12));
      CHECK(strain[2] == Approx(-1.0 + 0.7 * x - 0.4 * y - 1.0 - 0.6 * x + 0.9 * y).margin(1e-12));
    }
  // E = 1: stress x of strain x alone 1/(1 - nu^2), of strain y nu times that; shear modulus 1/(2 (1 + nu)).
  CHECK(six.law[0][0] == Approx(1.0 / (1.0 - 0.0625)));
  CHECK(six.law[1][1] == Approx(1.0 / (1.0 - 0.0625)));
  CHECK(six.law[0][1] == Approx(0.25 / (1.0 - 0.0625)));
  CHECK(six.law[1][0] == Approx(0.25 / (1.0 - 0.0625)));
  CHECK(six.law[2][2] == Approx(1.0 / 2.5));
}

TEST_CASE("six-cornered triangles: held at one corner both ways, and across the long way at the far one") {
  CHECK(SixCorneredMesh(two_triangles(4.0, 1.0), 0.2).holds() == std::array{0, 1, 2 * 2 + 1});
  CHECK(SixCorneredMesh(two_triangles(1.0, 4.0), 0.2).holds() == std::array{0, 1, 2 * 2});
  PlateMesh turned = two_triangles(4.0, 1.0);  // the lowest corner is not the first node
  turned.nodes = {{4.0, 0.0}, {4.0, 1.0}, {0.0, 1.0}, {0.0, 0.0}};
  CHECK(SixCorneredMesh(turned, 0.2).holds() == std::array{6, 7, 3});
}

TEST_CASE("membrane: an even pull along the panel gives that force everywhere and its displacements") {
  const PlateMesh mesh = meshed(box(4.0, 1.0), {}, 0.2);
  const MembraneSolver solver(mesh, 0.2);
  // 5 N/m on both ends, half of each side to each of its corners: even some sizes away.
  std::vector<MembraneNodeForce> forces;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) {
      const int a = mesh.triangles[t][i], b = mesh.triangles[t][(i + 1) % 3];
      const PlatePoint p = mesh.nodes[static_cast<std::size_t>(a)],
                       q = mesh.nodes[static_cast<std::size_t>(b)];
      for (const double end : {0.0, 4.0})
        if (std::abs(p.x_m - end) < 1e-9 && std::abs(q.x_m - end) < 1e-9)
          for (const int node : {a, b})
            forces.push_back({node, (end > 0.0 ? 2.5 : -2.5) * distance_m(p, q), 0.0});
    }
  const auto solution = solver.solve(0.0, 0.0, forces);
  REQUIRE(solution);
  CHECK(solution->held() == Approx(0.0).margin(1e-9));
  const auto n = solution->patch_forces({2.0, 0.5}, 0.3);
  REQUIRE(n);
  CHECK((*n)[0] == Approx(5.0).epsilon(0.002));
  CHECK((*n)[1] == Approx(0.0).margin(0.01));
  CHECK((*n)[2] == Approx(0.0).margin(0.01));
  // Two nodes near the axis, not near the ends: apart by 5/E t of their distance.
  int from = -1, to = -1;
  for (int node = 0; node < static_cast<int>(mesh.nodes.size()); ++node) {
    const PlatePoint p = mesh.nodes[static_cast<std::size_t>(node)];
    if (std::abs(p.y_m - 0.5) > 0.2 || p.x_m < 1.0 || p.x_m > 3.0) continue;
    if (from < 0 || p.x_m < mesh.nodes[static_cast<std::size_t>(from)].x_m) from = node;
    if (to < 0 || p.x_m > mesh.nodes[static_cast<std::size_t>(to)].x_m) to = node;
  }
  REQUIRE(to >= 0);
  const PlatePoint p = mesh.nodes[static_cast<std::size_t>(from)],
                   q = mesh.nodes[static_cast<std::size_t>(to)];
  const auto u = solution->displacement(from), w = solution->displacement(to);
  // In the frame of the holds the panel may have turned a little: along the line between the two it does not
  // show.
  const double dx = q.x_m - p.x_m, dy = q.y_m - p.y_m;
  CHECK((w[0] - u[0]) * dx + (w[1] - u[1]) * dy ==
        Approx(5.0 * dx * dx - 0.2 * 5.0 * dy * dy).epsilon(0.005));
}

TEST_CASE("membrane: a panel that hangs from its upper end carries what is below each place") {
  const PlateMesh mesh = meshed(box(1.0, 4.0), {}, 0.25);
  const MembraneSolver solver(mesh, 0.0);
  std::vector<MembraneNodeForce> forces;
  double shares = 0.0;
  for (int node = 0; node < static_cast<int>(mesh.nodes.size()); ++node) {
    const PlatePoint p = mesh.nodes[static_cast<std::size_t>(node)];
    if (std::abs(p.y_m - 4.0) > 1e-9) continue;
    const bool corner = p.x_m < 1e-9 || p.x_m > 1.0 - 1e-9;
    forces.push_back({node, 0.0, corner ? 0.5 : 1.0});
    shares += corner ? 0.5 : 1.0;
  }
  for (MembraneNodeForce& force : forces) force.y *= 7.0 * 4.0 / shares;  // 7 N/m2 down
  const auto solution = solver.solve(0.0, -7.0, forces);
  REQUIRE(solution);
  CHECK(solution->held() == Approx(0.0).margin(1e-6));
  for (const double y : {0.5, 1.0, 2.0, 3.0}) {
    const auto n = solution->mean(solver.grid().line_mean({0.5, y}, true, 1.0));
    REQUIRE(n);
    CHECK((*n)[1] == Approx(7.0 * y).epsilon(0.01));
    CHECK((*n)[0] == Approx(0.0).margin(0.1));
  }
}

TEST_CASE("grid: a place is found with its shares, on sides and corners too, and nothing outside") {
  const PlateMesh mesh = meshed({{{0.0, 0.0}, {3.0, 0.0}, {3.0, 2.0}, {1.0, 2.0}, {0.0, 1.0}},
                                 {{{1.5, 0.8}, {1.5, 1.2}, {2.0, 1.2}, {2.0, 0.8}}}},
                                {}, 0.35);
  const PlateGrid grid(mesh, 1.0, 0.0);
  const auto check = [&](const PlatePoint& p) {
    CAPTURE(p.x_m, p.y_m);
    const auto place = grid.find(p);
    REQUIRE(place);
    const auto& t = mesh.triangles[place->triangle];
    const auto at = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(t[i])]; };
    const double one = 1.0 - place->share_2 - place->share_3;
    CHECK(one * at(0).x_m + place->share_2 * at(1).x_m + place->share_3 * at(2).x_m ==
          Approx(p.x_m).margin(1e-9));
    CHECK(one * at(0).y_m + place->share_2 * at(1).y_m + place->share_3 * at(2).y_m ==
          Approx(p.y_m).margin(1e-9));
    for (const double share : {one, place->share_2, place->share_3}) CHECK(share >= -1e-8);
  };
  for (double x = 0.05; x < 3.0; x += 0.1)
    for (double y = 0.03; y < 2.0; y += 0.1)
      if (is_inside({{{0.0, 0.0}, {3.0, 0.0}, {3.0, 2.0}, {1.0, 2.0}, {0.0, 1.0}},
                     {{{1.5, 0.8}, {1.5, 1.2}, {2.0, 1.2}, {2.0, 0.8}}}},
                    {x, y}))
        check({x, y});
      else
        CHECK_FALSE(grid.find({x, y}));
  for (const PlatePoint& p :
       {PlatePoint{0.0, 0.0}, {3.0, 2.0}, {1.0, 2.0}, {0.5, 1.5}, {3.0, 0.77}, {1.5, 1.0}, {1.75, 1.2}})
    check(p);
  for (const PlatePoint& p : {PlatePoint{-1e-6, 0.5},
                              {3.000001, 1.0},
                              {1.0, -1e-6},
                              {2.0, 2.000001},
                              {0.4999, 1.5001},
                              {1.500001, 1.0},
                              {-5.0, 1.0},
                              {50.0, 1.0},
                              {1.0, -5.0},
                              {1.0, 50.0}})
    CHECK_FALSE(grid.find(p));
}

TEST_CASE("grid: means over discs and lines of what is linear, of what of them lies in the panel") {
  const PlateMesh mesh = meshed(box(3.0, 2.0), {{0.8, 0.6}}, 0.3);
  const PlateGrid grid(mesh, 1.0, 0.0);
  std::vector<std::array<PlateMean::Three, 3>> corners;
  for (const auto& t : mesh.triangles) {
    std::array<PlateMean::Three, 3> here{};
    for (std::size_t i = 0; i < 3; ++i) {
      const PlatePoint p = mesh.nodes[static_cast<std::size_t>(t[i])];
      here[i] = {p.x_m, p.y_m, 1.0};
    }
    corners.push_back(here);
  }
  const auto inside = grid.disc_mean({0.8, 0.6}, 0.4).of(corners);
  REQUIRE(inside);
  CHECK((*inside)[0] == Approx(0.8).epsilon(1e-9));
  CHECK((*inside)[1] == Approx(0.6).epsilon(1e-9));
  CHECK((*inside)[2] == Approx(1.0).epsilon(1e-9));
  // Half of a disc: its centroid is 4 r / (3 pi) off the edge, 54 points tell it within 15 %.
  const auto half = grid.disc_mean({1e-6, 1.0}, 0.5).of(corners);
  REQUIRE(half);
  CHECK((*half)[0] == Approx(4.0 * 0.5 / (3.0 * M_PI)).epsilon(0.15));
  CHECK((*half)[1] == Approx(1.0).epsilon(1e-9));
  const auto line = grid.line_mean({2.5, 0.7}, true, 2.0).of(corners);  // from 1.5 to the edge
  REQUIRE(line);
  CHECK((*line)[0] == Approx(2.25).epsilon(0.001));
  CHECK((*line)[1] == Approx(0.7).epsilon(1e-9));
  const auto upright = grid.line_mean({2.5, 0.7}, false, 1.0).of(corners);
  REQUIRE(upright);
  CHECK((*upright)[0] == Approx(2.5).epsilon(1e-9));
  CHECK((*upright)[1] == Approx(0.7).epsilon(1e-9));
  CHECK_FALSE(grid.disc_mean({5.0, 5.0}, 0.5).of(corners));
  CHECK_FALSE(grid.line_mean({5.0, 5.0}, true, 0.5).of(corners));
}

TEST_CASE(
    "mesh: it covers the shape, every triangle counter-clockwise, every pick a node, fine there and coarse "
    "far away") {
  const PlateShape with_opening{{{0.0, 0.0}, {6.0, 0.0}, {6.0, 3.0}, {4.0, 3.0}, {4.0, 2.0}, {0.0, 2.0}},
                                {{{1.0, 0.5}, {1.0, 1.5}, {2.0, 1.5}, {2.0, 0.5}}}};
  const std::vector<PlatePoint> picks{{5.0, 1.5}, {3.0, 1.0}, {0.0, 1.0}};  // the last on the boundary
  for (const double size_m : {0.6, 0.3}) {
    CAPTURE(size_m);
    const PlateMesh mesh = meshed(with_opening, picks, size_m);
    REQUIRE(mesh.focus_nodes.size() == 3);
    for (std::size_t i = 0; i < 3; ++i)
      CHECK(distance_m(mesh.nodes[static_cast<std::size_t>(mesh.focus_nodes[i])], picks[i]) < 1e-6);
    double area = 0.0, least_angle = M_PI;
    for (const auto& t : mesh.triangles) {
      const double here = signed_area_m2(mesh, t);
      CHECK(here > 0.0);
      area += here;
      double longest = 0.0, nearest_pick = 1e9;
      for (std::size_t i = 0; i < 3; ++i) {
        const PlatePoint p = mesh.nodes[static_cast<std::size_t>(t[i])],
                         q = mesh.nodes[static_cast<std::size_t>(t[(i + 1) % 3])],
                         r = mesh.nodes[static_cast<std::size_t>(t[(i + 2) % 3])];
        longest = std::max(longest, distance_m(p, q));
        for (const PlatePoint& pick : picks) nearest_pick = std::min(nearest_pick, distance_m(p, pick));
        const double a = distance_m(q, r), b = distance_m(r, p), c = distance_m(p, q);
        least_angle =
            std::min(least_angle, std::acos(std::clamp((b * b + c * c - a * a) / (2.0 * b * c), -1.0, 1.0)));
      }
      CHECK(longest < 1.8 * size_m);
      if (nearest_pick < 1e-6) CHECK(longest < 0.5 * size_m);  // 0.1 wanted at a pick
    }
    CHECK(area == Approx(6.0 * 2.0 + 2.0 * 1.0 - 1.0).epsilon(1e-9));
    CHECK(mesh.least_angle_rad == Approx(least_angle).epsilon(1e-6));
    CHECK(mesh.least_angle_rad > 20.0 * M_PI / 180.0);
  }
}

TEST_CASE("mesh: sides of triangles follow a seam, and none crosses it") {
  PlateShape shape = box(4.0, 2.0);
  shape.seams = {{PlatePoint{1.3, 0.0}, PlatePoint{2.1, 2.0}}};
  const PlateMesh mesh = meshed(shape, {}, 0.4);
  for (const auto& t : mesh.triangles) {
    double least = 1e9, most = -1e9;
    for (const int node : t) {
      const PlatePoint p = mesh.nodes[static_cast<std::size_t>(node)];
      const double beside = (p.x_m - 1.3) * 2.0 - p.y_m * 0.8;
      least = std::min(least, beside), most = std::max(most, beside);
    }
    CHECK((least > -1e-5 || most < 1e-5));
  }
}

TEST_CASE("shape: inside, area and distances of a ring with slanted sides and an opening") {
  const PlateShape shape{{{0.0, 0.0}, {4.0, 0.0}, {3.0, 2.0}, {1.0, 2.0}},
                         {{{1.5, 0.5}, {1.5, 1.0}, {2.5, 1.0}, {2.5, 0.5}}}};
  CHECK(area_m2(shape) == Approx(6.0 - 0.5));
  for (const auto& [p, inside] :
       {std::pair{PlatePoint{0.6, 1.0}, true}, std::pair{PlatePoint{0.4, 1.0}, false},
        std::pair{PlatePoint{3.4, 1.0}, true}, std::pair{PlatePoint{3.6, 1.0}, false},
        std::pair{PlatePoint{2.0, 0.7}, false}, std::pair{PlatePoint{2.0, 1.1}, true},
        std::pair{PlatePoint{2.0, 2.1}, false}, std::pair{PlatePoint{0.2, 0.3}, true},
        std::pair{PlatePoint{0.1, 0.3}, false}}) {
    CAPTURE(p.x_m, p.y_m);
    CHECK(is_inside(shape, p) == inside);
  }
  // The left side runs from (0, 0) to (1, 2), 1/sqrt(5) (2, -1) across it.
  CHECK(distance_m({1.0, 1.0}, {0.0, 0.0}, {1.0, 2.0}) == Approx(1.0 / std::sqrt(5.0)));
  CHECK(distance_m({-3.0, -4.0}, {0.0, 0.0}, {1.0, 2.0}) == Approx(5.0));  // before its end
  CHECK(distance_m({4.0, 6.0}, {0.0, 0.0}, {1.0, 2.0}) == Approx(5.0));
  CHECK(distance_m({3.0, 4.0}, {0.0, 0.0}, {0.0, 0.0}) == Approx(5.0));  // no side at all
  CHECK(boundary_distance_m(shape, {2.0, 1.2}) == Approx(0.2));
  CHECK(boundary_distance_m(shape, {1.0, 1.0}) == Approx(1.0 / std::sqrt(5.0)));
}
