// What is drawn of a stage where the report is that of another calculation, where shapes are rare, and where
// a turn is held by nobody for a while: beside drawn_figures_test.cpp.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/evaluate.hpp"
#include "checks/pulls_on_scale.hpp"
#include "checks/stage_figures.hpp"
#include "support/hand_made_shapes.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

Report report_on_slab(SlabLift& lift) {
  lift.facts();  // makes the body of the plan as it is now
  return evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "", {});
}

Finding& cracking_in(Report& report) {
  auto& findings = report.stages.at(0).findings;
  const auto found = std::ranges::find(findings, std::string_view("piece-cracking"), &Finding::rule);
  REQUIRE(found != findings.end());
  return *found;
}

StageFigures drawn(SlabLift& lift, const Report& report) {
  const auto all = stage_figures(lift.plan, lift.body, report, lift.rules, lift.tables);
  REQUIRE(all.size() == 1);
  return all.front();
}
StageFigures drawn(SlabLift& lift) {
  const Report report = report_on_slab(lift);
  return drawn(lift, report);
}
// As if its finding had been that of this situation.
StageFigures drawn_as(SlabLift& lift, const std::string& situation) {
  Report report = report_on_slab(lift);
  cracking_in(report).situation = situation;
  return drawn(lift, report);
}

double area_m2(const std::vector<plan::PlanarPoint>& ring) {
  double doubled = 0.0;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    doubled += in(m, ring[j].x) * in(m, ring[i].y) - in(m, ring[i].x) * in(m, ring[j].y);
  return 0.5 * std::abs(doubled);
}

plan::Solid cut_from(const plan::Solid& whole, const Position& at, const Vector<Length>& size) {
  plan::Solid made = whole;
  made.name = "cut", made.cut = true;
  made.at = at, made.size = size;
  return made;
}

const double weight_kN = 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;

}  // namespace

TEST_CASE("figures are those of the stages of the report: of none there are none") {
  SlabLift lift;
  Report report = report_on_slab(lift);
  CHECK(drawn(lift, report).tension);
  report.stages.clear();
  CHECK(stage_figures(lift.plan, lift.body, report, lift.rules, lift.tables).empty());
}

TEST_CASE("a panel's tension is drawn of the situation of its finding, and of no other calculation") {
  SlabLift lift;
  Report report = report_on_slab(lift);
  cracking_in(report).capacity = Force{10.0 * kN};
  const auto of_no_stress = drawn(lift, report).tension;
  REQUIRE(of_no_stress);
  CHECK_FALSE(of_no_stress->allowed);
  CHECK(of_no_stress->map);
  cracking_in(report).situation = "swinging";
  CHECK_FALSE(drawn(lift, report).tension);
  report.stages[0].findings.clear();
  CHECK_FALSE(drawn(lift, report).tension);
  CHECK(drawn(lift, report).breakouts.size() == 1);
}

TEST_CASE(
    "no tension is drawn of statics, of a raise or of a bending that are not known, whatever the finding "
    "says") {
  SlabLift lift;
  SECTION("statics") { lift.leg(0).length.reset(); }
  SECTION("raise") {
    lift.rules.bending_multiplier.emplace("strip.flat.smooth", made_ratio("m", 2.0));
    lift.plan.form->product = "bell.smooth";
  }
  SECTION("the section of a line") {
    make_line(lift, 0.25 * m);
    CHECK(drawn_as(lift, "breaking free").tension);
    lift.plan.piece.solids.push_back(
        cut_from(lift.plan.piece.solids[0], {0.0 * m, 0.3 * m, 0.2 * m}, {6.0 * m, 0.1 * m, 0.1 * m}));
  }
  SECTION("a line that is turned") {
    make_line(lift, 0.25 * m);
    turn_about_edge(lift, 45.0 * deg);
    lift.stage().turn->about = {Position{}, Position{0.0 * m, 0.4 * m, 0.0 * m}};
    lift.plan.inserts[1].at.y = 0.2 * m, lift.plan.inserts[2].at = {5.0 * m, 0.2 * m, 0.3 * m};
  }
  SECTION("a part that hangs beside the panel") {
    lift.plan.form->nothing_attached = false;
    lift.plan.form->attached = {{.what = "arm",
                                 .weight = 0.1 * kN,
                                 .at = Position{4.3 * m, 1.0 * m, 0.3 * m},
                                 .until = {},
                                 .place = {}}};
  }
  SECTION("a panel in steps") {
    make_slab_on_ribs(lift);
  }
  CHECK_FALSE(drawn_as(lift, "breaking free").tension);
  CHECK_FALSE(drawn_as(lift, "turned to 0.0 deg").tension);
}

