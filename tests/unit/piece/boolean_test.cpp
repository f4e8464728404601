// What must hold for every piece made by boolean operations.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double pi = 3.14159265358979323846;

void check_same_mass(const piece::Body& a, const piece::Body& b) {
  const double size = std::cbrt(in(m3, a.volume));
  CHECK(in(m3, a.volume) == Approx(in(m3, b.volume)).epsilon(1e-9));
  CHECK(in(m, norm(a.centroid - b.centroid)) == Approx(0.0).margin(1e-9 * size));
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t k = 0; k < 3; ++k)
      CHECK(a.inertia_per_density_m5[i][k] ==
            Approx(b.inertia_per_density_m5[i][k]).epsilon(1e-9).margin(1e-9 * std::pow(size, 5)));
}

Area surface(const piece::Body& body) {
  Area sum{};
  for (const piece::Face& face : body.faces) sum += face.area;
  return sum;
}

template <class F>
double simpson(double from, double to, int pieces, F&& f) {
  const double h = (to - from) / (2 * pieces);
  double sum = f(from) + f(to);
  for (int i = 1; i < 2 * pieces; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * f(from + i * h);
  return sum * h / 3.0;
}

}  // namespace

TEST_CASE("moving the piece moves the centroid and nothing else") {
  std::vector<Solid> solids = manhole_base();
  const auto here = body_of(solids);
  const Position shift = at(1234.5, -987.6, 543.2);
  for (Solid& s : solids) s.at = s.at + shift;
  auto there = body_of(solids);
  there.centroid = there.centroid - shift;
  check_same_mass(here, there);
}

TEST_CASE("turning the piece turns the centroid") {
  const Angle by = 37.0 * deg;
  const Position about = at(300, -200, 100);
  std::vector<Solid> solids = box_culvert();
  const auto turn = [&](const Position& p) {
    const Position r = p - about;
    return about + Position{cosine(by) * r.x - sine(by) * r.y, sine(by) * r.x + cosine(by) * r.y, r.z};
  };
  const auto straight = body_of(solids);
  for (Solid& s : solids)
    s = turned(
        [&] {
          Solid moved = s;
          moved.at = turn(s.at);
          return moved;
        }(),
        Axis::z, by);
  const auto skew = body_of(solids);
  CHECK(in(m3, skew.volume) == Approx(in(m3, straight.volume)).epsilon(1e-12));
  CHECK(in(m, norm(skew.centroid - turn(straight.centroid))) == Approx(0.0).margin(1e-9));
  const double trace_straight = straight.inertia_per_density_m5[0][0] + straight.inertia_per_density_m5[1][1];
  const double trace_skew = skew.inertia_per_density_m5[0][0] + skew.inertia_per_density_m5[1][1];
  CHECK(trace_skew == Approx(trace_straight).epsilon(1e-9));
  CHECK(skew.faces.size() == straight.faces.size());
}

TEST_CASE("a solid is turned anticlockwise, looking against the axis") {
  const auto body = body_of({turned(box("arm", at(100, 200, 300), at(1000, 100, 100)), Axis::z, 90.0 * deg)});
  CHECK(in(mm, body.lowest.x) == Approx(0.0).margin(1e-6));
  CHECK(in(mm, body.highest.x) == Approx(100.0).margin(1e-6));
  CHECK(in(mm, body.highest.y) == Approx(1200.0).margin(1e-6));
  const auto upright = body_of({turned(box("arm", {}, at(1000, 100, 100)), Axis::y, 90.0 * deg)});
  CHECK(in(mm, upright.lowest.z) == Approx(-1000.0).margin(1e-6));
}

