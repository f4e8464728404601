#include "resistances/edge_distance.hpp"

#include <cmath>
#include <limits>

#include "support/headed_face.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

std::array<double, 4> distances_in(const HeadedFace& face, Length x, Length y, Angle turned = Angle{}) {
  const auto site = face.site_at("A", x, y, turned);
  const auto edges = assessed(edge_distances(site, site.u, site.v));
  return {in(inch, edges.c[0]), in(inch, edges.c[1]), in(inch, edges.c[2]), in(inch, edges.c[3])};
}
double nearest_in(const HeadedFace& face, Length x, Length y) {
  const auto site = face.site_at("A", x, y, Angle{});
  return in(inch, assessed(edge_distances(site, site.u, site.v)).nearest);
}

const Points box = rectangle(0.0 * inch, 0.0 * inch, 100.0 * inch, 40.0 * inch);

}  // namespace

TEST_CASE("in a rectangle the four distances are those to its sides, in the order +u -u +v -v") {
  const auto c = distances_in(HeadedFace(box), 30.0 * inch, 10.0 * inch);
  CHECK(c[0] == Approx(70.0));
  CHECK(c[1] == Approx(30.0));
  CHECK(c[2] == Approx(30.0));
  CHECK(c[3] == Approx(10.0));
  CHECK(nearest_in(HeadedFace(box), 30.0 * inch, 10.0 * inch) == Approx(10.0));
}

TEST_CASE("turned axes turn the order of the distances") {
  const auto c = distances_in(HeadedFace(box), 30.0 * inch, 10.0 * inch, 90.0 * deg);  // u = +y, v = -x
  CHECK(c[0] == Approx(30.0));
  CHECK(c[1] == Approx(10.0));
  CHECK(c[2] == Approx(30.0));
  CHECK(c[3] == Approx(70.0));
}

TEST_CASE("a long edge beside the insert is no edge in the direction along it") {
  const HeadedFace strip(rectangle(-500.0 * inch, -4.0 * inch, 1000.0 * inch, 8.0 * inch));
  const auto c = distances_in(strip, 0.0 * inch, 0.0 * inch);
  CHECK(c[0] == Approx(500.0));  // not 4 sqrt(2), where the side is seen under 45 deg
  CHECK(c[2] == Approx(4.0));
}

TEST_CASE("a side that tapers is no edge in the direction along it either") {
  const HeadedFace wedge({{0.0 * inch, 0.0 * inch},
                          {100.0 * inch, 2.0 * inch},
                          {100.0 * inch, 40.0 * inch},
                          {0.0 * inch, 40.0 * inch}});
  CHECK(distances_in(wedge, 50.0 * inch, 5.0 * inch)[0] == Approx(50.0));
}

TEST_CASE("the edge of an opening counts where it faces the insert") {
  const HeadedFace window(box, 1e3 * inch, {opening(45.0 * inch, 5.0 * inch, 20.0 * inch, 10.0 * inch)});
  CHECK(distances_in(window, 30.0 * inch, 10.0 * inch)[0] == Approx(15.0));
  CHECK(distances_in(window, 80.0 * inch, 10.0 * inch)[1] == Approx(15.0));
  CHECK(distances_in(window, 50.0 * inch, 25.0 * inch)[3] == Approx(10.0));
  CHECK(nearest_in(window, 42.0 * inch, 2.0 * inch) == Approx(2.0));
}

TEST_CASE("an opening ahead but to the side is as far as its nearest point that is seen within 45 deg") {
  const HeadedFace window(box, 1e3 * inch, {opening(40.0 * inch, 25.0 * inch, 10.0 * inch, 10.0 * inch)});
  const auto c = distances_in(window, 20.0 * inch, 20.0 * inch);
  CHECK(c[0] == Approx(std::hypot(20.0, 5.0)));
  CHECK(c[2] == Approx(20.0));
}

