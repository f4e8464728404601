// What the other tests of piece-cracking leave open: a named check beside strands that are computed, legs at two heights, what
// the report says was not checked of bending, and declared loads in weaker concrete.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/evaluate.hpp"
#include "checks/standing_texts.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-cracking";

// 12 m x 0.4 x 0.6 m on two picks near its ends, legs nearly upright; nothing grips.
void make_beam(SlabLift& lift) {
  lift.plan.piece.solids[0].size = {12.0 * m, 0.4 * m, 0.6 * m};
  lift.plan.piece.stated_weight = 67.8 * kN;
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {headed_insert_at("A1", 0.5 * m, 0.2 * m), headed_insert_at("A2", 11.5 * m, 0.2 * m)};
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.6 * m;
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};
  lift.plan.riggings[0].equalised.clear();
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 1000.0 * m;
}

void add_strand(SlabLift& lift, Force force) {
  plan::Strand made;
  made.name = "bottom row";
  made.force = force;
  made.line = {{0.0 * m, 0.2 * m, 0.1 * m}, {12.0 * m, 0.2 * m, 0.1 * m}};
  made.transfer_length = 0.6 * m;
  lift.plan.piece.strands = {made};
  lift.plan.concrete.release_strength = 20.0 * MPa;
}

plan::Bar bar(Length height) {
  plan::Bar made;
  made.name = "bars";
  made.area = 1500.0 * mm2;
  made.yield_strength = 420.0 * MPa;
  made.line = {{0.1 * m, 0.2 * m, height}, {11.9 * m, 0.2 * m, height}};
  made.spacing = 100.0 * mm;
  return made;
}

std::string not_checked_of_bending(SlabLift& lift) {
  lift.facts();
  return evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "", {}).not_checked.front();
}

}  // namespace

TEST_CASE(
    "a named check beside strands that are computed mends no failure, and none of what the plan leaves out") {
  SlabLift lift;
  make_beam(lift);
  add_strand(lift, 10.0 * kN);
  const auto found = [&] { return judged(id, lift.facts()); };
  REQUIRE(found().size() == 2);
  CHECK(found()[0].result == Result::fail);
  CHECK_THAT(found()[0].text, Catch::Contains("of tension at the bottom of the piece, at x = ") &&
                                  Catch::Contains("; the strands take "));
  CHECK(found()[0].remedy == "a strongback, picks that halve the spans, steeper legs, or more strength");
  lift.plan.piece.bending_check = "sheet 6";
  REQUIRE(found().size() == 2);
  CHECK(found()[0].result == Result::fail);
  lift.leg(0).length.reset();
  REQUIRE(found().size() == 1);
  CHECK(found()[0].result == Result::missing);
  CHECK(found()[0].text == "the leg to A1 has no length");
}

TEST_CASE("strands that press the concrete too hard say where and what helps") {
  SlabLift lift;
  make_beam(lift);
  add_strand(lift, 2500.0 * kN);
  const auto findings = judged(id, lift.facts());
  REQUIRE(findings.size() == 2);
  CHECK(findings[1].result == Result::fail);
  CHECK_THAT(findings[1].text, Catch::Contains(" of compression at the bottom of the piece, at x = ") &&
                                   Catch::EndsWith(", 14.4 MPa is allowed at this strength"));
  CHECK(
      findings[1].remedy ==
      "more strength before the strands are released and the piece is lifted, or fewer strands bonded there");
}

TEST_CASE(
    "legs at two heights: without their thrust the beam would not be in balance, and nothing is told of "
    "upright legs") {
  SlabLift lift;
  make_beam(lift);
  plan::Solid high = lift.plan.piece.solids[0];
  high.name = "high half";
  high.at = {6.0 * m, 0.0 * m, 0.6 * m};
  high.size = {6.0 * m, 0.4 * m, 0.4 * m};
  lift.plan.piece.solids.push_back(high);
  lift.plan.piece.stated_weight.reset();
  lift.plan.inserts[0].at = {1.0 * m, 0.2 * m, 0.6 * m};
  lift.plan.inserts[1].at = {11.0 * m, 0.2 * m, 1.0 * m};
  // Its middle is at 6.75 m; the hook 7 m up over it.
  lift.leg(0).length = std::hypot(5.75, 6.4) * m;
  lift.leg(1).length = std::hypot(4.25, 6.0) * m;
  lift.rules.cracking.factor.value = Ratio{1e3};
  const Finding finding = finding_for(id, "SL-1", lift.facts());
  CAPTURE(finding.text);
  CHECK(finding.result == Result::fail);
  CHECK(finding.remedy == "a strongback, picks that halve the spans, steeper legs, or more strength");
}

