// What a rule of bending says where a piece is turned, its loads or its multiplier are not known, or its
// legs bend it: each with its words, and never a pass.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/bending_multiplier.hpp"
#include "checks/cracked_bending.hpp"
#include "checks/piece_bending.hpp"
#include "checks/prestressed_bending.hpp"
#include "support/assessed.hpp"
#include "support/picked_beam.hpp"
#include "support/hand_made_shapes.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view cracking = "piece-cracking", shear = "piece-shear";
const Direction on_its_side{1.0, 0.0, 0.0};

Finding of(std::string_view rule, const StageFacts& facts) {
  const auto all = judged(rule, facts);
  REQUIRE(all.size() == 1);
  return all.front();
}

// Of a beam, changed by `spoil`; each time with facts of its own.
template <class Spoil>
Finding spoilt(SlabLift& lift, std::string_view rule, Spoil spoil) {
  auto facts = lift.facts();
  spoil(facts);
  return of(rule, facts);
}

ModelChoice model_of(const StageFacts& facts) {
  return piece_model(facts.plan, facts.body, facts.rules.cracking);
}

void name_no_product(SlabLift& lift) {
  lift.rules.bending_multiplier = {{"strip.flat.smooth", made_ratio("m", 1.5)}};
  lift.plan.form->product = "wall.smooth";
}
const std::string no_product = "the rule set has no bending multiplier for product 'wall.smooth'";

// The groove takes a quarter of the width away along one side of the top.
void make_lopsided(SlabLift& lift) {
  plan::Solid groove = lift.plan.piece.solids[0];
  groove.name = "groove", groove.cut = true;
  groove.at = {0.0 * m, 0.3 * m, 0.3 * m};
  groove.size = {12.0 * m, 0.1 * m, 0.3 * m};
  lift.plan.piece.solids.push_back(groove);
  lift.plan.piece.stated_weight.reset();
}

// On legs that hang upright below a spreader.
void hang_below_a_spreader(SlabLift& lift, Length half) {
  plan::Beam beam;
  beam.id = "spreader";
  beam.weight = 0.5 * kN;
  beam.points = {{"up-1", {-0.5 * m, 0.0 * m, 0.1 * m}, {}},
                 {"up-2", {0.5 * m, 0.0 * m, 0.1 * m}, {}},
                 {"low-1", {-half, 0.0 * m, -0.1 * m}, {}},
                 {"low-2", {half, 0.0 * m, -0.1 * m}, {}}};
  plan::Rigging& rigging = lift.plan.riggings[0];
  rigging.equalised.clear();
  rigging.beams = {beam};
  rigging.legs = {leg_to("up-1"), leg_to("up-2"), leg_to("A1"), leg_to("A2")};
  rigging.legs[2].from = "low-1", rigging.legs[3].from = "low-2";
}

}  // namespace

TEST_CASE(
    "strands and bars of a piece that is turned, is no line, or whose multiplier is not known, are not "
    "computed") {
  SlabLift strands, bars;
  with_strands(strands, 200.0 * kN, 0.1 * m);
  with_bars(bars, 1500.0 * mm2);
  const auto turn = [](StageFacts& facts) { facts.up_before = on_its_side; };
  CHECK(spoilt(strands, cracking, turn).text ==
        "bending of a piece with strands that is turned is not computed");
  CHECK(spoilt(bars, cracking, turn).text == "bars of a piece that is turned are not computed");
  // What stops without a remedy of its own names the engineer's check.
  const auto lose = [](StageFacts& facts) { facts.gear_situations = NotAssessed{"no statics", ""}; };
  for (SlabLift* lift : {&strands, &bars}) {
    const Finding lost = spoilt(*lift, cracking, lose);
    CHECK(lost.result == Result::missing);
    CHECK(lost.text == "no statics");
    CHECK(lost.remedy == own_bending_check);
    CHECK(spoilt(*lift, cracking, turn).result == Result::missing);
    name_no_product(*lift);
    CHECK(of(cracking, lift->facts()).result == Result::missing);
    CHECK(of(cracking, lift->facts()).text == no_product);
    lift->rules.bending_multiplier.clear();
    // A slab that the plan calls a line is none.
    lift->plan.piece.solids[0].size = {4.0 * m, 2.0 * m, 0.6 * m};
    for (std::size_t i = 0; i < 2; ++i)
      lift->plan.inserts[i].at = {(1.0 + 2.0 * static_cast<double>(i)) * m, 1.0 * m, 0.6 * m};
    lift->plan.piece.model = plan::PieceModel::line;
    lift->plan.piece.stated_weight.reset();
    for (plan::Bar& bar : lift->plan.piece.bars)
      bar.line = {{0.1 * m, 1.0 * m, 0.1 * m}, {3.9 * m, 1.0 * m, 0.1 * m}};
    for (plan::Strand& row : lift->plan.piece.strands)
      row.line = {{0.0 * m, 1.0 * m, 0.1 * m}, {4.0 * m, 1.0 * m, 0.1 * m}};
  }
  CHECK(of(cracking, strands.facts()).text ==
        "strands are counted in a piece that is computed as a line, and this is none");
  CHECK(of(cracking, bars.facts()).text ==
        "bars are counted in a piece that is computed as a line, and this is none");
}

