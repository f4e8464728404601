// piece-cracking of a beam with strands, and of a beam that may crack, by hand-made rules: strip factor 1.3, strands 5 % either
// way, compression 0.6 of the strength, bars 0.6 of their yield strength.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "checks/cracked_bending.hpp"
#include "checks/prestressed_bending.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_beam.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-cracking";

std::vector<Finding> findings_of(SlabLift& lift) { return judged(id, lift.facts()); }

double demand_MPa(const Finding& finding) {
  REQUIRE(finding.demand);
  return in(MPa, std::get<Stress>(*finding.demand));
}

Result worst_of(const std::vector<Finding>& findings) {
  Result worst = Result::pass;
  for (const Finding& finding : findings) worst = std::max(worst, finding.result);
  return worst;
}

constexpr double upper_weight = 0.24 * 2400.0 * 1.03 * standard_gravity_m_per_s2;  // N/m
constexpr double c = 2.4852;

}  // namespace

TEST_CASE("strands below the middle pull at the top over the picks") {
  SlabLift lift;
  make_stranded_beam(lift, 400.0 * kN, 0.1 * m);
  const auto findings = findings_of(lift);
  REQUIRE(findings.size() == 2);
  const double strands = 1.05 * 400e3 * (0.2 / 0.024 - 1.0 / 0.24) / 1e6;
  const double hogging = 1.3 * upper_weight * c * c / 2.0 / 0.024 / 1e6;
  CHECK(demand_MPa(findings[0]) == Approx(strands + hogging).epsilon(2e-3));  // the legs are not quite upright
  CHECK(findings[0].result == Result::fail);
  CHECK(findings[0].text.find("top of the piece") != std::string::npos);
  CHECK(findings[0].text.find("the strands bring") != std::string::npos);
  CHECK(findings[0].remedy.find("nearer the ends") != std::string::npos);
  const double pressed = 1.05 * 400e3 * (0.2 / 0.024 + 1.0 / 0.24) / 1e6 + hogging;
  CHECK(demand_MPa(findings[1]) == Approx(pressed).epsilon(2e-3));
  CHECK(findings[1].result == Result::pass);
}

TEST_CASE("where the weight helps, the least of it counts") {
  // On its ends the beam sags: at the middle of the length its weight presses the top. The load may be 0.7/1.3 of 0.97/1.03.
  SlabLift lift;
  make_stranded_beam(lift, 400.0 * kN, 0.1 * m);
  make_long_beam(lift, 0.3);
  lift.plan.piece.strands = {strand(400.0 * kN, 0.1 * m)};
  const auto findings = findings_of(lift);
  // All the force is in 0.8 x 0.6 m from the end, and the weight has hardly begun to press the top there.
  const double strands = 1.05 * 400e3 * (0.2 / 0.024 - 1.0 / 0.24) / 1e6;
  const double least = 0.7 * upper_weight * 0.97 / 1.03, at = 0.48, M = least * (6.0 * (at - 0.3) - 0.5 * at * at);
  CHECK(demand_MPa(findings[0]) == Approx(strands - M / 0.024 / 1e6).epsilon(5e-3));
}

TEST_CASE("tension of strands: at, below and above the limit") {
  SlabLift lift;
  make_stranded_beam(lift, 200.0 * kN, 0.1 * m);
  const double utilization = findings_of(lift)[0].utilization.value();
  const auto result_at = [&](double factor) {
    lift.rules.cracking.factor.value = Ratio::from_value(factor);
    return findings_of(lift)[0].result;
  };
  CHECK(result_at(1.5 / utilization * (1.0 - 1e-9)) == Result::pass);
  CHECK(result_at(1.5 / utilization * (1.0 + 1e-9)) == Result::fail);
  CHECK(result_at(std::nan("")) == Result::missing);
}

TEST_CASE("compression by strands: at, below and above the limit") {
  SlabLift lift;
  make_stranded_beam(lift, 400.0 * kN, 0.25 * m);
  const auto first = findings_of(lift);
  REQUIRE(first.size() == 2);
  const double utilization = first[1].utilization.value();
  const auto result_at = [&](double share) {
    lift.rules.prestress.compression.value = Ratio::from_value(share);
    return findings_of(lift)[1];
  };
  CHECK(result_at(0.6 * utilization * (1.0 + 1e-9)).result == Result::pass);
  const Finding over = result_at(0.6 * utilization * (1.0 - 1e-9));
  CHECK(over.result == Result::fail);
  check_says_why(over);
  CHECK(result_at(std::nan("")).result == Result::missing);
}

