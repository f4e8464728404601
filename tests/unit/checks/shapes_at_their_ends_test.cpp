// Models of bending at the ends of their shapes: a barrel the other way, picks on one side, a face without
// its ring, a wide flat ring, zones of a stepped panel drawn the other way round.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/bending_multiplier.hpp"
#include "checks/line_method.hpp"
#include "checks/panel_face.hpp"
#include "checks/piece_bending.hpp"
#include "checks/round_and_box.hpp"
#include "checks/stepped_panel.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_shapes.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

ModelChoice model_of(const StageFacts& facts) {
  return piece_model(facts.plan, facts.body, facts.rules.cracking);
}

// The same forces on the same inserts, and a leg to a frame before them that pulls 100 kN.
StageFacts with_leg_to_frame(StageFacts facts, plan::Rigging& rigging) {
  rigging = *facts.rigging;
  rigging.legs.insert(rigging.legs.begin(), leg_to("up"));
  facts.rigging = &rigging;
  auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  for (Situation& situation : all) {
    demands::LegForce to_frame = situation.legs.front();
    to_frame.on_insert = {0.0 * kN, 0.0 * kN, 100.0 * kN};
    situation.legs.insert(situation.legs.begin(), to_frame);
  }
  facts.gear_situations = all;
  return facts;
}

}  // namespace

TEST_CASE("a box with its barrel along x bends as the same box with its barrel along y") {
  SlabLift along_y, along_x;
  make_box_on_four(along_y);
  make_box_on_four(along_x);
  plan::Solid& barrel = along_x.plan.piece.solids[1];
  std::swap(barrel.at.x, barrel.at.y);
  std::swap(barrel.size.x, barrel.size.y);
  for (plan::Insert& insert : along_x.plan.inserts) std::swap(insert.at.x, insert.at.y);
  const auto y = along_y.facts(), x = along_x.facts();
  REQUIRE(box_shape(x.body));
  CHECK(box_shape(x.body)->barrel == plan::Axis::x);
  CHECK(box_shape(y.body)->barrel == plan::Axis::y);
  CHECK(in(MPa, assessed(box_tension(x)).tension) ==
        Approx(in(MPa, assessed(box_tension(y)).tension)).epsilon(1e-6));
}

TEST_CASE("what a leg pulls that ends at a frame is not counted on the piece: ring, box and panel in steps") {
  for (const int shape : {0, 1, 2}) {
    CAPTURE(shape);
    SlabLift lift;
    if (shape == 0) make_ring_on_four(lift);
    if (shape == 1) make_box_on_four(lift);
    if (shape == 2) make_slab_on_ribs(lift);
    const auto tension = [&](const StageFacts& facts) {
      return in(MPa, assessed(shape == 0   ? ring_tension(facts)
                              : shape == 1 ? box_tension(facts)
                                           : stepped_panel_tension(facts))
                         .tension);
    };
    const auto facts = lift.facts();
    plan::Rigging rigging;
    CHECK(tension(with_leg_to_frame(facts, rigging)) == Approx(tension(facts)).epsilon(1e-9));
  }
}

TEST_CASE("picks to one side of a box or at one place of a ring do not carry it evenly") {
  SlabLift box, ring;
  make_box_on_four(box);
  make_ring_on_four(ring);
  const auto keep = [](StageFacts facts, auto which) {
    auto all = std::get<std::vector<Situation>>(facts.gear_situations);
    for (Situation& situation : all)
      for (std::size_t leg = 0; leg < situation.legs.size(); ++leg)
        if (!which(leg)) situation.legs[leg].on_insert = {};
    facts.gear_situations = all;
    return facts;
  };
  const std::string uneven = "the picks are not in two lines along the barrel, even about its middle";
  // A1 and A4 stand at x = 0.4 m, A2 and A3 at 1.6 m.
  CHECK(why_not(box_tension(keep(box.facts(), [](std::size_t leg) { return leg == 0 || leg == 3; }))) ==
        uneven);
  CHECK(why_not(box_tension(keep(box.facts(), [](std::size_t leg) { return leg == 1 || leg == 2; }))) ==
        uneven);
  CHECK(why_not(ring_tension(keep(ring.facts(), [](std::size_t leg) { return leg == 2; }))) ==
        "the picks of the ring do not stand evenly about its axis");
}

