// Two reports held against each other: the split of each use gives the use back, the largest part is the one farthest from 1 up
// or down, what only one set says is told, and an assumption is named by what it does.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include "comparison/contrast.hpp"
#include "support/hand_made_report.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Finding;
using checks::Result;
using checks::Verdict;
using comparison::Part;

namespace {

Finding finding_of(std::string_view rule, const std::string& subject, double asked_kN, double held_kN, double factor) {
  Finding finding = hand_made_finding(rule, subject, Result::pass);
  finding.demand = Force{asked_kN * kN};
  finding.nominal = Force{held_kN * kN};
  finding.factor = factor;
  finding.capacity = Force{held_kN / factor * kN};
  finding.utilization = asked_kN * factor / held_kN;
  finding.result = *finding.utilization <= 1.0 ? Result::pass : Result::fail;
  return finding;
}

checks::Report report_with(std::vector<Finding> findings, Verdict verdict) {
  checks::Report report = hand_made_report();
  report.stages.front().findings = std::move(findings);
  report.stages.front().verdict = verdict;
  report.verdict = verdict;
  return report;
}

comparison::StageContrast stage_of(const checks::Report& first, const checks::Report& other,
                                   const std::vector<comparison::Swapped>& swapped = {}) {
  const auto stages = comparison::contrast(first, other, swapped);
  REQUIRE(stages.size() == 1);
  return stages.front();
}

comparison::Swapped swap(std::string_view name, const checks::Report& then) {
  return {name, {"one"}, {"two"}, then.stages, {}};
}

}  // namespace

TEST_CASE("the three parts of a difference multiply to the ratio of the uses") {
  // 12 x 4 / 60 = 0.8 against 18 x 1.5 / 50 = 0.54
  const auto ratios = comparison::ratios_of(finding_of("insert-breakout", "A1", 12.0, 60.0, 4.0),
                                            finding_of("insert-breakout", "A1", 18.0, 50.0, 1.5));
  REQUIRE(ratios);
  CHECK(ratios->use == Approx(0.675).epsilon(1e-12));
  CHECK(ratios->demand.value() == Approx(1.5).epsilon(1e-12));
  CHECK(ratios->nominal.value() == Approx(50.0 / 60.0).epsilon(1e-12));
  CHECK(ratios->factor.value() == Approx(0.375).epsilon(1e-12));
  CHECK(*ratios->demand * *ratios->factor / *ratios->nominal == Approx(ratios->use).epsilon(1e-12));
  CHECK(ratios->largest == Part::factor);
}

TEST_CASE("the largest part is the farthest from 1, whether it raises or lowers the use") {
  const Finding first = finding_of("insert-breakout", "A1", 10.0, 100.0, 4.0);
  CHECK(comparison::ratios_of(first, finding_of("insert-breakout", "A1", 20.0, 100.0, 3.0))->largest == Part::demand);
  CHECK(comparison::ratios_of(first, finding_of("insert-breakout", "A1", 10.0, 45.0, 3.0))->largest == Part::nominal);
  CHECK(comparison::ratios_of(first, finding_of("insert-breakout", "A1", 10.0, 230.0, 3.0))->largest == Part::nominal);
  CHECK(comparison::ratios_of(first, finding_of("insert-breakout", "A1", 11.0, 100.0, 1.5))->largest == Part::factor);
  CHECK_FALSE(comparison::ratios_of(first, first)->largest);
}

TEST_CASE("no split where one cannot be made, and no ratio where a use is missing or zero") {
  const Finding whole = finding_of("insert-breakout", "A1", 12.0, 60.0, 4.0);
  Finding without = whole;
  without.nominal.reset();
  const auto ratios = comparison::ratios_of(whole, without);
  REQUIRE(ratios);
  CHECK(ratios->use == 1.0);
  CHECK_FALSE(ratios->demand);
  CHECK_FALSE(ratios->largest);

  Finding other_kind = whole;
  other_kind.demand = Stress{12.0 * MPa};
  other_kind.nominal = Stress{60.0 * MPa};
  CHECK_FALSE(comparison::ratios_of(whole, other_kind)->demand);

  Finding other_use = whole;  // a use that its own figures do not give
  other_use.utilization = 0.9;
  CHECK_FALSE(comparison::ratios_of(whole, other_use)->demand);

  Finding none = whole, zero = whole, not_a_number = whole;
  none.utilization.reset();
  zero.utilization = 0.0;
  not_a_number.utilization = std::numeric_limits<double>::quiet_NaN();
  for (const Finding& bad : {none, zero, not_a_number}) {
    CHECK_FALSE(comparison::ratios_of(whole, bad));
    CHECK_FALSE(comparison::ratios_of(bad, whole));
  }
}

TEST_CASE("what decides under either set is explained: the worst of each, and a rule that one passes and the other fails") {
  const auto first = report_with({finding_of("insert-breakout", "A1", 10.0, 40.0, 4.0), finding_of("insert-pullout", "A1", 8.0, 40.0, 4.0),
                                  finding_of("sling-overload", "A1", 2.0, 10.0, 1.0)}, Verdict::go);
  const auto other = report_with({finding_of("insert-breakout", "A1", 10.0, 60.0, 1.5), finding_of("insert-pullout", "A1", 50.0, 40.0, 1.5),
                                  finding_of("sling-overload", "A1", 2.0, 10.0, 1.0)}, Verdict::no_go);
  const auto stage = stage_of(first, other);
  CHECK(stage.first == Verdict::go);
  CHECK(stage.other == Verdict::no_go);
  REQUIRE(stage.pairs.size() == 3);
  std::vector<std::string_view> explained;
  for (const auto& one : stage.explained) explained.push_back(one.pair.rule);
  CHECK(explained == std::vector<std::string_view>{"insert-breakout", "insert-pullout"});
  REQUIRE(stage.differences.size() == 1);
  CHECK(stage.differences.front().rule == "insert-pullout");
  CHECK(stage.differences.front().first == Result::pass);
  CHECK(stage.differences.front().other == Result::fail);
  CHECK(stage.differences.front().turned_by.empty());
}