TEST_CASE("a named check stands in for bars that are not computed, and not for loads that are not known") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  lift.plan.piece.bending_check = "sheet 6";
  lift.plan.piece.bars.clear();
  CHECK(of(cracking, lift.facts()).result == Result::note);
  lift.leg(0).length.reset();
  const Finding unknown = of(cracking, lift.facts());
  CHECK(unknown.result == Result::missing);
  CHECK(unknown.text == "the leg to A1 has no length");
}

TEST_CASE(
    "bars on the other side carry nothing: what they leave bare must not crack, and no width of cracks is "
    "told") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  lift.plan.piece.bars.erase(lift.plan.piece.bars.begin());  // the top ones are left, of a beam that sags
  for (plan::Insert& insert : lift.plan.inserts) insert.at.x = insert.at.x < 6.0 * m ? 0.05 * m : 11.95 * m;
  const auto findings = judged(cracking, lift.facts());
  REQUIRE(findings.size() >= 2);
  const Finding& bare = findings.front();
  // As a beam without bars: w L^2 / 8 less what overhangs, over b h^2 / 6 = 0.024 m3.
  const double w = 1.3 * 0.24 * 2400.0 * 1.03 * standard_gravity_m_per_s2, M = w * (144.0 / 8.0 - 6.0 * 0.05);
  CHECK(bare.result == Result::fail);
  CHECK(si_number(*bare.demand) == Approx(M / 0.024 / 1e6).epsilon(5e-3));
}

TEST_CASE("bars over the whole length leave nothing bare") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  const auto count = [&] { return judged(cracking, lift.facts()).size(); };
  CHECK(count() == 4);  // bars, pressed concrete, what is bare at the ends, cracks
  for (plan::Bar& bar : lift.plan.piece.bars) bar.line[0].x = 0.0 * m, bar.line[1].x = 12.0 * m;
  const auto findings = judged(cracking, lift.facts());
  CHECK(findings.size() == 3);
  CHECK(findings.back().result == Result::note);
}

TEST_CASE("a beam that is turned is evaluated neither for cracking nor for shear") {
  SlabLift lift;
  make_picked_beam(lift);
  const auto turn = [](StageFacts& facts) { facts.up_before = on_its_side; };
  CHECK(of(cracking, lift.facts()).result == Result::pass);
  const Finding bent = spoilt(lift, cracking, turn), sheared = spoilt(lift, shear, turn);
  CHECK(bent.result == Result::missing);
  CHECK(bent.text == "bending of a piece that is turned is evaluated of flat panels only");
  CHECK(sheared.result == Result::missing);
  CHECK(sheared.text == "shear of a piece that is turned is not computed");
}

