// What a sheet draws and a card tells of a stage, and what strength it needs: against arithmetic of the slab of the tests.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/evaluate.hpp"
#include "checks/needed_strength.hpp"
#include "checks/pulls_on_scale.hpp"
#include "checks/stage_figures.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

std::vector<StageFigures> drawn(SlabLift& lift) {
  lift.facts();  // makes the body of the plan as it is now
  const Report report = evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "", {});
  return stage_figures(lift.plan, lift.body, report, lift.rules, lift.tables);
}

double area_m2(const piece::Outline& outline) {
  const auto of_ring = [](const std::vector<plan::PlanarPoint>& ring) {
    double doubled = 0.0;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
      doubled += in(m, ring[j].x) * in(m, ring[i].y) - in(m, ring[i].x) * in(m, ring[j].y);
    return 0.5 * std::abs(doubled);
  };
  double area = of_ring(outline.outer);
  for (const auto& hole : outline.holes) area -= of_ring(hole);
  return area;
}

using Areas = std::vector<std::pair<std::string, double>>;

Areas areas_of(const BreakoutFace& face) {
  Areas all;
  for (const auto& [names, area] : face.areas) all.emplace_back(names, std::round(in(mm2, area)));
  return all;
}

const double weight_kN = 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;

PullsOnScale pulls_of(SlabLift& lift) {
  lift.facts();
  return pulls_on_scale(lift.plan, lift.body, 0, lift.rules, lift.tables);
}

}  // namespace

TEST_CASE("breakout bodies are drawn on their face, each once, with the area of those that meet") {
  SlabLift lift;  // 200 mm deep: 300 mm to each side, all inside the slab
  const auto faces = drawn(lift).at(0).breakouts;
  REQUIRE(faces.size() == 1);
  CHECK(faces[0].side == "top as cast, seen from above");
  CHECK(area_m2(faces[0].outline) == Approx(8.0));
  REQUIRE(faces[0].bodies.size() == 4);
  CHECK(faces[0].bodies[1].insert == "A2");
  CHECK(in(m, faces[0].bodies[1].at.x) == Approx(3.0));
  CHECK(in(m, faces[0].bodies[1].at.y) == Approx(0.5));
  CHECK(in(mm, faces[0].bodies[1].half_side) == Approx(300.0));
  for (const BreakoutFace::Body& body : faces[0].bodies) CHECK(area_m2(body.covered) == Approx(0.36));
  CHECK(areas_of(faces[0]) == Areas{{"A1", 360000.0}, {"A2", 360000.0}, {"A3", 360000.0}, {"A4", 360000.0}});

  // Two of them 400 mm apart overlap by 200 mm; one stands 100 mm from an edge.
  lift.plan.inserts[1].at = {1.4 * m, 0.5 * m, 0.3 * m};
  lift.plan.inserts[2].at = {3.9 * m, 1.5 * m, 0.3 * m};
  const auto meet = drawn(lift).at(0).breakouts;
  REQUIRE(meet.size() == 1);
  CHECK(areas_of(meet[0]) == Areas{{"A1, A2", 600000.0}, {"A3", 240000.0}, {"A4", 360000.0}});
  CHECK(area_m2(meet[0].bodies[2].covered) == Approx(0.24));
}

TEST_CASE("breakout bodies of other faces are seen from outside, their z upwards") {
  const auto side_of = [](const Position& at, const std::string& side, double x_m, double y_m) {
    SlabLift lift;
    lift.plan.inserts.push_back(headed_insert_at("A5", 0.0 * m, 0.0 * m));  // that no leg pulls
    lift.plan.inserts[4].at = at;
    lift.plan.inserts[4].embedment = 60.0 * mm;
    const auto faces = drawn(lift).at(0).breakouts;
    for (const BreakoutFace& face : faces)
      if (face.bodies.front().insert == "A5") {
        CHECK(face.side == side);
        CHECK(in(m, face.bodies.front().at.x) == Approx(x_m));
        CHECK(in(m, face.bodies.front().at.y) == Approx(y_m));
        return true;
      }
    return false;
  };
  CHECK(side_of({4.0 * m, 0.5 * m, 0.15 * m}, "side towards +x, seen from outside, z up", 0.5, 0.15));
  CHECK(side_of({0.0 * m, 0.5 * m, 0.15 * m}, "side towards -x, seen from outside, z up", -0.5, 0.15));
  CHECK(side_of({1.0 * m, 2.0 * m, 0.15 * m}, "side towards +y, seen from outside, z up", -1.0, 0.15));
  CHECK(side_of({1.0 * m, 0.0 * m, 0.15 * m}, "side towards -y, seen from outside, z up", 1.0, 0.15));
  CHECK(side_of({1.0 * m, 0.5 * m, 0.0 * m}, "bottom as cast, seen from below", 1.0, -0.5));
}

