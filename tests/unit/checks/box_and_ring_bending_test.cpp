// Boxes and rings: the tension that their rule finds, by the equations of the frame solved by hand for each case, and at both
// sides of every limit of the two models.

#include <algorithm>
#include <array>
#include <cmath>

#include <catch2/catch.hpp>

#include "checks/piece_model.hpp"
#include "checks/round_and_box.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-cracking";

Finding finding_of(SlabLift& lift) { return finding_for(id, "SL-1", lift.facts()); }

double tension_MPa(SlabLift& lift) {
  const Finding finding = finding_of(lift);
  INFO(finding.text);
  REQUIRE(finding.demand);
  return in(MPa, std::get<Stress>(*finding.demand));
}

plan::Insert on_top(const std::string& name, double x_m, double y_m, double z_m) {
  plan::Insert insert = headed_insert_at(name, x_m * m, y_m * m);
  insert.at.z = z_m * m;
  return insert;
}

// 2.0 wide, 1.6 high, 2.0 m long along y, all members 0.2 m; four picks `off_m` from its outside.
void make_box(SlabLift& lift, double off_m) {
  plan::Solid& whole = lift.plan.piece.solids[0];
  whole.size = {2.0 * m, 2.0 * m, 1.6 * m};
  plan::Solid barrel = whole;
  barrel.name = "barrel", barrel.cut = true;
  barrel.at = {0.2 * m, 0.0 * m, 0.2 * m};
  barrel.size = {1.6 * m, 2.0 * m, 1.2 * m};
  lift.plan.piece.solids.push_back(barrel);
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {on_top("A1", off_m, 0.5, 1.6), on_top("A2", 2.0 - off_m, 0.5, 1.6),
                       on_top("A3", 2.0 - off_m, 1.5, 1.6), on_top("A4", off_m, 1.5, 1.6)};
}

// Along the middles of its members it is 1.8 x 1.4 m. Loads per length of the barrel and of member, t = 0.2 m each: I cancels.
struct Frame {
  double top, bottom, side;  // loads, N/m
  double pick, thrust;       // m, N
};

// The largest 6 M/t^2 + N/t of slabs and walls, MPa; of the top slab raised.
double by_hand_MPa(const Frame& f, double raised = 1.0) {
  const double B = 1.8, H = 1.4, t = 0.2, P = (f.top + f.bottom) * B / 2.0 + f.side * H;
  const double a = B + 2.0 * H / 3.0, b = H / 3.0;
  const double r1 = -(P * f.pick * (B - f.pick) - f.top * B * B * B / 12.0 - f.thrust * (B - 2.0 * f.pick));
  const double r2 = -f.bottom * B * B * B / 12.0;
  const double m1 = (r1 * a - b * r2) / (a * a - b * b), m2 = (r2 * a - b * r1) / (a * a - b * b);
  const double at_pick = m1 + P * f.pick - f.top * f.pick * (B - f.pick) / 2.0;
  const double middle = m1 + P * f.pick - f.top * B * B / 8.0 - f.thrust;
  const double top = raised * std::max({std::abs(m1), std::abs(at_pick), std::abs(middle)});
  const double slabs = std::max({top, std::abs(m2), std::abs(m2 + f.bottom * B * B / 8.0)}) * 6.0 / (t * t);
  const double head = 6.0 * std::abs(m1) / (t * t) + (f.bottom * B / 2.0 + f.side * H) / t;
  const double foot = 6.0 * std::abs(m2) / (t * t) + (f.bottom * B / 2.0) / t;
  return std::max({slabs, head, foot}) / 1e6;
}

const double shell_N_per_m = 1.3 * 0.2 * 2400.0 * 1.03 * standard_gravity_m_per_s2;  // of 1 m along a member

// Legs of 2.5 m to a hook over the middle: level over upright, across the barrel.
double lean(double off_m) {
  const double x = 1.0 - off_m;
  return x / std::sqrt(2.5 * 2.5 - x * x - 0.25);
}

double thrust_N(double off_m, double line_N_per_m) { return line_N_per_m * lean(off_m) * 0.1; }

}  // namespace

TEST_CASE("a box: the tension of its frame by hand, picks at the walls, beside them and near its middle") {
  for (const double off_m : {0.1, 0.15, 0.4, 0.7}) {
    SlabLift lift;
    make_box(lift, off_m);
    CAPTURE(off_m);
    const double g = shell_N_per_m, line = g * (1.8 + 1.4);
    CHECK(tension_MPa(lift) ==
          Approx(by_hand_MPa({g, g, g, off_m - 0.1, thrust_N(off_m, line)})).epsilon(1e-3));
  }
}

