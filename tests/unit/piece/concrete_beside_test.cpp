// Lines through and beside pieces, with lengths worked out by hand.

#include <catch2/catch.hpp>

#include <cmath>

#include "piece/concrete_beside.hpp"
#include "support/assessed.hpp"
#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;
using tests::assessed;

namespace {

constexpr Length clearance = 20.0 * mm, no_end{};

piece::LineInConcrete lies(const piece::Body& body, const Position& from, const Position& to, Length within = clearance,
                           Length end = no_end, const piece::InsertSite* site = nullptr) {
  piece::ConcreteBeside concrete(body);
  return assessed(concrete.line(from, to, within, end, site));
}

// A base of 3 x 2 x 0.3 m with a stem of 0.4 m across its middle, 2.6 m high, and an insert in the base beside it.
std::vector<plan::Solid> wall_with_stem() {
  return {box("base", at(0, 0, 0), at(3000, 2000, 300)), box("stem", at(1300, 0, 300), at(400, 2000, 2600))};
}

}  // namespace

TEST_CASE("a level line through a stem is inside by the thickness of it, and enters at its face") {
  const auto body = body_of(wall_with_stem());
  const auto found = lies(body, at(0, 1000, 1000), at(3000, 1000, 1000));
  CHECK(in(mm, found.inside) == Approx(400.0).margin(1e-6));
  CHECK(in(mm, found.at.x) == Approx(1300.0).margin(1e-6));
  CHECK(in(mm, found.inside_end) == 0.0);
}

TEST_CASE("a line through a pipe crosses its wall twice") {
  const auto body = body_of({pipe("ring", at(0, 0, 0), 1500.0 * mm, 1200.0 * mm, 1000.0 * mm)});
  CHECK(in(mm, lies(body, at(-2000, 0, 500), at(2000, 0, 500)).inside) == Approx(300.0).margin(1e-6));
  // along the axis: through the bore
  CHECK(in(mm, lies(body, at(0, 0, -500), at(0, 0, 1500)).inside) == 0.0);
}

TEST_CASE("a line that ends inside is inside up to its end") {
  const auto body = body_of(wall_with_stem());
  CHECK(in(mm, lies(body, at(0, 1000, 1000), at(1500, 1000, 1000)).inside) == Approx(200.0).margin(1e-6));
  CHECK(in(mm, lies(body, at(1400, 1000, 1000), at(1500, 1000, 1200)).inside) == Approx(std::hypot(100.0, 200.0)).margin(1e-6));
}

TEST_CASE("a line beside the stem: its distance where it is less than asked for, else nothing") {
  const auto body = body_of(wall_with_stem());
  const auto near = lies(body, at(1290, 1000, 500), at(1290, 1000, 4000));
  REQUIRE(near.nearest.has_value());
  CHECK(in(mm, *near.nearest) == Approx(10.0).margin(1e-6));
  CHECK(in(mm, near.inside) == 0.0);
  CHECK_FALSE(lies(body, at(1279, 1000, 500), at(1279, 1000, 4000)).nearest.has_value());
  const auto touching = lies(body, at(1300, 1000, 500), at(1300, 1000, 4000));
  REQUIRE(touching.nearest.has_value());
  CHECK(in(mm, *touching.nearest) == Approx(0.0).margin(1e-6));
  CHECK(in(mm, touching.inside) == 0.0);
}

TEST_CASE("a leg leaves its own face, also along it, and meets nothing where all of the piece lies behind that face") {
  plan::Plan plan = plan_of({box("panel", at(0, 0, 0), at(3000, 2400, 150))}, {},
                            {insert("E1", at(3000, 600, 75)), insert("P1", at(600, 600, 150))});
  const auto body = body_of(plan);
  const auto along = lies(body, at(3000, 600, 75), at(3000, 1200, 1500), clearance, no_end, &body.sites[0]);
  CHECK_FALSE(along.nearest.has_value());
  CHECK(in(mm, along.inside) == 0.0);
  const auto off = lies(body, at(600, 600, 150), at(1500, 1200, 300), clearance, no_end, &body.sites[1]);
  CHECK_FALSE(off.nearest.has_value());
  // the same line without its insert touches the face that it starts on
  CHECK(lies(body, at(600, 600, 150), at(1500, 1200, 300)).nearest.has_value());
}

TEST_CASE("a leg from the base of a wall: over the stem clear, through it the length inside, and not near its own base") {
  plan::Plan plan = plan_of(wall_with_stem(), {}, {insert("A", at(300, 1000, 300))});
  const auto body = body_of(plan);
  const auto through = lies(body, at(300, 1000, 300), at(1500, 1000, 1500), clearance, 100.0 * mm, &body.sites[0]);
  CHECK(in(mm, through.inside) == Approx(200.0 * std::sqrt(2.0)).margin(1e-6));
  const auto over = lies(body, at(300, 1000, 300), at(1500, 1000, 6300), clearance, 100.0 * mm, &body.sites[0]);
  CHECK(in(mm, over.inside) == 0.0);
  CHECK_FALSE(over.nearest.has_value());
}

TEST_CASE("an insert in a recess: the end of the leg stands in it, beyond the end the rim counts") {
  // a recess 60 mm deep and 100 mm across; at 45 degrees the leg meets the rim 50 mm out, 10 mm below the face
  plan::Plan plan = plan_of({box("slab", at(0, 0, 0), at(2000, 2000, 300)),
                             cut(cylinder("recess", at(1000, 1000, 240), 100.0 * mm, 60.0 * mm))},
                            {}, {insert("A", at(1000, 1000, 240))});
  const auto body = body_of(plan);
  const auto leaning = lies(body, at(1000, 1000, 240), at(2000, 1000, 1240), clearance, 200.0 * mm, &body.sites[0]);
  CHECK(in(mm, leaning.inside_end) == Approx(10.0 * std::sqrt(2.0)).margin(1e-5));
  CHECK(in(mm, leaning.inside) == 0.0);
  CHECK_FALSE(leaning.nearest.has_value());
  // its first 100 mm alone: beyond them it is still 11 mm above the face of the slab
  const auto short_end = lies(body, at(1000, 1000, 240), at(2000, 1000, 1240), clearance, 100.0 * mm, &body.sites[0]);
  REQUIRE(short_end.nearest.has_value());
  CHECK(in(mm, *short_end.nearest) == Approx(100.0 / std::sqrt(2.0) - 60.0).margin(1e-5));
  const auto all = lies(body, at(1000, 1000, 240), at(2000, 1000, 1240), clearance, no_end, &body.sites[0]);
  CHECK(in(mm, all.inside) == Approx(10.0 * std::sqrt(2.0)).margin(1e-5));
}

TEST_CASE("lines of no length, of no number, and pieces without a solid are not assessed") {
  auto body = body_of(wall_with_stem());
  piece::ConcreteBeside concrete(body);
  CHECK_FALSE(is_assessed(concrete.line(at(0, 0, 0), at(0, 0, 0), clearance)));
  CHECK_FALSE(is_assessed(concrete.line(at(0, 0, 0), at(std::nan(""), 0, 0), clearance)));
  body.assembly.reset();
  piece::ConcreteBeside unknown(body);
  CHECK_FALSE(is_assessed(unknown.line(at(0, 1000, 1000), at(3000, 1000, 1000), clearance)));
  CHECK(is_assessed(unknown.line(at(0, 1000, 9000), at(3000, 1000, 9000), clearance)));  // far above all of it
}
