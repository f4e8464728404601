// Which shape a piece has, from bodies that nobody built: numbers and faces written by hand, so that each limit can be met
// to the last bit.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/panel_face.hpp"
#include "checks/piece_model.hpp"
#include "checks/stepped_panel.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const tables::CrackingModel& limits() {
  static const tables::CrackingModel made = hand_made_rules().cracking;
  return made;
}

piece::Body extent(double x_m, double y_m, double z_m) {
  piece::Body body;
  body.highest = {x_m * m, y_m * m, z_m * m};
  body.volume = x_m * y_m * z_m * m3;
  body.centroid = 0.5 * body.highest;
  return body;
}

using Ring = std::vector<Position>;

Position at(double x_m, double y_m, double z_m) { return {x_m * m, y_m * m, z_m * m}; }

Ring rectangle(double x0, double y0, double x1, double y1, double z) {
  return {at(x0, y0, z), at(x1, y0, z), at(x1, y1, z), at(x0, y1, z)};
}

piece::Face face_of(Ring ring, Direction normal, double area_m2 = 1.0) {
  piece::Face face;
  face.planar = true;
  face.normal = normal;
  face.area = area_m2 * m2;
  face.centroid = ring.front();
  face.rings = {std::move(ring)};
  return face;
}

constexpr Direction up{0.0, 0.0, 1.0}, down{0.0, 0.0, -1.0}, aside{1.0, 0.0, 0.0};

piece::InsertSite site_in(std::size_t face, Direction normal) {
  piece::InsertSite site;
  site.insert = "A1";
  site.face = face;
  site.planar = true;
  site.normal = normal;
  return site;
}

// 2 x 1 m, its top flush at 0.5 m: one half 0.5 m thick, the other 0.25 m. Zones 1 x 1 m.
piece::Body stepped(double thick_m = 0.5) {
  piece::Body body = extent(2.0, 1.0, 0.5);
  body.lowest.z = (0.5 - thick_m) * m;
  body.volume = (thick_m + 0.25) * m3;
  body.faces = {face_of(rectangle(0.0, 0.0, 2.0, 1.0, 0.5), up),
                face_of(rectangle(0.0, 0.0, 1.0, 1.0, 0.5 - thick_m), down),
                face_of(rectangle(1.0, 0.0, 2.0, 1.0, 0.25), down),
                face_of(rectangle(0.0, 0.0, 0.0, 1.0, 0.5), aside)};
  body.sites = {site_in(0, up)};
  return body;
}

// The same upside down: the flush face looks down.
piece::Body flipped() {
  piece::Body body = stepped();
  for (piece::Face& face : body.faces) {
    face.normal.z = -face.normal.z;
    for (Position& p : face.rings.front()) p.z = 0.5 * m - p.z;
  }
  body.sites = {site_in(0, down)};
  return body;
}

bool is_stepped(const piece::Body& body, const tables::CrackingModel& by = limits()) {
  return stepped_face({}, body, by).has_value();
}

}  // namespace

TEST_CASE("a line from four times its width and its height on, to the last bit") {
  const auto model = [](const piece::Body& body) { return piece_model({}, body, limits()).model; };
  CHECK(model(extent(4.0, 1.0, 0.5)) == plan::PieceModel::line);
  CHECK(model(extent(std::nextafter(4.0, 0.0), 1.0, 0.5)) == plan::PieceModel::block);
  CHECK(model(extent(4.0, 0.5, 1.0)) == plan::PieceModel::line);
  CHECK(model(extent(std::nextafter(4.0, 0.0), 0.5, 1.0)) == plan::PieceModel::block);
  const ModelChoice along_y = piece_model({}, extent(1.0, 4.0, 0.5), limits());
  CHECK(along_y.model == plan::PieceModel::line);
  CHECK(along_y.axis == plan::Axis::y);
  CHECK(piece_model({}, extent(1.0, 1.0, 0.5), limits()).axis == plan::Axis::x);
}