TEST_CASE("more strength never makes a beam with strands worse") {
  SlabLift lift;
  make_stranded_beam(lift, 300.0 * kN, 0.1 * m);
  double tension = 1e9, compression = 1e9;
  for (const double strength_MPa : {18.0, 22.0, 26.0, 35.0, 50.0}) {
    lift.plan.concrete.evidence->results = {strength_MPa * MPa, strength_MPa * MPa};
    const auto findings = findings_of(lift);
    REQUIRE(findings.size() == 2);
    CHECK(findings[0].utilization.value() < tension);
    CHECK(findings[1].utilization.value() < compression);
    tension = findings[0].utilization.value(), compression = findings[1].utilization.value();
  }
}

TEST_CASE("a weak concrete is refused before the strands are released") {
  SlabLift lift;
  make_stranded_beam(lift, 200.0 * kN, 0.1 * m);
  lift.plan.concrete.release_strength = 40.0 * MPa;
  const auto findings = judged("strength-below-required", lift.facts());
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].result == Result::fail);
  lift.plan.concrete.release_strength = 1.0 * MPa;
  CHECK(judged("strength-below-required", lift.facts())[0].result == Result::pass);
  lift.plan.concrete.release_strength = Stress::from_value(std::nan(""));
  CHECK(judged("strength-below-required", lift.facts())[0].result == Result::missing);
}

TEST_CASE("strands that are not described, or cannot be computed, are a hold") {
  SlabLift lift;
  make_stranded_beam(lift, 200.0 * kN, 0.1 * m);
  plan::Strand& row = lift.plan.piece.strands[0];
  SECTION("no release strength") { lift.plan.concrete.release_strength.reset(); }
  SECTION("no force") { row.force.reset(); }
  SECTION("no line") { row.line.clear(); }
  SECTION("no transfer length") { row.transfer_length.reset(); }
  SECTION("across the piece") { row.line = {{6.0 * m, 0.1 * m, 0.1 * m}, {6.0 * m, 0.3 * m, 0.1 * m}}; }
  SECTION("beyond the end") { row.line[1].x = 12.5 * m; }
  SECTION("below the piece") { row.line[0].z = -0.1 * m; }
  SECTION("to one side") { row.line[0].y = row.line[1].y = 0.22 * m; }
  SECTION("a number that is none") { row.force = Force::from_value(std::nan("")); }
  SECTION("a slab") {
    lift.plan.piece.solids[0].size = {12.0 * m, 4.0 * m, 0.6 * m};
    lift.plan.piece.stated_weight = 678.0 * kN;
  }
  SECTION("a block") { lift.plan.piece.model = plan::PieceModel::block; }
  SECTION("no strength") { lift.plan.concrete.evidence.reset(); }
  SECTION("no density tolerance") { lift.plan.concrete.density_tolerance.reset(); }
  const auto findings = findings_of(lift);
  CHECK(worst_of(findings) == Result::missing);
  for (const Finding& finding : findings)
    if (finding.result == Result::missing) check_says_why(finding);
}

TEST_CASE("two rows that lie to both sides of the middle together lie in it") {
  SlabLift lift;
  make_stranded_beam(lift, 100.0 * kN, 0.1 * m);
  lift.plan.piece.strands.push_back(lift.plan.piece.strands[0]);
  for (Position& place : lift.plan.piece.strands[0].line) place.y = 0.1 * m;
  for (Position& place : lift.plan.piece.strands[1].line) place.y = 0.3 * m;
  CHECK(worst_of(findings_of(lift)) == Result::pass);
}

TEST_CASE("along y, or described from the other end, it is the same beam") {
  SlabLift along_x, along_y;
  make_stranded_beam(along_x, 300.0 * kN, 0.1 * m);
  make_stranded_beam(along_y, 300.0 * kN, 0.1 * m);
  along_y.plan.piece.solids[0].size = {0.4 * m, 12.0 * m, 0.6 * m};
  for (plan::Insert& insert : along_y.plan.inserts) std::swap(insert.at.x, insert.at.y);
  for (Position& place : along_y.plan.piece.strands[0].line) std::swap(place.x, place.y);
  std::ranges::reverse(along_y.plan.piece.strands[0].line);
  CHECK(demand_MPa(findings_of(along_y)[0]) == Approx(demand_MPa(findings_of(along_x)[0])).epsilon(1e-6));
}

