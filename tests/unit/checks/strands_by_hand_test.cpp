// Strands where rows end or bend in plan, where loads and sections are written by hand, and where a number is
// none; and the line that they lie in, known or not: beside prestressed_and_cracked_test.cpp, on its beam,
// 12 x 0.4 x 0.6 m.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/line_model.hpp"
#include "checks/prestressed_bending.hpp"
#include "support/assessed.hpp"
#include "support/picked_beam.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr double w_kN_m = 0.24 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0;
const double not_a_number = std::nan("");

Outcome<PrestressedBending> pressed(const StageFacts& facts) {
  return prestressed_bending(facts, model_of_beam(facts), Ratio::from_value(1.0));
}

plan::Strand row(Force force, double y_m, double from_m = 0.0, double to_m = 12.0) {
  plan::Strand made = strands_at(force, 0.1 * m);
  made.line = {{from_m * m, y_m * m, 0.1 * m}, {to_m * m, y_m * m, 0.1 * m}};
  return made;
}

}  // namespace

TEST_CASE(
    "strands together lie in the middle everywhere: where rows end, where they bend in plan, and in "
    "between") {
  SlabLift lift;
  with_strands(lift, 200.0 * kN, 0.1 * m);
  auto& rows = lift.plan.piece.strands;
  const auto refused_at = [&] {
    const auto found = pressed(lift.facts());
    return is_assessed(found) ? std::string{} : std::get<NotAssessed>(found).why;
  };
  const auto at = [](const char* place) {
    return std::string("at ") + place +
           " m the strands together lie to one side: they would bend the piece sideways";
  };
  CHECK(refused_at().empty());
  SECTION("a row beside the middle, by 2 % of the width") {
    rows = {row(200.0 * kN, 0.2079)};
    CHECK(refused_at().empty());
    rows = {row(200.0 * kN, 0.2081)};
    CHECK(refused_at() == at("0.000"));
    rows = {row(200.0 * kN, 0.1919)};
    CHECK(refused_at() == at("0.000"));
  }
  SECTION("a short row beside a whole one") {
    rows.push_back(row(200.0 * kN, 0.3, 3.0, 9.0));
    CHECK(refused_at() == at("3.000"));
    rows.push_back(row(100.0 * kN, 0.0001, 3.0, 9.0));
    CHECK(refused_at().empty());  // 200 x 0.1 m against 100 x 0.2 m
    rows.back().line[1].x = 8.0 * m;
    CHECK(refused_at() == at("8.000"));
    rows.back().line = {{4.0 * m, 0.0001 * m, 0.1 * m}, {9.0 * m, 0.0001 * m, 0.1 * m}};
    CHECK(refused_at() == at("3.000"));
  }
  SECTION("a gap between two rows that lie opposite to a third") {
    rows = {row(200.0 * kN, 0.3), row(200.0 * kN, 0.1, 0.0, 6.0), row(200.0 * kN, 0.1, 7.0, 12.0)};
    CHECK(refused_at() == at("6.000"));
    rows = {row(200.0 * kN, 0.3), row(200.0 * kN, 0.1, 0.0, 6.0), row(200.0 * kN, 0.1, 6.0, 12.0)};
    CHECK(refused_at().empty());
  }
  SECTION("a row that bends in plan, and one that crosses the middle") {
    rows[0].line = {{0.0 * m, 0.2 * m, 0.1 * m}, {6.0 * m, 0.3 * m, 0.1 * m}, {12.0 * m, 0.2 * m, 0.1 * m}};
    CHECK(refused_at() == at("6.000"));
    rows[0].line = {{12.0 * m, 0.2 * m, 0.1 * m}, {6.0 * m, 0.3 * m, 0.1 * m}, {0.0 * m, 0.2 * m, 0.1 * m}};
    CHECK(refused_at() == at("6.000"));
    rows[0].line = {{0.0 * m, 0.2 * m, 0.1 * m}, {12.0 * m, 0.3 * m, 0.1 * m}};
    CHECK(refused_at() == at("12.000"));
  }
  SECTION("a wider part: its own middle counts there") {
    piece::Stretch left = whole_beam(), right = whole_beam();
    left.to = right.from = 6.0 * m;
    for (piece::Section* section : {&right.start, &right.middle, &right.end})
      section->nearest = -0.02 * m, section->centroid.y = 0.19 * m;
    auto facts = lift.facts();
    facts.anchorage.cut_across.insert_or_assign(plan::Axis::x, std::vector{left, right});
    CHECK(why_not(pressed(facts)) == at("6.000"));  // 10 mm of 420
    for (piece::Section* section : {&right.start, &right.middle, &right.end}) section->centroid.y = 0.192 * m;
    facts.anchorage.cut_across.insert_or_assign(plan::Axis::x, std::vector{left, right});
    facts.bending = std::make_shared<BendingMemo>();
    const auto found = pressed(facts);
    const std::string why = is_assessed(found) ? "" : std::get<NotAssessed>(found).why;
    CHECK(why.find("to one side") == std::string::npos);
  }
  SECTION("a row that sticks out of the piece by a rounding") {
    rows[0].line[0].x = -1e-8 * m;
    CHECK(refused_at().empty());
  }
}

