// point-loss: what falls when one rope lets go, and what the others then carry.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "checks/evaluate.hpp"
#include "checks/lost_points.hpp"
#include "checks/rigging_without.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

plan::Leg leg_between(const std::string& from, const std::string& to) {
  plan::Leg leg = leg_to(to);
  leg.from = from;
  return leg;
}

std::vector<std::string> ends_of(const plan::Rigging& rigging) {
  std::vector<std::string> ends;
  for (const plan::Leg& leg : rigging.legs) ends.push_back(leg.to);
  return ends;
}

using Ends = std::vector<std::string>;

plan::Rigging beam_over_two() {
  plan::Beam beam;
  beam.id = "spreader";
  beam.weight = 0.5 * kN;
  beam.points = {{"up-1", {-0.5 * m, 0.0 * m, 0.1 * m}, {}}, {"up-2", {0.5 * m, 0.0 * m, 0.1 * m}, {}},
                 {"low-1", {-1.0 * m, 0.0 * m, -0.1 * m}, {}}, {"low-2", {1.0 * m, 0.0 * m, -0.1 * m}, {}}};
  plan::Rigging rigging;
  rigging.id = "below a beam";
  rigging.beams = {beam};
  rigging.legs = {leg_to("up-1"), leg_to("up-2"), leg_between("low-1", "A1"), leg_between("low-2", "A2")};
  return rigging;
}

plan::Rigging sheave_and_a_leg() {
  plan::Sheave sheave;
  sheave.id = "roller";
  sheave.weight = 0.1 * kN;
  plan::Rigging rigging;
  rigging.id = "below a sheave";
  rigging.sheaves = {sheave};
  rigging.legs = {leg_to("roller"), leg_between("roller", "A1"), leg_between("roller", "A2"), leg_to("A3")};
  return rigging;
}

// Two legs to opposite corners, inserts rated by their supplier. 2.4 m3 x 2400 kg/m3 x 1.03 x 9.80665 m/s2.
struct TwoLegs : SlabLift {
  TwoLegs() {
    plan.riggings[0].equalised.clear();
    plan.riggings[0].legs = {leg_to("A1"), leg_to("A3")};
    plan.inserts = {rated_insert_at("A1", 1.0 * m, 0.5 * m), rated_insert_at("A3", 3.0 * m, 1.5 * m)};
  }
  double weight_kN = 2.4 * 2400.0 * 1.03 * 9.80665 / 1000.0;
  // The pick that is left is 1 m and 0.5 m aside of the centre of gravity and 0.15 m over it: it comes above it, and a
  // pendulum let go there pulls 3 - 2 cos(theta) times its weight at the lowest point.
  double swing = std::atan2(std::hypot(1.0, 0.5), 0.15);
  double n_swing = 3.0 - 2.0 * 0.15 / std::sqrt(1.0 + 0.25 + 0.0225);
};

}  // namespace

TEST_CASE("legs of one rope let go together, every other leg by itself") {
  SlabLift lift;
  using Ropes = std::vector<std::vector<std::size_t>>;
  CHECK(ropes_of(lift.plan.riggings[0]) == Ropes{{0, 1}, {2}, {3}});
  CHECK(ropes_of(sheave_and_a_leg()) == Ropes{{0}, {1, 2}, {3}});
  CHECK(ropes_of(beam_over_two()) == Ropes{{0}, {1}, {2}, {3}});
}

TEST_CASE("what falls with a leg: its rope, what hung on it, what it alone carried") {
  const plan::Rigging beam = beam_over_two();
  CHECK(ends_of(rigging_without(beam, {2})) == Ends{"up-1", "up-2", "A2"});
  CHECK(rigging_without(beam, {2}).beams.size() == 1);
  CHECK(ends_of(rigging_without(beam, {0})) == Ends{"up-2", "A1", "A2"});
  CHECK(ends_of(rigging_without(beam, {0, 1})).empty());
  CHECK(rigging_without(beam, {0, 1}).beams.empty());
  CHECK(ends_of(rigging_without(beam, {2, 3})).empty());

  const plan::Rigging sheave = sheave_and_a_leg();
  CHECK(ends_of(rigging_without(sheave, {0})) == Ends{"A3"});
  CHECK(ends_of(rigging_without(sheave, {1})) == Ends{"A3"});
  CHECK(rigging_without(sheave, {1}).sheaves.empty());
  CHECK(ends_of(rigging_without(sheave, {3})) == Ends{"roller", "A1", "A2"});

  SlabLift lift;
  const plan::Rigging left = rigging_without(lift.plan.riggings[0], {0, 1});
  CHECK(ends_of(left) == Ends{"A3", "A4"});
  CHECK(left.equalised.empty());
}

