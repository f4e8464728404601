// bent-bar-eye, connection-loop, insert-angle and edge-insert-hanger-bar: what an insert is, and how it is
// pulled.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::numeric_limits<double>::quiet_NaN();

Result result_of(std::string_view rule, SlabLift& lift) {
  return finding_for(rule, "A1", lift.facts()).result;
}

// The slab made 0.2 m wide, so that the top face cuts the breakout body of a 0.2 m deep insert on both sides;
// the hook stands above the middle, and the legs lean across as far as the inserts stand off it.
struct EdgeLift : SlabLift {
  EdgeLift() {
    plan.piece.solids[0].size = {4.0 * m, 0.2 * m, 2.0 * m};
    for (plan::Insert& insert : plan.inserts)
      insert.at = {insert.at.x, insert.at.y < 1.0 * m ? 0.06 * m : 0.14 * m, 2.0 * m};
    plan.piece.stated_weight = 37.7 * kN;
    plan.riggings[0].equalised.clear();
    rules.edge_shear.value = Ratio{0.01};
  }
};

}  // namespace

TEST_CASE("bent-bar-eye: bar bent to an eye and toggles fail without a document, and are a note with one") {
  for (const auto& [kind, evaluated] : {std::pair{"bent-bar", Result::missing}, {"loop-bar", Result::pass},
                                        {"toggle", Result::missing}}) {
    CAPTURE(kind);
    SlabLift lift;
    lift.plan.inserts[0].kind = kind;
    const Finding finding = finding_for("bent-bar-eye", "A1", lift.facts());
    CHECK(finding.result == Result::fail);
    check_says_why(finding);
    lift.plan.inserts[0].engineers_document = "  ";
    CHECK(result_of("bent-bar-eye", lift) == Result::fail);
    lift.plan.inserts[0].engineers_document = "document 12";
    const Finding allowed = finding_for("bent-bar-eye", "A1", lift.facts());
    CHECK(allowed.result == Result::note);
    CHECK(allowed.text.find("document 12") != std::string::npos);
    CHECK(result_of("insert-kind", lift) == evaluated);  // a document is no resistance
    CHECK(finding_for("bent-bar-eye", "A2", lift.facts()).result == Result::pass);
  }
}

TEST_CASE(
    "connection-loop: made for a connection fails whatever the kind, a loop made for who knows what is "
    "missing") {
  SlabLift lift;
  CHECK(result_of("connection-loop", lift) == Result::pass);
  lift.plan.inserts[0].made_for = plan::MadeFor::connection;
  const Finding finding = finding_for("connection-loop", "A1", lift.facts());
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
  for (const char* kind : {"loop-strand", "loop-bar", "loop-rope", "bent-bar"}) {
    CAPTURE(kind);
    lift.plan.inserts[0].kind = kind;
    lift.plan.inserts[0].made_for.reset();
    const Finding open = finding_for("connection-loop", "A1", lift.facts());
    CHECK(open.result == Result::missing);
    check_says_why(open);
    lift.plan.inserts[0].made_for = plan::MadeFor::lifting;
    CHECK(result_of("connection-loop", lift) == Result::pass);
    lift.plan.inserts[0].made_for = plan::MadeFor::connection;
    CHECK(result_of("connection-loop", lift) == Result::fail);
  }
}

TEST_CASE("insert-angle: the largest angle of all situations in which the insert is pulled counts") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  const StageFacts facts = lift.facts();
  double most_deg = 0.0;
  for (const InsertSituation& s : std::get<std::vector<InsertSituation>>(facts.insert_situations)) {
    const auto& f = s.forces[0];
    if (f.tension > Force{})
      most_deg = std::max(most_deg, std::atan(f.shear / f.tension) * 180.0 / std::acos(-1.0));
  }
  REQUIRE(most_deg > 10.0);
  const Finding finding = finding_for("insert-angle", "A1", facts);
  CHECK(finding.result == Result::pass);
  CHECK(si_number(finding.demand.value()) == Approx(most_deg).epsilon(1e-12));
}

TEST_CASE("insert-angle: no limit, one that is no number, or no statics is missing") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  SECTION("no limit") { lift.plan.inserts[0].rating->maximum_angle.reset(); }
  SECTION("no rating") { lift.plan.inserts[0].rating.reset(); }
  SECTION("limit not a number") { lift.plan.inserts[0].rating->maximum_angle = not_a_number * deg; }
  SECTION("no statics") { lift.leg(0).length.reset(); }
  CHECK(result_of("insert-angle", lift) == Result::missing);
}

