// Where an insert sits: its face, the edges around it, the outline as chords, the concrete behind it.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double pi = 3.14159265358979323846;

piece::InsertSite site(std::vector<Solid> solids, Position point) {
  return body_of(plan_of(std::move(solids), {}, {insert("A1", point)})).sites.at(0);
}

void check_edge(const piece::EdgeDistance& edge, double distance_mm, Direction towards, bool opening) {
  CHECK(in(mm, edge.distance) == Approx(distance_mm).epsilon(1e-9));
  CHECK(edge.towards.x == Approx(towards.x).margin(1e-9));
  CHECK(edge.towards.y == Approx(towards.y).margin(1e-9));
  CHECK(edge.towards.z == Approx(towards.z).margin(1e-9));
  CHECK(edge.opening == opening);
}

double enclosed_m2(const std::vector<plan::PlanarPoint>& p) {
  double sum = 0.0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const auto& next = p[(i + 1) % p.size()];
    sum += in(m2, p[i].x * next.y - next.x * p[i].y) / 2.0;
  }
  return sum;
}

// Least and largest distance of a closed polygon from a point, in millimetres.
std::pair<double, double> distances_mm(const std::vector<plan::PlanarPoint>& p, double x_mm, double y_mm) {
  double least = 1e300, largest = 0.0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const auto& next = p[(i + 1) % p.size()];
    const double ax = in(mm, p[i].x) - x_mm, ay = in(mm, p[i].y) - y_mm;
    const double bx = in(mm, next.x) - x_mm, by = in(mm, next.y) - y_mm;
    const double t = std::clamp(
        (ax * (ax - bx) + ay * (ay - by)) / (std::pow(ax - bx, 2) + std::pow(ay - by, 2)), 0.0, 1.0);
    least = std::min(least, std::hypot(ax + t * (bx - ax), ay + t * (by - ay)));
    largest = std::max(largest, std::hypot(ax, ay));
  }
  return {least, largest};
}

}  // namespace

TEST_CASE("panel with a window and a cut corner: every edge, nearest first") {
  const std::vector<Solid> solids = {
      box("panel", {}, at(6000, 3000, 180)), cut(box("window", at(1000, 1000, 0), at(1200, 1100, 180))),
      cut(prism("corner", {}, points({{5000, 3000}, {6000, 2000}, {6000, 3000}}), 180.0 * mm))};
  const auto s = site(solids, at(3450, 1400, 180));
  CHECK(s.planar);
  CHECK(s.normal.z == Approx(1.0));
  CHECK(in(mm, s.thickness) == Approx(180.0).epsilon(1e-9));
  REQUIRE(s.edges.size() == 9);
  const double below = std::hypot(1250.0, 400.0), above = std::hypot(1250.0, 700.0), slant = std::sqrt(0.5);
  check_edge(s.edges[0], 1250.0, {-1, 0, 0}, true);
  check_edge(s.edges[1], below, {-1250.0 / below, -400.0 / below, 0}, true);  // its nearest point is a corner
  check_edge(s.edges[2], 1400.0, {0, -1, 0}, false);
  check_edge(s.edges[3], above, {-1250.0 / above, 700.0 / above, 0}, true);
  check_edge(s.edges[4], 1600.0, {0, 1, 0}, false);
  check_edge(s.edges[5], 1575.0 / slant, {slant, slant, 0}, false);
  check_edge(s.edges[6], 2450.0, {-1, 0, 0}, true);
  check_edge(s.edges[7], 2550.0, {1, 0, 0}, false);
  check_edge(s.edges[8], 3450.0, {-1, 0, 0}, false);

  REQUIRE(s.outline.outer.size() == 5);
  REQUIRE(s.outline.holes.size() == 1);
  REQUIRE(s.outline.holes[0].size() == 4);
  CHECK(enclosed_m2(s.outline.outer) == Approx(18.0 - 0.5).epsilon(1e-9));
  CHECK(enclosed_m2(s.outline.holes[0]) == Approx(-1.32).epsilon(1e-9));
}

TEST_CASE("u points to the nearest edge, u, v and the normal are right-handed") {
  const auto s = site(box_culvert(), at(1.0 * ft, 2.0 * ft, 88.0 * inch));
  CHECK(s.u.x == Approx(-1.0));
  CHECK(s.v.y == Approx(-1.0));
  const Direction w = cross(s.u, s.v);
  CHECK(dot(w, s.normal) == Approx(1.0).epsilon(1e-12));
  // The face in these axes: u from -100 in (far side) to 12 in, v from -48 in to 24 in.
  double u_max = 0.0, v_max = 0.0;
  for (const auto& p : s.outline.outer) {
    u_max = std::max(u_max, in(inch, p.x));
    v_max = std::max(v_max, in(inch, p.y));
  }
  CHECK(u_max == Approx(12.0).epsilon(1e-9));
  CHECK(v_max == Approx(24.0).epsilon(1e-9));
}

