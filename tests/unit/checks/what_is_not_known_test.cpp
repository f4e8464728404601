// What a rule says where something it needs was not computed, is no number or does not fit: never a pass, each with its words.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/load_centre_of.hpp"
#include "checks/panel_face.hpp"
#include "checks/picks_of.hpp"
#include "checks/piece_bending.hpp"
#include "checks/round_and_box.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_shapes.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");

plan::Leg leg_between(const std::string& from, const std::string& to) {
  plan::Leg leg = leg_to(to);
  leg.from = from;
  return leg;
}

// As bent under situations that the loads do not know, and under none.
template <class Bend>
void check_situations(SlabLift& lift, Bend bend,
                      const std::string& under_none = "no situation loads the piece") {
  auto facts = lift.facts();
  auto unknown = std::get<std::vector<Situation>>(facts.gear_situations);
  unknown.front().name = "swinging";
  facts.gear_situations = unknown;
  CHECK(why_not(bend(facts)) == "the loads of a situation are not known");
  facts.gear_situations = std::vector<Situation>{};
  CHECK(why_not(bend(facts)) == under_none);
}

ModelChoice model_of(const StageFacts& facts) {
  return piece_model(facts.plan, facts.body, facts.rules.cracking);
}

}  // namespace

TEST_CASE("bending under a situation that no load set has, or under none, is not assessed by any model") {
  SECTION("ring") {
    SlabLift lift;
    make_ring_on_four(lift);
    check_situations(lift, [](const StageFacts& facts) { return ring_tension(facts); });
  }
  SECTION("box") {
    SlabLift lift;
    make_box_on_four(lift);
    check_situations(lift, [](const StageFacts& facts) { return box_tension(facts); });
  }
  SECTION("panel") {
    SlabLift lift;
    check_situations(
        lift, [](const StageFacts& facts) { return panel_tension(facts, model_of(facts)); },
        "the panel has no outline or no pick");
  }
  SECTION("panel in steps") {
    SlabLift lift;
    make_slab_on_ribs(lift);
    check_situations(
        lift, [](const StageFacts& facts) { return stepped_panel_tension(facts); },
        "the panel has no outline, no zone, no load or no pick");
  }
}

TEST_CASE("a model that is asked of another shape is not assessed") {
  SlabLift slab;
  const auto facts = slab.facts();
  CHECK(why_not(ring_tension(facts)) == "the piece is not a round ring of one section");
  CHECK(why_not(box_tension(facts)) ==
        "the piece is not a box of even walls and slabs with a barrel right through");
  CHECK(why_not(stepped_panel_tension(facts)) == "the piece is no panel in steps");
  ModelChoice block;
  CHECK(why_not(bending_tension(facts, block)) == "the bending of a block is not computed");
  SlabLift thick;
  make_box_on_four(thick, 0.45 * m);
  CHECK(why_not(box_tension(thick.facts())) == "a slab or wall of the box is thicker than 1/4 of its span");
  SlabLift ring;
  make_ring_on_four(ring);
  ring.plan.piece.solids[0].inside_diameter = 1.8 * m;
  for (plan::Insert& insert : ring.plan.inserts)
    insert.at = {(1.3 / 1.6) * insert.at.x, (1.3 / 1.6) * insert.at.y, insert.at.z};
  CHECK(why_not(ring_tension(ring.facts())) == "the wall of the ring is thicker than 1/4 of its radius");
}

TEST_CASE("a ring or box that nothing pulls is not assessed") {
  SlabLift ring, box;
  make_ring_on_four(ring);
  make_box_on_four(box);
  const auto slack = [](StageFacts facts) {
    auto all = std::get<std::vector<Situation>>(facts.gear_situations);
    for (Situation& situation : all)
      for (demands::LegForce& leg : situation.legs) leg.on_insert = {};
    facts.gear_situations = all;
    return facts;
  };
  CHECK(why_not(ring_tension(slack(ring.facts()))) == "nothing carries the ring");
  CHECK(why_not(box_tension(slack(box.facts()))) ==
        "the picks are not in two lines along the barrel, even about its middle");
}

