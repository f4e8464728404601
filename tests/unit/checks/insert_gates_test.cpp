// insert-kind, insert-position, insert-certificate and insert-embedment: each insert before any formula.

#include <catch2/catch.hpp>

#include <limits>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("insert-position: confirmed passes, not confirmed is missing, confirmed as wrong fails") {
  SlabLift lift;
  CHECK(finding_for("insert-position", "A2", lift.facts()).result == Result::pass);

  lift.plan.inserts[1].position_confirmed.reset();
  const Finding unknown = finding_for("insert-position", "A2", lift.facts());
  CHECK(unknown.result == Result::missing);
  check_says_why(unknown);

  lift.plan.inserts[1].position_confirmed = false;
  const Finding wrong = finding_for("insert-position", "A2", lift.facts());
  CHECK(wrong.result == Result::fail);
  check_says_why(wrong);
  CHECK(finding_for("insert-position", "A1", lift.facts()).result == Result::pass);
}

TEST_CASE("insert-certificate: a lot passes, none is missing") {
  SlabLift lift;
  CHECK(finding_for("insert-certificate", "A2", lift.facts()).result == Result::pass);
  lift.plan.inserts[1].certificate = "";
  const Finding finding = finding_for("insert-certificate", "A2", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("insert-kind: headed and rated are evaluated, any other kind is missing, and so is the verdict") {
  SlabLift lift;
  CHECK(finding_for("insert-kind", "A1", lift.facts()).result == Result::pass);
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  CHECK(finding_for("insert-kind", "A1", lift.facts()).result == Result::pass);
  for (const char* kind : {"toggle", "bent-bar", "", "Headed"}) {
    CAPTURE(kind);
    lift.plan.inserts[0] = headed_insert_at("A1", 1.0 * m, 0.5 * m);
    lift.plan.inserts[0].kind = kind;
    lift.plan.inserts[0].engineers_document = "document 12";  // else bent-bar-eye fails a bar bent to a loop
    const StageFacts facts = lift.facts();
    const Finding finding = finding_for("insert-kind", "A1", facts);
    CHECK(finding.result == Result::missing);
    check_says_why(finding);
    Trace silent;
    CHECK(evaluate_stage(facts, silent).verdict == Verdict::hold);
  }
}

TEST_CASE("insert-kind: another kind with a rating is still HOLD until the plan calls it rated") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  lift.plan.inserts[0].kind = "Rated";
  const StageFacts facts = lift.facts();
  CHECK(finding_for("insert-kind", "A1", facts).result == Result::missing);
  CHECK(finding_for("insert-rating", "A1", facts).result == Result::pass);  // held to its rating all the same
  Trace silent;
  CHECK(evaluate_stage(facts, silent).verdict == Verdict::hold);
}

TEST_CASE("insert-embedment: a head inside the concrete passes, one that comes out behind fails") {
  SlabLift lift;
  CHECK(finding_for("insert-embedment", "A1", lift.facts()).result == Result::pass);
  lift.plan.inserts[0].embedment = 310.0 * mm;  // slab: 300 mm
  const Finding finding = finding_for("insert-embedment", "A1", lift.facts());
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
}

TEST_CASE("insert-embedment: a head flush with the far face passes here and is HOLD in the formulas") {
  SlabLift lift;
  lift.facts();
  lift.plan.inserts[0].embedment = lift.body.sites[0].thickness;
  const StageFacts facts = lift.facts();
  CHECK(finding_for("insert-embedment", "A1", facts).utilization.value() == 1.0);
  CHECK(finding_for("insert-breakout", "A1", facts).result == Result::missing);
}

TEST_CASE("insert-embedment: no embedment, or one that is no number, is missing") {
  SlabLift lift;
  SECTION("not in the plan") { lift.plan.inserts[0].embedment.reset(); }
  SECTION("not a number") { lift.plan.inserts[0].embedment = std::numeric_limits<double>::quiet_NaN() * mm; }
  SECTION("zero") { lift.plan.inserts[0].embedment = 0.0 * mm; }
  const Finding finding = finding_for("insert-embedment", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  CHECK_FALSE(finding.text.empty());
}

TEST_CASE("insert-embedment: a rated insert has none to judge") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  CHECK(judged("insert-embedment", lift.facts()).size() == 3);
}
