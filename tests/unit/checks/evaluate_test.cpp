// A stage and a plan as a whole: what is demoted, what a fault of the program does, what is told.

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>

#include "checks/insert_modes.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

StageReport evaluated(const StageFacts& facts) {
  Trace silent;
  return evaluate_stage(facts, silent);
}

std::vector<Finding> of_rule(const StageReport& report, std::string_view rule) {
  std::vector<Finding> mine;
  for (const Finding& finding : report.findings)
    if (finding.rule == rule) mine.push_back(finding);
  return mine;
}

Report report_of(SlabLift& lift) {
  lift.facts();  // makes the body
  return evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "fingerprint");
}

void demand_not(SlabLift& lift, std::string_view rule) {
  std::erase_if(lift.rules.mandatory, [&](const tables::Mandatory& m) { return m.rule == rule; });
}

}  // namespace

TEST_CASE("the slab as drawn is GO in every rule") {
  SlabLift lift;
  const StageReport report = evaluated(lift.facts());
  CHECK(report.verdict == Verdict::go);
  for (const Finding& finding : report.findings) {
    CAPTURE(finding.rule, finding.subject, finding.text);
    CHECK(finding.result == Result::pass);
  }
}

TEST_CASE("what is missing for a rule that nobody demands is a note, for one that is demanded it is HOLD") {
  SlabLift lift;
  lift.plan.inserts[0].certificate = "";
  REQUIRE(evaluated(lift.facts()).verdict == Verdict::hold);
  REQUIRE(of_rule(evaluated(lift.facts()), "insert-certificate").front().result == Result::missing);

  demand_not(lift, "insert-certificate");
  const StageReport report = evaluated(lift.facts());
  CHECK(report.verdict == Verdict::go);
  const Finding note = of_rule(report, "insert-certificate").front();
  CHECK(note.result == Result::note);
  check_says_why(note);
}

TEST_CASE("what fails in a rule that nobody demands is still NO-GO") {
  SlabLift lift;
  lift.plan.inserts[0].position_confirmed = false;
  demand_not(lift, "insert-position");
  CHECK(evaluated(lift.facts()).verdict == Verdict::no_go);
}

TEST_CASE("a rule that throws is HOLD for each of its subjects, whatever it might have found") {
  SlabLift lift;
  StageFacts facts = lift.facts();
  lift.body.sites.clear();  // a fault of the program: rules look for the site of each insert
  const StageReport report = evaluated(facts);
  CHECK(report.verdict == Verdict::hold);
  const auto thrown = of_rule(report, "insert-embedment");
  REQUIRE(thrown.size() == 1);
  CHECK(thrown.front().result == Result::missing);
  CHECK(thrown.front().text.find("could not be evaluated") != std::string::npos);
  check_says_why(thrown.front());
  const auto gaps = of_rule(report, "rule-coverage");
  CHECK(std::ranges::count_if(gaps, [](const Finding& gap) {
          return gap.text.find("'insert-embedment'") != std::string::npos;
        }) == static_cast<std::ptrdiff_t>(lift.plan.inserts.size()));
}

TEST_CASE("a rule that throws and that nobody demands does not hide the others") {
  SlabLift lift;
  demand_not(lift, "insert-embedment");
  StageFacts facts = lift.facts();
  lift.body.sites.clear();
  lift.plan.inserts[0].position_confirmed = false;
  CHECK(evaluated(facts).verdict == Verdict::no_go);
}

TEST_CASE("checks of inserts that were never made are HOLD, not a pass") {
  SlabLift lift;
  StageFacts facts = lift.facts();
  facts.modes.checks.clear();
  const StageReport report = evaluated(facts);
  CHECK(report.verdict == Verdict::hold);
  for (const std::string_view rule : {"insert-breakout", "insert-pullout", "insert-pryout", "insert-interaction"})
    for (const Finding& finding : of_rule(report, rule)) CHECK(finding.result == Result::missing);
}

