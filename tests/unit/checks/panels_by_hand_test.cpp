// Panels under loads written by hand, level and turned: grip to each side, parts that hang on them, legs to
// beams, an edge that carries nothing, attitudes that are slack, and what is kept while picks move.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/panel_plate.hpp"
#include "checks/turn_sweep.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");
const std::string uneven = "the form does not grip the panel evenly: its bending by that is not computed";
const std::string uneven_turned =
    "the form does not grip the panel evenly: its bending by that, as it is turned, is not computed";

ModelChoice model_of(const StageFacts& facts) {
  return piece_model(facts.plan, facts.body, facts.rules.cracking);
}

Outcome<BendingTension> level(StageFacts& facts) {
  facts.bending->tension.reset();
  return panel_tension(facts, model_of(facts));
}
double level_MPa(StageFacts& facts) { return in(MPa, assessed(level(facts)).tension); }

loads::StageLoad& load_of(StageFacts& facts) { return std::get<loads::StageLoad>(facts.load); }

PanelFace face_of(const StageFacts& facts) {
  const auto face = panel_face(facts.plan, facts.body);
  REQUIRE(face);
  return *face;
}

// The slab turned about its edge at x = 0, at these angles alone.
struct TurnedAt {
  SlabLift lift;
  std::optional<StageFacts> made;
  explicit TurnedAt(const std::vector<double>& deg_each, double x_m = 3.0) {
    turn_about_edge(lift, 45.0 * deg);
    lift.plan.inserts[1].at.x = lift.plan.inserts[2].at.x = x_m * m;
    made.emplace(lift.facts());
    if (!is_assessed(made->gear_situations)) made->gear_situations = std::vector<Situation>{};
    at(deg_each);
  }
  void at(const std::vector<double>& deg_each) {
    TurnSweep sweep;
    for (const double each : deg_each) sweep.poses.push_back({.angle = each * deg});
    made->turning = Outcome<TurnSweep>{sweep};
  }
  StageFacts& facts() { return *made; }
  Outcome<BendingTension> asked() { return turned_panel_tension(*made); }
  double MPa_each() { return in(MPa, assessed(asked()).tension); }
  demands::PanelLoad load(const std::string& situation) {
    const auto panel = turned_panel_in(*made, face_of(*made), situation);
    if (!panel) FAIL("there is no situation " << situation);
    REQUIRE(panel->loads.size() == 1);
    return panel->loads.front();
  }
};

const double weight_kN =
    1.2 * 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;  // with the factor of the turn

}  // namespace

TEST_CASE(
    "the worst of a panel's moments: the first of equals, at the face that is pulled, what is no number "
    "stays") {
  SlabLift lift;
  const auto facts = lift.facts();
  const PanelFace face = face_of(facts);
  Situation situation;
  const auto moments = [](double bottom, double top) {
    demands::PanelBending bent;
    bent.bottom_tension = {PlateMoment::from_value(bottom), {}};
    bent.top_tension = {PlateMoment::from_value(top), {}};
    return bent;
  };
  BendingTension worst;
  const auto look = [&](const std::string& name, double bottom, double top) {
    situation.name = name;
    look_at(worst, moments(bottom, top), face, situation, UnitSystem::si, "");
  };
  look("none", 0.0, 0.0);
  CHECK(worst.tension == Stress{});
  CHECK(worst.where.starts_with("bottom of the panel, near x = "));
  look("one", 1.0, 9000.0);
  CHECK(in(MPa, worst.tension) == Approx(6.0 * 9000.0 / 0.09 / 1e6));
  CHECK(worst.where.starts_with("top of the panel, near x = "));
  look("two", 9000.0, 8999.0);
  CHECK(worst.situation == "one");
  look("three", 9001.0, 1.0);
  CHECK(worst.situation == "three");
  CHECK(worst.where.starts_with("bottom"));
  look("unknown", 1.0, not_a_number);
  CHECK(std::isnan(worst.tension.value()));
  look("more", 1e9, 1e9);
  CHECK(std::isnan(worst.tension.value()));
  CHECK(worst.situation == "unknown");
}