TEST_CASE("the tension of a line along y, under its own situation alone") {
  SlabLift lift;
  make_line(lift, 0.25 * m);
  lift.plan.piece.solids[0].size = {0.4 * m, 6.0 * m, 0.3 * m};
  for (plan::Insert& insert : lift.plan.inserts) std::swap(insert.at.x, insert.at.y);
  const auto picture = drawn(lift).tension;
  REQUIRE(picture);
  REQUIRE(picture->line);
  CHECK(picture->line->axis == "y");
  CHECK(in(m, picture->line->sections.back().at) == Approx(6.0));
  Stress most{};
  for (const TensionLine::Section& section : picture->line->sections)
    most = std::max({most, section.top, section.bottom});
  const Finding cracking = finding_for("piece-cracking", "SL-1", lift.facts());
  CHECK(in(MPa, most) == Approx(in(MPa, std::get<Stress>(*cracking.demand))));
  CHECK_FALSE(drawn_as(lift, "swinging").tension);
}

TEST_CASE(
    "an opening is drawn in the face and in the map, and has no tension, a part that hangs on a panel is no "
    "pick") {
  SlabLift lift;
  lift.plan.piece.solids.push_back(
      cut_from(lift.plan.piece.solids[0], {1.5 * m, 0.6 * m, 0.0 * m}, {1.0 * m, 0.8 * m, 0.3 * m}));
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->nothing_attached = false;
  lift.plan.form->attached = {{.what = "former",
                               .weight = 1.0 * kN,
                               .at = Position{2.0 * m, 0.3 * m, 0.3 * m},
                               .until = {},
                               .place = {}}};
  const auto figures = drawn(lift);
  REQUIRE(figures.breakouts.size() == 1);
  REQUIRE(figures.breakouts[0].outline.holes.size() == 1);
  CHECK(area_m2(figures.breakouts[0].outline.holes[0]) == Approx(0.8));
  REQUIRE(figures.tension);
  REQUIRE(figures.tension->map);
  const TensionMap& map = *figures.tension->map;
  REQUIRE(map.outline.holes.size() == 1);
  CHECK(area_m2(map.outline.holes[0]) == Approx(0.8));
  CHECK(map.picks.size() == 4);
  CHECK_FALSE(map.cells.empty());
  // A cell is the mean of what concrete lies within a thickness of its middle: in the middle of the opening
  // there is none.
  const auto empty = std::ranges::none_of(map.cells, [](const TensionMap::Cell& cell) {
    return cell.middle.x > 1.8 * m && cell.middle.x < 2.2 * m && cell.middle.y > 0.9 * m &&
           cell.middle.y < 1.1 * m;
  });
  CHECK(empty);
  const auto beside = std::ranges::count_if(map.cells, [](const TensionMap::Cell& cell) {
    return cell.middle.x > 2.2 * m && cell.middle.x < 2.4 * m && cell.middle.y < 0.6 * m &&
           cell.middle.y > 0.4 * m;
  });
  CHECK(beside > 0);
}

