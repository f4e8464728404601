// Situations of lifts and turns under load sets written by hand: sets that are none, that cannot be held,
// that grip; and the statics that stand between them and an answer.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/hung_rigging.hpp"
#include "checks/lift_situations.hpp"
#include "checks/turn_situations.hpp"
#include "demands/insert_force.hpp"
#include "demands/turning.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");

loads::StageLoad& load_of(StageFacts& facts) { return std::get<loads::StageLoad>(facts.load); }

loads::LoadSet set_at(const std::string& name, double x_m, Force force, double y_m = 1.0) {
  return {name, {{{x_m * m, y_m * m, 0.15 * m}, force}}, force};
}

std::vector<std::string> names_of(const StageFacts& facts) {
  std::vector<std::string> names;
  for (const Situation& each : assessed(facts.gear_situations)) names.push_back(each.name);
  return names;
}
bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

// What every part of a turn that is refused says.
std::string refused(const StageFacts& facts) {
  REQUIRE(facts.turning);
  const std::string why = why_not(*facts.turning);
  CHECK(why_not(facts.hanging) == why);
  CHECK(why_not(facts.gear_situations) == why);
  CHECK(why_not(facts.insert_situations) == why);
  return why;
}

// The slab turned about its edge at x = 0 by its inserts at x = 3 m, or off a table by inserts in its far
// edge.
struct Turned {
  SlabLift lift;
  std::optional<StageFacts> made;
  explicit Turned(Angle to = 45.0 * deg) { turn_about_edge(lift, to); }
  void off_a_table() {
    for (const std::size_t i : {1U, 2U})
      lift.plan.inserts[i].at.x = 4.0 * m, lift.plan.inserts[i].at.z = 150.0 * mm;
    lift.stage().turn->method = plan::TurnMethod::table;
    lift.stage().turn->to = 85.0 * deg;
    lift.stage().turn->table_angle = 80.0 * deg;
  }
  StageFacts& facts() {
    if (!made) made.emplace(lift.facts());
    return *made;
  }
  // The same facts, turned again under what the test made of its loads.
  StageFacts& again() {
    made->without_parts.clear();
    add_turn(*made);
    return *made;
  }
  const TurnSweep& sweep() { return std::get<TurnSweep>(*facts().turning); }
};

// A loop of a bar in place of each insert.
void with_loops(SlabLift& lift) {
  for (plan::Insert& insert : lift.plan.inserts) {
    insert.kind = "loop-bar";
    insert.loop = plan::Loop{};
    insert.loop->diameter = 16.0 * mm;
    insert.loop->leg_length = 250.0 * mm;
  }
}

}  // namespace

TEST_CASE("a turn under no load set of legs or of inserts is refused") {
  Turned slab;
  const loads::StageLoad whole = load_of(slab.facts());
  load_of(slab.facts()).gear_loads.clear();
  CHECK(refused(slab.again()) == "no load set acts in this stage");
  load_of(slab.facts()) = whole;
  load_of(slab.facts()).insert_loads.clear();
  CHECK(refused(slab.again()) == "no load set acts in this stage");
  load_of(slab.facts()) = whole;
  CHECK(is_assessed(slab.again().gear_situations));
}

TEST_CASE(
    "a turn in which one set of several lifts the piece off its edge is refused, of legs and of inserts") {
  // The picks stand at x = 3 m: a load beyond them cannot be held.
  const std::string leaves = "the hook does not stand farther from the edge than the centre of gravity";
  for (const bool loops : {false, true}) {
    Turned slab;
    if (loops) with_loops(slab.lift);
    const loads::StageLoad whole = load_of(slab.facts());
    load_of(slab.facts()).gear_loads.push_back(set_at("hanging without form parts", 2.8, 10.0 * kN));
    CHECK(is_assessed(slab.again().gear_situations));
    load_of(slab.facts()).gear_loads.back() = set_at("hanging without form parts", 3.2, 10.0 * kN);
    CHECK_THAT(refused(slab.again()), Catch::Contains(leaves));
    load_of(slab.facts()) = whole;
    load_of(slab.facts()).insert_loads.push_back(set_at("hanging without form parts", 3.2, 10.0 * kN));
    CHECK_THAT(refused(slab.again()), Catch::Contains(leaves));
  }
}