TEST_CASE("insert-angle: a force that is no number is missing, an insert that nothing pulls passes") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  StageFacts facts = lift.facts();
  auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  SECTION("not a number") {
    situations.back().forces[0].shear = not_a_number * kN;
    CHECK(finding_for("insert-angle", "A1", facts).result == Result::missing);
  }
  SECTION("never pulled") {
    for (InsertSituation& s : situations) s.forces[0] = {};
    CHECK(finding_for("insert-angle", "A1", facts).result == Result::pass);
  }
  SECTION("no situation") {
    situations.clear();
    CHECK(finding_for("insert-angle", "A1", facts).result == Result::missing);
  }
}

TEST_CASE("edge-insert-hanger-bar: in a wide face no bar is asked for") {
  SlabLift lift;
  CHECK_FALSE(lift.plan.inserts[0].hanger_bar.has_value());
  CHECK(result_of("edge-insert-hanger-bar", lift) == Result::pass);
  lift.plan.inserts[0].hanger_bar = false;
  CHECK(result_of("edge-insert-hanger-bar", lift) == Result::pass);
}

TEST_CASE(
    "edge-insert-hanger-bar: in a narrow face pulled across, a bar passes, no bar fails, not said is "
    "missing") {
  EdgeLift lift;
  const Finding open = finding_for("edge-insert-hanger-bar", "A1", lift.facts());
  CHECK(open.result == Result::missing);
  check_says_why(open);
  lift.plan.inserts[0].hanger_bar = false;
  const Finding wrong = finding_for("edge-insert-hanger-bar", "A1", lift.facts());
  CHECK(wrong.result == Result::fail);
  check_says_why(wrong);
  lift.plan.inserts[0].hanger_bar = true;
  CHECK(result_of("edge-insert-hanger-bar", lift) == Result::pass);
}

TEST_CASE("edge-insert-hanger-bar: pulled along the narrow face only, no bar is asked for") {
  EdgeLift lift;
  for (plan::Insert& insert : lift.plan.inserts) insert.at.y = 0.1 * m;
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};
  lift.plan.inserts.resize(2);
  CHECK(result_of("edge-insert-hanger-bar", lift) == Result::pass);
}

TEST_CASE(
    "edge-insert-hanger-bar: without its embedment the whole depth counts, and no bar is missing, not "
    "failed") {
  EdgeLift lift;
  lift.plan.inserts[0].kind = "rated";
  lift.plan.inserts[0].embedment.reset();
  CHECK(result_of("edge-insert-hanger-bar", lift) == Result::missing);
  lift.plan.inserts[0].hanger_bar = false;
  const Finding finding = finding_for("edge-insert-hanger-bar", "A1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("edge-insert-hanger-bar: no statics, or a number that is not one, is missing") {
  EdgeLift lift;
  SECTION("no statics") { lift.leg(0).length.reset(); }
  SECTION("embedment") { lift.plan.inserts[0].embedment = not_a_number * mm; }
  SECTION("share") { lift.rules.edge_shear.value = Ratio{not_a_number}; }
  CHECK(result_of("edge-insert-hanger-bar", lift) == Result::missing);
}

TEST_CASE("edge-insert-hanger-bar: in a curved face the flat face counts in which a headed insert is calculated") {
  const auto judged_in_a_curve = [](SlabLift& lift) {
    lift.plan.inserts[0].hanger_bar = false;
    const StageFacts facts = lift.facts();
    const piece::InsertSite inside = lift.body.sites[0];
    lift.body.sites[0].planar = false;
    std::get<resistances::HeadedInsert>(lift.prepared->headed[0]).site = &inside;
    return finding_for("edge-insert-hanger-bar", "A1", facts);
  };
  SlabLift wide;
  CHECK(judged_in_a_curve(wide).result == Result::pass);
  EdgeLift narrow;  // its edges are none of the piece: no failure
  const Finding finding = judged_in_a_curve(narrow);
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
  CHECK(finding.text.find("curved face and is pulled across it") != std::string::npos);
}

TEST_CASE("edge-insert-hanger-bar: forces that are no number, another face and a curved one are missing") {
  EdgeLift lift;
  StageFacts facts = lift.facts();
  SECTION("force") {
    std::get<std::vector<InsertSituation>>(facts.insert_situations).front().forces[0].shear_u =
        not_a_number * kN;
    CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).result == Result::missing);
  }
  SECTION("tension") {
    std::get<std::vector<InsertSituation>>(facts.insert_situations).front().forces[0].tension = not_a_number * kN;
    CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).text == "the force on the insert is not a usable number");
  }
  SECTION("a face that the insert does not lie in") {
    for (plan::PlanarPoint& corner : lift.body.sites[0].outline.outer) corner.x += 100.0 * m;
    CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).result == Result::missing);
    CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).text == "insert A1 does not lie inside the outline of its face");
  }
  SECTION("curved face") {
    lift.body.sites[0].planar = false;
    CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).result == Result::missing);
    lift.plan.inserts[0].hanger_bar = true;
    CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).result == Result::pass);
  }
}