TEST_CASE("a panel from five times its thickness on, to the last bit") {
  const auto panel = [](double side_m) {
    piece::Body body = extent(side_m, 3.0, 0.5);
    body.faces = {face_of(rectangle(0.0, 0.0, side_m, 3.0, 0.5), up, 3.0 * side_m),
                  face_of(rectangle(0.0, 0.0, side_m, 3.0, 0.0), down, 3.0 * side_m)};
    body.sites = {site_in(0, aside)};
    return piece_model({}, body, limits());
  };
  CHECK(panel(2.5).model == plan::PieceModel::panel);
  CHECK(panel(std::nextafter(2.5, 0.0)).flat);
  CHECK(panel(std::nextafter(2.5, 0.0)).model == plan::PieceModel::block);
}

TEST_CASE(
    "a stated model fits where its shape is one: a panel always, a line where it is slender, a block where "
    "it is one") {
  const auto stated = [](plan::PieceModel model, const piece::Body& body) {
    plan::Plan plan;
    plan.piece.model = model;
    return piece_model(plan, body, limits());
  };
  using enum plan::PieceModel;
  const piece::Body slender = extent(4.0, 1.0, 0.5), stocky = extent(2.0, 1.0, 0.5);
  CHECK(stated(line, slender).fits);
  CHECK_FALSE(stated(line, stocky).fits);
  CHECK(stated(block, stocky).fits);
  CHECK_FALSE(stated(block, slender).fits);
  CHECK(stated(panel, stocky).fits);
  CHECK(stated(panel, stocky).model == panel);
  CHECK(stated(line, slender).stated);
}

TEST_CASE("a small, stocky block: no thickness, no surface and no number are not stocky") {
  piece::Body body = extent(2.0, 2.0, 2.0);
  body.faces = {face_of(rectangle(0.0, 0.0, 2.0, 2.0, 2.0), up, 24.0)};
  CHECK(stockiness(body, limits()).is_stocky);
  CHECK(in(m, stockiness(body, limits()).mean_thickness) == Approx(16.0 / 24.0));
  body.volume = Volume{};
  CHECK_FALSE(stockiness(body, limits()).is_stocky);
  body = extent(2.0, 2.0, 2.0);
  CHECK_FALSE(stockiness(body, limits()).is_stocky);  // no faces at all
}

TEST_CASE(
    "the face of a panel: the largest that looks up, the whole of its thickness, its inserts in it, below it "
    "or beside") {
  // A wall as it stands, 2 m high: its sides are larger than its top, and its top is its face.
  piece::Body wall = extent(3.0, 0.2, 2.0);
  wall.faces = {face_of({at(0.0, 0.0, 0.0), at(3.0, 0.0, 0.0), at(3.0, 0.0, 2.0), at(0.0, 0.0, 2.0)},
                        {0.0, -1.0, 0.0}, 6.0),
                face_of(rectangle(0.0, 0.0, 3.0, 0.2, 2.0), up, 0.6),
                face_of(rectangle(0.0, 0.0, 3.0, 0.2, 0.0), down, 0.6)};
  wall.faces[1].centroid = at(1.5, 0.1, 2.0), wall.faces[2].centroid = at(1.5, 0.1, 0.0);
  wall.sites = {site_in(2, down)};
  const auto face = panel_face({}, wall);
  REQUIRE(face);
  CHECK(in(m2, area_of(face->outline)) == Approx(0.6));
  CHECK(in(m, face->thickness) == Approx(2.0));
  CHECK(in(m, face->middle) == Approx(1.0));

  SECTION("no insert") {
    wall.sites.clear();
    CHECK_FALSE(panel_face({}, wall));
  }
  SECTION("an insert in a curved face, in one that slopes, in another level face") {
    wall.sites[0].planar = false;
    CHECK_FALSE(panel_face({}, wall));
    wall.sites = {site_in(5, {0.6, 0.0, 0.8})};
    CHECK_FALSE(panel_face({}, wall));
    wall.sites = {site_in(5, up)};
    CHECK_FALSE(panel_face({}, wall));
    wall.sites = {site_in(5, aside)};
    CHECK(panel_face({}, wall));
  }
  SECTION("a level face between top and bottom, a curved one that slopes, an upright curved one") {
    wall.faces.push_back(face_of(rectangle(0.0, 0.0, 0.1, 0.1, 1.0), up, 0.01));
    CHECK_FALSE(panel_face({}, wall));
    wall.faces.back() = face_of(rectangle(0.0, 0.0, 0.1, 0.1, 1.0), {0.6, 0.0, 0.8}, 0.01);
    CHECK_FALSE(panel_face({}, wall));
    wall.faces.back() = face_of(rectangle(0.0, 0.0, 0.1, 0.1, 2.0), up, 0.01);
    wall.faces.back().planar = false;
    CHECK_FALSE(panel_face({}, wall));
    wall.faces.back().normal = aside;
    CHECK(panel_face({}, wall));
  }
  SECTION("a volume that is not area x thickness, to 0.2 %") {
    wall.volume = 1.2 * 1.0019 * m3;
    CHECK(panel_face({}, wall));
    wall.volume = 1.2 * 1.0022 * m3;
    CHECK_FALSE(panel_face({}, wall));
    wall.volume = 1.2 * 0.9978 * m3;
    CHECK_FALSE(panel_face({}, wall));
  }
  SECTION("an opening right through, drawn either way round") {
    Ring hole = rectangle(1.0, 0.05, 2.0, 0.15, 2.0);
    wall.faces[1].rings.push_back(hole);
    wall.volume = 1.0 * m3;
    const auto with_hole = panel_face({}, wall);
    REQUIRE(with_hole);
    CHECK(in(m2, area_of(with_hole->outline)) == Approx(0.5));
    std::ranges::reverse(wall.faces[1].rings[0]);
    const auto reversed = panel_face({}, wall);
    REQUIRE(reversed);
    CHECK(in(m2, area_of(reversed->outline)) == Approx(0.5));
    CHECK(reversed->outline.outer.size() == 4);
  }
  SECTION("a top that is level to a thousandth") {
    wall.faces[1].normal.z = 1.0 - 1e-3;
    CHECK(panel_face({}, wall));
    wall.faces[1].normal.z = 1.0 - 1.01e-3;
    CHECK_FALSE(panel_face({}, wall));
  }
}

