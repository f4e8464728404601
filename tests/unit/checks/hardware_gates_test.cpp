// clutch-mismatch, hardware-overload and gear-inspection: what the legs end in, and when it was looked at.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "checks/worst_leg.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::numeric_limits<double>::quiet_NaN();

plan::MarkedSize marked(double tonnes, const std::string& text) {
  return {Mass{tonnes * tonne} * standard_gravity, text};
}

}  // namespace

TEST_CASE("clutch-mismatch: a larger clutch and a smaller one both fail, at the inserts they sit on") {
  SlabLift lift;
  CHECK(finding_for("clutch-mismatch", "A1", lift.facts()).result == Result::pass);
  for (const auto& [tonnes, text] : {std::pair{5.0, "5 t"}, std::pair{1.3, "1.3 t"}}) {
    CAPTURE(text);
    lift.plan.inserts[0].size = marked(tonnes, text);
    const Finding finding = finding_for("clutch-mismatch", "A1", lift.facts());
    CHECK(finding.result == Result::fail);
    CHECK(finding.text.find(text) != std::string::npos);
    CHECK(finding.text.find("2.5 t") != std::string::npos);
    check_says_why(finding);
    CHECK(finding_for("clutch-mismatch", "A2", lift.facts()).result == Result::pass);
  }
}

TEST_CASE("clutch-mismatch: the same mark in another unit is the same mark, a hundredth off is not") {
  SlabLift lift;
  lift.plan.inserts[0].size = plan::MarkedSize{2500.0 * kgf, "2500 kgf"};
  CHECK(finding_for("clutch-mismatch", "A1", lift.facts()).result == Result::pass);
  lift.plan.inserts[0].size = plan::MarkedSize{2525.0 * kgf, "2525 kgf"};
  CHECK(finding_for("clutch-mismatch", "A1", lift.facts()).result == Result::fail);
}

