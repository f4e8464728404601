// Mass properties of elementary solids against their closed forms.
//
// Source of the formulas: elementary solid geometry and the parallel-axis theorem, as in any textbook of
// statics. The numbers beside them were computed from the formulas by a separate script in exact or 30-digit
// arithmetic; they are held to one unit of the last printed digit. The formula itself is held to 1e-9 of its
// value.

#include <catch2/catch.hpp>

#include <cmath>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double pi = 3.14159265358979323846;

struct Inertia {
  double xx, yy, zz;
};

void check(const piece::Body& body, double volume_m3, const Position& centroid, const Inertia& inertia_m5) {
  const double length_m = std::cbrt(volume_m3);
  CHECK(in(m3, body.volume) == Approx(volume_m3).epsilon(1e-9));
  CHECK(in(m, body.centroid.x) == Approx(in(m, centroid.x)).margin(1e-9 * length_m));
  CHECK(in(m, body.centroid.y) == Approx(in(m, centroid.y)).margin(1e-9 * length_m));
  CHECK(in(m, body.centroid.z) == Approx(in(m, centroid.z)).margin(1e-9 * length_m));
  CHECK(body.inertia_per_density_m5[0][0] == Approx(inertia_m5.xx).epsilon(1e-9));
  CHECK(body.inertia_per_density_m5[1][1] == Approx(inertia_m5.yy).epsilon(1e-9));
  CHECK(body.inertia_per_density_m5[2][2] == Approx(inertia_m5.zz).epsilon(1e-9));
}

// The area of a polygon and its first and second moments about the origin, summed over its sides (shoelace).
struct Section {
  double area = 0.0, x = 0.0, y = 0.0, xx = 0.0, yy = 0.0, xy = 0.0;  // xx: integral of y2; xy: of x y
};
Section section(const std::vector<std::pair<double, double>>& p) {
  Section s;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const auto [x0, y0] = p[i];
    const auto [x1, y1] = p[(i + 1) % p.size()];
    const double c = x0 * y1 - x1 * y0;
    s.area += c / 2.0;
    s.x += (x0 + x1) * c / 6.0;
    s.y += (y0 + y1) * c / 6.0;
    s.xx += (y0 * y0 + y0 * y1 + y1 * y1) * c / 12.0;
    s.yy += (x0 * x0 + x0 * x1 + x1 * x1) * c / 12.0;
    s.xy += (x0 * y1 + 2.0 * x0 * y0 + 2.0 * x1 * y1 + x1 * y0) * c / 24.0;
  }
  return s;
}

}  // namespace

TEST_CASE("box: V (b2 + h2) / 12") {
  const auto body = body_of({box("slab", at(100, -200, 50), at(6000, 2400, 200))});
  check(body, 2.88, at(3100, 1000, 150), {1.392, 8.6496, 10.0224});
  CHECK(body.inertia_per_density_m5[0][1] == Approx(0.0).margin(1e-9));
}

TEST_CASE("rectangular frustum") {
  const double a1 = 2.0, b1 = 1.5, a2 = 1.4, b2 = 1.0, h = 0.9;
  const double w = 2.0 * a1 * b1 + a1 * b2 + a2 * b1 + 2.0 * a2 * b2;
  const double z = h * (a1 * b1 + a1 * b2 + a2 * b1 + 3.0 * a2 * b2) / (2.0 * w);
  const auto body =
      body_of({wedge("pier", {}, at(2000, 1500, 900), {1400.0 * mm, 1000.0 * mm}, {300.0 * mm, 250.0 * mm})});
  CHECK(in(m3, body.volume) == Approx(h * w / 6.0).epsilon(1e-9));
  CHECK(in(m3, body.volume) == Approx(1.935).epsilon(1e-9));
  CHECK(in(m, body.centroid.x) == Approx(1.0).epsilon(1e-9));
  CHECK(in(m, body.centroid.y) == Approx(0.75).epsilon(1e-9));
  CHECK(in(m, body.centroid.z) == Approx(z).epsilon(1e-9));
  CHECK(in(m, body.centroid.z) == Approx(0.394186046512).margin(1e-12));
  CHECK(body.inertia_per_density_m5[0][0] == Approx(0.393643343).margin(1e-9));
  CHECK(body.inertia_per_density_m5[1][1] == Approx(0.617094593).margin(1e-9));
  CHECK(body.inertia_per_density_m5[2][2] == Approx(0.75913875).margin(1e-8));
}

