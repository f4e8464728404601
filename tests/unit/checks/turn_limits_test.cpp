// Turns at the ends of what their rules cover: no method, back and forth, past the balance, two hooks
// without what they need, what is no number in a sweep; and how the piece stands before and after.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/crane_hook_load.hpp"
#include "checks/evaluate.hpp"
#include "checks/lost_points.hpp"
#include "checks/standing.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");

// 2.4 m3 x 2400 kg/m3 x 1.03, with the dynamic factor of the turn.
const double turn_kN = 1.2 * 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;

struct TurnedSlab : SlabLift {
  TurnedSlab() { turn_about_edge(*this, 45.0 * deg); }
  plan::Turn& turn() { return *stage().turn; }
};

TurnSweep& sweep_in(StageFacts& facts) {
  REQUIRE(facts.turning);
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) FAIL(gap->why);
  return std::get<TurnSweep>(*facts.turning);
}

Finding of_piece(std::string_view rule, const StageFacts& facts) { return finding_for(rule, "SL-1", facts); }

}  // namespace

TEST_CASE("a turn without its method is no turn of another kind: every rule of turns is missing") {
  TurnedSlab slab;
  slab.turn().method.reset();
  for (const std::string_view rule : {"turn-slip", "turn-release", "turn-runaway"}) {
    CHECK(of_piece(rule, slab.facts()).result == Result::missing);
    CHECK(of_piece(rule, slab.facts()).text == "the method of the turn is not known");
  }
  auto facts = slab.facts();
  facts.turning.reset();
  for (const std::string_view rule : {"turn-slip", "turn-release", "turn-runaway"}) {
    CHECK(of_piece(rule, facts).result == Result::missing);
    CHECK(of_piece(rule, facts).text == how_is_missing);
  }
}

TEST_CASE("turn-slip: the friction that the edge needs, by hand, at what there is and one step below") {
  TurnedSlab slab;
  const auto facts = slab.facts();
  const Finding first = of_piece("turn-slip", facts);
  CHECK(first.result == Result::pass);
  // Picks at x = 3 m, the hook sqrt(2.5^2 - 0.5^2) m over them; at t the weight is 2 cos t - 0.15 sin t
  // from the edge and the hook 3 cos t - 0.3 sin t: F = W x / x_hook grows with t, mu = F tan(3 deg) / (W -
  // F).
  const double t = std::acos(-1.0) / 4.0;
  const double share = (2.0 * std::cos(t) - 0.15 * std::sin(t)) / (3.0 * std::cos(t) - 0.3 * std::sin(t));
  const double needed = share / (1.0 - share) * std::tan(std::acos(-1.0) / 60.0);
  CHECK(si_number(*first.demand) == Approx(needed).epsilon(1e-6));
  CHECK(first.situation == "turned to 45.0 deg");
  slab.turn().friction = std::get<Ratio>(*first.demand);
  CHECK(of_piece("turn-slip", slab.facts()).result == Result::pass);
  slab.turn().friction = Ratio{std::nextafter(si_number(*first.demand), 0.0)};
  CHECK(of_piece("turn-slip", slab.facts()).result == Result::fail);
}

TEST_CASE(
    "turn-slip: a hook off plumb by no number, or a push that is none, is missing and never no push at all") {
  TurnedSlab slab;
  slab.rules.hook_off_plumb.value = not_a_number * deg;
  const Finding unknown = of_piece("turn-slip", slab.facts());
  CHECK(unknown.result == Result::missing);
  check_says_why(unknown);
  take_off_a_table(slab, 80.0 * deg);
  const Finding off_table = of_piece("turn-slip", slab.facts());
  CHECK(off_table.result == Result::missing);
  check_says_why(off_table);

  TurnedSlab other;
  auto facts = other.facts();
  Trace trace = Trace::recording();
  sweep_in(facts).slip = Ratio{HUGE_VAL};
  CHECK(rule_named("turn-slip")->judge(facts, trace).front().result == Result::missing);
  CHECK_FALSE(has_step(trace, "mu_needed"));
  sweep_in(facts).slip = Ratio{0.1};
  sweep_in(facts).slip_at = 44.4 * deg;  // at no pose of the sweep: nothing to calculate it from
  CHECK(rule_named("turn-slip")->judge(facts, trace).front().result == Result::pass);
  CHECK_FALSE(has_step(trace, "mu_needed"));
}