TEST_CASE(
    "a lopsided beam, and one under a situation of unknown loads or none, has no state, no tension and no "
    "shear") {
  SlabLift lift;
  make_picked_beam(lift);
  auto facts = lift.facts();
  const ModelChoice line = model_of(facts);
  const auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  auto unknown = all;
  unknown.front().name = "swinging";
  facts.gear_situations = unknown;
  const std::string why = "the loads of a situation are not known";
  CHECK(why_not(line_tension(facts, line)) == why);
  CHECK(why_not(line_shear(facts, line)) == why);
  CHECK(why_not(line_state(facts, line, unknown.front())) == why);
  CHECK(is_assessed(line_state(facts, line, all.front())));
  facts.gear_situations = std::vector<Situation>{};
  CHECK(why_not(line_tension(facts, line)) == "no situation loads the piece");
  CHECK(why_not(line_shear(facts, line)) == "no situation loads the piece");

  make_lopsided(lift);
  const auto other = lift.facts();
  const std::string lopsided = why_not(line_tension(other, line));
  CHECK_FALSE(lopsided.empty());
  CHECK(why_not(line_shear(other, line)) == lopsided);
  CHECK(why_not(line_state(other, line, all.front())) == lopsided);
  CHECK(of(shear, other).result == Result::missing);
  CHECK(of(shear, other).text == lopsided);
}

TEST_CASE("a section of which no width was measured has no shear stress, and passes nothing") {
  SlabLift lift;
  make_picked_beam(lift);
  const auto facts = lift.facts();
  const ModelChoice line = model_of(facts);
  // 3/2 V / (b h), b h = 0.24 m2.
  const LineShear known = assessed(line_shear(facts, line));
  CHECK(in(MPa, known.stress) == Approx(1.5 * in(kN, known.shear) / 0.24 / 1000.0).epsilon(1e-3));
  auto& stretches = std::get<std::vector<piece::Stretch>>(lift.prepared->cut_across.at(plan::Axis::x));
  for (piece::Stretch& stretch : stretches) stretch.middle.shear_area = Area{};
  CHECK(why_not(line_shear(facts, line)) == "the widths of the piece over its height could not be measured");
}

TEST_CASE("a number of a table that is none passes no piece: multiplier, strip of the picks, force and share of the strands") {
  const double not_a_number = std::nan("");
  SlabLift slab;
  REQUIRE(of(cracking, slab.facts()).result == Result::pass);
  for (const char* first : {"strip.a.any", "strip.c.any"}) {  // before and after one that is a number
    slab.rules.bending_multiplier = {{"strip.b.any", made_ratio("b", 1.5)},
                                     {first, made_ratio("n", not_a_number)}};
    CHECK(of(cracking, slab.facts()).result == Result::missing);
  }
  SlabLift box;
  make_box_on_four(box);
  REQUIRE(of(cracking, box.facts()).result == Result::pass);
  box.rules.cracking.pick_strip.value = Ratio{not_a_number};
  CHECK(of(cracking, box.facts()).result == Result::missing);
  for (Sourced<Ratio> tables::PrestressModel::* share :
       {&tables::PrestressModel::least, &tables::PrestressModel::most, &tables::PrestressModel::compression}) {
    SlabLift strands;
    with_strands(strands, 200.0 * kN, 0.1 * m);
    const auto worst = [&] {
      Result all = Result::pass;
      for (const Finding& finding : judged(cracking, strands.facts())) all = std::max(all, finding.result);
      return all;
    };
    REQUIRE(worst() == Result::pass);
    (strands.rules.prestress.*share).value = Ratio{not_a_number};
    CHECK(worst() == Result::missing);
  }
}

TEST_CASE("a beam along y shears as the same beam along x, and says where") {
  SlabLift along_x, along_y;
  make_picked_beam(along_x);
  make_picked_beam(along_y);
  along_y.plan.piece.solids[0].size = {0.4 * m, 12.0 * m, 0.6 * m};
  for (plan::Insert& insert : along_y.plan.inserts) std::swap(insert.at.x, insert.at.y);
  along_x.rules.cracking.shear_factor.value = along_y.rules.cracking.shear_factor.value = Ratio{1000.0};
  const Finding x = of(shear, along_x.facts()), y = of(shear, along_y.facts());
  CHECK(x.result == Result::fail);
  CHECK(y.result == Result::fail);
  CHECK_THAT(x.text, Catch::Contains(" of shear stress at x = "));
  CHECK_THAT(y.text, Catch::Contains(" of shear stress at y = "));
  CHECK(si_number(*y.demand) == Approx(si_number(*x.demand)).epsilon(1e-6));
}