TEST_CASE("an uneven grip of the form is not assessed, of a panel and of one in steps") {
  const auto with_grip_on = [](SlabLift& lift, const std::string& solid) {
    plan::Contact side;
    side.faces.names = {{solid, {}}};
    side.finish = "smooth";
    side.adhesion = 5.0 * kPa;
    lift.plan.form->contacts = {side};
    return finding_for("piece-cracking", "SL-1", lift.facts());
  };
  SlabLift ribbed;
  make_slab_on_ribs(ribbed);
  const Finding stepped = with_grip_on(ribbed, "rib 1");
  CHECK(stepped.result == Result::missing);
  CHECK(stepped.text == "the form does not grip the panel evenly: its bending by that is not computed");
  SlabLift slab;
  plan::Solid end = slab.plan.piece.solids[0];
  end.name = "end";
  end.at.x = 3.0 * m;
  end.size.x = 1.0 * m;
  slab.plan.piece.solids[0].size.x = 3.0 * m;
  slab.plan.piece.solids.push_back(end);
  const Finding flat = with_grip_on(slab, "end");
  CHECK(flat.result == Result::missing);
  CHECK(flat.text == "the form does not grip the panel evenly: its bending by that is not computed");
}

TEST_CASE("clutch-mismatch: no rigging has no legs, a beam no insert, an insert that is none is missing") {
  SlabLift lift;
  plan::Beam beam;
  beam.id = "spreader";
  beam.points = {{"up", {0.0 * m, 0.0 * m, 0.1 * m}, {}}, {"low", {0.0 * m, 0.0 * m, -0.1 * m}, {}}};
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].beams = {beam};
  lift.plan.riggings[0].legs = {leg_to("up"), leg_between("low", "A1"), leg_between("low", "A9")};
  const auto facts = lift.facts();
  CHECK(finding_for("clutch-mismatch", "up", facts).result == Result::pass);
  CHECK(finding_for("clutch-mismatch", "A1", facts).result == Result::pass);
  CHECK(finding_for("clutch-mismatch", "A9", facts).result == Result::missing);
  CHECK(finding_for("clutch-mismatch", "A9", facts).text == "there is no insert 'A9'");
  CHECK(picks_of(facts).size() == 1);
  lift.stage().rigging.clear();
  for (const std::string_view rule :
       {"clutch-mismatch", "hardware-overload", "hardware-factor", "sling-overload"})
    CHECK(judged(rule, lift.facts()).empty());
}

TEST_CASE("insert-kind: what stands on a rating needs one, and no rule evaluates what it does not know") {
  SlabLift lift;
  const auto found = [&](const std::string& kind) {
    lift.plan.inserts[0].kind = kind;
    return finding_for("insert-kind", "A1", lift.facts());
  };
  for (const std::string kind : {"loop-rope", "threaded"}) {
    CHECK(found(kind).result == Result::missing);
    CHECK(found(kind).text ==
          "an insert of kind '" + kind + "' is evaluated by its supplier's rating only, and has none");
    CHECK(found(kind).remedy == "rating = { ... }, from the supplier's declaration");
  }
  for (const std::string kind : {"headed", "rated", "loop-strand", "loop-bar", "plate"})
    CHECK(found(kind).result == Result::pass);
  CHECK(found("toggle").text == "no rule of this version evaluates an insert of kind 'toggle'");
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  CHECK(found("loop-rope").result == Result::pass);
  CHECK(found("threaded").result == Result::pass);
  CHECK(found("toggle").result == Result::missing);
}

