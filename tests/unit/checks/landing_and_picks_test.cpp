// Where the piece is set down and by what it hangs: the worst of all loads counts, picks in one place are
// one, weights and readings that are left out.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/load_centre_of.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double pi = std::acos(-1.0);

plan::Bearer bearer(const Position& from, const Position& to) {
  plan::Bearer made;
  made.along = {from, to};
  made.width = 100.0 * mm;
  return made;
}

// On two bearers across the slab, at these x.
void set_on_bearers(SlabLift& lift, double first_m, double second_m) {
  plan::Landing& landing = *lift.stage().landing;
  landing.on = plan::LandingOn::bearers;
  landing.bearers.clear();
  for (const double x : {first_m, second_m})
    landing.bearers.push_back(bearer({x * m, 0.0 * m, 0.0 * m}, {x * m, 2.0 * m, 0.0 * m}));
}

// A second stage, to the yard, with a form part of 20 kN at this place.
void lift_to_yard_with_former(SlabLift& lift, const Position& at) {
  plan::Stage yard = lift.stage();
  yard.kind = plan::StageKind::yard;
  lift.plan.stages.push_back(yard);
  lift.plan.form->nothing_attached = false;
  lift.plan.form->attached = {{.what = "former", .weight = 20.0 * kN, .at = at, .until = {}, .place = {}}};
}

// Upper density counts: 2.4 m3 x 2400 kg/m3 x 1.03.
const double slab_kN = 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;

Finding landing(const StageFacts& facts) { return finding_for("landing-stability", "SL-1", facts); }

}  // namespace

TEST_CASE(
    "landing-stability: the load that tips first counts, though another stands nearer to the edge of its "
    "base") {
  SlabLift lift;
  lift.rules.minimum_tipping_angle.value = 10.0 * deg;
  lift.plan.piece.stated_weight.reset();
  // On its base from x = 1.85 to 2.55 m: without the form part the margin is 0.15 m and the height 0.15 m,
  // 45 degrees.
  set_on_bearers(lift, 1.9, 2.5);
  CHECK(landing(lift.facts()).result == Result::pass);
  CHECK(si_number(*landing(lift.facts()).capacity) == Approx(45.0).epsilon(1e-6));
  // With 20 kN at x = 2.4 m and 6 m up the margin is more, and the height far more: it tips at 8.6 degrees.
  lift_to_yard_with_former(lift, {2.4 * m, 1.0 * m, 6.0 * m});
  const auto facts = lift.facts(1);
  REQUIRE(assessed(load_centres_of(facts)).size() == 2);
  const double whole = slab_kN + 20.0;
  const double margin = (slab_kN * 2.0 + 20.0 * 2.4) / whole - 1.85,
               height = (slab_kN * 0.15 + 20.0 * 6.0) / whole;
  REQUIRE(margin > 0.15);
  const Finding worst = landing(facts);
  CHECK(worst.result == Result::fail);
  CHECK(si_number(*worst.capacity) == Approx(std::atan2(margin, height) * 180.0 / pi).epsilon(1e-6));
  CHECK_THAT(worst.text, Catch::StartsWith("set down, the piece tips when it leans "));
}

TEST_CASE("landing-stability: of two loads the one that tips first, in whichever order they come") {
  SlabLift lift;
  lift.plan.piece.stated_weight.reset();
  set_on_bearers(lift, 0.5, 3.5);
  // A part below the slab draws the centre down: without it the piece tips earlier.
  lift_to_yard_with_former(lift, {2.0 * m, 1.0 * m, 0.0 * m});
  // The base is 2 m wide across: margin 1 m, height 0.15 m.
  const Finding finding = landing(lift.facts(1));
  CHECK(finding.result == Result::pass);
  CHECK(si_number(*finding.capacity) == Approx(std::atan2(1.0, 0.15) * 180.0 / pi).epsilon(1e-6));
}

TEST_CASE("landing-stability: a rack under what stands by itself changes nothing") {
  SlabLift lift;
  const Finding free = landing(lift.facts());
  lift.stage().landing->restrained = plan::Restraint::rack;
  const Finding held = landing(lift.facts());
  CHECK(free.result == Result::pass);
  CHECK(held.result == Result::pass);
  CHECK(held.text.empty());
}

TEST_CASE("landing-bearers: shares of two parallel bearers by the lever, of others none") {
  SlabLift lift;
  const auto shares = [&] {
    Trace trace = Trace::recording();
    const auto facts = lift.facts();
    CHECK(rule_named("landing-bearers")->judge(facts, trace).front().result == Result::pass);
    std::vector<double> all;
    for (const auto& entry : trace.steps()) all.push_back(entry.step.result.number);
    return all;
  };
  set_on_bearers(lift, 1.0, 3.5);
  REQUIRE(shares().size() == 2);
  CHECK(shares()[0] == Approx(0.6));  // the centre is at 2 m: 1.5 / 2.5 on the first
  CHECK(shares()[1] == Approx(0.4));
  auto& bearers = lift.stage().landing->bearers;
  (*bearers[1].along)[1].x = 3.0 * m;  // not parallel: what each carries is not told by the lever
  CHECK(shares().empty());
  set_on_bearers(lift, 1.0, 9.0);  // the second is not under the piece
  CHECK(shares().empty());
  CHECK(landing(lift.facts()).text == "bearer 2 is not under the piece");
}

