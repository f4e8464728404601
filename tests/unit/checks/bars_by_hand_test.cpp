// Bars on top, along y or beside a thrust, in sections and under loads written by hand, and where a number is
// none: beside prestressed_and_cracked_test.cpp, on its beam, 12 x 0.4 x 0.6 m.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/cracked_bending.hpp"
#include "checks/line_model.hpp"
#include "support/assessed.hpp"
#include "support/beam_lines.hpp"
#include "support/picked_beam.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-cracking";
constexpr double w_kN_m = 0.24 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;
const double not_a_number = std::nan("");
const Ratio as_it_is = Ratio::from_value(1.0);

Outcome<CrackedBending> cracked(const StageFacts& facts, Trace& trace, Stress strength = 24.0 * MPa) {
  return cracked_bending(facts, model_of_beam(facts), as_it_is, strength, trace);
}
Outcome<CrackedBending> cracked(const StageFacts& facts) {
  Trace silent;
  return cracked(facts, silent);
}

// The beam under a load along it and a thrust from end to end at mid-depth, whatever its legs do.
void load_by_hand(StageFacts& facts, double load_kN_m, double thrust_kN) {
  BeamLine beam{{rectangle_step(0.0, 12.0, 0.4, 0.6, load_kN_m)}, {}};
  beam = on_supports(beam, {0.0, 12.0});
  beam.forces[0].height = beam.forces[1].height = 0.3 * m;
  beam.forces[0].along = thrust_kN * kN, beam.forces[1].along = -thrust_kN * kN;
  LinesUnderLoad under{.lines = {}, .stretches = {whole_beam()}};
  under.lines.push_back({beam, "hanging", "by hand", as_it_is, false});
  facts.bending = std::make_shared<BendingMemo>();
  facts.bending->lines = under;
}

}  // namespace

TEST_CASE("bars along y, described from the other end or with a place between, are the same beam") {
  SlabLift along_x, along_y;
  with_bars(along_x, 1500.0 * mm2);
  with_bars(along_y, 1500.0 * mm2);
  along_y.plan.piece.solids[0].size = {0.4 * m, 12.0 * m, 0.6 * m};
  for (plan::Insert& insert : along_y.plan.inserts) std::swap(insert.at.x, insert.at.y);
  for (plan::Bar& layer : along_y.plan.piece.bars)
    for (Position& place : layer.line) std::swap(place.x, place.y);
  std::ranges::reverse(along_y.plan.piece.bars[0].line);
  const CrackedBending one = assessed(cracked(along_x.facts())), other = assessed(cracked(along_y.facts()));
  CHECK(in(MPa, other.bar) == Approx(in(MPa, one.bar)).epsilon(1e-6));
  CHECK(in(mm, other.crack) == Approx(in(mm, one.crack)).epsilon(1e-6));
  CHECK(one.bar_at.where.starts_with("bottom of the piece, at x = 6"));
  CHECK(other.bar_at.where.starts_with("bottom of the piece, at y = 6"));
  // Higher before 3 m only: at the middle, where they are asked for most, nothing is changed.
  along_x.plan.piece.bars[0].line = {
      {0.1 * m, 0.2 * m, 100.0 * mm}, {3.0 * m, 0.2 * m, 60.0 * mm}, {11.9 * m, 0.2 * m, 60.0 * mm}};
  CHECK(in(MPa, assessed(cracked(along_x.facts())).bar) == Approx(in(MPa, one.bar)).epsilon(1e-9));
  along_x.plan.piece.bars[0].line[1].x = 6.5 * m;
  CHECK(in(MPa, assessed(cracked(along_x.facts())).bar) > 1.002 * in(MPa, one.bar));
  // To one side along y.
  for (Position& place : along_y.plan.piece.bars[0].line) place.x = 0.25 * m;
  CHECK_THAT(why_not(cracked(along_y.facts())), Catch::EndsWith("m the bars together lie to one side"));
}

