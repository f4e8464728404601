// The stage that brings the piece out of its form, whatever its kind; and form parts that are taken off again.

#include <catch2/catch.hpp>

#include <cmath>

#include "plan/form_state.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const loads::StageLoad& load_of(const StageFacts& facts) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) FAIL(gap->why);
  return std::get<loads::StageLoad>(facts.load);
}

plan::Attached part_of(double weight_kN, std::optional<plan::StageKind> until = {}) {
  plan::Attached part;
  part.what = "edge form";
  part.weight = weight_kN * kN;
  part.at = Position{3.5 * m, 1.0 * m, 0.3 * m};
  part.until = until;
  return part;
}

// A strip, then a stage in the yard; the facts of the second.
struct Twice {
  SlabLift lift;
  std::optional<Anchorage> anchored{};
  Twice() {
    plan::Stage yard = lift.stage();
    yard.kind = plan::StageKind::yard;
    lift.plan.stages.push_back(yard);
    lift.plan.form->nothing_attached = false;
  }
  StageFacts second() {
    lift.facts();
    Trace silent;
    anchored.emplace(anchorage(lift.plan, lift.body, lift.rules, lift.tables, silent));
    return stage_facts(lift.plan, lift.plan.stages[1], lift.body, *anchored, lift.rules, lift.tables, silent);
  }
};

}  // namespace

TEST_CASE("the first stage brings the piece out of its form, whatever its kind, unless it is released") {
  SlabLift lift;
  for (const plan::StageKind kind : {plan::StageKind::strip, plan::StageKind::turn, plan::StageKind::yard,
                                     plan::StageKind::haul, plan::StageKind::set}) {
    lift.stage().kind = kind;
    CHECK(plan::comes_out_of_form(lift.plan, lift.stage()));
  }
  lift.stage().kind = plan::StageKind::yard;
  CHECK(in(kN, load_of(lift.facts()).adhesion) == Approx(8.0));  // 8 m2 of 1 kPa
  lift.plan.form->released = true;
  CHECK_FALSE(plan::comes_out_of_form(lift.plan, lift.stage()));
  CHECK(load_of(lift.facts()).adhesion == Force{});

  Twice twice;
  CHECK(plan::comes_out_of_form(twice.lift.plan, twice.lift.plan.stages[0]));
  CHECK_FALSE(plan::comes_out_of_form(twice.lift.plan, twice.lift.plan.stages[1]));
}

TEST_CASE("a first stage that nobody describes the form of is on HOLD, with the line to write") {
  SlabLift lift;
  lift.plan.form.reset();
  lift.stage().kind = plan::StageKind::yard;
  const auto facts = lift.facts();
  const auto* gap = std::get_if<NotAssessed>(&facts.load);
  REQUIRE(gap);
  CHECK(gap->remedy.find("released = true") != std::string::npos);
  const Finding parts = finding_for("attached-parts", "SL-1", facts);
  CHECK(parts.result == Result::missing);
  check_says_why(parts);
}

TEST_CASE("out of the form the dynamic factor is not below that of strip, and both strengths of the drawing count") {
  SlabLift lift;
  lift.stage().kind = plan::StageKind::yard;
  const Ratio strip = lift.rules.dynamic_factor.at("strip").value, yard = lift.rules.dynamic_factor.at("yard").value;
  CHECK(load_of(lift.facts()).dynamic_factor == std::max(strip, yard));
  lift.plan.concrete.form_stripping_strength = 30.0 * MPa;
  lift.plan.concrete.lifting_strength = 20.0 * MPa;
  CHECK(in(MPa, std::get<Stress>(lift.facts().required_strength)) == Approx(30.0));
  lift.plan.concrete.form_stripping_strength.reset();
  CHECK_FALSE(is_assessed(lift.facts().required_strength));
  lift.plan.form->released = true;
  CHECK(in(MPa, std::get<Stress>(lift.facts().required_strength)) == Approx(20.0));
}