TEST_CASE("pyramid: a b h / 3, centroid at a quarter of the height") {
  const auto body = body_of({wedge("tip", {}, at(1200, 900, 600), {}, {200.0 * mm, 800.0 * mm})});
  CHECK(in(m3, body.volume) == Approx(1.2 * 0.9 * 0.6 / 3.0).epsilon(1e-9));
  CHECK(in(m, body.centroid.z) == Approx(0.15).epsilon(1e-9));
  CHECK(in(m, body.centroid.x) == Approx(0.6 + (0.2 - 0.6) / 4.0).epsilon(1e-9));
  CHECK(in(m, body.centroid.y) == Approx(0.45 + (0.8 - 0.45) / 4.0).epsilon(1e-9));
}

TEST_CASE("roof: a wedge with a ridge, a b h / 2 - (a - ridge) b h / 6") {
  const auto body =
      body_of({wedge("roof", {}, at(3000, 2000, 800), {1800.0 * mm, 0.0 * mm}, {600.0 * mm, 1000.0 * mm})});
  CHECK(in(m3, body.volume) == Approx(3.0 * 2.0 * 0.8 / 2.0 - (3.0 - 1.8) * 2.0 * 0.8 / 6.0).epsilon(1e-9));
}

TEST_CASE("frustum of a cone, upright and lying") {
  const double R = 0.6, r = 0.4, h = 0.5;
  const double V = pi * h * (R * R + R * r + r * r) / 3.0;
  const double z = h * (R * R + 2.0 * R * r + 3.0 * r * r) / (4.0 * (R * R + R * r + r * r));
  const double about_axis = pi * h * (std::pow(R, 5) - std::pow(r, 5)) / (R - r) / 10.0;
  const auto upright = body_of({cone("cone", at(50, 60, 70), 1200.0 * mm, 800.0 * mm, 500.0 * mm)});
  CHECK(in(m3, upright.volume) == Approx(V).epsilon(1e-9));
  CHECK(in(m3, upright.volume) == Approx(0.397935069455).margin(1e-12));
  CHECK(in(m, upright.centroid.x) == Approx(0.05).margin(1e-9));
  CHECK(in(m, upright.centroid.y) == Approx(0.06).margin(1e-9));
  CHECK(in(m, upright.centroid.z) == Approx(0.07 + z).epsilon(1e-9));
  CHECK(in(m, upright.centroid.z) - 0.07 == Approx(0.217105263158).margin(1e-12));
  CHECK(upright.inertia_per_density_m5[2][2] == Approx(about_axis).epsilon(1e-9));
  CHECK(upright.inertia_per_density_m5[2][2] == Approx(0.0530300839926).margin(1e-13));

  const auto lying = body_of({cone("cone", {}, 1200.0 * mm, 800.0 * mm, 500.0 * mm, Axis::y)});
  CHECK(in(m, lying.centroid.y) == Approx(z).epsilon(1e-9));
  CHECK(lying.inertia_per_density_m5[1][1] == Approx(about_axis).epsilon(1e-9));
}

TEST_CASE("full cone: either end may be the point") {
  const auto up = body_of({cone("cone", {}, 1000.0 * mm, 0.0 * mm, 900.0 * mm)});
  const auto down = body_of({cone("cone", {}, 0.0 * mm, 1000.0 * mm, 900.0 * mm)});
  CHECK(in(m3, up.volume) == Approx(pi * 0.25 * 0.9 / 3.0).epsilon(1e-9));
  CHECK(in(m3, down.volume) == Approx(pi * 0.25 * 0.9 / 3.0).epsilon(1e-9));
  CHECK(in(m, up.centroid.z) == Approx(0.225).epsilon(1e-9));
  CHECK(in(m, down.centroid.z) == Approx(0.675).epsilon(1e-9));
}