TEST_CASE("without a strength the bodies are drawn all the same") {
  SlabLift lift;
  lift.plan.concrete.evidence.reset();
  const auto figures = drawn(lift).at(0);
  REQUIRE(figures.breakouts.size() == 1);
  CHECK(figures.breakouts[0].areas.size() == 4);
  REQUIRE(figures.tension);
  CHECK_FALSE(figures.tension->allowed);
}

TEST_CASE("the tension over a panel is a map of cells, none at its picks, alike about its middle") {
  SlabLift lift;  // 10 m and 5 m from the origin
  lift.plan.piece.solids[0].at = {10.0 * m, 5.0 * m, 0.0 * m};
  for (plan::Insert& insert : lift.plan.inserts) insert.at = insert.at + Position{10.0 * m, 5.0 * m, 0.0 * m};
  const auto picture = drawn(lift).at(0).tension;
  REQUIRE(picture);
  CHECK(picture->situation == "breaking free");
  REQUIRE(picture->allowed);
  REQUIRE(picture->map);
  CHECK_FALSE(picture->line);
  const TensionMap& map = *picture->map;
  CHECK(area_m2(map.outline) == Approx(8.0));
  CHECK(map.picks.size() == 4);
  CHECK(in(m, map.side) == Approx(4.0 / 44.0));
  const double half = 2.0 / 44.0;
  CHECK(in(m, map.cells.front().middle.x) == Approx(10.0 + half));
  CHECK(in(m, map.cells.front().middle.y) == Approx(5.0 + half));
  CHECK(in(m, map.cells.back().middle.x) == Approx(14.0 - half));
  CHECK(in(m, map.cells.back().middle.y) == Approx(7.0 - half));
  const double patch_m = 0.6;  // two thicknesses
  double most_MPa = 0.0;
  for (const TensionMap::Cell& cell : map.cells) {
    for (const plan::PlanarPoint& pick : map.picks)
      CHECK(std::hypot(in(m, pick.x - cell.middle.x), in(m, pick.y - cell.middle.y)) >= patch_m);
    const auto other = std::ranges::find_if(map.cells, [&](const TensionMap::Cell& each) {
      return std::abs(in(m, each.middle.x) + in(m, cell.middle.x) - 24.0) < 1e-6 &&
             std::abs(in(m, each.middle.y) - in(m, cell.middle.y)) < 1e-6;
    });
    REQUIRE(other != map.cells.end());
    CHECK(in(MPa, cell.top) == Approx(in(MPa, other->top)).margin(0.02));
    CHECK(in(MPa, cell.bottom) == Approx(in(MPa, other->bottom)).margin(0.02));
    most_MPa = std::max({most_MPa, in(MPa, cell.top), in(MPa, cell.bottom)});
  }
  const Finding cracking = finding_for("piece-cracking", "SL-1", lift.facts());
  CHECK(most_MPa > 0.1 * in(MPa, std::get<Stress>(*cracking.demand)));
  CHECK(most_MPa < 1.02 * in(MPa, std::get<Stress>(*cracking.demand)));
}

TEST_CASE("the tension of a line goes from end to end, and is that of the finding at its largest") {
  SlabLift lift;
  make_line(lift, 0.3 * m);
  lift.rules.bending_multiplier.emplace("strip.flat.smooth", made_ratio("m", 2.0));
  const auto picture = drawn(lift).at(0).tension;
  REQUIRE(picture);
  REQUIRE(picture->line);
  CHECK(picture->line->axis == "x");
  CHECK(in(m, picture->line->sections.front().at) == Approx(0.0).margin(1e-6));
  CHECK(in(m, picture->line->sections.back().at) == Approx(6.0));
  Stress most{};
  for (const TensionLine::Section& section : picture->line->sections)
    most = std::max({most, section.top, section.bottom});
  const Finding cracking = finding_for("piece-cracking", "SL-1", lift.facts());
  CHECK(in(MPa, most) == Approx(in(MPa, std::get<Stress>(*cracking.demand))));
  CHECK(in(MPa, picture->allowed.value()) == Approx(in(MPa, std::get<Stress>(*cracking.capacity))));
}

