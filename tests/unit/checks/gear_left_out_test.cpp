// Stages whose gear the plan leaves out in part: no rigging, a sling of no kind, a hook that is not there,
// no form.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/bending_multiplier.hpp"
#include "checks/evaluate.hpp"
#include "checks/hung_rigging.hpp"
#include "checks/loop_pull.hpp"
#include "checks/lost_points.hpp"
#include "checks/verdict.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");

Finding of(std::string_view rule, const StageFacts& facts) { return finding_for(rule, "four legs", facts); }

plan::Attached part(const std::string& what, std::optional<Position> at) {
  return {.what = what, .weight = 1.0 * kN, .at = at, .until = {}, .place = {}};
}

std::vector<std::string> subjects(Scope scope, const StageFacts& facts) { return subjects_of(scope, facts); }

}  // namespace

TEST_CASE("without rigging: what needs it is missing, what asks for its parts has no subject") {
  SlabLift lift;
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::hold;
  auto facts = lift.facts();
  facts.rigging = nullptr;
  for (const std::string_view rule : {"point-loss", "leg-clearance", "pick-count"}) {
    CHECK(of(rule, facts).result == Result::missing);
    CHECK(of(rule, facts).text == "the stage names no rigging");
  }
  for (const Scope scope : {Scope::leg, Scope::beam, Scope::sheave}) CHECK(subjects(scope, facts).empty());
  CHECK(subjects(Scope::gear, facts) == std::vector<std::string>{"bay"});
  CHECK(finding_for("gear-inspection", "bay", facts).result == Result::pass);
  CHECK(of("leg-skew", facts).result == Result::pass);
  CHECK(judged("hanging-tilt", facts).size() == 1);  // of the piece, no beam
  CHECK(lost_points(facts).empty());
  lift.stage().rigging.clear();
  Trace silent;
  const StageReport report = evaluate_stage(lift.facts(), silent);
  CHECK(report.legs.empty());
  CHECK(report.verdict == Verdict::hold);
  CHECK(report.hook == std::nullopt);
}

TEST_CASE(
    "hanging-tilt: too far out of level without a rigging names no sheaves, a beam of no known tilt has no "
    "finding") {
  SlabLift lift;
  auto facts = lift.facts();
  auto& hanging = std::get<demands::Hanging>(facts.hanging);
  hanging.tilt = 6.0 * deg;
  CHECK_THAT(of("hanging-tilt", facts).remedy, Catch::StartsWith("fewer equalised legs"));
  plan::Rigging with_beam = *facts.rigging;
  plan::Beam beam;
  beam.id = "spreader";
  with_beam.beams = {beam};
  facts.rigging = &with_beam;
  CHECK(judged("hanging-tilt", facts).size() == 1);
  CHECK(subjects(Scope::beam, facts) ==
        std::vector<std::string>{"spreader"});  // so that the guard finds the gap
  facts.rigging = nullptr;
  CHECK(of("hanging-tilt", facts).remedy == "legs that bring the hook over the centre of gravity");
}

TEST_CASE("one leg in a group of one rope is no sheave at the hook, two are") {
  SlabLift lift;
  CHECK(subjects(Scope::sheave, lift.facts()) == std::vector<std::string>{"over A1 and A2"});
  lift.plan.riggings[0].equalised[0].resize(1);
  CHECK(subjects(Scope::sheave, lift.facts()).empty());
}

TEST_CASE("point-loss: a rigging without legs has no point that could let go") {
  SlabLift lift;
  lift.rules.loss_of_a_point.value = tables::LossOfAPoint::hold;
  auto facts = lift.facts();
  plan::Rigging bare = *facts.rigging;
  bare.legs.clear();
  bare.equalised.clear();
  facts.rigging = &bare;
  CHECK(of("point-loss", facts).result == Result::missing);
  CHECK(of("point-loss", facts).text == "the rigging has no leg");
}

TEST_CASE("a loss that swings the piece by two degrees or less is told without its swing") {
  PointLoss loss{.lost = "A1"};
  loss.why = "nothing else holds the piece";
  loss.swing = 2.0 * deg;
  CHECK(in_words(loss, UnitSystem::si) == "without A1: nothing else holds the piece");
  loss.swing = 2.1 * deg;
  CHECK(in_words(loss, UnitSystem::si) ==
        "without A1: nothing else holds the piece, and the piece swings by 2.1 deg");
  loss.swing.reset();
  CHECK(in_words(loss, UnitSystem::si) == "without A1: nothing else holds the piece");
}