TEST_CASE("a cone without a slope is a cylinder") {
  const auto body = body_of({cone("cone", {}, 800.0 * mm, 800.0 * mm, 500.0 * mm)});
  CHECK(in(m3, body.volume) == Approx(pi * 0.16 * 0.5).epsilon(1e-9));
}

TEST_CASE("pipe: V (Ro2 + Ri2) / 2 about its axis, V (3 (Ro2 + Ri2) + L2) / 12 across it") {
  const double Ro = 0.9, Ri = 0.75, L = 2.4;
  const double V = pi * (Ro * Ro - Ri * Ri) * L;
  const double axial = V * (Ro * Ro + Ri * Ri) / 2.0;
  const double transverse = V * (3.0 * (Ro * Ro + Ri * Ri) + L * L) / 12.0;
  const auto upright = body_of({pipe("riser", {}, 1800.0 * mm, 1500.0 * mm, 2400.0 * mm)});
  check(upright, V, at(0, 0, 1200), {transverse, transverse, axial});
  CHECK(in(m3, upright.volume) == Approx(1.86610603623).margin(1e-11));
  CHECK(upright.inertia_per_density_m5[2][2] == Approx(1.28061526736).margin(1e-11));
  CHECK(upright.inertia_per_density_m5[0][0] == Approx(1.53603853107).margin(1e-11));
  CHECK(in(kg, upright.volume * (2400.0 * kg_per_m3)) == Approx(4478.65449).margin(1e-5));

  const auto lying = body_of({pipe("pipe", {}, 1800.0 * mm, 1500.0 * mm, 2400.0 * mm, Axis::x)});
  check(lying, V, at(1200, 0, 0), {axial, transverse, transverse});
}

TEST_CASE("a pipe is a cylinder with a cylinder cut out of it") {
  const auto whole = body_of({pipe("riser", {}, 1800.0 * mm, 1500.0 * mm, 2400.0 * mm)});
  const auto made = body_of({cylinder("outer", {}, 1800.0 * mm, 2400.0 * mm),
                             cut(cylinder("bore", at(0, 0, -10), 1500.0 * mm, 2420.0 * mm))});
  CHECK(in(m3, made.volume) == Approx(in(m3, whole.volume)).epsilon(1e-12));
  CHECK(made.inertia_per_density_m5[0][0] == Approx(whole.inertia_per_density_m5[0][0]).epsilon(1e-12));
}

TEST_CASE("curved wall: an annular sector of half-angle 30 degrees") {
  const double Ro = 3.0, Ri = 2.7, al = pi / 6.0;
  const double A = al * (Ro * Ro - Ri * Ri);
  const double x = 2.0 / 3.0 * std::sin(al) / al * (Ro * Ro * Ro - Ri * Ri * Ri) / (Ro * Ro - Ri * Ri);
  // The ring, less what lies outside two planes through its axis, 30 degrees either side of x.
  const double far = 4000.0, t = std::tan(al);
  const auto body = body_of(
      {pipe("ring", {}, 6000.0 * mm, 5400.0 * mm, 2000.0 * mm),
       cut(prism(
           "outside", {},
           points(
               {{0, 0}, {far, far * t}, {far, far}, {-far, far}, {-far, -far}, {far, -far}, {far, -far * t}}),
           2000.0 * mm))});
  CHECK(in(m3, body.volume) == Approx(2.0 * A).epsilon(1e-9));
  CHECK(in(m3, body.volume) == Approx(2.0 * 0.895353906273).margin(2e-12));
  CHECK(in(m, body.centroid.x) == Approx(x).epsilon(1e-9));
  CHECK(in(m, body.centroid.x) == Approx(2.72406249966).margin(1e-11));
  CHECK(in(m, body.centroid.y) == Approx(0.0).margin(1e-9));
}

