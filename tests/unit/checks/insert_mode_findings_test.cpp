// The seven rules of headed inserts and their interaction: the worst situation, what is told, what is missing.

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>

#include "checks/insert_modes.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view mode_rules[] = {"insert-steel-tension", "insert-breakout",     "insert-pullout",
                                           "insert-steel-shear",   "insert-edge-breakout", "insert-pryout"};

// What makes the rule fail and no other input of it missing: a much larger safety factor.
constexpr double factor_that_nothing_holds = 1000.0;

}  // namespace

TEST_CASE("each mode rule passes on the slab as drawn, with demand, nominal, factor and capacity") {
  SlabLift lift;
  const StageFacts facts = lift.facts();
  for (const std::string_view rule : mode_rules)
    for (const char* insert : {"A1", "A2", "A3", "A4"}) {
      CAPTURE(rule, insert);
      const Finding finding = finding_for(rule, insert, facts);
      CHECK(finding.result == Result::pass);
      CHECK(finding.factor.value() == 4.0);
      CHECK(si_number(finding.capacity.value()) == Approx(si_number(finding.nominal.value()) / 4.0));
      CHECK(finding.utilization.value() ==
            Approx(si_number(finding.demand.value()) / si_number(finding.capacity.value())).epsilon(1e-12));
      CHECK_FALSE(finding.clause.empty());
      CHECK_FALSE(finding.situation.empty());
    }
}

TEST_CASE("each mode rule fails behind a factor that nothing holds, says what and what would help") {
  SlabLift lift;
  lift.rules.insert_factor.value = Ratio{factor_that_nothing_holds};
  const StageFacts facts = lift.facts();
  for (const std::string_view rule : mode_rules) {
    const Finding finding = finding_for(rule, "A1", facts);
    CAPTURE(rule, finding.text);
    CHECK(finding.result == Result::fail);
    CHECK(finding.text.find("A1") != std::string::npos);
    check_says_why(finding);
  }
}

TEST_CASE("insert-side-blowout: does not apply far from edges and says so, fails near one") {
  SlabLift lift;
  const Finding far = finding_for("insert-side-blowout", "A1", lift.facts());
  CHECK(far.result == Result::pass);
  CHECK_FALSE(far.text.empty());
  CHECK_FALSE(far.capacity.has_value());

  lift.plan.inserts[0].at.y = 60.0 * mm;
  for (std::size_t i = 0; i < 4; ++i) lift.leg(i).length = 3.0 * m;
  lift.rules.insert_factor.value = Ratio{factor_that_nothing_holds};
  const Finding near = finding_for("insert-side-blowout", "A1", lift.facts());
  CHECK(near.result == Result::fail);
  check_says_why(near);
}

TEST_CASE("the worst situation governs") {
  SlabLift lift;
  lift.plan.riggings.front().equalised.clear();
  const StageFacts facts = lift.facts();
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  REQUIRE(situations.size() > 2);
  const Finding finding = finding_for("insert-breakout", "A1", facts);
  for (std::size_t s = 0; s < situations.size(); ++s)
    CHECK(facts.modes.at(s, 0, Mode::breakout).comparison.utilization.value() <= finding.utilization.value());
  CHECK(finding.situation.find("breaking free") != std::string::npos);
}

TEST_CASE("missing in one situation is missing for the insert, however the others stand") {
  SlabLift lift;
  lift.plan.riggings.front().equalised.clear();
  lift.rules.insert_factor.value = Ratio{factor_that_nothing_holds};  // every other situation fails
  StageFacts facts = lift.facts();
  auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  situations[1].forces[0].tension = std::numeric_limits<double>::quiet_NaN() * kN;
  facts.modes = mode_table(facts);
  for (const std::string_view rule : {"insert-steel-tension", "insert-breakout", "insert-pullout", "insert-interaction"}) {
    CAPTURE(rule);
    CHECK(finding_for(rule, "A1", facts).result == Result::missing);
  }
}