TEST_CASE("a number that is not one, anywhere in the facts, is HOLD") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  SlabLift lift;
  SECTION("hook load") {
    StageFacts facts = lift.facts();
    std::get<loads::StageLoad>(facts.load).crane_load = not_a_number * kN;
    CHECK(evaluated(facts).verdict == Verdict::hold);
  }
  SECTION("tension of one leg in one situation") {
    StageFacts facts = lift.facts();
    std::get<std::vector<Situation>>(facts.gear_situations).front().legs[2].tension = not_a_number * kN;
    CHECK(evaluated(facts).verdict == Verdict::hold);
  }
  SECTION("angle of one leg in one situation") {
    StageFacts facts = lift.facts();
    std::get<std::vector<Situation>>(facts.gear_situations).back().legs[1].angle_from_horizontal = not_a_number * deg;
    CHECK(evaluated(facts).verdict == Verdict::hold);
  }
  SECTION("strength shown") {
    StageFacts facts = lift.facts();
    facts.usable_strength = not_a_number * MPa;
    CHECK(evaluated(facts).verdict == Verdict::hold);
  }
  SECTION("strength required") {
    StageFacts facts = lift.facts();
    facts.required_strength = not_a_number * MPa;
    CHECK(evaluated(facts).verdict == Verdict::hold);
  }
  SECTION("force on an insert") {
    StageFacts facts = lift.facts();
    auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
    situations.back().forces[3].tension = not_a_number * kN;
    facts.modes = mode_table(facts);
    CHECK(evaluated(facts).verdict == Verdict::hold);
  }
  SECTION("safety factor of the inserts") {
    lift.rules.insert_factor.value = Ratio{not_a_number};
    CHECK(evaluated(lift.facts()).verdict == Verdict::hold);
  }
  SECTION("safety factor of the gear") {
    lift.rules.hardware_factor.value = Ratio{not_a_number};
    CHECK(evaluated(lift.facts()).verdict == Verdict::hold);
  }
  SECTION("least angle of the legs") {
    lift.rules.minimum_sling_angle.value = not_a_number * deg;
    CHECK(evaluated(lift.facts()).verdict == Verdict::hold);
  }
  SECTION("how far the drawing's weight may be off") {
    lift.rules.weight_disagreement.value = Ratio{not_a_number};
    CHECK(evaluated(lift.facts()).verdict == Verdict::hold);
  }
}

TEST_CASE("nothing known of the stage: every rule that needs it is HOLD with the reason") {
  SlabLift lift;
  lift.plan.concrete.density_tolerance.reset();
  const StageReport report = evaluated(lift.facts());
  CHECK(report.verdict == Verdict::hold);
  CHECK_FALSE(report.load.has_value());
  CHECK_FALSE(report.hook.has_value());
  CHECK_FALSE(report.tilt.has_value());
  CHECK(report.legs.empty());
  CHECK(report.inserts.empty());
  for (const std::string_view rule : {"rigging-statics", "crane-overload", "sling-overload", "sling-angle",
                                      "hardware-factor", "insert-breakout", "insert-interaction"})
    for (const Finding& finding : of_rule(report, rule)) {
      CAPTURE(rule);
      CHECK(finding.result == Result::missing);
      check_says_why(finding);
    }
}

TEST_CASE("the report tells each leg and each insert at its worst") {
  SlabLift lift;
  lift.plan.riggings.front().equalised.clear();  // two diagonals, each of which may carry all
  const StageFacts facts = lift.facts();
  const StageReport report = evaluated(facts);
  REQUIRE(report.legs.size() == 4);
  REQUIRE(report.inserts.size() == 4);
  for (std::size_t leg = 0; leg < 4; ++leg) {
    Force most{};
    for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations))
      most = std::max(most, situation.legs.at(leg).tension);
    CHECK(in(kN, report.legs[leg].tension) == Approx(in(kN, most)));
    CHECK(report.legs[leg].tension > Force{});
    CHECK(report.legs[leg].situation.find("only") != std::string::npos);
  }
}

