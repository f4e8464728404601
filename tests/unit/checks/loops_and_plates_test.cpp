// The rules of loops and of bolts through the concrete, by tables made for the test: at each limit and one step beside it, and
// what is missing, with its words.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/loop_pull.hpp"
#include "checks/plate_pull.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");

tables::LoopModel loop_model() {
  return {.strand_bond = {made("bond", Stress{2.0 * MPa})},
          .bond_factor = made_ratio("bond_factor", 4.0),
          .bond_strength = made("bond_strength", Stress{20.0 * MPa}),
          .strand_diameter = made("strand_diameter", Length{16.0 * mm}),
          .strands = {{2, made_ratio("two", 1.8)}},
          .offset_factor = made_ratio("offset_factor", 0.6),
          .offset_tested = made("offset_tested", Length{25.0 * mm}),
          .hook_factor = made_ratio("hook_factor", 0.9),
          .pin_tested = made("pin_tested", Length{60.0 * mm}),
          .member_depth = made("member_depth", Length{300.0 * mm}),
          .bar_bond = {made("bar_bond", RootStress::from_value(400.0))},
          .bar_bend = made_ratio("bar_bend", 3.0),
          .maximum_angle = {made("angle", Angle{45.0 * deg}), made("angle_2", Angle{30.0 * deg})}};
}

// The slab, 0.5 m thick, on four loops of this kind.
struct OnLoops {
  SlabLift lift;
  explicit OnLoops(const std::string& kind) {
    lift.plan.piece.solids[0].size.z = 0.5 * m;
    lift.plan.piece.stated_weight.reset();
    lift.tables.loops = loop_model();
    for (plan::Insert& insert : lift.plan.inserts) {
      insert.at.z = 0.5 * m;
      insert.kind = kind;
      insert.embedment = 200.0 * mm;
      insert.loop = plan::Loop{};
      insert.loop->diameter = 15.0 * mm;
      insert.loop->strands = 1;
      insert.loop->leg_length = 800.0 * mm;
      insert.loop->breaking_load = 260.0 * kN;
      insert.loop->bend_radius = 45.0 * mm;
      insert.loop->minimum_edge = 500.0 * mm;
      insert.loop->pin = 60.0 * mm;
      insert.made_for = plan::MadeFor::lifting;
    }
    lift.plan.hardware[0].kind = plan::HardwareKind::shackle;
  }
  plan::Insert& first() { return lift.plan.inserts[0]; }
  Finding found(std::string_view rule) { return finding_for(rule, "A1", lift.facts()); }
  // Every insert is pulled straight out with this force, at this angle from its axis.
  StageFacts pulled(Force pull, Angle lean, bool some_legs_only = false) {
    StageFacts facts = lift.facts();
    InsertSituation one{"made for the test", std::vector<demands::InsertForce>(4), some_legs_only, false};
    for (demands::InsertForce& force : one.forces) {
      force.tension = pull * std::cos(lean.value());
      force.shear = pull * std::sin(lean.value());
      force.shear_u = force.shear;
    }
    facts.insert_situations = std::vector{one};
    return facts;
  }
};

void is_missing(const Finding& finding, const std::string& text) {
  CHECK(finding.result == Result::missing);
  CHECK(finding.text == text);
}

}  // namespace

TEST_CASE("loop-angle: the lowest of the angles that are accepted, at it and one step more") {
  OnLoops loops("loop-bar");
  const auto at = [&](Angle lean) { return finding_for("loop-angle", "A1", loops.pulled(10.0 * kN, lean)); };
  CHECK(at(29.999 * deg).result == Result::pass);
  const Finding over = at(30.001 * deg);
  CHECK(over.result == Result::fail);
  CHECK(over.text == "loop A1 is pulled 30.1 deg from its axis, 30.0 deg is accepted for loops");
  CHECK(over.remedy == "longer legs, or a spreader beam");
  CHECK(over.situation == "made for the test");
  CHECK(finding_for("loop-angle", "A1", loops.pulled(0.0 * kN, 0.0 * deg)).result == Result::pass);
  auto facts = loops.pulled(10.0 * kN, 0.0 * deg);
  facts.insert_situations = std::vector<InsertSituation>{};
  is_missing(finding_for("loop-angle", "A1", facts), "no situation was computed");
  is_missing(finding_for("loop-angle", "A1", loops.pulled(not_a_number * kN, 0.0 * deg)),
             "the force on the loop is not a usable number");
  loops.lift.leg(0).length.reset();
  is_missing(loops.found("loop-angle"), "the leg to A1 has no length");
  loops.lift.tables.loops.reset();
  is_missing(loops.found("loop-angle"), "the table of loops is not there");
}

