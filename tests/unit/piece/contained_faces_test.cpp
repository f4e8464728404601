// Flat faces inside the concrete under a curved one: what is measured on them, and that their bodies lie in the concrete, each
// in its own.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double degree = 3.14159265358979323846 / 180.0;

plan::Insert headed(Position point, double embedment_mm = 100.0, std::string id = "A1") {
  plan::Insert made = insert(std::move(id), point);
  made.kind = "headed";
  made.embedment = embedment_mm * mm;
  return made;
}

piece::InsertSite round_site(std::vector<Solid> solids, plan::Insert one) {
  return body_of(plan_of(std::move(solids), {}, {std::move(one)})).sites.at(0);
}

Solid riser() { return pipe("riser", {}, 1500.0 * mm, 1200.0 * mm, 1000.0 * mm); }

const piece::InsertSite& sunk_by(const piece::InsertSite& site, double mm_) {
  const auto found = std::ranges::find_if(
      site.within, [&](const piece::InsertSite& flat) { return std::abs(in(mm, flat.sunk) - mm_) < 1e-9; });
  if (found == site.within.end()) throw std::runtime_error("no flat face at this depth");
  return *found;
}

// The corners of the body under a flat face, top and bottom, in millimetres and piece axes.
std::vector<Position> corners(const piece::InsertSite& flat, const Position& insert_at) {
  std::vector<Position> all;
  for (const Length& depth : {flat.sunk, Length{flat.sunk + flat.thickness}})
    for (const auto& p : flat.outline.outer)
      all.push_back(insert_at + flat.u * p.x + flat.v * p.y + flat.normal * (-1.0 * depth));
  return all;
}

void check_edges_mm(const piece::InsertSite& flat, std::vector<double> expected) {
  REQUIRE(flat.edges.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i)
    CHECK(in(mm, flat.edges[i].distance) == Approx(expected[i]).margin(1e-4));
}

}  // namespace

TEST_CASE("in the outside of a wall a flat face is as wide as its chord, and the concrete ends at the bore") {
  for (const double angle : {0.0, 35.0, 45.0, 90.0, 180.0, 269.0}) {
    CAPTURE(angle);
    const double c = std::cos(angle * degree), s = std::sin(angle * degree);
    const Position foot = at(750.0 * c, 750.0 * s, 400);
    const auto site = round_site({riser()}, headed(foot));
    CHECK_FALSE(site.planar);
    REQUIRE_FALSE(site.within.empty());
    const auto& flat = sunk_by(site, 12.5);
    CHECK(flat.planar);
    CHECK(flat.insert == "A1");
    // sqrt(2 x 750 x 12.5 - 12.5^2) = 136.359 mm; 400 mm to the end below, 5 embedments to the other side; 150 - 12.5, and a ten-thousandth of the wall
    check_edges_mm(flat, {136.35890, 136.35890, 400.0, 500.0});
    CHECK(in(mm, flat.thickness) == Approx(150.0 - 12.5 - 0.015).margin(1e-6));
    CHECK(dot(flat.normal, Direction{c, s, 0.0}) == Approx(1.0));
    CHECK(std::abs(flat.u.z) < 1e-9);  // towards the chord
    CHECK(norm(site.u - flat.u) < 1e-12);
    for (const Position& p : corners(flat, foot)) {
      const double r_mm = std::hypot(in(mm, p.x), in(mm, p.y));
      CHECK(r_mm <= 750.0 + 1e-6);
      CHECK(r_mm >= 600.0);
      CHECK(in(mm, p.z) >= -1e-6);
      CHECK(in(mm, p.z) <= 1000.0 + 1e-6);
    }
  }
}

TEST_CASE("each deeper top is wider, and the search ends where no breakout in tension reaches the edges") {
  const auto site = round_site({riser()}, headed(at(750, 0, 400)));
  for (std::size_t i = 1; i < site.within.size(); ++i) {
    CHECK(site.within[i].sunk > site.within[i - 1].sunk);
    CHECK(site.within[i].edges.front().distance > site.within[i - 1].edges.front().distance);
  }
  const auto& last = site.within.back();
  CHECK(last.edges.front().distance >= 1.5 * (100.0 * mm - last.sunk));
}

TEST_CASE("in the inside of a wall the outside cuts the body: the concrete narrows downwards") {
  const auto site = round_site({riser()}, headed(at(-600, 0, 400)));
  REQUIRE(site.within.size() == 1);
  const auto& flat = site.within.front();
  CHECK(in(mm, flat.sunk) == Approx(100.0 / 1536.0));
  // half way from the head, 100 mm, to the end of the concrete, 150 mm less 0.015: 124.9925 mm below the insert
  const double bottom_mm = 0.5 * (100.0 + 150.0 - 0.015);
  CHECK(in(mm, flat.sunk + flat.thickness) == Approx(bottom_mm).margin(1e-6));
  const double half_mm = std::sqrt(750.0 * 750.0 - (600.0 + bottom_mm) * (600.0 + bottom_mm));  // 192.06
  check_edges_mm(flat, {half_mm, half_mm, 400.0, 500.0});
  for (const Position& p : corners(flat, at(-600, 0, 400))) {
    const double r_mm = std::hypot(in(mm, p.x), in(mm, p.y));
    CHECK(r_mm <= 750.0 + 1e-6);
    CHECK(r_mm >= 600.0);
  }
}