TEST_CASE("what the plan does not say of an insert is missing in its rules, with the line to write") {
  SlabLift lift;
  SECTION("embedment") { lift.plan.inserts[0].embedment.reset(); }
  SECTION("shank") { lift.plan.inserts[0].shank.reset(); }
  SECTION("head") { lift.plan.inserts[0].head_bearing_area.reset(); }
  SECTION("steel") { lift.plan.inserts[0].steel = ""; }
  SECTION("cracked or not") { lift.plan.concrete.cracked.reset(); }
  const StageFacts facts = lift.facts();
  for (const std::string_view rule : {"insert-steel-tension", "insert-breakout", "insert-pullout", "insert-side-blowout",
                                      "insert-steel-shear", "insert-edge-breakout", "insert-pryout", "insert-interaction"}) {
    const Finding finding = finding_for(rule, "A1", facts);
    CAPTURE(rule);
    CHECK(finding.result == Result::missing);
    check_says_why(finding);
  }
}

TEST_CASE("situations that were never computed are missing in every rule of headed inserts") {
  SlabLift lift;
  StageFacts facts = lift.facts();
  SECTION("none") { facts.insert_situations = std::vector<InsertSituation>{}; }
  SECTION("not assessed") { facts.insert_situations = NotAssessed{"no load", "write the load"}; }
  for (const Rule& rule : all_rules()) {
    if (rule.scope != Scope::headed_insert || rule.id == "insert-embedment") continue;
    const Finding finding = finding_for(rule.id, "A1", facts);
    CAPTURE(rule.id);
    CHECK(finding.result == Result::missing);
    CHECK_FALSE(finding.text.empty());
  }
}

TEST_CASE("a failure of inserts close together names them all") {
  SlabLift lift;
  lift.plan.inserts[0].at = {1.9 * m, 0.6 * m, 0.3 * m};
  lift.plan.inserts[1].at = {2.1 * m, 0.6 * m, 0.3 * m};
  lift.rules.insert_factor.value = Ratio{factor_that_nothing_holds};
  const Finding finding = finding_for("insert-breakout", "A1", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.text.find("A1 + A2 together") != std::string::npos);
}

TEST_CASE("who asks for no words gets the same results without the sentences of what fails") {
  SlabLift lift;
  lift.rules.insert_factor.value = Ratio{factor_that_nothing_holds};
  StageFacts facts = lift.facts();
  for (const std::string_view rule : {"insert-breakout", "insert-interaction"}) {
    facts.in_words = true;
    const Finding told = finding_for(rule, "A1", facts);
    facts.in_words = false;
    const Finding silent = finding_for(rule, "A1", facts);
    CAPTURE(rule, told.text);
    CHECK(silent.result == Result::fail);
    CHECK(silent.utilization == told.utilization);
    CHECK(silent.situation == told.situation);
    CHECK_FALSE(told.text.empty());
    CHECK(silent.text.empty());
  }
}

TEST_CASE("insert-interaction: passes on the slab as drawn") {
  SlabLift lift;
  const Finding finding = finding_for("insert-interaction", "A1", lift.facts());
  CHECK(finding.result == Result::pass);
  CHECK(finding.utilization.value() > 0.0);
}

TEST_CASE("insert-interaction: never below the use in tension or in shear alone") {
  SlabLift lift;
  const StageFacts facts = lift.facts();
  const double together = finding_for("insert-interaction", "A1", facts).utilization.value();
  // ACI 318-19 17.8.3: (tension + shear) / 1.2, so that a use of 1 in either alone with 0.2 of the other is the limit
  for (const std::string_view rule : mode_rules)
    CHECK(together >= finding_for(rule, "A1", facts).utilization.value() / 1.2 - 1e-12);
}

TEST_CASE("insert-interaction: fails where neither tension nor shear does, and says so") {
  SlabLift lift;
  const StageFacts as_drawn = lift.facts();
  double most = 0.0;
  for (const std::string_view rule : mode_rules)
    most = std::max(most, finding_for(rule, "A1", as_drawn).utilization.value());
  lift.rules.insert_factor.value = Ratio{4.0 / most * 0.999};  // the worst mode at 0.999
  const StageFacts facts = lift.facts();
  for (const std::string_view rule : mode_rules) CHECK(finding_for(rule, "A1", facts).result == Result::pass);
  const Finding finding = finding_for("insert-interaction", "A1", facts);
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
}

TEST_CASE("the calculation of the governing situation is recorded, and nothing is where nobody asks") {
  SlabLift lift;
  const StageFacts facts = lift.facts();
  Trace recording = Trace::recording();
  rule_named("insert-breakout")->judge(facts, recording);
  CHECK(recording.steps().size() > 4);
  Trace silent;
  rule_named("insert-breakout")->judge(facts, silent);
  CHECK(silent.steps().empty());
}