TEST_CASE(
    "turn-slip off a table: picks inside the centre of gravity cannot take it up, past the balance nothing "
    "pulls") {
  TurnedSlab slab;
  take_off_a_table(slab, 80.0 * deg);
  auto spoilt = slab.facts();
  for (demands::HungLeg& leg : sweep_in(spoilt).piece.legs) leg.at.x = 1.0 * m;
  const Finding inside = of_piece("turn-slip", spoilt);
  CHECK(inside.result == Result::missing);
  CHECK_THAT(inside.text,
             Catch::StartsWith("the hook does not stand farther from the edge than the centre of gravity"));

  // The balance: atan(2.0 / 0.15) = 85.71 degrees.
  TurnedSlab past;
  take_off_a_table(past, 86.0 * deg);
  past.turn().to = 87.0 * deg;
  Trace trace = Trace::recording();
  const auto facts = past.facts();
  const Finding finding = rule_named("turn-slip")->judge(facts, trace).front();
  CHECK(finding.result == Result::pass);
  CHECK(si_number(*finding.demand) == 0.0);
  CHECK_FALSE(has_step(trace, "mu_needed"));
  past.turn().table_angle = 85.0 * deg;
  CHECK(si_number(*of_piece("turn-slip", past.facts()).demand) > 0.0);
}

TEST_CASE(
    "the legs carry a piece between the angle of its table and the end of the turn, whichever way it turns") {
  TurnedSlab slab;
  take_off_a_table(slab, 80.0 * deg);
  slab.turn().from = 85.0 * deg;
  slab.turn().to = 0.0 * deg;
  const TurnRange down = assessed(range_of(slab.stage()));
  CHECK(in(deg, down.low) == Approx(0.0));
  CHECK(in(deg, down.high) == Approx(80.0));
  CHECK(in(deg, start_of(slab.stage(), down)) == Approx(80.0));
  slab.turn().from = 0.0 * deg;
  slab.turn().to = 85.0 * deg;
  const TurnRange up = assessed(range_of(slab.stage()));
  CHECK(in(deg, up.low) == Approx(80.0));
  CHECK(in(deg, up.high) == Approx(85.0));
  CHECK(in(deg, start_of(slab.stage(), up)) == Approx(80.0));
  slab.turn().from = 10.0 * deg;
  slab.turn().table_angle = 12.0 * deg;
  slab.turn().to = 0.0 * deg;
  CHECK(why_not(range_of(slab.stage())) == "the table angle lies outside the turn");
  slab.turn().table_angle = 8.0 * deg;
  CHECK(in(deg, assessed(range_of(slab.stage())).low) == Approx(0.0));
  CHECK(in(deg, assessed(range_of(slab.stage())).high) == Approx(8.0));
}

TEST_CASE("angles in order: each once, the last of those that are nearly one, one alone, and none") {
  const auto degrees = [](std::vector<Angle> angles) {
    std::vector<double> all;
    for (const Angle& angle : in_order(std::move(angles))) all.push_back(in(deg, angle));
    return all;
  };
  CHECK(degrees({}).empty());
  for (const auto& one : {degrees({3.0 * deg}), degrees({3.0 * deg, 3.0001 * deg})}) {
    REQUIRE(one.size() == 1);
    CHECK(one[0] == Approx(3.0).epsilon(1e-12));
  }
  const auto two = degrees({45.0 * deg, 0.0 * deg, 44.9999 * deg});
  REQUIRE(two.size() == 2);
  CHECK(two[0] == 0.0);
  CHECK(two[1] == Approx(45.0).epsilon(1e-12));
  CHECK(degrees({0.0 * deg, 0.0011 * deg}).size() == 2);
}

TEST_CASE("a piece that stands on its head does not stand as the turn starts, though its face is level") {
  TurnedSlab slab;
  plan::Stage over = slab.stage();
  slab.turn().to = 180.0 * deg;
  over.turn->from = 0.0 * deg;
  slab.plan.stages.push_back(over);
  const auto facts = slab.facts(1);
  CHECK(assessed(up_before(slab.plan, slab.plan.stages[1], slab.body)).z == Approx(-1.0));
  CHECK(finding_for("rigging-statics", "two legs", facts).text ==
        "the piece does not stand at 0.0 deg before this stage");
}

TEST_CASE(
    "which way up: before a stage that is not of the plan all its turns count, two hooks need both "
    "riggings") {
  TurnedSlab slab;
  slab.facts();
  const plan::Stage elsewhere = slab.stage();
  const Direction up = assessed(up_before(slab.plan, elsewhere, slab.body));
  CHECK(up.z == Approx(std::sqrt(0.5)));
  CHECK(assessed(up_before(slab.plan, slab.stage(), slab.body)).z == 1.0);
  turn_between_hooks(slab);
  CHECK(is_assessed(frame_of(slab.plan, slab.stage(), slab.body)));
  slab.stage().rigging = "none";
  CHECK(why_not(frame_of(slab.plan, slab.stage(), slab.body)) == "a hook of the turn has no rigging");
}