TEST_CASE("no picture of tension where it would not be that of the loads, or of nothing computed") {
  SlabLift lift;
  SECTION("a piece that may crack") { lift.plan.piece.may_crack = true; }
  SECTION("strands") {
    plan::Strand strand;
    strand.name = "low";
    lift.plan.piece.strands = {strand};
  }
  SECTION("no statics") { lift.leg(0).length.reset(); }
  SECTION("a block that is not computed") {
    lift.plan.piece.solids[0].size = {4.0 * m, 2.0 * m, 1.5 * m};
    for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 1.5 * m;
    lift.plan.piece.stated_weight.reset();
  }
  CHECK_FALSE(drawn(lift).at(0).tension.has_value());
}

TEST_CASE("no picture of tension beside the finding of a calculation without strands or cracks") {
  SlabLift lift;
  make_line(lift, 0.3 * m);
  lift.facts();
  const Report report = evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "", {});
  const auto pictured = [&] {
    return stage_figures(lift.plan, lift.body, report, lift.rules, lift.tables).at(0).tension.has_value();
  };
  CHECK(pictured());
  lift.plan.piece.may_crack = true;
  CHECK_FALSE(pictured());
  lift.plan.piece.may_crack = false;
  plan::Strand strand;
  strand.name = "low";
  lift.plan.piece.strands = {strand};
  CHECK_FALSE(pictured());
}

TEST_CASE("the pulls of a turn are drawn over its angles, the hook's and the edge's together the weight") {
  SlabLift lift;
  CHECK(drawn(lift).at(0).turn.empty());
  turn_about_edge(lift, 45.0 * deg);
  const auto figures = drawn(lift).at(0).turn;
  REQUIRE(figures.size() > 10);
  CHECK(figures.front().angle == Angle{});
  CHECK(in(deg, figures.back().angle) == Approx(45.0));
  for (const TurnAt& at : figures) {
    CHECK(in(kN, at.main + at.edge) == Approx(1.2 * weight_kN).epsilon(1e-6));
    CHECK(at.tail == Force{});
  }
  CHECK(in(kN, figures.front().main) == Approx(1.2 * weight_kN * 2.0 / 3.0).epsilon(1e-6));
}

TEST_CASE(
    "pulls on the scale of a turn: nothing of another stage, of a turn that is not told or not computed") {
  SlabLift lift;
  CHECK(pulls_of(lift).cranes.empty());
  turn_about_edge(lift, 45.0 * deg);
  CHECK(pulls_of(lift).cranes.size() == 1);
  SECTION("not told") { lift.stage().turn.reset(); }
  SECTION("not computed") { lift.plan.riggings[1].legs[0].length.reset(); }
  SECTION("no load") { lift.plan.concrete.density_tolerance.reset(); }
  CHECK(pulls_of(lift).cranes.empty());
  CHECK(pulls_of(lift).moments.empty());
}

// As it comes up, 3 cos t - 0.3 sin t and 2 cos t - 0.15 sin t about the edge: at 45 degrees more than two thirds.
const double share_at_45 = 1.85 / 2.7;