TEST_CASE("a finding that only one set gives is told, and so is a number that only one set has") {
  Finding without_number = hand_made_finding("insert-side-blowout", "A1", Result::pass);
  without_number.utilization.reset();
  const auto first = report_with({finding_of("insert-breakout", "A1", 1.0, 40.0, 4.0), without_number}, Verdict::go);
  const auto other = report_with({finding_of("insert-breakout", "A1", 1.0, 40.0, 4.0),
                                  finding_of("insert-side-blowout", "A1", 1.0, 40.0, 1.5),
                                  checks::missing("insert-rating", "A2", "it is declared for stronger concrete", "wait")},
                                 Verdict::hold);
  const auto stage = stage_of(first, other);
  REQUIRE(stage.differences.size() == 2);
  CHECK(stage.differences[0].rule == "insert-side-blowout");
  CHECK(stage.differences[0].first == Result::pass);
  CHECK(stage.differences[1].rule == "insert-rating");
  CHECK_FALSE(stage.differences[1].first);
  CHECK(stage.differences[1].other == Result::missing);
  CHECK(stage.differences[1].other_text == "it is declared for stronger concrete");
  const auto back = stage_of(other, first);
  CHECK_FALSE(back.differences.back().other);
}

TEST_CASE("what changes a use is named with its number, largest first, what changes nothing is not") {
  const auto first = report_with({finding_of("insert-breakout", "A1", 10.0, 100.0, 4.0)}, Verdict::go);
  const auto other = report_with({finding_of("insert-breakout", "A1", 20.0, 30.0, 1.5)}, Verdict::go);
  const auto with_load = report_with({finding_of("insert-breakout", "A1", 12.0, 100.0, 4.0)}, Verdict::go);
  const auto with_model = report_with({finding_of("insert-breakout", "A1", 10.0, 30.0, 4.0)}, Verdict::no_go);
  const auto stage = stage_of(first, other, {swap("load", with_load), swap("nothing", first), swap("model", with_model)});
  REQUIRE(stage.explained.size() == 1);
  const auto& effects = stage.explained.front().effects;
  REQUIRE(effects.size() == 2);
  CHECK(effects[0].assumption == "model");
  CHECK(effects[0].use == Approx(40.0 / 30.0).epsilon(1e-12));
  CHECK(effects[0].ratio == Approx(100.0 / 30.0).epsilon(1e-12));
  CHECK(effects[1].assumption == "load");
  CHECK(effects[1].ratio == Approx(1.2).epsilon(1e-12));
  CHECK(effects[1].first == "one");
  CHECK(effects[1].other == "two");
  REQUIRE(stage.turned.size() == 1);
  CHECK(stage.turned.front().assumption == "model");
  CHECK(stage.turned.front().verdict == Verdict::no_go);
}

TEST_CASE("an assumption that the other set does not use for a rule is not told of that rule, nor of the verdict") {
  const auto first = report_with({finding_of("insert-breakout", "A1", 12.0, 40.0, 4.0), finding_of("insert-rating", "B1", 8.0, 40.0, 4.0)},
                                 Verdict::no_go);
  const auto other = report_with({finding_of("insert-breakout", "A1", 12.0, 40.0, 1.5), finding_of("insert-rating", "B1", 8.0, 40.0, 3.0)},
                                 Verdict::go);
  const auto then = report_with({finding_of("insert-breakout", "A1", 12.0, 40.0, 3.0), finding_of("insert-rating", "B1", 8.0, 40.0, 3.0)},
                                Verdict::go);
  comparison::Swapped factor = swap("factor", then);
  factor.not_meant_for = {"insert-breakout"};
  const auto stage = stage_of(first, other, {factor});
  CHECK(stage.turned.empty());
  for (const auto& one : stage.explained) CHECK(one.effects.empty() == (one.pair.rule == "insert-breakout"));
  REQUIRE(stage.differences.size() == 1);
  CHECK(stage.differences.front().turned_by.empty());
}

TEST_CASE("a share of other uses does not split") {
  Finding share = finding_of("insert-interaction", "A1", 1.0, 1.0, 1.0);
  share.demand = Ratio{1.2};
  share.nominal = Ratio{1.0};
  share.utilization = 1.2;
  REQUIRE(comparison::ratios_of(share, share));
  CHECK_FALSE(comparison::ratios_of(share, share)->demand);
}

TEST_CASE("a difference names the assumptions that make it") {
  const auto first = report_with({checks::passed("gear-inspection", "chain")}, Verdict::go);
  const auto other = report_with({checks::missing("gear-inspection", "chain", "too long ago", "look")}, Verdict::hold);
  const auto stage = stage_of(first, other, {swap("interval", other), swap("angle", first)});
  REQUIRE(stage.differences.size() == 1);
  CHECK(stage.differences.front().turned_by == std::vector<std::string>{"interval"});
}

TEST_CASE("a note and a pass are no difference") {
  const auto first = report_with({checks::passed("point-loss", "rig")}, Verdict::go);
  const auto other = report_with({checks::noted("point-loss", "rig", "it would not hold")}, Verdict::go);
  CHECK(stage_of(first, other).differences.empty());
}

TEST_CASE("reports of two plans are not held together") {
  checks::Report longer = hand_made_report();
  longer.stages.push_back(longer.stages.front());
  CHECK_THROWS_AS(comparison::contrast(hand_made_report(), longer, {}), std::invalid_argument);
}