TEST_CASE("a round opening is seen in the direction of its centre") {
  const HeadedFace manhole(rectangle(-60.0 * inch, -60.0 * inch, 120.0 * inch, 120.0 * inch), 8.0 * inch,
                           {[] {
                             Points hole = circle(0.0 * inch, 0.0 * inch, 12.0 * inch, 360);
                             std::reverse(hole.begin(), hole.end());
                             return hole;
                           }()});
  const auto c = distances_in(manhole, 30.0 * inch, 0.0 * inch);
  CHECK(c[1] == Approx(18.0));
  CHECK(c[0] == Approx(30.0));
  CHECK(nearest_in(manhole, 20.0 * inch, 0.0 * inch) == Approx(8.0));
}

TEST_CASE("near the edge of a round slab the distance along the tangent is the concrete straight ahead") {
  const HeadedFace disc(circle(0.0 * inch, 0.0 * inch, 24.0 * inch, 720));
  const auto c = distances_in(disc, 20.0 * inch, 0.0 * inch);
  CHECK(c[0] == Approx(4.0).epsilon(1e-3));
  CHECK(c[2] == Approx(std::sqrt(24.0 * 24.0 - 20.0 * 20.0)).epsilon(1e-3));
}

TEST_CASE("a cut at 45 deg counts in both directions") {
  const HeadedFace cut({{0.0 * inch, 0.0 * inch},
                        {40.0 * inch, 0.0 * inch},
                        {40.0 * inch, 30.0 * inch},
                        {30.0 * inch, 40.0 * inch},
                        {0.0 * inch, 40.0 * inch}});
  const auto c = distances_in(cut, 30.0 * inch, 30.0 * inch);
  CHECK(c[0] == Approx(5.0 * std::sqrt(2.0)));
  CHECK(c[2] == Approx(5.0 * std::sqrt(2.0)));
  CHECK(nearest_in(cut, 30.0 * inch, 30.0 * inch) == Approx(5.0 * std::sqrt(2.0)));
}

TEST_CASE("an insert outside its outline, in an opening or on an edge is not assessed") {
  const HeadedFace window(box, 1e3 * inch, {opening(45.0 * inch, 5.0 * inch, 20.0 * inch, 10.0 * inch)});
  for (const auto& [x, y] :
       {std::pair{-1.0, 10.0}, {101.0, 10.0}, {50.0, 10.0}, {0.0, 10.0}, {100.0, 40.0}}) {
    CAPTURE(x, y);
    const auto site = window.site_at("A", x * inch, y * inch, Angle{});
    CHECK(why_not(edge_distances(site, site.u, site.v)) ==
          "insert A does not lie inside the outline of its face");
  }
}

TEST_CASE("no outline, one run the wrong way round, or a corner that is no number is not assessed") {
  CHECK_FALSE(why_not([] {
                const auto site = HeadedFace(Points{}).site_at("A", Length{}, Length{}, Angle{});
                return edge_distances(site, site.u, site.v);
              }())
                  .empty());
  Points clockwise = box;
  std::reverse(clockwise.begin(), clockwise.end());
  const auto reversed = HeadedFace(clockwise).site_at("A", 30.0 * inch, 10.0 * inch, Angle{});
  CHECK_FALSE(is_assessed(edge_distances(reversed, reversed.u, reversed.v)));
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    auto site = HeadedFace(box).site_at("A", 30.0 * inch, 10.0 * inch, Angle{});
    site.outline.outer[2].x = bad * inch;
    CHECK_FALSE(is_assessed(edge_distances(site, site.u, site.v)));
  }
}

TEST_CASE(
    "seen from an insert towards each of its axes, and between them, the distances are those of turned "
    "axes") {
  HeadedFace face(box, 1e3 * inch, {opening(45.0 * inch, 5.0 * inch, 20.0 * inch, 10.0 * inch)});
  const HeadedInsert& insert = face.add("A", 30.0 * inch, 10.0 * inch, 6.0 * inch, 17.0 * deg);
  for (const double turned : {0.0, 90.0, 180.0, 270.0, 25.0}) {
    CAPTURE(turned);
    const auto site = face.site_at("A", 30.0 * inch, 10.0 * inch, (17.0 + turned) * deg);
    const EdgeDistances expected = assessed(edge_distances(site, site.u, site.v));
    const EdgeDistances seen = assessed(edge_distances(insert, site.u));
    for (std::size_t i = 0; i < 4; ++i) CHECK(in(inch, seen.c[i]) == Approx(in(inch, expected.c[i])));
    CHECK(in(inch, seen.nearest) == Approx(in(inch, expected.nearest)));
  }
}

