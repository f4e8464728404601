// What a pull across a wall or slab finds in the solid: which way it is thin, what holds it, where it ends. Numbers by hand.

#include "piece/insert_wall.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

// The one insert of the plan, held by what is twice as thick.
Outcome<piece::InsertWall> measured(std::vector<Solid> solids, Position place) {
  const auto plan = plan_of(std::move(solids), {}, {insert("A1", place)});
  const auto made = piece::make_body(plan);
  REQUIRE(std::holds_alternative<piece::Body>(made));
  return piece::insert_wall(std::get<piece::Body>(made), 0, place, 2.0);
}

piece::InsertWall wall_at(std::vector<Solid> solids, Position place) {
  const auto found = measured(std::move(solids), place);
  if (const auto* missing = std::get_if<NotAssessed>(&found)) FAIL(missing->why);
  return std::get<piece::InsertWall>(found);
}

const piece::WallWay& way_along(const piece::InsertWall& wall, double x, double y, double z) {
  for (const auto& way : wall.ways)
    if (dot(way.towards, Direction{x, y, z}) > 0.999) return way;
  FAIL("no way in this direction");
  return wall.ways[0];
}

// Outside 3 x 2 x 1.6 m, open above, walls and floor 0.2 m.
std::vector<Solid> tank() {
  return {box("outside", at(0, 0, 0), at(3000, 2000, 1600)), cut(box("inside", at(200, 200, 200), at(2600, 1600, 1400)))};
}

}  // namespace

TEST_CASE("insert in the top of the wall of a tank: the wall, its side walls, its floor, its free top") {
  const auto wall = wall_at(tank(), at(1000, 100, 1600));
  CHECK_FALSE(wall.in_face);
  CHECK(in(mm, wall.thickness) == Approx(200.0));
  CHECK(in(mm, wall.off_middle) == Approx(0.0).margin(1e-6));
  CHECK(std::abs(wall.across.y) == Approx(1.0));
  CHECK(in(mm, way_along(wall, 1, 0, 0).reach) == Approx(1800.0).margin(1.0));
  CHECK(way_along(wall, 1, 0, 0).held);
  CHECK(in(mm, way_along(wall, -1, 0, 0).reach) == Approx(800.0).margin(1.0));
  CHECK(way_along(wall, -1, 0, 0).held);
  CHECK(in(mm, way_along(wall, 0, 0, -1).reach) == Approx(1400.0).margin(1.0));
  CHECK(way_along(wall, 0, 0, -1).held);
  CHECK(in(mm, way_along(wall, 0, 0, 1).reach) == Approx(0.0).margin(1.0));
  CHECK_FALSE(way_along(wall, 0, 0, 1).held);
}

TEST_CASE("insert in the face of that wall, and off the middle of its top") {
  const auto wall = wall_at(tank(), at(1000, 0, 900));
  CHECK(wall.in_face);
  CHECK(in(mm, wall.thickness) == Approx(200.0));
  CHECK(in(mm, way_along(wall, 0, 0, -1).reach) == Approx(700.0).margin(1.0));
  CHECK(in(mm, way_along(wall, 0, 0, 1).reach) == Approx(700.0).margin(1.0));
  CHECK_FALSE(way_along(wall, 0, 0, 1).held);
  CHECK(in(mm, way_along(wall, 1, 0, 0).reach) == Approx(1800.0).margin(1.0));
  CHECK(in(mm, wall_at(tank(), at(1000, 130, 1600)).off_middle) == Approx(30.0));
}

TEST_CASE("an opening is a free edge, a recess makes the wall thinner") {
  auto solids = tank();
  solids.push_back(cut(box("window", at(1500, 0, 1000), at(300, 200, 300))));
  const auto wall = wall_at(solids, at(1000, 0, 1100));
  CHECK(in(mm, way_along(wall, 1, 0, 0).reach) == Approx(500.0).margin(1.0));
  CHECK_FALSE(way_along(wall, 1, 0, 0).held);
  solids.push_back(cut(box("recess", at(500, 150, 900), at(300, 50, 400))));
  CHECK(in(mm, wall_at(solids, at(1000, 0, 1100)).thickness) == Approx(150.0).margin(0.5));
}

TEST_CASE("a slab of one thickness is held by nothing, a wall below it holds it from its face") {
  const auto slab = wall_at({box("slab", at(0, 0, 0), at(4000, 2000, 200))}, at(1000, 600, 200));
  CHECK(slab.in_face);
  for (const auto& way : slab.ways) CHECK_FALSE(way.held);
  CHECK(in(mm, way_along(slab, 0, -1, 0).reach) == Approx(600.0).margin(1.0));
  const auto on_a_wall = wall_at({box("slab", at(0, 0, 0), at(4000, 2000, 200)), box("wall", at(3000, 0, -900), at(200, 2000, 900))},
                                 at(1000, 600, 200));
  CHECK(way_along(on_a_wall, 1, 0, 0).held);
  CHECK(in(mm, way_along(on_a_wall, 1, 0, 0).reach) == Approx(2000.0).margin(1.0));
  CHECK_FALSE(way_along(on_a_wall, -1, 0, 0).held);
}

