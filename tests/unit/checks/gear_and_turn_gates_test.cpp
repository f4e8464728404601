// Beams, sheaves and hooks at their limits; what is not a number in one of several attitudes; picks, threads, signatures,
// scales and turns where a plan leaves something out.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/hook_pulls.hpp"
#include "checks/picks_of.hpp"
#include "checks/sign_off_state.hpp"
#include "support/hand_made_slab.hpp"

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

// The slab on two inserts plumb below a spreader of 0.5 kN, which hangs on two legs.
struct BelowABeam {
  SlabLift lift;
  BelowABeam() {
    lift.plan.inserts = {rated_insert_at("A1", 1.0 * m, 1.0 * m), rated_insert_at("A2", 3.0 * m, 1.0 * m)};
    plan::Beam beam;
    beam.id = "spreader";
    beam.weight = 0.5 * kN;
    beam.rated = 100.0 * kN;
    beam.inspected = made_day;
    beam.points = {{"up-1", {-0.5 * m, 0.0 * m, 0.1 * m}, {}},
                   {"up-2", {0.5 * m, 0.0 * m, 0.1 * m}, {}},
                   {"low-1", {-1.0 * m, 0.0 * m, -0.1 * m}, {}},
                   {"low-2", {1.0 * m, 0.0 * m, -0.1 * m}, {}}};
    plan::Rigging& rigging = lift.plan.riggings[0];
    rigging.equalised.clear();
    rigging.beams = {beam};
    rigging.legs = {leg_to("up-1"), leg_to("up-2"), leg_between("low-1", "A1"), leg_between("low-2", "A2")};
  }
  Finding found(std::string_view rule, std::string_view subject) {
    return finding_for(rule, subject, lift.facts());
  }
};

double heaviest_kN(const StageFacts& facts) {
  double most = 0.0;
  for (const loads::LoadSet& set : std::get<loads::StageLoad>(facts.load).gear_loads)
    most = std::max(most, in(kN, set.total));
  return most;
}

}  // namespace

TEST_CASE("beam-overload: what hangs below it, at its plate, one step below, and without a plate") {
  BelowABeam beam;
  const Finding first = beam.found("beam-overload", "spreader");
  CHECK(first.result == Result::pass);
  const Force below = std::get<Force>(*first.demand);
  CHECK(in(kN, below) == Approx(heaviest_kN(beam.lift.facts())).epsilon(1e-4));
  auto& rated = beam.lift.plan.riggings[0].beams[0].rated;
  rated = below;
  CHECK(beam.found("beam-overload", "spreader").result == Result::pass);
  rated = Force::from_value(std::nextafter(below.value(), 0.0));
  const Finding over = beam.found("beam-overload", "spreader");
  CHECK(over.result == Result::fail);
  CHECK(over.situation == "breaking free");
  CHECK_THAT(over.text, Catch::Contains(" hangs below beam spreader, its plate says "));
  CHECK(over.remedy == "a stronger beam, or less load");
  rated.reset();
  const Finding unknown = beam.found("beam-overload", "spreader");
  CHECK(unknown.result == Result::missing);
  CHECK(unknown.text == "the rating of beam 'spreader' is not in the plan");
  CHECK(unknown.remedy == "[[rigging.beam]] rated = \"...\"");
}

TEST_CASE("beam-overload: a tension that is no number, no situation and no statics are missing") {
  BelowABeam beam;
  auto facts = beam.lift.facts();
  const auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  for (std::size_t s = 0; s < all.size(); ++s) {
    auto spoilt = all;
    spoilt[s].legs[2].tension = not_a_number * kN;
    facts.gear_situations = spoilt;
    CHECK(finding_for("beam-overload", "spreader", facts).text == "a leg's tension is not a usable number");
  }
  facts.gear_situations = std::vector<Situation>{};
  CHECK(finding_for("beam-overload", "spreader", facts).text == "no load set acts in this stage");
  beam.lift.leg(2).length.reset();
  CHECK(beam.found("beam-overload", "spreader").text == "the leg to A1 has no length");
  beam.lift.stage().rigging.clear();
  CHECK(judged("beam-overload", beam.lift.facts()).empty());
  CHECK(judged("sheave-overload", beam.lift.facts()).empty());
}

