// Headed inserts, each way to fail: alone, in groups and rows, with forces put on them by hand. Slab of 4 x 2 m, headed
// inserts 200 mm deep, so that inserts nearer than 3 x 200 = 600 mm break out together (ACI 318-19 17.5.1.3.1).

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "checks/insert_modes.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

demands::InsertForce pulled(double tension_kN) {
  demands::InsertForce force;
  force.tension = tension_kN * kN;
  return force;
}

// Shear along the site's own axes: u points to the nearest edge.
demands::InsertForce sheared(double u_kN, double v_kN) {
  demands::InsertForce force;
  force.shear_u = u_kN * kN;
  force.shear_v = v_kN * kN;
  force.shear = std::hypot(u_kN, v_kN) * kN;
  return force;
}

InsertSituation with_forces(std::vector<demands::InsertForce> forces) { return {"by hand", std::move(forces)}; }

ModeCheck checked(Mode mode, const StageFacts& facts, const InsertSituation& situation, std::size_t insert) {
  Trace silent;
  return check_mode(mode, facts, situation, insert, silent);
}

using Together = std::vector<std::size_t>;

// A1 and A2 `apart` from each other in the middle of the slab, A3 and A4 far away.
struct Pair : SlabLift {
  explicit Pair(Length apart) {
    plan.inserts[0].at = {2.0 * m - 0.5 * apart, 1.0 * m, 0.3 * m};
    plan.inserts[1].at = {2.0 * m + 0.5 * apart, 1.0 * m, 0.3 * m};
    plan.inserts[2].at = {3.6 * m, 1.0 * m, 0.3 * m};
    plan.inserts[3].at = {0.4 * m, 1.0 * m, 0.3 * m};
    for (std::size_t i = 0; i < 4; ++i) leg(i).length = 3.0 * m;
  }
};

// A1 and A2 `apart` along the edge y = 0, `from_edge` from it.
struct PairAtEdge : SlabLift {
  PairAtEdge(Length apart, Length from_edge) {
    plan.inserts[0].at = {2.0 * m - 0.5 * apart, from_edge, 0.3 * m};
    plan.inserts[1].at = {2.0 * m + 0.5 * apart, from_edge, 0.3 * m};
    plan.inserts[2].at = {3.0 * m, 1.5 * m, 0.3 * m};
    plan.inserts[3].at = {1.0 * m, 1.5 * m, 0.3 * m};
    for (std::size_t i = 0; i < 4; ++i) leg(i).length = 3.0 * m;
  }
};

}  // namespace

TEST_CASE("inserts far apart break out alone") {
  Pair lift(700.0 * mm);
  const StageFacts facts = lift.facts();
  const auto situation = with_forces({pulled(10.0), pulled(20.0), pulled(0.0), pulled(0.0)});
  const ModeCheck check = checked(Mode::breakout, facts, situation, 1);
  CHECK(check.together.empty());
  CHECK(in(kN, check.demand.value()) == Approx(20.0));
  CHECK(check.comparison.result == Result::pass);
}

TEST_CASE("inserts close together break out with the sum of their tensions, and hold less than twice one") {
  Pair lift(300.0 * mm);
  const StageFacts facts = lift.facts();
  const auto both = with_forces({pulled(20.0), pulled(20.0), pulled(0.0), pulled(0.0)});
  const auto one = with_forces({pulled(20.0), pulled(0.0), pulled(0.0), pulled(0.0)});
  const ModeCheck alone = checked(Mode::breakout, facts, one, 0);
  REQUIRE(alone.together.empty());  // nobody pulls beside it
  for (const std::size_t insert : {0U, 1U}) {
    const ModeCheck check = checked(Mode::breakout, facts, both, insert);
    CHECK(check.together == Together{0, 1});
    CHECK(in(kN, check.demand.value()) == Approx(40.0));
    // ACI 318-19 17.6.2.1: A_Nc of two at 300 mm over A_Nco = (600 + 300) x 600 / 600^2 = 1.5
    CHECK(in(kN, check.nominal.value()) == Approx(1.5 * in(kN, alone.nominal.value())).epsilon(1e-9));
    CHECK(check.comparison.utilization.value() == Approx(2.0 / 1.5 * alone.comparison.utilization.value()).epsilon(1e-9));
  }
}

