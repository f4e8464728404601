// Cases worked by hand: the second of several sheaves, lines of picks that are not alike, loads beside the
// weight, eyes and toggles, what a search for the least strength gives, plans changed a little.

#include <algorithm>
#include <cmath>
#include <functional>

#include <catch2/catch.hpp>

#include "checks/changed_plans.hpp"
#include "checks/evaluate.hpp"
#include "checks/needed_strength.hpp"
#include "checks/piece_bending.hpp"
#include "checks/round_and_box.hpp"
#include "checks/standing_texts.hpp"
#include "demands/box_frame.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_shapes.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

// Legs straight up, one pull for each.
Situation straight_up(const std::string& name, const std::vector<double>& kN_each) {
  Situation one;
  one.name = name;
  for (const double up : kN_each) {
    demands::LegForce leg;
    leg.tension = up * kN;
    leg.on_insert = {0.0 * kN, 0.0 * kN, up * kN};
    one.legs.push_back(leg);
  }
  return one;
}

// The only load set and situation of a lift, both as written.
void load_by_hand(StageFacts& facts, const std::vector<double>& loads_kN,
                  const std::vector<double>& legs_kN) {
  loads::LoadSet set;
  set.name = "by hand";
  for (const double load : loads_kN) {
    set.loads.push_back({facts.body.centroid, load * kN});
    set.total += load * kN;
  }
  std::get<loads::StageLoad>(facts.load).gear_loads = {set};
  facts.gear_situations = std::vector<Situation>{straight_up("by hand", legs_kN)};
}

}  // namespace

TEST_CASE("the step of the largest tension names the theory behind it and the values it rests on") {
  const auto step_of = [](SlabLift& lift) {
    const auto facts = lift.facts();
    Trace trace = Trace::recording();
    rule_named("piece-cracking")->judge(facts, trace);
    return step_named(trace, "sigma");
  };
  SlabLift panel, line, ring;
  make_line(line, 0.3 * m);
  make_ring_on_four(ring);
  const auto& cracking = panel.rules.cracking;
  CHECK(step_of(panel).clause == "theory of thin plates");
  CHECK(source_ids(step_of(panel)) ==
        std::vector{cracking.poisson.source.id, cracking.patch.source.id, cracking.pick_strip.source.id});
  CHECK(step_of(line).clause == "statics of beams");
  CHECK(source_ids(step_of(line)).empty());
  CHECK(step_of(ring).clause == "statics of thin rings");
  CHECK(source_ids(step_of(ring)) == std::vector{cracking.poisson.source.id, cracking.line_slenderness.source.id});
}

TEST_CASE("sheave-overload: each sheave by the legs that end on it, the second no less than the first") {
  SlabLift lift;
  auto facts = lift.facts();
  plan::Rigging& rigging = lift.plan.riggings[0];
  rigging.equalised.clear();
  rigging.sheaves.resize(2);
  rigging.sheaves[0].id = "upper", rigging.sheaves[1].id = "lower";
  for (plan::Sheave& sheave : rigging.sheaves) sheave.rolls = true, sheave.rated = 50.0 * kN;
  rigging.legs = {leg_to("upper"), leg_to("lower"), leg_to("A1"), leg_to("A2")};
  facts.gear_situations = std::vector<Situation>{straight_up("hanging", {20.0, 50.0, 10.0, 11.0})};
  const auto found = [&](const char* sheave) { return finding_for("sheave-overload", sheave, facts); };
  CHECK(in(kN, std::get<Force>(*found("upper").demand)) == Approx(20.0));
  CHECK(in(kN, std::get<Force>(*found("lower").demand)) == Approx(50.0));
  CHECK(found("lower").result == Result::pass);
  rigging.sheaves[1].rated = std::nextafter(in(kN, 50.0 * kN), 0.0) * kN;
  CHECK(found("lower").result == Result::fail);
  CHECK(found("upper").result == Result::pass);
}