TEST_CASE("a rope that loses a sheave at one end runs out with all it carried") {
  plan::Rigging rigging = sheave_and_a_leg();
  rigging.sheaves.push_back(rigging.sheaves[0]);
  rigging.sheaves[1].id = "upper";
  rigging.legs = {leg_to("upper"), leg_between("upper", "roller"), leg_between("upper", "A3"),
                  leg_between("roller", "A1"), leg_between("roller", "A2"), leg_to("A4")};
  CHECK(ends_of(rigging_without(rigging, {3})) == Ends{"A4"});
}

TEST_CASE("without one of two legs the other carries all of it at once") {
  TwoLegs lift;
  const auto losses = lost_points(lift.facts());
  REQUIRE(losses.size() == 2);
  CHECK(losses[0].lost == "A1");
  CHECK(losses[0].survivor == "A3");
  CHECK(losses[0].rule == "insert-rating");
  CHECK(losses[0].use.value() == Approx(lift.n_swing * lift.weight_kN / (4.0 * 30.0)).epsilon(1e-9));
  CHECK(losses[0].swing.value().value() == Approx(lift.swing).epsilon(1e-9));
  REQUIRE(losses[0].legs.size() == 1);
  CHECK(losses[0].legs[0].to == "A3");
  CHECK(in(kN, losses[0].legs[0].tension) == Approx(lift.n_swing * lift.weight_kN).epsilon(1e-9));
  CHECK(losses[1].lost == "A3");
  CHECK(losses[1].survivor == "A1");
  CHECK(in_words(losses[0], UnitSystem::si) ==
        "without A1, A3 is asked for 1.33 of what breaks it (insert-rating), and the piece swings by 82.4 deg");
}

TEST_CASE("a piece that hardly swings is caught at once: the step factor of the rule set") {
  TwoLegs lift;  // the picks nearly over the centre of gravity: 0.1 m aside, 0.15 m above it: 33.7 degrees
  lift.plan.inserts = {rated_insert_at("A1", 1.9 * m, 1.0 * m), rated_insert_at("A3", 2.1 * m, 1.0 * m)};
  const PointLoss loss = lost_points(lift.facts()).at(0);
  CHECK(loss.use.value() == Approx(2.0 * lift.weight_kN / (4.0 * 30.0)).epsilon(1e-9));
  CHECK(loss.swing.value().value() == Approx(std::atan2(0.1, 0.15)).epsilon(1e-9));
}

TEST_CASE("under a spreader the piece may spin on the one leg that is left: its load is told") {
  SlabLift lift;
  lift.plan.inserts = {rated_insert_at("A1", 1.0 * m, 1.0 * m), rated_insert_at("A2", 3.0 * m, 1.0 * m)};
  lift.plan.riggings[0] = beam_over_two();
  lift.plan.riggings[0].id = lift.stage().rigging;
  lift.plan.riggings[0].beams[0].rated = 100.0 * kN;
  lift.plan.riggings[0].weight = 0.2 * kN;
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg = [&] {
    plan::Leg known = leg_to(leg.to);
    known.from = leg.from;
    return known;
  }();
  const auto losses = lost_points(lift.facts());
  REQUIRE(losses.size() == 4);
  const auto without = [&](const std::string& lost) {
    return *std::ranges::find_if(losses, [&](const PointLoss& loss) { return loss.lost == lost; });
  };
  CAPTURE(without("A1").why);
  REQUIRE(without("A1").swing);
  // 2.4 m3 on one pick: it comes over the centre of gravity, 1 m aside and 0.15 m below it.
  CHECK(without("A1").swing->value() == Approx(std::atan2(1.0, 0.15)).epsilon(1e-6));
  const auto& legs = without("A1").legs;
  const auto left = std::ranges::find(legs, "A2", &LegReport::to);
  REQUIRE(left != legs.end());
  const double weight_kN = 2.4 * 2400.0 * 1.03 * 9.80665 / 1000.0;
  CHECK(in(kN, left->tension) == Approx((3.0 - 2.0 * 0.15 / std::hypot(1.0, 0.15)) * weight_kN).epsilon(1e-6));
}