TEST_CASE("breakout bodies: none is drawn on a round face, a sloping side is told as one") {
  SlabLift round;
  plan::Solid& drum = round.plan.piece.solids[0];
  drum.shape = plan::Shape::cylinder;
  drum.diameter = 3.0 * m, drum.length = 1.0 * m;
  round.plan.piece.stated_weight.reset();
  for (plan::Insert& insert : round.plan.inserts)
    insert.at = {insert.at.x - 2.0 * m, insert.at.y - 1.0 * m, 1.0 * m};
  round.plan.inserts.push_back(headed_insert_at("A5", 0.0 * m, 0.0 * m));
  round.plan.inserts[4].at = {1.5 * m, 0.0 * m, 0.5 * m};
  round.plan.inserts[4].embedment = 60.0 * mm;
  const auto faces = drawn(round).breakouts;
  REQUIRE(faces.size() == 1);
  CHECK(faces[0].bodies.size() == 4);

  // A wedge, its face at +x leaning by 1 in 1.
  SlabLift sloped;
  plan::Solid& wedge = sloped.plan.piece.solids[0];
  wedge.shape = plan::Shape::wedge;
  wedge.size = {4.0 * m, 2.0 * m, 0.5 * m};
  wedge.top_size = {3.5 * m, 2.0 * m};
  wedge.top_at = {0.0 * m, 0.0 * m};
  sloped.plan.piece.stated_weight.reset();
  for (plan::Insert& insert : sloped.plan.inserts) insert.at.z = 0.5 * m;
  sloped.plan.inserts.push_back(headed_insert_at("A5", 0.0 * m, 0.0 * m));
  sloped.plan.inserts[4].at = {3.75 * m, 1.0 * m, 0.25 * m};
  sloped.plan.inserts[4].embedment = 60.0 * mm;
  const auto of_wedge = drawn(sloped).breakouts;
  REQUIRE(of_wedge.size() == 2);
  const auto& side = of_wedge[0].bodies.size() == 1 ? of_wedge[0] : of_wedge[1];
  CHECK(side.side == "sloping or slanting side, seen from outside");
  // Seen square to the face: 2 m wide, 0.5 sqrt(2) m up the slope.
  CHECK(area_m2(side.outline.outer) == Approx(2.0 * 0.5 * std::sqrt(2.0)));
  CHECK(in(m, side.bodies[0].at.x) == Approx(1.0));
}

TEST_CASE(
    "a piece past its balance pulls at no hook: drawn as such, held by nobody at its end, limited before "
    "it") {
  SlabLift lift;
  turn_about_edge(lift, 90.0 * deg);
  for (const std::size_t i : {1U, 2U}) {
    lift.plan.inserts[i] = rated_insert_at(lift.plan.inserts[i].id, 4.0 * m, lift.plan.inserts[i].at.y);
    lift.plan.inserts[i].at.z = 150.0 * mm;
    lift.plan.inserts[i].rating->load = 60.0 * kN;
    lift.plan.inserts[i].rating->maximum_angle = 90.0 * deg;
  }
  const auto figures = drawn(lift);
  REQUIRE_FALSE(figures.turn.empty());
  CHECK(figures.turn.back().main == Force{});
  CHECK(in(kN, figures.turn.back().edge) == Approx(1.2 * weight_kN));
  CHECK(in(kN, figures.turn.front().main) == Approx(1.2 * weight_kN / 2.0));
  const auto pulls = pulls_on_scale(lift.plan, lift.body, 0, lift.rules, lift.tables);
  REQUIRE(pulls.moments.size() == 3);
  CHECK(pulls.moments[0].held);
  CHECK_FALSE(pulls.moments[2].held);
  CHECK(in(kN, pulls.moments[2].reading.value()) == Approx(2.0));  // block and rigging alone
  REQUIRE_FALSE(pulls.cranes.at(0).limits.empty());
  CHECK(in(deg, pulls.cranes[0].limits.back().to) == Approx(90.0));
}