TEST_CASE("the engineer's own check stands in for strands in what is no line, never for the release strength") {
  SlabLift lift;
  make_stranded_beam(lift, 200.0 * kN, 0.1 * m);
  lift.plan.piece.solids[0].size = {12.0 * m, 4.0 * m, 0.6 * m};
  lift.plan.piece.stated_weight = 678.0 * kN;
  lift.plan.piece.bending_check = "sheet 6";
  CHECK(worst_of(findings_of(lift)) == Result::note);
  lift.plan.concrete.release_strength.reset();
  CHECK(worst_of(findings_of(lift)) == Result::missing);
}

TEST_CASE("bars of a beam that may crack, by hand") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  const auto findings = findings_of(lift);
  REQUIRE(findings.size() == 4);  // bars, concrete, the ends without bars, the cracks
  CHECK(worst_of(findings) == Result::note);
  // Without the top bars: b x^2/2 = n A (d - x), f_s = M/(A (d - x/3)); the bars in the pressed part change it little.
  const double n = 29000.0 / (57.0 * std::sqrt(in(psi, Stress{24.0 * MPa})));
  const double A = 1500.0, b = 400.0, d = 540.0;
  const double x = n * A / b * (std::sqrt(1.0 + 2.0 * b * d / (n * A)) - 1.0);
  const double w = 1.3 * upper_weight, M = w * (144.0 / 8.0 - 6.0 * 0.3);
  CHECK(demand_MPa(findings[0]) == Approx(M * 1e3 / (A * (d - x / 3.0))).epsilon(0.02));
  CHECK(demand_MPa(findings[1]) == Approx(2.0 * M * 1e3 / (b * x * (d - x / 3.0))).epsilon(0.06));
  CHECK(findings[3].result == Result::note);
  CHECK(findings[3].text.find("cracks of up to") != std::string::npos);
}

TEST_CASE("bars: at, below and above the limit") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  const double utilization = findings_of(lift)[0].utilization.value();
  const auto at = [&](double share) {
    lift.rules.bars.yield_share.value = Ratio::from_value(share);
    return findings_of(lift)[0];
  };
  CHECK(at(0.6 * utilization * (1.0 + 1e-9)).result == Result::pass);
  const Finding over = at(0.6 * utilization * (1.0 - 1e-9));
  CHECK(over.result == Result::fail);
  check_says_why(over);
  CHECK(over.remedy.find("strongback") != std::string::npos);
  CHECK(at(std::nan("")).result == Result::missing);
}

TEST_CASE("concrete of a cracked piece: at, below and above the limit") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  const double utilization = findings_of(lift)[1].utilization.value();
  const auto at = [&](double share) {
    lift.rules.bars.compression.value = Ratio::from_value(share);
    return findings_of(lift)[1];
  };
  CHECK(at(0.6 * utilization * (1.0 + 1e-9)).result == Result::pass);
  const Finding over = at(0.6 * utilization * (1.0 - 1e-9));
  CHECK(over.result == Result::fail);
  check_says_why(over);
}

TEST_CASE("wide cracks are told as such") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  lift.rules.bars.crack_width.value = 0.001 * mm;
  const auto findings = findings_of(lift);
  CHECK(findings.back().result == Result::note);
  CHECK(findings.back().text.find("the engineer says") != std::string::npos);
}

TEST_CASE("where the bars end the piece must not crack") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  lift.plan.piece.bars[0].line = {{5.0 * m, 0.2 * m, 60.0 * mm}, {7.0 * m, 0.2 * m, 60.0 * mm}};
  const auto findings = findings_of(lift);
  CHECK(worst_of(findings) == Result::fail);
  const auto bare = std::ranges::find_if(findings, [](const Finding& f) { return f.result == Result::fail; });
  CHECK(bare->text.find("where no bars lie") != std::string::npos);
  CAPTURE(bare->text);
  const double w = 1.3 * upper_weight, M = w * (6.0 * (5.0 - 0.3) - 0.5 * 5.0 * 5.0);  // where they end
  CHECK(demand_MPa(*bare) == Approx(M / 0.024 / 1e6).epsilon(5e-3));
}

TEST_CASE("more strength and more bars never make a cracked beam worse") {
  SlabLift lift;
  make_beam_with_bars(lift, 1200.0 * mm2);
  double bars = 1e9, concrete = 1e9;
  for (const double strength_MPa : {18.0, 24.0, 35.0, 50.0}) {
    lift.plan.concrete.evidence->results = {strength_MPa * MPa, strength_MPa * MPa};
    const auto findings = findings_of(lift);
    CHECK(findings[0].utilization.value() < bars);
    CHECK(findings[1].utilization.value() < concrete);
    bars = findings[0].utilization.value(), concrete = findings[1].utilization.value();
  }
  for (const double area_mm2 : {1300.0, 1800.0, 3000.0}) {
    lift.plan.piece.bars[0].area = area_mm2 * mm2;
    const double now = findings_of(lift)[0].utilization.value();
    CHECK(now < bars);
    bars = now;
  }
}