TEST_CASE("the hook load of a crane: each thing that it needs, with its words") {
  SlabLift lift;
  plan::Rigging& rigging = lift.plan.riggings.front();
  rigging.equalised.clear();
  rigging.hooks = {{"west", {}, "bay", {}}, {"east", {2.0 * m, 0.0 * m, 0.0 * m}, "", {}}};
  rigging.legs[0].from = rigging.legs[3].from = "west";
  rigging.legs[1].from = rigging.legs[2].from = "east";
  lift.stage().crane.clear();
  const Finding unnamed = finding_for("crane-overload", "hook east", lift.facts());
  CHECK(unnamed.result == Result::missing);
  CHECK(unnamed.text == "no crane is named for hook east");
  plan::Crane yard = lift.plan.cranes.front();
  yard.id = "yard";
  lift.plan.cranes.push_back(yard);
  rigging.hooks[1].crane = "yard";
  Trace trace = Trace::recording();
  auto facts = lift.facts(trace);
  Trace recorded = Trace::recording();
  const auto both = rule_named("crane-overload")->judge(facts, recorded);
  REQUIRE(both.size() == 2);
  CHECK(both[0].result == Result::pass);
  REQUIRE_FALSE(recorded.steps().empty());
  CHECK(recorded.steps()[0].step.words == "everything that hangs on crane bay");
  CHECK(recorded.steps()[0].step.formula == "s * (W_crane + W_carriers) + W_rigging + W_block");
  // Half of the piece on each, the hooks plumb over their picks; with a scale of two nothing is known.
  CHECK(in(kN, std::get<Force>(*both[0].demand)) ==
        Approx(0.5 * in(kN, std::get<loads::StageLoad>(facts.load).crane_load) + 2.0).epsilon(1e-3));
  lift.stage().scale_reading = plan::ScaleReading{};
  lift.stage().scale_reading->shows = 10.0 * kN;
  lift.stage().scale_reading->state = plan::ScaleState::hanging;
  lift.stage().scale_reading->rigging = lift.stage().scale_reading->block = true;
  CHECK_THAT(finding_for("scale-reading", "SL-1", lift.facts()).text,
             Catch::StartsWith("a reading of one scale says nothing"));
  lift.stage().scale_reading->state.reset();
  CHECK(finding_for("scale-reading", "SL-1", lift.facts()).text == "the reading of the scale is not given");

  auto spoilt = std::get<std::vector<Situation>>(facts.gear_situations);
  spoilt.front().legs[0].on_insert.z = not_a_number * kN;
  facts.gear_situations = spoilt;
  CHECK(finding_for("crane-overload", "bay", facts).text == "the share of a crane is not a usable number");
  facts.gear_situations = NotAssessed{"no statics", "none"};
  CHECK(finding_for("crane-overload", "bay", facts).text == "no statics");
  lift.stage().wind_speed = 5.0 * m_per_s;
  CHECK(finding_for("wind-side-load", "SL-1", lift.facts()).text ==
        "wind on a piece on more than one hook is not computed");
  rigging.hooks.clear();
  for (plan::Leg& leg : rigging.legs) leg.from.clear();
  plan::Sheave sheave;
  sheave.id = "middle";
  rigging.sheaves = {sheave};
  lift.stage().crane = "bay";
  CHECK(finding_for("crane-overload", "bay", lift.facts()).text ==
        "the weight of sheave 'middle' is not in the plan");
  lift.stage().rigging.clear();
  CHECK(finding_for("crane-overload", "bay", lift.facts()).text == "the stage names no rigging");
}

TEST_CASE(
    "leg-skew: what a guideline asks of the worst leg is told where it is more than what is asked here") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.rules.sharing.value = tables::Sharing::elastic;
  lift.rules.leg_cross_check = tables::LegCrossCheck{made_ratio("skew", 1.25), made_ratio("dynamic", 1.3)};
  const auto found = [](const StageFacts& facts) { return finding_for("leg-skew", "four legs", facts); };
  // 1.3 by the stage and the grip of the form against 1.25 x 1.3.
  const auto facts = lift.facts();
  const auto& all = std::get<std::vector<Situation>>(facts.gear_situations);
  const Finding more = found(facts);
  CHECK(more.result == Result::note);
  double even = 0.0, here = 0.0;
  for (std::size_t leg = 0; leg < 4; ++leg) {
    even = std::max(even, in(kN, all.front().legs[leg].tension) / 1.3);
    for (const Situation& situation : all) here = std::max(here, in(kN, situation.legs[leg].tension));
  }
  CHECK_THAT(more.text, Catch::StartsWith("a marine guideline asks ") &&
                            Catch::Contains("(1.25 for skew, 1.3 dynamic)"));
  CHECK(1.25 * 1.3 * even > here);
  lift.rules.leg_cross_check->skew.value = Ratio{here / (1.3 * even) * 0.999};
  CHECK(found(lift.facts()).result == Result::pass);
  lift.rules.leg_cross_check->skew.value = Ratio{not_a_number};
  CHECK(found(lift.facts()).result == Result::pass);  // a cross-check decides nothing
  auto none = lift.facts();
  none.gear_situations = std::vector<Situation>{};
  CHECK(found(none).result == Result::pass);
  lift.rules.leg_cross_check->skew.value = Ratio{9.0};
  CHECK(found(lift.facts()).result == Result::note);
  lift.plan.riggings[0].equalised = {{{"A1", {}}, {"A2", {}}}};
  CHECK(found(lift.facts()).result == Result::pass);
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs.resize(3);
  CHECK(found(lift.facts()).result == Result::pass);
}