TEST_CASE("a mirrored piece has a mirrored centroid and the same inertia") {
  std::vector<Solid> solids = {box("slab", {}, at(3000, 2000, 200)),
                               box("rib", at(400, 0, 200), at(300, 2000, 500)),
                               cut(box("notch", at(2500, 1500, 0), at(500, 500, 200)))};
  const auto right = body_of(solids);
  for (Solid& s : solids) s.at.x = -(s.at.x + s.size.x);
  auto left = body_of(solids);
  CHECK(in(m, left.centroid.x) == Approx(-in(m, right.centroid.x)).epsilon(1e-12));
  left.centroid.x = -left.centroid.x;
  for (const std::size_t i : {1u, 2u}) {
    left.inertia_per_density_m5[0][i] = -left.inertia_per_density_m5[0][i];
    left.inertia_per_density_m5[i][0] = -left.inertia_per_density_m5[i][0];
  }
  check_same_mass(right, left);
}

TEST_CASE("splitting a prism in two leaves everything unchanged") {
  const auto corners = points({{0, 0}, {1800, 0}, {1800, 250}, {300, 250}, {200, 2000}, {0, 2000}});
  const auto whole = body_of(plan_of({prism("wall", {}, corners, 3000.0 * mm)}, {contact({"wall"})},
                                     {insert("A", at(1000, 0, 1200))}));
  const auto halves = body_of(plan_of(
      {prism("lower", {}, corners, 1300.0 * mm), prism("upper", at(0, 0, 1300), corners, 1700.0 * mm)},
      {contact({"lower", "upper"})}, {insert("A", at(1000, 0, 1200))}));
  check_same_mass(whole, halves);
  REQUIRE(whole.faces.size() == 8);
  REQUIRE(halves.faces.size() == 8);
  CHECK(in(m2, surface(halves)) == Approx(in(m2, surface(whole))).epsilon(1e-12));
  CHECK(in(m2, halves.contacts.at(0).area) == Approx(in(m2, whole.contacts.at(0).area)).epsilon(1e-12));
  CHECK(in(m2, halves.contacts.at(0).on_pull) == Approx(in(m2, whole.contacts.at(0).on_pull)).epsilon(1e-12));
  const auto two_makers =
      std::count_if(halves.faces.begin(), halves.faces.end(), [](const piece::Face& face) {
        return face.made_by == std::vector<std::string>{"lower", "upper"};
      });
  CHECK(two_makers == 6);
  REQUIRE(halves.sites.at(0).edges.size() == 4);  // no edge where the halves meet
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(in(mm, halves.sites[0].edges[i].distance) ==
          Approx(in(mm, whole.sites[0].edges[i].distance)).epsilon(1e-12));
}

TEST_CASE("splitting a pipe in two leaves everything unchanged") {
  const auto whole = body_of({pipe("riser", {}, 1800.0 * mm, 1500.0 * mm, 2400.0 * mm)});
  const auto halves = body_of({pipe("lower", {}, 1800.0 * mm, 1500.0 * mm, 1000.0 * mm),
                               pipe("upper", at(0, 0, 1000), 1800.0 * mm, 1500.0 * mm, 1400.0 * mm)});
  check_same_mass(whole, halves);
  CHECK(whole.faces.size() == 4);
  CHECK(halves.faces.size() == 4);
}

TEST_CASE("a union is no larger than its solids together, and smaller by what they share") {
  const auto body =
      body_of({box("a", {}, at(2000, 1000, 500)), box("b", at(1500, 500, 200), at(1000, 1500, 900))});
  CHECK(in(m3, body.volume) == Approx(1.0 + 1.35 - 0.5 * 0.5 * 0.3).epsilon(1e-12));
}

TEST_CASE("solids are added and cut in order") {
  const Solid slab = box("slab", {}, at(2000, 1000, 500)),
              hole = cut(box("hole", at(500, 250, 0), at(500, 500, 500)));
  const Solid rib = box("rib", at(0, 400, 0), at(2000, 200, 500));
  CHECK(in(m3, body_of({slab, hole, rib}).volume) == Approx(1.0 - 0.125 + 0.5 * 0.2 * 0.5).epsilon(1e-12));
  CHECK(faults(plan_of({slab, rib, hole})) ==
        std::vector<std::string>{
            "20:1 solid 'rib': it adds nothing: it lies wholly inside the solids before it"});
}

