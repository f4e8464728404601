// Shear of a beam in full: V of the overhanging beam by hand, 3/2 V/(b h) against 2 sqrt(f) psi over 2.4.

#include <cmath>

#include <catch2/catch.hpp>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-shear";

// 8.0 x 0.4 x 0.6 m on two legs, picks 1.6 m from its ends.
void make_beam(SlabLift& lift) {
  lift.plan.piece.solids[0].size = {8.0 * m, 0.4 * m, 0.6 * m};
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {headed_insert_at("A1", 1.6 * m, 0.2 * m), headed_insert_at("A2", 6.4 * m, 0.2 * m)};
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.6 * m;
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 4.0 * m;
}

Finding finding_of(SlabLift& lift) { return finding_for(id, "SL-1", lift.facts()); }

}  // namespace

TEST_CASE("beam on two picks: the shear beside a pick, 3/2 V/(b h)") {
  SlabLift lift;
  make_beam(lift);
  const auto facts = lift.facts();
  const Finding finding = finding_for(id, "SL-1", facts);
  CAPTURE(finding.text);
  REQUIRE(finding.demand);
  const auto& load = std::get<loads::StageLoad>(facts.load);
  Trace trace = Trace::recording();
  rule_named(id)->judge(facts, trace);
  double raise = 1.0, V_kN = 0.0;  // these rules have no multiplier
  for (const auto& entry : trace.steps()) {
    if (entry.step.result.symbol == "r_bend") raise = entry.step.result.number;
    for (const Term& term : entry.step.given)
      if (term.symbol == "V") V_kN = term.number;
  }
  const double V = in(kN, load.gear_loads.front().total) / 8.0 * (4.0 - 1.6);  // between the picks; the end is 1.6 m
  CHECK(V_kN == Approx(V).epsilon(0.001));
  CHECK(in(MPa, std::get<Stress>(*finding.demand)) == Approx(raise * 1.5 * V / 0.24 / 1000.0).epsilon(0.001));
  REQUIRE(finding.capacity);
  const double f_psi = in(psi, std::get<Stress>(facts.formula_strength));
  CHECK(in(psi, std::get<Stress>(*finding.capacity)) == Approx(2.0 * std::sqrt(f_psi) / 2.4).epsilon(1e-6));
}

TEST_CASE("shear of a beam: at, below and above the limit, and what is missing") {
  SlabLift lift;
  make_beam(lift);
  const double utilization = finding_of(lift).utilization.value();
  CHECK(utilization < 1.0);
  lift.rules.cracking.shear_factor.value = Ratio::from_value(2.4 / utilization * (1.0 - 1e-9));
  CHECK(finding_of(lift).result == Result::pass);
  lift.rules.cracking.shear_factor.value = Ratio::from_value(2.4 / utilization * (1.0 + 1e-9));
  CHECK(finding_of(lift).result == Result::fail);
  CHECK(finding_of(lift).text.find("of shear stress at x = ") != std::string::npos);
  check_says_why(finding_of(lift));
  lift.plan.piece.bending_check = "calculation 24-117";
  CHECK(finding_of(lift).result == Result::fail);  // a named check mends no failure
  lift.plan.piece.bending_check.clear();
  SECTION("no strength") { lift.plan.concrete.evidence.reset(); }
  SECTION("no leg length") { lift.plan.riggings[0].legs[0].length.reset(); }
  SECTION("turned in an earlier stage or this one") { lift.stage().kind = plan::StageKind::turn; }
  SECTION("may crack, and no bars") { lift.plan.piece.may_crack = true; }
  CHECK(finding_of(lift).result == Result::missing);
  check_says_why(finding_of(lift));
}

TEST_CASE("of a piece that may crack only the depth to its bars counts") {
  SlabLift lift;
  make_beam(lift);
  const double whole = finding_of(lift).utilization.value();
  plan::Bar bar;
  bar.line = {{0.0 * m, 0.2 * m, 0.05 * m}, {8.0 * m, 0.2 * m, 0.05 * m}};
  lift.plan.piece.may_crack = true;
  lift.plan.piece.bars = {bar};
  CHECK(finding_of(lift).utilization.value() == Approx(whole * 0.6 / 0.55));
}

TEST_CASE("what is no line passes without numbers") {
  SlabLift lift;
  const Finding finding = finding_of(lift);
  CHECK(finding.result == Result::pass);
  CHECK_FALSE(finding.demand);
}