TEST_CASE(
    "bent-bar-eye: an eye of bar and a toggle fail, each with its words, and a document makes them a note") {
  SlabLift lift;
  lift.plan.inserts[0].kind = "bent-bar";
  lift.plan.inserts[1].kind = "toggle";
  lift.plan.inserts[2].kind = "toggle";
  lift.plan.inserts[2].engineers_document = "D-7";
  const auto facts = lift.facts();
  const auto found = [&](const char* insert) { return finding_for("bent-bar-eye", insert, facts); };
  CHECK(found("A1").result == Result::fail);
  CHECK(found("A1").text == "insert A1 is bar bent to an eye: bar breaks where it is bent");
  CHECK(found("A2").result == Result::fail);
  CHECK(found("A2").text == "insert A2 is a toggle behind a hole: it slips through");
  CHECK(found("A3").result == Result::note);
  CHECK(found("A3").text == "insert A3 is a toggle, allowed by the engineer's document D-7");
  CHECK(found("A4").result == Result::pass);
}

TEST_CASE("what is not checked of bending is told of a flat panel, of one in steps, and of a line") {
  const auto told = [](const std::function<void(SlabLift&)>& shape) {
    SlabLift lift;
    shape(lift);
    lift.facts();
    return evaluate_plan(lift.plan, lift.body, lift.rules, lift.tables, "", {}).not_checked;
  };
  CHECK(told([](SlabLift&) {}) == not_checked(BendingChecked::turned));
  const auto line = [](SlabLift& lift) {
    lift.plan.piece.solids[0].size = {6.0 * m, 0.4 * m, 0.3 * m};
    for (plan::Insert& insert : lift.plan.inserts) {
      insert.at.x = insert.at.x < 2.0 * m ? 1.5 * m : 4.5 * m;
      insert.at.y = insert.at.y < 1.0 * m ? 0.1 * m : 0.3 * m;
    }
    lift.plan.piece.stated_weight.reset();
  };
  CHECK(told(line) == not_checked(BendingChecked::as_cast));
  CHECK(not_checked(BendingChecked::as_cast) != not_checked(BendingChecked::turned));
}

TEST_CASE(
    "loads of a lighter set are raised to the multiplier of the heaviest, legs and their tensions with "
    "them") {
  SlabLift lift;
  lift.rules.bending_multiplier.emplace("strip.flat.smooth", made_ratio("m", 10.0));
  auto facts = lift.facts();
  load_by_hand(facts, {60.0}, {15.0, 15.0, 15.0, 15.0});
  auto& sets = std::get<loads::StageLoad>(facts.load).gear_loads;
  loads::LoadSet lighter = sets.front();
  lighter.name = "lighter";
  lighter.total = lighter.loads[0].force = 40.0 * kN;
  sets.push_back(lighter);
  const auto raised = assessed(bending_loads(facts, straight_up("lighter", {10.0, 10.0, 10.0, 10.0})));
  CHECK(in(kN, raised.set.total) == Approx(60.0));  // m W/40 over m W/60
  CHECK(in(kN, raised.set.loads[0].force) == Approx(60.0));
  CHECK(in(kN, raised.situation.legs[3].on_insert.z) == Approx(15.0));
  CHECK(in(kN, raised.situation.legs[3].tension) == Approx(15.0));
  const auto heaviest = assessed(bending_loads(facts, straight_up("by hand", {15.0, 15.0, 15.0, 15.0})));
  CHECK(in(kN, heaviest.situation.legs[3].tension) == 15.0);
}

TEST_CASE("a box: of two lines of picks the one with fewer says how much of the barrel a pick takes") {
  // Strips of 2 x 0.2 m on 2 m: two picks take 0.8 m of it, three 1.2 m.
  const auto tension_MPa = [](std::size_t left, std::size_t right) {
    SlabLift lift;
    make_box_on_four(lift);
    lift.rules.cracking.pick_strip.value = Ratio{2.0};
    lift.plan.inserts.clear(), lift.plan.riggings[0].legs.clear(), lift.plan.riggings[0].equalised.clear();
    std::vector<double> legs_kN;
    const auto line = [&](double x_m, std::size_t picks) {
      for (std::size_t i = 0; i < picks; ++i) {
        plan::Insert insert = headed_insert_at("A" + std::to_string(legs_kN.size() + 1), x_m * m,
                                               (0.5 + 0.4 * static_cast<double>(i)) * m);
        insert.at.z = 1.6 * m;
        lift.plan.inserts.push_back(insert);
        lift.plan.riggings[0].legs.push_back(leg_to(insert.id));
        legs_kN.push_back(30.0 / static_cast<double>(picks));
      }
    };
    line(0.4, left), line(1.6, right);
    auto facts = lift.facts();
    load_by_hand(facts, {60.0}, legs_kN);
    return in(MPa, assessed(box_tension(facts)).tension);
  };
  CHECK(tension_MPa(2, 3) == Approx(tension_MPa(2, 2)));
  CHECK(tension_MPa(3, 2) == Approx(tension_MPa(2, 2)));
  CHECK(tension_MPa(3, 3) == Approx(tension_MPa(2, 2) * 2.0 / 3.0));
}