TEST_CASE(
    "sheave-overload: a sheave, a link and the sheaves at the hook, each at what it pulls and one step "
    "below") {
  SlabLift lift;
  plan::Rigging& rigging = lift.plan.riggings[0];
  rigging.equalised.clear();
  const auto hang_by = [&](bool rolls) {
    plan::Sheave sheave;
    sheave.id = "middle";
    sheave.rolls = rolls;
    sheave.weight = 0.1 * kN;
    sheave.rated = 1000.0 * kN;
    rigging.sheaves = {sheave};
    lift.plan.inserts = {rated_insert_at("A1", 1.0 * m, 1.0 * m), rated_insert_at("A2", 3.0 * m, 1.0 * m)};
    rigging.legs = {leg_to("middle"), leg_between("middle", "A1"), leg_between("middle", "A2")};
  };
  for (const bool rolls : {true, false}) {
    hang_by(rolls);
    CAPTURE(rolls);
    const Finding first = finding_for("sheave-overload", "middle", lift.facts());
    CHECK(first.result == Result::pass);
    const Force pull = std::get<Force>(*first.demand);
    CHECK(in(kN, pull) ==
          Approx(heaviest_kN(lift.facts()) + 0.1).epsilon(5e-3));  // its own weight, with a factor or without
    rigging.sheaves[0].rated = pull;
    CHECK(finding_for("sheave-overload", "middle", lift.facts()).result == Result::pass);
    rigging.sheaves[0].rated = Force::from_value(std::nextafter(pull.value(), 0.0));
    const Finding over = finding_for("sheave-overload", "middle", lift.facts());
    CHECK(over.result == Result::fail);
    CHECK_THAT(over.text, Catch::Contains(rolls ? " pulls sheave middle, its plate says "
                                                : " pulls link middle, its plate says "));
    rigging.sheaves[0].rated.reset();
    const Finding unknown = finding_for("sheave-overload", "middle", lift.facts());
    CHECK(unknown.result == Result::missing);
    CHECK(unknown.remedy ==
          (rolls ? "[[rigging.sheave]] rated = \"...\"" : "[[rigging.link]] rated = \"...\""));
  }
  SlabLift hook;
  const std::string name = "sheave at the hook to A1 and A2";
  const auto of_hook = [&] {
    const auto found = judged("sheave-overload", hook.facts());
    REQUIRE(found.size() == 1);
    return found.front();
  };
  const Force pull = std::get<Force>(*of_hook().demand);
  const auto facts = hook.facts();
  double most_kN = 0.0;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations))
    most_kN = std::max(most_kN, in(kN, situation.legs[0].tension + situation.legs[1].tension));
  CHECK(in(kN, pull) == Approx(most_kN));
  hook.plan.riggings[0].equaliser_rated = Force::from_value(std::nextafter(pull.value(), 0.0));
  CHECK(of_hook().result == Result::fail);
  hook.plan.riggings[0].equaliser_rated.reset();
  CHECK(of_hook().result == Result::missing);
  CHECK(of_hook().remedy == "[[rigging]] equaliser_rated = \"...\"");
  hook.plan.riggings[0].equalised[0].resize(1);  // one leg alone is no rope over a sheave
  CHECK(judged("sheave-overload", hook.facts()).empty());
}

TEST_CASE("the crane carries the beam too, and so does its scale") {
  BelowABeam beam;
  beam.lift.plan.piece.stated_weight.reset();
  const auto facts = beam.lift.facts();
  const double weight_kN = in(kN, std::get<loads::StageLoad>(facts.load).weight);
  const auto scale = [&](double shows_kN) {
    plan::ScaleReading reading;
    reading.shows = shows_kN * kN;
    reading.state = plan::ScaleState::hanging;
    reading.rigging = reading.block = true;
    beam.lift.stage().scale_reading = reading;
    return beam.found("scale-reading", "SL-1");
  };
  // 1 kN of slings, 0.5 kN of beam, 1 kN of block.
  const Finding at = scale(weight_kN + 2.4999);
  CHECK(at.result == Result::pass);
  CHECK(in(kN, std::get<Force>(*at.demand)) == Approx(weight_kN - 0.0001));
  CHECK(scale(weight_kN + 2.5001).result == Result::missing);
  CHECK(in(kN, std::get<Force>(*beam.found("crane-overload", "bay").demand)) ==
        Approx(in(kN, std::get<loads::StageLoad>(facts.load).crane_load) + 2.5));
  beam.lift.plan.riggings[0].beams[0].weight.reset();
  CHECK(beam.found("crane-overload", "bay").text == "the weight of beam 'spreader' is not in the plan");
}