TEST_CASE("stage facts: no wind on a turn, no load sets, legs of unknown errors") {
  SlabLift lift;
  lift.stage().wind_speed = 5.0 * m_per_s;
  lift.stage().kind = plan::StageKind::turn;
  lift.stage().dynamic_factor = Ratio{1.2};
  CHECK(finding_for("wind-side-load", "SL-1", lift.facts()).text ==
        "wind on a piece that turns is not computed");
  SlabLift unknown;
  unknown.stage().wind_speed = 5.0 * m_per_s;
  plan::Stage turned = unknown.stage();
  turned.kind = plan::StageKind::turn;
  turned.turn = plan::Turn{};
  unknown.plan.stages.insert(unknown.plan.stages.begin(), turned);
  unknown.facts();
  Trace silent;
  const auto facts = stage_facts(unknown.plan, unknown.plan.stages[1], unknown.body, *unknown.prepared,
                                 unknown.rules, unknown.tables, silent);
  for (const std::string_view rule : {"wind-side-load", "landing-stability", "piece-cracking"})
    CHECK_THAT(finding_for(rule, "SL-1", facts).text,
               Catch::StartsWith("which way up the piece is after an earlier turn is not known: "));
  CHECK_THAT(finding_for("rigging-statics", "four legs", facts).text,
             Catch::StartsWith("which way up the piece is"));
  CHECK(finding_for("roll-stability", "four legs", facts).result == Result::missing);
  CHECK(finding_for("insert-wall-bending", "A1", facts).result != Result::note);
}

TEST_CASE("statics of gear or of inserts that are not known are missing though the piece hangs") {
  SlabLift lift;
  auto facts = lift.facts();
  const auto gear = facts.gear_situations;
  facts.gear_situations = NotAssessed{"no sharing of the gear", "none"};
  CHECK(finding_for("rigging-statics", "four legs", facts).text == "no sharing of the gear");
  facts.gear_situations = gear;
  facts.insert_situations = NotAssessed{"no force on the inserts", "none"};
  CHECK(finding_for("rigging-statics", "four legs", facts).text == "no force on the inserts");
  facts.load = NotAssessed{"no load", "none"};
  CHECK(finding_for("roll-stability", "four legs", facts).result ==
        Result::pass);  // it rests on weight and density alone
  lift.plan.form->attached = {
      {.what = "former", .weight = 1.0 * kN, .at = Position{}, .until = {}, .place = {}}};
  CHECK(finding_for("roll-stability", "four legs", facts).text == "no load");
  CHECK(finding_for("landing-stability", "SL-1", facts).text == "no load");
  CHECK(why_not(load_centres_of(facts)) == "no load");
  facts.load = loads::StageLoad{};
  CHECK(why_not(load_centre_of(facts)) == "no load set acts in this stage");
  lift.plan.form.reset();
  CHECK(in(m, assessed(load_centre_of(facts)).x) == Approx(2.0));
}

TEST_CASE("landing-stability: held by a brace, and told so") {
  SlabLift lift;
  lift.rules.minimum_tipping_angle.value = 89.0 * deg;
  lift.stage().landing->restrained = plan::Restraint::brace;
  const Finding braced = finding_for("landing-stability", "SL-1", lift.facts());
  CHECK(braced.result == Result::note);
  CHECK_THAT(braced.text, Catch::EndsWith("; the brace must hold it before the legs come off"));
  CHECK(braced.remedy.empty());
  lift.stage().landing->restrained = plan::Restraint::rack;
  CHECK_THAT(finding_for("landing-stability", "SL-1", lift.facts()).text,
             Catch::EndsWith("; the rack must hold it before the legs come off"));
}