TEST_CASE("every side of a box: normal out of the concrete, thickness through it") {
  struct Row {
    Position point;
    Direction normal;
    double thickness_mm;
  };
  for (const Row& row : {Row{at(0, 400, 300), {-1, 0, 0}, 1000}, Row{at(1000, 400, 300), {1, 0, 0}, 1000},
                         Row{at(500, 0, 300), {0, -1, 0}, 800}, Row{at(500, 800, 300), {0, 1, 0}, 800},
                         Row{at(500, 400, 0), {0, 0, -1}, 600}, Row{at(500, 400, 600), {0, 0, 1}, 600}}) {
    const auto s = site({box("block", {}, at(1000, 800, 600))}, row.point);
    CAPTURE(in(mm, row.point.x), in(mm, row.point.y), in(mm, row.point.z));
    CHECK(dot(s.normal, row.normal) == Approx(1.0).epsilon(1e-12));
    CHECK(in(mm, s.thickness) == Approx(row.thickness_mm).epsilon(1e-9));
    CHECK(s.edges.size() == 4);
    CHECK(enclosed_m2(s.outline.outer) * row.thickness_mm * 1e-3 == Approx(0.48).epsilon(1e-9));
  }
}

TEST_CASE("a void behind the insert ends the concrete") {
  const std::vector<Solid> solids = {box("slab", {}, at(2000, 1000, 400)),
                                     cut(cylinder("duct", at(0, 500, 250), 100.0 * mm, 2000.0 * mm, Axis::x)),
                                     cut(box("void", at(1400, 100, 50), at(300, 300, 150)))};
  CHECK(in(mm, site(solids, at(1000, 500, 400)).thickness) == Approx(100.0).epsilon(1e-9));
  CHECK(in(mm, site(solids, at(1550, 250, 400)).thickness) == Approx(200.0).epsilon(1e-9));
  CHECK(in(mm, site(solids, at(300, 300, 400)).thickness) == Approx(400.0).epsilon(1e-9));
  CHECK(in(mm, site(solids, at(300, 300, 0)).thickness) == Approx(400.0).epsilon(1e-9));
}

TEST_CASE("straight above the face of a void the shorter side counts") {
  const std::vector<Solid> solids = {box("slab", {}, at(2000, 1000, 400)),
                                     cut(box("void", at(1000, 200, 100), at(500, 500, 100)))};
  CHECK(in(mm, site(solids, at(1000, 450, 400)).thickness) == Approx(200.0).epsilon(1e-9));
  CHECK(in(mm, site(solids, at(1000, 200, 400)).thickness) == Approx(200.0).epsilon(1e-9));
  CHECK(in(mm, site(solids, at(999, 450, 400)).thickness) == Approx(400.0).epsilon(1e-9));
}

TEST_CASE("thickness against a slope is measured along the normal") {
  const auto s =
      site({wedge("roof", {}, at(2000, 1000, 600), {1000.0 * mm, 1000.0 * mm}, {1000.0 * mm, 0.0 * mm})},
           at(500, 500, 0));
  CHECK(in(mm, s.thickness) == Approx(300.0).epsilon(1e-9));
}

TEST_CASE("top rim of a manhole base: two circles, at their distances") {
  const auto s = site(manhole_base(), at(26.0 * inch, 0.0 * inch, 54.0 * inch));
  REQUIRE(s.planar);
  REQUIRE(s.edges.size() == 2);
  check_edge(s.edges[0], 2.0 * 25.4, {-1, 0, 0}, true);
  check_edge(s.edges[1], 3.0 * 25.4, {1, 0, 0}, false);
  CHECK(in(inch, s.thickness) == Approx(54.0 - 20.0 - 7.5).epsilon(1e-9));  // down to the inlet

  // u points to the bore: the centre of the rim lies at u = 26 in. Chords stay in the concrete, near the
  // circles.
  REQUIRE(s.outline.holes.size() == 1);
  const double R = 29.0 * 25.4, r = 24.0 * 25.4;
  const auto [outer_least, outer_largest] = distances_mm(s.outline.outer, 26.0 * 25.4, 0.0);
  CHECK(outer_largest <= R + 1e-6);
  CHECK(outer_least >= R - 0.2 - 1e-6);
  const auto [hole_least, hole_largest] = distances_mm(s.outline.holes[0], 26.0 * 25.4, 0.0);
  CHECK(hole_least >= r - 1e-6);
  CHECK(hole_largest <= r + 0.2 + 1e-3);
  CHECK(enclosed_m2(s.outline.outer) > 0.0);
  CHECK(enclosed_m2(s.outline.holes[0]) < 0.0);
  CHECK(enclosed_m2(s.outline.outer) + enclosed_m2(s.outline.holes[0]) <= pi * (R * R - r * r) * 1e-6);
  CHECK(enclosed_m2(s.outline.outer) + enclosed_m2(s.outline.holes[0]) ==
        Approx(pi * (R * R - r * r) * 1e-6).epsilon(0.003));
}