TEST_CASE("an unequal pair holds less: the resultant acts beside the centroid") {
  Pair lift(300.0 * mm);
  const StageFacts facts = lift.facts();
  const auto equal = with_forces({pulled(15.0), pulled(15.0), pulled(0.0), pulled(0.0)});
  const auto unequal = with_forces({pulled(18.0), pulled(12.0), pulled(0.0), pulled(0.0)});
  const ModeCheck centred = checked(Mode::breakout, facts, equal, 0);
  const ModeCheck off_centre = checked(Mode::breakout, facts, unequal, 0);
  REQUIRE(centred.together == Together{0, 1});
  REQUIRE(off_centre.together == Together{0, 1});
  CHECK(in(kN, off_centre.demand.value()) == Approx(30.0));
  // e = 150 mm (18 - 12) / 30 = 30 mm; psi_ec = 1 / (1 + 30 / (1.5 x 200)), ACI 318-19 17.6.2.3
  const double psi_ec = 1.0 / (1.0 + 30.0 / 300.0);
  CHECK(in(kN, off_centre.nominal.value()) == Approx(psi_ec * in(kN, centred.nominal.value())).epsilon(1e-9));
}

TEST_CASE("a close pair governs both of its inserts, however unequal they pull") {
  Pair lift(590.0 * mm);
  const StageFacts facts = lift.facts();
  const auto situation = with_forces({pulled(20.0), pulled(1.0), pulled(0.0), pulled(0.0)});
  CHECK(checked(Mode::breakout, facts, situation, 0).together == Together{0, 1});
  CHECK(checked(Mode::breakout, facts, situation, 1).together == Together{0, 1});
}

TEST_CASE("the worse of alone and together is kept, whichever insert is asked") {
  Pair lift(450.0 * mm);
  const StageFacts facts = lift.facts();
  for (double share = 0.0; share <= 1.0; share += 0.05) {
    const auto situation = with_forces({pulled(30.0 * share), pulled(30.0 * (1.0 - share)), pulled(0.0), pulled(0.0)});
    const ModeCheck check = checked(Mode::breakout, facts, situation, 0);
    CAPTURE(share);
    REQUIRE(check.comparison.utilization.has_value());
    const auto alone = with_forces({pulled(30.0 * share), pulled(0.0), pulled(0.0), pulled(0.0)});
    CHECK(check.comparison.utilization.value() >=
          checked(Mode::breakout, facts, alone, 0).comparison.utilization.value() - 1e-12);
  }
}

TEST_CASE("an insert that no leg pulls passes with no demand, in every mode") {
  Pair lift(300.0 * mm);
  const StageFacts facts = lift.facts();
  const auto situation = with_forces({pulled(0.0), pulled(0.0), pulled(0.0), pulled(0.0)});
  for (const Mode mode : all_modes) {
    const ModeCheck check = checked(mode, facts, situation, 3);
    CAPTURE(static_cast<int>(mode));
    CHECK(check.comparison.result == Result::pass);
    CHECK(check.demand.value() == Force{});
    CHECK(check.comparison.utilization.value_or(0.0) == 0.0);
  }
}

TEST_CASE("an idle insert takes the utilization of the pair it stands in only where it carries something") {
  Pair lift(300.0 * mm);
  const StageFacts facts = lift.facts();
  const auto situation = with_forces({pulled(20.0), pulled(0.0), pulled(0.0), pulled(0.0)});
  CHECK(checked(Mode::breakout, facts, situation, 1).comparison.utilization.value() == 0.0);
}