TEST_CASE("a turn out of the form: the hook holds the grip by the moments about the edge, as it starts, and no later") {
  SlabLift lift;
  turn_out_of_form(lift, 45.0 * deg);
  const auto facts = lift.facts();
  REQUIRE(is_assessed(facts.gear_situations));
  const auto& load = load_of(facts);
  // hook at x = 3 m, centre of weight and of the grip at x = 2 m
  const double expected_kN =
      2.0 / 3.0 * (load.dynamic_factor.value() * in(kN, load.weight) + in(kN, load.adhesion));
  double found_kN = 0.0;
  std::size_t gripped = 0;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    if (situation.name.find("breaking free") == std::string::npos) continue;
    ++gripped;
    CHECK(situation.name.starts_with("turned to 0"));
    double up_kN = 0.0;
    for (const auto& leg : situation.legs) up_kN += in(kN, leg.on_insert.z);
    found_kN = std::max(found_kN, up_kN);
  }
  CHECK(gripped == 1);
  CHECK(found_kN == Approx(expected_kN).epsilon(1e-9));
  lift.plan.form->released = true;
  const auto after = lift.facts();
  for (const Situation& situation : std::get<std::vector<Situation>>(after.gear_situations))
    CHECK(situation.name.find("breaking free") == std::string::npos);
}

TEST_CASE("a form part: on up to its stage, off after it, and both where nobody says") {
  Twice twice;
  auto& form = *twice.lift.plan.form;
  form.attached = {part_of(10.0, plan::StageKind::strip)};
  CHECK(in(kN, load_of(twice.lift.facts()).attached) == Approx(10.0));
  CHECK(load_of(twice.second()).attached == Force{});

  form.attached = {part_of(10.0, plan::StageKind::yard)};
  CHECK(in(kN, load_of(twice.second()).attached) == Approx(10.0));
  CHECK(twice.second().without_parts.empty());

  form.attached = {part_of(10.0)};
  const auto facts = twice.second();
  REQUIRE(facts.without_parts.size() == 1);
  const auto& with = std::get<demands::Hanging>(facts.hanging);
  CHECK(std::abs(in(deg, with.tilt) - in(deg, facts.without_parts.front().tilt)) > 0.5);
  CHECK(finding_for("attached-parts", "SL-1", facts).result == Result::note);
  const auto& sets = load_of(facts).gear_loads;
  REQUIRE(sets.size() == 2);
  CHECK(in(kN, sets[0].total - sets[1].total) == Approx(10.0 * load_of(facts).dynamic_factor.value()));
  CHECK(sets[0].loads.size() == sets[1].loads.size());
}

TEST_CASE("a piece that its form part balances hangs out of level without it, and is refused") {
  Twice twice;
  auto& lift = twice.lift;
  for (plan::Insert& insert : lift.plan.inserts) insert.at.x += 0.4 * m;  // picks about x = 2.4 m, the slab's middle is 2.0
  lift.plan.piece.stated_weight.reset();
  const double weight_kN = 2.4 * 2400.0 * 1.03 * 9.80665 / 1000.0;
  lift.plan.form->attached = {part_of(0.4 / 1.1 * weight_kN)};  // at x = 3.5 m: together at 2.4 m
  const auto facts = twice.second();
  CHECK(in(deg, std::get<demands::Hanging>(facts.hanging).tilt) < 1.0);
  const Finding tilt = finding_for("hanging-tilt", "four legs", facts);
  CHECK(tilt.result == Result::fail);
  check_says_why(tilt);
}

TEST_CASE("a form part without a place is on HOLD") {
  SlabLift lift;
  lift.plan.form->nothing_attached = false;
  lift.plan.form->attached = {part_of(1.0)};
  CHECK(finding_for("attached-parts", "SL-1", lift.facts()).result == Result::note);
  lift.plan.form->attached.front().at.reset();
  const Finding finding = finding_for("attached-parts", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}