TEST_CASE("arcs of the outline that bulge in and out") {
  // A slab with a half-round end at +x and a half-round bite at y = 0; both edges are straight and round in
  // turn.
  const std::vector<Solid> solids = {box("slab", {}, at(2000, 1000, 200)),
                                     cylinder("nose", at(2000, 500, 0), 1000.0 * mm, 200.0 * mm),
                                     cut(cylinder("bite", at(800, 0, 0), 500.0 * mm, 200.0 * mm))};
  const auto s = site(solids, at(1000, 700, 200));
  CHECK(s.outline.holes.empty());
  REQUIRE(s.edges.size() == 6);  // left, top, nose, bottom twice, bite
  check_edge(s.edges[0], 300.0, {0, 1, 0}, false);
  CHECK(in(mm, s.edges[1].distance) == Approx(std::hypot(200.0, 700.0) - 250.0).epsilon(1e-9));
  const double exact = 2.0 + pi * 0.25 / 2.0 - pi * 0.0625 / 2.0;
  CHECK(enclosed_m2(s.outline.outer) < exact);
  CHECK(enclosed_m2(s.outline.outer) == Approx(exact).margin(0.2e-3 * pi * 0.75));
  const double x_mm = 1000, y_mm = 700;  // u = +y, v = -x
  for (const auto& p : s.outline.outer) {
    const double x = x_mm - in(mm, p.y), y = y_mm + in(mm, p.x);
    CAPTURE(x, y);
    CHECK(std::hypot(x - 800.0, y) >= 250.0 - 1e-6);
    CHECK((x <= 2000.0 || std::hypot(x - 2000.0, y - 500.0) <= 500.0 + 1e-6));
  }
}

TEST_CASE("an oblique cut through a cylinder leaves an ellipse") {
  // Plane z = 1000 + x / 2 through a cylinder of radius 400: half axes 400 and 400 sqrt(1.25).
  const std::vector<Solid> solids = {
      cylinder("post", {}, 800.0 * mm, 2000.0 * mm),
      cut(prism("slope", at(0, -500, 0), points({{500, -1000}, {1500, 1000}, {3000, 1000}, {3000, -1000}}),
                1000.0 * mm, Axis::y))};
  const auto s = site(solids, at(0, 0, 1000));
  REQUIRE(s.planar);
  REQUIRE(s.edges.size() == 1);
  CHECK(in(mm, s.edges[0].distance) == Approx(400.0).epsilon(1e-6));
  CHECK(std::abs(s.edges[0].towards.y) == Approx(1.0).epsilon(1e-6));
  CHECK(s.normal.x == Approx(-1.0 / std::sqrt(5.0)).epsilon(1e-9));
  const double exact = pi * 0.4 * 0.4 * std::sqrt(1.25);
  CHECK(enclosed_m2(s.outline.outer) < exact);
  CHECK(enclosed_m2(s.outline.outer) == Approx(exact).epsilon(0.003));
}

TEST_CASE("in the middle of a round face every direction is as near") {
  const auto s = site({cylinder("lid", {}, 1200.0 * mm, 150.0 * mm)}, at(0, 0, 150));
  REQUIRE(s.edges.size() == 1);
  CHECK(in(mm, s.edges[0].distance) == Approx(600.0).epsilon(1e-9));
  CHECK(norm(s.edges[0].towards) == Approx(1.0).epsilon(1e-9));
}

TEST_CASE("an edge in several pieces on one line is one edge") {
  // Steps in the side walls below the top split its long edges into pieces that continue each other.
  const std::vector<Solid> solids = {box("slab", {}, at(3000, 1000, 300)),
                                     cut(box("notch", at(1000, 0, 0), at(500, 200, 300 - 100))),
                                     box("pad", at(1800, 1000, 0), at(400, 100, 300))};
  const auto s = site(solids, at(500, 500, 300));
  // left, front, right, back left of the pad, pad left, pad back, pad right, back right of the pad
  CHECK(s.edges.size() == 8);
}