TEST_CASE("clutch-mismatch: a mark that is not in the plan is missing, each with its remedy") {
  SlabLift lift;
  SECTION("on the insert") { lift.plan.inserts[0].size.reset(); }
  SECTION("on the clutch") { lift.plan.hardware[0].size.reset(); }
  SECTION("on a screw-in part") {
    lift.plan.hardware[0].kind = plan::HardwareKind::screw_in;
    lift.plan.hardware[0].size.reset();
  }
  SECTION("no hardware named") { lift.leg(0).hardware = ""; }
  SECTION("blanks for a name") { lift.leg(0).hardware = "  "; }
  SECTION("hardware that the plan does not have") { lift.leg(0).hardware = "another"; }
  SECTION("a leg to an insert that the plan does not have") { lift.plan.inserts[0].id = "B1"; }
  const Finding finding = finding_for("clutch-mismatch", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("clutch-mismatch: a size that is not a number is no match") {
  SlabLift lift;
  lift.plan.inserts[0].size = plan::MarkedSize{not_a_number * kN, "?"};
  CHECK(finding_for("clutch-mismatch", "A1", lift.facts()).result == Result::fail);
}

TEST_CASE("clutch-mismatch: a shackle on a rated insert that is marked for hardware of its own is HOLD") {
  SlabLift lift;
  lift.plan.inserts[0].kind = "rated";
  REQUIRE(lift.plan.inserts[0].size);
  lift.plan.hardware[0].kind = GENERATE(plan::HardwareKind::shackle, plan::HardwareKind::hook);
  const Finding finding = finding_for("clutch-mismatch", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE(
    "clutch-mismatch: a shackle or a hook has no size to match, and takes a loop, an eye or a plate only") {
  SlabLift lift;
  lift.plan.hardware[0].size.reset();
  lift.plan.hardware[0].kind = GENERATE(plan::HardwareKind::shackle, plan::HardwareKind::hook);
  for (const char* kind : {"loop-strand", "loop-rope", "loop-bar", "bent-bar", "plate", "rated"}) {
    CAPTURE(kind);
    lift.plan.inserts[0].kind = kind;
    if (lift.plan.inserts[0].kind == "rated") lift.plan.inserts[0].size.reset();  // an eye without a mark
    CHECK(finding_for("clutch-mismatch", "A1", lift.facts()).result == Result::pass);
  }
  for (const char* kind : {"headed", "threaded", "toggle", ""}) {
    CAPTURE(kind);
    lift.plan.inserts[0].kind = kind;
    const Finding finding = finding_for("clutch-mismatch", "A1", lift.facts());
    CHECK(finding.result == Result::missing);
    check_says_why(finding);
  }
}

TEST_CASE(
    "hardware-overload: the mark governs where the factor is more than demanded, the factor where it is "
    "less") {
  // 29 CFR 1926.704(d): lifting hardware, five times the maximum intended load.
  SlabLift lift;
  const Force tension = std::get<WorstLeg>(most_tension(lift.facts().gear_situations, 0)).tension;
  auto& clutch = lift.plan.hardware[0];
  clutch.rated = Force{1.2 * tension};
  for (const auto& [factor, used] :
       {std::pair{10.0, 1.0 / 1.2}, std::pair{5.0, 1.0 / 1.2}, std::pair{4.0, 5.0 / 4.0 / 1.2}}) {
    CAPTURE(factor);
    clutch.design_factor = factor;
    const Finding finding = finding_for("hardware-overload", "A1", lift.facts());
    CHECK(finding.utilization.value() == Approx(used));
    CHECK(finding.result == (used <= 1.0 ? Result::pass : Result::fail));
    CHECK(si_number(finding.capacity.value()) == Approx(in(kN, tension) / used));
    if (used > 1.0) check_says_why(finding);
  }
  // A rule set that demands no more than 1: the mark still governs, what breaks the clutch does not.
  clutch.design_factor = 5.0;
  lift.rules.hardware_factor.value = Ratio{1.0};
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).utilization.value() == Approx(1.0 / 1.2));
}

TEST_CASE("hardware-overload: what is not known, or not a number, is missing") {
  SlabLift lift;
  auto& clutch = lift.plan.hardware[0];
  SECTION("no hardware named") { lift.leg(0).hardware = ""; }
  SECTION("no mark") { clutch.rated.reset(); }
  SECTION("no factor") { clutch.design_factor.reset(); }
  SECTION("mark not a number") { clutch.rated = not_a_number * kN; }
  SECTION("factor not a number") { clutch.design_factor = not_a_number; }
  SECTION("factor without end") { clutch.design_factor = std::numeric_limits<double>::infinity(); }
  SECTION("factor of the rule set not a number") { lift.rules.hardware_factor.value = Ratio{not_a_number}; }
  SECTION("factor of the rule set below 1") { lift.rules.hardware_factor.value = Ratio{0.5}; }
  SECTION("no statics") { lift.leg(0).length.reset(); }
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE("gear-inspection: each sling, piece of hardware and crane of the stage once, others not") {
  SlabLift lift;
  plan::Sling spare = lift.plan.slings[0];
  spare.id = "spare";
  spare.inspected.reset();
  lift.plan.slings.push_back(spare);
  const auto findings = judged("gear-inspection", lift.facts());
  REQUIRE(findings.size() == 4);  // and the sheave that two legs run over at the hook
  for (const Finding& finding : findings) CHECK(finding.result == Result::pass);
}

TEST_CASE("gear-inspection: what is not known is missing, in the same words for all gear") {
  SlabLift lift;
  lift.plan.slings[0].inspected.reset();
  lift.plan.hardware[0].inspected.reset();
  lift.plan.cranes[0].inspected.reset();
  lift.plan.riggings[0].equaliser_inspected.reset();
  const auto findings = judged("gear-inspection", lift.facts());
  REQUIRE(findings.size() == 4);
  for (const Finding& finding : findings) {
    CHECK(finding.result == Result::missing);
    CHECK(finding.text == findings.front().text);
    check_says_why(finding);
  }
}

TEST_CASE("gear-inspection: without the day of the lift, or examined after it, missing") {
  SlabLift lift;
  SECTION("no day of the lift") { lift.stage().at.reset(); }
  SECTION("examined the day after") { lift.plan.slings[0].inspected->number += 31; }
  const Finding finding = finding_for("gear-inspection", "chain", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("gear-inspection: the day of the lift is that of the writer's clock") {
  using plan::Timestamp;
  CHECK(plan::day_of(Timestamp{0, false, "1970-01-01 00:00"}) == 0);
  CHECK(plan::day_of(Timestamp{86399, false, "1970-01-01 23:59"}) == 0);
  CHECK(plan::day_of(Timestamp{86400, false, "1970-01-02 00:00"}) == 1);
  CHECK(plan::day_of(Timestamp{-1, false, "1969-12-31 23:59"}) == -1);
  CHECK(plan::day_of(Timestamp{-86400, false, "1969-12-31 00:00"}) == -1);
  CHECK(plan::day_of(Timestamp{86400 - 3600, true, "1970-01-02 01:00 +02:00", 7200}) == 1);
  CHECK(plan::day_of(Timestamp{86400 + 3600, true, "1970-01-01 20:00 -05:00", -18000}) == 0);
}