TEST_CASE("bars on top of a beam that hogs: the pressed face is the lower one") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  make_picked_beam(lift, 5.0);
  const auto facts = lift.facts();
  Trace trace = Trace::recording();
  const CrackedBending bent = assessed(cracked(facts, trace));
  // 5 m on either side of the picks, on 400 mm2; the bars in the pressed part change it little.
  const double n = 29000.0 / (57.0 * std::sqrt(in(psi, Stress{24.0 * MPa}))), A = 400.0, b = 400.0, d = 540.0;
  const double x = n * A / b * (std::sqrt(1.0 + 2.0 * b * d / (n * A)) - 1.0);
  const double M = 1.3 * w_kN_m * 12.5 * 1e6;
  CHECK(bent.layer == "top bars");
  CHECK(bent.bar_at.where.starts_with("top of the piece, at x = "));
  CHECK(bent.concrete_at.where.starts_with("bottom of the piece, at x = "));
  CHECK(in(MPa, bent.bar) == Approx(M / (A * (d - x / 3.0))).epsilon(0.02));
  CHECK(bent.stress.pressed_below);
  const Step slope = step_named(trace, "k_s"), stress = step_named(trace, "f_s");
  CHECK(stress.result.number == Approx(in(MPa, bent.bar)).epsilon(1e-6));
  double depths[2] = {0.0, 0.0};
  for (const Term& term : slope.given) {
    if (term.symbol == "d_s1") depths[0] = term.number;
    if (term.symbol == "d_s2") depths[1] = term.number;
  }
  CHECK(depths[0] == Approx(60.0));
  CHECK(depths[1] == Approx(540.0));
  CHECK(stress.formula == "n_s * k_s * (d_s2 - x_s)");
}

TEST_CASE("bars only where nothing pulls them: the piece must not crack, and no crack is told") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  lift.plan.piece.bars = {bars_at("top bars", 400.0 * mm2, 540.0 * mm)};
  lift.plan.piece.bars[0].line[0].x = 4.0 * m, lift.plan.piece.bars[0].line[1].x = 8.0 * m;
  Trace trace = Trace::recording();
  const CrackedBending bent = assessed(cracked(lift.facts(), trace));
  CHECK(bent.bar_at.where.empty());
  CHECK(bent.bar == Stress{});
  CHECK_FALSE(has_step(trace, "f_s"));
  const double M = 1.3 * w_kN_m * (18.0 - 6.0 * 0.3);
  CHECK(in(MPa, bent.bare.tension) == Approx(M / 0.024 / 1000.0).epsilon(2e-3));
  CHECK(bent.bare.where.starts_with("bottom of the piece, at x = 6"));
  const auto findings = judged(id, lift.facts());
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].result == Result::fail);
  CHECK(findings[1].text ==
        "the engineer states that the piece may crack while it hangs, and its bars carry it");
}

TEST_CASE(
    "a thrust along a beam with bars: pressed all over within the kern, then bars that are pressed, then "
    "pulled") {
  SlabLift lift;
  with_bars(lift, 100.0 * mm2);
  lift.plan.piece.bars = {bars_at("bars", 100.0 * mm2, 280.0 * mm)};
  lift.plan.piece.bars[0].line = {{0.0 * m, 0.2 * m, 280.0 * mm}, {12.0 * m, 0.2 * m, 280.0 * mm}};
  auto facts = lift.facts();
  // M = 18 w: within 100 kN x 0.6 m/6 = 10 kN m up to 0.5556 kN/m.
  load_by_hand(facts, 0.55, 100.0);
  Trace whole = Trace::recording();
  const CrackedBending pressed_all_over = assessed(cracked(facts, whole));
  CHECK(pressed_all_over.bar == Stress{});
  CHECK(pressed_all_over.crack == Length{});
  CHECK(pressed_all_over.crack_at.where.empty());
  CHECK(in(MPa, pressed_all_over.concrete) == Approx(0.1 / 0.24 + 6.0 * 0.0099 / (0.4 * 0.36)));
  CHECK_FALSE(has_step(whole, "k_s"));
  // Past it: without bars x = 3 (h/2 - M/N), f_c = 2 N/(b x); the bars at a depth of 0.32 m are still
  // pressed.
  load_by_hand(facts, 0.70, 100.0);
  const CrackedBending bars_pressed = assessed(cracked(facts));
  const double x = 3.0 * (0.3 - 0.126);
  CHECK(in(MPa, bars_pressed.concrete) == Approx(2.0 * 0.1 / (0.4 * x)).epsilon(0.01));
  CHECK(bars_pressed.bar == Stress{});
  CHECK(bars_pressed.crack_at.where.empty());
  // Past 3 (h/2 - M/N) = 0.32, at 1.0741 kN/m, they are pulled, and cracks have a width.
  load_by_hand(facts, 1.06, 100.0);
  CHECK(assessed(cracked(facts)).crack_at.where.empty());
  load_by_hand(facts, 1.12, 100.0);
  const CrackedBending bars_pulled = assessed(cracked(facts));
  CHECK(bars_pulled.bar > Stress{});
  CHECK(bars_pulled.crack > Length{});
  CHECK(bars_pulled.crack_at.where.starts_with("bottom of the piece, at x = 6"));
}