TEST_CASE("a plan without stages is HOLD") {
  SlabLift lift;
  lift.facts();
  lift.plan.stages.clear();
  const Report report = evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "");
  CHECK(report.verdict == Verdict::hold);
}

TEST_CASE("a plan is no better than its worst stage") {
  SlabLift lift;
  plan::Stage yard = lift.plan.stages.front();
  yard.kind = plan::StageKind::yard;
  lift.plan.concrete.lifting_strength = 20.0 * MPa;
  lift.plan.stages.push_back(yard);
  REQUIRE(report_of(lift).verdict == Verdict::go);

  SECTION("one stage on HOLD") {
    lift.plan.concrete.lifting_strength.reset();
    const Report report = report_of(lift);
    CHECK(report.stages[0].verdict == Verdict::go);
    CHECK(report.stages[1].verdict == Verdict::hold);
    CHECK(report.verdict == Verdict::hold);
  }
  SECTION("one stage failed") {
    lift.plan.concrete.lifting_strength = 30.0 * MPa;
    const Report report = report_of(lift);
    CHECK(report.stages[0].verdict == Verdict::go);
    CHECK(report.stages[1].verdict == Verdict::no_go);
    CHECK(report.verdict == Verdict::no_go);
    CHECK(in(MPa, report.required_strength.value()) == Approx(30.0));
  }
}

TEST_CASE("the report carries the plan, the rules, the piece and the standing texts") {
  SlabLift lift;
  lift.plan.piece.revision = "C";
  const Report report = report_of(lift);
  CHECK(report.mark == "SL-1");
  CHECK(report.revision == "C");
  CHECK(report.rules == "hand-made");
  CHECK(report.fingerprint == "fingerprint");
  CHECK(in(m3, report.volume) == Approx(2.4));
  CHECK(in(kg, report.mass) == Approx(2.4 * 2400.0));
  CHECK(in(MPa, report.usable_strength.value()) == Approx(24.0));
  CHECK_FALSE(report.cautions.empty());
  CHECK_FALSE(report.not_checked.empty());
  CHECK_FALSE(report.choices.empty());
  CHECK(report.trace.steps().size() > 20);
}

TEST_CASE("a value from memory that took part is told once, until somebody confirms it") {
  SlabLift lift;
  lift.rules.headed.k_c.source.basis = Basis::from_memory;
  const auto names_k_c = [](const Report& report) {
    return std::ranges::count(report.unconfirmed, std::string("hand-made.k_c"), &Source::id);
  };
  CHECK(names_k_c(report_of(lift)) == 1);

  lift.rules.headed.k_c.source.confirmed_by = "the plant's engineer";
  CHECK(names_k_c(report_of(lift)) == 0);
}

TEST_CASE("every value from memory of the rule set that takes part in this lift is told") {
  SlabLift lift;
  auto& rules = lift.rules;
  const std::vector<Source*> sources{
      &rules.insert_load.source,     &rules.crane_load.source,      &rules.dynamic_factor.at("strip").source,
      &rules.sharing.source,         &rules.leg_stiffness_ratio.source, &rules.usable_strength.source,
      &rules.minimum_results.source, &rules.minimum_strength.source,  &rules.hardware_factor.source,
      &rules.minimum_sling_angle.source, &rules.weight_disagreement.source, &rules.insert_factor.source,
      &rules.headed.pullout.source,  &rules.headed.shear_bolt.source, &rules.headed.pryout_deep.source,
      &rules.headed.interaction_sum.source};
  for (Source* source : sources) source->basis = Basis::from_memory;
  const Report report = report_of(lift);
  for (const Source* source : sources) {
    CAPTURE(source->id);
    CHECK(std::ranges::count(report.unconfirmed, source->id, &Source::id) == 1);
  }
}
