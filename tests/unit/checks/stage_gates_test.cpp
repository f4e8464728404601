// hook-latch, exclusion-zone, tag-line, signaller, attached-parts, critical-lift, crane-thresholds and
// pick-count: gates on the stage and the shape, and the pull that a stage may not exceed.

#include <catch2/catch.hpp>

#include <limits>

#include "checks/crane_hook_load.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

struct Tick {
  std::string_view rule;
  std::optional<bool> plan::Stage::*key;
};
const Tick ticks[] = {{"hook-latch", &plan::Stage::hook_latch},
                      {"exclusion-zone", &plan::Stage::exclusion_zone},
                      {"tag-line", &plan::Stage::tag_line},
                      {"signaller", &plan::Stage::signaller}};

Finding of_piece(std::string_view rule, SlabLift& lift) { return finding_for(rule, "SL-1", lift.facts()); }

}  // namespace

TEST_CASE("ticks: true passes, false fails, not ticked is missing, each by itself") {
  for (const Tick& tick : ticks) {
    CAPTURE(tick.rule);
    SlabLift lift;
    CHECK(of_piece(tick.rule, lift).result == Result::pass);
    lift.stage().*tick.key = false;
    const Finding wrong = of_piece(tick.rule, lift);
    CHECK(wrong.result == Result::fail);
    check_says_why(wrong);
    (lift.stage().*tick.key).reset();
    const Finding open = of_piece(tick.rule, lift);
    CHECK(open.result == Result::missing);
    check_says_why(open);
    for (const Tick& other : ticks)
      if (other.rule != tick.rule) CHECK(of_piece(other.rule, lift).result == Result::pass);
  }
}

TEST_CASE("ticks: those that are missing say the same, and name all that are missing and no other") {
  SlabLift lift;
  lift.stage().hook_latch.reset();
  lift.stage().signaller.reset();
  const Finding latch = of_piece("hook-latch", lift), signals = of_piece("signaller", lift);
  CHECK(latch.text == signals.text);
  CHECK(latch.remedy == signals.remedy);
  CHECK(latch.text == "nobody has ticked off: hook latch, signaller");
  CHECK(latch.remedy.find("hook_latch = true, signaller = true") != std::string::npos);
}

TEST_CASE("attached-parts: nothing, some, or not said, in the stage strip") {
  SlabLift lift;
  CHECK(of_piece("attached-parts", lift).result == Result::pass);
  lift.plan.form->nothing_attached = false;
  const Finding open = of_piece("attached-parts", lift);
  CHECK(open.result == Result::missing);
  check_says_why(open);

  plan::Attached pallet;
  pallet.what = "pallet";
  pallet.weight = 1.0 * kN;
  pallet.at = Position{2.0 * m, 1.0 * m, 0.0 * m};
  lift.plan.form->attached = {pallet};
  const Finding told = of_piece("attached-parts", lift);
  CHECK(told.result == Result::note);
  CHECK(told.text.find("pallet") != std::string::npos);
}

TEST_CASE("attached-parts: no form at all is missing as the piece comes out of it, and passes once it is released") {
  SlabLift lift;
  lift.plan.form.reset();
  CHECK(of_piece("attached-parts", lift).result == Result::missing);
  lift.stage().kind = plan::StageKind::yard;  // the first stage brings it out
  CHECK(of_piece("attached-parts", lift).result == Result::missing);
  lift.plan.form.emplace().released = true;
  CHECK(of_piece("attached-parts", lift).result == Result::pass);
}

TEST_CASE("critical-lift: turning needs a written plan, a lift does not") {
  SlabLift lift;
  CHECK(of_piece("critical-lift", lift).result == Result::pass);
  lift.stage().kind = plan::StageKind::turn;
  const Finding finding = of_piece("critical-lift", lift);
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
  lift.stage().critical_lift_plan = " ";
  CHECK(of_piece("critical-lift", lift).result == Result::missing);
  lift.stage().critical_lift_plan = "plan 7";
  CHECK(of_piece("critical-lift", lift).result == Result::pass);
}

