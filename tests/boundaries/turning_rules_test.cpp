// Each limit of the rules of turning, rolling and landing: at, one step below, one step above.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "checks/insert_modes.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

double next(double value, double towards) { return std::nextafter(value, towards); }

// The slab of the tests, turned about its edge at x = 0 by the two inserts at x = 3 m, with legs of their own.
struct TurnedSlab {
  SlabLift lift;
  TurnedSlab() { turn_about_edge(lift, 45.0 * deg); }
  plan::Turn& turn() { return *lift.stage().turn; }
  Finding found(std::string_view rule, std::string_view subject = "SL-1") {
    return finding_for(rule, subject, lift.facts());
  }
};

TurnSweep sweep_of(TurnedSlab& slab) {
  const auto facts = slab.lift.facts();
  REQUIRE(facts.turning);
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) FAIL(gap->why);
  return std::get<TurnSweep>(*facts.turning);
}

}  // namespace

TEST_CASE("the turned slab is computed, and each of its inserts sees the whole sweep") {
  TurnedSlab slab;
  const auto facts = slab.lift.facts();
  REQUIRE(is_assessed(facts.insert_situations));
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  CHECK(situations.size() >= 16);
  for (const InsertSituation& situation : situations) CHECK(situation.turning);
  CHECK(slab.found("rigging-statics", "two legs").result == Result::pass);
  // Face inserts: tension alone as it lies but for the spread of the legs, shear along x as it turns, towards the far edge.
  CHECK(situations.back().forces[1].shear > situations.front().forces[1].shear);
  const auto& site = facts.body.sites[1];
  const auto& last = situations.back().forces[1];
  CHECK(last.shear_u.value() * site.u.x + last.shear_v.value() * site.v.x > 0.0);
}

TEST_CASE("no angle of the turn, however finely sampled, asks more of an insert than the findings say") {
  TurnedSlab slab;
  const auto facts = slab.lift.facts();
  REQUIRE(is_assessed(facts.insert_situations));
  const auto& piece = std::get<TurnSweep>(*facts.turning).piece;
  for (const std::size_t insert : {1U, 2U})
    for (const Mode mode : all_modes) {
      double told = 0.0, most = 0.0;
      const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
      for (std::size_t s = 0; s < situations.size(); ++s)
        told = std::max(told, facts.modes.at(s, insert, mode).comparison.utilization.value_or(0.0));
      Trace silent;
      for (int i = 0; i <= 450; ++i) {
        const auto pose = demands::turn_pose(piece, 0.1 * i * deg);
        REQUIRE(is_assessed(pose));
        InsertSituation felt{"", std::vector<demands::InsertForce>(4), false, true};
        const auto& legs = std::get<demands::TurnPose>(pose).sharings.front().legs;
        for (std::size_t leg = 0; leg < 2; ++leg)
          felt.forces[leg + 1] = demands::insert_force(legs[leg], facts.body.sites[leg + 1]);
        most = std::max(most, check_mode(mode, facts, felt, insert, silent).comparison.utilization.value_or(0.0));
      }
      CAPTURE(insert, static_cast<int>(mode));
      CHECK(told >= most * (1.0 - 1e-9));
      CHECK(told <= most * 1.001);
    }
}

TEST_CASE("turn-slip at the friction it needs, one step below and above") {
  TurnedSlab slab;
  const double needed = sweep_of(slab).slip.value();
  REQUIRE(needed > 0.0);
  slab.turn().friction = Ratio{needed};
  CHECK(slab.found("turn-slip").result == Result::pass);
  slab.turn().friction = Ratio{next(needed, 1.0)};
  CHECK(slab.found("turn-slip").result == Result::pass);
  slab.turn().friction = Ratio{next(needed, 0.0)};
  CHECK(slab.found("turn-slip").result == Result::fail);
  for (const double none : {0.0, -1.0, std::nan(""), double{INFINITY}}) {
    slab.turn().friction = Ratio{none};
    CAPTURE(none);
    CHECK(slab.found("turn-slip").result == Result::missing);
  }
  slab.turn().friction.reset();
  CHECK(slab.found("turn-slip").result == Result::pass);  // that of the ground
  slab.turn().ground.clear();
  CHECK(slab.found("turn-slip").result == Result::missing);
}