TEST_CASE("a curved face gives normal and thickness, no edges") {
  const std::vector<Solid> riser = {pipe("riser", {}, 1500.0 * mm, 1200.0 * mm, 1000.0 * mm)};
  for (const double angle : {0.0, 35.0, 45.0, 90.0, 180.0, 269.0}) {  // 45: on the seam of the surface
    CAPTURE(angle);
    const double c = std::cos(angle * pi / 180.0), sn = std::sin(angle * pi / 180.0);
    const auto outside = site(riser, at(750.0 * c, 750.0 * sn, 400));
    CHECK_FALSE(outside.planar);
    CHECK(outside.edges.empty());
    CHECK(outside.outline.outer.empty());
    CHECK(dot(outside.normal, Direction{c, sn, 0.0}) == Approx(1.0).epsilon(1e-9));
    CHECK(in(mm, outside.thickness) == Approx(150.0).epsilon(1e-6));
    CHECK(dot(cross(outside.u, outside.v), outside.normal) == Approx(1.0).epsilon(1e-9));
    const auto inside = site(riser, at(600.0 * c, 600.0 * sn, 400));
    CHECK(dot(inside.normal, Direction{-c, -sn, 0.0}) == Approx(1.0).epsilon(1e-9));
    CHECK(in(mm, inside.thickness) == Approx(150.0).epsilon(1e-6));
  }
}

TEST_CASE("a point within 1 mm of the face is taken to the face, beyond it is a fault") {
  const std::vector<Solid> slab = {box("slab", {}, at(2000, 1000, 200))};
  for (const double z : {199.0, 199.5, 200.5, 201.0}) {
    const auto s = site(slab, at(700, 400, z));
    CAPTURE(z);
    CHECK(in(mm, s.thickness) == Approx(200.0).epsilon(1e-9));
    CHECK(in(mm, s.edges.at(0).distance) == Approx(400.0).epsilon(1e-9));
  }
  CHECK(faults(plan_of(slab, {}, {insert("A1", at(700, 400, 201.01))})).size() == 1);
}

TEST_CASE("an insert off the concrete, or under its surface") {
  const std::vector<Solid> slab = {box("slab", {}, at(2000, 1000, 200))};
  plan::Plan plan = plan_of(
      slab, {},
      {insert("A1", at(700, 400, 212)), insert("A2", at(500, 400, 150)), insert("A3", at(500, 400, 200))});
  CHECK(faults(plan) == std::vector<std::string>{
                            "1000:1 insert 'A1' does not lie on the concrete: the nearest face is 12 mm away "
                            "[the nearest point of the concrete is (700 mm, 400 mm, 200 mm)]",
                            "2000:1 insert 'A2' does not lie on the concrete: the nearest face is 50 mm away "
                            "[the nearest point of the concrete is (500 mm, 400 mm, 200 mm)]"});
  plan.piece.units = UnitSystem::us;
  plan.inserts = {insert("A1", at(1.0 * ft, 1.0 * ft, 200.0 * mm + 6.0 * inch))};
  CHECK(faults(plan) == std::vector<std::string>{
                            "0:0 insert 'A1' does not lie on the concrete: the nearest face is 6 in away "
                            "[the nearest point of the concrete is (1 ft 0 in, 1 ft 0 in, 7 7/8 in)]"});
}

TEST_CASE("an insert over a window lies on no face") {
  CHECK(faults(plan_of(wall_panel(), {}, {insert("A1", at(1600, 1500, 180))})) ==
        std::vector<std::string>{
            "1000:1 insert 'A1' does not lie on the concrete: the nearest face is 500 mm away "
            "[the nearest point of the concrete is (1600 mm, 1000 mm, 180 mm)]"});
}

TEST_CASE("an insert whose place is not a number") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(faults(plan_of({box("slab", {}, at(2000, 1000, 200))}, {}, {insert("A1", at(700, nan, 200))})) ==
        std::vector<std::string>{"1000:1 the place of insert 'A1' is not a number"});
}

TEST_CASE("an insert on an edge or a corner") {
  const std::vector<Solid> slab = {box("slab", {}, at(2000, 1000, 200))};
  const std::string help = " [an insert sits in one face, more than 1 mm from every edge]";
  CHECK(faults(plan_of(slab, {},
                       {insert("A1", at(700, 0, 200)), insert("A2", at(0, 0, 0)),
                        insert("A3", at(700, 0.5, 200)), insert("A4", at(700, 0, 198.9))})) ==
        std::vector<std::string>{
            "1000:1 insert 'A1' lies on an edge where 2 faces meet: it is not clear which face it sits in" +
                help,
            "2000:1 insert 'A2' lies on an edge where 3 faces meet: it is not clear which face it sits in" +
                help,
            "3000:1 insert 'A3' lies on an edge where 2 faces meet: it is not clear which face it sits in" +
                help});
}