TEST_CASE(
    "a turn that begins in its balance pulls at no angle: its scale shows what hangs on the hook, without a "
    "limit") {
  SlabLift lift;
  turn_about_edge(lift, 85.0 * deg);
  const Angle balance = (std::atan2(2.0, 0.15) - 1e-10) * radian;
  plan::Stage before = lift.stage();
  before.turn->to = balance;
  lift.stage().turn->from = balance;
  lift.stage().turn->to = 90.0 * deg;
  lift.plan.stages.insert(lift.plan.stages.begin(), before);
  lift.facts();
  const auto pulls = pulls_on_scale(lift.plan, lift.body, 1, lift.rules, lift.tables);
  REQUIRE(pulls.cranes.size() == 1);
  CHECK(in(kN, pulls.cranes[0].reading.value()) == Approx(2.0));
  CHECK(pulls.cranes[0].limits.empty());
  for (const TurnMoment& moment : pulls.moments) CHECK_FALSE(moment.held);
}

TEST_CASE("off a table the legs hold the piece from its angle on, not before") {
  SlabLift lift;
  turn_about_edge(lift, 85.0 * deg);
  for (const std::size_t i : {1U, 2U})
    lift.plan.inserts[i].at.x = 4.0 * m, lift.plan.inserts[i].at.z = 150.0 * mm;
  lift.stage().turn->method = plan::TurnMethod::table;
  lift.stage().turn->table_angle = 80.0 * deg;
  lift.facts();
  const auto up = pulls_on_scale(lift.plan, lift.body, 0, lift.rules, lift.tables);
  REQUIRE(up.moments.size() == 3);
  CHECK_FALSE(up.moments[0].held);
  CHECK_FALSE(up.moments[0].reading);
  CHECK(in(deg, up.moments[1].angle) == Approx(80.0));
  CHECK(up.moments[1].held);
  CHECK(in(kN, up.moments[1].reading.value()) == Approx(weight_kN + 2.0));
  CHECK(up.moments[2].held);

  // Brought down to 10 degrees by the table, then taken off level by two picks over the middle.
  SlabLift down;
  turn_about_edge(down, 85.0 * deg);
  down.plan.inserts[1].at.x = down.plan.inserts[2].at.x = 2.0 * m;
  plan::Stage before = down.stage();
  down.stage().turn->method = plan::TurnMethod::table;
  down.stage().turn->from = 85.0 * deg, down.stage().turn->to = 0.0 * deg;
  down.stage().turn->table_angle = 10.0 * deg;
  down.plan.stages.insert(down.plan.stages.begin(), before);
  down.facts();
  const auto level = pulls_on_scale(down.plan, down.body, 1, down.rules, down.tables);
  REQUIRE(level.moments.size() == 3);
  CHECK_FALSE(level.moments[0].held);
  CHECK_FALSE(level.moments[0].reading);
  CHECK(level.moments[1].held);
  CHECK(level.moments[2].held);
}

TEST_CASE("the largest use of findings: none of one that is missing or whose use is no number from zero on") {
  const auto use = [](double number) {
    Finding finding{.rule = "sling-overload", .subject = "A1", .result = Result::pass};
    finding.utilization = number;
    return finding;
  };
  const Finding without{.rule = "sling-overload", .subject = "A1", .result = Result::pass};
  const Finding missing_one{.rule = "sling-overload", .subject = "A1", .result = Result::missing};
  CHECK(largest_use({}) == 0.0);
  CHECK(largest_use({use(0.3), without, use(1.7), use(0.9)}) == 1.7);
  CHECK(largest_use({use(0.0)}) == 0.0);
  CHECK_FALSE(largest_use({use(0.3), missing_one}));
  CHECK_FALSE(largest_use({use(std::nan("")), use(0.3)}));
  CHECK_FALSE(largest_use({use(0.3), use(-1e-9)}));
}