TEST_CASE("a box: picks nearer to its outside than the middle of the wall count at that middle") {
  SlabLift lift;
  make_box(lift, 0.05);
  const double g = shell_N_per_m, line = g * (1.8 + 1.4);
  CHECK(tension_MPa(lift) == Approx(by_hand_MPa({g, g, g, 0.0, thrust_N(0.05, line)})).epsilon(1e-3));
}

TEST_CASE("a box: where a pick takes a strip of the barrel only, the moments of the top slab are raised") {
  SlabLift lift;
  make_box(lift, 0.4);
  const double g = shell_N_per_m, line = g * (1.8 + 1.4);
  const Frame frame{g, g, g, 0.3, thrust_N(0.4, line)};
  // Two picks of a line on 2 m: 1 m each. 5 thicknesses are 1 m, 2 are 0.4 m: raised by 2.5.
  lift.rules.cracking.pick_strip.value = Ratio{5.0};
  CHECK(tension_MPa(lift) == Approx(by_hand_MPa(frame)).epsilon(1e-3));
  lift.rules.cracking.pick_strip.value = Ratio{2.0};
  CHECK(tension_MPa(lift) == Approx(by_hand_MPa(frame, 2.5)).epsilon(1e-3));
}

TEST_CASE(
    "a box: the grip of the form counts spread as the weight is, on the bottom slab, or on the top slab, the "
    "worst") {
  SlabLift lift;
  make_box(lift, 0.15);
  plan::Contact bed;
  bed.faces.names = {{"-z", {}}};
  bed.finish = "smooth";
  bed.adhesion = 6.0 * kPa;
  lift.plan.form->contacts = {bed};
  lift.plan.form->nothing_grips = false;
  // The bottom, 4 m2, and the soffit of the top slab, 3.2 m2.
  const double grip_N = 6000.0 * 7.2, g = shell_N_per_m, line = g * (1.8 + 1.4) + grip_N / 4.0,
               S = thrust_N(0.15, line);
  const double spread = grip_N / 2.0 / (2.0 * (1.8 + 1.4)), slab = grip_N / 2.0 / 1.8;
  const double worst =
      std::max({by_hand_MPa({g + spread, g + spread, g + spread, 0.05, S}),
                by_hand_MPa({g, g + slab, g, 0.05, S}), by_hand_MPa({g + slab, g, g, 0.05, S})});
  CHECK(tension_MPa(lift) == Approx(worst).epsilon(2e-3));
  CHECK(worst > 1.1 * by_hand_MPa({g + spread, g + spread, g + spread, 0.05, S}));
}

TEST_CASE("a box: picks even about its middle to 2 % of its width, that carry alike to 5 %, in two lines") {
  const auto told = [](SlabLift& lift) {
    const Finding finding = finding_of(lift);
    return finding.demand ? std::string() : finding.text;
  };
  const std::string uneven = "the picks are not in two lines along the barrel, even about its middle";
  SECTION("one pick off its line: 39 mm and 41 mm of 2 m") {
    SlabLift in_line, off_line;
    make_box(in_line, 0.4), make_box(off_line, 0.4);
    for (SlabLift* lift : {&in_line, &off_line}) {
      lift->plan.riggings[0].equalised.clear();
      lift->plan.slings[0].axial_stiffness = 200.0 * kN;  // soft enough that all four pull
    }
    in_line.rules.sharing.value = off_line.rules.sharing.value = tables::Sharing::elastic;
    in_line.plan.inserts[0].at.x = 0.439 * m;
    off_line.plan.inserts[0].at.x = 0.441 * m;
    CHECK(told(in_line).empty());
    CHECK_THAT(told(off_line), Catch::Contains(uneven));
  }
  SECTION("all picks on one side of the middle") {
    SlabLift lift;
    make_box(lift, 0.4);
    lift.plan.inserts[1].at.x = lift.plan.inserts[2].at.x = 0.9 * m;
    CHECK_THAT(told(lift), Catch::Contains(uneven));
  }
  SECTION("two opposite legs of four that carry all, by statics, still lie in two lines") {
    SlabLift lift;
    make_box(lift, 0.4);
    lift.plan.riggings[0].equalised.clear();
    CHECK(told(lift).empty());
    lift.rules.sharing.value = tables::Sharing::elastic;
    const double even = tension_MPa(lift);
    lift.rules.sharing.value = tables::Sharing::statics;
    CHECK(tension_MPa(lift) ==
          Approx(even).epsilon(1e-3));  // one pick of a line takes the strip that two shared
  }
  SECTION("a pick that is not in the top") {
    SlabLift lift;
    make_box(lift, 0.4);
    lift.plan.inserts[0].at = {0.0 * m, 0.5 * m, 1.4 * m};
    CHECK_THAT(told(lift), Catch::Contains("A1 does not sit in the top face of the box"));
  }
  SECTION("a form part to one side: 39 mm and 41 mm of 2 m") {
    for (const double off_m : {0.039, 0.041}) {
      SlabLift lift;
      make_box(lift, 0.4);
      lift.plan.form->nothing_attached = false;
      lift.plan.form->attached = {{.what = "former",
                                   .weight = 0.1 * kN,
                                   .at = Position{(1.0 + off_m) * m, 1.0 * m, 1.6 * m},
                                   .until = plan::StageKind::strip,
                                   .place = {}}};
      CHECK(told(lift).empty() == (off_m < 0.04));
      if (off_m > 0.04)
        CHECK_THAT(told(lift), Catch::Contains("a part or the grip of the form lies to one side of the box"));
    }
  }
}