TEST_CASE("loop-bend of bar: three diameters, one step less, and what the plan leaves out") {
  OnLoops loops("loop-bar");
  CHECK(loops.found("loop-bend").result == Result::pass);
  loops.first().loop->bend_radius = 44.9 * mm;
  const Finding sharp = loops.found("loop-bend");
  CHECK(sharp.result == Result::fail);
  CHECK(sharp.text == "loop A1 is bent to 44.9 mm, its bar stands 45 mm");
  CHECK(sharp.remedy == "a loop bent over a thicker mandrel");
  const std::string why =
      "the smallest inside radius of the bar's bends, or its diameter, is not in the plan";
  SECTION("no radius") { loops.first().loop->bend_radius.reset(); }
  SECTION("no diameter") { loops.first().loop->diameter.reset(); }
  SECTION("nothing of the loop") { loops.first().loop.reset(); }
  is_missing(loops.found("loop-bend"), why);
  loops.lift.tables.loops.reset();
  is_missing(loops.found("loop-bend"), "the table of loops is not there");
}

TEST_CASE("loop-bend of strand and rope: over a pin, over a hook, by its rating") {
  OnLoops loops("loop-strand");
  CHECK(loops.found("loop-bend").result == Result::pass);
  loops.lift.plan.hardware[0].kind = plan::HardwareKind::hook;
  CHECK(loops.found("loop-bend").result == Result::note);
  CHECK(loops.found("loop-bend").text ==
        "loop A1 hangs on a hook: it is credited 0.90 of what it holds on a thick pin");
  loops.lift.leg(0).hardware.clear();
  is_missing(loops.found("loop-bend"), "what takes hold of the inserts is not in the plan");
  loops.lift.leg(0).hardware = "nothing like it";
  is_missing(loops.found("loop-bend"), "there is no hardware 'nothing like it'");
  loops.lift.stage().rigging.clear();
  is_missing(loops.found("loop-bend"), "the stage names no rigging");

  OnLoops rope("loop-rope");
  is_missing(rope.found("loop-bend"),
             "what a wire rope loses where it is bent was found in no source that could be read");
  rope.first().rating = plan::Rating{.load = 30.0 * kN,
                                     .at_strength = {},
                                     .includes_factor = {},
                                     .maximum_angle = {},
                                     .plane = {},
                                     .in_plane_within = {},
                                     .ranges = {},
                                     .place = {}};
  CHECK(rope.found("loop-bend").result == Result::note);
  CHECK_THAT(rope.found("loop-bend").text, Catch::Contains("the loop stands on its supplier's rating"));
  CHECK(rope.found("loop-bond").result == Result::note);
  CHECK(rope.found("loop-bond").text ==
        "no bond of wire rope is known here: the loop stands on its supplier's rating");
  CHECK(rope.found("loop-steel").result == Result::note);
  CHECK(rope.found("loop-breakout").result == Result::note);
}

TEST_CASE("loop-bond: strand at what it holds behind the factor and one step more, one leg of two") {
  OnLoops loops("loop-strand");
  // 4 x 2 MPa x pi x 15 x 800 mm over 4 in each leg; straight out two legs of no opening share alike.
  const Force one_leg = 2.0 * M_PI * 15.0 * 800.0 / 1000.0 * kN;
  const auto at = [&](Force pull, bool some = false) {
    return finding_for("loop-bond", "A1", loops.pulled(pull, 0.0 * deg, some));
  };
  const Finding first = at(10.0 * kN);
  REQUIRE(first.nominal);
  CHECK(in(kN, std::get<Force>(*first.nominal)) == Approx(4.0 * in(kN, one_leg)));
  const double share = in(kN, std::get<Force>(*first.demand)) / 10.0;
  CHECK(share >= 0.5);
  CHECK(at((1.0 - 1e-9) / share * one_leg).result == Result::pass);
  const Finding over = at((1.0 + 1e-9) / share * one_leg);
  CHECK(over.result == Result::fail);
  CHECK(over.text ==
        "a leg of the loop slips out at A1: 75.4 kN asked of one leg, 75.3 kN allowed (301 kN nominal over "
        "4.0)");
  CHECK(over.remedy == "longer legs in the concrete, more strength before lifting, steeper slings");
  const Finding some = at((1.0 + 1e-9) / share * one_leg, true);
  CHECK_THAT(some.text, Catch::EndsWith(", made for the test"));
  CHECK_THAT(some.remedy, Catch::StartsWith("gear that shares the load by itself (equalised), "));
  CHECK(at(0.0 * kN).result == Result::pass);
  loops.lift.plan.concrete.evidence.reset();
  CHECK(loops.found("loop-bond").result == Result::missing);
  loops.lift.tables.loops.reset();
  is_missing(loops.found("loop-bond"), "the table of loops is not there");
}