TEST_CASE("bars that are not described, or cannot be computed, are a hold") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  plan::Bar& layer = lift.plan.piece.bars[0];
  SECTION("no bars") { lift.plan.piece.bars.clear(); }
  SECTION("no area") { layer.area.reset(); }
  SECTION("no yield strength") { layer.yield_strength.reset(); }
  SECTION("no line") { layer.line.clear(); }
  SECTION("no spacing") { layer.spacing.reset(); }
  SECTION("across the piece") { layer.line = {{6.0 * m, 0.1 * m, 0.1 * m}, {6.0 * m, 0.3 * m, 0.1 * m}}; }
  SECTION("to one side") { layer.line[0].y = layer.line[1].y = 0.3 * m; }
  SECTION("outside the depth") { layer.line[0].z = layer.line[1].z = -10.0 * mm; }
  SECTION("a number that is none") { layer.area = Area::from_value(std::nan("")); }
  SECTION("strands, too") {
    lift.plan.piece.strands = {strand(100.0 * kN, 0.1 * m)};
    lift.plan.concrete.release_strength = 20.0 * MPa;
  }
  SECTION("no engineer") { lift.plan.piece.engineer = " - "; }
  SECTION("inserts in uncracked concrete") { lift.plan.concrete.cracked = false; }
  SECTION("nobody says whether they are") { lift.plan.concrete.cracked.reset(); }
  SECTION("a section that is no rectangle") {
    plan::Solid groove = lift.plan.piece.solids[0];
    groove.name = "groove";
    groove.cut = true;
    groove.at = {0.0 * m, 0.15 * m, 0.5 * m};
    groove.size = {12.0 * m, 0.1 * m, 0.1 * m};
    lift.plan.piece.solids.push_back(groove);
    for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.5 * m;
  }
  SECTION("a slab") {
    lift.plan.piece.solids[0].size = {12.0 * m, 4.0 * m, 0.6 * m};
    lift.plan.piece.stated_weight = 678.0 * kN;
  }
  SECTION("no strength") { lift.plan.concrete.evidence.reset(); }
  const auto findings = findings_of(lift);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].result == Result::missing);
  check_says_why(findings[0]);
}

TEST_CASE("the engineer's own check of the bars stands in where none are given, and mends no failure") {
  SlabLift lift;
  make_beam_with_bars(lift, 1500.0 * mm2);
  lift.plan.piece.bending_check = "sheet 6";
  SECTION("bars that are too thin") {
    lift.plan.piece.bars[0].area = 200.0 * mm2;
    CHECK(worst_of(findings_of(lift)) == Result::fail);
  }
  SECTION("no bars") {
    lift.plan.piece.bars.clear();
    const auto findings = findings_of(lift);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].result == Result::note);
    CHECK(findings[0].text.find("sheet 6") != std::string::npos);
    lift.plan.concrete.evidence.reset();
    CHECK(findings_of(lift)[0].result == Result::missing);
  }
}

TEST_CASE("bars do not count where the piece must not crack") {
  SlabLift lift;
  make_beam_with_bars(lift, 3000.0 * mm2);
  lift.plan.piece.may_crack = false;
  const auto findings = findings_of(lift);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].result == Result::fail);
}

TEST_CASE("a beam bent by the thrust of its legs is told what upright legs would make of it") {
  SlabLift lift;
  make_long_beam(lift, 0.5);
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 11.0 * m;  // 60 degrees
  const Finding finding = finding_for(id, "SL-1", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.remedy.find("with its legs upright, under a beam, it would be") != std::string::npos);
  // w L^2/8 - w L c/2, without the thrust and its arm
  const double w = 1.3 * upper_weight, M = w * (144.0 / 8.0 - 6.0 * 0.5);
  CAPTURE(finding.remedy, M / 0.024 / 1e6);
  CHECK(finding.remedy.find(print(Stress::from_value(M / 0.024), UnitSystem::si, Rounding::up).substr(0, 3)) !=
        std::string::npos);
  lift.plan.riggings[0].legs[0].length = lift.plan.riggings[0].legs[1].length = 1000.0 * m;
  CHECK(demand_MPa(finding) > demand_MPa(finding_for(id, "SL-1", lift.facts())));
}