TEST_CASE("round walls: radii, height that is whole all round, above and below") {
  const std::vector<Solid> base{cylinder("barrel", at(0, 0, 0), 1400.0 * mm, 1300.0 * mm),
                                cut(cylinder("bore", at(0, 0, 150), 1200.0 * mm, 1150.0 * mm)),
                                cut(cylinder("inlet", at(0, 0, 500), 400.0 * mm, 800.0 * mm, Axis::x))};
  const auto rim = wall_at(base, at(0, 650, 1300));
  REQUIRE(rim.round);
  CHECK_FALSE(rim.in_face);
  CHECK(in(mm, rim.round->inside) == Approx(600.0).margin(0.01));
  CHECK(in(mm, rim.round->outside) == Approx(700.0).margin(0.01));
  CHECK(in(mm, rim.round->above) == Approx(0.0).margin(0.01));
  CHECK(in(mm, rim.round->below) == Approx(600.0).margin(1.0));  // to the top of the inlet
  const auto face = wall_at(base, at(0, -700, 1000));
  REQUIRE(face.round);
  CHECK(face.in_face);
  CHECK(in(mm, face.round->above) == Approx(300.0).margin(0.1));
  CHECK(in(mm, face.round->below) == Approx(300.0).margin(1.0));
  CHECK_FALSE(is_assessed(measured(base, at(0, -700, 600))));  // beside the inlet: not whole
}

TEST_CASE("the sides of an octagon turn away, a free edge does not") {
  std::vector<std::pair<double, double>> outer, inner;
  for (int i = 0; i < 8; ++i) {
    const double a = (i + 0.5) * 3.14159265358979323846 / 4.0;
    outer.push_back({1000.0 * std::cos(a), 1000.0 * std::sin(a)});
    inner.push_back({850.0 * std::cos(a), 850.0 * std::sin(a)});
  }
  const std::vector<Solid> shaft{prism("outside", at(0, 0, 0), points(outer), 900.0 * mm),
                                 cut(prism("inside", at(0, 0, 0), points(inner), 900.0 * mm))};
  const double middle = 925.0 * std::cos(3.14159265358979323846 / 8.0);
  CHECK_FALSE(is_assessed(measured(shaft, at(middle, 0, 900))));
  CHECK(is_assessed(measured({box("wall", at(0, 0, 0), at(3000, 150, 900))}, at(800, 75, 900))));
}

TEST_CASE("a solid round column is no round wall, and a body whose solid was not kept is not measured") {
  const auto column = wall_at({cylinder("column", at(0, 0, 0), 400.0 * mm, 3000.0 * mm)}, at(50, 0, 3000));
  CHECK_FALSE(column.round);
  const auto plan = plan_of(tank(), {}, {insert("A1", at(1000, 100, 1600))});
  auto body = std::get<piece::Body>(piece::make_body(plan));
  body.assembly = nullptr;
  CHECK_FALSE(is_assessed(piece::insert_wall(body, 0, at(1000, 100, 1600), 2.0)));
}

// A round post out of line with the insert leaves its wall as it is, but no longer are all faces flat: the kernel is asked.
TEST_CASE("lines through flat faces find what the kernel finds: tank, slab with openings, wall with a sloping side") {
  const std::vector<Solid> slab = {box("slab", at(0, 0, 0), at(3000, 2000, 150)),
                                   cut(box("window", at(600, 500, -10), at(700, 400, 200))),
                                   cut(box("corner", at(2600, 1700, -10), at(500, 400, 200))),
                                   box("rib", at(0, 900, -200), at(3000, 150, 210))};
  const std::vector<Solid> wedged = {box("floor", at(0, 0, 0), at(2500, 1500, 200)),
                                     box("wall", at(0, 0, 200), at(2500, 180, 900)),
                                     wedge("fillet", at(700, 180, 200), at(400, 300, 600), {400.0 * mm, 100.0 * mm}, {0.0 * mm, 0.0 * mm})};
  struct Case {
    std::vector<Solid> solids;
    Position place, post;
  };
  const Position in_tank = at(1500, 1200, 200), on_slab = at(1000, 1600, 150), on_floor = at(2000, 1200, 200);
  const std::vector<Case> cases = {
      {tank(), at(1000, 100, 1600), in_tank}, {tank(), at(1000, 0, 900), in_tank},    {tank(), at(2900, 700, 1600), in_tank},
      {slab, at(400, 300, 150), on_slab},     {slab, at(2000, 1400, 150), on_slab},   {slab, at(1500, 980, 150), on_slab},
      {slab, at(2900, 50, 150), on_slab},     {wedged, at(1500, 90, 1100), on_floor}, {wedged, at(500, 0, 700), on_floor}};
  for (std::size_t i = 0; i < cases.size(); ++i) {
    CAPTURE(i);
    std::vector<Solid> with_post = cases[i].solids;
    with_post.push_back(cylinder("post", cases[i].post, 100.0 * mm, 500.0 * mm));
    const auto flat = measured(cases[i].solids, cases[i].place), asked = measured(with_post, cases[i].place);
    REQUIRE(std::holds_alternative<piece::InsertWall>(flat));
    REQUIRE(std::holds_alternative<piece::InsertWall>(asked));
    const auto& one = std::get<piece::InsertWall>(flat);
    const auto& other = std::get<piece::InsertWall>(asked);
    CHECK(one.in_face == other.in_face);
    CHECK(in(mm, one.thickness) == Approx(in(mm, other.thickness)).epsilon(1e-9));
    CHECK(in(mm, one.off_middle) == Approx(in(mm, other.off_middle)).margin(1e-6));
    CHECK(std::abs(dot(one.across, other.across)) == Approx(1.0));
    for (const auto& way : one.ways) {
      const auto& same = way_along(other, way.towards.x, way.towards.y, way.towards.z);
      CHECK(in(mm, way.reach) == Approx(in(mm, same.reach)).margin(1e-3));
      CHECK(way.held == same.held);
    }
  }
}