TEST_CASE("a level panel: grip even to 2 % of its size, along and across") {
  SlabLift lift;
  auto facts = lift.facts();
  Position& grip = load_of(facts).gear_loads.at(1).loads.at(1).at;
  const Position middle = grip;
  REQUIRE(in(m, middle.x) == Approx(2.0));
  for (const double sign : {-1.0, 1.0})
    for (const auto axis : {&Position::x, &Position::y}) {
      grip = middle;
      grip.*axis += sign * 0.0799 * m;
      CHECK(is_assessed(level(facts)));
      grip.*axis = middle.*axis + sign * 0.0801 * m;
      CHECK(why_not(level(facts)) == uneven);
      grip.*axis = not_a_number * m;
      CHECK(why_not(level(facts)) == uneven);
    }
}

TEST_CASE(
    "loads of a level panel: what its inserts are pulled by, parts where they hang, the rest as a pressure") {
  SlabLift lift;
  lift.plan.riggings[0].legs[0].to = "end of the beam";
  SlabLift whole;
  const auto facts = whole.facts();
  StageFacts on_beam = facts;
  on_beam.rigging = &lift.plan.riggings[0];
  BendingLoads loads;
  for (const double up_kN : {50.0, 10.0, 20.0, 30.0}) {
    demands::LegForce leg;
    leg.on_insert = {0.0 * kN, 0.0 * kN, up_kN * kN};
    loads.situation.legs.push_back(leg);
  }
  loads.set.loads = {{{2.0 * m, 1.0 * m, 0.15 * m}, 50.0 * kN},
                     {{1.0 * m, 0.4 * m, 0.5 * m}, 6.0 * kN},
                     {{2.5 * m, 0.4 * m, 0.5 * m}, 4.0 * kN}};
  loads.attached = 2;
  const PanelFace face = face_of(facts);
  const auto made = panel_load(on_beam, loads, face);
  REQUIRE(made.forces.size() == 5);  // three picks, two parts
  CHECK(in(kN, made.forces[0].up) == Approx(10.0));
  CHECK(in(m, face.in_piece(made.forces[0].at).x) == Approx(3.0));
  CHECK(in(m, made.forces[0].above_middle) == Approx(0.15));
  CHECK(made.forces[0].is_pick);
  CHECK(in(kN, made.forces[3].up) == Approx(-6.0));
  CHECK(in(m, face.in_piece(made.forces[3].at).y) == Approx(0.4));
  CHECK_FALSE(made.forces[3].is_pick);
  CHECK(in(kN, made.forces[4].up) == Approx(-4.0));
  CHECK(in(kPa, made.pressure) == Approx((60.0 - 10.0) / 8.0));
  CHECK(in(kPa, panel_load(facts, loads, face).pressure) == Approx((110.0 - 10.0) / 8.0));
}

TEST_CASE("while picks move the first panel's plate and frame are kept, and it is estimated") {
  SlabLift lift;
  auto facts = lift.facts();
  const double computed = level_MPa(facts);
  auto& reuse = facts.bending->reuse;
  reuse = std::make_shared<BendingReuse>();
  const double estimated = level_MPa(facts);
  REQUIRE(reuse->panel_face);
  REQUIRE(reuse->panel);
  // It reads strips half a patch beside the picks, not an eighth, where they carry more.
  CHECK(estimated < 0.9 * computed);
  CHECK(estimated > 0.4 * computed);
  CHECK(level_MPa(facts) == estimated);
  // Its own frame is asked, not that of the piece: 6 M/t^2 of twice the thickness.
  reuse->panel_face->thickness = 0.6 * m;
  CHECK(level_MPa(facts) == Approx(0.25 * estimated).epsilon(0.02));
  reuse->panel_face->thickness = 0.3 * m;
  // Where no plate could be made of it, it is computed.
  reuse->panel.reset();
  CHECK(level_MPa(facts) == computed);
  CHECK_FALSE(reuse->panel);
  reuse = std::make_shared<BendingReuse>();
  facts.gear_situations = std::vector<Situation>{};
  CHECK_FALSE(is_assessed(level(facts)));
  CHECK(why_not(level(facts)) == "no situation loads the piece");
}