TEST_CASE("a panel in steps: its zones, thickest over thinnest, and the flush face up or down") {
  for (const piece::Body& body : {stepped(), flipped()}) {
    const auto found = stepped_face({}, body, limits());
    REQUIRE(found);
    CHECK(found->zones.size() == 2);
    CHECK(in(m, found->thickest) == 0.5);
    CHECK(in(m, found->thinnest) == 0.25);
    CHECK(in(m2, found->covered) == 2.0);
    CHECK(in(m3, found->volume) == 0.75);
  }
  CHECK(in(m, stepped_face({}, stepped(), limits())->zones[1].bottom) == Approx(0.0));
  CHECK(in(m, stepped_face({}, flipped(), limits())->zones[1].top) == Approx(0.0));
}

TEST_CASE("a panel in steps: the ratio of its thicknesses to the last bit") {
  tables::CrackingModel by = limits();
  by.step_ratio.value = Ratio{2.0};
  CHECK(is_stepped(stepped(), by));
  by.step_ratio.value = Ratio{std::nextafter(2.0, 0.0)};
  CHECK_FALSE(is_stepped(stepped(), by));
}

TEST_CASE("a panel in steps: zones as wide as thick, and no wider neck than that") {
  CHECK(is_stepped(stepped(0.5)));  // 2 x 1 m2 over 4 m: 0.5 m
  CHECK_FALSE(is_stepped(stepped(0.502)));

  // The thick zone with a slot from its outer side: a neck is left of it, opposite the middle of a longer side.
  const auto with_neck = [](double neck_m) {
    piece::Body body = stepped();
    body.faces[0] = face_of(rectangle(0.0, 0.0, 2.0, 1.0, 0.5), up);
    body.faces[0].rings[0] = {at(0.0, 0.0, 0.5), at(2.0, 0.0, 0.5),    at(2.0, 1.0, 0.5),
                              at(0.7, 1.0, 0.5), at(0.7, neck_m, 0.5), at(0.3, neck_m, 0.5),
                              at(0.3, 1.0, 0.5), at(0.0, 1.0, 0.5)};
    body.faces[1].rings[0] = {at(0.0, 0.0, 0.3), at(1.0, 0.0, 0.3),    at(1.0, 1.0, 0.3),
                              at(0.7, 1.0, 0.3), at(0.7, neck_m, 0.3), at(0.3, neck_m, 0.3),
                              at(0.3, 1.0, 0.3), at(0.0, 1.0, 0.3)};
    const double slot_m2 = 0.4 * (1.0 - neck_m);
    body.volume = (0.25 + 0.2 * (1.0 - slot_m2)) * m3;
    return body;
  };
  CHECK(is_stepped(with_neck(0.21)));
  CHECK_FALSE(is_stepped(with_neck(0.19)));
}