TEST_CASE("roll-stability: the load that rolls most counts, and what is not known of it is missing") {
  SlabLift lift;
  const auto found = [](const StageFacts& facts) {
    return finding_for("roll-stability", "four legs", facts);
  };
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};  // in line: it rolls about them
  lift.plan.piece.stated_weight.reset();
  lift_to_yard_with_former(lift, {2.0 * m, 0.5 * m, -1.0 * m});
  auto facts = lift.facts(1);
  const auto centres = assessed(load_centres_of(facts));
  REQUIRE(centres.size() == 2);
  REQUIRE(facts.without_parts.size() == 1);
  const Finding both = found(facts);
  const auto centre_of_slab_alone = [&] {
    lift.plan.form->attached.clear();
    return found(facts);
  }();
  // With the part deep below its picks it rolls less: without it counts.
  REQUIRE(both.demand);
  CHECK(si_number(*both.demand) > si_number(*centre_of_slab_alone.demand) - 1e-9);

  auto nowhere = lift.facts(0);
  nowhere.rigging = nullptr;
  CHECK(found(nowhere).result == Result::missing);
  CHECK(found(nowhere).text == "the piece has no picks or no weight");
  auto unknown = lift.facts(0);
  lift.plan.concrete.density_tolerance.reset();
  CHECK(found(unknown).result == Result::missing);
  CHECK(found(unknown).text == "the density has no tolerance, so the weight has no lower bound");
}

TEST_CASE("roll-stability: what rolls right over has no moment that holds it") {
  SlabLift lift;
  lift.plan.riggings.front().legs = {leg_to("A1"), leg_to("A3")};
  lift.plan.riggings.front().equalised.clear();
  const auto told = [&] {
    Trace trace = Trace::recording();
    const auto facts = lift.facts();
    rule_named("roll-stability")->judge(facts, trace);
    return has_step(trace, "M_side");
  };
  CHECK(told());
  lift.rules.side_pull.value = 1000.0 * kN;
  CHECK_FALSE(told());
}

TEST_CASE(
    "pick-count: sides of inserts that are alike leave the piece as it lies, legs to one place are one "
    "pick") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs.resize(2);
  const auto found = [](const StageFacts& facts) { return finding_for("pick-count", "four legs", facts); };
  const auto with_normals = [&](const Direction& a, const Direction& b) {
    const auto facts = lift.facts();
    lift.body.sites[0].normal = a;
    lift.body.sites[1].normal = b;
    // 4 m, 2 m, 3 m: flat to a fifth of the lesser width only where it stands on end, which it does not.
    lift.body.lowest = {};
    lift.body.highest = {0.19 * m, 0.19 * m, 2.0 * m};
    return found(facts).text;
  };
  // Up x: 190 mm high and 190 mm wide is no flat piece. As z counts, 2000 mm high, neither; so the widths
  // tell them apart.
  CHECK(with_normals({1.0, 0.0, 0.0}, {0.0, 0.0, 1.0}).empty());
  CHECK(with_normals({0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}).empty());
  const auto flat_in = [&](const Position& size, const Direction& a, const Direction& b) {
    const auto facts = lift.facts();
    lift.body.sites[0].normal = a;
    lift.body.sites[1].normal = b;
    lift.body.lowest = {};
    lift.body.highest = size;
    return found(facts).result;
  };
  const Length thin = 0.1 * m, wide = 2.0 * m;
  // x and z alike, y and z alike: z is up.
  CHECK(flat_in({wide, wide, thin}, {1.0, 0.0, 0.0}, {0.0, 0.0, 1.0}) == Result::fail);
  CHECK(flat_in({wide, wide, thin}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}) == Result::fail);
  CHECK(flat_in({thin, wide, wide}, {1.0, 0.0, 0.0}, {0.0, 0.0, 1.0}) == Result::pass);
  CHECK(flat_in({wide, thin, wide}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}) == Result::pass);

  for (plan::Insert& insert : lift.plan.inserts) insert.at = {1.0 * m, 1.0 * m, 0.3 * m};
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2"), leg_to("A3")};
  auto facts = lift.facts();
  CHECK(found(facts).result == Result::fail);
  CHECK_THAT(found(facts).text, Catch::Contains("can roll over"));
  CHECK(finding_for("teeter", "four legs", facts).result != Result::pass);
}