TEST_CASE("turn-runaway at the limit, one step below and above") {
  TurnedSlab slab;
  slab.lift.plan.inserts[1].at = {4.0 * m, 0.5 * m, 0.15 * m};  // in the far end face
  slab.lift.plan.inserts[2].at = {4.0 * m, 1.5 * m, 0.15 * m};
  slab.turn().to = 90.0 * deg;
  const TurnSweep sweep = sweep_of(slab);
  CHECK(in(deg, sweep.balance) == Approx(std::atan2(2.0, 0.15) * 180.0 / M_PI));
  const double falls = sweep.falls_free.value();
  slab.lift.rules.free_turn.value = Angle::from_value(falls);
  CHECK(slab.found("turn-runaway").result == Result::pass);
  slab.lift.rules.free_turn.value = Angle::from_value(next(falls, 0.0));
  CHECK(slab.found("turn-runaway").result == Result::fail);
  check_says_why(slab.found("turn-runaway"));
}

TEST_CASE("turn-runaway: a turn back that starts past the balance is on HOLD, one let down on the other face is held") {
  TurnedSlab slab;
  slab.lift.plan.inserts[1].at = {4.0 * m, 0.5 * m, 0.15 * m};
  slab.lift.plan.inserts[2].at = {4.0 * m, 1.5 * m, 0.15 * m};
  plan::Stage up = slab.lift.stage();
  slab.turn().from = 90.0 * deg;
  slab.turn().to = 0.0 * deg;
  up.turn->to = 90.0 * deg;
  plan::Stage down = slab.lift.stage();
  slab.lift.plan.stages = {up, down};
  Trace silent;
  const auto second = [&] {
    slab.lift.facts();  // makes body and anchorage of the plan as it is now
    return checks::stage_facts(slab.lift.plan, slab.lift.plan.stages[1], slab.lift.body, *slab.lift.prepared,
                               slab.lift.rules, slab.lift.tables, silent);
  };
  CHECK(finding_for("turn-runaway", "SL-1", second()).result == Result::missing);

  slab.lift.plan.stages[0].turn->to = 100.0 * deg;
  slab.lift.plan.stages[1].turn->from = 100.0 * deg;
  slab.lift.plan.stages[1].turn->to = 180.0 * deg;
  slab.lift.plan.stages[1].turn->about = {Position{0.0 * m, 0.0 * m, 0.3 * m}, Position{0.0 * m, 2.0 * m, 0.3 * m}};
  const auto lowered = second();
  REQUIRE(lowered.turning);
  if (const auto* gap = std::get_if<NotAssessed>(&*lowered.turning)) FAIL(gap->why);
  CHECK(finding_for("turn-runaway", "SL-1", lowered).result == Result::pass);
  CHECK(std::get<TurnSweep>(*lowered.turning).main.share == Approx(0.5).epsilon(1e-6));  // at 180 degrees, flat again
}

TEST_CASE("turn-procedure: blanks are none") {
  TurnedSlab slab;
  CHECK(slab.found("turn-procedure").result == Result::pass);
  slab.turn().procedure = " ";
  CHECK(slab.found("turn-procedure").result == Result::missing);
}

TEST_CASE("a turn that lacks what its method needs is on HOLD, and says what") {
  TurnedSlab slab;
  SECTION("no [stage.turn]") { slab.lift.stage().turn.reset(); }
  SECTION("no edge") { slab.turn().about.reset(); }
  SECTION("no method") { slab.turn().method.reset(); }
  SECTION("an edge that is not the lowest") { slab.turn().about = {Position{0.1 * m, 0.0 * m, 0.0 * m}, {0.1 * m, 2.0 * m, 0.0 * m}}; }
  SECTION("an edge that is longer than that of the piece") { slab.turn().about = {Position{}, {0.0 * m, 2.1 * m, 0.0 * m}}; }
  SECTION("a start that is not how it lies") { slab.turn().from = 10.0 * deg; }
  SECTION("a table without its angle") { slab.turn().method = plan::TurnMethod::table; }
  SECTION("a second hook without rigging") { slab.turn().method = plan::TurnMethod::two_hooks; }
  SECTION("a leg without length") { slab.lift.plan.riggings[1].legs[0].length.reset(); }
  SECTION("picks nearer to the edge than the centre of gravity") {
    slab.lift.plan.inserts[1].at.x = slab.lift.plan.inserts[2].at.x = 1.9 * m;
  }
  const Finding finding = slab.found("rigging-statics", "two legs");
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
  const auto facts = slab.lift.facts();
  CHECK_FALSE(is_assessed(facts.insert_situations));
  CHECK_FALSE(is_assessed(facts.gear_situations));
}