TEST_CASE(
    "loop-bond and loop-steel: strength below what formulas take, hardware and statics that are not known") {
  OnLoops loops("loop-strand");
  loops.lift.rules.below_floor.value = tables::BelowFloor::refuse;
  loops.lift.plan.concrete.evidence->results = {15.0 * MPa, 15.0 * MPa};  // 2500 psi are 17.2 MPa
  CHECK(loops.found("loop-bond").result == Result::missing);
  CHECK(loops.found("loop-steel").result == Result::pass);
  loops.lift.leg(0).hardware.clear();
  is_missing(loops.found("loop-steel"), "what takes hold of the inserts is not in the plan");
  OnLoops other("loop-strand");
  other.lift.leg(0).hardware.clear();
  is_missing(other.found("loop-bond"), "what takes hold of the inserts is not in the plan");
  OnLoops hung("loop-strand");
  hung.lift.leg(2).length.reset();
  is_missing(hung.found("loop-bond"), "the leg to A3 has no length");
  OnLoops steel("loop-strand");
  const auto at = [&](Force pull) { return finding_for("loop-steel", "A1", steel.pulled(pull, 0.0 * deg)); };
  const double share = in(kN, std::get<Force>(*at(10.0 * kN).demand)) / 10.0;
  CHECK(at((1.0 - 1e-9) * 65.0 / share * kN).result == Result::pass);  // 260 kN over 4
  CHECK(at((1.0 + 1e-9) * 65.0 / share * kN).result == Result::fail);
  CHECK_THAT(at(1000.0 * kN).text, Catch::StartsWith("a leg of the loop breaks at A1: "));
}

TEST_CASE("loop-breakout: no source for strand and rope, but for a rating or the engineer's document") {
  OnLoops loops("loop-strand");
  is_missing(loops.found("loop-breakout"), "no source gives the cone of a loop of strand or rope");
  loops.first().engineers_document = "LD-3";
  CHECK(loops.found("loop-breakout").result == Result::note);
  CHECK(loops.found("loop-breakout").text ==
        "no source gives the cone of a loop of strand or rope: the engineer's document LD-3 stands for it");
}

TEST_CASE(
    "loop-breakout of bar: at what its cone holds and one step more, and where it shares its concrete") {
  OnLoops loops("loop-bar");
  const auto at = [&](Force pull) {
    return finding_for("loop-breakout", "A1", loops.pulled(pull, 0.0 * deg));
  };
  const Finding first = at(10.0 * kN);
  REQUIRE(first.nominal);
  CHECK(first.result == Result::pass);
  const Force allowed = std::get<Force>(*first.nominal) / 4.0;
  CHECK(in(kN, std::get<Force>(*first.demand)) == Approx(10.0));  // the whole pull
  CHECK(at((1.0 - 1e-9) * allowed).result == Result::pass);
  const Finding over = at((1.0 + 1e-9) * allowed);
  CHECK(over.result == Result::fail);
  CHECK_THAT(over.text, Catch::StartsWith("a cone of concrete breaks out with loop A1: "));
  CHECK(over.remedy == "a deeper loop, farther from edges, or more strength before lifting");
  CHECK(at(0.0 * kN).result == Result::pass);
  // Bodies of 1.5 times 200 mm meet below 600 mm; A2 is 2 m away, and 599 mm are too few.
  loops.lift.plan.inserts[1].at = {1.6 * m, 0.5 * m, 0.5 * m};
  CHECK(at(10.0 * kN).result == Result::pass);
  loops.lift.plan.inserts[1].at.x = 1.599 * m;
  is_missing(at(10.0 * kN),
             "loop A1 shares its breakout body with insert A2: groups of loops are not evaluated");
  loops.lift.plan.inserts[1].at = {1.2 * m, 0.5 * m, 0.0 * m};  // in the other face
  CHECK(at(10.0 * kN).result == Result::pass);
  loops.first().embedment.reset();  // as deep as the slab then
  loops.lift.plan.inserts[1].at = {2.0 * m, 0.5 * m, 0.5 * m};
  CHECK(at(10.0 * kN).result == Result::missing);
  loops.lift.plan.concrete.evidence.reset();
  CHECK(at(10.0 * kN).result == Result::missing);
  loops.lift.leg(0).length.reset();
  is_missing(loops.found("loop-breakout"), "the leg to A1 has no length");
}