TEST_CASE("hanging-tilt: a beam at the limit, one step below, and without form parts") {
  BelowABeam beam;
  beam.lift.plan.riggings[0].beams[0].centre = {0.2 * m, 0.0 * m, 0.0 * m};
  auto facts = beam.lift.facts();
  auto& hanging = std::get<demands::Hanging>(facts.hanging);
  REQUIRE(hanging.carriers.size() == 1);
  const auto of_beam = [&] { return finding_for("hanging-tilt", "spreader", facts); };
  hanging.carriers[0].tilt = facts.rules.maximum_tilt.value;
  CHECK(of_beam().result == Result::pass);
  hanging.carriers[0].tilt = Angle::from_value(std::nextafter(facts.rules.maximum_tilt.value.value(), 1.0));
  CHECK(of_beam().result == Result::fail);
  CHECK(of_beam().text == "beam spreader hangs 5.0 deg out of level, 5.0 deg is the most");
  CHECK(of_beam().remedy == "the hook and the loads below the beam in balance about its middle");
  hanging.carriers[0].tilt = 1.0 * deg;
  facts.without_parts = {hanging};
  facts.without_parts[0].carriers[0].tilt = 6.0 * deg;
  CHECK(of_beam().result == Result::fail);
  facts.without_parts[0].carriers[0].tilt = not_a_number * deg;
  CHECK(of_beam().result == Result::missing);
  facts.without_parts[0].carriers.clear();
  CHECK(of_beam().result == Result::pass);
}

TEST_CASE("hanging-tilt: a tilt that is no number without form parts hides behind no other") {
  SlabLift lift;
  auto facts = lift.facts();
  const auto found = [&] { return finding_for("hanging-tilt", "four legs", facts); };
  demands::Hanging other = std::get<demands::Hanging>(facts.hanging);
  for (const bool first : {true, false}) {
    other.tilt = not_a_number * deg;
    demands::Hanging level = other;
    level.tilt = 1.0 * deg;
    facts.without_parts = first ? std::vector{other, level} : std::vector{level, other};
    CHECK(found().result == Result::missing);
  }
  other.tilt = 6.0 * deg;
  facts.without_parts = {other};
  CHECK(found().result == Result::fail);
  CHECK(found().text == "the piece hangs 6.0 deg out of level, 5.0 deg is the most");
  CHECK_THAT(found().remedy, Catch::StartsWith("fewer equalised legs"));
  lift.plan.riggings[0].equalised.clear();
  auto plain = lift.facts();
  plain.without_parts = {other};
  CHECK(finding_for("hanging-tilt", "four legs", plain).remedy ==
        "legs that bring the hook over the centre of gravity");
  lift.stage().rigging.clear();
  CHECK(finding_for("hanging-tilt", "", lift.facts()).result == Result::missing);
}