TEST_CASE("bars are computed in level rectangles only: area, second moment and both fibres to a millionth") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  auto facts = lift.facts();
  const auto with = [&](auto change) {
    piece::Stretch stretch = whole_beam();
    change(stretch);
    facts.anchorage.cut_across.insert_or_assign(plan::Axis::x, std::vector{stretch});
    facts.bending = std::make_shared<BendingMemo>();
    const auto found = cracked(facts);
    if (!is_assessed(found))
      CHECK_THAT(
          std::get<NotAssessed>(found).why,
          Catch::EndsWith("m the section of the piece is no level rectangle: its bars are not computed"));
    return is_assessed(found);
  };
  CHECK(with([](piece::Stretch&) {}));
  for (const double sign : {-1.0, 1.0}) {
    CHECK(with([&](piece::Stretch& s) { s.start.area *= 1.0 + sign * 0.9e-6; }));
    CHECK_FALSE(with([&](piece::Stretch& s) { s.start.area *= 1.0 + sign * 1.1e-6; }));
    // Of the area by the square of the depth.
    CHECK(with([&](piece::Stretch& s) {
      s.end.about_across += SecondMoment::from_value(sign * 0.9e-6 * 0.24 * 0.36);
    }));
    CHECK_FALSE(with([&](piece::Stretch& s) {
      s.end.about_across += SecondMoment::from_value(sign * 1.1e-6 * 0.24 * 0.36);
    }));
    CHECK(with([&](piece::Stretch& s) { s.start.lowest += sign * 0.5e-6 * m; }));
    CHECK_FALSE(with([&](piece::Stretch& s) { s.start.lowest += sign * 0.7e-6 * m; }));
    CHECK(with([&](piece::Stretch& s) { s.end.highest += sign * 0.5e-6 * m; }));
    CHECK_FALSE(with([&](piece::Stretch& s) { s.end.highest += sign * 0.7e-6 * m; }));
  }
}

TEST_CASE("bars: a number that is none, above zero, or what is not computed, is not assessed") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  const auto layers = lift.plan.piece.bars;
  const auto gap = [&](auto change) {
    lift.plan.piece.bars = layers;
    change(lift.plan.piece.bars[1]);  // not the layer that is asked for most
    const auto found = finding_for(id, "SL-1", lift.facts());
    CHECK(found.result == Result::missing);
    CHECK(why_not(cracked(lift.facts())) == found.text);
    return found.text;
  };
  for (const double number : {not_a_number, HUGE_VAL, 0.0, -1.0}) {
    CHECK(gap([&](plan::Bar& bar) { bar.yield_strength = number * MPa; }) ==
          "bars 'top bars': their yield strength is not a usable number");
    CHECK(gap([&](plan::Bar& bar) { bar.spacing = number * mm; }) ==
          "bars 'top bars': their spacing is not a usable number");
  }
  CHECK(gap([](plan::Bar& bar) { bar.area.reset(); }) == "bars 'top bars': their area is not stated");
  CHECK(gap([](plan::Bar& bar) { bar.line[0].z = bar.line[1].z = 600.0 * mm; }) ==
        "a layer of bars has no usable area or lies outside the depth of the piece");
  lift.plan.piece.bars = layers;
  auto facts = lift.facts();
  Trace silent;
  for (const double number : {not_a_number, HUGE_VAL, 0.0, -1.0})
    CHECK(why_not(cracked(facts, silent, number * MPa)) ==
          "the strength of the concrete is not a usable number");
  REQUIRE(is_assessed(cracked(facts)));
  facts.bending->lines = Outcome<LinesUnderLoad>{NotAssessed{"no line", "none"}};
  CHECK(why_not(cracked(facts)) == "no line");
  load_by_hand(facts, 1.0, 0.0);
  auto unbalanced = std::get<LinesUnderLoad>(*facts.bending->lines);
  unbalanced.lines[0].beam.forces[0].up *= 2.0;
  facts.bending->lines = unbalanced;
  CHECK_FALSE(is_assessed(cracked(facts)));
  lift.plan.concrete.kind = "lightweight";
  CHECK(why_not(cracked(facts)) == "the modulus of elasticity of this kind of concrete is not in the tables");
}