TEST_CASE("a leg from a hook that is not there hangs nowhere") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.leg(0).from = "north";
  const Finding finding = of("rigging-statics", lift.facts());
  CHECK(finding.result == Result::missing);
  CHECK(finding.text == "leg from 'north': there is no such hook, beam point or sheave");
}

TEST_CASE("stiffness by size: of a kind that the tables have, and told of the slings in use only") {
  SlabLift lift;
  lift.tables.slings.at("chain").axial_modulus = made("axial_modulus.chain", Stress{59.0e3 * MPa});
  lift.plan.slings[0].size = 10.0 * mm;
  const plan::Sling used = lift.plan.slings[0];
  plan::Sling spare = used;
  spare.id = "spare", spare.size = 20.0 * mm;
  lift.plan.slings.push_back(spare);
  plan::Sling unknown = used;
  unknown.kind = "withy";
  CHECK(stiffness_by_size(unknown, lift.tables) == nullptr);
  REQUIRE(stiffness_by_size(used, lift.tables) != nullptr);
  Trace trace = Trace::recording();
  record_stiffness(lift.plan, &lift.plan.riggings[0], lift.tables, trace);
  std::vector<double> told_kN;
  for (const auto& entry : trace.steps())
    if (entry.step.result.symbol == "EA") told_kN.push_back(entry.step.result.number);
  REQUIRE(told_kN.size() == 1);  // not of the spare one
  CHECK(told_kN[0] == Approx(59.0 * 10.0 * 10.0));
}