TEST_CASE("the second crane of a turn: its share at the worst, and each thing that it needs") {
  TurnedSlab slab;
  turn_between_hooks(slab);
  auto facts = slab.facts();
  const auto second = [&](const StageFacts& of) { return crane_hook_load(of, cranes_of(of).back()); };
  REQUIRE(cranes_of(facts).size() == 2);
  // Half of the weight at 0 degrees and less from there on, with 0.5 kN of slings and 2 kN of block.
  const double crane_kN = in(kN, std::get<loads::StageLoad>(facts.load).crane_load);
  CHECK(in(kN, assessed(second(facts))) == Approx(0.5 * crane_kN + 2.5).epsilon(1e-3));
  facts.turning = NotAssessed{"the sweep is not known", "none"};
  CHECK(why_not(second(facts)) == "the sweep is not known");
  facts.turning.reset();
  CHECK(why_not(second(facts)) == how_is_missing);
  slab.turn().tail_rigging = "nobody's";
  CHECK(why_not(second(facts)) == "the second hook has no rigging");
  slab.turn().tail_rigging = "tail";
  slab.turn().tail_crane = "bay 3";
  CHECK(why_not(second(facts)) == "the crane of the second hook is not in the plan");
  slab.turn().tail_crane = "bay";
  CHECK(why_not(second(facts)) == "both hooks of the turn are the same crane");
}

TEST_CASE("the report of a turn: what the hook pulls at its worst, none without a load") {
  TurnedSlab slab;
  auto facts = slab.facts();
  Trace silent;
  const auto report = evaluate_stage(facts, silent);
  REQUIRE(report.turn);
  const double t = std::acos(-1.0) / 4.0;
  const double share = (2.0 * std::cos(t) - 0.15 * std::sin(t)) / (3.0 * std::cos(t) - 0.3 * std::sin(t));
  CHECK(in(kN, report.turn->pull) == Approx(share * turn_kN).epsilon(1e-6));
  CHECK(report.turn->how == "about its edge");
  facts.load = NotAssessed{"no load", "none"};
  CHECK_FALSE(evaluate_stage(facts, silent).turn);
}

TEST_CASE(
    "rigging-statics of a turn: the largest pull is calculated where a pose of the sweep has it and the hook "
    "holds") {
  TurnedSlab slab;
  auto facts = slab.facts();
  const auto told = [&] {
    Trace trace = Trace::recording();
    CHECK(rule_named("rigging-statics")->judge(facts, trace).front().result == Result::pass);
    return has_step(trace, "F_hook");
  };
  CHECK(told());
  TurnSweep& sweep = sweep_in(facts);
  const Angle worst = sweep.main.angle;
  sweep.main.angle = 44.4 * deg;
  CHECK_FALSE(told());
  sweep.main.angle = worst;
  for (demands::TurnPose& pose : sweep.poses) pose.slack = true;
  CHECK_FALSE(told());
}

TEST_CASE("what fails in a turn says at which angle: insert, rating and leg") {
  TurnedSlab slab;
  slab.plan.slings[0].rated = 1.0 * kN;
  const Finding leg = finding_for("sling-overload", "A2", slab.facts());
  CHECK(leg.result == Result::fail);
  CHECK_THAT(leg.text,
             Catch::Contains(", its tag says 1.00 kN, turned to ") && Catch::EndsWith("turned to 45.0 deg"));
  slab.rules.insert_factor.value = Ratio{1000.0};
  const Finding insert = finding_for("insert-breakout", "A2", slab.facts());
  CHECK(insert.result == Result::fail);
  CHECK_THAT(insert.text, Catch::Contains("nominal over 1000), turned to "));
  slab.plan.inserts[1] = rated_insert_at("A2", 3.0 * m, 0.5 * m);
  const Finding rated = finding_for("insert-rating", "A2", slab.facts());
  CHECK(rated.result == Result::fail);
  CHECK_THAT(rated.text, Catch::Contains(" is allowed at this strength, turned to "));
  slab.plan.inserts[1] = headed_insert_at("A2", 3.0 * m, 0.5 * m);
  slab.plan.inserts[1].kind = "loop-bar";
  slab.plan.inserts[1].loop = plan::Loop{};
  slab.plan.inserts[1].loop->diameter = 16.0 * mm;
  slab.plan.inserts[1].loop->leg_length = 250.0 * mm;
  for (const std::string_view rule : {"loop-bond", "loop-steel"}) {
    const Finding loop = finding_for(rule, "A2", slab.facts());
    CAPTURE(rule, loop.text);
    if (loop.result != Result::missing) CHECK_THAT(loop.text, Catch::Contains("turned to "));
  }
}