TEST_CASE("headed inserts are judged at the angle of their most tension under their own loads") {
  Turned slab(40.0 * deg);
  for (const std::size_t i : {1U, 2U})
    slab.lift.plan.inserts[i].at.x = 4.0 * m, slab.lift.plan.inserts[i].at.z = 150.0 * mm;  // in the far edge
  // Over the edge at 45 degrees: V = F (cos t - sin t)/(4 cos t - 0.15 sin t), of which V sin t pulls the
  // inserts out. The loads of the legs have their most at another angle, tension and shear together too.
  loads::LoadSet set = set_at("hanging", 1.0, 300.0 * kN);
  set.loads[0].at.z = 1.0 * m;
  load_of(slab.facts()).insert_loads = {set};
  const auto& facts = slab.again();
  demands::TurnedPiece piece = slab.sweep().piece;
  piece.loads = set.loads;
  double told_N = 0.0, most_N = 0.0;
  for (const InsertSituation& situation : std::get<std::vector<InsertSituation>>(facts.insert_situations))
    told_N = std::max(told_N, situation.forces[1].tension.value());
  for (int i = 0; i <= 4000; ++i) {
    const auto pose = assessed(demands::turn_pose(piece, 0.01 * i * deg));
    const auto force = demands::insert_force(pose.sharings.front().legs[0], facts.body.sites[1]);
    most_N = std::max(most_N, force.tension.value());
  }
  CHECK(most_N > 5e3);
  CHECK(told_N >= most_N * (1.0 - 1e-9));
  CHECK(told_N <= most_N * (1.0 + 1e-6));
}

TEST_CASE(
    "inserts that would be pressed into the concrete as it comes off a table are told, headed or loops") {
  for (const bool loops : {false, true}) {
    Turned slab;
    slab.off_a_table();
    for (const std::size_t i : {1U, 2U})  // in the face that looks down
      slab.lift.plan.inserts[i].at = {3.5 * m, slab.lift.plan.inserts[i].at.y, 0.0 * m};
    if (loops) with_loops(slab.lift);
    const StageFacts& facts = slab.facts();
    CHECK(is_assessed(facts.gear_situations));
    CHECK_THAT(why_not(facts.insert_situations),
               Catch::StartsWith("the leg to A2 would run into the concrete"));
    CHECK(finding_for("rigging-statics", "two legs", facts).result == Result::missing);
  }
}

TEST_CASE(
    "loops on a piece that falls over its edge: what pulls nothing past its balance counts for nothing") {
  Turned slab(90.0 * deg);
  for (const std::size_t i : {1U, 2U})
    slab.lift.plan.inserts[i].at = {4.0 * m, slab.lift.plan.inserts[i].at.y, 0.15 * m};
  with_loops(slab.lift);
  const StageFacts& facts = slab.facts();
  const TurnSweep& sweep = slab.sweep();
  REQUIRE(std::ranges::any_of(sweep.poses, &demands::TurnPose::slack));
  // x = 2 cos t - 0.15 sin t: balanced at atan(2/0.15).
  CHECK(in(deg, sweep.balance) == Approx(std::atan2(2.0, 0.15) * 180.0 / M_PI));
  double most_kN = 0.0;
  for (const InsertSituation& each : assessed(facts.insert_situations))
    most_kN = std::max(most_kN, std::hypot(in(kN, each.forces[1].tension), in(kN, each.forces[1].shear)));
  const double weight_kN = 1.2 * 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;
  // Two legs that lean by asin(0.5/2.5), half of the weight as it lies; never all of it on one.
  CHECK(most_kN >= weight_kN / 2.0 / 2.0 / std::sqrt(1.0 - 0.04) * (1.0 - 1e-9));
  CHECK(most_kN < weight_kN);
}