TEST_CASE("an insert that is not headed has no modes, and says so") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  lift.plan.inserts[1].kind = "loop-bar";
  const StageFacts facts = lift.facts();
  const auto situation = with_forces({pulled(1.0), pulled(1.0), pulled(1.0), pulled(1.0)});
  for (const Mode mode : all_modes)
    for (const std::size_t insert : {0U, 1U}) {
      const ModeCheck check = checked(mode, facts, situation, insert);
      CHECK(check.comparison.result == Result::missing);
      CHECK_FALSE(check.comparison.why.empty());
    }
  CHECK(judged("insert-breakout", facts).size() == 2);  // of A3 and A4 alone
}

TEST_CASE("pryout of a close pair is that of the pair") {
  Pair lift(300.0 * mm);
  const StageFacts facts = lift.facts();
  const auto both = with_forces({sheared(0.0, 10.0), sheared(0.0, 10.0), pulled(0.0), pulled(0.0)});
  const auto one = with_forces({sheared(0.0, 10.0), pulled(0.0), pulled(0.0), pulled(0.0)});
  const ModeCheck together = checked(Mode::pryout, facts, both, 0);
  const ModeCheck alone = checked(Mode::pryout, facts, one, 0);
  CHECK(together.together == Together{0, 1});
  CHECK(alone.together.empty());
  CHECK(in(kN, together.nominal.value()) == Approx(1.5 * in(kN, alone.nominal.value())).epsilon(1e-9));
}

TEST_CASE("side-face blowout: not far from edges, alone near one, the row where two stand close") {
  // h_ef > 2.5 c_a1: 200 > 2.5 x 70; row nearer than 6 x 70 = 420 mm (ACI 318-19 17.6.4)
  const auto both = with_forces({pulled(20.0), pulled(20.0), pulled(0.0), pulled(0.0)});
  PairAtEdge middle(300.0 * mm, 1000.0 * mm);
  const ModeCheck none = checked(Mode::side_blowout, middle.facts(), both, 0);
  CHECK_FALSE(none.applies);
  CHECK(none.comparison.result == Result::pass);

  PairAtEdge apart(500.0 * mm, 70.0 * mm);
  const ModeCheck alone = checked(Mode::side_blowout, apart.facts(), both, 0);
  CHECK(alone.applies);
  CHECK(alone.together.empty());
  CHECK(in(kN, alone.demand.value()) == Approx(20.0));

  PairAtEdge close(300.0 * mm, 70.0 * mm);
  const ModeCheck row = checked(Mode::side_blowout, close.facts(), both, 0);
  CHECK(row.together == Together{0, 1});
  CHECK(in(kN, row.demand.value()) == Approx(40.0));
  // N_sbg = (1 + s / (6 c_a1)) N_sb, ACI 318-19 17.6.4.2
  CHECK(in(kN, row.nominal.value()) ==
        Approx((1.0 + 300.0 / (6.0 * 70.0)) * in(kN, alone.nominal.value())).epsilon(1e-9));
}

TEST_CASE("edge breakout: the row takes the shears towards its edge together, and leaves out those away from it") {
  // row nearer than 3 x 150 = 450 mm (ACI 318-19 17.7.2)
  PairAtEdge lift(400.0 * mm, 150.0 * mm);
  const StageFacts facts = lift.facts();
  const auto towards = with_forces({sheared(10.0, 0.0), sheared(10.0, 0.0), pulled(0.0), pulled(0.0)});
  const ModeCheck row = checked(Mode::edge_breakout, facts, towards, 0);
  CHECK(row.together == Together{0, 1});
  CHECK(in(kN, row.demand.value()) == Approx(20.0));

  const auto opposed = with_forces({sheared(10.0, 0.0), sheared(-10.0, 0.0), pulled(0.0), pulled(0.0)});
  const ModeCheck alone = checked(Mode::edge_breakout, facts, opposed, 0);
  CHECK(alone.together.empty());  // the one that pulls away does not relieve the one that pulls out
  CHECK(in(kN, alone.demand.value()) == Approx(10.0));
  CHECK(alone.comparison.utilization.value() < row.comparison.utilization.value());

  PairAtEdge far(500.0 * mm, 150.0 * mm);
  CHECK(checked(Mode::edge_breakout, far.facts(), towards, 0).together.empty());
}