TEST_CASE("a box that cracks says where, and what helps") {
  SlabLift lift;
  make_box(lift, 0.7);
  lift.rules.cracking.factor.value = Ratio{1e4};
  const Finding finding = finding_of(lift);
  CHECK(finding.result == Result::fail);
  CHECK_THAT(finding.text, Catch::Contains("of tension at the top slab at the picks, "));
  CHECK(finding.remedy == "picks nearer the walls, a beam whose legs hang upright, or more strength");
  SlabLift at_walls;
  make_box(at_walls, 0.1);
  at_walls.rules.cracking.factor.value = Ratio{1e4};
  CHECK_THAT(finding_of(at_walls).text, Catch::Contains("head of the walls"));
}

namespace {

// OD 3.4, ID 3.0, 0.6 m high; four picks at this distance from its axis.
void make_ring(SlabLift& lift, double pick_m) {
  plan::Solid& ring = lift.plan.piece.solids[0];
  ring.shape = plan::Shape::pipe;
  ring.diameter = 3.4 * m, ring.inside_diameter = 3.0 * m, ring.length = 0.6 * m;
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {on_top("A1", pick_m, 0.0, 0.6), on_top("A2", 0.0, pick_m, 0.6),
                       on_top("A3", -pick_m, 0.0, 0.6), on_top("A4", 0.0, -pick_m, 0.6)};
  lift.plan.riggings[0].equalised.clear();
}

}  // namespace

TEST_CASE("a ring: picks off the middle of its wall by a quarter of it, and more, to both sides") {
  for (const double off_mm : {49.0, 51.0, -49.0, -51.0}) {
    SlabLift lift;
    make_ring(lift, 1.6 + off_mm / 1000.0);
    CAPTURE(off_mm);
    const Finding finding = finding_of(lift);
    CHECK(finding.demand.has_value() == (std::abs(off_mm) < 50.0));
    if (std::abs(off_mm) > 50.0)
      CHECK_THAT(finding.text, Catch::Contains("A1 does not pull at the middle of the ring's wall"));
  }
}

TEST_CASE("a ring turned half round about its axis is bent as before: the shortest arc between picks counts wherever it lies") {
  const auto tension = [](double turned_deg) {
    SlabLift lift;
    make_ring(lift, 1.6);
    const std::array<double, 4> at_deg{-15.0, 15.0, 160.0, -160.0};  // 30 deg between the nearest two
    for (std::size_t i = 0; i < 4; ++i) {
      const double a = (at_deg[i] + turned_deg) * M_PI / 180.0;
      lift.plan.inserts[i].at.x = 1.6 * std::cos(a) * m, lift.plan.inserts[i].at.y = 1.6 * std::sin(a) * m;
    }
    return tension_MPa(lift);
  };
  CHECK(tension(180.0) == Approx(tension(0.0)).epsilon(1e-6));
  CHECK(tension(90.0) == Approx(tension(0.0)).epsilon(1e-6));
}

