// sling-overload, sling-angle and hardware-factor: the gear of each leg, in the worst situation of the stage.

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

Force worst_tension(const StageFacts& facts, std::size_t leg) {
  return std::get<WorstLeg>(most_tension(facts.gear_situations, leg)).tension;
}
Angle flattest_angle(const StageFacts& facts, std::size_t leg) {
  return std::get<Angle>(flattest(facts.gear_situations, leg));
}

}  // namespace

TEST_CASE("sling-overload: exactly the tag passes, one step over fails") {
  SlabLift lift;
  const Force tension = worst_tension(lift.facts(), 0);
  lift.plan.slings.front().rated = tension;
  CHECK(finding_for("sling-overload", "A1", lift.facts()).result == Result::pass);
  lift.plan.slings.front().rated = Force::from_value(std::nextafter(tension.value(), 0.0));
  const Finding finding = finding_for("sling-overload", "A1", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.situation == "breaking free");
  check_says_why(finding);
}

TEST_CASE("sling-overload: the largest tension of all situations counts") {
  SlabLift lift;
  lift.plan.riggings.front().equalised.clear();
  const StageFacts facts = lift.facts();
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations))
    CHECK(situation.legs[0].tension <= worst_tension(facts, 0));
  CHECK(si_number(finding_for("sling-overload", "A1", facts).demand.value()) ==
        Approx(in(kN, worst_tension(facts, 0))));
}