TEST_CASE("roll-stability at the limit, one step below and above, missing where nothing hangs") {
  SlabLift lift;
  lift.plan.riggings.front().legs = {leg_to("A1"), leg_to("A3")};  // two picks on a diagonal: in line over the middle
  lift.plan.riggings.front().equalised.clear();
  const auto at = [&] { return finding_for("roll-stability", "four legs", lift.facts()); };
  const Finding first = at();
  REQUIRE(first.demand);
  const double phi = std::get<Angle>(*first.demand).value();
  REQUIRE(phi > 0.0);
  lift.rules.maximum_roll.value = Angle::from_value(phi);
  CHECK(at().result == Result::pass);
  lift.rules.maximum_roll.value = Angle::from_value(next(phi, 0.0));
  CHECK(at().result == Result::fail);
  check_says_why(at());
  lift.rules.side_pull.value = std::nan("") * newton;
  CHECK(at().result != Result::pass);
  lift.rules.side_pull.value = 98.0 * newton;
  lift.plan.riggings.front().legs[0].length.reset();
  CHECK(at().result == Result::missing);
}

TEST_CASE("teeter at the share, one step below and above") {
  SlabLift lift;
  const auto at = [&] { return finding_for("teeter", "four legs", lift.facts()).result; };
  lift.rules.pick_spacing.value = Ratio{0.1};
  CHECK(at() == Result::pass);
  lift.rules.pick_spacing.value = Ratio{0.99};
  CHECK(at() == Result::note);
}

TEST_CASE("landing-stability at the tipping angle, one step below and above") {
  SlabLift lift;
  const auto at = [&] { return finding_for("landing-stability", "SL-1", lift.facts()); };
  const Finding first = at();
  REQUIRE(first.result == Result::pass);
  const double tipping = std::get<Angle>(*first.capacity).value();
  CHECK(tipping == Approx(std::atan2(1.0, 0.15)));
  lift.rules.minimum_tipping_angle.value = Angle::from_value(tipping);
  CHECK(at().result == Result::pass);
  lift.rules.minimum_tipping_angle.value = Angle::from_value(next(tipping, 2.0));
  CHECK(at().result == Result::fail);
  check_says_why(at());
  lift.stage().landing->restrained = plan::Restraint::none;
  CHECK(at().result == Result::fail);
  lift.stage().landing->restrained = plan::Restraint::rack;
  CHECK(at().result == Result::note);
  lift.stage().landing->level = false;
  CHECK(at().result == Result::fail);
}

TEST_CASE("landing-stability: each fact that is absent is on HOLD") {
  SlabLift lift;
  const auto at = [&] { return finding_for("landing-stability", "SL-1", lift.facts()); };
  SECTION("no landing") { lift.stage().landing.reset(); }
  SECTION("level not said") { lift.stage().landing->level.reset(); }
  SECTION("legs not said") { lift.stage().landing->legs_off.reset(); }
  SECTION("legs not checked") { lift.stage().landing->legs_off = false; }
  SECTION("bearers not listed") { lift.stage().landing->on = plan::LandingOn::bearers; }
  CHECK(at().result == Result::missing);
  check_says_why(at());
}

TEST_CASE("landing-stability: a centre of gravity outside its bearers fails, in a rack it is a note") {
  SlabLift lift;
  auto& landing = *lift.stage().landing;
  landing.on = plan::LandingOn::bearers;
  for (const double x : {2.3, 3.5}) {
    plan::Bearer bearer;
    bearer.along = {Position{x * m, 0.0 * m, 0.0 * m}, Position{x * m, 2.0 * m, 0.0 * m}};
    bearer.width = 100.0 * mm;
    landing.bearers.push_back(bearer);
  }
  const auto at = [&](std::string_view rule) { return finding_for(rule, "SL-1", lift.facts()); };
  CHECK(at("landing-stability").result == Result::fail);
  check_says_why(at("landing-stability"));
  CHECK(at("landing-bearers").result == Result::pass);
  landing.bearers[0].along = {Position{0.5 * m, 0.0 * m, 0.0 * m}, Position{0.5 * m, 2.0 * m, 0.0 * m}};
  CHECK(at("landing-stability").result == Result::pass);
  landing.bearers.push_back(landing.bearers[1]);
  CHECK(at("landing-bearers").result == Result::note);
}

TEST_CASE("haul-restraint speaks on a haul only") {
  SlabLift lift;
  CHECK(finding_for("haul-restraint", "SL-1", lift.facts()).result == Result::pass);
  lift.stage().kind = plan::StageKind::haul;
  CHECK(finding_for("haul-restraint", "SL-1", lift.facts()).result == Result::note);
}