TEST_CASE("a solid that fills a closed void adds something") {
  const auto body =
      body_of({box("outer", {}, at(1000, 1000, 1000)), cut(box("void", at(200, 200, 200), at(600, 600, 600))),
               box("fill", at(100, 100, 100), at(800, 800, 800))});
  CHECK(in(m3, body.volume) == Approx(1.0).epsilon(1e-12));
  CHECK(body.faces.size() == 6);
}

TEST_CASE("the bounding box is exact to the tolerance of the kernel") {
  const auto body = body_of(manhole_base());
  CHECK(in(mm, body.lowest.x) == Approx(-29.0 * 25.4).margin(2e-4));
  CHECK(in(mm, body.highest.y) == Approx(29.0 * 25.4).margin(2e-4));
  CHECK(in(mm, body.lowest.z) == Approx(0.0).margin(2e-4));
  CHECK(in(mm, body.highest.z) == Approx(54.0 * 25.4).margin(2e-4));
}

// Archimedes: two cylinders of one radius that cross at right angles share 16 r3 / 3. Where curved surfaces
// meet, the kernel holds the curve to 1e-7 m.
TEST_CASE("two equal cylinders that cross") {
  const auto body = body_of({cylinder("a", at(0, 0, -1000), 600.0 * mm, 2000.0 * mm),
                             cylinder("b", at(-1000, 0, 0), 600.0 * mm, 2000.0 * mm, Axis::x)});
  CHECK(in(m3, body.volume) == Approx(2.0 * pi * 0.09 * 2.0 - 16.0 / 3.0 * 0.027).epsilon(1e-8));
  CHECK(in(m, norm(body.centroid)) == Approx(0.0).margin(1e-9));
}

// There is no elementary form: the concrete under dy of the hole is (sqrt(R2 - y2) - sqrt(Ri2 - y2)) long,
// and 2 sqrt(r2 - y2) high; y = r sin(a) takes the root away from the ends, where Simpson's rule would
// suffer.
TEST_CASE("horizontal round hole through a round wall") {
  const double R = 0.7366, Ri = 0.6096, r = 0.1905;
  const auto wall_at = [&](double y) { return std::sqrt(R * R - y * y) - std::sqrt(Ri * Ri - y * y); };
  const double removed = simpson(-pi / 2.0, pi / 2.0, 400, [&](double a) {
    return 2.0 * r * r * std::cos(a) * std::cos(a) * wall_at(r * std::sin(a));
  });
  const double lining = simpson(0.0, 2.0 * pi, 400, [&](double a) { return r * wall_at(r * std::cos(a)); });
  const double soffit = simpson(-r, r, 400, wall_at);

  const auto body = body_of(plan_of(
      {pipe("riser", {}, 58.0 * inch, 48.0 * inch, 48.0 * inch),
       cut(cylinder("inlet", at(0.0 * inch, 0.0 * inch, 20.0 * inch), 15.0 * inch, 40.0 * inch, Axis::x))},
      {contact({"inlet"})}));
  const double whole = pi * (R * R - Ri * Ri) * 1.2192;
  CHECK(in(m3, body.volume) == Approx(whole - removed).epsilon(1e-9));
  CHECK(whole - in(m3, body.volume) == Approx(removed).epsilon(1e-7));
  CHECK(in(m2, body.contacts.at(0).area) == Approx(lining).epsilon(1e-7));
  CHECK(in(m2, body.contacts.at(0).on_pull) == Approx(soffit).epsilon(1e-6));
  CHECK(in(m, body.contacts.at(0).centroid.z) == Approx(20.0 * 0.0254).epsilon(1e-7));
}
