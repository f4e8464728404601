// A box or a prism with openings right through it is made in one sweep: it must be the piece that cutting one solid after the
// other makes. The same solids, the first of them turned by nothing, are cut one after the other.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>

#include "piece/opened_body.hpp"
#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

std::vector<Solid> step_by_step(std::vector<Solid> solids) {
  solids.front() = turned(solids.front(), Axis::z, 0.0 * deg);
  return solids;
}

bool same_face(const piece::Face& a, const piece::Face& b) {
  std::vector<std::string> makers_a = a.made_by, makers_b = b.made_by;
  std::ranges::sort(makers_a);
  std::ranges::sort(makers_b);
  const auto sides = [](const piece::Face& face) {
    std::vector<std::size_t> counts;
    for (const auto& ring : face.rings) counts.push_back(ring.size());
    if (counts.size() > 1) std::sort(counts.begin() + 1, counts.end());
    return counts;
  };
  return makers_a == makers_b && a.planar == b.planar && std::abs(in(m2, a.area - b.area)) < 1e-9 &&
         in(m, norm(a.centroid - b.centroid)) < 1e-8 &&
         a.normal.x * b.normal.x + a.normal.y * b.normal.y + a.normal.z * b.normal.z > 1.0 - 1e-12 && sides(a) == sides(b);
}

void check_same_piece(const std::vector<Solid>& solids) {
  const piece::Body swept = body_of(solids), cut = body_of(step_by_step(solids));
  CHECK(in(m3, swept.volume) == Approx(in(m3, cut.volume)).epsilon(1e-12));
  CHECK(in(m, norm(swept.centroid - cut.centroid)) < 1e-9);
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t k = 0; k < 3; ++k)
      CHECK(swept.inertia_per_density_m5[i][k] ==
            Approx(cut.inertia_per_density_m5[i][k]).epsilon(1e-9).margin(1e-9));
  CHECK(in(m, norm(swept.lowest - cut.lowest)) < 1e-9);
  CHECK(in(m, norm(swept.highest - cut.highest)) < 1e-9);
  CHECK(swept.faces.size() == cut.faces.size());
  for (const piece::Face& face : swept.faces)
    CHECK(std::ranges::count_if(cut.faces, [&](const auto& other) { return same_face(face, other); }) == 1);
}

// How many solids are in the sweep: those behind are cut or added to it.
std::size_t swept(const std::vector<Solid>& solids) {
  const auto opened = piece::opened_body(solids);
  return opened ? 1 + opened->openings.size() : 0;
}

const std::vector<std::pair<double, double>> l_outline{{0, 0}, {4000, 0}, {4000, 1500}, {1500, 1500}, {1500, 3000}, {0, 3000}};

}  // namespace

TEST_CASE("a panel with openings of three shapes is swept as one, and is the piece that is cut step by step") {
  const std::vector<Solid> panel{
      box("panel", at(100, 200, -50), at(6000, 2400, 150)),
      cut(box("window", at(500, 700, -50), at(1200, 1100, 150))),
      cut(cylinder("sleeve", at(3000, 1000, -100), 300.0 * mm, 400.0 * mm)),
      cut(prism("vent", at(4000, 800, -50), points({{0, 0}, {0, 500}, {700, 0}}), 150.0 * mm))};
  CHECK(swept(panel) == 4);
  check_same_piece(panel);
  // By hand: 6.0 x 2.4 less 1.2 x 1.1, a circle of 0.3 and a triangle of 0.7 x 0.5 / 2, times 0.15.
  CHECK(in(m3, body_of(panel).volume) == Approx((14.4 - 1.32 - M_PI * 0.09 / 4.0 - 0.175) * 0.15).epsilon(1e-12));
}