// An edge ahead that only its inner end brings within 45 deg counts from there: 3 m ahead, from 1.2 m beside
// to 4 m.
TEST_CASE("an edge that begins beside the straight line ahead counts, in each direction and on either side") {
  const Points ahead_right = {{-10.0 * m, -4.0 * m}, {3.0 * m, -4.0 * m},  {3.0 * m, -1.2 * m},
                              {20.0 * m, -1.2 * m},  {20.0 * m, 10.0 * m}, {-10.0 * m, 10.0 * m}};
  const double reach_m = std::hypot(3.0, 1.2);
  for (const bool mirrored : {false, true}) {
    Points outline = ahead_right;
    if (mirrored) {
      for (auto& p : outline) p.y = -p.y;
      std::reverse(outline.begin(), outline.end());
    }
    for (int quarter = 0; quarter < 4; ++quarter) {
      CAPTURE(mirrored, quarter);
      Points turned;
      for (const auto& p : outline) {
        if (quarter == 0) turned.push_back(p);
        if (quarter == 1) turned.push_back({-p.x, -p.y});
        if (quarter == 2) turned.push_back({-p.y, p.x});
        if (quarter == 3) turned.push_back({p.y, -p.x});
      }
      const auto site = HeadedFace(turned).site_at("A", Length{}, Length{}, Angle{});
      const auto edges = assessed(edge_distances(site, site.u, site.v));
      // Ahead of this direction the edge; the other way 10 m.
      CHECK(in(m, edges.c[static_cast<std::size_t>(quarter)]) == Approx(reach_m));
      CHECK(in(m, edges.c[static_cast<std::size_t>(quarter ^ 1)]) == Approx(10.0));
      CHECK(in(m, edges.nearest) == Approx(reach_m));
    }
  }
}

TEST_CASE("an edge wholly beyond 45 deg is none of that direction") {
  // From 3.1 m beside at 3 m ahead: what counts ahead is the end 20 m away.
  const Points outline = {{-10.0 * m, -8.0 * m}, {3.0 * m, -8.0 * m},  {3.0 * m, -3.1 * m},
                          {20.0 * m, -3.1 * m},  {20.0 * m, 10.0 * m}, {-10.0 * m, 10.0 * m}};
  const auto site = HeadedFace(outline).site_at("A", Length{}, Length{}, Angle{});
  const auto edges = assessed(edge_distances(site, site.u, site.v));
  CHECK(in(m, edges.c[0]) == Approx(20.0));
  CHECK(in(m, edges.c[3]) == Approx(std::hypot(3.0, 3.1)));  // below, at 44 deg, the edge that faces down
}

TEST_CASE("a corner that is there twice changes nothing") {
  Points doubled = box;
  doubled.insert(doubled.begin() + 1, doubled[1]);
  doubled.push_back(doubled.front());
  const auto once = distances_in(HeadedFace(box), 30.0 * inch, 10.0 * inch);
  const auto twice = distances_in(HeadedFace(doubled), 30.0 * inch, 10.0 * inch);
  for (std::size_t i = 0; i < 4; ++i) CHECK(twice[i] == Approx(once[i]));
}

TEST_CASE("a corner whose second number is none has no distances") {
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    auto site = HeadedFace(box).site_at("A", 30.0 * inch, 10.0 * inch, Angle{});
    site.outline.outer[2].y = bad * inch;
    CHECK(why_not(edge_distances(site, site.u, site.v)) == "insert A does not lie inside the outline of its face");
  }
}