TEST_CASE("loop-depth: inside the concrete, and strand in a member as deep as was tested") {
  OnLoops bar("loop-bar");
  bar.first().embedment = 500.0 * mm;
  CHECK(bar.found("loop-depth").result == Result::pass);
  bar.first().embedment = 500.1 * mm;
  const Finding deep = bar.found("loop-depth");
  CHECK(deep.result == Result::fail);
  CHECK_THAT(deep.text, Catch::StartsWith("loop A1 is 501 mm deep, the concrete behind it is 500 mm thick"));
  bar.first().embedment.reset();
  CHECK(bar.found("loop-depth").result == Result::missing);

  OnLoops strand("loop-strand");
  CHECK(strand.found("loop-depth").result == Result::pass);
  tables::LoopModel model = loop_model();
  model.member_depth.value = 501.0 * mm;
  strand.lift.tables.loops = model;
  is_missing(strand.found("loop-depth"),
             "the concrete behind loop A1 is 500 mm thick; no guidance exists for loops of strand in less "
             "than 501 mm");
  strand.first().engineers_document = "LD-3";
  CHECK(strand.found("loop-depth").result == Result::note);
  CHECK_THAT(strand.found("loop-depth").text,
             Catch::EndsWith(": the engineer's document LD-3 stands for it"));
  strand.lift.tables.loops.reset();
  is_missing(strand.found("loop-depth"), "the table of loops is not there");
}

TEST_CASE("loop-edge: at the distance that the engineer asks for, one step less, and what is not known") {
  OnLoops loops("loop-bar");
  CHECK(loops.found("loop-edge").result == Result::pass);  // 500 mm from the long side
  loops.first().loop->minimum_edge = 500.1 * mm;
  const Finding near = loops.found("loop-edge");
  CHECK(near.result == Result::fail);
  CHECK_THAT(near.text, Catch::EndsWith(" from the nearest edge, 501 mm is asked for"));
  CHECK(near.remedy == "another place for it");
  loops.first().loop->minimum_edge.reset();
  CHECK(loops.found("loop-edge").result == Result::missing);
  loops.first().loop.reset();
  CHECK(loops.found("loop-edge").remedy == "[[insert]] loop = { minimum_edge = \"...\" }");
  OnLoops curved("loop-bar");
  auto facts = curved.lift.facts();
  curved.lift.body.sites[0].planar = false;
  is_missing(finding_for("loop-edge", "A1", facts),
             "the loop sits in a curved face, whose edges are not measured");
}

namespace {

// The slab on four bolts through it.
struct OnBolts : OnLoops {
  OnBolts() : OnLoops("plate") {
    lift.tables.plates = tables::PlateModel{
        made_ratio("bearing", 0.85), made("punching", RootStress{2.66 * root(psi)}), made_ratio("r_t", 1.5)};
    for (plan::Insert& insert : lift.plan.inserts) {
      insert.loop.reset();
      insert.shank = 24.0 * mm;
      insert.threaded = false;
      insert.washer = 100.0 * mm;
      insert.head_bearing_area = 9000.0 * mm2;
    }
  }
};

}  // namespace