TEST_CASE("a box: what comes beside its weight bends the top slab most where it may lie on it") {
  SlabLift lift;
  make_box_on_four(lift);
  const double at_wall_m[4][2] = {{0.1, 0.5}, {1.9, 0.5}, {1.9, 1.5}, {0.1, 1.5}};
  for (std::size_t i = 0; i < 4; ++i)
    lift.plan.inserts[i].at = {at_wall_m[i][0] * m, at_wall_m[i][1] * m, 1.6 * m};
  lift.rules.cracking.pick_strip.value = Ratio{2.0};  // raised by 2 m / (2 x 0.4 m)
  lift.plan.form->nothing_attached = false;
  lift.plan.form->attached = {
      {.what = "former", .weight = 20.0 * kN, .at = lift.plan.inserts[0].at, .until = {}, .place = {}}};
  auto facts = lift.facts();
  load_by_hand(facts, {40.0, 20.0}, {15.0, 15.0, 15.0, 15.0});
  // Along the middles 1.8 x 1.4 m, all 0.2 m thick, 2 m of barrel: 40 kN on 2 (2 x 1.8 + 2 x 1.4) m2 of
  // members, 20 kN on 2 x 1.8 m2 of the top slab. Picks at the middles of the walls, straight up.
  demands::BoxFrame frame{
      .width = 1.8 * m, .height = 1.4 * m, .top = 0.2 * m, .bottom = 0.2 * m, .side = 0.2 * m};
  frame.bottom_load = frame.side_load = 40.0 / 12.8 * kPa;
  frame.top_load = frame.bottom_load + 20.0 / 3.6 * kPa;
  const auto moments = assessed(demands::box_moments(frame));
  const double most_N = std::max(std::abs(moments.top_middle.value()), std::abs(moments.top_corner.value()));
  const auto found = assessed(box_tension(facts));
  CHECK(found.tension.value() == Approx(2.5 * 6.0 * most_N / 0.04).epsilon(1e-6));
  CHECK_THAT(found.where, Catch::Contains("top slab"));
}

TEST_CASE("a panel in steps: grip even about the middle of its face less its opening, to 2 % of its length") {
  const std::string uneven = "the form does not grip the panel evenly: its bending by that is not computed";
  const auto why = [](double grip_at_m) {
    SlabLift lift;
    make_slab_on_ribs(lift);
    plan::Solid opening = lift.plan.piece.solids[0];
    opening.name = "opening", opening.cut = true;
    opening.at = {2.5 * m, 0.85 * m, 0.15 * m};
    opening.size = {1.0 * m, 0.3 * m, 0.15 * m};
    lift.plan.piece.solids.push_back(opening);
    auto facts = lift.facts();
    load_by_hand(facts, {40.0, 20.0}, {1.0, 1.0, 1.0, 1.0});  // far from balance: not computed
    std::get<loads::StageLoad>(facts.load).gear_loads[0].loads[1].at = {grip_at_m * m, 1.0 * m, 0.0 * m};
    return why_not(stepped_panel_tension(facts));
  };
  // 4 x 2 m without 1.0 x 0.3 m that is 1 m from its middle: 0.3/7.7 m towards the other end. 2 % are 80 mm.
  const double middle_m = 2.0 - 0.3 / 7.7;
  CHECK(why(middle_m + 0.081) == uneven);
  CHECK(why(middle_m - 0.081) == uneven);
  CHECK(why(middle_m + 0.079) == "the bending of the stepped panel could not be computed to 2 %");
}

