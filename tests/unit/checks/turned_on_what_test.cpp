// Turns with what other tests of them leave out: equalised legs, loops, form parts that come off a table with the piece, and
// legs that pass near concrete in more than one attitude.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/piece_bending.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

// The slab turned about its edge at x = 0 by two inserts at x = 3 m.
struct TurnedOn {
  SlabLift lift;
  TurnedOn() { turn_about_edge(lift, 45.0 * deg); }
  plan::Turn& turn() { return *lift.stage().turn; }
  void off_a_table() { take_off_a_table(lift, 80.0 * deg); }
};

const TurnSweep& sweep_of(const StageFacts& facts) {
  REQUIRE(facts.turning);
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) FAIL(gap->why);
  return std::get<TurnSweep>(*facts.turning);
}

}  // namespace

TEST_CASE(
    "two legs of a turn that are one rope pull alike at every angle, with the insert of one of them aside") {
  TurnedOn slab;
  slab.lift.plan.inserts[1].at.y = 0.3 * m;
  slab.lift.plan.inserts[2].at.y = 1.6 * m;
  slab.lift.plan.riggings[1].equalised = {{{"A2", {}}, {"A3", {}}}};
  slab.lift.plan.riggings[1].equaliser_rated = 1000.0 * kN;
  const auto facts = slab.lift.facts();
  CHECK(sweep_of(facts).piece.equalised == std::vector<std::vector<std::size_t>>{{0, 1}});
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations))
    CHECK(in(kN, situation.legs[0].tension) == Approx(in(kN, situation.legs[1].tension)).epsilon(1e-6));
}

TEST_CASE("loops that turn a piece are judged at the angle of their most pull and of their most lean") {
  TurnedOn slab;
  for (const std::size_t i : {1U, 2U}) {
    plan::Insert& insert = slab.lift.plan.inserts[i];
    insert.kind = "loop-bar";
    insert.loop = plan::Loop{};
    insert.loop->diameter = 16.0 * mm;
    insert.loop->leg_length = 250.0 * mm;
  }
  const auto facts = slab.lift.facts();
  const auto& sweep = sweep_of(facts);
  const auto& felt = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  double told_N = 0.0, told_lean = 0.0, most_N = 0.0, most_lean = 0.0;
  for (const InsertSituation& situation : felt) {
    const auto& force = situation.forces[1];
    told_N = std::max(told_N, std::hypot(force.tension.value(), force.shear.value()));
    told_lean = std::max(told_lean, std::atan2(force.shear.value(), force.tension.value()));
  }
  for (int i = 0; i <= 450; ++i) {
    const auto pose = assessed(demands::turn_pose(sweep.piece, 0.1 * i * deg));
    const auto force = demands::insert_force(pose.sharings.front().legs[0], facts.body.sites[1]);
    most_N = std::max(most_N, std::hypot(force.tension.value(), force.shear.value()));
    most_lean = std::max(most_lean, std::atan2(force.shear.value(), force.tension.value()));
  }
  CHECK(told_N >= most_N * (1.0 - 1e-9));
  CHECK(told_lean >= most_lean * (1.0 - 1e-9));
  CHECK(told_lean <= most_lean * 1.001);
}

TEST_CASE("off a table with a form part that may be off by then, the piece hangs with it and without it") {
  TurnedOn slab;
  slab.off_a_table();
  const auto alone = slab.lift.facts();
  CHECK(sweep_of(alone).piece.method == plan::TurnMethod::table);
  CHECK(alone.without_parts.empty());
  slab.lift.plan.form->nothing_attached = false;
  slab.lift.plan.form->attached = {{.what = "former",
                                    .weight = 6.0 * kN,
                                    .at = Position{2.0 * m, 1.0 * m, 0.5 * m},
                                    .until = {},
                                    .place = {}}};
  plan::Stage before = slab.lift.stage();
  before.kind = plan::StageKind::yard;
  before.rigging = "four legs";
  before.turn.reset();
  slab.lift.plan.stages.insert(slab.lift.plan.stages.begin(), before);
  slab.lift.facts();
  Trace silent;
  const auto facts = stage_facts(slab.lift.plan, slab.lift.plan.stages[1], slab.lift.body,
                                 *slab.lift.prepared, slab.lift.rules, slab.lift.tables, silent);
  sweep_of(facts);
  REQUIRE_FALSE(facts.without_parts.empty());
  // With the part the load hangs beside mid-depth, where the inserts are: it leans; without it, it hangs upright.
  const auto& with = assessed(facts.hanging);
  CHECK(std::abs(with.up.z) > 0.01);
  CHECK(facts.without_parts.front().up.z == Approx(0.0).margin(1e-6));
  CHECK(finding_for("turn-release", "SL-1", facts).demand.has_value());
}

TEST_CASE("turn-slip off a table: the ground that is too smooth fails, one that is not known is missing") {
  TurnedOn slab;
  slab.off_a_table();
  const auto found = [&] { return finding_for("turn-slip", "SL-1", slab.lift.facts()); };
  const double needed = std::get<Ratio>(*found().demand).value();
  slab.turn().friction = Ratio{needed};
  CHECK(found().result == Result::pass);
  slab.turn().friction = Ratio{std::nextafter(needed, 0.0)};
  const Finding slides = found();
  CHECK(slides.result == Result::fail);
  CHECK_THAT(
      slides.text,
      Catch::StartsWith("the foot slides off the ledge of the table as the hook takes it up: it needs"));
  slab.turn().friction = Ratio{std::nan("")};
  CHECK(found().result == Result::missing);
  CHECK(found().remedy == "picks farther from the foot");
  slab.turn().friction.reset();
  slab.turn().ground.clear();
  CHECK(found().text == "what the foot of the piece stands on, on its table, is not in the plan");
  slab.turn().table_angle.reset();
  CHECK(found().text == "the angle at which the crane takes the piece off the table is not in the plan");
  slab.turn().table_angle = 80.0 * deg;
  auto facts = slab.lift.facts();
  facts.turning.reset();
  CHECK(finding_for("turn-slip", "SL-1", facts).result == Result::missing);
  CHECK(finding_for("turn-runaway", "SL-1", facts).result ==
        Result::pass);  // not about an edge on the ground
}

TEST_CASE("a turned panel whose bending is asked of a piece that is none, or of no load, is not assessed") {
  TurnedOn slab;
  slab.off_a_table();
  auto facts = slab.lift.facts();
  const Finding hung = finding_for("piece-cracking", "SL-1", facts);
  CHECK(hung.demand.has_value());
  auto unknown = std::get<std::vector<Situation>>(facts.gear_situations);
  for (Situation& situation : unknown)
    if (!situation.turning) situation.name = "swinging";
  facts.bending = std::make_shared<BendingMemo>();
  facts.gear_situations = unknown;
  CHECK(finding_for("piece-cracking", "SL-1", facts).text == "the loads of a situation are not known");
}