TEST_CASE("a ring: a part about its axis to 2 % of its radius, and beside it") {
  for (const double off_m : {0.0335, 0.0345}) {  // of 1.7 m
    SlabLift lift;
    make_ring(lift, 1.6);
    lift.plan.form->nothing_attached = false;
    lift.plan.form->attached = {{.what = "former",
                                 .weight = 0.1 * kN,
                                 .at = Position{0.0 * m, off_m * m, 0.3 * m},
                                 .until = plan::StageKind::strip,
                                 .place = {}}};
    const Finding finding = finding_of(lift);
    CAPTURE(off_m, finding.text);
    CHECK(finding.demand.has_value() == (off_m < 0.034));
    if (off_m > 0.034)
      CHECK_THAT(finding.text,
                 Catch::Contains("a part or the grip of the form lies to one side of the ring"));
  }
}

TEST_CASE("rings and boxes at the slenderness of the rule set, one step below and above") {
  RingShape ring{};
  ring.outside = 2.25 * m, ring.inside = 1.75 * m;  // 2.0 m over a wall of 0.5 m: four walls
  BoxShape box{};
  box.width = 4.5 * m, box.depth = 2.5 * m, box.top = 1.0 * m, box.bottom = 1.0 * m, box.side = 0.5 * m;
  tables::CrackingModel limits = hand_made_rules().cracking;
  const auto at = [&](double n) { limits.line_slenderness.value = Ratio{n}; };
  at(4.0);
  CHECK(is_slender(ring, limits));
  CHECK_FALSE(is_slender(box, limits));  // 1.5 m upright over walls of 0.5 m: three
  at(std::nextafter(4.0, 5.0));
  CHECK_FALSE(is_slender(ring, limits));
  at(3.0);
  CHECK(is_slender(box, limits));
  box.side = 0.51 * m;
  CHECK_FALSE(is_slender(box, limits));
  box.side = 0.25 * m, box.width = 3.25 * m;  // 3 m across over slabs of 1 m
  CHECK(is_slender(box, limits));
  box.bottom = 1.001 * m;
  CHECK_FALSE(is_slender(box, limits));
  at(std::nan(""));
  CHECK_FALSE(is_slender(ring, limits));
  CHECK_FALSE(is_slender(box, limits));
}

namespace {

// A body that nobody built: the numbers of a round tube, or of a box, and no faces.
piece::Body tube() {  // Ro 2, Ri 1, H 1 m about the origin
  piece::Body body;
  const double V = M_PI * 3.0, x2 = V * 5.0 / 4.0, z2 = V / 12.0;
  body.volume = V * m3;
  body.lowest = {-2.0 * m, -2.0 * m, -0.5 * m}, body.highest = {2.0 * m, 2.0 * m, 0.5 * m};
  body.inertia_per_density_m5 = {{{x2 + z2, 0.0, 0.0}, {0.0, x2 + z2, 0.0}, {0.0, 0.0, 2.0 * x2}}};
  return body;
}

piece::Body box_body() {  // 2 x 2 x 1 m about the origin, barrel 1.6 x 0.6 along y
  piece::Body body;
  const double L = 2.0, area = 2.0 * 1.0 - 1.6 * 0.6, V = area * L;
  const double x2 = L * (8.0 * 1.0 - 1.6 * 1.6 * 1.6 * 0.6) / 12.0,
               z2 = L * (2.0 * 1.0 - 1.6 * 0.6 * 0.6 * 0.6) / 12.0;
  const double y2 = V * L * L / 12.0;
  body.volume = V * m3;
  body.lowest = {-1.0 * m, -1.0 * m, -0.5 * m}, body.highest = {1.0 * m, 1.0 * m, 0.5 * m};
  body.inertia_per_density_m5 = {{{y2 + z2, 0.0, 0.0}, {0.0, x2 + z2, 0.0}, {0.0, 0.0, x2 + y2}}};
  return body;
}

}  // namespace