TEST_CASE("piece-shear: a depth of nothing is no depth to the bars") {
  SlabLift lift;
  with_bars(lift, 1500.0 * mm2);
  lift.plan.piece.bars.resize(1);
  auto facts = lift.facts();
  REQUIRE(of(shear, facts).utilization);
  facts.bending->shear = assessed(*facts.bending->shear);  // known already
  lift.body.highest.z = lift.body.lowest.z = lift.plan.piece.bars[0].line[0].z;
  const Finding none = of(shear, facts);
  CHECK(none.result == Result::missing);
  CHECK_FALSE(none.utilization);
}

TEST_CASE(
    "legs that do not bend the beam are not told to hang upright, nor is anybody who asks for numbers "
    "alone") {
  SlabLift lift;
  make_picked_beam(lift, 0.5);
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 11.0 * m;
  auto facts = lift.facts();
  const std::string told = "with its legs upright, under a beam, it would be";
  CHECK_THAT(of(cracking, facts).remedy, Catch::Contains(told));
  facts.in_words = false;
  CHECK(of(cracking, facts).result == Result::fail);
  CHECK_THAT(of(cracking, facts).remedy, !Catch::Contains(told));
  hang_below_a_spreader(lift, 5.5 * m);
  const Finding upright = of(cracking, lift.facts());
  CHECK(upright.result == Result::fail);
  CHECK_THAT(upright.remedy, !Catch::Contains(told));
}

TEST_CASE("a piece that cracks or shears under some of its legs only is told of gear that shares the load") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.rules.cracking.factor.value = Ratio{1000.0};
  const Finding slab = of(cracking, lift.facts());
  CHECK(slab.result == Result::fail);
  CHECK_THAT(slab.situation, Catch::Contains(" only"));
  CHECK_THAT(slab.remedy, Catch::StartsWith("gear that shares the load between all legs"));

  SlabLift beam;
  make_picked_beam(beam);
  beam.plan.inserts = {headed_insert_at("A1", 2.0 * m, 0.1 * m), headed_insert_at("A2", 10.0 * m, 0.1 * m),
                       headed_insert_at("A3", 10.0 * m, 0.3 * m), headed_insert_at("A4", 2.0 * m, 0.3 * m)};
  for (plan::Insert& insert : beam.plan.inserts) insert.at.z = 0.6 * m;
  beam.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2"), leg_to("A3"), leg_to("A4")};
  for (plan::Leg& leg : beam.plan.riggings[0].legs) leg.length = 20.0 * m;
  beam.rules.cracking.shear_factor.value = Ratio{1000.0};
  const Finding sheared = of(shear, beam.facts());
  CHECK(sheared.result == Result::fail);
  CAPTURE(sheared.situation, sheared.text);
  CHECK_THAT(sheared.remedy, Catch::Contains("more picks along the piece"));
}

TEST_CASE(
    "a ring of which nothing is known but its shape is missing for what is not known, its block is no way "
    "round") {
  SlabLift lift;
  make_ring_on_four(lift);
  lift.leg(0).length.reset();
  const Finding ring = of(cracking, lift.facts());
  CHECK(ring.result == Result::missing);
  CHECK(ring.text == "the leg to A1 has no length");
}

TEST_CASE(
    "loads of bending: as the situation's set has them, with no form as well, and never with a part left "
    "out") {
  SlabLift lift;
  plan::Stage yard = lift.stage();
  yard.kind = plan::StageKind::yard;
  lift.plan.stages.push_back(yard);
  lift.plan.form.reset();
  auto facts = lift.facts(1);
  const auto situation = std::get<std::vector<Situation>>(facts.gear_situations).front();
  const BendingLoads loads = assessed(bending_loads(facts, situation));
  CHECK(loads.attached == 0);
  CHECK(in(kN, loads.set.total) == Approx(1.2 * 2.4 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1000.0));
  facts.up_before = NotAssessed{"how it stands is not known", ""};
  CHECK(bending_gap(facts)->why == "how it stands is not known");
  CHECK(is_assessed(bending_loads(facts, situation)));  // as they are; who asks has looked at the gap
  lift.plan.form.emplace();
  lift.plan.form->attached = {
      {.what = "former", .weight = 1.0 * kN, .at = Position{}, .until = {}, .place = {}}};
  CHECK(why_not(loads_as_they_are(facts, situation)) == "the loads of a situation are not known");
}