TEST_CASE("off a table: a set that grips counts as it comes free, and does not hang") {
  Turned slab;
  slab.off_a_table();
  const auto names = names_of(slab.facts());
  CHECK(has(names, "hanging"));
  CHECK(has(names, "turned to 80.0 deg"));
  loads::LoadSet gripped = load_of(slab.facts()).gear_loads.front();
  gripped.name = "breaking free";
  gripped.loads.push_back({{2.0 * m, 1.0 * m, 0.0 * m}, 10.0 * kN});
  gripped.total += 10.0 * kN;
  load_of(slab.facts()).gear_loads.push_back(gripped);
  const auto more = names_of(slab.again());
  CHECK(has(more, "turned to 80.0 deg, breaking free"));
  CHECK_FALSE(has(more, "turned to 85.0 deg, breaking free"));
  CHECK_FALSE(has(more, "breaking free"));
  CHECK(more.size() == names.size() + 1);
}

TEST_CASE("off a table: a piece whose hanging is not computed is refused, of legs and of inserts") {
  Turned slab;
  slab.off_a_table();
  slab.lift.plan.slings.front().size = 16.0 * mm;
  slab.lift.tables.slings.at("chain").axial_modulus = made("axial_modulus", Stress{60000.0 * MPa});
  const auto names = names_of(slab.facts());
  CHECK(has(names, "hanging, legs nearly rigid"));
  load_of(slab.facts()).insert_loads.front().total = not_a_number * kN;
  const std::string of_inserts = refused(slab.again());
  CHECK_FALSE(of_inserts.empty());
  load_of(slab.facts()).insert_loads.front().total = load_of(slab.facts()).gear_loads.front().total;
  CHECK(is_assessed(slab.again().gear_situations));
  slab.lift.rules.leg_stiffness_ratio.value = Ratio{not_a_number};
  CHECK(refused(slab.again()) == of_inserts);
}

TEST_CASE("while the form grips, a hook of two may have more of the load than at any angle later") {
  Turned slab;
  plan::Rigging tail;
  tail.id = "tail";
  tail.legs = {leg_to("A1"), leg_to("A4")};
  tail.weight = 0.5 * kN;
  slab.lift.plan.riggings.push_back(tail);
  slab.lift.stage().turn->method = plan::TurnMethod::two_hooks;
  slab.lift.stage().turn->about.reset();
  slab.lift.stage().turn->tail_rigging = "tail";
  const double main = slab.sweep().main.share, end = 45.0;
  CHECK(slab.sweep().tail.share == Approx(0.5));
  CHECK(main > 0.5);
  CHECK(in(deg, slab.sweep().main.angle) == Approx(end));
  const Force W = load_of(slab.facts()).gear_loads.front().total;
  const auto with_grip_at = [&](double x_m) {
    auto& sets = load_of(slab.facts()).gear_loads;
    sets.resize(1);
    loads::LoadSet gripped = sets.front();
    gripped.name = "breaking free";
    gripped.loads.push_back({{x_m * m, 1.0 * m, 0.15 * m}, W});
    gripped.total += W;
    sets.push_back(gripped);
    slab.again();
    return slab.sweep();
  };
  // Picks at 1 m and 3 m; weight and grip W each: tail (0.5 + (3 - x)/2) of 2 W, main (0.5 + (x - 1)/2) of W.
  const TurnSweep towards_tail = with_grip_at(1.0);
  CHECK(towards_tail.tail.share == Approx(0.75));
  CHECK(towards_tail.tail.angle == Angle{});
  CHECK(towards_tail.main.share == Approx(main));
  const TurnSweep towards_main = with_grip_at(2.5);
  CHECK(towards_main.tail.share == Approx(0.5));
  CHECK(towards_main.main.share == Approx(1.25));
  CHECK(towards_main.main.angle == Angle{});
}

