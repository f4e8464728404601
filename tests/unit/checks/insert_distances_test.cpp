// insert-edge-distance, insert-spacing and picks-too-low: what a declared load asks for around its insert, and how high a
// piece is held.

#include <catch2/catch.hpp>

#include <limits>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

// Slab of 4 x 2 m, a rated insert 1 m and 0.5 m from its edges, the others 2 m along and 1 m across.
struct RatedLift : SlabLift {
  RatedLift() { plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m); }
  plan::Rating& rating() { return *plan.inserts[0].rating; }
  Finding of(std::string_view rule) { return finding_for(rule, "A1", facts()); }
};

}  // namespace

TEST_CASE("insert-edge-distance: at the distance that is asked for it passes, a micrometre nearer it fails") {
  RatedLift lift;
  lift.rating().minimum_edge = 0.5 * m;
  CHECK(lift.of("insert-edge-distance").result == Result::pass);
  lift.plan.inserts[0].at.y = 0.5 * m - 1e-6 * m;
  const Finding near = lift.of("insert-edge-distance");
  CHECK(near.result == Result::fail);
  check_says_why(near);
  lift.plan.inserts[0].at.y = 0.5 * m + 1e-6 * m;
  CHECK(lift.of("insert-edge-distance").result == Result::pass);
}

TEST_CASE("insert-edge-distance: no distance, or one that is no length, is missing wherever the insert sits") {
  for (const std::optional<Length>& stated : {std::optional<Length>{},
                                              std::optional<Length>{std::numeric_limits<double>::quiet_NaN() * m}}) {
    RatedLift lift;
    lift.rating().minimum_edge = stated;
    const Finding finding = lift.of("insert-edge-distance");
    CHECK(finding.result == Result::missing);
    if (!stated) check_says_why(finding);
  }
  RatedLift without;
  without.plan.inserts[0].rating.reset();
  CHECK(without.of("insert-edge-distance").remedy.find("minimum_edge") != std::string::npos);
}

TEST_CASE("insert-edge-distance: the edge of an opening counts") {
  RatedLift lift;
  lift.rating().minimum_edge = 0.3 * m;
  CHECK(lift.of("insert-edge-distance").result == Result::pass);
  plan::Solid hole;
  hole.name = "hole";
  hole.cut = true;
  hole.size = {0.2 * m, 0.2 * m, 0.3 * m};
  hole.at = {1.1 * m, 0.4 * m, 0.0 * m};
  lift.plan.piece.solids.push_back(hole);
  CHECK(lift.of("insert-edge-distance").result == Result::fail);
}

TEST_CASE("insert-edge-distance: along a narrow face the distance to its end is asked by itself") {
  RatedLift lift;
  plan::Insert& insert = lift.plan.inserts[0];
  insert.at = {0.4 * m, 0.0 * m, 0.15 * m};  // in the side of the slab, 0.15 m from its two faces, 0.4 m from its end
  lift.rating().minimum_edge = 0.15 * m - 1e-6 * m;
  CHECK(lift.of("insert-edge-distance").result == Result::pass);
  lift.rating().minimum_corner = 0.4 * m - 1e-6 * m;
  CHECK(lift.of("insert-edge-distance").result == Result::pass);
  lift.rating().minimum_corner = 0.4 * m + 1e-6 * m;
  const Finding finding = lift.of("insert-edge-distance");
  CHECK(finding.result == Result::fail);
  CHECK(finding.text.find("the end of its face") != std::string::npos);
}

TEST_CASE("insert-spacing: at the distance that is asked for it passes, a little more asked fails, none is missing") {
  RatedLift lift;
  lift.rating().minimum_spacing = 1.0 * m;  // A4 stands 1 m across
  CHECK(lift.of("insert-spacing").result == Result::pass);
  lift.rating().minimum_spacing = 1.0 * m + 1e-6 * m;
  const Finding near = lift.of("insert-spacing");
  CHECK(near.result == Result::fail);
  check_says_why(near);
  CHECK(near.text.find("A4") != std::string::npos);
  lift.rating().minimum_spacing.reset();
  const Finding open = lift.of("insert-spacing");
  CHECK(open.result == Result::missing);
  check_says_why(open);
  lift.rating().minimum_spacing = std::numeric_limits<double>::quiet_NaN() * m;
  CHECK(lift.of("insert-spacing").result == Result::missing);
}

TEST_CASE("picks-too-low: picks at the height of the centre of gravity or below fail, above it they pass") {
  // A block of 4 x 2 x 2 m, its centre 1 m high, on four inserts in its two ends.
  const auto at_height = [](double z_m) {
    SlabLift lift;
    lift.plan.piece.solids[0].size = {4.0 * m, 2.0 * m, 2.0 * m};
    lift.plan.piece.stated_weight.reset();
    lift.plan.riggings[0].equalised.clear();
    for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 6.0 * m;
    for (std::size_t i = 0; i < 4; ++i) {
      Position& at = lift.plan.inserts[i].at;
      at = {at.x < 2.0 * m ? 0.0 * m : 4.0 * m, at.y, z_m * m};
    }
    return finding_for("picks-too-low", "four legs", lift.facts());
  };
  CHECK(at_height(1.001).result == Result::pass);
  for (const double z_m : {1.0, 0.999, 0.6}) {
    CAPTURE(z_m);
    const Finding finding = at_height(z_m);
    CHECK(finding.result == Result::fail);
    check_says_why(finding);
  }
  CHECK(at_height(0.6).text.find("400 mm below the centre of gravity") != std::string::npos);
}

TEST_CASE("critical-lift: a lift that somebody finds critical needs a written plan, a fact that is absent holds") {
  for (const auto fact : {&plan::Stage::load_in_view, &plan::Stage::clear_of_power_lines, &plan::Stage::operator_agrees}) {
    SlabLift lift;
    const auto result = [&] { return finding_for("critical-lift", "SL-1", lift.facts()); };
    CHECK(result().result == Result::pass);
    lift.stage().*fact = false;
    CHECK(result().result == Result::missing);
    check_says_why(result());
    (lift.stage().*fact).reset();
    CHECK(result().result == Result::missing);
    CHECK(result().remedy.find(" = true") != std::string::npos);
    lift.stage().critical_lift_plan = "plan 7";
    CHECK(result().result == Result::pass);
    lift.stage().*fact = false;
    CHECK(result().result == Result::pass);
  }
}