TEST_CASE("a ring is told by its numbers: each that is out by more than 0.5 % makes it none") {
  const auto ring = ring_shape(tube());
  REQUIRE(ring);
  CHECK(in(m, ring->outside) == Approx(2.0));
  CHECK(in(m, ring->inside) == Approx(1.0));
  piece::Body body = tube();
  SECTION("centroid aside, up, at the limit") {
    body.centroid = {0.01 * m, 0.0 * m, 0.0 * m};  // 0.005 of 2 m
    CHECK(ring_shape(body));
    body.centroid = {0.0 * m, 0.0101 * m, 0.0 * m};
    CHECK_FALSE(ring_shape(body));
    body.centroid = {0.0101 * m, 0.0 * m, 0.0 * m};
    CHECK_FALSE(ring_shape(body));
    body.centroid = {0.0 * m, 0.0 * m, 0.005 * m};
    CHECK(ring_shape(body));
    body.centroid = {0.0 * m, 0.0 * m, -0.0051 * m};
    CHECK_FALSE(ring_shape(body));
  }
  SECTION("longer one way") {
    body.highest.x = 2.03 * m, body.lowest.x = -2.03 * m;
    CHECK_FALSE(ring_shape(body));
  }
  SECTION("longer the other way") {
    body.highest.y = 2.03 * m, body.lowest.y = -2.03 * m;
    CHECK_FALSE(ring_shape(body));
  }
  SECTION("moments that differ") {
    body.inertia_per_density_m5[0][0] += 0.3;
    body.inertia_per_density_m5[1][1] -= 0.3;
    CHECK_FALSE(ring_shape(body));
  }
  SECTION("not of one height") {
    body.inertia_per_density_m5[0][0] += 0.02;
    body.inertia_per_density_m5[1][1] += 0.02;
    CHECK_FALSE(ring_shape(body));
  }
  SECTION("a disc has no inside") {
    const double V = M_PI * 4.0, x2 = V * 1.0, z2 = V / 12.0;
    body.volume = V * m3;
    body.inertia_per_density_m5 = {{{x2 + z2, 0.0, 0.0}, {0.0, x2 + z2, 0.0}, {0.0, 0.0, 2.0 * x2}}};
    CHECK_FALSE(ring_shape(body));
  }
  SECTION("no volume, no height, no number") {
    body.volume = Volume{};
    CHECK_FALSE(ring_shape(body));
    body = tube();
    body.highest.z = body.lowest.z;
    CHECK_FALSE(ring_shape(body));
    body = tube();
    body.centroid.x = std::nan("") * m;
    CHECK_FALSE(ring_shape(body));
  }
}

TEST_CASE("a box is told by its numbers: each that is out by more than 0.5 % makes it none") {
  const auto box = box_shape(box_body());
  REQUIRE(box);
  CHECK(box->barrel == plan::Axis::y);
  CHECK(in(m, box->top) == Approx(0.2));
  CHECK(in(m, box->bottom) == Approx(0.2));
  CHECK(in(m, box->side) == Approx(0.2));
  CHECK(in(m, box->length) == Approx(2.0));
  CHECK(in(m, box->width) == Approx(2.0));
  CHECK(in(m, box->depth) == Approx(1.0));
  piece::Body body = box_body();
  SECTION("centroid aside and along, at the limit") {
    body.centroid = {0.01 * m, 0.0 * m, 0.0 * m};  // 0.005 of 2 m
    CHECK(box_shape(body));
    body.centroid = {0.0101 * m, 0.0 * m, 0.0 * m};
    CHECK_FALSE(box_shape(body));
    body.centroid = {0.0 * m, 0.01 * m, 0.0 * m};
    CHECK(box_shape(body));
    body.centroid = {0.0 * m, 0.0101 * m, 0.0 * m};
    CHECK_FALSE(box_shape(body));
  }
  SECTION("a heavier bottom is read from the centroid") {
    // The barrel 0.05 m higher: the centroid sinks by 0.05 x 0.96 / 1.04.
    const double lower = 0.05 * 0.96 / 1.04, L = 2.0;
    const double z2 = L * (2.0 / 12.0 + 2.0 * lower * lower -
                           (1.6 * 0.6 * 0.6 * 0.6 / 12.0 + 0.96 * std::pow(0.05 + lower, 2)));
    const double x2 = L * (8.0 - 1.6 * 1.6 * 1.6 * 0.6) / 12.0, y2 = 2.08 * 4.0 / 12.0;
    body.centroid.z = -lower * m;
    body.inertia_per_density_m5 = {{{y2 + z2, 0.0, 0.0}, {0.0, x2 + z2, 0.0}, {0.0, 0.0, x2 + y2}}};
    const auto raised = box_shape(body);
    REQUIRE(raised);
    CHECK(in(m, raised->top) == Approx(0.15));
    CHECK(in(m, raised->bottom) == Approx(0.25));
  }
  SECTION("moments that are not those of a barrel right through") {
    body.inertia_per_density_m5[0][0] += 0.02;
    CHECK_FALSE(box_shape(body));
  }
  SECTION("no hole") {
    body.volume = 4.0 * m3;
    CHECK_FALSE(box_shape(body));
  }
  SECTION("no volume") {
    body.volume = Volume{};
    CHECK_FALSE(box_shape(body));
  }
}