TEST_CASE("a box under loads that are no numbers is not assessed") {
  SlabLift box;
  make_box_on_four(box);
  auto facts = box.facts();
  std::get<loads::StageLoad>(facts.load).gear_loads.front().loads.front().force = HUGE_VAL * kN;
  auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  for (demands::LegForce& leg : all.front().legs)
    leg.on_insert.x = (leg.on_insert.x > Force{} ? HUGE_VAL : -HUGE_VAL) * kN;
  facts.gear_situations = all;
  CHECK(why_not(box_tension(facts)) == "a number of the box is not usable");
}

TEST_CASE("a wide flat ring is no ring that bends, but a panel with a hole, one a little higher is a ring") {
  SlabLift lift;
  make_ring_on_four(lift);
  // Wall 0.3 m, radius 1.5 m: a ring while the wall is less than 5 times the height.
  const auto of_height = [&](double height_m) {
    plan::Solid& ring = lift.plan.piece.solids[0];
    ring.diameter = 3.3 * m, ring.inside_diameter = 2.7 * m, ring.length = height_m * m;
    for (plan::Insert& insert : lift.plan.inserts) {
      insert.at = {(insert.at.x > 0.1 * m    ? 1.5
                    : insert.at.x < -0.1 * m ? -1.5
                                             : 0.0) *
                       m,
                   (insert.at.y > 0.1 * m    ? 1.5
                    : insert.at.y < -0.1 * m ? -1.5
                                             : 0.0) *
                       m,
                   height_m * m};
      insert.embedment = 30.0 * mm;
    }
    return model_of(lift.facts());
  };
  CHECK(of_height(0.061).known == Known::ring);
  const ModelChoice flat = of_height(0.059);
  CHECK(flat.known == Known::no);
  CHECK(flat.model == plan::PieceModel::panel);
}

TEST_CASE("a panel that is slender enough may be called a line, one that is not may not") {
  SlabLift lift;
  lift.plan.piece.stated_weight.reset();
  lift.plan.piece.model = plan::PieceModel::line;
  const auto fits = [&](double width_m) {
    lift.plan.piece.solids[0].size = {8.0 * m, width_m * m, 0.2 * m};
    for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.2 * m, insert.embedment = 100.0 * mm;
    return model_of(lift.facts()).fits;
  };
  CHECK(fits(2.0));  // 8 m is four times 2 m, and 2 m ten times 0.2 m
  CHECK_FALSE(fits(2.01));
}

TEST_CASE("a box of which a slab or wall would come out as nothing is none") {
  SlabLift lift;
  make_box_on_four(lift);
  const auto facts = lift.facts();
  REQUIRE(box_shape(facts.body));
  const BoxShape whole = *box_shape(facts.body);
  CHECK(in(m, whole.top) == Approx(0.2));
  CHECK(in(m, whole.bottom) == Approx(0.2));
  CHECK(in(m, whole.side) == Approx(0.2));
  // A U of 2.0 x 1.6 m: walls 0.2 m, a slab of 0.2 m below and none on top. And the same upside down, and
  // lying.
  const auto channel = [](bool at_top, bool at_side) {
    const double W = 2.0, D = 1.6, L = 2.0, t = 0.2, b = at_side ? W : W - 2.0 * t,
                 h = at_side ? D - 2.0 * t : D - t;
    const double hole = b * h, V = L * (W * D - hole);
    const double hole_z = at_side ? 0.5 * D : at_top ? 0.5 * (D - t) : t + 0.5 * (D - t);
    const double z = (W * D * 0.5 * D - hole * hole_z) / (W * D - hole);
    const double X2 = L * (W * W * W * D - b * b * b * h) / 12.0, Y2 = V * L * L / 12.0;
    const double Z2 = L * (W * D * (D * D / 12.0 + std::pow(0.5 * D - z, 2)) -
                           hole * (h * h / 12.0 + std::pow(hole_z - z, 2)));
    piece::Body body;
    body.volume = V * m3;
    body.centroid = {0.5 * W * m, 0.5 * L * m, z * m};
    body.highest = {W * m, L * m, D * m};
    body.inertia_per_density_m5 = {{{Y2 + Z2, 0.0, 0.0}, {0.0, X2 + Z2, 0.0}, {0.0, 0.0, X2 + Y2}}};
    return body;
  };
  CHECK_FALSE(box_shape(channel(false, false)));  // no top
  CHECK_FALSE(box_shape(channel(true, false)));   // no bottom
  CHECK_FALSE(box_shape(channel(false, true)));   // no walls
}