TEST_CASE("edge breakout: a shear outwards uses more of the edge than one inwards") {
  PairAtEdge lift(1000.0 * mm, 150.0 * mm);
  const StageFacts facts = lift.facts();
  const auto use = [&](double u_kN, double v_kN) {
    const auto situation = with_forces({sheared(u_kN, v_kN), pulled(0.0), pulled(0.0), pulled(0.0)});
    return checked(Mode::edge_breakout, facts, situation, 0).comparison.utilization.value();
  };
  CHECK(use(10.0, 0.0) > use(0.0, 10.0));
  CHECK(use(0.0, 10.0) > use(-10.0, 0.0));
}

TEST_CASE("a force that is not a number is missing in every mode that it takes part in") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  Pair lift(300.0 * mm);
  const StageFacts facts = lift.facts();
  const auto spoilt = with_forces({{.tension = not_a_number * kN, .shear = not_a_number * kN}, pulled(10.0), pulled(0.0),
                                   pulled(0.0)});
  for (const Mode mode : {Mode::steel_tension, Mode::breakout, Mode::pullout, Mode::steel_shear, Mode::edge_breakout,
                          Mode::pryout}) {
    CAPTURE(static_cast<int>(mode));
    CHECK(checked(mode, facts, spoilt, 0).comparison.result == Result::missing);
  }
}

TEST_CASE("without a strength for the formulas the concrete modes are missing and the steel ones are not") {
  SlabLift lift;
  lift.plan.concrete.evidence.reset();
  const StageFacts facts = lift.facts();
  const auto situation = with_forces({pulled(1.0), pulled(1.0), pulled(1.0), pulled(1.0)});
  for (const Mode mode : {Mode::breakout, Mode::pullout, Mode::side_blowout, Mode::edge_breakout, Mode::pryout})
    CHECK(checked(mode, facts, situation, 0).comparison.result == Result::missing);
  CHECK(checked(Mode::steel_tension, facts, situation, 0).comparison.result == Result::pass);
  CHECK(checked(Mode::steel_shear, facts, situation, 0).comparison.result == Result::pass);
}

TEST_CASE("missing is worse than any utilization, what does not apply is better than none") {
  ModeCheck missing, failed, passed, none;
  missing.comparison.result = Result::missing;
  failed.comparison = {Result::fail, 3.0, {}, {}};
  passed.comparison = {Result::pass, 0.0, {}, {}};
  none.comparison = {Result::pass, {}, {}, {}};
  none.applies = false;
  CHECK(less_severe(failed, missing));
  CHECK_FALSE(less_severe(missing, failed));
  CHECK(less_severe(passed, failed));
  CHECK(less_severe(none, passed));
  CHECK_FALSE(less_severe(passed, passed));
}

TEST_CASE("the table holds the check of every situation, insert and mode, and refuses what is not in it") {
  SlabLift lift;
  const StageFacts facts = lift.facts();
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  CHECK(facts.modes.checks.size() == situations.size() * 4 * all_modes.size());
  for (std::size_t s = 0; s < situations.size(); ++s)
    for (std::size_t insert = 0; insert < 4; ++insert)
      for (const Mode mode : all_modes) {
        const ModeCheck fresh = checked(mode, facts, situations[s], insert);
        CHECK(facts.modes.at(s, insert, mode).comparison.utilization == fresh.comparison.utilization);
        CHECK(facts.modes.at(s, insert, mode).demand == fresh.demand);
      }
  CHECK_THROWS(facts.modes.at(situations.size(), 0, Mode::breakout));
  CHECK_THROWS(facts.modes.at(0, 4, Mode::breakout));
}

TEST_CASE("four modes are of tension, three of shear") {
  std::size_t count = 0;
  for (const Mode mode : all_modes) count += in_tension(mode) ? 1U : 0U;
  CHECK(count == 4);
  CHECK_FALSE(in_tension(Mode::pryout));
}
