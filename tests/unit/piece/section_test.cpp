// Sections of solids against their closed forms: rectangle, hollow box, T, circle, triangle and a stair.
//
// Source of the formulas: second moments of elementary areas and the parallel-axis theorem, as in any textbook of
// statics; the numbers are worked out in each case.

#include "piece/section.hpp"

#include <catch2/catch.hpp>

#include <cmath>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double pi = 3.14159265358979323846;

piece::SolidToCut solid_of(const plan::Plan& plan) {
  const auto made = piece::SolidToCut::of(plan);
  if (const auto* missing = std::get_if<NotAssessed>(&made)) FAIL(missing->why);
  return std::get<piece::SolidToCut>(made);
}

piece::Section section_of(const plan::Plan& plan, Axis axis, double at_mm) {
  const auto made = piece::section_at(solid_of(plan), axis, at_mm * mm);
  if (const auto* missing = std::get_if<NotAssessed>(&made)) FAIL(missing->why);
  return std::get<piece::Section>(made);
}

std::vector<piece::Stretch> stretches_of(const plan::Plan& plan, Axis axis, int slices = 24) {
  const auto made = piece::stretches(solid_of(plan), axis, slices);
  if (const auto* missing = std::get_if<NotAssessed>(&made)) FAIL(missing->why);
  return std::get<std::vector<piece::Stretch>>(made);
}

double cube(double x) { return x * x * x; }

}  // namespace

TEST_CASE("rectangle across x: b h, b h^3/12, h b^3/12") {
  const auto section = section_of(plan_of({box("beam", at(0, 100, 200), at(6000, 400, 600))}), Axis::x, 2500);
  CHECK(in(m2, section.area) == Approx(0.24));
  CHECK(in(m, section.centroid.y) == Approx(0.3));
  CHECK(in(m, section.centroid.z) == Approx(0.5));
  CHECK(section.about_across.value() == Approx(0.4 * cube(0.6) / 12.0));
  CHECK(section.about_up.value() == Approx(0.6 * cube(0.4) / 12.0));
  CHECK(section.product.value() == Approx(0.0).margin(1e-12));
  CHECK(in(m, section.lowest) == Approx(0.2));
  CHECK(in(m, section.highest) == Approx(0.8));
  CHECK(in(m, section.nearest) == Approx(0.1));
  CHECK(in(m, section.farthest) == Approx(0.5));
  CHECK(section.parts == 1);
}

TEST_CASE("across y and z the axes are x and the other") {
  const auto body = plan_of({box("block", at(1000, 2000, 3000), at(400, 6000, 200))});
  const auto y = section_of(body, Axis::y, 5000);
  CHECK(y.about_across.value() == Approx(0.4 * cube(0.2) / 12.0));
  CHECK(in(m, y.lowest) == Approx(3.0));
  CHECK(in(m, y.nearest) == Approx(1.0));
  const auto z = section_of(body, Axis::z, 3100);
  CHECK(z.about_across.value() == Approx(0.4 * cube(6.0) / 12.0));
  CHECK(in(m, z.lowest) == Approx(2.0));
  CHECK(in(m, z.highest) == Approx(8.0));
}

TEST_CASE("hollow box: the hole is taken away, and two walls stand where the slabs are cut through") {
  // 3.0 x 2.0 m outside, 2.4 x 1.4 m inside; a hole through the top slab and the bottom slab between y 0.3 and 2.7 m.
  const auto body = plan_of({box("outer", at(0, 0, 0), at(4000, 3000, 2000)),
                             cut(box("barrel", at(0, 300, 300), at(4000, 2400, 1400))),
                             cut(box("shaft", at(1500, 300, 0), at(1000, 2400, 2000)))});
  const auto whole = section_of(body, Axis::x, 500);
  CHECK(in(m2, whole.area) == Approx(6.0 - 2.4 * 1.4));
  CHECK(whole.about_across.value() == Approx((3.0 * cube(2.0) - 2.4 * cube(1.4)) / 12.0));
  CHECK(whole.parts == 1);
  const auto walls = section_of(body, Axis::x, 2000);
  CHECK(walls.parts == 2);
  CHECK(walls.about_across.value() == Approx(2.0 * 0.3 * cube(2.0) / 12.0));
  CHECK(walls.about_up.value() == Approx(2.0 * (2.0 * cube(0.3) / 12.0 + 0.6 * 1.35 * 1.35)));
}

TEST_CASE("T: centroid and second moment by the parallel-axis theorem") {
  // Flange 1.2 x 0.15 m on a web 0.3 x 0.6 m.
  const auto body = plan_of({box("web", at(0, 450, 0), at(5000, 300, 600)), box("flange", at(0, 0, 600), at(5000, 1200, 150))});
  const auto section = section_of(body, Axis::x, 1000);
  const double web = 0.18, flange = 0.18, centroid = (web * 0.3 + flange * 0.675) / (web + flange);
  CHECK(centroid == Approx(0.4875));
  CHECK(in(m, section.centroid.z) == Approx(centroid));
  CHECK(section.about_across.value() == Approx(0.3 * cube(0.6) / 12 + web * std::pow(centroid - 0.3, 2) +
                                               1.2 * cube(0.15) / 12 + flange * std::pow(0.675 - centroid, 2)));
}

