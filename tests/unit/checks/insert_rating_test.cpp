// insert-rating: the whole force of the leg against what the supplier declares, behind the rule set's own factor.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

struct RatedLift : SlabLift {
  RatedLift() { plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m); }
  plan::Rating& rating() { return *plan.inserts[0].rating; }
  Finding finding() { return finding_for("insert-rating", "A1", facts()); }
};

}  // namespace

TEST_CASE("insert-rating: the demand is tension and shear together, in the worst situation") {
  RatedLift lift;
  const StageFacts facts = lift.facts();
  double most_kN = 0.0;
  for (const InsertSituation& situation : std::get<std::vector<InsertSituation>>(facts.insert_situations))
    most_kN = std::max(most_kN, std::hypot(in(kN, situation.forces[0].tension), in(kN, situation.forces[0].shear)));
  const Finding finding = finding_for("insert-rating", "A1", facts);
  CHECK(si_number(finding.demand.value()) == Approx(most_kN).epsilon(1e-14));
  CHECK(finding.result == Result::pass);
}

TEST_CASE("insert-rating: exactly what is declared passes, a little less declared fails") {
  RatedLift lift;
  const double demand_kN = si_number(lift.finding().demand.value());
  lift.rating().at_strength = 24.0 * MPa;  // the strength shown
  lift.rating().load = (1.0 + 1e-12) * demand_kN * kN;
  CHECK(lift.finding().result == Result::pass);
  CHECK(lift.finding().utilization.value() == Approx(1.0).epsilon(1e-9));
  lift.rating().load = 0.999 * demand_kN * kN;
  const Finding finding = lift.finding();
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
}

TEST_CASE("insert-rating: a factor of the supplier above that of the rule set gains nothing, one below is not forgiven") {
  RatedLift lift;
  lift.rating().at_strength = 20.0 * MPa;
  lift.rating().load = 30.0 * kN;
  lift.rating().includes_factor = 5.0;
  CHECK(si_number(lift.finding().capacity.value()) == Approx(30.0));
  lift.rating().includes_factor = 3.0;
  CHECK(si_number(lift.finding().capacity.value()) == Approx(30.0 * 3.0 / 4.0));
}

TEST_CASE("insert-rating: what is not declared is missing, each with its remedy") {
  RatedLift lift;
  SECTION("no rating") { lift.plan.inserts[0].rating.reset(); }
  SECTION("no strength") { lift.rating().at_strength.reset(); }
  SECTION("no factor") { lift.rating().includes_factor.reset(); }
  SECTION("no evidence of strength") { lift.plan.concrete.evidence.reset(); }
  const Finding finding = lift.finding();
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("insert-rating: what is not a number is missing") {
  RatedLift lift;
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  SECTION("declared load") { lift.rating().load = not_a_number * kN; }
  SECTION("declared strength") { lift.rating().at_strength = not_a_number * MPa; }
  SECTION("included factor") { lift.rating().includes_factor = not_a_number; }
  SECTION("unlimited load") { lift.rating().load = std::numeric_limits<double>::infinity() * kN; }
  SECTION("factor of the rule set") { lift.rules.insert_factor.value = Ratio{not_a_number}; }
  CHECK(lift.finding().result == Result::missing);
}

TEST_CASE("insert-rating: a force that is not a number, in any situation, is missing") {
  RatedLift lift;
  const StageFacts facts = lift.facts();
  const auto count = std::get<std::vector<InsertSituation>>(facts.insert_situations).size();
  for (std::size_t s = 0; s < count; ++s) {
    StageFacts spoilt = facts;
    std::get<std::vector<InsertSituation>>(spoilt.insert_situations)[s].forces[0].shear =
        std::numeric_limits<double>::quiet_NaN() * kN;
    CHECK(finding_for("insert-rating", "A1", spoilt).result == Result::missing);
  }
}

TEST_CASE("insert-rating: situations that were never computed are missing, not a demand of zero") {
  RatedLift lift;
  StageFacts facts = lift.facts();
  facts.insert_situations = std::vector<InsertSituation>{};
  const Finding finding = finding_for("insert-rating", "A1", facts);
  CHECK(finding.result == Result::missing);
  CHECK_FALSE(finding.text.empty());
}

TEST_CASE("insert-rating: a headed insert with a rating is held to both") {
  SlabLift lift;
  lift.plan.inserts[0].rating = plan::Rating{.load = 1.0 * kN, .at_strength = 20.0 * MPa, .includes_factor = 4.0, .place = {}};
  const StageFacts facts = lift.facts();
  CHECK(finding_for("insert-rating", "A1", facts).result == Result::fail);
  CHECK(finding_for("insert-breakout", "A1", facts).result == Result::pass);
  CHECK(judged("insert-rating", facts).size() == 1);
}