TEST_CASE("a turned panel: grip even to 2 % of its size, while it turns and as it hangs") {
  TurnedAt slab({0.0});
  const double alone = slab.MPa_each();
  auto& set = load_of(slab.facts()).gear_loads.at(0);
  set.loads.push_back({slab.lift.body.centroid, 0.5 * set.loads[0].force});
  CHECK(slab.MPa_each() == Approx(1.5 * alone).epsilon(1e-3));
  set.loads.back().force = 0.05 * set.loads[0].force;  // out of the middle, more would be out of balance
  Position& grip = set.loads.back().at;
  const Position middle = grip;
  for (const auto axis : {&Position::x, &Position::y})
    for (const double sign : {-1.0, 1.0}) {
      grip = middle;
      grip.*axis += sign * 0.0799 * m;
      CHECK(is_assessed(slab.asked()));
      grip.*axis = middle.*axis + sign * 0.0801 * m;
      CHECK(why_not(slab.asked()) == uneven_turned);
    }
  // The same piece hung by its four legs after a turn.
  SlabLift hung;
  auto facts = hung.facts();
  facts.up_before = Direction{0.0, 0.1, 0.99498743710662};
  CHECK(is_assessed(turned_panel_tension(facts)));
  load_of(facts).gear_loads.at(1).loads.at(1).at.x += 0.081 * m;
  CHECK(why_not(turned_panel_tension(facts)) == uneven_turned);
}

TEST_CASE("a turned panel without a form is that without grip, the leg to a beam pulls nothing of it") {
  TurnedAt slab({0.0, 8.0});
  const double alone = slab.MPa_each();
  slab.lift.plan.form.reset();
  CHECK(slab.MPa_each() == Approx(alone));
  SlabLift hung;
  auto facts = hung.facts();
  facts.up_before = Direction{0.0, 0.1, 0.99498743710662};
  const double by_inserts = in(MPa, assessed(turned_panel_tension(facts)).tension);
  plan::Rigging rigging = hung.plan.riggings.front();
  rigging.legs.push_back(leg_to("end of the beam"));
  auto situations = std::get<std::vector<Situation>>(facts.gear_situations);
  demands::LegForce more;
  more.on_insert = {30.0 * kN, 0.0 * kN, 30.0 * kN};
  for (Situation& situation : situations) situation.legs.push_back(more);
  facts.rigging = &rigging;
  facts.gear_situations = situations;
  CHECK(in(MPa, assessed(turned_panel_tension(facts)).tension) == Approx(by_inserts));
}

TEST_CASE("loads of a turned panel: edge and legs hold it, a part hangs on it, the weight lies over it") {
  TurnedAt slab({0.0, 30.0});
  slab.lift.plan.form->attached = {
      {.what = "former", .weight = 6.0 * kN, .at = Position{}, .until = {}, .place = {}}};
  auto& set = load_of(slab.facts()).gear_loads.at(0);
  set.loads.push_back({{2.0 * m, 1.0 * m, 0.5 * m}, 6.0 * kN});
  const auto level = slab.load("turned to 0.0 deg");
  REQUIRE(level.forces.size() == 3);
  CHECK(in(kN, level.forces[2].up) == Approx(-6.0));
  CHECK(in(m, level.forces[2].above_middle) == Approx(0.35));
  CHECK_FALSE(level.forces[2].is_pick);
  CHECK(in(kPa, level.pressure) == Approx(weight_kN / 8.0));
  // By moments about the edge: two thirds on the hook, a third on the ground.
  REQUIRE(level.edge);
  CHECK(in(kN, level.edge->up) == Approx((weight_kN + 6.0) / 3.0));
  const auto raised = slab.load("turned to 30.0 deg");
  const double sine = 0.5, cosine_30 = std::sqrt(0.75);
  CHECK(in(kN, raised.forces[2].up) == Approx(-6.0 * cosine_30));
  CHECK(std::abs(in(kN, raised.forces[2].along_x)) + std::abs(in(kN, raised.forces[2].along_y)) ==
        Approx(6.0 * sine));
  CHECK(in(kPa, raised.pressure) == Approx(weight_kN / 8.0 * cosine_30));
  CHECK(std::abs(in(kPa, raised.pull_along_x)) + std::abs(in(kPa, raised.pull_along_y)) ==
        Approx(weight_kN / 8.0 * sine));
}