TEST_CASE("circle and pipe: pi (R^4 - r^4)/4") {
  const auto body = plan_of({pipe("pipe", at(0, 0, 0), 1500.0 * mm, 1200.0 * mm, 2000.0 * mm, Axis::x)});
  const auto section = section_of(body, Axis::x, 700);
  CHECK(in(m2, section.area) == Approx(pi * (0.5625 - 0.36)));
  CHECK(section.about_across.value() == Approx(pi * (std::pow(0.75, 4) - std::pow(0.6, 4)) / 4.0));
  CHECK(section.about_up.value() == Approx(section.about_across.value()));
  CHECK(in(m, section.highest) == Approx(0.75).margin(1e-6));
}

TEST_CASE("right triangle: I_au = -b^2 h^2/72 and principal axes that hold it") {
  plan::Solid wedge = prism("triangle", at(0, 0, 0), points({{0, 0}, {600, 0}, {0, 300}}), 1000.0 * mm, Axis::x);
  const auto section = section_of(plan_of({wedge}), Axis::x, 400);
  const double b = 0.6, h = 0.3, across = b * cube(h) / 36.0, up = h * cube(b) / 36.0, product = -b * b * h * h / 72.0;
  CHECK(section.about_across.value() == Approx(across));
  CHECK(section.about_up.value() == Approx(up));
  CHECK(section.product.value() == Approx(product));
  // Sum and product of the principal moments are those of the matrix.
  CHECK(section.largest.value() + section.smallest.value() == Approx(across + up));
  CHECK(section.largest.value() * section.smallest.value() == Approx(across * up - product * product));
  const double turn = in(radian, section.principal_turn);
  CHECK(across * std::pow(std::cos(turn), 2) + up * std::pow(std::sin(turn), 2) -
            product * std::sin(2.0 * turn) == Approx(section.largest.value()));
}

TEST_CASE("a prismatic piece is one stretch, a stepped one a stretch for each step") {
  CHECK(stretches_of(plan_of({box("beam", at(0, 0, 0), at(6000, 400, 600))}), Axis::x).size() == 1);
  const auto stepped = stretches_of(
      plan_of({box("thin", at(0, 0, 0), at(6000, 400, 300)), box("corbel", at(2000, 0, 300), at(1000, 400, 200))}), Axis::x);
  REQUIRE(stepped.size() == 3);
  CHECK(in(m, stepped[1].from) == Approx(2.0));
  CHECK(in(m, stepped[1].to) == Approx(3.0));
  CHECK(stepped[1].prismatic);
  CHECK(in(m2, stepped[1].start.area) == Approx(0.2));
  CHECK(in(m2, stepped[2].start.area) == Approx(0.12));
}

TEST_CASE("a stair lying on its soffit: every nosing is a station, and the waist is the least section") {
  // Soffit level, waist 160 mm, five teeth of 150 mm at 300 mm.
  std::vector<std::pair<double, double>> outline = {{1500, 0}};
  outline.insert(outline.begin(), {0, 0});
  for (int tooth = 5; tooth-- > 0;) {
    outline.push_back({300.0 * tooth + 300.0, 160});
    outline.push_back({300.0 * tooth + 100.0, 310});
  }
  outline.push_back({0, 160});
  // Axis y: the outline is z, x.
  std::vector<std::pair<double, double>> turned;
  for (const auto& [x, z] : outline) turned.push_back({z, x});
  const auto all = stretches_of(plan_of({prism("stair", at(0, 0, 0), points(turned), 1200.0 * mm, Axis::y)}), Axis::x);
  double least = 1.0, volume = 0.0;
  for (const auto& stretch : all) {
    least = std::min({least, in(m2, stretch.start.area), in(m2, stretch.end.area)});
    volume += in(m, stretch.to - stretch.from) *
              in(m2, stretch.start.area + 4.0 * stretch.middle.area + stretch.end.area) / 6.0;
  }
  CHECK(least == Approx(1.2 * 0.16).epsilon(2e-3));  // cut a thousandth inside the stretch
  CHECK(volume == Approx(1.2 * (1.5 * 0.16 + 5 * 0.5 * 0.3 * 0.15)).epsilon(1e-3));
}

TEST_CASE("a plane beside the piece, and a plan without a solid, are not assessed") {
  const auto solid = solid_of(plan_of({box("b", at(0, 0, 0), at(1000, 100, 100))}));
  CHECK_FALSE(is_assessed(piece::section_at(solid, Axis::x, 2.0 * m)));
  CHECK_FALSE(is_assessed(piece::SolidToCut::of(plan_of({}))));
}

TEST_CASE("shear area: a rectangle two thirds, and the least of I b / Q of a hollow box") {
  CHECK(in(m2, section_of(plan_of({box("beam", at(0, 0, 0), at(6000, 400, 600))}), Axis::x, 3000).shear_area) ==
        Approx(0.24 / 1.5));
  const auto hollow = section_of(plan_of({box("outer", at(0, 0, 0), at(4000, 3000, 2000)),
                                          cut(box("barrel", at(0, 300, 300), at(4000, 2400, 1400)))}), Axis::x, 500);
  const double I = (3.0 * cube(2.0) - 2.4 * cube(1.4)) / 12.0, Q = (3.0 * 1.0 * 0.5 - 2.4 * 0.7 * 0.35);
  CHECK(in(m2, hollow.shear_area) == Approx(I * 0.6 / Q).epsilon(0.005));
}