TEST_CASE("leg-skew: a cross-check without loads, without statics or of no tension decides nothing") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.rules.sharing.value = tables::Sharing::elastic;
  lift.rules.leg_cross_check = tables::LegCrossCheck{made_ratio("skew", 9.0), made_ratio("dynamic", 1.3)};
  const auto found = [](const StageFacts& facts) {
    return finding_for("leg-skew", "four legs", facts).result;
  };
  auto facts = lift.facts();
  CHECK(found(facts) == Result::note);
  const auto load = facts.load;
  facts.load = NotAssessed{"no load", "none"};
  CHECK(found(facts) == Result::pass);
  facts.load = load;
  const auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  auto spoilt = all;
  for (Situation& situation : spoilt) situation.legs[3].tension = {};
  facts.gear_situations = spoilt;
  CHECK(found(facts) == Result::pass);
  spoilt = all;
  spoilt.push_back(all.front());
  spoilt.back().legs[3].tension = HUGE_VAL * kN;
  facts.gear_situations = spoilt;
  CHECK(found(facts) == Result::pass);
  CHECK(finding_for("sling-overload", "A4", facts).result == Result::missing);  // which decides
  facts.gear_situations = NotAssessed{"no statics", "none"};
  CHECK(found(facts) == Result::pass);
  facts.gear_situations = all;
  facts.rigging = nullptr;
  CHECK(found(facts) == Result::pass);
}

TEST_CASE("leg-skew: as much as is asked here is no more than it") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.rules.sharing.value = tables::Sharing::elastic;
  lift.rules.leg_cross_check = tables::LegCrossCheck{made_ratio("skew", 1.0), made_ratio("dynamic", 1.0)};
  auto facts = lift.facts();
  std::get<loads::StageLoad>(facts.load).dynamic_factor = Ratio{1.0};
  std::get<std::vector<Situation>>(facts.gear_situations).resize(1);
  const auto found = [&] { return finding_for("leg-skew", "four legs", facts); };
  CHECK(found().result == Result::pass);
  lift.rules.leg_cross_check->skew.value = Ratio{std::nextafter(1.0, 2.0)};
  CHECK(found().result == Result::note);
  CHECK_THAT(found().text, Catch::StartsWith("a marine guideline asks "));
}

TEST_CASE("picks-too-low: with a form part and without it, the lower of both heights counts") {
  const auto z_pick_mm = [](double part_at_m) {
    SlabLift lift;
    lift_to_yard_with_former(lift, {2.0 * m, 1.0 * m, part_at_m * m});
    Trace trace = Trace::recording();
    const auto facts = lift.facts(1);
    rule_named("picks-too-low")->judge(facts, trace);
    return step_named(trace, "z_pick").result.number;
  };
  // Picks 150 mm above the middle of the slab. With 20 kN that hang 2 m below it the centre sinks; with 20 kN
  // that stand 0.2 m above, it rises to 20 (0.35)/(slab + 20) of it.
  CHECK(z_pick_mm(-1.85) == Approx(150.0).epsilon(1e-6));
  CHECK(z_pick_mm(0.5) == Approx(150.0 - 1000.0 * 20.0 * 0.35 / (slab_kN + 20.0)).epsilon(1e-6));
}

TEST_CASE("stated-weight: concrete of a kind that the tables do not have has no least density") {
  SlabLift lift;
  auto facts = lift.facts();
  lift.plan.concrete.kind = "papier mache";
  const Finding finding = finding_for("stated-weight", "SL-1", facts);
  CHECK(finding.result == Result::missing);
  CHECK(finding.text == "the kind of concrete is not in the tables");
  CHECK(finding.remedy == "[concrete] kind = \"...\"");
}

TEST_CASE(
    "scale-reading: gear that the scale did not count comes on top, and without a form nothing hung on the "
    "piece") {
  SlabLift lift;
  plan::ScaleReading reading;
  reading.state = plan::ScaleState::breaking_free;
  reading.shows = 60.0 * kN;
  reading.rigging = reading.block = true;
  lift.stage().scale_reading = reading;
  const auto R_all = [&] {
    Trace trace = Trace::recording();
    const auto facts = lift.facts();
    rule_named("scale-reading")->judge(facts, trace);
    return step_named(trace, "R_all").result.number;
  };
  CHECK(R_all() == Approx(60.0));
  lift.stage().scale_reading->rigging = false;  // 1 kN of slings
  CHECK(R_all() == Approx(61.0));
  lift.stage().scale_reading->block = false;  // 1 kN of block
  CHECK(R_all() == Approx(62.0));

  plan::Stage yard = lift.stage();
  yard.kind = plan::StageKind::yard;
  yard.scale_reading->state = plan::ScaleState::hanging;
  yard.scale_reading->rigging = yard.scale_reading->block = true;
  yard.scale_reading->shows = 2.4 * 2400.0 * standard_gravity_m_per_s2 * newton + 2.0 * kN;
  lift.plan.stages.push_back(yard);
  lift.plan.form.reset();
  auto facts = lift.facts(1);
  const Finding hung = finding_for("scale-reading", "SL-1", facts);
  CHECK(hung.result == Result::pass);
  CHECK(si_number(*hung.demand) == Approx(slab_kN / 1.03));
  lift.plan.concrete.density_tolerance.reset();
  CHECK(finding_for("scale-reading", "SL-1", facts).text ==
        "the density has no tolerance, so the weight has no lower bound");
}