TEST_CASE("L wall: a prism of six corners, along each axis") {
  const std::vector<std::pair<double, double>> corners = {{0, 0},      {1.8, 0}, {1.8, 0.25},
                                                          {0.3, 0.25}, {0.2, 2}, {0, 2}};
  const Section s = section(corners);
  CHECK(s.area == Approx(0.8875).margin(1e-12));
  const double L = 3.0, u = s.x / s.area, v = s.y / s.area;
  CHECK(u == Approx(0.518779343).margin(1e-9));
  CHECK(v == Approx(0.589201878).margin(1e-9));
  const double uu = s.xx - s.area * v * v, vv = s.yy - s.area * u * u, uv = s.xy - s.area * u * v;
  CHECK(uu == Approx(0.309214226).margin(1e-9));
  CHECK(vv == Approx(0.256624511).margin(1e-9));
  CHECK(uv == Approx(-0.164689823).margin(1e-9));

  std::vector<std::pair<double, double>> corners_mm;
  for (const auto& [x, y] : corners) corners_mm.push_back({1000.0 * x, 1000.0 * y});
  const double V = s.area * L, along = s.area * L * L * L / 12.0;
  const double first = L * uu + along, second = L * vv + along, axial = L * (uu + vv);
  const auto z = body_of({prism("wall", {}, points(corners_mm), 3.0 * m)});
  check(z, V, at(u * m, v * m, 1.5 * m), {first, second, axial});
  CHECK(z.inertia_per_density_m5[0][1] == Approx(-L * uv).epsilon(1e-9));
  const auto x = body_of({prism("wall", {}, points(corners_mm), 3.0 * m, Axis::x)});
  check(x, V, at(1.5 * m, u * m, v * m), {axial, first, second});
  CHECK(x.inertia_per_density_m5[1][2] == Approx(-L * uv).epsilon(1e-9));
  const auto y = body_of({prism("wall", {}, points(corners_mm), 3.0 * m, Axis::y)});
  check(y, V, at(v * m, 1.5 * m, u * m), {second, axial, first});
  CHECK(y.inertia_per_density_m5[2][0] == Approx(-L * uv).epsilon(1e-9));
}

TEST_CASE("panel with a window: subtract") {
  const double A = 6.0 * 3.0 - 1.2 * 1.1, t = 0.18;
  const auto by_cut = body_of(wall_panel());
  CHECK(in(m3, by_cut.volume) == Approx(A * t).epsilon(1e-9));
  CHECK(in(m3, by_cut.volume) == Approx(3.0024).epsilon(1e-9));
  CHECK(in(m, by_cut.centroid.x) == Approx((18.0 * 3.0 - 1.32 * 1.6) / A).epsilon(1e-9));
  CHECK(in(m, by_cut.centroid.x) == Approx(3.110791367).margin(1e-9));
  CHECK(in(m, by_cut.centroid.y) == Approx(1.496043165).margin(1e-9));
  CHECK(in(m, by_cut.centroid.z) == Approx(0.09).epsilon(1e-9));

  Solid panel = prism("panel", {}, points({{0, 0}, {6000, 0}, {6000, 3000}, {0, 3000}}), 180.0 * mm);
  panel.holes = {points({{1000, 1000}, {2200, 1000}, {2200, 2100}, {1000, 2100}})};
  const auto by_hole = body_of({panel});
  CHECK(in(m3, by_hole.volume) == Approx(in(m3, by_cut.volume)).epsilon(1e-12));
  CHECK(in(m, by_hole.centroid.x) == Approx(in(m, by_cut.centroid.x)).epsilon(1e-12));
}

TEST_CASE("round hole through a flat wall: pi r2 t") {
  const auto body = body_of({box("wall", {}, at(3000, 200, 2500)),
                             cut(cylinder("sleeve", at(1000, -50, 1200), 450.0 * mm, 300.0 * mm, Axis::y))});
  CHECK(in(m3, body.volume) == Approx(3.0 * 0.2 * 2.5 - pi * 0.225 * 0.225 * 0.2).epsilon(1e-9));
}