TEST_CASE("sling-overload: what is not known is missing, each with its remedy") {
  SlabLift lift;
  SECTION("no gear named") { lift.leg(0).gear = ""; }
  SECTION("no rating from the tag") { lift.plan.slings.front().rated.reset(); }
  SECTION("no length") { lift.leg(0).length.reset(); }
  const Finding finding = finding_for("sling-overload", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("sling-overload: a gear that the plan does not have is missing") {
  SlabLift lift;
  lift.leg(0).gear = "rope";
  CHECK(finding_for("sling-overload", "A1", lift.facts()).result == Result::missing);
  CHECK(finding_for("sling-overload", "A2", lift.facts()).result == Result::pass);
}

TEST_CASE("sling-overload: a tag or a tension that is not a number is missing") {
  SlabLift lift;
  SECTION("tag") {
    lift.plan.slings.front().rated = not_a_number * kN;
    CHECK(finding_for("sling-overload", "A1", lift.facts()).result == Result::missing);
  }
  SECTION("tension in one situation that is not the worst") {
    StageFacts facts = lift.facts();
    auto& situations = std::get<std::vector<Situation>>(facts.gear_situations);
    REQUIRE(situations.size() > 1);
    for (std::size_t s = 0; s < situations.size(); ++s) {
      StageFacts spoilt = facts;
      std::get<std::vector<Situation>>(spoilt.gear_situations)[s].legs[0].tension = not_a_number * kN;
      CHECK(finding_for("sling-overload", "A1", spoilt).result == Result::missing);
    }
  }
}

TEST_CASE("leg rules: situations that were never computed are missing, not a pass") {
  SlabLift lift;
  StageFacts facts = lift.facts();
  facts.gear_situations = std::vector<Situation>{};
  for (const std::string_view rule : {"sling-overload", "sling-angle", "hardware-factor"}) {
    CAPTURE(rule);
    const Finding finding = finding_for(rule, "A1", facts);
    CHECK(finding.result == Result::missing);
    CHECK_FALSE(finding.text.empty());
  }
}

TEST_CASE("leg rules: a stage without rigging has no legs to judge") {
  SlabLift lift;
  lift.stage().rigging = "";
  const StageFacts facts = lift.facts();
  for (const std::string_view rule : {"sling-overload", "sling-angle", "hardware-factor"})
    CHECK(judged(rule, facts).empty());  // rigging-statics says that the rigging is missing
  CHECK(finding_for("rigging-statics", "", facts).result == Result::missing);
}

TEST_CASE("sling-angle: exactly the limit passes, one step flatter fails") {
  SlabLift lift;
  const Angle angle = flattest_angle(lift.facts(), 0);
  lift.rules.minimum_sling_angle.value = angle;
  CHECK(finding_for("sling-angle", "A1", lift.facts()).result == Result::pass);
  lift.rules.minimum_sling_angle.value = Angle::from_value(std::nextafter(angle.value(), 10.0));
  const Finding finding = finding_for("sling-angle", "A1", lift.facts());
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
}

TEST_CASE("sling-angle: the tag's own limit counts where it is steeper, and never loosens the rule set's") {
  SlabLift lift;
  const Angle angle = flattest_angle(lift.facts(), 0);
  lift.plan.slings.front().minimum_angle = angle + 1.0 * deg;
  CHECK(finding_for("sling-angle", "A1", lift.facts()).result == Result::fail);

  lift.plan.slings.front().minimum_angle = 10.0 * deg;
  const Finding finding = finding_for("sling-angle", "A1", lift.facts());
  CHECK(finding.result == Result::pass);
  CHECK(si_number(finding.demand.value()) == Approx(30.0));  // of hand_made_rules()
}

TEST_CASE("sling-angle: an angle that is not a number, in any situation, is missing") {
  SlabLift lift;
  const StageFacts facts = lift.facts();
  const auto count = std::get<std::vector<Situation>>(facts.gear_situations).size();
  for (std::size_t s = 0; s < count; ++s) {
    StageFacts spoilt = facts;
    std::get<std::vector<Situation>>(spoilt.gear_situations)[s].legs[0].angle_from_horizontal = not_a_number * deg;
    CHECK(finding_for("sling-angle", "A1", spoilt).result == Result::missing);
  }
}

TEST_CASE("sling-angle: a tag limit that is not a number is missing") {
  SlabLift lift;
  lift.plan.slings.front().minimum_angle = not_a_number * deg;
  CHECK(finding_for("sling-angle", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE("hardware-factor: a chain rated with 4 may carry four fifths of its tag where 5 is demanded") {
  // 29 CFR 1926.704(d): lifting hardware, five times the maximum intended load.
  SlabLift lift;
  const Force tension = worst_tension(lift.facts(), 0);
  auto& sling = lift.plan.slings.front();
  sling.design_factor = 4.0;
  sling.rated = Force{1.2 * tension};
  CHECK(finding_for("sling-overload", "A1", lift.facts()).result == Result::pass);
  const Finding finding = finding_for("hardware-factor", "A1", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.factor.value() == 5.0);
  CHECK(finding.utilization.value() == Approx(5.0 / 4.0 / 1.2));
  check_says_why(finding);

  sling.rated = Force{1.26 * tension};
  CHECK(finding_for("hardware-factor", "A1", lift.facts()).result == Result::pass);
}

TEST_CASE("hardware-factor: a sling rated with the factor that is demanded may be used to its tag") {
  SlabLift lift;
  auto& sling = lift.plan.slings.front();
  sling.design_factor = 5.0;
  sling.rated = Force{(1.0 + 1e-12) * worst_tension(lift.facts(), 0)};
  const Finding finding = finding_for("hardware-factor", "A1", lift.facts());
  CHECK(finding.result == Result::pass);
  CHECK(finding.utilization.value() == Approx(1.0).epsilon(1e-9));
}

TEST_CASE("hardware-factor: the table's factor of the kind where the plan states none, neither is missing") {
  SlabLift lift;
  lift.tables.slings.at("chain").design_factor.value = Ratio{4.0};
  CHECK(si_number(finding_for("hardware-factor", "A1", lift.facts()).nominal.value()) == Approx(160.0));

  lift.plan.slings.front().kind = "rope of straw";
  const Finding finding = finding_for("hardware-factor", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("hardware-factor: what is not a number is missing") {
  SlabLift lift;
  SECTION("design factor") { lift.plan.slings.front().design_factor = not_a_number; }
  SECTION("unlimited design factor") { lift.plan.slings.front().design_factor = std::numeric_limits<double>::infinity(); }
  SECTION("tag") { lift.plan.slings.front().rated = not_a_number * kN; }
  SECTION("factor of the rule set") { lift.rules.hardware_factor.value = Ratio{not_a_number}; }
  SECTION("factor of the rule set below 1") { lift.rules.hardware_factor.value = Ratio{0.5}; }
  CHECK(finding_for("hardware-factor", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE("hardware-factor: missing without gear or tag") {
  SlabLift lift;
  SECTION("no gear named") { lift.leg(0).gear = ""; }
  SECTION("no rating from the tag") { lift.plan.slings.front().rated.reset(); }
  const Finding finding = finding_for("hardware-factor", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}