TEST_CASE("the face of a panel: from its body, or from its first insert where the faces are left out") {
  SlabLift lift;
  const auto facts = lift.facts();
  REQUIRE(panel_face(facts.plan, facts.body));
  CHECK(in(mm, panel_face(facts.plan, facts.body)->thickness) == Approx(300.0));
  piece::Body body = lift.body;
  for (piece::Face& face : body.faces) face.rings.clear();
  for (piece::Face& face : body.faces)
    if (face.normal.z > 0.5) face.normal.z = 1.0;
  const auto by_insert = panel_face(facts.plan, body);
  REQUIRE(by_insert);
  CHECK(in(mm, by_insert->thickness) == Approx(300.0));
  body.sites.front().normal = {1.0, 0.0, 0.0};
  CHECK_FALSE(panel_face(facts.plan, body));
  body.sites.front().planar = false;
  CHECK_FALSE(panel_face(facts.plan, body));
  // The first insert sits in a curved face: the axes are those of the second one.
  piece::Body curved = lift.body;
  curved.sites.front().planar = false;
  CHECK_FALSE(panel_face(facts.plan, curved));
}

TEST_CASE("strips by hand are told of rectangles only, where the plate is known and its multiplier is") {
  SlabLift lift;
  auto facts = lift.facts();
  const ModelChoice model = model_of(facts);
  CHECK(line_method(facts, model));
  bending_tension(facts, model);
  CHECK_FALSE(line_method_told(facts, model).empty());
  auto without = facts;
  without.bending = nullptr;
  CHECK(line_method_told(without, model).empty());
  lift.rules.bending_multiplier = {{"strip.flat.smooth", made_ratio("m", 1.5)}};
  lift.plan.form->product = "wall.smooth";
  CHECK_FALSE(line_method(facts, model));
  CHECK(line_method_told(facts, model).empty());
  lift.rules.bending_multiplier.clear();

  // Four corners, one of them drawn in: along x, then along y.
  for (const bool along_x : {true, false}) {
    SlabLift cut;
    cut.plan.piece.stated_weight.reset();
    plan::Solid& solid = cut.plan.piece.solids[0];
    solid.shape = plan::Shape::prism;
    solid.length = 0.3 * m;
    solid.outline = {{0.0 * m, 0.0 * m}, {4.0 * m, 0.0 * m}, {4.0 * m, 2.0 * m}, {0.0 * m, 2.0 * m}};
    CHECK(line_method(cut.facts(), model));
    (along_x ? solid.outline[2].x : solid.outline[2].y) *= 0.9;
    CHECK_FALSE(line_method(cut.facts(), model));
  }
}

TEST_CASE(
    "a panel in steps: whichever way its outline runs, a part on it counts, a grip aside does not come out "
    "even") {
  SlabLift lift;
  make_slab_on_ribs(lift);
  auto facts = lift.facts();
  const double tension = in(MPa, assessed(stepped_panel_tension(facts)).tension);
  for (piece::Face& face : lift.body.faces)
    for (auto& ring : face.rings) std::ranges::reverse(ring);
  CHECK(in(MPa, assessed(stepped_panel_tension(facts)).tension) == Approx(tension).epsilon(0.02));
  for (piece::Face& face : lift.body.faces)
    for (auto& ring : face.rings)
      if (!ring.empty()) ring.push_back(ring.back());  // a side of no length
  CHECK(stepped_face(facts.plan, lift.body, facts.rules.cracking));
  piece::Body upright = lift.body;
  std::erase_if(upright.faces, [](const piece::Face& face) { return std::abs(face.normal.z) > 0.5; });
  CHECK_FALSE(stepped_face(facts.plan, upright, facts.rules.cracking));

  SlabLift with_part;
  make_slab_on_ribs(with_part);
  with_part.plan.form->nothing_attached = false;
  with_part.plan.form->attached = {{.what = "former",
                                    .weight = 20.0 * kN,
                                    .at = Position{2.0 * m, 1.0 * m, 0.0 * m},
                                    .until = {},
                                    .place = {}}};
  auto loaded = with_part.facts();
  const double more = in(MPa, assessed(stepped_panel_tension(loaded)).tension);
  CHECK(more > 1.1 * tension);  // 20 kN in the middle of 41 kN between the picks
  // The form pulls at one end in y, then in x.
  for (const bool along_x : {true, false}) {
    auto aside = facts;
    auto& sets = std::get<loads::StageLoad>(aside.load).gear_loads;
    bool moved = false;
    for (loads::LoadSet& set : sets)
      for (std::size_t i = 1; i < set.loads.size(); ++i) {
        (along_x ? set.loads[i].at.x : set.loads[i].at.y) += 0.5 * m;
        moved = true;
      }
    REQUIRE(moved);
    CHECK(why_not(stepped_panel_tension(aside)) ==
          "the form does not grip the panel evenly: its bending by that is not computed");
  }
}