TEST_CASE(
    "hardware-factor and sling-angle: what the tag says governs, and the table is named where the tag says "
    "nothing") {
  SlabLift lift;
  const auto T_max = [&] {
    Trace trace = Trace::recording();
    const auto facts = lift.facts();
    rule_named("hardware-factor")->judge(facts, trace);
    return step_named(trace, "T_max");
  };
  CHECK(T_max().result.number == Approx(40.0 * 5.0 / 5.0));
  CHECK(T_max().sources.size() == 2);
  lift.plan.slings[0].design_factor = 4.0;
  CHECK(T_max().result.number == Approx(40.0 * 4.0 / 5.0));
  CHECK(T_max().sources.size() == 1);
  // Legs of a sling that the plan does not define: held to the limit of the rule set alone.
  const auto angle = [&] { return finding_for("sling-angle", "A1", lift.facts()); };
  lift.plan.slings[0].minimum_angle = 40.0 * deg;
  CHECK(si_number(*angle().demand) == Approx(40.0));
  lift.leg(0).gear = "rope of nobody";
  CHECK(si_number(*angle().demand) == Approx(30.0));
  CHECK(finding_for("sling-overload", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE(
    "attached-parts: all are told, the place of one that is off by then does not matter, else it does") {
  SlabLift lift;
  lift.plan.form->nothing_attached = false;
  lift.plan.form->attached = {part("pallet", Position{2.0 * m, 1.0 * m, 0.0 * m}),
                              part("former", Position{2.0 * m, 1.0 * m, 0.0 * m})};
  CHECK(finding_for("attached-parts", "SL-1", lift.facts()).text ==
        "the piece takes along pallet, former: hook on and take up the load before anything is freed");
  plan::Stage yard = lift.stage();
  yard.kind = plan::StageKind::yard;
  lift.plan.stages.push_back(yard);
  plan::Attached& former = lift.plan.form->attached[1];
  lift.plan.form->attached[0].until = former.until = plan::StageKind::strip;
  former.at.reset();
  CHECK(finding_for("attached-parts", "SL-1", lift.facts(0)).text ==
        "where former sits on the piece is not in the plan");
  CHECK(finding_for("attached-parts", "SL-1", lift.facts(1)).result == Result::pass);
  former.until.reset();
  CHECK(finding_for("attached-parts", "SL-1", lift.facts(1)).result == Result::missing);
}

TEST_CASE(
    "bending multiplier: that of the product, or one for any product, the larger, without a form as well") {
  SlabLift lift;
  plan::Stage yard = lift.stage();
  yard.kind = plan::StageKind::yard;
  lift.plan.stages.push_back(yard);
  lift.rules.bending_multiplier = {{"yard.any.any", made_ratio("m.any", 2.4)},
                                   {"yard.flat.smooth", made_ratio("m.flat", 3.6)},
                                   {"strip.flat.smooth", made_ratio("m.strip", 9.0)}};
  Trace silent;
  // Nothing grips in the yard: F = 1.2 W, so that r_bend = m / 1.2.
  const auto raise = [&](const std::string& product) {
    lift.plan.form->product = product;
    return assessed(bending_raise(lift.facts(1), silent)).value();
  };
  CHECK(raise("flat.rough") == Approx(2.0));
  CHECK(raise("flat.smooth") == Approx(3.0));
  CHECK(raise("") == Approx(3.0));
  lift.rules.bending_multiplier.erase("yard.any.any");
  lift.plan.form->product = "flat.rough";
  CHECK(why_not(bending_raise(lift.facts(1), silent)) ==
        "the rule set has no bending multiplier for product 'flat.rough'");
  lift.plan.form.reset();
  CHECK(assessed(bending_raise(lift.facts(1), silent)).value() == Approx(3.0));
}

TEST_CASE("a loop of strand that hangs on a hook by one of its legs hangs on a hook, whichever leg that is") {
  SlabLift lift;
  lift.tables.loops = us_tables().loops;
  REQUIRE(lift.tables.loops);
  lift.plan.inserts[0].kind = "loop-strand";
  lift.plan.inserts[0].loop = plan::Loop{};
  lift.plan.inserts[0].loop->pin = lift.tables.loops->pin_tested.value;
  plan::Hardware hook = lift.plan.hardware[0];
  hook.id = "hook", hook.kind = plan::HardwareKind::hook;
  lift.plan.hardware[0].kind = plan::HardwareKind::shackle;
  lift.plan.hardware.push_back(hook);
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs.push_back(leg_to("A1"));
  Trace silent;
  const auto grip = [&](const std::string& first, const std::string& last) {
    lift.leg(0).hardware = first;
    lift.leg(4).hardware = last;
    return assessed(loop_grip(lift.facts(), 0, silent));
  };
  CHECK(grip("clutch", "clutch") == resistances::LoopGrip::pin);
  CHECK(grip("hook", "clutch") == resistances::LoopGrip::hook);
  CHECK(grip("clutch", "hook") == resistances::LoopGrip::hook);
  const auto facts = lift.facts();
  lift.tables.loops.reset();
  CHECK(why_not(loop_grip(facts, 0, silent)) == "the table of loops is not there");
}

TEST_CASE("a loop whose leg pulls no number, or that does not lie in its face, is missing") {
  SlabLift lift;
  lift.plan.inserts[0].kind = "loop-bar";
  lift.plan.inserts[0].loop = plan::Loop{};
  lift.plan.inserts[0].loop->minimum_edge = 100.0 * mm;
  lift.plan.inserts[0].loop->opening = 60.0 * deg;
  auto facts = lift.facts();
  CHECK(finding_for("loop-edge", "A1", facts).result == Result::pass);
  CHECK(si_number(*finding_for("loop-edge", "A1", facts).capacity) == Approx(0.5));
  CHECK(assessed(worst_loop_pull(facts, 0, LoopWorst::by_leg)));
  lift.plan.inserts[0].loop->opening = not_a_number * deg;
  CHECK(why_not(worst_loop_pull(facts, 0, LoopWorst::by_leg)) ==
        "the force on the loop is not a usable number");
  for (plan::PlanarPoint& corner : lift.body.sites[0].outline.outer) corner.x += 100.0 * m;
  CHECK(finding_for("loop-edge", "A1", facts).text ==
        "insert A1 does not lie inside the outline of its face");
}

TEST_CASE("a part without a number hides behind no other: angle, tension and factor") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  auto facts = lift.facts();
  auto& felt = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  felt.back().forces[0].tension = not_a_number * kN;
  CHECK(finding_for("insert-angle", "A1", facts).text == "the force on the insert is not a usable number");
  lift.rules.cracking.factor.value = Ratio{HUGE_VAL};
  const Finding finding = finding_for("piece-cracking", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  CHECK(finding.text == "the safety factor is not a usable number");
}