TEST_CASE("pulls on the scale: the part of the piece that the hook holds, with what hangs on it, at rest") {
  SlabLift lift;
  turn_about_edge(lift, 45.0 * deg);
  const auto pulls = pulls_of(lift);
  REQUIRE(pulls.cranes.size() == 1);
  CHECK(pulls.cranes[0].id == "bay");
  const double beside_kN = 2.0, at_start_kN = weight_kN * 2.0 / 3.0 + beside_kN;
  const double most_kN = weight_kN * share_at_45 + beside_kN;
  CHECK(in(kN, pulls.cranes[0].reading.value()) == Approx(most_kN).epsilon(1e-6));
  REQUIRE(pulls.cranes[0].limits.size() == 1);  // nothing is overloaded by that at any angle
  CHECK(pulls.cranes[0].limits[0].from == Angle{});
  CHECK(in(deg, pulls.cranes[0].limits[0].to) == Approx(45.0));
  CHECK(in(kN, pulls.cranes[0].limits[0].most) == Approx(most_kN).epsilon(1e-6));

  REQUIRE(pulls.moments.size() == 3);
  CHECK(in(deg, pulls.moments[1].angle) == Approx(22.5));
  CHECK(in(kN, pulls.moments[0].reading.value()) == Approx(at_start_kN).epsilon(1e-6));
  CHECK(in(kN, pulls.moments[2].reading.value()) == Approx(most_kN).epsilon(1e-6));
  for (const TurnMoment& moment : pulls.moments) {
    CHECK(moment.held);
    CHECK_FALSE(moment.tail_reading);
    CHECK(moment.up.x == Approx(std::sin(moment.angle.value())));
    CHECK(moment.up.z == Approx(std::cos(moment.angle.value())));
    CHECK(dot(moment.up, moment.level) == Approx(0.0).margin(1e-12));
  }
  lift.plan.riggings[1].weight.reset();
  const auto unknown = pulls_of(lift);
  CHECK_FALSE(unknown.cranes.at(0).reading);
  CHECK(unknown.cranes.at(0).limits.empty());
  CHECK_FALSE(unknown.moments.at(0).reading);
}

TEST_CASE(
    "pulls on the scale: gear too weak for the turn itself has no limit, gear that just holds has one") {
  SlabLift lift;
  turn_about_edge(lift, 45.0 * deg);
  // Each leg carries half of the pull over cos(asin(0.5 / 2.5)).
  const double leg_kN = weight_kN * share_at_45 / 2.0 / std::sqrt(1.0 - 0.04);
  lift.plan.slings[0].rated = 1.0001 * leg_kN * kN;
  CHECK(pulls_of(lift).cranes.at(0).limits.size() == 1);
  lift.plan.slings[0].rated = 0.9999 * leg_kN * kN;
  CHECK(pulls_of(lift).cranes.at(0).limits.empty());
  lift.plan.slings[0].rated.reset();
  CHECK(pulls_of(lift).cranes.at(0).limits.empty());
}

TEST_CASE(
    "pulls on the scale: where inserts hold less as the piece comes up, the limit comes down in bands") {
  SlabLift lift;
  turn_about_edge(lift, 80.0 * deg);
  // In the end, at mid-depth: half of the piece as it lies, less as it comes up. Past 46 degrees of the turn the legs, which
  // spread by 0.5 over 2.5, pull within 45 degrees of the axis of the inserts: for that less is declared.
  for (const std::size_t i : {1U, 2U}) {
    const Position at{4.0 * m, lift.plan.inserts[i].at.y, 0.15 * m};
    lift.plan.inserts[i] = rated_insert_at(lift.plan.inserts[i].id, at.x, at.y);
    lift.plan.inserts[i].at = at;
    auto& rating = *lift.plan.inserts[i].rating;
    rating.load = 40.0 * kN;
    rating.ranges = {{.from = 0.0 * deg, .to = 45.0 * deg, .load = 14.5 * kN, .across = false, .place = {}},
                     {.from = 45.0 * deg, .to = 90.0 * deg, .load = 40.0 * kN, .across = false, .place = {}}};
  }
  const auto pulls = pulls_of(lift);
  REQUIRE(pulls.cranes.size() == 1);
  const auto& bands = pulls.cranes[0].limits;
  REQUIRE(bands.size() == 2);
  CHECK(bands.front().from == Angle{});
  CHECK(in(deg, bands.back().to) == Approx(80.0));
  CHECK(bands[1].from == bands[0].to);
  CHECK(in(deg, bands[1].from) == Approx(46.2).margin(1.0));
  CHECK(in(kN, bands[0].most) == Approx(0.5 * weight_kN + 2.0).epsilon(1e-6));
  CHECK(in(kN, bands[1].most) == Approx(2.0 * 14.5 * std::sqrt(1.0 - 0.04) + 2.0).epsilon(1e-3));

  // Turned back the bands come in the other order.
  plan::Stage up = lift.stage();
  lift.stage().turn->from = 80.0 * deg;
  lift.stage().turn->to = 0.0 * deg;
  lift.plan.stages.insert(lift.plan.stages.begin(), up);
  lift.facts();
  const auto back = pulls_on_scale(lift.plan, lift.body, 1, lift.rules, lift.tables).cranes.at(0).limits;
  REQUIRE(back.size() >= 2);
  CHECK(in(deg, back.front().from) == Approx(80.0));
  CHECK(back.back().to == Angle{});
  CHECK(back.front().most < back.back().most);
}