TEST_CASE("hook-plumb: hooks that hold nothing, or what is no number, are not plumb") {
  SlabLift lift;
  plan::Rigging& rigging = lift.plan.riggings.front();
  rigging.equalised.clear();
  rigging.hooks = {{"west", {}, "bay", {}}, {"east", {2.0 * m, 0.0 * m, 0.0 * m}, "yard", {}}};
  rigging.legs[0].from = rigging.legs[3].from = "west";
  rigging.legs[1].from = rigging.legs[2].from = "east";
  auto facts = lift.facts();
  const auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  CHECK(finding_for("hook-plumb", "four legs", facts).result == Result::pass);
  auto spoilt = all;
  const auto found = [&] {
    facts.gear_situations = spoilt;
    return finding_for("hook-plumb", "four legs", facts).result;
  };
  spoilt.front().legs[0].on_insert.x = not_a_number * kN;
  CHECK(found() == Result::missing);
  spoilt = all;
  for (demands::LegForce& leg : spoilt.back().legs) leg.on_insert = {};
  CHECK(found() == Result::missing);
  spoilt = all;  // one hook slack: the other holds all, plumb
  for (const std::size_t leg : {1U, 2U}) spoilt.front().legs[leg].on_insert = {};
  const HookPulls pulls = hook_pulls(facts, spoilt.front());
  CHECK(pulls.hooks[1].off_plumb == Angle{});
  spoilt.clear();
  facts.gear_situations = spoilt;
  const Finding nothing = finding_for("hook-plumb", "four legs", facts);
  CHECK(nothing.result == Result::missing);
  CHECK(nothing.text == "what the hooks hold is not known");
  facts.gear_situations = NotAssessed{"no statics", "none"};
  CHECK(finding_for("hook-plumb", "four legs", facts).text == "no statics");
  lift.stage().rigging.clear();
  CHECK(finding_for("hook-plumb", "", lift.facts()).text == "the stage names no rigging");
}

TEST_CASE("critical-lift: two cranes together need a written plan") {
  SlabLift lift;
  plan::Rigging& rigging = lift.plan.riggings.front();
  rigging.equalised.clear();
  rigging.hooks = {{"west", {}, "bay", {}}, {"east", {2.0 * m, 0.0 * m, 0.0 * m}, "yard", {}}};
  rigging.legs[0].from = rigging.legs[3].from = "west";
  rigging.legs[1].from = rigging.legs[2].from = "east";
  const Finding unwritten = finding_for("critical-lift", "SL-1", lift.facts());
  CHECK(unwritten.result == Result::missing);
  CHECK(unwritten.text == "two cranes or hoists lift together, and no written plan of it is named");
  lift.stage().critical_lift_plan = "CL-7";
  CHECK(finding_for("critical-lift", "SL-1", lift.facts()).result == Result::pass);
  rigging.hooks[1].crane = "bay";
  lift.stage().critical_lift_plan.clear();
  CHECK(finding_for("critical-lift", "SL-1", lift.facts()).result == Result::pass);
}

TEST_CASE("teeter: two picks at the share of the length and below it") {
  SlabLift lift;
  lift.plan.riggings.front().legs = {leg_to("A1"), leg_to("A2")};  // 2 m apart on 4 m
  lift.plan.riggings.front().equalised.clear();
  lift.rules.pick_spacing.value = Ratio{0.49};
  CHECK(finding_for("teeter", "four legs", lift.facts()).result == Result::pass);
  lift.rules.pick_spacing.value = Ratio{0.51};
  const Finding note = finding_for("teeter", "four legs", lift.facts());
  CHECK(note.result == Result::note);
  CHECK(note.text ==
        "the picks are only 2000 mm apart on a piece 4000 mm long: it teeters, keep its ends on tag lines");
  lift.plan.riggings.front().legs.resize(1);
  CHECK(finding_for("teeter", "four legs", lift.facts()).result == Result::pass);
  lift.stage().rigging.clear();
  CHECK(finding_for("teeter", "", lift.facts()).result == Result::pass);
  SlabLift unknown;
  auto facts = unknown.facts();
  piece::Body none = unknown.body;
  none.highest = none.lowest = {};
  none.faces.clear();
  StageFacts bare{.plan = facts.plan,
                  .stage = facts.stage,
                  .rigging = facts.rigging,
                  .crane = facts.crane,
                  .body = none,
                  .tables = facts.tables,
                  .rules = facts.rules,
                  .anchorage = facts.anchorage,
                  .load = facts.load,
                  .hung = facts.hung,
                  .hanging = facts.hanging,
                  .insert_situations = facts.insert_situations,
                  .gear_situations = facts.gear_situations,
                  .usable_strength = facts.usable_strength,
                  .required_strength = facts.required_strength,
                  .formula_strength = facts.formula_strength,
                  .up_before = facts.up_before,
                  .up_after = facts.up_after,
                  .joined = nullptr,
                  .turning = {},
                  .bending = facts.bending,
                  .modes = {}};
  CHECK(finding_for("teeter", "four legs", bare).text == "the length of the piece is not known");
}