TEST_CASE("a lift under no load set hangs nowhere, inserts without one feel nothing that is known") {
  SlabLift lift;
  auto facts = lift.facts();
  const loads::StageLoad whole = load_of(facts);
  load_of(facts).gear_loads.clear();
  add_lift(facts);
  CHECK(why_not(facts.hanging) == "no load set acts in this stage");
  CHECK(why_not(facts.gear_situations) == "no load set acts in this stage");
  CHECK(is_assessed(facts.insert_situations));
  load_of(facts) = whole;
  load_of(facts).insert_loads.clear();
  add_lift(facts);
  CHECK(is_assessed(facts.hanging));
  CHECK(why_not(facts.insert_situations) == "no load set acts in this stage");
}

TEST_CASE(
    "a lift: a set of the inserts that has the name of the legs' and other loads is computed for itself") {
  SlabLift lift;
  auto facts = lift.facts();
  auto& load = load_of(facts);
  load.gear_loads.resize(1);
  load.insert_loads = load.gear_loads;
  add_lift(facts);
  const double one = in(kN, assessed(facts.insert_situations).front().forces[0].tension);
  load.insert_loads.front().loads[0].force *= 2.0;
  load.insert_loads.front().total *= 2.0;
  add_lift(facts);
  CHECK(in(kN, assessed(facts.insert_situations).front().forces[0].tension) ==
        Approx(2.0 * one).epsilon(1e-3));
}

TEST_CASE(
    "a lift that hangs with a form part and not without it is not assessed, nothing is drawn of the latter") {
  SlabLift lift;
  auto facts = lift.facts();
  auto& load = load_of(facts);
  load.gear_loads.resize(1);
  loads::LoadSet without = load.gear_loads.front();
  without.name = "hanging without form parts";
  load.gear_loads.push_back(without);
  add_lift(facts);
  CHECK(facts.without_parts.size() == 1);
  CHECK(is_assessed(facts.gear_situations));
  facts.without_parts.clear();
  load.gear_loads.back().loads[0].force = not_a_number * kN;
  add_lift(facts);
  CHECK(facts.without_parts.empty());
  CHECK(is_assessed(facts.hanging));
  CHECK_FALSE(is_assessed(facts.gear_situations));
}

TEST_CASE("a lift: what keeps the sharing between its legs from being known, each with its words") {
  SlabLift lift;
  SECTION("a tolerance of the lengths that is no share") {
    lift.plan.riggings[0].length_tolerance = Ratio{1.0};
    CHECK(why_not(lift.facts().gear_situations) == "the tolerance of the leg lengths is not a share");
    lift.plan.riggings[0].length_tolerance = Ratio{0.01};
    CHECK(has(names_of(lift.facts()), "hanging, short: A3"));
  }
  SECTION("nearly rigid legs of no known stiffness") {
    lift.plan.slings.front().size = 16.0 * mm;
    lift.tables.slings.at("chain").axial_modulus = made("axial_modulus", Stress{60000.0 * MPa});
    CHECK(has(names_of(lift.facts()), "hanging, legs nearly rigid"));
    lift.rules.leg_stiffness_ratio.value = Ratio{not_a_number};
    CHECK_FALSE(is_assessed(lift.facts().gear_situations));
    lift.plan.slings.front().axial_stiffness = 10000.0 * kN;  // stated: no leg is taken as nearly rigid
    CHECK(is_assessed(lift.facts().gear_situations));
    CHECK_FALSE(has(names_of(lift.facts()), "hanging, legs nearly rigid"));
  }
  SECTION("a leg that does not pull upwards") {
    plan::Solid post = lift.plan.piece.solids[0];
    post.name = "post";
    post.at = {1.4 * m, 0.6 * m, 0.3 * m};
    post.size = {0.2 * m, 0.2 * m, 3.0 * m};
    lift.plan.piece.solids.push_back(post);
    lift.plan.piece.stated_weight.reset();
    lift.plan.riggings[0].equalised.clear();
    lift.plan.inserts[2].at = {1.5 * m, 0.7 * m, 3.3 * m};  // above the hook
    lift.plan.riggings[0].legs[2].length = 6.0 * m;
    const auto facts = lift.facts();
    CHECK_THAT(why_not(facts.gear_situations), Catch::StartsWith("the leg to A3 does not pull upwards"));
    CHECK(finding_for("rigging-statics", "four legs", facts).result == Result::missing);
  }
}