TEST_CASE("a dynamic factor larger than the step takes its place") {
  TwoLegs lift;
  lift.stage().dynamic_factor = Ratio{3.0};
  CHECK(lost_points(lift.facts()).at(0).use.value() == Approx(3.0 * lift.weight_kN / 120.0).epsilon(1e-9));
}

TEST_CASE("the weight of the loss is the rule set's choice: report, hold, refuse") {
  TwoLegs lift;
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->load = 20.0 * kN;  // 2.73 W over 80 kN
  const auto finding_in = [&](tables::LossOfAPoint weight) {
    lift.rules.loss_of_a_point.value = weight;
    StageFacts facts = lift.facts();
    facts.tells_losses = true;
    return finding_for("point-loss", "four legs", facts);
  };
  CHECK(finding_in(tables::LossOfAPoint::report).result == Result::note);
  CHECK(finding_in(tables::LossOfAPoint::hold).result == Result::missing);
  const Finding refused = finding_in(tables::LossOfAPoint::refuse);
  CHECK(refused.result == Result::fail);
  check_says_why(refused);
  // Nobody asks for the report: only a rule set that decides by it pays for it.
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::report;
  CHECK(finding_for("point-loss", "four legs", lift.facts()).result == Result::pass);
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::refuse;
  CHECK(finding_for("point-loss", "four legs", lift.facts()).result == Result::fail);
}

TEST_CASE("point-loss: what is asked just what breaks it still holds, a little more does not") {
  TwoLegs lift;
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::refuse;
  const auto with_rating = [&](double load_kN) {
    for (plan::Insert& insert : lift.plan.inserts) insert.rating->load = load_kN * kN;
    return finding_for("point-loss", "four legs", lift.facts()).result;
  };
  const double even = lift.n_swing * lift.weight_kN / 4.0;
  CHECK(with_rating(even * (1.0 + 1e-9)) == Result::pass);
  CHECK(with_rating(even * (1.0 - 1e-9)) == Result::fail);
}