TEST_CASE("pick-count: what is up when the legs come tight is the side that the inserts are in") {
  // 2 m, 0.3 m and 1 m; flat to a fifth of the lesser width: 0.3 m over 1 m is none, over 2 m it would be.
  const auto on_two = [](const Position& size, const Direction& side) {
    SlabLift lift;
    auto facts = lift.facts();
    piece::Body body = lift.body;
    body.lowest = {}, body.highest = size;
    for (piece::InsertSite& site : body.sites) site.normal = side;
    plan::Rigging two = *facts.rigging;
    two.legs.resize(2);
    StageFacts turned{.plan = facts.plan,
                      .stage = facts.stage,
                      .rigging = &two,
                      .crane = facts.crane,
                      .body = body,
                      .tables = facts.tables,
                      .rules = facts.rules,
                      .anchorage = facts.anchorage,
                      .load = facts.load,
                      .hung = facts.hung,
                      .hanging = facts.hanging,
                      .insert_situations = facts.insert_situations,
                      .gear_situations = facts.gear_situations,
                      .usable_strength = facts.usable_strength,
                      .required_strength = facts.required_strength,
                      .formula_strength = facts.formula_strength,
                      .up_before = facts.up_before,
                      .up_after = facts.up_after,
                      .joined = nullptr,
                      .turning = {},
                      .bending = facts.bending,
                      .modes = {}};
    return finding_for("pick-count", "four legs", turned).result;
  };
  const Length a = 2.0 * m, h = 0.3 * m, b = 1.0 * m;
  CHECK(on_two({h, a, b}, {1.0, 0.0, 0.0}) == Result::pass);
  CHECK(on_two({h, b, a}, {-1.0, 0.0, 0.0}) == Result::pass);
  CHECK(on_two({a, h, b}, {0.0, 1.0, 0.0}) == Result::pass);
  CHECK(on_two({b, h, a}, {0.0, -1.0, 0.0}) == Result::pass);
  CHECK(on_two({a, b, h}, {0.0, 0.0, 1.0}) == Result::pass);
  CHECK(on_two({b, a, h}, {0.0, 0.0, -1.0}) == Result::pass);
  const Length thin = 0.19 * m;
  CHECK(on_two({thin, a, b}, {1.0, 0.0, 0.0}) == Result::fail);
  CHECK(on_two({a, thin, b}, {0.0, 1.0, 0.0}) == Result::fail);
  CHECK(on_two({a, b, thin}, {0.0, 0.0, 1.0}) == Result::fail);
  CHECK(on_two({thin, a, b}, {0.0, 0.0, 1.0}) == Result::pass);  // on its edge it is no flat piece
}

TEST_CASE("pick-count says on how many picks a piece hangs, and what it needs") {
  SlabLift lift;
  lift.plan.riggings.front().equalised.clear();
  const auto found = [&] { return finding_for("pick-count", "four legs", lift.facts()); };
  lift.plan.riggings.front().legs = {leg_to("A1"), leg_to("A3")};
  lift.plan.piece.solids[0].size.z = 0.3 * m;
  CHECK(found().text == "a flat piece, 300 mm high and 2000 mm wide, hangs on two picks: it can roll over");
  CHECK(found().remedy == "three picks or more, around the centre of gravity");
  lift.plan.riggings.front().legs = {leg_to("A1")};
  CHECK_THAT(found().text, Catch::Contains("hangs on one pick: it can roll over"));
  lift.plan.inserts.push_back(headed_insert_at("A5", 2.0 * m, 0.5 * m));
  lift.plan.riggings.front().legs = {leg_to("A1"), leg_to("A5"), leg_to("A2")};
  CHECK_THAT(found().text, Catch::Contains("hangs on picks in one line: it can roll over"));
  lift.plan.riggings.front().legs.clear();
  CHECK(found().result == Result::missing);
  CHECK(found().text == "the rigging has no leg");
}