TEST_CASE("pulls on the scale of two hooks: each has its own") {
  SlabLift lift;
  turn_about_edge(lift, 60.0 * deg);
  for (plan::Insert& insert : lift.plan.inserts) {
    insert = rated_insert_at(insert.id, insert.at.x, insert.at.y);
    insert.rating->load = 60.0 * kN;
  }
  turn_between_hooks(lift);
  const auto pulls = pulls_of(lift);
  REQUIRE(pulls.cranes.size() == 2);
  CHECK(pulls.cranes[1].id == "bay 2");
  // Picks 1 m to either side of the centre of gravity: half each as it lies.
  REQUIRE(pulls.moments.size() == 3);
  CHECK(in(kN, pulls.moments[0].reading.value()) == Approx(0.5 * weight_kN + 2.0).epsilon(1e-3));
  CHECK(in(kN, pulls.moments[0].tail_reading.value()) == Approx(0.5 * weight_kN + 2.5).epsilon(1e-3));
  CHECK(in(kN, pulls.moments[2].reading.value() + pulls.moments[2].tail_reading.value()) ==
        Approx(weight_kN + 4.5).epsilon(1e-3));
  CHECK(pulls.moments[2].reading.value() > pulls.moments[0].reading.value());
  CHECK(pulls.cranes[0].reading.value() >= pulls.moments[2].reading.value());
  for (const CranePull& crane : pulls.cranes) CHECK_FALSE(crane.limits.empty());
}

TEST_CASE("needed strength: what the drawing asks is needed, and printed as it is where it is a whole step") {
  SlabLift lift;
  lift.plan.concrete.form_stripping_strength = 3000.0 * psi;
  const auto need = needed_strength(lift.facts());
  const auto of_drawing =
      std::ranges::find(need.rules, std::string_view("strength-below-required"), &RuleNeed::rule);
  REQUIRE(of_drawing != need.rules.end());
  CHECK(in(psi, of_drawing->strength) == Approx(3000.0).epsilon(1e-9));
  CHECK(of_drawing->subject == "SL-1");
  REQUIRE(need.to_print);
  REQUIRE(need.rules.front().rule == "strength-below-required");
  CHECK(in(psi, *need.to_print) == Approx(3000.0).epsilon(1e-9));
  CHECK(need.verdict == Verdict::go);
  CHECK(need.not_mended.empty());

  lift.plan.concrete.form_stripping_strength = 3001.0 * psi;
  const auto more = needed_strength(lift.facts());
  CHECK(more.rules.front().strength >= 3001.0 * psi);
  CHECK(in(psi, more.rules.front().strength) < 3001.0 * 1.001);
  CHECK(in(psi, more.to_print.value()) == Approx(3100.0).epsilon(1e-9));
}

TEST_CASE("needed strength: what no strength mends is told, and an old test is none of it") {
  SlabLift lift;
  lift.plan.slings[0].rated = 1.0 * kN;
  lift.plan.concrete.evidence.reset();  // that is what is asked for
  const auto need = needed_strength(lift.facts());
  REQUIRE_FALSE(need.not_mended.empty());
  for (const Finding& finding : need.not_mended)
    CHECK((finding.rule == "sling-overload" || finding.rule == "hardware-factor"));
  CHECK(need.verdict == Verdict::no_go);
  SlabLift none;
  none.plan.concrete.form_stripping_strength.reset();
  const auto unknown = needed_strength(none.facts());
  CHECK(std::ranges::any_of(unknown.not_mended,
                            [](const Finding& f) { return f.rule == "strength-below-required"; }));
  CHECK(unknown.verdict == Verdict::hold);
}