TEST_CASE("plates: bearing at what it holds behind the factor and one step more, straight along the bolt") {
  OnBolts bolts;
  const double area_mm2 = 9000.0, f_MPa = 24.0, allowed_kN = 0.85 * f_MPa * area_mm2 / 4.0 / 1000.0;
  const auto at = [&](double pull_kN) {
    return finding_for("plate-bearing", "A1", bolts.pulled(pull_kN * kN, 0.0 * deg));
  };
  CHECK(at(allowed_kN * (1.0 - 1e-9)).result == Result::pass);
  const Finding over = at(allowed_kN * (1.0 + 1e-9));
  CHECK(over.result == Result::fail);
  CHECK(over.text ==
        "the concrete under the plate is crushed at A1: 46.0 kN asked, 45.9 kN allowed (183 kN nominal over "
        "4.0)");
  CHECK(over.remedy == "a larger plate, or more strength before lifting");
  CHECK(at(0.0).result == Result::pass);
  const Finding steel = finding_for("plate-steel", "A1", bolts.pulled(1000.0 * kN, 0.0 * deg));
  CHECK(steel.result == Result::fail);
  CHECK_THAT(steel.text, Catch::StartsWith("the bolt breaks at A1: "));
  CHECK(in(kN, std::get<Force>(*steel.nominal)) == Approx(0.25 * M_PI * 24.0 * 24.0 * 500.0 / 1000.0));
  const Finding punch = finding_for("plate-punching", "A1", bolts.pulled(1000.0 * kN, 0.0 * deg));
  CHECK(punch.result == Result::fail);
  CHECK_THAT(punch.text, Catch::StartsWith("the plate punches through at A1: "));
}

TEST_CASE("plates: a share of the pull across the bolt is left out, and no more") {
  OnBolts bolts;
  bolts.lift.rules.headed.interaction_small.value = Ratio{0.2};
  const auto at = [&](double across) {
    return finding_for("plate-steel", "A1", bolts.pulled(10.0 * kN, std::atan(across) * radian));
  };
  CHECK(at(0.1999).result == Result::pass);
  CHECK(at(0.1999).demand.has_value());
  CHECK(in(kN, std::get<Force>(*at(0.1999).demand)) == Approx(10.0));
  is_missing(at(0.2001),
             "insert A1 is pulled across its axis, and no source read says what the wall of its hole and the "
             "edge beside it hold");
}

TEST_CASE("plates: what is not known is missing, with its words") {
  OnBolts bolts;
  auto facts = bolts.pulled(10.0 * kN, 0.0 * deg);
  facts.insert_situations = std::vector<InsertSituation>{};
  is_missing(finding_for("plate-steel", "A1", facts), "no situation was computed");
  is_missing(finding_for("plate-steel", "A1", bolts.pulled(not_a_number * kN, 0.0 * deg)),
             "the force on the insert is not a usable number");
  SECTION("strength") {
    bolts.lift.plan.concrete.evidence.reset();
    CHECK(bolts.found("plate-bearing").result == Result::missing);
    CHECK(bolts.found("plate-punching").result == Result::missing);
    CHECK(finding_for("plate-steel", "A1", bolts.pulled(10.0 * kN, 0.0 * deg)).result == Result::pass);
  }
  SECTION("tables") {
    bolts.lift.tables.plates.reset();
    is_missing(finding_for("plate-bearing", "A1", bolts.pulled(1.0 * kN, 0.0 * deg)),
               "the table of plates is not there");
    is_missing(finding_for("plate-punching", "A1", bolts.pulled(1.0 * kN, 0.0 * deg)),
               "the table of plates is not there");
  }
  SECTION("statics") {
    bolts.lift.leg(0).length.reset();
    is_missing(bolts.found("plate-steel"), "the leg to A1 has no length");
  }
}

TEST_CASE("of several situations the worst counts for a loop and for a plate, the first of equals") {
  OnLoops loops("loop-bar");
  auto facts = loops.pulled(10.0 * kN, 10.0 * deg);
  auto all = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  all.push_back(all.front());
  all[1].name = "heavier";
  for (demands::InsertForce& force : all[1].forces) force.tension = 40.0 * kN, force.shear = 1.0 * kN;
  all.push_back(all[1]);
  all[2].name = "the same again";
  all.push_back(all[1]);
  all[3].name = "slack";
  for (demands::InsertForce& force : all[3].forces) force = {};
  facts.insert_situations = all;
  CHECK(finding_for("loop-bond", "A1", facts).situation == "heavier");
  CHECK(finding_for("loop-angle", "A1", facts).situation == "made for the test");
  CHECK(finding_for("loop-breakout", "A1", facts).situation == "heavier");
  for (InsertSituation& one : all)
    for (demands::InsertForce& force : one.forces) force.shear = force.shear_u = Force{};
  OnBolts bolts;
  auto on_bolts = bolts.pulled(10.0 * kN, 0.0 * deg);
  on_bolts.insert_situations = all;
  CHECK(finding_for("plate-steel", "A1", on_bolts).situation == "heavier");
}