TEST_CASE(
    "thread-engagement: an insert that states one of the two only is held to neither, a threaded one needs "
    "both") {
  SlabLift lift;
  const auto found = [&] { return finding_for("thread-engagement", "A1", lift.facts()); };
  plan::Insert& insert = lift.plan.inserts[0];
  insert.thread = 20.0 * mm;
  CHECK(found().result == Result::pass);
  insert.thread.reset();
  insert.thread_engagement = 30.0 * mm;
  CHECK(found().result == Result::pass);
  insert.thread = 20.0 * mm;
  CHECK(found().text == "the table of threads is not there");
  lift.tables.plates = tables::PlateModel{
      made_ratio("bearing", 0.85), made("punching", RootStress{2.66 * root(psi)}), made_ratio("r_t", 1.5)};
  CHECK(found().result == Result::pass);
  insert.thread_engagement = 29.9 * mm;
  const Finding shallow = found();
  CHECK(shallow.result == Result::fail);
  CHECK(shallow.text == "the thread of insert A1 is engaged over 29.9 mm, 30 mm is asked for");
  insert.kind = "threaded";
  insert.thread.reset();
  CHECK(found().result == Result::missing);
  CHECK(found().text == "diameter of the thread, or how much of it is engaged, is not in the plan");
}

TEST_CASE("changed-since-sign-off: what has changed is listed in words") {
  SignOffState state;
  state.kind = SignOffState::Kind::changed;
  state.engineer = "R. Example", state.signed_at = "2026-03-02 08:00 +00:00", state.verdict_then = "GO";
  const std::string who = " (signed by R. Example, 2026-03-02 08:00 +00:00, as GO)";
  state.changed = {"the plan"};
  CHECK(in_words(state) == "changed since sign-off: the plan" + who);
  state.changed = {"the plan", "the tables"};
  CHECK(in_words(state) == "changed since sign-off: the plan and the tables" + who);
  state.changed = {"the plan", "the tables", "the program"};
  CHECK(in_words(state) == "changed since sign-off: the plan, the tables and the program" + who);
  state.kind = SignOffState::Kind::valid;
  CHECK(in_words(state) == "signed by R. Example, 2026-03-02 08:00 +00:00, as GO");
  state.kind = SignOffState::Kind::none;
  CHECK(in_words(state) == "not signed");
  state.kind = SignOffState::Kind::faulty;
  state.fault = "1:1 no sign-off";
  CHECK(in_words(state) == "the sign-off cannot be read: 1:1 no sign-off");
  using Kind = SignOffState::Kind;
  CHECK(word_for(Kind::none) == "none");
  CHECK(word_for(Kind::valid) == "valid");
  CHECK(word_for(Kind::changed) == "changed since sign-off");
  CHECK(word_for(Kind::faulty) == "faulty");
}

TEST_CASE(
    "changed-since-sign-off: an unsigned plan by the rule set's choice, a changed or faulty one is HOLD "
    "whatever it is") {
  SlabLift lift;
  SignOffState state;
  const auto found = [&](tables::NoSignOff choice) {
    lift.rules.no_sign_off.value = choice;
    auto facts = lift.facts();
    facts.sign_off = &state;
    return finding_for("changed-since-sign-off", "SL-1", facts);
  };
  using enum tables::NoSignOff;
  CHECK(found(note).result == Result::pass);
  CHECK(found(hold).result == Result::missing);
  CHECK(found(hold).text == "no engineer has signed this plan");
  CHECK(found(refuse).result == Result::fail);
  for (const auto choice : {note, hold, refuse}) {
    state.kind = SignOffState::Kind::valid;
    CHECK(found(choice).result == Result::pass);
    state.kind = SignOffState::Kind::changed;
    state.changed = {"the plan"};
    CHECK(found(choice).result == Result::missing);
    CHECK_THAT(found(choice).remedy, Catch::Contains("firstpick sign PLAN"));
    state.kind = SignOffState::Kind::faulty;
    CHECK(found(choice).result == Result::missing);
    CHECK(found(choice).remedy == "correct or remove the sign-off file, and sign again");
  }
}

