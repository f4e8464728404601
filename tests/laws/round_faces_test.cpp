// What must hold for every flat face inside the concrete under a curved one, over many round walls made by a fixed seed. Whether
// a point is concrete is told by formulas of the round wall, not by the geometry kernel.

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double within_mm = 1e-3;  // of a point that lies on a surface

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {  // the same on every machine
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1.0p-53;
  }
  bool yes() { return engine_() % 2 == 0; }

 private:
  std::mt19937_64 engine_;
};

struct Point_mm {
  double x, y, z;
};

// A round wall, upright, with an opening through one side and a duct in it.
struct Wall {
  double outside, inside, height;     // radii
  double opening_radius, opening_at;  // about the x axis at this height, on the side of +x
  double duct_radius, duct_x, duct_y;
  std::vector<Solid> solids;

  explicit Wall(Random& random) {
    outside = random.between(250, 3000);
    inside = outside - std::min(0.8 * outside, random.between(120, 400));
    height = random.between(600, 2000);
    opening_radius = random.yes() ? random.between(40, 200) : 0.0;
    opening_at = random.between(220, height - 220);
    duct_radius = random.yes() ? random.between(8, 20) : 0.0;
    const double angle = random.between(0, 2 * pi), r = random.between(inside + 30, outside - 30);
    duct_x = r * std::cos(angle);
    duct_y = r * std::sin(angle);
    solids = {pipe("wall", {}, 2.0 * outside * mm, 2.0 * inside * mm, height * mm)};
    if (opening_radius > 0.0)
      solids.push_back(cut(cylinder("opening", at(0, 0, opening_at), 2.0 * opening_radius * mm,
                                    (outside + 50.0) * mm, Axis::x)));
    if (duct_radius > 0.0)
      solids.push_back(cut(cylinder("duct", at(duct_x, duct_y, 0), 2.0 * duct_radius * mm, height * mm)));
  }

  bool is_concrete(const Point_mm& p) const {
    const double r = std::hypot(p.x, p.y);
    if (r > outside + within_mm || r < inside - within_mm || p.z < -within_mm || p.z > height + within_mm)
      return false;
    if (p.x > 0.0 && std::hypot(p.y, p.z - opening_at) < opening_radius - within_mm) return false;
    return std::hypot(p.x - duct_x, p.y - duct_y) >= duct_radius - within_mm;
  }
};

bool is_in(const std::vector<plan::PlanarPoint>& ring, double x, double y) {
  bool inside = false;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const double ax = in(mm, ring[i].x), ay = in(mm, ring[i].y);
    const auto& next = ring[(i + 1) % ring.size()];
    const double bx = in(mm, next.x), by = in(mm, next.y);
    if ((ay > y) != (by > y) && x < ax + (bx - ax) * (y - ay) / (by - ay)) inside = !inside;
  }
  return inside;
}

plan::Insert headed(Random& random, const Wall& wall, std::string id, bool outside) {
  const double angle = random.between(0, 2 * pi), r = outside ? wall.outside : wall.inside;
  plan::Insert made = insert(
      std::move(id), at(r * std::cos(angle), r * std::sin(angle), random.between(60, wall.height - 60)));
  made.kind = "headed";
  made.embedment = random.between(0.2, 0.9) * (wall.outside - wall.inside) * mm;
  return made;
}

}  // namespace

TEST_CASE(
    "the body under a flat face inside a round wall is wholly concrete, and nearer to its insert than to "
    "another") {
  Random random(31);
  int bodies = 0, points = 0, found = 0, walls = 0;
  while (walls < 24) {
    const Wall wall(random);
    const bool outside = random.yes();
    const auto plan =
        plan_of(wall.solids, {}, {headed(random, wall, "A1", outside), headed(random, wall, "A2", outside)});
    const auto made = piece::make_body(plan);
    const auto* whole = std::get_if<piece::Body>(&made);
    if (!whole) continue;  // an insert in the opening
    ++walls;
    const piece::Body& body = *whole;
    for (std::size_t i = 0; i < 2; ++i) {
      const piece::InsertSite& site = body.sites[i];
      const Position here = plan.inserts[i].at, other = plan.inserts[1 - i].at;
      found += site.within.empty() ? 0 : 1;
      for (const piece::InsertSite& flat : site.within) {
        ++bodies;
        CAPTURE(walls, i, wall.outside, wall.inside, wall.height, outside, in(mm, flat.sunk),
                in(mm, flat.thickness));
        REQUIRE(flat.planar);
        REQUIRE(flat.sunk < *plan.inserts[i].embedment);
        REQUIRE(flat.sunk + flat.thickness > *plan.inserts[i].embedment);
        double x_low = 0, x_high = 0, y_low = 0, y_high = 0;
        for (const auto& p : flat.outline.outer) {
          x_low = std::min(x_low, in(mm, p.x)), x_high = std::max(x_high, in(mm, p.x));
          y_low = std::min(y_low, in(mm, p.y)), y_high = std::max(y_high, in(mm, p.y));
        }
        REQUIRE(is_in(flat.outline.outer, 0.0, 0.0));
        for (int k = 0; k < 300; ++k) {
          const double x = random.between(x_low, x_high), y = random.between(y_low, y_high);
          const auto holds = [&](const auto& hole) { return is_in(hole, x, y); };
          if (!is_in(flat.outline.outer, x, y) || std::ranges::any_of(flat.outline.holes, holds)) continue;
          const Length depth = flat.sunk + random.between(0, 1) * flat.thickness;
          const Position p = here + flat.u * (x * mm) + flat.v * (y * mm) + flat.normal * (-1.0 * depth);
          const Point_mm at_mm{in(mm, p.x), in(mm, p.y), in(mm, p.z)};
          CAPTURE(x, y, in(mm, depth), at_mm.x, at_mm.y, at_mm.z);
          REQUIRE(wall.is_concrete(at_mm));
          REQUIRE(norm(p - here) <= norm(p - other) + within_mm * mm);
          ++points;
        }
      }
    }
  }
  CAPTURE(bodies, points, found);
  CHECK(found > 30);  // of 48
  CHECK(points > 8000);
}