TEST_CASE(
    "out of the form by a yard lift, the drawing's strengths for both must be there: the larger counts") {
  SlabLift lift;
  lift.stage().kind = plan::StageKind::yard;
  lift.plan.concrete.form_stripping_strength = 2500.0 * psi;
  lift.plan.concrete.lifting_strength = 3000.0 * psi;
  const auto required_psi = [&] { return in(psi, assessed(lift.facts().required_strength)); };
  CHECK(required_psi() == Approx(3000.0));
  lift.plan.concrete.form_stripping_strength = 3500.0 * psi;
  CHECK(required_psi() == Approx(3500.0));
  lift.plan.concrete.lifting_strength.reset();
  CHECK_THAT(why_not(lift.facts().required_strength), Catch::Contains("the stage 'yard'"));
  lift.plan.concrete.lifting_strength = 3000.0 * psi;
  lift.plan.concrete.form_stripping_strength.reset();
  CHECK_THAT(why_not(lift.facts().required_strength), Catch::Contains("the stage 'strip'"));
}

TEST_CASE(
    "stiffness of legs: as stated, by size where the table knows the kind, else nearly rigid, all but stated "
    "ones") {
  SlabLift lift;
  plan::Sling stated = lift.plan.slings.front(), sized = stated, unknown = stated;
  stated.id = "stated", stated.axial_stiffness = 5000.0 * kN;
  sized.id = "sized", sized.size = 16.0 * mm;
  unknown.id = "unknown", unknown.size = 16.0 * mm, unknown.kind = "rope of straw";
  lift.plan.slings = {stated, sized, unknown};
  plan::Rigging& rigging = lift.plan.riggings.front();
  rigging.legs[0].gear = "stated", rigging.legs[1].gear = "sized", rigging.legs[2].gear = "unknown";
  rigging.legs[3].gear.clear();
  const loads::LoadSet set = set_at("hanging", 2.0, 60.0 * kN);
  const auto hung = [&] { return assessed(hung_piece(lift.plan, &rigging, set, lift.rules, lift.tables)); };
  const auto kN_of = [](const demands::HungPiece& piece) {
    std::vector<double> all;
    for (const demands::HungLeg& leg : piece.legs) all.push_back(std::round(in(kN, leg.axial_stiffness)));
    return all;
  };
  // E A = 60 GPa x 16 mm x 16 mm; nearly rigid: a thousand times the load.
  CHECK(kN_of(hung()) == std::vector<double>{5000.0, 60000.0, 60000.0, 60000.0});
  CHECK_FALSE(has_stiffness_by_size(lift.plan, rigging, lift.tables));
  lift.tables.slings.at("chain").axial_modulus = made("axial_modulus", Stress{60000.0 * MPa});
  CHECK(kN_of(hung()) == std::vector<double>{5000.0, 15360.0, 60000.0, 60000.0});
  CHECK(has_stiffness_by_size(lift.plan, rigging, lift.tables));
  CHECK(kN_of(on_nearly_rigid_legs(hung(), lift.plan, rigging, set, lift.rules)) ==
        std::vector<double>{5000.0, 60000.0, 60000.0, 60000.0});
}