TEST_CASE("a prism along any axis, with holes of its own, and a box along the axis that its openings take") {
  for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
    Solid body = prism("body", at(10, 20, 30), points(l_outline), 250.0 * mm, axis);
    body.holes = {points({{200, 200}, {200, 600}, {600, 600}, {600, 200}})};
    const auto beside = [&](double first, double second) {
      return axis == Axis::x ? at(10, 20 + first, 30 + second) : axis == Axis::y ? at(10 + second, 20, 30 + first) : at(10 + first, 20 + second, 30);
    };
    const std::vector<Solid> solids{body, cut(prism("opening", beside(2000, 300), points({{0, 0}, {900, 100}, {300, 800}}), 250.0 * mm, axis)),
                                    cut(cylinder("bore", beside(700, 2200), 400.0 * mm, 250.0 * mm, axis))};
    CHECK(swept(solids) == 3);
    check_same_piece(solids);
  }
  const std::vector<Solid> upright{box("wall", {}, at(4000, 200, 2500)), cut(box("door", at(500, -10, 400), at(900, 220, 1800))),
                                   cut(cylinder("pipe", at(2500, 0, 1200), 600.0 * mm, 200.0 * mm, Axis::y))};
  CHECK(swept(upright) == 3);
  check_same_piece(upright);
}

TEST_CASE("what is not an opening clear of the sides and of the others is cut step by step") {
  const Solid panel = box("panel", {}, at(4000, 2400, 150));
  const Solid window = cut(box("window", at(1000, 800, 0), at(1000, 800, 150)));
  const auto with = [&](const Solid& second) { return std::vector{panel, window, second}; };
  const auto sweeps_two = [&](const Solid& second) {
    CHECK(swept(with(second)) == 2);
    check_same_piece(with(second));
  };
  sweeps_two(cut(box("notch", at(3000, 0, 0), at(400, 500, 150))));                // at a side
  sweeps_two(cut(box("recess", at(2800, 800, 50), at(600, 600, 100))));            // not through
  sweeps_two(cut(box("beside", at(2000, 900, 0), at(500, 500, 150))));             // touches the window
  sweeps_two(cut(cylinder("over it", at(2000, 1600, 0), 500.0 * mm, 150.0 * mm)));     // lies over the window
  sweeps_two(cut(cylinder("across", at(0, 400, 75), 50.0 * mm, 4000.0 * mm, Axis::x)));
  sweeps_two(cut(turned(box("skew", at(2800, 800, 0), at(600, 600, 150)), Axis::z, 20.0 * deg)));
  sweeps_two(box("rib", at(0, 0, 150), at(4000, 200, 100)));
  CHECK(swept({panel, box("rib", at(0, 0, 150), at(4000, 200, 100)), window}) == 0);
  CHECK(swept({panel}) == 0);
  CHECK(swept({cylinder("lid", {}, 1200.0 * mm, 150.0 * mm), cut(box("hatch", at(-200, -200, 0), at(400, 400, 150)))}) == 0);

  // An opening within another cuts nothing, and is told at its place as before.
  CHECK(faults(plan_of(with(cut(box("within", at(1200, 1000, 0), at(200, 200, 150)))))) ==
        faults(plan_of(step_by_step(with(cut(box("within", at(1200, 1000, 0), at(200, 200, 150))))))));
  CHECK(faults(plan_of(with(cut(box("within", at(1200, 1000, 0), at(200, 200, 150)))))).size() == 1);
}

TEST_CASE("random panels with openings are the same pieces, or have the same faults, either way") {
  std::mt19937 engine(5);
  const auto between = [&](double low, double high) { return std::floor(low + (high - low) * static_cast<double>(engine() % 1000) / 1000.0); };
  int pieces = 0, all_swept = 0;
  for (int n = 0; n < 60; ++n) {
    const double thickness = between(100, 300);
    std::vector<Solid> solids{box("panel", {}, at(between(2000, 6000), between(2000, 4000), thickness))};
    for (int i = 0; i < 1 + n % 4; ++i) {
      const Position corner = at(between(0, 4000), between(0, 3000), 0);
      if (i % 2 == 0) solids.push_back(cut(box(fmt::format("box {}", i), corner, at(between(100, 900), between(100, 900), thickness))));
      else solids.push_back(cut(cylinder(fmt::format("bore {}", i), corner, between(50, 500) * mm, thickness * mm)));
    }
    const auto told = faults(plan_of(solids));
    CHECK(told == faults(plan_of(step_by_step(solids))));
    all_swept += swept(solids) == solids.size() ? 1 : 0;
    if (!told.empty()) continue;
    ++pieces;
    check_same_piece(solids);
  }
  CHECK(pieces >= 20);
  CHECK(all_swept >= 15);
}