TEST_CASE("bending that is known is kept by stage, one for each") {
  KnownBending known;
  const auto second = known.of_stage(1), first = known.of_stage(0);
  CHECK(first != second);
  CHECK(known.of_stage(1) == second);
  CHECK(known.of_stage(0) == first);
}

TEST_CASE("insert-interaction: a mode without a utilization or with one that is no number is missing") {
  SlabLift lift;
  auto facts = lift.facts();
  ModeCheck& check = facts.modes.at(0, 0, Mode::breakout);
  REQUIRE(check.applies);
  const ModeCheck before = check;
  check.comparison.utilization.reset();
  CHECK(finding_for("insert-interaction", "A1", facts).text == "a utilization was not computed");
  check = before;
  check.comparison.utilization = not_a_number;
  CHECK(finding_for("insert-interaction", "A1", facts).text == "a utilization was not computed");
  check = before;
  check.comparison = {Result::missing, {}, "it was not computed", "compute it"};
  CHECK(finding_for("insert-interaction", "A1", facts).text == "it was not computed");
  CHECK_THROWS(facts.modes.at(1000, 0, Mode::breakout));
  CHECK_THROWS(facts.modes.at(0, 1000, Mode::breakout));
}

TEST_CASE("a word is no way round a failure: what the shape makes of a piece fails beside a named check") {
  SlabLift lift;
  lift.plan.piece.model = plan::PieceModel::block;
  lift.plan.piece.bending_check = "sheet 6";
  CHECK(finding_for("piece-cracking", "SL-1", lift.facts()).result == Result::note);  // as a panel it passes
  lift.rules.cracking.factor.value = Ratio{1e4};
  const Finding failed = finding_for("piece-cracking", "SL-1", lift.facts());
  CHECK(failed.result == Result::fail);
  CHECK_THAT(failed.text, Catch::Contains(" of the panel, near x = "));
  lift.plan.piece.model = plan::PieceModel::panel;  // what it is: judged as such
  CHECK(finding_for("piece-cracking", "SL-1", lift.facts()).result == Result::fail);
}

TEST_CASE(
    "piece-shear: a check that is named stands in for what is not computed, bars that are nowhere do not") {
  SlabLift lift;
  lift.plan.piece.solids[0].size = {12.0 * m, 0.4 * m, 0.6 * m};
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {headed_insert_at("A1", 2.5 * m, 0.2 * m), headed_insert_at("A2", 9.5 * m, 0.2 * m)};
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.6 * m;
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};
  lift.plan.riggings[0].equalised.clear();
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 1000.0 * m;
  const auto found = [&] { return finding_for("piece-shear", "SL-1", lift.facts()); };
  const double plain = found().utilization.value();
  lift.plan.piece.may_crack = true;
  const std::string no_bars = "the piece may crack, and no bars are in it that could carry it then";
  CHECK(found().text == no_bars);
  plan::Bar bar;
  bar.line = {{0.1 * m, 0.2 * m, 0.1 * m}, {11.9 * m, 0.2 * m, 0.1 * m}};
  lift.plan.piece.bars = {bar};
  Trace trace = Trace::recording();
  const auto facts = lift.facts();
  CHECK(rule_named("piece-shear")->judge(facts, trace).front().utilization.value() ==
        Approx(plain * 0.6 / 0.5));
  lift.plan.piece.bars[0].line[1].z = not_a_number * m;
  CHECK(found().text == "the place of a bar is not a usable number");
  lift.plan.piece.bars[0].line = {{0.1 * m, 0.2 * m, -0.2 * m}, {11.9 * m, 0.2 * m, -0.2 * m}};
  CHECK(found().text == no_bars);
  lift.plan.piece.bending_check = "sheet 6";
  CHECK(found().result == Result::note);
  CHECK(found().text == "its shear is checked elsewhere, as the plan states: sheet 6");
  lift.leg(0).length.reset();
  CHECK(found().result == Result::missing);
  SlabLift wide;
  wide.plan.piece.model = plan::PieceModel::line;
  CHECK(finding_for("piece-shear", "SL-1", wide.facts()).text ==
        "the plan calls it a line, and by its shape it is none");
}