TEST_CASE("roll-stability: a piece that nothing holds rolls right over, and is told so") {
  SlabLift lift;
  lift.plan.riggings.front().legs = {leg_to("A1"), leg_to("A3")};
  lift.plan.riggings.front().equalised.clear();
  const auto found = [&] { return finding_for("roll-stability", "four legs", lift.facts()); };
  lift.rules.maximum_roll.value = 0.01 * deg;
  CHECK_THAT(found().text, Catch::Contains("a side pull of 98.0 N at the rim rolls the piece by "));
  lift.rules.side_pull.value = 1000.0 * kN;
  CHECK(found().result == Result::fail);
  CHECK(found().text == "a side pull of 1000 kN at the rim rolls the piece right over");
  CHECK(found().remedy == "three picks or more, well apart, around the centre of gravity");
}

TEST_CASE(
    "landing-bearers: without a place of the centre of gravity or an attitude there are no shares, and no "
    "fault") {
  SlabLift lift;
  auto& landing = *lift.stage().landing;
  landing.on = plan::LandingOn::bearers;
  for (const double x : {0.5, 3.5}) {
    plan::Bearer bearer;
    bearer.along = {Position{x * m, 0.0 * m, 0.0 * m}, Position{x * m, 2.0 * m, 0.0 * m}};
    bearer.width = 100.0 * mm;
    landing.bearers.push_back(bearer);
  }
  Trace trace = Trace::recording();
  auto facts = lift.facts();
  const Rule* rule = rule_named("landing-bearers");
  CHECK(rule->judge(facts, trace).front().result == Result::pass);
  REQUIRE(trace.steps().size() == 2);
  CHECK(trace.steps()[0].step.result.number == Approx(0.5));
  Trace other = Trace::recording();
  facts.up_after = NotAssessed{"not known", {}};
  CHECK(rule->judge(facts, other).front().result == Result::pass);
  auto again = lift.facts();
  lift.plan.form->attached = {{.what = "former", .weight = 1.0 * kN, .at = {}, .until = {}, .place = {}}};
  again.load = NotAssessed{"not known", {}};
  CHECK(rule->judge(again, other).front().result == Result::pass);
  CHECK(other.steps().empty());
  lift.stage().landing.reset();
  CHECK(rule->judge(lift.facts(), other).front().result == Result::pass);
}

namespace {

// The slab turned about its edge at x = 0 by two inserts at x = 3 m.
struct Turned {
  SlabLift lift;
  Turned() { turn_about_edge(lift, 45.0 * deg); }
  plan::Turn& turn() { return *lift.stage().turn; }
  std::string why() { return finding_for("rigging-statics", lift.stage().rigging, lift.facts()).text; }
  void on_a_table(Angle at) { take_off_a_table(lift, at); }
};

}  // namespace

TEST_CASE("off a table: its angle within the turn, at both ends of it, below and above") {
  Turned slab;
  slab.on_a_table(80.0 * deg);
  CHECK(slab.why().empty());
  slab.turn().table_angle = 85.0 * deg;
  CHECK(slab.why().empty());
  slab.turn().table_angle = 85.1 * deg;
  CHECK(slab.why() == "the table angle lies outside the turn");
  slab.turn().table_angle = -0.1 * deg;
  CHECK(slab.why() == "the table angle lies outside the turn");
  slab.turn().table_angle = not_a_number * deg;
  CHECK(slab.why() == "the table angle lies outside the turn");
  slab.turn().table_angle.reset();
  CHECK(slab.why() == "the angle at which the crane takes the piece off the table is not in the plan");
}

TEST_CASE("turn-release: an attitude that is no number hides behind no other") {
  Turned slab;
  slab.on_a_table(80.0 * deg);
  auto facts = slab.lift.facts();
  REQUIRE(is_assessed(facts.hanging));
  const auto found = [&] { return finding_for("turn-release", "SL-1", facts); };
  CHECK(found().result == Result::pass);
  demands::Hanging other = std::get<demands::Hanging>(facts.hanging);
  facts.without_parts = {other};
  facts.without_parts[0].up.x = not_a_number;
  CHECK(found().result == Result::missing);
  facts.without_parts.push_back(other);
  CHECK(found().result == Result::missing);
  facts.without_parts = {other};
  facts.without_parts[0].up = {0.0, 0.0, 1.0};  // back to how it was cast: 80 degrees
  CHECK(found().result == Result::fail);
  CHECK_THAT(
      found().text,
      Catch::StartsWith(
          "it comes off the table at 80.0 deg and swings 80.0 deg to how it hangs, 15.0 deg is the most"));
  facts.without_parts.clear();
  facts.hanging = NotAssessed{"it does not hang", "hang it"};
  CHECK(found().text == "it does not hang");
  facts.turning = NotAssessed{"no turn", "none"};
  CHECK(found().text == "no turn");
  facts.turning.reset();
  CHECK(found().result == Result::missing);
}