TEST_CASE("a ring is told by a centroid at the middle of its height to 0.5 % of that, however high it is") {
  piece::Body body;  // Ro 2, Ri 1, H 2 m about the origin
  const double V = M_PI * 3.0 * 2.0, x2 = V * 5.0 / 4.0, z2 = V * 4.0 / 12.0;
  body.volume = V * m3;
  body.lowest = {-2.0 * m, -2.0 * m, -1.0 * m}, body.highest = {2.0 * m, 2.0 * m, 1.0 * m};
  body.inertia_per_density_m5 = {{{x2 + z2, 0.0, 0.0}, {0.0, x2 + z2, 0.0}, {0.0, 0.0, 2.0 * x2}}};
  body.centroid.z = 0.01 * m;
  CHECK(ring_shape(body));
  body.centroid.z = -0.01 * m;
  CHECK(ring_shape(body));
  body.centroid.z = 0.0101 * m;
  CHECK_FALSE(ring_shape(body));
}

TEST_CASE("needed strength of a slab on rated inserts: found to a thousandth above, a whole step as it is") {
  SlabLift lift;
  lift.plan.inserts = {rated_insert_at("A1", 1.0 * m, 0.5 * m), rated_insert_at("A2", 3.0 * m, 0.5 * m),
                       rated_insert_at("A3", 3.0 * m, 1.5 * m), rated_insert_at("A4", 1.0 * m, 1.5 * m)};
  for (plan::Insert& insert : lift.plan.inserts) insert.rating->at_strength = 10.0 * MPa;
  lift.plan.piece.bending_check = "C-12";
  const auto of_drawing = [&](double psi_asked) {
    lift.plan.concrete.form_stripping_strength = psi_asked * psi;
    const auto need = needed_strength(lift.facts());
    const auto found =
        std::ranges::find(need.rules, std::string_view("strength-below-required"), &RuleNeed::rule);
    REQUIRE(found != need.rules.end());
    return in(psi, found->strength);
  };
  CHECK(of_drawing(3000.0) == Approx(3000.0).epsilon(1e-9));
  CHECK(of_drawing(3050.0) >= 3050.0);
  CHECK(of_drawing(3050.0) < 3050.0 * 1.001);
}

TEST_CASE(
    "changed plans: longer legs to inserts, deeper headed inserts and loops, picks nearer and farther") {
  SlabLift lift;
  lift.facts();
  const auto changed = changed_plans(lift.plan, lift.body);
  std::vector<std::string> words;
  for (const ChangedPlan& each : changed) words.push_back(each.words);
  CHECK(words == std::vector<std::string>{"legs 25 % longer", "legs 50 % longer", "inserts 25 % deeper",
                                          "inserts 50 % deeper", "picks 20 % nearer to the middle",
                                          "picks 20 % farther from the middle"});
  CHECK(in(m, changed[1].plan.riggings[0].legs[2].length.value()) == Approx(3.75));
  CHECK_FALSE(changed[1].moves_inserts);
  CHECK(in(mm, changed[2].plan.inserts[3].embedment.value()) == Approx(250.0));
  CHECK(changed[2].moves_inserts);
  CHECK(in(m, changed[4].plan.inserts[0].at.x) == Approx(2.0 - 0.8));
  CHECK(in(m, changed[4].plan.inserts[0].at.y) == Approx(1.0 - 0.4));
  CHECK(in(m, changed[5].plan.inserts[2].at.x) == Approx(2.0 + 1.2));
  CHECK(in(m, changed[5].plan.inserts[2].at.z) == Approx(0.3));

  for (plan::Insert& insert : lift.plan.inserts) insert.kind = "rated";
  CHECK(changed_plans(lift.plan, lift.body).size() == 4);  // nothing to be deeper
  lift.plan.inserts[1].kind = "loop-bar";
  lift.plan.inserts[1].loop = plan::Loop{};
  lift.plan.inserts[1].loop->leg_length = 400.0 * mm;
  const auto loops = changed_plans(lift.plan, lift.body);
  REQUIRE(loops.size() == 6);
  CHECK(in(mm, loops[3].plan.inserts[1].loop->leg_length.value()) == Approx(600.0));
  CHECK(in(mm, loops[3].plan.inserts[0].embedment.value()) == Approx(200.0));
  lift.plan.inserts[1].embedment.reset();
  CHECK(changed_plans(lift.plan, lift.body).size() == 4);
  lift.leg(0).length.reset();
  lift.leg(1).to = "beam end";
  const auto legs = changed_plans(lift.plan, lift.body).front().plan.riggings[0].legs;
  CHECK_FALSE(legs[0].length);
  CHECK(in(m, legs[1].length.value()) == Approx(2.5));
  CHECK(in(m, legs[2].length.value()) == Approx(3.125));
}