TEST_CASE(
    "least load of a beam with strands: of every set in which it hangs, form parts or none, by the lesser "
    "weight") {
  SlabLift lift;
  with_strands(lift, 400.0 * kN, 0.1 * m);
  make_picked_beam(lift, 0.3);
  lift.plan.piece.strands = {strands_at(400.0 * kN, 0.1 * m)};
  auto facts = lift.facts();
  const auto under = assessed(lines_under_load(facts, model_of_beam(facts), {}));
  REQUIRE(under.lines.size() == 1);
  const auto tension_MPa = [&](const std::string& set) {
    LinesUnderLoad named = under;
    named.lines[0].set = set;
    facts.bending = std::make_shared<BendingMemo>();
    facts.bending->lines = named;
    return in(MPa, assessed(pressed(facts)).tension.stress);
  };
  // All the force is in 0.8 x 0.6 m from the end; there the weight presses the top by w (6 (x - 0.3) -
  // x^2/2)/W.
  const double strands = 1.05 * 0.4 * (0.2 / 0.024 - 1.0 / 0.24), x = 0.48;
  const auto by_weight = [&](double w) {
    return strands - w / 1000.0 * (6.0 * (x - 0.3) - 0.5 * x * x) / 0.024;
  };
  const double least = by_weight(0.7 * w_kN_m * 0.97 / 1.03);
  for (const char* set : {"hanging", "hanging without form parts", "hanging in wind"})
    CHECK(tension_MPa(set) == Approx(least).epsilon(4e-3));
  CHECK(tension_MPa("breaking free") == Approx(by_weight(1.3 * w_kN_m)).epsilon(4e-3));

  lift.plan.piece.stated_weight = 50.0 * kN;
  CHECK(tension_MPa("hanging") == Approx(by_weight(0.7 * 50.0 / 12.0)).epsilon(4e-3));
  lift.plan.piece.stated_weight = 67.8 * kN;  // more than the least by its density
  CHECK(tension_MPa("hanging") == Approx(least).epsilon(4e-3));
  lift.plan.piece.stated_weight.reset();
  CHECK(tension_MPa("hanging") == Approx(least).epsilon(4e-3));
}