TEST_CASE("the second hook of a turn is held against its own crane") {
  TurnedSlab slab;
  plan::Rigging tail;
  tail.id = "tail";
  tail.legs = {leg_to("A1"), leg_to("A4")};
  tail.weight = 0.5 * kN;
  slab.lift.plan.riggings.push_back(tail);
  slab.turn().method = plan::TurnMethod::two_hooks;
  slab.turn().about.reset();
  slab.turn().tail_rigging = "tail";
  CHECK(slab.found("crane-overload", "second hook").result == Result::missing);
  slab.turn().tail_crane = slab.lift.stage().crane;  // one crane is not two
  Trace silent;
  const auto of_one_crane = rule_named("crane-overload")->judge(slab.lift.facts(), silent);
  REQUIRE(of_one_crane.size() == 2);
  CHECK(of_one_crane[1].result == Result::missing);
  plan::Crane second = slab.lift.plan.cranes.front();
  second.id = "bay 2";
  slab.lift.plan.cranes.push_back(second);
  slab.turn().tail_crane = "bay 2";
  const Finding finding = slab.found("crane-overload", "bay 2");
  CHECK(finding.result == Result::pass);
  const double load = std::get<Force>(*finding.demand).value();
  slab.lift.plan.cranes[1].rated = Force::from_value(load);
  CHECK(slab.found("crane-overload", "bay 2").result == Result::pass);
  slab.lift.plan.cranes[1].rated = Force::from_value(next(load, 0.0));
  CHECK(slab.found("crane-overload", "bay 2").result == Result::fail);
  slab.lift.plan.cranes[1].block.reset();
  CHECK(slab.found("crane-overload", "bay 2").result == Result::missing);
}

TEST_CASE("turn-release: off a table at the limit, one step below and above, off a flat table it swings too far") {
  TurnedSlab slab;
  for (plan::Insert& insert : slab.lift.plan.inserts)  // two of them in the end at x = 4 m
    if (insert.id == "A2" || insert.id == "A3") insert.at.x = 4.0 * m, insert.at.z = 150.0 * mm;
  slab.turn().method = plan::TurnMethod::table;
  slab.turn().to = 90.0 * deg;
  slab.turn().table_angle = 80.0 * deg;
  const Finding found = slab.found("turn-release");
  CHECK(found.result == Result::pass);
  CHECK(in(deg, std::get<Angle>(*found.demand)) == Approx(10.0).margin(1e-6));  // inserts at mid depth: it hangs upright
  const Angle swing = std::get<Angle>(*found.demand);
  slab.lift.rules.release_swing.value = swing;
  CHECK(slab.found("turn-release").result == Result::pass);
  slab.lift.rules.release_swing.value = Angle::from_value(next(swing.value(), 0.0));
  CHECK(slab.found("turn-release").result == Result::fail);
  check_says_why(slab.found("turn-release"));

  // As the hook takes it up at t it stands on its foot: F / N = x / (x_hook - x), x = 2 cos t - 0.15 sin t, x_hook twice
  // the first, less the second.
  const double c = std::cos(80.0 * M_PI / 180.0), s = std::sin(80.0 * M_PI / 180.0);
  const double x = 2.0 * c - 0.15 * s, x_hook = 4.0 * c - 0.15 * s;
  const Finding slip = slab.found("turn-slip");
  const double expected = std::tan(slab.lift.rules.hook_off_plumb.value.value()) * x / (x_hook - x);
  CHECK(std::get<Ratio>(*slip.demand).value() == Approx(expected).epsilon(1e-9));
  slab.turn().ground.clear();
  CHECK(slab.found("turn-slip").result == Result::missing);
  slab.turn().ground = "yard";

  slab.turn().table_angle = 10.0 * deg;
  CHECK(slab.found("turn-release").result == Result::fail);
  slab.turn().method = plan::TurnMethod::edge;
  CHECK(slab.found("turn-release").result == Result::pass);
}

TEST_CASE("off a table the picks are counted, about an edge they are a note") {
  TurnedSlab slab;
  slab.turn().method = plan::TurnMethod::table;
  slab.turn().to = 90.0 * deg;
  slab.turn().table_angle = 80.0 * deg;
  CHECK(slab.found("pick-count", "two legs").result == Result::fail);  // face inserts: a flat piece on two
  slab.turn().method = plan::TurnMethod::edge;
  CHECK(slab.found("pick-count", "two legs").result == Result::note);
}