TEST_CASE("a turned panel: attitudes past its balance are slack, of four legs every sharing counts") {
  TurnedAt slab({0.0});
  const double held = slab.MPa_each();
  slab.at({0.0, 100.0});
  CHECK(slab.MPa_each() == Approx(held));
  auto turning_only = std::get<std::vector<Situation>>(slab.facts().gear_situations);
  REQUIRE(std::ranges::all_of(turning_only, &Situation::turning));
  slab.at({100.0});
  CHECK(why_not(slab.asked()) == "no situation loads the piece");
  CHECK_FALSE(turned_panel_in(slab.facts(), face_of(slab.facts()), "turned to 100.0 deg"));

  TurnedAt four({0.0});
  four.lift.plan.riggings[1].legs = {leg_to("A1"), leg_to("A2"), leg_to("A3"), leg_to("A4")};
  for (plan::Insert& insert : four.lift.plan.inserts)
    insert.at.x += insert.at.x < 2.0 * m ? 1.5 * m : 0.5 * m;
  auto facts = four.lift.facts();
  TurnSweep sweep;
  sweep.poses.push_back({.angle = 0.0 * deg});
  facts.turning = Outcome<TurnSweep>{sweep};
  const auto diagonal = turned_panel_in(facts, face_of(facts), "turned to 0.0 deg, legs A1 and A3 only");
  REQUIRE(diagonal);
  int picks = 0;
  for (const auto& force : diagonal->loads.front().forces) picks += force.is_pick ? 1 : 0;
  CHECK(picks == 2);
  CHECK_FALSE(turned_panel_in(facts, face_of(facts), "turned to 0.0 deg, legs A1 and A4 only"));
}

TEST_CASE("a hook plumb over the middle of a panel leaves nothing on its edge") {
  TurnedAt slab({0.0}, 2.0);
  const auto load = slab.load("turned to 0.0 deg");
  CHECK_FALSE(load.edge);
  CHECK(in(kPa, load.pressure) == Approx(weight_kN / 8.0));
  CHECK(is_assessed(slab.asked()));
}

TEST_CASE("a turned panel: what is not known is not assessed, with its words") {
  TurnedAt slab({0.0});
  REQUIRE(is_assessed(slab.asked()));
  const auto turning = slab.facts().turning;
  SECTION("the turn") {
    slab.facts().turning = Outcome<TurnSweep>{NotAssessed{"it is not turned", "none"}};
    CHECK(why_not(slab.asked()) == "it is not turned");
    CHECK_FALSE(turned_panel_in(slab.facts(), face_of(slab.facts()), "turned to 0.0 deg"));
  }
  SECTION("its table") {
    slab.lift.stage().turn->method = plan::TurnMethod::table;
    CHECK(why_not(slab.asked()) ==
          "the angle at which the crane takes the piece off the table is not in the plan");
  }
  SECTION("a leg") {
    slab.lift.plan.riggings[1].legs[0].length.reset();
    CHECK(why_not(slab.asked()) == "the leg to A2 has no length");
  }
  SECTION("an attitude in which it cannot be held") {
    slab.lift.plan.inserts[1].at.x = slab.lift.plan.inserts[2].at.x = 2.05 * m;
    slab.at({0.0, 60.0});
    CHECK_THAT(why_not(slab.asked()), Catch::StartsWith("turned to 60"));
  }
  SECTION("its plate") {
    slab.lift.rules.cracking.poisson.value = Ratio::from_value(not_a_number);
    CHECK_FALSE(is_assessed(slab.asked()));
  }
  SECTION("its shape") {
    SlabLift ribbed;
    plan::Solid rib = ribbed.plan.piece.solids[0];
    rib.name = "rib", rib.at.z = -0.2 * m, rib.size = {4.0 * m, 0.3 * m, 0.2 * m};
    ribbed.plan.piece.solids.push_back(rib);
    CHECK_THAT(why_not(turned_panel_tension(ribbed.facts())),
               Catch::StartsWith("the piece is no panel of one thickness"));
  }
}