TEST_CASE("point-loss: one leg alone, no strength and no load are not survived by default") {
  TwoLegs lift;
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::refuse;
  SECTION("one leg") { lift.plan.riggings[0].legs.resize(1); }
  SECTION("no strength") { lift.plan.concrete.evidence.reset(); }
  SECTION("no load") { lift.plan.concrete.density_tolerance.reset(); }
  SECTION("no hardware") { lift.leg(1).hardware = ""; }
  const Finding finding = finding_for("point-loss", "four legs", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("the report tells every loss, the worst first, and claims none of a turn without its facts") {
  TwoLegs lift;
  Trace silent;
  StageFacts facts = lift.facts();
  CHECK(evaluate_stage(facts, silent).losses.empty());
  facts.tells_losses = true;
  lift.plan.inserts[1].rating->load = 20.0 * kN;
  const StageReport report = evaluate_stage(facts, silent);
  REQUIRE(report.losses.size() == 2);
  CHECK(report.losses[0].survivor == "A3");
  CHECK(report.losses[0].use.value() > report.losses[1].use.value());
  lift.stage().kind = plan::StageKind::turn;
  for (const PointLoss& loss : lost_points(lift.facts())) CHECK_FALSE(loss.use);
  CHECK(finding_for("point-loss", "four legs", lift.facts()).result == Result::pass);
}

namespace {

// The slab turned by 30 degrees about its edge at x = 0, on rated inserts of 4 x 30 kN at x = 3 m and these y, one hook.
void turn_about_the_edge(SlabLift& lift, const std::vector<double>& y_m) {
  plan::Rigging& rigging = lift.plan.riggings[0];
  rigging.equalised.clear();
  rigging.legs.clear();
  lift.plan.inserts.clear();
  for (std::size_t i = 0; i < y_m.size(); ++i) {
    lift.plan.inserts.push_back(rated_insert_at("P" + std::to_string(i + 1), 3.0 * m, y_m[i] * m));
    rigging.legs.push_back(leg_to(lift.plan.inserts.back().id));
    const double aside_m = y_m[i] - 1.0;
    rigging.legs.back().length = std::sqrt(2.5 * 2.5 - 0.6 * 0.6 + aside_m * aside_m) * m;  // all meet 2.427 m up
  }
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  plan::Turn turn;
  turn.method = plan::TurnMethod::edge;
  turn.about = {Position{}, Position{0.0 * m, 2.0 * m, 0.0 * m}};
  turn.to = 30.0 * deg;
  turn.ground = "yard";
  turn.procedure = "TP-1";
  lift.stage().kind = plan::StageKind::turn;
  lift.stage().turn = turn;
  lift.stage().dynamic_factor = Ratio{1.2};
}

}  // namespace

TEST_CASE("point-loss in a turn: with one of the two picks of an edge the piece falls, whatever they are rated for") {
  SlabLift lift;
  turn_about_the_edge(lift, {0.4, 1.6});
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->load = 3000.0 * kN;
  const StageFacts facts = lift.facts();
  REQUIRE(facts.turning);
  REQUIRE(is_assessed(*facts.turning));
  const auto losses = lost_points(facts);
  REQUIRE(losses.size() == 2);
  for (const PointLoss& loss : losses) {
    CHECK_FALSE(loss.use);
    CHECK(loss.why.find("the piece falls") != std::string::npos);
  }
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::hold;
  const Finding held = finding_for("point-loss", "four legs", lift.facts());
  CHECK(held.result == Result::missing);
  check_says_why(held);
}

TEST_CASE("point-loss in a turn: two picks that are left share what the hook holds at the worst angle") {
  SlabLift lift;
  turn_about_the_edge(lift, {0.4, 1.0, 1.6});
  const auto losses = lost_points(lift.facts());
  REQUIRE(losses.size() == 3);
  const PointLoss& middle = losses[1];
  INFO(middle.why);
  CHECK(middle.lost == "P2");
  // F x_hook = W x about the edge: x = 2 cos t - 0.15 sin t, x_hook = 3 cos t - 0.3 sin t; their ratio grows with t to 30
  // degrees. n_step = 2, each leg leans 0.6 m on 2.5 m, and 4 x 30 kN breaks an insert.
  const double cos_t = std::cos(std::acos(-1.0) / 6.0), sin_t = 0.5;
  const double weight_kN = 2.4 * 2400.0 * 1.03 * 9.80665 / 1000.0;
  const double pull_kN = weight_kN * (2.0 * cos_t - 0.15 * sin_t) / (3.0 * cos_t - 0.3 * sin_t);
  const double leg_kN = 2.0 * pull_kN / 2.0 / std::sqrt(1.0 - 0.24 * 0.24);
  REQUIRE(middle.use);
  CHECK(middle.rule == "insert-rating");
  CHECK(*middle.use == Approx(leg_kN / 120.0).epsilon(1e-6));
  CHECK(middle.when.find("turned to 30") != std::string::npos);
  CHECK(in_words(middle, UnitSystem::si).find("turned to 30") != std::string::npos);
}

TEST_CASE("point-loss in a turn that is not assessed: another rule says why, nothing is claimed") {
  SlabLift lift;
  turn_about_the_edge(lift, {0.4, 1.6});
  lift.stage().turn->method.reset();
  for (const PointLoss& loss : lost_points(lift.facts())) CHECK_FALSE(loss.use);
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::hold;
  CHECK(finding_for("point-loss", "four legs", lift.facts()).result == Result::missing);
}