TEST_CASE("strands while the form still grips: that set is the worst, of tension and of compression") {
  SlabLift lift;
  with_strands(lift, 400.0 * kN, 0.1 * m);
  plan::Contact bed;
  bed.faces.names = {{"-z", {}}};
  bed.finish = "smooth";
  lift.plan.form->contacts = {bed};
  lift.plan.form->nothing_grips = false;
  const PrestressedBending bent = assessed(pressed(lift.facts()));
  CHECK(bent.tension_situation == "breaking free");
  CHECK(bent.compression_situation == "breaking free");
  const double load = 1.3 * w_kN_m + 0.4, hogging = load * 2.4852 * 2.4852 / 2.0 / 0.024 / 1000.0;
  CHECK(in(MPa, bent.tension.stress) ==
        Approx(1.05 * 0.4 * (0.2 / 0.024 - 1.0 / 0.24) + hogging).epsilon(2e-3));
  CHECK(in(MPa, bent.compression.stress) ==
        Approx(-1.05 * 0.4 * (0.2 / 0.024 + 1.0 / 0.24) - hogging).epsilon(2e-3));
  CHECK(bent.compression_where.starts_with("bottom of the piece, at x = "));
  // Whichever set comes first.
  auto facts = lift.facts();
  auto under = assessed(lines_under_load(facts, model_of_beam(facts), {}));
  REQUIRE(under.lines.size() == 2);
  std::ranges::reverse(under.lines);
  facts.bending = std::make_shared<BendingMemo>();
  facts.bending->lines = under;
  const PrestressedBending reversed = assessed(pressed(facts));
  CHECK(reversed.tension_situation == "breaking free");
  CHECK(reversed.compression_situation == "breaking free");
  CHECK(reversed.tension.stress == bent.tension.stress);
  CHECK(reversed.compression.stress == bent.compression.stress);
}

TEST_CASE("strands: what is not stated, not computed or no number is not assessed, by whomever it is asked") {
  SlabLift lift;
  with_strands(lift, 200.0 * kN, 0.1 * m);
  auto facts = lift.facts();
  REQUIRE(is_assessed(pressed(facts)));
  facts.bending->lines = Outcome<LinesUnderLoad>{NotAssessed{"no line", "none"}};
  CHECK(why_not(pressed(facts)) == "no line");
  facts.bending = std::make_shared<BendingMemo>();
  lift.rules.prestress.least.value = Ratio::from_value(not_a_number);
  CHECK(why_not(pressed(facts)) == "the range of the prestress or of the load is not a usable one");
  lift.rules.prestress.least.value = Ratio::from_value(0.95);
  piece::Stretch gradual = whole_beam();
  gradual.prismatic = false;
  facts.anchorage.cut_across.insert_or_assign(plan::Axis::x, std::vector{gradual});
  facts.bending = std::make_shared<BendingMemo>();
  CHECK(why_not(pressed(facts)) ==
        "from 0.000 m on the section of the piece changes gradually: with strands that is not computed");
  lift.plan.piece.strands[0].transfer_length.reset();
  CHECK(why_not(pressed(facts)) ==
        "strands 'bottom row': the length over which their force comes into the concrete is not stated");
  lift.plan.concrete.release_strength.reset();
  CHECK(why_not(pressed(facts)) ==
        "the strength that the strands ask for before they are released is not in the plan");
}

TEST_CASE("a place on a line of strands or bars, from either end, between its places and beyond them") {
  const std::vector<Position> line{
      {4.0 * m, 0.0 * m, 0.2 * m}, {2.0 * m, 0.0 * m, 0.1 * m}, {1.0 * m, 1.0 * m, 0.3 * m}};
  const auto rising = rising_along(line, plan::Axis::x);
  CHECK(in(m, rising.front().x) == Approx(1.0));
  const auto z_at = [&](double x) { return in(m, place_on(rising, plan::Axis::x, x * m).z); };
  CHECK(z_at(1.0) == Approx(0.3));
  CHECK(z_at(1.75) == Approx(0.15));
  CHECK(z_at(2.0) == Approx(0.1));
  CHECK(z_at(3.0) == Approx(0.15));
  CHECK(z_at(5.0) == Approx(0.25));
  CHECK(z_at(0.5) == Approx(0.4));
  const std::vector<Position> across{{0.0 * m, 1.0 * m, 0.2 * m}, {1.0 * m, 3.0 * m, 0.4 * m}};
  CHECK(in(m, rising_along(across, plan::Axis::y).front().z) == Approx(0.2));
  CHECK(in(m, place_on(across, plan::Axis::y, 2.0 * m).x) == Approx(0.5));
}