TEST_CASE("an opening in a round wall is an opening of the flat face") {
  const auto site =
      round_site({riser(), cut(cylinder("opening", at(0, 0, 700), 150.0 * mm, 1000.0 * mm, Axis::x))},
                 headed(at(750, 0, 400)));
  const auto& flat = sunk_by(site, 12.5);
  REQUIRE(flat.outline.holes.size() == 1);
  check_edges_mm(flat, {136.35890, 136.35890, 225.0, 400.0, 500.0});  // 300 less 75 to the opening
}

TEST_CASE("a duct in the wall leaves only the flat faces beside it") {
  const auto site = round_site({riser(), cut(cylinder("duct", at(675, 100, 0), 30.0 * mm, 1000.0 * mm))},
                               headed(at(750, 0, 400)));
  REQUIRE_FALSE(site.within.empty());
  for (const piece::InsertSite& flat : site.within)
    for (const auto& p : flat.outline.outer) CHECK(std::abs(in(mm, p.x)) <= 85.0 + 1e-6);
}

TEST_CASE("inserts in round faces have bodies that lie apart, each nearer to its own insert") {
  const std::vector<Position> places{at(750, 0, 400),
                                     at(750.0 * std::cos(20 * degree), 750.0 * std::sin(20 * degree), 400),
                                     at(750, 0, 600), at(-750, 0, 400)};
  std::vector<plan::Insert> inserts;
  for (const Position& place : places)
    inserts.push_back(headed(place, 100.0, "A" + std::to_string(inserts.size())));
  const auto body = body_of(plan_of({riser()}, {}, inserts));
  for (std::size_t i = 0; i < places.size(); ++i) {
    REQUIRE_FALSE(body.sites[i].within.empty());
    for (const piece::InsertSite& flat : body.sites[i].within)
      for (const Position& p : corners(flat, places[i]))
        for (const Position& other : places) CHECK(norm(p - places[i]) <= norm(p - other) + 1e-6 * mm);
  }
  // half way to the one below it
  CHECK(in(mm, sunk_by(body.sites[2], 12.5).edges.front().distance) == Approx(100.0));
  check_edges_mm(sunk_by(body.sites[3], 12.5), {136.35890, 136.35890, 400.0, 500.0});  // nothing near
  CHECK(body.sites[0].within.front().face != body.sites[1].within.front().face);
}

TEST_CASE(
    "no flat face is looked for: a flat site, another kind, no embedment, a head not inside the concrete") {
  CHECK(round_site({box("slab", {}, at(1000, 1000, 200))}, headed(at(500, 500, 200))).within.empty());
  plan::Insert rated = headed(at(750, 0, 400));
  rated.kind = "rated";
  CHECK(round_site({riser()}, rated).within.empty());
  plan::Insert shallow = headed(at(750, 0, 400));
  shallow.embedment.reset();
  CHECK(round_site({riser()}, shallow).within.empty());
  CHECK_FALSE(round_site({riser()}, headed(at(750, 0, 400), 149.9)).within.empty());
  for (const double embedment_mm : {149.99, 150.0, 200.0, 0.0, -10.0, double{NAN}}) {
    CAPTURE(embedment_mm);
    CHECK(round_site({riser()}, headed(at(750, 0, 400), embedment_mm)).within.empty());
  }
}

TEST_CASE(
    "two inserts on the two sides of one wall share it: a head beyond its middle has no body of its own") {
  const auto of = [](double embedment_mm) {
    return body_of(plan_of({riser()}, {},
                           {headed(at(750, 0, 400), embedment_mm), headed(at(600, 0, 400), 30.0, "A2")}))
        .sites.at(0)
        .within;
  };
  CHECK(of(80.0).empty());
  const auto shallow = of(20.0);
  REQUIRE_FALSE(shallow.empty());
  for (const piece::InsertSite& flat : shallow) CHECK(flat.sunk + flat.thickness <= 75.0 * mm);
}

TEST_CASE(
    "an insert in a flat face nearby takes concrete that is no longer free: within five of its embedments, "
    "no body") {
  const auto of = [](double other_mm,
                     std::optional<double> below) {  // in the rim, above the one in the side at 800 mm
    plan::Insert rim = insert("A2", at(675, 0, 1000));
    rim.kind = below ? "headed" : "rated";
    if (below) rim.embedment = *below * mm;
    return body_of(plan_of({riser()}, {}, {headed(at(750, 0, other_mm)), rim})).sites.at(0).within;
  };
  // 75 mm across and 200 mm down: 213.6 mm apart, five times 42.72 mm
  CHECK_FALSE(of(800, 42.7).empty());
  CHECK(of(800, 42.8).empty());
  CHECK_FALSE(of(800, std::nullopt).empty());  // its supplier's least spacing is judged by insert-spacing
}

TEST_CASE("a cone has flat faces inside too") {
  const auto conical =
      round_site({cone("cone", {}, 1500.0 * mm, 1000.0 * mm, 1000.0 * mm)}, headed(at(625, 0, 500)));
  REQUIRE_FALSE(conical.within.empty());
  // every corner within the radius of the cone at its height
  for (const piece::InsertSite& flat : conical.within)
    for (const Position& p : corners(flat, at(625, 0, 500)))
      CHECK(std::hypot(in(mm, p.x), in(mm, p.y)) <= 750.0 - 0.25 * in(mm, p.z) + 1e-4);
}