TEST_CASE("a panel in steps: what its zones do not describe is none") {
  CHECK_FALSE(is_stepped(extent(2.0, 1.0, 0.5)));
  piece::Body body = stepped();
  SECTION("no insert, one in a curved face, one in a face that slopes") {
    body.sites.clear();
    CHECK_FALSE(is_stepped(body));
    body.sites = {site_in(0, up)};
    body.sites[0].planar = false;
    CHECK_FALSE(is_stepped(body));
    body.sites = {site_in(0, {0.6, 0.0, 0.8})};
    CHECK_FALSE(is_stepped(body));
    body.sites = {site_in(0, aside)};
    CHECK(is_stepped(body));
  }
  SECTION("one thickness") {
    body.faces.erase(body.faces.begin() + 2);
    CHECK_FALSE(is_stepped(body));
  }
  SECTION("steps on both faces") {
    body.faces.push_back(face_of(rectangle(0.0, 0.0, 0.1, 0.1, 0.4), up));
    CHECK_FALSE(is_stepped(body));
  }
  SECTION("a face that slopes, and one that is level or upright to a thousandth") {
    body.faces.push_back(face_of(rectangle(0.0, 0.0, 0.1, 0.1, 0.4), {0.6, 0.0, 0.8}));
    CHECK_FALSE(is_stepped(body));
    body.faces.back().normal = {1.0, 0.0, 1e-3};
    CHECK(is_stepped(body));
    body.faces.back().normal = {1.0, 0.0, 1.1e-3};
    CHECK_FALSE(is_stepped(body));
    body = stepped();
    body.faces[0].normal.z = 1.0 - 1e-3;
    CHECK(is_stepped(body));
    body.faces[0].normal.z = 1.0 - 1.1e-3;
    CHECK_FALSE(is_stepped(body));
  }
  SECTION("a curved level face has no outline") {
    body.faces[0].planar = false;
    CHECK_FALSE(is_stepped(body));
    body = stepped();
    body.faces[1].rings.clear();
    CHECK_FALSE(is_stepped(body));
  }
  SECTION("a zone that is missing, a zone of no thickness, a volume that is another") {
    body.faces[2].rings[0] = rectangle(1.0, 0.0, 1.9, 1.0, 0.25);
    CHECK_FALSE(is_stepped(body));
    body = stepped();
    for (Position& p : body.faces[2].rings[0]) p.z = 0.5 * m;
    CHECK_FALSE(is_stepped(body));
    body = stepped();
    body.volume = 0.75 * 1.0019 * m3;
    CHECK(is_stepped(body));
    body.volume = 0.75 * 1.0021 * m3;
    CHECK_FALSE(is_stepped(body));
  }
  SECTION("an opening right through both") {
    const Ring above = rectangle(0.3, 0.3, 0.7, 0.7, 0.5);
    body.faces[0].rings.push_back(above);
    CHECK_FALSE(is_stepped(body));  // the zone below is whole
    Ring below = rectangle(0.3, 0.3, 0.7, 0.7, 0.25);
    for (Position& p : body.faces[1].rings[0]) p.z = 0.25 * m;
    body.faces[1].rings.push_back(below);
    body.lowest.z = 0.25 * m;
    body.volume = (0.25 + 0.25 * 0.84) * m3;
    const auto found = stepped_face({}, body, limits());
    REQUIRE(found);
    CHECK(found->zones[0].holes.size() == 1);
    CHECK(found->face.outline.holes.size() == 1);
    CHECK(in(m2, found->covered) == Approx(1.84));
  }
}