TEST_CASE("what is not checked of bending follows from what was computed in every stage") {
  SlabLift slab;
  CHECK_THAT(not_checked_of_bending(slab),
             Catch::StartsWith("torsion and bending sideways of the piece (torsion of a ring is)"));
  SECTION("not assessed is no note: it is told by its finding") {
    slab.leg(0).length.reset();
    CHECK_THAT(not_checked_of_bending(slab),
               Catch::StartsWith("torsion and bending sideways of the piece (torsion"));
  }
  SECTION("a check elsewhere") {
    slab.plan.piece.solids[0].size = {4.0 * m, 2.0 * m, 1.5 * m};
    for (plan::Insert& insert : slab.plan.inserts) insert.at.z = 1.5 * m;
    slab.plan.piece.stated_weight.reset();
    slab.plan.piece.bending_check = "sheet 6";
    CHECK_THAT(not_checked_of_bending(slab),
               Catch::StartsWith("cracking, bending and shear of the piece, but of the walls"));
  }
  SECTION("strands whose bending is checked elsewhere") {
    slab.plan.concrete.release_strength = 20.0 * MPa;
    slab.plan.piece.bending_check = "sheet 6";
    CHECK_THAT(not_checked_of_bending(slab),
               Catch::StartsWith("cracking, bending and shear of the piece, but of the walls"));
  }
  SECTION("bars that carry it cracked: the note of its cracks stands beside what was computed") {
    SlabLift beam;
    make_beam(beam);
    beam.plan.piece.may_crack = true;
    beam.plan.piece.bars = {bar(60.0 * mm), bar(540.0 * mm)};
    CHECK_THAT(not_checked_of_bending(beam),
               Catch::EndsWith("and bars but those along it that carry it cracked, in any stage"));
  }
}

TEST_CASE("a grip that the plan states is told beside that of the table") {
  SlabLift lift;
  lift.plan.form->contacts[0].adhesion = 2.0 * kPa;
  lift.tables.form_faces.at("smooth").adhesion.source.value_text = "1 kPa";
  CHECK(stated_instead(lift.plan, lift.rules, lift.tables) ==
        std::vector<std::string>{
            "form contact 'smooth': grip of 2.00 kPa as the plan states it; the table has 1 kPa"});
  lift.plan.form->contacts[0].finish = "velvet";
  CHECK(stated_instead(lift.plan, lift.rules, lift.tables) ==
        std::vector<std::string>{
            "form contact 'velvet': grip of 2.00 kPa as the plan states it; the table has none"});
  lift.plan.form.reset();
  CHECK(stated_instead(lift.plan, lift.rules, lift.tables).empty());
  lift.stage().dynamic_factor = Ratio{1.25};
  CHECK_THAT(stated_instead(lift.plan, lift.rules, lift.tables).at(0),
             Catch::StartsWith("stage strip: dynamic factor 1.250 as the plan states it; the rule set has"));
  lift.stage().kind = plan::StageKind::turn;
  CHECK(stated_instead(lift.plan, lift.rules, lift.tables).at(0) ==
        "stage turn: dynamic factor 1.250 as the plan states it; the rule set has none");
}

TEST_CASE(
    "insert-rating: in concrete weaker than the declared load asks, what would fail there fails, all else is "
    "missing") {
  SlabLift lift;
  for (plan::Insert& insert : lift.plan.inserts)
    insert = rated_insert_at(insert.id, insert.at.x, insert.at.y);
  lift.rules.rating_scaling.value = tables::RatingScaling::as_declared;
  const auto found = [&] { return finding_for("insert-rating", "A1", lift.facts()); };
  const Force pull = std::get<Force>(*found().demand);
  for (plan::Insert& insert : lift.plan.inserts) {
    insert.rating->at_strength = 30.0 * MPa;  // 24 MPa were shown
    insert.rating->load = pull * (1.0 + 1e-9);
  }
  CHECK(found().result == Result::missing);
  CHECK_FALSE(found().utilization);
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->load = pull * (1.0 - 1e-9);
  const Finding weak = found();
  CHECK(weak.result == Result::fail);
  CHECK_THAT(weak.text, Catch::StartsWith("insert A1 is asked for "));
  CHECK(weak.remedy == "a larger insert, more strength before lifting, or steeper legs");
  // A factor of the supplier above that of the rule set allows no more than is declared.
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->includes_factor = 5.0;
  CHECK(found().result == Result::fail);
  for (plan::Insert& insert : lift.plan.inserts) {
    insert.rating->at_strength = 20.0 * MPa;
    insert.rating->load = pull * (1.0 + 1e-9);
  }
  CHECK(found().result == Result::pass);
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->load = pull * (1.0 - 1e-9);
  CHECK(found().result == Result::fail);
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->at_strength.reset();
  CHECK(found().result == Result::missing);
}