TEST_CASE("a line that is known is neither cut nor loaded again, what was refused stays refused") {
  SlabLift lift;
  make_picked_beam(lift);
  auto facts = lift.facts();
  const ModelChoice model = model_of_beam(facts);
  const auto first = assessed(lines_under_load(facts, model, {3.3 * m}));
  lift.plan.piece.solids[0].size.x = 0.0 * m;
  const auto again = assessed(lines_under_load(facts, model, {}));
  CHECK(again.lines[0].beam.steps.size() == first.lines[0].beam.steps.size());
  CHECK(again.stretches.size() == first.stretches.size());

  // What is kept while picks move: a solid cut once.
  lift.plan.piece.solids[0].size.x = 12.0 * m;
  facts.anchorage.cut_across.clear();
  facts.bending = std::make_shared<BendingMemo>();
  facts.bending->reuse = std::make_shared<BendingReuse>();
  const LineModel cut = assessed(line_model(facts, model));
  REQUIRE(facts.bending->reuse->stretches);
  lift.plan.piece.solids[0].size.x = 0.0 * m;
  facts.anchorage.cut_across.clear();
  CHECK(assessed(line_model(facts, model)).steps.size() == cut.steps.size());
  piece::Stretch narrower = whole_beam();
  for (piece::Section* section : {&narrower.start, &narrower.middle, &narrower.end})
    section->area = 0.12 * m2;
  facts.bending->reuse->stretches = std::vector{narrower};
  facts.anchorage.cut_across.clear();
  CHECK(in(m2, assessed(line_model(facts, model)).steps.front().area) == Approx(0.12));
  facts.bending->reuse->stretches =
      Outcome<std::vector<piece::Stretch>>{NotAssessed{"it was not cut", "none"}};
  facts.anchorage.cut_across.clear();
  CHECK(why_not(line_model(facts, model)) == "it was not cut");
  CHECK(why_not(lines_under_load(facts, model, {})) == "it was not cut");

  // Without either, a solid that is none.
  facts.bending = std::make_shared<BendingMemo>();
  facts.anchorage.cut_across.clear();
  CHECK_FALSE(is_assessed(line_model(facts, model)));
}

TEST_CASE(
    "a line carries what its inserts are pulled by, not the leg to a beam, out of balance it is not loaded") {
  SlabLift lift;
  make_picked_beam(lift);
  auto facts = lift.facts();
  const ModelChoice model = model_of_beam(facts);
  const auto alone = assessed(lines_under_load(facts, model, {})).lines.front().beam;
  plan::Rigging rigging = lift.plan.riggings.front();
  rigging.legs.insert(rigging.legs.begin(), leg_to("end of the beam"));
  auto situations = std::get<std::vector<Situation>>(facts.gear_situations);
  for (Situation& situation : situations) {
    demands::LegForce up;
    up.on_insert = {0.0 * kN, 0.0 * kN, 50.0 * kN};
    situation.legs.insert(situation.legs.begin(), up);
  }
  facts.rigging = &rigging;
  facts.gear_situations = situations;
  facts.bending = std::make_shared<BendingMemo>();
  const auto with = assessed(lines_under_load(facts, model, {})).lines.front().beam;
  REQUIRE(with.forces.size() == alone.forces.size());
  CHECK(in(kN, with.forces[0].up) == Approx(in(kN, alone.forces[0].up)));
  CHECK(in(m, with.forces[1].at) == Approx(12.0 - 2.4852));
  situations[0].legs[1].on_insert.z *= 1.1;
  facts.gear_situations = situations;
  facts.bending = std::make_shared<BendingMemo>();
  CHECK(why_not(lines_under_load(facts, model, {})) ==
        "the loads along the piece do not balance what its legs carry");
}