TEST_CASE("crane-thresholds: below, above the first, above the second, above the rating") {
  SlabLift lift;
  const Force hook = std::get<Force>(hook_load_of(lift));
  const auto at_share = [&](double share) {
    lift.plan.cranes[0].rated = hook / share;
    return finding_for("crane-thresholds", "bay", lift.facts());
  };
  lift.stage().critical_lift_plan = "";
  CHECK(at_share(0.70).result == Result::pass);
  for (const double share : {0.80, 0.95}) {
    const Finding finding = at_share(share);
    CHECK(finding.result == Result::missing);
    check_says_why(finding);
    CHECK(finding.text.find(share > 0.9 ? "90 %" : "75 %") != std::string::npos);
  }
  CHECK(at_share(1.05).result == Result::pass);
  CHECK(finding_for("crane-overload", "bay", lift.facts()).result == Result::fail);

  lift.stage().critical_lift_plan = "plan 7";
  CHECK(at_share(0.80).result == Result::pass);
  const Finding critical = at_share(0.95);
  CHECK(critical.result == Result::note);
  CHECK(critical.text.find("plan 7") != std::string::npos);
}

TEST_CASE("crane-thresholds: without hook load or rating, or with a share that is no number, missing") {
  SlabLift lift;
  SECTION("no rating") { lift.plan.cranes[0].rated.reset(); }
  SECTION("no block") { lift.plan.cranes[0].block.reset(); }
  SECTION("no crane") { lift.plan.cranes[0].id = "another"; }
  SECTION("share") { lift.rules.crane_planned_above.value = Ratio{std::numeric_limits<double>::quiet_NaN()}; }
  SECTION("other share") {
    lift.rules.crane_critical_above.value = Ratio{std::numeric_limits<double>::quiet_NaN()};
  }
  CHECK(finding_for("crane-thresholds", "bay", lift.facts()).result == Result::missing);
}

TEST_CASE("pick-count: three picks for a flat piece, two for a block, one for nothing") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  const auto with = [&](std::size_t picks, Length height) {
    lift.plan.piece.solids[0].size.z = height;
    for (plan::Insert& insert : lift.plan.inserts) insert.at.z = height;
    lift.plan.riggings[0].legs.resize(picks);
    return finding_for("pick-count", "four legs", lift.facts());
  };
  CHECK(with(4, 0.3 * m).result == Result::pass);
  CHECK(with(3, 0.3 * m).result == Result::pass);
  const Finding flat = with(2, 0.3 * m);
  CHECK(flat.result == Result::fail);
  check_says_why(flat);
  CHECK(with(2, 0.8 * m).result == Result::pass);
  const Finding one = with(1, 0.8 * m);
  CHECK(one.result == Result::fail);
  check_says_why(one);
}

TEST_CASE("pick-count: no rigging is missing, turning is a note, a share that is no number is missing") {
  SlabLift lift;
  SECTION("turn") {
    lift.stage().kind = plan::StageKind::turn;
    CHECK(finding_for("pick-count", "four legs", lift.facts()).result == Result::note);
  }
  SECTION("no rigging") {
    lift.stage().rigging = "";
    CHECK(finding_for("pick-count", "", lift.facts()).result == Result::missing);
  }
  SECTION("share") {
    lift.rules.flat_piece.value = Ratio{std::numeric_limits<double>::quiet_NaN()};
    CHECK(finding_for("pick-count", "four legs", lift.facts()).result == Result::missing);
  }
}

TEST_CASE("the pull not to exceed is the load on the hook, only as the piece comes out of its form") {
  SlabLift lift;
  Trace silent;
  const StageFacts facts = lift.facts();
  const StageReport strip = evaluate_stage(facts, silent);
  CHECK(in(kN, strip.pull_not_to_exceed.value()) == in(kN, std::get<Force>(crane_hook_load(facts, cranes_of(facts).front()))));
  lift.stage().kind = plan::StageKind::yard;
  CHECK(evaluate_stage(lift.facts(), silent).pull_not_to_exceed.has_value());
  lift.plan.form->released = true;
  CHECK_FALSE(evaluate_stage(lift.facts(), silent).pull_not_to_exceed.has_value());
  lift.plan.form->released = false;
  lift.stage().kind = plan::StageKind::strip;
  lift.plan.cranes[0].block.reset();
  CHECK_FALSE(evaluate_stage(lift.facts(), silent).pull_not_to_exceed.has_value());
}