TEST_CASE("a turn tells what its rigging lacks, each with its words") {
  Turned slab;
  CHECK(slab.why().empty());
  SECTION("hooks, beams or sheaves") {
    plan::Sheave sheave;
    sheave.id = "middle";
    slab.lift.plan.riggings[1].sheaves = {sheave};
    CHECK(slab.why() == "a turn below hooks of the rigging, beams or sheaves is not computed");
  }
  SECTION("errors of leg length") {
    slab.lift.plan.riggings[1].length_tolerance = Ratio::from_value(0.01);
    CHECK(slab.why() == "errors of leg length are not computed while the piece turns");
  }
  SECTION("no insert") {
    slab.lift.plan.riggings[1].legs[0].to = "A9";
    CHECK(slab.why() == "leg to 'A9': there is no such insert");
  }
  SECTION("no length") {
    slab.lift.plan.riggings[1].legs[0].length.reset();
    CHECK(slab.why() == "the leg to A2 has no length");
  }
  SECTION("another start") {
    slab.turn().from = 10.0 * deg;
    CHECK(slab.why() == "the piece does not stand at 10.0 deg before this stage");
  }
  SECTION("no rigging") {
    slab.lift.stage().rigging.clear();
    CHECK(slab.why() == "the stage names no rigging");
  }
  SECTION("no method") {
    slab.turn().method.reset();
    CHECK(slab.why() == "the method of the turn is not known");
  }
  SECTION("no edge") {
    slab.turn().about.reset();
    CHECK(slab.why() == "the edge about which the piece turns is not in the plan");
  }
  SECTION("two hooks: the second without rigging, without legs, on the same insert, without a length") {
    slab.turn().method = plan::TurnMethod::two_hooks;
    slab.turn().about.reset();
    CHECK(slab.why() == "a hook of the turn has no rigging");
    plan::Rigging tail;
    tail.id = "tail";
    tail.weight = 0.5 * kN;
    slab.lift.plan.riggings.push_back(tail);
    slab.turn().tail_rigging = "tail";
    CHECK(slab.why() == "a hook of the turn has no rigging");
    auto& legs = slab.lift.plan.riggings[2].legs;
    legs = {leg_to("A1"), leg_to("A9")};
    CHECK(slab.why() == "a leg of the turn reaches no insert");
    legs = {leg_to("A1"), leg_to("A2")};
    CHECK(slab.why() == "insert A2 hangs on both hooks");
    legs = {leg_to("A1"), leg_to("A4")};
    CHECK(slab.why().empty());
    legs[0].length.reset();
    CHECK(slab.why() == "the leg to A1 has no length");
  }
}

TEST_CASE(
    "a second turn starts where the first one left the piece, and is not known where the first is not") {
  Turned slab;
  plan::Stage back = slab.lift.stage();
  back.turn->from = 45.0 * deg;
  back.turn->to = 0.0 * deg;
  slab.lift.plan.stages.push_back(back);
  Trace silent;
  const auto why = [&] {
    slab.lift.facts();
    const auto facts = stage_facts(slab.lift.plan, slab.lift.plan.stages[1], slab.lift.body,
                                   *slab.lift.prepared, slab.lift.rules, slab.lift.tables, silent);
    return finding_for("rigging-statics", "two legs", facts).text;
  };
  CHECK(why().empty());
  slab.lift.plan.stages[1].turn->from = 44.0 * deg;
  CHECK(why() == "the piece does not stand at 44.0 deg before this stage");
  slab.lift.plan.stages[1].turn->from = 45.0 * deg;
  slab.lift.plan.stages[0].turn->method.reset();
  CHECK_THAT(why(), Catch::StartsWith("which way up the piece is after an earlier turn is not known: "));
}
